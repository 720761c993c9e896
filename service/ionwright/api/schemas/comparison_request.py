"""Shape of a request for a comparison, and of the question where curricula disagree."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from ionwright.api.check_reader import ELECTRODES
from ionwright.api.comparison_reader import MOST_COMPARED
from ionwright.api.disagreement_reader import MOST_OFFSET, MOST_OTHERS, MOST_ROWS, USUAL_LIMIT
from ionwright.api.schemas.base import AnyOf, described, given_text
from ionwright.api.schemas.prediction_request import PredictionRequestSchema, query_parameters
from ionwright.api.texts import LONGEST_TEXT

_CURRICULA_TEXT = "Ids of the curricula to compare, each once; all that are loaded if left out."
_ID: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT, "pattern": r"\S"}


class ComparisonRequestSchema(PredictionRequestSchema):
    """A cell and the curricula to compare on it."""

    class Meta(PredictionRequestSchema.Meta):
        """A cell is compared under several curricula, not under one."""

        exclude = ("curriculum",)

    curricula = AnyOf(
        fields.List(
            given_text("Id of a curriculum.", "gcse"), validate=validate.Length(min=1, max=MOST_COMPARED)
        ),
        given_text("Ids with commas between them.", "gcse,igcse"),
        metadata=described(_CURRICULA_TEXT),
    )


def comparison_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/comparisons, as OpenAPI describes them."""
    ids = {"type": "array", "items": _ID, "minItems": 1, "maxItems": MOST_COMPARED}
    of_cell = [one for one in query_parameters() if one["name"] != "curriculum"]
    curricula = _parameter("curricula", ids, f"{_CURRICULA_TEXT} Separated by commas, or repeated.")
    return [*of_cell, curricula | {"style": "form", "explode": False}]


def disagreement_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/comparisons/disagreements, as OpenAPI describes them."""
    others = {"type": "array", "items": _ID, "minItems": 1, "maxItems": MOST_OTHERS}
    limit = {"type": "integer", "minimum": 1, "maximum": MOST_ROWS, "default": USUAL_LIMIT}
    offset = {"type": "integer", "minimum": 0, "maximum": MOST_OFFSET, "default": 0}
    side = {"type": "string", "enum": list(ELECTRODES)}
    return [
        _parameter("curriculum", _ID, "Id of the curriculum whose disagreements are asked for.")
        | {"required": True},
        _parameter("with", others, "Ids of those to hold it against; all others that are loaded if left out.")
        | {"style": "form", "explode": False},
        _parameter("electrode", side, "Only what happens at this electrode; both if left out."),
        _parameter("limit", limit, "Most disagreements on a page."),
        _parameter("offset", offset, "How many disagreements to pass over; see `next_offset`."),
    ]


def _parameter(name: str, schema: dict[str, Any], description: str) -> dict[str, Any]:
    return {"name": name, "in": "query", "description": description, "schema": schema}
