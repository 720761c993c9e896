"""Cautions: the hazards of what goes in and of what comes out."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.species import species
from ionwright.teaching import Prediction
from ionwright.teaching.caution import cautions

ToldOf = Callable[..., Prediction]


def hazards(prediction: Prediction) -> list[str]:
    return [caution.hazard for caution in prediction.cautions]


@pytest.mark.parametrize(
    ("electrolyte", "rest", "hazard"),
    [
        (["NaCl"], {"concentration": "concentrated"}, "explosive gas mixture"),
        (["Na2SO4"], {}, "explosive gas mixture"),
        (["NaCl"], {"concentration": "concentrated"}, "alkali forms"),
        (["NaOH"], {}, "corrosive"),
        (["H2SO4"], {"concentration": "dilute"}, "irritant or corrosive"),
        (["H2SO4"], {"concentration": "concentrated"}, "corrosive"),
        (["CuSO4"], {}, "harmful, harms water life"),
        (["NiSO4"], {}, "toxic, sensitising"),
        (["Pb(NO3)2"], {}, "toxic"),
        (["KCN"], {"anode": "silver"}, "deadly poison"),
        (["PbBr2"], {"state": "molten"}, "hot melt"),
        (["NaCl"], {"state": "molten"}, "very high temperature"),
        (["NaCl"], {"cathode": "mercury"}, "mercury electrode"),
        (["H2SO4"], {"anode": "lead"}, "lead electrode"),
        (["NaCl"], {"anode": "stainless steel"}, "stainless steel electrode"),
        (["NaCl"], {"anode": "copper"}, "harmful, harms water life"),
    ],
)
def test_a_hazard_of_the_cell_is_told(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], hazard: str
) -> None:
    assert hazard in hazards(told_of(*electrolyte, **rest))


@pytest.mark.parametrize(
    ("electrolyte", "rest", "hazard"),
    [
        (["CuSO4"], {}, "explosive gas mixture"),
        (["PbBr2"], {"state": "molten"}, "very high temperature"),
        (["NaCl"], {"state": "molten"}, "alkali forms"),
        (["CuSO4"], {}, "low hazard as metal"),
        (["NaCl"], {"cathode": "stainless steel"}, "stainless steel electrode"),
    ],
)
def test_a_hazard_that_the_cell_has_not_is_left_out(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], hazard: str
) -> None:
    assert hazard not in hazards(told_of(*electrolyte, **rest))


@pytest.mark.parametrize("state", ["aqueous", "molten"])
def test_the_general_caution_stands_last_and_defers_to_local_rules(told_of: ToldOf, state: str) -> None:
    last = told_of("NaCl", state=state).cautions[-1]
    assert last.hazard == "all cells"
    assert "Local rules, your school's own risk assessment and qualified staff come first." in last.text


def test_nitric_acid_has_its_own_caution_in_place_of_that_of_a_dry_nitrate(told_of: ToldOf) -> None:
    acid, salt = hazards(told_of("HNO3")), hazards(told_of("KNO3"))
    assert "oxidiser" in salt
    assert "oxidiser" not in acid
    assert set(acid) - set(salt)


def test_no_caution_is_told_twice(told_of: ToldOf) -> None:
    found = told_of("CuSO4", anode="copper", cathode="lead").cautions
    assert len(found) == len(set(found))


def test_an_undecided_cell_still_has_the_cautions_of_what_goes_in(told_of: ToldOf) -> None:
    told = told_of("Pb(NO3)2", "KNO3", state="aqueous", curriculum="gcse")
    alone = cautions(told.cell, (), ())
    assert "toxic" in [caution.hazard for caution in alone]


def test_a_product_that_the_tables_do_not_know_brings_no_caution(told_of: ToldOf) -> None:
    cell = told_of("Na2SO4").cell
    assert cautions(cell, (species("XeF6"),), ()) == cautions(cell, (), ())
