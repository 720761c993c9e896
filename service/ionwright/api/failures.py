"""Every failure of a request as a problem document, whatever raised it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import request
from werkzeug.exceptions import HTTPException, MethodNotAllowed

from ionwright.api.predictor import incident
from ionwright.api.problem_kinds import PROBLEM_KINDS
from ionwright.api.problems import Problem
from ionwright.api.responses import response
from ionwright.api.texts import shown

if TYPE_CHECKING:
    from flask import Flask, Response

_CODES = {kind.status: kind.code for kind in reversed(PROBLEM_KINDS.values()) if kind.status != 422}


def register_failures(app: Flask) -> None:
    """Let an application answer every failure with a problem document."""
    app.register_error_handler(Problem, _answer_problem)
    app.register_error_handler(HTTPException, _answer_http)
    app.register_error_handler(Exception, _answer_unforeseen)


def _answer_problem(problem: Exception) -> Response:
    if not isinstance(problem, Problem):
        return _answer_unforeseen(problem)
    return response(problem.answer())


def _answer_unforeseen(_error: Exception) -> Response:
    return response(incident().answer())


def _answer_http(error: Exception) -> Response:
    if not isinstance(error, HTTPException) or error.code is None or not 400 <= error.code < 500:
        return _answer_unforeseen(error)
    kept = {
        name: ", ".join(sorted(value.split(", ")))
        for name, value in error.get_headers()
        if name.lower() == "allow"
    }
    code = _CODES.get(error.code, "bad-request")
    problem = Problem(code, _detail(error), status=error.code, headers=kept)
    return response(problem.answer())


def _detail(error: HTTPException) -> str:
    if isinstance(error, MethodNotAllowed):
        allowed = " or ".join(sorted(error.valid_methods or ()))
        return f"{request.method} does not fit {shown(request.path)}. Use {allowed}."
    if error.code == 404:
        return f"There is nothing at {shown(request.path)}. GET /openapi.json lists all addresses."
    return f"The request cannot be read: {error.description}"
