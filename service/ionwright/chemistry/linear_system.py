"""The conservation of atoms and charge for a set of species, as a system of linear equations, and its solutions."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ionwright.chemistry.null_space import null_space
from ionwright.chemistry.positive_combination import (
    independent_vectors,
    own_place,
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
        first = len(self.free)
        positive = range(first, len(columns))
        rows = list(self.rows().values())
        rows.extend([condition.get(kind, 0) for kind in columns] for condition in self.conditions)
        basis = null_space(rows, len(columns))
        if len(basis) == 1:
            (vector,) = basis
            if all(vector[at] > 0 for at in positive):
                return Solutions(self, (vector,), vector)
        # a vector of free species alone, such as H2O -> H^+ + OH^-, says nothing about the others
        bound = [vector for vector in basis if any(vector[at] for at in positive)]
        if len(basis) < 2 or not bound:
            return Solutions(self, tuple(basis), None)
        own = [own_place(vector, bound) for vector in bound]
        inner, refutation = positive_combination(bound, own, positive)
        return Solutions(self, tuple(basis), inner, refutation)


@dataclass(frozen=True, slots=True)
class Solutions:
    """What a system allows.

    Parameters
    ----------
    system
        The system.
    basis
        Independent vectors that span all numbers which keep atoms and charge, whatever their signs.
    inner
        A solution; None if there is none.
    refutation
        Where there are several vectors and no solution: weights above zero for places of the vector, whose
        weighted sum is zero.
    """

    system: LinearSystem
    basis: tuple[Vector, ...]
    inner: Vector | None
    refutation: dict[int, int] = field(default_factory=dict)

    @property
    def are_several(self) -> bool:
        """True if there are solutions that are no multiples of each other."""
        return self.inner is not None and len(self.basis) > 1

    @property
    def only(self) -> Net | None:
        """The solution in smallest whole numbers, if it is the only one."""
        return self.net(self.inner) if self.inner is not None and len(self.basis) == 1 else None

    def without(self, kind: Species) -> Solutions | None:
        """Return the solutions in which a free species has no part; None where that is not seen from these.

        Two vectors of which at least one holds the species leave exactly one.
        """
        if len(self.basis) != 2:
            return None
        at = self.system.free.index(kind)
        first, second = self.basis
        if not first[at] and not second[at]:
            return None
        vector = primitive_whole([second[at] * a - first[at] * b for a, b in zip(first, second, strict=True)])
        own = vector[len(self.system.free) :]
        if max(own) <= 0:
            vector, own = tuple([-number for number in vector]), tuple([-number for number in own])
        return Solutions(self.system, (vector,), vector if min(own) > 0 else None)

    def net(self, vector: Vector) -> Net:
        """Return what a vector takes up of each species; what it gives off is negative."""
        columns = self.system.columns
        first_right = len(columns) - len(self.system.right)
        return {
            kind: number if at < first_right else -number
            for at, (kind, number) in enumerate(zip(columns, vector, strict=True))
        }

    def independent(self) -> list[Net]:
        """Return independent solutions, each as simple as can be, in which a given species may be missing."""
        if self.inner is None:
            return []
        positive = range(len(self.system.free), len(self.system.columns))
        bound = [vector for vector in self.basis if any(vector[at] for at in positive)]
        unbound = [vector for vector in self.basis if vector not in bound]
        found = independent_vectors(self.inner, bound, positive) if bound else []
        return [self.net(vector) for vector in (*found, *unbound)]
