"""The account as plain data."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from ionwright.teaching import Prediction, prediction_document

ToldOf = Callable[..., Prediction]


@pytest.fixture(scope="module")
def document_of(told_of: ToldOf) -> Callable[..., dict[str, Any]]:
    def make(*electrolyte: str, notations: frozenset[str] | None = None, **rest: object) -> dict[str, Any]:
        return prediction_document(told_of(*electrolyte, **rest), notations)

    return make


DocumentOf = Callable[..., dict[str, Any]]


def test_a_document_is_plain_data_and_holds_no_null(document_of: DocumentOf) -> None:
    text = json.dumps(document_of("NiSO4", anode="nickel", cathode="steel"))
    assert "null" not in text
    assert json.loads(text)["curriculum"] == {"id": "a-level", "title": "A level"}


def test_a_decided_cell_has_these_members(document_of: DocumentOf) -> None:
    assert list(document_of("CuSO4")) == [
        "curriculum",
        "cell",
        "assumptions",
        "notes",
        "ions",
        "cathode",
        "anode",
        "overall_equation",
        "electron_balance",
        "ratio",
        "solution",
        "cautions",
    ]


def test_an_undecided_cell_leaves_out_what_needs_both_electrodes(document_of: DocumentOf) -> None:
    document = document_of("NaCl", "NaI", curriculum="gcse")
    assert not {"overall_equation", "electron_balance", "ratio", "solution"} & set(document)
    assert document["anode"]["outcome"] == "not-decidable"
    assert not {"half_equation", "also_written"} & set(document["anode"])


def test_the_cell_is_echoed_with_what_was_said_of_it(document_of: DocumentOf) -> None:
    cell = document_of("CuSO4", concentration="0.5 mol/dm3", anode="copper")["cell"]
    assert cell["electrolyte"] == [
        {"formula": "CuSO4", "name": "copper(II) sulfate", "concentration": "0.5 mol/dm3"}
    ]
    assert cell["anode"] == {"material": "copper", "behaviour": "active"}
    assert "temperature" not in cell


def test_a_concentration_that_was_not_said_is_absent_and_a_melt_has_its_temperature(
    document_of: DocumentOf,
) -> None:
    cell = document_of("NaCl", state="molten")["cell"]
    assert cell["electrolyte"] == [{"formula": "NaCl", "name": "sodium chloride"}]
    assert cell["temperature"] == "821 degC"


def test_each_ion_has_its_source_and_its_way(document_of: DocumentOf) -> None:
    ions = {ion["formula"]: ion for ion in document_of("NaCl")["ions"]}
    assert set(ions) == {"Na^+", "Cl^-", "H^+", "OH^-"}
    assert (ions["Na^+"]["moves_towards"], ions["Na^+"]["source"]) == ("cathode", "electrolyte")
    assert (ions["OH^-"]["moves_towards"], ions["OH^-"]["source"]) == ("anode", "water")


def test_exactly_one_process_is_discharged_and_every_other_has_a_reason(document_of: DocumentOf) -> None:
    competition = document_of("CuSO4")["cathode"]["competition"]
    outcomes = {one["half_equation"]["ascii"]: one["outcome"] for one in competition}
    assert [half for half, outcome in outcomes.items() if outcome == "discharged"] == ["Cu^2+ + 2e- -> Cu"]
    assert all(one["because"].endswith(".") for one in competition)


def test_other_accepted_answers_come_with_their_half_equation(document_of: DocumentOf) -> None:
    (other,) = document_of("NaCl", concentration="0.5 mol/dm3")["anode"]["also_accepted"]
    assert other["products"] == ["Cl2"]
    assert other["half_equation"]["ascii"] == "2Cl^- -> Cl2 + 2e-"


def test_spectators_are_told_where_they_move(document_of: DocumentOf) -> None:
    (spectator,) = document_of("KNO3")["anode"]["spectators"]
    assert spectator["formula"] == "NO3^-"
    assert spectator["because"].startswith("Nitrate ions move to the anode but are not discharged")


def test_products_have_name_and_state(document_of: DocumentOf) -> None:
    (bromine,) = document_of("PbBr2", state="molten")["anode"]["products"]
    assert (bromine["formula"], bromine["name"], bromine["state"]) == ("Br2", "bromine", "g")


def test_tests_name_their_product(document_of: DocumentOf) -> None:
    (test,) = document_of("Na2SO4")["cathode"]["tests"]
    assert (test["product"], test["result"]) == ("H2", "The gas burns with a squeaky pop.")


def test_balance_and_ratio_are_whole_numbers(document_of: DocumentOf) -> None:
    document = document_of("CuSO4")
    assert document["electron_balance"] == {"cathode_multiplier": 2, "anode_multiplier": 1, "electrons": 4}
    assert document["ratio"] == {
        "moles": [{"formula": "Cu", "value": 2}, {"formula": "O2", "value": 1}],
        "gas_volumes": [{"formula": "O2", "value": 1}],
    }


def test_the_change_of_the_solution_is_told_by_ion(document_of: DocumentOf) -> None:
    solution = document_of("CuSO4")["solution"]
    assert solution["ions_removed"] == ["Cu^2+"]
    assert solution["ions_formed"] == ["H^+"]
    assert (solution["ions_remaining"], solution["precipitates"], solution["ph"]) == (["SO4^2-"], [], "falls")


def test_fewer_notations_can_be_asked_for_but_ascii_is_always_there(document_of: DocumentOf) -> None:
    every = document_of("CuSO4")["overall_equation"]
    few = document_of("CuSO4", notations=frozenset({"text"}))["overall_equation"]
    assert {"ascii", "text"} <= set(few) < set(every)
    assert few["ascii"] == every["ascii"] == "2Cu^2+ + 2H2O -> 2Cu + O2 + 4H^+"
