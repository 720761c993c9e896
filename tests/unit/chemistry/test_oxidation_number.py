"""Oxidation numbers by the rules of school, their exceptions, and what they leave undecided."""

from __future__ import annotations

import pytest

from ionwright.chemistry.equation import equation
from ionwright.chemistry.oxidation_change import changes_of, numbers_in, rises_in
from ionwright.chemistry.oxidation_number import oxidation_numbers
from ionwright.chemistry.species import ELECTRON, species


def numbers(text: str) -> str:
    found = oxidation_numbers(species(text))
    return " ".join(f"{one.element}={one.value if one.value is not None else '?'}" for one in found)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # free elements and simple ions
        ("Fe", "Fe=0"),
        ("P4", "P=0"),
        ("O3", "O=0"),
        ("Al^3+", "Al=3"),
        ("Hg2^2+", "Hg=1"),
        ("O2^2-", "O=-1"),
        ("O2^-", "O=-1/2"),
        ("N3^-", "N=-1/3"),
        ("I3^-", "I=-1/3"),
        # hydrogen and hydrides
        ("H2O", "H=1 O=-2"),
        ("NaH", "Na=1 H=-1"),
        ("CaH2", "Ca=2 H=-1"),
        ("LiAlH4", "Li=1 Al=3 H=-1"),
        ("NaBH4", "Na=1 B=3 H=-1"),
        ("PH3", "P=-3 H=1"),
        ("CH4", "C=-4 H=1"),
        # oxygen
        ("H2O2", "H=1 O=-1"),
        ("Na2O2", "Na=1 O=-1"),
        ("BaO2", "Ba=2 O=-1"),
        ("PbO2", "Pb=4 O=-2"),
        ("KO2", "K=1 O=-1/2"),
        ("OF2", "O=2 F=-1"),
        ("O2F2", "O=1 F=-1"),
        ("H2SO5", "H=1 S=6 O=-8/5"),
        ("S2O8^2-", "S=6 O=-7/4"),
        ("CrO5", "Cr=6 O=-6/5"),
        # halogens
        ("HClO", "H=1 Cl=1 O=-2"),
        ("ClO4^-", "Cl=7 O=-2"),
        ("ICl3", "I=3 Cl=-1"),
        ("BrF5", "Br=5 F=-1"),
        ("IF7", "I=7 F=-1"),
        ("POCl3", "P=5 O=-2 Cl=-1"),
        ("CrO2Cl2", "Cr=6 O=-2 Cl=-1"),
        ("NCl3", "N=3 Cl=-1"),
        ("NI3", "N=-3 I=1"),
        # oxoanions, acids, salts
        ("MnO4^-", "Mn=7 O=-2"),
        ("K2MnO4", "K=1 Mn=6 O=-2"),
        ("Cr2O7^2-", "Cr=6 O=-2"),
        ("H2SO4", "H=1 S=6 O=-2"),
        ("S2O3^2-", "S=2 O=-2"),
        ("S4O6^2-", "S=5/2 O=-2"),
        ("H2PO2^-", "H=1 P=1 O=-2"),
        ("VO2^+", "V=5 O=-2"),
        ("UO2(NO3)2", "U=6 O=-2 N=5"),
        ("NaBiO3", "Na=1 Bi=5 O=-2"),
        ("Fe2(SO4)3", "Fe=3 S=6 O=-2"),
        ("Hg2(NO3)2", "Hg=1 N=5 O=-2"),
        ("Ca(ClO)2", "Ca=2 Cl=1 O=-2"),
        ("AgMnO4", "Ag=1 Mn=7 O=-2"),
        # an element twice in one formula
        ("NH4NO3", "N=-3 N=5 H=1 O=-2"),
        ("NH4NO2", "N=-3 N=3 H=1 O=-2"),
        ("(NH4)2Cr2O7", "N=-3 H=1 Cr=6 O=-2"),
        ("NH4ClO4", "N=-3 H=1 Cl=7 O=-2"),
        # complexes and their ligands
        ("[Fe(CN)6]^4-", "Fe=2 C=2 N=-3"),
        ("K3[Fe(CN)6]", "K=1 Fe=3 C=2 N=-3"),
        ("[Cu(NH3)4]^2+", "Cu=2 N=-3 H=1"),
        ("[Cu(NH3)4]SO4", "Cu=2 N=-3 H=1 S=6 O=-2"),
        ("[Co(NH3)5Cl]Cl2", "Co=3 N=-3 H=1 Cl=-1"),
        ("Ni(CO)4", "Ni=0 C=2 O=-2"),
        ("FeSCN^2+", "Fe=3 S=-2 C=4 N=-3"),
        ("Al(OH)4^-", "Al=3 O=-2 H=1"),
        ("CuSO4.5H2O", "Cu=2 S=6 O=-2 H=1"),
        ("Fe4[Fe(CN)6]3", "Fe=18/7 C=2 N=-3"),
        ("SCN^-", "S=-2 C=4 N=-3"),
        ("CN^-", "C=2 N=-3"),
        ("(CN)2", "C=3 N=-3"),
        ("YBa2Cu3O7", "Y=3 Ba=2 Cu=7/3 O=-2"),
        ("Na2S4O6", "Na=1 S=5/2 O=-2"),
        ("KAl(SO4)2.12H2O", "K=1 Al=3 S=6 O=-2 H=1"),
        ("Cu2(OH)2CO3", "Cu=2 O=-2 H=1 C=4"),
        ("Pb(N3)2", "Pb=2 N=-1/3"),
        # nitrogen
        ("NH2OH", "N=-1 H=1 O=-2"),
        ("N2H4", "N=-2 H=1"),
        ("N2O4", "N=4 O=-2"),
        ("HN3", "H=1 N=-1/3"),
        # carbon
        ("C2H5OH", "C=-2 H=1 O=-2"),
        ("CH3COOH", "C=0 H=1 O=-2"),
        ("C12H22O11", "C=0 H=1 O=-2"),
        ("C6H5CHO", "C=-4/7 H=1 O=-2"),
        ("CHCl3", "C=2 H=1 Cl=-1"),
        ("C2O4^2-", "C=3 O=-2"),
        ("CO(NH2)2", "C=4 O=-2 N=-3 H=1"),
        ("C6H5NH2", "C=-2/3 H=1 N=-3"),
        ("CH3NO2", "C=-2 H=1 N=3 O=-2"),
        ("CaC2", "Ca=2 C=-1"),
        ("Al4C3", "Al=3 C=-4"),
        # mixed oxides and sulfides
        ("Fe3O4", "Fe=8/3 O=-2"),
        ("Pb3O4", "Pb=8/3 O=-2"),
        ("FeS2", "Fe=2 S=-1"),
        ("As2S3", "As=3 S=-2"),
        ("CS2", "C=4 S=-2"),
        ("Fe(CrO2)2", "Fe=2 Cr=3 O=-2"),
        ("FeCr2O4", "Fe=2 Cr=3 O=-2"),
        ("BaTiO3", "Ba=2 Ti=4 O=-2"),
        ("XeO3", "Xe=6 O=-2"),
        ("CuFeS2", "Cu=1 Fe=3 S=-2"),
        ("FeTiO3", "Fe=2 Ti=4 O=-2"),
        # elements that share oxygen and all have as much as their groups allow
        ("PW12O40^3-", "P=5 W=6 O=-2"),
        ("H3PMo12O40", "H=1 P=5 Mo=6 O=-2"),
        ("SiW12O40^4-", "Si=4 W=6 O=-2"),
        ("P2W18O62^6-", "P=5 W=6 O=-2"),
        ("PMo12O40^4-", "P=? Mo=? O=-2"),
        # undecided
        ("CuFeSe2", "Cu=? Fe=? Se=-2"),
        ("C2H5NO2", "C=? H=1 N=? O=-2"),
        ("[Fe(CN)5(NO)]^2-", "Fe=? C=? N=? O=?"),
        ("NH3BH3", "N=? H=? B=?"),
    ],
)
def test_known_numbers(text: str, expected: str) -> None:
    assert numbers(text) == expected


def test_the_electron_has_none() -> None:
    assert oxidation_numbers(ELECTRON) == ()


@pytest.mark.parametrize(
    ("text", "element", "is_average"),
    [
        ("S4O6^2-", "S", True),
        ("S2O3^2-", "S", True),
        ("Fe3O4", "Fe", True),
        ("CH3COOH", "C", True),
        ("N2O", "N", True),
        ("Cr2O7^2-", "Cr", False),
        ("H2C2O4", "C", False),
        ("CH3OH", "C", False),
    ],
)
def test_an_average_is_said_to_be_one(text: str, element: str, is_average: bool) -> None:
    (found,) = [one for one in oxidation_numbers(species(text)) if one.element == element]
    assert found.is_average is is_average


def test_the_atoms_of_a_mixed_oxide_are_told_apart() -> None:
    iron, _ = oxidation_numbers(species("Fe3O4"))
    assert (iron.atoms, iron.states) == (3, ((2, 1), (3, 2)))


def changed(text: str) -> dict[str, bool | None]:
    found = numbers_in(equation(text))
    return {f"{one.species} {one.number.element} {one.side}": one.changes for one in found}


def test_what_changes_is_marked() -> None:
    assert changed("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O") == {
        "MnO4^- Mn left": True,
        "MnO4^- O left": False,
        "H^+ H left": False,
        "Mn^2+ Mn right": True,
        "H2O H right": False,
        "H2O O right": False,
    }


def test_chloride_that_only_looks_on_is_not_marked() -> None:
    found = changed("2KMnO4 + 16HCl -> 2KCl + 2MnCl2 + 5Cl2 + 8H2O")
    assert found["HCl Cl left"] is True
    assert found["Cl2 Cl right"] is True
    assert found["KCl Cl right"] is False
    assert found["MnCl2 Cl right"] is False


def test_the_iron_of_magnetite_does_not_change_when_it_dissolves() -> None:
    found = numbers_in(equation("Fe3O4 + 8H^+ -> Fe^2+ + 2Fe^3+ + 4H2O"))
    assert changes_of(found) is False


def test_what_is_undecided_is_not_said_to_stay() -> None:
    found = numbers_in(equation("CuFeSe2 + 4H^+ -> Cu^2+ + Fe^2+ + 2H2Se"))
    assert changes_of(found) is None
    assert {one.changes for one in found if one.number.element in ("Cu", "Fe")} == {None}


def test_rises_count_the_electrons() -> None:
    assert rises_in(equation("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O")) == {"Mn": -5}
    assert rises_in(equation("3Cl2 + 6OH^- -> 5Cl^- + ClO3^- + 3H2O")) == {}


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("CuFeSe2", "No rule fixes Cu or Fe here, and the charge alone does not say how they share."),
        ("C2H5NO2", "No rule fixes C or N here, and the charge alone does not say how they share."),
        ("[Fe(CN)5(NO)]^2-", "NO can be bound as NO^+, NO or NO^-, and the formula does not say which."),
        ("NH3BH3", "No rule fixes N, H or B here, and the charge alone does not say how they share."),
    ],
)
def test_what_is_undecided_says_why(text: str, because: str) -> None:
    found = oxidation_numbers(species(text))
    assert {one.because for one in found if one.value is None} == {because}
    assert {one.because for one in found if one.value is not None} <= {""}
