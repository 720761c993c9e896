"""The keys with which a declaration gives the printed constants of its course, and their faults."""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Final

from marshmallow import Schema, ValidationError, fields, validate, validates

from ionwright.chemistry.element import ELEMENTS
from ionwright.curricula.constants import PrintedConstants

if TYPE_CHECKING:
    from collections.abc import Mapping

_LONGEST: Final = 120
_MOST_DECIMALS: Final = 4
_FIGURE: Final = re.compile(r"[0-9]{1,3}(?:\.[0-9]{1,4})?\Z")
_FARTHEST: Final = 0.05
"""A printed mass that is farther from the table, relative to it, is a slip: an atomic number, or another element's."""


def _fault_of_mass(symbol: str, text: object) -> str:
    element = ELEMENTS.get(symbol)
    if element is None:
        return f"'{symbol}' is not the symbol of an element"
    if not isinstance(text, str):
        return 'Not a valid string: write the figure in quotes, such as "35.5"'
    if not text:
        return ""
    if not _FIGURE.match(text) or float(text) == 0:
        return f"'{text[:20]}' is not a figure such as 35.5"
    tabled = element.relative_atomic_mass
    if tabled is not None and abs(float(text) - tabled) > _FARTHEST * tabled:
        return f"'{text}' is far from {tabled:g}, the relative atomic mass of {element.name}"
    return ""


def _text() -> fields.String:
    return fields.String(load_default="", validate=validate.Length(max=_LONGEST))


class PrintedConstantsSchema(Schema):
    """The keys of printed constants; an empty text takes away what a base prints."""

    faraday_constant = _text()
    molar_gas_volume = _text()
    gas_conditions = _text()
    avogadro_constant = _text()
    elementary_charge = _text()
    gas_constant = _text()
    relative_atomic_masses = fields.Dict(load_default=dict)
    relative_atomic_mass_decimals = fields.Integer(
        load_default=None, strict=True, validate=validate.Range(min=0, max=_MOST_DECIMALS)
    )

    @validates("relative_atomic_masses")
    def _are_masses(self, masses: Mapping[Any, Any], **_: object) -> None:
        faults = {
            symbol: [fault] for symbol, text in masses.items() if (fault := _fault_of_mass(symbol, text))
        }
        if faults:
            raise ValidationError(faults)


def printed_constants(table: Mapping[str, Any]) -> PrintedConstants:
    """The printed constants of a conventions table that was loaded without a fault."""
    given = {key: table[key] for key in PrintedConstantsSchema().fields}
    masses = {symbol: text for symbol, text in given.pop("relative_atomic_masses").items() if text}
    return PrintedConstants(relative_atomic_masses=MappingProxyType(masses), **given)
