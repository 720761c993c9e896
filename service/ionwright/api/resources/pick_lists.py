"""Pick-lists: the electrolytes and the electrodes that the tables know."""

from __future__ import annotations

from typing import Any

import orjson
from flask import Response, request

from ionwright.api.answers import tagged_answer
from ionwright.api.operations import Blueprint, json_answer, not_modified, operation, problem_answers
from ionwright.api.query_reader import check_no_query, search_members
from ionwright.api.responses import conditional_response
from ionwright.api.schemas.pick_lists import ElectrodesSchema, ElectrolytesSchema
from ionwright.chemistry.electrode import Electrode, electrodes
from ionwright.chemistry.electrolytes import KnownElectrolyte, search_electrolytes

TAG = "Pick-lists"
TAG_TEXT = "What the tables know, for the input boxes of a learning platform."
DEFAULT_LIMIT = 50
MOST_RESULTS = 1000

_SEARCH = {
    "operationId": "listElectrolytes",
    "summary": "Find electrolytes",
    "description": (
        "Electrolytes whose formula or name has the text in it; the first of all of them without a text."
        " Predictions also take combinations of ions that are not in this list."
    ),
    "parameters": [
        {
            "name": "search",
            "in": "query",
            "description": "Part of a formula or of a name.",
            "schema": {"type": "string", "maxLength": 200},
        },
        {
            "name": "limit",
            "in": "query",
            "description": "Most results.",
            "schema": {"type": "integer", "minimum": 1, "maximum": MOST_RESULTS, "default": DEFAULT_LIMIT},
        },
    ],
    "responses": {
        "200": json_answer("The electrolytes.", ElectrolytesSchema),
        **not_modified(),
        **problem_answers(422),
    },
}
_ELECTRODES = {
    "operationId": "listElectrodes",
    "summary": "List the electrodes",
    "description": "All electrodes, with the other words for them that are understood.",
    "responses": {
        "200": json_answer("The electrodes.", ElectrodesSchema),
        **not_modified(),
        **problem_answers(422),
    },
}


def pick_lists_blueprint() -> Blueprint:
    """Operations on pick-lists."""

    def list_electrolytes() -> Response:
        text, limit = search_members(request.args, default=DEFAULT_LIMIT, highest=MOST_RESULTS)
        found = search_electrolytes(text, limit)
        return _tagged({"electrolytes": [_electrolyte(electrolyte) for electrolyte in found]})

    def list_electrodes() -> Response:
        check_no_query(request.args)
        return _tagged({"electrodes": [_electrode(electrode) for electrode in electrodes().values()]})

    blueprint = Blueprint(TAG, __name__, url_prefix="/v1", description=TAG_TEXT)
    operation(blueprint, "GET", "/electrolytes", list_electrolytes, _SEARCH)
    operation(blueprint, "GET", "/electrodes", list_electrodes, _ELECTRODES)
    return blueprint


def _tagged(document: dict[str, Any]) -> Response:
    return conditional_response(tagged_answer(orjson.dumps(document)))


def _electrolyte(known: KnownElectrolyte) -> dict[str, Any]:
    return {
        "formula": known.formula,
        "name": known.name,
        "names": list(known.names),
        "solubility": known.solubility,
        "melts": known.melts,
    }


def _electrode(known: Electrode) -> dict[str, Any]:
    entry = {"id": known.id, "name": known.name, "aliases": list(known.aliases), "behaviour": known.anode}
    return entry | {"note": known.note} if known.note else entry
