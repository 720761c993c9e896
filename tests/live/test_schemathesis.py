"""The contract against the service: requests made from the document, answers held to it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.specs.openapi.checks import positive_data_acceptance

from ionwright.api import Settings, create_app

if TYPE_CHECKING:
    from schemathesis import Case, SerializationContext

pytestmark = pytest.mark.live

contract = schemathesis.openapi.from_wsgi("/openapi.json", create_app(Settings()))


@schemathesis.serializer("application/jsonl", "application/x-ndjson")
def as_lines(_context: SerializationContext, value: Any) -> bytes:
    """Send what was made for a batch of lines as it is."""
    return value if isinstance(value, bytes) else str(value).encode()


@contract.parametrize()
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_the_service_keeps_its_contract(case: Case) -> None:
    # the document cannot say which texts are chemistry: a request of the right shape may well be refused
    case.call_and_validate(excluded_checks=[positive_data_acceptance])
