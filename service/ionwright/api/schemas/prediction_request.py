"""Shape of a request for a prediction, as a body and as query parameters."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from ionwright.api.request_reader import (
    HIGHEST_PH,
    LANGUAGES,
    LOWEST_PH,
    MOST_INGREDIENTS,
    MOST_NOTATIONS,
)
from ionwright.api.schemas.base import AnyOf, RequestSchema, described, given_text
from ionwright.api.schemas.presented import PresentedRequestSchema
from ionwright.api.texts import LONGEST_UNIT
from ionwright.chemistry.cell import STATES_OF_ELECTROLYTE, SUPPLIES
from ionwright.chemistry.notation import NOTATIONS


class QuantitySchema(RequestSchema):
    """A number with its unit; the text form keeps the significant figures."""

    value = fields.Float(required=True, metadata=described("The number.", 0.25))
    unit = fields.String(
        required=True,
        validate=validate.Length(min=1, max=LONGEST_UNIT),
        metadata=described("The unit.", "mol/dm3", pattern=r"\S"),
    )


def quantity(description: str, *examples: str) -> AnyOf:
    """Field for a quantity, as a text or as an object."""
    return AnyOf(
        given_text("Number and unit in one text.", *examples),
        fields.Nested(QuantitySchema),
        metadata=described(description),
    )


class IngredientSchema(RequestSchema):
    """A substance of a mixture with a concentration of its own."""

    substance = given_text("Formula or name.", "KI", "potassium iodide", required=True)
    concentration = quantity("Its concentration.", "0.1 mol/dm3", "dilute")


def _substance() -> list[fields.Field[Any]]:
    return [
        given_text(
            "Formula or name, followed by @ and a concentration if it has its own.",
            "NiSO4",
            "NaCl@0.5 mol/dm3",
        ),
        fields.Nested(IngredientSchema),
    ]


_STATE_TEXT = f"State of the electrolyte: {', '.join(STATES_OF_ELECTROLYTE)}; aqueous if left out."
_SUPPLY_TEXT = "Kind of current: dc, direct, if left out; ac, alternating, is understood and refused."


class PredictionRequestSchema(PresentedRequestSchema):
    """A cell and the curriculum under which to answer."""

    electrolyte = AnyOf(
        *_substance(),
        fields.List(AnyOf(*_substance()), validate=validate.Length(min=1, max=MOST_INGREDIENTS)),
        required=True,
        metadata=described("What is in the cell: one substance, or a list of those in a mixture."),
    )
    concentration = quantity(
        "Concentration of every substance without its own: a quantity, or dilute or concentrated.",
        "0.25 mol/dm3",
        "dilute",
    )
    state = given_text(_STATE_TEXT, *STATES_OF_ELECTROLYTE)
    cathode = given_text("Material of the negative electrode; graphite if left out.", "steel", "Pt")
    anode = given_text("Material of the positive electrode; graphite if left out.", "nickel", "carbon")
    supply = given_text(_SUPPLY_TEXT, *SUPPLIES)
    temperature = quantity("Temperature of the electrolyte.", "25 degC")
    ph = fields.Float(
        validate=validate.Range(LOWEST_PH, HIGHEST_PH),
        metadata=described("pH of the solution, if it was set.", 4.5),
    )
    current_density = quantity("Current density at the electrodes.", "20 mA/cm2")
    curriculum = given_text("Id of the curriculum; GET /v1/curricula lists them.", "gcse", required=True)


class BatchRequestSchema(RequestSchema):
    """Many cells at once. What is wrong with one item is answered in its place and stops no other."""

    items = fields.List(
        AnyOf(
            fields.Nested(PredictionRequestSchema),
            fields.Raw(metadata=described("Anything else is a problem.")),
        ),
        required=True,
        validate=validate.Length(min=1, max=1000),
        metadata=described("Requests for predictions, up to 1000."),
    )


def query_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/predictions, as OpenAPI describes them."""
    texts = {
        "concentration": "Concentration of every substance without its own, such as 0.25 mol/dm3 or dilute.",
        "cathode": "Material of the negative electrode; graphite if left out.",
        "anode": "Material of the positive electrode; graphite if left out.",
        "temperature": "Temperature with its unit, such as 25 degC.",
        "current_density": "Current density with its unit, such as 20 mA/cm2.",
    }
    short: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": 200, "pattern": r"\S"}
    several: dict[str, Any] = {"type": "array", "items": short, "minItems": 1, "maxItems": MOST_INGREDIENTS}
    notations = {"type": "array", "items": {"type": "string", "enum": list(NOTATIONS)}, "minItems": 1}
    ph = {"type": "number", "minimum": LOWEST_PH, "maximum": HIGHEST_PH}
    electrolyte = _parameter(
        "electrolyte", several, "Formula or name; repeat it for a mixture, as NaCl@0.5 mol/dm3."
    )
    curriculum = _parameter("curriculum", short, "Id of the curriculum; GET /v1/curricula lists them.")
    return [
        electrolyte | {"required": True, "style": "form", "explode": True},
        curriculum | {"required": True},
        *(_parameter(name, short, description) for name, description in texts.items()),
        _parameter("state", short, _STATE_TEXT),
        _parameter("supply", short, _SUPPLY_TEXT),
        _parameter("ph", ph, "pH of the solution, if it was set."),
        _parameter(
            "notation",
            notations | {"maxItems": MOST_NOTATIONS},
            "Notations of equations, separated by commas.",
        )
        | {"style": "form", "explode": False},
        _parameter("language", {"type": "string", "enum": list(LANGUAGES)}, "Language of the sentences."),
    ]


def _parameter(name: str, schema: dict[str, Any], description: str) -> dict[str, Any]:
    return {"name": name, "in": "query", "description": description, "schema": schema}
