"""Negative ions that are discharged only from a concentrated solution, although they are slow otherwise."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROGEN_ION
from ionwright.chemistry.process import Kind
from ionwright.chemistry.species import species
from ionwright.curricula.model import PASS, Remark, Ruling, Situation
from ionwright.curricula.wording import contender, ions, listed, products, sentence_start

if TYPE_CHECKING:
    from collections.abc import Hashable, Mapping

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.species import Species
    from ionwright.curricula.concentration import ConcentrationRule

ANSWER = "answer"
ACCEPTED = "accepted"
_SULFATE = species("SO4^2-")


@dataclass(frozen=True, slots=True)
class FromConcentrated:
    """Discharges sulfate from concentrated sulfuric acid, or a carboxylate from its concentrated salt.

    Parameters
    ----------
    ions
        The ions, each with ``"answer"`` (it is what the course writes) or ``"accepted"`` (oxygen is, this too).
    concentration
        How "concentrated" is read.
    """

    ions: Mapping[Species, str]
    concentration: ConcentrationRule

    @property
    def sentence(self) -> str:
        """The rule in words."""
        answers = [ions(ion) for ion, standing in self.ions.items() if standing == ANSWER]
        accepted = [ions(ion) for ion, standing in self.ions.items() if standing == ACCEPTED]
        told = []
        if answers:
            told.append(f"from a concentrated solution {listed(answers)} are oxidised themselves")
        if accepted:
            told.append(f"from a concentrated solution the oxidation of {listed(accepted)} is accepted")
        sulfate = " (sulfate only in sulfuric acid)" if _SULFATE in self.ions else ""
        return f"{sentence_start('; '.join(told))}{sulfate}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose or accept the oxidation of such an ion, if nothing but oxygen competes with it."""
        slow = [p for p in situation.remaining if p.slow and p.reactant in self.ions]
        rivals = [p for p in situation.remaining if not p.slow and p.kind is not Kind.OXYGEN]
        concentrated = [p for p in slow if self._is_concentrated(situation.cell, p.reactant)]
        if not concentrated or rivals or situation.competition.untabulated:
            return PASS
        chosen = concentrated[0]
        reading = self.concentration.read(situation.cell, chosen.reactant)
        assumptions = (reading.assumption,) if reading.assumption else ()
        if self.ions[chosen.reactant] == ACCEPTED:
            accepted = Remark(chosen, f"From so concentrated a solution {products(chosen)} may form as well.")
            return Ruling(also_accepted=(accepted,), is_contested=True, assumptions=assumptions)
        oxygen = situation.of(Kind.OXYGEN)
        why = f"The solution is concentrated, so {ions(chosen.reactant)} are oxidised themselves rather than water."
        return Ruling(
            chosen=chosen,
            because=(why,),
            ruled_out=tuple(
                Remark(
                    p, why if p in oxygen else f"{sentence_start(contender(p))} stay in solution: {p.slow}"
                )
                for p in situation.remaining
                if p is not chosen
            ),
            also_accepted=tuple(
                Remark(p, "If the solution counts as dilute, oxygen is the answer.") for p in oxygen
            ),
            is_contested=reading.is_doubtful,
            assumptions=assumptions,
        )

    def also_reads(self, cell: Cell) -> Hashable:
        """How the concentration of each such ion is read."""
        return tuple(self.concentration.read(cell, ion) for ion in self.ions if ion in cell.own_ions)

    def _is_concentrated(self, cell: Cell, ion: Species) -> bool:
        if ion == _SULFATE and any(own.charge > 0 and own != HYDROGEN_ION for own in cell.own_ions):
            return False
        return self.concentration.read(cell, ion).is_concentrated
