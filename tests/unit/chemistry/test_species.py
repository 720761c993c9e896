"""Charges in every spelling, and spellings that can be read in several ways."""

import pytest

from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.species import ELECTRON, Species, read_species, readings, species

NICKEL_ION = (
    "Ni2+|Ni+2|Ni++|Ni^2+|Ni^+2|Ni^{2+}|Ni^(2+)|Ni(2+)|"
    "Ni(+2)|Ni²⁺|Ni²+|Ni⁺²|Ni 2+|Ni 2 +|Ni^++|Ｎｉ２＋|Ni(++)"
)
SULFATE_ION = (
    "SO42-|SO4 2-|SO4--|SO4-2|SO₄²⁻|SO₄2-|SO4^2-|"
    "SO_4^{2-}|SO_{4}2-|SO4(2-)|SO4²⁻|SO4 2−|SO4 2–|SO 4 2-|SO4^-2"
)
THE_ELECTRON = "e|e-|e⁻|e−|e–|ē|ē-|e^-|e^{-}|e(-)| e - |e\u0304|ｅ－|e¯"


@pytest.mark.parametrize(
    "text",
    NICKEL_ION.split("|"),
)
def test_nickel_ion_in_every_spelling(text: str) -> None:
    assert readings(text)[0] == species("Ni^2+")


@pytest.mark.parametrize(
    "text",
    SULFATE_ION.split("|"),
)
def test_sulfate_ion_in_every_spelling(text: str) -> None:
    assert readings(text)[0] == species("SO4^2-")


@pytest.mark.parametrize("text", THE_ELECTRON.split("|"))
def test_the_electron_in_every_spelling(text: str) -> None:
    assert readings(text) == (ELECTRON,)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Cl2-", ["Cl2^-", "Cl^2-"]),
        ("SO42-", ["SO4^2-", "SO42^-"]),
        ("O2-", ["O^2-", "O2^-"]),
        ("O22-", ["O2^2-", "O22^-"]),
        ("MnO4-", ["MnO4^-", "MnO^4-"]),
        ("N3-", ["N^3-", "N3^-"]),
        ("[Cu(NH3)4]2+", ["[Cu(NH3)4]^2+", "[Cu(NH3)4]2^+"]),
        ("Hg22+", ["Hg2^2+", "Hg22^+"]),
        ("C60-", ["C60^-"]),
        ("Cl1-", ["Cl^-"]),
        ("OH-", ["OH^-"]),
        ("H2O", ["H2O"]),
        ("NiSO4·6H2O", ["NiSO4.6H2O"]),
    ],
)
def test_all_readings_in_order_of_likelihood(text: str, expected: list[str]) -> None:
    assert [reading.ascii for reading in readings(text)] == expected


def test_a_known_species_wins_over_a_likelier_reading() -> None:
    azide = species("N3^-")
    assert read_species("N3-") == species("N^3-")
    assert read_species("N3-", {azide}) == azide
    assert read_species("N3-", {species("OH^-")}) == species("N^3-")


@pytest.mark.parametrize(
    ("text", "position", "remedy"),
    [
        ("Ni^2", 4, "sign"),
        ("Ni²", 3, "sign"),
        ("Na+Cl-", 2, "behind the whole formula"),
        ("Na+-", 2, "one charge"),
        ("Ni(+-)", 3, "(2+)"),
        ("Ni+0", 3, "Leave the charge out"),
        ("Ni^99+", 3, "2+"),
        ("e2-", 0, "2e-"),
        ("E-", 0, "e-"),
        ("e+", 0, "e-"),
        ("na+", 0, "Na, not na"),
        ("  so42-", 2, "SO4"),
        ("+", 0, "NiSO4"),
        ("", 0, "NiSO4"),
        ("Ni2+(aq)", 3, "behind the whole formula"),
    ],
)
def test_a_fault_tells_place_and_remedy(text: str, position: int, remedy: str) -> None:
    with pytest.raises(FormulaError) as caught:
        readings(text)
    assert caught.value.code == "unreadable-formula"
    assert caught.value.position == position
    assert remedy in caught.value.remedy


def test_an_unknown_element_in_an_ion_is_told_as_such() -> None:
    with pytest.raises(FormulaError) as caught:
        readings("Qx2+")
    assert caught.value.code == "unknown-element"


def test_a_long_text_is_refused_by_its_length() -> None:
    with pytest.raises(FormulaError, match="too long"):
        readings("H" * 10_000)


def test_a_species_counts_its_atoms_and_prints_itself() -> None:
    sulfate = species("SO4^2-")
    assert sulfate == Species("SO4", -2, (("S", 1), ("O", 4)))
    assert str(sulfate) == sulfate.ascii == "SO4^2-"
    assert species("H^+").ascii == "H^+"
    assert ELECTRON.ascii == "e-"
    assert ELECTRON.is_electron
    assert not sulfate.is_electron
    assert species("[Cu(NH3)4]^2+").formula == "[Cu(NH3)4]"


def test_equal_species_are_one_object_and_hash_alike() -> None:
    assert species("SO4^2-") is readings("SO42-")[0]
    assert hash(species("Ni^2+")) == hash(Species("Ni", 2, (("Ni", 1),)))
    assert species("e-") is ELECTRON


def test_the_strict_form_takes_a_bare_sign_for_one_unit() -> None:
    assert species("Na+") == species("Na^+")
    assert species("OH-") == species("OH^-")


@pytest.mark.parametrize(
    "text", ["Ni2+", "MnO4-", "e", "H_2O", "Ni ^2+", "Ni^2", "Ni^x+", "Ni^1+", "NiSO4·6H2O", "H" * 999]
)
def test_the_strict_form_refuses_what_is_not_canonical(text: str) -> None:
    with pytest.raises(FormulaError):
        species(text)
