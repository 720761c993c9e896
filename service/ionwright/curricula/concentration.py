"""How a curriculum reads a concentration: as the word in the task, or by a threshold on the ion."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.curricula.wording import ions

if TYPE_CHECKING:
    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.species import Species

CONCENTRATED = "concentrated"
DILUTE = "dilute"


@dataclass(frozen=True, slots=True)
class ConcentrationReading:
    """Whether the solution counts as concentrated, and how sure that is.

    Parameters
    ----------
    is_concentrated
        The reading.
    is_doubtful
        Whether the task leaves room for the other reading.
    assumption
        What was assumed, as a sentence; empty if the task said the word itself.
    """

    is_concentrated: bool
    is_doubtful: bool
    assumption: str


@dataclass(frozen=True, slots=True)
class ConcentrationRule:
    """Turns what a task says of a concentration into "concentrated" or "dilute".

    Parameters
    ----------
    threshold_mol_dm3
        From this concentration of the *ion* upwards the solution counts as concentrated [mol/dm³].
    doubtful_mol_dm3
        Between these two the reading is a matter of opinion and both answers are accepted [mol/dm³].
    when_missing
        How a task that says nothing is read: ``"concentrated"`` or ``"dilute"``.
    """

    threshold_mol_dm3: float
    doubtful_mol_dm3: tuple[float, float]
    when_missing: str

    def read(self, cell: Cell, ion: Species) -> ConcentrationReading:
        """How concentrated the ion counts as in this cell."""
        said = cell.word_for(ion)
        if said is not None:
            return ConcentrationReading(said == CONCENTRATED, is_doubtful=False, assumption="")
        amount = cell.electrolyte.concentration_of(ion)
        if amount is None:
            return ConcentrationReading(
                self.when_missing == CONCENTRATED,
                is_doubtful=True,
                assumption=f"No concentration was given, so the solution was taken as {self.when_missing}.",
            )
        is_concentrated = amount >= self.threshold_mol_dm3
        low, high = self.doubtful_mol_dm3
        word = CONCENTRATED if is_concentrated else DILUTE
        return ConcentrationReading(
            is_concentrated,
            is_doubtful=low <= amount <= high,
            assumption=f"{amount:.3g} mol/dm³ of {ions(ion)} was read as {word}; "
            f"the line was drawn at {self.threshold_mol_dm3:g} mol/dm³.",
        )
