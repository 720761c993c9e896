"""A maker of cells for tests that need one: everything is optional but the electrolyte."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient

MakeCell = Callable[..., Cell]


@pytest.fixture(scope="session")
def cell_of() -> MakeCell:
    def make(*electrolyte: str, concentration: str | None = None, **rest: object) -> Cell:
        ingredients = tuple(Ingredient(substance, concentration) for substance in electrolyte)
        return make_cell(CellDescription(electrolyte=ingredients, **rest))

    return make
