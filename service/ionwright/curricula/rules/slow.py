"""Rules out processes that do not run at an ordinary electrode in spite of their potential."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.curricula.model import ReadsNothingElse, Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import ions, listed, sentence_start


@dataclass(frozen=True, slots=True)
class _SlowOut(ReadsNothingElse):
    """Rules out every process that is slow.

    Parameters
    ----------
    is_told
        Whether the course goes deep enough to name them; else the ions simply stay.
    """

    is_told: bool

    def apply(self, situation: Situation) -> Ruling:
        """Rule out every slow process."""
        slow = (process for process in situation.remaining if process.slow)
        return Ruling(ruled_out=tuple(Remark(p, p.slow if self.is_told else "") for p in slow))


@dataclass(frozen=True, slots=True)
class SlowReductionsOut(_SlowOut):
    """Rules out reductions that do not run at an ordinary cathode in spite of their potential."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Ions such as nitrate are not reduced at the cathode in class, whatever their potentials say."


@dataclass(frozen=True, slots=True)
class SlowOxidationsOut(_SlowOut):
    """Rules out oxidations that do not run at an ordinary anode; leaves open what the tables do not know."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return "Sulfate, nitrate, carbonate, phosphate and fluoride ions are never discharged from a solution in water."

    def apply(self, situation: Situation) -> Ruling:
        """Rule out every slow process; leave undecided where an ion's oxidation is not in the tables."""
        open_question = situation.competition.untabulated
        if open_question:
            return undecidable(
                f"{sentence_start(listed(ions(ion) for ion in open_question))} are oxidised before water, "
                "and no rule of this course says what they give."
            )
        return _SlowOut.apply(self, situation)
