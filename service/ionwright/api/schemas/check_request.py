"""Shape of a request to check a student's line, and of one to check a class set."""

from __future__ import annotations

from typing import Any

from marshmallow import fields, validate

from ionwright.api.check_reader import ELECTRODES, MOST_EXPECTED
from ionwright.api.schemas.base import AnyOf, described, given_text, word
from ionwright.api.schemas.prediction_request import PredictionRequestSchema
from ionwright.api.schemas.presented import PresentedRequestSchema
from ionwright.api.texts import LONGEST_TEXT
from ionwright.chemistry.equation_text import MAX_EQUATION_LENGTH
from ionwright.teaching.marking import DIRECTIONS


def _half_equation() -> fields.String:
    return fields.String(
        validate=validate.Length(min=1, max=MAX_EQUATION_LENGTH),
        metadata=described("A half-equation that is right.", "Ni^2+ + 2e- -> Ni", pattern=r"\S"),
    )


def _answer(**options: Any) -> fields.String:
    metadata = described(
        "What the student wrote, whatever it is: a line that cannot be read is a verdict too.",
        "Ni2+ + 2e- -> Ni",
    )
    return fields.String(metadata=metadata, **options)


class QuestionCellSchema(PredictionRequestSchema):
    """The cell that was asked about; its curriculum may also stand beside it."""

    curriculum = given_text("Id of the curriculum; GET /v1/curricula lists them.", "gcse")


class _QuestionSchema(PresentedRequestSchema):
    cell = fields.Nested(
        QuestionCellSchema, metadata=described("The cell that was asked about, together with `electrode`.")
    )
    electrode = word("The electrode of the cell that was asked about.", ELECTRODES)
    written_as = word(
        "Direction, if the task asks for one whichever way the process runs: chlorine at an anode, written as a"
        " reduction.",
        DIRECTIONS,
    )
    expected = AnyOf(
        _half_equation(),
        fields.List(_half_equation(), validate=validate.Length(min=1, max=MOST_EXPECTED)),
        metadata=described(
            "In place of a cell: the half-equations that are right, the model answer first. Multiples of them are"
            " right too."
        ),
    )
    curriculum = given_text(
        "Id of the curriculum whose conventions count; with `expected`, or beside a cell."
    )
    state_symbols = fields.Boolean(
        truthy={True},
        falsy={False},
        metadata=described("Whether the task asks for state symbols; no if left out."),
    )


class CheckRequestSchema(_QuestionSchema):
    """A student's line and what was asked: an electrode of a cell, or the half-equations that are right."""

    answer = _answer(required=True)
    ref = fields.String(
        validate=validate.Length(max=LONGEST_TEXT),
        metadata=described("A mark of your own for this answer, sent back with its result.", "seat 14"),
    )


class CheckBatchRequestSchema(_QuestionSchema):
    """A class set: many lines with one question, or each with its own. A bad item stops no other."""

    items = fields.List(
        AnyOf(
            fields.Nested(CheckRequestSchema),
            fields.Raw(metadata=described("Anything else is a problem.")),
        ),
        required=True,
        validate=validate.Length(min=1, max=1000),
        metadata=described("Answers, up to 1000, each with `answer` and, if you like, `ref`."),
    )
