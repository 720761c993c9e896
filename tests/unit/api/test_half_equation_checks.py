"""Checks over HTTP: one line or a class set, never cached, never logged, never a problem because of the line."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.api import marking_desk

if TYPE_CHECKING:
    from flask.testing import FlaskClient

BRINE = {"electrolyte": "NaCl", "concentration": "concentrated", "curriculum": "igcse"}
QUESTION = {"cell": BRINE, "electrode": "cathode", "notation": ["ascii"]}
GIVEN = {"expected": ["2Cl^- -> Cl2 + 2e-"], "curriculum": "gcse", "notation": "ascii"}
CHECK, BATCH = "/v1/half-equations/check", "/v1/half-equations/check/batch"


def test_a_line_is_marked(client: FlaskClient) -> None:
    answer = client.post(CHECK, json={"answer": "2H+ + 2e- -> H2", "ref": "seat 14", **QUESTION})
    assert answer.status_code == 200
    assert (answer.json["ref"], answer.json["verdict"]) == ("seat 14", "correct")
    assert answer.json["marks"]["awarded"] == 2


@pytest.mark.parametrize(
    "line", ["", " ", "Na+ + e- -> Na", "?", "(" * 5000, "2H+ + 2e- \x00 H2", "e" * 100_000]
)
def test_no_line_is_a_problem(client: FlaskClient, line: str) -> None:
    answer = client.post(CHECK, json={"answer": line, **QUESTION})
    assert answer.status_code == 200
    assert answer.json["verdict"] in ("incorrect", "unreadable")
    assert answer.json["faults"]


def test_answers_are_not_to_be_stored(client: FlaskClient) -> None:
    for path, body in ((CHECK, {"answer": "x", **GIVEN}), (BATCH, {"items": [{"answer": "x"}], **GIVEN})):
        headers = client.post(path, json=body).headers
        assert headers["Cache-Control"] == "no-store"
        assert "ETag" not in headers


@pytest.mark.parametrize("path", [CHECK, BATCH])
def test_pupils_answers_never_stand_in_an_address(client: FlaskClient, path: str) -> None:
    assert client.get(path, query_string={"answer": "x"}).status_code == 405
    refused = client.post(f"{path}?answer=x", json={"answer": "x", **GIVEN})
    assert (refused.status_code, refused.json["errors"][0]["parameter"]) == (422, "answer")


@pytest.mark.parametrize(
    ("members", "pointer", "code"),
    [
        ({}, "/answer", "missing-field"),
        ({"answer": None, **GIVEN}, "/answer", "wrong-type"),
        ({"answer": 5, **GIVEN}, "/answer", "wrong-type"),
        ({"answer": "x", "ref": 14, **GIVEN}, "/ref", "wrong-type"),
        ({"answer": "x", "ref": "r" * 201, **GIVEN}, "/ref", "too-long"),
        ({"answer": "x"}, "/cell", "missing-field"),
        ({"answer": "x", "cell": BRINE}, "/electrode", "missing-field"),
        ({"answer": "x", "cell": BRINE, "electrode": "cathod"}, "/electrode", "not-a-choice"),
        ({"answer": "x", "cell": "NaCl", "electrode": "anode"}, "/cell", "wrong-type"),
        ({"answer": "x", "cell": {}, "electrode": "anode"}, "/cell/electrolyte", "missing-field"),
        ({"answer": "x", **QUESTION, "expected": ["x"]}, "/expected", "unknown-field"),
        ({"answer": "x", **GIVEN, "electrode": "anode"}, "/electrode", "unknown-field"),
        ({"answer": "x", **QUESTION, "written_as": "backwards"}, "/written_as", "not-a-choice"),
        ({"answer": "x", **QUESTION, "state_symbols": "yes"}, "/state_symbols", "wrong-type"),
        ({"answer": "x", **QUESTION, "curriculum": "gcse"}, "/curriculum", "not-a-choice"),
        ({"answer": "x", "expected": []}, "/curriculum", "missing-field"),
        ({"answer": "x", **GIVEN, "expected": []}, "/expected", "empty"),
        ({"answer": "x", **GIVEN, "expected": [5]}, "/expected/0", "wrong-type"),
        ({"answer": "x", **GIVEN, "expected": " "}, "/expected", "empty"),
        ({"answer": "x", **GIVEN, "expected": ["x"] * 21}, "/expected", "too-many"),
        ({"answer": "x", **GIVEN, "notation": "braille"}, "/notation", "not-a-choice"),
        ({"answr": "x", **GIVEN}, "/answr", "unknown-field"),
    ],
)
def test_what_is_wrong_with_the_request_is_named(
    client: FlaskClient, members: Any, pointer: str, code: str
) -> None:
    answer = client.post(CHECK, json=members)
    assert answer.status_code == 422
    assert answer.json["code"] == "validation-error"
    assert (pointer, code) in [(error["pointer"], error["code"]) for error in answer.json["errors"]]


@pytest.mark.parametrize(
    ("members", "pointer", "code"),
    [
        (
            {**QUESTION, "cell": {"electrolyte": "CaCO3", "curriculum": "gcse"}},
            "/cell/electrolyte",
            "insoluble",
        ),
        (
            {**QUESTION, "cell": {"electrolyte": "CaCO3", "curriculum": "gcsee"}},
            "/cell/electrolyte",
            "insoluble",
        ),
        ({**QUESTION, "cell": {**BRINE, "curriculum": "gcsee"}}, "/cell/curriculum", "unknown-curriculum"),
        (
            {"cell": {"electrolyte": "NaCl"}, "electrode": "anode", "curriculum": "gcsee"},
            "/curriculum",
            "unknown-curriculum",
        ),
        (
            {**QUESTION, "cell": {"electrolyte": "MnSO4", "curriculum": "igcse"}},
            "/electrode",
            "expectation-undecided",
        ),
        ({**GIVEN, "curriculum": "gcsee"}, "/curriculum", "unknown-curriculum"),
        ({**GIVEN, "expected": ["Cl^- -> Cl2"]}, "/expected/0", "expectation-unbalanced"),
        ({**GIVEN, "expected": "Cl^- -> Cl2"}, "/expected", "expectation-unbalanced"),
        ({**GIVEN, "expected": ["H2 + Cl2 -> 2HCl"]}, "/expected/0", "expectation-without-electrons"),
        ({**GIVEN, "expected": ["Cl^- -> ?"]}, "/expected/0", "unreadable-formula"),
    ],
)
def test_a_question_that_cannot_be_asked_is_refused_at_its_place(
    client: FlaskClient, members: Any, pointer: str, code: str
) -> None:
    answer = client.post(CHECK, json={"answer": "x", **members})
    assert (answer.status_code, answer.json["code"]) == (422, code)
    assert answer.json["errors"][0]["pointer"] == pointer


def test_the_curriculum_may_stand_beside_the_cell(client: FlaskClient) -> None:
    body = {"answer": "2H+ + 2e- -> H2", "cell": {"electrolyte": "NaCl"}, "electrode": "cathode"}
    assert client.post(CHECK, json={**body, "curriculum": "gcse"}).json["verdict"] == "correct"


def test_a_class_set_is_answered_in_order_with_its_refs(client: FlaskClient) -> None:
    lines = ["2H+ + 2e- -> H2", "Na+ + e- -> Na", "2Cl- -> Cl2 + 2e-", "hydrogen"]
    items = [{"ref": str(seat), "answer": line} for seat, line in enumerate(lines)]
    answer = client.post(BATCH, json={"items": items, **QUESTION})
    assert answer.status_code == 200
    singles = [client.post(CHECK, json={**item, **QUESTION}).json for item in items]
    assert answer.json == {"results": singles}
    verdicts = [(one["ref"], one["verdict"]) for one in answer.json["results"]]
    assert verdicts == [("0", "correct"), ("1", "incorrect"), ("2", "incorrect"), ("3", "unreadable")]


def test_items_may_have_questions_of_their_own(client: FlaskClient) -> None:
    items = [
        {"answer": "2Cl- -> Cl2 + 2e-", "electrode": "anode"},
        {"answer": "Ag+ + e- -> Ag", "expected": "Ag^+ + e- -> Ag", "curriculum": "gcse"},
        {"answer": "Cu2+ + 2e- -> Cu", "cell": {"electrolyte": "CuSO4", "curriculum": "gcse"}},
        {"answer": "2H+ + 2e- -> H2"},
    ]
    results = client.post(BATCH, json={"items": items, **QUESTION}).json["results"]
    assert [result["verdict"] for result in results] == ["correct"] * 4
    assert all(set(result["model_answer"]) == {"ascii", "electrons"} for result in results)


def test_a_bad_item_stops_no_other(client: FlaskClient) -> None:
    items: list[Any] = [
        {"ref": "a"},
        5,
        None,
        {"answer": "x", "cell": 5},
        {"answer": "x", "colour": "red", "ref": "b"},
        {"answer": "x", "expected": ["Cl^- -> Cl2"]},
        {"ref": "c", "answer": "2H+ + 2e- -> H2"},
    ]
    results = client.post(BATCH, json={"items": items, **QUESTION}).json["results"]
    assert [result.get("status") for result in results] == [422] * 6 + [None]
    assert [result.get("ref") for result in results] == ["a", None, None, None, "b", None, "c"]


@pytest.mark.parametrize(
    ("body", "pointer", "code"),
    [
        ([], "", "wrong-type"),
        (GIVEN, "/items", "missing-field"),
        ({**GIVEN, "items": {}}, "/items", "wrong-type"),
        ({**GIVEN, "items": []}, "/items", "empty"),
        ({**GIVEN, "items": [{"answer": "x"}] * 1001}, "/items", "too-many"),
        ({**GIVEN, "items": [{"answer": "x"}], "curriculum": 5}, "/curriculum", "wrong-type"),
        ({**GIVEN, "items": [{"answer": "x"}], "answer": "x"}, "/answer", "unknown-field"),
    ],
)
def test_a_class_set_of_another_shape_is_refused_as_a_whole(
    client: FlaskClient, body: Any, pointer: str, code: str
) -> None:
    answer = client.post(BATCH, json=body)
    assert answer.status_code == 422
    assert [(error["pointer"], error["code"]) for error in answer.json["errors"]] == [(pointer, code)]


def test_the_body_must_be_json(client: FlaskClient) -> None:
    assert client.post(CHECK, data="{", content_type="application/json").status_code == 400
    assert client.post(CHECK, data="{}", content_type="text/plain").status_code == 415


def test_a_failure_logs_nothing_that_a_pupil_wrote(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def fails(answer: str, _expectation: object) -> None:
        raise RuntimeError(answer)

    monkeypatch.setattr(marking_desk, "check", fails)
    with caplog.at_level(logging.DEBUG):
        single = client.post(CHECK, json={"answer": "my secret line", **GIVEN})
        batch = client.post(BATCH, json={"items": [{"answer": "my secret line", "ref": "r"}], **GIVEN})
    assert (single.status_code, single.json["code"]) == (500, "internal-error")
    assert (batch.json["results"][0]["code"], batch.json["results"][0]["ref"]) == ("internal-error", "r")
    assert "incident" in caplog.text
    assert "RuntimeError" in caplog.text
    assert "secret" not in caplog.text
    assert "secret" not in single.text + batch.text


@pytest.mark.parametrize(
    ("shared", "pointer"),
    [
        ({"written_as": "sideways"}, "/written_as"),
        ({"electrode": "middle"}, "/electrode"),
        ({"state_symbols": "yes"}, "/state_symbols"),
        ({"notation": "braille"}, "/notation"),
        ({"language": "xx"}, "/language"),
        ({"curriculum": 5}, "/curriculum"),
    ],
)
def test_a_misshapen_wish_that_no_item_uses_is_refused_all_the_same(
    client: FlaskClient, shared: dict[str, Any], pointer: str
) -> None:
    answer = client.post(BATCH, json={"items": [{"answer": "x", **GIVEN}], **shared})
    assert (answer.status_code, answer.json["errors"][0]["pointer"]) == (422, pointer)
