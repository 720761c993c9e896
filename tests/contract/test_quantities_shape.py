"""Tasks about amounts: the reader takes what the document allows, and every member of an answer is described."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ionwright.api import Settings, create_app
from ionwright.api.known_reader import ASKED_FIELDS, KNOWN_FIELDS
from ionwright.api.problem_kinds import FAULT_KINDS, PROBLEM_KINDS
from ionwright.api.problems import Fault, Problem
from ionwright.api.process_reader import PROCESS_FIELDS
from ionwright.api.quantities_reader import QUANTITIES_FIELDS, read_quantities_request
from ionwright.api.query_reader import QUANTITIES_PARAMETERS
from ionwright.chemistry.amounts.quantity import TOLD

FOLDER = Path(__file__).resolve().parents[2] / "openapi"
DOCUMENT: dict[str, Any] = json.loads((FOLDER / "ionwright.json").read_text(encoding="utf-8"))
COMPONENTS: dict[str, Any] = DOCUMENT["components"]
SHAPES: dict[str, Any] = COMPONENTS["schemas"]
REQUEST_SHAPE = jsonschema.Draft202012Validator(
    {"$ref": "#/components/schemas/QuantitiesRequest", "components": COMPONENTS}
)


@pytest.mark.parametrize(
    ("shape", "known"),
    [
        ("QuantitiesRequest", QUANTITIES_FIELDS),
        ("Process", PROCESS_FIELDS),
        ("KnownQuantity", KNOWN_FIELDS),
        ("AskedQuantity", ASKED_FIELDS),
    ],
)
def test_a_request_takes_the_fields_that_the_reader_knows(shape: str, known: tuple[str, ...]) -> None:
    assert sorted(SHAPES[shape]["properties"]) == sorted(known)


def test_every_quantity_is_a_parameter_of_the_address() -> None:
    parameters = [one["name"] for one in DOCUMENT["paths"]["/v1/quantities"]["get"]["parameters"]]
    assert sorted(parameters) == sorted(QUANTITIES_PARAMETERS)
    assert set(TOLD) <= set(parameters)


TEXT = st.sampled_from(
    ["", " ", "mass", "0.50 A", "Ni", "Ni^2+ + 2e- -> Ni", "a-level", "cathode", "x" * 201]
)
SCALAR = st.none() | st.booleans() | st.integers(-2, 20) | st.floats(-1, 20) | TEXT
VALUE = SCALAR | st.fixed_dictionaries({}, optional={"value": SCALAR, "unit": SCALAR, "more": SCALAR})
ENTRY = st.fixed_dictionaries(
    {}, optional=dict.fromkeys(("quantity", "of", "process", "value", "unit", "more"), VALUE)
)
NAMES = st.sampled_from(["current", "time", "mass of Ni", "efficiency", "ion_charge", "nothing"])
CELL = st.fixed_dictionaries(
    {}, optional={"electrolyte": TEXT, "cathode": TEXT, "curriculum": TEXT, "more": SCALAR}
)
RUNS = {"half_equation": SCALAR, "cell": CELL | SCALAR, "metal": SCALAR, "electrode": SCALAR}
PROCESS = st.fixed_dictionaries({}, optional={"id": TEXT | SCALAR, "more": SCALAR, **RUNS})
CONSTANTS = ("faraday_constant", "gas_constant", "significant_figures", "gas_collected", "more")
MASSES = st.dictionaries(st.sampled_from(["Ni", "Ag"]), VALUE, max_size=2)
CONVENTIONS = st.fixed_dictionaries(
    {},
    optional={
        **{name: VALUE | st.sampled_from(["dry", "over water"]) for name in CONSTANTS},
        "relative_atomic_masses": MASSES | SCALAR,
    },
)
REQUEST = st.fixed_dictionaries(
    {"find": TEXT | SCALAR | st.lists(TEXT | ENTRY | SCALAR, max_size=3)},
    optional={
        **RUNS,
        "processes": SCALAR | st.lists(PROCESS | SCALAR, max_size=3),
        "known": SCALAR | st.dictionaries(NAMES, VALUE, max_size=3) | st.lists(ENTRY | SCALAR, max_size=3),
        "curriculum": TEXT | SCALAR,
        "conventions": CONVENTIONS | SCALAR,
        "language": SCALAR | st.just("en"),
        "more": SCALAR,
    },
)


def faults_of(request: Any) -> tuple[Fault, ...]:
    """What the reader finds wrong in a request; nothing if it takes it."""
    try:
        read_quantities_request(request)
    except Problem as problem:
        return problem.faults
    return ()


@given(request=REQUEST | SCALAR | st.lists(SCALAR))
@settings(max_examples=800, deadline=None)
def test_what_the_reader_takes_the_document_allows(request: Any) -> None:
    faults = faults_of(request)
    assert faults or REQUEST_SHAPE.is_valid(request)
    assert {fault.code for fault in faults} <= {*FAULT_KINDS, "out-of-range"}


@given(request=REQUEST)
@settings(max_examples=800, deadline=None)
def test_what_the_document_allows_is_refused_only_for_what_no_schema_says(request: Any) -> None:
    # which members exclude each other, and which quantities have a unit, stands in the descriptions
    unsaid = {"missing-field", "unknown-field", "wrong-type", "not-a-choice", "repeated"}
    assert not REQUEST_SHAPE.is_valid(request) or {fault.code for fault in faults_of(request)} <= unsaid


def sampled_tasks() -> list[dict[str, Any]]:
    """Tasks that ask for every quantity, of metals and gases, baths and cells."""
    conditions = {"temperature": "20 degC", "pressure": "101 kPa"}
    bath = {"bath_volume": "0.50 dm3", "bath_concentration of Ni^2+": "1.0 mol/dm3"}
    plate = {"current": "0.50 ± 0.01 A", "time": "20 min", "area": "20 cm2", "voltage": "6.0 V"}
    nickel = {"half_equation": "Ni^2+ + 2e- -> Ni", "known": plate | bath | {"energy_price": "0.28 GBP/kWh"}}
    gas = {"half_equation": "2H^+ + 2e- -> H2", "known": {"current": "0.50 A", "time": "20 min"} | conditions}
    cell = {"cell": {"electrolyte": "CuSO4", "concentration": "0.10 mol/dm3"}, "known": gas["known"]}
    series = {
        "processes": [{"id": "a", "half_equation": "Ag^+ + e- -> Ag"}, {"id": "b", "metal": "X"}],
        "known": {"mass of Ag": "2.16 g"},
    }
    tasks = [one | {"find": name} for one in (nickel, gas, cell, series) for name in TOLD]
    over_water = {"conventions": {"gas_collected": "over water"}}
    tasks += [gas | {"find": "volume"} | over_water, nickel | {"find": "curent"}, {"find": "mass"}]
    return [task | {"curriculum": course} for task in tasks for course in ("gcse", "a-level")]


def test_every_member_of_every_answer_is_described(closed_components: Any) -> None:
    validators = {
        name: jsonschema.Draft202012Validator(
            {"$ref": f"#/components/schemas/{name}", "components": closed_components}
        )
        for name in ("Quantities", "Problem")
    }
    client = create_app(Settings()).test_client()
    statuses: Counter[int] = Counter()
    codes = set()
    for task in sampled_tasks():
        answer = client.post("/v1/quantities", json=task)
        statuses[answer.status_code] += 1
        validators["Quantities" if answer.status_code == 200 else "Problem"].validate(answer.json)
        codes.add(answer.json.get("code", "needs-more"))
    assert set(statuses) == {200, 422}
    assert min(statuses.values()) > 40
    assert codes <= set(PROBLEM_KINDS)
