"""The keys with which a declaration lists the cells that its course prescribes, and their faults."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from marshmallow import ValidationError, fields, post_load, validate

from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.electrolyte import Ingredient, make_electrolyte
from ionwright.curricula.declared_fields import ClosedSchema, one_of
from ionwright.curricula.rules.prescribed_cells import ANY, INERT, PLATING, PrescribedCell
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Mapping

_MOST_SUBSTANCES = 4


def _is_anode(word: str) -> None:
    if word not in {ANY, INERT, PLATING} and word not in electrodes():
        raise ValidationError(f"'{word}' is neither inert, any, plating nor an electrode of the tables")


class PrescribedCellSchema(ClosedSchema):
    """One prescribed cell."""

    name = fields.String(required=True, validate=validate.Length(min=1, max=120))
    electrolyte = fields.List(
        fields.String(), load_default=list, validate=validate.Length(max=_MOST_SUBSTANCES)
    )
    state = fields.String(
        load_default="aqueous",
        validate=one_of("aqueous", "molten"),
    )
    anode = fields.String(load_default=INERT, validate=_is_anode)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> PrescribedCell:
        formulas = frozenset(_formula(text, data["state"]) for text in data["electrolyte"])
        return PrescribedCell(data["name"], formulas, data["state"], data["anode"])


def _formula(text: str, state: str) -> str:
    """The formula under which cells hold this substance."""
    try:
        electrolyte = make_electrolyte((Ingredient(text),), state, None)
    except IonwrightError as fault:
        raise ValidationError(f"'{text[:40]}' is no electrolyte: {fault.detail}", "electrolyte") from None
    return electrolyte.ingredients[0].compound.formula
