"""What a formula that cannot be read is told: where the fault lies and what would be right."""

from __future__ import annotations

from typing import Final

from ionwright.chemistry.characters import SUBSCRIPTS, SUPERSCRIPT_SIGNS, SUPERSCRIPTS, described
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.respelling import name_in, near_symbols, respelled, symbol_of

__all__ = ["refuse_marks", "unexpected", "unknown_element", "unreadable"]

_STATES: Final = frozenset(("s", "l", "g", "aq"))
_NUMERALS: Final = frozenset(("I", "II", "III", "IV", "V", "VI", "VII", "VIII"))
_ISOTOPES: Final = {"D": "deuterium", "T": "tritium"}
_CAPITALS: Final = "Write element symbols with a capital first"
_BY_KIND: Final = (
    (
        "^+-" + SUPERSCRIPTS + SUPERSCRIPT_SIGNS,
        "A substance carries no charge.",
        "Leave the charge out, or write the ion by itself: Ni^2+.",
    ),
    (")]}", "This bracket has no partner.", "Open it first, or leave it out."),
    (
        "0123456789" + SUBSCRIPTS,
        "A number stands where a symbol is expected.",
        "Put the number behind the symbol: H2, not 2H.",
    ),
)


def unreadable(detail: str, position: int, remedy: str) -> FormulaError:
    """Return the fault ``unreadable-formula``.

    Parameters
    ----------
    detail, remedy
        A sentence each: what is wrong, and what would be right.
    position
        In the whole text as given.
    """
    return FormulaError("unreadable-formula", detail, position=position, remedy=remedy)


def unexpected(formula: str, at: int, base: int) -> FormulaError:
    """Return the fault for a character that no formula can have at this place.

    Parameters
    ----------
    formula
        The stretch that was being read.
    at
        Where in it reading stopped; its length if it ended too early.
    base
        Where the stretch begins in the whole text.
    """
    if at >= len(formula):
        return unreadable("A formula is expected here.", base + at, "Write a formula such as NiSO4.")
    character = formula[at]
    for characters, detail, remedy in _BY_KIND:
        if character in characters:
            return unreadable(detail, base + at, remedy)
    if name := name_in(formula):
        return unreadable(f"{name} is a name.", base + at, _by_formula(name))
    if "a" <= character <= "z":
        detail = f"An element symbol begins with a capital; {described(character)} does not."
        return unreadable(detail, base + at, _right_capitals(formula))
    detail = f"{described(character)} is no part of a formula."
    return unreadable(detail, base + at, "Write symbols, numbers and brackets only.")


def unknown_element(formula: str, at: int, base: int, symbol: str) -> FormulaError:
    """Return the fault ``unknown-element``, with the right capitals or near symbols as its remedy.

    Parameters
    ----------
    formula, at, base
        As for `unexpected`.
    symbol
        The symbol that no element has.
    """
    if name := name_in(formula):
        return FormulaError(
            "unknown-element", f"{name} is a name.", position=base + at, remedy=_by_formula(name)
        )
    if symbol in _ISOTOPES:
        detail = f"{symbol} is {_ISOTOPES[symbol]}, an isotope of hydrogen."
        return FormulaError("unknown-element", detail, position=base + at, remedy="Write H.")
    near = near_symbols(symbol)
    remedy = f"Near it: {', '.join(near)}." if near else "Use the symbols of the periodic table."
    if _spellings(formula):
        remedy = _right_capitals(formula)
    detail = f"There is no element with the symbol {symbol}."
    return FormulaError("unknown-element", detail, position=base + at, remedy=remedy)


def refuse_marks(formula: str, at: int, base: int) -> None:
    """Refuse a state symbol or an oxidation state in brackets, which are no part of a formula.

    Parameters
    ----------
    formula, base
        As for `unexpected`.
    at
        Where the bracket opens.

    Raises
    ------
    FormulaError
        If the bracket holds such a mark.
    """
    end = formula.find(")", at, at + 8)
    inside = "".join(formula[at + 1 : end].split()) if end > 0 else ""
    if inside.lower() in _STATES and (inside.islower() or inside == "AQ"):
        raise unreadable(f"({inside}) is a state symbol.", base + at, "Leave the state symbol out here.")
    if inside in _NUMERALS:
        remedy = "Write the formula without it: FeCl3, or the name iron(III) chloride."
        raise unreadable(f"({inside}) is an oxidation state, as names have it.", base + at, remedy)


def _spellings(formula: str) -> tuple[str, ...]:
    return respelled("".join(formula.split()))


def _by_formula(name: str) -> str:
    symbol = symbol_of(name)
    return f"Write the formula instead{f': {symbol}' if symbol else ''}."


def _right_capitals(formula: str) -> str:
    spellings = _spellings(formula)
    if not spellings:
        return f"{_CAPITALS} and a small letter second: Na, not NA."
    return f"{_CAPITALS}: {' or '.join(spellings)}, not {formula.strip()}."
