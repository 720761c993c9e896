"""A demonstration in the words of whoever plans it: a cell, what should be seen, and what the bench allows."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.written_quantity import read_written
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities.description import TaskConventions

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription

__all__ = ["VISIBLE", "Aim", "DemonstrationDescription", "aim_of"]

VISIBLE = "visible"
"""The value of an aim that leaves to the planner how much can be seen."""
_LOOK: Final = re.compile(r" (?:coat|layer|gas|bead|amount|volume)$", re.IGNORECASE)
"""What people write behind a product that is to be visible."""


@dataclass(frozen=True, slots=True)
class Aim:
    """What should be seen of one product.

    Parameters
    ----------
    value
        A quantity as it was written, such as "10 cm3", or "visible".
    quantity
        Name of the quantity: mass, volume, amount, thickness or number of particles; or a phrase such as
        "thickness of Ni". Empty for what fits a visible product.
    of
        Formula or name of the product; it counts before that in the phrase. Empty if there is no doubt.
    electrode
        ``cathode`` or ``anode``, where both give the product; empty if not said.
    where
        Path of it in the request, for faults.
    """

    value: str
    quantity: str = ""
    of: str = ""
    electrode: str = ""
    where: str = "aims"


def aim_of(text: str, where: str = "aims") -> Aim:
    """The aim that a text says: "10 cm3 of H2", "10 cm3 H2", "a visible coat of nickel", "visible Ni", "visible"."""
    plain = text.strip()
    value, found, of = plain.rpartition(" of ")
    if found:
        return Aim(value.strip(), of=of.strip(), where=where)
    word, _, of = plain.partition(" ")
    if word.lower() == VISIBLE:
        return Aim(word, of=_LOOK.sub("", f" {of}").strip(), where=where)
    value, _, of = plain.rpartition(" ")
    if of[:1].isalpha() and _is_quantity(value) and not _is_quantity(plain):
        return Aim(value.strip(), of=of, where=where)
    return Aim(plain, where=where)


def _is_quantity(text: str) -> bool:
    """Whether a text is a number with a unit."""
    try:
        return read_written(text).unit.symbol != "1"
    except IonwrightError:
        return False


@dataclass(frozen=True, slots=True, kw_only=True)
class DemonstrationDescription:
    """All that is said of a demonstration; equal descriptions have equal plans.

    Parameters
    ----------
    cell
        What conducts and the electrodes.
    aims
        What should be seen; the one that needs most charge counts.
    within
        A time such as "20 min", a span such as "10 to 20 min", or empty for a lesson.
    current
        The current that is set; empty to have one recommended.
    highest_current
        The most that the supply gives; empty for that of an ordinary school supply.
    cathode_area, anode_area
        Area of each electrode under the surface, or empty.
    bath_volume
        Volume of the electrolyte, or empty.
    room_volume, air_changes
        The room, and how often an hour its air is renewed; empty if not known.
    efficiency
        Current efficiency at the electrode of the aims; empty for all of the current.
    gas_temperature, gas_pressure
        Of the gases that are collected, in place of the molar volume of the course; empty if not said.
    conventions
        Constants in place of those of the course.
    """

    cell: CellDescription
    aims: tuple[Aim, ...]
    within: str = ""
    current: str = ""
    highest_current: str = ""
    cathode_area: str = ""
    anode_area: str = ""
    bath_volume: str = ""
    room_volume: str = ""
    air_changes: str = ""
    efficiency: str = ""
    gas_temperature: str = ""
    gas_pressure: str = ""
    conventions: TaskConventions = field(default_factory=TaskConventions)
