"""Discharge in a plating bath."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROGEN_ION, metal_couples
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import ACIDIC
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import PASS, Remark, Ruling, Situation
from ionwright.curricula.wording import contender, ions, metal, sentence_start

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell

_PLATES_FROM_WATER = frozenset({"usually", "sometimes"})


@dataclass(frozen=True, slots=True)
class Plating:
    """With an anode of the same metal the cell is a plating bath, and the metal deposits.

    Parameters
    ----------
    yardstick
        What the course compares metals by, in words: ``"the reactivity series"`` or ``"E°"``.
    """

    yardstick: str = "the reactivity series"

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "When the anode is made of the metal whose ions are in the solution, the cell is set up for plating: "
            "the metal deposits on the cathode even if it stands a little above hydrogen."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the plating metal, if it can be plated from water."""
        bath = situation.cell.plating_metal()
        metals = situation.of(Kind.METAL) if bath else ()
        deposits = [p for p in metals if p.metal == bath and IONS[p.reactant].plates in _PLATES_FROM_WATER]
        if not deposits:
            return PASS
        chosen = max(deposits, key=lambda p: (p.is_listed, p.potential_V or 0.0))
        if _is_below_hydrogen(chosen) or _nobler_than(chosen, situation):
            return PASS  # the ordinary rules choose it, or a nobler metal, without help
        if _is_drowned_in_acid(chosen, situation):
            accepted = Remark(chosen, "In a plating bath with little acid the metal deposits.")
            return Ruling(also_accepted=(accepted,), is_contested=True)
        name = metal(chosen.metal)
        acid = situation.cell.medium == ACIDIC
        return Ruling(
            chosen=chosen,
            because=(
                (
                    f"The anode is {name} and the solution holds {ions(chosen.reactant)}: the cell is "
                    f"set up for {name} plating, so {name} deposits on the cathode{self._although(chosen)}."
                ),
            ),
            ruled_out=tuple(
                Remark(p, _passed_for_plating(p, name)) for p in situation.remaining if p is not chosen
            ),
            also_accepted=tuple(
                Remark(
                    p,
                    f"By {self.yardstick} alone the answer is hydrogen; some does form beside the metal.",
                )
                for p in situation.of(Kind.HYDROGEN)
            ),
            is_contested=acid,
        )

    def also_reads(self, cell: Cell) -> Hashable:
        """The metal of a plating bath, and the ions that an acid outnumbers."""
        bath = cell.plating_metal()
        acid = cell.electrolyte.concentration_of(HYDROGEN_ION) if bath and cell.medium == ACIDIC else None
        if acid is None:
            return bath
        amounts = ((ion, cell.electrolyte.concentration_of(ion)) for ion in cell.own_ions)
        return bath, tuple(ion for ion, amount in amounts if amount is not None and acid > amount)

    def _although(self, chosen: ElectrodeProcess) -> str:
        """What speaks against the deposit: a metal above hydrogen would otherwise stay in solution."""
        if metal_couples()[chosen.metal][0].potential_V >= 0:
            return ""
        if self.yardstick == "E°":
            return " although its E° is less positive than that of hydrogen"
        return f" although it stands above hydrogen in {self.yardstick}"


def _passed_for_plating(process: ElectrodeProcess, name: str) -> str:
    if process.kind is Kind.HYDROGEN:
        return f"In a plating bath most of the current deposits {name}; little hydrogen forms."
    return f"{sentence_start(contender(process))} stay in solution while {name} deposits."


def _is_drowned_in_acid(chosen: ElectrodeProcess, situation: Situation) -> bool:
    """Whether a metal above hydrogen stands against more acid than it has ions: then hydrogen forms."""
    metal_ions = situation.cell.electrolyte.concentration_of(chosen.reactant)
    acid = situation.cell.electrolyte.concentration_of(HYDROGEN_ION)
    return metal_ions is not None and acid is not None and acid > metal_ions


def _is_below_hydrogen(process: ElectrodeProcess) -> bool:
    return process.potential_V is not None and process.potential_V > 0


def _nobler_than(chosen: ElectrodeProcess, situation: Situation) -> bool:
    return any(
        p.potential_V is not None and p.potential_V > 0 and p.reactant != chosen.reactant
        for p in situation.of(Kind.METAL, Kind.CHARGE, Kind.REACTION)
    )
