"""Terms and equations as values: they count their atoms and charge, and never change."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd, lcm
from typing import TYPE_CHECKING, TypeAlias

from ionwright.chemistry.faults import Unbalanced

if TYPE_CHECKING:
    from collections.abc import Mapping

    from ionwright.chemistry.species import Species

__all__ = ["Equation", "Number", "Term", "simplest"]

Number: TypeAlias = "int | Fraction"


@dataclass(frozen=True, slots=True)
class Term:
    """A species with its coefficient and state symbol; the state is empty where none is given."""

    species: Species
    coefficient: Number = 1
    state: str = ""

    @property
    def ascii(self) -> str:
        """The term in canonical ASCII without its state: ``2e-``, ``1/2O2``."""
        return self.species.ascii if self.coefficient == 1 else f"{self.coefficient}{self.species.ascii}"


@dataclass(frozen=True, slots=True)
class Equation:
    """What reacts and what forms; a half-equation holds the electron among its terms."""

    left: tuple[Term, ...]
    right: tuple[Term, ...]
    _hash: int = field(init=False, repr=False, compare=False, default=0)

    def __hash__(self) -> int:
        if not self._hash:  # few equations are ever looked up, but those again and again
            object.__setattr__(self, "_hash", hash((self.left, self.right)))
        return self._hash

    def __reduce__(self) -> tuple[type[Equation], tuple[tuple[Term, ...], tuple[Term, ...]]]:
        # texts hash differently in every process, so the stored hash must not travel
        return Equation, (self.left, self.right)

    def __str__(self) -> str:
        return self.ascii

    @property
    def ascii(self) -> str:
        """The equation in canonical ASCII, without state symbols."""
        return f"{' + '.join([t.ascii for t in self.left])} -> {' + '.join([t.ascii for t in self.right])}"

    @property
    def electrons(self) -> Number:
        """Electrons that it consumes, net: positive for a reduction, negative for an oxidation."""
        taken = sum(term.coefficient for term in self.left if term.species.is_electron)
        return taken - sum(term.coefficient for term in self.right if term.species.is_electron)

    @property
    def reactants(self) -> tuple[Species, ...]:
        """The species on the left, the electron excluded."""
        return tuple(term.species for term in self.left if not term.species.is_electron)

    @property
    def products(self) -> tuple[Species, ...]:
        """The species on the right, the electron excluded."""
        return tuple(term.species for term in self.right if not term.species.is_electron)

    def imbalance(self) -> tuple[dict[str, Fraction], Fraction]:
        """Return what the left has more than the right: atoms of each element that differs, and charge."""
        atoms, charge = self._surplus()
        return {symbol: Fraction(count) for symbol, count in atoms.items() if count}, Fraction(charge)

    def _surplus(self) -> tuple[dict[str, Number], Number]:
        atoms: dict[str, Number] = {}
        charge: Number = 0
        for side, sign in ((self.left, 1), (self.right, -1)):
            for term in side:
                times = sign * term.coefficient
                charge += times * term.species.charge
                for symbol, count in term.species.atoms:
                    atoms[symbol] = atoms.get(symbol, 0) + times * count
        return atoms, charge

    @property
    def is_balanced(self) -> bool:
        """True if atoms of every element and charge agree on both sides."""
        atoms, charge = self._surplus()
        return not charge and not any(atoms.values())

    def check(self) -> None:
        """Refuse an equation that does not balance.

        Raises
        ------
        Unbalanced
            ``unbalanced``, with what differs and by how much.
        """
        atoms, charge = self.imbalance()
        if atoms or charge:
            more = [
                f"{abs(n)} {symbol} more on the {'left' if n > 0 else 'right'}" for symbol, n in atoms.items()
            ]
            if charge:
                more.append(f"the charge on the left is {abs(charge)} {'higher' if charge > 0 else 'lower'}")
            detail = f"{self.ascii} does not balance: {', '.join(more)}."
            raise Unbalanced("unbalanced", detail, remedy="Make atoms and charge agree on both sides.")

    def reversed(self) -> Equation:
        """Return the equation read backwards."""
        return Equation(self.right, self.left)

    def scaled(self, factor: Number) -> Equation:
        """Return the equation with every coefficient multiplied.

        Parameters
        ----------
        factor
            Above zero.
        """
        return self if factor == 1 else Equation(_scaled(self.left, factor), _scaled(self.right, factor))

    def in_lowest_terms(self) -> Equation:
        """Return the equation with the smallest whole coefficients."""
        fractions = [Fraction(term.coefficient) for term in (*self.left, *self.right)]
        whole = lcm(*(number.denominator for number in fractions))
        common = gcd(*(int(number * whole) for number in fractions))
        return self.scaled(Fraction(whole, common or 1))

    def without_states(self) -> Equation:
        """Return the equation with no state symbols."""
        return self.with_states({})

    def with_states(self, states: Mapping[str, str]) -> Equation:
        """Return the equation with these state symbols and no others.

        Parameters
        ----------
        states
            State symbol by the canonical ASCII of a species; species not named carry none.
        """
        left, right = (
            tuple(Term(term.species, term.coefficient, states.get(term.species.ascii, "")) for term in side)
            for side in (self.left, self.right)
        )
        return Equation(left, right)


def _scaled(side: tuple[Term, ...], factor: Number) -> tuple[Term, ...]:
    return tuple(Term(term.species, simplest(term.coefficient * factor), term.state) for term in side)


def simplest(number: Number) -> Number:
    """Return a whole number as an int, any other as it is."""
    return int(number) if number.denominator == 1 else number
