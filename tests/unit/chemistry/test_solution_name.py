"""The name of a solution or a melt as it stands."""

import pytest

from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte


def name(*texts, state="aqueous"):
    return make_electrolyte(tuple(Ingredient(*text.split("@")) for text in texts), state, None).solution_name


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        (("CuSO4.5H2O",), "copper(II) sulfate"),
        (("Na2O",), "sodium hydroxide"),
        (("HCl@1 M",), "hydrochloric acid"),
        (("NaHSO4",), "sodium hydrogensulfate"),
        (("NH3",), "ammonia"),
        (("water",), "water"),
        (("NaCl", "water"), "sodium chloride"),
        (("NaOH@1 M", "HCl@1 M"), "sodium chloride"),
        (("NaOH@1 M", "HCl@0.5 M"), "sodium hydroxide and sodium chloride"),
        (("NaOH@0.5 M", "HCl@1 M"), "hydrochloric acid and sodium chloride"),
        (("NaHSO4@1 M", "NaOH@1 M"), "sodium sulfate"),
        (("Ba(OH)2@0.1 M", "HNO3@0.2 M", "NaCl@1 M"), "sodium chloride and barium nitrate"),
        (("CH3COOH@1 M", "NaOH@0.5 M"), "ethanoic acid and sodium ethanoate"),
        (("NH4Cl@1 M", "NaOH@1 M"), "sodium chloride and ammonia"),
        (("NH4Cl@1 M", "NaOH@2 M"), "sodium hydroxide, sodium chloride and ammonia"),
        (("NaHCO3@1 M", "NaOH@1 M"), "sodium carbonate"),
        (("NH3@1 M", "HCl@1 M"), "ammonium chloride"),
        (("CH3COONa@1 M", "HCl@1 M"), "sodium chloride and ethanoic acid"),
        (("NaCl", "sugar", "water"), "sodium chloride"),
        (("CuSO4.5H2O", "H2SO4"), "copper(II) sulfate and sulfuric acid"),
        (("NiSO4.6H2O@1 M", "NiCl2@0.2 M"), "nickel(II) sulfate and nickel(II) chloride"),
    ],
)
def test_a_solution_is_named_by_what_is_left_in_it(texts, expected):
    assert name(*texts) == expected


def test_a_melt_is_named_by_its_salts():
    assert name("PbBr2", state="molten") == "lead(II) bromide"
    assert name("NaCl", "CaCl2", state="molten") == "sodium chloride and calcium chloride"
