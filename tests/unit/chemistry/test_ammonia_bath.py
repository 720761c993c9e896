"""Metal anodes in solutions of their complexes with ammonia, which are alkaline and yet dissolve the metal."""

import pytest

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient


@pytest.mark.parametrize(
    ("salt", "anode", "metal"),
    [("[Ag(NH3)2]NO3", "silver", "Ag"), ("[Cu(NH3)4]SO4", "copper", "Cu"), ("[Zn(NH3)4]SO4", "zinc", "Zn")],
)
def test_the_metal_of_the_complex_dissolves_and_plates(salt, anode, metal):
    cell = make_cell(CellDescription(electrolyte=(Ingredient(salt),), cathode="steel", anode=anode))
    assert cell.medium == "alkaline"
    assert cell.anode_behaviour() == "active"
    assert cell.plating_metal() == metal
    assert "NH3" in cell.at_anode().processes[0].forms[0][1].left[1].species.ascii
