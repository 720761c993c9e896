"""Cautions: the hazards of what goes into a cell and of what comes out, deferring to local rules."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, NamedTuple

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.medium import ACIDIC, ALKALINE
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.substance import SUBSTANCES
from ionwright.teaching.unaided import NITRATE

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.cell import Cell

_EXPLOSIVE_WITH_HYDROGEN = frozenset({"O2", "Cl2"})
_EXPLOSIVE_WITH_AMMONIUM = frozenset({"Cl2", "Br2", "I2"})
_AMMONIUM = species("NH4^+")


@dataclass(frozen=True, slots=True)
class Caution:
    """One hazard and what to do about it."""

    hazard: str
    text: str


@cache
def _table() -> dict[str, Any]:
    text = files("ionwright.teaching").joinpath("data", "cautions.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


@cache
def _row(name: str) -> Caution:
    row = _table()[name]
    return Caution(row["hazard"], row["text"])


def nitrogen_halide_caution(own: Iterable[Species], formulas: Iterable[str]) -> Caution | None:
    """The caution where a halogen forms, or may form, among ammonium ions; None if nothing like that can happen.

    Parameters
    ----------
    own
        Ions of the electrolyte.
    formulas
        Of the products, canonical ASCII.
    """
    if _AMMONIUM in own and not _EXPLOSIVE_WITH_AMMONIUM.isdisjoint(formulas):
        return _row("ammonium_with_halogen")
    return None


@cache
def _by_ion() -> dict[Species, tuple[Caution, ...]]:
    found: dict[Species, tuple[Caution, ...]] = {}
    for row in _table()["ion"]:
        for text in row["ions"]:
            kind = species(text)
            found[kind] = (*found.get(kind, ()), Caution(row["hazard"], row["text"]))
    return found


class _Setting(NamedTuple):
    """All that decides which cautions belong to a cell."""

    own: tuple[Species, ...]
    medium: str
    melt_C: float | None
    electrode_ids: tuple[str, str]
    products: tuple[Species, ...]
    formed: tuple[Species, ...]
    is_concentrated_acid: bool


def cautions(cell: Cell, products: tuple[Species, ...], formed: tuple[Species, ...]) -> tuple[Caution, ...]:
    """The cautions that belong to a cell; the general one, which defers to local rules, stands last.

    Parameters
    ----------
    products
        What forms at both electrodes.
    formed
        Ions that the solution gains.
    """
    return _cautions(
        _Setting(
            own=cell.own_ions,
            medium=cell.medium,
            melt_C=cell.melt_C,
            electrode_ids=(cell.cathode.id, cell.anode.id),
            products=products,
            formed=formed,
            is_concentrated_acid=cell.word_for(HYDROGEN_ION) == "concentrated",
        )
    )


@lru_cache(maxsize=4096)
def _cautions(setting: _Setting) -> tuple[Caution, ...]:
    found = [caution for kind in setting.products for caution in _of_product(kind)]
    gases = {kind.formula for kind in setting.products}
    if "H2" in gases and gases & _EXPLOSIVE_WITH_HYDROGEN:
        found.append(_row("hydrogen_with_oxidiser"))
    if explosive := nitrogen_halide_caution(setting.own, gases):
        found.append(explosive)
    is_nitric_acid = setting.medium == ACIDIC and NITRATE in setting.own
    salts = [kind for kind in (*setting.own, *setting.formed) if not (is_nitric_acid and kind == NITRATE)]
    found += [caution for kind in salts for caution in _by_ion().get(kind, ())]
    if is_nitric_acid:
        found.append(_row("nitric_acid"))
    found += _of_medium(setting)
    found += _of_electrodes(*setting.electrode_ids)
    return (*dict.fromkeys(found), _row("general"))


def _of_electrodes(cathode_id: str, anode_id: str) -> list[Caution]:
    cathode, anode = electrodes()[cathode_id], electrodes()[anode_id]
    texts = [(cathode, cathode.caution), (anode, anode.caution), (anode, anode.caution_as_anode)]
    return [Caution(f"{electrode.name} electrode", text) for electrode, text in texts if text]


def _of_product(kind: Species) -> list[Caution]:
    known = SUBSTANCES.get(kind.ascii)
    if known is None or not known.caution or known.hazard.startswith("low hazard"):
        return []
    return [Caution(known.hazard, known.caution)]


def _of_medium(setting: _Setting) -> list[Caution]:
    if setting.melt_C is not None:
        is_industrial = setting.melt_C > float(_table()["industrial_melt"]["above_C"])
        return [_row("molten"), *([_row("industrial_melt")] if is_industrial else [])]
    if setting.medium == ACIDIC:
        return [_row("concentrated_acid" if setting.is_concentrated_acid else "acid")]
    if setting.medium == ALKALINE:
        return [_row("alkali")]
    return [_row("alkali_formed")] if HYDROXIDE in setting.formed else []
