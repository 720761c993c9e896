"""A task about amounts: what runs, what is known of it, and what is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from ionwright.chemistry.amounts.circuit import Circuit
    from ionwright.chemistry.units import Unit
    from ionwright.chemistry.written_quantity import Written

__all__ = ["Constants", "Given", "Task", "Wanted"]


@dataclass(frozen=True, slots=True)
class Given:
    """A quantity that a task states.

    Parameters
    ----------
    quantity
        Name of a sort of quantity, one of `ionwright.chemistry.amounts.quantity.QUANTITIES`.
    value
        As it was written.
    of, process
        Formula or name of the substance and id of the process that it belongs to; empty if there is no doubt.
    where
        Path of it in the task, for faults.
    weighed
        The compound that a concentration by mass weighs, if that is not the substance itself.
    """

    quantity: str
    value: Written
    of: str = ""
    process: str = ""
    where: str = ""
    weighed: str = ""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A quantity that a task asks for.

    Parameters
    ----------
    quantity, of, process, where
        As for `Given`; without a substance, every one is answered that the quantity fits.
    unit
        Unit of the answer; None for the usual one.
    """

    quantity: str
    of: str = ""
    process: str = ""
    unit: Unit | None = None
    where: str = ""


@dataclass(frozen=True, slots=True)
class Constants:
    """What a course prints and a task therefore does not state.

    Parameters
    ----------
    values
        Faraday constant, molar gas volume and the like, by the name of the quantity.
    relative_atomic_mass
        The figure for the symbol of an element, as printed; None if there is none.
    stated
        Which of the values the task itself states: they count before everything else.
    """

    values: Mapping[str, Written]
    relative_atomic_mass: Callable[[str], Written | None]
    stated: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Task:
    """What runs, what is known, and what is asked for.

    Parameters
    ----------
    figures
        To how many significant figures to answer; None for as many as what is given has.
    """

    circuit: Circuit
    given: tuple[Given, ...]
    wanted: tuple[Wanted, ...]
    constants: Constants
    figures: int | None = None
