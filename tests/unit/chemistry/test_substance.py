"""What products look like and how they are tested."""

import pytest

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
        for sentence in (row.observation, row.observation_in_melt, row.test, row.test_result):
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
