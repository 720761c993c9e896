"""Every example of the contract, sent as it stands; the answers are those that are committed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jsonschema
import pytest

if TYPE_CHECKING:
    from service import Service

pytestmark = pytest.mark.live

CONTRACT = Path(__file__).resolve().parents[2] / "openapi"
DOCUMENT = json.loads((CONTRACT / "ionwright.json").read_text(encoding="utf-8"))
EXAMPLES = sorted((CONTRACT / "examples").glob("*.json"))


def answer_to(service: Service, request: dict[str, Any]) -> dict[str, Any]:
    body = request.get("body")
    data = None if body is None else body.encode() if isinstance(body, str) else json.dumps(body).encode()
    headers = {"Content-Type": request["media_type"]} if data is not None else {}
    answer = service.ask(request["method"], request["address"], data=data, headers=headers)
    media_type = answer.headers["Content-Type"]
    value = answer.json() if media_type.endswith("json") else answer.content.decode()
    return {"status": answer.status_code, "media_type": media_type, "body": value}


def schema_of(operation_id: str, status: int, media_type: str) -> dict[str, Any]:
    for operations in DOCUMENT["paths"].values():
        for described in operations.values():
            if described["operationId"] == operation_id:
                found = described["responses"][str(status)]["content"][media_type]["schema"]
                return {**found, "components": DOCUMENT["components"]}
    raise LookupError(operation_id)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_an_example_gets_the_answer_that_is_committed(service: Service, path: Path) -> None:
    example = json.loads(path.read_text(encoding="utf-8"))
    answer = answer_to(service, example["request"])
    assert answer == example["response"]
    schema = schema_of(example["operation"], answer["status"], answer["media_type"])
    jsonschema.validate(answer["body"], schema, cls=jsonschema.Draft202012Validator)


def test_every_operation_has_an_example() -> None:
    shown = {json.loads(path.read_text(encoding="utf-8"))["operation"] for path in EXAMPLES}
    described = {op["operationId"] for operations in DOCUMENT["paths"].values() for op in operations.values()}
    assert shown == described
