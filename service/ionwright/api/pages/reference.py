"""The OpenAPI document as a page needs it: operations by tag, shapes as tables, examples as commands."""

from __future__ import annotations

import json
import re
import shlex
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from markupsafe import Markup, escape

_CODE = re.compile(r"`([^`]+)`")


@dataclass(frozen=True, slots=True)
class Row:
    """One parameter or member in a table."""

    name: str
    form: Markup
    required: bool
    about: Markup


@dataclass(frozen=True, slots=True)
class ShownExample:
    """One example: what is sent, and what comes back."""

    id: str
    summary: str
    command: str
    body: str
    answer: str
    status: str


@dataclass(frozen=True, slots=True)
class ShownOperation:
    """One operation with all that its section shows."""

    id: str
    method: str
    path: str
    summary: str
    about: Markup
    parameters: tuple[Row, ...]
    bodies: tuple[tuple[str, Markup], ...]
    answers: tuple[tuple[str, Markup, Markup], ...]
    examples: tuple[ShownExample, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """One schema as a table of members."""

    name: str
    about: Markup
    members: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Reference:
    """The whole page."""

    title: str
    version: str
    about: Markup
    sections: tuple[tuple[str, Markup, tuple[ShownOperation, ...]], ...]
    shapes: tuple[Shape, ...]
    tries: tuple[ShownExample, ...]


def reference_of(document: dict[str, Any], *, address: str) -> Reference:
    """Arrange a document for the page; `address` is where the commands send their requests."""
    operations = [
        (described["tags"][0], _operation(method, path, described, address))
        for path, methods in document["paths"].items()
        for method, described in methods.items()
    ]
    sections = tuple(
        (
            tag["name"],
            marked_up(tag["description"]),
            tuple(shown for name, shown in operations if name == tag["name"]),
        )
        for tag in document["tags"]
    )
    tries = next(shown.examples for _, shown in operations if shown.id == "predictElectrolysis")
    return Reference(
        title=document["info"]["title"],
        version=document["info"]["version"],
        about=marked_up(document["info"]["description"]),
        sections=sections,
        shapes=tuple(_shape(name, schema) for name, schema in document["components"]["schemas"].items()),
        tries=tries,
    )


def marked_up(text: str) -> Markup:
    """HTML for the little markup of descriptions: paragraphs, lists with stars, code in backticks."""
    blocks = []
    for block in text.strip().split("\n\n"):
        if block.startswith("* "):
            items = block.removeprefix("* ").split("\n* ")
            blocks.append(
                Markup("<ul>{}</ul>").format(
                    Markup("").join(Markup("<li>{}</li>").format(_inline(i)) for i in items)
                )
            )
        else:
            blocks.append(Markup("<p>{}</p>").format(_inline(block)))
    return Markup("\n").join(blocks)


def _inline(text: str) -> Markup:
    # the text is escaped first, so that what is marked as safe holds only our own tags
    return Markup(_CODE.sub(r"<code>\1</code>", str(escape(text))))  # noqa: S704


def form_of(schema: dict[str, Any]) -> Markup:
    """Name what a schema takes in words, with links to the shapes."""
    if "$ref" in schema:
        name = schema["$ref"].rsplit("/", 1)[-1]
        return Markup('<a href="#shape-{0}">{0}</a>').format(name)
    if "anyOf" in schema:
        return Markup(" <em>or</em> ").join(form_of(form) for form in schema["anyOf"])
    if "allOf" in schema:
        return form_of(schema["allOf"][0])
    if schema.get("type") == "array":
        return Markup("list of {}").format(form_of(schema["items"]))
    if "enum" in schema:
        return Markup(", ").join(Markup("<code>{}</code>").format(word) for word in schema["enum"])
    words = {"string": "text", "integer": "whole number", "number": "number", "boolean": "true or false"}
    return escape(
        words.get(schema.get("type", ""), "object" if schema.get("type") == "object" else "anything")
    )


def _bounds(schema: dict[str, Any]) -> str:
    if "minimum" in schema and "maximum" in schema:
        return f" From {schema['minimum']:g} to {schema['maximum']:g}."
    if "maxItems" in schema:
        return f" At most {schema['maxItems']}."
    return ""


def _rows(members: dict[str, dict[str, Any]], required: list[str]) -> tuple[Row, ...]:
    return tuple(
        Row(name, form_of(schema), name in required, _inline(schema.get("description", "") + _bounds(schema)))
        for name, schema in members.items()
    )


def _shape(name: str, schema: dict[str, Any]) -> Shape:
    members = _rows(schema.get("properties", {}), schema.get("required", []))
    closed = schema.get("additionalProperties") is False
    about = schema.get("description", "") + (" Takes no other members." if closed else "")
    return Shape(name, _inline(about), members)


def _operation(method: str, path: str, described: dict[str, Any], address: str) -> ShownOperation:
    parameters = [p for p in described.get("parameters", ()) if isinstance(p, dict)]
    contents = described.get("requestBody", {}).get("content", {})
    answers = []
    for status, answer in described["responses"].items():
        forms = {form_of(content.get("schema", {})) for content in answer.get("content", {}).values()}
        answers.append((status, _inline(answer["description"]), Markup(", ").join(sorted(forms))))
    return ShownOperation(
        id=described["operationId"],
        method=method.upper(),
        path=path,
        summary=described["summary"],
        about=marked_up(described.get("description", "")),
        parameters=tuple(
            Row(
                p["name"],
                form_of(p["schema"]),
                p.get("required", False),
                _inline(p.get("description", "") + _bounds(p["schema"])),
            )
            for p in parameters
        ),
        bodies=tuple((name, form_of(content.get("schema", {}))) for name, content in contents.items()),
        answers=tuple(answers),
        examples=tuple(_examples(method, path, described, address)),
    )


def _examples(method: str, path: str, described: dict[str, Any], address: str) -> list[ShownExample]:
    shown = []
    for status, answer in described["responses"].items():
        for content in answer.get("content", {}).values():
            for name, example in content.get("examples", {}).items():
                body, media_type = _sent_body(described, name)
                command = _command(method, address + _address(path, described, name), body, media_type)
                body_text = body if isinstance(body, str) else _pretty(body) if body is not None else ""
                answer_text = (
                    example["value"] if isinstance(example["value"], str) else _pretty(example["value"])
                )
                shown.append(ShownExample(name, example["summary"], command, body_text, answer_text, status))
    return shown


def _sent_body(described: dict[str, Any], name: str) -> tuple[Any, str]:
    for media_type, content in described.get("requestBody", {}).get("content", {}).items():
        if name in content.get("examples", {}):
            return content["examples"][name]["value"], media_type
    return None, ""


def _address(path: str, described: dict[str, Any], name: str) -> str:
    query = {}
    for parameter in described.get("parameters", ()):
        example = parameter.get("examples", {}).get(name)
        if example is None:
            continue
        value = example["value"]
        if parameter["in"] == "path":
            path = path.replace("{" + parameter["name"] + "}", str(value))
        else:
            query[parameter["name"]] = ",".join(value) if parameter.get("explode") is False else value
    return f"{path}?{urlencode(query, doseq=True)}" if query else path


def _command(method: str, address: str, body: Any, media_type: str) -> str:
    if body is None:
        return f"curl {shlex.quote(address)}"
    text = body if isinstance(body, str) else json.dumps(body, ensure_ascii=False)
    return (
        f"curl {shlex.quote(address)} \\\n  -H {shlex.quote('Content-Type: ' + media_type)} \\\n"
        f"  --data-binary {shlex.quote(text)}"
    )


def _pretty(value: Any) -> str:
    return json.dumps(value, indent=2, ensure_ascii=False)
