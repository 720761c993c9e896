"""Balancing: skeletons with known answers, impossible ones, and ones with several answers."""

from __future__ import annotations

import time

import pytest

from ionwright.chemistry.balancing import balance
from ionwright.chemistry.faults import FormulaError, NoSolution, SeveralSolutions
from ionwright.chemistry.skeleton import other_readings, read_skeleton
from ionwright.errors import IonwrightError

REDUCTIONS = [
    ("acidic", "MnO4^- -> Mn^2+", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
    ("acidic", "MnO4^- -> MnO2", "MnO4^- + 4H^+ + 3e- -> MnO2 + 2H2O"),
    ("alkaline", "MnO4^- -> MnO2", "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-"),
    ("neutral", "MnO4^- -> MnO2", "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-"),
    ("alkaline", "MnO4^- -> MnO4^2-", "MnO4^- + e- -> MnO4^2-"),
    ("acidic", "Cr2O7^2- -> Cr^3+", "Cr2O7^2- + 14H^+ + 6e- -> 2Cr^3+ + 7H2O"),
    ("alkaline", "CrO4^2- -> Cr(OH)3", "CrO4^2- + 4H2O + 3e- -> Cr(OH)3 + 5OH^-"),
    ("acidic", "NO3^- -> NO", "NO3^- + 4H^+ + 3e- -> NO + 2H2O"),
    ("acidic", "NO3^- -> NO2", "NO3^- + 2H^+ + e- -> NO2 + H2O"),
    ("acidic", "NO3^- -> NH4^+", "NO3^- + 10H^+ + 8e- -> NH4^+ + 3H2O"),
    ("acidic", "NO3^- -> N2", "2NO3^- + 12H^+ + 10e- -> N2 + 6H2O"),
    ("acidic", "NO3^- -> N2O", "2NO3^- + 10H^+ + 8e- -> N2O + 5H2O"),
    ("alkaline", "NO3^- -> NH3", "NO3^- + 6H2O + 8e- -> NH3 + 9OH^-"),
    ("acidic", "SO4^2- -> SO2", "SO4^2- + 4H^+ + 2e- -> SO2 + 2H2O"),
    ("acidic", "SO4^2- -> H2S", "SO4^2- + 10H^+ + 8e- -> H2S + 4H2O"),
    ("acidic", "S2O8^2- -> SO4^2-", "S2O8^2- + 2e- -> 2SO4^2-"),
    ("acidic", "S4O6^2- -> S2O3^2-", "S4O6^2- + 2e- -> 2S2O3^2-"),
    ("acidic", "ClO3^- -> Cl2", "2ClO3^- + 12H^+ + 10e- -> Cl2 + 6H2O"),
    ("alkaline", "ClO^- -> Cl^-", "ClO^- + H2O + 2e- -> Cl^- + 2OH^-"),
    ("acidic", "IO3^- -> I2", "2IO3^- + 12H^+ + 10e- -> I2 + 6H2O"),
    ("acidic", "BrO3^- -> Br^-", "BrO3^- + 6H^+ + 6e- -> Br^- + 3H2O"),
    ("acidic", "H2O2 -> H2O", "H2O2 + 2H^+ + 2e- -> 2H2O"),
    ("alkaline", "HO2^- -> OH^-", "HO2^- + H2O + 2e- -> 3OH^-"),
    ("acidic", "O2 -> H2O", "O2 + 4H^+ + 4e- -> 2H2O"),
    ("alkaline", "O2 -> OH^-", "O2 + 2H2O + 4e- -> 4OH^-"),
    ("acidic", "O2 -> H2O2", "O2 + 2H^+ + 2e- -> H2O2"),
    ("acidic", "O3 -> O2", "O3 + 2H^+ + 2e- -> O2 + H2O"),
    ("acidic", "H^+ -> H2", "2H^+ + 2e- -> H2"),
    ("neutral", "H2O -> H2", "2H2O + 2e- -> H2 + 2OH^-"),
    ("neutral", "O2 -> H2O", "O2 + 4H^+ + 4e- -> 2H2O"),
    ("neutral", "O2 -> OH^-", "O2 + 2H2O + 4e- -> 4OH^-"),
    ("neutral", "H2O2 -> H2O", "H2O2 + 2H^+ + 2e- -> 2H2O"),
    ("neutral", "ClO^- -> Cl^- + H2O", "ClO^- + H2O + 2e- -> Cl^- + 2OH^-"),
    ("acidic", "PbO2 + SO4^2- -> PbSO4", "PbO2 + SO4^2- + 4H^+ + 2e- -> PbSO4 + 2H2O"),
    ("acidic", "VO2^+ -> VO^2+", "VO2^+ + 2H^+ + e- -> VO^2+ + H2O"),
    ("acidic", "BiO3^- -> Bi^3+", "BiO3^- + 6H^+ + 2e- -> Bi^3+ + 3H2O"),
    ("acidic", "FeO4^2- -> Fe^3+", "FeO4^2- + 8H^+ + 3e- -> Fe^3+ + 4H2O"),
    ("acidic", "XeO3 -> Xe", "XeO3 + 6H^+ + 6e- -> Xe + 3H2O"),
    ("acidic", "C6H5NO2 -> C6H5NH2", "C6H5NO2 + 6H^+ + 6e- -> C6H5NH2 + 2H2O"),
    ("acidic", "CO2 -> CH3OH", "CO2 + 6H^+ + 6e- -> CH3OH + H2O"),
    ("none", "[Ag(CN)2]^- -> Ag + CN^-", "[Ag(CN)2]^- + e- -> Ag + 2CN^-"),
    ("none", "[Fe(CN)6]^3- -> [Fe(CN)6]^4-", "[Fe(CN)6]^3- + e- -> [Fe(CN)6]^4-"),
    ("none", "Hg2Cl2 -> Hg + Cl^-", "Hg2Cl2 + 2e- -> 2Hg + 2Cl^-"),
    ("molten", "Al2O3 -> Al", "Al2O3 + 6e- -> 2Al + 3O^2-"),
    ("molten", "SiO2 -> Si", "SiO2 + 4e- -> Si + 2O^2-"),
    ("none", "Ni^2+ -> Ni", "Ni^2+ + 2e- -> Ni"),
]
OXIDATIONS = [
    ("acidic", "C2H5OH -> CH3COOH", "C2H5OH + H2O -> CH3COOH + 4H^+ + 4e-"),
    ("acidic", "C2H5OH -> CH3CHO", "C2H5OH -> CH3CHO + 2H^+ + 2e-"),
    ("acidic", "C12H22O11 -> CO2", "C12H22O11 + 13H2O -> 12CO2 + 48H^+ + 48e-"),
    ("acidic", "C6H12O6 -> CO2", "C6H12O6 + 6H2O -> 6CO2 + 24H^+ + 24e-"),
    ("acidic", "C6H5CHO -> C6H5COOH", "C6H5CHO + H2O -> C6H5COOH + 2H^+ + 2e-"),
    ("alkaline", "C6H5CH2OH -> C6H5COO^-", "C6H5CH2OH + 5OH^- -> C6H5COO^- + 4H2O + 4e-"),
    ("acidic", "C2O4^2- -> CO2", "C2O4^2- -> 2CO2 + 2e-"),
    ("acidic", "HCOOH -> CO2", "HCOOH -> CO2 + 2H^+ + 2e-"),
    ("alkaline", "CH3OH -> CO3^2-", "CH3OH + 8OH^- -> CO3^2- + 6H2O + 6e-"),
    ("acidic", "As2S3 -> AsO4^3- + SO4^2-", "As2S3 + 20H2O -> 2AsO4^3- + 3SO4^2- + 40H^+ + 28e-"),
    ("alkaline", "As2S3 -> AsO4^3- + SO4^2-", "As2S3 + 40OH^- -> 2AsO4^3- + 3SO4^2- + 20H2O + 28e-"),
    ("acidic", "FeS2 -> Fe^3+ + SO4^2-", "FeS2 + 8H2O -> Fe^3+ + 2SO4^2- + 16H^+ + 15e-"),
    (
        "acidic",
        "CuFeS2 -> Cu^2+ + Fe^3+ + SO4^2-",
        "CuFeS2 + 8H2O -> Cu^2+ + Fe^3+ + 2SO4^2- + 16H^+ + 17e-",
    ),
    (
        "alkaline",
        "Fe(CrO2)2 -> Fe2O3 + CrO4^2-",
        "2Fe(CrO2)2 + 22OH^- -> Fe2O3 + 4CrO4^2- + 11H2O + 14e-",
    ),
    ("alkaline", "Pb(N3)2 -> PbO2 + N2", "Pb(N3)2 + 4OH^- -> PbO2 + 3N2 + 2H2O + 4e-"),
    ("alkaline", "CrI3 -> CrO4^2- + IO4^-", "CrI3 + 32OH^- -> CrO4^2- + 3IO4^- + 16H2O + 27e-"),
    ("alkaline", "P4 -> H2PO2^-", "P4 + 8OH^- -> 4H2PO2^- + 4e-"),
    ("acidic", "S2O3^2- -> S4O6^2-", "2S2O3^2- -> S4O6^2- + 2e-"),
    ("acidic", "S2O3^2- -> SO4^2-", "S2O3^2- + 5H2O -> 2SO4^2- + 10H^+ + 8e-"),
    ("acidic", "H2O2 -> O2", "H2O2 -> O2 + 2H^+ + 2e-"),
    ("neutral", "H2O -> O2", "2H2O -> O2 + 4H^+ + 4e-"),
    ("neutral", "Al -> [Al(OH)4]^-", "Al + 4H2O -> [Al(OH)4]^- + 4H^+ + 3e-"),
    ("alkaline", "OH^- -> O2", "4OH^- -> O2 + 2H2O + 4e-"),
    ("acidic", "Cl2 -> ClO3^-", "Cl2 + 6H2O -> 2ClO3^- + 12H^+ + 10e-"),
    ("alkaline", "Al -> Al(OH)4^-", "Al + 4OH^- -> Al(OH)4^- + 3e-"),
    ("alkaline", "Cd -> Cd(OH)2", "Cd + 2OH^- -> Cd(OH)2 + 2e-"),
    ("none", "Au + CN^- -> [Au(CN)2]^-", "Au + 2CN^- -> [Au(CN)2]^- + e-"),
    ("none", "Cl^- -> Cl2", "2Cl^- -> Cl2 + 2e-"),
    ("molten", "O^2- -> O2", "2O^2- -> O2 + 4e-"),
    ("molten", "C -> CO2", "C + 2O^2- -> CO2 + 4e-"),
    ("none", "CH3COO^- -> C2H6 + CO2", "2CH3COO^- -> C2H6 + 2CO2 + 2e-"),
    ("acidic", "CH3COOH -> C2H6 + CO2", "2CH3COOH -> C2H6 + 2CO2 + 2H^+ + 2e-"),
    ("molten", "CO3^2- -> CO2 + O2", "2CO3^2- -> 2CO2 + O2 + 4e-"),
    ("molten", "OH^- -> O2 + H2O", "4OH^- -> O2 + 2H2O + 4e-"),
    ("acidic", "HO2 -> O2", "HO2 -> O2 + H^+ + e-"),
    ("alkaline", "HO2 -> O2", "HO2 + OH^- -> O2 + H2O + e-"),
    ("acidic", "HO2 -> O2 + H3O^+", "HO2 + H2O -> O2 + H3O^+ + e-"),
    ("alkaline", "[Co(NH3)6]^2+ -> Co(OH)3 + NH3", "[Co(NH3)6]^2+ + 3OH^- -> Co(OH)3 + 6NH3 + e-"),
]
WHOLE = [
    ("acidic", "MnO4^- + Fe^2+ -> Mn^2+ + Fe^3+", "MnO4^- + 5Fe^2+ + 8H^+ -> Mn^2+ + 5Fe^3+ + 4H2O"),
    (
        "acidic",
        "MnO4^- + C2O4^2- -> Mn^2+ + CO2",
        "2MnO4^- + 5C2O4^2- + 16H^+ -> 2Mn^2+ + 10CO2 + 8H2O",
    ),
    (
        "acidic",
        "Cr2O7^2- + C2H5OH -> Cr^3+ + CH3COOH",
        "2Cr2O7^2- + 3C2H5OH + 16H^+ -> 4Cr^3+ + 3CH3COOH + 11H2O",
    ),
    ("alkaline", "Cl2 -> Cl^- + ClO3^-", "3Cl2 + 6OH^- -> 5Cl^- + ClO3^- + 3H2O"),
    ("alkaline", "Cl2 -> Cl^- + ClO^-", "Cl2 + 2OH^- -> Cl^- + ClO^- + H2O"),
    ("alkaline", "P4 -> PH3 + H2PO2^-", "P4 + 3H2O + 3OH^- -> PH3 + 3H2PO2^-"),
    ("acidic", "IO3^- + I^- -> I2", "IO3^- + 5I^- + 6H^+ -> 3I2 + 3H2O"),
    ("acidic", "S2O3^2- -> S + SO2", "S2O3^2- + 2H^+ -> S + SO2 + H2O"),
    ("acidic", "H2O2 -> H2O + O2", "2H2O2 -> O2 + 2H2O"),
    ("alkaline", "MnO4^- + CN^- -> MnO2 + OCN^-", "2MnO4^- + 3CN^- + H2O -> 2MnO2 + 3OCN^- + 2OH^-"),
    ("neutral", "MnO4^- + SO3^2- -> MnO2 + SO4^2-", "2MnO4^- + 3SO3^2- + H2O -> 2MnO2 + 3SO4^2- + 2OH^-"),
    ("alkaline", "Al + NO3^- -> Al(OH)4^- + NH3", "8Al + 3NO3^- + 18H2O + 5OH^- -> 8Al(OH)4^- + 3NH3"),
    ("alkaline", "Al + OH^- -> Al(OH)4^- + H2", "2Al + 6H2O + 2OH^- -> 2Al(OH)4^- + 3H2"),
    ("alkaline", "Au + CN^- + O2 -> [Au(CN)2]^-", "4Au + 8CN^- + O2 + 2H2O -> 4[Au(CN)2]^- + 4OH^-"),
    (
        "alkaline",
        "C6H5CHO -> C6H5COO^- + C6H5CH2OH",
        "2C6H5CHO + OH^- -> C6H5COO^- + C6H5CH2OH",
    ),
    (
        "acidic",
        "CuFeS2 + NO3^- -> Cu^2+ + Fe^3+ + SO4^2- + NO",
        "3CuFeS2 + 17NO3^- + 20H^+ -> 3Cu^2+ + 3Fe^3+ + 6SO4^2- + 17NO + 10H2O",
    ),
    (
        "alkaline",
        "CrI3 + Cl2 -> CrO4^2- + IO4^- + Cl^-",
        "2CrI3 + 27Cl2 + 64OH^- -> 2CrO4^2- + 6IO4^- + 54Cl^- + 32H2O",
    ),
    (
        "none",
        "As2S3 + HNO3 + H2O -> H3AsO4 + H2SO4 + NO",
        "3As2S3 + 28HNO3 + 4H2O -> 6H3AsO4 + 9H2SO4 + 28NO",
    ),
    ("none", "Cu + HNO3 -> Cu(NO3)2 + NO + H2O", "3Cu + 8HNO3 -> 3Cu(NO3)2 + 2NO + 4H2O"),
    (
        "none",
        "KMnO4 + HCl -> KCl + MnCl2 + Cl2 + H2O",
        "2KMnO4 + 16HCl -> 2KCl + 2MnCl2 + 5Cl2 + 8H2O",
    ),
    (
        "none",
        "K2Cr2O7 + FeSO4 + H2SO4 -> Cr2(SO4)3 + Fe2(SO4)3 + K2SO4 + H2O",
        "K2Cr2O7 + 6FeSO4 + 7H2SO4 -> Cr2(SO4)3 + 3Fe2(SO4)3 + K2SO4 + 7H2O",
    ),
    ("none", "Pb + PbO2 + H2SO4 -> PbSO4 + H2O", "Pb + PbO2 + 2H2SO4 -> 2PbSO4 + 2H2O"),
    ("none", "Fe2O3 + Al -> Al2O3 + Fe", "Fe2O3 + 2Al -> Al2O3 + 2Fe"),
    ("none", "SO2 + O2 -> SO3", "2SO2 + O2 -> 2SO3"),
    ("molten", "Al2O3 + C -> Al + CO2", "2Al2O3 + 3C -> 4Al + 3CO2"),
    ("none", "FeS2 + O2 -> Fe2O3 + SO2", "4FeS2 + 11O2 -> 2Fe2O3 + 8SO2"),
    ("none", "CuFeS2 + O2 -> CuO + Fe2O3 + SO2", "4CuFeS2 + 13O2 -> 4CuO + 2Fe2O3 + 8SO2"),
    ("none", "C3H5N3O9 -> N2 + CO2 + H2O + O2", "4C3H5N3O9 -> 6N2 + 12CO2 + O2 + 10H2O"),
    (
        "none",
        "Pb(N3)2 + Cr(MnO4)2 -> Cr2O3 + MnO2 + NO + Pb3O4",
        "15Pb(N3)2 + 44Cr(MnO4)2 -> 22Cr2O3 + 88MnO2 + 90NO + 5Pb3O4",
    ),
    (
        "acidic",
        "[Cr(N2H4CO)6]4[Cr(CN)6]3 + MnO4^- -> Cr2O7^2- + CO2 + NO3^- + Mn^2+",
        (
            "10[Cr(N2H4CO)6]4[Cr(CN)6]3 + 1176MnO4^- + 2798H^+"
            " -> 35Cr2O7^2- + 420CO2 + 660NO3^- + 1176Mn^2+ + 1879H2O"
        ),
    ),
    (
        "none",
        "[Cr(N2H4CO)6]4[Cr(CN)6]3 + KMnO4 + H2SO4 -> K2Cr2O7 + CO2 + KNO3 + MnSO4 + K2SO4 + H2O",
        (
            "10[Cr(N2H4CO)6]4[Cr(CN)6]3 + 1176KMnO4 + 1399H2SO4"
            " -> 35K2Cr2O7 + 420CO2 + 660KNO3 + 1176MnSO4 + 223K2SO4 + 1879H2O"
        ),
    ),
]
NOT_REDOX = [
    ("acidic", "CrO4^2- -> Cr2O7^2-", "2CrO4^2- + 2H^+ -> Cr2O7^2- + H2O"),
    ("acidic", "Fe3O4 -> Fe^2+ + Fe^3+", "Fe3O4 + 8H^+ -> Fe^2+ + 2Fe^3+ + 4H2O"),
    ("alkaline", "Al^3+ -> Al(OH)4^-", "Al^3+ + 4OH^- -> Al(OH)4^-"),
    ("none", "NaCl + AgNO3 -> AgCl + NaNO3", "NaCl + AgNO3 -> AgCl + NaNO3"),
    (
        "none",
        "K4Fe(CN)6 + H2SO4 + H2O -> K2SO4 + FeSO4 + (NH4)2SO4 + CO",
        "K4Fe(CN)6 + 6H2SO4 + 6H2O -> 2K2SO4 + FeSO4 + 3(NH4)2SO4 + 6CO",
    ),
]


@pytest.mark.parametrize(("medium", "skeleton", "expected"), REDUCTIONS)
def test_reductions_take_electrons_on_the_left(medium: str, skeleton: str, expected: str) -> None:
    found = balance(skeleton, medium)
    assert (found.equation.ascii, found.kind, found.side) == (expected, "reduction", "left")
    assert found.is_half_equation


@pytest.mark.parametrize(("medium", "skeleton", "expected"), OXIDATIONS)
def test_oxidations_release_electrons_on_the_right(medium: str, skeleton: str, expected: str) -> None:
    found = balance(skeleton, medium)
    assert (found.equation.ascii, found.kind, found.side) == (expected, "oxidation", "right")


@pytest.mark.parametrize(("medium", "skeleton", "expected"), WHOLE)
def test_whole_redox_equations_balance_and_split(medium: str, skeleton: str, expected: str) -> None:
    found = balance(skeleton, medium)
    assert (found.equation.ascii, found.kind, found.electrons) == (expected, "redox", 0)
    assert found.halves is not None
    reduction, oxidation = found.halves.reduction, found.halves.oxidation
    assert reduction.is_balanced
    assert oxidation.is_balanced
    assert reduction.electrons * found.halves.reduction_multiplier == found.halves.electrons
    assert oxidation.electrons * found.halves.oxidation_multiplier == -found.halves.electrons


def test_twenty_species_balance_though_no_teacher_would_split_them() -> None:
    """Six elements are oxidised or reduced at once here, some of them in one species."""
    found = balance(
        "H2 + Ca(CN)2 + NaAlF4 + FeSO4 + MgSiO3 + KI + H3PO4 + PbCrO4 + BrCl + CF2Cl2 + SO2"
        " -> PbBr2 + CrCl3 + MgCO3 + KAl(OH)4 + Fe(SCN)3 + PI3 + Na2SiO3 + CaF2 + H2O",
        "none",
    )
    assert found.equation.ascii == (
        "88H2 + 15Ca(CN)2 + 6NaAlF4 + 10FeSO4 + 3MgSiO3 + 6KI + 2H3PO4 + 6PbCrO4 + 12BrCl + 3CF2Cl2 + 20SO2"
        " -> 6PbBr2 + 6CrCl3 + 3MgCO3 + 6KAl(OH)4 + 10Fe(SCN)3 + 2PI3 + 3Na2SiO3 + 15CaF2 + 79H2O"
    )
    assert found.kind == "redox"
    assert found.halves is None


@pytest.mark.parametrize(("medium", "skeleton", "expected"), NOT_REDOX)
def test_what_needs_no_electrons_is_said_to_be_no_half_equation(
    medium: str, skeleton: str, expected: str
) -> None:
    found = balance(skeleton, medium)
    assert (found.equation.ascii, found.kind, found.electrons) == (expected, "not-redox", 0)
    assert found.halves is None
    assert [remark.code for remark in found.remarks] == ["nothing-is-oxidised"]


@pytest.mark.parametrize(
    ("medium", "skeleton", "reduction", "oxidation"),
    [
        (
            "alkaline",
            "Cl2 -> Cl^- + ClO3^-",
            (5, "Cl2 + 2e- -> 2Cl^-"),
            (1, "Cl2 + 12OH^- -> 2ClO3^- + 6H2O + 10e-"),
        ),
        ("acidic", "H2O2 -> H2O + O2", (1, "H2O2 + 2H^+ + 2e- -> 2H2O"), (1, "H2O2 -> O2 + 2H^+ + 2e-")),
        ("acidic", "IO3^- + I^- -> I2", (1, "2IO3^- + 12H^+ + 10e- -> I2 + 6H2O"), (5, "2I^- -> I2 + 2e-")),
        (
            "none",
            "Cu + HNO3 -> Cu(NO3)2 + NO + H2O",
            (2, "NO3^- + 4H^+ + 3e- -> NO + 2H2O"),
            (3, "Cu -> Cu^2+ + 2e-"),
        ),
        ("none", "Na + Cl2 -> NaCl", (1, "Cl2 + 2e- -> 2Cl^-"), (2, "Na -> Na^+ + e-")),
        (
            "none",
            "Pb + PbO2 + H2SO4 -> PbSO4 + H2O",
            (1, "PbO2 + SO4^2- + 4H^+ + 2e- -> PbSO4 + 2H2O"),
            (1, "Pb + SO4^2- -> PbSO4 + 2e-"),
        ),
        ("neutral", "H2O -> H2 + O2", (2, "2H2O + 2e- -> H2 + 2OH^-"), (1, "2H2O -> O2 + 4H^+ + 4e-")),
        ("molten", "Al2O3 + C -> Al + CO2", (2, "Al2O3 + 6e- -> 2Al + 3O^2-"), (3, "C + 2O^2- -> CO2 + 4e-")),
        (
            "none",
            "CO2 + H2O -> C6H12O6 + O2",
            (1, "6CO2 + 24H^+ + 24e- -> C6H12O6 + 6H2O"),
            (6, "2H2O -> O2 + 4H^+ + 4e-"),
        ),
    ],
)
def test_the_half_equations_of_a_whole_one(
    medium: str, skeleton: str, reduction: tuple[int, str], oxidation: tuple[int, str]
) -> None:
    halves = balance(skeleton, medium).halves
    assert halves is not None
    assert (halves.reduction_multiplier, halves.reduction.ascii) == reduction
    assert (halves.oxidation_multiplier, halves.oxidation.ascii) == oxidation


# ------------------------------------------------------------------ what cannot be balanced


@pytest.mark.parametrize(
    ("medium", "skeleton", "said"),
    [
        ("acidic", "Cu^2+ + SO4^2- -> Cu", "Sulfur (S) stands only on the left, in SO4^2-."),
        ("none", "MnO4^- -> Mn^2+", "Oxygen (O) stands only on the left, in MnO4^-."),
        ("molten", "H2O -> O2", "Hydrogen (H) stands only on the left, in H2O."),
        ("acidic", "Zn -> Cu", "copper (Cu) stands only on the right, in Cu."),
        ("acidic", "Cl2 -> Br2", "Chlorine (Cl) stands only on the left, in Cl2;"),
        ("none", "Cu -> Cu", "both sides hold the same species"),
        ("acidic", "e- -> e-", "both sides hold the same species"),
        ("none", "CH4 -> C2H6 + C3H8", "CH4 + C3H8 -> 2C2H6"),
        ("none", "C2H4 -> C3H6 + CH4", "3C2H4 -> 2C3H6: CH4 would have no part in it"),
        ("alkaline", "OH^- -> H2O", "Oxygen (O) and hydrogen (H) cannot all agree"),
        ("none", "C2H2 + C3H4 -> CH4 + C2H6", "Carbon (C) and hydrogen (H) cannot agree at the same time."),
        ("none", "C2H4 + C3H6 -> CH4 + C2H6", "cannot agree at the same time"),
        ("none", "C2H6 + C3H8 -> CH4 + CH3CH3", "cannot"),
    ],
)
def test_what_cannot_agree_is_named(medium: str, skeleton: str, said: str) -> None:
    with pytest.raises(NoSolution) as refusal:
        balance(skeleton, medium)
    assert refusal.value.code == "no-solution"
    assert said in refusal.value.detail
    assert refusal.value.remedy


# ------------------------------------------------------------------ what balances in several ways


@pytest.mark.parametrize(
    ("medium", "skeleton", "basis"),
    [
        (
            "acidic",
            "H2O2 + MnO4^- -> Mn^2+ + O2",
            {"4MnO4^- + 12H^+ -> 4Mn^2+ + 5O2 + 6H2O", "2H2O2 -> O2 + 2H2O"},
        ),
        (
            "acidic",
            "ClO3^- + Cl^- -> Cl2 + ClO2",
            {"ClO3^- + 5Cl^- + 6H^+ -> 3Cl2 + 3H2O", "5ClO3^- + Cl^- + 6H^+ -> 6ClO2 + 3H2O"},
        ),
        (
            "acidic",
            "MnO4^- + S2O3^2- -> MnO2 + SO4^2- + S",
            {"8MnO4^- + 3S2O3^2- + 2H^+ -> 8MnO2 + 6SO4^2- + H2O", "3S2O3^2- + 2H^+ -> 2SO4^2- + 4S + H2O"},
        ),
        (
            "acidic",
            "NO3^- -> NO + NO2",
            {"NO3^- + 4H^+ + 3e- -> NO + 2H2O", "NO3^- + 2H^+ + e- -> NO2 + H2O"},
        ),
        ("none", "C2H6 + O2 -> CO2 + CO + H2O", {"2C2H6 + 5O2 -> 4CO + 6H2O", "2C2H6 + 7O2 -> 4CO2 + 6H2O"}),
        ("none", "Fe + O2 -> FeO + Fe2O3", {"2Fe + O2 -> 2FeO", "4Fe + 3O2 -> 2Fe2O3"}),
        ("none", "Cl^- + Br^- -> Cl2 + Br2", {"2Cl^- -> Cl2 + 2e-", "2Br^- -> Br2 + 2e-"}),
    ],
)
def test_several_solutions_come_with_a_basis(medium: str, skeleton: str, basis: set[str]) -> None:
    with pytest.raises(SeveralSolutions) as refusal:
        balance(skeleton, medium)
    assert refusal.value.code == "several-solutions"
    assert {equation.ascii for equation in refusal.value.basis} == basis
    assert "numbers that are known" in refusal.value.remedy


@pytest.mark.parametrize(
    ("medium", "skeleton", "expected"),
    [
        (
            "acidic",
            "5H2O2 + 2MnO4^- -> 2Mn^2+ + 5O2",
            "5H2O2 + 2MnO4^- + 6H^+ -> 2Mn^2+ + 5O2 + 8H2O",
        ),
        ("acidic", "2ClO3^- + 2Cl^- -> Cl2 + 2ClO2", "2ClO3^- + 2Cl^- + 4H^+ -> Cl2 + 2ClO2 + 2H2O"),
        ("none", "2C2H6 + 6O2 -> 2CO2 + 2CO + 6H2O", "C2H6 + 3O2 -> CO2 + CO + 3H2O"),
        ("none", "3Fe + 2O2 -> FeO + Fe2O3", "3Fe + 2O2 -> FeO + Fe2O3"),
    ],
)
def test_numbers_that_were_given_settle_it(medium: str, skeleton: str, expected: str) -> None:
    found = balance(skeleton, medium)
    assert found.equation.ascii == expected
    assert "numbers-given-were-used" in [remark.code for remark in found.remarks]


def test_numbers_that_leave_electrons_over_settle_nothing() -> None:
    with pytest.raises(SeveralSolutions):
        balance("3H2O2 + 2MnO4^- -> 2Mn^2+ + 5O2", "acidic")


def test_numbers_settle_a_half_equation_too() -> None:
    found = balance("3NO3^- -> 2NO + NO2", "acidic")
    assert found.equation.ascii == "3NO3^- + 10H^+ + 7e- -> 2NO + NO2 + 5H2O"


def test_numbers_that_settle_nothing_are_ignored() -> None:
    found = balance("3MnO4^- -> 7Mn^2+", "acidic")
    assert found.equation.ascii == "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"
    assert found.remarks == ()


def test_electrons_that_are_given_ask_for_a_half_equation() -> None:
    with pytest.raises(SeveralSolutions) as refusal:
        balance("Cl2 + e- -> Cl^- + ClO3^-", "alkaline")
    assert {equation.ascii for equation in refusal.value.basis} == {
        "Cl2 + 2e- -> 2Cl^-",
        "Cl2 + 12OH^- -> 2ClO3^- + 6H2O + 10e-",
    }


# ------------------------------------------------------------------ hints and spellings


@pytest.mark.parametrize(
    ("medium", "skeleton", "expected"),
    [
        ("acidic", "MnO4^- + H^+ + e- -> Mn^2+ + H2O", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("acidic", "MnO4^- -> Mn^2+ + H^+ + e-", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("none", "MnO4^- + H^+ -> Mn^2+ + H2O", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("acidic", "MnO4^- + H3O^+ -> Mn^2+", "MnO4^- + 8H3O^+ + 5e- -> Mn^2+ + 12H2O"),
        ("alkaline", "H^+ -> H2", "2H2O + 2e- -> H2 + 2OH^-"),
        ("acidic", "OH^- -> O2", "2H2O -> O2 + 4H^+ + 4e-"),
        ("neutral", "OH^- -> O2", "4OH^- -> O2 + 2H2O + 4e-"),
        ("acidic", "Na^+ + Cu^2+ -> Cu + Na^+", "Cu^2+ + 2e- -> Cu"),
        ("acidic", "MnO4- → Mn2+", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("acidic", "Cr2O72- = Cr3+", "Cr2O7^2- + 14H^+ + 6e- -> 2Cr^3+ + 7H2O"),
        ("acidic", "SO₄²⁻ ⟶ SO₂", "SO4^2- + 4H^+ + 2e- -> SO2 + 2H2O"),
        ("none", "Cl2 + Cl2 -> Cl^-", "Cl2 + 2e- -> 2Cl^-"),
        ("acidic", "VO2+ -> VO^2+", "VO2^+ + 2H^+ + e- -> VO^2+ + H2O"),
        ("acidic", "IO65- -> IO3-", "IO6^5- + 6H^+ + 2e- -> IO3^- + 3H2O"),
        ("none", "Hg22+ -> Hg", "Hg2^2+ + 2e- -> 2Hg"),
        ("molten", "O2- -> O2", "2O^2- -> O2 + 4e-"),
        ("acidic", "I3- -> I-", "I3^- + 2e- -> 3I^-"),
    ],
)
def test_hints_and_spellings_do_not_change_the_answer(medium: str, skeleton: str, expected: str) -> None:
    assert balance(skeleton, medium).equation.ascii == expected


@pytest.mark.parametrize(
    ("skeleton", "medium"), [("MnO4^- -> Mn^2+", "acidic"), ("MnO4^- -> MnO2 + OH^-", "alkaline")]
)
def test_a_medium_left_out_is_taken_from_what_is_given(skeleton: str, medium: str) -> None:
    found = balance(skeleton)
    assert found.skeleton.medium == medium
    assert found.remarks[0].code == f"taken-as-{medium}"


def test_the_order_and_the_scale_of_the_skeleton_do_not_matter() -> None:
    expected = "Fe^2+ -> Fe^3+"
    one = balance("MnO4^- + Fe^2+ -> Mn^2+ + Fe^3+", "acidic").equation
    two = balance("7Fe^2+ + 3MnO4^- -> 2Fe^3+ + Mn^2+", "acidic").equation
    assert {(t.species, t.coefficient) for t in one.left} == {(t.species, t.coefficient) for t in two.left}
    assert {(t.species, t.coefficient) for t in one.right} == {(t.species, t.coefficient) for t in two.right}
    assert balance(expected, "none").equation.ascii == "Fe^2+ -> Fe^3+ + e-"


# ------------------------------------------------------------------ bounds


def test_an_unknown_medium_is_refused() -> None:
    with pytest.raises(IonwrightError) as refusal:
        balance("Cl2 -> Cl^-", "vinegar")
    assert (refusal.value.code, refusal.value.where) == ("unknown-medium", "medium")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "MnO4^-",
        "-> Mn^2+",
        "Cl2 -> Cl^- -> Cl2",
        "(" * 400 + "H" + ")" * 90 + " -> H2",
        "H" * 100_000 + " -> H2",
        " + ".join(["Cl2"] * 10_000) + " -> Cl^-",
        " + ".join(["H2"] * 23) + " -> " + " + ".join(["H"] * 23),
        "H99999999999 -> H2",
        "Fe9999O9999(H9999O9999)9999 -> Fe",
        "((((((((((H))))))))))9999 -> H",
    ],
)
def test_hostile_texts_are_refused_at_once(text: str) -> None:
    start = time.perf_counter()
    with pytest.raises(FormulaError):
        balance(text, "acidic")
    assert time.perf_counter() - start < 0.25


def test_the_largest_skeletons_that_are_read_are_answered_soon() -> None:
    """Forty terms with large subscripts: whatever the answer is, it comes soon."""
    symbols = ["C", "N", "S", "P", "K", "V", "Y", "U", "W", "I", "B", "F"]
    left = [f"{symbols[i % 12]}9{i}{symbols[(i * 5 + 1) % 12]}7{i}" for i in range(20)]
    right = [f"{symbols[(i * 7) % 12]}8{i}{symbols[(i * 3 + 2) % 12]}" for i in range(20)]
    text = f"{' + '.join(left)} -> {' + '.join(right)}"
    start = time.perf_counter()
    with pytest.raises((NoSolution, SeveralSolutions)):
        balance(text, "acidic")
    assert time.perf_counter() - start < 2


# ------------------------------------------------------------------ other spellings of the same


@pytest.mark.parametrize(
    ("medium", "skeleton", "expected"),
    [
        ("alkaline", "O2 -> HO^-", "O2 + 2H2O + 4e- -> 4OH^-"),
        (None, "MnO4^- -> MnO2 + HO^-", "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-"),
        (None, "Cl2 + HO^- -> Cl^- + ClO^-", "Cl2 + 2OH^- -> Cl^- + ClO^- + H2O"),
        ("alkaline", "O2 + HOH -> [OH]^-", "O2 + 2H2O + 4e- -> 4OH^-"),
        ("acidic", "O2 -> OH2", "O2 + 4H^+ + 4e- -> 2H2O"),
        ("acidic", "H2 -> OH3^+", "H2 + 2H2O -> 2H3O^+ + 2e-"),
    ],
)
def test_water_and_its_ions_are_known_by_atoms_and_charge(
    medium: str | None, skeleton: str, expected: str
) -> None:
    assert balance(skeleton, medium).equation.ascii == expected


@pytest.mark.parametrize(
    "skeleton",
    ["VO2+ + H2O -> VO2+ + 2H+ + e-", "2VO2+ + 2H2O -> 2VO2+ + 4H+ + 2e-", "VO2+ -> VO2+ + e-"],
)
def test_one_text_reads_differently_on_the_two_sides_where_that_alone_makes_sense(skeleton: str) -> None:
    assert balance(skeleton, "acidic").equation.ascii == "VO^2+ + H2O -> VO2^+ + 2H^+ + e-"


def test_what_seems_to_stand_on_both_sides_may_be_one_text_for_two_species() -> None:
    found = balance("VO2+ + Fe2+ -> VO2+ + Fe3+", "acidic")
    assert found.equation.ascii == "VO2^+ + Fe^2+ + 2H^+ -> VO^2+ + Fe^3+ + H2O"
    assert balance("Cu2+ + Fe2+ -> Cu2+ + Fe3+", "acidic").equation.ascii == "Fe^2+ -> Fe^3+ + e-"
    assert balance("SO42- + Fe2+ -> SO42- + Fe3+", "acidic").equation.ascii == "Fe^2+ -> Fe^3+ + e-"


def test_a_text_that_could_be_either_on_either_side_asks_for_a_caret() -> None:
    with pytest.raises(NoSolution) as refusal:
        balance("VO2+ -> VO2+", "acidic")
    assert "VO2^+" in refusal.value.detail
    assert "VO^2+ -> VO2^+" in (refusal.value.remedy or "")
    assert "VO2^+ -> VO^2+" in (refusal.value.remedy or "")


@pytest.mark.parametrize("clear", ["Zn^2+ + Cu -> Cu^2+ + Zn + Ag", "VO^2+ -> VO2^+", "Na+ + K -> Na + K+"])
def test_what_can_be_read_in_one_way_is_not_read_again(clear: str) -> None:
    assert not list(other_readings(clear, read_skeleton(clear)))


def test_what_is_clear_and_the_same_on_both_sides_changes_nothing() -> None:
    for same in ("VO^2+ -> VO^2+", "Cu2+ -> Cu2+"):
        with pytest.raises(NoSolution, match="Nothing happens"):
            balance(same, "acidic")


def test_two_half_equations_in_one_are_asked_for_one_by_one() -> None:
    with pytest.raises(SeveralSolutions) as refusal:
        balance("Fe^2+ + Fe^3+ -> Fe", "acidic")
    assert (refusal.value.remedy or "").startswith("Write each half-equation by itself")
