"""How much of a gas the air of a room holds while a cell gives it off, with and without ventilation."""

from __future__ import annotations

from math import expm1
from typing import Final

__all__ = ["evenly_mixed_mg_m3", "peak_mg_m3"]

_AS_GOOD_AS_NONE: Final = 1e-9


def evenly_mixed_mg_m3(mass_mg: float, room_m3: float) -> float:
    """The concentration of a gas that is spread evenly through a room which nothing leaves [mg/m³].

    Parameters
    ----------
    mass_mg
        Mass of the gas [mg].
    room_m3
        Volume of the room [m³].
    """
    return mass_mg / room_m3


def peak_mg_m3(mass_mg: float, time_h: float, room_m3: float, air_changes_per_h: float) -> float:
    """The concentration of a gas at the end of a run, which is its peak, in a room with ventilation [mg/m³].

    Parameters
    ----------
    mass_mg
        Mass of the gas that the whole run gives off at a steady rate [mg].
    time_h
        How long the run takes [h].
    room_m3
        Volume of the room [m³].
    air_changes_per_h
        How often fresh air of the volume of the room enters in an hour [1/h]; 0 for no ventilation.

    Notes
    -----
    Fresh air enters and mixed air leaves at Q_v, and the air is mixed evenly at all times, so that
    V dc/dt = G - Q_v c and, with none at the start, ::

        c(t) = (G / Q_v) (1 - exp(-Q_v t / V))

    with the source G = mass_mg / time_h [mg/h] and the air flow Q_v = air_changes_per_h x room_m3 [m³/h]. Without
    ventilation it tends to G t / V, all of the gas in all of the air.
    """
    exponent = air_changes_per_h * time_h
    if exponent < _AS_GOOD_AS_NONE:
        return evenly_mixed_mg_m3(mass_mg, room_m3)
    source, flow = mass_mg / time_h, air_changes_per_h * room_m3
    return source / flow * -expm1(-exponent)
