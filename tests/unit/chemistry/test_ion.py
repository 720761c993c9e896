"""The ion table and what is read from it."""

import pytest

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import UnknownSpecies
from ionwright.chemistry.ion import IONS, USUAL_CHARGES, ion, ion_set, stem_without_numeral
from ionwright.chemistry.tables import read_table


@pytest.mark.parametrize(
    ("formula", "name", "charge"),
    [
        ("Na^+", "sodium ion", 1),
        ("Ni^2+", "nickel(II) ion", 2),
        ("Zn^2+", "zinc ion", 2),
        ("Ag^+", "silver ion", 1),
        ("Hg2^2+", "mercury(I) ion", 2),
        ("NH4^+", "ammonium ion", 1),
        ("SO4^2-", "sulfate ion", -2),
        ("CH3COO^-", "ethanoate ion", -1),
        ("[Fe(CN)6]^3-", "hexacyanidoferrate(III) ion", -3),
        ("H^+", "hydrogen ion", 1),
    ],
)
def test_an_ion_has_its_school_name(formula, name, charge):
    assert ion(formula).name == name
    assert ion(formula).charge == charge


def test_only_simple_cations_of_metals_count_as_metal():
    assert ion("Cu^2+").element == "Cu"
    assert ion("Hg2^2+").element == "Hg"
    assert not ion("H^+").is_metal
    assert not ion("NH4^+").is_metal
    assert not ion("VO^2+").is_metal


def test_a_numeral_stands_only_with_elements_of_several_charges():
    without = {one.stem for one in IONS.values() if one.is_metal and "(" not in one.stem}
    assert without == {
        "lithium", "sodium", "potassium", "rubidium", "caesium", "beryllium", "magnesium", "calcium", "strontium",
        "barium", "aluminium", "zinc", "cadmium", "silver",
    }  # fmt: skip


def test_an_ion_that_is_not_in_the_table_is_refused_by_name():
    with pytest.raises(UnknownSpecies) as caught:
        ion("Xe^+")
    assert caught.value.code == "unknown-substance"
    assert "Xe^+" in caught.value.detail


def test_families_stand_for_sets_of_ions():
    assert {one.ascii for one in ion_set(["group1"], 1)} == {"Li^+", "Na^+", "K^+", "Rb^+", "Cs^+"}
    assert ion("Fe^3+").species in ion_set(["d-block"], 1)
    assert ion("Pb^2+").species in ion_set(["p-block"], 1)
    assert ion("[Cu(NH3)4]^2+").species in ion_set(["complex"], 1)
    assert ion("Ca^2+").species not in ion_set(["d-block", "p-block", "group1", "complex"], 1)
    assert all(one.charge < 0 for one in ion_set(["any"], -1))


def test_the_numeral_comes_off_a_stem():
    assert stem_without_numeral("copper(II)") == "copper"
    assert stem_without_numeral("zinc") == "zinc"


def test_acids_carry_their_strength():
    assert ion("SO4^2-").strong_acid
    assert ion("CH3COO^-").acid_pKa == pytest.approx(4.74)
    assert ion("F^-").acid_pKa == pytest.approx(3.19)
    assert all(one.strong_acid or one.acid_pKa is not None for one in IONS.values() if one.acid_name)


def test_every_usual_charge_is_a_charge_of_the_table():
    for symbol, (charge, exceptions) in USUAL_CHARGES.items():
        charges = {
            one.charge for one in IONS.values() if one.element == symbol and one.species.atoms[0][1] == 1
        }
        assert charge in charges
        assert set(exceptions.values()) <= charges
        assert all(ion(partner).charge < 0 for partner in exceptions)
        assert symbol in ELEMENTS


def test_no_two_ions_share_a_species_or_a_stem():
    rows = read_table("ions.toml")["ion"]
    assert len(IONS) == len(rows)
    stems = [(one.stem, one.charge > 0) for one in IONS.values()]
    assert len(set(stems)) == len(stems)


def test_every_source_key_of_the_tables_of_matter_is_in_the_bibliography_and_none_is_idle():
    used = {key for one in IONS.values() for key in one.sources}
    for name, lists in (
        ("solubility.toml", ("salt", "rule", "nonexistent", "clash", "acid_clash")),
        ("melts.toml", ("melt", "rule", "flux")),
        ("substances.toml", ("substance", "common_caution")),
    ):
        used |= {row["source"] for key in lists for row in read_table(name)[key]}
    used.add("textbook-names")
    assert used == set(read_table("sources.toml"))
