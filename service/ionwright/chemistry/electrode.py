"""Electrode materials: what they are called, and whether they dissolve, film over or stay as they are."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

from ionwright.chemistry.faults import CellRefused, UnknownSpecies
from ionwright.chemistry.tables import read_table

MERCURY = "mercury"
GRAPHITE = "graphite"
_LONGEST_NAME = 60
# Words that say what an electrode looks like, not what it is made of.
_SHAPES = frozenset(
    {
        "electrode",
        "electrodes",
        "plate",
        "sheet",
        "anode",
        "cathode",
        "bar",
        "strip",
        "mesh",
        "gauze",
        "spoon",
        "key",
        "coin",
    }
)


@dataclass(frozen=True, slots=True)
class Electrode:
    """One electrode material.

    Parameters
    ----------
    id
        Stable word, such as ``"steel"``.
    name
        The name in a sentence.
    aliases
        What else people call it; symbols and trade names.
    metal
        Symbol of the metal that would dissolve; empty for carbon, oxides and coatings.
    anode
        ``"inert"``, ``"active"`` (dissolves) or ``"filming"`` (grows an oxide skin), unless the electrolyte
        decides otherwise.
    melts_C
        Melting point [degC]; None if the material does not melt in any school cell.
    caution, caution_as_anode
        The hazard of handling this material, or of using it as the anode; may be empty.
    """

    id: str
    name: str
    aliases: tuple[str, ...]
    metal: str
    anode: str
    melts_C: float | None
    caution: str
    caution_as_anode: str
    note: str
    source: str
    verified: bool


@dataclass(frozen=True, slots=True)
class AnodeCase:
    """How one electrode behaves as the anode in one kind of electrolyte."""

    anion: str
    behaviour: str
    equation: str
    seen: str


def _electrode(row: dict[str, Any]) -> Electrode:
    return Electrode(
        id=row["id"],
        name=row["name"],
        aliases=tuple(row["aliases"]),
        metal=row.get("metal", ""),
        anode=row["anode"],
        melts_C=row.get("melts_C"),
        caution=row.get("caution", ""),
        caution_as_anode=row.get("caution_as_anode", ""),
        note=row.get("note", ""),
        source=row["source"],
        verified=row["verified"],
    )


@cache
def electrodes() -> dict[str, Electrode]:
    """Every electrode material of the table, by id."""
    return {row["id"]: _electrode(row) for row in read_table("electrodes.toml")["electrode"]}


@cache
def anode_cases(electrode_id: str) -> tuple[AnodeCase, ...]:
    """The electrolytes in which this anode behaves otherwise than by default; the first that fits counts."""
    return tuple(
        AnodeCase(row["anion"], row["behaviour"], row.get("equation", ""), row["seen"])
        for row in read_table("electrodes.toml")["anode_case"]
        if row["electrode"] == electrode_id
    )


@cache
def _by_name() -> dict[str, Electrode]:
    names: dict[str, Electrode] = {}
    for electrode in electrodes().values():
        for name in (electrode.id.replace("-", " "), electrode.name, *electrode.aliases):
            names[_plain(name)] = electrode
    return names


@cache
def _unfit(table: str) -> dict[str, str]:
    rows = read_table("electrodes.toml")[table]
    return {_plain(name): row["name"] for row in rows for name in (row["name"], *row["aliases"])}


def _plain(text: str) -> str:
    words = re.split(r"[\s_-]+", text.strip().casefold())
    return " ".join(word for word in words if word not in _SHAPES) or " ".join(words)


@lru_cache(maxsize=512)
def find_electrode(text: str) -> Electrode:
    """The electrode material that a name, symbol or trade name means.

    Raises
    ------
    UnknownSpecies
        Code ``unknown-electrode``, with near matches in the remedy.
    CellRefused
        Code ``non-conducting-electrode`` for wood, plastic and the like; ``electrode-reacts`` for metals that
        attack water.
    """
    plain = _plain(text[: _LONGEST_NAME + 1])
    if len(text) <= _LONGEST_NAME and (found := _by_name().get(plain)):
        return found
    if name := _unfit("non_conductor").get(plain):
        raise CellRefused(
            "non-conducting-electrode",
            f"{name.capitalize()} does not conduct electricity, so no current can pass through it.",
            remedy="Use a conductor such as graphite, platinum, copper or steel.",
        )
    if name := _unfit("reacts_with_water").get(plain):
        raise CellRefused(
            "electrode-reacts",
            f"{name.capitalize()} cannot be an electrode: it reacts with water, and would melt or burn in a melt.",
            remedy="Use a conductor that water leaves alone, such as graphite, platinum or steel.",
        )
    near = difflib.get_close_matches(plain, _by_name(), n=3, cutoff=0.7)
    names = list(dict.fromkeys(_by_name()[match].name for match in near))
    hint = (
        f"Did you mean {' or '.join(names)}?"
        if names
        else "Common materials are graphite, platinum, copper, nickel, silver, zinc and steel."
    )
    shown = text if len(text) <= _LONGEST_NAME else text[:_LONGEST_NAME] + "…"
    raise UnknownSpecies(
        "unknown-electrode", f"No electrode material called '{shown}' is known here.", remedy=hint
    )
