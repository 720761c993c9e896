"""The tables of a declaration on how its course writes, counts, marks and what it covers."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from marshmallow import ValidationError, fields, validate, validates_schema

from ionwright.curricula.declared_constants import PrintedConstantsSchema, printed_constants
from ionwright.curricula.declared_fields import ClosedSchema, each_once, one_of, phrases, yes_or_no
from ionwright.curricula.marking import FORMS, STATE_SYMBOLS, MarkingConventions
from ionwright.curricula.model import Conventions
from ionwright.curricula.scope import CourseScope

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["ConventionsSchema", "MarkingSchema", "ScopeSchema", "conventions", "marking", "scope"]


def _forms_field() -> fields.List[str]:
    return fields.List(
        fields.String(validate=one_of("ions", "water")),
        required=True,
        validate=(validate.Length(min=1), each_once),
    )


class _FormsSchema(ClosedSchema):
    acidic = _forms_field()
    neutral = _forms_field()
    alkaline = _forms_field()


class ConventionsSchema(ClosedSchema, PrintedConstantsSchema):
    """How the course writes equations, and the constants that it prints."""

    hydrogen_from = fields.Nested(_FormsSchema, required=True)
    oxygen_from = fields.Nested(_FormsSchema, required=True)
    state_symbols = fields.String(load_default="asked", validate=one_of(*STATE_SYMBOLS))
    oxidation_also_minus = fields.Boolean(load_default=True, truthy={True}, falsy={False})


def _marks() -> fields.Integer:
    return fields.Integer(strict=True, validate=validate.Range(min=0, max=20))


class MarkingSchema(ClosedSchema):
    """How the course marks a half-equation."""

    species_marks = _marks()
    balance_marks = _marks()
    state_symbols = fields.String(validate=one_of(*STATE_SYMBOLS))
    multiples = fields.String(validate=one_of(*FORMS))
    fractions = fields.String(validate=one_of(*FORMS))
    subtracted_electrons = yes_or_no()
    equals_sign = yes_or_no()
    equilibrium_arrow = yes_or_no()
    electron_without_sign = yes_or_no()

    @validates_schema
    def _gives_marks(self, data: Mapping[str, Any], **_: object) -> None:
        if data.get("species_marks", 1) + data.get("balance_marks", 1) == 0:
            raise ValidationError("a line needs at least one mark", "balance_marks")


class ScopeSchema(ClosedSchema):
    """What the course covers."""

    quantities = fields.String(load_default="", validate=validate.Length(max=300))
    electrodes = phrases()
    melts = phrases()
    industry = phrases()
    observations = phrases()
    vocabulary = phrases()


def conventions(table: Mapping[str, Any]) -> Conventions:
    """The conventions of a table that was loaded without a fault."""
    return Conventions(
        hydrogen=_forms(table["hydrogen_from"]),
        oxygen=_forms(table["oxygen_from"]),
        state_symbols=table["state_symbols"],
        oxidation_also_minus=table["oxidation_also_minus"],
        constants=printed_constants(table),
    )


def marking(table: Mapping[str, Any], written_as: Mapping[str, Any]) -> MarkingConventions:
    """The marking conventions; what the table leaves out follows the way in which the course writes."""
    written = {
        "state_symbols": written_as["state_symbols"],
        "subtracted_electrons": written_as["oxidation_also_minus"],
    }
    return MarkingConventions(**(written | dict(table)))


def scope(table: Mapping[str, Any]) -> CourseScope:
    """The scope of a table that was loaded without a fault."""
    lists = {name: tuple(phrases) for name, phrases in table.items() if name != "quantities"}
    return CourseScope(quantities=table["quantities"], **lists)


def _forms(table: Mapping[str, list[str]]) -> Mapping[str, tuple[str, ...]]:
    return MappingProxyType({medium: tuple(forms) for medium, forms in table.items()})
