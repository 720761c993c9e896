"""Quantities: a task about amounts, solved and worked as on the board."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_json_body
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.quantities import QuantitiesSchema
from ionwright.api.schemas.quantities_request import QuantitiesRequestSchema, quantities_parameters

if TYPE_CHECKING:
    from ionwright.api.quantities_desk import QuantitiesDesk
    from ionwright.api.settings import Settings

TAG = "Quantities"
TAG_TEXT = "How much, how long, how thick: any quantity of an electrolysis from any others, with the working."

_POST = {
    "operationId": "solveQuantities",
    "summary": "Work out quantities of an electrolysis",
    "description": (
        "Send what runs (a half-equation, a cell, or several in one circuit), what is known, and what is asked for."
        " Any quantity can be known and any can be asked for. The answer has the figures that the texts of the knowns"
        " deserve, the value in full, and the steps as a teacher writes them, in the constants of the curriculum."
        " What is given twice is checked; if too little is given, the problem `needs-more` says what would be enough."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": QuantitiesRequestSchema}}},
    "responses": {
        "200": json_answer("The answers and the working.", QuantitiesSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_GET = {
    "operationId": "lookUpQuantities",
    "summary": "Work out quantities of one process, by query parameters",
    "description": (
        "The same as POST for one half-equation or metal, as an address that can be linked and cached. Every quantity"
        " is a parameter of its own; repeat `find` for several. In an address a plus sign is written %2B."
    ),
    "parameters": quantities_parameters(),
    "responses": {
        "200": json_answer("The answers and the working.", QuantitiesSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def quantities_blueprint(desk: QuantitiesDesk, settings: Settings) -> Blueprint:
    """Operations that work out quantities."""

    def solve_quantities() -> Response:
        return response(desk.answer_body(read_json_body(settings.body_limit)))

    def look_up_quantities() -> Response:
        return conditional_response(desk.answer_query(request.environ.get("QUERY_STRING", ""), request.args))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/quantities", solve_quantities, _POST)
    operation(blueprint, "GET", "/quantities", look_up_quantities, _GET)
    return blueprint
