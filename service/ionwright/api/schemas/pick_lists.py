"""Shape of the pick-lists: what the tables know."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings


class KnownElectrolyteSchema(ResponseSchema):
    """An electrolyte that the tables know."""

    formula = wording("Formula in plain text.", "CuSO4", required=True)
    name = wording("Systematic name.", "copper(II) sulfate", required=True)
    names = wordings("Other names.", "copper sulphate", required=True)
    solubility = wording("How it dissolves in water.", "soluble", required=True)
    melts = fields.Boolean(required=True, metadata=described("Whether its melt can be electrolysed."))


class ElectrolytesSchema(ResponseSchema):
    """Electrolytes that match a search."""

    electrolytes = fields.List(fields.Nested(KnownElectrolyteSchema), required=True)


class KnownElectrodeSchema(ResponseSchema):
    """An electrode that the tables know."""

    id = wording("Word for requests.", "graphite", required=True)
    name = wording("Name.", "graphite", required=True)
    aliases = wordings("Other words that are understood.", "carbon", required=True)
    behaviour = wording("What it does as an anode.", "inert", required=True)
    note = wording("What a teacher says about it.")


class ElectrodesSchema(ResponseSchema):
    """All electrodes that the tables know."""

    electrodes = fields.List(fields.Nested(KnownElectrodeSchema), required=True)
