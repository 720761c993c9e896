"""Plans over the API: by body and by address, each fault in its place, and no input that fails the service."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ionwright.api import Settings, create_app
from ionwright.api.demonstration_reader import BENCH_FIELDS, DEMONSTRATION_FIELDS
from ionwright.api.problem_kinds import FAULT_KINDS, PROBLEM_KINDS
from ionwright.api.query_reader import DEMONSTRATION_PARAMETERS

if TYPE_CHECKING:
    from flask.testing import FlaskClient
    from werkzeug.test import TestResponse

PATH = "/v1/demonstrations"
DOCUMENT = Path(__file__).resolve().parents[3] / "openapi" / "ionwright.json"
BATH = {"electrolyte": "NiSO4", "concentration": "0.25 mol/dm3", "cathode": "steel", "anode": "nickel"}
BRACKET: dict[str, Any] = {
    "cell": BATH,
    "aims": "2.0 um of Ni",
    "within": "25 min",
    "cathode_area": "40 cm2",
    "curriculum": "a-level",
    "notation": ["ascii"],
}


def post(client: FlaskClient, **members: Any) -> TestResponse:
    return client.post(PATH, json=members)


def fault(answer: TestResponse) -> tuple[str, str]:
    assert answer.status_code == 422, answer.json
    (one,) = answer.json["errors"]
    return one["code"], one.get("pointer", one.get("parameter"))


def test_the_coat_of_the_bracket_is_planned(client: FlaskClient) -> None:
    plan = post(client, **BRACKET).json
    charge = 2e-4 * 40 * 8.90 / 58.7 * 2 * 96500
    assert plan["charge"]["value"] == pytest.approx(charge)
    assert plan["is_met"] is True
    assert plan["recommended"] in plan["currents"]
    row = plan["recommended"]
    assert row["fits"]
    assert row["current"]["unit"] == "A"
    assert row["current"]["value"] * row["time"]["value"] * 60 == pytest.approx(charge)
    assert plan["half_equations"]["cathode"] == {"ascii": "Ni^2+ + 2e- -> Ni", "electrons": 2}
    assert plan["verdict"]["where"] == "open bench with ventilation"
    assert plan["working"][-1]["text"].startswith("t = Q ÷ I")


def test_a_plan_tells_what_is_seen_and_how_the_products_are_tested(client: FlaskClient) -> None:
    plan = post(client, cell={"electrolyte": "H2SO4"}, aims="visible H2", curriculum="gcse").json
    assert set(plan["observations"]) == {"cathode", "anode"}
    assert any("bubbles" in text.lower() for text in plan["observations"]["cathode"])
    assert [test["product"] for test in plan["tests"]] == ["H2", "O2"]
    undecided = post(client, cell={"electrolyte": "KMnO4"}, aims="visible O2", curriculum="gcse").json
    assert set(undecided["observations"]) == {"anode"}


@pytest.mark.parametrize(
    "members",
    [
        {"aims": ["2.0 um of nickel"]},
        {"aims": {"value": "2.0 um", "of": "Ni"}},
        {"aims": [{"quantity": "thickness", "of": "Ni", "value": {"value": 2.0, "unit": "um"}}]},
        {"aims": [{"quantity": "thickness of Ni", "electrode": "cathode", "value": "2.0 um"}]},
        {"within": {"value": 25, "unit": "min"}},
        {"electrode_area": "90 cm2"},
        {"conventions": {}},
    ],
)
def test_a_plan_can_be_asked_for_in_several_ways(client: FlaskClient, members: dict[str, Any]) -> None:
    plan = post(client, **(BRACKET | members)).json
    assert plan["charge"]["value"] == post(client, **BRACKET).json["charge"]["value"]


def test_one_area_holds_for_both_electrodes(client: FlaskClient) -> None:
    members = {name: value for name, value in BRACKET.items() if name != "cathode_area"}
    plan = post(client, **members, electrode_area="40 cm2", anode_area="80 cm2").json
    densities = plan["recommended"]["current_densities"]
    assert densities["cathode"]["value"] == pytest.approx(2 * densities["anode"]["value"])


def test_an_address_answers_as_a_body_does(client: FlaskClient) -> None:
    query = BATH | {name: BRACKET[name] for name in ("within", "cathode_area", "curriculum")}
    answer = client.get(PATH, query_string=query | {"aim": "2.0 um of Ni", "notation": "ascii"})
    assert answer.status_code == 200
    assert answer.json == post(client, **BRACKET).json
    again = client.get(
        PATH,
        query_string=answer.request.query_string.decode(),
        headers={"If-None-Match": answer.headers["ETag"]},
    )
    assert again.status_code == 304


def test_conventions_stand_in_an_address(client: FlaskClient) -> None:
    query = BATH | {name: BRACKET[name] for name in ("within", "cathode_area", "curriculum")}
    stated = {"faraday_constant": "96485 C/mol", "gas_collected": "over water"}
    answer = client.get(
        PATH,
        query_string=query
        | stated
        | {"aim": "2.0 um of Ni", "significant_figures": "4", "notation": "ascii"},
    )
    body = BRACKET | {"conventions": stated | {"significant_figures": 4}}
    assert answer.json == post(client, **body).json
    assert answer.json["charge"]["value"] == pytest.approx(2e-4 * 40 * 8.90 / 58.7 * 2 * 96485)
    assert answer.json["charge"]["significant_figures"] == 4


def test_several_aims_stand_in_an_address(client: FlaskClient) -> None:
    query = {"electrolyte": "H2SO4", "aim": ["10 cm3 of H2", "8 cm3 of O2"], "curriculum": "gcse"}
    assert [aim["decides"] for aim in client.get(PATH, query_string=query).json["aims"]] == [False, True]


@pytest.mark.parametrize(
    ("members", "code", "pointer"),
    [
        ({"aims": "1 g of Zn"}, "not-formed", "/aims"),
        ({"aims": ["visible", {"value": "1 g", "of": "Zn"}]}, "not-formed", "/aims/1/of"),
        ({"aims": {"value": "-1 g", "of": "Ni"}}, "negative-quantity", "/aims/value"),
        (
            {"aims": {"value": "1 g", "quantity": "heaviness", "of": "Ni"}},
            "unknown-quantity",
            "/aims/quantity",
        ),
        ({"aims": []}, "empty", "/aims"),
        ({"aims": ["visible"] * 13}, "too-many", "/aims"),
        ({"aims": 3}, "wrong-type", "/aims"),
        ({"aims": {"of": "Ni"}}, "missing-field", "/aims/value"),
        ({"within": "0 min"}, "zero-quantity", "/within"),
        ({"within": "3 A"}, "wrong-dimension", "/within"),
        ({"within": 20}, "wrong-type", "/within"),
        ({"efficiency": 1.5}, "out-of-range", "/efficiency"),
        ({"air_changes": -2}, "negative-quantity", "/air_changes"),
        ({"room_volume": "0 m3"}, "zero-quantity", "/room_volume"),
        ({"gas_temperature": "-300 degC"}, "below-absolute-zero", "/gas_temperature"),
        ({"conventions": {"faraday_constant": "3 A"}}, "wrong-dimension", "/conventions/faraday_constant"),
        ({"cell": BATH | {"electrolyte": "CaCO3"}}, "insoluble", "/cell/electrolyte"),
        ({"cell": BATH | {"electrolyte": ["NiSO4", "Xx"]}}, "unknown-element", "/cell/electrolyte/1"),
        ({"cell": 3}, "wrong-type", "/cell"),
        ({"curriculum": "nowhere"}, "unknown-curriculum", "/curriculum"),
        ({"curriculum": 5}, "wrong-type", "/curriculum"),
        ({"room": "100 m3"}, "unknown-field", "/room"),
    ],
)
def test_a_fault_is_told_in_its_place(
    client: FlaskClient, members: dict[str, Any], code: str, pointer: str
) -> None:
    assert fault(post(client, **(BRACKET | members))) == (code, pointer)


@pytest.mark.parametrize(
    ("query", "code", "parameter"),
    [
        ({"aim": "1 g of Zn"}, "not-formed", "aim"),
        ({"aim": "1 um of Ni"}, "needs-more", "cathode_area"),
        ({"aim": "visible", "electrode_area": "3 g"}, "wrong-dimension", "electrode_area"),
        ({"aim": "visible", "cathode": "wood"}, "non-conducting-electrode", "cathode"),
        ({"aim": "visible", "ph": "low"}, "bad-number", "ph"),
        ({"aim": "visible", "see": "visible"}, "unknown-field", "see"),
        ({"aim": "visible", "faraday_constant": "3 A"}, "wrong-dimension", "faraday_constant"),
        ({"aim": "visible", "significant_figures": "many"}, "bad-number", "significant_figures"),
        ({"aim": "visible", "gas_collected": "over oil"}, "not-a-choice", "gas_collected"),
        ({}, "missing-field", "aim"),
    ],
)
def test_a_fault_in_an_address_is_told_by_its_parameter(
    client: FlaskClient, query: dict[str, str], code: str, parameter: str
) -> None:
    full = {"electrolyte": "NiSO4", "anode": "nickel", "curriculum": "a-level"} | query
    assert fault(client.get(PATH, query_string=full)) == (code, parameter)


def test_the_document_and_the_readers_know_the_same_fields() -> None:
    document = json.loads(DOCUMENT.read_text(encoding="utf-8"))
    described = document["components"]["schemas"]["DemonstrationRequest"]["properties"]
    assert sorted(described) == sorted(DEMONSTRATION_FIELDS)
    parameters = document["paths"][PATH]["get"]["parameters"]
    assert sorted(parameter["name"] for parameter in parameters) == sorted(DEMONSTRATION_PARAMETERS)


CELLS = [
    {"electrolyte": "NaCl", "concentration": "2 mol/dm3"},
    {"electrolyte": "NaCl", "concentration": "0.1 mol/dm3"},
    {"electrolyte": "CuSO4", "concentration": "dilute"},
    {"electrolyte": "KMnO4"},
    {"electrolyte": "PbBr2", "state": "molten"},
    {"electrolyte": "AgNO3", "concentration": "0.05 mol/dm3", "anode": "silver"},
    {"electrolyte": "HNO3", "concentration": "6 mol/dm3"},
    {"electrolyte": "Al2O3", "state": "molten"},
    BATH,
]


@pytest.mark.parametrize("cell", CELLS, ids=lambda cell: str(cell["electrolyte"]))
@pytest.mark.parametrize(
    "more", [{}, {"within": "2 s", "air_changes": 3, "bath_volume": "20 cm3"}], ids=["calm", "hasty"]
)
def test_every_member_of_every_plan_is_described(
    client: FlaskClient, closed_components: Any, cell: dict[str, str], more: dict[str, Any]
) -> None:
    schema = {"$ref": "#/components/schemas/Demonstration", "components": closed_components}
    answer = post(client, cell=cell, aims="visible", curriculum="gcse", **more)
    assert answer.status_code == 200, answer.json
    jsonschema.Draft202012Validator(schema).validate(answer.json)
    assert "null" not in json.dumps(answer.json)


NUMBER = st.sampled_from(
    ["0", "-1", "1e-9", "1e30", "0.20", "10", "5", "nan", "1e400", "1,500", "", "½", "3 ± 1"]
)
UNIT = st.sampled_from(
    ["g", "cm3", "um", "mmol", "A", "min", "s", "m3", "cm2", "%", "/h", "degC", "kPa", "", "parsec", "C"]
)
QUANTITY = st.builds("{} {}".format, NUMBER, UNIT) | st.text(max_size=12)
VALUE = QUANTITY | st.none() | st.integers(-3, 3) | st.floats() | st.lists(QUANTITY, max_size=2)
PRODUCT = st.sampled_from(["Cu", "H2", "O2", "Cl2", "copper", "e-", "H2O", "Cu^2+", "", "Xx", "((", "SO42-"])
AIM = (
    st.builds("{} of {}".format, QUANTITY | st.just("visible"), PRODUCT)
    | st.just("visible")
    | st.fixed_dictionaries(
        {"value": VALUE | st.just("visible")},
        optional={
            "quantity": st.sampled_from(
                ["mass", "volume", "thickness", "amount", "number of particles", "current"]
            ),
            "of": PRODUCT,
            "electrode": st.sampled_from(["cathode", "anode", "side"]),
        },
    )
    | VALUE
)
REQUEST = st.fixed_dictionaries(
    {"cell": st.sampled_from([*CELLS, {}, None]), "aims": AIM | st.lists(AIM, max_size=3)},
    optional=dict.fromkeys(BENCH_FIELDS, VALUE) | {"language": VALUE, "conventions": VALUE},
)


@given(request=REQUEST)
@settings(max_examples=400, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_request_fails_the_service(request: dict[str, Any]) -> None:
    answer = SHARED.post(
        PATH, data=json.dumps(request | {"curriculum": "gcse"}).encode(), content_type="application/json"
    )
    assert answer.status_code in {200, 400, 422}, answer.json
    if answer.status_code != 200:
        assert answer.json["code"] in PROBLEM_KINDS
        for one in answer.json["errors"]:
            assert one["code"] in PROBLEM_KINDS or one["code"] in FAULT_KINDS
            assert one["detail"]
            assert one["in"] == "body"


SHARED = create_app(Settings()).test_client()
