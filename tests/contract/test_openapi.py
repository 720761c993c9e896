"""The contract: valid, committed as it is made, complete, and in agreement with the readers."""

from __future__ import annotations

import itertools
import json
from collections import Counter
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openapi_spec_validator import OpenAPIV31SpecValidator

from ionwright.api import Settings, create_app
from ionwright.api.contract_files import contract_files
from ionwright.api.problems import Problem
from ionwright.api.request_reader import FIELDS, read_prediction_request
from ionwright.chemistry.electrolytes import known_electrolytes

FOLDER = Path(__file__).resolve().parents[2] / "openapi"
OPERATIONS = {
    "balanceHalfEquation",
    "checkHalfEquation",
    "checkHalfEquationBatch",
    "combineHalfEquations",
    "compareCurricula",
    "getCurriculum",
    "getHealth",
    "getReadiness",
    "listCurricula",
    "listDisagreements",
    "listElectrodes",
    "listElectrolytes",
    "lookUpBalance",
    "lookUpCombination",
    "lookUpComparison",
    "lookUpDemonstration",
    "lookUpPrediction",
    "lookUpQuantities",
    "planDemonstration",
    "predictElectrolysis",
    "predictElectrolysisBatch",
    "previewCurriculum",
    "solveQuantities",
}


@pytest.fixture(scope="module")
def made() -> dict[str, str]:
    return contract_files()


@pytest.fixture(scope="module")
def document() -> dict[str, Any]:
    found: dict[str, Any] = json.loads((FOLDER / "ionwright.json").read_text(encoding="utf-8"))
    return found


def operations(document: dict[str, Any]) -> list[dict[str, Any]]:
    return [described for methods in document["paths"].values() for described in methods.values()]


def test_the_committed_files_are_those_that_are_made(made: dict[str, str]) -> None:
    """Renew them with `ionwright openapi --write openapi`."""
    committed = {
        str(path.relative_to(FOLDER)): path.read_text(encoding="utf-8")
        for path in FOLDER.rglob("*")
        if path.is_file() and path.suffix == ".json"
    }
    assert sorted(committed) == sorted(made)
    for name, text in made.items():
        assert committed[name] == text, f"{name} has changed: ionwright openapi --write openapi"


def test_the_document_is_made_the_same_every_time(made: dict[str, str]) -> None:
    assert contract_files() == made


def test_the_document_is_valid_openapi_3_1(document: dict[str, Any]) -> None:
    assert document["openapi"] == "3.1.0"
    OpenAPIV31SpecValidator(document).validate()


def test_the_ids_of_the_operations_are_fixed(document: dict[str, Any]) -> None:
    assert {described["operationId"] for described in operations(document)} == OPERATIONS


def test_every_operation_is_described_and_shown(document: dict[str, Any]) -> None:
    tags = {tag["name"] for tag in document["tags"]}
    for described in operations(document):
        assert described["summary"]
        assert set(described["tags"]) <= tags
        answers = [
            content.get("examples", {})
            for answer in described["responses"].values()
            for content in answer.get("content", {}).values()
        ]
        assert any(answers), described["operationId"]
        for content in described.get("requestBody", {}).get("content", {}).values():
            if "$ref" in content["schema"]:
                assert content["examples"], described["operationId"]


def test_every_tag_says_what_it_is_about(document: dict[str, Any]) -> None:
    assert all(tag["description"] for tag in document["tags"])


def test_problems_have_their_media_type(document: dict[str, Any]) -> None:
    for described in operations(document):
        for status, answer in described["responses"].items():
            if int(status) >= 400:
                assert list(answer["content"]) == ["application/problem+json"]


def test_requests_are_closed_and_answers_are_open(document: dict[str, Any]) -> None:
    closed = {
        name
        for name, schema in document["components"]["schemas"].items()
        if schema.get("additionalProperties") is False
    }
    assert closed == {
        "PredictionRequest",
        "BatchRequest",
        "BalanceRequest",
        "CombineRequest",
        "CheckRequest",
        "CheckBatchRequest",
        "QuestionCell",
        "Ingredient",
        "Quantity",
        "QuantitiesRequest",
        "Process",
        "KnownQuantity",
        "AskedQuantity",
        "RequestConventions",
        "ComparisonRequest",
        "PreviewRequest",
        "DemonstrationRequest",
        "Aim",
    }


def test_every_shape_says_what_it_is(document: dict[str, Any]) -> None:
    for name, schema in document["components"]["schemas"].items():
        assert schema["description"], name


def test_no_part_of_the_document_is_left_over(document: dict[str, Any]) -> None:
    text = json.dumps(document)
    for name in document["components"]["schemas"]:
        assert f'"#/components/schemas/{name}"' in text, name


def test_the_request_takes_the_fields_that_the_reader_knows(document: dict[str, Any]) -> None:
    assert sorted(document["components"]["schemas"]["PredictionRequest"]["properties"]) == sorted(FIELDS)
    (get,) = [op for op in operations(document) if op["operationId"] == "lookUpPrediction"]
    assert sorted(parameter["name"] for parameter in get["parameters"]) == sorted(FIELDS)


TEXT = st.text(alphabet="NiSO4 @aqueousdc", max_size=8)
VALUE = st.none() | st.booleans() | st.integers(-5, 20) | st.floats(-1, 20) | TEXT
QUANTITY = st.fixed_dictionaries({}, optional={"value": VALUE, "unit": VALUE, "more": VALUE})
INGREDIENT = st.fixed_dictionaries({}, optional={"substance": VALUE, "concentration": VALUE | QUANTITY})
WORDS = st.sampled_from(
    ["aqueous", "molten", "ac", "dc", "en", "html", "ascii,text", "ascii , latex", "html,"]
)
ANYTHING = VALUE | WORDS | QUANTITY | INGREDIENT | st.lists(VALUE | WORDS | INGREDIENT, max_size=14)
REQUEST = st.fixed_dictionaries(
    {"electrolyte": ANYTHING, "curriculum": TEXT | VALUE},
    optional={name: ANYTHING for name in (*FIELDS, "unknown") if name not in {"electrolyte", "curriculum"}},
)


@given(request=REQUEST | VALUE | st.lists(VALUE))
@settings(max_examples=600, deadline=None)
def test_the_reader_takes_exactly_what_the_document_allows(request: Any) -> None:
    document = json.loads((FOLDER / "ionwright.json").read_text(encoding="utf-8"))
    schema = {"$ref": "#/components/schemas/PredictionRequest", "components": document["components"]}
    allowed = jsonschema.Draft202012Validator(schema).is_valid(request)
    try:
        read_prediction_request(request)
        taken = True
    except Problem:
        taken = False
    # a text with an @ that has nothing before or after it is refused, which no pattern in the document says
    assert taken == allowed or (allowed and "@" in json.dumps(request))


def sampled_cells() -> list[dict[str, Any]]:
    """Every electrolyte of the tables once in water and once molten, with electrodes and curricula in turn."""
    electrodes = itertools.cycle(["graphite", "copper", "platinum", "nickel", "steel", "mercury", "brass"])
    curricula = itertools.cycle(["gcse", "igcse", "a-level"])
    concentrations = itertools.cycle(["dilute", "concentrated", "0.1 mol/dm3"])
    cells = []
    for known in known_electrolytes():
        common = {"electrolyte": known.formula, "cathode": next(electrodes), "anode": next(electrodes)}
        cells.append(common | {"concentration": next(concentrations), "curriculum": next(curricula)})
        cells.append(common | {"state": "molten", "curriculum": next(curricula)})
    return cells


def test_every_member_of_every_answer_is_described(closed_components: Any) -> None:
    validators = {
        name: jsonschema.Draft202012Validator(
            {"$ref": f"#/components/schemas/{name}", "components": closed_components}
        )
        for name in ("Prediction", "Problem")
    }
    client = create_app(Settings()).test_client()
    statuses = Counter()
    for cell in sampled_cells():
        answer = client.post("/v1/predictions", json=cell)
        statuses[answer.status_code] += 1
        validators["Prediction" if answer.status_code == 200 else "Problem"].validate(answer.json)
    assert set(statuses) == {200, 422}
    assert min(statuses.values()) > 50
