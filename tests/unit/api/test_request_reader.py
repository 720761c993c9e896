"""Reading requests: what is accepted, how it is understood, and what each fault says."""

from __future__ import annotations

from typing import Any

import pytest

from ionwright.api.problems import Problem
from ionwright.api.request_reader import PredictionRequest, place_of, read_prediction_request
from ionwright.chemistry.notation import NOTATIONS


def read(**members: Any) -> PredictionRequest:
    return read_prediction_request({"electrolyte": "NiSO4", "curriculum": "gcse"} | members)


def faults(**members: Any) -> list[dict[str, Any]]:
    with pytest.raises(Problem) as caught:
        read(**members)
    assert caught.value.kind.code == "validation-error"
    assert caught.value.status == 422
    return list(caught.value.document()["errors"])


def ingredients(request: PredictionRequest) -> list[tuple[str, str | None]]:
    return [(i.substance, i.concentration) for i in request.cell.electrolyte]


def test_what_is_left_out_is_the_usual_cell() -> None:
    cell = read().cell
    assert (cell.state, cell.cathode, cell.anode, cell.supply) == ("aqueous", "graphite", "graphite", "dc")
    assert (cell.temperature, cell.ph, cell.current_density) == (None, None, None)


@pytest.mark.parametrize(
    ("electrolyte", "concentration", "expected"),
    [
        ("NiSO4", None, [("NiSO4", None)]),
        ("  NiSO4 ", "0.25 mol/dm3", [("NiSO4", "0.25 mol/dm3")]),
        ("NaCl@0.5 mol/dm3", "1 mol/dm3", [("NaCl", "0.5 mol/dm3")]),
        ("NaCl @ dilute", None, [("NaCl", "dilute")]),
        ({"substance": "KI", "concentration": "0.1 mol/dm3"}, None, [("KI", "0.1 mol/dm3")]),
        (["NaCl", "KI"], "0.1 mol/dm3", [("NaCl", "0.1 mol/dm3"), ("KI", "0.1 mol/dm3")]),
        (
            ["NaCl@0.5 mol/dm3", {"substance": "KI"}, {"substance": "KBr", "concentration": "dilute"}],
            "concentrated",
            [("NaCl", "0.5 mol/dm3"), ("KI", "concentrated"), ("KBr", "dilute")],
        ),
    ],
)
def test_electrolytes_in_all_their_forms(
    electrolyte: Any, concentration: str | None, expected: list[tuple[str, str | None]]
) -> None:
    members: dict[str, Any] = {"electrolyte": electrolyte}
    if concentration is not None:
        members["concentration"] = concentration
    assert ingredients(read(**members)) == expected


def test_a_quantity_may_be_a_number_with_a_unit() -> None:
    request = read(
        concentration={"value": 0.25, "unit": "mol/dm3"}, temperature={"value": 25, "unit": "degC"}
    )
    assert ingredients(request) == [("NiSO4", "0.25 mol/dm3")]
    assert request.cell.temperature == "25 degC"


@pytest.mark.parametrize(
    ("notation", "expected"),
    [
        ("html", {"ascii", "html"}),
        (" html , text ", {"ascii", "html", "text"}),
        (["latex"], {"ascii", "latex"}),
        (list(NOTATIONS), None),
    ],
)
def test_notations_are_a_set_that_always_holds_ascii(notation: Any, expected: set[str] | None) -> None:
    assert read(notation=notation).notations == (expected if expected is None else frozenset(expected))


def test_equal_requests_are_equal_whatever_their_form() -> None:
    one = read(concentration="0.25 mol/dm3", notation="text,html")
    other = read(concentration={"value": 0.25, "unit": "mol/dm3"}, notation=["html", "text"], state="aqueous")
    assert one == other
    assert hash(one) == hash(other)


@pytest.mark.parametrize(
    ("members", "pointer", "code", "words"),
    [
        ({"catode": "steel"}, "/catode", "unknown-field", 'Did you mean "cathode"?'),
        ({"syllabus": "gcse"}, "/syllabus", "unknown-field", 'Did you mean "curriculum"?'),
        ({"pH": 4}, "/pH", "unknown-field", 'Did you mean "ph"?'),
        ({"a/b~c": 1}, "/a~1b~0c", "unknown-field", "The fields here are electrolyte,"),
        ({"electrolyte": 5}, "/electrolyte", "wrong-type", "is a number; it has to be a formula"),
        ({"electrolyte": None}, "/electrolyte", "wrong-type", "is null. Leave the field out"),
        ({"electrolyte": ""}, "/electrolyte", "empty", 'Write for example "NiSO4"'),
        ({"electrolyte": "   "}, "/electrolyte", "empty", 'Write for example "NiSO4"'),
        ({"electrolyte": []}, "/electrolyte", "empty", "Name at least one substance"),
        ({"electrolyte": ["NaCl"] * 13}, "/electrolyte", "too-many", "12 substances at most, and has 13"),
        ({"electrolyte": "N" * 201}, "/electrolyte", "too-long", "200 characters, and has 201"),
        ({"electrolyte": "NaCl@"}, "/electrolyte", "empty", "nothing after the @"),
        ({"electrolyte": "@1 mol/dm3"}, "/electrolyte", "empty", "nothing before the @"),
        ({"electrolyte": "Na\x00Cl"}, "/electrolyte", "unwanted-character", "U+0000"),
        ({"electrolyte": "Na\ud800Cl"}, "/electrolyte", "unwanted-character", "U+D800"),
        (
            {"electrolyte": ["NaCl", 7]},
            "/electrolyte/1",
            "wrong-type",
            'Entry 2 of "electrolyte" is a number',
        ),
        ({"electrolyte": [["NaCl"]]}, "/electrolyte/0", "wrong-type", "is a list"),
        ({"electrolyte": {}}, "/electrolyte/substance", "missing-field", 'lacks its "substance"'),
        (
            {"electrolyte": [{"substance": "KI", "concentraton": "1 M"}]},
            "/electrolyte/0/concentraton",
            "unknown-field",
            'Did you mean "concentration"?',
        ),
        ({"concentration": 0.25}, "/concentration", "wrong-type", "a text with its unit"),
        ({"concentration": True}, "/concentration", "wrong-type", "is true"),
        ({"concentration": {"value": 1}}, "/concentration/unit", "missing-field", 'lacks its "unit"'),
        ({"concentration": {"unit": "M"}}, "/concentration/value", "missing-field", 'lacks its "value"'),
        ({"concentration": {"value": "1", "unit": "M"}}, "/concentration/value", "wrong-type", "is a text"),
        ({"state": 1}, "/state", "wrong-type", "it has to be a text"),
        ({"cathode": ["steel"]}, "/cathode", "wrong-type", "is a list; it has to be a text"),
        ({"supply": " "}, "/supply", "empty", "dc"),
        ({"ph": "7"}, "/ph", "wrong-type", "it has to be a number"),
        ({"ph": True}, "/ph", "wrong-type", "is true"),
        ({"ph": 15}, "/ph", "out-of-range", "between 0 and 14"),
        ({"ph": 10**400}, "/ph", "out-of-range", "between 0 and 14"),
        ({"notation": "htm"}, "/notation", "not-a-choice", 'Did you mean "html"?'),
        ({"notation": ["html", "braille"]}, "/notation/1", "not-a-choice", "The notations are tokens"),
        ({"notation": []}, "/notation", "empty", "Leave it out to have all"),
        ({"notation": ["html"] * 21}, "/notation", "too-many", "1 to 20 notations"),
        ({"notation": 5}, "/notation", "wrong-type", "a list of notations"),
        ({"language": "de"}, "/language", "not-a-choice", 'it can be "en"'),
        ({"curriculum": 7}, "/curriculum", "wrong-type", "is a number"),
    ],
)
def test_each_fault_names_its_field_and_what_would_be_right(
    members: dict[str, Any], pointer: str, code: str, words: str
) -> None:
    (fault,) = faults(**members)
    assert fault["in"] == "body"
    assert (fault["pointer"], fault["code"]) == (pointer, code)
    assert words in fault["detail"]


def test_all_faults_come_at_once() -> None:
    with pytest.raises(Problem) as caught:
        read_prediction_request({"anode": 5, "catode": "steel"})
    found = [error["pointer"] for error in caught.value.document()["errors"]]
    assert found == ["/catode", "/electrolyte", "/anode", "/curriculum"]
    assert caught.value.detail.startswith("4 things are wrong in this request. First: There is no field")


@pytest.mark.parametrize("data", [None, True, 3, "NiSO4", ["NiSO4"]])
def test_a_body_that_is_no_object_is_refused_as_a_whole(data: Any) -> None:
    with pytest.raises(Problem) as caught:
        read_prediction_request(data)
    (error,) = caught.value.document()["errors"]
    assert (error["pointer"], error["code"]) == ("", "wrong-type")


def test_a_long_list_of_faults_is_cut() -> None:
    assert len(faults(**{f"field{number}": 1 for number in range(500)})) == 20


@pytest.mark.parametrize(
    ("members", "where", "position", "expected"),
    [
        ({"electrolyte": "Ni?"}, "electrolyte/0/substance", 2, (("electrolyte",), 2)),
        ({"electrolyte": "  Ni?"}, "electrolyte/0/substance", 2, (("electrolyte",), 4)),
        ({"electrolyte": ["K", "Ni?"]}, "electrolyte/1/substance", 2, (("electrolyte", 1), 2)),
        (
            {"electrolyte": [{"substance": "Ni?"}]},
            "electrolyte/0/substance",
            2,
            (("electrolyte", 0, "substance"), 2),
        ),
        (
            {"electrolyte": {"substance": "Ni?"}},
            "electrolyte/0/substance",
            2,
            (("electrolyte", "substance"), 2),
        ),
        ({"electrolyte": "Ni@ 1 x"}, "electrolyte/0/concentration", 2, (("electrolyte",), 6)),
        (
            {"electrolyte": "Ni", "concentration": "1 x"},
            "electrolyte/0/concentration",
            2,
            (("concentration",), 2),
        ),
        (
            {"electrolyte": [{"substance": "Ni"}], "concentration": "1 x"},
            "electrolyte/0/concentration",
            2,
            (("concentration",), 2),
        ),
        (
            {"electrolyte": [{"substance": "Ni", "concentration": {"value": 1, "unit": "x"}}]},
            "electrolyte/0/concentration",
            2,
            (("electrolyte", 0, "concentration"), None),
        ),
        ({"electrolyte": "Ni", "cathode": " wood"}, "cathode", 0, (("cathode",), 1)),
        ({"electrolyte": ["Na", "K"]}, "electrolyte", None, (("electrolyte",), None)),
        ({"electrolyte": "Na"}, "", None, ((), None)),
    ],
)
def test_a_refusal_is_placed_in_the_request_as_it_was_sent(
    members: dict[str, Any],
    where: str,
    position: int | None,
    expected: tuple[tuple[str | int, ...], int | None],
) -> None:
    assert place_of(members, where, position) == expected
