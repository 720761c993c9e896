"""The vapour pressure of water, for gases that are collected over it."""

from __future__ import annotations

import math
from typing import Any, Final

from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.tables import read_table

__all__ = ["GREATEST_RELATIVE_ERROR", "temperature_of_vapour_pressure", "vapour_pressure_kPa"]

_ZERO_CELSIUS_K: Final = CONSTANTS["zero_celsius"].value
_FORMULA: Final[dict[str, Any]] = read_table("water_vapour.toml")["formula"]
_CRITICAL_K: Final[float] = _FORMULA["critical_temperature_K"]
_LN_CRITICAL_KPA: Final = math.log(_FORMULA["critical_pressure_kPa"])
_TERMS: Final[tuple[tuple[float, float], ...]] = tuple(
    (term["a"], term["power"]) for term in _FORMULA["terms"]
)
_LOW_C: Final[float] = _FORMULA["low_C"]
_HIGH_C: Final[float] = _FORMULA["high_C"]
_SMALLEST_STEP: Final = 1e-13

GREATEST_RELATIVE_ERROR: Final[float] = _FORMULA["greatest_relative_error"]
"""How far the formula strays from the published points, 10 to 40 °C, at most."""


def vapour_pressure_kPa(t_C: float) -> float:  # noqa: N802 -- unit symbols keep their case
    """The pressure of water vapour over liquid water [kPa].

    Parameters
    ----------
    t_C
        Temperature [°C], 0 to 100.

    Raises
    ------
    QuantityFault
        ``out-of-range`` outside 0 to 100 °C.

    Notes
    -----
    The saturation equation of Wagner and Pruss, smooth and rising over the whole range. It strays from the IAPWS-95
    points in the table by less than 0.01 % between 10 and 40 °C; Buck's formula strays by 0.04 % and a straight line
    between the points has corners.
    """
    if not _LOW_C <= t_C <= _HIGH_C:
        raise QuantityFault(
            "out-of-range",
            f"The vapour pressure of water is known here from {_LOW_C:g} to {_HIGH_C:g} °C, not at {t_C:g} °C.",
            remedy="Give a temperature in that range, such as 20 degC, or the vapour pressure itself.",
        )
    return math.exp(_ln_pressure(t_C + _ZERO_CELSIUS_K))


def temperature_of_vapour_pressure(p_kPa: float) -> float:
    """The temperature at which water has this vapour pressure [°C].

    Parameters
    ----------
    p_kPa
        Pressure of the vapour [kPa], 0.611 to 101.4.

    Raises
    ------
    QuantityFault
        ``out-of-range`` for a pressure that water does not have between 0 and 100 °C.
    """
    if not _LOWEST_KPA <= p_kPa <= _HIGHEST_KPA:
        raise QuantityFault(
            "out-of-range",
            f"Between {_LOW_C:g} and {_HIGH_C:g} °C the vapour pressure of water is {_LOWEST_KPA:.3f} to "
            f"{_HIGHEST_KPA:.1f} kPa, never {p_kPa:g} kPa.",
            remedy="Give a pressure in that range, such as 2.34 kPa.",
        )
    # ln p is nearly a straight line in 1/T, so secants reach the point in a few steps
    wanted = math.log(p_kPa)
    x0, x1 = 1 / (_LOW_C + _ZERO_CELSIUS_K), 1 / (_HIGH_C + _ZERO_CELSIUS_K)
    y0, y1 = _ln_pressure(1 / x0), _ln_pressure(1 / x1)
    while abs(x1 - x0) > _SMALLEST_STEP * x1 and y1 != y0:
        x0, x1 = x1, x1 + (wanted - y1) * (x1 - x0) / (y1 - y0)
        y0, y1 = y1, _ln_pressure(1 / x1)
    return min(max(1 / x1 - _ZERO_CELSIUS_K, _LOW_C), _HIGH_C)


def _ln_pressure(T_K: float) -> float:
    """ln(p/kPa) at a temperature: ln(p/pc) = Tc/T × Σ a θ^power, with θ = 1 − T/Tc."""
    theta = 1 - T_K / _CRITICAL_K
    return _LN_CRITICAL_KPA + _CRITICAL_K / T_K * sum(a * math.pow(theta, power) for a, power in _TERMS)


_LOWEST_KPA: Final = vapour_pressure_kPa(_LOW_C)
_HIGHEST_KPA: Final = vapour_pressure_kPa(_HIGH_C)
