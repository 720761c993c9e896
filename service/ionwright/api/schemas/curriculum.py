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


class MarkingPointSchema(ResponseSchema):
    """What marks are given for."""

    point = wording("species or balance.", "species", required=True)
    marks = fields.Integer(required=True, metadata=described("How many.", 1, minimum=0))
    for_ = fields.String(data_key="for", required=True, metadata=described("What they are given for."))


class MarkingConventionsSchema(ResponseSchema):
    """How half-equations are marked, and which ways of writing are taken."""

    points = fields.List(fields.Nested(MarkingPointSchema), required=True)
    state_symbols = wording("When they count: asked, required or not-used.", "asked", required=True)
    multiples = wording("A right line in twice the numbers: accepted, remarked or refused.", required=True)
    fractions = wording("A right line with fractions: accepted, remarked or refused.", required=True)
    subtracted_electrons = fields.Boolean(
        required=True, metadata=described("Whether an oxidation may take electrons away on the left.")
    )
    equals_sign = fields.Boolean(required=True, metadata=described("Whether = may stand for the arrow."))
    equilibrium_arrow = fields.Boolean(
        required=True, metadata=described("Whether ⇌ may stand for the arrow.")
    )
    electron_without_sign = fields.Boolean(required=True, metadata=described("Whether e may stand for e-."))


class CurriculumSchema(CurriculumEntrySchema):
    """A curriculum with its conventions and rules."""

    conventions = fields.Dict(required=True, metadata=described("How it writes and counts."))
    marking = fields.Nested(MarkingConventionsSchema, required=True)
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
