"""What every request for sentences and equations may say about how they are presented."""

from __future__ import annotations

from marshmallow import fields, validate

from ionwright.api.request_reader import LANGUAGES, MOST_NOTATIONS
from ionwright.api.schemas.base import AnyOf, RequestSchema, described, word
from ionwright.chemistry.notation import NOTATIONS

_NOTATION = "|".join(NOTATIONS)


class PresentedRequestSchema(RequestSchema):
    """Base of requests whose answers hold sentences and equations."""

    notation = AnyOf(
        fields.List(
            fields.String(validate=validate.OneOf(NOTATIONS)),
            validate=validate.Length(min=1, max=MOST_NOTATIONS),
        ),
        fields.String(
            validate=validate.Regexp(rf"^ *({_NOTATION}) *(, *({_NOTATION}) *)*$"),
            metadata=described("Notations separated by commas.", "ascii,html"),
        ),
        metadata=described("Notations in which equations are wanted; all if left out, and ascii always."),
    )
    language = word("Language of the sentences.", LANGUAGES)
