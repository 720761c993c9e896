"""Shape of the answers to health checks."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, wording, wordings
from ionwright.api.schemas.curriculum import SetAsideSchema


class HealthSchema(ResponseSchema):
    """The process is alive."""

    status = wording("ok.", "ok", required=True)
    version = wording("Version of the service.", required=True)


class ReadinessSchema(ResponseSchema):
    """The service can answer requests."""

    status = wording("ready.", "ready", required=True)
    version = wording("Version of the service.", required=True)
    curricula = wordings("Ids of the curricula that are loaded.", "gcse", required=True)
    set_aside = fields.List(fields.Nested(SetAsideSchema), required=True)
