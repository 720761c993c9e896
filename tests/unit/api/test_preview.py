"""Trying a declaration on a cell before anybody is served by it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from flask.testing import FlaskClient

PATH = "/v1/curricula/preview"
BRINE = {"electrolyte": "NaCl", "concentration": "0.10 mol/dm3", "notation": ["ascii"]}
DECLARATION = """
format = 1
id = "skerry-foundation"
title = "Skerry Point foundation course"
based_on = "gcse"
"""
BY_CONCENTRATION = DECLARATION.replace("gcse", "igcse")


def preview(client: FlaskClient, declaration: Any, **members: Any) -> Any:
    return client.post(PATH, json=BRINE | {"declaration": declaration} | members)


@pytest.mark.parametrize(("declaration", "base"), [(DECLARATION, "gcse"), (BY_CONCENTRATION, "igcse")])
def test_a_cell_is_judged_under_the_declaration_that_is_sent(
    client: FlaskClient, declaration: str, base: str
) -> None:
    answer = preview(client, declaration)
    assert answer.status_code == 200, answer.text
    assert answer.headers["Cache-Control"] == "no-store"
    assert answer.json["curriculum"]["id"] == "skerry-foundation"
    assert answer.json["curriculum"]["rules"]["anode"]
    loaded = client.post("/v1/predictions", json=BRINE | {"curriculum": base}).json
    told = answer.json["prediction"]
    assert told["curriculum"]["id"] == "skerry-foundation"
    assert told["anode"] == loaded["anode"]


def test_what_is_declared_decides(client: FlaskClient) -> None:
    products = []
    for declaration in (DECLARATION, BY_CONCENTRATION):
        anode = preview(client, declaration).json["prediction"]["anode"]
        products.append(anode["products"][0]["formula"])
    assert products == ["Cl2", "O2"]


def test_nothing_of_it_is_kept(client: FlaskClient) -> None:
    first = preview(client, DECLARATION).json["prediction"]["anode"]
    changed = preview(client, BY_CONCENTRATION).json["prediction"]["anode"]
    assert first != changed
    assert preview(client, DECLARATION).json["prediction"]["anode"] == first
    listed = client.get("/v1/curricula").json["curricula"]
    assert "skerry-foundation" not in [one["id"] for one in listed]


def test_all_faults_of_a_declaration_are_told_with_their_keys(client: FlaskClient) -> None:
    slips = DECLARATION + '[cathode]\norder = ["K", "Xx"]\n[anode]\nhalides = "sometimes"\n'
    answer = preview(client, slips)
    assert (answer.status_code, answer.json["code"]) == (422, "bad-curriculum")
    assert {error["pointer"] for error in answer.json["errors"]} == {"/declaration"}
    told = " ".join(error["detail"] for error in answer.json["errors"])
    assert "cathode.order" in told
    assert "anode.halides: " in told


@pytest.mark.parametrize(
    ("declaration", "words"),
    [
        ("format = ", "not readable as TOML"),
        (DECLARATION.replace("gcse", "gsce"), "no curriculum 'gsce' to build on"),
        ("format = 1", "id: "),
        ("a = " + "[" * 20000, "not readable as TOML"),
        ("a = " + "9" * 6000, "not readable as TOML"),
        ("import os\nos.remove('x')", "not readable as TOML"),
    ],
)
def test_a_text_that_declares_nothing_is_refused(client: FlaskClient, declaration: str, words: str) -> None:
    answer = preview(client, declaration)
    assert (answer.status_code, answer.json["code"]) == (422, "bad-curriculum")
    assert words in " ".join(error["detail"] for error in answer.json["errors"])


@pytest.mark.parametrize(
    ("members", "code", "pointer"),
    [
        ({"declaration": 5}, "wrong-type", "/declaration"),
        ({"declaration": " "}, "empty", "/declaration"),
        ({"declaration": "#" * 65_537}, "too-long", "/declaration"),
        ({"curriculum": "gcse"}, "unknown-field", "/curriculum"),
        ({"electrolyte": 7}, "wrong-type", "/electrolyte"),
        ({"electrolyte": "NaQq"}, "unknown-element", "/electrolyte"),
    ],
)
def test_a_fault_of_the_request_names_its_place(
    client: FlaskClient, members: dict[str, Any], code: str, pointer: str
) -> None:
    answer = client.post(PATH, json=BRINE | {"declaration": DECLARATION} | members)
    assert answer.status_code == 422
    assert [(error["code"], error["pointer"]) for error in answer.json["errors"]] == [(code, pointer)]


@pytest.mark.parametrize("body", [[], "x", {}])
def test_a_body_without_what_is_needed_is_refused(client: FlaskClient, body: Any) -> None:
    answer = client.post(PATH, json=body)
    assert (answer.status_code, answer.json["code"]) == (422, "validation-error")


@pytest.mark.parametrize("method", ["GET", "PUT"])
def test_only_what_is_sent_can_be_tried(client: FlaskClient, method: str) -> None:
    answer = client.open(PATH, method=method)
    assert answer.status_code == 405
    assert answer.headers["Allow"] == "OPTIONS, POST"
    assert client.get("/v1/curricula/previews").status_code == 404
