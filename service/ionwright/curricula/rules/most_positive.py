"""Discharge at the cathode by standard potentials."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, NEUTRAL
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation
from ionwright.curricula.potentials import HYDROGEN_V, WATER_V
from ionwright.curricula.wording import forming, ions, products, sentence_start, volts

_TOLD = {
    "H+": "0.00 V",
    "H+ at pH 7": f"{volts(HYDROGEN_V['H+ at pH 7'])} in a neutral solution (hydrogen ions at pH 7)",
    "water": f"{volts(WATER_V)} (from water)",
}


@dataclass(frozen=True, slots=True)
class MostPositive(ReadsNothingElse):
    """Compares standard potentials: the most positive couple is reduced first.

    Parameters
    ----------
    hydrogen_as
        Where hydrogen stands in a neutral solution: ``"H+"`` (0.00 V), ``"H+ at pH 7"`` (−0.41 V) or ``"water"``
        (−0.83 V). In acid it is 0.00 V and in alkali −0.83 V for all.
    charge_changes
        ``"decided"``, or ``"contested"`` where the course writes a metal or hydrogen for ions that only change their
        charge as well.
    """

    hydrogen_as: str
    charge_changes: str = "decided"

    @property
    def sentence(self) -> str:
        """The rule in words."""
        start = "At the cathode the couple with the most positive E° is reduced first"
        if self.charge_changes == "contested":
            start += " (where an ion only changes its charge, the metal or hydrogen is accepted as well)"
        return f"{start}; hydrogen counts as {_TOLD[self.hydrogen_as]}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the process with the highest potential."""
        entrants = [p for p in situation.entrants() if not _is_undone(p)]
        contest = [(self._potential(p, situation.cell.medium), p) for p in entrants]
        best_V, chosen = max(contest, key=lambda pair: pair[0])
        contested = self._contested(contest, chosen, situation.cell.medium)
        if chosen.kind is Kind.CHARGE and self.charge_changes == "contested":
            contested += _without_change(contest, chosen)
        return Ruling(
            chosen=chosen,
            because=(self._because(chosen, best_V, contest),),
            ruled_out=tuple(
                Remark(p, self._why_not(p, chosen, best_V, situation.cell.medium))
                for p in situation.remaining
                if p is not chosen
            ),
            also_accepted=contested,
            is_contested=bool(contested),
        )

    def _potential(self, process: ElectrodeProcess, medium: str) -> float:
        if process.kind is Kind.HYDROGEN and medium != ACIDIC:
            return WATER_V if medium != NEUTRAL else HYDROGEN_V[self.hydrogen_as]
        return process.potential_V if process.potential_V is not None else -9.0

    def _because(
        self, chosen: ElectrodeProcess, best_V: float, contest: list[tuple[float, ElectrodeProcess]]
    ) -> str:
        if len(contest) == 1:
            return f"No other ion that could be reduced is present, so {forming(chosen)}."
        next_V, runner_up = max((pair for pair in contest if pair[1] is not chosen), key=lambda pair: pair[0])
        return (
            f"E° for {_change(chosen, best_V)} ({volts(best_V)}) is more positive than for "
            f"{_change(runner_up, next_V)} ({volts(next_V)}), so {forming(chosen)} first."
        )

    def _why_not(
        self, process: ElectrodeProcess, chosen: ElectrodeProcess, best_V: float, medium: str
    ) -> str:
        if _is_undone(process):
            return (
                f"{sentence_start(products(process))} would give hydrogen with the water, so {ions(process.reactant)} "
                "are not counted as changing their charge."
            )
        potential_V = self._potential(process, medium)
        if process.kind is Kind.HYDROGEN:
            best = f"{volts(best_V)} for {_change(chosen, best_V)}"
            return (
                f"E° for {_change(process, potential_V)}, {volts(potential_V)}, is less positive than {best}."
            )
        if process.reactant == chosen.reactant:
            return f"{sentence_start(ions(process.reactant))} change to {products(chosen)} first."
        return (
            f"E° for {_change(process, potential_V)}, {volts(potential_V)}, is less positive than {volts(best_V)} for "
            f"{_change(chosen, best_V)}, so {ions(process.reactant)} stay in solution."
        )

    def _contested(
        self, contest: list[tuple[float, ElectrodeProcess]], chosen: ElectrodeProcess, medium: str
    ) -> tuple[Remark, ...]:
        """In a neutral solution the choice between 0.00 V and −0.83 V for hydrogen decides some metals."""
        if medium != NEUTRAL:
            return ()
        own_V = HYDROGEN_V[self.hydrogen_as]
        if chosen.kind is Kind.HYDROGEN:
            return tuple(
                Remark(
                    p,
                    f"Measured against water at {volts(WATER_V)}, {products(p)} at {volts(e)} would come first; "
                    "courses differ, and the metal is accepted with that argument.",
                )
                for e, p in sorted(contest, key=lambda pair: -pair[0])
                if WATER_V < e < own_V and p.kind is Kind.METAL and IONS[p.reactant].plates != "never"
            )
        best_V = self._potential(chosen, medium)
        hydrogen = [p for _, p in contest if p.kind is Kind.HYDROGEN and WATER_V < best_V < 0]
        return tuple(
            Remark(
                p,
                "Measured against hydrogen ions at 0.00 V, hydrogen would come first; it is accepted too.",
            )
            for p in hydrogen
        )


def _is_undone(process: ElectrodeProcess) -> bool:
    """Whether the ion that would form is too strong a reductant to stay in water, such as chromium(II)."""
    return process.kind is Kind.CHARGE and process.potential_V is not None and process.potential_V < 0


def _without_change(
    contest: list[tuple[float, ElectrodeProcess]], chosen: ElectrodeProcess
) -> tuple[Remark, ...]:
    """What a course that knows only metals and hydrogen as products would write."""
    rest = [pair for pair in contest if pair[1].kind in {Kind.METAL, Kind.HYDROGEN}]
    _, other = max(rest, key=lambda pair: pair[0])
    return (
        Remark(
            other,
            f"This course hardly speaks of ions that only change their charge, such as {ions(chosen.reactant)}; "
            f"{products(other)} is accepted too.",
        ),
    )


def _change(process: ElectrodeProcess, potential_V: float) -> str:
    """The couple in words, for the potential at which it counts: ``"copper(II) ions to copper"``."""
    named = ions(process.reactant)
    if process.kind is Kind.HYDROGEN and potential_V == WATER_V:
        named = "water"
    elif process.kind is Kind.HYDROGEN and potential_V == HYDROGEN_V["H+ at pH 7"]:
        named = "hydrogen ions at pH 7"
    return f"{named} to {products(process)}"
