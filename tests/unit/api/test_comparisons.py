"""Comparisons over the API: by body and by address, each fault in its place, and every member described."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ionwright.api import Settings, create_app
from ionwright.api.comparison_reader import COMPARISON_FIELDS, MOST_COMPARED
from ionwright.api.disagreement_reader import MOST_OTHERS
from ionwright.api.problem_kinds import FAULT_KINDS, PROBLEM_KINDS
from ionwright.api.query_reader import DISAGREEMENT_PARAMETERS
from ionwright.curricula.host import Registry, load_curricula

if TYPE_CHECKING:
    from flask.testing import FlaskClient
    from werkzeug.test import TestResponse

PATH = "/v1/comparisons"
DISAGREEMENTS = "/v1/comparisons/disagreements"
DOCUMENT = Path(__file__).resolve().parents[3] / "openapi" / "ionwright.json"
BRINE: dict[str, Any] = {
    "electrolyte": "NaCl",
    "concentration": "dilute",
    "curricula": ["gcse", "igcse"],
    "notation": ["ascii"],
}


def post(client: FlaskClient, **members: Any) -> TestResponse:
    return client.post(PATH, json=members)


def faults(answer: TestResponse) -> list[tuple[str, str]]:
    assert answer.status_code == 422, answer.json
    return [(one["code"], one.get("pointer", one.get("parameter"))) for one in answer.json["errors"]]


def groups(answer: TestResponse, electrode: str) -> list[list[str]]:
    return [group["curricula"] for group in answer.json[electrode]["groups"]]


def test_the_brine_splits_two_schools_at_the_anode(client: FlaskClient) -> None:
    answer = post(client, **BRINE)
    assert answer.status_code == 200
    assert answer.headers["ETag"]
    assert groups(answer, "cathode") == [["gcse", "igcse"]]
    assert groups(answer, "anode") == [["gcse"], ["igcse"]]
    (difference,) = answer.json["anode"]["differences"]
    assert [side["answer"] for side in difference["between"]] == ["chlorine", "oxygen"]
    assert [side["rules"][0]["effect"] for side in difference["between"]] == ["chooses", "rules out"]


@pytest.mark.parametrize("curricula", [["igcse", "gcse"], ["GCSE", " igcse "], "gcse,igcse", "igcse , gcse"])
def test_the_order_and_the_spelling_of_the_ids_do_not_matter(client: FlaskClient, curricula: Any) -> None:
    assert post(client, **(BRINE | {"curricula": curricula})).data == post(client, **BRINE).data


def test_all_that_are_loaded_are_compared_if_none_is_named(client: FlaskClient) -> None:
    answer = post(client, electrolyte="CuSO4", notation=["ascii"])
    loaded = [one["id"] for one in client.get("/v1/curricula").json["curricula"]]
    assert [one["id"] for one in answer.json["curricula"]] == loaded
    assert sorted(id_ for group in groups(answer, "cathode") for id_ in group) == loaded
    # another curriculum may be loaded tomorrow
    assert answer.headers["Cache-Control"] == "public, max-age=300"
    assert "max-age=86400" in post(client, **BRINE).headers["Cache-Control"]


@pytest.mark.parametrize(
    "query",
    [
        "electrolyte=NaCl&concentration=dilute&curricula=gcse,igcse&notation=ascii",
        "electrolyte=NaCl&concentration=dilute&curricula=igcse&curricula=gcse&notation=ascii",
        "electrolyte=NaCl@dilute&concentration=dilute&curricula=gcse,igcse&notation=ascii",
    ],
)
def test_an_address_answers_as_a_body_does(client: FlaskClient, query: str) -> None:
    answer = client.get(f"{PATH}?{query}")
    assert answer.status_code == 200
    assert answer.data == post(client, **BRINE).data
    again = client.get(f"{PATH}?{query}", headers={"If-None-Match": answer.headers["ETag"]})
    assert again.status_code == 304


@pytest.mark.parametrize(
    ("members", "expected"),
    [
        ({"curricula": ["gcse", "gsce"]}, [("unknown-curriculum", "/curricula/1")]),
        (
            {"curricula": ["x", "gcse", "y"]},
            [("unknown-curriculum", "/curricula/0"), ("unknown-curriculum", "/curricula/2")],
        ),
        ({"curricula": "gcse,gsce"}, [("unknown-curriculum", "/curricula")]),
        ({"curricula": ["gcse", "igcse", "gcse"]}, [("repeated", "/curricula/2")]),
        ({"curricula": ["gcse", "GCSE"]}, [("repeated", "/curricula/1")]),
        ({"curricula": []}, [("empty", "/curricula")]),
        ({"curricula": ""}, [("empty", "/curricula")]),
        ({"curricula": ["gcse", ""]}, [("empty", "/curricula/1")]),
        ({"curricula": ["gcse", 3]}, [("wrong-type", "/curricula/1")]),
        ({"curricula": None}, [("wrong-type", "/curricula")]),
        ({"curricula": ["gcse"] * (MOST_COMPARED + 1)}, [("too-many", "/curricula")]),
        ({"curriculum": "gcse"}, [("unknown-field", "/curriculum")]),
        ({"ph": 15, "curricula": []}, [("empty", "/curricula"), ("out-of-range", "/ph")]),
        ({"electrolyte": "CaCO3"}, [("insoluble", "/electrolyte")]),
        ({"electrolyte": ["NaCl", "Xx"]}, [("unknown-element", "/electrolyte/1")]),
        ({"anode": "wood"}, [("non-conducting-electrode", "/anode")]),
        ({"supply": "ac"}, [("alternating-supply", "/supply")]),
        ({"concentration": "5 bananas"}, [("bad-concentration", "/concentration")]),
        # faults of a cell come before an unknown curriculum
        ({"electrolyte": "CaCO3", "curricula": ["gsce"]}, [("insoluble", "/electrolyte")]),
    ],
)
def test_a_fault_is_told_in_its_place(
    client: FlaskClient, members: dict[str, Any], expected: list[tuple[str, str]]
) -> None:
    assert faults(post(client, **(BRINE | members))) == expected


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("electrolyte=NaCl&curricula=gcse,gsce", [("unknown-curriculum", "curricula")]),
        ("electrolyte=NaCl&curricula=gcse&curricula=gcse", [("repeated", "curricula")]),
        ("electrolyte=NaCl&curricula=", [("empty", "curricula")]),
        ("electrolyte=NaCl&curriculum=gcse", [("unknown-field", "curriculum")]),
        ("electrolyte=NaCl&ph=low", [("bad-number", "ph")]),
        ("curricula=gcse", [("missing-field", "electrolyte")]),
    ],
)
def test_a_fault_in_an_address_is_told_by_its_parameter(
    client: FlaskClient, query: str, expected: list[tuple[str, str]]
) -> None:
    assert faults(client.get(f"{PATH}?{query}")) == expected


def test_a_refused_cell_has_the_problem_that_a_prediction_has(client: FlaskClient) -> None:
    for members in ({"electrolyte": "PbSO4"}, {"electrolyte": "C6H12O6"}, {"electrolyte": "NaCl("}):
        compared = post(client, **members, curricula=["gcse"]).json
        predicted = client.post("/v1/predictions", json=members | {"curriculum": "gcse"}).json
        assert compared == predicted


def test_what_no_course_decides_is_an_answer_too(client: FlaskClient) -> None:
    answer = post(client, electrolyte="KMnO4", curricula=["gcse", "igcse"])
    (group,) = answer.json["anode"]["groups"] if answer.json["anode"]["agreed"] else [None]
    undecided = [g for g in answer.json["cathode"]["groups"] if g["outcome"] == "not-decidable"]
    assert answer.status_code == 200
    assert group is not None
    assert [g["products"] for g in undecided] == [[]]
    assert all(reason["because"] for g in undecided for reason in g["reasons"])


# --- the reverse question


def asked(client: FlaskClient, **query: Any) -> TestResponse:
    return client.get(DISAGREEMENTS, query_string=query)


def test_two_courses_part_on_dilute_halides(client: FlaskClient) -> None:
    answer = asked(client, curriculum="gcse", **{"with": "igcse"}, electrode="anode", limit=500)
    assert answer.status_code == 200
    (group,) = answer.json["groups"]
    assert group["count"] == answer.json["count"] == len(group["disagreements"])
    rows = {row["cell"]["electrolyte"]: row for row in group["disagreements"]}
    assert rows["NaCl"] == {
        "name": "sodium chloride",
        "cell": {"electrolyte": "NaCl", "state": "aqueous", "cathode": "graphite", "anode": "graphite"},
        "concentrations": ["dilute"],
        "answer": {"products": ["Cl2"], "text": "chlorine"},
        "others": ["igcse"],
        "other_answer": {"products": ["O2"], "text": "oxygen"},
        "accepted_across": rows["NaCl"]["accepted_across"],
    }


def test_a_row_can_be_sent_to_the_comparison_as_it_is(client: FlaskClient) -> None:
    answer = asked(client, curriculum="gcse", **{"with": "igcse"}, limit=3)
    for group in answer.json["groups"]:
        for row in group["disagreements"]:
            cell = row["cell"] | {"concentration": row["concentrations"][0]}
            compared = post(client, **cell, curricula=["gcse", "igcse"]).json
            assert compared[group["electrode"]]["agreed"] is False


def test_pages_follow_each_other(client: FlaskClient) -> None:
    first = asked(client, curriculum="gcse", **{"with": "igcse"}, limit=2).json
    second = asked(client, curriculum="gcse", **{"with": "igcse"}, limit=2, offset=first["next_offset"]).json
    assert first["next_offset"] == 2
    assert second["offset"] == 2
    assert first["groups"][0]["disagreements"] != second["groups"][0]["disagreements"]


def test_one_course_is_held_against_all_others_if_none_is_named(client: FlaskClient) -> None:
    answer = asked(client, curriculum="gcse", limit=1)
    loaded = [one["id"] for one in client.get("/v1/curricula").json["curricula"]]
    assert [one["id"] for one in answer.json["others"]] == [id_ for id_ in loaded if id_ != "gcse"]


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("", [("missing-field", "curriculum")]),
        ("curriculum=gsce", [("unknown-curriculum", "curriculum")]),
        ("curriculum=gcse&with=gsce", [("unknown-curriculum", "with")]),
        ("curriculum=gcse&with=gcse", [("repeated", "with")]),
        ("curriculum=gcse&with=igcse,igcse", [("repeated", "with")]),
        ("curriculum=gcse&with=igcse&with=igcse", [("repeated", "with")]),
        ("curriculum=gcse&with=", [("empty", "with")]),
        ("curriculum=gcse&curriculum=igcse", [("repeated", "curriculum")]),
        ("curriculum=gcse&electrode=side", [("not-a-choice", "electrode")]),
        ("curriculum=gcse&limit=0", [("out-of-range", "limit")]),
        ("curriculum=gcse&limit=501", [("out-of-range", "limit")]),
        ("curriculum=gcse&limit=many", [("bad-number", "limit")]),
        ("curriculum=gcse&offset=-1", [("bad-number", "offset")]),
        ("curriculum=gcse&against=igcse", [("unknown-field", "against")]),
    ],
)
def test_a_fault_of_the_question_is_told(
    client: FlaskClient, query: str, expected: list[tuple[str, str]]
) -> None:
    assert faults(client.get(f"{DISAGREEMENTS}?{query}")) == expected


def test_one_course_is_held_against_a_bounded_number_of_others(tmp_path: Path) -> None:
    for number in range(MOST_OTHERS + 1):
        text = f'format = 1\nid = "school-{number}"\ntitle = "School {number}"\nstage = "any"\nbased_on = "gcse"\n'
        (tmp_path / f"school-{number:03}.toml").write_text(text, encoding="utf-8")
    registry: Registry = load_curricula(tmp_path)
    client = create_app(Settings(), registry).test_client()
    answer = client.get(f"{DISAGREEMENTS}?curriculum=gcse")
    assert faults(answer) == [("too-many", "with")]
    assert client.get(f"{DISAGREEMENTS}?curriculum=gcse&with=school-1").json["count"] == 0


# --- the contract


@pytest.fixture(scope="module")
def document() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(DOCUMENT.read_text(encoding="utf-8"))
    return found


def test_the_document_and_the_readers_know_the_same_fields(document: dict[str, Any]) -> None:
    described = document["components"]["schemas"]["ComparisonRequest"]["properties"]
    assert sorted(described) == sorted(COMPARISON_FIELDS)
    for path, names in ((PATH, COMPARISON_FIELDS), (DISAGREEMENTS, DISAGREEMENT_PARAMETERS)):
        parameters = document["paths"][path]["get"]["parameters"]
        assert sorted(parameter["name"] for parameter in parameters) == sorted(names)


@pytest.mark.parametrize(
    "cell",
    [
        {"electrolyte": "NaCl", "concentration": "0.1 mol/dm3"},
        {"electrolyte": ["NaCl", "KI"], "concentration": "concentrated"},
        {"electrolyte": "KMnO4"},
        {"electrolyte": "Al2O3", "state": "molten"},
        {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"},
    ],
    ids=str,
)
def test_every_member_of_a_comparison_is_described(
    client: FlaskClient, closed_components: Any, cell: dict[str, Any]
) -> None:
    schema = {"$ref": "#/components/schemas/Comparison", "components": closed_components}
    answer = post(client, **cell)
    assert answer.status_code == 200, answer.json
    jsonschema.Draft202012Validator(schema).validate(answer.json)
    assert "null" not in json.dumps(answer.json)


def test_every_member_of_a_page_is_described(client: FlaskClient, closed_components: Any) -> None:
    schema = {"$ref": "#/components/schemas/Disagreements", "components": closed_components}
    validator = jsonschema.Draft202012Validator(schema)
    for query in ({"limit": 100}, {"electrode": "cathode"}, {"offset": 99_999}):
        validator.validate(asked(client, curriculum="gcse", **{"with": "a-level,igcse"}, **query).json)


ANYTHING = st.none() | st.integers() | st.text(max_size=8) | st.lists(st.text(max_size=5), max_size=3)
IDS = st.lists(st.sampled_from(["gcse", "igcse", "a-level", "GCSE", "x", "", 3, None]), max_size=4)
REQUEST = st.fixed_dictionaries(
    {"electrolyte": st.sampled_from(["NaCl", "KI@dilute", ["NaCl", "KI"], "CaCO3", "", 3, None])},
    optional={name: ANYTHING for name in (*COMPARISON_FIELDS, "curriculum") if name != "electrolyte"}
    | {"curricula": IDS | ANYTHING},
)


@given(request=REQUEST)
@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_request_fails_the_service(request: dict[str, Any]) -> None:
    answer = SHARED.post(PATH, data=json.dumps(request).encode(), content_type="application/json")
    assert answer.status_code in {200, 422}, answer.json
    if answer.status_code == 422:
        assert answer.json["code"] in PROBLEM_KINDS
        for one in answer.json["errors"]:
            assert one["code"] in PROBLEM_KINDS or one["code"] in FAULT_KINDS
            assert one["detail"]


SHARED = create_app(Settings()).test_client()
