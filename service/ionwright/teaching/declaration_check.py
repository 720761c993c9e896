"""What a declared curriculum decides on a standard set of cells, beside the curriculum that it builds on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.verdict import judge_afresh

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species
    from ionwright.curricula import Curriculum

__all__ = ["STANDARD_CELLS", "CheckedCell", "Decision", "decisions"]


def _cell(
    formula: str, word: str | None = None, *, anode: str = "graphite", cathode: str = "graphite"
) -> CellDescription:
    return CellDescription(electrolyte=(Ingredient(formula, word),), anode=anode, cathode=cathode)


def _melt(formula: str) -> CellDescription:
    return CellDescription(electrolyte=(Ingredient(formula),), state="molten")


STANDARD_CELLS: Final = (
    _melt("PbBr2"),
    _melt("NaCl"),
    _cell("H2SO4", "dilute", anode="platinum", cathode="platinum"),
    _cell("HCl", "concentrated"),
    _cell("HCl", "dilute"),
    _cell("NaOH", "dilute"),
    _cell("NaCl", "concentrated"),
    _cell("NaCl", "0.2 mol/dm3"),
    _cell("NaCl", "dilute"),
    _cell("KBr", "dilute"),
    _cell("KI", "dilute"),
    _cell("NaF", "concentrated"),
    _cell("Na2SO4", "dilute"),
    _cell("NaNO3", "dilute"),
    _cell("CuCl2", "dilute"),
    _cell("CuSO4", "dilute"),
    _cell("CuSO4", "dilute", anode="copper", cathode="copper"),
    _cell("AgNO3", "dilute"),
    _cell("AgNO3", "dilute", anode="silver", cathode="copper"),
    _cell("ZnSO4", "dilute"),
    _cell("NiSO4", "dilute", anode="nickel", cathode="steel"),
    _cell("Pb(NO3)2", "dilute"),
    _cell("MgCl2", "concentrated"),
)
"""The cells on which courses part most often, and those that every course meets."""


@dataclass(frozen=True, slots=True)
class Decision:
    """What a curriculum says of one electrode.

    Parameters
    ----------
    products
        What forms; empty if the curriculum does not decide.
    also_accepted
        Products of the other answers that it accepts.
    is_contested
        Whether courses or real cells differ there.
    fault
        Why the rules could not be used; empty if they could.
    """

    products: tuple[Species, ...]
    also_accepted: tuple[tuple[Species, ...], ...] = ()
    is_contested: bool = False
    fault: str = ""


@dataclass(frozen=True, slots=True)
class CheckedCell:
    """One cell with the decisions on it, at the cathode and at the anode; `base` is None without a base."""

    description: CellDescription
    decided: tuple[Decision, Decision]
    base: tuple[Decision, Decision] | None

    @property
    def differs(self) -> tuple[bool, bool]:
        """Whether the curriculum decides otherwise than its base, at the cathode and at the anode."""
        if self.base is None:
            return (False, False)
        (cathode, anode), (base_cathode, base_anode) = self.decided, self.base
        return (cathode.products != base_cathode.products, anode.products != base_anode.products)


def decisions(curriculum: Curriculum, base: Curriculum | None = None) -> tuple[CheckedCell, ...]:
    """What a curriculum decides on the standard cells.

    Parameters
    ----------
    base
        The curriculum that it builds on; None if it stands alone.
    """
    return tuple(
        CheckedCell(
            description, _decided(description, curriculum), _decided(description, base) if base else None
        )
        for description in STANDARD_CELLS
    )


def _decided(description: CellDescription, curriculum: Curriculum) -> tuple[Decision, Decision]:
    return _decision(description, "cathode", curriculum), _decision(description, "anode", curriculum)


def _decision(description: CellDescription, electrode: str, curriculum: Curriculum) -> Decision:
    try:
        verdict = judge_afresh(make_cell(description), electrode, curriculum)
    except CurriculumFault as fault:
        return Decision((), fault=str(fault))
    return Decision(
        verdict.chosen.products if verdict.chosen else (),
        tuple(remark.process.products for remark in verdict.also_accepted),
        verdict.is_contested,
    )
