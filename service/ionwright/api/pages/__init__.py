"""Pages for people: the API page, the problem pages, and the document itself.

Everything on them comes from the service; the policy sent along forbids the browser anything else.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import orjson
from flask import Blueprint, Flask, Response, current_app, redirect, render_template, request, url_for
from markupsafe import escape

from ionwright.api.answers import BRIEFLY_CACHEABLE, JSON, tagged_answer
from ionwright.api.document import openapi_document
from ionwright.api.pages.reference import reference_of
from ionwright.api.problem_kinds import FAULT_KINDS, PROBLEM_KINDS
from ionwright.api.problems import Fault, Problem
from ionwright.api.responses import conditional_response
from ionwright.api.texts import near, shown

if TYPE_CHECKING:
    from werkzeug.wrappers import Response as AnyResponse

_HTML = "text/html; charset=utf-8"
_ADDRESS = "http://address-of-this-service.invalid/"
_POLICY = (
    "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
    " object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
)


def pages_blueprint() -> Blueprint:
    """Pages and the document, which stand beside the operations."""
    blueprint = Blueprint(
        "pages", __name__, static_folder="static", static_url_path="/docs/static", template_folder="templates"
    )
    blueprint.add_url_rule("/", "index", _index)
    blueprint.add_url_rule("/openapi.json", "document", _document)
    blueprint.add_url_rule("/docs", "reference", _reference)
    blueprint.add_url_rule("/problems", "problems", _problems)
    blueprint.add_url_rule("/problems/<string:code>", "problem", _problem)
    return blueprint


def _index() -> AnyResponse:
    answer = redirect(url_for("pages.reference"))
    described, shown_at = url_for("pages.document"), url_for("pages.reference")
    answer.headers["Link"] = f'<{described}>; rel="service-desc", <{shown_at}>; rel="service-doc"'
    return answer


def _document() -> Response:
    app: Flask = current_app._get_current_object()  # type: ignore[attr-defined]  # noqa: SLF001 -- Flask's documented way
    document = _encoded_document(app).replace(
        b'"url":"/"', b'"url":' + orjson.dumps(request.root_path or "/"), 1
    )
    return conditional_response(tagged_answer(document, media_type=JSON, cache_control=BRIEFLY_CACHEABLE))


@lru_cache(maxsize=4)
def _encoded_document(app: Flask) -> bytes:
    return orjson.dumps(openapi_document(app))


def _reference() -> Response:
    app: Flask = current_app._get_current_object()  # type: ignore[attr-defined]  # noqa: SLF001 -- Flask's documented way
    page = _reference_page(app, request.root_path).replace(_ADDRESS, str(escape(request.url_root)))
    return _page(page)


@lru_cache(maxsize=4)
def _reference_page(app: Flask, _root: str) -> str:
    """The page, rendered once for each root path under which the service stands."""
    reference = reference_of(openapi_document(app), address=_ADDRESS.rstrip("/"))
    return render_template(
        "reference.html", reference=reference, kinds=PROBLEM_KINDS.values(), faults=FAULT_KINDS
    )


def _problems() -> Response:
    return _page(render_template("problems.html", kinds=PROBLEM_KINDS.values(), faults=FAULT_KINDS))


def _problem(code: str) -> Response:
    kind = PROBLEM_KINDS.get(code)
    if kind is None:
        hint = near(code, PROBLEM_KINDS) or "GET /problems lists all kinds."
        detail = f"There is no kind of problem {shown(code)}. {hint}"
        raise Problem("not-found", detail, faults=[Fault(("code",), "not-found", detail)], source="path")
    if request.accept_mimetypes.best_match(("text/html", JSON)) == JSON:
        members = {"code": kind.code, "status": kind.status, "title": kind.title, "meaning": kind.meaning}
        answer = tagged_answer(orjson.dumps(members), cache_control=BRIEFLY_CACHEABLE)
        found = conditional_response(answer)
    else:
        found = _page(render_template("problem.html", kind=kind))
    found.headers["Vary"] = "Accept"
    return found


def _page(html: str) -> Response:
    answer = tagged_answer(html.encode(), media_type=_HTML, cache_control=BRIEFLY_CACHEABLE)
    page = conditional_response(answer)
    page.headers.update(
        {
            "Content-Security-Policy": _POLICY,
            "Referrer-Policy": "no-referrer",
            "X-Content-Type-Options": "nosniff",
        }
    )
    return page
