"""Read formulas without charge, as people type them, into a tree; print them in canonical ASCII."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal, TypeAlias

from ionwright.chemistry.characters import (
    DOTS,
    SUBSCRIPTS,
    SUPERSCRIPT_SIGNS,
    SUPERSCRIPTS,
    described,
    folded,
)
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.respelling import near_symbols, respelled

__all__ = [
    "MAX_ATOMS",
    "MAX_LENGTH",
    "MAX_NESTING",
    "MAX_SUBSCRIPT",
    "Atom",
    "Formula",
    "Group",
    "read_formula",
    "scan_formula",
]

MAX_LENGTH: Final = 200
"""Longest formula that is read, in characters."""
MAX_NESTING: Final = 8
"""Deepest nesting of brackets."""
MAX_SUBSCRIPT: Final = 9999
"""Largest subscript or hydrate number."""
MAX_ATOMS: Final = 99_999
"""Most atoms in one formula unit."""


@dataclass(frozen=True, slots=True)
class Atom:
    """A symbol with its subscript, such as the ``O4`` of ``SO4``."""

    symbol: str
    count: int = 1

    @property
    def text(self) -> str:
        """The symbol and its subscript, in canonical ASCII."""
        return self.symbol if self.count == 1 else f"{self.symbol}{self.count}"


@dataclass(frozen=True, slots=True)
class Group:
    """Parts in brackets with a subscript, such as ``(NH3)4``."""

    parts: tuple[Atom | Group, ...]
    count: int = 1
    brackets: Literal["(", "["] = "("

    @property
    def text(self) -> str:
        """The group in canonical ASCII, brackets and subscript included."""
        inside = "".join(part.text for part in self.parts)
        number = "" if self.count == 1 else str(self.count)
        return f"{self.brackets}{inside}{_CLOSING[self.brackets]}{number}"


@dataclass(frozen=True, slots=True)
class Formula:
    """A formula as a tree; `attached` holds what follows a hydrate dot, each with its number."""

    parts: tuple[Atom | Group, ...]
    attached: tuple[tuple[int, Formula], ...] = ()

    @property
    def core_composition(self) -> dict[str, int]:
        """Atoms of each element without the attached parts, in order of first appearance."""
        total: dict[str, int] = {}
        _count_into(total, self.parts, 1)
        return total

    @property
    def composition(self) -> dict[str, int]:
        """Atoms of each element with the attached parts, in order of first appearance."""
        total = self.core_composition
        for number, formula in self.attached:
            _count_into(total, formula.parts, number)
        return total

    @property
    def text(self) -> str:
        """The formula in canonical ASCII, such as ``NiSO4.6H2O``."""
        core = "".join(part.text for part in self.parts)
        if not self.attached:
            return core
        tails = (f".{'' if number == 1 else number}{formula.text}" for number, formula in self.attached)
        return core + "".join(tails)


Parts: TypeAlias = "tuple[Atom | Group, ...]"

_OPENING: Final = "([{"
_CLOSING: Final = {"(": ")", "[": "]", "{": "}"}
_CLOSERS: Final = ")]}"
_BRACKETS: Final[dict[str, Literal["(", "["]]] = {"(": "(", "[": "[", "{": "("}
_DIGITS: Final = {digit: value for value, digit in enumerate("0123456789")} | {
    digit: value for value, digit in enumerate(SUBSCRIPTS)
}
_CHARGE_MARKS: Final = "^+-" + SUPERSCRIPTS + SUPERSCRIPT_SIGNS
_STATES: Final = frozenset(("s", "l", "g", "aq"))
_NUMERALS: Final = frozenset(("I", "II", "III", "IV", "V", "VI", "VII", "VIII"))
_END: Final = "\0"


def _count_into(total: dict[str, int], parts: Parts, times: int) -> None:
    for part in parts:
        if isinstance(part, Atom):
            total[part.symbol] = total.get(part.symbol, 0) + times * part.count
        else:
            _count_into(total, part.parts, times * part.count)


@lru_cache(maxsize=2048)
def read_formula(text: str) -> Formula:
    """Return the formula that a text spells, charge excluded.

    Parameters
    ----------
    text
        At most 200 characters: plain or Unicode subscripts, round, square or curly brackets, spaces,
        and ``. * · •`` or a space before the water of a hydrate.

    Raises
    ------
    FormulaError
        ``unreadable-formula`` or ``unknown-element``, with the position in the text as given and a remedy.

    Example
    -------
    >>> read_formula("NiSO₄ · 6 H₂O").text
    'NiSO4.6H2O'
    """
    if len(text) > MAX_LENGTH:
        raise _unreadable(f"A formula of {len(text)} characters is too long.", MAX_LENGTH, _SHORTEN)
    plain = folded(text)
    return scan_formula(plain, 0, len(plain))


def scan_formula(plain: str, start: int, end: int) -> Formula:
    """Return the formula in a stretch of folded text; faults tell positions in the whole text.

    Parameters
    ----------
    plain
        Text that `folded` has passed.
    start, end
        The stretch to read, spaces at its ends included.

    Raises
    ------
    FormulaError
        As `read_formula`.
    """
    if end - start > MAX_LENGTH:
        raise _unreadable(f"A formula of {end - start} characters is too long.", start, _SHORTEN)
    formula = _Scanner(plain[start:end], start).formula()
    if sum(formula.composition.values()) > MAX_ATOMS:
        raise _unreadable(f"A formula unit of more than {MAX_ATOMS} atoms is not read.", start, _SHORTEN)
    return formula


_SHORTEN: Final = f"Write a formula of at most {MAX_LENGTH} characters and {MAX_ATOMS} atoms."


def _unreadable(detail: str, position: int, remedy: str) -> FormulaError:
    return FormulaError("unreadable-formula", detail, position=position, remedy=remedy)


class _Scanner:
    """A hand-written scanner over one formula: it looks at every character a bounded number of times."""

    __slots__ = ("base", "depth", "end", "pos", "text")

    def __init__(self, text: str, base: int) -> None:
        self.text = text + _END
        self.base = base
        self.end = len(text)
        self.pos = 0
        self.depth = 0

    def formula(self) -> Formula:
        """Read the whole text, or raise."""
        parts = self.parts()
        if self.pos == self.end:
            return Formula(parts)
        attached: list[tuple[int, Formula]] = []
        while self.pos < self.end:
            if self.text[self.pos] in DOTS:
                self.pos += 1
            elif not self.water_follows(self.pos):
                raise self.fault()
            self.skip_spaces()
            number = self.number() if self.text[self.pos] in _DIGITS else 1
            attached.append((number, Formula(self.parts())))
        return Formula(parts, tuple(attached))

    def parts(self) -> Parts:
        """Read atoms and groups up to what is neither; at least one."""
        found: list[Atom | Group] = []
        text = self.text
        while True:
            character = text[self.pos]
            if "A" <= character <= "Z":
                symbol = self.symbol(character)
                found.append(Atom(symbol, self.count()))
            elif character in _OPENING:
                found.append(self.group(character))
            elif character.isspace():
                self.pos += 1
            else:
                break
        if not found:
            raise self.fault()
        return tuple(found)

    def symbol(self, first: str) -> str:
        """Read one symbol of an element."""
        second = self.text[self.pos + 1]
        if "a" <= second <= "z":
            symbol = first + second
            if symbol in ELEMENTS:
                self.pos += 2
                return symbol
        elif first in ELEMENTS:
            self.pos += 1
            return first
        else:
            symbol = first
        raise self.unknown(symbol)

    def group(self, opening: str) -> Group:
        """Read a bracket, what it holds and the number behind it."""
        start = self.pos
        self.refuse_mark(start)
        self.depth += 1
        if self.depth > MAX_NESTING:
            raise self.fault_at(
                start, f"Brackets are nested more than {MAX_NESTING} deep.", "Use fewer brackets."
            )
        self.pos += 1
        parts = self.parts()
        if self.text[self.pos] != _CLOSING[opening]:
            raise self.open_bracket(start, opening)
        self.pos += 1
        self.depth -= 1
        return Group(parts, self.count(), _BRACKETS[opening])

    def count(self) -> int:
        """Read the number behind an atom or group; 1 if there is none."""
        text, start = self.text, self.pos
        character = text[start]
        if character in _DIGITS:
            return self.number()
        if character == "_":
            return self.marked_number()
        if character.isspace():
            self.skip_spaces()
            if text[self.pos] in _DIGITS and (self.depth or not self.water_follows(self.pos)):
                return self.number()
            if text[self.pos] == "_":
                return self.marked_number()
        return 1

    def number(self) -> int:
        """Read a run of digits, plain or subscript, as a whole number from 1 to the largest subscript."""
        text, start, value = self.text, self.pos, 0
        pos = start
        while (digit := _DIGITS.get(text[pos])) is not None:
            value = value * 10 + digit
            pos += 1
            if value > MAX_SUBSCRIPT:
                raise self.fault_at(
                    start, f"A number above {MAX_SUBSCRIPT} is not read.", "Write a smaller number."
                )
        if _DIGITS[text[start]] == 0:
            remedy = "Write the letter O for oxygen, and no number where there is one atom."
            raise self.fault_at(start, "A number in a formula cannot begin with zero.", remedy)
        self.pos = pos
        return value

    def marked_number(self) -> int:
        """Read a subscript written ``_2`` or ``_{2}``."""
        self.pos += 1
        braced = self.text[self.pos] == "{"
        self.pos += braced
        if self.text[self.pos] not in _DIGITS:
            raise self.fault_at(self.pos, "A subscript is expected here.", "Write the number: H_2O or H2O.")
        value = self.number()
        if braced and self.text[self.pos] != "}":
            raise self.fault_at(self.pos, "The subscript is not closed.", 'Close it with "}".')
        self.pos += braced
        return value

    def skip_spaces(self) -> None:
        while self.text[self.pos].isspace():
            self.pos += 1

    def water_follows(self, pos: int) -> bool:
        """Say whether the rest is a number and H2O behind a space: a hydrate without its dot."""
        if not self.text[pos - 1].isspace():
            return False
        rest = self.text[pos : self.end].lstrip("0123456789" + SUBSCRIPTS).split()
        return "".join(rest).replace("₂", "2") == "H2O"

    # ------------------------------------------------------------------ faults

    def fault_at(self, pos: int, detail: str, remedy: str) -> FormulaError:
        return _unreadable(detail, self.base + pos, remedy)

    def fault(self) -> FormulaError:
        """Tell what is wrong with the character at which reading stopped."""
        pos = self.pos
        character = self.text[pos]
        if pos == self.end:
            return self.fault_at(pos, "A formula is expected here.", "Write a formula such as NiSO4.")
        if character in _CHARGE_MARKS:
            return self.fault_at(
                pos,
                "A substance carries no charge.",
                "Leave the charge out, or write the ion by itself: Ni^2+.",
            )
        if character in _CLOSERS:
            return self.fault_at(
                pos, f"The bracket {character} has no partner.", "Open it first, or leave it out."
            )
        if character in _DIGITS:
            return self.fault_at(
                pos,
                "A number stands where a symbol is expected.",
                "Put the number behind the symbol: H2, not 2H.",
            )
        if "a" <= character <= "z":
            return self.miscased(pos)
        return self.fault_at(
            pos,
            f"{described(character)} is no part of a formula.",
            "Write symbols, numbers and brackets only.",
        )

    def miscased(self, pos: int) -> FormulaError:
        return self.fault_at(
            pos,
            f"An element symbol begins with a capital; {described(self.text[pos])} does not.",
            self.capitals(),
        )

    def capitals(self) -> str:
        """Offer the right spelling of the whole formula where its capitals are wrong."""
        given = self.text[: self.end].strip()
        spellings = respelled("".join(given.split()))
        if not spellings:
            return "Write element symbols with a capital first and a small letter second: Na, not NA."
        return f"Write element symbols with a capital first: {' or '.join(spellings)}, not {given}."

    def unknown(self, symbol: str) -> FormulaError:
        near = near_symbols(symbol)
        remedy = f"Near it: {', '.join(near)}." if near else "Use the symbols of the periodic table."
        if respelled("".join(self.text[: self.end].split())):
            remedy = self.capitals()
        return FormulaError(
            "unknown-element",
            f"There is no element with the symbol {symbol}.",
            position=self.base + self.pos,
            remedy=remedy,
        )

    def open_bracket(self, start: int, opening: str) -> FormulaError:
        """Tell what keeps a bracket from closing."""
        if self.pos < self.end and self.text[self.pos] not in _CLOSERS:
            return self.fault()
        return self.fault_at(
            start, f"The bracket {opening} is not closed.", f'Close it with "{_CLOSING[opening]}".'
        )

    def refuse_mark(self, start: int) -> None:
        """Refuse a state symbol or an oxidation state in brackets, which are no part of a formula."""
        end = self.text.find(")", start, start + 8)
        inside = "".join(self.text[start + 1 : end].split()) if end > 0 else ""
        if inside.lower() in _STATES and (inside.islower() or inside.upper() == "AQ"):
            raise self.fault_at(start, f"({inside}) is a state symbol.", "Leave the state symbol out here.")
        if inside in _NUMERALS:
            remedy = "Write the formula without it: FeCl3, or the name iron(III) chloride."
            raise self.fault_at(start, f"({inside}) is an oxidation state, as names have it.", remedy)
