"""A task about amounts in the words of whoever sets it: half-equations or cells, what is known, what is asked."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription

__all__ = ["AskedQuantity", "ProcessDescription", "StatedQuantity", "TaskConventions", "TaskDescription"]

Collected = Literal["", "dry", "over water"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProcessDescription:
    """What runs at one place of the circuit: one of a half-equation, a cell, or the metal of an ion.

    Parameters
    ----------
    id
        Name of it in the task.
    half_equation
        As somebody wrote it.
    cell
        Whose electrodes run, under the curriculum of the task.
    electrode
        Of a cell: ``cathode`` or ``anode``, or empty for both. Beside a half-equation: a name for the electrode;
        half-equations with the same name share its current.
    bath
        Beside a half-equation: a name for its bath; half-equations with the same name share it.
    metal
        Symbol of a metal whose ion has a charge that is not known, or a letter for an unknown metal.
    where
        Path of it in the request, for faults.
    """

    id: str
    half_equation: str = ""
    cell: CellDescription | None = None
    electrode: str = ""
    bath: str = ""
    metal: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class StatedQuantity:
    """A quantity that the task states, in its own words.

    Parameters
    ----------
    phrase
        Name of a quantity, or a phrase such as "mass of Ag at silver cell".
    value
        Its value as it was written: "2.16 g", "95%", "0.50 ± 0.01 A".
    of, process
        Substance and process; they count before those in the phrase, and are empty if not said.
    where
        Path of it in the request, for faults.
    """

    phrase: str
    value: str
    of: str = ""
    process: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class AskedQuantity:
    """A quantity that the task asks for, in its own words.

    Parameters
    ----------
    phrase
        Name of a quantity, or a phrase such as "mass of Ni in mg".
    of, process, unit
        Substance, process and unit of the answer; they count before those in the phrase, and are empty if not said.
    where
        Path of it in the request, for faults.
    """

    phrase: str
    of: str = ""
    process: str = ""
    unit: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskConventions:
    """What the task states in place of what the course prints.

    Parameters
    ----------
    constants
        Faraday constant, molar gas volume and the like: the name of the quantity and its value as written.
    relative_atomic_masses
        Symbols and figures.
    significant_figures
        To how many figures to answer; None for as many as what is known has.
    gas_collected
        ``over water``, or ``dry`` if empty.
    """

    constants: tuple[tuple[str, str], ...] = ()
    relative_atomic_masses: tuple[tuple[str, str], ...] = ()
    significant_figures: int | None = None
    gas_collected: Collected = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskDescription:
    """A whole task; equal descriptions have equal answers.

    Parameters
    ----------
    processes
        All in one circuit, so that the same charge passes through each electrode.
    """

    processes: tuple[ProcessDescription, ...]
    known: tuple[StatedQuantity, ...]
    find: tuple[AskedQuantity, ...]
    conventions: TaskConventions = field(default_factory=TaskConventions)
