"""The plan of a demonstration: how much charge, which current for how long, what forms, and where it may be done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from ionwright.chemistry.notation import species_text
from ionwright.chemistry.species import species

if TYPE_CHECKING:
    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.demonstrations.air import FlammableGas, GasInRoom
    from ionwright.teaching.demonstrations.bath import BathUse
    from ionwright.teaching.demonstrations.currents import CurrentChoice
    from ionwright.teaching.demonstrations.measure import Measure
    from ionwright.teaching.demonstrations.turnover import Turnover
    from ionwright.teaching.demonstrations.venue import Venue
    from ionwright.teaching.prediction import Prediction
    from ionwright.teaching.quantities.working import Step

__all__ = ["Plan", "PlannedAim"]


@dataclass(frozen=True, slots=True)
class PlannedAim:
    """An aim, and the charge that it takes.

    Parameters
    ----------
    quantity
        mass, volume, amount, thickness or number_of_particles.
    of
        Canonical ASCII of the product.
    size, charge
        How much of the product is aimed at, and the charge through the circuit that gives it.
    rule
        The rule of thumb that says how much can be seen; empty if the aim says it.
    decides
        Whether no other aim takes more charge.
    """

    quantity: str
    of: str
    electrode: Literal["cathode", "anode"]
    size: Measure
    charge: Measure
    rule: str
    decides: bool


@dataclass(frozen=True, slots=True, eq=False)
class Plan:
    """A whole plan.

    Parameters
    ----------
    charge
        What the aims take.
    choice
        The currents that do it, the one to be preferred, and what stands in the way.
    formed, used
        All that forms and all that is used up while that charge passes.
    total_gas
        Volume of all gases together; None without a gas.
    baths
        What each ion that is used up asks of the bath.
    preparation
        What to set up, as sentences.
    bath_note
        What becomes of the bath as a whole, as a sentence.
    toxic, flammable
        Gases in the air of the room.
    venue
        Where it may be done, and why.
    doubts
        What is undecided or contested, as sentences.
    rules
        The rules of thumb that the plan rests on, as sentences.
    working
        How the charge and the time follow, as on the board.
    """

    curriculum: Curriculum
    prediction: Prediction
    aims: tuple[PlannedAim, ...]
    charge: Measure
    choice: CurrentChoice
    formed: tuple[Turnover, ...]
    used: tuple[Turnover, ...]
    total_gas: Measure | None
    baths: tuple[BathUse, ...]
    preparation: tuple[str, ...]
    bath_note: str
    toxic: tuple[GasInRoom, ...]
    flammable: tuple[FlammableGas, ...]
    venue: Venue
    doubts: tuple[str, ...]
    assumptions: tuple[str, ...]
    rules: tuple[str, ...]
    working: tuple[Step, ...]

    def __str__(self) -> str:
        """The plan in brief: the place, the aims, the current, how to set up, the bath, the air and the cautions."""
        aims = (
            f"{aim.size.text} of {species_text(species(aim.of))} at the {aim.electrode}" for aim in self.aims
        )
        told = [
            f"Place: {self.venue.word}.",
            *self.venue.reasons,
            f"To be seen: {'; '.join(aims)}; it takes {self.charge.text}.",
            self.choice.because,
            *self.preparation,
            *(use.says for use in self.baths),
            self.bath_note,
            *(gas.says for gas in self.toxic),
            *(gas.says for gas in self.flammable),
            *(caution.text for caution in self.prediction.cautions),
        ]
        return "\n".join(dict.fromkeys(told))

    @property
    def is_met(self) -> bool:
        """Whether the aims are met in time, within the limits, and before an ion of the bath runs out."""
        runs_out = any(use.share is not None and use.share.counted_in("1") > 1 for use in self.baths)
        return self.choice.recommended.fits and not runs_out
