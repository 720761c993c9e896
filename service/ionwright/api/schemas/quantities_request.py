"""Shape of a request for quantities, as a body and as query parameters."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from ionwright.api.check_reader import ELECTRODES
from ionwright.api.conventions_reader import MOST_FIGURES, MOST_MASSES, WAYS_OF_COLLECTING
from ionwright.api.known_reader import MOST_ASKED, MOST_KNOWN
from ionwright.api.process_reader import MOST_PROCESSES
from ionwright.api.request_reader import LANGUAGES, MOST_NOTATIONS
from ionwright.api.schemas.base import AnyOf, RequestSchema, described, given_text, word
from ionwright.api.schemas.check_request import QuestionCellSchema
from ionwright.api.schemas.prediction_request import QuantitySchema, quantity
from ionwright.api.schemas.presented import PresentedRequestSchema
from ionwright.api.texts import LONGEST_TEXT
from ionwright.chemistry.amounts.quantity import QUANTITIES, TOLD
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.chemistry.notation import NOTATIONS
from ionwright.teaching.quantities.reading import STATED_CONSTANTS

_HALF_TEXT = "A balanced half-equation, in any usual spelling."
_METAL_TEXT = "Symbol of a metal whose ion has an unknown charge, or a letter such as X for an unknown metal."
_FIND_TEXT = 'A quantity: "mass", "mass of Ni", "mass of Ni in mg", "mass of Ag at silver cell".'
_VALUE_TEXT = (
    'Number and unit in one text, with ± and an uncertainty if there is one: "0.50 ± 0.01 A". Its figures count; a JSON'
    " number, which cannot carry zeros at its end, counts as good to three at least."
)
_CURRICULUM_TEXT = "Id of the curriculum whose constants count; it may stand in a cell instead."
_FIGURES_TEXT = "Significant figures of the answers; if left out, as many as what is known deserves."
_COLLECTED_TEXT = "Whether gases are collected dry, as if left out, or over water."


def _half_equation(**options: Any) -> fields.String:
    return fields.String(
        validate=validate.Length(min=1, max=MAX_EQUATION_LENGTH),
        metadata=described(_HALF_TEXT, "Ni^2+ + 2e- -> Ni", pattern=r"\S"),
        **options,
    )


def _value(description: str, **options: Any) -> AnyOf:
    return AnyOf(
        given_text(_VALUE_TEXT, "0.50 A", "20 min", "0.50 ± 0.01 A", "95%"),
        fields.Nested(QuantitySchema),
        fields.Float(metadata=described("A plain number, of a quantity without a unit only.", 0.95)),
        metadata=described(description),
        **options,
    )


class ProcessSchema(RequestSchema):
    """What runs at one place of the circuit: one of a half-equation, a cell, or a metal of unknown charge."""

    id = given_text("Name of your own, by which quantities are told apart.", "silver cell", required=True)
    half_equation = _half_equation()
    cell = fields.Nested(QuestionCellSchema, metadata=described("A cell that is predicted first."))
    metal = given_text(_METAL_TEXT, "Cr", "X")
    electrode = given_text(
        "Of a cell: cathode or anode, both if left out. Beside a half-equation: a name; half-equations with the same"
        " name share the current of that electrode.",
        "cathode",
        "bracket",
    )
    bath = given_text(
        "Beside a half-equation: a name for its bath; half-equations with the same name share it.", "brine"
    )


class KnownQuantitySchema(RequestSchema):
    """A quantity that is known, of a substance and at a process if that is not clear by itself."""

    quantity = given_text("Name of the quantity.", "mass", "current", required=True)
    of = given_text("Formula or name of the substance.", "Ag", "silver")
    process = given_text("Id of the process.", "silver cell")
    value = _value("Its value.", required=True)


class AskedQuantitySchema(RequestSchema):
    """A quantity that is asked for."""

    quantity = given_text("Name of the quantity.", "mass", "thickness", required=True)
    of = given_text("Formula or name of the substance.", "Cu", "copper")
    process = given_text("Id of the process.", "copper cell")
    unit = given_text("Unit of the answer; a usual one if left out.", "mg")


class RequestConventionsSchema(RequestSchema):
    """What the task states in place of what the course prints."""

    faraday_constant = quantity("Faraday constant.", "96500 C/mol")
    molar_gas_volume = quantity("Volume of one mole of gas.", "24 dm3/mol")
    avogadro_constant = quantity("Avogadro constant.", "6.02e23 /mol")
    elementary_charge = quantity("Charge of one electron.", "1.60e-19 C")
    gas_constant = quantity("Gas constant.", "8.31 J/(mol K)")
    relative_atomic_masses = fields.Dict(
        keys=fields.String(),
        values=_value("Relative atomic mass."),
        metadata=described(
            "Figures by the symbol of the element.", {"Ni": "58.7"}, maxProperties=MOST_MASSES
        ),
    )
    significant_figures = fields.Integer(
        strict=True, validate=validate.Range(1, MOST_FIGURES), metadata=described(_FIGURES_TEXT, 3)
    )
    gas_collected = word(_COLLECTED_TEXT, WAYS_OF_COLLECTING)


class QuantitiesRequestSchema(PresentedRequestSchema):
    """A task about amounts: what runs, what is known, and what is asked for."""

    half_equation = _half_equation()
    cell = fields.Nested(
        QuestionCellSchema, metadata=described("In place of a half-equation: a cell that is predicted first.")
    )
    metal = given_text(_METAL_TEXT, "Cr", "X")
    electrode = word("Of the cell: the electrode that is meant; both if left out.", ELECTRODES)
    processes = fields.List(
        fields.Nested(ProcessSchema),
        validate=validate.Length(min=1, max=MOST_PROCESSES),
        metadata=described("In place of one process: all in one circuit, with the same charge through each."),
    )
    known = AnyOf(
        fields.Dict(
            keys=fields.String(validate=validate.Length(min=1, max=LONGEST_TEXT)),
            values=_value("Its value."),
            metadata=described(
                "Values by the quantity.",
                {"current": "0.50 A", "time": "20 min"},
                {"mass of Ag at silver cell": "2.16 g"},
                maxProperties=MOST_KNOWN,
            ),
        ),
        fields.List(fields.Nested(KnownQuantitySchema), validate=validate.Length(max=MOST_KNOWN)),
        metadata=described("What is known. The quantities are " + ", ".join(TOLD) + "."),
    )
    find = AnyOf(
        given_text(_FIND_TEXT, "mass", "thickness of Ni in um"),
        fields.List(
            AnyOf(given_text(_FIND_TEXT, "mass"), fields.Nested(AskedQuantitySchema)),
            validate=validate.Length(min=1, max=MOST_ASKED),
        ),
        required=True,
        metadata=described("What is asked for: one quantity, or a list of them."),
    )
    curriculum = given_text(_CURRICULUM_TEXT, "a-level")
    conventions = fields.Nested(
        RequestConventionsSchema, metadata=described("What counts in place of what the course prints.")
    )


def quantities_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/quantities, as OpenAPI describes them."""
    short: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT, "pattern": r"\S"}
    half: dict[str, Any] = short | {"maxLength": MAX_EQUATION_LENGTH}
    find = {"type": "array", "items": short, "minItems": 1, "maxItems": MOST_ASKED}
    notations = {"type": "array", "items": {"type": "string", "enum": list(NOTATIONS)}, "minItems": 1}
    return [
        _parameter("half_equation", half, _HALF_TEXT),
        _parameter("metal", short, "In place of a half-equation. " + _METAL_TEXT),
        _parameter("find", find, _FIND_TEXT + " Repeat it for several.")
        | {"required": True, "style": "form", "explode": True},
        _parameter("curriculum", short, "Id of the curriculum whose constants count.") | {"required": True},
        *(_parameter(name, short, _told(name)) for name in TOLD),
        *_presented_parameters(),
        _parameter(
            "notation",
            notations | {"maxItems": MOST_NOTATIONS},
            "Notations of equations, separated by commas.",
        )
        | {"style": "form", "explode": False},
        _parameter("language", {"type": "string", "enum": list(LANGUAGES)}, "Language of the sentences."),
    ]


def conventions_parameters() -> list[dict[str, Any]]:
    """Parameters that stand in place of what the course prints, as OpenAPI describes them."""
    short: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT, "pattern": r"\S"}
    return [
        *(
            _parameter(
                name, short, f"{QUANTITIES[name].noun.capitalize()}, in place of what the course prints."
            )
            for name in STATED_CONSTANTS
        ),
        *_presented_parameters(),
    ]


def _presented_parameters() -> list[dict[str, Any]]:
    figures = {"type": "integer", "minimum": 1, "maximum": MOST_FIGURES}
    return [
        _parameter("significant_figures", figures, _FIGURES_TEXT),
        _parameter("gas_collected", {"type": "string", "enum": list(WAYS_OF_COLLECTING)}, _COLLECTED_TEXT),
    ]


def _told(name: str) -> str:
    kind = QUANTITIES[name]
    unit = "a plain number" if kind.answer_unit == "1" else f"for one in {kind.answer_unit}"
    return f"Known {kind.noun}, {unit}."


def _parameter(name: str, schema: dict[str, Any], description: str) -> dict[str, Any]:
    return {"name": name, "in": "query", "description": description, "schema": schema}
