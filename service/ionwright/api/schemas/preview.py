"""Shape of a request to try a declaration on a cell, and of the answer."""

from __future__ import annotations

from marshmallow import fields, validate

from ionwright.api.preview_desk import LONGEST_DECLARATION
from ionwright.api.schemas.base import ResponseSchema, described
from ionwright.api.schemas.curriculum import CurriculumSchema
from ionwright.api.schemas.prediction import PredictionSchema
from ionwright.api.schemas.prediction_request import PredictionRequestSchema


class PreviewRequestSchema(PredictionRequestSchema):
    """A cell, and the declaration under which it is judged."""

    class Meta(PredictionRequestSchema.Meta):
        """The curriculum comes with the request."""

        exclude = ("curriculum",)

    declaration = fields.String(
        required=True,
        validate=validate.Length(min=1, max=LONGEST_DECLARATION),
        metadata=described(
            "The declaration of a curriculum as a text in TOML; it may build on one that is built in.",
            'format = 1\nid = "skerry-foundation"\ntitle = "Skerry Point foundation course"\nbased_on = "gcse"\n',
            pattern=r"\S",
        ),
    )


class DeclaredCurriculumSchema(CurriculumSchema):
    """A curriculum that was declared with the request: it is nowhere loaded, so it has no origin and no status."""

    class Meta(CurriculumSchema.Meta):
        """Leave out what only a loaded curriculum has."""

        exclude = ("origin", "status")


class PreviewSchema(ResponseSchema):
    """What a declaration makes of a cell."""

    curriculum = fields.Nested(DeclaredCurriculumSchema, required=True)
    prediction = fields.Nested(PredictionSchema, required=True)
