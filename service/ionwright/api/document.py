"""The OpenAPI document, made from the schemas and from examples that were really sent."""

from __future__ import annotations

import inspect
from copy import deepcopy
from typing import TYPE_CHECKING, Any

import orjson
from flask_smorest import Api

from ionwright import __version__
from ionwright.api.examples import EXAMPLES
from ionwright.api.schemas.base import forms_of
from ionwright.api.schemas.problem import ProblemSchema

if TYPE_CHECKING:
    from flask import Flask

    from ionwright.api.example import Example

OPENAPI_VERSION = "3.1.0"
_TITLE = "Ionwright"
_DESCRIPTION = """\
Ionwright works out electrolysis cells for teaching: what is discharged at each electrode, why, and everything
a teacher says about the cell, under the curriculum of the reader's course.

The examples come from Skerry Point, a lighthouse museum with a school programme.

* Errors are problem documents (RFC 9457, `application/problem+json`). `code` is stable; `detail` says what is
  wrong and what would be right; each of `errors` names its place. `GET /problems/{code}` explains every code.
* Answers to GET carry a strong `ETag` and may be cached; the same request always has the same answer.
* Within version 1 members are added to answers and never taken away: ignore those that you do not know.
"""


def new_document_maker(app: Flask) -> Api:
    """Make the object that registers blueprints with an application and describes them."""
    app.config.update(
        API_TITLE=_TITLE,
        API_VERSION=__version__,
        OPENAPI_VERSION=OPENAPI_VERSION,
        OPENAPI_URL_PREFIX=None,
        API_SPEC_OPTIONS={"info": {"description": _DESCRIPTION}},
    )
    maker = _QuietApi(app)
    maker.ma_plugin.converter.add_attribute_function(forms_of)
    return maker


class _QuietApi(Api):  # type: ignore[misc]  # flask-smorest ships no types
    """Document maker that leaves failures to `failures.py`, and adds no answers of its own."""

    ERROR_SCHEMA = ProblemSchema
    DEFAULT_ERROR_RESPONSE_NAME = None

    def _register_error_handlers(self) -> None:
        pass

    def _register_pagination_header(self) -> None:
        pass


def openapi_document(app: Flask, *, server: str = "/") -> dict[str, Any]:
    """Return the document of an application, with its examples sent to it and their answers put in.

    Parameters
    ----------
    app
        The application.
    server
        Address under which the operations stand.
    """
    maker = app.extensions["flask-smorest"]["apis"][""]["ext_obj"]
    made = deepcopy(maker.spec.to_dict())
    for key, name in maker.ma_plugin.converter.refs.items():
        made["components"]["schemas"][name]["description"] = inspect.cleandoc(key[0].__doc__ or "")
    document = {
        "openapi": made["openapi"],
        "info": {"title": made["info"]["title"], **made["info"]},
        "servers": [{"url": server}],
        "tags": made["tags"],
        "paths": made["paths"],
        "components": made["components"],
    }
    for operations in made["paths"].values():
        shared = operations.pop("parameters", [])
        for described in operations.values():
            if shared:
                described["parameters"] = deepcopy(shared) + described.get("parameters", [])
            for example in EXAMPLES:
                if example.operation == described.get("operationId"):
                    _show(example, sent(app, example), described)
    return document


def sent(app: Flask, example: Example) -> dict[str, Any]:
    """Send an example to an application: the request and the answer, as plain data."""
    answer = app.test_client().open(
        example.address,
        method=example.method,
        data=example.encoded_body,
        content_type=example.media_type if example.body is not None else None,
    )
    media_type = answer.mimetype or ""
    value: Any = answer.get_data(as_text=True)
    if media_type.endswith("json") and media_type != "application/x-ndjson":
        value = orjson.loads(value)
    return {"status": answer.status_code, "media_type": media_type, "body": value}


def example_record(app: Flask, example: Example) -> dict[str, Any]:
    """Return an example with its answer in the form in which it is committed."""
    request: dict[str, Any] = {"method": example.method, "address": example.address}
    if example.body is not None:
        request |= {"media_type": example.media_type, "body": example.body}
    return {
        "operation": example.operation,
        "summary": example.summary,
        "request": request,
        "response": sent(app, example),
    }


def _show(example: Example, answer: dict[str, Any], described: dict[str, Any]) -> None:
    """Put an example into the description of its operation.

    An example that this installation answers in an undescribed way is left out: the page must not fail
    because a curriculum was left out.
    """
    described_answer = described["responses"].get(str(answer["status"]), {})
    content = described_answer.get("content", {}).get(answer["media_type"])
    if content is None:
        return
    shown = {"summary": example.summary}
    if example.body is not None:
        body_content = described["requestBody"]["content"][example.media_type]
        body_content.setdefault("examples", {})[example.name] = shown | {"value": example.body}
    for parameter in described.get("parameters", ()):
        if parameter["name"] in example.parameters:
            value = example.parameters[parameter["name"]]
            parameter.setdefault("examples", {})[example.name] = shown | {"value": value}
    content.setdefault("examples", {})[example.name] = shown | {"value": answer["body"]}
