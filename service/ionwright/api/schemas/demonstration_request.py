"""Shape of a request for the plan of a demonstration, as a body and as query parameters."""

from __future__ import annotations

from typing import Any, Final

from marshmallow import fields, validate

from ionwright.api.check_reader import ELECTRODES
from ionwright.api.demonstration_reader import BENCH_FIELDS, MOST_AIMS
from ionwright.api.schemas.base import AnyOf, RequestSchema, described, given_text, word
from ionwright.api.schemas.check_request import QuestionCellSchema
from ionwright.api.schemas.prediction_request import QuantitySchema, quantity, query_parameters
from ionwright.api.schemas.presented import PresentedRequestSchema
from ionwright.api.schemas.quantities_request import RequestConventionsSchema, conventions_parameters
from ionwright.api.texts import LONGEST_TEXT
from ionwright.teaching.demonstrations.aims import QUANTITIES_OF_AIMS

_AIM_TEXT: Final = (
    'What should be seen: "10 cm3 of H2", "2 um of Ni", "0.20 g of Cu", "visible Ni", or only "visible".'
)
_TEXTS: Final = {
    "within": "How long the current may flow: a time, a span such as 10 to 20 min, or a lesson, as if left out.",
    "current": "The current that is set; if left out, one is recommended.",
    "highest_current": "The most that the supply gives; about 5 A, as of a school supply, if left out.",
    "electrode_area": "Area of each electrode under the surface.",
    "cathode_area": "Area of the cathode under the surface; it counts before electrode_area.",
    "anode_area": "Area of the anode under the surface; it counts before electrode_area.",
    "bath_volume": "Volume of the electrolyte.",
    "room_volume": "Volume of the room; a small school laboratory if left out.",
    "air_changes": "How often an hour the air of the room is renewed; no ventilation is reckoned if left out.",
    "efficiency": "Current efficiency at the electrode of the aims; all of the current if left out.",
    "gas_temperature": "Temperature of the gases that are collected, in place of the molar volume of the course.",
    "gas_pressure": "Their pressure.",
}


class AimSchema(RequestSchema):
    """What should be seen of one product."""

    value = AnyOf(
        given_text("A quantity, or the word visible.", "10 cm3", "2 um", "visible"),
        fields.Nested(QuantitySchema),
        required=True,
        metadata=described("How much of it."),
    )
    quantity = given_text(
        f"One of {', '.join(QUANTITIES_OF_AIMS)}; if left out, what the unit of the value measures.", "volume"
    )
    of = given_text("Formula or name of the product, if there is a choice.", "H2", "nickel")
    electrode = word("Electrode, if both give the product.", ELECTRODES)


def _aim() -> list[fields.Field[Any]]:
    return [given_text(_AIM_TEXT, "10 cm3 of H2", "visible Ni"), fields.Nested(AimSchema)]


def _or_number(name: str) -> AnyOf:
    return AnyOf(
        given_text("Number and unit in one text.", BENCH_FIELDS[name]),
        fields.Nested(QuantitySchema),
        fields.Float(metadata=described("A plain number.", 3 if name == "air_changes" else 0.95)),
        metadata=described(_TEXTS[name]),
    )


def _bench(name: str) -> AnyOf:
    return quantity(_TEXTS[name], BENCH_FIELDS[name])


class DemonstrationRequestSchema(PresentedRequestSchema):
    """A cell, what should be seen, and what bench, room and lesson allow."""

    cell = fields.Nested(
        QuestionCellSchema, required=True, metadata=described("The cell that is to be shown.")
    )
    aims = AnyOf(
        *_aim(),
        fields.List(AnyOf(*_aim()), validate=validate.Length(min=1, max=MOST_AIMS)),
        required=True,
        metadata=described(
            "What should be seen: one aim, or a list; the one that takes most charge decides."
        ),
    )
    within = quantity(_TEXTS["within"], "20 min", "10 to 20 min", "a lesson")
    current = _bench("current")
    highest_current = _bench("highest_current")
    electrode_area = _bench("electrode_area")
    cathode_area = _bench("cathode_area")
    anode_area = _bench("anode_area")
    bath_volume = _bench("bath_volume")
    room_volume = _bench("room_volume")
    air_changes = _or_number("air_changes")
    efficiency = _or_number("efficiency")
    gas_temperature = _bench("gas_temperature")
    gas_pressure = _bench("gas_pressure")
    curriculum = given_text("Id of the curriculum; it may stand in the cell instead.", "gcse")
    conventions = fields.Nested(
        RequestConventionsSchema, metadata=described("What counts in place of what the course prints.")
    )


def demonstration_parameters() -> list[dict[str, Any]]:
    """Parameters of GET /v1/demonstrations, as OpenAPI describes them."""
    short: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT, "pattern": r"\S"}
    aims = {"type": "array", "items": short, "minItems": 1, "maxItems": MOST_AIMS}
    told = [
        {"name": name, "in": "query", "description": f"{text} Such as {BENCH_FIELDS[name]}.", "schema": short}
        for name, text in _TEXTS.items()
    ]
    aim: dict[str, Any] = {"name": "aim", "in": "query", "description": f"{_AIM_TEXT} Repeat it for several."}
    return [
        *query_parameters(),
        aim | {"schema": aims, "required": True, "style": "form", "explode": True},
        *told,
        *conventions_parameters(),
    ]
