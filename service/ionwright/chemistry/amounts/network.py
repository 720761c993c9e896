"""Solves a small network of relations: from what is known to everything that follows, each with its derivation."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import floor, inf, log10
from typing import TYPE_CHECKING, Any

from ionwright.chemistry.amounts.relations import Product, Sum

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.amounts.relations import Number, Relation

__all__ = ["Clash", "Known", "Solution", "Value", "reachable", "solve"]

EXACT = 99
"""Significant figures of what does not limit those of an answer: constants and whole numbers."""

_TOLERANCE = 5e-4
"""Relative difference that is put down to rounding in any case."""


@dataclass(frozen=True, slots=True)
class Known:
    """A quantity with its value.

    Parameters
    ----------
    value
        In the unit of the solver; a float, or a number with an uncertainty.
    figures
        Significant figures that limit an answer; `EXACT` for none.
    slack
        By how much it may be off through rounding alone, relative to the value.
    is_given
        Whether a task states it; constants and what the tables add are not given.
    """

    key: Key
    value: Number
    figures: int = EXACT
    slack: float = 0.0
    is_given: bool = True


@dataclass(frozen=True, slots=True)
class Value:
    """A value with its derivation.

    Parameters
    ----------
    number
        In the unit of the solver.
    figures, slack
        As for `Known`.
    given
        The given quantities on which it rests.
    relation, inputs
        From which relation it follows, and from which other quantities; None and empty if it is known.
    """

    number: Number
    figures: int
    slack: float
    given: frozenset[Key]
    relation: Relation | None = None
    inputs: tuple[Key, ...] = ()


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
    while _solve_together(unused, values, numbers):
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
    values[key] = _derived(relation, number, inputs, values)
    return True


def _derived(
    relation: Relation, number: Number, inputs: tuple[Key, ...], values: Mapping[Key, Value]
) -> Value:
    sources = [values[key] for key in inputs]
    given = frozenset().union(*(source.given for source in sources))
    if isinstance(relation, Sum):
        slack = _slack_of_sum(number, sources)
        return Value(number, _figures_of_sum(number, sources), slack, given, relation, inputs)
    slack = sum(source.slack for source in sources)
    return Value(number, min(source.figures for source in sources), slack, given, relation, inputs)


def _slack_of_sum(number: Number, sources: Sequence[Value]) -> float:
    size = abs(nominal(number))
    return sum(abs(nominal(s.number)) * s.slack for s in sources) / size if size else inf


def _figures_of_sum(number: Number, sources: Sequence[Value]) -> int:
    """Significant figures of a sum or difference: its last place is the coarsest last place in it."""
    places = [_last_place(source) for source in sources if source.figures < EXACT and nominal(source.number)]
    size = abs(nominal(number))
    if not places:
        return EXACT
    return max(1, floor(log10(size)) - max(places) + 1) if size else 1


def _last_place(value: Value) -> int:
    return floor(log10(abs(nominal(value.number)))) - value.figures + 1


def nominal(number: Number) -> float:
    """The number without its uncertainty."""
    return float(number if isinstance(number, float | int) else number.nominal_value)


# ------------------------------------------------------------------ several unknowns at once


def _solve_together(
    relations: Sequence[Relation], values: dict[Key, Value], numbers: dict[Key, Number]
) -> bool:
    """Solve sums whose unknowns are proportional to a few others; says whether anything was found.

    A product with two unknowns makes one a known multiple of the other; so every sum is linear in what is left.
    """
    multiple = _multiples(relations, numbers)
    rows: list[tuple[dict[Key, Number], Number, Sum]] = []
    for relation in relations:
        if isinstance(relation, Sum):
            row = _row(relation, multiple, numbers)
            if row is not None:
                rows.append((*row, relation))
    found = _eliminated(rows)
    for key, (number, used) in found.items():
        inputs = tuple(dict.fromkeys(k for r in used for k in r.members if k in values))
        numbers[key] = number
        values[key] = _derived(used[0], number, inputs, values)
    return bool(found)


def _multiples(relations: Sequence[Relation], numbers: Mapping[Key, Number]) -> dict[Key, tuple[Key, Number]]:
    """Each unknown that stands in a proportion, as a multiple of the representative of its class."""
    multiple: dict[Key, tuple[Key, Number]] = {}
    for relation in relations:
        missing = [key for key in relation.members if key not in numbers]
        if len(missing) != 2 or not isinstance(relation, Product):
            continue
        one, other = missing
        ratio = _ratio(relation, one, other, numbers)
        if ratio is None:
            continue
        first, first_times = multiple.setdefault(one, (one, 1.0))
        second, second_times = multiple.setdefault(other, (other, 1.0))
        if first != second:
            scale = ratio * second_times / first_times  # first = scale × second
            for key, (leader, times) in list(multiple.items()):
                if leader == first:
                    multiple[key] = (second, times * scale)
    return multiple


def _ratio(relation: Product, one: Key, other: Key, numbers: Mapping[Key, Number]) -> Number | None:
    """By what to multiply the other to have the one; None if they are not proportional."""
    number, numerators, divisors = relation.rearranged(one)
    if other not in numerators:
        return None
    value: Number = number.numerator / number.denominator
    for key in numerators:
        value = value if key == other else value * numbers[key]
    for key in divisors:
        if numbers[key] == 0:
            return None
        value = value / numbers[key]
    return value


def _row(
    relation: Sum, multiple: Mapping[Key, tuple[Key, Number]], numbers: Mapping[Key, Number]
) -> tuple[dict[Key, Number], Number] | None:
    """A sum as a linear equation in the representatives: their coefficients and the right-hand side."""
    coefficients: dict[Key, Number] = {}
    right: Number = relation.constant
    signed = [(relation.result, -1)]
    signed += [(key, 1) for key in relation.added] + [(key, -1) for key in relation.subtracted]
    for key, sign in signed:
        if key in numbers:
            right = right + sign * numbers[key]
        else:
            leader, times = multiple.get(key, (key, 1.0))
            coefficients[leader] = coefficients.get(leader, 0.0) - sign * times
    return (coefficients, right) if coefficients else None


def _eliminated(
    rows: list[tuple[dict[Key, Number], Number, Sum]],
) -> dict[Key, tuple[Number, list[Relation]]]:
    """The unknowns that the equations settle, by Gauss-Jordan elimination, each with the relations it rests on."""
    work: list[tuple[dict[Key, Number], Number, list[Relation]]] = [(dict(c), r, [s]) for c, r, s in rows]
    solved: list[tuple[Key, int]] = []
    for index, (coefficients, _, _) in enumerate(work):
        pivot = max(coefficients, key=lambda key: abs(nominal(coefficients[key])), default=None)
        if pivot is None or abs(nominal(coefficients[pivot])) < 1e-9 * _scale(rows[index][0]):
            continue
        _subtract(work, index, pivot)
        solved.append((pivot, index))
    found: dict[Key, tuple[Number, list[Relation]]] = {}
    for pivot, index in solved:
        coefficients, right, used = work[index]
        others = [
            k for k, c in coefficients.items() if k != pivot and abs(nominal(c)) > 1e-9 * _scale(coefficients)
        ]
        if not others:
            found[pivot] = (right / coefficients[pivot], used)
    return found


def _subtract(work: list[tuple[dict[Key, Number], Number, list[Relation]]], index: int, pivot: Key) -> None:
    coefficients, right, used = work[index]
    for place, (other, other_right, other_used) in enumerate(work):
        if place == index or pivot not in other:
            continue
        times = other[pivot] / coefficients[pivot]
        changed = dict(other)
        for key, coefficient in coefficients.items():
            changed[key] = changed.get(key, 0.0) - times * coefficient
        del changed[pivot]
        joined: list[Any] = [*other_used, *(r for r in used if r not in other_used)]
        work[place] = (changed, other_right - times * right, joined)


def _scale(coefficients: Mapping[Key, Number]) -> float:
    return max((abs(nominal(c)) for c in coefficients.values()), default=1.0)


# ------------------------------------------------------------------ contradictions


def _clashes(
    relations: Iterable[Relation], values: Mapping[Key, Value], numbers: Mapping[Key, Number]
) -> Iterable[Clash]:
    for relation in relations:
        if any(key not in numbers for key in relation.members):
            continue
        key = next((k for k in relation.members if values[k].given == {k}), relation.result)
        other = relation.solved_for(key, numbers)
        if other is None:
            continue
        inputs = tuple(member for member in relation.members if member != key)
        derived = _derived(relation, other, inputs, values)
        if _differ(values[key], derived):
            yield Clash(relation, key, values[key].number, other, derived.given)


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
