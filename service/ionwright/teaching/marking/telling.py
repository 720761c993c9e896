"""What the words about a line are chosen by: the line, the question, and the right line that comes nearest."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.typesetting import as_text
from ionwright.teaching.marking.expectation import OXIDATION, REDUCTION

if TYPE_CHECKING:
    from ionwright.chemistry.equation import Equation
    from ionwright.teaching.marking.expectation import Expectation
    from ionwright.teaching.marking.line import Line

__all__ = ["Told", "Words"]

Words = tuple[str, str]
"""The sentence that helps, and the one that gives the answer away."""


@dataclass(frozen=True, slots=True)
class Told:
    """What is said of a line: by whom it is read, what it says, and what was right.

    Parameters
    ----------
    line
        What the student wrote.
    expectation
        What the question expects.
    nearest
        The right line that comes nearest to it.
    """

    line: Line
    expectation: Expectation
    nearest: Equation

    @property
    def right_line(self) -> str:
        """The right line as text, with state symbols only where they are wanted."""
        return _right_text(self.nearest, with_states=self.expectation.wants_states)

    @property
    def change(self) -> str:
        """What the task asks for: ``"reduction"`` or ``"oxidation"``."""
        return REDUCTION if self.nearest.electrons > 0 else OXIDATION

    @property
    def place(self) -> str:
        """Where it happens: ``"at the cathode"``; empty where no electrode is named."""
        return f"at the {self.expectation.electrode}" if self.expectation.electrode else ""

    @property
    def medium(self) -> str:
        """Where the particles are: ``"in the solution"`` or ``"in the melt"``; ``"here"`` if nothing is known of it."""
        if not self.expectation.electrode:
            return "here"
        return "in the melt" if self.expectation.is_molten else "in the solution"

    @property
    def is_followed(self) -> bool:
        """Whether the line balances in itself, electrons and all."""
        return bool(self.line.electrons) and self.line.is_balanced


@lru_cache(maxsize=1024)
def _right_text(line: Equation, *, with_states: bool) -> str:
    return f"{as_text(line if with_states else line.without_states())}."
