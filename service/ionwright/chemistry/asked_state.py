"""Decides between solution and melt from the state that was asked for and the words on the label."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.ionic_compound import WATER

if TYPE_CHECKING:
    from ionwright.chemistry.compound import SubstanceReading

__all__ = ["State", "state_to_work_with"]

State = Literal["aqueous", "molten"]


def state_to_work_with(
    state: str, readings: list[SubstanceReading], *, has_concentration: bool
) -> tuple[State, list[str]]:
    """Return the state to work with, and the sentences that say why.

    Parameters
    ----------
    state
        The state that was asked for.
    readings
        What the texts of the substances say.
    has_concentration
        Whether any concentration was given.

    Raises
    ------
    CellRefused
        A solid is asked for (``ions-cannot-move``), or the state is not known (``bad-state``).
    """
    words = {reading.state_word for reading in readings}
    if state == "solid" or (state == "aqueous" and "solid" in words):
        compound = readings[0].compound
        held = "the ions are held in a lattice and cannot move"
        if compound.role in ("water", "acid"):
            held = "there are molecules held in place, not ions that could move"
        raise CellRefused(
            "ions-cannot-move",
            f"In solid {compound.name} {held}, so it does not conduct.",
            where="state",
            remedy="Dissolve it in water."
            if compound.role == "acid"
            else "Melt it, or dissolve it in water.",
        )
    if state == "molten":
        if "aqueous" in words:
            return "molten", ["A melt is taken, because the state that was asked for is molten."]
        return "molten", []
    if state == "liquid":
        if has_concentration or all(one.compound == WATER for one in readings):
            return "aqueous", ["The liquid is taken as a solution in water."]
        return "molten", ["A liquid salt without water is a molten salt, so a melt is taken."]
    if state != "aqueous":
        raise CellRefused(
            "bad-state",
            f'"{state[:40]}" is not a state of an electrolyte.',
            where="state",
            remedy="Write aqueous or molten.",
        )
    if "molten" in words:
        return "molten", ["The name says that it is molten, so a melt is taken."]
    return "aqueous", []
