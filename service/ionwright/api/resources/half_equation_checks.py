"""Checks of half-equations: a student's line against what was asked, by POST only and never to be stored."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_json_body
from ionwright.api.operations import Blueprint, json_answer, operation, problem_answers
from ionwright.api.responses import response
from ionwright.api.schemas.check_request import CheckBatchRequestSchema, CheckRequestSchema
from ionwright.api.schemas.marking import MarkingBatchSchema, MarkingSchema

if TYPE_CHECKING:
    from flask import Response

    from ionwright.api.marking_desk import MarkingDesk
    from ionwright.api.settings import Settings

TAG = "Marking"
TAG_TEXT = (
    "A student's line against what was asked: verdict, marks, faults and feedback. Nothing is kept or logged."
)

_CHECK = {
    "operationId": "checkHalfEquation",
    "summary": "Check a student's half-equation",
    "description": (
        "Send the line and what was asked: an electrode of a cell under a curriculum, or the half-equations that"
        " are right. The line is read in the student's favour, in any of the spellings that people type. The"
        " answer is 200 also for a wrong or unreadable line; a problem means that the question cannot be asked."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": CheckRequestSchema}}},
    "responses": {
        "200": json_answer("The marking.", MarkingSchema, tagged=False),
        **problem_answers(400, 413, 415, 422),
    },
}
_BATCH = {
    "operationId": "checkHalfEquationBatch",
    "summary": "Check a class set of half-equations",
    "description": (
        "Up to 1000 lines, in `items`. The question stands beside `items` and holds for all of them, or an item"
        " has its own. A `ref` comes back with its result. An item that cannot be read gets a problem, which has a"
        " `status`, in its place; pointers are relative to the item."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": CheckBatchRequestSchema}}},
    "responses": {
        "200": json_answer("One result for each answer.", MarkingBatchSchema, tagged=False),
        **problem_answers(400, 413, 415, 422),
    },
}


def half_equation_checks_blueprint(desk: MarkingDesk, settings: Settings) -> Blueprint:
    """Operations that check what students wrote."""

    def check_half_equation() -> Response:
        return response(desk.answer_body(read_json_body(settings.body_limit)))

    def check_half_equation_batch() -> Response:
        return response(desk.answer_batch(read_json_body(settings.body_limit), settings.batch_limit))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/half-equations/check", check_half_equation, _CHECK)
    operation(blueprint, "POST", "/half-equations/check/batch", check_half_equation_batch, _BATCH)
    return blueprint
