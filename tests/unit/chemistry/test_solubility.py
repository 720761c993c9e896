"""Solubility rules, figures, and what cannot exist."""

import pytest

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.ion import ion
from ionwright.chemistry.solubility import (
    SALTS,
    clash_reason,
    nonexistence_reason,
    solubility,
    solubility_by_rule,
)


def category(cation, anion):
    return solubility(ion(cation).species, ion(anion).species).category


@pytest.mark.parametrize(
    ("cation", "anion", "expected"),
    [
        ("Na^+", "Cl^-", "soluble"),
        ("Ag^+", "Cl^-", "insoluble"),
        ("Ag^+", "NO3^-", "soluble"),
        ("Ag^+", "F^-", "soluble"),
        ("Ba^2+", "SO4^2-", "insoluble"),
        ("Ca^2+", "SO4^2-", "sparing"),
        ("Pb^2+", "SO4^2-", "very-slight"),
        ("Pb^2+", "Br^-", "sparing"),
        ("Pb^2+", "I^-", "very-slight"),
        ("Cu^2+", "OH^-", "insoluble"),
        ("Ba^2+", "OH^-", "soluble"),
        ("Ca^2+", "OH^-", "sparing"),
        ("Cu^2+", "CO3^2-", "insoluble"),
        ("K^+", "CO3^2-", "soluble"),
        ("NH4^+", "PO4^3-", "soluble"),
        ("Zn^2+", "S^2-", "insoluble"),
        ("Fe^2+", "CH3COO^-", "soluble"),
        ("Mg^2+", "CrO4^2-", "soluble"),
        ("Cd^2+", "SO4^2-", "soluble"),
    ],
)
def test_a_salt_falls_into_its_class(cation, anion, expected):
    assert category(cation, anion) == expected


def test_the_rules_agree_with_every_figure_of_the_table():
    for row in SALTS.values():
        ions = row.compound.lattice_ions
        if len(ions) == 2:
            by_rule = solubility_by_rule(ions[0][0].species, ions[1][0].species)
            assert by_rule.category == row.solubility.category, row.compound.formula


def test_a_figure_gives_the_reason_in_grams():
    found = solubility(ion("Pb^2+").species, ion("Br^-").species)
    assert "about 0.85 g of it dissolves in 100 g of water" in found.reason
    assert found.Ksp == pytest.approx(6.6e-6)
    assert found.source == "crc-91-solubility"


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("FeI3", "iron(III) ions oxidise iodide ions"),
        ("CuI2", "copper(I) iodide"),
        ("Al2(CO3)3", "acidic enough"),
        ("Fe2(CO3)3", "acidic enough"),
        ("Cr2(CO3)3", "acidic enough"),
        ("AgOH", "loses water at once"),
        ("Cu(HCO3)2", "not known"),
    ],
)
def test_what_cannot_exist_has_a_reason(text, part):
    assert part in nonexistence_reason(read_substance(text).compound)


@pytest.mark.parametrize(
    "text", ["FeCl3", "CuCl2", "FeI2", "Ca(HCO3)2", "H2CO3", "H2S", "HCN", "CuSO4", "NH4NO3"]
)
def test_what_exists_has_none(text):
    assert nonexistence_reason(read_substance(text).compound) == ""


def test_a_clash_is_found_in_either_order():
    iron, iodide = ion("Fe^3+").species, ion("I^-").species
    assert clash_reason(iron, iodide) == clash_reason(iodide, iron) != ""
    assert clash_reason(ion("Fe^2+").species, iodide) == ""
    assert "carbon dioxide" in clash_reason(ion("CO3^2-").species, ion("H^+").species)
