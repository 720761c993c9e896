"""The vocabulary of discharge rules for the anode of a solution in water."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.chemistry.medium import ALKALINE
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import Species, species
from ionwright.curricula.concentration import ConcentrationReading, ConcentrationRule
from ionwright.curricula.model import PASS, Remark, Ruling, Situation
from ionwright.curricula.wording import (
    contender,
    ions,
    listed,
    product,
    products,
    sentence_start,
    volts,
)

ALWAYS = "always"
WHEN_CONCENTRATED = "when-concentrated"
# Oxygen from hydroxide ions at pH 14 [V], as data sheets print it beside 1.23 V for oxygen from water.
_HYDROXIDE_V = 0.40
# Potentials closer than this are a tie that no school would settle by the last digit [V].
_TIE_V = 0.03
_SALT_FILM_ELEMENTS = frozenset({"Cl", "Br", "I"})


@dataclass(frozen=True, slots=True)
class ActiveElectrode:
    """A metal anode that is easier to oxidise than the anions reacts itself.

    Parameters
    ----------
    taught
        Electrode materials for which the course teaches it; for the others the answer is given and marked as beyond it.
    films
        ``"film"``: an oxide or sulfate skin that grows counts as the answer; ``"oxygen"``: the course treats such an
        anode as inert.
    """

    taught: tuple[str, ...]
    films: str

    @property
    def sentence(self) -> str:
        """The rule in words."""
        taught = listed((name.replace("-", " ") for name in self.taught), "or") if self.taught else "other metals"
        return f"An active anode dissolves instead of an anion being discharged; the course teaches it for {taught}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the electrode's own oxidation."""
        own = situation.of(Kind.DISSOLVES, Kind.FILM)
        if not own:
            return PASS
        chosen = own[0]
        if chosen.kind is Kind.FILM and not _is_salt_film(chosen) and self.films == "oxygen":
            return Ruling(
                ruled_out=(Remark(chosen, "This course treats such an anode as inert; in fact a film grows on it."),),
                also_accepted=(Remark(chosen, f"In fact a film of {products(chosen)} grows on the anode first."),),
                is_contested=True,
            )
        anode = situation.cell.anode
        is_taught = anode.id in self.taught
        return Ruling(
            chosen=chosen,
            because=(_why_active(chosen, anode.name),),
            ruled_out=tuple(
                Remark(p, f"{sentence_start(contender(p))} stay in solution: the {anode.name} of the anode is oxidised more easily.")
                for p in situation.remaining
                if p is not chosen
            ),
            is_contested=not is_taught,
            otherwise="" if is_taught else "A class that treats every anode as inert would answer this.",
            assumptions=()
            if is_taught
            else (f"The course does not name {anode.name} as an active electrode; the same reasoning was applied to it.",),
        )


def _is_salt_film(process: ElectrodeProcess) -> bool:
    return any(symbol in _SALT_FILM_ELEMENTS for symbol, _ in process.products[0].atoms)


def _why_active(process: ElectrodeProcess, name: str) -> str:
    if process.kind is Kind.FILM:
        return (
            f"The anode is {name}, which is oxidised more easily than the ions in the solution, "
            f"but what forms does not dissolve: a film of {products(process)} grows on it."
        )
    return (
        f"The anode is {name}, an active electrode: its atoms lose electrons more easily than the negative ions, "
        f"so it dissolves as {products(process)} and no gas is given off."
    )


@dataclass(frozen=True, slots=True)
class SlowOxidationsOut:
    """Rules out oxidations that do not run at an ordinary anode in spite of their potential."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Sulfate, nitrate, carbonate, phosphate and fluoride ions are never discharged from a solution in water."

    def apply(self, situation: Situation) -> Ruling:
        """Rule out every slow process; leave undecided where an ion's oxidation is not in the tables."""
        open_question = situation.competition.untabulated
        if open_question:
            return Ruling(
                is_undecidable=True,
                because=(
                    f"{sentence_start(listed(ions(ion) for ion in open_question))} are oxidised at an anode before water, "
                    "and no rule of this course says what they give.",
                ),
            )
        return Ruling(ruled_out=tuple(Remark(p, p.slow) for p in situation.remaining if p.slow))


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
    """

    halides: tuple[Species, ...]
    mode: str
    concentration: ConcentrationRule

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
        if len(present) > 1:
            easiest = min(present, key=lambda p: p.potential_V or 0.0)
            return Ruling(
                is_undecidable=True,
                because=(
                    f"The solution holds {listed(ions(p.reactant) for p in present)}, and this course has no rule for "
                    f"choosing between two halides. By electrode potentials {products(easiest)} would form first.",
                ),
            )
        if self.mode == ALWAYS:
            return self._choose(present[0], situation, "", is_doubtful=False)
        return self._by_concentration(present[0], situation)

    def _by_concentration(self, halide: ElectrodeProcess, situation: Situation) -> Ruling:
        reading = self.concentration.read(situation.cell, halide.reactant)
        if reading.is_concentrated:
            return self._choose(halide, situation, reading.assumption, is_doubtful=reading.is_doubtful)
        name, halogen = ions(halide.reactant), products(halide)
        contested = reading.is_doubtful or (halide.potential_V or 0.0) < 1.23
        accepted = f"A real cell gives {halogen} even from a dilute solution." if not reading.is_doubtful else (
            f"If the solution counts as concentrated, {halogen} is the answer."
        )
        return Ruling(
            ruled_out=(Remark(halide, f"The solution is dilute, so {name} stay in solution and hydroxide ions are discharged."),),
            also_accepted=(Remark(halide, accepted),) if contested else (),
            is_contested=contested,
            assumptions=(reading.assumption,) if reading.assumption else (),
        )

    def _choose(
        self, chosen: ElectrodeProcess, situation: Situation, assumption: str, *, is_doubtful: bool
    ) -> Ruling:
        name = ions(chosen.reactant)
        start = f"{sentence_start(name)} are present" if self.mode == ALWAYS else f"The solution is concentrated in {name}"
        rest = [p for p in situation.remaining if p is not chosen]
        oxygen = [p for p in rest if p.kind is Kind.OXYGEN]
        return Ruling(
            chosen=chosen,
            because=(f"{start}, so {products(chosen)} forms at the anode rather than oxygen.",),
            ruled_out=tuple(Remark(p, _beside_halide(p, name)) for p in rest),
            also_accepted=tuple(
                Remark(p, "If the solution counts as dilute, oxygen is the answer.") for p in oxygen if is_doubtful
            ),
            is_contested=is_doubtful,
            assumptions=(assumption,) if assumption else (),
        )


def _beside_halide(process: ElectrodeProcess, halide: str) -> str:
    if process.kind is Kind.OXYGEN:
        return f"{sentence_start(halide)} are discharged in preference to hydroxide ions."
    return f"{sentence_start(contender(process))} stay as they are: this course looks at the halide first."


@dataclass(frozen=True, slots=True)
class OxygenOtherwise:
    """Without a halide to discharge, hydroxide ions are discharged and oxygen is given off."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Otherwise hydroxide ions are discharged and oxygen is given off."

    def apply(self, situation: Situation) -> Ruling:
        """Choose oxygen, unless an anion is there for which the course has no rule."""
        beyond = [p.reactant for p in situation.of(Kind.REACTION, Kind.CHARGE) if p.reactant.charge < 0]
        if beyond:
            return Ruling(
                is_undecidable=True,
                because=(
                    f"This course has no rule for {listed(dict.fromkeys(ions(ion) for ion in beyond))} at the anode: "
                    "they are oxidised more easily than hydroxide ions.",
                ),
            )
        chosen = situation.of(Kind.OXYGEN)[0]
        return Ruling(
            chosen=chosen,
            because=(self._because(situation),),
            ruled_out=tuple(
                Remark(p, f"{sentence_start(ions(p.reactant))} stay as they are: this course discharges only negative ions at the anode.")
                for p in situation.remaining
                if p is not chosen
            ),
        )

    def _because(self, situation: Situation) -> str:
        others = [ion for ion in situation.cell.own_ions if ion.charge < 0 and ion != species("OH^-")]
        if not others:
            return "Hydroxide ions are the only negative ions present, so they are discharged and oxygen is given off."
        left = listed(ions(ion) for ion in others)
        verb = "stay" if others else "stays"
        return f"Hydroxide ions are discharged more easily than {left}, which {verb} in solution; oxygen is given off."


@dataclass(frozen=True, slots=True)
class LeastPositive:
    """Compares standard potentials: the least positive couple is oxidised first; chloride goes by its concentration.

    Parameters
    ----------
    concentration
        How "concentrated" is read for chloride.
    """

    concentration: ConcentrationRule

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "At the anode the couple with the least positive standard potential is oxidised first, water counting as "
            "+1.23 V and hydroxide ions in alkali as +0.40 V; but a concentrated chloride solution gives chlorine "
            "although its potential is a little higher."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the process with the lowest potential, with the exception for chloride."""
        medium = situation.cell.medium
        contest = [(_oxidation_potential(p, medium), p) for p in situation.entrants()]
        lowest_V, chosen = min(contest, key=lambda pair: (round(pair[0], 2), pair[1].kind is not Kind.OXYGEN))
        if chosen.kind is not Kind.OXYGEN:
            return self._ruling(chosen, lowest_V, situation, (), ())
        chloride = next((p for _, p in contest if p.reactant == species("Cl^-")), None)
        if chloride and medium != ALKALINE:
            return self._chloride(chloride, chosen, situation)
        ties = [p for e, p in contest if p is not chosen and abs(e - lowest_V) <= _TIE_V]
        ties += [p for e, p in contest if p is not chosen and p not in ties and e < lowest_V]
        accepted = tuple(
            Remark(p, f"The potentials are as good as equal, so {products(p)} is accepted too; in practice it forms.")
            for p in ties
        )
        return self._ruling(chosen, lowest_V, situation, accepted, ())

    def _chloride(self, chloride: ElectrodeProcess, oxygen: ElectrodeProcess, situation: Situation) -> Ruling:
        reading = self.concentration.read(situation.cell, chloride.reactant)
        chosen, other = (chloride, oxygen) if reading.is_concentrated else (oxygen, chloride)
        accepted = self._other_answer(other, reading)
        why = (
            f"E° for chlorine ({volts(chloride.potential_V or 0.0)}) is only a little more positive than for oxygen "
            f"({volts(oxygen.potential_V or 0.0)}). "
        ) + (
            "In a concentrated solution chloride ions win, because oxygen needs a large extra voltage to form at an electrode."
            if reading.is_concentrated
            else "In a dilute solution water is oxidised first."
        )
        rest = tuple(
            Remark(p, _why_not_oxidised(p, chosen, situation.cell.medium)) for p in situation.remaining if p is not chosen
        )
        return Ruling(
            chosen=chosen,
            because=(why,),
            ruled_out=rest,
            also_accepted=accepted,
            is_contested=bool(accepted),
            assumptions=(reading.assumption,) if reading.assumption else (),
        )

    def _other_answer(self, other: ElectrodeProcess, reading: ConcentrationReading) -> tuple[Remark, ...]:
        if reading.is_concentrated and not reading.is_doubtful:
            return ()
        name = products(other)
        return (Remark(other, f"Near the crossover a mixture forms; {name} is accepted with an argument from concentration."),)

    def _ruling(
        self,
        chosen: ElectrodeProcess,
        lowest_V: float,
        situation: Situation,
        accepted: tuple[Remark, ...],
        assumptions: tuple[str, ...],
    ) -> Ruling:
        others = [p for p in situation.remaining if p is not chosen]
        if others:
            because = (
                f"E° for the change between {contender(chosen)} and {products(chosen)} ({volts(lowest_V)}) is the least "
                f"positive of those possible here, so {_subject(chosen)} oxidised first."
            )
        else:
            because = f"Nothing else in the solution can be oxidised more easily, so {_subject(chosen)} oxidised."
        return Ruling(
            chosen=chosen,
            because=(because,),
            ruled_out=tuple(Remark(p, _why_not_oxidised(p, chosen, situation.cell.medium)) for p in others),
            also_accepted=accepted,
            is_contested=bool(accepted),
            assumptions=assumptions,
        )


def _subject(process: ElectrodeProcess) -> str:
    if process.kind is Kind.OXYGEN:
        return "water (or the hydroxide ion) is"
    return f"{contender(process)} are"


def _oxidation_potential(process: ElectrodeProcess, medium: str) -> float:
    if process.kind is Kind.OXYGEN and medium == ALKALINE:
        return _HYDROXIDE_V
    return process.potential_V if process.potential_V is not None else 9.0


def _why_not_oxidised(process: ElectrodeProcess, chosen: ElectrodeProcess, medium: str) -> str:
    own_V, winner_V = _oxidation_potential(process, medium), _oxidation_potential(chosen, medium)
    name = product(process.products[0])
    if own_V < winner_V:
        return f"E° for {name} ({volts(own_V)}) is a little less positive, but it forms so slowly that {products(chosen)} comes first."
    if own_V == winner_V:
        return f"E° for {name} ({volts(own_V)}) is no less positive than for {products(chosen)}."
    return f"E° for {name} ({volts(own_V)}) is more positive than for {products(chosen)} ({volts(winner_V)})."

