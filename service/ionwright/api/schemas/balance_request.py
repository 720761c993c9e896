"""Shape of a request to balance an equation or to combine two half-equations, as a body and as query parameters."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from ionwright.api.request_reader import LANGUAGES, MOST_NOTATIONS
from ionwright.api.schemas.base import described, word
from ionwright.api.schemas.presented import PresentedRequestSchema
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.chemistry.notation import NOTATIONS
from ionwright.chemistry.skeleton import MEDIA

_EQUATION_TEXT = (
    "What reacts, an arrow, what forms, in any usual spelling. Numbers in front of the species count only where they"
    " settle between several solutions."
)
_MEDIUM_TEXT = (
    "What may be added: acidic, H2O and H^+; alkaline, H2O and OH^-; neutral, water and whichever ion forms; molten,"
    " O^2-; none, nothing. If left out, alkaline where OH^- is given, else acidic."
)
_OXIDATION_TEXT = "The half-equation that releases electrons, balanced."
_REDUCTION_TEXT = "The half-equation that takes electrons up, balanced."


def _equation(description: str, example: str) -> fields.String:
    return fields.String(
        required=True,
        validate=validate.Length(min=1, max=MAX_EQUATION_LENGTH),
        metadata=described(description, example, pattern=r"\S"),
    )


class BalanceRequestSchema(PresentedRequestSchema):
    """A skeleton and the medium in which it is to be balanced."""

    equation = _equation(_EQUATION_TEXT, "MnO4^- -> Mn^2+")
    medium = word(_MEDIUM_TEXT, MEDIA)


class CombineRequestSchema(PresentedRequestSchema):
    """An oxidation and a reduction, to be added so that the electrons cancel."""

    oxidation = _equation(_OXIDATION_TEXT, "Cu -> Cu^2+ + 2e-")
    reduction = _equation(_REDUCTION_TEXT, "Ag^+ + e- -> Ag")


def balance_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/half-equations/balance, as OpenAPI describes them."""
    medium = {"type": "string", "enum": list(MEDIA)}
    return [
        _text_parameter("equation", _EQUATION_TEXT),
        _parameter("medium", medium, _MEDIUM_TEXT),
        *_shared_parameters(),
    ]


def combine_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/half-equations/combine, as OpenAPI describes them."""
    return [
        _text_parameter("oxidation", _OXIDATION_TEXT),
        _text_parameter("reduction", _REDUCTION_TEXT),
        *_shared_parameters(),
    ]


def _text_parameter(name: str, description: str) -> dict[str, Any]:
    schema = {"type": "string", "minLength": 1, "maxLength": MAX_EQUATION_LENGTH, "pattern": r"\S"}
    return _parameter(name, schema, description) | {"required": True}


def _shared_parameters() -> list[dict[str, Any]]:
    notations = {
        "type": "array",
        "items": {"type": "string", "enum": list(NOTATIONS)},
        "minItems": 1,
        "maxItems": MOST_NOTATIONS,
    }
    language = {"type": "string", "enum": list(LANGUAGES)}
    return [
        _parameter("notation", notations, "Notations of equations, separated by commas.")
        | {"style": "form", "explode": False},
        _parameter("language", language, "Language of the sentences."),
    ]


def _parameter(name: str, schema: dict[str, Any], description: str) -> dict[str, Any]:
    return {"name": name, "in": "query", "description": description, "schema": schema}
