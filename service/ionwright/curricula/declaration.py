"""A curriculum declared as data: TOML text to a Curriculum, with all faults of a text at once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from marshmallow import ValidationError, fields, validate

from ionwright.curricula.declared_cells import PrescribedCellSchema
from ionwright.curricula.declared_conventions import (
    ConventionsSchema,
    MarkingSchema,
    ScopeSchema,
    conventions,
    marking,
    scope,
)
from ionwright.curricula.declared_electrodes import (
    AnodeSchema,
    CathodeSchema,
    ConcentrationSchema,
    anode_rules,
    cathode_rules,
)
from ionwright.curricula.declared_fields import ClosedSchema, one_of
from ionwright.curricula.declared_overpotentials import OverpotentialsSchema
from ionwright.curricula.faults import CurriculumFileFault
from ionwright.curricula.model import Curriculum
from ionwright.curricula.rules.prescribed_cells import PrescribedCells

if TYPE_CHECKING:
    from ionwright.curricula.model import DischargeRule

FORMAT = 1
_LONGEST = 64 * 1024
_ID = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*\Z")


def is_id(text: object) -> bool:
    """Whether this can be the id of a curriculum: lower-case words joined by hyphens."""
    return isinstance(text, str) and _ID.match(text) is not None


class DeclarationSchema(ClosedSchema):
    """A whole declaration."""

    format = fields.Integer(
        required=True, strict=True, validate=validate.Equal(FORMAT, error=f"must be {FORMAT}")
    )
    id = fields.String(
        required=True, validate=validate.Regexp(_ID, error="must be lower-case words joined by hyphens")
    )
    title = fields.String(required=True, validate=validate.Length(min=1, max=120))
    region = fields.String(load_default="")
    stage = fields.String(load_default="")
    summary = fields.String(load_default="")
    based_on = fields.String()
    cathode = fields.Nested(CathodeSchema, required=True)
    anode = fields.Nested(AnodeSchema, required=True)
    concentration = fields.Nested(ConcentrationSchema, load_default=lambda: ConcentrationSchema().load({}))
    overpotentials = fields.Nested(OverpotentialsSchema, load_default=lambda: OverpotentialsSchema().load({}))
    prescribed_cells = fields.List(fields.Nested(PrescribedCellSchema), load_default=list)
    conventions = fields.Nested(ConventionsSchema, required=True)
    marking = fields.Nested(MarkingSchema, load_default=dict)
    scope = fields.Nested(ScopeSchema, load_default=lambda: ScopeSchema().load({}))
    certainty = fields.Dict(
        keys=fields.String(),
        values=fields.String(validate=one_of("high", "medium", "low")),
        load_default=dict,
    )
    sources = fields.List(fields.String(), load_default=list)


def read_declaration(
    text: str, origin: str, bases: Mapping[str, Mapping[str, Any]] = MappingProxyType({})
) -> tuple[Curriculum, Mapping[str, Any]]:
    """The curriculum that a TOML text declares, and the declaration in full as data.

    Parameters
    ----------
    origin
        What to call the text in a fault, such as its file name.
    bases
        Full declarations by id, from which ``based_on`` may inherit.

    Raises
    ------
    CurriculumFileFault
        With every fault of the text and the key path of each.
    """
    if len(text) > _LONGEST:
        raise CurriculumFileFault(origin, (("", f"the text is longer than {_LONGEST} characters"),))
    try:
        data: dict[str, Any] = tomllib.loads(text)
    except (ValueError, RecursionError) as fault:  # a number of 5000 digits and deep nesting raise these
        raise CurriculumFileFault(origin, (("", f"not readable as TOML: {fault}"),)) from None
    data = _inherit(data, bases, origin)
    try:
        loaded = DeclarationSchema().load(data)
    except ValidationError as fault:
        raise CurriculumFileFault(origin, tuple(_flatten(fault.messages_dict))) from None
    return _curriculum(loaded), data


def _inherit(data: dict[str, Any], bases: Mapping[str, Mapping[str, Any]], origin: str) -> dict[str, Any]:
    base = data.pop("based_on", None)
    if base is None:
        return data
    if not isinstance(base, str) or base not in bases:
        raise CurriculumFileFault(
            origin, (("based_on", f"no curriculum '{base}' to build on; known: {', '.join(bases)}"),)
        )
    # what is summed up of the base need not hold for what changes it
    return _merged(bases[base], {"summary": f"Builds on {bases[base]['title']}."} | data)


def _merged(base: Mapping[str, Any], over: Mapping[str, Any]) -> dict[str, Any]:
    merged = dict(base)
    for key, value in over.items():
        inner = merged.get(key)
        merged[key] = (
            _merged(inner, value) if isinstance(inner, Mapping) and isinstance(value, Mapping) else value
        )
    return merged


def _flatten(messages: Mapping[Any, Any], path: str = "") -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    for key, value in messages.items():
        here = path if key == "_schema" else f"{path}.{key}" if path else str(key)
        if isinstance(value, Mapping):
            found += _flatten(value, here)
        else:
            found += [(here, str(text).rstrip(".")) for text in value]
    return found


def _curriculum(loaded: Mapping[str, Any]) -> Curriculum:
    prescribed = tuple(loaded["prescribed_cells"])
    first: tuple[DischargeRule, ...] = (PrescribedCells(prescribed),) if prescribed else ()
    return Curriculum(
        id=loaded["id"],
        title=loaded["title"],
        region=loaded["region"],
        stage=loaded["stage"],
        summary=loaded["summary"],
        cathode_rules=(*first, *cathode_rules(loaded)),
        anode_rules=(*first, *anode_rules(loaded)),
        conventions=conventions(loaded["conventions"]),
        marking=marking(loaded["marking"], loaded["conventions"]),
        scope=scope(loaded["scope"]),
        certainty=MappingProxyType(dict(loaded["certainty"])),
        sources=tuple(loaded["sources"]),
    )
