"""Predictions: one cell by POST or GET."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_body
from ionwright.api.json_reader import check_media_type
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.prediction import PredictionSchema
from ionwright.api.schemas.prediction_request import PredictionRequestSchema, query_parameters

if TYPE_CHECKING:
    from ionwright.api.predictor import Predictor
    from ionwright.api.settings import Settings

TAG = "Predictions"
TAG_TEXT = "What happens in a cell, why, and everything a teacher says about it."

_POST = {
    "operationId": "predictElectrolysis",
    "summary": "Predict what happens in a cell",
    "description": (
        "Send a cell and the curriculum under which to answer. The same request always gets the same bytes,"
        " so it is safe to send it again."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": PredictionRequestSchema}}},
    "responses": {
        "200": json_answer("The prediction.", PredictionSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_GET = {
    "operationId": "lookUpPrediction",
    "summary": "Predict what happens in a cell, by query parameters",
    "description": (
        "The same as POST, as an address that can be linked and cached. For a mixture, repeat `electrolyte`,"
        " each with its concentration as in `NaCl@0.5 mol/dm3`. In an address a plus sign is written %2B."
    ),
    "parameters": query_parameters(),
    "responses": {
        "200": json_answer("The prediction.", PredictionSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def predictions_blueprint(predictor: Predictor, settings: Settings) -> Blueprint:
    """Operations on single predictions."""

    def predict_electrolysis() -> Response:
        environ = request.environ
        if environ.get("CONTENT_TYPE") != JSON or "HTTP_CONTENT_ENCODING" in environ:
            check_media_type(
                environ.get("CONTENT_TYPE") or "", environ.get("HTTP_CONTENT_ENCODING", ""), (JSON,)
            )
        return response(predictor.answer_body(read_body(environ, settings.body_limit)))

    def look_up_prediction() -> Response:
        return conditional_response(
            predictor.answer_query(request.environ.get("QUERY_STRING", ""), request.args)
        )

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/predictions", predict_electrolysis, _POST)
    operation(blueprint, "GET", "/predictions", look_up_prediction, _GET)
    return blueprint
