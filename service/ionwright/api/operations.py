"""Building blocks for describing operations to the OpenAPI document, and for registering them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from flask_smorest import Blueprint

from ionwright.api.problems import PROBLEM_JSON
from ionwright.api.schemas.problem import ProblemSchema

if TYPE_CHECKING:
    from collections.abc import Callable

    from flask import Response
    from marshmallow import Schema

_ETAG = {"description": "Strong entity tag of these bytes.", "schema": {"type": "string"}}
_CACHE = {"description": "How long the answer may be kept.", "schema": {"type": "string"}}
_PROBLEMS = {
    400: "The body or the request cannot be read.",
    404: "There is nothing with this name.",
    413: "The body is too long.",
    415: "The media type of the body is not one that is read here.",
    422: "The request cannot be answered: the problem names the field and what would be right.",
    503: "No curriculum is loaded.",
}


__all__ = ["Blueprint", "json_answer", "not_modified", "operation", "problem_answers"]


def operation(
    blueprint: Blueprint, method: str, rule: str, view: Callable[..., Response], description: dict[str, Any]
) -> None:
    """Register a view under a method and an address, with its description for the document."""
    documented = blueprint.doc(**description)(view)
    blueprint.add_url_rule(rule, endpoint=description["operationId"], view_func=documented, methods=[method])


def json_answer(description: str, schema: type[Schema], *, tagged: bool = True) -> dict[str, Any]:
    """Describe an answer in JSON, with an entity tag if it has one."""
    answer: dict[str, Any] = {"description": description, "content": {"application/json": {"schema": schema}}}
    if tagged:
        answer["headers"] = {"ETag": _ETAG, "Cache-Control": _CACHE}
    return answer


def problem_answers(*statuses: int) -> dict[str, Any]:
    """Describe the problems that an operation may answer with."""
    return {
        str(status): {
            "description": _PROBLEMS[status],
            "content": {PROBLEM_JSON: {"schema": ProblemSchema}},
        }
        for status in statuses
    }


def not_modified() -> dict[str, Any]:
    """Describe the answer to a sender that holds these bytes already."""
    return {"304": {"description": "The sender holds these bytes already.", "headers": {"ETag": _ETAG}}}
