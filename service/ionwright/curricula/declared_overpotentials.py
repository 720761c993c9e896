"""The keys with which a declaration gives the overpotentials that its course prints, and their faults."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from marshmallow import ValidationError, fields, validate, validates

from ionwright.chemistry.electrode import electrodes
from ionwright.curricula.declared_fields import ClosedSchema, is_electrode
from ionwright.curricula.rules.deposition_potential import Overpotentials

if TYPE_CHECKING:
    from collections.abc import Mapping

_GASES = ("H2", "O2", "Cl2")
_LARGEST_V = 3.0
_WANTED = "two figures are wanted, in volts and without a sign: at 1 and at 100 mA/cm2, such as [0.12, 0.35]"


def _is_pair(pair: object) -> bool:
    return (
        isinstance(pair, list)
        and len(pair) == 2
        and all(isinstance(one, int | float) and not isinstance(one, bool) for one in pair)
        and all(0 <= one <= _LARGEST_V for one in pair)
        and pair[0] <= pair[1]
    )


class OverpotentialsSchema(ClosedSchema):
    """For each gas the materials with their figures, and how to read the table."""

    H2 = fields.Dict(load_default=dict)
    O2 = fields.Dict(load_default=dict)
    Cl2 = fields.Dict(load_default=dict)
    otherwise = fields.String(load_default="graphite", validate=is_electrode)
    margin_V = fields.Float(load_default=0.1, validate=validate.Range(min=0, max=1))
    note = fields.String(load_default="")

    @validates(*_GASES)
    def _is_table(self, table: Mapping[Any, Any], **_: object) -> None:
        faults: dict[str, list[str]] = {}
        for material, pair in table.items():
            if material not in electrodes():
                faults[str(material)] = [f"'{material}' is not an electrode of the tables"]
            elif not _is_pair(pair):
                faults[material] = [_WANTED]
        if faults:
            raise ValidationError(faults)


def overpotentials(table: Mapping[str, Any]) -> Overpotentials:
    """The overpotentials of a table that was loaded without a fault."""
    by_gas = {
        gas: MappingProxyType(
            {material: (float(low), float(high)) for material, (low, high) in table[gas].items()}
        )
        for gas in _GASES
    }
    return Overpotentials(MappingProxyType(by_gas), table["otherwise"])
