"""From what people call a substance to its compound, or to the refusal a teacher would give."""

import pytest

from ionwright.chemistry.compound import compound_of, molar_mass, near_names, read_substance
from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte
from ionwright.chemistry.faults import CellRefused, FormulaError, UnknownSpecies
from ionwright.chemistry.ion import ion
from ionwright.errors import IonwrightError


def counted(ions):
    return {one.species.ascii: count for one, count in ions}


@pytest.mark.parametrize(
    ("text", "formula", "ions"),
    [
        ("NiSO4·6H2O", "NiSO4.6H2O", {"Ni^2+": 1, "SO4^2-": 1}),
        ("Na 2 SO 4", "Na2SO4", {"Na^+": 2, "SO4^2-": 1}),
        ("K3Fe(CN)6", "K3[Fe(CN)6]", {"K^+": 3, "[Fe(CN)6]^3-": 1}),
        ("K3[Fe(CN)6]", "K3[Fe(CN)6]", {"K^+": 3, "[Fe(CN)6]^3-": 1}),
        ("NaAl(OH)4", "NaAl(OH)4", {"Na^+": 1, "Al(OH)4^-": 1}),
        ("Hg2Cl2", "Hg2Cl2", {"Hg2^2+": 1, "Cl^-": 2}),
        ("BaO2", "BaO2", {"Ba^2+": 1, "O2^2-": 1}),
        ("CaH2", "CaH2", {"Ca^2+": 1, "H^-": 2}),
        ("NaN3", "NaN3", {"Na^+": 1, "N3^-": 1}),
        ("(NH4)2Fe(SO4)2.6H2O", "(NH4)2Fe(SO4)2.6H2O", {"NH4^+": 2, "Fe^2+": 1, "SO4^2-": 2}),
        ("FeSO4.(NH4)2SO4.6H2O", "(NH4)2Fe(SO4)2.6H2O", {"NH4^+": 2, "Fe^2+": 1, "SO4^2-": 2}),
        ("K2SO4.Al2(SO4)3.24H2O", "KAl(SO4)2.12H2O", {"K^+": 1, "Al^3+": 1, "SO4^2-": 2}),
        ("KMgCl3", "KMgCl3", {"K^+": 1, "Mg^2+": 1, "Cl^-": 3}),
        ("CH3COONH4", "CH3COONH4", {"NH4^+": 1, "CH3COO^-": 1}),
        ("Pb(C2H3O2)2", "Pb(CH3COO)2", {"Pb^2+": 1, "CH3COO^-": 2}),
        ("(CH3COO)2Ca", "Ca(CH3COO)2", {"Ca^2+": 1, "CH3COO^-": 2}),
        ("NaOCl", "NaClO", {"Na^+": 1, "ClO^-": 1}),
        ("KCNS", "KSCN", {"K^+": 1, "SCN^-": 1}),
        ("H2SO4", "H2SO4", {"H^+": 2, "SO4^2-": 1}),
        ("(COOH)2", "H2C2O4", {"H^+": 2, "C2O4^2-": 1}),
        ("HC2H3O2", "CH3COOH", {"H^+": 1, "CH3COO^-": 1}),
        ("NH4OH", "NH3", {"NH4^+": 1, "OH^-": 1}),
        ("NaHSO4", "NaHSO4", {"Na^+": 1, "H^+": 1, "SO4^2-": 1}),
        ("KH2PO4", "KH2PO4", {"K^+": 1, "H2PO4^-": 1}),
        ("Na2O", "Na2O", {"Na^+": 2, "OH^-": 2}),
        ("H2O", "H2O", {"H^+": 1, "OH^-": 1}),
        ("CuCO3.Cu(OH)2", "Cu2CO3(OH)2", {"Cu^2+": 2, "CO3^2-": 1, "OH^-": 2}),
    ],
)
def test_a_formula_gives_its_ions_in_water(text, formula, ions):
    compound = read_substance(text).compound
    assert compound.formula == formula
    assert counted(compound.ions) == ions


def test_a_metal_of_two_charges_in_one_oxide_is_understood():
    compound = read_substance("Fe3O4").compound
    assert compound.formula == "Fe3O4"
    assert counted(compound.lattice_ions) == {"Fe^2+": 1, "Fe^3+": 2, "O^2-": 4}


def test_the_lattice_keeps_what_water_would_change():
    assert counted(read_substance("NaHSO4").compound.lattice_ions) == {"Na^+": 1, "HSO4^-": 1}
    assert counted(read_substance("CaO").compound.lattice_ions) == {"Ca^2+": 1, "O^2-": 1}


@pytest.mark.parametrize(
    ("text", "role", "strength"),
    [
        ("NaCl", "salt", "strong"), ("HCl", "acid", "strong"), ("CH3COOH", "acid", "weak"),
        ("NaOH", "alkali", "strong"),
        ("NH3", "alkali", "weak"), ("MgO", "oxide", "strong"), ("water", "water", "weak"), ("HF", "acid", "weak"),
    ],
)  # fmt: skip
def test_a_compound_has_a_role_and_a_strength(text, role, strength):
    compound = read_substance(text).compound
    assert (compound.role, compound.strength) == (role, strength)


@pytest.mark.parametrize(
    ("text", "formula", "word", "state"),
    [
        ("dilute sulfuric acid", "H2SO4", "dilute", None),
        ("conc. HCl", "HCl", "concentrated", None),
        ("concentrated sodium chloride solution", "NaCl", "concentrated", "aqueous"),
        ("molten lead bromide", "PbBr2", None, "molten"),
        ("PbBr2(l)", "PbBr2", None, "molten"),
        ("NaCl(aq)", "NaCl", None, "aqueous"),
        ("solid potassium iodide", "KI", None, "solid"),
        ("a solution of copper(II) chloride", "CuCl2", None, "aqueous"),
        ("brine", "NaCl", "concentrated", None),
        ("dilute brine", "NaCl", "dilute", None),
        ("potassium iodide dissolved in water", "KI", None, "aqueous"),
        ("acidified water", "H2SO4", "dilute", None),
        ("aluminium oxide dissolved in molten cryolite", "Al2O3", None, "molten"),
    ],
)
def test_words_beside_the_name_are_taken_off_and_kept(text, formula, word, state):
    reading = read_substance(text)
    assert reading.compound.formula == formula
    assert reading.concentration_word == word
    assert reading.state_word == state


@pytest.mark.parametrize(
    "text", ["NaCl (0.5 mol/dm3)", "NaCl 0.5 mol/dm3", "0.5 M NaCl", "0.5 mol/dm3 sodium chloride"]
)
def test_a_quantity_beside_the_name_is_read(text):
    reading = read_substance(text)
    assert reading.compound.formula == "NaCl"
    assert reading.concentration.mol_dm3 == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("text", "formula"),
    [
        ("BLUESTONE", "CuSO4.5H2O"), ("COPPER SULPHATE", "CuSO4"),
        ("Epsom salts", "MgSO4.7H2O"), ("caustic soda", "NaOH"), ("lime water", "Ca(OH)2"),
        ("vinegar", "CH3COOH"), ("cryolite", "Na3AlF6"), ("alumina", "Al2O3"), ("alum", "KAl(SO4)2.12H2O"),
        ("washing soda", "Na2CO3.10H2O"), ("bleach", "NaClO"), ("green vitriol", "FeSO4.7H2O"), ("sea water", "NaCl"),
    ],
)  # fmt: skip
def test_everyday_names_are_understood(text, formula):
    assert read_substance(text).compound.formula == formula


@pytest.mark.parametrize(
    ("text", "formula"),
    [
        ("nacl", "NaCl"),
        ("NACL", "NaCl"),
        ("cuso4", "CuSO4"),
        ("COSO4", "CoSO4"),
        ("fe2(so4)3", "Fe2(SO4)3"),
        ("Naoh", "NaOH"),
    ],
)
def test_a_formula_in_the_wrong_case_is_read_aloud(text, formula):
    reading = read_substance(text)
    assert reading.compound.formula == formula
    assert reading.assumptions == (f'"{text}" is read as {formula}.',)


@pytest.mark.parametrize(
    ("text", "code", "part"),
    [
        ("NaSO4", "charges-do-not-cancel", "Na⁺ and SO4²⁻ combine as Na2SO4"),
        ("NaCl2", "charges-do-not-cancel", "Na⁺ and Cl⁻ combine as NaCl"),
        ("FeCl", "charges-do-not-cancel", "FeCl2; Fe³⁺ and Cl⁻ combine as FeCl3"),
        ("HgCl", "charges-do-not-cancel", "Hg2²⁺ and Cl⁻ combine as Hg2Cl2"),
        ("SO4", "charges-do-not-cancel", "sulfate ion"),
        ("NH4", "charges-do-not-cancel", "ammonium ion"),
        ("CO2", "non-electrolyte", "covalent"),
        ("sugar", "non-electrolyte", "whole molecules"),
        ("C2H5OH", "non-electrolyte", "Ethanol"),
        ("CO(NH2)2", "non-electrolyte", "Urea"),
        ("CCl4", "non-electrolyte", "covalent"),
        ("SiO2", "non-electrolyte", "giant covalent lattice"),
        ("I2", "non-electrolyte", "Iodine"),
        ("CH3Cl", "non-electrolyte", "non-metals"),
        ("H2O2", "non-electrolyte", "Hydrogen peroxide"),
        ("boric acid", "non-electrolyte", "hardly conducts"),
        ("Cu", "not-an-electrolyte", "Copper conducts by its electrons"),
        ("copper", "not-an-electrolyte", "electrode"),
        ("steel", "not-an-electrolyte", "Steel"),
        ("NaK", "not-an-electrolyte", "electrons"),
        ("PbO2", "insoluble", "Lead(IV) oxide"),
        ("UF6", "unknown-substance", "UF6"),
        ("H3PO3", "unknown-substance", "may be an acid"),
        ("CuSO4.4NH3", "unknown-substance", "CuSO4.4NH3"),
        ("acidified copper sulfate", "unreadable-formula", "list of the salt and the acid"),
        ("cu", "not-an-electrolyte", "Copper"),
        ("H20", "non-electrolyte", 'Did you mean "H2O"?'),
        ("NaCI", "unknown-substance", 'Did you mean "NaCl"?'),
        ("cacl", "charges-do-not-cancel", "CaCl2"),
        ("bromine water", "non-electrolyte", "hardly conducts"),
        ("Xy", "unknown-element", "Xy"),
        ("", "unreadable-formula", "No substance"),
        ("NaCl and KI", "unreadable-formula", "mixture"),
        ("blah blah", "unknown-substance", "blah blah"),
    ],
)
def test_what_is_no_electrolyte_is_refused_with_the_reason(text, code, part):
    with pytest.raises(IonwrightError) as caught:
        read_substance(text)
    assert caught.value.code == code
    assert part in str(caught.value)
    assert caught.value.remedy


@pytest.mark.parametrize(
    ("text", "near"),
    [
        ("sodum chloride", "sodium chloride"),
        ("copper sulpate", "copper sulfate"),
        ("coper sulfate", "copper sulfate"),
    ],
)
def test_a_slip_in_a_name_brings_near_matches(text, near):
    with pytest.raises(UnknownSpecies) as caught:
        read_substance(text)
    assert f'"{near}"' in caught.value.remedy


@pytest.mark.parametrize("text", ["qwertyuiop", "zzzz", "blah", "the lighthouse keeper"])
def test_nonsense_brings_no_silly_matches(text):
    assert near_names(text) == ()


def test_an_overlong_text_is_refused():
    with pytest.raises(FormulaError) as caught:
        read_substance("Na" * 200)
    assert caught.value.code == "unreadable-formula"


def test_a_compound_can_be_built_from_ions():
    assert compound_of(ion("Na^+"), ion("OH^-")).name == "sodium hydroxide"
    assert compound_of(ion("Al^3+"), ion("SO4^2-")).formula == "Al2(SO4)3"
    assert compound_of(ion("H^+"), ion("OH^-")).role == "water"
    assert compound_of(ion("NH4^+"), ion("OH^-")).formula == "NH3"
    assert compound_of(ion("Hg2^2+"), ion("Cl^-")).formula == "Hg2Cl2"


def test_ions_of_one_sign_make_no_compound():
    with pytest.raises(CellRefused):
        compound_of(ion("Na^+"), ion("K^+"))


def test_the_molar_mass_counts_the_water():
    assert molar_mass(read_substance("CuSO4.5H2O").compound) == pytest.approx(249.68, abs=0.02)
    assert molar_mass(read_substance("CuSO4").compound) == pytest.approx(159.60, abs=0.02)


@pytest.mark.parametrize(
    ("text", "acid"),
    [
        ("SO3", "sulfuric acid"),
        ("SO2", "sulfurous acid"),
        ("NO2", "nitric acid"),
        ("P4O10", "phosphoric acid"),
    ],
)
def test_an_oxide_that_makes_an_acid_is_not_told_to_conduct_nothing(text, acid):
    with pytest.raises(IonwrightError) as caught:
        read_substance(text)
    assert caught.value.code == "non-electrolyte"
    assert f"covalent; with water it makes {acid}" in caught.value.detail
    assert "neither" not in caught.value.detail
    assert acid in caught.value.remedy


def test_diamond_does_not_conduct_at_all():
    with pytest.raises(IonwrightError) as caught:
        read_substance("diamond")
    assert caught.value.code == "non-electrolyte"
    assert "does not conduct at all" in caught.value.detail


def test_three_iodide_ions_are_no_triiodide_if_the_metal_allows():
    with pytest.raises(IonwrightError) as caught:
        make_electrolyte((Ingredient("AuI3"),), "aqueous", None)
    assert caught.value.code == "does-not-exist"
    assert "gold(III) ions" in caught.value.detail
    assert read_substance("KI3").compound.name == "potassium triiodide"


def test_an_anhydride_keeps_its_formula_for_its_mass():
    made = make_electrolyte((Ingredient("CrO3", "100 g/dm3"),), "aqueous", None)
    assert made.ingredients[0].compound.formula == "CrO3"
    assert made.ingredients[0].concentration.mol_dm3 == pytest.approx(1.0, rel=0.001)


@pytest.mark.parametrize(("text", "most"), [("H2SO4", 18.7), ("HNO3", 24), ("CH3COOH", 17.5), ("H3PO4", 18)])
def test_an_acid_is_no_stronger_than_the_pure_liquid(text, most):
    assert make_electrolyte((Ingredient(text, f"{most} mol/dm3"),), "aqueous", None)
    with pytest.raises(IonwrightError) as caught:
        make_electrolyte((Ingredient(text, f"{most + 0.3} mol/dm3"),), "aqueous", None)
    assert caught.value.code == "bad-concentration"
