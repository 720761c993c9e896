"""Sizes in a plan: a value in a unit that suits it, with the figures that a bench needs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.figures import notations
from ionwright.chemistry.units import read_unit

if TYPE_CHECKING:
    from ionwright.chemistry.figures import Rendered
    from ionwright.chemistry.units import Unit

__all__ = ["Measure", "fitting"]

_LADDERS: Final = {
    "current": ("uA", "mA", "A", "kA"), "time": ("s", "min", "h", "d"), "charge": ("C", "kC", "MC"),
    "amount": ("nmol", "umol", "mmol", "mol", "kmol"), "mass": ("ng", "ug", "mg", "g", "kg", "t"),
    "volume": ("cm3", "dm3", "m3"), "length": ("um", "mm", "cm"), "current density": ("mA/cm2", "A/cm2"),
    "concentration": ("mmol/dm3", "mol/dm3"), "fraction": ("%",), "area": ("cm2", "m2"), "density": ("mg/m3",),
}  # fmt: skip
_FROM: Final = {"time": 2.0, "current": 0.1, "mass": 0.1, "amount": 0.1, "concentration": 0.01}
"""A larger unit is used from so many of it; from 1 where none is named."""


@dataclass(frozen=True, slots=True)
class Measure:
    """A quantity of a plan.

    Parameters
    ----------
    value
        In full, counted in `unit`.
    figures
        To how many significant figures it is shown.
    """

    value: float
    unit: Unit
    figures: int

    @property
    def rendered(self) -> Rendered:
        """In each notation."""
        return notations(self.value, self.figures, self.unit)

    @property
    def text(self) -> str:
        """For people: ``"0.18 g"``."""
        return self.rendered.text

    def counted_in(self, symbol: str) -> float:
        """The value in another unit of the same dimension."""
        return self.value * self.unit.si / read_unit(symbol).si


def fitting(value: float, symbol: str, figures: int) -> Measure:
    """A measure in the unit that suits its size.

    Parameters
    ----------
    value
        Counted in the unit `symbol`.
    """
    given = read_unit(symbol)
    ladder = [read_unit(one) for one in _LADDERS.get(given.dimension, (symbol,))]
    si = value * given.si
    unit = ladder[0]
    for larger in ladder[1:]:
        threshold = _FROM.get(given.dimension, 1.0) * larger.si
        if abs(si) >= threshold * (1 - 1e-9):
            unit = larger
    return Measure(si / unit.si, unit, figures)
