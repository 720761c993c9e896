"""Writes numbers with the figures they deserve, half rounded up, in each notation."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from math import inf, isfinite
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.faults import QuantityFault

if TYPE_CHECKING:
    from ionwright.chemistry.units import Unit

__all__ = ["Rendered", "notations", "rounded", "with_uncertainty"]

_SUPERSCRIPTS: Final = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_TO_PLAIN: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789−")
_RAISED: Final = re.compile("[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+")
_SIGNS: Final = {"£": r"\text{£}", "€": r"\text{€}", "$": r"\$", "₹": r"\text{₹}"}
_MOST_FIGURES: Final = 17
_MOST_WITH_UNCERTAINTY: Final = 15
_SETTLED_FIGURES: Final = 13
"""What a chain of calculations leaves exact in a float; what follows is noise."""
_SMALLEST: Final = 1e-300  # below, a float has lost figures of its own
_SPARE_FIGURES: Final = 3
"""By how many fewer figures a number has to be shown for that noise to be settled first."""


@dataclass(frozen=True, slots=True)
class Rendered:
    r"""A quantity in the notations that leave the service.

    Parameters
    ----------
    text
        For people, in Unicode: ``"1.8 × 10⁻⁴ mol"``.
    html
        With superscripts: ``"1.8 × 10<sup>−4</sup> mol"``.
    latex
        For a formula: ``"1.8 \\times 10^{-4}\\,\\mathrm{mol}"``.
    """

    text: str
    html: str
    latex: str


def rounded(value: float, figures: int) -> str:
    """A number as plain decimal text with so many significant figures, half rounded up: ``"0.50"``, ``"1.2e5"``.

    Parameters
    ----------
    value
        Any finite number; it is rounded as its shortest decimal form is written, so 2.675 to three figures is 2.68.
        A tie that a calculation missed by its last binary digits is one: 7.5249999999999995 is 7.53, too.
    figures
        How many figures, 1 to 17. Zeros at the end are kept; 1234 to two figures is 1200.
        From 100 000 up and below 0.001 a power of ten is used.

    Raises
    ------
    QuantityFault
        The number is not finite (``not-finite``).
    """
    digits, exponent = _written(value, figures)
    return f"{digits}e{exponent}" if exponent else digits


def notations(value: float, figures: int, unit: Unit) -> Rendered:
    """A quantity with so many significant figures, in each notation: ``"0.182 g"``.

    Parameters
    ----------
    value
        The number, counted in the unit.
    figures
        As for `rounded`.
    unit
        Its unit; percent and degrees follow British custom, and a sign of money stands in front.

    Raises
    ------
    QuantityFault
        The number is not finite (``not-finite``).
    """
    digits, exponent = _written(value, figures)
    return _with_unit(digits, exponent, unit, has_spread=False)


def with_uncertainty(value: float, uncertainty: float, unit: Unit) -> tuple[Rendered, int]:
    """A quantity with its standard uncertainty, ``"(0.182 ± 0.004) g"``, and the significant figures of its value.

    Parameters
    ----------
    value
        The number, counted in the unit.
    uncertainty
        Counted in the unit, not negative. It is shown with one figure, with two if it starts with 1; if it is too
        small to show, the value stands alone.
    unit
        Unit of both.

    Raises
    ------
    QuantityFault
        One of the numbers is not finite (``not-finite``).
    """
    number, spread = _decimal(value), abs(_decimal(uncertainty))
    if not spread or (number and number.adjusted() - spread.adjusted() >= _MOST_WITH_UNCERTAINTY):
        return notations(value, _MOST_WITH_UNCERTAINTY, unit), _MOST_WITH_UNCERTAINTY
    spread = _to_figures(spread, 2 if _to_figures(spread, _SETTLED_FIGURES).as_tuple().digits[0] == 1 else 1)
    number = _half_up(number, int(spread.as_tuple().exponent))
    exponent = _power_of_ten(max(number, spread, key=abs))
    shown = f"{_shifted(number, exponent)} ± {_shifted(spread, exponent)}"
    return _with_unit(shown, exponent, unit, has_spread=True), len(number.as_tuple().digits)


def _written(value: float, figures: int) -> tuple[str, int]:
    """The digits of a number with so many figures, and the power of ten that goes with them, 0 for none."""
    if 1 <= figures <= _SETTLED_FIGURES - _SPARE_FIGURES and _SMALLEST <= abs(value) < inf:
        return _written_quickly(value, figures)
    number = _to_figures(_decimal(value), figures)
    exponent = _power_of_ten(number)
    return _shifted(number, exponent), exponent


def _written_quickly(value: float, figures: int) -> tuple[str, int]:
    """The same in whole numbers, which takes a fifth of the time: nearly all figures come this way."""
    mantissa, _, power = f"{abs(value):.{_SETTLED_FIGURES - 1}e}".partition("e")
    exponent, step = int(power), 10 ** (_SETTLED_FIGURES - figures)
    number = (int(mantissa[0] + mantissa[2:]) + step // 2) // step
    if number == 10**figures:  # 9.99 to two figures is 10, not 10.0
        number, exponent = number // 10, exponent + 1
    digits, sign = str(number), "-" if value < 0 else ""
    if not -3 <= exponent < 5:
        return f"{sign}{digits[0]}.{digits[1:]}".rstrip("."), exponent
    if exponent < 0:
        return f"{sign}0.{'0' * (-exponent - 1)}{digits}", 0
    whole = digits[: exponent + 1].ljust(exponent + 1, "0")
    return f"{sign}{whole}.{digits[exponent + 1 :]}".rstrip("."), 0


def _decimal(value: float) -> Decimal:
    if not isfinite(value):
        raise QuantityFault(
            "not-finite", "The result is beyond all numbers.", remedy="Check the magnitudes of what is known."
        )
    return Decimal(repr(float(value)))


def _half_up(number: Decimal, place: int) -> Decimal:
    settled_place = number.adjusted() - _SETTLED_FIGURES + 1
    if number and place >= settled_place + _SPARE_FIGURES:
        number = number.quantize(Decimal(1).scaleb(settled_place), ROUND_HALF_UP)
    return number.quantize(Decimal(1).scaleb(place), ROUND_HALF_UP)


def _to_figures(number: Decimal, figures: int) -> Decimal:
    if not number:
        return Decimal(0)
    figures = min(max(figures, 1), _MOST_FIGURES)
    place = number.adjusted() - figures + 1
    result = _half_up(number, place)
    # 9.99 to two figures is 10, not 10.0
    return result if result.adjusted() == number.adjusted() else _half_up(result, place + 1)


def _power_of_ten(number: Decimal) -> int:
    """The power to write with a number, 0 if it is better written out."""
    power = number.adjusted()
    return power if number and not -3 <= power < 5 else 0


def _shifted(number: Decimal, exponent: int) -> str:
    return format(number.scaleb(-exponent), "f")


def _with_unit(digits: str, exponent: int, unit: Unit, *, has_spread: bool) -> Rendered:
    if has_spread and (exponent or unit.text):
        digits = f"({digits})"
    power = f" × 10{str(exponent).translate(_SUPERSCRIPTS)}" if exponent else ""
    text = _joined(f"{digits.replace('-', '−')}{power}", unit.text)
    return Rendered(text, _as_html(text), _as_latex(digits.replace("±", "\\pm"), exponent, unit))


def _joined(number: str, unit: str) -> str:
    if unit[:1] in _SIGNS:
        minus = "−" if number[0] == "−" else ""
        return f"{minus}{unit[0]}{number.removeprefix('−')}{unit[1:]}"
    return f"{number}{unit}" if unit in {"", "%"} else f"{number} {unit}"


def _as_html(text: str) -> str:
    return (
        text
        if text.isascii()
        else _RAISED.sub(lambda raised: f"<sup>{raised[0].translate(_TO_PLAIN)}</sup>", text)
    )


def _as_latex(digits: str, exponent: int, unit: Unit) -> str:
    number = f"{digits} \\times 10^{{{exponent}}}" if exponent else digits
    sign = _SIGNS.get(unit.text[:1])
    if sign is not None:
        below = _RAISED.sub(lambda raised: f"^{raised[0].translate(_TO_PLAIN)}", unit.text[1:])
        minus = "-" if number[0] == "-" else ""
        return f"{minus}{sign}{number.removeprefix('-')}" + (f"/\\mathrm{{{below[1:]}}}" if below else "")
    if unit.text == "%":
        return f"{number}\\%"
    return f"{number}\\,{unit.latex}" if unit.latex else number
