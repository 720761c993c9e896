"""Quantities over the API: by body and by address, every form of a task, and each fault in its place."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

import pytest

from ionwright.api.known_reader import MOST_ASKED
from ionwright.api.problem_kinds import PROBLEM_KINDS
from ionwright.api.process_reader import MOST_PROCESSES
from ionwright.chemistry.amounts.quantity import TOLD

if TYPE_CHECKING:
    from flask.testing import FlaskClient
    from werkzeug.test import TestResponse

PATH = "/v1/quantities"
NICKEL = "Ni^2+ + 2e- -> Ni"
BRACKET: dict[str, Any] = {
    "half_equation": NICKEL,
    "known": {"current": "0.50 A", "time": "20 min"},
    "find": "mass",
    "curriculum": "a-level",
    "notation": ["ascii"],
}
BATH = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"}
SERIES = [
    {"id": "silver cell", "half_equation": "Ag^+ + e- -> Ag"},
    {"id": "copper cell", "half_equation": "Cu^2+ + 2e- -> Cu"},
]


def post(client: FlaskClient, **members: Any) -> TestResponse:
    return client.post(PATH, json=members)


def found(answer: TestResponse) -> list[str]:
    assert answer.status_code == 200, answer.json
    return [one["text"] for one in answer.json["found"]]


def without(members: dict[str, Any], *names: str) -> dict[str, Any]:
    return {name: value for name, value in members.items() if name not in names}


def test_the_nickel_on_the_bracket_is_weighed(client: FlaskClient) -> None:
    answer = post(client, **BRACKET)
    (mass,) = answer.json["found"]
    assert (mass["quantity"], mass["of"], mass["unit"], mass["text"]) == ("mass", "Ni", "g", "0.18 g")
    assert mass["value"] == pytest.approx(0.5 * 1200 / 96500 / 2 * 58.7)
    assert mass["significant_figures"] == 2
    assert answer.json["processes"] == [{"id": "process", "half_equation": {"ascii": NICKEL, "electrons": 2}}]
    assert answer.json["conventions"] == {
        "faraday_constant": "96500 C/mol",
        "relative_atomic_masses": {"Ni": "58.7"},
    }
    assert answer.json["working"][-1]["text"].endswith("≈ 0.18 g")
    assert "public" in answer.headers["Cache-Control"]
    assert answer.headers["ETag"].startswith('"')


@pytest.mark.parametrize(
    "members",
    [
        {"known": [{"quantity": "current", "value": "0.50 A"}, {"quantity": "time", "value": "20 min"}]},
        {"known": {"current": {"value": 0.5, "unit": "A"}, "time": "20 min"}},
        {"known": {"charge": "6.0e2 C"}},
        {"find": ["mass of Ni in g"]},
        {"find": [{"quantity": "mass", "of": "nickel", "process": "process", "unit": "g"}]},
        {"conventions": {}},
        {"conventions": {"gas_collected": "dry", "relative_atomic_masses": {"Ni": 58.7}}},
        {"conventions": {"relative_atomic_masses": {"Ni": "58.7"}, "faraday_constant": "96500 C/mol"}},
    ],
)
def test_a_task_can_be_put_in_several_ways(client: FlaskClient, members: dict[str, Any]) -> None:
    (mass,) = post(client, **(BRACKET | members)).json["found"]
    assert mass["value"] == pytest.approx(0.18248704663)


def test_an_electrode_of_a_cell_stands_for_a_half_equation(client: FlaskClient) -> None:
    task = without(BRACKET, "half_equation") | {"cell": BATH, "electrode": "cathode"}
    assert found(post(client, **task)) == ["0.18 g"]
    inner = without(task, "curriculum") | {"cell": BATH | {"curriculum": "a-level"}}
    assert post(client, **inner).json == post(client, **task).json


def test_both_electrodes_of_a_cell_are_answered(client: FlaskClient) -> None:
    task = without(BRACKET, "half_equation") | {"cell": BATH}
    answer = post(client, **task)
    assert [one["process"] for one in answer.json["found"]] == ["cathode", "anode"]
    assert [one["id"] for one in answer.json["processes"]] == ["cathode", "anode"]


def test_the_same_charge_passes_through_cells_in_series(client: FlaskClient) -> None:
    task = without(BRACKET, "half_equation") | {
        "processes": SERIES,
        "known": [{"quantity": "mass", "of": "Ag", "process": "silver cell", "value": "2.16 g"}],
        "find": ["mass of Cu in mg at copper cell"],
    }
    assert found(post(client, **task)) == ["636 mg"]
    by_phrase = task | {"known": {"mass of Ag at silver cell": "2.16 g"}}
    assert post(client, **by_phrase).json == post(client, **task).json


def test_cells_may_stand_among_the_processes(client: FlaskClient) -> None:
    task = without(BRACKET, "half_equation") | {
        "processes": [{"id": "bracket", "cell": BATH, "electrode": "cathode"}, SERIES[0]],
        "find": ["mass of Ni", "mass of Ag"],
    }
    assert found(post(client, **task)) == ["0.18 g", "0.67 g"]


def test_half_equations_may_share_a_bath(client: FlaskClient) -> None:
    bath = {"bath volume at brine": "500 cm3", "bath concentration of Cl^- at brine": "0.50 mol/dm3"}
    task = without(BRACKET, "half_equation") | {
        "processes": [
            {"id": "rod", "half_equation": "2Cl^- -> Cl2 + 2e-", "bath": "brine"},
            {"id": "plate", "half_equation": "2H2O + 2e- -> H2 + 2OH^-", "bath": "brine"},
        ],
        "known": BRACKET["known"] | bath,
        "find": ["concentration of Cl^- at brine", "concentration change of OH^- at brine"],
    }
    assert found(post(client, **task)) == ["0.49 mol/dm³", "0.012 mol/dm³"]


def test_a_cell_with_a_bath_of_known_volume_goes_through_stages(client: FlaskClient) -> None:
    task = without(BRACKET, "half_equation") | {
        "cell": {"electrolyte": "CuSO4", "concentration": "0.100 mol/dm3"},
        "known": {"current": "0.750 A", "bath_volume": "250 cm3"},
        "find": "exhaustion time of Cu^2+ in min",
    }
    answer = post(client, **task)
    assert found(answer) == ["107 min"]
    first, second = answer.json["stages"]
    assert (first["runs_out"], first["cathode"]["products"]) == (["Cu^2+"], ["Cu"])
    assert first["until"] == second["from"]
    assert second["cathode"]["products"] == ["H2"]
    assert answer.json["ratio"]["moles"] == [{"formula": "Cu", "value": 2}, {"formula": "O2", "value": 1}]


def test_the_charge_of_an_ion_is_found(client: FlaskClient) -> None:
    known = {"current": "1.50 A", "time": "40.0 min", "mass": "0.647 g"}
    task = {"metal": "Cr", "known": known, "find": "ion charge", "curriculum": "a-level"}
    (charge,) = post(client, **task).json["found"]
    assert (charge["value"], charge["text"]) == (3.0, "3")
    assert charge["before_rounding"] == pytest.approx(2.998, abs=0.001)


def test_plain_numbers_are_taken_of_what_has_no_unit(client: FlaskClient) -> None:
    known = BRACKET["known"] | {"efficiency": 0.95}
    assert post(client, **(BRACKET | {"known": known})).json["found"][0]["value"] == pytest.approx(
        0.95 * 0.18248704663
    )


def test_an_uncertainty_is_carried_through(client: FlaskClient) -> None:
    task = BRACKET | {"known": {"current": "0.50 ± 0.01 A", "time": "20.0 min"}}
    (mass,) = post(client, **task).json["found"]
    assert mass["uncertainty"] == pytest.approx(0.18248704663 * 0.02)
    assert mass["text"] == "(0.182 ± 0.004) g"


def test_what_the_task_states_counts_before_the_course(client: FlaskClient) -> None:
    conventions = {
        "faraday_constant": "96485 C/mol",
        "relative_atomic_masses": {"Ni": "58.69"},
        "significant_figures": 5,
    }
    answer = post(client, **(BRACKET | {"conventions": conventions}))
    assert found(answer) == ["0.18248 g"]
    assert answer.json["conventions"]["relative_atomic_masses"] == {"Ni": "58.69"}


def test_gas_over_water_takes_more_room(client: FlaskClient) -> None:
    task = BRACKET | {
        "half_equation": "2H^+ + 2e- -> H2",
        "known": BRACKET["known"] | {"temperature": "20 degC", "pressure": "101 kPa"},
        "find": "volume of H2 in cm3",
    }
    dry = post(client, **task).json
    wet = post(client, **(task | {"conventions": {"gas_collected": "over water"}})).json
    assert (dry["conventions"]["gas_collected"], wet["conventions"]["gas_collected"]) == ("dry", "over water")
    assert wet["found"][0]["value"] / dry["found"][0]["value"] == pytest.approx(101 / (101 - 2.339), rel=1e-3)


# ------------------------------------------------------------------ by address


def get(client: FlaskClient, **parameters: Any) -> TestResponse:
    return client.get(f"{PATH}?{urlencode(parameters, doseq=True)}")


def test_an_address_gets_the_same_bytes_and_a_tag(client: FlaskClient) -> None:
    parameters = {"half_equation": NICKEL, "current": "0.50 A", "time": "20 min", "find": ["mass", "charge"]}
    common = {"curriculum": "a-level", "notation": "ascii"}
    got = get(client, **parameters, **common)
    posted = post(client, **(BRACKET | {"find": ["mass", "charge"]}))
    assert got.data == posted.data
    tag = {"If-None-Match": got.headers["ETag"]}
    again = client.get(f"{PATH}?{urlencode(parameters | common, doseq=True)}", headers=tag)
    assert (again.status_code, again.data) == (304, b"")


def test_constants_in_an_address_are_conventions(client: FlaskClient) -> None:
    common = {"half_equation": NICKEL, "current": "0.50 A", "time": "20 min", "curriculum": "a-level"}
    stated = {"faraday_constant": "96485 C/mol", "significant_figures": "4"}
    assert found(get(client, **common, **stated, find="mass")) == ["0.1825 g"]
    data = {"mass": "0.182 g", "avogadro_constant": "6.02e23 /mol"}
    assert found(get(client, **common, **data, find="elementary charge")) == [
        "1.6e-19 C".replace("e-19", " × 10⁻¹⁹")
    ]


@pytest.mark.parametrize(
    ("parameters", "code", "parameter"),
    [
        ({"current": "-0.50 A"}, "negative-quantity", "current"),
        ({"current": "0.50 s"}, "wrong-dimension", "current"),
        ({"current": ""}, "empty", "current"),
        ({"curent": "1 A"}, "unknown-field", "curent"),
        ({"find": ["mass", "mass in s"]}, "wrong-dimension", "find"),
        ({"find": []}, "missing-field", "find"),
        ({"faraday_constant": "1 A"}, "wrong-dimension", "faraday_constant"),
        ({"significant_figures": "three"}, "bad-number", "significant_figures"),
        ({"significant_figures": "11"}, "out-of-range", "significant_figures"),
        ({"gas_collected": "wet"}, "not-a-choice", "gas_collected"),
        ({"time": ["20 min", "30 min"]}, "repeated", "time"),
        ({"half_equation": "Ni2+ + 2e- -> Qq"}, "unknown-element", "half_equation"),
        ({"curriculum": "nowhere"}, "unknown-curriculum", "curriculum"),
    ],
)
def test_a_fault_names_its_parameter(
    client: FlaskClient, parameters: dict[str, Any], code: str, parameter: str
) -> None:
    right = {"half_equation": NICKEL, "current": "0.50 A", "time": "20 min", "find": "mass"}
    answer = get(client, **(right | {"curriculum": "a-level"} | parameters))
    assert answer.status_code == 422
    error = answer.json["errors"][0]
    assert (error["in"], error["code"], error["parameter"]) == ("query", code, parameter)


def test_a_refusal_tells_how_an_address_writes_a_plus(client: FlaskClient) -> None:
    answer = client.get(
        "/v1/quantities?half_equation=Ni2++2e-->Ni&current=0.50+A&time=20+min&find=mass&curriculum=gcse"
    )
    assert answer.status_code == 422
    assert answer.json["errors"][0]["detail"].endswith("In an address a plus sign is written %2B.")


# ------------------------------------------------------------------ what is refused, and where


def refused(client: FlaskClient, members: dict[str, Any]) -> tuple[str, dict[str, Any]]:
    answer = client.post(PATH, json=members)
    assert answer.status_code == 422
    assert answer.headers["Cache-Control"] == "no-store"
    return answer.json["code"], answer.json["errors"][0]


@pytest.mark.parametrize(
    ("members", "code", "pointer"),
    [
        ({"known": {"current": "-0.50 A"}}, "negative-quantity", "/known/current"),
        ({"known": {"current": "0 A"}}, "zero-quantity", "/known/current"),
        ({"known": {"current": "1e30 A"}}, "absurd-magnitude", "/known/current"),
        ({"known": {"current": "nan A"}}, "not-finite", "/known/current"),
        ({"known": {"current": "1,500 A"}}, "ambiguous-number", "/known/current"),
        ({"known": {"current": "20 min"}}, "wrong-dimension", "/known/current"),
        ({"known": {"efficiency": "120%"}}, "out-of-range", "/known/efficiency"),
        ({"known": {"temperature": "-300 degC"}}, "below-absolute-zero", "/known/temperature"),
        ({"known": {"curent": "1 A"}}, "unknown-quantity", "/known/curent"),
        ({"known": {"mass of Cu": "1 g"}}, "not-in-task", "/known/mass of Cu"),
        ({"known": [{"quantity": "current", "value": "20 min"}]}, "wrong-dimension", "/known/0/value"),
        ({"known": [{"quantity": "curent", "value": "1 A"}]}, "unknown-quantity", "/known/0/quantity"),
        ({"known": [{"quantity": "mass", "of": "Cu", "value": "1 g"}]}, "not-in-task", "/known/0/of"),
        (
            {"known": [{"quantity": "mass", "process": "loft", "value": "1 g"}]},
            "not-in-task",
            "/known/0/process",
        ),
        ({"known": {}}, "needs-more", "/find"),
        ({"find": ["charge", "mass in s"]}, "wrong-dimension", "/find/1"),
        ({"find": [{"quantity": "mass", "unit": "s"}]}, "wrong-dimension", "/find/0/unit"),
        ({"find": [{"quantity": "mass", "of": "Cu"}]}, "not-in-task", "/find/0/of"),
        ({"find": "weight of it all"}, "unknown-quantity", "/find"),
        (
            {"known": {"current": "0.50 A", "time": "20 min", "charge": "900 C"}},
            "contradictory",
            "/known/charge",
        ),
        ({"conventions": {"faraday_constant": "1 A"}}, "wrong-dimension", "/conventions/faraday_constant"),
        (
            {"conventions": {"relative_atomic_masses": {"Ni": "-1"}}},
            "negative-quantity",
            "/conventions/relative_atomic_masses/Ni",
        ),
        ({"half_equation": "Ni^2+ + 2e- -> Cu"}, "not-balanced", "/half_equation"),
        ({"half_equation": "Ni^2+ + e- -> Ni"}, "bad-electron-count", "/half_equation"),
        ({"curriculum": "nowhere"}, "unknown-curriculum", "/curriculum"),
    ],
)
def test_a_refusal_names_its_member(
    client: FlaskClient, members: dict[str, Any], code: str, pointer: str
) -> None:
    told, error = refused(client, BRACKET | members)
    assert (told, error["pointer"]) == (code, pointer)
    assert error["code"] == code
    assert code in PROBLEM_KINDS


@pytest.mark.parametrize(
    ("member", "members", "code", "pointer"),
    [
        ("cell", {"cell": BATH | {"electrolyte": "CaCO3"}}, "insoluble", "/cell/electrolyte"),
        ("cell", {"cell": BATH | {"electrolyte": ["NaCl", "Qq"]}}, "unknown-element", "/cell/electrolyte/1"),
        ("cell", {"cell": BATH | {"curriculum": "nowhere"}}, "unknown-curriculum", "/cell/curriculum"),
        (
            "cell",
            {"cell": BATH | {"electrolyte": "CaCO3", "curriculum": "nowhere"}},
            "insoluble",
            "/cell/electrolyte",
        ),
        ("metal", {"metal": "Qq"}, "unknown-element", "/metal"),
        (
            "processes",
            {"processes": [SERIES[0], {"id": "b", "cell": {"electrolyte": "CaCO3"}}]},
            "insoluble",
            "/processes/1/cell/electrolyte",
        ),
        (
            "processes",
            {"processes": [{"id": "b", "half_equation": "Ag^+ -> Ag"}]},
            "no-electrons",
            "/processes/0/half_equation",
        ),
    ],
)
def test_a_refusal_of_what_runs_names_its_member(
    client: FlaskClient, member: str, members: dict[str, Any], code: str, pointer: str
) -> None:
    task = without(BRACKET, "half_equation", *(["curriculum"] if "nowhere" in str(members) else []))
    told, error = refused(client, task | members)
    assert (told, error["pointer"]) == (code, pointer)
    assert pointer.startswith(f"/{member}")


def test_positions_count_in_the_text_as_it_was_sent(client: FlaskClient) -> None:
    _, error = refused(client, BRACKET | {"known": {"current": "  0.50 x", "time": "20 min"}})
    assert error["position"] == 7
    _, error = refused(client, BRACKET | {"half_equation": " Ni^2+ + 2e- -> Qq"})
    assert error["position"] == 16


FAULTS = [
    ({"known": 5}, "wrong-type", "/known"),
    ({"known": {"current": 0.5}}, "wrong-type", "/known/current"),
    ({"known": {"current": None}}, "wrong-type", "/known/current"),
    ({"known": {"current": {"value": 0.5}}}, "missing-field", "/known/current/unit"),
    ({"known": {"current": "0.5 A" * 60}}, "too-long", "/known/current"),
    ({"known": {"": "1 A"}}, "empty", "/known"),
    ({"known": {"x" * 201: "1 A"}}, "too-long", "/known"),
    ({"known": {f"mass {n}": "1 g" for n in range(41)}}, "too-many", "/known"),
    ({"known": [{"quantity": "mass", "value": "1 g"}] * 41}, "too-many", "/known"),
    ({"known": ["current"]}, "wrong-type", "/known/0"),
    ({"known": [{"value": "1 A"}]}, "missing-field", "/known/0/quantity"),
    ({"known": [{"quantity": "current"}]}, "missing-field", "/known/0/value"),
    (
        {"known": [{"quantity": "current", "value": "1 A", "species": "Ni"}]},
        "unknown-field",
        "/known/0/species",
    ),
    ({"find": []}, "empty", "/find"),
    ({"find": ["mass"] * 41}, "too-many", "/find"),
    ({"find": {"quantity": "mass"}}, "wrong-type", "/find"),
    ({"find": [3]}, "wrong-type", "/find/0"),
    ({"find": [{}]}, "missing-field", "/find/0/quantity"),
    ({"conventions": []}, "wrong-type", "/conventions"),
    ({"conventions": {"faraday_constant": 96500}}, "wrong-type", "/conventions/faraday_constant"),
    ({"conventions": {"faraday": "96500 C/mol"}}, "unknown-field", "/conventions/faraday"),
    ({"conventions": {"significant_figures": 0}}, "out-of-range", "/conventions/significant_figures"),
    ({"conventions": {"significant_figures": True}}, "wrong-type", "/conventions/significant_figures"),
    ({"conventions": {"gas_collected": "wet"}}, "not-a-choice", "/conventions/gas_collected"),
    (
        {"conventions": {"relative_atomic_masses": ["Ni"]}},
        "wrong-type",
        "/conventions/relative_atomic_masses",
    ),
    (
        {"conventions": {"relative_atomic_masses": {"Qq": "1"}}},
        "unknown-element",
        "/conventions/relative_atomic_masses/Qq",
    ),
    (
        {"conventions": {"relative_atomic_masses": {f"E{n}": "1" for n in range(119)}}},
        "too-many",
        "/conventions/relative_atomic_masses",
    ),
    ({"half_equation": 3}, "wrong-type", "/half_equation"),
    ({"half_equation": " "}, "empty", "/half_equation"),
    ({"half_equation": "e" * 5000}, "too-long", "/half_equation"),
    ({"cell": BATH}, "unknown-field", "/cell"),
    ({"electrode": "cathode"}, "unknown-field", "/electrode"),
    ({"processes": SERIES}, "unknown-field", "/half_equation"),
    ({"given": {}}, "unknown-field", "/given"),
    ({"language": "tlh"}, "not-a-choice", "/language"),
    ({"notation": "braille"}, "not-a-choice", "/notation"),
    ({"curriculum": 4}, "wrong-type", "/curriculum"),
]


@pytest.mark.parametrize(("members", "code", "pointer"), FAULTS)
def test_a_fault_of_shape_names_its_member(
    client: FlaskClient, members: dict[str, Any], code: str, pointer: str
) -> None:
    told, error = refused(client, BRACKET | members)
    assert told == "validation-error"
    assert (error["code"], error["pointer"]) == (code, pointer)


@pytest.mark.parametrize(
    ("members", "code", "pointer"),
    [
        ({}, "missing-field", "/half_equation"),
        ({"processes": {}}, "wrong-type", "/processes"),
        ({"processes": []}, "empty", "/processes"),
        ({"processes": [SERIES[0]] * 13}, "too-many", "/processes"),
        ({"processes": ["Ag"]}, "wrong-type", "/processes/0"),
        ({"processes": [{"id": "a"}]}, "missing-field", "/processes/0/half_equation"),
        ({"processes": [{"half_equation": NICKEL}]}, "missing-field", "/processes/0/id"),
        ({"processes": [SERIES[0], SERIES[0]]}, "repeated", "/processes/1/id"),
        ({"processes": [SERIES[0] | {"name": "b"}]}, "unknown-field", "/processes/0/name"),
        (
            {"processes": [{"id": "a", "cell": BATH, "electrode": "left"}]},
            "not-a-choice",
            "/processes/0/electrode",
        ),
        ({"processes": [{"id": "a", "cell": BATH, "bath": "b"}]}, "unknown-field", "/processes/0/bath"),
        ({"cell": 5}, "wrong-type", "/cell"),
        ({"cell": {"electrolite": "NaCl"}}, "unknown-field", "/cell/electrolite"),
        ({"cell": BATH | {"curriculum": "gcse"}}, "not-a-choice", "/cell/curriculum"),
        ({"cell": BATH, "electrode": "left"}, "not-a-choice", "/electrode"),
    ],
)
def test_a_fault_of_what_runs_names_its_member(
    client: FlaskClient, members: dict[str, Any], code: str, pointer: str
) -> None:
    told, error = refused(client, without(BRACKET, "half_equation") | members)
    assert told == "validation-error"
    assert (error["code"], error["pointer"]) == (code, pointer)


def test_all_faults_are_told_at_once(client: FlaskClient) -> None:
    answer = post(client, known={"current": 1}, find=[], curricullum="a-level")
    assert sorted(error["pointer"] for error in answer.json["errors"]) == [
        "/curricullum",
        "/curriculum",
        "/find",
        "/half_equation",
        "/known/current",
    ]


@pytest.mark.parametrize("body", [b"[]", b'"mass"', b"null", b"", b"{"])
def test_a_body_that_is_no_task_is_refused(client: FlaskClient, body: bytes) -> None:
    answer = client.post(PATH, data=body, content_type="application/json")
    assert answer.status_code in (400, 422)
    assert answer.json["errors"][0]["pointer"] == ""


def test_the_same_body_means_another_thing_elsewhere(client: FlaskClient) -> None:
    body = {"electrolyte": "NaCl", "curriculum": "gcse"}
    assert client.post("/v1/predictions", json=body).status_code == 200
    assert post(client, **body).status_code == 422
    assert client.post("/v1/predictions", json=BRACKET).status_code == 422
    assert post(client, **BRACKET).status_code == 200


def test_parameters_beside_a_body_are_refused(client: FlaskClient) -> None:
    answer = client.post(f"{PATH}?find=mass", json=BRACKET)
    assert (answer.status_code, answer.json["errors"][0]["parameter"]) == (422, "find")


def test_the_largest_task_of_which_nothing_is_known_is_refused_at_once(client: FlaskClient) -> None:
    half = "Cr2O7^2- + 14H^+ + 12e- -> 2Cr + 7H2O"
    processes = [{"id": f"bath {number}", "half_equation": half} for number in range(MOST_PROCESSES)]
    start = time.perf_counter()
    answer = post(client, processes=processes, find=list(TOLD)[:MOST_ASKED], curriculum="a-level")
    assert answer.json["code"] == "needs-more"
    assert time.perf_counter() - start < 5


@pytest.mark.parametrize(
    ("value", "figures"),
    [({"value": 0.5, "unit": "A"}, 3), ({"value": 0.5123, "unit": "A"}, 4), ("0.5 A", 1), ("0.500 A", 3)],
)
def test_a_json_number_is_not_punished_for_the_zeros_that_it_cannot_carry(
    client: FlaskClient, value: Any, figures: int
) -> None:
    members = {"known": {"current": value, "time": "1200.0 s"}, "find": "charge"}
    (found,) = post(client, **(BRACKET | members)).json["found"]
    assert found["significant_figures"] == figures
