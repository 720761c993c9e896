"""Combinations of vectors whose entries are positive where they must be: found, refuted, or taken apart.

All numbers are whole, so that nothing is rounded; what would be a fraction stands over a number of its own. The
search is the simplex method with the rule of least index, which always ends; where
there is no combination, its last row says why.
"""

from __future__ import annotations

from math import gcd, lcm
from operator import mul
from typing import TYPE_CHECKING, Final, TypeAlias

from ionwright.chemistry.null_space import null_space

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

__all__ = [
    "Vector",
    "independent_vectors",
    "own_place",
    "positive_combination",
    "primitive_whole",
]

Vector: TypeAlias = "tuple[int, ...]"

_HELPER: Final = -1  # index of the variable that lifts all others above zero
_MOST_TAKEN_APART: Final = 6


def primitive_whole(numbers: Sequence[int]) -> Vector:
    """Return whole numbers divided by what they have in common."""
    common = gcd(*numbers)
    return tuple([number // common for number in numbers] if common > 1 else numbers)


def own_place(vector: Vector, basis: Sequence[Vector]) -> int:
    """Return the last place in which this vector alone of a basis is not zero, but above."""
    return next(
        at
        for at in range(len(vector) - 1, -1, -1)
        if vector[at] > 0 and all(other is vector or not other[at] for other in basis)
    )


def positive_combination(
    basis: Sequence[Vector], own: Sequence[int], positive: Sequence[int]
) -> tuple[Vector | None, dict[int, int]]:
    """Return a combination of vectors that is above zero in given places, or the reason why there is none.

    Parameters
    ----------
    basis
        Vectors as `null_space` gives them.
    own
        For each vector the place in which it alone is not zero; among the places that must be positive.
    positive
        The places in which the combination must be above zero.

    Returns
    -------
    tuple
        The combination and nothing; or None and a weight above zero for some of the places: the weighted sum
        over these places is zero in every vector, so that not all of them can be positive.
    """
    if len(basis) == 2 and (edges := _edges(basis, own, positive)):
        return primitive_whole([a + b for a, b in zip(*edges, strict=True)]), {}
    common = lcm(*[vector[place] for vector, place in zip(basis, own, strict=True)])
    scales = [common // vector[place] for vector, place in zip(basis, own, strict=True)]
    basic = [at for at in positive if at not in own]
    weights = [[scale * v[at] for scale, v in zip(scales, basis, strict=True)] for at in basic]
    table = _Table(
        rows=[[sum(row) - common, *row, common] for row in weights],
        scales=[common] * len(basic),
        basic=basic,
        others=[*own, _HELPER],
    )
    refutation = table.lift()
    if refutation:
        return None, refutation
    values = table.values()
    shares = []
    for vector, place in zip(basis, own, strict=True):
        number, scale = values.get(place, (0, 1))
        shares.append((scale + number, scale * vector[place]))
    whole = lcm(*[below for _, below in shares])
    factors = [above * (whole // below) for above, below in shares]
    return primitive_whole(_sum(factors, basis)), {}


def _edges(basis: Sequence[Vector], own: Sequence[int], positive: Sequence[int]) -> list[Vector]:
    """Return the two edges of what two vectors allow, by turning each inwards; none if nothing is allowed."""
    first, second = basis
    for at in positive:
        if at in own:
            continue
        a, b = first[at], second[at]
        if a <= 0 and b <= 0:
            return []
        if a < 0:
            first = primitive_whole([b * x - a * y for x, y in zip(first, second, strict=True)])
        elif b < 0:
            second = primitive_whole([a * y - b * x for x, y in zip(first, second, strict=True)])
    return [first, second]


class _Table:
    """A simplex table: each basic variable, times its scale above zero, as a constant and a sum over the others."""

    __slots__ = ("basic", "others", "rows", "scales")

    def __init__(self, rows: list[list[int]], scales: list[int], basic: list[int], others: list[int]) -> None:
        self.rows = rows
        self.scales = scales
        self.basic = basic
        self.others = others

    def values(self) -> dict[int, tuple[int, int]]:
        """Return the basic variables, the others being zero: each as a number over a number above zero."""
        return {
            name: (row[0], scale) for name, row, scale in zip(self.basic, self.rows, self.scales, strict=True)
        }

    def lift(self) -> dict[int, int]:
        """Bring all variables to zero or above; return the weights that refute it where that cannot be."""
        # the rows have one scale to begin with
        lowest = min(range(len(self.rows)), key=lambda at: self.rows[at][0], default=-1)
        if lowest < 0 or self.rows[lowest][0] >= 0:
            return {}
        self.exchange(lowest, len(self.others) - 1)
        while _HELPER in self.basic:
            row = self.rows[self.basic.index(_HELPER)]
            falling = [at for at in range(len(self.others)) if row[at + 1] < 0]
            if not falling:
                return {name: row[at + 1] for at, name in enumerate(self.others) if row[at + 1]}
            entering = min(falling, key=self.others.__getitem__)
            self.exchange(self.first_to_zero(entering), entering)
        return {}

    def first_to_zero(self, entering: int) -> int:
        """Return the row whose variable reaches zero first; the helping variable before all others."""
        first, constant, slope = -1, 0, 0
        for at, row in enumerate(self.rows):
            if row[entering + 1] >= 0:
                continue
            sooner = row[0] * slope - constant * row[entering + 1]
            if first < 0 or sooner > 0 or (not sooner and self.basic[at] < self.basic[first]):
                first, constant, slope = at, row[0], row[entering + 1]
        return first

    def exchange(self, leaving: int, entering: int) -> None:
        """Let a basic variable and another one change places."""
        row, at = self.rows[leaving], entering + 1
        pivot = row[at]
        sign, scale = (1, pivot) if pivot > 0 else (-1, -pivot)
        solved = [-sign * entry for entry in row]
        solved[at] = sign * self.scales[leaving]
        for index, other in enumerate(self.rows):
            factor = other[at]
            if index != leaving and factor:
                made = [scale * entry + factor * new for entry, new in zip(other, solved, strict=True)]
                made[at] = factor * solved[at]
                self.rows[index], self.scales[index] = _reduced(made, scale * self.scales[index])
        self.rows[leaving], self.scales[leaving] = _reduced(solved, scale)
        self.basic[leaving], self.others[entering] = self.others[entering], self.basic[leaving]


def _reduced(row: list[int], scale: int) -> tuple[list[int], int]:
    common = gcd(scale, *row)
    return ([entry // common for entry in row], scale // common) if common > 1 else (row, scale)


# ------------------------------------------------------------------ taking a combination apart


def independent_vectors(inner: Vector, basis: Sequence[Vector], positive: Sequence[int]) -> list[Vector]:
    """Return as many independent vectors as the basis has, none of them below zero in the given places.

    Parameters
    ----------
    inner
        A combination of the basis that is above zero in the given places.
    basis
        Independent vectors, each not zero somewhere in those places.
    positive
        The places.

    Notes
    -----
    With up to six vectors each result is extreme: it cannot be taken apart any further, and as many places as
    possible are zero. With more, that would take long, and each is a vector near the inner one.
    """
    if len(basis) == 2:
        own = [own_place(vector, basis) for vector in basis]
        return _edges(basis, own, positive)
    lifted = [_lifted(vector, inner, positive) for vector in basis]
    if len(basis) > _MOST_TAKEN_APART:
        # the inner vector is a sum of the basis with factors above zero, so adding it keeps them independent
        return lifted
    targets = [inner, *lifted]
    found: list[Vector] = []
    for target in targets:
        found = _independent([*found, *_parts(target, basis, positive)], len(basis))
        if len(found) == len(basis):
            break
    return found


def _lifted(vector: Vector, inner: Vector, positive: Sequence[int]) -> Vector:
    """Return the vector with so much of the inner one added that it is above zero in the given places."""
    times = 1 + max(max(0, -(vector[at] // inner[at])) for at in positive)
    return primitive_whole([entry + times * number for entry, number in zip(vector, inner, strict=True)])


def _independent(vectors: Iterable[Vector], most: int) -> list[Vector]:
    chosen: list[Vector] = []
    for vector in vectors:
        columns = [*chosen, vector]
        if len(chosen) < most and not null_space(list(zip(*columns, strict=True)), len(columns)):
            chosen = columns
    return chosen


def _parts(target: Vector, basis: Sequence[Vector], positive: Sequence[int]) -> list[Vector]:
    """Return extreme vectors of which the target is a sum with factors above zero."""
    found = []
    left: Vector = target
    while any(left[at] for at in positive):
        part = _extreme(left, basis, positive)
        found.append(part)
        left = _to_the_edge(left, part, positive)
    return found


def _extreme(point: Vector, basis: Sequence[Vector], positive: Sequence[int]) -> Vector:
    """Return an extreme vector that is zero wherever the point is."""
    while True:
        zeros = [at for at in positive if not point[at]]
        face = null_space([[vector[at] for vector in basis] for at in zeros], len(basis))
        if len(face) == 1:
            return primitive_whole(point)
        point = next(
            lower
            for factors in face
            if any((lower := _to_the_edge(_sum(factors, basis), point, positive))[at] for at in positive)
        )


def _sum(factors: Sequence[int], basis: Sequence[Vector]) -> Vector:
    return tuple([sum(map(mul, factors, entries)) for entries in zip(*basis, strict=True)])


def _to_the_edge(direction: Vector, point: Vector, positive: Sequence[int]) -> Vector:
    """Return the direction less as much of the point as leaves it at zero or above; zero if they are parallel."""
    above, below = 0, 0  # the least share, as a fraction
    for at in positive:
        number = point[at]
        if number > 0 and (not below or direction[at] * below < above * number):
            above, below = direction[at], number
    return primitive_whole(
        [below * entry - above * number for entry, number in zip(direction, point, strict=True)]
    )
