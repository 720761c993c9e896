"""Balancing and combining over the API: by body and by address, answers, problems, bounds."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

import pytest

if TYPE_CHECKING:
    from flask.testing import FlaskClient
    from werkzeug.test import TestResponse

BALANCE, COMBINE = "/v1/half-equations/balance", "/v1/half-equations/combine"
COPPER, SILVER = "Cu -> Cu^2+ + 2e-", "Ag^+ + e- -> Ag"


def post(client: FlaskClient, path: str, **members: Any) -> TestResponse:
    return client.post(path, json=members)


def test_a_skeleton_is_balanced(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="MnO4- -> Mn2+", medium="acidic", notation=["ascii"])
    assert answer.status_code == 200
    assert answer.json["half_equation"] == {"ascii": "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O", "electrons": 5}
    assert (answer.json["kind"], answer.json["electrons"], answer.json["side"]) == ("reduction", 5, "left")
    assert [step["equation"]["ascii"] for step in answer.json["steps"]] == [
        "MnO4^- -> Mn^2+",
        "MnO4^- -> Mn^2+ + 4H2O",
        "MnO4^- + 8H^+ -> Mn^2+ + 4H2O",
        "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",
    ]
    changing = [n for n in answer.json["oxidation_numbers"] if n["changes"]]
    assert [(n["element"], n["species"], n["side"], n["value"]) for n in changing] == [
        ("Mn", "MnO4^-", "left", 7),
        ("Mn", "Mn^2+", "right", 2),
    ]


def test_an_oxidation_number_that_is_not_decided_says_so_and_why(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="CuFeSe2 -> Cu^2+ + Fe^3+ + SeO4^2-", medium="acidic")
    copper = answer.json["oxidation_numbers"][0]
    assert (copper["element"], copper["text"]) == ("Cu", "not decided")
    assert copper["because"].startswith("No rule fixes Cu or Fe here")
    assert "value" not in copper
    decided = [number for number in answer.json["oxidation_numbers"] if "value" in number]
    assert decided
    assert not any("because" in number for number in decided)


def test_a_whole_oxidation_number_is_a_number_and_a_fraction_is_text(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="S2O3^2- -> S4O6^2-", medium="acidic")
    values = {n["species"]: n["value"] for n in answer.json["oxidation_numbers"] if n["element"] == "S"}
    assert values == {"S2O3^2-": 2, "S4O6^2-": "5/2"}


def test_all_notations_are_given_unless_some_are_asked_for(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="Ni^2+ -> Ni", medium="none")
    assert set(answer.json["half_equation"]) == {
        "tokens",
        "ascii",
        "text",
        "html",
        "mathml",
        "latex",
        "spoken",
        "electrons",
    }


def test_two_half_equations_are_combined(client: FlaskClient) -> None:
    answer = post(client, COMBINE, oxidation=COPPER, reduction=SILVER, notation=["ascii"])
    assert answer.status_code == 200
    assert answer.json["overall_equation"] == {"ascii": "2Ag^+ + Cu -> 2Ag + Cu^2+"}
    assert answer.json["oxidation"]["multiplier"] == 1
    assert answer.json["reduction"]["multiplier"] == 2
    assert answer.json["electrons"] == 2
    assert answer.json["steps"][-1]["equation"] == answer.json["overall_equation"]


def test_what_is_common_to_both_sides_cancels(client: FlaskClient) -> None:
    answer = post(
        client,
        COMBINE,
        oxidation="2H2O - 4e- -> O2 + 4H+",
        reduction="2H2O + 2e- -> H2 + 2OH-",
        notation="ascii",
    )
    assert answer.json["overall_equation"]["ascii"] == "2H2O -> 2H2 + O2"


def test_copper_refined_moves_from_one_electrode_to_the_other(client: FlaskClient) -> None:
    answer = post(client, COMBINE, oxidation=COPPER, reduction="Cu^2+ + 2e- -> Cu")
    assert answer.json["overall_equation"]["ascii"] == "Cu -> Cu"
    assert len(answer.json["notes"]) == 1


@pytest.mark.parametrize(
    ("path", "members"),
    [
        (BALANCE, {"equation": "Cl2 -> Cl^- + ClO3^-", "medium": "alkaline", "notation": "ascii,text"}),
        (COMBINE, {"oxidation": COPPER, "reduction": SILVER}),
    ],
)
def test_an_address_gets_the_same_bytes_and_a_tag(
    client: FlaskClient, path: str, members: dict[str, str]
) -> None:
    posted = client.post(path, json=members)
    got = client.get(f"{path}?{urlencode(members)}")
    assert got.status_code == 200
    assert got.data == posted.data
    assert "public" in got.headers["Cache-Control"]
    again = client.get(f"{path}?{urlencode(members)}", headers={"If-None-Match": got.headers["ETag"]})
    assert (again.status_code, again.data) == (304, b"")


def test_the_same_body_means_another_thing_elsewhere(client: FlaskClient) -> None:
    body = {"equation": "MnO4- -> Mn2+", "medium": "acidic"}
    assert client.post(BALANCE, json=body).status_code == 200
    assert client.post(COMBINE, json=body).status_code == 422
    assert client.post("/v1/predictions", json=body).status_code == 422


@pytest.mark.parametrize(
    ("path", "members", "code", "pointer"),
    [
        (BALANCE, {"equation": "Zn^2+ + SO4^2- -> Zn", "medium": "acidic"}, "no-solution", "/equation"),
        (BALANCE, {"equation": "Cl^- + Br^- -> Cl2 + Br2"}, "several-solutions", "/equation"),
        (BALANCE, {"equation": "Xx -> Cl2"}, "unknown-element", "/equation"),
        (BALANCE, {"equation": "Cl2"}, "unreadable-formula", "/equation"),
        (COMBINE, {"oxidation": COPPER, "reduction": "Zn -> Zn^2+ + 2e-"}, "both-oxidations", "/reduction"),
        (COMBINE, {"oxidation": SILVER, "reduction": SILVER}, "both-reductions", "/oxidation"),
        (COMBINE, {"oxidation": SILVER, "reduction": COPPER}, "wrong-way-round", ""),
        (COMBINE, {"oxidation": "Cu -> Cu^2+ + e-", "reduction": SILVER}, "not-balanced", "/oxidation"),
        (COMBINE, {"oxidation": "Cu -> Zn^2+ + e-", "reduction": SILVER}, "not-balanced", "/oxidation"),
        (COMBINE, {"oxidation": "H2O -> H2O", "reduction": SILVER}, "no-electrons", "/oxidation"),
        (COMBINE, {"oxidation": COPPER, "reduction": "Ag^+ + e- -> "}, "unreadable-formula", "/reduction"),
    ],
)
def test_refusals_name_the_field(
    client: FlaskClient, path: str, members: dict[str, str], code: str, pointer: str
) -> None:
    answer = client.post(path, json=members)
    assert answer.status_code == 422
    assert answer.mimetype == "application/problem+json"
    assert answer.json["code"] == code
    assert [error["pointer"] for error in answer.json["errors"]] == [pointer]


def test_several_solutions_come_with_a_basis(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="Cl^- + Br^- -> Cl2 + Br2", notation=["ascii"])
    assert answer.json["basis"] == [
        {"ascii": "2Cl^- -> Cl2 + 2e-", "electrons": 2},
        {"ascii": "2Br^- -> Br2 + 2e-", "electrons": 2},
    ]


def test_the_position_counts_in_the_text_that_was_sent(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="  Cl2 -> Cx^-")
    (error,) = answer.json["errors"]
    assert error["position"] == len("  Cl2 -> ") + 1 or error["position"] == len("  Cl2 -> ")


@pytest.mark.parametrize(
    ("path", "members", "pointers"),
    [
        (BALANCE, {}, ["/equation"]),
        (BALANCE, {"equation": 5, "medium": "vinegar"}, ["/equation", "/medium"]),
        (BALANCE, {"equation": " "}, ["/equation"]),
        (BALANCE, {"equation": "H" * 501}, ["/equation"]),
        (BALANCE, {"equation": "H -> H2", "half": 1}, ["/half"]),
        (BALANCE, {"equation": "H -> H2", "notation": ["braille"]}, ["/notation/0"]),
        (BALANCE, {"equation": "H -> H2", "language": "tlh"}, ["/language"]),
        (COMBINE, {"oxidation": None}, ["/oxidation", "/reduction"]),
    ],
)
def test_fields_are_checked_all_at_once(
    client: FlaskClient, path: str, members: dict[str, Any], pointers: list[str]
) -> None:
    answer = client.post(path, json=members)
    assert (answer.status_code, answer.json["code"]) == (422, "validation-error")
    assert [error["pointer"] for error in answer.json["errors"]] == pointers


def test_another_word_for_a_medium_is_answered_with_ours(client: FlaskClient) -> None:
    answer = post(client, BALANCE, equation="Cl2 -> Cl^-", medium="basic")
    assert answer.json["detail"] == '"medium" is "basic", which is called "alkaline" here.'


def test_a_body_that_is_no_object_is_refused(client: FlaskClient) -> None:
    answer = client.post(BALANCE, json=["MnO4- -> Mn2+"])
    assert answer.json["code"] == "validation-error"
    assert client.post(BALANCE, data="x", content_type="text/plain").status_code == 415


@pytest.mark.parametrize("query", ["", "equation=H&equation=H2", "equation=H->H2&mediun=acidic"])
def test_queries_are_read_as_strictly(client: FlaskClient, query: str) -> None:
    answer = client.get(f"{BALANCE}?{query}")
    assert (answer.status_code, answer.json["code"]) == (422, "validation-error")
    assert {error["in"] for error in answer.json["errors"]} == {"query"}


@pytest.mark.parametrize(
    "equation",
    ["(" * 240 + "H" + ")" * 240 + " -> H2", "H9999999 -> H2", " + ".join(["H"] * 120) + " -> H2"],
)
def test_hostile_equations_are_refused_at_once(client: FlaskClient, equation: str) -> None:
    start = time.perf_counter()
    answer = post(client, BALANCE, equation=equation)
    assert time.perf_counter() - start < 0.25
    assert answer.status_code == 422


def test_a_refusal_tells_how_an_address_writes_a_plus(client: FlaskClient) -> None:
    told = "In an address a plus sign is written %2B."
    lost = client.get(f"{BALANCE}?equation=Ni2++2e-->Ni")
    assert (lost.status_code, told in lost.json["errors"][0]["detail"]) == (422, True)
    kept = client.get(f"{BALANCE}?{urlencode({'equation': 'Qq^2+ + 2e- -> Qq'})}")
    assert (kept.status_code, told in kept.json["errors"][0]["detail"]) == (422, False)
