"""The vocabulary of discharge rules for the cathode of a solution in water."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC, NEUTRAL
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import Species
from ionwright.curricula.model import PASS, Remark, Ruling, Situation
from ionwright.curricula.wording import (
    contender,
    ions,
    listed,
    metal,
    products,
    sentence_start,
    volts,
)

HYDROGEN = "H"
_PLATES_FROM_WATER = frozenset({"usually", "sometimes"})
# Water itself is reduced at this potential at pH 14 [V]; data sheets print it beside 0.00 V for hydrogen ions.
_WATER_V = -0.83


@dataclass(frozen=True, slots=True)
class SlowReductionsOut:
    """Rules out reductions that do not run at an ordinary cathode in spite of their potential."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Ions such as nitrate and sulfate are not reduced at the cathode in class, whatever their potentials say."

    def apply(self, situation: Situation) -> Ruling:
        """Rule out every slow process."""
        return Ruling(ruled_out=tuple(Remark(p, p.slow) for p in situation.remaining if p.slow))


@dataclass(frozen=True, slots=True)
class Amalgam:
    """At a mercury cathode a group 1 metal dissolves in the mercury before hydrogen forms."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "At a mercury cathode sodium and its relatives form an amalgam, because hydrogen forms very slowly on mercury."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the amalgam if there is one and no metal below hydrogen competes."""
        amalgams = situation.of(Kind.AMALGAM)
        nobler = [p for p in situation.of(Kind.METAL) if p.potential_V is not None and p.potential_V > _WATER_V]
        if not amalgams or nobler or situation.cell.medium == ACIDIC:
            return Ruling(ruled_out=tuple(Remark(p, _no_amalgam(p)) for p in amalgams))
        chosen = amalgams[0]
        hydrogen = situation.of(Kind.HYDROGEN)
        return Ruling(
            chosen=chosen,
            because=(
                f"Hydrogen forms very slowly on mercury, and {metal(chosen.metal)} dissolves in it as an amalgam, "
                f"so {ions(chosen.reactant)} are discharged although water is present.",
            ),
            also_accepted=tuple(
                Remark(p, "A course that does not teach the mercury cathode answers hydrogen.") for p in hydrogen
            ),
            is_contested=True,
        )


def _no_amalgam(process: ElectrodeProcess) -> str:
    return f"Other ions are discharged more easily, so no {metal(process.metal)} amalgam forms."


@dataclass(frozen=True, slots=True)
class Plating:
    """With an anode of the same metal the cell is a plating bath, and the metal deposits."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "When the anode is made of the metal whose ions are in the solution, the cell is set up for plating: "
            "the metal deposits on the cathode even if it stands a little above hydrogen."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the plating metal, if it can be plated from water."""
        ion = situation.cell.plating_ion()
        deposits = [p for p in situation.of(Kind.METAL) if p.reactant == ion]
        if ion is None or not deposits or IONS[ion].plates not in _PLATES_FROM_WATER:
            return PASS
        chosen = max(deposits, key=lambda p: (p.is_listed, p.potential_V or 0.0))
        if _is_below_hydrogen(chosen) or _nobler_than(chosen, situation):
            return PASS  # the ordinary rules choose it, or a nobler metal, without help
        name = metal(chosen.metal)
        acid = situation.cell.medium == ACIDIC
        return Ruling(
            chosen=chosen,
            because=(
                f"The anode is {name} and the solution holds {ions(ion)}: the cell is set up for {name} plating, "
                f"so {name} deposits on the cathode although it stands above hydrogen in the reactivity series.",
            ),
            ruled_out=tuple(
                Remark(p, _passed_for_plating(p, name)) for p in situation.remaining if p is not chosen
            ),
            also_accepted=tuple(
                Remark(p, "By the reactivity series alone hydrogen would be the answer; some of it does form beside the metal.")
                for p in situation.of(Kind.HYDROGEN)
            ),
            is_contested=acid,
        )


def _passed_for_plating(process: ElectrodeProcess, name: str) -> str:
    if process.kind is Kind.HYDROGEN:
        return f"In a plating bath most of the current deposits {name}; little hydrogen forms."
    return f"{sentence_start(contender(process))} stay in solution while {name} deposits."


def _is_below_hydrogen(process: ElectrodeProcess) -> bool:
    return process.potential_V is not None and process.potential_V > 0


def _nobler_than(chosen: ElectrodeProcess, situation: Situation) -> bool:
    return any(
        p.potential_V is not None and p.potential_V > 0 and p.reactant != chosen.reactant
        for p in situation.of(Kind.METAL, Kind.CHARGE, Kind.REACTION)
    )


@dataclass(frozen=True, slots=True)
class Ladder:
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
        listed_order = ", ".join(metal(s) for s in self.order if s not in {"C"})
        return (
            "A metal above hydrogen in the reactivity series stays in solution and hydrogen is given off; "
            f"a metal below hydrogen deposits, the least reactive first. The series is: {listed_order}."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the least reactive metal below hydrogen, else hydrogen."""
        outside = self._outside(situation.remaining)
        if outside:
            return Ruling(
                is_undecidable=True,
                because=(
                    f"This course has no rule for {listed(ions(ion) for ion in outside)} at the cathode: "
                    "it compares metals with hydrogen and goes no further.",
                ),
            )
        metals = {p.metal: p for p in sorted(situation.of(Kind.METAL), key=lambda p: p.is_listed)}
        below = sorted((m for m in metals if self._is_below(m)), key=self._place)
        assumptions = tuple(self._assumption(m) for m in metals if m not in self.order)
        if below:
            return self._deposit(metals[below[-1]], situation, assumptions)
        return self._hydrogen(situation, assumptions)

    def _outside(self, remaining: Iterable[ElectrodeProcess]) -> tuple[Species, ...]:
        """Ions that the ladder cannot place: unknown metals, and ions that are reduced without giving a metal."""
        processes = tuple(remaining)
        placed = {p.reactant for p in processes if p.kind is Kind.METAL and self._place(p.metal) is not None}
        able = (p for p in processes if p.kind in {Kind.METAL, Kind.CHARGE, Kind.REACTION})
        return tuple(dict.fromkeys(p.reactant for p in able if p.reactant not in placed))

    def _place(self, symbol: str) -> float | None:
        if symbol in self.order and HYDROGEN in self.order:
            return float(self.order.index(symbol) - self.order.index(HYDROGEN))
        if symbol in self.wider_order:
            return float(self.wider_order.index(symbol) - self.wider_order.index(HYDROGEN))
        return None

    def _is_below(self, symbol: str) -> bool:
        place = self._place(symbol)
        return place is not None and place > 0

    def _assumption(self, symbol: str) -> str:
        where = "below" if self._is_below(symbol) else "above"
        return (
            f"{sentence_start(metal(symbol))} is not on this course's reactivity series; "
            f"a longer series places it {where} hydrogen."
        )

    def _deposit(self, chosen: ElectrodeProcess, situation: Situation, assumptions: tuple[str, ...]) -> Ruling:
        name = metal(chosen.metal)
        return Ruling(
            chosen=chosen,
            because=(
                f"{sentence_start(name)} is below hydrogen in the reactivity series, so {ions(chosen.reactant)} "
                "are discharged in preference to hydrogen ions.",
            ),
            ruled_out=tuple(
                Remark(p, self._why_not_beside_metal(p, name)) for p in situation.remaining if p is not chosen
            ),
            assumptions=assumptions,
        )

    def _why_not_beside_metal(self, process: ElectrodeProcess, name: str) -> str:
        if process.kind is Kind.HYDROGEN:
            return f"Hydrogen is above {name} in the reactivity series, so hydrogen ions stay in solution."
        if process.metal and process.metal != name and metal(process.metal) != name:
            return (
                f"{sentence_start(metal(process.metal))} is above {name} in the reactivity series, "
                f"so {ions(process.reactant)} stay in solution."
            )
        return "This course lets the metal ion go all the way to the metal."

    def _hydrogen(self, situation: Situation, assumptions: tuple[str, ...]) -> Ruling:
        chosen = situation.of(Kind.HYDROGEN)[0]
        above = [p for p in situation.of(Kind.METAL)]
        if above:
            names = listed(dict.fromkeys(metal(p.metal) for p in above))
            verb = "is" if len({p.metal for p in above}) == 1 else "are"
            reason = (
                f"{sentence_start(names)} {verb} above hydrogen in the reactivity series, "
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
                f"{sentence_start(metal(process.metal))} is above hydrogen in the reactivity series, "
                f"so {ions(process.reactant)} stay in solution."
            )
        return (
            f"This course compares metals with hydrogen only; it does not look at {ions(process.reactant)} "
            f"becoming {products(process)}."
        )


@dataclass(frozen=True, slots=True)
class MostPositive:
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
        hydrogen = "0.00 V" if self.hydrogen_as == "H+" else f"{volts(_WATER_V)} (from water)"
        return f"At the cathode the couple with the most positive standard potential is reduced first; hydrogen counts as {hydrogen}."

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
        if process.kind is Kind.HYDROGEN and medium != ACIDIC and (medium != NEUTRAL or self.hydrogen_as == "water"):
            return _WATER_V
        return process.potential_V if process.potential_V is not None else -9.0

    def _because(
        self, chosen: ElectrodeProcess, best_V: float, contest: list[tuple[float, ElectrodeProcess]]
    ) -> str:
        if len(contest) == 1:
            return f"No other ion that could be reduced is present, so {products(chosen)} forms."
        next_V, runner_up = max((pair for pair in contest if pair[1] is not chosen), key=lambda pair: pair[0])
        return (
            f"E° for the change to {products(chosen)} ({volts(best_V)}) is more positive than for "
            f"{products(runner_up)} ({volts(next_V)}), so {contender(chosen)} are reduced first."
        )

    def _why_not(self, process: ElectrodeProcess, chosen: ElectrodeProcess, best_V: float, medium: str) -> str:
        potential_V = self._potential(process, medium)
        if process.kind is Kind.HYDROGEN:
            return f"E° for hydrogen, {volts(potential_V)}, is less positive than {volts(best_V)} for {products(chosen)}."
        if potential_V > best_V:
            return f"Data sheets give the change of {ions(process.reactant)} to {products(chosen)} instead."
        return (
            f"E° for the change to {products(process)}, {volts(potential_V)}, is less positive than {volts(best_V)}, "
            f"so {ions(process.reactant)} stay in solution."
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
                    f"Measured against water at {volts(_WATER_V)}, {products(p)} at {volts(e)} would come first; "
                    "courses differ, and the metal is accepted with that argument.",
                )
                for e, p in sorted(contest, key=lambda pair: -pair[0])
                if _WATER_V < e < 0 and p.kind is Kind.METAL and IONS[p.reactant].plates != "never"
            )
        best_V = self._potential(chosen, medium)
        hydrogen = [p for _, p in contest if p.kind is Kind.HYDROGEN and _WATER_V < best_V < 0]
        return tuple(
            Remark(p, "Measured against hydrogen ions at 0.00 V, hydrogen would come first; it is accepted with that argument.")
            for p in hydrogen
        )

