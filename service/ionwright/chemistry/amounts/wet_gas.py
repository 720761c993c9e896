"""The temperature of a gas that was collected over water, where it stands in two laws at once."""

from __future__ import annotations

from typing import Final

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.water_vapour import vapour_pressure_kPa

__all__ = ["wet_gas_temperature_K"]

_ZERO_CELSIUS_K: Final = 273.15
_BOILING_K: Final = 373.15
_HALVINGS: Final = 60


def wet_gas_temperature_K(  # noqa: N802 - the name says the unit
    pressure_kPa: float, volume_dm3: float, amount_mol: float, gas_constant_J_mol_K: float
) -> float:
    """The temperature at which gas and water vapour together have this pressure [K].

    Parameters
    ----------
    pressure_kPa, volume_dm3
        Of gas and vapour together.
    amount_mol
        Of the dry gas.
    gas_constant_J_mol_K
        As the course prints it [J/(mol K)].

    Raises
    ------
    QuantityFault
        ``contradictory``: no temperature between 0 and 100 °C fits.

    Notes
    -----
    p = nRT/V + p_w(T) rises with T throughout, so that halving the span finds the only solution.
    """

    def surplus_kPa(temperature_K: float) -> float:  # noqa: N802 - the name says the unit
        dry_kPa = amount_mol * gas_constant_J_mol_K * temperature_K / volume_dm3
        return dry_kPa + vapour_pressure_kPa(temperature_K - _ZERO_CELSIUS_K) - pressure_kPa

    low, high = _ZERO_CELSIUS_K, _BOILING_K
    if surplus_kPa(low) > 0 or surplus_kPa(high) < 0:
        detail = "At no temperature between 0 and 100 °C do the gas and the water vapour have this pressure together."
        raise QuantityFault("contradictory", detail, remedy="Check the pressure, the volume and the charge.")
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if surplus_kPa(middle) > 0 else (middle, high)
    return (low + high) / 2
