"""Parts of tasks about amounts, in few words."""

from __future__ import annotations

from typing import Any

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.teaching.quantities import ProcessDescription


def cell(*electrolyte: str, **members: Any) -> ProcessDescription:
    """A cell; "AgNO3@0.050 mol/dm3" is a substance with its concentration."""
    ingredients = tuple(
        Ingredient(substance, amount or None)
        for substance, _, amount in (text.partition("@") for text in electrolyte)
    )
    return ProcessDescription(
        id="cell", cell=CellDescription(electrolyte=ingredients, **members), where="cell"
    )


def half(text: str, id_: str = "process", electrode: str = "") -> ProcessDescription:
    return ProcessDescription(id=id_, half_equation=text, electrode=electrode, where="half_equation")
