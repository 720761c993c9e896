"""Laws of matter, over every combination of ions in the tables and over random text."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ionwright.chemistry.compound import compound_of, read_substance
from ionwright.chemistry.concentration import read_concentration
from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte
from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ion import IONS
from ionwright.errors import IonwrightError

CATIONS = [one for one in IONS.values() if one.charge > 0]
ANIONS = [one for one in IONS.values() if one.charge < 0]
CONCENTRATIONS = [None, "dilute", "concentrated", "0.001 mol/dm3", "0.1 mol/dm3", "1 mol/dm3"]
PIECES = [
    *(
        "Na",
        "Cu",
        "Fe",
        "H",
        "O",
        "S",
        "Cl",
        "SO4",
        "OH",
        "5H2O",
        "(",
        ")",
        "[",
        "]",
        "2",
        "4",
        ".",
        "·",
        " ",
        "+",
        "-",
    ),
    *(
        "^",
        "²",
        "→",
        "∑",
        "acid",
        "copper",
        "sulfate",
        "dilute",
        "molten",
        "(II)",
        "hydrate",
        "0.5 M",
        "\u0000",
    ),
]


def answer(formula, state, concentration):
    """The electrolyte, or the refusal; anything else fails the test that asks."""
    try:
        return make_electrolyte((Ingredient(formula, concentration),), state, None), None
    except IonwrightError as fault:
        return None, fault


def assert_told(fault, code=None):
    assert fault.code
    assert fault.detail
    assert code in {None, fault.code}


def assert_told_where(fault):
    assert_told(fault)
    assert fault.where


@pytest.mark.parametrize("state", ["aqueous", "molten"])
@pytest.mark.parametrize("cation", CATIONS, ids=lambda one: one.species.ascii)
def test_every_pair_of_ions_is_a_neutral_electrolyte_or_a_told_refusal(cation, state):
    for anion, concentration in product(ANIONS, CONCENTRATIONS):
        made, fault = answer(compound_of(cation, anion).formula, state, concentration)
        if fault is not None:
            assert_told_where(fault)
            continue
        assert made.state == state
        for one in made.ingredients:
            for ions in (one.compound.ions, one.compound.lattice_ions):
                assert sum(present.charge * count for present, count in ions) == 0
        assert made.cations
        assert made.anions
        amounts = [one.concentration for one in made.ions]
        assert all(amount is None or amount > 0 for amount in amounts)
        if state == "aqueous":
            assert {"H^+", "OH^-"} <= {one.ion.species.ascii for one in made.ions}


@pytest.mark.parametrize("cation", CATIONS, ids=lambda one: one.species.ascii)
def test_the_atoms_of_a_formula_are_the_atoms_of_its_ions(cation):
    for anion in ANIONS:
        compound = compound_of(cation, anion)
        if compound.formula in ("NH3", "H2O"):
            continue
        counted = {}
        for one, count in compound.lattice_ions:
            for symbol, number in one.species.atoms:
                counted[symbol] = counted.get(symbol, 0) + number * count
        assert read_formula(compound.formula).composition == counted


@pytest.mark.parametrize("cation", CATIONS, ids=lambda one: one.species.ascii)
def test_formula_and_name_lead_to_each_other(cation):
    for anion in ANIONS:
        compound = compound_of(cation, anion)
        try:
            by_formula = read_substance(compound.formula).compound
        except IonwrightError:
            # peroxides and hydrides of other metals, and the hydrogen compounds of lattice ions, are refused
            assert anion.lattice_only or cation.species.ascii == "H^+", compound.formula
            continue
        by_name = read_substance(by_formula.name)
        assert by_name.compound == by_formula
        assert by_name.assumptions == ()


@given(st.text(max_size=60))
def test_random_text_is_read_or_refused(text):
    try:
        assert read_substance(text).compound.formula
    except IonwrightError as fault:
        assert_told(fault)


@given(st.lists(st.sampled_from(PIECES), max_size=9).map("".join))
def test_random_chemistry_is_read_or_refused(text):
    try:
        compound = read_substance(text).compound
    except IonwrightError as fault:
        assert_told(fault)
    else:
        assert sum(one.charge * count for one, count in compound.ions) == 0


@given(
    st.text(max_size=30) | st.from_regex(r"\A-?[0-9]{1,5}[.,]?[0-9]{0,3} ?(mol|M|g|mmol)?(/dm3|/L| dm-3)?\Z")
)
def test_a_random_concentration_is_read_or_refused(text):
    try:
        read = read_concentration(text)
    except IonwrightError as fault:
        assert_told(fault, "bad-concentration")
    else:
        assert read.word or (read.mol_dm3 or read.g_dm3) > 0


SOLUBLE = [
    *(
        "NaCl",
        "KI",
        "CuSO4",
        "AgNO3",
        "FeCl3",
        "Na2CO3",
        "NaOH",
        "HCl",
        "NH3",
        "KMnO4",
        "Pb(NO3)2",
        "CaCl2",
        "NH4Cl",
    ),
    *("CH3COOH", "Na2S", "KCN", "NaClO", "MgSO4", "ZnSO4", "Ba(OH)2", "SnCl2", "water", "NaHSO4"),
]


AMOUNTS = st.sampled_from(["0.01 M", "0.05 M", "0.1 M", "0.2 M", "1 M"])
REACTING = [
    "HCl",
    "H2SO4",
    "NaOH",
    "KOH",
    "NH3",
    "NH4Cl",
    "CH3COOH",
    "CH3COONa",
    "NaHCO3",
    "NaHSO4",
    "KF",
    "K2CrO4",
]


@given(
    st.lists(
        st.tuples(st.sampled_from([*REACTING, "H2CrO4", "K2Cr2O7", "NaCl", "sugar"]), AMOUNTS), max_size=4
    )
)
def test_the_charges_of_a_mixture_cancel_and_nothing_is_negative(given_substances):
    try:
        made = make_electrolyte(tuple(Ingredient(*one) for one in given_substances), "aqueous", None)
    except IonwrightError as fault:
        assert_told_where(fault)
        return
    assert made.solution_name
    assert all(one.concentration > 0 for one in made.ions)
    assert sum(one.concentration * one.ion.charge for one in made.ions) == pytest.approx(0, abs=1e-6)


@given(
    st.lists(st.sampled_from(["NaOH", "H3PO4", "NaH2PO4", "Na2HPO4", "Na3PO4"]), min_size=2, max_size=4),
    AMOUNTS,
)
def test_phosphorus_is_kept_as_phosphoric_acid_loses_its_hydrogen(substances, amount):
    try:
        made = make_electrolyte(tuple(Ingredient(one, amount) for one in substances), "aqueous", None)
    except IonwrightError as fault:
        assert_told_where(fault)
        return
    put_in = sum("P" in one for one in substances) * float(amount.removesuffix(" M"))
    found = sum(one.concentration for one in made.ions if ("P", 1) in one.ion.species.atoms)
    assert found <= put_in * (1 + 1e-9)
    if "phosphoric acid" not in made.solution_name:
        assert found == pytest.approx(put_in)


@pytest.mark.parametrize("concentration", [None, "0.1 M", "dilute"])
def test_every_mixture_of_two_is_answered_or_told(concentration):
    for first, second in product(SOLUBLE, repeat=2):
        pair = (Ingredient(first, concentration), Ingredient(second, concentration))
        try:
            made = make_electrolyte(pair, "aqueous", None)
        except IonwrightError as fault:
            assert_told_where(fault)
        else:
            assert made.cations
            assert made.anions
