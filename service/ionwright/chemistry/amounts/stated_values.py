"""What a written quantity is worth to the solver: its value, its figures, and what rounding may hide in it."""

from __future__ import annotations

from math import floor, log10
from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.values import EXACT
from ionwright.chemistry.units import read_unit

if TYPE_CHECKING:
    from ionwright.chemistry.amounts.relations import Number
    from ionwright.chemistry.written_quantity import Written

__all__ = ["figures_of", "number_of", "slack_of", "value_in"]


def value_in(kind: str, written: Written) -> float:
    """What a written quantity is in the unit of the solver."""
    own = read_unit(QUANTITIES[kind].unit)
    return (written.value + written.unit.offset) * written.unit.si / own.si


def number_of(value: float, written: Written, unit: str, name: str) -> Number:
    """The value with the uncertainty that was written beside it, if there is one.

    Parameters
    ----------
    value
        In the unit of the solver.
    unit
        Symbol of that unit.
    name
        What the quantity is called, to tell later what it brings to an uncertainty.
    """
    if written.uncertainty is None:
        return value
    import uncertainties  # noqa: PLC0415 - loaded only where an uncertainty was given

    spread = written.uncertainty * written.unit.si / read_unit(unit).si
    return uncertainties.ufloat(value, spread, tag=name)


def figures_of(key: Key, value: float, written: Written) -> int:
    """Significant figures in the unit of the solver: 20 °C, good to one degree, is 293 K."""
    if key.kind == "ion_charge":
        return EXACT
    if not written.unit.offset or not written.value:
        return written.significant_figures
    return written.significant_figures + floor(log10(abs(value))) - floor(log10(abs(written.value)))


def slack_of(written: Written) -> float:
    """Half a unit of the last written place, relative to the value [1]; a temperature counts from absolute zero."""
    size = abs(written.value)
    if not size:
        return 0.0
    place = floor(log10(size)) - written.significant_figures + 1
    return float(0.5 * 10.0**place / abs(written.value + written.unit.offset))
