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
BY_CONCENTRATION = "by-concentration"
ARGUED = "argued"
FIRST = "first"
_CHLORIDE = {
    BY_CONCENTRATION: "but a concentrated chloride solution gives chlorine although its potential is a little higher",
    ARGUED: "but a concentrated chloride solution gives chlorine, which is argued from the extra voltage that oxygen "
    "needs, and oxygen is accepted too where only the table is used",
    FIRST: "but chloride ions come before water, dilute or concentrated, because oxygen needs a large extra voltage",
}


@dataclass(frozen=True, slots=True)
class LeastPositive:
    """Compares standard potentials: the least positive couple is oxidised first; chloride goes by its concentration.

    Parameters
    ----------
    concentration
        How "concentrated" is read for chloride.
    chloride
        ``"by-concentration"``; ``"argued"``: so too, and oxygen is accepted from a concentrated solution as what the
        bare table says; ``"first"``: before water at any concentration.
    charge_changes
        ``"decided"``, or ``"contested"`` where the course writes a halogen or oxygen for ions that only change their
        charge as well.
    """

    concentration: ConcentrationRule
    chloride: str = BY_CONCENTRATION
    charge_changes: str = "decided"

    @property
    def sentence(self) -> str:
        """The rule in words."""
        start = (
            "At the anode the couple with the least positive standard potential is oxidised first, water counting as "
            "+1.23 V and hydroxide ions in alkali as +0.40 V"
        )
        if self.charge_changes == "contested":
            start += " (where an ion only changes its charge, the halogen or oxygen is accepted as well)"
        return f"{start}; {_CHLORIDE[self.chloride]}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the process with the lowest potential, with the exception for chloride."""
        medium = situation.cell.medium
        contest = [(_oxidation_potential(p, medium), p) for p in situation.entrants()]
        lowest_V, chosen = min(contest, key=lambda pair: (round(pair[0], 2), pair[1].kind is not Kind.OXYGEN))
        if chosen.kind is not Kind.OXYGEN:
            return self._ruling(chosen, lowest_V, situation, self._without_change(contest, chosen, medium))
        chloride = next((p for _, p in contest if p.reactant == CHLORIDE), None)
        if chloride and medium != ALKALINE:
            if self.chloride == FIRST:
                return _chlorine_first(chloride, chosen, situation)
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
        is_read = self.chloride != FIRST and CHLORIDE in cell.own_ions
        return self.concentration.read(cell, CHLORIDE) if is_read else ()

    def _without_change(
        self, contest: list[tuple[float, ElectrodeProcess]], chosen: ElectrodeProcess, medium: str
    ) -> tuple[Remark, ...]:
        """What a course that knows only halogens and oxygen as products would write."""
        if chosen.kind is not Kind.CHARGE or self.charge_changes != "contested":
            return ()
        rest = [pair for pair in contest if pair[1].kind in {Kind.HALOGEN, Kind.OXYGEN}]
        _, other = min(rest, key=lambda pair: pair[0])
        chloride = next((p for _, p in rest if p.reactant == CHLORIDE), None)
        if other.kind is Kind.OXYGEN and chloride and medium != ALKALINE:
            other = chloride
        return (
            Remark(
                other,
                f"This course hardly speaks of ions that only change their charge, such as {contender(chosen)}; "
                f"{products(other)} is accepted too.",
            ),
        )

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
        name = products(other)
        if reading.is_concentrated and not reading.is_doubtful:
            if self.chloride != ARGUED:
                return ()
            return (Remark(other, f"By the bare table of potentials {name} would form; it is accepted too."),)
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


def _chlorine_first(chloride: ElectrodeProcess, oxygen: ElectrodeProcess, situation: Situation) -> Ruling:
    """The ruling of a course that lets chloride ions come before water at any concentration."""
    why = (
        f"E° for oxygen ({volts(oxygen.potential_V or 0.0)}) is a little less positive than for chlorine "
        f"({volts(chloride.potential_V or 0.0)}), but oxygen needs a large extra voltage to form, so chloride ions are "
        "oxidised."
    )
    return Ruling(
        chosen=chloride,
        because=(why,),
        ruled_out=tuple(
            Remark(p, _why_not_oxidised(p, chloride, situation.cell.medium))
            for p in situation.remaining
            if p is not chloride
        ),
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
