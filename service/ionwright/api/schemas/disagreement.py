"""Shape of a page of disagreements: cells of the tables on which curricula disagree."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings
from ionwright.api.schemas.prediction import CurriculumNameSchema


class TabledCellSchema(ResponseSchema):
    """A cell in the form in which a request takes it; the concentration stands beside it."""

    electrolyte = wording("Formula in plain text.", "NaCl", required=True)
    state = wording("aqueous or molten.", "aqueous", required=True)
    cathode = wording("Material of the cathode.", "graphite", required=True)
    anode = wording("Material of the anode.", "graphite", required=True)


class DisputedAnswerSchema(ResponseSchema):
    """One of two answers."""

    products = wordings("Formulas of its products; none if it is left open.", "Cl2", required=True)
    text = wording("In words.", "chlorine", required=True)


class DisagreementSchema(ResponseSchema):
    """A cell on which the curriculum and others disagree."""

    name = wording("Name of its electrolyte.", "sodium chloride", required=True)
    cell = fields.Nested(TabledCellSchema, required=True)
    concentrations = wordings(
        "The words for the concentration for which it holds; none for a melt.", "dilute", required=True
    )
    answer = fields.Nested(DisputedAnswerSchema, required=True)
    others = wordings("Ids of the curricula that give the other answer.", "igcse", required=True)
    other_answer = fields.Nested(DisputedAnswerSchema, required=True)
    accepted_across = fields.Boolean(
        required=True, metadata=described("Whether either side also accepts the answer of the other.")
    )


class DisagreementGroupSchema(ResponseSchema):
    """The disagreements that come from the same two rules."""

    electrode = wording("cathode or anode.", "anode", required=True)
    rule = wording(
        "The rule of the curriculum, the first that parts it from the other answer.", required=True
    )
    other_rule = wording("The rule of the others.", required=True)
    others = wordings("Ids of the curricula with that rule that disagree.", "igcse", required=True)
    count = fields.Integer(required=True, metadata=described("How many there are in all.", 41))
    disagreements = fields.List(
        fields.Nested(DisagreementSchema),
        required=True,
        metadata=described("Those of them that stand on this page; may be empty."),
    )


class DisagreementsSchema(ResponseSchema):
    """The cells of the tables on which a curriculum disagrees with others, one page of them."""

    curriculum = fields.Nested(CurriculumNameSchema, required=True)
    others = fields.List(fields.Nested(CurriculumNameSchema), required=True)
    cells = fields.Integer(required=True, metadata=described("How many cells were judged.", 3388))
    count = fields.Integer(required=True, metadata=described("How many disagreements there are.", 177))
    offset = fields.Integer(required=True, metadata=described("How many stand on the pages before.", 0))
    limit = fields.Integer(required=True, metadata=described("The most on a page.", 50))
    next_offset = fields.Integer(metadata=described("Offset of the next page, if there is one.", 50))
    groups = fields.List(
        fields.Nested(DisagreementGroupSchema),
        required=True,
        metadata=described("All of them, the largest first, with the cells of this page."),
    )
