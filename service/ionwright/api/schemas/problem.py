"""Shape of a problem document (RFC 9457)."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording
from ionwright.api.schemas.equation import EquationSchema


class ProblemErrorSchema(ResponseSchema):
    """One thing that is wrong, and where."""

    in_ = fields.String(
        data_key="in",
        required=True,
        metadata=described("Part of the request: body, query, path or header.", "body"),
    )
    pointer = wording(
        "JSON Pointer (RFC 6901) to the field in the body, or in the item of a batch.", "/electrolyte"
    )
    parameter = wording("Name of the parameter or header, for faults outside the body.", "electrolyte")
    code = wording("Stable word for programs.", "charges-do-not-cancel", required=True)
    detail = wording("What is wrong and what would be right, for people.", required=True)
    position = fields.Integer(
        metadata=described(
            "Offset of the fault in the text that was sent, in characters from 0.", 4, minimum=0
        )
    )


class ProblemSchema(ResponseSchema):
    """A request that could not be answered, with the reason and the remedy."""

    type = wording(
        "URI of the kind of problem, the same on every installation.",
        "tag:ionwright,2026:problem:charges-do-not-cancel",
        required=True,
    )
    title = wording("The kind of problem in words.", required=True)
    status = fields.Integer(required=True, metadata=described("HTTP status code of this answer.", 422))
    code = wording("Stable word for programs; GET /problems/{code} explains it.", required=True)
    detail = wording("What is wrong with this request and what would be right.", required=True)
    instance = wording("Number of the incident, if the service failed.")
    errors = fields.List(
        fields.Nested(ProblemErrorSchema), metadata=described("The single faults, each with its place.")
    )
    basis = fields.List(
        fields.Nested(EquationSchema),
        metadata=described(
            "For several-solutions: independent balanced equations, of which every solution is a sum of multiples."
        ),
    )
