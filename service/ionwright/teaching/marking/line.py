"""A half-equation as amounts on two sides, which is what lines are compared by."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.species import species

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

    from ionwright.chemistry.equation import Equation, Number, Term
    from ionwright.chemistry.species import Species

Amounts = dict["Species", "Number"]

WATER: Final = species("H2O")
HYDROGEN_ION: Final = species("H^+")
HYDRONIUM: Final = species("H3O^+")
HYDROXIDE: Final = species("OH^-")
AIDS: Final = frozenset((WATER, HYDROGEN_ION, HYDRONIUM, HYDROXIDE))
"""What the medium lends to a half-equation; it names no process unless nothing else stands beside it."""

DIATOMIC: Final = frozenset(("H", "N", "O", "F", "Cl", "Br", "I"))
"""The elements whose molecules are pairs of atoms."""


@dataclass(frozen=True, slots=True)
class Line:
    """What stands on the two sides of a half-equation.

    Parameters
    ----------
    left, right
        Amounts by species, without the electrons.
    taken, released
        Electrons on the left and on the right.
    left_formulas, right_formulas
        What stands there without its charge; single atoms that pair stand for their molecule too.
    unbalanced_elements
        Symbols of the elements of which the two sides hold different numbers.
    charge_difference
        Charge of the left minus charge of the right, electrons included.
    """

    left: Mapping[Species, Number]
    right: Mapping[Species, Number]
    taken: Number
    released: Number
    left_formulas: frozenset[str] = field(init=False, compare=False)
    right_formulas: frozenset[str] = field(init=False, compare=False)
    unbalanced_elements: tuple[str, ...] = field(init=False, compare=False)
    charge_difference: Number = field(init=False, compare=False)

    def __post_init__(self) -> None:
        atoms: dict[str, Number] = {}
        charge: Number = self.released - self.taken
        for amounts, sign in ((self.left, 1), (self.right, -1)):
            for kind, amount in amounts.items():
                charge += sign * amount * kind.charge
                for symbol, count in kind.atoms:
                    atoms[symbol] = atoms.get(symbol, 0) + sign * amount * count
        unbalanced = tuple(symbol for symbol, count in atoms.items() if count)
        object.__setattr__(self, "unbalanced_elements", unbalanced)
        object.__setattr__(self, "charge_difference", charge)
        object.__setattr__(self, "left_formulas", formulas(self.left))
        object.__setattr__(self, "right_formulas", formulas(self.right))

    @property
    def electrons(self) -> Number:
        """Electrons consumed, net; negative if they are released."""
        return self.taken - self.released

    @property
    def has_electrons(self) -> bool:
        """Whether any electron was written."""
        return bool(self.taken or self.released)

    @property
    def is_balanced(self) -> bool:
        """Whether atoms and charge agree."""
        return not self.charge_difference and not self.unbalanced_elements


def line_of(equation: Equation) -> Line:
    """The amounts of an equation; what is written twice on a side is added up."""
    left, taken = _amounts(equation.left)
    right, released = _amounts(equation.right)
    return Line(left, right, taken, released)


def _amounts(terms: tuple[Term, ...]) -> tuple[Amounts, Number]:
    amounts: Amounts = {}
    electrons: Number = 0
    for term in terms:
        if term.species.is_electron:
            electrons += term.coefficient
        else:
            amounts[term.species] = amounts.get(term.species, 0) + term.coefficient
    return amounts, electrons


def formulas(kinds: Collection[Species]) -> frozenset[str]:
    """Formulas without charges; single atoms that pair stand for their molecule too."""
    found = {kind.formula for kind in kinds}
    found.update([f"{symbol}2" for symbol in found & DIATOMIC])
    return frozenset(found)


def naming(amounts: Mapping[Species, Number]) -> frozenset[Species]:
    """The species that name the process on one side: all but those that the medium lends."""
    return frozenset(kind for kind in amounts if kind not in AIDS) or frozenset(amounts)


def is_multiple(line: Line, of: Line) -> bool:
    """Whether a line is another one multiplied by some number above zero."""
    if line.left.keys() != of.left.keys() or line.right.keys() != of.right.keys():
        return False
    times, over = next(((line.left[kind], number) for kind, number in of.left.items()), (1, 1))
    return (
        line.taken * over == of.taken * times
        and line.released * over == of.released * times
        and all(line.left[kind] * over == number * times for kind, number in of.left.items())
        and all(line.right[kind] * over == number * times for kind, number in of.right.items())
    )
