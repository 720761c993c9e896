"""What products look like and how they are tested."""

from itertools import product

import pytest

from ionwright.chemistry.anode_metal import electrode_oxidations
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.species import species
from ionwright.chemistry.substance import GENERAL_CAUTION, SUBSTANCES


@pytest.mark.parametrize(
    ("formula", "part", "result"),
    [
        ("H2", "colourless gas", "squeaky pop"),
        ("O2", "colourless gas", "flame again"),
        ("Cl2", "green gas", "bleached"),
        ("Br2", "orange-brown", "blue-black"),
        ("I2", "brown colour of iodine", "blue-black"),
        ("Cu", "pink-brown coating of copper", "blue solution"),
    ],
)
def test_a_product_is_seen_and_tested_as_in_class(formula, part, result):
    row = SUBSTANCES[formula]
    assert part in row.observation
    assert result in row.test_result


def test_a_melt_looks_different():
    assert (
        SUBSTANCES["Pb"].observation_in_melt
        == "A shiny silvery bead of molten lead collects under the {electrode}."
    )
    assert SUBSTANCES["Br2"].observation_in_melt == "Red-brown vapour of bromine rises at the {electrode}."
    assert SUBSTANCES["H2"].observation_in_melt == SUBSTANCES["H2"].observation


def test_every_sentence_is_a_sentence():
    for row in SUBSTANCES.values():
        tests = (row.test, row.test_result, row.test_in_melt, row.test_result_in_melt)
        assert all(tests) or not any(tests), row.formula
        for sentence in filter(None, (row.observation, row.observation_in_melt, *tests)):
            assert sentence[0].isupper(), sentence
            assert sentence.endswith("."), sentence
            assert sentence.format(electrode="cathode").count("{") == 0
        assert not row.caution or row.caution.endswith(".")


def test_every_metal_that_an_ion_can_give_has_a_row():
    assert {one.element for one in IONS.values() if one.element} <= set(SUBSTANCES)


def test_every_formula_is_canonical():
    assert all(species(formula).ascii == formula for formula in SUBSTANCES)


def test_the_deference_to_local_rules_is_said_once():
    assert "local rules" in GENERAL_CAUTION
    assert "risk assessment" in GENERAL_CAUTION
    assert not any("risk assessment" in row.caution for row in SUBSTANCES.values())


def test_looking_is_no_test_and_water_none_for_the_metals_of_a_melt():
    assert not any(row.test.startswith(("Look", "There is no")) for row in SUBSTANCES.values())
    for metal in ("Na", "K", "Li", "Ca", "Ba", "Al"):
        assert not SUBSTANCES[metal].test


def test_only_the_vapour_is_tested_over_a_melt():
    bromine = SUBSTANCES["Br2"]
    assert "cyclohexane" in bromine.test
    assert bromine.test_in_melt == "Hold damp starch-iodide paper in the vapour."
    assert "organic" not in bromine.test_result_in_melt
    assert SUBSTANCES["Cl2"].test_in_melt == SUBSTANCES["Cl2"].test


def test_a_hazard_is_a_short_phrase_and_oxygen_warns_of_itself_only():
    for row in SUBSTANCES.values():
        assert len(row.hazard) <= 45, row.hazard
        assert not any(mark in row.hazard for mark in (";", "H2", "about", "giving")), row.hazard
    assert SUBSTANCES["O2"].caution == "Keep flames, grease and anything that burns away from oxygen."


@pytest.mark.parametrize(
    ("formula", "name", "looks"),
    [
        ("CuCO3", "copper(II) carbonate", "green"),
        ("Cu2(OH)2CO3", "basic copper carbonate", "green"),
        ("PbCrO4", "lead(II) chromate", "yellow"),
        ("Hg2Cl2", "mercury(I) chloride", "white"),
        ("Ag2O", "silver oxide", "brown-black"),
        ("Cu2O", "copper(I) oxide", "red"),
        ("PbCl2", "lead(II) chloride", "white"),
    ],
)
def test_a_film_on_an_anode_has_a_name_and_a_look(formula, name, looks):
    row = SUBSTANCES[formula]
    assert row.name == name
    assert row.observation == f"A {looks} film of {name} grows on the {{electrode}}."


def test_every_film_that_a_metal_anode_may_grow_has_a_row():
    anions = [(one,) for one, known in IONS.items() if known.charge < 0]
    for electrode, ions in product(electrodes().values(), anions):
        for process in electrode_oxidations(ions, "neutral", electrode, None):
            for kind in process.products:
                assert kind.charge or kind.ascii in SUBSTANCES or kind.ascii.startswith("("), kind.ascii
