"""What a solution does to a metal electrode without any current."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.teaching.unaided import unaided_reactions

CellOf = Callable[..., Cell]


@pytest.mark.parametrize(
    ("electrolyte", "rest", "part"),
    [
        (["CuSO4"], {"cathode": "steel"}, "steel becomes coated with copper from the solution."),
        (["AgNO3"], {"anode": "copper"}, "copper becomes coated with silver from the solution."),
        (["CuSO4"], {"anode": "zinc"}, "zinc becomes coated with copper from the solution."),
        (["H2SO4"], {"anode": "zinc"}, "zinc reacts with the acid and gives off hydrogen."),
        (["H2SO4"], {"cathode": "iron"}, "iron reacts with the acid and gives off hydrogen."),
        (["HNO3"], {"anode": "copper"}, "copper is attacked by nitric acid,"),
        (["NaOH"], {"cathode": "zinc"}, "zinc reacts with the alkali and gives off hydrogen."),
        (["NaOH"], {"anode": "aluminium"}, "aluminium reacts with the alkali and gives off hydrogen."),
    ],
)
def test_a_metal_that_the_solution_attacks_is_told_of(
    cell_of: CellOf, electrolyte: list[str], rest: dict[str, str], part: str
) -> None:
    (told,) = unaided_reactions(cell_of(*electrolyte, **rest))
    assert told.startswith(f"Even with the current off, {part}")


@pytest.mark.parametrize(
    ("electrolyte", "rest"),
    [
        (["CuSO4"], {}),
        (["CuSO4"], {"anode": "copper", "cathode": "copper"}),
        (["ZnSO4"], {"anode": "copper"}),
        (["NaCl"], {"anode": "zinc"}),
        (["H2SO4"], {"anode": "copper"}),
        (["H2SO4"], {"anode": "tin"}),
        (["NaOH"], {"anode": "copper"}),
        (["MgSO4"], {"anode": "aluminium"}),
        (["NiSO4"], {"anode": "cobalt"}),
        (["NiSO4"], {"cathode": "steel", "anode": "nickel"}),
        (["CuSO4"], {"anode": "platinum"}),
        (["PbBr2"], {"state": "molten", "cathode": "steel"}),
    ],
)
def test_nothing_is_told_where_nothing_is_seen(
    cell_of: CellOf, electrolyte: list[str], rest: dict[str, str]
) -> None:
    assert unaided_reactions(cell_of(*electrolyte, **rest)) == ()


def test_one_material_at_both_electrodes_is_told_of_once(cell_of: CellOf) -> None:
    assert len(unaided_reactions(cell_of("CuSO4", anode="iron", cathode="iron"))) == 1


def test_a_metal_may_suffer_twice(cell_of: CellOf) -> None:
    told = unaided_reactions(cell_of("CuSO4", "H2SO4", anode="zinc"))
    assert [text.split("zinc ")[1].split()[0] for text in told] == ["becomes", "reacts"]
