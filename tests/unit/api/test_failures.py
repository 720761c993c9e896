"""Failures: whatever happens, the answer is a problem document that gives nothing away."""

from __future__ import annotations

import logging
from contextlib import contextmanager
from typing import TYPE_CHECKING

import pytest
from werkzeug.exceptions import TooManyRequests

from ionwright.api import Settings, create_app
from ionwright.curricula.host import Origin, Registry, SetAside

if TYPE_CHECKING:
    from collections.abc import Iterator

    from flask.testing import FlaskClient

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "broken"}
DOOR_CODE = "the museum's cellar door code"


class BrokenCurriculum:
    """A curriculum of a plugin that fails when it is used."""

    id = "broken"

    def __getattr__(self, name: str) -> object:
        raise RuntimeError(DOOR_CODE)


@pytest.fixture
def broken() -> FlaskClient:
    registry = Registry({"broken": BrokenCurriculum()}, {"broken": Origin("plugin", "broken", "1")})  # type: ignore[dict-item]  # a fake
    return create_app(Settings(), registry).test_client()


@contextmanager
def logged(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    with caplog.at_level(logging.ERROR, "ionwright.api"):
        yield


def test_an_unforeseen_failure_is_logged_whole_and_told_by_its_number(
    broken: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    with logged(caplog):
        answer = broken.post("/v1/predictions", json=BRACKET)
    assert answer.status_code == 500
    assert answer.mimetype == "application/problem+json"
    assert answer.json["code"] == "internal-error"
    assert answer.json["instance"].startswith("urn:uuid:")
    assert DOOR_CODE not in answer.text
    assert "Traceback" not in answer.text
    assert answer.json["instance"] in caplog.text
    assert DOOR_CODE in caplog.text


def test_an_unforeseen_failure_is_not_kept(broken: FlaskClient, caplog: pytest.LogCaptureFixture) -> None:
    with logged(caplog):
        first, second = (broken.post("/v1/predictions", json=BRACKET).json["instance"] for _ in range(2))
    assert first != second


def test_a_failing_item_of_a_batch_stops_no_other(
    broken: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    with logged(caplog):
        answer = broken.post("/v1/predictions/batch", json={"items": [BRACKET, {"electrolyte": 5}]})
    assert [result["status"] for result in answer.json["results"]] == [500, 422]
    assert DOOR_CODE not in answer.text


def test_a_failing_line_stops_no_other(broken: FlaskClient, caplog: pytest.LogCaptureFixture) -> None:
    line = '{"electrolyte":"NiSO4","curriculum":"broken"}\n'
    with logged(caplog):
        answer = broken.post("/v1/predictions/batch", data=line * 2, content_type="application/jsonl")
    assert answer.text.count('"status":500') == 2
    assert '{"done":true,"count":2}' in answer.text


def test_a_service_without_curricula_is_alive_but_not_ready() -> None:
    client = create_app(
        Settings(), Registry({}, {}, [SetAside("plugin", "harbour", "it does not load")])
    ).test_client()
    assert client.get("/healthz").status_code == 200
    answer = client.get("/readyz")
    assert answer.status_code == 503
    assert answer.json["code"] == "no-curriculum"
    assert answer.json["set_aside"] == [{"name": "harbour", "kind": "plugin", "reason": "it does not load"}]


def test_a_body_over_the_limit_is_told_with_the_limit() -> None:
    client = create_app(Settings(body_limit=1024)).test_client()
    answer = client.post("/v1/predictions", data=b" " * 1025, content_type="application/json")
    assert answer.status_code == 413
    assert "1024 bytes" in answer.json["detail"]


def test_other_failures_of_http_become_problems_with_their_own_status(client: FlaskClient) -> None:
    app = create_app(Settings())
    app.add_url_rule("/busy", "busy", lambda: (_ for _ in ()).throw(TooManyRequests()))
    answer = app.test_client().get("/busy")
    assert answer.status_code == 429
    assert answer.json["status"] == 429
    assert answer.mimetype == "application/problem+json"
