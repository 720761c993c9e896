"""Works a task out: builds the network of its quantities, solves it, and says what contradicts or is still needed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.circuit_relations import circuit_relations
from ionwright.chemistry.amounts.known_values import known_values
from ionwright.chemistry.amounts.limits import check_results
from ionwright.chemistry.amounts.network import Solution, solve
from ionwright.chemistry.amounts.placing import placed
from ionwright.chemistry.amounts.task_faults import contradiction, needs_more
from ionwright.chemistry.amounts.task_hints import what_would_do
from ionwright.chemistry.amounts.values import EXACT, Value
from ionwright.chemistry.faults import QuantityFault

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.amounts.known_values import KnownValues
    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.relations import Relation
    from ionwright.chemistry.amounts.task import Given, Task, Wanted

__all__ = ["WorkedOut", "work_out"]

_FIGURES_OF_EXACT: Final = 4
_FEWEST_OF_GOOD: Final = 2
_OF_A_WET_GAS: Final = (
    "water_vapour_pressure",
    "temperature",
    "pressure",
    "volume",
    "charge",
    "time",
    "current",
)


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """The solution of a task.

    Parameters
    ----------
    answers
        What was asked for, in that order: each quantity with the wish that it answers.
    values
        Every quantity that follows, with its derivation.
    given
        What the task states, by quantity.
    knowns
        All that the solver started from.
    """

    task: Task
    answers: tuple[tuple[Wanted, Key], ...]
    values: Mapping[Key, Value]
    given: Mapping[Key, Given]
    knowns: KnownValues

    def figures(self, key: Key) -> int:
        """Significant figures of an answer."""
        value = self.values[key]
        if self.task.figures or value.figures >= EXACT:
            return self.task.figures or _FIGURES_OF_EXACT
        # a small difference of two good figures loses some; one alone would tell a class too little
        fewest = min((self.given[one].value.significant_figures for one in value.given), default=1)
        return max(value.figures, min(fewest, _FEWEST_OF_GOOD))


def work_out(task: Task) -> WorkedOut:
    """What a task asks for, from what it states.

    Raises
    ------
    QuantityFault
        ``needs-more`` with what would settle it, ``contradictory`` with what does not go together, or the fault of
        one quantity, such as ``negative-quantity``; its ``where`` is that of the quantity at fault.
    """
    given, answers = placed(task)
    knowns = known_values(task, given, [key for _, key in answers])
    asked = frozenset(key.kind for _, key in answers)
    relations = circuit_relations(task.circuit, knowns.mentioned, asked)
    try:
        solution = solve(relations, knowns.values)
    except QuantityFault as fault:
        raise fault.within(_where_of_a_wet_gas(given)) from None
    if solution.clashes:
        raise contradiction(solution.clashes, given, solution)
    answers = _without_missing(task, given, answers, relations, solution, knowns)
    check_results(task, solution.values, given, frozenset(key for _, key in answers))
    return WorkedOut(task, answers, solution.values, given, knowns)


def _where_of_a_wet_gas(given: Mapping[Key, Given]) -> str:
    """Where a figure stands that the tables of water vapour cannot follow: only they can fail while solving."""
    wheres = {key.kind: one.where for key, one in given.items()}
    return next((wheres[kind] for kind in _OF_A_WET_GAS if kind in wheres), "")


def _without_missing(  # noqa: PLR0913, PLR0917 - all that was made on the way
    task: Task,
    given: Mapping[Key, Given],
    answers: tuple[tuple[Wanted, Key], ...],
    relations: Sequence[Relation],
    solution: Solution,
    knowns: KnownValues,
) -> tuple[tuple[Wanted, Key], ...]:
    """The answers that were found; a wish none of whose readings was found is a fault."""
    found = tuple(pair for pair in answers if pair[1] in solution.values)
    for wanted, key in answers:
        if all(pair[0] is not wanted for pair in found):
            hints = what_would_do(task, given, tuple(key for _, key in answers), key)
            raise needs_more(wanted, key, relations, knowns, hints)
    return found
