"""Electrolytes: the ions present, or the refusal."""

import pytest

from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte
from ionwright.chemistry.electrolytes import known_electrolytes, search_electrolytes
from ionwright.chemistry.ion import ion
from ionwright.errors import IonwrightError


def electrolyte(*texts, state="aqueous", ph=None):
    return make_electrolyte(tuple(Ingredient(*text.split("@")) for text in texts), state, ph)


def amounts(made):
    return {one.ion.species.ascii: one.concentration for one in made.ions}


def refusal(*texts, state="aqueous", ph=None):
    with pytest.raises(IonwrightError) as caught:
        electrolyte(*texts, state=state, ph=ph)
    return caught.value


def test_a_salt_gives_its_ions_and_water_gives_the_rest():
    made = electrolyte("NiSO4@0.25 mol/dm3")
    assert amounts(made) == pytest.approx({"Ni^2+": 0.25, "SO4^2-": 0.25, "H^+": 1e-7, "OH^-": 1e-7})
    assert [one.source for one in made.ions] == ["electrolyte", "electrolyte", "water", "water"]
    assert made.medium == "neutral"
    assert [one.ion.species.ascii for one in made.cations] == ["Ni^2+", "H^+"]
    assert [one.ion.species.ascii for one in made.anions] == ["SO4^2-", "OH^-"]
    assert made.has(ion("Ni^2+").species)
    assert not made.has(ion("Cu^2+").species)
    assert made.concentration_of(ion("Ni^2+").species) == 0.25


def test_the_numbers_of_the_formula_multiply_the_concentration():
    assert amounts(electrolyte("MgCl2@0.6 M"))["Cl^-"] == pytest.approx(1.2)
    assert amounts(electrolyte("Al2(SO4)3@0.1 M"))["SO4^2-"] == pytest.approx(0.3)


def test_a_strong_acid_gives_all_its_hydrogen_ions():
    made = electrolyte("H2SO4@0.5 M")
    assert amounts(made) == pytest.approx({"SO4^2-": 0.5, "H^+": 1.0, "OH^-": 1e-14})
    assert made.medium == "acidic"
    assert made.ions[-2].source == "electrolyte"
    assert made.ions[-1].source == "water"


def test_a_weak_acid_gives_few_and_says_so():
    made = electrolyte("CH3COOH@0.1 M")
    assert amounts(made)["H^+"] == pytest.approx(1.34e-3, rel=0.01)
    assert "weak acid" in made.assumptions[0]


def test_ammonia_is_a_weak_alkali():
    made = electrolyte("NH3@0.1 M")
    assert made.medium == "alkaline"
    assert amounts(made)["OH^-"] == pytest.approx(1.33e-3, rel=0.01)


def test_words_stand_for_the_whole_electrolyte():
    assert electrolyte("NaCl@concentrated").word == "concentrated"
    assert electrolyte("brine").word == "concentrated"
    assert electrolyte("NaCl@dilute", "KI@concentrated").word is None
    assert electrolyte("NaCl@1 M").word is None


def test_an_implied_concentration_gives_way_to_a_given_one():
    assert amounts(electrolyte("sea water"))["Cl^-"] == pytest.approx(0.5)
    given = electrolyte("sea water@1 mol/dm3")
    assert amounts(given)["Cl^-"] == pytest.approx(1.0)
    assert not given.assumptions


def test_pure_water_is_answered_with_a_warning():
    made = electrolyte("water")
    assert amounts(made) == pytest.approx({"H^+": 1e-7, "OH^-": 1e-7})
    assert {one.source for one in made.ions} == {"water"}
    assert "hardly conducts" in made.assumptions[0]
    assert electrolyte("H2O", state="liquid").state == "aqueous"


def test_an_oxide_becomes_its_hydroxide_in_water():
    made = electrolyte("Na2O@0.1 M")
    assert amounts(made)["OH^-"] == pytest.approx(0.2)
    assert made.assumptions == (
        "Sodium oxide reacts with water and becomes sodium hydroxide, whose ions are taken.",
    )


def test_a_sparing_salt_passes_with_a_note():
    assert "dissolves only a little" in electrolyte("lime water").notes[0]


def test_the_given_ph_decides_the_medium():
    acidic = electrolyte("Na2SO4@1 M", ph=2)
    assert acidic.medium == "acidic"
    assert acidic.concentration_of(ion("H^+").species) == pytest.approx(0.01)
    assert electrolyte("Na2SO4", ph=12).medium == "alkaline"
    assert electrolyte("Na2SO4", ph=7.5).medium == "neutral"


def test_hydroxo_complexes_stand_in_alkali():
    assert electrolyte("NaAl(OH)4").medium == "alkaline"


@pytest.mark.parametrize(
    ("texts", "state", "code", "where"),
    [
        (("AgCl",), "aqueous", "insoluble", "electrolyte/0/substance"),
        (("PbSO4",), "aqueous", "insoluble", "electrolyte/0/substance"),
        (("Fe3O4",), "aqueous", "insoluble", "electrolyte/0/substance"),
        (("HgCl2",), "aqueous", "non-electrolyte", "electrolyte/0/substance"),
        (("FeI3",), "aqueous", "does-not-exist", "electrolyte/0/substance"),
        (("FeI3",), "solid", "does-not-exist", "electrolyte/0/substance"),
        (("Cu2SO4",), "aqueous", "does-not-exist", "electrolyte/0/substance"),
        (("LiH",), "aqueous", "does-not-exist", "electrolyte/0/substance"),
        (("Na2O2",), "aqueous", "does-not-exist", "electrolyte/0/substance"),
        (("NaCl",), "solid", "ions-cannot-move", "state"),
        (("solid NaCl",), "aqueous", "ions-cannot-move", "state"),
        (("NaCl",), "gaseous", "bad-state", "state"),
        (("NaCl", "NaSO4"), "aqueous", "charges-do-not-cancel", "electrolyte/1/substance"),
        (("NaCl@9 M",), "aqueous", "bad-concentration", "electrolyte/0/concentration"),
        (("HCl@30 M",), "aqueous", "bad-concentration", "electrolyte/0/concentration"),
        (("9 M NaCl",), "aqueous", "bad-concentration", "electrolyte/0/substance"),
        (("CaSO4@0.1 M",), "aqueous", "bad-concentration", "electrolyte/0/concentration"),
        (("NaCl@much",), "aqueous", "bad-concentration", "electrolyte/0/concentration"),
        (("AgNO3", "NaCl"), "aqueous", "precipitates", "electrolyte/1/substance"),
        (("CuSO4", "NaOH"), "aqueous", "precipitates", "electrolyte/1/substance"),
        (("BaCl2", "CuSO4"), "aqueous", "precipitates", "electrolyte/1/substance"),
        (("FeCl3", "KI"), "aqueous", "does-not-exist", "electrolyte/1/substance"),
        (("KMnO4", "FeSO4"), "aqueous", "does-not-exist", "electrolyte/1/substance"),
        (("Na2CO3", "HCl"), "aqueous", "does-not-exist", "electrolyte/1/substance"),
        (("HCl", "NaOH"), "aqueous", "bad-concentration", "electrolyte"),
        (("water",), "molten", "no-melt-of-water", "electrolyte/0/substance"),
        (("H2SO4",), "liquid", "molecular-melt", "electrolyte/0/substance"),
        (("NaCl", "AlCl3", "CuSO4"), "molten", "decomposes-before-melting", "electrolyte/2/substance"),
        ((), "aqueous", "unreadable-formula", "electrolyte"),
        (("NaCl",) * 9, "aqueous", "too-many-substances", "electrolyte"),
    ],
)
def test_what_would_not_work_is_refused_at_its_place(texts, state, code, where):
    fault = refusal(*texts, state=state)
    assert fault.code == code
    assert fault.where == where
    assert fault.detail
    assert fault.remedy


@pytest.mark.parametrize(("ph", "code"), [(float("nan"), "out-of-range"), (30, "out-of-range")])
def test_an_impossible_ph_is_refused(ph, code):
    fault = refusal("NaCl", ph=ph)
    assert (fault.code, fault.where) == (code, "ph")


def test_a_ph_that_destroys_the_solution_is_refused():
    assert refusal("CuSO4", ph=12).code == "precipitates"
    assert refusal("Na2CO3", ph=2).code == "does-not-exist"
    assert refusal("CuSO4", ph=12).where == "ph"


def test_a_refusal_gives_the_rule_or_the_figure_as_its_reason():
    assert "Chlorides, bromides and iodides dissolve in water, except" in refusal("AgCl").detail
    assert "about 0.067 g of it dissolves in 100 g of water" in refusal("PbI2").detail


def test_the_remedy_for_an_insoluble_salt_names_another_or_the_melt():
    assert refusal("CuCO3").remedy == "Take a soluble salt, such as copper(II) sulfate, CuSO4."
    assert (
        refusal("AgCl").remedy == "Take a soluble salt, such as silver nitrate, AgNO3. Or ask for it molten."
    )


def test_hydrogensulfate_counts_as_sulfate_in_water():
    assert refusal("Ba(HSO4)2").code == "insoluble"


def test_the_precipitate_is_named():
    assert "silver chloride, AgCl" in refusal("AgNO3", "NaCl").detail
    assert "silver oxide, Ag2O" in refusal("AgNO3", "NH3").detail


def test_so_little_that_nothing_settles_out_passes():
    made = electrolyte("AgNO3@1e-6 M", "NaCl@1e-6 M")
    assert made.has(ion("Ag^+").species)
    assert refusal("AgNO3@1e-4 M", "NaCl@1e-4 M").code == "precipitates"


def test_a_sparing_pair_without_numbers_is_taken_as_dilute():
    assert "Calcium sulfate dissolves only a little" in electrolyte("CaCl2", "Na2SO4").assumptions[0]
    assert refusal("CaCl2@1 M", "Na2SO4@1 M").code == "precipitates"


def test_acid_and_alkali_neutralise_each_other():
    left = electrolyte("HCl@0.3 M", "NaOH@0.1 M")
    assert left.medium == "acidic"
    assert left.concentration_of(ion("H^+").species) == pytest.approx(0.2)
    none_left = electrolyte("HCl@0.1 M", "NaOH@0.1 M")
    assert none_left.medium == "neutral"
    assert "exactly" in none_left.assumptions[0]


def test_a_mixture_adds_what_its_salts_share():
    assert amounts(electrolyte("CuSO4@0.5 M", "Na2SO4@0.25 M"))["SO4^2-"] == pytest.approx(0.75)
    assert amounts(electrolyte("CuSO4@0.5 M", "Na2SO4"))["SO4^2-"] is None


def test_a_melt_holds_the_ions_of_the_lattice_only():
    made = electrolyte("NaCl", state="molten")
    assert amounts(made) == {"Na^+": None, "Cl^-": None}
    assert made.medium == "molten"
    assert made.melting_point_C == pytest.approx(800.7)


def test_words_choose_the_state():
    assert electrolyte("molten sodium chloride").state == "molten"
    assert electrolyte("NaCl", state="liquid").state == "molten"
    assert electrolyte("NaCl@1 M", state="liquid").state == "aqueous"
    assert (
        electrolyte("sodium chloride solution", state="molten").assumptions[0].startswith("A melt is taken")
    )


def test_the_pick_list_holds_what_works_and_only_that():
    by_formula = {one.formula: one for one in known_electrolytes()}
    assert by_formula["CuSO4"].solubility == "soluble"
    assert not by_formula["CuSO4"].melts
    assert by_formula["PbBr2"].melts
    assert by_formula["AgCl"].melts
    assert "BaSO4" not in by_formula
    assert "FeI3" not in by_formula
    assert "copper sulphate" in by_formula["CuSO4"].names


def test_every_entry_of_the_pick_list_is_answered_in_some_state():
    for one in known_electrolytes():
        state = "molten" if one.melts else "aqueous"
        assert electrolyte(one.formula, state=state).ions, one.formula


@pytest.mark.parametrize(
    ("text", "first"),
    [("cuso4", "CuSO4"), ("copper sulphate", "CuSO4"), ("brine", "NaCl"), ("sodium chlorid", "NaCl")],
)
def test_the_search_puts_the_closest_first(text, first):
    assert search_electrolytes(text)[0].formula == first


def test_the_search_keeps_its_limit():
    assert len(search_electrolytes("", 7)) == 7
    assert search_electrolytes("lighthouse") == ()


def test_what_splits_into_no_ions_is_passed_over_beside_a_salt():
    made = electrolyte("NiSO4@0.25 mol/dm3", "H3BO3@0.5 mol/dm3")
    assert {one.ion.species.ascii for one in made.ions} == {"Ni^2+", "SO4^2-", "H^+", "OH^-"}
    assert made.assumptions == (
        "Boric acid hardly splits into ions; it is taken to change nothing at the electrodes.",
    )
    assert [one.compound.formula for one in made.ingredients] == ["NiSO4", "H3BO3"]
    assert "Sugar does not split" in electrolyte("NaCl", "sugar@10 g/dm3").assumptions[0]
    assert "Iodine does not split" in electrolyte("KI", "I2").assumptions[0]
    indicator = electrolyte("Na2SO4", "universal indicator")
    assert [one.compound.formula for one in indicator.ingredients] == ["Na2SO4"]


@pytest.mark.parametrize(
    ("texts", "state", "code", "where"),
    [
        (("sugar", "water"), "aqueous", "non-electrolyte", "electrolyte/0/substance"),
        (("water", "ethanol", "H3BO3"), "aqueous", "non-electrolyte", "electrolyte/1/substance"),
        (("NaCl", "sand"), "aqueous", "non-electrolyte", "electrolyte/1/substance"),
        (("NaCl", "iron"), "aqueous", "not-an-electrolyte", "electrolyte/1/substance"),
        (("NaCl", "SO3"), "aqueous", "non-electrolyte", "electrolyte/1/substance"),
        (("NaCl", "sugar"), "molten", "molecular-melt", "electrolyte/1/substance"),
        (("NaCl", "sugar@much"), "aqueous", "bad-concentration", "electrolyte/1/concentration"),
    ],
)
def test_what_splits_into_no_ions_needs_a_salt_beside_it(texts, state, code, where):
    fault = refusal(*texts, state=state)
    assert (fault.code, fault.where) == (code, where)


def test_water_in_a_mixture_is_only_the_solvent():
    assert electrolyte("NaCl", "water").assumptions == ()


def test_an_insoluble_ingredient_is_to_be_left_out():
    assert refusal("NaCl", "AgCl").remedy == "Leave the silver chloride out."
    assert "silver nitrate" in refusal("AgCl", "water").remedy


def test_alkali_takes_hydrogen_from_acid_ions_and_sets_ammonia_free():
    carbonate = electrolyte("NaHCO3@1 M", "NaOH@1 M")
    assert carbonate.has(ion("CO3^2-").species)
    assert not carbonate.has(ion("HCO3^-").species)
    ammonia = electrolyte("NH4Cl@1 M", "NaOH@1 M")
    assert amounts(ammonia)["OH^-"] == pytest.approx(0.0042, rel=0.01)
    assert "sets ammonia free" in ammonia.assumptions[0]
    assert refusal("NH4Cl", "NaOH").code == "bad-concentration"
    assert refusal("Ca(HCO3)2@0.1 M", "NaOH@0.2 M").code == "precipitates"


def test_weak_acids_and_their_ions_share_the_hydrogen():
    buffer = amounts(electrolyte("CH3COOH@1 M", "NaOH@0.5 M"))
    assert buffer["H^+"] == pytest.approx(1.82e-5, rel=0.01)
    assert buffer["CH3COO^-"] == pytest.approx(0.5, rel=0.01)
    assert amounts(electrolyte("CH3COONa@1 M", "HCl@1 M"))["H^+"] == pytest.approx(0.00426, rel=0.01)
    assert amounts(electrolyte("NH3@1 M", "NH4Cl@0.5 M"))["OH^-"] == pytest.approx(3.56e-5, rel=0.01)
    assert electrolyte("CH3COOH@1 M", "NH3@1 M").medium == "neutral"


@pytest.mark.parametrize(
    ("texts", "detail", "salt"),
    [
        (("CuSO4@0.1 M", "NH3@1 M"), "as tetraamminecopper(II) ions", "[Cu(NH3)4]SO4"),
        (("NH3@1 M", "AgNO3@0.1 M"), "as diamminesilver(I) ions", "[Ag(NH3)2]NO3"),
        (("ZnSO4@0.1 M", "NaOH@1 M"), "as zincate ions", "Na2[Zn(OH)4]"),
        (("AlCl3@0.1 M", "NaOH@1 M"), "as aluminate ions", "Na[Al(OH)4]"),
        (("Al2(SO4)3@0.1 M", "KOH@1 M"), "as aluminate ions", "K[Al(OH)4]"),
        (("AgNO3@0.1 M", "KCN@1 M"), "as dicyanidoargentate(I) ions", "K[Ag(CN)2]"),
    ],
)
def test_a_solid_that_dissolves_in_excess_says_so_and_names_the_complex_salt(texts, detail, salt):
    fault = refusal(*texts)
    assert fault.code == "precipitates"
    assert detail in fault.detail
    assert fault.remedy.endswith(f"ask for {salt}.")
    assert electrolyte(salt).medium == "alkaline"


def test_a_solid_that_stays_in_excess_is_refused_without_a_complex():
    assert "excess" not in refusal("CuSO4@0.1 M", "NaOH@1 M").detail
    assert "excess" not in refusal("AlCl3@0.1 M", "NH3@1 M").detail
    assert "excess" not in refusal("AlCl3@0.1 M", "Ba(OH)2@0.1 M").detail


def test_acid_destroys_the_complexes_of_ammonia():
    assert refusal("[Cu(NH3)4]SO4", "H2SO4").code == "does-not-exist"
    assert refusal("[Ag(NH3)2]NO3", ph=3).where == "ph"
    assert electrolyte("K3[Fe(CN)6]").medium == "neutral"


@pytest.mark.parametrize("text", ["CrO3", "H2CrO4", "chromic acid"])
def test_chromic_acid_holds_dichromate(text):
    made = electrolyte(f"{text}@1 M")
    assert amounts(made) == pytest.approx({"Cr2O7^2-": 0.5, "H^+": 1.0, "OH^-": 1e-14})
    assert made.assumptions == ("In acid, chromate ions turn into orange dichromate ions.",)
    assert made.solution_name == "chromic acid"


def test_chromate_and_dichromate_follow_the_medium():
    made = electrolyte("K2CrO4@0.1 M", "H2SO4@1 M")
    assert amounts(made)["Cr2O7^2-"] == pytest.approx(0.05)
    assert amounts(made)["H^+"] == pytest.approx(1.9)
    assert made.solution_name == "sulfuric acid and potassium dichromate"
    assert electrolyte("K2CrO4", ph=2).solution_name == "potassium dichromate"
    alkaline = electrolyte("K2Cr2O7@0.1 M", "NaOH@0.4 M")
    assert amounts(alkaline)["CrO4^2-"] == pytest.approx(0.2)
    assert amounts(alkaline)["OH^-"] == pytest.approx(0.2)
    weak = amounts(electrolyte("K2CrO4@0.1 M", "CH3COOH@1 M"))
    assert weak["CH3COO^-"] == pytest.approx(0.1, rel=0.01)
    assert weak["H^+"] == pytest.approx(1.6e-4, rel=0.05)
    assert not electrolyte("K2CrO4").has(ion("Cr2O7^2-").species)
    assert refusal("K2CrO4", "KI", "H2SO4").code == "does-not-exist"


@pytest.mark.parametrize(
    ("text", "ph"), [("H2SO4@1 M", 13), ("H2SO4", 9), ("HCl@0.01 M", 6), ("NaOH@1 M", 2), ("KOH", 5)]
)
def test_a_ph_that_acid_or_alkali_contradicts_is_refused(text, ph):
    fault = refusal(text, ph=ph)
    assert (fault.code, fault.where) == ("out-of-range", "ph")
    assert "contradicts" in fault.detail
    assert fault.remedy


@pytest.mark.parametrize(
    ("text", "ph"), [("H2SO4@1 M", 0), ("NaOH@1 M", 13), ("CH3COOH@0.1 M", 3), ("HCl", 3)]
)
def test_a_ph_that_fits_the_acid_or_alkali_passes(text, ph):
    assert electrolyte(text, ph=ph).ions


@pytest.mark.parametrize(
    ("alkali", "ions", "name"),
    [
        ("0.05 M", {"H2PO4^-": 0.05}, "phosphoric acid and sodium dihydrogenphosphate"),
        ("0.1 M", {"H2PO4^-": 0.1}, "sodium dihydrogenphosphate"),
        (
            "0.15 M",
            {"H2PO4^-": 0.05, "HPO4^2-": 0.05},
            "sodium dihydrogenphosphate and sodium hydrogenphosphate",
        ),
        ("0.3 M", {"PO4^3-": 0.1}, "sodium phosphate"),
        ("0.4 M", {"PO4^3-": 0.1, "OH^-": 0.1}, "sodium hydroxide and sodium phosphate"),
    ],
)
def test_phosphoric_acid_loses_its_hydrogen_step_by_step(alkali, ions, name):
    made = electrolyte("H3PO4@0.1 M", f"NaOH@{alkali}")
    found = amounts(made)
    assert {one: found[one] for one in ions} == pytest.approx(ions)
    assert made.solution_name == name


def test_a_weak_acid_that_is_used_up_is_not_called_weak():
    assert electrolyte("CH3COOH@1 M", "NaOH@1 M").assumptions == (
        "The ethanoic acid and the alkali neutralise each other.",
    )


def test_what_may_not_stand_beside_a_salt_is_to_be_left_out():
    assert refusal("NaCl", "methane").remedy == "Leave the methane out."
    assert refusal("NaCl", "SO3").remedy == "Ask for sulfuric acid, H2SO4."
