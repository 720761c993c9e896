"""Reads the text of a unit into a product of whitelisted units, and writes such a product."""

from __future__ import annotations

import re
from difflib import get_close_matches
from typing import Final, Never

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.unit_words import SYMBOLS, TOKENS, WORDS, Factors

__all__ = ["latex_of", "read_factors", "symbol_of", "text_of"]

_LONGEST: Final = 40
_FOLDED: Final = str.maketrans(
    "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻−–‐‑μµ·⋅×∙\u00a0\u202f\u2009\u2126º˚", "0123456789+-----uu****   Ω°°"
)
_ALPHABET: Final = re.compile(r"[A-Za-z0-9 /.*^(){}+\-°%Ω£€$₹¢℃]*")
_DIGITS: Final = re.compile(r"\d+")
_PER: Final = re.compile(r"\s*(?:/|\bper\b)\s*", re.IGNORECASE)
_ONE_PER: Final = re.compile(r"1 *(?:/|per\b)", re.IGNORECASE)
_PHRASES: Final = (
    (re.compile(r"\b(?:degrees?|deg\.?) ?(?:celsius|C)\b|° ?(?:C\b|celsius)", re.IGNORECASE), "degC"),
    (re.compile(r"\b(?:mm|millimet(?:re|er)s?) ?(?:of )?(?:Hg|mercury)\b", re.IGNORECASE), "mmHg"),
    (re.compile(r"\bper ?cent\b", re.IGNORECASE), "%"),
    (re.compile(r"\b(?:cubic|cu\.?) ([A-Za-z]+)", re.IGNORECASE), r"\1^3"),
    (re.compile(r"\b(?:square|sq\.?) ([A-Za-z]+)", re.IGNORECASE), r"\1^2"),
)
_POWER: Final = r"(?:\^|\*\*)?(?:\{([+-]?\d)\}|\(([+-]?\d)\)|([+-]?\d))"
_PIECE: Final = re.compile(
    rf"(?P<join>\s*/\s*|\s*[.*]\s*|-|\s+|)(?P<open>\(\s*)?(?P<name>[A-Za-z°%Ω£€$₹¢℃]+)(?:{_POWER})?(?P<close>\s*\))?"
)
_JOINED: Final = {("W", "h"): "Wh", ("mW", "h"): "mWh", ("kW", "h"): "kWh", ("MW", "h"): "MWh"}
_RANK: Final = {symbol: rank for rank, symbol in enumerate(TOKENS)}
_IN_LOWER_CASE: Final = {symbol.lower(): symbol for symbol in reversed(tuple(SYMBOLS))}
_LETTERS: Final = tuple((word, frozenset(word)) for word in WORDS if len(word) > 2)
_SUPERSCRIPTS: Final = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_EXAMPLES: Final = (
    "Units that are understood: A, s, min, C, mol, g, cm3, dm3, degC, kPa, V, kWh, %,"
    " and products such as g/mol."
)
_BELOW: Final = (
    'Put what is below the line in brackets, as in "J/(mol K)", or write powers, as in "J K-1 mol-1".'
)
_FARADAY: Final = (
    "A faraday is the charge of one mole of electrons:"
    " give the amount of electrons in mol, or the charge in C."
)
_UNREAD: Final = {
    "F": _FARADAY, "faraday": _FARADAY, "faradays": _FARADAY, "f": _FARADAY,
    "°F": "Write the temperature in degC or K.", "degF": "Write the temperature in degC or K.",
    "ma": 'Write "mA" for milliamperes.', "MA": 'Write "mA" for milliamperes.',
    "mpa": 'Write "MPa" for megapascals.', "psi": "Write the pressure in kPa or atm.",
    "ton": 'Write "t" or "tonne" for 1000 kg.', "tons": 'Write "t" or "tonne" for 1000 kg.',
    "°": 'Write "degC" or "K" for a temperature.', "deg": 'Write "degC" or "K" for a temperature.',
}  # fmt: skip


def _refuse(detail: str, *, position: int = 0, remedy: str = _EXAMPLES) -> Never:
    raise QuantityFault("unreadable-quantity", detail, position=position, remedy=remedy)


def read_factors(text: str) -> Factors:
    """The product of units that a text says, in a fixed order and with each unit once.

    Length, alphabet and powers are looked at before anything else, so that no text costs time.
    What follows a slash stands below the line, up to the end: ``"J/mol K"`` is ``J/(mol K)``.

    Parameters
    ----------
    text
        Such as ``"C mol⁻¹"``, ``"mA/cm2"`` or ``"kWh"``, at most 40 characters; empty or ``"1"`` for a plain number.

    Raises
    ------
    QuantityFault
        The text is no such product (``unreadable-quantity``).
    """
    if len(text) > _LONGEST:
        _refuse(f"The unit is longer than {_LONGEST} characters.", position=_LONGEST)
    folded = text.translate(_FOLDED)
    allowed = _ALPHABET.match(folded)
    if allowed is None or allowed.end() < len(folded):
        position = allowed.end() if allowed else 0
        _refuse(f'"{text[position]}" stands in no unit.', position=position)
    lead = len(folded) - len(folded.lstrip())
    plain = folded.strip().removesuffix(".")
    if plain == "1":
        return ()
    if _ONE_PER.match(plain):
        lead, plain = lead + 1, plain[1:]
    _check_powers(plain, lead)
    return _in_order(_product(plain, text))


def _check_powers(plain: str, lead: int) -> None:
    for digits in _DIGITS.finditer(plain):
        if digits[0] not in {"1", "2", "3"}:
            _refuse(
                f'"{digits[0]}" is no power of a unit.',
                position=lead + digits.start(),
                remedy="A unit holds no number but the powers 1 to 3, as in cm3 or mol-1.",
            )


def _product(plain: str, text: str) -> dict[str, int]:
    for phrase, meaning in _PHRASES:
        plain = phrase.sub(meaning, plain)
    plain = _PER.sub("/", plain)
    powers: dict[str, int] = {}
    at, is_below, is_open, is_closed = 0, False, False, False
    while at < len(plain):
        piece = _PIECE.match(plain, at)
        if piece is None or _is_misplaced(piece, is_first=at == 0, is_open=is_open, is_closed=is_closed):
            _refuse_shape(text)
        is_below = is_below or "/" in piece["join"]
        is_open, is_closed = (is_open or bool(piece["open"])) and not piece["close"], bool(piece["close"])
        _multiply(powers, _meaning(piece["name"], text), _power(piece, text, is_below=is_below), text)
        at = piece.end()
    if is_open:
        _refuse_shape(text)
    return powers


def _is_misplaced(piece: re.Match[str], *, is_first: bool, is_open: bool, is_closed: bool) -> bool:
    has_slash = "/" in piece["join"]
    if piece["open"] and (is_open or not has_slash):
        return True
    if piece["close"] and not (is_open or piece["open"]):
        return True
    if is_first:
        return piece["join"] != "" and not has_slash
    return piece["join"] == "" or (is_closed and not has_slash) or (is_open and has_slash)


def _power(piece: re.Match[str], text: str, *, is_below: bool) -> int:
    power = int(piece[4] or piece[5] or piece[6] or 1)
    if is_below and power < 0:
        _refuse(f'"{text}" has a negative power below the line.', remedy=_BELOW)
    return -power if is_below else power


def _multiply(powers: dict[str, int], factors: Factors, power: int, text: str) -> None:
    for symbol, own in factors:
        if abs(own * power) > 3 or abs(powers.get(symbol, 0) + own * power) > 3:
            _refuse(f'"{text}" holds a power above 3.', remedy="Units go up to the third power, as in cm3.")
        powers[symbol] = powers.get(symbol, 0) + own * power


def _meaning(name: str, text: str) -> Factors:
    factors = SYMBOLS.get(name)
    if factors is None:
        factors = WORDS.get(name.lower())
    if factors is None:
        _refuse(
            f'"{name}" is not a unit that is understood.',
            position=max(text.find(name), 0),
            remedy=_near(name),
        )
    return factors


def _near(name: str) -> str:
    if name in _UNREAD:
        return _UNREAD[name]
    lower = name.lower()
    alike = [_IN_LOWER_CASE[lower]] if lower in _IN_LOWER_CASE else []
    if not alike:
        # comparing costs: only the words with the most letters in common
        letters = frozenset(lower)
        unlike = sorted((len(letters ^ own), word) for word, own in _LETTERS if word[0] == lower[0])
        alike = get_close_matches(lower[:24], [word for _, word in unlike[:4]], n=1, cutoff=0.75)
    return f'"{alike[0]}" may be meant. {_EXAMPLES}' if alike else _EXAMPLES


def _refuse_shape(text: str) -> Never:
    _refuse(f'"{text}" is not a unit, nor a product or quotient of units.', remedy=f"{_BELOW} {_EXAMPLES}")


def _in_order(powers: dict[str, int]) -> Factors:
    for (power, time), joined in _JOINED.items():
        if powers.get(time) and powers.get(power) == powers[time]:
            powers[joined] = powers.get(joined, 0) + powers.pop(power)
            del powers[time]
    return tuple(
        sorted(((symbol, n) for symbol, n in powers.items() if n), key=lambda factor: _RANK[factor[0]])
    )


def symbol_of(factors: Factors) -> str:
    """A product as canonical ASCII: ``"dm3/mol"``, ``"J/(mol K)"``, ``"1/mol"``; ``"1"`` for a plain number."""
    return _fraction([(symbol, power) for symbol, power in factors]) or "1"


def text_of(factors: Factors) -> str:
    """A product for people: ``"dm³/mol"``, ``"mol⁻¹"``, ``"µm/min"``; empty for a plain number."""
    if all(power < 0 for _, power in factors):
        return " ".join(
            f"{TOKENS[symbol].text}{str(power).translate(_SUPERSCRIPTS)}" for symbol, power in factors
        )
    return _fraction([(TOKENS[symbol].text, power) for symbol, power in factors]).translate(_SUPERSCRIPTS)


def _fraction(named: list[tuple[str, int]]) -> str:
    above = " ".join(f"{name}{power if power > 1 else ''}" for name, power in named if power > 0)
    below = [f"{name}{-power if power < -1 else ''}" for name, power in named if power < 0]
    if not below:
        return above
    return f"{above or '1'}/{below[0] if len(below) == 1 else '(' + ' '.join(below) + ')'}"


def latex_of(factors: Factors) -> str:
    r"""A product as LaTeX: ``"\\mathrm{dm^3\\,mol^{-1}}"``; empty for a plain number."""
    above_first = sorted(factors, key=lambda factor: factor[1] < 0)
    parts = [f"{TOKENS[symbol].latex}{_latex_power(power)}" for symbol, power in above_first]
    inside = "\\,".join(parts)
    return f"\\mathrm{{{inside}}}" if parts else ""


def _latex_power(power: int) -> str:
    if power == 1:
        return ""
    return f"^{power}" if power > 0 else f"^{{{power}}}"
