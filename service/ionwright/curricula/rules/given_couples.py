"""Courses in which the task gives the couples, or the observation, that decide."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.ion import IONS
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import contender, forming, ions, listed, metal, products, sentence_start

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell

_BATH = "The task was taken as one of plating or refining, where the anode dissolves and its metal deposits."


@dataclass(frozen=True, slots=True)
class GivenCouples:
    """Decides only what needs no couples: the one process that is possible, and the bath with an anode of its metal."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "The task gives the couples, or what is seen, and that decides. Without them the answer is certain only "
            "where one process is possible, or where the anode is the metal of the bath, as in refining and plating."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the only process that is possible, or leave the electrode open and name those that are."""
        impossible = {
            p: why for p in situation.remaining if (why := _why_impossible(p, situation)) is not None
        }
        entrants = situation.entrants()
        unprinted = (p for p in situation.of(Kind.CHARGE, Kind.REACTION) if p not in entrants)
        impossible |= dict.fromkeys(unprinted, "")
        open_ones = [p for p in situation.remaining if p not in impossible]
        bath = situation.cell.plating_metal()
        own = [p for p in open_ones if bath and p.metal == bath and p.kind is not Kind.FILM]
        ruled_out = tuple(Remark(p, why) for p, why in impossible.items())
        if own:
            rest = [p for p in open_ones if p is not own[0]]
            return Ruling(
                chosen=own[0],
                because=(f"The anode is {metal(bath)} and the solution holds its ions, so {_runs(own[0])}.",),
                ruled_out=(
                    *ruled_out,
                    *(Remark(p, f"In such a bath {_runs(own[0])} instead.") for p in rest),
                ),
                assumptions=(_BATH,),
            )
        if len(open_ones) == 1:
            return Ruling(
                chosen=open_ones[0],
                because=(f"Only one process is possible here, so {forming(open_ones[0])}.",),
                ruled_out=ruled_out,
            )
        what = "reductions" if situation.competition.electrode == "cathode" else "oxidations"
        told = listed(f"{contender(p)} to {products(p)}" for p in open_ones)
        return undecidable(
            f"Several {what} are possible here ({told}), and in this course the couples or the observation "
            "that the task gives decide between them."
        )

    def also_reads(self, cell: Cell) -> Hashable:
        """The metal of a plating bath."""
        return cell.plating_metal()


def _runs(process: ElectrodeProcess) -> str:
    name = metal(process.metal)
    return f"{name} {'dissolves' if process.kind is Kind.DISSOLVES else 'deposits'}"


def _why_impossible(process: ElectrodeProcess, situation: Situation) -> str | None:
    """Why no task would give this couple: a sentence, or empty for one that no course speaks of; None if one might."""
    known = IONS.get(process.reactant)
    is_deposit = process.kind is Kind.METAL and not situation.cell.is_molten
    if is_deposit and known and known.plates == "never":
        return (
            f"{sentence_start(ions(process.reactant))} stay in solution: {metal(process.metal)} "
            "never deposits from water."
        )
    is_cation_at_anode = situation.competition.electrode == "anode" and process.reactant.charge > 0
    return "" if is_cation_at_anode and not process.is_listed else None
