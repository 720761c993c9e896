"""The front: plain requests are answered there, with the very answers of the application behind."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest
from werkzeug.test import Client

from ionwright.api import Settings, create_app
from ionwright.api.front import PlainRequestsInFront

if TYPE_CHECKING:
    from flask import Flask

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
NICKEL = {
    "half_equation": "Ni^2+ + 2e- -> Ni",
    "known": {"current": "0.50 A", "time": "20 min"},
    "find": "mass",
    "curriculum": "a-level",
}
PREDICTIONS, QUANTITIES = "/v1/predictions", "/v1/quantities"
BODIES = [
    (PREDICTIONS, json.dumps(BRACKET)),
    (PREDICTIONS, json.dumps(BRACKET | {"electrolyte": "CaCO3"})),
    (PREDICTIONS, json.dumps(BRACKET | {"catode": "steel"})),
    (QUANTITIES, json.dumps(NICKEL)),
    (QUANTITIES, json.dumps(NICKEL | {"find": "weight"})),
    (QUANTITIES, json.dumps(NICKEL | {"fnd": "mass"})),
    *((path, body) for path in (PREDICTIONS, QUANTITIES) for body in ("{}", "{", "")),
]


@pytest.fixture
def behind() -> Flask:
    """An application that has no front."""
    app = create_app(Settings())
    app.wsgi_app = app.wsgi_app._application
    return app


@pytest.mark.parametrize(("path", "body"), BODIES)
def test_the_front_answers_as_the_application_behind_does(
    app: Flask, behind: Flask, path: str, body: str
) -> None:
    def answer(of: Flask) -> tuple[int, bytes, dict[str, str]]:
        found = of.test_client().post(path, data=body, content_type="application/json")
        return found.status_code, found.data, dict(found.headers)

    assert answer(app) == answer(behind)
    assert answer(app) == answer(behind)


@pytest.mark.parametrize(
    "options",
    [
        {"content_type": "application/json; charset=utf-8"},
        {"content_type": "Application/JSON"},
        {"content_type": "application/json", "padding": 5000},
    ],
)
@pytest.mark.parametrize(("path", "members"), [(PREDICTIONS, BRACKET), (QUANTITIES, NICKEL)])
def test_requests_out_of_the_ordinary_get_the_same_answer(
    app: Flask, path: str, members: dict[str, Any], options: dict[str, Any]
) -> None:
    sent = json.dumps(members) + " " * options.get("padding", 0)
    client = app.test_client()
    plain = client.post(path, json=members)
    other = client.post(path, data=sent, content_type=options["content_type"])
    assert other.status_code == 200
    assert (other.data, other.headers["ETag"]) == (plain.data, plain.headers["ETag"])


def test_the_front_answers_plain_requests_itself(app: Flask, behind: Flask) -> None:
    front = app.wsgi_app
    reached: list[str] = []

    def application(environ: dict[str, Any], start_response: Any) -> Any:
        reached.append(environ["PATH_INFO"])
        return behind.wsgi_app(environ, start_response)

    alone = PlainRequestsInFront(application, front._answers, longest=front._longest)
    client = Client(alone)
    for path, members in ((PREDICTIONS, BRACKET), (QUANTITIES, NICKEL)):
        assert client.post(path, json=members).status_code == 200
    assert reached == []
    assert client.post(f"{QUANTITIES}?find=mass", json=NICKEL).status_code == 422
    assert client.get("/healthz").status_code == 200
    assert reached == [QUANTITIES, "/healthz"]
