"""Shape of a marking: the verdict on a student's line, its marks and its faults."""

from __future__ import annotations

from marshmallow import fields, validate

from ionwright.api.schemas.base import AnyOf, ResponseSchema, described, wording
from ionwright.api.schemas.equation import EquationSchema
from ionwright.api.schemas.problem import ProblemSchema
from ionwright.teaching.marking import IN_ORDER


def _extent() -> fields.List[int]:
    description = "Where it stands in the answer: first character and the one behind the last, from 0."
    return fields.List(
        fields.Integer(metadata={"minimum": 0}),
        required=True,
        validate=validate.Length(equal=2),
        metadata=described(description, [8, 11]),
    )


class MarkPointSchema(ResponseSchema):
    """One point for which marks are given."""

    point = wording("species or balance.", "species", required=True)
    for_ = fields.String(data_key="for", required=True, metadata=described("What it is given for."))
    awarded = fields.Integer(required=True, metadata=described("Marks given.", 1, minimum=0))
    available = fields.Integer(required=True, metadata=described("Marks that there are.", 1, minimum=0))


class MarksSchema(ResponseSchema):
    """The marks by the curriculum's convention."""

    awarded = fields.Integer(required=True, metadata=described("Marks given.", 1, minimum=0))
    available = fields.Integer(required=True, metadata=described("Marks that there are.", 2, minimum=0))
    points = fields.List(fields.Nested(MarkPointSchema), required=True)


class LineFaultSchema(ResponseSchema):
    """One fault of the line, written to the student."""

    code = wording(
        "Stable word for programs: " + ", ".join(IN_ORDER) + ".", "wrong-electron-count", required=True
    )
    feedback = wording("Helps without giving the answer away.", required=True)
    reveals = wording("Gives the answer away; keep it back until it is wanted.", required=True)
    at = _extent()
    costs_marks = fields.Boolean(
        required=True, metadata=described("False for a remark, which a correct line may carry too.")
    )


class SlipSchema(ResponseSchema):
    """A slip of the hand that was read for the one thing it can mean; it costs nothing."""

    written = wording("What stands there.", "cu", required=True)
    read_as = wording("What it was read as.", "Cu", required=True)
    at = _extent()
    feedback = wording("A sentence for the student.", required=True)


class MarkingSchema(ResponseSchema):
    """The marking of one line."""

    ref = wording("Your own mark for this answer, if you sent one.", "seat 14")
    verdict = wording("correct, incorrect or unreadable.", "incorrect", required=True)
    marks = fields.Nested(MarksSchema, required=True)
    faults = fields.List(
        fields.Nested(LineFaultSchema),
        required=True,
        metadata=described("Every fault, the most important first."),
    )
    slips = fields.List(fields.Nested(SlipSchema), required=True)
    reading = fields.Nested(
        EquationSchema,
        metadata=described(
            "The line as it was read, right or wrong; left out if it could not be read. Electrons that were"
            " taken away stand on the other side."
        ),
    )
    model_answer = fields.Nested(
        EquationSchema, required=True, metadata=described("The line that the course would show.")
    )
    accepted_forms = fields.List(
        fields.Nested(EquationSchema),
        required=True,
        metadata=described("Every line that is right; multiples of them are right too."),
    )


class MarkingBatchSchema(ResponseSchema):
    """One result for each answer, in order: a marking, or a problem, which has a `status`."""

    results = fields.List(
        AnyOf(fields.Nested(MarkingSchema), fields.Nested(ProblemSchema)),
        required=True,
        metadata=described("A marking or a problem for each answer, in order."),
    )
