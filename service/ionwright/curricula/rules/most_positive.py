"""Discharge at the cathode by standard potentials."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, NEUTRAL
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation
from ionwright.curricula.potentials import WATER_V
from ionwright.curricula.wording import forming, ions, products, sentence_start, volts


@dataclass(frozen=True, slots=True)
class MostPositive(ReadsNothingElse):
    """Compares standard potentials: the most positive couple is reduced first.

    Parameters
    ----------
    hydrogen_as
        ``"H+"``: hydrogen stands at 0.00 V in every solution that is not alkaline; ``"water"``: in a neutral one it
        stands at −0.83 V.
    """

    hydrogen_as: str

    @property
    def sentence(self) -> str:
        """The rule in words."""
        hydrogen = "0.00 V" if self.hydrogen_as == "H+" else f"{volts(WATER_V)} (from water)"
        return f"At the cathode the couple with the most positive E° is reduced first; hydrogen counts as {hydrogen}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the process with the highest potential."""
        contest = [(self._potential(p, situation.cell.medium), p) for p in situation.entrants()]
        best_V, chosen = max(contest, key=lambda pair: pair[0])
        contested = self._contested(contest, chosen, situation.cell.medium)
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
        if (
            process.kind is Kind.HYDROGEN
            and medium != ACIDIC
            and (medium != NEUTRAL or self.hydrogen_as == "water")
        ):
            return WATER_V
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
        if chosen.kind is Kind.HYDROGEN:
            return tuple(
                Remark(
                    p,
                    f"Measured against water at {volts(WATER_V)}, {products(p)} at {volts(e)} would come first; "
                    "courses differ, and the metal is accepted with that argument.",
                )
                for e, p in sorted(contest, key=lambda pair: -pair[0])
                if WATER_V < e < 0 and p.kind is Kind.METAL and IONS[p.reactant].plates != "never"
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


def _change(process: ElectrodeProcess, potential_V: float) -> str:
    """The couple in words, for the potential at which it counts: ``"copper(II) ions to copper"``."""
    is_water = process.kind is Kind.HYDROGEN and potential_V == WATER_V
    return f"{'water' if is_water else ions(process.reactant)} to {products(process)}"
