"""Discharge by deposition potentials: Nernst potential at the real concentrations plus a tabulated overpotential."""

from __future__ import annotations

from dataclasses import dataclass
from math import log10
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, couples
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, ALKALINE
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import Remark, Ruling, Situation
from ionwright.curricula.wording import contender, forming, ions, products, sentence_start, volts

if TYPE_CHECKING:
    from collections.abc import Hashable, Mapping

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.species import Species

_SLOPE_V = 0.059
"""RT ln 10 / F at 25 °C, as courses print it [V]."""
_NOMINAL_MOL_DM3 = {"dilute": 0.1, "concentrated": 2.0, None: 1.0}
_LOW_A_CM2, _HIGH_A_CM2 = 1e-3, 1e-1
_LEAST_MOL_DM3 = 1e-30
_PLATES_HOW_OFTEN = {"never": "never", "rarely": "hardly ever"}


@dataclass(frozen=True, slots=True)
class Overpotentials:
    """The overpotentials that a course prints: for each gas, at each material, the figures [V] at 1 and 100 mA/cm².

    Parameters
    ----------
    by_gas
        ``"H2"``, ``"O2"`` and ``"Cl2"``, each with its materials; sizes, without a sign.
    otherwise
        The material whose figures stand for those that are not in the table.
    """

    by_gas: Mapping[str, Mapping[str, tuple[float, float]]]
    otherwise: str

    def at(self, gas: str, material: str, current_density_A_cm2: float | None) -> float:
        """Its size [V]; midway on a logarithmic scale if no current density is given; 0 for what has none."""
        table = self.by_gas.get(gas, {})
        low_V, high_V = table.get(material) or table.get(self.otherwise, (0.0, 0.0))
        if current_density_A_cm2 is None:
            return (low_V + high_V) / 2
        along = log10(current_density_A_cm2 / _LOW_A_CM2) / log10(_HIGH_A_CM2 / _LOW_A_CM2)
        return low_V + min(max(along, 0.0), 1.0) * (high_V - low_V)

    def stands_in(self, gas: str, material: str) -> bool:
        """Whether the figure of another material is taken."""
        return gas in self.by_gas and material not in self.by_gas[gas]


@dataclass(frozen=True, slots=True)
class DepositionPotential:
    """The most positive deposition potential is reduced, the least positive is oxidised.

    Parameters
    ----------
    electrode
        ``"cathode"`` or ``"anode"``.
    overpotentials
        The table of the course.
    margin_V
        Two potentials closer than this are both accepted [V].
    """

    electrode: str
    overpotentials: Overpotentials
    margin_V: float

    @property
    def sentence(self) -> str:
        """The rule in words."""
        which = (
            "At the cathode the most positive one is reduced"
            if self.electrode == "cathode"
            else "At the anode the least positive one is oxidised"
        )
        return (
            "Deposition potentials are compared: the Nernst potential at the pH and the concentrations of the solution "
            f"plus the overpotential of a gas at that electrode. {which}; within {self.margin_V:g} V both are accepted."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the process with the better deposition potential."""
        cell = situation.cell
        out = {p: why for p in situation.remaining if (why := self._why_out(p))}
        runners = [p for p in situation.without(out).entrants() if _equilibrium(p, cell) is not None]
        ranked = sorted(runners, key=lambda p: self._rank(p, cell))
        chosen, *others = ranked
        close = others[0] if others and self._gap(chosen, others[0], cell) < self.margin_V else None
        bare = min(runners, key=lambda p: self._bare_rank(p, cell))
        accepted = [Remark(close, self._why_close(chosen, close, cell))] if close else []
        is_tie = False
        if bare not in {chosen, close}:
            bare_gap_V = abs((_equilibrium(bare, cell) or 0.0) - (_equilibrium(chosen, cell) or 0.0))
            # a metal this near to hydrogen comes with it in class; chlorine has its overpotential for certain
            is_tie = self.electrode == "cathode" and bare_gap_V < self.margin_V
            accepted.append(Remark(bare, _why_bare(bare, bare_gap_V, is_tie=is_tie)))
        return Ruling(
            chosen=chosen,
            because=(self._because(chosen, others, cell),),
            ruled_out=tuple(
                Remark(p, out.get(p) or self._why_not(p, chosen, cell))
                for p in situation.remaining
                if p is not chosen
            ),
            also_accepted=tuple(accepted),
            is_contested=close is not None or is_tie,
            assumptions=tuple(self._assumptions(situation, runners)),
        )

    def also_reads(self, cell: Cell) -> Hashable:
        """The concentrations, the pH and the current density."""
        amounts = tuple((one.ion.species, one.concentration) for one in cell.electrolyte.ions)
        return amounts, tuple(cell.word_for(ion) for ion in cell.own_ions), cell.current_density_A_cm2

    def _why_out(self, process: ElectrodeProcess) -> str:
        """Why a process does not take part in spite of its figure; empty if it does."""
        known = IONS.get(process.reactant)
        if process.kind is Kind.METAL and known and known.plates in _PLATES_HOW_OFTEN:
            how_often = _PLATES_HOW_OFTEN[known.plates]
            return f"{sentence_start(ions(process.reactant))} {how_often} deposit from a solution in water."
        charge = process.products[0].charge
        is_oxo_anion = process.kind is Kind.REACTION and process.reactant.charge > 0 > charge
        if self.electrode == "anode" and is_oxo_anion:
            return f"{sentence_start(products(process))} form only slowly at an ordinary anode."
        if self.electrode == "cathode" and process.kind is Kind.CHARGE and (process.potential_V or 0.0) < 0:
            return f"{sentence_start(products(process))} would give hydrogen with the water."
        return ""

    def _deposition(self, process: ElectrodeProcess, cell: Cell) -> float:
        sign = -1 if self.electrode == "cathode" else 1
        return (_equilibrium(process, cell) or 0.0) + sign * self._overpotential(process, cell)

    def _overpotential(self, process: ElectrodeProcess, cell: Cell) -> float:
        if process.kind not in {Kind.HYDROGEN, Kind.OXYGEN, Kind.HALOGEN}:
            return 0.0
        gas = process.products[0].formula
        return self.overpotentials.at(gas, self._material(cell), cell.current_density_A_cm2)

    def _material(self, cell: Cell) -> str:
        return cell.cathode.id if self.electrode == "cathode" else cell.anode.id

    def _rank(self, process: ElectrodeProcess, cell: Cell) -> float:
        sign = -1 if self.electrode == "cathode" else 1
        return round(sign * self._deposition(process, cell), 6)

    def _bare_rank(self, process: ElectrodeProcess, cell: Cell) -> float:
        sign = -1 if self.electrode == "cathode" else 1
        return round(sign * (_equilibrium(process, cell) or 0.0), 6)

    def _gap(self, one: ElectrodeProcess, other: ElectrodeProcess, cell: Cell) -> float:
        return abs(self._deposition(one, cell) - self._deposition(other, cell))

    def _because(self, chosen: ElectrodeProcess, others: list[ElectrodeProcess], cell: Cell) -> str:
        own = self._told(chosen, cell)
        if not others:
            return f"No other process is possible here; the deposition potential is {own}."
        better = "more positive" if self.electrode == "cathode" else "less positive"
        rival = others[0]
        return (
            f"The deposition potential of {products(chosen)} ({own}) is {better} than that of {products(rival)} "
            f"({self._told(rival, cell)}), so {forming(chosen)}."
        )

    def _told(self, process: ElectrodeProcess, cell: Cell) -> str:
        """The figure with its parts: ``"+1.53 V: +1.36 V and 0.17 V of overpotential"``."""
        total = volts(self._deposition(process, cell))
        extra_V = self._overpotential(process, cell)
        if not extra_V:
            return total
        return f"{total}: {volts(_equilibrium(process, cell) or 0.0)} and {extra_V:.2f} V of overpotential"

    def _why_not(self, process: ElectrodeProcess, chosen: ElectrodeProcess, cell: Cell) -> str:
        if _equilibrium(process, cell) is None or process.reactant == chosen.reactant:
            return f"{sentence_start(contender(process))} change to {products(chosen)} first."
        better = "less positive" if self.electrode == "cathode" else "more positive"
        return (
            f"The deposition potential of {products(process)}, {volts(self._deposition(process, cell))}, is {better} "
            f"than the {volts(self._deposition(chosen, cell))} of {products(chosen)}."
        )

    def _why_close(self, chosen: ElectrodeProcess, close: ElectrodeProcess, cell: Cell) -> str:
        return (
            f"It lies only {self._gap(chosen, close, cell):.2f} V from that of {products(chosen)}, and tables of "
            f"overpotentials differ by more, so {products(close)} is accepted too."
        )

    def _assumptions(self, situation: Situation, runners: list[ElectrodeProcess]) -> list[str]:
        cell, told = situation.cell, []
        unknown = [ion for ion in cell.own_ions if cell.electrolyte.concentration_of(ion) is None]
        words = {cell.word_for(ion) for ion in unknown}
        for word in sorted(words, key=str):
            said = f"The word {word}" if word else "No concentration"
            verb = "was reckoned as" if word else "was given, so the reckoning took"
            told.append(f"{said} {verb} {_NOMINAL_MOL_DM3[word]:g} mol/dm³.")
        for process in runners:
            if process.kind in {Kind.HYDROGEN, Kind.OXYGEN, Kind.HALOGEN}:
                gas, material = process.products[0].formula, self._material(cell)
                if self.overpotentials.stands_in(gas, material):
                    name = (cell.cathode if self.electrode == "cathode" else cell.anode).name
                    told.append(
                        f"The table has no overpotential of {products(process)} at {name}; "
                        f"that at {self.overpotentials.otherwise} was taken."
                    )
        return told


def _why_bare(bare: ElectrodeProcess, gap_V: float, *, is_tie: bool) -> str:
    """What is to be said of the process that would run if no gas had an overpotential."""
    if is_tie:
        return (
            f"Without overpotentials {forming(bare)} first, by no more than {max(gap_V, 0.01):.2f} V; "
            "it is accepted too."
        )
    return f"A course that leaves overpotentials out finds that {forming(bare)}."


def _equilibrium(process: ElectrodeProcess, cell: Cell) -> float | None:
    """The Nernst potential at the concentrations of the cell [V]; None where the tables give no standard potential.

    An ion that is not there yet is taken to be as concentrated as the one from which it forms.
    """
    couple = couples().get(process.couple)
    if couple is None:
        return process.potential_V
    given = _concentration(process.reactant, cell)
    half = couple.reduction
    logarithm = 0.0
    for terms, sign in ((half.right, 1), (half.left, -1)):
        for term in terms:
            if term.species.charge and not term.species.is_electron:
                amount = _concentration(term.species, cell) or given or 1.0
                logarithm += sign * float(term.coefficient) * log10(amount)
    return couple.printed_V - _SLOPE_V / float(half.electrons) * logarithm


def _concentration(ion: Species, cell: Cell) -> float | None:
    """Concentration of an ion, in figures even where the task gives a word or nothing [mol/dm³]; None if not there."""
    amount = cell.electrolyte.concentration_of(ion)
    if amount is not None:
        return max(amount, _LEAST_MOL_DM3)
    if ion in {HYDROGEN_ION, HYDROXIDE}:
        return _of_water(ion, cell)
    return _NOMINAL_MOL_DM3[cell.word_for(ion)] if ion in cell.own_ions else None


def _of_water(ion: Species, cell: Cell) -> float:
    """The concentration of hydrogen or hydroxide ions in an acid or alkali of which only a word or nothing is said."""
    lead = HYDROGEN_ION if cell.medium == ACIDIC else HYDROXIDE
    if cell.medium not in {ACIDIC, ALKALINE}:
        return 1e-7
    strength = _NOMINAL_MOL_DM3[cell.word_for(lead)]
    return strength if ion == lead else 1e-14 / strength
