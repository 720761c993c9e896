"""Demonstrations: a plan of what current for how long shows what should be seen, and where it may be done."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_json_body
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.demonstration import DemonstrationSchema
from ionwright.api.schemas.demonstration_request import DemonstrationRequestSchema, demonstration_parameters

if TYPE_CHECKING:
    from ionwright.api.demonstration_desk import DemonstrationDesk
    from ionwright.api.settings import Settings

TAG = "Demonstrations"
TAG_TEXT = "Plans for the bench: current, time, bath, the air of the room, and where it may be done."

_POST = {
    "operationId": "planDemonstration",
    "summary": "Plan a demonstration",
    "description": (
        "Send a cell and what should be seen: a volume of gas, a mass, the thickness of a coat, or only `visible`. The"
        " plan says which currents do it in the time, which of them to prefer and why, what forms and what is used up,"
        " what the bath must hold, and how toxic gases stand against their short-term limits in the room. The verdict"
        " is `open bench with ventilation`, `fume cupboard` or `not for a classroom`. It is no risk assessment: local"
        " rules and qualified staff come first. What cannot be done in the time is answered, too, with by how much it"
        " fails: see `is_met` and `shortfall`."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": DemonstrationRequestSchema}}},
    "responses": {
        "200": json_answer("The plan.", DemonstrationSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_GET = {
    "operationId": "lookUpDemonstration",
    "summary": "Plan a demonstration, by query parameters",
    "description": (
        "The same as POST, as an address that can be linked and cached; the cell is written as in GET /v1/predictions."
        " Repeat `aim` for several. In an address a plus sign is written %2B."
    ),
    "parameters": demonstration_parameters(),
    "responses": {
        "200": json_answer("The plan.", DemonstrationSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def demonstrations_blueprint(desk: DemonstrationDesk, settings: Settings) -> Blueprint:
    """Operations that plan demonstrations."""

    def plan_demonstration() -> Response:
        return response(desk.answer_body(read_json_body(settings.body_limit)))

    def look_up_demonstration() -> Response:
        return conditional_response(desk.answer_query(request.environ.get("QUERY_STRING", ""), request.args))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/demonstrations", plan_demonstration, _POST)
    operation(blueprint, "GET", "/demonstrations", look_up_demonstration, _GET)
    return blueprint
