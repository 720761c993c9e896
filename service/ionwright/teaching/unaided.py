"""What the electrodes do without any current: metals that the solution attacks by itself."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.anode_metal import INERT, dissolved_ion
from ionwright.chemistry.couple import metal_couples
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.medium import ACIDIC, ALKALINE
from ionwright.chemistry.species import species
from ionwright.curricula.wording import listed, metal

if TYPE_CHECKING:
    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.couple import Couple
    from ionwright.chemistry.species import Species

NITRATE = species("NO3^-")
# Above this a metal gives off hydrogen from dilute acid too slowly to be seen in a lesson [V].
_SLOW_IN_ACID_V = -0.3
# A coating that is seen in a lesson needs a clear difference in potential [V]; steel in a nickel bath stays as it is.
_CLEAR_V = 0.3
# Metals below this are not displaced from water [V].
_PLATES_FROM_WATER_V = -0.8
# Metals that alkali attacks quickly enough to be seen.
_ATTACKED_BY_ALKALI = frozenset({"Al", "Zn"})


def unaided_reactions(cell: Cell) -> tuple[str, ...]:
    """What happens at a metal electrode even with the current off, as sentences; empty for a melt."""
    if cell.is_molten:
        return ()
    ids = dict.fromkeys((cell.cathode.id, cell.anode.id))
    return tuple(text for id_ in ids for text in _of_electrode(id_, cell.own_ions, cell.medium))


@lru_cache(maxsize=2048)
def _of_electrode(electrode_id: str, own: tuple[Species, ...], medium: str) -> tuple[str, ...]:
    electrode = electrodes()[electrode_id]
    if not electrode.metal or electrode.anode == INERT:
        return ()
    ion = dissolved_ion(electrode.metal)
    couple = next(row for row in metal_couples()[electrode.metal] if row.oxidised[0] == ion)
    coating = _displaced(couple, own)
    happens = [
        *(
            [f"becomes coated with {listed(metal(symbol) for symbol in coating)} from the solution"]
            if coating
            else []
        ),
        *_attack(couple, electrode.metal, own, medium),
    ]
    return tuple(f"Even with the current off, {electrode.name} {what}." for what in happens)


def _displaced(couple: Couple, own: tuple[Species, ...]) -> list[str]:
    """Symbols of the metals whose ions this metal takes out of the solution."""
    rows = [
        row
        for ion in own
        if ion.charge > 0
        for row in metal_couples().get(ion.formula, ())
        if row.oxidised[0] == ion
    ]
    threshold_V = max(couple.potential_V + _CLEAR_V, _PLATES_FROM_WATER_V)
    return list(dict.fromkeys(row.reduced[0].formula for row in rows if row.potential_V > threshold_V))


def _attack(couple: Couple, symbol: str, own: tuple[Species, ...], medium: str) -> list[str]:
    """What acid or alkali does to the metal."""
    if medium == ACIDIC and NITRATE in own:
        return ["is attacked by nitric acid, which gives off toxic brown fumes if it is strong"]
    if medium == ACIDIC and couple.potential_V < _SLOW_IN_ACID_V:
        return ["reacts with the acid and gives off hydrogen"]
    if medium == ALKALINE and symbol in _ATTACKED_BY_ALKALI:
        return ["reacts with the alkali and gives off hydrogen"]
    return []
