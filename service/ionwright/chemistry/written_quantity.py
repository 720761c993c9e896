"""Quantities as people write them: a number, its figures, a unit, and an uncertainty if there is one."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final, Never

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.unit_words import TOKENS
from ionwright.chemistry.units import Unit, dimension_said, example_of, is_counted_in, read_unit, unit_said
from ionwright.chemistry.written_number import MOST_FIGURES, POWER_OF_TEN, number_at
from ionwright.chemistry.written_time import TIME_UNIT, mixed_time_at

if TYPE_CHECKING:
    from ionwright.chemistry.written_number import TypedNumber

__all__ = ["Written", "expect", "read_written"]

_LONGEST: Final = 80
_FOLDED: Final = str.maketrans(
    "−–‐‑﹣－＋．，\t\u00a0\u2007\u2009\u202f\u2002\u2003０１２３４５６７８９✕⋅∙μµ",
    "------+.,       0123456789×··uu",
)
_PLUS_MINUS: Final = re.compile(r" *(?:±|\+ ?/ ?-|\+-) *")
_NOT_FINITE: Final = re.compile(r" *[+-]?(?:nan|inf|∞)", re.IGNORECASE)
_BARE_POWER: Final = re.compile(r" *10 ?(?:\^|\*\*|[⁺⁻⁰¹²³⁴⁵⁶⁷⁸⁹])")
_CLOCK: Final = re.compile(r" *\d+:\d\d")
_RANGE: Final = re.compile(r" *[\d.,]+[^\d±]{0,8}(?:-|\bto\b) ?\d")
_SEVERAL_TIMES: Final = re.compile(
    rf" *(?:[+-] ?)?[\d.,]+ ?{TIME_UNIT}.*\d| *\d+ ?m ?\d+ ?s\b", re.IGNORECASE
)
_MONEY: Final = re.compile(r" *([£€$₹]|Rs\.?|[A-Z]{2,3}) ?(?=[\d.,])")
_ONE: Final = re.compile(r" *1 *[A-Za-z]+[ .]*$")
_EXACT_PRESSURES: Final = frozenset({"atm", "bar"})


@dataclass(frozen=True, slots=True)
class Written:
    """A quantity as it was written.

    Parameters
    ----------
    text
        As it was given.
    value
        The number, counted in `unit`.
    unit
        Its unit; the unit of plain numbers if none was written.
    significant_figures
        Digits that were written, without leading zeros: 2 for 20 and for 0.050, 4 for 1500; at most 15.
        The pressures ``"1 atm"`` and ``"1 bar"`` name an exact standard rather than a measurement, and have 15.
    uncertainty
        Standard uncertainty, counted in `unit`; None if none was written.
    is_mixed
        Whether the text has several units, as ``"1 h 20 min"`` has; `value` is counted in the last of them.
    is_exact
        Whether the text names an exact standard; it is then better shown as it was written than with its figures.
    """

    text: str
    value: float
    unit: Unit
    significant_figures: int
    uncertainty: float | None = None
    is_mixed: bool = False
    is_exact: bool = False


@lru_cache(maxsize=4096)
def read_written(text: str, *, dimension: str = "") -> Written:
    """The quantity that a text says.

    Parameters
    ----------
    text
        Such as ``"0.50 A"``, ``"1 h 20 min"``, ``"(0.50 ± 0.01) A"``, ``"6.02×10²³ mol⁻¹"``, at most 80 characters.
    dimension
        What is expected, as `Unit.dimension` has it. It settles whether ``"C"`` is a coulomb or a degree Celsius, and
        shapes advice; whether the dimension is right is for `expect` to say.

    Raises
    ------
    QuantityFault
        The text is no quantity (``unreadable-quantity``), can be read in two ways (``ambiguous-number``), is no
        finite number (``not-finite``), or one beyond all measure (``absurd-magnitude``); an uncertainty is negative
        or zero (``negative-quantity``, ``zero-quantity``) or of another dimension (``wrong-dimension``).
    """
    if len(text) > _LONGEST:
        _refuse(f"The quantity is longer than {_LONGEST} characters.", _LONGEST, dimension)
    folded = text.translate(_FOLDED)
    if "±" in folded or "+" in folded:
        halves = _PLUS_MINUS.split(folded, 1)
        if len(halves) == 2:
            return _with_uncertainty(text, folded, halves, dimension)
    return _exact_standard(_quantity(text, folded, 0, dimension), folded)


def _exact_standard(given: Written, folded: str) -> Written:
    """Let ``1 atm`` and ``1 bar`` limit no result: they say which standard is meant, not what a gauge shows.

    One figure would round a volume of gas to one figure. Who did measure writes 1.0 atm, or an uncertainty.
    """
    if given.unit.symbol in _EXACT_PRESSURES and _ONE.match(folded):
        return replace(given, significant_figures=MOST_FIGURES, is_exact=True)
    return given


def _quantity(text: str, folded: str, start: int, dimension: str) -> Written:
    time = mixed_time_at(folded, start)
    if time:
        return Written(text, time.value, time.unit, time.significant_figures, is_mixed=True)
    number = number_at(folded, start)
    if number is None:
        return _in_front(text, folded, start, dimension)
    try:
        unit = _unit(folded, number.end, dimension)
    except QuantityFault as fault:
        _refuse_better(folded, start, fault)
    return Written(text, number.value, unit, number.significant_figures, number.spread)


def _unit(folded: str, start: int, dimension: str) -> Unit:
    rest = folded[start:]
    unit_text = rest.strip()
    try:
        return read_unit(unit_text, dimension)
    except QuantityFault as fault:
        fault.position = start + len(rest) - len(rest.lstrip()) + (fault.position or 0)
        raise


def _in_front(text: str, folded: str, start: int, dimension: str) -> Written:
    """A quantity that does not begin with its number: money, or nothing that can be read."""
    money = _MONEY.match(folded, start)
    if money is None or not (money[1][-1] in "£€$₹." or money[1] in {"Rs", "RM"} or money[1] in TOKENS):
        _refuse_start(folded, start, dimension)
    number = number_at(folded, money.end())
    if number is None:
        _refuse_start(folded, start, dimension)
    rest = folded[number.end :].strip()
    if rest and not rest.startswith(("/", "per")):
        _refuse(f'"{rest}" does not go with an amount of money.', number.end, "price of energy")
    try:
        unit = read_unit(f"{money[1].rstrip('.')} {rest}".strip())
    except QuantityFault as fault:
        fault.position = number.end
        raise
    return Written(text, number.value, unit, number.significant_figures, number.spread)


def _refuse_start(folded: str, start: int, dimension: str) -> Never:
    shown = folded[start:].strip()
    if not shown:
        _refuse("The quantity is empty.", start, dimension)
    if _NOT_FINITE.match(folded, start):
        raise QuantityFault(
            "not-finite", "A quantity must be a finite number.", position=start, remedy=_advice(dimension)
        )
    _refuse(f'"{shown}" does not start with a number.', start, dimension)


def _refuse_better(folded: str, start: int, fault: QuantityFault) -> Never:
    """Say what is really wrong where a unit could not be read because the number was none."""
    if _BARE_POWER.match(folded, start):
        rest = folded[start:].strip()
        raise QuantityFault(
            "unreadable-quantity", "A power of ten alone does not say how many figures it has.", position=start,
            remedy=f'Write "1 x {rest}" if one figure is meant.',
        ) from fault  # fmt: skip
    if _CLOCK.match(folded, start):
        raise QuantityFault(
            "ambiguous-number", "A time with a colon may be hours and minutes or minutes and seconds.", position=start,
            remedy='Write it as in "1 h 20 min" or "20 min 30 s".',
        ) from fault  # fmt: skip
    if _SEVERAL_TIMES.match(folded, start):
        raise QuantityFault(
            "unreadable-quantity", "A time in several units goes from the largest to the smallest, in whole numbers.",
            position=start, remedy='Write it as in "1 h 20 min" or "20 min 30 s".',
        ) from fault  # fmt: skip
    if _RANGE.match(folded, start):
        raise QuantityFault(
            "unreadable-quantity", "A range is not one quantity.", position=start,
            remedy='Write one value, with an uncertainty if it is known, as in "0.50 ± 0.01 A".',
        ) from fault  # fmt: skip
    raise fault


def _with_uncertainty(text: str, folded: str, halves: list[str], dimension: str) -> Written:
    left, right = halves
    start = len(folded) - len(right)
    if _PLUS_MINUS.search(right):
        _refuse("There is more than one uncertainty.", start, dimension)
    bracket = left.find("(")
    if bracket >= 0 and not left[:bracket].strip() and ")" in right:
        return _in_brackets(text, folded, (bracket + 1, len(left), start), dimension)
    if left.rstrip().endswith("(") and ")" in right:
        bracket = left.rindex("(")
        if _is_number(left[:bracket]):
            return _in_brackets(text, folded, (0, bracket, start), dimension)
        # behind a unit the brackets say nothing
        close = folded.rindex(")")
        left, folded = left[:bracket], f"{folded[:close]} {folded[close + 1 :]}"
    given = _quantity(text, left, 0, dimension)
    spread = number_at(folded, start)
    if spread is None or given.uncertainty is not None:
        _refuse("The uncertainty is not a number with a unit.", start, dimension)
    unit = _unit(folded, spread.end, dimension)
    _check_spread(spread)
    if given.unit.symbol == "1":
        # one unit behind both numbers
        return replace(given, unit=unit, uncertainty=spread.value)
    return replace(given, uncertainty=_spread_in(given, spread, unit, start))


def _is_number(text: str) -> bool:
    number = number_at(text)
    return number is not None and not text[number.end :].strip()


def _spread_in(given: Written, spread: TypedNumber, unit: Unit, start: int) -> float:
    if unit.symbol in {"1", given.unit.symbol}:
        return spread.value
    if unit.symbol == "%":
        return abs(given.value) * spread.value / 100
    if unit.dimension != given.unit.dimension or unit.currency != given.unit.currency:
        raise QuantityFault(
            "wrong-dimension",
            f"The uncertainty is in {unit_said(unit)}, the value in {unit_said(given.unit)}.",
            position=start,
            remedy=f"Write the uncertainty in {given.unit.text}, or in per cent of the value.",
        )
    return spread.value * unit.si / given.unit.si


def _in_brackets(text: str, folded: str, places: tuple[int, int, int], dimension: str) -> Written:
    """``(0.50 ± 0.01) A``, where a power of ten and the unit behind the bracket hold for both numbers."""
    first, middle, second = places
    close = folded.index(")", second)
    ten = POWER_OF_TEN.match(folded, close + 1)
    power = ten[0] if ten else ""
    inside = (folded[first:middle].strip(), folded[second:close].strip())
    numbers = [number_at(f"{part}{power}") for part in inside]
    value, spread = numbers
    if value is None or spread is None or any(
        number.end != len(part) + len(power) or number.spread
        for number, part in zip((value, spread), inside, strict=True)
    ):  # fmt: skip
        _refuse("The brackets do not hold a number and its uncertainty.", first, dimension)
    _check_spread(spread)
    unit = _unit(folded, ten.end() if ten else close + 1, dimension)
    return Written(text, value.value, unit, value.significant_figures, spread.value)


def _check_spread(spread: TypedNumber) -> None:
    if spread.value <= 0:
        is_zero = spread.value == 0
        raise QuantityFault(
            "zero-quantity" if is_zero else "negative-quantity",
            f"An uncertainty cannot be {'zero' if is_zero else 'negative'}.",
            position=spread.start,
            remedy="Leave the uncertainty out if there is none, or write it as in 0.50 ± 0.01 A.",
        )


def _advice(dimension: str) -> str:
    return f'Write a number and a unit, such as "{example_of(dimension)}".'


def _refuse(detail: str, position: int, dimension: str) -> Never:
    raise QuantityFault("unreadable-quantity", detail, position=position, remedy=_advice(dimension))


def expect(written: Written, dimension: str, quantity: str) -> None:
    """Refuse a quantity that is not of the dimension it should have.

    Parameters
    ----------
    written
        The quantity as it was read.
    dimension
        What is expected, as `Unit.dimension` has it.
    quantity
        What it is called in a sentence, without an article, such as ``"current"``.

    Raises
    ------
    QuantityFault
        It is of another dimension (``wrong-dimension``).
    """
    if written.unit.dimension == dimension:
        return
    if written.unit.symbol == "1":
        unit = example_of(dimension).partition(" ")[2]
        remedy = f'Write "{written.text.strip()} {unit}" if that is meant. Its units are {dimension_said(dimension)}.'
    else:
        remedy = f'Write it as in "{example_of(dimension)}". Its units are {dimension_said(dimension)}.'
    raise QuantityFault(
        "wrong-dimension",
        f"The {quantity} is {is_counted_in(dimension)}; you gave {unit_said(written.unit)}.",
        remedy=remedy,
    )
