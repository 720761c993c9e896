"""Asks the solver of amounts about one cell: every figure of a plan comes from there."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from ionwright.teaching.quantities.circuits import make_circuit
from ionwright.teaching.quantities.description import (
    AskedQuantity,
    ProcessDescription,
    StatedQuantity,
    TaskDescription,
)
from ionwright.teaching.quantities.solving import solve_task

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.demonstrations.description import DemonstrationDescription
    from ionwright.teaching.quantities.circuits import MadeCircuit
    from ionwright.teaching.quantities.solving import Solved

__all__ = ["Asked", "Reckoning", "stated"]


class Asked(NamedTuple):
    """A quantity that a plan needs, with the unit in which it comes."""

    quantity: str
    unit: str
    of: str = ""
    process: str = ""


class Reckoning:
    """The solver, set to one cell under one curriculum.

    Parameters
    ----------
    always
        What is known in every task: efficiencies, and the conditions under which gases are measured.
    """

    __slots__ = ("_conventions", "_curriculum", "_process", "always")

    def __init__(
        self, description: DemonstrationDescription, curriculum: Curriculum, half_equation: str = ""
    ) -> None:
        self._curriculum = curriculum
        self._conventions = description.conventions
        self._process = (
            ProcessDescription(id="possible", half_equation=half_equation, where="cell")
            if half_equation
            else ProcessDescription(id="cell", cell=description.cell, where="cell")
        )
        self.always: tuple[StatedQuantity, ...] = ()

    @property
    def circuit(self) -> MadeCircuit:
        """The electrode processes, with the prediction behind them."""
        return make_circuit((self._process,), self._curriculum, is_over_water=False)

    def solve(
        self, known: Iterable[StatedQuantity], find: Iterable[Asked], figures: int | None = None
    ) -> Solved:
        """The task of these quantities, solved.

        Raises
        ------
        IonwrightError
            As `ionwright.teaching.quantities.solving.solve_task`.
        """
        conventions = self._conventions
        if figures is not None:
            conventions = replace(conventions, significant_figures=figures)
        wanted = tuple(AskedQuantity(one.quantity, one.of, one.process, one.unit) for one in find)
        task = TaskDescription(
            processes=(self._process,), known=(*known, *self.always), find=wanted, conventions=conventions
        )
        return solve_task(task, self._curriculum)

    def values(self, known: Iterable[StatedQuantity], find: Iterable[Asked]) -> tuple[float, ...]:
        """The values of these quantities, each in its unit."""
        return tuple(answer.value for answer in self.solve(known, tuple(find)).answers)

    def value(self, known: Iterable[StatedQuantity], find: Asked) -> float:
        """The value of one quantity in its unit."""
        return self.values(known, (find,))[0]


def stated(quantity: str, value: float, unit: str, of: str = "", process: str = "") -> StatedQuantity:
    """A known quantity in full."""
    return StatedQuantity(quantity, f"{value!r} {unit}".removesuffix(" 1"), of, process)
