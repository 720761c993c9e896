"""Laws that hold for every cell the tables can make: each answer balances, is possible, is told in sentences."""

import json
import re
from collections.abc import Iterator
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.compound import compound_of
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.equation import Equation, read_equation
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.species import species
from ionwright.curricula import Curriculum, verdict
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import Prediction, predict, prediction_document

REGISTRY = load_curricula()
CATIONS = [ion for ion in IONS.values() if ion.species.charge > 0]
ANIONS = [ion for ion in IONS.values() if ion.species.charge < 0]
CONCENTRATIONS = (None, "dilute", "concentrated", "0.01 mol/dm3", "2.0 mol/dm3")
GROUP_1_AND_2 = {"Li", "Na", "K", "Rb", "Cs", "Be", "Mg", "Ca", "Sr", "Ba", "Al"}
SENTENCE = re.compile(r"[A-Z0-9−+(\[].*[.!]\Z", re.DOTALL)


def cell_or_none(description: CellDescription) -> Cell | None:
    """The cell, or None for a refusal that tells what is wrong and where."""
    try:
        return make_cell(description)
    except IonwrightError as refusal:
        check_refusal(refusal)
        return None


def check_refusal(refusal: IonwrightError) -> None:
    assert refusal.code
    assert SENTENCE.match(refusal.detail), refusal.detail
    assert refusal.where, (refusal.code, refusal.detail)


def equations(prediction: Prediction) -> Iterator[Equation]:
    for account in (prediction.cathode, prediction.anode):
        if account.half_equation:
            yield account.half_equation
        yield from account.also_written
        for process in account.verdict.competition.processes:
            yield from (half for _, half in process.forms)
    if prediction.accounts:
        yield prediction.accounts.combined.overall


def check_laws(cell: Cell, curriculum: Curriculum) -> None:
    prediction = predict(cell, curriculum)
    check_equations(prediction)
    check_what_is_possible(prediction)
    check_sentences(prediction)
    if not cell.is_molten and cell.cathode.id != "mercury":
        formed = {kind.formula for kind in prediction.cathode.products if not kind.charge}
        assert not formed & GROUP_1_AND_2


def check_equations(prediction: Prediction) -> None:
    for one in equations(prediction):
        assert one.is_balanced, one
    cathode, anode = prediction.cathode.half_equation, prediction.anode.half_equation
    if cathode:
        assert cathode.electrons > 0
    if anode:
        assert anode.electrons < 0
    if cathode and anode and prediction.accounts:
        combined = prediction.accounts.combined
        assert cathode.electrons * combined.reduction_multiplier == combined.electrons
        assert -anode.electrons * combined.oxidation_multiplier == combined.electrons
        assert combined.overall.electrons == 0
        assert all(share.value >= 1 for share in prediction.accounts.moles)


def check_what_is_possible(prediction: Prediction) -> None:
    cell = prediction.cell
    present = {p.ion.species for p in cell.electrolyte.ions} | {
        species(cell.anode.metal or "C"),
        species("C"),
    }
    if not cell.is_molten:
        present.add(species("H2O"))
    if any("(CN)" in kind.formula for kind in cell.own_ions):
        present.add(species("CN^-"))  # the complex gives some of its ligand up, and the cathode frees more
    for account in (prediction.cathode, prediction.anode):
        if account.half_equation:
            assert set(account.half_equation.reactants) <= present, account.half_equation
        assert (
            account.verdict.chosen is None or account.verdict.chosen in account.verdict.competition.processes
        )


def check_sentences(prediction: Prediction) -> None:
    document = prediction_document(prediction)
    sentences = [*document["assumptions"], *(caution["text"] for caution in document["cautions"])]
    for name in ("cathode", "anode"):
        account = document[name]
        sentences += account["because"] + account["observations"]
        sentences += [
            one["because"] for key in ("competition", "also_accepted", "spectators") for one in account[key]
        ]
        sentences += [text for test in account["tests"] for text in (test["test"], test["result"])]
        assert account["because"]
        assert account["outcome"] == ("decided" if account["products"] else "not-decidable")
        if account["outcome"] == "decided":
            assert account["observations"]
            assert sum(one["outcome"] == "discharged" for one in account["competition"]) == 1
    if "solution" in document:
        sentences.append(document["solution"]["summary"])
    for sentence in sentences:
        assert SENTENCE.match(sentence), sentence
        assert not re.search(r"None|[{}]|  |\.\.|\bions ions\b| ,", sentence), sentence


def salt(cation: object, anion: object) -> str:
    return compound_of(cation, anion).formula


@pytest.mark.parametrize("cation", CATIONS, ids=lambda ion: ion.species.ascii)
def test_every_salt_in_both_states_obeys_the_laws(cation: object) -> None:
    answered = 0
    for anion, state, concentration in product(ANIONS, ("aqueous", "molten"), CONCENTRATIONS):
        if state == "molten" and concentration is not None:
            continue
        cell = cell_or_none(
            CellDescription(electrolyte=(Ingredient(salt(cation, anion), concentration),), state=state)
        )
        for curriculum in REGISTRY.values() if cell else ():
            check_laws(cell, curriculum)
            answered += 1
    unstable = bool(cation.unstable)
    assert answered or unstable, "a cation with no cell at all"


SALTS = (
    "NaCl",
    "CuSO4",
    "AgNO3",
    "ZnSO4",
    "KI",
    "H2SO4",
    "NaOH",
    "Pb(NO3)2",
    "NiCl2",
    "Na2CO3",
    "HgCl2",
    "FeCl3",
)
MELTS = ("PbBr2", "NaCl", "Al2O3", "KI", "Na2CO3", "NaOH")


@pytest.mark.parametrize("anode", electrodes())
def test_every_pair_of_electrodes_obeys_the_laws(anode: str) -> None:
    answered = 0
    cells = [(formula, "aqueous") for formula in SALTS] + [(formula, "molten") for formula in MELTS]
    for (formula, state), cathode in product(cells, electrodes()):
        description = CellDescription(
            electrolyte=(Ingredient(formula),), state=state, cathode=cathode, anode=anode
        )
        cell = cell_or_none(description)
        for curriculum in REGISTRY.values() if cell else ():
            check_laws(cell, curriculum)
            answered += 1
    assert answered


@settings(max_examples=300, deadline=None)
@given(
    pairs=st.lists(st.tuples(st.sampled_from(CATIONS), st.sampled_from(ANIONS)), min_size=2, max_size=4),
    state=st.sampled_from(["aqueous", "molten"]),
    concentration=st.sampled_from(CONCENTRATIONS),
    anode=st.sampled_from(sorted(electrodes())),
    cathode=st.sampled_from(sorted(electrodes())),
    ph=st.none() | st.floats(min_value=0, max_value=14),
)
def test_mixtures_obey_the_laws(
    *,
    pairs: list[tuple[object, object]],
    state: str,
    concentration: str | None,
    anode: str,
    cathode: str,
    ph: float | None,
) -> None:
    ingredients = tuple(Ingredient(salt(cation, anion), concentration) for cation, anion in pairs)
    cell = cell_or_none(
        CellDescription(electrolyte=ingredients, state=state, cathode=cathode, anode=anode, ph=ph)
    )
    for curriculum in REGISTRY.values() if cell else ():
        check_laws(cell, curriculum)


@given(formula=st.sampled_from(SALTS), curriculum=st.sampled_from(sorted(REGISTRY)))
def test_the_same_cell_gives_the_same_bytes(formula: str, curriculum: str) -> None:
    description = CellDescription(electrolyte=(Ingredient(formula),), anode="copper")
    cell = cell_or_none(description)
    if cell:
        first, second = (
            json.dumps(prediction_document(predict(make_cell(description), REGISTRY[curriculum])))
            for _ in range(2)
        )
        assert first == second


@given(formula=st.sampled_from(SALTS), curriculum=st.sampled_from(sorted(REGISTRY)))
def test_the_ascii_of_every_equation_reads_back_balanced(formula: str, curriculum: str) -> None:
    cell = cell_or_none(CellDescription(electrolyte=(Ingredient(formula),)))
    if cell:
        document = prediction_document(predict(cell, REGISTRY[curriculum]), frozenset({"ascii"}))
        written = [
            one["half_equation"]["ascii"]
            for name in ("cathode", "anode")
            for one in document[name]["competition"]
        ]
        assert written
        assert all(read_equation(text).is_balanced for text in written)


@settings(max_examples=150, deadline=None)
@given(
    formula=st.sampled_from(SALTS),
    concentrations=st.lists(st.sampled_from(CONCENTRATIONS), min_size=2, max_size=4),
    anode=st.sampled_from(["graphite", "copper", "nickel", "silver"]),
    curriculum=st.sampled_from(sorted(REGISTRY)),
)
def test_what_is_kept_from_like_cells_is_what_a_fresh_judgement_gives(
    formula: str, concentrations: list[str | None], anode: str, curriculum: str
) -> None:
    cells = [
        cell_or_none(CellDescription(electrolyte=(Ingredient(formula, one),), anode=anode))
        for one in concentrations
    ]
    kept = [prediction_document(predict(cell, REGISTRY[curriculum])) for cell in cells if cell]
    for cell, document in zip([cell for cell in cells if cell], kept, strict=True):
        verdict._judged.cache_clear()
        assert prediction_document(predict(cell, REGISTRY[curriculum])) == document
