"""From names to ions."""

import pytest

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.ionic_compound import compound_from
from ionwright.chemistry.nomenclature import normalised_name, shown_name, unit_of_name


def formula_of(name):
    named = unit_of_name(name)
    return None if named is None else compound_from(named.unit).formula


@pytest.mark.parametrize(
    ("name", "formula"),
    [
        ("sodium chloride", "NaCl"),
        ("SODIUM CHLORIDE", "NaCl"),
        ("COPPER(II) SULPHATE", "CuSO4"),
        ("copper(II) sulfate", "CuSO4"),
        ("copper (ii) sulphate", "CuSO4"),
        ("Copper(II)sulphate", "CuSO4"),
        ("copper ii sulfate", "CuSO4"),
        ("copper(2+) sulfate", "CuSO4"),
        ("cupric chloride", "CuCl2"),
        ("cuprous chloride", "CuCl"),
        ("ferrous sulfate", "FeSO4"),
        ("iron(III) chloride", "FeCl3"),
        ("iron trichloride", "FeCl3"),
        ("dicopper oxide", "Cu2O"),
        ("aluminum chloride", "AlCl3"),
        ("cesium chloride", "CsCl"),
        ("zinc(II) chloride", "ZnCl2"),
        ("ammonium nitrate", "NH4NO3"),
        ("mercury(I) nitrate", "Hg2(NO3)2"),
        ("sodium hydrogen carbonate", "NaHCO3"),
        ("sodium hydrogencarbonate", "NaHCO3"),
        ("sodium bicarbonate", "NaHCO3"),
        ("potassium dihydrogen phosphate", "KH2PO4"),
        ("disodium hydrogen phosphate", "Na2HPO4"),
        ("potassium permanganate", "KMnO4"),
        ("potassium manganate(VII)", "KMnO4"),
        ("sodium chlorate(I)", "NaClO"),
        ("sodium sulfate(IV)", "Na2SO3"),
        ("lead acetate", "Pb(CH3COO)2"),
        ("lead(II) ethanoate", "Pb(CH3COO)2"),
        ("sodium acetate", "CH3COONa"),
        ("potassium hexacyanoferrate(III)", "K3[Fe(CN)6]"),
        ("potassium aluminium sulfate", "KAl(SO4)2"),
        ("ammonium iron(II) sulfate", "(NH4)2Fe(SO4)2"),
        ("potassium magnesium chloride", "KMgCl3"),
        ("hydrochloric acid", "HCl"),
        ("sulphuric acid", "H2SO4"),
        ("nitric(V) acid", "HNO3"),
        ("acetic acid", "CH3COOH"),
        ("oxalic acid", "H2C2O4"),
        ("hydrogen chloride", "HCl"),
        ("copper sulfate pentahydrate", "CuSO4.5H2O"),
        ("copper(II) sulfate-5-water", "CuSO4.5H2O"),
        ("aluminium sulfate 18-water", "Al2(SO4)3.18H2O"),
        ("magnesium chloride hexahydrate", "MgCl2.6H2O"),
        ("anhydrous cobalt(II) chloride", "CoCl2"),
    ],
)
def test_a_name_gives_its_formula(name, formula):
    assert formula_of(name) == formula


@pytest.mark.parametrize(
    "name",
    [
        "",
        "sodium",
        "chloride",
        "foo bar",
        "sodium copper",
        "hydrogen peroxide",
        "carbon dioxide",
        "copper",
        "acid",
    ],
)
def test_what_is_no_name_of_ions_gives_nothing(name):
    assert unit_of_name(name) is None


@pytest.mark.parametrize(
    ("name", "assumption"),
    [
        ("copper sulphate", "Copper sulfate is taken as copper(II) sulfate."),
        ("iron chloride", "Iron chloride is taken as iron(III) chloride."),
        ("iron sulfate", "Iron sulfate is taken as iron(II) sulfate."),
        ("lead bromide", "Lead bromide is taken as lead(II) bromide."),
        ("copper(II) sulfate", ""),
        ("silver nitrate", ""),
        ("ferrous sulfate", ""),
        ("iron trichloride", ""),
    ],
)
def test_a_missing_numeral_is_assumed_aloud(name, assumption):
    assert unit_of_name(name).assumption == assumption


def test_names_are_normalised_to_one_spelling():
    assert normalised_name("  Aluminum   SULPHATE ") == "aluminium sulfate"
    assert normalised_name("Iron - (III) Chloride") == "iron(iii) chloride"


def test_numerals_are_shown_in_capitals():
    assert shown_name("lead(iv) oxide") == "lead(IV) oxide"


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("sodium dichloride", "NaCl"),
        ("magnesium trichloride", "MgCl2"),
        ("disodium chloride", "NaCl"),
        ("potassium disulfate", "K2SO4"),
    ],
)
def test_the_numbers_of_a_name_must_fit_the_charges(text, right):
    with pytest.raises(CellRefused) as caught:
        unit_of_name(text)
    assert caught.value.code == "charges-do-not-cancel"
    assert right in caught.value.remedy


@pytest.mark.parametrize(
    ("text", "formula"),
    [
        ("aluminium trichloride", "AlCl3"),
        ("dialuminium trioxide", "Al2O3"),
        ("disodium hydrogenphosphate", "Na2HPO4"),
        ("iron(II,III) oxide", "Fe3O4"),
        ("iron(II, III) oxide", "Fe3O4"),
        ("triiron tetraoxide", "Fe3O4"),
        ("copper(2) sulfate", "CuSO4"),
        ("chromium trioxide", "CrO3"),
    ],
)
def test_numbers_that_fit_are_read(text, formula):
    assert read_substance(text).compound.formula == formula


def test_one_metal_with_two_charges_is_named_once():
    assert read_substance("Fe3O4").compound.name == "iron(II,III) oxide"
    assert read_substance("Mn3O4").compound.name == "manganese(II,III) oxide"


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("copper(5) sulfate", 'Did you mean "copper(II) sulfate"?'),
        ("copper(V) sulfate", 'Did you mean "copper(II) sulfate"?'),
        ("iron(VI) chloride", 'Did you mean "iron(II) chloride"?'),
        ("sodium(II) chloride", 'Did you mean "sodium chloride"?'),
    ],
)
def test_a_charge_that_a_metal_does_not_have_is_refused(text, remedy):
    with pytest.raises(CellRefused) as caught:
        read_substance(text)
    assert caught.value.code == "does-not-exist"
    assert caught.value.remedy == remedy
