"""Tries a plugin's curriculum on a few cells before it is let in."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.equation import Equation
from ionwright.curricula.describe import describe
from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.time_limit import within
from ionwright.curricula.verdict import judge_afresh

if TYPE_CHECKING:
    from ionwright.curricula.model import Curriculum

__all__ = ["try_out"]

_TIME_LIMIT_S: Final = 5.0
_SILENT: Final = "no-decision"
# Every kind of process is open in one of these: metals, hydrogen, oxygen, halogens, active anodes, a melt.
_CELLS: Final = (
    ("CuCl2", "", "aqueous", "graphite", "graphite"),
    ("NaCl", "dilute", "aqueous", "platinum", "platinum"),
    ("NaCl", "concentrated", "aqueous", "graphite", "graphite"),
    ("KI", "", "aqueous", "graphite", "graphite"),
    ("H2SO4", "dilute", "aqueous", "platinum", "platinum"),
    ("NaOH", "dilute", "aqueous", "steel", "platinum"),
    ("NiSO4", "", "aqueous", "steel", "nickel"),
    ("AgNO3", "", "aqueous", "silver", "silver"),
    ("PbBr2", "", "molten", "graphite", "graphite"),
)


def try_out(curriculum: Curriculum) -> None:
    """Describe a curriculum, judge a few cells under it and write the half-equations.

    A rule may still pass over a cell in silence; that is told where the cell is asked for.

    Raises
    ------
    TimeLimitPassed
        If all this takes longer than a few seconds.
    CurriculumFault
        If a rule fails, or an equation is none or does not balance.
    BaseException
        Whatever a rule or a convention that is not under watch raises.
    """
    within(_TIME_LIMIT_S, _try_out, curriculum)


def _try_out(curriculum: Curriculum) -> None:
    describe(curriculum)  # as every list of the curricula does
    for cell in _cells():
        for electrode in ("cathode", "anode"):
            try:
                chosen = judge_afresh(cell, electrode, curriculum).chosen
            except CurriculumFault as fault:
                if fault.code == _SILENT:
                    continue
                raise
            if chosen is not None:
                conventions = curriculum.conventions
                written = conventions.written(chosen, cell.medium)
                for one in (written, *conventions.also_written(chosen, cell.medium)):
                    _check(one, curriculum)


def _check(equation: object, curriculum: Curriculum) -> None:
    if not isinstance(equation, Equation):
        told = f"The conventions of {curriculum.id} write {type(equation).__name__}, not an Equation."
        raise CurriculumFault("rule-failed", told)
    if not equation.is_balanced:
        told = f"The conventions of {curriculum.id} write {equation}, which does not balance."
        raise CurriculumFault("rule-failed", told)


@cache
def _cells() -> tuple[Cell, ...]:
    return tuple(
        make_cell(
            CellDescription(
                electrolyte=(Ingredient(formula, word or None),), state=state, cathode=cathode, anode=anode
            )
        )
        for formula, word, state, cathode, anode in _CELLS
    )
