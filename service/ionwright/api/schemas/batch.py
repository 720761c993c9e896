"""Shape of the answer to a batch."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import AnyOf, ResponseSchema, described
from ionwright.api.schemas.prediction import PredictionSchema
from ionwright.api.schemas.problem import ProblemSchema


class BatchSchema(ResponseSchema):
    """One result for each item, in order: a prediction, or a problem, which has a `status`."""

    results = fields.List(
        AnyOf(fields.Nested(PredictionSchema), fields.Nested(ProblemSchema)),
        required=True,
        metadata=described("A prediction or a problem for each item, in order."),
    )
