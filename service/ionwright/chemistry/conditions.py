"""Reads temperatures and current densities strictly: a number and a unit, nothing else."""

from __future__ import annotations

import re

from ionwright.errors import IonwrightError

_LONGEST = 40
_QUANTITY = re.compile(r"((?>[+-]?\d{1,6}(?:\.\d{1,8})?(?:[eE][+-]?\d{1,2})?))\s{0,3}([^\s\d.]\S{0,11})\Z")
_KELVIN = 273.15
_TEMPERATURE_OFFSETS = {"degC": 0.0, "°C": 0.0, "C": 0.0, "℃": 0.0, "K": -_KELVIN}
_CURRENT_DENSITIES = {
    "A/cm2": 1.0,
    "A/cm^2": 1.0,
    "A/cm²": 1.0,
    "mA/cm2": 1e-3,
    "mA/cm^2": 1e-3,
    "mA/cm²": 1e-3,
    "A/dm2": 1e-2,
    "A/dm^2": 1e-2,
    "A/dm²": 1e-2,
    "A/m2": 1e-4,
    "A/m^2": 1e-4,
    "A/m²": 1e-4,
}


def read_temperature(text: str) -> float:
    """A temperature in °C, from a text such as ``"25 degC"`` or ``"298 K"`` [degC].

    Raises
    ------
    IonwrightError
        ``unreadable-quantity``, ``wrong-dimension`` or ``below-absolute-zero``.
    """
    value, unit = _split(text, "a temperature such as 25 degC")
    if unit not in _TEMPERATURE_OFFSETS:
        raise IonwrightError(
            "wrong-dimension",
            f"'{unit}' is not a unit of temperature.",
            remedy="Write degC or K, as in 25 degC.",
        )
    temperature_C = value + _TEMPERATURE_OFFSETS[unit]
    if temperature_C < -_KELVIN:
        raise IonwrightError(
            "below-absolute-zero",
            "No temperature lies below absolute zero, -273.15 degC.",
            remedy="Check the number and the unit.",
        )
    return temperature_C


def read_current_density(text: str) -> float:
    """A current density from a text such as ``"10 mA/cm2"`` [A/cm²].

    Raises
    ------
    IonwrightError
        ``unreadable-quantity``, ``wrong-dimension`` or ``out-of-range``.
    """
    value, unit = _split(text, "a current density such as 10 mA/cm2")
    if unit not in _CURRENT_DENSITIES:
        raise IonwrightError(
            "wrong-dimension",
            f"'{unit}' is not a unit of current density.",
            remedy="Write A/cm2, mA/cm2, A/dm2 or A/m2, as in 10 mA/cm2.",
        )
    density = value * _CURRENT_DENSITIES[unit]
    if not 0 < density <= 1e3:
        raise IonwrightError(
            "out-of-range",
            "A current density must be above zero and not beyond 1000 A/cm2.",
            remedy="A bench cell runs at about 10 mA/cm2.",
        )
    return density


def _split(text: str, wanted: str) -> tuple[float, str]:
    stripped = text.strip().replace("\N{MINUS SIGN}", "-")
    match = _QUANTITY.match(stripped) if len(stripped) <= _LONGEST else None
    if match is None:
        raise IonwrightError(
            "unreadable-quantity",
            f"'{text.strip()[:_LONGEST]}' is not a number with a unit.",
            remedy=f"Write {wanted}.",
        )
    return float(match[1]), match[2]
