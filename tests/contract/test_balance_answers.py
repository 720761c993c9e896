"""Every member of every answer about half-equations is described, and the readers take what the document allows."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import jsonschema
import jsonschema_rs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ionwright.api import Settings, create_app
from ionwright.api.balance_reader import (
    BALANCE_FIELDS,
    COMBINE_FIELDS,
    read_balance_request,
    read_combine_request,
)
from ionwright.api.problems import Problem
from ionwright.chemistry.couple import couples

DOCUMENT = json.loads(
    (Path(__file__).resolve().parents[2] / "openapi" / "ionwright.json").read_text(encoding="utf-8")
)
MEDIA = ["acidic", "alkaline", "neutral", "molten", "none"]
BEYOND_THE_COUPLES = [
    {"equation": "Cl2 -> Cl^- + ClO3^-", "medium": "alkaline"},
    {"equation": "CrO4^2- -> Cr2O7^2-", "medium": "acidic"},
    {"equation": "CuFeS2 + O2 -> CuO + Fe2O3 + SO2", "medium": "none"},
    {"equation": "H^+ + Cu^2+ + Na^+ -> Cu + Na^+", "medium": "alkaline"},
    {"equation": "NO3^- -> NO + NO2"},
    {"equation": "Zn -> Cu"},
    {"equation": "Zn"},
]


def requests() -> list[tuple[str, dict[str, Any]]]:
    """Every couple, in every medium, and each with the one before it."""
    halves = [couple.reduction for couple in couples().values()]
    balances = [
        {"equation": half.ascii, "medium": MEDIA[number % len(MEDIA)]} for number, half in enumerate(halves)
    ]
    combinations = [
        {"oxidation": one.reversed().ascii, "reduction": other.ascii}
        for one, other in zip(halves, [*halves[1:], halves[0]], strict=True)
    ]
    refused = {"oxidation": halves[0].ascii, "reduction": halves[1].ascii}
    return [
        *(("balance", body) for body in (*balances, *BEYOND_THE_COUPLES)),
        *(("combine", body) for body in (*combinations, refused)),
    ]


def test_every_member_of_every_answer_is_described(closed_components: Any) -> None:
    validators = {
        name: jsonschema_rs.validator_for(
            {"$ref": f"#/components/schemas/{name}", "components": closed_components}
        )
        for name in ("Balance", "Combination", "Problem")
    }
    client = create_app(Settings()).test_client()
    statuses: Counter[tuple[str, int]] = Counter()
    for operation, body in requests():
        answer = client.post(f"/v1/half-equations/{operation}", json=body)
        statuses[operation, answer.status_code] += 1
        shape = {"balance": "Balance", "combine": "Combination"}[operation]
        validators[shape if answer.status_code == 200 else "Problem"].validate(answer.json)
    assert statuses["balance", 200] > 100
    assert statuses["combine", 200] > 100
    assert {status for _, status in statuses} == {200, 422}


@pytest.mark.parametrize(
    ("schema", "path", "fields"),
    [
        ("BalanceRequest", "/v1/half-equations/balance", BALANCE_FIELDS),
        ("CombineRequest", "/v1/half-equations/combine", COMBINE_FIELDS),
    ],
)
def test_body_and_address_take_the_fields_that_the_reader_knows(
    schema: str, path: str, fields: tuple[str, ...]
) -> None:
    assert sorted(DOCUMENT["components"]["schemas"][schema]["properties"]) == sorted(fields)
    parameters = DOCUMENT["paths"][path]["get"]["parameters"]
    assert sorted(parameter["name"] for parameter in parameters) == sorted(fields)


VALUE = st.none() | st.booleans() | st.integers(-5, 20) | st.text(alphabet="Mn ->e", max_size=8)
WORDS = st.sampled_from([*MEDIA, "en", "html", "ascii,text", "ascii , latex", "html,", "x" * 501])
ANYTHING = VALUE | WORDS | st.lists(VALUE | WORDS, max_size=4)
NAMES = sorted({*BALANCE_FIELDS, *COMBINE_FIELDS, "unknown"})


@pytest.mark.parametrize(
    ("schema", "reader"), [("BalanceRequest", read_balance_request), ("CombineRequest", read_combine_request)]
)
@given(request=st.fixed_dictionaries({}, optional=dict.fromkeys(NAMES, ANYTHING)) | VALUE)
@settings(max_examples=400, deadline=None)
def test_the_readers_take_exactly_what_the_document_allows(schema: str, reader: Any, request: Any) -> None:
    described = {"$ref": f"#/components/schemas/{schema}", "components": DOCUMENT["components"]}
    allowed = jsonschema.Draft202012Validator(described).is_valid(request)
    try:
        reader(request)
        taken = True
    except Problem:
        taken = False
    assert taken == allowed
