"""Numbers as people type them: decimal point or comma, powers of ten, groups of three digits."""

from __future__ import annotations

import re
from typing import Final, NamedTuple, Never

from ionwright.chemistry.faults import QuantityFault

__all__ = ["MOST_FIGURES", "POWER_OF_TEN", "TypedNumber", "number_at"]

MOST_FIGURES: Final = 15
"""As many significant figures as a number can have here: a result bears no more."""

_MOST_POWER: Final = 40
_LARGEST: Final = 1e45
_SUPERSCRIPTS: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻", "0123456789+-")

POWER_OF_TEN: Final = re.compile(r"[eE]([+-]?\d+)| ?[*xX×·] ?(10[\d^*+\-{}()⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻]*)(?![.,])")
"""What may follow the digits; the first group is a power, the second one has still to be looked at."""

_NUMBER: Final = re.compile(
    r" *([+-] ?)?([.,]?\d[\d.,]*(?: \d{3}(?!\d)[\d.,]*)*(?: \d{1,2}(?![\d/.,]))?)(\(\d{1,3}\))?"
    rf"(?:{POWER_OF_TEN.pattern})?"
)
_GROUPED: Final = re.compile(
    r"\d{1,3}(?: \d{3})*(?:[.,]\d{3}(?: \d{3})*(?: \d{1,3})|[.,]\d*)?|\d+[.,]\d{3}(?: \d{3})*(?: \d{1,3})"
)
_TEN_TO_THE: Final = re.compile(
    r"10(?:(?:\^|\*\*)(?:\{([+-]?\d+)\}|\(([+-]?\d+)\)|([+-]?\d+))|([⁺⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)|([+-]\d+))"
)
_WITH_MARKS: Final = re.compile(r"\d{1,3}(?:[.,]\d{3})+(?:[.,]\d+)?")


class TypedNumber(NamedTuple):
    """A number in a text, with what its digits say about it."""

    value: float
    significant_figures: int
    """Digits that were written, without leading zeros; at most 15, which is what a result can bear."""
    place: int
    """The power of ten that the last digit counts."""
    spread: float | None
    """Standard uncertainty in the notation ``0.500(2)``."""
    start: int
    end: int


def number_at(text: str, position: int = 0) -> TypedNumber | None:
    """The number that begins at a position of a text, or None if there is none.

    Parameters
    ----------
    text
        With plain digits, spaces and minus signs; superscripts may stand in a power of ten.
    position
        Offset at which to begin; spaces there are passed over.

    Raises
    ------
    QuantityFault
        The digits can be read in two ways (``ambiguous-number``), make no number (``unreadable-quantity``),
        or one beyond all measure (``absurd-magnitude``).
    """
    match = _NUMBER.match(text, position)
    if match is None:
        return None
    sign, digits, spread, power, ten = match.groups()
    start = match.start(2)
    plain = digits if digits.isdecimal() else _plain(digits, start)
    exponent = int(power) if power else _exponent(ten, match.start(5)) if ten else 0
    if abs(exponent) > _MOST_POWER:
        _refuse_size(start)
    value = float(f"{plain}e{exponent}")
    if value and not 1 / _LARGEST < value < _LARGEST:
        _refuse_size(start)
    decimals = len(plain) - 1 - plain.index(".") if "." in plain else 0
    return TypedNumber(
        -value if sign and sign[0] == "-" else value,
        min(len(plain.replace(".", "").lstrip("0")) or max(decimals, 1), MOST_FIGURES),
        exponent - decimals,
        float(f"{spread[1:-1]}e{exponent - decimals}") if spread else None,
        match.start(1) if sign else start,
        match.end(),
    )


def _plain(digits: str, start: int) -> str:
    if "," not in digits and digits.count(".") == 1 and " " not in digits:
        return digits
    if " " in digits:
        if not _GROUPED.fullmatch(digits):
            _refuse(f'"{digits}" is not one number.', start, "Write the digits without spaces between them.")
        return digits.replace(" ", "").replace(",", ".")
    whole, _, decimals = digits.partition(",")
    if _WITH_MARKS.fullmatch(digits) and not (whole == "0" and decimals.isdecimal()):
        _refuse_marks(digits, start)
    if "." in digits or not decimals.isdecimal():
        _refuse(f'"{digits}" is not a number.', start, "Write one decimal point at most, as in 0.50.")
    return f"{whole}.{decimals}"


def _refuse_marks(digits: str, start: int) -> Never:
    marks = [mark for mark in digits if mark in ".,"]
    if len(marks) == 1:
        plain = digits.replace(",", "")
        detail = f'"{digits}" can be read as {digits.replace(",", ".")} or as {plain}.'
        remedy = (
            f'Write "{plain}", or "{digits.replace(",", ".").rstrip("0")}", with a point for decimals only.'
        )
    else:
        detail = f'"{digits}" has several marks, and not everyone reads them alike.'
        remedy = f'Write "{_likely(digits, marks)}" if that is meant, with no mark but one decimal point.'
    raise QuantityFault("ambiguous-number", detail, position=start, remedy=remedy)


def _likely(digits: str, marks: list[str]) -> str:
    if len(set(marks)) == 1:
        return "".join(digits.split(marks[0]))
    whole, _, decimals = digits.rpartition(marks[-1])
    return f"{whole.replace(',', '').replace('.', '')}.{decimals}"


def _exponent(ten: str, position: int) -> int:
    match = _TEN_TO_THE.fullmatch(ten)
    if match is None:
        _refuse_power(ten, position)
    return int((match[1] or match[2] or match[3] or match[4] or match[5]).translate(_SUPERSCRIPTS))


def _refuse_power(ten: str, position: int) -> Never:
    if ten.isdecimal() and len(ten) > 2:
        raise QuantityFault(
            "ambiguous-number", f'"{ten}" may be the number {ten} or a power of ten.', position=position,
            remedy=f'Write "10^{ten[2:]}" for the power, or work out the product.',
        )  # fmt: skip
    _refuse(f'"{ten}" is not a power of ten.', position, 'Write it as in "6.02 x 10^23" or "6.02e23".')


def _refuse(detail: str, position: int, remedy: str) -> Never:
    raise QuantityFault("unreadable-quantity", detail, position=position, remedy=remedy)


def _refuse_size(position: int) -> Never:
    raise QuantityFault(
        "absurd-magnitude", "The number is beyond all measure.", position=position,
        remedy=f"Powers of ten go from -{_MOST_POWER} to {_MOST_POWER}; check the number.",
    )  # fmt: skip
