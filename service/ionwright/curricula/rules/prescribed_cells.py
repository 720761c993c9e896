"""Courses that prescribe their cells: a closed list, and nothing beyond it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.curricula.model import PASS, Ruling, Situation, undecidable
from ionwright.curricula.wording import listed

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell

ANY = "any"
INERT = "inert"
PLATING = "plating"
_WATER = "H2O"


@dataclass(frozen=True, slots=True)
class PrescribedCell:
    """One cell, or one sort of cell, that a course prescribes.

    Parameters
    ----------
    name
        What the course calls it, as a noun phrase.
    electrolyte
        Formulas of what conducts; none for any. Water may always be there.
    state
        ``"aqueous"`` or ``"molten"``.
    anode
        ``"inert"``, ``"any"``, ``"plating"`` (the anode is the metal whose ions are in the solution), or a material.
    """

    name: str
    electrolyte: frozenset[str]
    state: str
    anode: str

    def holds(self, cell: Cell) -> bool:
        """Whether a cell is this one."""
        formulas = {one.compound.formula for one in cell.electrolyte.ingredients}
        if self.electrolyte and (formulas - {_WATER} or formulas) != self.electrolyte:
            return False
        if cell.is_molten != (self.state == "molten"):
            return False
        if self.anode == PLATING:
            return bool(cell.plating_metal())
        return self.anode in {ANY, cell.anode.id, cell.anode_behaviour()}


@dataclass(frozen=True, slots=True)
class PrescribedCells:
    """Leaves every cell undecided that the course does not prescribe.

    Parameters
    ----------
    cells
        The closed list.
    """

    cells: tuple[PrescribedCell, ...]

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return f"The course prescribes its cells: {listed(one.name for one in self.cells)}. Others are left open."

    def apply(self, situation: Situation) -> Ruling:
        """Pass for a prescribed cell, so that the later rules decide it."""
        if any(one.holds(situation.cell) for one in self.cells):
            return PASS
        return undecidable(
            f"This course prescribes its cells and has no rule beyond them: {listed(one.name for one in self.cells)}. "
            "This cell is not among them."
        )

    def also_reads(self, cell: Cell) -> Hashable:
        """Whether the cell is prescribed."""
        return any(one.holds(cell) for one in self.cells)
