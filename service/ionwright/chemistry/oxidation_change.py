"""Oxidation numbers on both sides of an equation, and which atoms change theirs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, TypeAlias

from ionwright.chemistry.oxidation_number import oxidation_numbers

if TYPE_CHECKING:
    from ionwright.chemistry.oxidation_number import OxidationNumber
    from ionwright.chemistry.species import Species
    from ionwright.chemistry.stoichiometry import Equation

__all__ = ["NumberInEquation", "changes_of", "numbers_in", "rises_in"]


@dataclass(frozen=True, slots=True)
class NumberInEquation:
    """An oxidation number in a species of an equation.

    Parameters
    ----------
    species, side
        Where it stands; the side is ``"left"`` or ``"right"``.
    number
        Element, value, number of atoms.
    changes
        True if atoms with this number have another one on the other side; None if that cannot be told.
    """

    species: Species
    side: str
    number: OxidationNumber
    changes: bool | None


def numbers_in(equation: Equation) -> tuple[NumberInEquation, ...]:
    """Return the oxidation number of every element in every species, in the order of the equation.

    Parameters
    ----------
    equation
        Balanced; atoms of an element and number of which one side has more than the other are those that change.
    """
    sides = ((equation.left, "left", 1), (equation.right, "right", -1))
    surplus: dict[State, int | Fraction] = {}
    unsure = set()
    for terms, _, sign in sides:
        for term in terms:
            for number, states in _numbers_with_states(term.species):
                if number.value is None:
                    unsure.add(number.element)
                for state, atoms in states:
                    surplus[state] = surplus.get(state, 0) + sign * term.coefficient * atoms
    return tuple(
        [
            NumberInEquation(
                term.species,
                side,
                number,
                None if number.element in unsure else any(sign * surplus[state] > 0 for state, _ in states),
            )
            for terms, side, sign in sides
            for term in terms
            for number, states in _numbers_with_states(term.species)
        ]
    )


State: TypeAlias = "tuple[str, int, int]"


@lru_cache(maxsize=2048)
def _numbers_with_states(kind: Species) -> tuple[tuple[OxidationNumber, tuple[tuple[State, int], ...]], ...]:
    """Return the numbers in a species, each with the states of its atoms: element, value as a fraction, atoms."""
    return tuple((number, _states(number)) for number in oxidation_numbers(kind))


def _states(number: OxidationNumber) -> tuple[tuple[State, int], ...]:
    if number.value is None:
        return ()
    if number.states:
        return tuple(((number.element, value, 1), atoms) for value, atoms in number.states)
    return (((number.element, number.value.numerator, number.value.denominator), number.atoms),)


def changes_of(numbers: tuple[NumberInEquation, ...]) -> bool | None:
    """Say whether any oxidation number changes; None if none is seen to and some cannot be told."""
    if any(number.changes for number in numbers):
        return True
    return None if any(number.changes is None for number in numbers) else False


def rises_in(equation: Equation) -> dict[str, Fraction]:
    """Return by how much the oxidation numbers of each element rise in sum; below zero if they fall.

    Parameters
    ----------
    equation
        Balanced. Elements of which a number is undecided are left out.
    """
    rises: dict[str, Fraction] = {}
    unsure = set()
    for terms, sign in ((equation.left, -1), (equation.right, 1)):
        for term in terms:
            for number in oxidation_numbers(term.species):
                if number.value is None:
                    unsure.add(number.element)
                    continue
                change = sign * term.coefficient * number.atoms * number.value
                rises[number.element] = rises.get(number.element, Fraction(0)) + change
    return {element: rise for element, rise in rises.items() if rise and element not in unsure}
