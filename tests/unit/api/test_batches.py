"""Batches: each item has its answer in its place, and what is wrong with one stops no other."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.api import Settings, create_app

if TYPE_CHECKING:
    from flask.testing import FlaskClient

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
BRINE = {"electrolyte": "NaCl", "concentration": "concentrated", "curriculum": "igcse"}
LIMEWASH = {"electrolyte": "CaCO3", "curriculum": "gcse"}


def single(client: FlaskClient, members: Any) -> Any:
    return client.post("/v1/predictions", data=json.dumps(members), content_type="application/json").json


def sent_lines(client: FlaskClient, text: str | bytes, media_type: str = "application/jsonl") -> list[Any]:
    answer = client.post("/v1/predictions/batch", data=text, content_type=media_type)
    assert answer.status_code == 200
    assert answer.mimetype == media_type
    assert answer.text.endswith("\n")
    return [json.loads(line) for line in answer.text.splitlines()]


def test_a_batch_answers_as_single_requests_do_and_in_order(client: FlaskClient) -> None:
    items: list[Any] = [BRACKET, LIMEWASH, BRINE, {"electrolyte": 5}, "NaCl", None, BRACKET]
    answer = client.post("/v1/predictions/batch", json={"items": items})
    assert answer.status_code == 200
    assert answer.json == {"results": [single(client, item) for item in items]}


def test_problems_in_a_batch_can_be_told_by_their_status(client: FlaskClient) -> None:
    answer = client.post("/v1/predictions/batch", json={"items": [BRACKET, LIMEWASH]})
    prediction, problem = answer.json["results"]
    assert "status" not in prediction
    assert (problem["status"], problem["code"]) == (422, "insoluble")


@pytest.mark.parametrize(
    ("body", "pointer", "code"),
    [
        ([], "", "wrong-type"),
        ({}, "/items", "missing-field"),
        ({"items": BRACKET}, "/items", "wrong-type"),
        ({"items": None}, "/items", "wrong-type"),
        ({"items": []}, "/items", "empty"),
        ({"items": [BRACKET] * 1001}, "/items", "too-many"),
        ({"items": [BRACKET], "curriculum": "gcse"}, "/curriculum", "unknown-field"),
    ],
)
def test_a_batch_of_another_shape_is_refused_as_a_whole(
    client: FlaskClient, body: Any, pointer: str, code: str
) -> None:
    answer = client.post("/v1/predictions/batch", json=body)
    assert answer.status_code == 422
    (error,) = answer.json["errors"]
    assert (error["pointer"], error["code"]) == (pointer, code)


def test_a_thousand_items_are_taken(client: FlaskClient) -> None:
    item = {"electrolyte": "NaCl", "curriculum": "gcse", "notation": "ascii"}
    answer = client.post("/v1/predictions/batch", json={"items": [item] * 1000})
    assert answer.status_code == 200
    assert len(answer.json["results"]) == 1000


@pytest.mark.parametrize("media_type", ["application/jsonl", "application/x-ndjson"])
def test_lines_are_answered_one_by_one_and_the_end_is_told(client: FlaskClient, media_type: str) -> None:
    lines = [json.dumps(BRACKET), "{broken", "", "   ", json.dumps(LIMEWASH), json.dumps(BRINE)]
    answers = sent_lines(client, "\n".join(lines), media_type)
    assert answers[0] == single(client, BRACKET)
    assert (answers[1]["status"], answers[1]["code"]) == (400, "malformed-json")
    assert answers[2] == single(client, LIMEWASH)
    assert answers[3] == single(client, BRINE)
    assert answers[4:] == [{"done": True, "count": 4}]


def test_lines_may_end_as_on_windows(client: FlaskClient) -> None:
    answers = sent_lines(client, f"{json.dumps(BRACKET)}\r\n{json.dumps(BRINE)}\r\n")
    assert len(answers) == 3


def test_no_lines_are_no_fault(client: FlaskClient) -> None:
    assert sent_lines(client, "") == [{"done": True, "count": 0}]


def test_a_line_that_is_not_utf_8_stops_no_other(client: FlaskClient) -> None:
    answers = sent_lines(client, b'{"electrolyte": "\xff"}\n' + json.dumps(BRACKET).encode())
    assert answers[0]["code"] == "malformed-json"
    assert answers[1] == single(client, BRACKET)


def test_a_line_that_is_too_long_stops_no_other(client: FlaskClient) -> None:
    long = json.dumps(BRACKET | {"anode": "x" * 20_000})
    answers = sent_lines(client, f"{long}\n{json.dumps(BRACKET)}\n")
    assert (answers[0]["status"], answers[0]["errors"][0]["code"]) == (413, "line-too-long")
    assert answers[1] == single(client, BRACKET)
    assert answers[2] == {"done": True, "count": 2}


def test_too_many_lines_end_with_a_line_that_says_so() -> None:
    client = create_app(Settings(lines_limit=3)).test_client()
    answers = sent_lines(client, f"{json.dumps(BRACKET)}\n" * 5)
    assert len(answers) == 4
    assert answers[3]["done"] is False
    assert answers[3]["count"] == 3
    assert answers[3]["problem"]["code"] == "content-too-large"


def test_another_media_type_is_refused_with_the_right_ones(client: FlaskClient) -> None:
    answer = client.post("/v1/predictions/batch", data="NiSO4", content_type="text/csv")
    assert answer.status_code == 415
    assert "application/json or application/jsonl or application/x-ndjson" in answer.json["detail"]
