"""Discharge at the anode by the school rule: a halide first, else hydroxide."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROXIDE, couples
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import PASS, ReadsNothingElse, Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import forming, ions, listed, products, sentence_start

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.species import Species
    from ionwright.curricula.concentration import ConcentrationRule

ALWAYS = "always"
WHEN_CONCENTRATED = "when-concentrated"
# Below the potential of oxygen from water [V] a halogen forms in a real cell, however dilute the solution.
_OXYGEN_V = couples()["O2/H2O"].printed_V


@dataclass(frozen=True, slots=True)
class Halides:
    """Discharges a halide, always or only from a concentrated solution.

    Parameters
    ----------
    halides
        The ions that count as halides here; fluoride never does.
    mode
        ``"always"`` or ``"when-concentrated"``.
    concentration
        How "concentrated" is read.
    order
        Negative ions, the hardest to discharge first, for choosing between two halides; without it that is left open.
    """

    halides: tuple[Species, ...]
    mode: str
    concentration: ConcentrationRule
    order: tuple[Species, ...] = ()

    @property
    def sentence(self) -> str:
        """The rule in words."""
        names = listed((ions(ion) for ion in self.halides), "or")
        if self.mode == ALWAYS:
            return f"If {names} are present, the halogen is given off, whatever the concentration."
        return (
            f"From a concentrated solution of {names} the halogen is given off, from a dilute one oxygen; "
            f"a number counts as concentrated from {self.concentration.threshold_mol_dm3:g} mol/dm³ of the ion upwards."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the halogen, rule it out, or leave the choice between two halides open."""
        present = [p for p in situation.of(Kind.HALOGEN) if p.reactant in self.halides]
        if not present:
            return PASS
        if self.mode == WHEN_CONCENTRATED and len(present) > 1:
            return self._several(present, situation)
        if len(present) > 1:
            return self._between(present, situation)
        if self.mode == ALWAYS:
            return self._choose(present[0], situation, "", is_doubtful=False)
        return self._by_concentration(present[0], situation)

    def also_reads(self, cell: Cell) -> Hashable:
        """How each halide's concentration is read."""
        if self.mode == ALWAYS:
            return ()
        return tuple(self.concentration.read(cell, ion) for ion in self.halides if ion in cell.own_ions)

    def _several(self, present: list[ElectrodeProcess], situation: Situation) -> Ruling:
        """Of several halides those that count as concentrated stay in the running."""
        strong = [p for p in present if self.concentration.read(situation.cell, p.reactant).is_concentrated]
        if len(strong) > 1:
            return self._between(strong, situation)
        if strong:
            return self._by_concentration(strong[0], situation)
        rulings = [self._by_concentration(p, situation) for p in present]
        return Ruling(
            because=(
                f"The solution is dilute, so {listed(ions(p.reactant) for p in present)} stay in solution.",
            ),
            ruled_out=tuple(remark for ruling in rulings for remark in ruling.ruled_out),
            also_accepted=tuple(remark for ruling in rulings for remark in ruling.also_accepted),
            is_contested=any(ruling.is_contested for ruling in rulings),
            assumptions=tuple(text for ruling in rulings for text in ruling.assumptions),
        )

    def _between(self, halides: list[ElectrodeProcess], situation: Situation) -> Ruling:
        """Two halides are in the running: the order decides, or the course has no rule to choose between them."""
        if not all(p.reactant in self.order for p in halides):
            return _no_rule_between(halides)
        easiest = max(halides, key=lambda p: self.order.index(p.reactant))
        others = [p for p in halides if p is not easiest]
        why = (
            f"{sentence_start(ions(easiest.reactant))} are discharged more easily than "
            f"{listed(ions(p.reactant) for p in others)}: they stand later in the order of discharge."
        )
        ruling = (
            self._choose(easiest, situation, "", is_doubtful=False)
            if self.mode == ALWAYS
            else self._by_concentration(easiest, situation)
        )
        kept = tuple(one for one in ruling.ruled_out if one.process not in others)
        return replace(
            ruling,
            because=(*ruling.because, why),
            ruled_out=(*kept, *(Remark(p, why) for p in others)),
        )

    def _by_concentration(self, halide: ElectrodeProcess, situation: Situation) -> Ruling:
        reading = self.concentration.read(situation.cell, halide.reactant)
        if reading.is_concentrated:
            return self._choose(halide, situation, reading.assumption, is_doubtful=reading.is_doubtful)
        name, halogen = ions(halide.reactant), products(halide)
        forms_anyway = halide.potential_V is not None and halide.potential_V < _OXYGEN_V
        contested = reading.is_doubtful or forms_anyway
        if reading.is_doubtful:
            accepted = f"If the solution counts as concentrated, {halogen} is the answer."
        else:
            accepted = f"A real cell gives {halogen} even from a dilute solution."
        return Ruling(
            because=(f"The solution is dilute, so {name} stay in solution.",),
            ruled_out=(Remark(halide, f"From a dilute solution oxygen forms rather than {halogen}."),),
            also_accepted=(Remark(halide, accepted),) if contested else (),
            is_contested=contested,
            assumptions=(reading.assumption,) if reading.assumption else (),
        )

    def _choose(
        self, chosen: ElectrodeProcess, situation: Situation, assumption: str, *, is_doubtful: bool
    ) -> Ruling:
        name = ions(chosen.reactant)
        start = (
            f"{sentence_start(name)} are present"
            if self.mode == ALWAYS
            else f"The solution is concentrated in {name}"
        )
        rest = [p for p in situation.remaining if p is not chosen]
        oxygen = [p for p in rest if p.kind is Kind.OXYGEN]
        return Ruling(
            chosen=chosen,
            because=(f"{start}, so {forming(chosen)} at the anode rather than oxygen.",),
            ruled_out=tuple(
                Remark(
                    p,
                    f"{sentence_start(name)} are discharged in preference to hydroxide ions."
                    if p in oxygen
                    else "",
                )
                for p in rest
            ),
            also_accepted=tuple(
                Remark(p, "If the solution counts as dilute, oxygen is the answer.")
                for p in oxygen
                if is_doubtful
            ),
            is_contested=is_doubtful,
            assumptions=(assumption,) if assumption else (),
        )


def _no_rule_between(halides: list[ElectrodeProcess]) -> Ruling:
    """Two halides are present and the course has no rule to choose between them."""
    easiest = min(halides, key=lambda p: p.potential_V or 0.0)
    present = listed(ions(p.reactant) for p in halides)
    return undecidable(
        f"The solution holds {present}, and this course has no rule for choosing between two halides. "
        f"By electrode potentials {products(easiest)} would form first."
    )


@dataclass(frozen=True, slots=True)
class OxygenOtherwise(ReadsNothingElse):
    """Without a halide to discharge, hydroxide ions are discharged and oxygen is given off."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Otherwise hydroxide ions are discharged and oxygen is given off."

    def apply(self, situation: Situation) -> Ruling:
        """Choose oxygen, unless an anion is there for which the course has no rule."""
        beyond = [p.reactant for p in situation.of(Kind.REACTION, Kind.CHARGE) if p.reactant.charge < 0]
        if beyond:
            return undecidable(
                f"This course has no rule for {listed(dict.fromkeys(ions(ion) for ion in beyond))} at the anode: "
                "they are oxidised more easily than hydroxide ions."
            )
        chosen = situation.of(Kind.OXYGEN)[0]
        return Ruling(
            chosen=chosen,
            because=(self._because(situation),),
            # only negative ions are discharged at the anode at this depth, so cations are not spoken of
            ruled_out=tuple(Remark(p, "") for p in situation.remaining if p is not chosen),
        )

    def _because(self, situation: Situation) -> str:
        in_running = {p.reactant for p in situation.competition.of(Kind.HALOGEN) if not p.slow}
        own = [ion for ion in situation.cell.own_ions if ion.charge < 0 and ion != HYDROXIDE]
        others = [ion for ion in own if ion not in in_running]
        if others:
            left = listed(ions(ion) for ion in others)
            return f"Hydroxide ions are discharged more easily than {left}, which stay; oxygen is given off."
        if own:
            return "Hydroxide ions are discharged and oxygen is given off."
        return "Hydroxide ions are the only negative ions present, so they are discharged and oxygen is given off."
