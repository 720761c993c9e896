"""What all schemas share: closed requests, open responses, and fields that take one of several forms."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from marshmallow import EXCLUDE, RAISE, Schema, fields, validate

from ionwright.api.texts import LONGEST_TEXT

if TYPE_CHECKING:
    from collections.abc import Sequence

    from apispec.ext.marshmallow.openapi import OpenAPIConverter


class RequestSchema(Schema):
    """Request in which every field must be known."""

    class Meta:
        """Refuse what is not declared."""

        unknown = RAISE


class ResponseSchema(Schema):
    """Response to which members may be added: clients must ignore those that they do not know."""

    class Meta:
        """Let further members pass."""

        unknown = EXCLUDE


class AnyOf(fields.Field[Any]):
    """Field that takes any one of several forms; it describes them in the document."""

    def __init__(self, *forms: fields.Field[Any], **options: Any) -> None:
        super().__init__(**options)
        self.forms = forms


def forms_of(self: OpenAPIConverter, field: fields.Field[Any], **_: Any) -> dict[str, Any]:
    """Describe the forms of an `AnyOf` field as alternatives; registered with the document maker."""
    if not isinstance(field, AnyOf):
        return {}
    return {"anyOf": [self.field2property(form) for form in field.forms]}


def described(description: str, *examples: object, **more: Any) -> dict[str, Any]:
    """Metadata of a field: its description, and examples if there are any."""
    metadata: dict[str, Any] = {"description": description, **more}
    if examples:
        metadata["examples"] = list(examples)
    return metadata


def wording(description: str, *examples: str, **options: Any) -> fields.String:
    """Field for a text in a response."""
    return fields.String(metadata=described(description, *examples), **options)


def given_text(description: str, *examples: str, **options: Any) -> fields.String:
    """Field for a text in a request: not blank, and of bounded length."""
    metadata = described(description, *examples, pattern=r"\S")
    return fields.String(validate=validate.Length(min=1, max=LONGEST_TEXT), metadata=metadata, **options)


def word(description: str, choices: Sequence[str], **options: Any) -> fields.String:
    """Field for one of a few words in a request."""
    return fields.String(validate=validate.OneOf(choices), metadata=described(description), **options)


def wordings(description: str, *examples: str, **options: Any) -> fields.List[Any]:
    """Field for a list of texts in a response."""
    return fields.List(
        fields.String(), metadata=described(description, *([list(examples)] if examples else [])), **options
    )
