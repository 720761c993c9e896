"""Formulas are read as people type them, and refused with the place and a remedy."""

import pytest

from ionwright.chemistry.faults import FormulaError
from ionwright.chemistry.formula import MAX_LENGTH, Atom, Formula, Group, read_formula


@pytest.mark.parametrize(
    ("text", "canonical"),
    [
        ("NiSO4", "NiSO4"),
        ("NiSO₄", "NiSO4"),
        ("Na 2 SO 4", "Na2SO4"),
        ("Ca (OH) 2", "Ca(OH)2"),
        ("Ca{OH}2", "Ca(OH)2"),
        ("H_2O", "H2O"),
        ("Na_{2}SO_{4}", "Na2SO4"),
        ("[Cu(NH3)4]SO4", "[Cu(NH3)4]SO4"),
        ("(NH4)2SO4", "(NH4)2SO4"),
        ("ＮａＣｌ", "NaCl"),
        ("Na\u200bCl", "NaCl"),
        ("  NaCl\t", "NaCl"),
        ("NiSO4.6H2O", "NiSO4.6H2O"),
        ("NiSO4·6H2O", "NiSO4.6H2O"),
        ("NiSO4*6H2O", "NiSO4.6H2O"),
        ("NiSO4•6 H₂O", "NiSO4.6H2O"),
        ("NiSO4 × 6H2O", "NiSO4.6H2O"),
        ("NiSO4 6H2O", "NiSO4.6H2O"),
        ("NaBr 2 H2O", "NaBr.2H2O"),
        ("CaSO4.H2O", "CaSO4.H2O"),
        ("CO", "CO"),
        ("Co", "Co"),
    ],
)
def test_one_formula_many_spellings(text: str, canonical: str) -> None:
    assert read_formula(text).text == canonical


def test_the_tree_shows_groups_and_attached_parts() -> None:
    water = Formula((Atom("H", 2), Atom("O")))
    assert read_formula("Al2(SO4)3.18H2O") == Formula(
        (Atom("Al", 2), Group((Atom("S"), Atom("O", 4)), 3)), ((18, water),)
    )


def test_composition_counts_the_attached_parts_and_core_composition_does_not() -> None:
    formula = read_formula("KAl(SO4)2.12H2O")
    assert formula.composition == {"K": 1, "Al": 1, "S": 2, "O": 20, "H": 24}
    assert formula.core_composition == {"K": 1, "Al": 1, "S": 2, "O": 8}


@pytest.mark.parametrize(
    ("text", "code", "position", "remedy"),
    [
        ("NACL", "unknown-element", 1, "NaCl, not NACL"),
        ("nacl", "unreadable-formula", 0, "NaCl, not nacl"),
        ("Nacl", "unreadable-formula", 2, "NaCl, not Nacl"),
        ("caco3", "unreadable-formula", 0, "CaCO3"),
        ("h2so4", "unreadable-formula", 0, "H2SO4"),
        ("Xx", "unknown-element", 0, "Xe"),
        ("Na2Zz3", "unknown-element", 3, "Zn"),
        ("  Na2Zz3", "unknown-element", 5, "Zn"),
        ("Ni^2+", "unreadable-formula", 2, "charge"),
        ("SO₄²⁻", "unreadable-formula", 3, "charge"),
        ("Na+", "unreadable-formula", 2, "charge"),
        ("2H2O", "unreadable-formula", 0, "behind the symbol"),
        ("H02", "unreadable-formula", 1, "letter O"),
        ("H2 2O", "unreadable-formula", 3, "behind the symbol"),
        ("Na(OH", "unreadable-formula", 2, 'Close it with ")"'),
        ("[Cu(NH3)4)", "unreadable-formula", 0, 'Close it with "]"'),
        ("Na)", "unreadable-formula", 2, "Open it first"),
        ("Na()", "unreadable-formula", 3, ""),
        ("Na$", "unreadable-formula", 2, "symbols"),
        ("", "unreadable-formula", 0, "NiSO4"),
        ("NiSO4.", "unreadable-formula", 6, "NiSO4"),
        ("NaCl(aq)", "unreadable-formula", 4, "state symbol"),
        ("FeCl(III)", "unreadable-formula", 4, "iron(III) chloride"),
        ("H_O", "unreadable-formula", 2, "H_2O"),
        ("H_{2O", "unreadable-formula", 4, "}"),
        ("H99999", "unreadable-formula", 1, "smaller number"),
        ("((((((((((H))))))))))", "unreadable-formula", 8, "fewer brackets"),
    ],
)
def test_a_fault_tells_code_place_and_remedy(text: str, code: str, position: int, remedy: str) -> None:
    with pytest.raises(FormulaError) as caught:
        read_formula(text)
    assert (caught.value.code, caught.value.position) == (code, position)
    assert remedy in caught.value.remedy


@pytest.mark.parametrize(
    ("text", "detail", "remedy"),
    [
        ("copper", "copper is a name.", "Write the formula instead: Cu."),
        ("Copper", "Copper is a name.", "Write the formula instead: Cu."),
        ("COPPER", "COPPER is a name.", "Write the formula instead: Cu."),
        ("HYDROGEN", "HYDROGEN is a name.", "Write the formula instead: H."),
        ("iron(II)", "iron is a name.", "Write the formula instead: Fe."),
        ("copper ions", "copper is a name.", "Write the formula instead: Cu."),
        ("chloride", "chloride is a name.", "Write the formula instead."),
        ("Permanganate", "Permanganate is a name.", "Write the formula instead."),
    ],
)
def test_a_name_is_no_formula_in_wrong_capitals(text: str, detail: str, remedy: str) -> None:
    with pytest.raises(FormulaError) as caught:
        read_formula(text)
    assert (caught.value.detail, caught.value.remedy) == (detail, remedy)


@pytest.mark.parametrize(
    ("text", "spelt"),
    [("nacl", "NaCl"), ("naclo", "NaClO"), ("ticl4", "TiCl4"), ("feso4", "FeSO4"), ("KNACL", "KNaCl")],
)
def test_a_formula_in_wrong_capitals_is_no_name(text: str, spelt: str) -> None:
    with pytest.raises(FormulaError) as caught:
        read_formula(text)
    assert spelt in caught.value.remedy


def test_a_letter_that_only_looks_latin_is_named() -> None:
    with pytest.raises(FormulaError, match="cyrillic capital letter es") as caught:
        read_formula("Na\u0421l")
    assert caught.value.position == 2


def test_length_and_atoms_are_bounded() -> None:
    assert read_formula("H" * MAX_LENGTH).composition == {"H": MAX_LENGTH}
    with pytest.raises(FormulaError, match="too long"):
        read_formula("H" * (MAX_LENGTH + 1))
    with pytest.raises(FormulaError, match="99999 atoms"):
        read_formula("(((H999)999)999)999")


@pytest.mark.parametrize(
    ("text", "position", "said"),
    [
        ("D2O", 0, "D is deuterium, an isotope of hydrogen."),
        ("HT", 1, "T is tritium, an isotope of hydrogen."),
    ],
)
def test_isotopes_of_hydrogen_are_written_as_hydrogen(text: str, position: int, said: str) -> None:
    with pytest.raises(FormulaError) as refusal:
        read_formula(text)
    assert (refusal.value.code, refusal.value.position) == ("unknown-element", position)
    assert (refusal.value.detail, refusal.value.remedy) == (said, "Write H.")
