"""The front: plain requests are answered there, with the very answers of the application behind."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.api import Settings, create_app

if TYPE_CHECKING:
    from flask import Flask

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
BODIES = [
    json.dumps(BRACKET),
    json.dumps(BRACKET | {"electrolyte": "CaCO3"}),
    json.dumps(BRACKET | {"catode": "steel"}),
    json.dumps({}),
    "{",
    "",
]


@pytest.fixture
def behind() -> Flask:
    """An application that has no front."""
    app = create_app(Settings())
    app.wsgi_app = app.wsgi_app._application
    return app


@pytest.mark.parametrize("body", BODIES)
def test_the_front_answers_as_the_application_behind_does(app: Flask, behind: Flask, body: str) -> None:
    def answer(of: Flask) -> tuple[int, bytes, dict[str, str]]:
        found = of.test_client().post("/v1/predictions", data=body, content_type="application/json")
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
def test_requests_out_of_the_ordinary_get_the_same_answer(app: Flask, options: dict[str, Any]) -> None:
    padding = " " * options.pop("padding", 0)
    client = app.test_client()
    plain = client.post("/v1/predictions", json=BRACKET)
    other = client.post("/v1/predictions", data=json.dumps(BRACKET) + padding, **options)
    assert other.status_code == 200
    assert (other.data, other.headers["ETag"]) == (plain.data, plain.headers["ETag"])
