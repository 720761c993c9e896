"""Discharge at a mercury cathode."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.chemistry.medium import ACIDIC
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation
from ionwright.curricula.potentials import WATER_V
from ionwright.curricula.wording import ions, metal, sentence_start


@dataclass(frozen=True, slots=True)
class Amalgam(ReadsNothingElse):
    """At a mercury cathode a group 1 metal dissolves in the mercury before hydrogen forms."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "At a mercury cathode sodium and its like form an amalgam, because hydrogen forms very slowly there."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the amalgam if there is one and no metal below hydrogen competes."""
        amalgams = situation.of(Kind.AMALGAM)
        nobler = [
            p for p in situation.of(Kind.METAL) if p.potential_V is not None and p.potential_V > WATER_V
        ]
        if not amalgams or nobler or situation.cell.medium == ACIDIC:
            return Ruling(ruled_out=tuple(Remark(p, _no_amalgam(p)) for p in amalgams))
        chosen = amalgams[0]
        hydrogen = situation.of(Kind.HYDROGEN)
        return Ruling(
            chosen=chosen,
            because=(
                (
                    f"Hydrogen forms very slowly on mercury, and {metal(chosen.metal)} dissolves in it as an amalgam, "
                    f"so {ions(chosen.reactant)} are discharged although water is present."
                ),
            ),
            ruled_out=tuple(Remark(p, _why_not(p, chosen)) for p in situation.remaining if p is not chosen),
            also_accepted=tuple(
                Remark(p, "A course that does not teach the mercury cathode answers hydrogen.")
                for p in hydrogen
            ),
            is_contested=True,
        )


def _why_not(process: ElectrodeProcess, chosen: ElectrodeProcess) -> str:
    """The reason beside an amalgam; empty for the same ions as a solid metal, of which no course speaks here."""
    name = metal(chosen.metal)
    if process.kind is Kind.HYDROGEN:
        return f"Hydrogen forms so slowly on mercury that {name} comes first."
    if process.reactant == chosen.reactant:
        return ""
    return f"{sentence_start(ions(process.reactant))} stay in solution while {name} dissolves in the mercury."


def _no_amalgam(process: ElectrodeProcess) -> str:
    return f"Other ions are discharged more easily, so no {metal(process.metal)} amalgam forms."
