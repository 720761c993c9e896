"""Where the uncertainty of an answer comes from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.chemistry.figures import notations
from ionwright.chemistry.units import read_unit
from ionwright.teaching.quantities.expressions import EQUALS, Piece, joined, symbol

if TYPE_CHECKING:
    from ionwright.chemistry.amounts.relations import Number
    from ionwright.chemistry.units import Unit
    from ionwright.teaching.quantities.answers import Answer

__all__ = ["uncertainty_step"]

_FIGURES = 2


def uncertainty_step(answer: Answer, number: Number) -> tuple[str, Piece]:
    """What each given quantity brings to the uncertainty of an answer, and how it adds up.

    Parameters
    ----------
    number
        The answer in the unit of the solver, with its uncertainty.
    """
    scale = read_unit(QUANTITIES[answer.key.kind].unit).si / answer.unit.si
    parts = sorted(
        (
            (str(variable.tag), abs(part) * scale)
            for variable, part in number.error_components().items()
            if part
        ),
        key=lambda part: -part[1],
    )
    brought = [f"the {name} brings {_shown(part, answer.unit).text}" for name, part in parts]
    listed = ", ".join(brought[:-1]) + " and " + brought[-1] if len(brought) > 1 else brought[0]
    said = f"Of the uncertainty, {listed}" + ("; they add as squares." if len(parts) > 1 else ".")
    lead = symbol(answer.key)
    left = Piece(f"u({lead.text})", f"<i>u</i>({lead.html})", f"u({lead.latex})")
    total = _shown(answer.uncertainty or 0.0, answer.unit)
    if len(parts) == 1:
        return said, joined(EQUALS, [left, total])
    squares = [_shown(part, answer.unit) for _, part in parts]
    root = Piece(
        "√(" + " + ".join(f"({square.text})²" for square in squares) + ")",
        "√(" + " + ".join(f"({square.html})<sup>2</sup>" for square in squares) + ")",
        "\\sqrt{" + " + ".join(f"({square.latex})^2" for square in squares) + "}",
    )
    return said, joined(EQUALS, [left, root, total])


def _shown(value: float, unit: Unit) -> Piece:
    rendered = notations(value, _FIGURES, unit)
    return Piece(rendered.text, rendered.html, rendered.latex)
