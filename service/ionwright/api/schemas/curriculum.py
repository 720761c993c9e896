"""Shape of the list of curricula and of one curriculum."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings


class OriginSchema(ResponseSchema):
    """Where a curriculum comes from."""

    kind = wording("built-in, plugin or file.", "built-in", required=True)
    name = wording("Name of the plugin or of the file.", "gcse", required=True)
    version = wording("Version of the plugin's distribution.")


class CurriculumEntrySchema(ResponseSchema):
    """A curriculum in the list."""

    id = wording("Id, for requests.", "gcse", required=True)
    title = wording("Title.", required=True)
    region = wording("Where it is taught.")
    stage = wording("For which stage of school it is.")
    origin = fields.Nested(OriginSchema, required=True)
    status = wording("active: it answers requests.", "active", required=True)


class CurriculumRulesSchema(ResponseSchema):
    """The discharge rules in words, in the order in which they are applied."""

    cathode = wordings("Rules at the cathode.", required=True)
    anode = wordings("Rules at the anode.", required=True)


class CurriculumSchema(CurriculumEntrySchema):
    """A curriculum with its conventions and rules."""

    conventions = fields.Dict(required=True, metadata=described("How it writes and counts."))
    rules = fields.Nested(CurriculumRulesSchema, required=True)
    sources = fields.List(fields.Raw(), metadata=described("Where its rules were taken from."))
    certainty = fields.Raw(metadata=described("How sure the sources are."))


class SetAsideSchema(ResponseSchema):
    """A plugin or file that could not be used."""

    name = wording("Name of the plugin or of the file.", required=True)
    kind = wording("What it is.", required=True)
    reason = wording("Why it was set aside.", required=True)


class CurriculaSchema(ResponseSchema):
    """All curricula that are loaded, and what was set aside."""

    curricula = fields.List(fields.Nested(CurriculumEntrySchema), required=True)
    set_aside = fields.List(fields.Nested(SetAsideSchema), required=True)
