"""What a demonstration adds to the air of a room: toxic gases against their limits, and gases that can be lit."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.exposure import limits, lower_explosive_percent, ppm_from_mg_m3, short_term_limits
from ionwright.chemistry.room_air import evenly_mixed_mg_m3, peak_mg_m3
from ionwright.chemistry.species import species
from ionwright.chemistry.units import read_unit
from ionwright.curricula.wording import product, sentence_start
from ionwright.teaching.demonstrations.measure import Measure, fitting
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from ionwright.chemistry.exposure import Limit

__all__ = [
    "FlammableGas",
    "GasInRoom",
    "InAir",
    "Release",
    "Room",
    "flammable_gases",
    "toxic_gases",
    "volume_text",
]

_OF_ESCAPE: Final = "IDLH"
"""The kind of a figure from which one must flee: no limit to work under."""
_VAPOUR_OF: Final = {"I2": "iodine_vapour"}
"""Rules of thumb for the part that leaves a solution as vapour; all of the others is counted."""


class Room(NamedTuple):
    """A room; no air changes are known if None."""

    volume_m3: float
    air_changes_per_h: float | None
    time_h: float


class Release(NamedTuple):
    """A product that may reach the air.

    Parameters
    ----------
    state
        Its state symbol where it forms.
    is_certain
        Whether the course decides that it forms, or another answer does.
    """

    of: str
    state: str
    mass_g: float
    volume_dm3: float | None
    is_certain: bool


@dataclass(frozen=True, slots=True)
class InAir:
    """A concentration in air."""

    ppm: Measure
    mg_m3: Measure
    times_limit: float


@dataclass(frozen=True, slots=True)
class GasInRoom:
    """A toxic gas in the air of a room.

    Parameters
    ----------
    is_certain
        Whether it forms for sure; otherwise all of the charge is reckoned for it, as the worst case.
    limit
        The strictest short-term limit of the tables, or the strictest of all where they hold no short-term one.
    limits
        All the short-term limits of the tables.
    evenly_mixed
        If all of it spreads evenly through the room and nothing leaves.
    at_peak
        At the end of the run, with the air changes given; None without them.
    judged_m3, times_judged
        The air that is counted in judging where it may be made, and how many times the limit it comes to there.
    rule
        The rule of thumb that says which part is counted as vapour; empty if all of it is.
    volume_dm3
        Of the gas; None if it is no gas where it forms, or not known.
    air_to_limit
        The volume of air in which what is counted just comes to the limit.
    says
        All of that in words.
    """

    of: str
    is_certain: bool
    limit: Limit
    limits: tuple[Limit, ...]
    evenly_mixed: InAir
    at_peak: InAir | None
    judged_m3: float
    times_judged: float
    rule: str
    volume_dm3: float | None
    air_to_limit: Measure
    says: str


@dataclass(frozen=True, slots=True)
class FlammableGas:
    """A gas that can be lit, in the air of a room.

    Parameters
    ----------
    lower_limit
        The share of air by volume from which it can be lit [%].
    evenly_mixed
        The share if all of it spreads evenly through the room [%].
    air_to_limit
        The volume of mixture that all of it could bring to the lower limit.
    volume
        How much of it forms.
    """

    of: str
    volume: Measure
    lower_limit: Measure
    evenly_mixed: Measure
    air_to_limit: Measure
    says: str


def toxic_gases(released: Iterable[Release], room: Room) -> tuple[GasInRoom, ...]:
    """The toxic gases among what is released, with their concentrations in a room."""
    return tuple(_toxic(one, room, limit) for one, limit in _with_limit(released))


def _with_limit(released: Iterable[Release]) -> Iterator[tuple[Release, Limit]]:
    for one in released:
        if one.state == "s" and one.of not in _VAPOUR_OF:
            continue
        known = short_term_limits(one.of) or tuple(
            limit for limit in limits(one.of) if limit.kind != _OF_ESCAPE
        )
        by_volume = [limit for limit in known if limit.ppm is not None]
        if by_volume:
            yield one, min(by_volume, key=lambda limit: (limit.mg_m3, not limit.verified))


def _toxic(one: Release, room: Room, limit: Limit) -> GasInRoom:
    rule = _VAPOUR_OF.get(one.of, "") if one.state != "g" else ""
    mass_mg = one.mass_g * 1000 * (rule_of_thumb(rule).in_unit("1") if rule else 1.0)
    mixed = _in_air(evenly_mixed_mg_m3(mass_mg, room.volume_m3), one.of, limit)
    peak = None
    if room.air_changes_per_h is not None:
        value = peak_mg_m3(mass_mg, room.time_h, room.volume_m3, room.air_changes_per_h)
        peak = _in_air(value, one.of, limit)
    judged_m3 = min(room.volume_m3, rule_of_thumb("counted_air").in_unit("m3"))
    gas = GasInRoom(
        of=one.of,
        is_certain=one.is_certain,
        limit=limit,
        limits=short_term_limits(one.of),
        evenly_mixed=mixed,
        at_peak=peak,
        judged_m3=judged_m3,
        times_judged=evenly_mixed_mg_m3(mass_mg, judged_m3) / limit.mg_m3,
        rule=rule,
        volume_dm3=one.volume_dm3,
        air_to_limit=fitting(mass_mg / limit.mg_m3, "m3", 2),
        says="",
    )
    return replace(gas, says=" ".join(_toxic_said(gas, one.state, room)))


def _in_air(mg_m3: float, of: str, limit: Limit) -> InAir:
    ppm = ppm_from_mg_m3(mg_m3, of)
    return InAir(
        Measure(ppm, read_unit("ppm"), 2), Measure(mg_m3, read_unit("mg/m3"), 2), mg_m3 / limit.mg_m3
    )


def _toxic_said(gas: GasInRoom, state: str, room: Room) -> Iterator[str]:
    name, limit, mixed, peak = product(species(gas.of)), gas.limit, gas.evenly_mixed, gas.at_peak
    if not gas.is_certain:
        yield f"If {name} forms after all, which is not sure, then at worst:"
    part = f"About {rule_of_thumb(gas.rule).written.text} of the {name}" if gas.rule else f"All the {name}"
    yield (
        f"{part}, spread evenly through {volume_text(room.volume_m3)} without ventilation, comes to "
        f"{mixed.ppm.text} ({mixed.mg_m3.text})."
    )
    if peak is not None and room.air_changes_per_h:
        yield (
            f"With {room.air_changes_per_h:g} air changes an hour it peaks at {peak.ppm.text} ({peak.mg_m3.text}) "
            "at the end of the run."
        )
    kind = limit.kind if limit.is_short_term else f"{limit.kind}, as the tables hold no short-term one"
    standing = "read in its source" if limit.verified else "recalled and not read: look it up"
    yield (
        f"The strictest limit of the tables is {limit.printed} ({limit.jurisdiction}, {kind}; {standing}): "
        f"{_compared((peak or mixed).times_limit)}."
    )
    if gas.rule:
        yield f"That counts the vapour, since most of the {name} stays in the solution or on the electrode."
    elif state != "g":
        yield f"That counts all of it as vapour, though much of the {name} stays in the solution."
    yield (
        f"Near the cell there is far more than the average of the room; what is counted would bring "
        f"{gas.air_to_limit.text} of air to the limit."
    )


def _compared(times: float) -> str:
    if times > 1:
        return f"that is {times:.2g} times the limit" if times < 1000 else "that is exceeded by far"
    return f"that is {fitting(times, '1', 2).text} of the limit"


def volume_text(volume_m3: float) -> str:
    """The volume of a room in words: ``"150 m³"``."""
    return f"{volume_m3:.0f} m³" if volume_m3 >= 100 else f"{volume_m3:.3g} m³"


def flammable_gases(released: Iterable[Release], room: Room) -> tuple[FlammableGas, ...]:
    """The gases among what is released that can be lit."""
    found = []
    for one in released:
        percent = lower_explosive_percent(one.of)
        if percent is not None and one.volume_dm3 is not None and one.is_certain:
            found.append(_flammable(one.of, one.volume_dm3, percent, room))
    return tuple(found)


def _flammable(of: str, volume_dm3: float, percent: float, room: Room) -> FlammableGas:
    lower = Measure(percent, read_unit("%"), 2)
    mixed = Measure(volume_dm3 / 1000 / room.volume_m3 * 100, read_unit("%"), 2)
    air = fitting(volume_dm3 / (percent / 100), "dm3", 2)
    name = sentence_start(product(species(of)))
    far = "far below" if mixed.value < percent / 10 else "below" if mixed.value < percent else "above"
    says = (
        f"{name} can be lit from {percent:g}% of air by volume. Spread evenly through {volume_text(room.volume_m3)}, "
        f"all of it comes to {mixed.text}, {far} that; but caught under a lid or in a vessel it can make up to "
        f"{air.text} of explosive mixture: keep flames and sparks away."
    )
    return FlammableGas(of, fitting(volume_dm3, "dm3", 2), lower, mixed, air, says)
