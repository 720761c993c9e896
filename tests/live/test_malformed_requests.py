"""Malformed requests: always a problem of the right kind that says what would be right, never a failure."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from test_examples import DOCUMENT

if TYPE_CHECKING:
    from service import Service

pytestmark = pytest.mark.live

GOOD = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
PROBLEM = {"$ref": "#/components/schemas/Problem", "components": DOCUMENT["components"]}


def assert_problem(answer: Any, status: int, code: str) -> dict[str, Any]:
    assert answer.status_code == status, answer.text
    assert answer.headers["Content-Type"] == "application/problem+json"
    problem: dict[str, Any] = answer.json()
    jsonschema.validate(problem, PROBLEM, cls=jsonschema.Draft202012Validator)
    assert (problem["status"], problem["code"]) == (status, code)
    assert problem["detail"].endswith((".", "?"))
    return problem


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b" ",
        b"{",
        b"}",
        b"NiSO4",
        b"'NiSO4'",
        b'{"electrolyte": "NiSO4"',
        b'{"electrolyte": "NiSO4",}',
        b'{"electrolyte": NiSO4}',
        b'{electrolyte: "NiSO4"}',
        b'{"ph": NaN}',
        b'{"ph": Infinity}',
        b'{"ph": -Infinity}',
        b'{"ph": 01}',
        b'{"ph": .5}',
        b'{"ph": +5}',
        b'{"ph": 0x10}',
        b'{"ph": 1}{"ph": 2}',
        b'{"electrolyte": "\\ud800"}',
        b'{"electrolyte": "\\x41"}',
        b'{"electrolyte": "a\nb"}',
        b'{"electrolyte": "\xff"}',
        b'{"electrolyte": "\xed\xa0\x80"}',
        b"\x00",
        b"\xff\xfe{\x00}\x00",
        b"[" * 100_000,
        b'{"a":' * 100_000,
        b"electrolyte=NiSO4&curriculum=gcse",
        b"<electrolyte>NiSO4</electrolyte>",
    ],
)
def test_what_is_not_json(service: Service, body: bytes) -> None:
    problem = assert_problem(service.send(body), 400, "malformed-json")
    assert problem["errors"][0]["pointer"] == ""


@pytest.mark.parametrize(
    "media_type",
    [
        "",
        "text/plain",
        "text/json",
        "application/xml",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "application/json; charset=utf-16",
        "application/jsonl",
        "nonsense",
        ";",
    ],
)
def test_other_media_types(service: Service, media_type: str) -> None:
    problem = assert_problem(
        service.send(b'{"electrolyte":"NiSO4"}', media_type), 415, "unsupported-media-type"
    )
    assert problem["errors"][0]["parameter"] == "Content-Type"
    assert "application/json" in problem["detail"]


def test_a_compressed_body(service: Service) -> None:
    headers = {"Content-Type": "application/json", "Content-Encoding": "gzip"}
    answer = service.ask("POST", "/v1/predictions", data=b"x", headers=headers)
    assert_problem(answer, 415, "unsupported-media-type")


def test_a_body_that_is_too_long(service: Service) -> None:
    assert_problem(service.send(b" " * (1024 * 1024 + 1)), 413, "content-too-large")


def test_a_body_in_chunks_that_is_too_long(service: Service) -> None:
    chunks = (b" " * 65536 for _ in range(20))
    headers = {"Content-Type": "application/json"}
    answer = service.ask("POST", "/v1/predictions", data=chunks, headers=headers)
    assert_problem(answer, 413, "content-too-large")


def test_a_good_body_in_chunks_is_answered(service: Service) -> None:
    text = json.dumps(GOOD).encode()
    headers = {"Content-Type": "application/json"}
    answer = service.ask("POST", "/v1/predictions", data=iter([text[:20], text[20:]]), headers=headers)
    assert answer.status_code == 200


VALUES: list[Any] = [
    None,
    True,
    False,
    0,
    -1,
    1.5,
    10**30,
    -(10**30),
    "",
    " ",
    "\x00",
    "x" * 300,
    [],
    [[]],
    {},
    {"a": 1},
]


TEXT_FIELDS = [*GOOD, "concentration", "state", "supply", "temperature", "current_density"]
WRONG = [(field, value) for field in TEXT_FIELDS for value in VALUES]
WRONG += [("ph", value) for value in VALUES if type(value) not in (int, float) or not 0 <= value <= 14]


@pytest.mark.parametrize(("field", "value"), WRONG, ids=lambda part: repr(part)[:14])
def test_wrong_values_name_their_field(service: Service, field: str, value: Any) -> None:
    problem = assert_problem(service.predict(**{**GOOD, field: value}), 422, "validation-error")
    for error in problem["errors"]:
        assert error["in"] == "body"
        assert error["pointer"].split("/")[1] == field
        assert error["detail"]


@pytest.mark.parametrize("field", ["electrolyte", "curriculum"])
def test_missing_fields_are_named(service: Service, field: str) -> None:
    members = {name: value for name, value in GOOD.items() if name != field}
    problem = assert_problem(service.predict(**members), 422, "validation-error")
    assert [(e["pointer"], e["code"]) for e in problem["errors"]] == [(f"/{field}", "missing-field")]


@pytest.mark.parametrize(
    ("changes", "pointer", "code"),
    [
        ({"curriculum": "gcsee"}, "/curriculum", "unknown-curriculum"),
        ({"anode": "unobtainium"}, "/anode", "unknown-electrode"),
        ({"cathode": "wood"}, "/cathode", "non-conducting-electrode"),
        ({"supply": "ac"}, "/supply", "alternating-supply"),
        ({"concentration": "5 bananas"}, "/concentration", "bad-concentration"),
        ({"electrolyte": "NiSO4@5 bananas"}, "/electrolyte", "bad-concentration"),
        ({"electrolyte": "CaCO3"}, "/electrolyte", "insoluble"),
        ({"electrolyte": ["NaCl", "CaCO3"]}, "/electrolyte/1", "insoluble"),
        ({"electrolyte": [{"substance": "CaCO3"}]}, "/electrolyte/0/substance", "insoluble"),
        ({"electrolyte": {"substance": "CaCO3"}}, "/electrolyte/substance", "insoluble"),
        ({"electrolyte": "NaCl2"}, "/electrolyte", "charges-do-not-cancel"),
        ({"electrolyte": "Xq2O"}, "/electrolyte", "unknown-element"),
        ({"electrolyte": "sugar"}, "/electrolyte", "non-electrolyte"),
        ({"electrolyte": "NaCl", "state": "solid"}, "/state", "ions-cannot-move"),
        ({"electrolyte": "CaCO3", "curriculum": "nowhere"}, "/electrolyte", "insoluble"),
    ],
)
def test_cells_that_cannot_be_answered_name_the_place(
    service: Service, changes: dict[str, Any], pointer: str, code: str
) -> None:
    problem = assert_problem(service.predict(**(GOOD | changes)), 422, code)
    (error,) = problem["errors"]
    assert (error["pointer"], error["code"]) == (pointer, code)
    assert len(error["detail"]) > 20


@pytest.mark.parametrize(
    ("query", "parameter", "code"),
    [
        ("", "electrolyte", "missing-field"),
        ("electrolyte=&curriculum=gcse", "electrolyte", "empty"),
        ("electrolyte=NaCl&curriculum=gcse&ph=acid", "ph", "bad-number"),
        ("electrolyte=NaCl&curriculum=gcse&ph=15", "ph", "out-of-range"),
        ("electrolyte=NaCl&curriculum=gcse&curriculum=igcse", "curriculum", "repeated"),
        ("electrolyte=NaCl&curriculum=gcse&notation=htm", "notation", "not-a-choice"),
        ("electrolyte=NaCl&curriculum=gcse&x=1", "x", "unknown-field"),
        ("electrolyte=Na%00Cl&curriculum=gcse", "electrolyte", "unwanted-character"),
        ("&".join(["electrolyte=NaCl"] * 20) + "&curriculum=gcse", "electrolyte", "too-many"),
    ],
)
def test_wrong_parameters_are_named(service: Service, query: str, parameter: str, code: str) -> None:
    answer = service.ask("GET", f"/v1/predictions?{query}")
    problem = assert_problem(answer, 422, "validation-error")
    found = [(e["in"], e["parameter"], e["code"]) for e in problem["errors"]]
    assert ("query", parameter, code) in found


@pytest.mark.parametrize(
    "query", ["%", "%zz", "&&&", "=", "electrolyte", "electrolyte=%ff", "%ff=1", "electrolyte=" + "x" * 7000]
)
def test_strange_queries_are_no_failure(service: Service, query: str) -> None:
    assert_problem(service.ask("GET", f"/v1/predictions?{query}"), 422, "validation-error")


@pytest.mark.parametrize(
    "path",
    [
        "/nowhere",
        "/v1",
        "/v1/",
        "/v1/predictions/",
        "/v2/predictions",
        "/v1/predictions/x",
        "/%00",
        "/%ff",
        "//v1//",
    ],
)
def test_addresses_that_are_not_there(service: Service, path: str) -> None:
    assert_problem(service.ask("GET", path), 404, "not-found")


@pytest.mark.parametrize("curriculum_id", ["gcsee", "%00", "%ff", "x" * 3000, "..%2f..", "GCS"])
def test_curricula_that_are_not_there(service: Service, curriculum_id: str) -> None:
    answer = service.ask("GET", f"/v1/curricula/{curriculum_id}")
    assert answer.status_code == 404
    assert answer.json()["code"] in {"unknown-curriculum", "not-found"}


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=30),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=10), inner, max_size=4),
    max_leaves=12,
)
CHEMICAL = st.text(alphabet="NaClSO4Cu(H2O).^+-=·²⁺₂→ @dilute molM/³0.5%eē{}[]\u200b\ufeff", max_size=30)
FIELDS = (
    "electrolyte",
    "concentration",
    "cathode",
    "anode",
    "state",
    "supply",
    "temperature",
    "ph",
    "current_density",
)
REQUESTS = st.fixed_dictionaries(
    {"curriculum": st.sampled_from(["gcse", "igcse", "a-level"])},
    optional={name: CHEMICAL | JSON_VALUES | st.lists(CHEMICAL, max_size=3) for name in FIELDS},
)


@given(data=JSON_VALUES | REQUESTS)
@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_json_whatever_makes_the_service_fail(service: Service, data: Any) -> None:
    body = json.dumps(data).encode()
    answer = service.send(body)
    assert answer.status_code in {200, 400, 422}, answer.text
    if answer.status_code != 200:
        assert_problem(answer, answer.status_code, answer.json()["code"])


@given(body=st.binary(max_size=200))
@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_bytes_whatever_make_the_service_fail(service: Service, body: bytes) -> None:
    assert service.send(body).status_code in {200, 400, 422}
    lines = service.predict_lines(body)
    assert lines[-1]["done"] is True
