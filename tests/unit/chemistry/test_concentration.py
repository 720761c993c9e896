"""Concentrations as people write them."""

import pytest

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.concentration import concentration_of, read_concentration
from ionwright.chemistry.faults import CellRefused


@pytest.mark.parametrize(
    ("text", "mol_dm3"),
    [
        ("0.25 mol/dm3", 0.25),
        ("0.25 mol dm-3", 0.25),
        ("0.25 mol dm^-3", 0.25),
        ("0.25 mol dm⁻³", 0.25),
        ("0.25 mol/dm³", 0.25),
        ("0.25M", 0.25),
        ("0.25 mol/L", 0.25),
        ("0.25 mol L^{-1}", 0.25),
        ("250 mmol/dm3", 0.25),
        ("250 mM", 0.25),
        ("250 mol/m3", 0.25),
        ("2 mol per dm3", 2.0),
        ("2 moles per litre", 2.0),
        ("1e-3 M", 0.001),
        ("1x10^-3 mol/dm3", 0.001),
        (".5 M", 0.5),
        ("0,25 mol/dm3", 0.25),
    ],
)
def test_an_amount_concentration_is_read(text, mol_dm3):
    read = read_concentration(text)
    assert read.mol_dm3 == pytest.approx(mol_dm3)
    assert read.text == text
    assert read.word is None


@pytest.mark.parametrize(
    ("text", "g_dm3"), [("10 g/dm3", 10), ("10 g/L", 10), ("5 g/100 cm3", 50), ("200 mg/dm3", 0.2)]
)
def test_a_mass_concentration_waits_for_the_compound(text, g_dm3):
    read = read_concentration(text)
    assert read.g_dm3 == pytest.approx(g_dm3)
    assert read.mol_dm3 is None


def test_a_mass_becomes_an_amount_with_the_water_of_the_hydrate():
    compound = read_substance("CuSO4.5H2O").compound
    assert concentration_of(compound, read_concentration("24.97 g/dm3")).mol_dm3 == pytest.approx(
        0.1, rel=1e-3
    )


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("dilute", "dilute"),
        ("Dil.", "dilute"),
        ("CONCENTRATED", "concentrated"),
        ("conc.", "concentrated"),
        ("saturated", "concentrated"),
    ],
)
def test_a_word_is_read_in_any_case(text, word):
    assert read_concentration(text).word == word


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "empty"),
        ("0 mol/dm3", "zero"),
        ("-1 M", "negative"),
        ("nan", "finite"),
        ("inf M", "finite"),
        ("50 M", "40 mol/dm³"),
        ("1e400 M", "power of ten"),
        ("1e-30 M", "So little"),
        ("0.5", "no unit"),
        ("5 %", "percentage"),
        ("2 mol", "not a unit"),
        ("1.2.3 M", "not a number"),
        ("1,000 mol/dm3", "two ways"),
        ("lots", "does not start with a number"),
        ("5000 g/dm3", "3000 g/dm³"),
        ("1" * 80, "longer than"),
    ],
)
def test_an_impossible_concentration_is_refused_with_a_remedy(text, part):
    with pytest.raises(CellRefused) as caught:
        read_concentration(text)
    assert caught.value.code == "bad-concentration"
    assert part in caught.value.detail
    assert caught.value.remedy


def test_the_fault_points_at_the_unit():
    with pytest.raises(CellRefused) as caught:
        read_concentration("0.25 mol/furlong")
    assert caught.value.position == 5
    assert "mol/dm³" in caught.value.remedy


def test_a_mass_that_makes_an_absurd_amount_is_refused():
    with pytest.raises(CellRefused) as caught:
        concentration_of(read_substance("LiOH").compound, read_concentration("2900 g/dm3"))
    assert caught.value.code == "bad-concentration"
