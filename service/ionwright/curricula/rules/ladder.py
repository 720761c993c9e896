"""Discharge at the cathode by the reactivity series."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import ions, listed, metal, sentence_start

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.species import Species

HYDROGEN = "H"


@dataclass(frozen=True, slots=True)
class Ladder(ReadsNothingElse):
    """Compares metals with hydrogen in the reactivity series.

    Parameters
    ----------
    order
        Element symbols as the course prints them, most reactive first, ``"H"`` among them; ``"C"`` is ignored.
    wider_order
        A longer series for metals that the course does not print; a metal in neither is not decidable.
    """

    order: tuple[str, ...]
    wider_order: tuple[str, ...]

    @property
    def sentence(self) -> str:
        """The rule in words."""
        listed_order = ", ".join(metal(s) for s in self.order if s != "C")
        return (
            "A metal above hydrogen in the reactivity series stays in solution and hydrogen is given off; "
            f"a metal below hydrogen deposits, the least reactive first. The series is: {listed_order}."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the least reactive metal below hydrogen, else hydrogen."""
        outside = self._outside(situation.remaining)
        if outside:
            return undecidable(
                f"This course has no rule for {listed(ions(ion) for ion in outside)} at the cathode: "
                "it compares metals with hydrogen and goes no further."
            )
        metals = {p.metal: p for p in sorted(situation.of(Kind.METAL), key=lambda p: p.is_listed)}
        below = [symbol for symbol in metals if self._is_below(symbol)]
        assumptions = tuple(self._assumption(m) for m in metals if m not in self.order)
        if below:
            least_reactive = max(below, key=lambda symbol: self._place(symbol) or 0)
            return self._deposit(metals[least_reactive], situation, assumptions)
        return self._hydrogen(situation, assumptions)

    def _outside(self, remaining: Iterable[ElectrodeProcess]) -> tuple[Species, ...]:
        """Ions that the ladder cannot place: unknown metals, and ions that are reduced without giving a metal."""
        processes = tuple(remaining)
        placed = {p.reactant for p in processes if self._place(_metal_of(p)) is not None}
        able = (p for p in processes if p.kind in {Kind.METAL, Kind.CHARGE, Kind.REACTION})
        return tuple(dict.fromkeys(p.reactant for p in able if p.reactant not in placed))

    def _place(self, symbol: str) -> int | None:
        """Steps below hydrogen, negative for above; None for a metal that neither series holds."""
        series = self.order if symbol in self.order else self.wider_order
        return series.index(symbol) - series.index(HYDROGEN) if symbol in series else None

    def _series(self, *symbols: str) -> str:
        """The series that places these metals, in words."""
        return (
            "the reactivity series" if all(s in self.order for s in symbols) else "a longer reactivity series"
        )

    def _is_below(self, symbol: str) -> bool:
        place = self._place(symbol)
        return place is not None and place > 0

    def _assumption(self, symbol: str) -> str:
        where = "below" if self._is_below(symbol) else "above"
        return (
            f"{sentence_start(metal(symbol))} is not on this course's reactivity series; "
            f"a longer series places it {where} hydrogen."
        )

    def _deposit(
        self, chosen: ElectrodeProcess, situation: Situation, assumptions: tuple[str, ...]
    ) -> Ruling:
        name = metal(chosen.metal)
        return Ruling(
            chosen=chosen,
            because=(
                (
                    f"{sentence_start(name)} is below hydrogen in {self._series(chosen.metal)}, "
                    f"so {ions(chosen.reactant)} are discharged in preference to hydrogen ions."
                ),
            ),
            ruled_out=tuple(
                Remark(p, self._why_not_beside_metal(p, name)) for p in situation.remaining if p is not chosen
            ),
            assumptions=assumptions,
        )

    def _why_not_beside_metal(self, process: ElectrodeProcess, name: str) -> str:
        if process.kind is Kind.HYDROGEN:
            return f"Hydrogen is above {name} in the reactivity series, so hydrogen ions stay in solution."
        if process.metal and metal(process.metal) != name:
            return (
                f"{sentence_start(metal(process.metal))} is above {name} in the reactivity series, "
                f"so {ions(process.reactant)} stay in solution."
            )
        return ""

    def _hydrogen(self, situation: Situation, assumptions: tuple[str, ...]) -> Ruling:
        chosen = situation.of(Kind.HYDROGEN)[0]
        above = dict.fromkeys(symbol for p in situation.remaining if (symbol := _metal_of(p)))
        if above:
            names = listed(metal(symbol) for symbol in above)
            verb = "is" if len(above) == 1 else "are"
            reason = (
                f"{sentence_start(names)} {verb} above hydrogen in {self._series(*above)}, "
                "so hydrogen ions are discharged instead and hydrogen is given off."
            )
        else:
            reason = "Hydrogen ions are the only positive ions that can be discharged here, so hydrogen is given off."
        return Ruling(
            chosen=chosen,
            because=(reason,),
            ruled_out=tuple(Remark(p, self._why_above(p)) for p in situation.remaining if p is not chosen),
            assumptions=assumptions,
        )

    def _why_above(self, process: ElectrodeProcess) -> str:
        if process.kind is Kind.METAL:
            return (
                f"{sentence_start(metal(process.metal))} is above hydrogen in {self._series(process.metal)}, "
                f"so {ions(process.reactant)} stay in solution."
            )
        return ""  # changes of charge are beyond a course that compares metals with hydrogen


def _metal_of(process: ElectrodeProcess) -> str:
    """The metal that deposits, or whose simple ion it is; empty for other ions."""
    if process.metal:
        return process.metal
    is_simple = (
        process.kind is not Kind.HYDROGEN and process.reactant.charge > 0 and len(process.reactant.atoms) == 1
    )
    return process.reactant.atoms[0][0] if is_simple else ""
