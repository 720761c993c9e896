"""Equations are read in every spelling, count atoms and charge, and combine."""

import pickle
from fractions import Fraction

import pytest

from ionwright.chemistry.equation import Equation, Term, combine, equation, read_equation
from ionwright.chemistry.faults import CellRefused, FormulaError, Unbalanced
from ionwright.chemistry.species import ELECTRON, species

NICKEL = "Ni^2+ + 2e- -> Ni"
CHLORIDE = "2Cl^- -> Cl2 + 2e-"
HYDROXIDE = "4OH^- -> 2H2O + O2 + 4e-"


@pytest.mark.parametrize(
    ("text", "canonical"),
    [
        ("Ni2+ + 2e- -> Ni", NICKEL),
        ("Ni2++2e-→Ni", NICKEL),
        ("Ni++ + 2e → Ni", NICKEL),
        ("Ni+2 + 2e- -> Ni", NICKEL),
        ("Ni+2+2e-->Ni", NICKEL),
        ("Ni+++2e-->Ni", NICKEL),
        ("Ni^{2+}+2e^{-}->Ni", NICKEL),
        ("Ni²⁺ + 2 ē = Ni", NICKEL),
        ("Ni²⁺(aq) + 2e⁻ ⟶ Ni(S)", NICKEL),
        ("Ni²⁺ ＋ ２ｅ⁻ ⇄ Ni", NICKEL),
        ("Ni(2+) + 2e- ⇌ Ni", NICKEL),
        ("  Ni 2+  +  2 e -  -->  Ni ", NICKEL),
        ("Ni2+ + 2*e- => Ni", NICKEL),
        ("Ni2+ + 2e- <=> Ni", NICKEL),
        ("Ni2+ + 2e- <-> Ni", NICKEL),
        ("Ni2+ + 2e- ==> Ni", NICKEL),
        ("Ni2+ + 2e- ------> Ni", NICKEL),
        ("2Cl- - 2e- -> Cl2", CHLORIDE),
        ("2Cl--2e-->Cl2", CHLORIDE),
        ("2Cl− − 2e = Cl2", CHLORIDE),
        ("2Cl-->Cl2+2e-", CHLORIDE),
        ("2Cl->Cl2+2e-", CHLORIDE),
        ("2Cl--->Cl2+2e-", CHLORIDE),
        ("2Cl-→Cl2↑+2e-", CHLORIDE),
        ("-2e- + 2Cl- -> Cl2", CHLORIDE),
        ("4OH- -> 2H2O + O2(g) + 4e-", HYDROXIDE),
        ("4 OH⁻ ⟶ 2 H₂O + O₂ + 4 e⁻", HYDROXIDE),
        ("½Cl2 + e- -> Cl-", "1/2Cl2 + e- -> Cl^-"),
        ("1/2 Cl2 + e- -> Cl-", "1/2Cl2 + e- -> Cl^-"),
        ("(1/2)Cl2 + e- -> Cl-", "1/2Cl2 + e- -> Cl^-"),
        ("0.5Cl2+e=Cl-", "1/2Cl2 + e- -> Cl^-"),
        ("0,5 Cl2 + e = Cl-", "1/2Cl2 + e- -> Cl^-"),
        ("1½O2 -> O3", "3/2O2 -> O3"),
        ("Na+ + Cl- -> NaCl", "Na^+ + Cl^- -> NaCl"),
        ("Na++Cl-->NaCl", "Na^+ + Cl^- -> NaCl"),
        ("2H+ +2e-→H2", "2H^+ + 2e- -> H2"),
        ("Cu2+ +2e-=Cu", "Cu^2+ + 2e- -> Cu"),
        ("2O2- -> O2 + 4e-", "2O^2- -> O2 + 4e-"),
        ("O2 + e- -> O2-", "O2 + e- -> O2^-"),
        ("Fe3+ + 3N3- -> Fe(N3)3", "Fe^3+ + 3N3^- -> Fe(N3)3"),
        ("MnO4- + 8H+ + 5e- -> Mn2+ + 4H2O", "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O"),
        ("[Cu(NH3)4]2+ + 2e- -> Cu + 4NH3", "[Cu(NH3)4]^2+ + 2e- -> Cu + 4NH3"),
        ("NiSO4 6H2O = NiSO4 + 6H2O", "NiSO4.6H2O -> NiSO4 + 6H2O"),
        ("Zn-->Zn2+ + 2e-", "Zn -> Zn^2+ + 2e-"),
        ("Zn⁰ - 2e⁻ = Zn²⁺.", "Zn -> Zn^2+ + 2e-"),
        ("Zn(s)-2e-->Zn2+(aq)", "Zn -> Zn^2+ + 2e-"),
        ("Hg2 2+ + 2e- -> 2Hg", "Hg2^2+ + 2e- -> 2Hg"),
        ("PbO2(s)+4H+(aq)+SO42-(aq)+2e-→PbSO4(s)+2H2O(l)", "PbO2 + 4H^+ + SO4^2- + 2e- -> PbSO4 + 2H2O"),
        ("2Cl⁻-2e⁻→Cl₂", CHLORIDE),
        ("(NH4)2SO4 -> 2NH4+ + SO42-", "(NH4)2SO4 -> 2NH4^+ + SO4^2-"),
    ],
)
def test_what_people_type_is_read_and_balances(text: str, canonical: str) -> None:
    found = read_equation(text)
    assert found.ascii == canonical
    assert found.is_balanced


def test_state_symbols_are_kept_in_any_case() -> None:
    found = read_equation("2H2O (L) + 2e- -> H2(G) + 2OH-( aq )")
    assert [term.state for term in (*found.left, *found.right)] == ["l", "", "g", "aq"]


def test_the_precipitate_and_gas_arrows_are_states() -> None:
    found = read_equation("Ag+ + Cl- = AgCl↓")
    assert found.right == (Term(species("AgCl"), 1, "s"),)


def test_known_species_win_before_balance() -> None:
    superoxide, oxide = species("O2^-"), species("O^2-")
    text = "O2- -> O2 + e-"
    assert read_equation(text).reactants == (superoxide,)
    assert read_equation(text, {oxide}).reactants == (oxide,)
    assert read_equation(text, {oxide, superoxide}).reactants == (superoxide,)


def test_an_unbalanced_line_is_read_by_its_likeliest_reading() -> None:
    found = read_equation("Cu2+ + e- -> Cu")
    assert found.ascii == "Cu^2+ + e- -> Cu"
    assert not found.is_balanced


def test_dashes_before_the_arrow_go_where_the_known_species_say() -> None:
    assert read_equation("Zn-->Zn2+", {species("Zn"), species("Zn^2+")}).ascii == "Zn -> Zn^2+"


def test_subtracted_electrons_join_those_on_the_other_side() -> None:
    assert read_equation("2Cl- - e- -> Cl2 + e-").ascii == CHLORIDE


@pytest.mark.parametrize(
    ("text", "code", "position", "remedy"),
    [
        ("Ni", "unreadable-formula", 2, "arrow"),
        ("", "unreadable-formula", 0, "arrow"),
        ("-> Ni", "unreadable-formula", 0, "what reacts"),
        ("Ni ->", "unreadable-formula", 5, "what reacts"),
        ("Ni -> Ni -> Ni", "unreadable-formula", 10, "one equation"),
        ("Ni2+ + 2e- ->ni", "unreadable-formula", 13, "Ni"),
        ("Ni2+ + 2e- -> NI2 + Xx", "unknown-element", 20, "Xe"),
        ("0Ni -> Ni", "unreadable-formula", 0, "Leave the term out"),
        ("1/0Ni -> Ni", "unreadable-formula", 2, "1/2"),
        ("2 -> Ni", "unreadable-formula", 1, "NiSO4"),
        ("+ Ni -> Ni", "unreadable-formula", 0, "one +"),
        ("Cl- - Na+ -> Cl", "unreadable-formula", 6, "Join the terms with +"),
        ("9999999Ni -> Ni", "unreadable-formula", 0, "99999"),
        ("Ni2+ and 2e- -> Ni", "unreadable-formula", 5, "capital"),
        ("Ni <- Ni2+ + 2e-", "unreadable-formula", 3, "let the arrow point to what forms"),
        ("Ni ← Ni2+ + 2e-", "unreadable-formula", 3, "let the arrow point to what forms"),
        ("Cu -> Cu^ 2", "unreadable-formula", 8, "behind the whole formula"),
    ],
)
def test_a_fault_tells_code_place_and_remedy(text: str, code: str, position: int, remedy: str) -> None:
    with pytest.raises(FormulaError) as caught:
        read_equation(text)
    assert (caught.value.code, caught.value.position) == (code, position)
    assert remedy in caught.value.remedy


def test_length_and_terms_are_bounded() -> None:
    with pytest.raises(FormulaError, match="too long"):
        read_equation("Ni -> " + "Ni + " * 200 + "Ni")
    with pytest.raises(FormulaError, match="too many terms"):
        read_equation("+".join(["H"] * 30) + "->H")


def test_an_equation_with_many_ambiguous_terms_is_still_read() -> None:
    found = read_equation("+".join(["SO42-"] * 24) + "->" + "+".join(["O2-"] * 24))
    assert found.left[0].species == species("SO4^2-")


# ------------------------------------------------------------------ values


def test_canonical_text_gives_an_equation_and_back() -> None:
    found = equation("4OH^-(aq) -> O2(g) + 2H2O(l) + 4e-")
    assert str(found) == found.ascii == "4OH^- -> O2 + 2H2O + 4e-"
    assert found.left == (Term(species("OH^-"), 4, "aq"),)
    assert found is equation("4OH^-(aq) -> O2(g) + 2H2O(l) + 4e-")


def test_states_can_be_given_beside_the_text() -> None:
    found = equation(NICKEL, {"Ni^2+": "aq", "Ni": "s"})
    assert found == equation("Ni^2+(aq) + 2e- -> Ni(s)")
    assert found.without_states() == equation(NICKEL)


@pytest.mark.parametrize(
    "text", ["Ni", "Ni->Ni", "Ni2+ + 2e- -> Ni", "0Ni -> Ni", "1/0Ni -> Ni", "-> Ni", "a -> b"]
)
def test_what_is_not_canonical_is_refused(text: str) -> None:
    with pytest.raises(FormulaError):
        equation(text)


def test_electrons_are_counted_positive_for_a_reduction() -> None:
    assert equation(NICKEL).electrons == 2
    assert equation(HYDROXIDE).electrons == -4
    assert equation("Cl^- -> 1/2Cl2 + 1/2e- + 1/2e-").electrons == -1
    assert equation("NiSO4 -> Ni^2+ + SO4^2-").electrons == 0


def test_reactants_and_products_leave_the_electron_out() -> None:
    nickel = equation(NICKEL)
    assert nickel.reactants == (species("Ni^2+"),)
    assert nickel.products == (species("Ni"),)
    assert nickel.reversed().reactants == (species("Ni"),)


def test_imbalance_tells_atoms_and_charge() -> None:
    atoms, charge = equation("MnO4^- + 5e- -> Mn^2+ + H2O").imbalance()
    assert atoms == {"O": Fraction(3), "H": Fraction(-2)}
    assert charge == Fraction(-8)


def test_an_unbalanced_equation_is_refused_with_what_differs() -> None:
    with pytest.raises(Unbalanced, match="1 Cl more on the right") as caught:
        equation("Cl^- -> Cl2 + 2e-").check()
    assert caught.value.code == "unbalanced"
    assert "charge on the left is 1 higher" in caught.value.detail
    equation(CHLORIDE).check()


def test_scaling_keeps_whole_numbers_whole() -> None:
    half = equation(CHLORIDE).scaled(Fraction(1, 2))
    assert half.ascii == "Cl^- -> 1/2Cl2 + e-"
    assert half.in_lowest_terms() == equation(CHLORIDE)
    assert type(half.left[0].coefficient) is int
    assert equation(NICKEL).scaled(3).in_lowest_terms() == equation(NICKEL)


def test_a_stored_equation_hashes_alike_when_it_comes_back() -> None:
    found = equation("Ni^2+(aq) + 2e- -> Ni(s)")
    again = pickle.loads(pickle.dumps(found))  # noqa: S301 - the bytes are our own
    assert again == found
    assert hash(again) == hash(found)
    assert hash(found) == hash(Equation(found.left, found.right))


# ------------------------------------------------------------------ combining


@pytest.mark.parametrize(
    ("reduction", "oxidation", "overall", "multipliers", "electrons"),
    [
        ("Ag^+ + e- -> Ag", "Cu -> Cu^2+ + 2e-", "2Ag^+ + Cu -> 2Ag + Cu^2+", (2, 1), 2),
        ("2H2O + 2e- -> H2 + 2OH^-", HYDROXIDE, "2H2O -> 2H2 + O2", (2, 1), 4),
        ("2H^+ + 2e- -> H2", CHLORIDE, "2H^+ + 2Cl^- -> H2 + Cl2", (1, 1), 2),
        ("Al^3+ + 3e- -> Al", "2O^2- -> O2 + 4e-", "4Al^3+ + 6O^2- -> 4Al + 3O2", (4, 3), 12),
        ("Na^+ + e- -> Na", "Cl^- -> 1/2Cl2 + e-", "2Na^+ + 2Cl^- -> 2Na + Cl2", (2, 2), 2),
        ("2Ni^2+ + 4e- -> 2Ni", "2Cu -> 2Cu^2+ + 4e-", "Ni^2+ + Cu -> Ni + Cu^2+", (1, 1), 4),
    ],
)
def test_electrons_cancel_in_lowest_whole_numbers(
    reduction: str, oxidation: str, overall: str, multipliers: tuple[int, int], electrons: int
) -> None:
    combined = combine(equation(reduction), equation(oxidation))
    assert combined.overall.ascii == overall
    assert (combined.reduction_multiplier, combined.oxidation_multiplier) == multipliers
    assert combined.electrons == electrons
    assert not combined.is_transfer
    combined.overall.check()


@pytest.mark.parametrize(
    ("reduction", "oxidation"),
    [("2H^+ + 2e- -> H2", HYDROXIDE), ("2H2O + 2e- -> H2 + 2OH^-", "2H2O -> O2 + 4H^+ + 4e-")],
)
def test_hydrogen_and_hydroxide_ions_join_to_water(reduction: str, oxidation: str) -> None:
    joined = combine(equation(reduction), equation(oxidation), join_water=True).overall
    assert joined.ascii == "2H2O -> 2H2 + O2"
    apart = combine(equation(reduction), equation(oxidation)).overall
    assert {species("H^+"), species("OH^-")} <= {*apart.reactants, *apart.products}


def test_neutralisation_is_not_joined_away() -> None:
    combined = combine(equation("2H^+ + 2e- -> H2"), equation("H2 + 2OH^- -> 2H2O + 2e-"), join_water=True)
    assert combined.overall.ascii == "H^+ + OH^- -> H2O"
    assert not combined.is_transfer


def test_what_is_left_of_the_ions_keeps_its_state() -> None:
    reduction = equation("3H^+(aq) + 2e- -> H2(g) + H^+(aq)")
    joined = combine(reduction, equation("4OH^-(aq) -> O2(g) + 2H2O(l) + 4e-"), join_water=True)
    assert joined.overall == equation("2H2O(l) -> 2H2(g) + O2(g)")


def test_copper_refining_is_a_transfer() -> None:
    combined = combine(equation("Cu^2+(aq) + 2e- -> Cu(s)"), equation("Cu(s) -> Cu^2+(aq) + 2e-"))
    assert combined.is_transfer
    assert combined.overall == equation("Cu(s) -> Cu(s)")
    assert combined.electrons == 2


@pytest.mark.parametrize(
    ("reduction", "oxidation", "code"),
    [
        (NICKEL, "Ag^+ + e- -> Ag", "both-reductions"),
        (CHLORIDE, HYDROXIDE, "both-oxidations"),
        (CHLORIDE, NICKEL, "wrong-way-round"),
        ("NaCl -> Na^+ + Cl^-", CHLORIDE, "no-electrons"),
    ],
)
def test_a_cell_needs_one_of_each_kind(reduction: str, oxidation: str, code: str) -> None:
    with pytest.raises(CellRefused) as caught:
        combine(equation(reduction), equation(oxidation))
    assert caught.value.code == code


def test_an_unbalanced_half_equation_is_not_combined() -> None:
    with pytest.raises(Unbalanced):
        combine(equation("Ni^2+ + 3e- -> Ni"), equation(CHLORIDE))


def test_the_electron_is_one_species_everywhere() -> None:
    assert read_equation("Ni2+ + 2ē -> Ni").left[1].species is ELECTRON
