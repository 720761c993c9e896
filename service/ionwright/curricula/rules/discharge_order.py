"""Discharge at the anode by a list of negative ions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROXIDE
from ionwright.chemistry.process import Kind
from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import forming, ions, listed, sentence_start

if TYPE_CHECKING:
    from ionwright.chemistry.process import ElectrodeProcess
    from ionwright.chemistry.species import Species


@dataclass(frozen=True, slots=True)
class DischargeOrder(ReadsNothingElse):
    """Of the negative ions present the one that stands last in the list is discharged.

    Parameters
    ----------
    order
        Negative ions, the hardest to discharge first; hydroxide among them.
    """

    order: tuple[Species, ...]

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "Otherwise the negative ion that is easiest to discharge reacts. The order, hardest first, is: "
            f"{', '.join(ions(ion) for ion in self.order)}."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the last in the list, unless an anion is there for which the course has no rule."""
        unplaced = [p for p in situation.of(Kind.REACTION, Kind.CHARGE) if p.reactant.charge < 0]
        beyond = dict.fromkeys(ions(p.reactant) for p in unplaced if p.reactant not in self.order)
        if beyond:
            return undecidable(
                f"This course has no rule for {listed(beyond)} at the anode: they are not in its order of discharge."
            )
        contest = [p for p in situation.remaining if p.reactant in self.order]
        chosen = max(contest, key=lambda p: self.order.index(p.reactant))
        return Ruling(
            chosen=chosen,
            because=(self._because(chosen, situation),),
            ruled_out=tuple(
                Remark(p, self._why_not(p, chosen)) for p in situation.remaining if p is not chosen
            ),
        )

    def _because(self, chosen: ElectrodeProcess, situation: Situation) -> str:
        start = sentence_start(ions(chosen.reactant))
        own = (ion for ion in situation.cell.own_ions if ion.charge < 0 and ion != chosen.reactant)
        present = (*own, HYDROXIDE) if chosen.reactant != HYDROXIDE else tuple(own)
        harder = [ion for ion in present if ion in self.order and self._is_harder(ion, chosen.reactant)]
        if harder:
            return (
                f"{start} are discharged more easily than {listed(ions(ion) for ion in harder)}, "
                f"so they are chosen and {forming(chosen)}."
            )
        return f"{start} are the only negative ions that can be discharged here, so {forming(chosen)}."

    def _is_harder(self, ion: Species, than: Species) -> bool:
        return self.order.index(ion) < self.order.index(than)

    def _why_not(self, process: ElectrodeProcess, chosen: ElectrodeProcess) -> str:
        """The reason beside the chosen ion; empty for cations, of which no course speaks at the anode."""
        if process.reactant not in self.order:
            return ""
        return (
            f"{sentence_start(ions(process.reactant))} are harder to discharge than {ions(chosen.reactant)}."
        )
