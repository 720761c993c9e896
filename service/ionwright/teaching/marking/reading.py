"""Reads a student's line in the student's favour, or says where reading stopped."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, partial
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.equation import PlacedEquation, PlacedTerm, read_placed
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.substance import SUBSTANCES
from ionwright.teaching.marking.line import HYDROXIDE
from ionwright.teaching.marking.slips import (
    Slip,
    may_be_slips,
    mended,
    typed,
    with_plus_between,
    with_right_electrons,
    with_signless_charges,
)

if TYPE_CHECKING:
    from collections.abc import Callable
    from collections.abc import Set as AbstractSet

    from ionwright.chemistry.equation import Equation
    from ionwright.teaching.marking.expectation import Expectation

    Reader = Callable[[str], PlacedEquation]

__all__ = ["Reading", "Unreadable", "read_answer"]

_DOUBLE_ARROWS: Final = frozenset("⇌⇋⇄⇆⇔⟷↔⥂⥄⥤")
_NAME: Final = re.compile(r"[A-Za-z]?[a-z]{4,}")
_SYMBOL: Final = re.compile(r"[A-Z][a-z]?")
_ISOTOPES: Final = frozenset("DT")
EQUALS: Final = "="
EQUILIBRIUM: Final = "⇌"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a line says.

    Parameters
    ----------
    equation
        Electrons that were subtracted stand on the other side.
    terms
        Every written term with its place.
    slips
        What was mended on the way.
    odd_electrons
        Places of electrons that were written with another charge than one minus.
    arrow
        ``"="``, ``"⇌"`` or ``"→"``.
    arrow_at
        Where the arrow stands.
    has_bare_electron
        Place of an electron without its sign; None if all carry it.
    """

    equation: Equation
    terms: tuple[PlacedTerm, ...]
    slips: tuple[Slip, ...]
    odd_electrons: tuple[tuple[int, int], ...]
    arrow: str
    arrow_at: tuple[int, int]
    has_bare_electron: tuple[int, int] | None

    @property
    def whole(self) -> tuple[int, int]:
        """Extent of the line."""
        return self.terms[0].start, self.terms[-1].end

    def place(self, side: str, about: Species | None) -> tuple[int, int]:
        """Extent of a species on a side, or of the line if it does not stand there."""
        for term in self.terms:
            if term.species == about and (not side or term.is_left == (side == "left")):
                return term.start, term.end
        return self.whole

    def side_place(self, side: str) -> tuple[int, int]:
        """Extent of a side."""
        terms = [term for term in self.terms if term.is_left == (side == "left")]
        return terms[0].start, terms[-1].end

    def electron_place(self) -> tuple[int, int]:
        """Extent of the first electron, or of the line if there is none."""
        return next(((t.start, t.end) for t in self.terms if t.species.is_electron), self.whole)


@dataclass(frozen=True, slots=True)
class Unreadable:
    """Why a line cannot be read, and where reading stopped."""

    detail: str
    remedy: str
    at: tuple[int, int]


def read_answer(text: str, expectation: Expectation) -> Reading | Unreadable:
    """Read a student's line.

    Parameters
    ----------
    text
        Whatever was typed.
    expectation
        What the question is about: where a text can be read in several ways, its species win, then species of
        the tables, then whatever balances; and where nothing does, what stands on that side of a right line.
    """
    if not text.strip():
        return Unreadable("Nothing is written here.", "Write what reacts -> what forms.", (0, len(text)))
    if len(text) > MAX_EQUATION_LENGTH:
        detail = f"A line of {len(text)} characters is too long for a half-equation."
        return Unreadable(detail, "Write one half-equation.", (MAX_EQUATION_LENGTH, len(text)))
    plain, pluses = with_right_electrons(typed(text))
    expected = expectation.known
    read = partial(read_placed, known=expected, next_known=_tabled(), sides=expectation.sides)
    try:
        placed, fault = read(plain), None
    except FormulaError as found:
        placed, fault = None, found
    slips: list[Slip] = []
    unknown = _unknown(placed, expected)
    is_odd = unknown and ("1" in plain or may_be_slips(unknown, expected))
    if unknown is None or is_odd or _has_zero_for_letter(plain, expected):
        plain, placed, slips = _mended(plain, placed, expected, read)
        unknown = _unknown(placed, expected)
    if (unknown is None or unknown) and (joined := _with_missing_plus(plain, expected, read)):
        placed, slips = joined[0], [*slips, joined[1]]
    if placed is None and (signless := with_signless_charges(plain)) != plain:
        placed = _reading_or_none(signless, read)
    if placed is None:
        return _unreadable(text, fault)
    return _reading(text, plain, placed, tuple(slips), tuple(pluses))


def _has_zero_for_letter(plain: str, expected: AbstractSet[Species]) -> bool:
    """Whether hydride ions that the question has no room for look like hydroxide: 20H- for 2OH-."""
    return (
        "0H" in plain
        and HYDROXIDE in expected
        and not any(kind.formula == "H" and kind.charge < 0 for kind in expected)
    )


def _mended(
    plain: str, placed: PlacedEquation | None, expected: AbstractSet[Species], read: Reader
) -> tuple[str, PlacedEquation | None, list[Slip]]:
    """Mend the slips of a text; where that leads to no reading, the text and its reading stay what they are."""
    better, slips = mended(plain, expected)
    again = _reading_or_none(better, read) if slips else None
    return (better, again, slips) if again else (plain, placed, [])


def _reading_or_none(plain: str, read: Reader) -> PlacedEquation | None:
    try:
        return read(plain)
    except FormulaError:
        return None


def _unknown(placed: PlacedEquation | None, expected: AbstractSet[Species]) -> list[str] | None:
    """Formulas of the species that nobody knows; None if there is no reading at all."""
    if placed is None:
        return None
    return [
        term.species.formula
        for term in placed.terms
        if term.species not in expected and term.species not in _tabled() and not term.species.is_electron
    ]


@cache
def _tabled() -> frozenset[Species]:
    return frozenset((*IONS, *(species(formula) for formula in SUBSTANCES)))


def _with_missing_plus(
    plain: str, expected: AbstractSet[Species], read: Reader
) -> tuple[PlacedEquation, Slip] | None:
    """Read a line in which the plus of an ion's charge was taken for the one between two terms."""
    joined, at = with_plus_between(plain)
    placed = _reading_or_none(joined, read) if at is not None else None
    if placed is None or at is None or _unknown(placed, expected):
        return None

    def moved(place: int) -> int:
        return place if place <= at else max(at, place - 2)

    terms = tuple(term._replace(start=moved(term.start), end=moved(term.end)) for term in placed.terms)
    return PlacedEquation(placed.equation, terms), Slip((at - 2, at), plain[at - 2 : at], "+ +")


def _reading(
    text: str,
    plain: str,
    placed: PlacedEquation,
    slips: tuple[Slip, ...],
    pluses: tuple[tuple[int, int], ...],
) -> Reading:
    terms = placed.terms
    start = max(term.end for term in terms if term.is_left)
    end = min(term.start for term in terms if not term.is_left)
    between = text[start:end]
    if "⇌" in between or "<" in plain[start:end] or any(mark in _DOUBLE_ARROWS for mark in between):
        arrow = EQUILIBRIUM
    else:
        arrow = EQUALS if "=" in plain[start:end] and ">" not in plain[start:end] else "→"
    bare = next(
        (
            (term.start, term.end)
            for term in terms
            if term.species.is_electron and plain[term.start : term.end].rstrip(" )").endswith(("e", "E"))
        ),
        None,
    )
    return Reading(placed.equation, terms, slips, pluses, arrow, (start, end), bare)


def _unreadable(text: str, fault: FormulaError | None) -> Unreadable:
    position = fault.position if fault and fault.position is not None else 0
    start = min(position, max(len(text) - 1, 0))
    at = start, min(start + 1, len(text))
    if fault is None:
        return Unreadable("This line cannot be read.", "", at)
    return Unreadable(*_told_of(text, start, fault), at)


def _told_of(text: str, at: int, fault: FormulaError) -> tuple[str, str]:
    """What stops the reading of a line and what to do, in words for someone who writes half-equations."""
    if "arrow" not in fault.detail and any(
        found.start() <= at < found.end() for found in _NAME.finditer(text)
    ):
        return "This is a name.", "Write formulas and charges instead of names."
    symbol = _SYMBOL.match(text, at)
    if fault.code == "unknown-element" and symbol and symbol[0] not in _ISOTOPES:
        return f"There is no element {symbol[0]}.", "Check the symbol."
    if "is no part of a formula" in fault.detail:
        return f"The sign {text[at]} cannot be part of a formula: leave it out.", ""
    return fault.detail, fault.remedy
