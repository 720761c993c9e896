"""Species: anything with a formula and a charge, the electron included; and all the ways people type them."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.characters import SUBSCRIPTS, SUPERSCRIPT_SIGNS, SUPERSCRIPTS, folded
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.formula import MAX_LENGTH, scan_formula

if TYPE_CHECKING:
    from collections.abc import Container

__all__ = ["ELECTRON", "MAX_CHARGE", "Species", "read_species", "readings", "scan_species", "species"]

MAX_CHARGE: Final = 20
"""Largest charge that is read, either sign."""


@dataclass(frozen=True, slots=True)
class Species:
    """Anything with a formula and a charge.

    Parameters
    ----------
    formula
        Canonical ASCII without the charge, such as ``"SO4"``; ``"e"`` for the electron.
    charge
        In units of the elementary charge.
    atoms
        Number of atoms of each element, in order of first appearance; empty for the electron.
    """

    formula: str
    charge: int
    atoms: tuple[tuple[str, int], ...]
    _hash: int = field(init=False, repr=False, compare=False, default=0)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_hash", hash((self.formula, self.charge)))

    def __hash__(self) -> int:
        return self._hash

    def __reduce__(self) -> tuple[type[Species], tuple[str, int, tuple[tuple[str, int], ...]]]:
        # texts hash differently in every process, so the stored hash must not travel
        return Species, (self.formula, self.charge, self.atoms)

    @property
    def is_electron(self) -> bool:
        """True for the electron only."""
        return self.formula == "e"

    @property
    def ascii(self) -> str:
        """Canonical ASCII with the charge: ``SO4^2-``, ``H^+``, ``e-``, ``Cl2``."""
        if self.charge == 0:
            return self.formula
        if self.formula == "e":
            return "e-"
        return f"{self.formula}^{charge_text(self.charge)}"

    def __str__(self) -> str:
        return self.ascii


def charge_text(charge: int) -> str:
    """Return a charge as chemists write it, number first and sign last: ``2-``, ``+``."""
    number = abs(charge)
    return f"{'' if number == 1 else number}{'+' if charge > 0 else '-'}"


ELECTRON: Final = Species("e", -1, ())
"""The electron."""

_ELECTRON_CHARGES: Final = (
    "", "-", "⁻", "^-", "^{-}", "(-)", "^(-)", "1-", "^1-", "^{1-}", "(1-)", "^(1-)", "¹⁻",
    "-1", "^-1", "^{-1}", "(-1)", "^(-1)",
)  # fmt: skip
_ELECTRON_SPELLINGS: Final = frozenset(
    (*(f"e{charge}" for charge in _ELECTRON_CHARGES), "ē", "ē-", "ē⁻", "e\u0304", "e\u0305")
)
_SIGNS: Final = {"+": 1, "-": -1, SUPERSCRIPT_SIGNS[0]: 1, SUPERSCRIPT_SIGNS[1]: -1}
_RAISED: Final = {digit: str(value) for value, digit in enumerate(SUPERSCRIPTS)}
_CHARGE_MARKS: Final = ("^", *_SIGNS, *_RAISED)
_DIGITS: Final = "0123456789"
_COUNTED_FIRST: Final = frozenset(("H", "F", "Cl", "Br", "I", "At", "He", "Ne", "Ar", "Kr", "Xe"))


def _fault(detail: str, position: int, remedy: str) -> FormulaError:
    return FormulaError("unreadable-formula", detail, position=position, remedy=remedy)


@lru_cache(maxsize=4096)
def _interned(formula: str, charge: int, atoms: tuple[tuple[str, int], ...]) -> Species:
    return Species(formula, charge, atoms)


@lru_cache(maxsize=4096)
def _spelt(text: str) -> tuple[str, tuple[tuple[str, int], ...]]:
    """Canonical text and atoms of a formula; of one that cannot be read nothing is kept."""
    formula = scan_formula(text, 0, len(text))
    return formula.text, tuple(formula.composition.items())


def _made(plain: str, start: int, end: int, charge: int) -> Species:
    try:
        text, atoms = _spelt(plain[start:end])
    except FormulaError:
        _tell_fault(plain, start, end)
        raise
    return _interned(text, charge, atoms)


def _tell_fault(plain: str, start: int, end: int) -> None:
    """Read a formula that cannot be read once more, for the place of the fault in the whole text."""
    try:
        scan_formula(plain, start, end)
    except FormulaError as fault:
        at = fault.position
        if at is not None and at < end and plain[at] in _CHARGE_MARKS:
            remedy = "Write number and sign behind the whole formula: SO4^2-."
            raise _fault("A charge stands at the end of a species.", at, remedy) from None
        raise fault from None


@lru_cache(maxsize=2048)
def species(ascii: str) -> Species:  # noqa: A002 - the name says which spelling is meant
    """Return the species with this canonical ASCII spelling; for tables and code, so nothing is guessed.

    Parameters
    ----------
    ascii
        Such as ``"Ni^2+"``, ``"e-"``, ``"[Cu(NH3)4]^2+"``. A bare sign behind a letter or bracket counts as
        one unit (``"Na+"``); behind a number it is refused, because it could be read two ways.

    Raises
    ------
    FormulaError
        If the text cannot be read, or is not the canonical spelling of what it says.
    """
    if ascii == "e-":
        return ELECTRON
    if len(ascii) > MAX_LENGTH:
        raise _too_long(len(ascii), MAX_LENGTH)
    head, caret, tail = ascii.partition("^")
    if caret:
        sign = _SIGNS.get(tail[-1:], 0)
        number = tail[:-1] or "1"
        if not sign or not number.isascii() or not number.isdigit() or int(number[:4]) > MAX_CHARGE:
            raise _fault("A charge is a number and a sign.", len(head) + 1, "Write Ni^2+ or Cl^-.")
        found = _made(ascii, 0, len(head), sign * int(number))
    elif ascii[-1:] in ("+", "-"):
        if ascii[-2:-1].isdigit():
            raise _fault("A number and a sign can be read two ways.", len(ascii) - 2, "Write Ni^2+ or NO3^-.")
        found = _made(ascii, 0, len(ascii) - 1, _SIGNS[ascii[-1]])
    else:
        found = _made(ascii, 0, len(ascii), 0)
    if ascii not in (found.ascii, found.ascii.replace("^", "")):
        raise _fault(f"{ascii} is not the canonical spelling.", 0, f"Write {found.ascii}.")
    return found


def _too_long(length: int, position: int) -> FormulaError:
    return _fault(
        f"A formula of {length} characters is too long.", position, f"Write at most {MAX_LENGTH} characters."
    )


@lru_cache(maxsize=2048)
def readings(text: str) -> tuple[Species, ...]:
    """Return every species that a text can mean, the likeliest first, without asking which of them exist.

    Parameters
    ----------
    text
        A formula with or without a charge, or an electron, in any usual spelling: ``Ni2+ Ni+2 Ni++ Ni^{2+}
        Ni²⁺ SO42- SO4 2- SO4-- SO₄²⁻ e- ē``.

    Raises
    ------
    FormulaError
        ``unreadable-formula`` or ``unknown-element``, with the position in the text as given and a remedy.

    Example
    -------
    >>> [str(reading) for reading in readings("SO42-")]
    ['SO4^2-', 'SO42^-']
    """
    if len(text) > MAX_LENGTH:
        raise _too_long(len(text), MAX_LENGTH)
    plain = folded(text)
    return scan_species(plain, 0, len(plain))


def read_species(text: str, known: Container[Species] = ()) -> Species:
    """Return the reading of a text that is known; if none is, the likeliest.

    Parameters
    ----------
    text
        As for `readings`.
    known
        The species that the reader has reason to expect.

    Raises
    ------
    FormulaError
        As `readings`.
    """
    found = readings(text)
    return next((reading for reading in found if reading in known), found[0])


def scan_species(plain: str, start: int, end: int) -> tuple[Species, ...]:
    """Return every species that a stretch of folded text can mean, the likeliest first.

    Parameters
    ----------
    plain
        Text that `folded` has passed; positions in faults count from its start.
    start, end
        The stretch to read, spaces at its ends included.

    Raises
    ------
    FormulaError
        As `readings`.
    """
    while start < end and plain[start].isspace():
        start += 1
    while end > start and plain[end - 1].isspace():
        end -= 1
    if end - start > MAX_LENGTH:
        raise _too_long(end - start, start)
    try:
        return _readings_of(plain[start:end])
    except FormulaError:
        return _scanned(plain, start, end)  # once more, for the place of the fault in the whole text


@lru_cache(maxsize=4096)
def _readings_of(text: str) -> tuple[Species, ...]:
    """What a text without spaces at its ends can mean; of one that cannot be read nothing is kept."""
    return _scanned(text, 0, len(text))


def _scanned(plain: str, start: int, end: int) -> tuple[Species, ...]:
    first = plain[start : start + 1]
    if first in ("e", "ē") or plain[start:end] in ("E-", "E⁻", "E^-"):
        return _electron(plain, start, end)
    return tuple(
        dict.fromkeys(_made(plain, start, cut, charge) for cut, charge in _charges(plain, start, end))
    )


def _electron(plain: str, start: int, end: int) -> tuple[Species, ...]:
    if "".join(plain[start:end].split()) in _ELECTRON_SPELLINGS:
        return (ELECTRON,)
    remedy = "Write e-, with the number in front: 2e-."
    raise _fault("This begins like an electron but is none.", start, remedy)


def _charges(plain: str, start: int, end: int) -> list[tuple[int, int]]:
    """Return the possible cuts between formula and charge, each as (end of the formula, charge)."""
    if start == end:
        return [(end, 0)]
    last = plain[end - 1]
    if last in _SIGNS:
        return _sign_last(plain, start, end)
    if last in _DIGITS or last in _RAISED:
        return _number_last(plain, start, end)
    if last in ")}":
        return _bracketed(plain, start, end)
    return [(end, 0)]


def _without_caret(plain: str, start: int, end: int) -> int:
    """Return where the formula ends once spaces and a caret before the charge are left out."""
    while end > start and plain[end - 1].isspace():
        end -= 1
    if end > start and plain[end - 1] == "^":
        end -= 1
    return end


def _charge(number: str, sign: int, position: int) -> int:
    value = int(number[:4])
    if value == 0:
        raise _fault("A charge of zero is not written.", position, "Leave the charge out.")
    if value > MAX_CHARGE:
        raise _fault(f"A charge above {MAX_CHARGE} is not read.", position, "Write a charge such as 2+.")
    return sign * value


def _bracketed(plain: str, start: int, end: int) -> list[tuple[int, int]]:
    """Read ``(2+)``, ``{2+}``, ``(+2)``, ``(-)``; any other bracket belongs to the formula."""
    opening = max(plain.rfind("(", start, end), plain.rfind("{", start, end))
    inside = "".join(_RAISED.get(character, character) for character in plain[opening + 1 : end - 1].split())
    signs = [character for character in inside if character in _SIGNS]
    number = "".join(character for character in inside if character not in _SIGNS)
    if opening < start or not signs or (number and not (number.isascii() and number.isdigit())):
        return [(end, 0)]
    if len(set(signs)) > 1 or (number and len(signs) > 1):
        raise _fault("A charge has one sign.", opening + 1, "Write (2+) or ^2+.")
    charge = _charge(number or str(len(signs)), _SIGNS[signs[0]], opening + 1)
    return [(_without_caret(plain, start, opening), charge)]


def _number_last(plain: str, start: int, end: int) -> list[tuple[int, int]]:
    """Read ``+2`` or ``⁰`` at the end; a plain number without a sign belongs to the formula."""
    cut = end
    while cut > start and (plain[cut - 1] in _DIGITS or plain[cut - 1] in _RAISED):
        cut -= 1
    if cut > start and plain[cut - 1] in _SIGNS:
        number = "".join(_RAISED.get(digit, digit) for digit in plain[cut:end])
        charge = _charge(number, _SIGNS[plain[cut - 1]], cut)
        return [(_without_caret(plain, start, cut - 1), charge)]
    is_raised = plain[end - 1] in _RAISED or plain[cut - 1 : cut] == "^"
    if is_raised and cut > start and plain[cut:end] in ("0", SUPERSCRIPTS[0]):
        return [(_without_caret(plain, start, cut), 0)]
    if is_raised:
        raise _fault("This charge has no sign.", end, "Write the sign behind the number: Ni^2+.")
    return [(end, 0)]


def _sign_last(plain: str, start: int, end: int) -> list[tuple[int, int]]:
    """Read signs at the end, with the digits before them where they belong to the charge."""
    sign = _SIGNS[plain[end - 1]]
    cut = end
    while cut > start and _SIGNS.get(plain[cut - 1]) == sign:
        cut -= 1
    signs = end - cut
    if cut > start and plain[cut - 1] in _SIGNS:
        raise _fault("Two different signs stand together.", cut - 1, "Write one charge: Na^+ or Cl^-.")
    if signs > 1:
        return [(_without_caret(plain, start, cut), _charge(str(signs), sign, cut))]
    while cut > start and plain[cut - 1].isspace():
        cut -= 1
    digits_end = cut
    if cut > start and plain[cut - 1] in _RAISED:
        while cut > start and plain[cut - 1] in _RAISED:
            cut -= 1
        number = "".join(_RAISED[digit] for digit in plain[cut:digits_end])
        return [(_without_caret(plain, start, cut), _charge(number, sign, cut))]
    while cut > start and plain[cut - 1] in _DIGITS:
        cut -= 1
    if cut == digits_end:
        return [(_without_caret(plain, start, cut), sign)]
    return _digits_before_sign(plain, start, cut, digits_end, sign)


def _digits_before_sign(plain: str, start: int, cut: int, end: int, sign: int) -> list[tuple[int, int]]:
    """Share digits before a sign between subscript and charge: ``SO42-`` is SO4^2-, less likely SO42^-."""
    digits, head = plain[cut:end], plain[start:cut].rstrip()
    before, last = plain[cut - 1 : cut], int(digits[-1])
    spaced = before.isspace() and cut > start
    explicit = head.endswith("^") or before in tuple(SUBSCRIPTS + "}")
    if explicit or (spaced and head[-1:] in _DIGITS + SUBSCRIPTS) or digits == "1":
        return [(_without_caret(plain, start, cut), _charge(digits, sign, cut))]
    all_count, shared = (end, sign), (end - 1, sign * last)
    if last == 0 or (before == "_" and len(digits) == 1):
        return [all_count]
    if len(digits) > 1:
        return [shared, all_count] if last <= 4 else [all_count, shared]
    charge_first = spaced or head.endswith("]") or (head in ELEMENTS and head not in _COUNTED_FIRST)
    return [shared, all_count] if charge_first else [all_count, shared]
