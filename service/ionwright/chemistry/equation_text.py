"""Take the text of an equation apart: arrow, joiners, coefficients, states, and what each formula can mean.

Plus and minus serve twice, as charges and between terms. A sign joins if a term begins behind it; it is a
charge at the end of a side, before another sign, before a state symbol, and before a lone number (``Ni+2``).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.characters import SUPERSCRIPT_SIGNS, folded
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.species import scan_species

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.chemistry.species import Species

__all__ = [
    "MAX_COEFFICIENT",
    "MAX_EQUATION_LENGTH",
    "MAX_TERMS",
    "STATES",
    "WrittenTerm",
    "written_equations",
]

STATES: Final = ("s", "l", "g", "aq")
"""The state symbols: solid, liquid, gas, dissolved in water."""
MAX_EQUATION_LENGTH: Final = 500
"""Longest equation that is read, in characters."""
MAX_TERMS: Final = 24
"""Most terms on one side."""
MAX_COEFFICIENT: Final = 99_999
"""Largest coefficient, numerator or denominator."""

_FRACTIONS: Final = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
_BACK_ARROW: Final = re.compile(r"<-+|[←⟵⇐]")
_DIGITS: Final = "0123456789"
_SIGNS: Final = "+-" + SUPERSCRIPT_SIGNS
_ESCAPES: Final = {"↑": "g", "↓": "s"}


@dataclass(frozen=True, slots=True)
class WrittenTerm:
    """One term as written: what it can mean, and where it begins and ends in the text as given."""

    readings: tuple[Species, ...]
    coefficient: int | Fraction
    state: str
    position: int
    is_subtracted: bool = False
    end: int = 0


Sides = tuple[tuple[WrittenTerm, ...], tuple[WrittenTerm, ...]]


def _fault(detail: str, position: int, remedy: str) -> FormulaError:
    return FormulaError("unreadable-formula", detail, position=position, remedy=remedy)


def written_equations(text: str) -> Iterator[Sides]:
    """Yield the ways to take an equation apart, likeliest first; several if a dash touches the arrow.

    Parameters
    ----------
    text
        At most 500 characters.

    Raises
    ------
    FormulaError
        If no way leads to two sides of readable terms; the fault of the likeliest way is told.
    """
    if len(text) > MAX_EQUATION_LENGTH:
        remedy = f"Write at most {MAX_EQUATION_LENGTH} characters."
        raise _fault(f"An equation of {len(text)} characters is too long.", MAX_EQUATION_LENGTH, remedy)
    plain = folded(text).rstrip(" .")
    first_fault: FormulaError | None = None
    readable = False
    for start, end in _arrows(plain):
        try:
            sides = _side(plain, 0, start, "left"), _side(plain, end, len(plain), "right")
        except FormulaError as fault:
            first_fault = first_fault or fault
        else:
            readable = True
            yield sides
    if first_fault and not readable:
        raise first_fault


# ------------------------------------------------------------------ the arrow


def _arrows(plain: str) -> list[tuple[int, int]]:
    """Return the possible extents of the one arrow, the likeliest first."""
    heads = [at for at, character in enumerate(plain) if character in "→>="]
    if not heads and (back := _BACK_ARROW.search(plain)):
        remedy = "Write what reacts on the left, and let the arrow point to what forms: A -> B."
        raise _fault("The arrow points to the left.", back.start(), remedy)
    if not heads:
        remedy = "Put an arrow between the sides: A -> B."
        raise _fault("An equation needs an arrow.", len(plain), remedy)
    end = heads[0]
    while end < len(plain) and plain[end] in "→>=":
        end += 1
    if heads[-1] >= end:
        raise _fault("There is a second arrow.", next(at for at in heads if at >= end), "Write one equation.")
    start = heads[0]
    if plain[start] == "=":
        return [(start - (plain[start - 1 : start] == "<"), end)]
    return [(cut, end) for cut in _arrow_starts(plain, start)]


def _arrow_starts(plain: str, head: int) -> list[int]:
    """Return where the arrow can begin: dashes before its head belong to it or to the charge before it."""
    tail = head
    while tail and plain[tail - 1] == "-":
        tail -= 1
    if tail and plain[tail - 1] == "<":
        return [tail - 1]
    dashes = head - tail
    if dashes == 0 or tail == 0:
        return [tail]
    if plain[tail - 1].isspace():
        # who sets the last sign apart from its ion may have done so before the arrow: Cl --> ClO -
        is_apart = dashes > 1 and plain.endswith("-") and plain[-2:-1].isspace()
        return [tail, tail + 1] if is_apart else [tail]
    if dashes > 4:
        return [tail, tail + 1]
    shaft = [head] if plain[head] == "→" else []
    return [*shaft, *range(head - 1, tail - 1, -1), *([] if shaft else [head])]


# ------------------------------------------------------------------ one side


def _side(plain: str, start: int, end: int, name: str) -> tuple[WrittenTerm, ...]:
    joiners = [at for at in _signs_outside_brackets(plain, start, end) if _joins(plain, at, start, end)]
    if not plain[start:end].strip():
        raise _fault(f"Nothing stands on the {name} of the arrow.", start, "Write what reacts -> what forms.")
    if len(joiners) >= MAX_TERMS:
        raise _fault("There are too many terms.", joiners[-1], f"Write at most {MAX_TERMS} on a side.")
    terms = []
    begin, minus = start, False
    for at in (*joiners, end):
        if plain[begin:at].strip():
            terms.append(_term(plain, begin, at, is_subtracted=minus))
        elif begin > start or plain[at] == "+":
            raise _fault(
                "A term is missing beside this sign.", min(at, len(plain) - 1), "Join terms with one +."
            )
        begin, minus = at + 1, plain[at : at + 1] == "-"
    return tuple(terms)


def _signs_outside_brackets(plain: str, start: int, end: int) -> list[int]:
    depth = 0
    found = []
    for at in range(start, end):
        character = plain[at]
        if character in "([{":
            depth += 1
        elif character in ")]}":
            depth = max(0, depth - 1)
        elif character in "+-" and not depth:
            found.append(at)
    return found


def _joins(plain: str, at: int, start: int, end: int) -> bool:
    """Say whether a sign stands between two terms rather than being part of a charge."""
    if at > start and plain[at - 1] == "^":
        return False
    behind = _skip_spaces(plain, at + 1, end)
    if behind < end and plain[behind] in _DIGITS:
        behind = _skip_spaces(plain, _skip_number(plain, behind, end), end)
    if behind == end or plain[behind] in _SIGNS or plain[behind] in _ESCAPES:
        return False
    return not (plain[behind] == "(" and _state_at(plain, behind, end))


def _skip_spaces(plain: str, at: int, end: int) -> int:
    while at < end and plain[at].isspace():
        at += 1
    return at


def _skip_number(plain: str, at: int, end: int) -> int:
    while at < end and (plain[at] in _DIGITS or plain[at] in "./,"):
        at += 1
    return at


def _state_at(plain: str, opening: int, end: int) -> str:
    """Return the state symbol whose bracket opens here, or an empty text."""
    closing = plain.find(")", opening, min(end, opening + 8))
    inside = "".join(plain[opening + 1 : closing].split()).lower() if closing > 0 else ""
    return inside if inside in STATES else ""


# ------------------------------------------------------------------ one term


def _term(plain: str, start: int, end: int, *, is_subtracted: bool) -> WrittenTerm:
    start = _skip_spaces(plain, start, end)
    coefficient, cut = _coefficient(plain, start, end)
    state, stop = _state(plain, cut, end)
    readings = scan_species(plain, cut, stop)
    if is_subtracted and not readings[0].is_electron:
        raise _fault("Only electrons are taken away in an equation.", start, "Join the terms with +.")
    kept = "" if readings[0].is_electron else state
    return WrittenTerm(
        readings, coefficient, kept, start, is_subtracted, start + len(plain[start:end].rstrip())
    )


def _state(plain: str, start: int, end: int) -> tuple[str, int]:
    """Return the state symbol at the end of a term, and where what stands before it ends."""
    while end > start and plain[end - 1].isspace():
        end -= 1
    if end > start and plain[end - 1] in _ESCAPES:
        return _ESCAPES[plain[end - 1]], end - 1
    opening = plain.rfind("(", start, end)
    if (
        end - 1 > start
        and plain[end - 1] == ")"
        and opening > start
        and (state := _state_at(plain, opening, end))
    ):
        return state, opening - (plain[opening - 1] == "_")
    return "", end


def _coefficient(plain: str, start: int, end: int) -> tuple[int | Fraction, int]:
    """Return the number in front of a term, 1 if there is none, and where the formula begins."""
    if plain[start] == "(" and plain[start + 1 : start + 2] in (*_DIGITS, *_FRACTIONS):
        closing = plain.find(")", start, end)
        if closing > 0:
            value, cut = _number(plain, start + 1, closing)
            if cut == closing:
                return value, closing + 1
    if plain[start] not in _DIGITS and plain[start] not in _FRACTIONS:
        return 1, start
    value, cut = _number(plain, start, end)
    if cut < end and plain[cut] in ".*":
        cut += 1
    return value, cut


def _number(plain: str, start: int, end: int) -> tuple[int | Fraction, int]:
    """Read ``2``, ``0.5``, ``0,5``, ``1/2``, ``½`` or ``1½``."""
    cut = start
    value: int | Fraction = 0
    if plain[cut] in _DIGITS:
        value, cut = _whole(plain, cut, end)
        mark = plain[cut] if cut + 1 < end and plain[cut + 1] in _DIGITS else ""
        if mark in (".", ","):
            tail, after = _whole(plain, cut + 1, end)
            value, cut = value + Fraction(tail, 10 ** (after - cut - 1)), after
        elif mark == "/":
            bottom, after = _whole(plain, cut + 1, end)
            if not bottom:
                raise _fault("A number cannot be divided by zero.", cut + 1, "Write a fraction such as 1/2.")
            value, cut = Fraction(value, bottom), after
    if cut < end and plain[cut] in _FRACTIONS:
        value, cut = value + _FRACTIONS[plain[cut]], cut + 1
    if not value:
        raise _fault("A coefficient cannot be zero.", start, "Leave the term out, or write its number.")
    return (int(value) if value == int(value) else value), cut


def _whole(plain: str, start: int, end: int) -> tuple[int, int]:
    cut = start
    while cut < end and plain[cut] in _DIGITS:
        cut += 1
    if cut - start > len(str(MAX_COEFFICIENT)):
        remedy = f"Write numbers up to {MAX_COEFFICIENT}."
        raise _fault("A coefficient of so many digits is not read.", start, remedy)
    return int(plain[start:cut]), cut
