"""Read formulas without charge, as people type them, into a tree; print them in canonical ASCII."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final, Literal, TypeAlias

from ionwright.chemistry.characters import DOTS, SUBSCRIPTS, folded
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.formula_faults import refuse_marks, unexpected, unknown_element, unreadable

if TYPE_CHECKING:
    from ionwright.chemistry.faults import FormulaError

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
        raise unreadable(f"A formula of {len(text)} characters is too long.", MAX_LENGTH, _SHORTEN)
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
        raise unreadable(f"A formula of {end - start} characters is too long.", start, _SHORTEN)
    formula = _Scanner(plain[start:end], start).formula()
    if sum(formula.composition.values()) > MAX_ATOMS:
        raise unreadable(f"A formula unit of more than {MAX_ATOMS} atoms is not read.", start, _SHORTEN)
    return formula


_SHORTEN: Final = f"Write a formula of at most {MAX_LENGTH} characters and {MAX_ATOMS} atoms."


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
        raise unknown_element(self.text[: self.end], self.pos, self.base, symbol)

    def group(self, opening: str) -> Group:
        """Read a bracket, what it holds and the number behind it."""
        start = self.pos
        refuse_marks(self.text, start, self.base)
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

    def fault_at(self, pos: int, detail: str, remedy: str) -> FormulaError:
        """Tell a fault at a position of this stretch."""
        return unreadable(detail, self.base + pos, remedy)

    def fault(self) -> FormulaError:
        """Tell what is wrong with the character at which reading stopped."""
        return unexpected(self.text[: self.end], self.pos, self.base)

    def open_bracket(self, start: int, opening: str) -> FormulaError:
        """Tell what keeps a bracket from closing."""
        if self.pos < self.end and self.text[self.pos] not in _CLOSERS:
            return self.fault()
        return self.fault_at(
            start, f"The bracket {opening} is not closed.", f'Close it with "{_CLOSING[opening]}".'
        )
