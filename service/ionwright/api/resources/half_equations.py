"""Half-equations: balanced from a skeleton, and combined to an overall equation."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Response, request

from ionwright.api.answers import JSON
from ionwright.api.bodies import read_json_body
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.balance import BalanceSchema, CombinationSchema
from ionwright.api.schemas.balance_request import (
    BalanceRequestSchema,
    CombineRequestSchema,
    balance_parameters,
    combine_parameters,
)

if TYPE_CHECKING:
    from ionwright.api.balancing_desk import BalancingDesk
    from ionwright.api.settings import Settings

TAG = "Half-equations"
TAG_TEXT = "Balancing, with the steps on the board and the oxidation numbers, and adding two half-equations."

_BALANCE_TEXT = (
    "Send what reacts and what forms, and the medium. Only what the medium offers is added, and electrons. A whole"
    " redox equation, without electrons, is balanced too and split into its half-equations. If several equations"
    " balance, the problem `several-solutions` shows a basis."
)
_COMBINE_TEXT = (
    "Send an oxidation and a reduction, both balanced. Each is multiplied so that the electrons cancel; what stands"
    " on both sides cancels too, and hydrogen and hydroxide ions that meet become water."
)
_BY_ADDRESS = " In an address a plus sign is written %2B."

_BALANCE = {
    "operationId": "balanceHalfEquation",
    "summary": "Balance a half-equation",
    "description": _BALANCE_TEXT,
    "requestBody": {"required": True, "content": {JSON: {"schema": BalanceRequestSchema}}},
    "responses": {
        "200": json_answer("The balanced equation.", BalanceSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_LOOK_UP_BALANCE = {
    "operationId": "lookUpBalance",
    "summary": "Balance a half-equation, by query parameters",
    "description": _BALANCE_TEXT + _BY_ADDRESS,
    "parameters": balance_parameters(),
    "responses": {
        "200": json_answer("The balanced equation.", BalanceSchema),
        **not_modified(),
        **problem_answers(422),
    },
}
_COMBINE = {
    "operationId": "combineHalfEquations",
    "summary": "Combine two half-equations",
    "description": _COMBINE_TEXT,
    "requestBody": {"required": True, "content": {JSON: {"schema": CombineRequestSchema}}},
    "responses": {
        "200": json_answer("The overall equation.", CombinationSchema),
        **problem_answers(400, 413, 415, 422),
    },
}
_LOOK_UP_COMBINATION = {
    "operationId": "lookUpCombination",
    "summary": "Combine two half-equations, by query parameters",
    "description": _COMBINE_TEXT + _BY_ADDRESS,
    "parameters": combine_parameters(),
    "responses": {
        "200": json_answer("The overall equation.", CombinationSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def half_equations_blueprint(desk: BalancingDesk, settings: Settings) -> Blueprint:
    """Operations that balance and combine half-equations."""

    def balance_half_equation() -> Response:
        return response(desk.balance_body(read_json_body(settings.body_limit)))

    def look_up_balance() -> Response:
        return conditional_response(desk.balance_query(request.args))

    def combine_half_equations() -> Response:
        return response(desk.combine_body(read_json_body(settings.body_limit)))

    def look_up_combination() -> Response:
        return conditional_response(desk.combine_query(request.args))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "POST", "/half-equations/balance", balance_half_equation, _BALANCE)
    operation(blueprint, "GET", "/half-equations/balance", look_up_balance, _LOOK_UP_BALANCE)
    operation(blueprint, "POST", "/half-equations/combine", combine_half_equations, _COMBINE)
    operation(blueprint, "GET", "/half-equations/combine", look_up_combination, _LOOK_UP_COMBINATION)
    return blueprint
