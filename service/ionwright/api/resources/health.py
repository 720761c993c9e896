"""Health: whether the process is alive, and whether it can answer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import orjson

from ionwright import __version__
from ionwright.api.answers import JSON, Answer
from ionwright.api.operations import Blueprint, json_answer, operation, problem_answers
from ionwright.api.problems import Problem
from ionwright.api.resources.curricula import set_aside
from ionwright.api.responses import response
from ionwright.api.schemas.health import HealthSchema, ReadinessSchema

if TYPE_CHECKING:
    from flask import Response

    from ionwright.curricula.host import Registry

TAG = "Health"
TAG_TEXT = "For the machinery that starts and watches the service."

_ALIVE = {
    "operationId": "getHealth",
    "summary": "Say whether the process is alive",
    "responses": {"200": json_answer("It is alive.", HealthSchema, tagged=False)},
}
_READY = {
    "operationId": "getReadiness",
    "summary": "Say whether the service can answer",
    "description": "Also lists the plugins and files that were set aside, with the reason.",
    "responses": {
        "200": json_answer("It can answer.", ReadinessSchema, tagged=False),
        **problem_answers(503),
    },
}


def health_blueprint(registry: Registry) -> Blueprint:
    """Operations for health checks; query parameters of checking machinery are passed over."""

    def get_health() -> Response:
        return _fresh({"status": "ok", "version": __version__})

    def get_readiness() -> Response:
        aside = set_aside(registry)
        if not len(registry):
            detail = "No curriculum is loaded, so no cell can be answered. Mend what was set aside."
            raise Problem("no-curriculum", detail, members={"set_aside": aside})
        ids = list(registry)
        return _fresh({"status": "ready", "version": __version__, "curricula": ids, "set_aside": aside})

    blueprint = Blueprint(TAG, __name__, description=TAG_TEXT)
    operation(blueprint, "GET", "/healthz", get_health, _ALIVE)
    operation(blueprint, "GET", "/readyz", get_readiness, _READY)
    return blueprint


def _fresh(document: dict[str, Any]) -> Response:
    headers = (("Content-Type", JSON), ("Cache-Control", "no-store"))
    return response(Answer(200, orjson.dumps(document), headers))
