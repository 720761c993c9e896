"""The conservation of atoms and charge for a set of species, as a system of linear equations, and its solutions."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from ionwright.chemistry.null_space import null_space
from ionwright.chemistry.positive_combination import (
    independent_vectors,
    positive_combination,
    primitive_whole,
)

if TYPE_CHECKING:
    from ionwright.chemistry.positive_combination import Vector
    from ionwright.chemistry.species import Species

__all__ = ["CHARGE", "LinearSystem", "Net", "Solutions"]

CHARGE = "charge"
Net = dict["Species", int]


@dataclass(frozen=True, slots=True)
class LinearSystem:
    """Species whose numbers are looked for.

    Parameters
    ----------
    free
        May end up on either side, or nowhere.
    left, right
        Must stand on their side, with a number above zero.
    conditions
        Further equations, as factors by species.
    """

    free: tuple[Species, ...]
    left: tuple[Species, ...]
    right: tuple[Species, ...]
    conditions: tuple[dict[Species, int], ...] = ()

    @property
    def columns(self) -> tuple[Species, ...]:
        """The species in the order of the columns: the free ones first, so that they are eliminated first."""
        return (*self.free, *self.left, *self.right)

    def rows(self) -> dict[str, list[int]]:
        """Return the atoms of each element, and the charge, that each species brings; negative on the right."""
        columns = self.columns
        width = len(columns)
        first_right = width - len(self.right)
        rows: dict[str, list[int]] = {}
        charges = [0] * width
        for at, kind in enumerate(columns):
            sign = 1 if at < first_right else -1
            charges[at] = sign * kind.charge
            for symbol, count in kind.atoms:
                row = rows.get(symbol)
                if row is None:
                    rows[symbol] = row = [0] * width
                row[at] = sign * count
        if any(charges):
            rows[CHARGE] = charges
        return rows

    def solutions(self) -> Solutions:
        """Find the numbers: none, one set with its multiples, or several."""
        columns = self.columns
        rows = list(self.rows().values())
        rows.extend([condition.get(kind, 0) for kind in columns] for condition in self.conditions)
        return Solutions(self, tuple(null_space(rows, len(columns))))


@dataclass(frozen=True)
class Solutions:
    """What a system allows.

    Parameters
    ----------
    system
        The system.
    basis
        Independent vectors that span all numbers which keep atoms and charge, whatever their signs; its null space as
        `null_space` gives it.
    """

    system: LinearSystem
    basis: tuple[Vector, ...]

    @property
    def only(self) -> Net | None:
        """The solution in smallest whole numbers, if it is the only one."""
        if len(self.basis) != 1:
            return None
        (vector,) = self.basis
        return self.net(vector) if min(vector[len(self.system.free) :], default=1) > 0 else None

    @property
    def are_several(self) -> bool:
        """True if there are solutions that are no multiples of each other."""
        return len(self.basis) > 1 and self.inner is not None

    @property
    def inner(self) -> Vector | None:
        """A solution; None if there is none."""
        return self._search[0]

    @property
    def refutation(self) -> dict[int, int]:
        """Weights above zero for places of the vector, whose weighted sum is zero.

        Empty unless there are several vectors and no solution.
        """
        return self._search[1]

    @cached_property
    def _search(self) -> tuple[Vector | None, dict[int, int]]:
        first = len(self.system.free)
        if len(self.basis) == 1 and min(self.basis[0][first:], default=1) > 0:
            return self.basis[0], {}
        # a vector of free species alone, such as H2O -> H^+ + OH^-, says nothing about the others
        bound = [vector for vector in self.basis if any(vector[first:])]
        if len(self.basis) < 2 or not bound:
            return None, {}
        return positive_combination(bound, _own_places(bound), range(first, len(bound[0])))

    def without(self, *kinds: Species) -> Solutions:
        """Return the solutions in which some of the free species have no part, without solving afresh.

        Parameters
        ----------
        kinds
            The species; the system that is returned does without them.
        """
        if not kinds:
            return self
        free, basis = list(self.system.free), list(self.basis)
        for kind in kinds:
            at = free.index(kind)
            del free[at]
            basis = _without_place(basis, at)
        system = LinearSystem(tuple(free), self.system.left, self.system.right, self.system.conditions)
        return Solutions(system, tuple(basis))

    def net(self, vector: Vector) -> Net:
        """Return what a vector takes up of each species; what it gives off is negative."""
        columns = self.system.columns
        first_right = len(columns) - len(self.system.right)
        numbers = [*vector[:first_right], *[-number for number in vector[first_right:]]]
        return dict(zip(columns, numbers, strict=True))

    def independent(self) -> list[Net]:
        """Return independent solutions, each as simple as can be, in which a given species may be missing."""
        if self.inner is None:
            return []
        first = len(self.system.free)
        bound = [vector for vector in self.basis if any(vector[first:])]
        unbound = [vector for vector in self.basis if vector not in bound]
        found = bound
        # if none is below zero, no other vectors are simpler, for each has a place that is zero in the others
        if any(min(vector[first:]) < 0 for vector in bound):
            found = independent_vectors(self.inner, bound, range(first, len(self.inner)))
        return [self.net(vector) for vector in (*found, *unbound)]


def _own_places(basis: list[Vector]) -> list[int]:
    """Return for each vector the place that the others leave at zero: in a null space, its last that is not zero."""
    places = []
    for vector in basis:
        at = len(vector) - 1
        while not vector[at]:
            at -= 1
        places.append(at)
    return places


def _without_place(basis: list[Vector], at: int) -> list[Vector]:
    """Return the basis of what is zero in one place, that place left out.

    The first vector that is not zero there is taken from the others, so that the rest is what `null_space` would find.
    """
    taken: Vector | None = None
    found = []
    for vector in basis:
        number = vector[at]
        if number and taken is None:
            taken, scale, sign = vector, abs(number), 1 if number > 0 else -1
            continue
        left = vector
        if number and taken is not None:
            share = sign * number
            left = primitive_whole([scale * a - share * b for a, b in zip(vector, taken, strict=True)])
        found.append(left[:at] + left[at + 1 :])
    return found
