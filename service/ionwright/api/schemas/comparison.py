"""Shape of a comparison: one cell under several curricula, grouped by agreement."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings
from ionwright.api.schemas.equation import EquationSchema
from ionwright.api.schemas.prediction import CellSchema, CurriculumNameSchema, ProductSchema

_WHO = "Ids of the curricula of which this holds."


class SharedTextSchema(ResponseSchema):
    """A sentence, and the curricula of which it holds."""

    curricula = wordings(_WHO, "igcse", required=True)
    text = wording("The sentence.", required=True)


class SharedEquationSchema(ResponseSchema):
    """A half-equation, and the curricula that write it so."""

    curricula = wordings(_WHO, "gcse", "igcse", required=True)
    half_equation = fields.Nested(EquationSchema, required=True)


class SharedAcceptedAnswerSchema(ResponseSchema):
    """Another answer, and the curricula that accept it beside their own."""

    curricula = wordings(_WHO, "a-level", required=True)
    products = wordings("Formulas of its products.", "Cl2", required=True)
    half_equation = fields.Nested(EquationSchema, required=True)
    because = wording("Why it is accepted too.", required=True)


class SharedReasonSchema(ResponseSchema):
    """The rule that settles an answer, its reasons, and the curricula that reason so."""

    curricula = wordings(_WHO, "gcse", required=True)
    rule = wording("The rule that settles it, as the curriculum has it.", required=True)
    because = wordings("The reasons, in the order in which a teacher gives them.", required=True)


class AgreementGroupSchema(ResponseSchema):
    """The curricula that agree on what forms; those that cannot decide are a group of their own."""

    curricula = wordings("Their ids.", "gcse", "igcse", required=True)
    outcome = wording(
        "decided, or not-decidable if the rules of these courses do not reach this cell.",
        "decided",
        required=True,
    )
    products = fields.List(
        fields.Nested(ProductSchema), required=True, metadata=described("What forms; empty if not decided.")
    )
    half_equations = fields.List(
        fields.Nested(SharedEquationSchema),
        metadata=described("The half-equation, in the form that each course prefers."),
    )
    also_written = fields.List(
        fields.Nested(SharedEquationSchema), metadata=described("Other forms that they accept.")
    )
    contested = wordings("Those of them that mark the answer as contested.", required=True)
    also_accepted = fields.List(fields.Nested(SharedAcceptedAnswerSchema), required=True)
    reasons = fields.List(fields.Nested(SharedReasonSchema), required=True)


class PartingRuleSchema(ResponseSchema):
    """The first rule of a course that parts it from the other answer."""

    curricula = wordings(_WHO, "igcse", required=True)
    rule = wording("The rule, as the curriculum has it.", required=True)
    effect = wording(
        "What it does here: `chooses` the answer of the group, `rules out` the other, or `leaves open`.",
        "rules out",
        required=True,
    )
    because = wordings("Its reasons.", required=True)


class SideOfDifferenceSchema(ResponseSchema):
    """One of two groups that differ."""

    answer = wording("What it answers, in words.", "oxygen", required=True)
    rules = fields.List(fields.Nested(PartingRuleSchema), required=True)


class DifferenceSchema(ResponseSchema):
    """What makes the difference between two groups."""

    between = fields.List(
        fields.Nested(SideOfDifferenceSchema),
        required=True,
        metadata=described("The two groups, in the order of `groups`."),
    )
    accepted_across = wordings(
        "Ids of the curricula that also accept the answer of the other group.", "a-level", required=True
    )


class ComparedElectrodeSchema(ResponseSchema):
    """One electrode under several curricula."""

    agreed = fields.Boolean(required=True, metadata=described("Whether all give the same answer."))
    summary = wording("Who answers what, in one sentence.", required=True)
    groups = fields.List(
        fields.Nested(AgreementGroupSchema),
        required=True,
        metadata=described("The largest first; those that cannot decide last."),
    )
    differences = fields.List(
        fields.Nested(DifferenceSchema),
        required=True,
        metadata=described("One for each pair of groups."),
    )


class DifferingConventionSchema(ResponseSchema):
    """A way of writing in which the curricula differ."""

    about = wording("What it is about.", "state symbols", required=True)
    readings = fields.List(fields.Nested(SharedTextSchema), required=True)


class LeftOutSchema(ResponseSchema):
    """A curriculum whose rules failed on this cell."""

    curriculum = wording("Its id.", required=True)
    reason = wording("What went wrong.", required=True)


class ComparisonSchema(ResponseSchema):
    """One cell under several curricula. Members may be added; ignore those not known to you."""

    curricula = fields.List(
        fields.Nested(CurriculumNameSchema), required=True, metadata=described("Those compared, by id.")
    )
    cell = fields.Nested(CellSchema, required=True)
    assumptions = fields.List(
        fields.Nested(SharedTextSchema),
        required=True,
        metadata=described("What was taken as understood, such as how a concentration was read."),
    )
    notes = wordings("What is worth knowing about this electrolyte.")
    cathode = fields.Nested(ComparedElectrodeSchema, required=True)
    anode = fields.Nested(ComparedElectrodeSchema, required=True)
    conventions = fields.List(
        fields.Nested(DifferingConventionSchema),
        required=True,
        metadata=described("Ways of writing in which these curricula differ, beside the forms of equations."),
    )
    set_aside = fields.List(
        fields.Nested(LeftOutSchema),
        metadata=described("Curricula whose rules failed on this cell; they stand in no group."),
    )
