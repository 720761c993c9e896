"""The working and the answers of a task as plain text, as they stand on the board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.naming import name_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ionwright.teaching.quantities.answers import Answer
    from ionwright.teaching.quantities.working import Step

__all__ = ["board_text"]


def board_text(steps: Sequence[Step], answers: Sequence[Answer]) -> str:
    """The steps, each a sentence with its equation below, and then a line for each answer."""
    lines = [line for step in steps for line in (step.sentence, f"    {step.equation.text}")]
    is_whole = len({answer.key.process for answer in answers}) > 1
    for answer in answers:
        name = name_of(answer.key, is_whole=is_whole)
        lines.append(f"{name[0].upper()}{name[1:]}: {answer.rendered.text}")
    return "\n".join(lines)
