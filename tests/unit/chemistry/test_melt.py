"""What heat does to salts."""

import pytest

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.melt import MELTS, flux_ions, melt_of
from ionwright.chemistry.melting import melted
from ionwright.errors import IonwrightError


def compound(text):
    return read_substance(text).compound


def molten(*texts):
    return make_electrolyte(tuple(map(Ingredient, texts)), "molten", None)


def refused_melt(*texts):
    with pytest.raises(IonwrightError) as caught:
        molten(*texts)
    return caught.value


@pytest.mark.parametrize(
    ("text", "outcome"),
    [
        ("NaCl", "melts"), ("PbBr2", "melts"), ("KI", "melts"), ("FeCl2", "melts"), ("CuF2", "melts"),
        ("NaOH", "melts"),
        ("RbOH", "melts"), ("Na2CO3", "melts"), ("KNO3", "melts"), ("AgNO3", "melts"), ("Na2SO4", "melts"),
        ("LiH", "melts"), ("Al2O3", "melts"), ("CaO", "melts"), ("KMgCl3", "melts"), ("Li3N", "melts"),
        ("CuSO4", "decomposes"), ("NiSO4", "decomposes"), ("CaCO3", "decomposes"), ("NaHCO3", "decomposes"),
        ("Cu(NO3)2", "decomposes"), ("Ca(OH)2", "decomposes"), ("Fe(OH)3", "decomposes"), ("NH4Cl", "decomposes"),
        ("KMnO4", "decomposes"), ("NaClO3", "decomposes"), ("CH3COONa", "decomposes"), ("CuCl2", "decomposes"),
        ("Na2O2", "decomposes"), ("NaN3", "decomposes"), ("Ag2O", "decomposes"), ("KAl(SO4)2", "decomposes"),
        ("AlCl3", "molecular"), ("FeCl3", "molecular"), ("BeCl2", "molecular"), ("SnCl4", "molecular"),
        ("HgCl2", "molecular"), ("AlBr3", "molecular"),
    ],
)  # fmt: skip
def test_heat_has_its_outcome(text, outcome):
    assert melt_of(compound(text)).outcome == outcome


def test_the_table_gives_the_melting_point_and_the_voltage():
    sodium_chloride = melt_of(compound("NaCl"))
    assert sodium_chloride.melts_C == pytest.approx(800.7)
    assert sodium_chloride.estimated_emf_V == pytest.approx(3.23)
    assert sodium_chloride.literature_emf_V == pytest.approx(3.2)


def test_every_row_tells_what_it_must():
    for formula, row in MELTS.items():
        assert (row.tells != "") == (row.outcome != "melts"), formula


def melt_of_mixture(*texts):
    return make_electrolyte(tuple(map(Ingredient, texts)), "molten", None)


@pytest.mark.parametrize(
    ("texts", "flux"),
    [
        (("NaCl", "CaCl2"), {"Ca^2+"}),
        (("LiCl", "KCl"), {"K^+"}),
        (("Al2O3", "Na3AlF6"), {"Na^+", "AlF6^3-"}),
        (("MgCl2", "NaCl", "CaCl2"), {"Na^+", "Ca^2+"}),
        (("AlCl3", "NaCl"), {"Na^+"}),
        (("NaCl",), set()),
        (("PbBr2", "NaCl"), set()),
    ],
)
def test_the_ions_of_a_flux_are_told_apart(texts, flux):
    assert {one.ascii for one in flux_ions(melt_of_mixture(*texts).ingredients)} == flux


def test_a_flux_sets_the_working_temperature_and_is_explained():
    electrolyte = melt_of_mixture("NaCl", "CaCl2")
    assert electrolyte.melting_point_C == 600
    assert any("sodium is discharged" in note for note in electrolyte.notes)


def test_aluminium_chloride_conducts_only_with_a_salt():
    with pytest.raises(CellRefused) as caught:
        melted((compound("AlCl3"),))
    assert caught.value.code == "molecular-melt"
    assert {one.species.ascii for one in melted((compound("AlCl3"), compound("NaCl"))).ions} == {
        "Al^3+",
        "Na^+",
        "Cl^-",
    }


def test_alumina_alone_is_taken_in_cryolite():
    melt = melted((compound("Al2O3"),))
    assert melt.melting_point_C == 960
    assert "cryolite" in melt.assumptions[0]
    assert [one.species.ascii for one in melt.ions] == ["Al^3+", "O^2-"]


@pytest.mark.parametrize(
    ("text", "code", "part"),
    [
        ("CuSO4.5H2O", "decomposes-before-melting", "CuSO4"),
        ("CuSO4", "decomposes-before-melting", "sulfur trioxide"),
        ("HCl", "molecular-melt", "molecules"),
        ("NH3", "molecular-melt", "molecules"),
        ("water", "no-melt-of-water", "hardly conducts"),
    ],
)
def test_what_gives_no_melt_is_refused(text, code, part):
    with pytest.raises(CellRefused) as caught:
        melted((compound(text),))
    assert caught.value.code == code
    assert part in str(caught.value)
    assert caught.value.where == "electrolyte/0/substance"


def test_a_solvent_salt_is_electrolysed_only_with_what_it_dissolves():
    alone = refused_melt("Na3AlF6")
    assert alone.code == "not-an-electrolyte"
    assert "solvent of the aluminium cell" in alone.detail
    assert alone.remedy == "Ask for Al2O3, which is dissolved in it."
    assert refused_melt("Na3AlF6", "CaF2").code == "not-an-electrolyte"
    assert molten("Na3AlF6", "Al2O3").ions


def test_the_melt_of_the_fluorine_cell_is_left_to_industry():
    for made_of in (("KHF2",), ("KF", "KHF2")):
        fault = refused_melt(*made_of)
        assert fault.code == "not-an-electrolyte"
        assert "fluorine at the anode" in fault.detail


@pytest.mark.parametrize("text", ["TiCl4", "PbCl4", "titanium(IV) chloride", "SnCl4", "AlCl3"])
def test_the_liquid_of_a_covalent_metal_halide_is_a_molecular_melt(text):
    assert refused_melt(text).code == "molecular-melt"
    with pytest.raises(IonwrightError) as caught:
        make_electrolyte((Ingredient(f"{text} molten"),), "aqueous", None)
    assert caught.value.code == "molecular-melt"
