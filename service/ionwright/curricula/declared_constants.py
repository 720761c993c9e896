"""The keys with which a declaration gives the printed constants of its course, and their faults."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Final

from marshmallow import Schema, ValidationError, fields, validate, validates

from ionwright.curricula.constant_faults import fault_of_constant, fault_of_mass
from ionwright.curricula.constants import DIMENSIONS, PrintedConstants

if TYPE_CHECKING:
    from collections.abc import Mapping

_LONGEST: Final = 120
_MOST_DECIMALS: Final = 4


def _text() -> fields.String:
    return fields.String(load_default="", validate=validate.Length(max=_LONGEST))


class PrintedConstantsSchema(Schema):
    """The keys of printed constants; an empty text takes away what a base prints."""

    faraday_constant = _text()
    molar_gas_volume = _text()
    gas_conditions = _text()
    other_molar_gas_volumes = fields.Dict(load_default=dict)
    avogadro_constant = _text()
    elementary_charge = _text()
    gas_constant = _text()
    relative_atomic_masses = fields.Dict(load_default=dict)
    relative_atomic_mass_decimals = fields.Integer(
        load_default=None, strict=True, validate=validate.Range(min=0, max=_MOST_DECIMALS)
    )

    @validates(*DIMENSIONS)
    def _is_that_constant(self, text: str, data_key: str) -> None:
        fault = fault_of_constant(data_key, text)
        if fault:
            raise ValidationError(fault)

    @validates("other_molar_gas_volumes")
    def _are_volumes(self, volumes: Mapping[Any, Any], **_: object) -> None:
        faults = {
            conditions: [fault]
            for conditions, text in volumes.items()
            if (fault := fault_of_constant("molar_gas_volume", text))
        }
        if faults:
            raise ValidationError(faults)

    @validates("relative_atomic_masses")
    def _are_masses(self, masses: Mapping[Any, Any], **_: object) -> None:
        faults = {
            symbol: [fault] for symbol, text in masses.items() if (fault := fault_of_mass(symbol, text))
        }
        if faults:
            raise ValidationError(faults)


def printed_constants(table: Mapping[str, Any]) -> PrintedConstants:
    """The printed constants of a conventions table that was loaded without a fault."""
    given = {key: table[key] for key in PrintedConstantsSchema().fields}
    masses = {symbol: text for symbol, text in given.pop("relative_atomic_masses").items() if text}
    volumes = {conditions: text for conditions, text in given.pop("other_molar_gas_volumes").items() if text}
    return PrintedConstants(
        relative_atomic_masses=MappingProxyType(masses),
        other_molar_gas_volumes=MappingProxyType(volumes),
        **given,
    )
