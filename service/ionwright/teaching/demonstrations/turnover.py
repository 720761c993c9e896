"""What forms and what is used up at both electrodes while a charge passes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from ionwright.teaching.demonstrations.measure import Measure, fitting
from ionwright.teaching.demonstrations.reckoning import Asked, Reckoning, stated

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ionwright.chemistry.amounts.circuit import Process
    from ionwright.chemistry.stoichiometry import Term

__all__ = ["Turnover", "total_gas_dm3", "turnovers"]


@dataclass(frozen=True, slots=True)
class Turnover:
    """How much of one species forms or is used up at one electrode.

    Parameters
    ----------
    of
        Canonical ASCII.
    state
        Its state symbol.
    amount_mol, mass_g, volume_dm3
        In full; the volume is None for all but gases.
    figures
        To how many significant figures it is told.
    """

    of: str
    electrode: Literal["cathode", "anode"]
    state: str
    amount_mol: float
    mass_g: float
    volume_dm3: float | None
    figures: int

    @property
    def amount(self) -> Measure:
        """The amount of substance."""
        return fitting(self.amount_mol, "mol", self.figures)

    @property
    def mass(self) -> Measure:
        """The mass."""
        return fitting(self.mass_g, "g", self.figures)

    @property
    def volume(self) -> Measure | None:
        """The volume of a gas."""
        return None if self.volume_dm3 is None else fitting(self.volume_dm3, "dm3", self.figures)


def turnovers(
    reckoning: Reckoning, processes: Sequence[Process], charge_C: float, figures: int
) -> tuple[tuple[Turnover, ...], tuple[Turnover, ...]]:
    """What forms, and what is used up, while a charge passes.

    Parameters
    ----------
    charge_C
        Through the circuit [C].
    """
    formed: list[Turnover] = []
    used: list[Turnover] = []
    places = [
        (process, term, found)
        for process in processes
        for side, found in ((process.half.right, formed), (process.half.left, used))
        for term in side
        if not term.species.is_electron
    ]
    asked = [one for process, term, _ in places for one in _asked(process, term)]
    values = iter(reckoning.values([stated("charge", charge_C, "C")], asked))
    for process, term, found in places:
        electrode: Literal["cathode", "anode"] = "anode" if process.id == "anode" else "cathode"
        amount, mass = next(values), next(values)
        volume = next(values) if term.state == "g" else None
        found.append(Turnover(term.species.ascii, electrode, term.state, amount, mass, volume, figures))
    return tuple(formed), tuple(used)


def _asked(process: Process, term: Term) -> tuple[Asked, ...]:
    """What is asked of a species: amount, mass, and of a gas the volume."""
    of = term.species.ascii
    amount, mass = Asked("amount", "mol", of, process.id), Asked("mass", "g", of, process.id)
    return (amount, mass, Asked("volume", "dm3", of, process.id)) if term.state == "g" else (amount, mass)


def total_gas_dm3(formed: Sequence[Turnover]) -> float | None:
    """The volume of all gases together [dm³]; None without a gas."""
    volumes = [one.volume_dm3 for one in formed if one.volume_dm3 is not None]
    return sum(volumes) if volumes else None
