"""Discharge at the anode by standard potentials; chloride by its concentration."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.medium import ALKALINE
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import species
from ionwright.curricula.model import Remark, Ruling, Situation
from ionwright.curricula.potentials import HYDROXIDE_V
from ionwright.curricula.wording import contender, product, products, volts

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell
    from ionwright.curricula.concentration import ConcentrationReading, ConcentrationRule

# Potentials closer than this are a tie that no school would settle by the last digit [V].
_TIE_V = 0.03
CHLORIDE = species("Cl^-")


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
            return self._ruling(chosen, lowest_V, situation, ())
        chloride = next((p for _, p in contest if p.reactant == CHLORIDE), None)
        if chloride and medium != ALKALINE:
            return self._chloride(chloride, chosen, situation)
        ties = [p for e, p in contest if p is not chosen and abs(e - lowest_V) <= _TIE_V]
        accepted = tuple(
            Remark(
                p,
                f"The potentials are as good as equal, so {products(p)} is accepted too; in practice it forms.",
            )
            for p in ties
        )
        return self._ruling(chosen, lowest_V, situation, accepted)

    def also_reads(self, cell: Cell) -> Hashable:
        """How the concentration of chloride is read."""
        return self.concentration.read(cell, CHLORIDE) if CHLORIDE in cell.own_ions else ()

    def _chloride(self, chloride: ElectrodeProcess, oxygen: ElectrodeProcess, situation: Situation) -> Ruling:
        reading = self.concentration.read(situation.cell, chloride.reactant)
        chosen, other = (chloride, oxygen) if reading.is_concentrated else (oxygen, chloride)
        accepted = self._other_answer(other, reading)
        why = (
            f"E° for chlorine ({volts(chloride.potential_V or 0.0)}) is only a little more positive than for oxygen "
            f"({volts(oxygen.potential_V or 0.0)}). "
        ) + (
            "In a concentrated solution chloride ions win, because oxygen needs a large extra voltage to form."
            if reading.is_concentrated
            else "In a dilute solution water is oxidised first."
        )
        rest = tuple(
            Remark(p, _why_not_oxidised(p, chosen, situation.cell.medium))
            for p in situation.remaining
            if p is not chosen
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
        return (
            Remark(
                other,
                f"Near the crossover a mixture forms; {name} is accepted with an argument from concentration.",
            ),
        )

    def _ruling(
        self,
        chosen: ElectrodeProcess,
        lowest_V: float,
        situation: Situation,
        accepted: tuple[Remark, ...],
    ) -> Ruling:
        medium = situation.cell.medium
        others = [p for p in situation.remaining if p is not chosen]
        if others:
            because = (
                f"E° for the change between {_partner(chosen, medium)} and {products(chosen)} ({volts(lowest_V)}) is "
                f"the least positive of those possible here, so {_subject(chosen, medium)} oxidised first."
            )
        else:
            because = (
                f"Nothing else here can be oxidised more easily, so {_subject(chosen, medium)} oxidised."
            )
        return Ruling(
            chosen=chosen,
            because=(because,),
            ruled_out=tuple(Remark(p, _why_not_oxidised(p, chosen, situation.cell.medium)) for p in others),
            also_accepted=accepted,
            is_contested=bool(accepted),
        )


def _partner(process: ElectrodeProcess, medium: str) -> str:
    return "water" if process.kind is Kind.OXYGEN and medium != ALKALINE else contender(process)


def _subject(process: ElectrodeProcess, medium: str) -> str:
    partner = _partner(process, medium)
    return f"{partner} {'is' if partner == 'water' else 'are'}"


def _oxidation_potential(process: ElectrodeProcess, medium: str) -> float:
    if process.kind is Kind.OXYGEN and medium == ALKALINE:
        return HYDROXIDE_V
    return process.potential_V if process.potential_V is not None else 9.0


def _why_not_oxidised(process: ElectrodeProcess, chosen: ElectrodeProcess, medium: str) -> str:
    own_V, winner_V = _oxidation_potential(process, medium), _oxidation_potential(chosen, medium)
    name = product(process.products[0])
    if own_V < winner_V:
        return (
            f"E° for {name} ({volts(own_V)}) is a little less positive, but it forms so slowly that "
            f"{products(chosen)} comes first."
        )
    if own_V == winner_V:
        return f"E° for {name} ({volts(own_V)}) is no less positive than for {products(chosen)}."
    return f"E° for {name} ({volts(own_V)}) is more positive than for {products(chosen)} ({volts(winner_V)})."
