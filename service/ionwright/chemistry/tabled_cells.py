"""The cells of the tables: every electrolyte that is known, set up in the ways that can matter at an electrode."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING

from ionwright.chemistry.anode_metal import INERT
from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.competition import ACTIVE
from ionwright.chemistry.electrode import MERCURY, electrodes
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.electrolytes import known_electrolytes
from ionwright.chemistry.species import species
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["TabledCell", "tabled_cells"]

BOTH = ("cathode", "anode")
CONCENTRATIONS = ("dilute", "concentrated")
# At an active anode the metal and the anion decide: acids and sodium salts stand for all others.
_IDLE_CATIONS = frozenset(species(formula) for formula in ("H^+", "Na^+"))


@dataclass(frozen=True, slots=True)
class TabledCell:
    """One cell of the tables.

    Parameters
    ----------
    name
        School name of its electrolyte.
    description
        The cell as somebody would describe it.
    cell
        The cell.
    electrodes
        Where it has something to say that no other cell of the tables says: ``"cathode"``, ``"anode"`` or both.
    """

    name: str
    description: CellDescription
    cell: Cell
    electrodes: tuple[str, ...]


@cache
def tabled_cells() -> tuple[TabledCell, ...]:
    """Every cell of the tables, in order of the names of the electrolytes.

    Returns
    -------
    tuple of TabledCell
        Each known electrolyte that dissolves, dilute and concentrated, between inert electrodes and with an anode of
        its own metal; acids and sodium salts also with every other active anode, and over mercury; and each electrolyte
        that melts, between inert electrodes.
    """
    return tuple(tabled for known in known_electrolytes() for tabled in _of(known.formula, known.name))


def _of(formula: str, name: str) -> Iterator[TabledCell]:
    for word in CONCENTRATIONS:
        dissolved = CellDescription(electrolyte=(Ingredient(formula, word),))
        cell = _cell_or_none(dissolved)
        if cell is not None:
            yield TabledCell(name, dissolved, cell, BOTH)
            yield from _with_other_electrodes(name, dissolved, cell)
    melt = CellDescription(electrolyte=(Ingredient(formula),), state="molten")
    cell = _cell_or_none(melt)
    if cell is not None:
        yield TabledCell(name, melt, cell, BOTH)


def _with_other_electrodes(name: str, inert: CellDescription, cell: Cell) -> Iterator[TabledCell]:
    cations = {ion for ion in cell.own_ions if ion.charge > 0}
    if cations <= _IDLE_CATIONS:
        yield from _made(name, replace(inert, cathode=MERCURY), ("cathode",))
    own_metals = {symbol for ion in cations for symbol, _ in ion.atoms}
    for electrode in electrodes().values():
        is_own = electrode.metal in own_metals
        if electrode.anode != INERT and (is_own or cations <= _IDLE_CATIONS):
            made = _made(name, replace(inert, anode=electrode.id), BOTH if is_own else ("anode",))
            yield from (tabled for tabled in made if tabled.cell.anode_behaviour() == ACTIVE)


def _made(name: str, description: CellDescription, where: tuple[str, ...]) -> Iterator[TabledCell]:
    cell = _cell_or_none(description)
    if cell is not None:
        yield TabledCell(name, description, cell, where)


def _cell_or_none(description: CellDescription) -> Cell | None:
    try:
        return make_cell(description)
    except IonwrightError:
        return None
