"""Solves several unknowns at once, where sums bind quantities that are in proportion to each other."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import Product, Sum
from ionwright.chemistry.amounts.values import EXACT, Row, Value, nominal

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.amounts.relations import Number, Relation

__all__ = ["solve_together"]

_CRUMB: Final = 1e-9
"""Of what is added up, the part below which a sum counts as zero."""


def solve_together(
    relations: Sequence[Relation], values: dict[Key, Value], numbers: dict[Key, Number]
) -> bool:
    """Solve sums whose unknowns are proportional to a few others, for one of them; says whether one was found.

    A product with two unknowns makes one a known multiple of the other; so every sum is linear in what is left.
    """
    multiple = _multiples(relations, numbers)
    rows: dict[Sum, Row] = {}
    # that shares make up a whole says least on a board, so it comes last
    for relation in sorted(relations, key=lambda one: one.name == "shares"):
        if isinstance(relation, Sum):
            row = _row(relation, multiple, numbers)
            if row is not None:
                rows[relation] = row
    known = frozenset(numbers)
    found = _eliminated(list(rows.items()))
    key = next(
        (k for k, (number, _) in found.items() if nominal(number) or QUANTITIES[k.kind].may_be_zero), None
    )
    if key is None:
        return False
    number, used = found[key]
    bearing = [relation for relation in relations if _bears_on(relation, used, known)]
    inputs = tuple(dict.fromkeys(k for r in bearing for k in r.members if k in known))
    sources = [values[k] for k in inputs]
    given = frozenset[Key]().union(*(source.given for source in sources))
    figures = min((source.figures for source in sources), default=EXACT)
    slack = sum(source.slack for source in sources)
    numbers[key] = number
    values[key] = Value(number, figures, slack, given, used[0], inputs, tuple(rows[one] for one in used))
    return True


def _bears_on(relation: Relation, sums: Sequence[Sum], known: frozenset[Key]) -> bool:
    """Whether a relation is one of these sums, or ties unknowns to each other that may stand in them."""
    return relation in sums or sum(key not in known for key in relation.members) == 2


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
    # no multiple of zero is the other way round any more
    return value if nominal(value) else None


def _row(
    relation: Sum, multiple: Mapping[Key, tuple[Key, Number]], numbers: Mapping[Key, Number]
) -> Row | None:
    """A sum as a linear equation in the representatives."""
    coefficients: dict[Key, Number] = {}
    sizes: dict[Key, float] = {}
    right: Number = relation.constant
    signed = [(relation.result, -1)]
    signed += [(key, 1) for key in relation.added] + [(key, -1) for key in relation.subtracted]
    for key, sign in signed:
        if key in numbers:
            right = right + sign * numbers[key]
        else:
            leader, times = multiple.get(key, (key, 1.0))
            coefficients[leader] = coefficients.get(leader, 0.0) - sign * times
            sizes[leader] = sizes.get(leader, 0.0) + abs(nominal(times))
    # what cancels leaves a crumb of rounding behind, which must not count as an equation
    coefficients = {
        k: number for k, number in coefficients.items() if abs(nominal(number)) > _CRUMB * sizes[k]
    }
    if nominal(right) < 0:
        right, coefficients = -right, {key: -number for key, number in coefficients.items()}
    return Row(relation.result, right, coefficients) if coefficients else None


def _eliminated(rows: list[tuple[Sum, Row]]) -> dict[Key, tuple[Number, list[Sum]]]:
    """The unknowns that the equations settle, by Gauss-Jordan elimination, each with the sums it rests on."""
    work = [(dict(row.coefficients), row.total, [relation]) for relation, row in rows]
    solved: list[tuple[Key, int]] = []
    for index, (_, row) in enumerate(rows):
        pivot = _largest(work[index][0])
        if pivot is not None and abs(nominal(work[index][0][pivot])) > _CRUMB * _scale(row.coefficients):
            _subtract(work, index, pivot)
            solved.append((pivot, index))
    found: dict[Key, tuple[Number, list[Sum]]] = {}
    for pivot, index in solved:
        coefficients, right, used = work[index]
        least = _CRUMB * _scale(coefficients)
        if all(key == pivot or abs(nominal(number)) <= least for key, number in coefficients.items()):
            found[pivot] = (right / coefficients[pivot], used)
    return found


def _largest(coefficients: Mapping[Key, Number]) -> Key | None:
    return max(coefficients, key=lambda key: abs(nominal(coefficients[key])), default=None)


def _subtract(work: list[tuple[dict[Key, Number], Number, list[Sum]]], index: int, pivot: Key) -> None:
    """Take the equation from all others so that the pivot stands in it alone."""
    coefficients, right, used = work[index]
    for place, (other, other_right, other_used) in enumerate(work):
        if place == index or pivot not in other:
            continue
        times = other[pivot] / coefficients[pivot]
        changed = dict(other)
        for key, coefficient in coefficients.items():
            changed[key] = changed.get(key, 0.0) - times * coefficient
        del changed[pivot]
        joined = [*other_used, *(relation for relation in used if relation not in other_used)]
        work[place] = (changed, other_right - times * right, joined)


def _scale(coefficients: Mapping[Key, Number]) -> float:
    return max((abs(nominal(c)) for c in coefficients.values()), default=1.0)
