"""Comparisons: one cell under several curricula, and the cells on which curricula disagree."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_json_body
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.comparison import ComparisonSchema
from ionwright.api.schemas.comparison_request import (
    ComparisonRequestSchema,
    comparison_parameters,
    disagreement_parameters,
)
from ionwright.api.schemas.disagreement import DisagreementsSchema

if TYPE_CHECKING:
    from ionwright.api.comparison_desk import ComparisonDesk
    from ionwright.api.settings import Settings

TAG = "Comparisons"
TAG_TEXT = "Where courses agree, where they part, and the rule that makes the difference."

_POST = {
    "operationId": "compareCurricula",
    "summary": "Compare curricula on one cell",
    "description": (
        "Send a cell, and the curricula to compare in `curricula`; all that are loaded if left out. At each electrode"
        " the courses are grouped by what forms; those that cannot decide are a group of their own. `differences` names"
        " for each two groups the first rule that parts them, with its reasons. The order of the ids does not matter."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": ComparisonRequestSchema}}},
    "responses": {
        "200": json_answer("The comparison.", ComparisonSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_GET = {
    "operationId": "lookUpComparison",
    "summary": "Compare curricula on one cell, by query parameters",
    "description": (
        "The same as POST, as an address that can be linked and cached; the cell is written as in GET /v1/predictions."
    ),
    "parameters": comparison_parameters(),
    "responses": {
        "200": json_answer("The comparison.", ComparisonSchema),
        **not_modified(),
        **problem_answers(422),
    },
}
_DISAGREEMENTS = {
    "operationId": "listDisagreements",
    "summary": "List the cells on which curricula disagree",
    "description": (
        "The reverse question. Every electrolyte of the tables that dissolves is judged dilute and concentrated,"
        " between inert electrodes and with an anode of its own metal; acids and sodium salts also with every other"
        " active anode and over mercury; and every melt between inert electrodes. The cells on which a curriculum gives"
        " another answer than those in `with` are grouped by the two rules that make the difference, a page at a time."
        " `cell` with one of its `concentrations` can be sent to POST /v1/comparisons as it is, for the reasons."
    ),
    "parameters": disagreement_parameters(),
    "responses": {
        "200": json_answer("One page of disagreements.", DisagreementsSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def comparisons_blueprint(desk: ComparisonDesk, settings: Settings) -> Blueprint:
    """Operations that compare curricula."""

    def compare_curricula() -> Response:
        return response(desk.answer_body(read_json_body(settings.body_limit)))

    def look_up_comparison() -> Response:
        return conditional_response(desk.answer_query(request.environ.get("QUERY_STRING", ""), request.args))

    def list_disagreements() -> Response:
        raw = request.environ.get("QUERY_STRING", "")
        return conditional_response(desk.answer_disagreements(raw, request.args))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/comparisons", compare_curricula, _POST)
    operation(blueprint, "GET", "/comparisons", look_up_comparison, _GET)
    operation(blueprint, "GET", "/comparisons/disagreements", list_disagreements, _DISAGREEMENTS)
    return blueprint
