"""Slips of the hand that can only mean one thing: the wrong case, 0 for O, a plus left out, a plus on the electron.

Each mending keeps every other character where it is, so that places in the mended text are places in the text
as it was written.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.characters import SUBSCRIPTS, SUPERSCRIPTS, folded
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.formula import scan_formula
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.substance import SUBSTANCES

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from ionwright.chemistry.species import Species

__all__ = [
    "Slip",
    "may_be_slips",
    "mended",
    "typed",
    "with_plus_between",
    "with_right_electrons",
    "with_signless_charges",
]


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip that was read for what it must mean.

    Parameters
    ----------
    at
        Extent in the text.
    written, read_as
        What stands there, and what it was read as.
    """

    at: tuple[int, int]
    written: str
    read_as: str


_PIECE: Final = re.compile(r"[A-Za-z0-9()\[\]|" + SUBSCRIPTS + r"]+")
_STATE: Final = re.compile(r"\((?:s|l|g|aq)\)\Z", re.IGNORECASE)
_COEFFICIENT: Final = re.compile(r"[1-9][0-9]*")
_LOOKALIKES: Final = str.maketrans("0iI1|" + SUBSCRIPTS, "olll" + "l" + "0123456789")
_PLAIN_DIGITS: Final = str.maketrans(SUBSCRIPTS, "0123456789")
_RAISED_DIGITS: Final = str.maketrans(SUPERSCRIPTS, "0123456789")
_ODD_ELECTRON: Final = re.compile(r"(?<![A-Za-z])[eéèê][_~]?(?![A-Za-z])")
_SYMBOL_APART: Final = re.compile(r"(?<![A-Za-z])([A-Z]) ([A-Za-z])(?![A-Za-z])")
_HYDROXIDE: Final = re.compile(r"(?<![A-Za-z])0H(?=\^?[{(]?[-⁻])")
_PLUS_ON_ELECTRON: Final = re.compile(
    r"(?<![A-Za-z])[eE](\s*\^?[({]?\s*1?\s*)([+⁺])(?=\s*[)}]?\s*(?:\Z|[-=→<>+]))"
)
_CHARGE_ON_ELECTRON: Final = re.compile(r"(?<![A-Za-z0-9])e\^?([2-9²³⁴-⁹])[-⁻]")
_TOO_MANY_SIGNS: Final = re.compile(r"(?<![A-Za-z])e(?:--|⁻⁻)(?=\s*(?:\Z|[+=→])|\s+-+>)")
_SIGNLESS: Final = re.compile(r"\^([0-9])(?=\s|\Z|\(|[A-Z])|([²³⁴])(?=\s|\Z|\(|[A-Z])")
_ELECTRON_WORD: Final = re.compile(r"\belectrons?\b", re.IGNORECASE)
_CLOSING_LABEL: Final = re.compile(
    r"\(?(?:at the )?(?:cathode|anode|reduction|oxidation)\)?\s*\Z", re.IGNORECASE
)
_MISSING_PLUS: Final = re.compile(r"(?<=[A-Za-z][0-9])\+ (?=\s*[0-9]*\s*e[-⁻^\s=→]|\s*[0-9]*\s*e\Z)")
_LABEL: Final = re.compile(
    r"\s*[A-Za-z][A-Za-z ()]{0,39}:"
    r"|\s*(?i:at (?:the )?)?(?i:anode|cathode)[ -]+(?=[0-9A-Z])"
    r"|\s*\(?(?:[a-df-h]|[iv]{1,4})\)(?=\s*\S)"
    r"|\s*\(?[0-9]{1,2}(?:\)|\.\s)(?=\s*\S)"
)
_COMMANDS: Final = re.compile(
    r"\\(?:long)?(?:right|rightleft|left)?(?:arrow|harpoons|to)\b|\\ce\s*\{|<su[bp]>|</su[bp]>|\$"
)
_ELECTRONS_IN_BRACKETS: Final = re.compile(r"\((\s*[0-9]*\s*e\s*\^?[-⁻]?\s*)\)")
_BROKEN_ARROW: Final = re.compile(r"= +>|(?<![A-Za-z0-9)\]}^-])-+ +>|~+>")
_ION_IN_BRACKETS: Final = re.compile(
    r"(?<![A-Za-z\])])\((\s*[0-9]*\s*[A-Z][A-Za-z0-9]*\^?[0-9]*[-+⁻⁺]\s*)\)(?![0-9])"
)
_SUBSCRIPT_IN_BRACKETS: Final = re.compile(r"_\(([0-9]+)\)")
_MARK_BEHIND_STATE: Final = re.compile(r"(?<=\))\s*[↑↓]")
_STATE_IN_WORDS: Final = re.compile(r"\((gas|solid|liquid|aqueous)\)", re.IGNORECASE)
_REMARK: Final = re.compile(r"\([a-z]{3,}[a-z ]*\)|\[[a-z]{3,}[a-z ]*\](?=\s|\Z)")
_BARE_STATE: Final = re.compile(r"([A-Za-z][0-9]*[-+⁺⁻]*) (?:aq|s|l|g)(?=\s*(?:\Z|[+=→]|-+>))")
_BARE_MARKS: Final = (" aq", " s", " l", " g")
_OXIDATION_STATE: Final = re.compile(r"(?<=[A-Za-z])(?:\((II|III|IV)\)|(II|III|IV))(?=\s*(?:\Z|[+=→]|-+>))")
_STATES_BY_WORD: Final = {"gas": "(g)", "solid": "(s)", "liquid": "(l)", "aqueous": "(aq)"}
_NUMERALS: Final = {"II": "2+", "III": "3+", "IV": "4+"}
_AROUND: Final = " \t\n\"'`“”„«»‘’✓✔☑✅"
_TIMES: Final = re.compile(r"(?<=[0-9]) ?x ?(?=[A-Ze])")
_SAME_LOOK: Final = str.maketrans("АВСЕНКМОРТХаеорсухΑΒΕΗΙΚΜΝΟΡΤΧΖο", "ABCEHKMOPTXaeopcyxABEHIKMNOPTXZo")
"""Letters of other alphabets that look like Latin ones, as they come from copied text."""


def typed(text: str) -> str:
    """Return the text as the scanners know it: folded, without a label, markup or the parts of a broken arrow."""
    plain = folded(text)
    if not plain.isascii():
        plain = plain.translate(_SAME_LOOK)
    plain = _without_surroundings(plain)
    plain = _BROKEN_ARROW.sub(lambda found: " " * (len(found[0]) - 2) + "->", plain)
    if not plain.isascii() or "_" in plain or "~" in plain:
        plain = _ODD_ELECTRON.sub(lambda found: "e" if len(found[0]) == 1 else "e-", plain)
    if "(" in plain or "[" in plain:
        plain = _ELECTRONS_IN_BRACKETS.sub(r" \1 ", plain)
        plain = _with_plain_brackets(plain)
    if any(mark in plain for mark in _BARE_MARKS):
        plain = _BARE_STATE.sub(lambda found: found[1].ljust(len(found[0])), plain)
    if "II" in plain or "IV" in plain:
        plain = _OXIDATION_STATE.sub(
            lambda found: _NUMERALS[found[1] or found[2]].ljust(len(found[0])), plain
        )
    if (label := _LABEL.match(plain)) is not None:
        plain = " " * label.end() + plain[label.end() :]
    if "x" in plain:
        plain = _TIMES.sub(lambda found: " " * len(found[0]), plain)
    if "o" in plain:  # as all these words do
        plain = _ELECTRON_WORD.sub(lambda found: "e-".ljust(len(found[0])), plain)
        plain = _CLOSING_LABEL.sub(lambda found: " " * len(found[0]), plain)
    if "\\" in plain or "$" in plain or "<su" in plain:
        plain = _without_markup(plain)
    end = len(plain.rstrip(" ;,!\t\n"))
    return plain[:end] + " " * (len(plain) - end)


def _without_surroundings(plain: str) -> str:
    """Blank quotation marks and ticks around a line."""
    start = len(plain) - len(plain.lstrip(_AROUND))
    end = len(plain.rstrip(_AROUND))
    if start >= end:
        return plain
    return " " * start + plain[start:end] + " " * (len(plain) - end)


def _with_plain_brackets(plain: str) -> str:
    """Return the text without brackets around ions and subscripts, and with remarks left out."""
    plain = _ION_IN_BRACKETS.sub(r" \1 ", plain)
    plain = _SUBSCRIPT_IN_BRACKETS.sub(r"_\1  ", plain)
    plain = _MARK_BEHIND_STATE.sub(lambda found: " " * len(found[0]), plain)
    plain = _STATE_IN_WORDS.sub(lambda found: _STATES_BY_WORD[found[1].lower()].ljust(len(found[0])), plain)
    return _REMARK.sub(lambda found: " " * len(found[0]), plain)


def _without_markup(plain: str) -> str:
    had_brace = "\\ce" in plain

    def blank(found: re.Match[str]) -> str:
        mark = {"<sup>": "^", "<sub>": " "}.get(found[0], "")
        if "arrow" in found[0] or "to" in found[0] or "harpoons" in found[0]:
            mark = "→"
        return mark.ljust(len(found[0])) if mark else " " * len(found[0])

    plain = _COMMANDS.sub(blank, plain)
    if had_brace and plain.rstrip().endswith("}") and plain.count("}") > plain.count("{"):
        end = len(plain.rstrip())
        plain = plain[: end - 1] + " " * (len(plain) - end + 1)
    return plain


def with_right_electrons(plain: str) -> tuple[str, list[tuple[int, int]]]:
    """Return the text with every electron carrying one minus, and the places of those that carried something else."""
    places = [(found.start(), found.end()) for found in _PLUS_ON_ELECTRON.finditer(plain)]
    for _, end in places:
        minus = "⁻" if plain[end - 1] == "⁺" else "-"
        plain = plain[: end - 1] + minus + plain[end:]
    for found in _TOO_MANY_SIGNS.finditer(plain):
        places.append(found.span())
        plain = f"{plain[: found.end() - 1]} {plain[found.end() :]}"
    for found in list(_CHARGE_ON_ELECTRON.finditer(plain)):
        places.append((found.start(), found.end()))
        number = found[1].translate(_RAISED_DIGITS)
        plain = plain[: found.start()] + f"{number}e-".ljust(len(found[0])) + plain[found.end() :]
    return plain, places


def with_signless_charges(plain: str) -> str:
    """Return the text with a raised number that lacks its sign set as a plain number: H²O becomes H2O."""
    return _SIGNLESS.sub(
        lambda found: f" {found[1]}" if found[1] else found[2].translate(_RAISED_DIGITS), plain
    )


def mended(plain: str, expected: Iterable[Species]) -> tuple[str, list[Slip]]:
    """Return the text with its slips mended, and the slips.

    Parameters
    ----------
    plain
        Text that `typed` has passed.
    expected
        The species that the question is about; they are looked for first and in the looser way.
    """
    zeros = [found.span() for found in _HYDROXIDE.finditer(plain)]
    slips = [Slip(span, "0H", "OH") for span in zeros]
    plain = _HYDROXIDE.sub("OH", plain)
    tables = _tables(frozenset(expected))
    plain = _SYMBOL_APART.sub(lambda found: _joined(found, tables, slips), plain)
    pieces: list[str] = []
    done = 0
    for found in _PIECE.finditer(plain):
        start, piece = _core(found[0], found.start())
        better = _respelt(piece, tables)
        if better:
            end = start + len(better)
            slips.append(Slip((start, end), plain[start:end], better))
            pieces += (plain[done:start], better)
            done = end
    pieces.append(plain[done:])
    return "".join(pieces), sorted(slips, key=lambda slip: slip.at)


def _joined(apart: re.Match[str], tables: _Tables, slips: list[Slip]) -> str:
    """An element of the question whose two letters stand apart, put together in their place."""
    symbol = apart[1] + apart[2].lower()
    if symbol not in tables.elements or apart[1] in tables.elements:
        return apart[0]
    slips.append(Slip(apart.span(), apart[0], symbol))
    return f" {symbol}"


def may_be_slips(formulas: Iterable[str], expected: Iterable[Species]) -> bool:
    """Whether any of these formulas, which nobody knows, could be a slip for one that is known."""
    tables = _tables(frozenset(expected))
    return any(_respelt(formula, tables) or "0" in formula for formula in formulas)


Composition = frozenset[tuple[str, int]]


@dataclass(frozen=True, slots=True)
class _Tables:
    """The formulas that a question is about, as they are and under the key by which slips are looked up."""

    formulas: frozenset[str]
    loose: Mapping[str, str]
    compositions: frozenset[Composition]
    elements: frozenset[str]


@lru_cache(maxsize=1024)
def _tables(expected: frozenset[Species]) -> _Tables:
    formulas = frozenset(kind.formula for kind in expected)
    compounds = frozenset(frozenset(kind.atoms) for kind in expected if len(kind.atoms) > 1)
    elements = frozenset(symbol for kind in expected for symbol, _ in kind.atoms)
    return _Tables(formulas, _by_key(formulas, loosely=True), compounds, elements)


def _core(piece: str, start: int) -> tuple[int, str]:
    """Return a piece without its coefficient and state symbol, and where it begins."""
    state = _STATE.search(piece)
    if state:
        piece = piece[: state.start()]
    number = _COEFFICIENT.match(piece)
    if number and number.end() < len(piece):
        return start + number.end(), piece[number.end() :]
    return start, piece


def _respelt(piece: str, tables: _Tables) -> str:
    """Return the formula that a piece must mean; empty if it is well spelt or could mean several things.

    Digits behind the formula may be a charge, and stay as they are.
    """
    if piece == "E":
        return "e"
    if piece == "p" and "P" not in tables.elements:
        return ""  # a proton, or anything else
    plain = piece.translate(_PLAIN_DIGITS)
    heads = [plain[:cut] for cut in range(len(plain), 0, -1) if _may_be_charge(plain[cut:])]
    if any(head in tables.formulas or _composition(head) in tables.compositions for head in heads):
        return ""
    is_proper = any(head in _proper() and not _is_foreign(head, tables) for head in heads)
    for head in heads:
        formula = tables.loose.get(_loose_key(head), "")
        if formula and (not is_proper or formula.casefold() == head.casefold()):
            return formula
    if is_proper:
        return ""
    return next((_tabled()[key] for head in heads if (key := head.casefold()) in _tabled()), "")


@lru_cache(maxsize=4096)
def _composition(formula: str) -> Composition:
    """The atoms of a formula as it is spelt; empty if it cannot be read."""
    try:
        return frozenset(scan_formula(formula, 0, len(formula)).composition.items())
    except FormulaError:
        return frozenset()


def _is_foreign(formula: str, tables: _Tables) -> bool:
    """Whether a formula holds no element of the question, so that it is likelier a slip: C1 for Cl."""
    return tables.elements.isdisjoint(symbol for symbol, _ in _composition(formula))


def _may_be_charge(rest: str) -> bool:
    return not rest or (rest.isdigit() and "0" not in rest)


def _loose_key(text: str) -> str:
    return text.translate(_LOOKALIKES).casefold()


def _by_key(formulas: Iterable[str], *, loosely: bool) -> dict[str, str]:
    """Formulas by the key under which slips are looked up; empty where two share a key."""
    found: dict[str, str] = {}
    for formula in formulas:
        key = _loose_key(formula) if loosely else formula.casefold()
        found[key] = "" if key in found and found[key] != formula else formula
    return found


@cache
def _proper() -> frozenset[str]:
    """Every formula and symbol of the tables in its right spelling."""
    return frozenset({kind.formula for kind in IONS} | set(SUBSTANCES) | set(ELEMENTS))


@cache
def _tabled() -> dict[str, str]:
    return _by_key(_proper(), loosely=False)


def with_plus_between(plain: str) -> tuple[str, int | None]:
    """Return the text with a plus put in where a charge was taken for one, and the place; None if there is none.

    In ``Cu2+ 2e-`` the plus belongs to the ion, and the one that joins the terms is missing.
    """
    found = _MISSING_PLUS.search(plain)
    if found is None:
        return plain, None
    return f"{plain[: found.end()]}+ {plain[found.end() :]}", found.end()
