"""Batches of predictions: one JSON document, or one JSON text per line."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import orjson
from flask import Response, request

from ionwright.api.answers import JSON, Answer
from ionwright.api.bodies import read_body
from ionwright.api.json_reader import check_media_type, read_json
from ionwright.api.operations import json_answer, operation, problem_answers
from ionwright.api.problems import Fault, Problem, validation_problem
from ionwright.api.responses import response
from ionwright.api.schemas.batch import BatchSchema
from ionwright.api.schemas.prediction_request import BatchRequestSchema
from ionwright.api.texts import kind_of, note_unknown_fields

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.api.operations import Blueprint
    from ionwright.api.predictor import Predictor
    from ionwright.api.settings import Settings

JSON_LINES = ("application/jsonl", "application/x-ndjson")

# each line has its own answer, whatever it is, so that the document puts no bounds on it
_LINES = {"description": "One request per line."}
_POST = {
    "operationId": "predictElectrolysisBatch",
    "summary": "Predict many cells at once",
    "description": (
        "`application/json`: an object with `items`, up to 1000 requests; the answer has one result for each,"
        " in order. `application/jsonl` or `application/x-ndjson`: one request per line; the answer has one"
        ' line for each, and a last line `{"done":true,"count":n}`, without which the answer is cut short. An'
        " item that cannot be answered gets a problem, which has a `status`, in its place; pointers are"
        " relative to the item. Empty lines are passed over."
    ),
    "requestBody": {
        "required": True,
        "content": {
            JSON: {"schema": BatchRequestSchema},
            **{form: {"schema": _LINES} for form in JSON_LINES},
        },
    },
    "responses": {
        "200": {
            "description": "One result for each item.",
            "content": {
                **json_answer("", BatchSchema, tagged=False)["content"],
                **{form: {"schema": {"type": "string"}} for form in JSON_LINES},
            },
        },
        **problem_answers(400, 413, 415, 422),
    },
}


def add_batches(blueprint: Blueprint, predictor: Predictor, settings: Settings) -> None:
    """Add the operation on batches to the blueprint of predictions."""

    def predict_electrolysis_batch() -> Response:
        environ = request.environ
        header, coding = environ.get("CONTENT_TYPE") or "", environ.get("HTTP_CONTENT_ENCODING", "")
        media_type = check_media_type(header, coding, (JSON, *JSON_LINES))
        # the body is read whole before the first line goes out: a sender that writes all its lines before
        # it reads any answer would otherwise wait for us while we wait for it
        body = read_body(environ, settings.body_limit)
        if media_type == JSON:
            return response(_whole_answer(predictor, _items(read_json(body), settings.batch_limit)))
        headers = {"Content-Type": media_type, "Cache-Control": "no-store"}
        return Response(_answer_lines(predictor, settings, body), 200, headers)

    operation(blueprint, "POST", "/predictions/batch", predict_electrolysis_batch, _POST)


def _items(data: Any, limit: int) -> list[Any]:
    """Items of a batch; raises a validation problem if the document has another shape."""
    faults: list[Fault] = []
    if type(data) is not dict:
        detail = f'The body is {kind_of(data)}; it has to be an object with "items", a list of requests.'
        raise validation_problem([Fault((), "wrong-type", detail)])
    note_unknown_fields(data, (), ("items",), faults)
    items = data.get("items")
    path = ("items",)
    if "items" not in data:
        faults.append(Fault(path, "missing-field", 'The body lacks "items", the list of requests.'))
    elif type(items) is not list:
        detail = f'"items" is {kind_of(items)}; it has to be a list of requests.'
        faults.append(Fault(path, "wrong-type", detail))
    elif not items:
        faults.append(Fault(path, "empty", '"items" is an empty list. Send at least one request.'))
    elif len(items) > limit:
        detail = f'"items" takes {limit} requests at most, and has {len(items)}. Send several batches.'
        faults.append(Fault(path, "too-many", detail))
    if faults or type(items) is not list:
        raise validation_problem(faults)
    return items


def _whole_answer(predictor: Predictor, items: list[Any]) -> Answer:
    body = b",".join(predictor.answer_members(item).body for item in items)
    headers = (("Content-Type", JSON), ("Cache-Control", "no-store"))
    return Answer(200, b'{"results":[' + body + b"]}", headers)


def _answer_lines(predictor: Predictor, settings: Settings, body: bytes) -> Iterator[bytes]:
    """Answer each line that is not empty; the last line says whether all were answered."""
    count = 0
    for line in body.splitlines():
        text = line.strip()
        if not text:
            continue
        if count == settings.lines_limit:
            detail = f"A batch takes {settings.lines_limit} lines at most. Send the rest in another batch."
            yield (
                orjson.dumps({"done": False, "count": count, "problem": _too_large(detail).document()})
                + b"\n"
            )
            return
        count += 1
        if len(text) > settings.line_limit:
            detail = f"The line has {len(text)} bytes, and {settings.line_limit} are read. Send it as JSON."
            answer = _too_large(detail, "line-too-long").answer()
        else:
            answer = predictor.answer_line(text)
        yield answer.body + b"\n"
    yield orjson.dumps({"done": True, "count": count}) + b"\n"


def _too_large(detail: str, code: str = "content-too-large") -> Problem:
    return Problem("content-too-large", detail, faults=[Fault((), code, detail)])
