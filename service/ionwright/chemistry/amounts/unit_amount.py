"""Quantities that do not depend on how much there is: they are reckoned for one square centimetre, minute or kilogram.

The thickness of a layer follows from current density and time whatever the area, and the energy for each kilogram
from the voltage whatever the mass. Such a task is worked for a unit of what it leaves open.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

__all__ = ["unit_amounts"]

_SIZES: Final = frozenset(
    {"charge", "current", "amount_of_electrons", "number_of_electrons", "energy", "power", "cost", "area", "amount",
     "mass", "number_of_particles", "volume", "solid_volume", "total_mass", "total_volume", "exhaustion_charge",
     "charge_left",
     "amount_left", "concentration", "concentration_change", "useful_charge", "electrons_used"}
)  # fmt: skip
"""Quantities that say how much there is, so that nothing may be chosen."""

_OF_A_LAYER: Final = frozenset({"thickness", "growth_rate"})


def unit_amounts(mentioned: Collection[Key]) -> Iterator[tuple[Key, str]]:
    """What a task may be reckoned for, each with how much of it, as people write it.

    Parameters
    ----------
    mentioned
        All that the task states or asks for.
    """
    kinds = {key.kind for key in mentioned}
    layer = next((key for key in mentioned if key.kind in _OF_A_LAYER), None)
    if layer and "current_density" in kinds and kinds.isdisjoint(_SIZES):
        yield Key("area", layer.process), "1 cm2"
    if "growth_rate" in kinds and "thickness" not in kinds and "time" not in kinds:
        others = {kind for kind in kinds if QUANTITIES[kind].scope == "species"} - {"growth_rate", "density"}
        if not others and "charge" not in kinds:
            yield Key("time"), "1 min"
    energy = next((key for key in mentioned if key.kind == "specific_energy"), None)
    if energy and kinds.isdisjoint(_SIZES):
        yield Key("mass", energy.process, energy.of), "1 kg"
