"""Units as a bench writes them: read strictly, with pint as the judge of dimension and size."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from math import prod
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.unit_text import latex_of, read_factors, symbol_of, text_of
from ionwright.chemistry.unit_words import TOKENS

if TYPE_CHECKING:
    from pint import UnitRegistry

    from ionwright.chemistry.unit_words import Factors

__all__ = ["OTHER", "Unit", "dimension_said", "example_of", "is_counted_in", "read_unit", "unit_said"]

OTHER: Final = "other"
"""The dimension of a unit that measures nothing an electrolysis asks for, such as A/s."""

_FAHRENHEIT: Final = re.compile(r"(?:[°º˚]|deg(?:rees?|\.)?)? ?F(?:ahrenheit)?\.?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Unit:
    r"""A unit, with what it measures and what it is worth.

    Parameters
    ----------
    symbol
        Canonical ASCII: ``"mA"``, ``"dm3/mol"``, ``"degC"``; ``"1"`` for a plain number.
    text
        For people: ``"dm³/mol"``, ``"°C"``; empty for a plain number.
    latex
        For a formula: ``"\\mathrm{dm^3\\,mol^{-1}}"``.
    dimension
        What it measures: ``"current"``, ``"molar volume"``, ``"fraction"`` for plain numbers and per cent.
    si
        What one of it is in coherent units of the SI: 0.001 for g, 3600 for A h.
    offset
        What is added for the temperature in kelvin [K].
    currency
        Code of the currency, for money only.
    """

    symbol: str
    text: str
    latex: str
    dimension: str
    si: float
    offset: float = 0.0
    currency: str = ""


class _Dimension(NamedTuple):
    example: str  # its unit is what pint takes the dimension from
    units: str
    said: str


_DIMENSIONS: Final = {
    "current": _Dimension("0.50 A", "A, mA", "amperes"),
    "time": _Dimension("20 min", "s, min, h", "seconds, minutes or hours"),
    "charge": _Dimension("600 C", "C, A h", "coulombs"),
    "amount": _Dimension("0.25 mol", "mol, mmol", "moles"),
    "mass": _Dimension("1.5 g", "g, mg, kg", "grams"),
    "volume": _Dimension("24 cm3", "cm3, dm3, L", "cubic centimetres or cubic decimetres"),
    "length": _Dimension("10 um", "um, mm, cm", "metres or parts of a metre"),
    "area": _Dimension("40 cm2", "cm2, dm2, m2", "square centimetres or square metres"),
    "temperature": _Dimension("25 degC", "degC, K", "degrees Celsius or kelvin"),
    "pressure": _Dimension("101 kPa", "kPa, atm, bar, mmHg", "kilopascals or atmospheres"),
    "voltage": _Dimension("2.0 V", "V, mV", "volts"),
    "resistance": _Dimension("10 ohm", "ohm", "ohms"),
    "energy": _Dimension("1.5 kWh", "J, kJ, kWh", "joules or kilowatt-hours"),
    "power": _Dimension("60 W", "W, kW", "watts"),
    "fraction": _Dimension("0.95", "no unit, or %", "a plain number or a percentage"),
    "molar mass": _Dimension("58.7 g/mol", "g/mol", "grams per mole"),
    "molar volume": _Dimension("24.0 dm3/mol", "dm3/mol", "cubic decimetres per mole"),
    "molar charge": _Dimension("96500 C/mol", "C/mol", "coulombs per mole"),
    "per amount": _Dimension("6.02e23 /mol", "1/mol", "a number per mole"),
    "concentration": _Dimension("0.25 mol/dm3", "mol/dm3, M", "moles per cubic decimetre"),
    "density": _Dimension("8.9 g/cm3", "g/cm3, g/dm3, mg/m3", "grams per cubic centimetre"),
    "current density": _Dimension("10 mA/cm2", "mA/cm2, A/dm2", "amperes per area"),
    "speed": _Dimension("0.5 um/min", "um/min, um/h", "micrometres per minute"),
    "gas constant": _Dimension("8.31 J/(mol K)", "J/(mol K)", "joules per mole and kelvin"),
    "specific energy": _Dimension("15 kWh/kg", "kWh/kg, J/g", "kilowatt-hours per kilogram"),
    "electrochemical equivalent": _Dimension("0.304 mg/C", "g/C, mg/C", "grams per coulomb"),
    "volume rate": _Dimension("10 cm3/min", "cm3/min, dm3/h", "cubic centimetres per minute"),
    "mass rate": _Dimension("2.0 g/h", "g/h, mg/min", "grams per hour"),
    "amount rate": _Dimension("0.10 mmol/min", "mol/s, mmol/min", "moles per second"),
    "per time": _Dimension("3 /h", "1/h, 1/min", "a number per hour"),
    "currency": _Dimension("2.50 GBP", "GBP, EUR, USD", "money"),
    "price of energy": _Dimension("0.28 GBP/kWh", "GBP/kWh, p/kWh", "money per kilowatt-hour"),
}


def dimension_said(dimension: str) -> str:
    """The units of a dimension in words: ``"amperes (A, mA)"``.

    Parameters
    ----------
    dimension
        As `Unit.dimension` has it.
    """
    known = _DIMENSIONS.get(dimension)
    return f"{known.said} ({known.units})" if known else "other ones"


def is_counted_in(dimension: str) -> str:
    """What follows "The current is" in a sentence: ``"in amperes"``, or ``"a number per mole"``.

    Parameters
    ----------
    dimension
        As `Unit.dimension` has it.
    """
    known = _DIMENSIONS.get(dimension)
    if known is None:
        return "in other units"
    return known.said if known.said.startswith(("a ", "an ", "money")) else f"in {known.said}"


def example_of(dimension: str) -> str:
    """A quantity of a dimension as it may be written: ``"0.50 A"``; that one too for a dimension that is not named.

    Parameters
    ----------
    dimension
        As `Unit.dimension` has it.
    """
    return _DIMENSIONS.get(dimension, _DIMENSIONS["current"]).example


def unit_said(unit: Unit) -> str:
    """What several of a unit are called in a sentence: ``"minutes"``, ``"g/cm³"``, ``"a number without a unit"``."""
    token = TOKENS.get(unit.symbol)
    return token.plural if token else unit.text or "a number without a unit"


@lru_cache(maxsize=2048)
def read_unit(text: str, dimension: str = "") -> Unit:
    """The unit that a text says.

    Parameters
    ----------
    text
        A symbol, a word, or a product such as ``"C/mol"``, ``"dm³ mol⁻¹"`` or ``"£ per kWh"``, at most 40 characters.
    dimension
        What is expected; it only settles whether ``"C"`` is the coulomb or the degree Celsius, and ``"F"`` Fahrenheit.

    Raises
    ------
    QuantityFault
        The text is no unit (``unreadable-quantity``); the remedy says what may be meant.
    """
    if dimension == "temperature":
        if text.strip() == "C":
            return _judged((("degC", 1),))
        if _FAHRENHEIT.fullmatch(text.strip()):
            raise QuantityFault(
                "unreadable-quantity", "Fahrenheit is not read here.", position=0,
                remedy='Write the temperature in degC, such as "25 degC".',
            )  # fmt: skip
    return _judged(read_factors(text))


@lru_cache(maxsize=1024)
def _judged(factors: Factors) -> Unit:
    is_celsius = any(symbol == "degC" for symbol, _ in factors)
    if is_celsius and factors != (("degC", 1),):
        raise QuantityFault(
            "unreadable-quantity", "Degrees Celsius are not multiplied by other units.", position=0,
            remedy="Write K in a product, as in J/(mol K).",
        )  # fmt: skip
    worths = [(_worth(symbol), power) for symbol, power in factors]
    money = {TOKENS[symbol].currency for symbol, _ in factors} - {""}
    return Unit(
        symbol_of(factors),
        text_of(factors),
        latex_of(factors),
        _dimensions().get(_key(factors), OTHER),
        float(prod((worth.si**power for worth, power in worths), start=Fraction(1))),
        float(worths[0][0].offset) if is_celsius else 0.0,
        money.pop() if len(money) == 1 else "",
    )


class _Worth(NamedTuple):
    dimensions: tuple[tuple[str, int], ...]
    si: Fraction
    offset: Fraction


@cache
def _worth(symbol: str) -> _Worth:
    """What pint makes of one unit of the list; it sees no product, as it would remember every one for ever."""
    registry = _registry()
    unit = registry.Unit(registry.UnitsContainer({_name(symbol): 1}))
    zero, one = (registry.Quantity(Fraction(n), unit).to_root_units().magnitude for n in (0, 1))
    dimensions = ((name, int(str(power))) for name, power in unit.dimensionality.items())
    return _Worth(tuple(dimensions), one - zero, zero)


@cache
def _registry() -> UnitRegistry[Fraction]:
    """A registry of our own units only, in exact fractions: quick to build, and nothing else can be reached in it."""
    from pint import UnitRegistry  # noqa: PLC0415 - a tenth of a second, and only for who asks for quantities

    registry: UnitRegistry[Fraction] = UnitRegistry(None, non_int_type=Fraction)
    for token in TOKENS.values():
        registry.define(f"{_name(token.symbol)} = {token.definition}")
    return registry


def _name(symbol: str) -> str:
    return "percent" if symbol == "%" else symbol


def _key(factors: Factors) -> Factors:
    powers: dict[str, int] = {}
    for symbol, power in factors:
        for name, own in _worth(symbol).dimensions:
            powers[name] = powers.get(name, 0) + own * power
    # each currency is a dimension of its own, for no rate of exchange is known
    return tuple(sorted(("[money]" if name[1:-1] in TOKENS else name, n) for name, n in powers.items() if n))


@cache
def _dimensions() -> dict[Factors, str]:
    """Names of dimensions, each by an example of it."""
    found = {_key(read_factors(known.example.partition(" ")[2])): name for name, known in _DIMENSIONS.items()}
    # a price without a currency, so that a solver can count in it
    return found | {_key(read_factors("1/kWh")): "price of energy"}
