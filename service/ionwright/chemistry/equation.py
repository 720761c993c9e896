"""Equations and half-equations: made from canonical ASCII, read from what people type, and combined."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import islice, product
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.combination import Combined, combine
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH, STATES, WrittenTerm, written_equations
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.species import ELECTRON, Species, species
from ionwright.chemistry.stoichiometry import Equation, Number, Term, simplest

if TYPE_CHECKING:
    from collections.abc import Container, Iterable, Iterator, Mapping

    Sides = tuple[Container[Species], Container[Species]]

__all__ = [
    "STATES",
    "Combined",
    "Equation",
    "Number",
    "PlacedEquation",
    "PlacedTerm",
    "Term",
    "combine",
    "equation",
    "read_equation",
    "read_placed",
    "simplest",
]

_MOST_READINGS: Final = 64


# ------------------------------------------------------------------ canonical ASCII


def equation(ascii: str, states: Mapping[str, str] | None = None) -> Equation:  # noqa: A002 - says which spelling
    """Return the equation with this canonical ASCII spelling; for tables and code, so nothing is guessed.

    Parameters
    ----------
    ascii
        Such as ``"Ni^2+ + 2e- -> Ni"``, with or without state symbols.
    states
        State symbol by the canonical ASCII of a species; takes the place of those in the text.

    Raises
    ------
    FormulaError
        If the text is not canonical.
    """
    return _canonical(ascii) if states is None else _canonical_with_states(ascii, tuple(states.items()))


@lru_cache(maxsize=2048)
def _canonical_with_states(text: str, states: tuple[tuple[str, str], ...]) -> Equation:
    return _canonical(text).with_states(dict(states))


@lru_cache(maxsize=2048)
def _canonical(text: str) -> Equation:
    left, arrow, right = text.partition(" -> ")
    if not arrow or len(text) > MAX_EQUATION_LENGTH:
        detail, remedy = "This is no equation in canonical ASCII.", "Write Ni^2+ + 2e- -> Ni."
        raise FormulaError("unreadable-formula", detail, position=0, remedy=remedy)
    return Equation(
        tuple(map(_canonical_term, left.split(" + "))), tuple(map(_canonical_term, right.split(" + ")))
    )


def _canonical_term(text: str) -> Term:
    formula = text.lstrip("0123456789/")
    number = text[: len(text) - len(formula)]
    state = ""
    if formula.endswith((*(f"({symbol})" for symbol in STATES),)):
        formula, _, state = formula[:-1].rpartition("(")
    try:
        coefficient = simplest(Fraction(number or "1"))
    except (ValueError, ZeroDivisionError):
        coefficient = 0
    if coefficient <= 0:
        detail = f"The number in front of {formula} cannot be read."
        raise FormulaError("unreadable-formula", detail, position=0, remedy="Write 2e- or 1/2O2.")
    return Term(species(formula), coefficient, state)


# ------------------------------------------------------------------ what people type


def read_equation(text: str, known: Container[Species] = ()) -> Equation:
    """Return the equation that a text spells, in any of the spellings that people use.

    Parameters
    ----------
    text
        At most 500 characters; any usual arrow; electrons may be subtracted (``2Cl- - 2e- -> Cl2``) and then
        stand on the other side in the result.
    known
        Species to be expected. Where a formula can be read in several ways, known readings win; among those
        left, the ones that make the equation balance; then the likeliest.

    Returns
    -------
    Equation
        It need not balance: `Equation.check` says so.

    Raises
    ------
    FormulaError
        ``unreadable-formula`` or ``unknown-element``, with the position in the text as given and a remedy.

    Example
    -------
    >>> read_equation("2Cl- − 2e⁻ = Cl2").ascii
    '2Cl^- -> Cl2 + 2e-'
    """
    return read_placed(text, known).equation


class PlacedTerm(NamedTuple):
    """What one written term was taken to mean, and where it stands in the text as given.

    Parameters
    ----------
    species
        The reading that was chosen.
    start, end
        Extent in the text, coefficient and state symbol included.
    is_left
        Whether it was written on the left of the arrow.
    is_subtracted
        Whether it was taken away rather than added.
    state
        Its state symbol; empty if it carries none.
    """

    species: Species
    start: int
    end: int
    is_left: bool
    is_subtracted: bool
    state: str


@dataclass(frozen=True, slots=True)
class PlacedEquation:
    """An equation as it was read, with the place of each written term in the order of writing."""

    equation: Equation
    terms: tuple[PlacedTerm, ...]


def read_placed(
    text: str,
    known: Container[Species] = (),
    next_known: Container[Species] = (),
    sides: Sides | None = None,
) -> PlacedEquation:
    """Return what `read_equation` returns, with the place of every term.

    Parameters
    ----------
    text, known
        As for `read_equation`.
    next_known
        Species to be preferred where a formula has no reading among those expected.
    sides
        What is expected on the left and on the right: where nothing balances, it settles between readings
        that are all known.

    Raises
    ------
    FormulaError
        As `read_equation`.
    """
    fallback: PlacedEquation | None = None
    fallback_known = False
    for left, right in written_equations(text):
        first, balanced, all_known = _chosen(left, right, known, next_known, sides)
        if balanced:
            return first
        if fallback is None or (all_known and not fallback_known):
            fallback, fallback_known = first, all_known
    if fallback is None:  # written_equations raises where it yields nothing
        raise FormulaError("unreadable-formula", "This equation cannot be read.", position=0)
    return fallback


def _chosen(
    left: tuple[WrittenTerm, ...],
    right: tuple[WrittenTerm, ...],
    known: Container[Species],
    next_known: Container[Species],
    sides: Sides | None,
) -> tuple[PlacedEquation, bool, bool]:
    """Return the best choice of readings, whether it balances, and whether every term is known."""
    written = (*left, *right)
    options = []
    all_known = True
    for term in written:
        found = tuple(reading for reading in term.readings if reading in known)
        if not found:
            all_known = all_known and term.readings[0].is_electron
            found = tuple(reading for reading in term.readings if reading in next_known)
        options.append(found or term.readings)
    if all(len(option) == 1 for option in options):
        only = _read_as(written, [option[0] for option in options], len(left))
        return only, only.equation.is_balanced, all_known
    first: PlacedEquation | None = None
    for keys in _ways_to_share(options, len(left)):
        distinct = dict.fromkeys(keys)
        for choice in islice(product(*(option for option, _ in distinct)), _MOST_READINGS):
            meaning = dict(zip(distinct, choice, strict=True))
            candidate = _read_as(written, [meaning[key] for key in keys], len(left))
            if candidate.equation.is_balanced:
                return candidate, True, all_known
            first = first or candidate
    assert first is not None  # noqa: S101 - every term has a reading, so there is at least one choice
    if sides and all(len(option) == 1 or option[0] in known for option in options):
        first = _likeliest(written, options, len(left), sides)
    return first, False, all_known


def _likeliest(
    written: tuple[WrittenTerm, ...], options: list[tuple[Species, ...]], on_left: int, sides: Sides
) -> PlacedEquation:
    """The reading whose atoms agree, whatever its charge; then the one with most species on their side."""

    def rank(candidate: PlacedEquation) -> tuple[bool, int]:
        atoms, _ = candidate.equation.imbalance()
        return bool(atoms), sum(term.species not in sides[not term.is_left] for term in candidate.terms)

    choices = islice(product(*options), _MOST_READINGS)
    return min((_read_as(written, list(choice), on_left) for choice in choices), key=rank)


Option = tuple[tuple[Species, ...], bool]


def _ways_to_share(options: list[tuple[Species, ...]], on_left: int) -> Iterator[list[Option]]:
    """Yield the terms as what has to be read alike: what is written alike; then what is so on one side only.

    ``VO2+`` may stand for VO^2+ on one side and for VO2^+ on the other.
    """
    yield [(option, True) for option in options]
    both = {option for option in options[:on_left] if len(option) > 1}.intersection(options[on_left:])
    if both:
        yield [(option, index < on_left) for index, option in enumerate(options)]


def _read_as(written: tuple[WrittenTerm, ...], readings: list[Species], on_left: int) -> PlacedEquation:
    terms = [
        PlacedTerm(reading, term.position, term.end, index < on_left, term.is_subtracted, term.state)
        for index, (term, reading) in enumerate(zip(written, readings, strict=True))
    ]
    return PlacedEquation(_assembled(zip(written, readings, strict=True), on_left), tuple(terms))


def _assembled(chosen: Iterable[tuple[WrittenTerm, Species]], on_left: int) -> Equation:
    """Make the equation, each subtracted electron moved to the other side."""
    sides: tuple[list[Term], list[Term]] = [], []
    moved: tuple[list[Term], list[Term]] = [], []
    for index, (term, reading) in enumerate(chosen):
        side = index >= on_left
        if term.is_subtracted:
            moved[not side].append(Term(ELECTRON, term.coefficient))
        else:
            sides[side].append(Term(reading, term.coefficient, term.state))
    return Equation(_with_electrons(sides[0], moved[0]), _with_electrons(sides[1], moved[1]))


def _with_electrons(side: list[Term], moved: list[Term]) -> tuple[Term, ...]:
    """Join the electrons that were moved here to those that stand here already."""
    if not moved:
        return tuple(side)
    number = sum(term.coefficient for term in (*side, *moved) if term.species.is_electron)
    return (*(term for term in side if not term.species.is_electron), Term(ELECTRON, simplest(number)))
