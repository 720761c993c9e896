"""Solves a small network of relations: from what is known to everything that follows, each with its derivation."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.relations import ByTrial
from ionwright.chemistry.amounts.together import solve_together
from ionwright.chemistry.amounts.values import Known, Value, derived, nominal

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.relations import Number, Relation

__all__ = ["Clash", "Solution", "reachable", "solve"]

_TOLERANCE = 5e-4
"""Relative difference that is put down to rounding in any case."""


@dataclass(frozen=True, slots=True)
class Clash:
    """A relation that the values do not fulfil.

    Parameters
    ----------
    key
        The member that is told: a given one, if there is one.
    value, other
        What it is, and what it would have to be by the relation.
    rests_on
        The given quantities from which `other` follows.
    """

    relation: Relation
    key: Key
    value: Number
    other: Number
    rests_on: frozenset[Key]


@dataclass(frozen=True, slots=True)
class Solution:
    """Everything that follows from what is known.

    Parameters
    ----------
    values
        All values by key, in the order in which they were found.
    clashes
        Relations that contradict the values.
    """

    values: Mapping[Key, Value]
    clashes: tuple[Clash, ...] = field(default=())


def solve(relations: Sequence[Relation], knowns: Iterable[Known]) -> Solution:
    """Everything that follows from what is known, by solving one relation after the other for its only unknown.

    Where no relation has one unknown left, sums of proportional quantities are solved together.

    Parameters
    ----------
    relations
        In order of preference: where two give the same quantity in the same round, the first is taken.
    knowns
        At most one for each key.
    """
    values = {
        known.key: Value(
            known.value,
            known.figures,
            known.slack,
            frozenset((known.key,)) if known.is_given else frozenset(),
        )
        for known in knowns
    }
    numbers = {key: value.number for key, value in values.items()}
    unused = _propagate(list(relations), values, numbers)
    while solve_together(unused, values, numbers):
        unused = _propagate(unused, values, numbers)
    return Solution(values, tuple(_clashes(unused, values, numbers)))


def reachable(relations: Sequence[Relation], known: Iterable[Key]) -> set[Key]:
    """The quantities that would follow if these were known, whatever their values."""
    found = set(known)
    pending = list(relations)
    grew = True
    while grew:
        grew = False
        for relation in pending:
            missing = [key for key in relation.members if key not in found]
            if len(missing) == 1:
                found.add(missing[0])
                grew = True
        pending = [r for r in pending if any(key not in found for key in r.members)]
    return found


def _propagate(
    pending: list[Relation], values: dict[Key, Value], numbers: dict[Key, Number]
) -> list[Relation]:
    """Solve whatever has one unknown, again and again; returns the relations that nothing was taken from."""
    spare: list[Relation] = []
    grew = True
    while grew:
        grew = False
        waiting: list[Relation] = []
        for relation in pending:
            missing = [key for key in relation.members if key not in numbers]
            if len(missing) > 1:
                waiting.append(relation)
            elif not missing or not _take(relation, missing[0], values, numbers):
                spare.append(relation)
            else:
                grew = True
        pending = waiting
    return [*spare, *pending]


def _take(relation: Relation, key: Key, values: dict[Key, Value], numbers: dict[Key, Number]) -> bool:
    number = relation.solved_for(key, numbers)
    if number is None:
        return False
    inputs = tuple(member for member in relation.members if member != key)
    numbers[key] = number
    values[key] = derived(relation, number, inputs, values)
    return True


# ------------------------------------------------------------------ contradictions


def _clashes(
    relations: Iterable[Relation], values: Mapping[Key, Value], numbers: Mapping[Key, Number]
) -> Iterable[Clash]:
    for relation in relations:
        if isinstance(relation, ByTrial) or any(key not in numbers for key in relation.members):
            continue
        key = next((k for k in relation.members if values[k].given == {k}), relation.result)
        other = relation.solved_for(key, numbers)
        if other is None:
            continue
        inputs = tuple(member for member in relation.members if member != key)
        expected = derived(relation, other, inputs, values)
        if _differ(values[key], expected):
            yield Clash(relation, key, values[key].number, other, expected.given)


def _differ(value: Value, other: Value) -> bool:
    one, two = nominal(value.number), nominal(other.number)
    size = max(abs(one), abs(two))
    slack = (
        _TOLERANCE + abs(one) / size * value.slack + (abs(two) / size * other.slack if two else 0)
        if size
        else 0
    )
    return abs(one - two) > size * slack + _deviations(value.number) + _deviations(other.number)


def _deviations(number: Number) -> float:
    """Two standard deviations of a number with an uncertainty; 0 for any other."""
    return 2 * float(getattr(number, "std_dev", 0.0))
