"""Add two half-equations so that the electrons cancel."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.species import species
from ionwright.chemistry.stoichiometry import Equation, Number, Term, simplest

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species

__all__ = ["Combined", "combine"]

_HYDROGEN_ION: Final = species("H^+")
_HYDROXIDE: Final = species("OH^-")
_WATER: Final = species("H2O")


@dataclass(frozen=True, slots=True)
class Combined:
    """An overall equation and how it came about.

    Parameters
    ----------
    overall
        In lowest whole numbers, without electrons.
    reduction_multiplier, oxidation_multiplier
        What each half-equation was multiplied by.
    electrons
        How many cancelled, after multiplying.
    is_transfer
        True if nothing but a movement from anode to cathode is left, as in copper refining; `overall` then
        shows what leaves the anode on both sides (``Cu -> Cu``).
    """

    overall: Equation
    reduction_multiplier: int
    oxidation_multiplier: int
    electrons: int
    is_transfer: bool = False


def combine(reduction: Equation, oxidation: Equation, *, join_water: bool = False) -> Combined:
    """Return the sum of two half-equations, multiplied to equal electrons, what is common cancelled.

    Parameters
    ----------
    reduction
        Consumes electrons; fractions are allowed as coefficients.
    oxidation
        Releases electrons.
    join_water
        Whether H^+ and OH^- that meet on one side become water before cancelling; not if nothing else happens.

    Raises
    ------
    CellRefused
        If the first is no reduction or the second no oxidation.
    Unbalanced
        If one of them does not balance.

    Example
    -------
    >>> from ionwright.chemistry.equation import combine, equation
    >>> combine(equation("Ag^+ + e- -> Ag"), equation("Cu -> Cu^2+ + 2e-")).overall.ascii
    '2Ag^+ + Cu -> 2Ag + Cu^2+'
    """
    gained, lost = Fraction(reduction.electrons), -Fraction(oxidation.electrons)
    _refuse_same_kind(gained, lost)
    reduction.check()
    oxidation.check()
    first, second = (lost / gained).as_integer_ratio()
    left = _multiplied(reduction.left, first) + _multiplied(oxidation.left, second)
    right = _multiplied(reduction.right, first) + _multiplied(oxidation.right, second)
    joined = _cancelled(_with_water(left), _with_water(right)) if join_water else ([], [])
    # where the whole process is H^+ + OH^- -> H2O, joining would leave nothing of it
    left, right = joined if joined[0] or joined[1] else _cancelled(left, right)
    if is_transfer := not left and not right:
        left = right = [term for term in oxidation.left if not term.species.is_electron]
    # the multipliers grow with the equation where half a molecule is left over
    whole = lcm(*(Fraction(number).denominator for number in (gained * first, *_coefficients(left, right))))
    return Combined(
        overall=Equation(tuple(left), tuple(right)).in_lowest_terms(),
        reduction_multiplier=first * whole,
        oxidation_multiplier=second * whole,
        electrons=int(gained * first * whole),
        is_transfer=is_transfer,
    )


def _refuse_same_kind(gained: Fraction, lost: Fraction) -> None:
    """Refuse two half-equations of one kind, which no cell can have at its two electrodes."""
    remedy = "Give one that takes electrons up and one that releases them."
    if not gained or not lost:
        raise CellRefused("no-electrons", "A half-equation without electrons moves no charge.", remedy=remedy)
    if gained < 0 and lost < 0:
        raise CellRefused("wrong-way-round", "The two half-equations are exchanged.", remedy="Exchange them.")
    if lost < 0:
        raise CellRefused("both-reductions", "Both half-equations take electrons up.", remedy=remedy)
    if gained < 0:
        raise CellRefused("both-oxidations", "Both half-equations release electrons.", remedy=remedy)


def _multiplied(side: tuple[Term, ...], factor: int) -> list[Term]:
    return [
        Term(term.species, simplest(term.coefficient * factor), term.state)
        for term in side
        if not term.species.is_electron
    ]


def _coefficients(left: list[Term], right: list[Term]) -> list[Number]:
    return [term.coefficient for term in (*left, *right)]


def _with_water(side: list[Term]) -> list[Term]:
    """Turn the hydrogen and hydroxide ions of one side into water, as far as they go."""
    count = {_HYDROGEN_ION: Fraction(0), _HYDROXIDE: Fraction(0)}
    for term in side:
        if term.species in count:
            count[term.species] += term.coefficient
    water = min(count.values())
    if not water:
        return side
    has_states = any(term.state for term in side)
    joined = [term for term in side if term.species not in count]
    joined += [
        Term(ion, simplest(number - water), "aq" if has_states else "")
        for ion, number in count.items()
        if number > water
    ]
    return [Term(_WATER, simplest(water), "l" if has_states else ""), *joined]


def _cancelled(left: list[Term], right: list[Term]) -> tuple[list[Term], list[Term]]:
    """Collect equal terms on each side and take away what both sides hold."""
    state_of: dict[Species, str] = {}
    for term in (*left, *right):
        state_of[term.species] = state_of.get(term.species) or term.state
    net: dict[tuple[Species, str], Number] = {}
    for side, sign in ((left, 1), (right, -1)):
        for term in side:
            key = term.species, term.state or state_of[term.species]
            net[key] = net.get(key, 0) + sign * term.coefficient
    return (
        [Term(found, simplest(number), state) for (found, state), number in net.items() if number > 0],
        [Term(found, simplest(-number), state) for (found, state), number in net.items() if number < 0],
    )
