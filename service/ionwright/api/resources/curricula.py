"""Curricula: those that are loaded, one of them in full, and one that is still being written."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import orjson
from flask import Response, request

from ionwright.api.answers import BRIEFLY_CACHEABLE, JSON, tagged_answer
from ionwright.api.bodies import read_json_body
from ionwright.api.json_reader import read_json
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.preview_desk import PreviewDesk
from ionwright.api.problems import Fault, Problem
from ionwright.api.query_reader import check_no_query
from ionwright.api.responses import conditional_response, response
from ionwright.api.schemas.curriculum import CurriculaSchema, CurriculumSchema
from ionwright.api.schemas.preview import PreviewRequestSchema, PreviewSchema
from ionwright.curricula import CurriculumFault, describe

if TYPE_CHECKING:
    from ionwright.api.settings import Settings
    from ionwright.curricula.host import Registry

TAG = "Curricula"
TAG_TEXT = "The rule sets under which cells are answered, and where they come from."

_LIST = {
    "operationId": "listCurricula",
    "summary": "List the curricula",
    "description": "What is loaded, and the plugins and files that were set aside, with the reason.",
    "responses": {
        "200": json_answer("The curricula.", CurriculaSchema),
        **not_modified(),
        **problem_answers(422),
    },
}
_GET = {
    "operationId": "getCurriculum",
    "summary": "Show one curriculum",
    "description": "Its conventions, and its discharge rules in words, in the order of their use.",
    "responses": {
        "200": json_answer("The curriculum.", CurriculumSchema),
        **not_modified(),
        **problem_answers(404, 422),
    },
}
_PREVIEW = {
    "operationId": "previewCurriculum",
    "summary": "Try a declaration on a cell",
    "description": (
        "Send the declaration of a curriculum, as it would stand in a file, with a cell: the answer is what the"
        " declared curriculum says of the cell, and its rules in words. All faults of a declaration are told at once."
        " A declaration chooses rules and conventions and runs no code; nothing of it is kept."
    ),
    "requestBody": {"required": True, "content": {JSON: {"schema": PreviewRequestSchema}}},
    "responses": {
        "200": json_answer("The curriculum and the prediction.", PreviewSchema, tagged=False),
        **problem_answers(400, 413, 415, 422),
    },
}


def curricula_blueprint(registry: Registry, settings: Settings) -> Blueprint:
    """Operations on curricula."""
    desk = PreviewDesk(registry)

    def list_curricula() -> Response:
        check_no_query(request.args)
        return _tagged(
            {"curricula": [_entry(registry, i) for i in registry], "set_aside": set_aside(registry)}
        )

    def get_curriculum(curriculum_id: str) -> Response:
        check_no_query(request.args)
        try:
            curriculum = registry[curriculum_id]
        except CurriculumFault as fault:
            detail = str(fault)
            place = Fault(("curriculum_id",), fault.code, detail)
            raise Problem(fault.code, detail, faults=[place], source="path", status=404) from fault
        return _tagged(
            describe(curriculum) | {"origin": _origin(registry, curriculum_id), "status": "active"}
        )

    def preview_curriculum() -> Response:
        return response(desk.answer(read_json(read_json_body(settings.body_limit))))

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "GET", "/curricula", list_curricula, _LIST)
    operation(blueprint, "POST", "/curricula/preview", preview_curriculum, _PREVIEW)
    operation(blueprint, "GET", "/curricula/<curriculum:curriculum_id>", get_curriculum, _GET)
    return blueprint


def set_aside(registry: Registry) -> list[dict[str, str]]:
    """Plugins and files that could not be used, with the reason."""
    return [{"name": item.name, "kind": item.kind, "reason": item.reason} for item in registry.set_aside]


def _tagged(document: dict[str, Any]) -> Response:
    return conditional_response(tagged_answer(orjson.dumps(document), cache_control=BRIEFLY_CACHEABLE))


def _entry(registry: Registry, curriculum_id: str) -> dict[str, Any]:
    curriculum = registry[curriculum_id]
    entry = {
        "id": curriculum.id,
        "title": curriculum.title,
        "region": curriculum.region,
        "stage": curriculum.stage,
    }
    return entry | {"origin": _origin(registry, curriculum_id), "status": "active"}


def _origin(registry: Registry, curriculum_id: str) -> dict[str, str]:
    origin = registry.origins[curriculum_id]
    found = {"kind": origin.kind, "name": origin.name}
    return found | {"version": origin.version} if origin.version else found
