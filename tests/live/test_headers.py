"""Headers: what may be kept, for how long, and how a sender learns that nothing has changed."""

from __future__ import annotations

import pytest
from service import JSON_LINES, Service

pytestmark = pytest.mark.live

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
PAIRS = tuple(BRACKET.items())
LOOK_UPS = [
    "/v1/predictions?electrolyte=NiSO4&curriculum=gcse",
    "/v1/curricula",
    "/v1/curricula/gcse",
    "/v1/electrolytes?search=nickel",
    "/v1/electrodes",
    "/openapi.json",
    "/docs",
]


@pytest.mark.parametrize("address", LOOK_UPS)
def test_look_ups_may_be_kept_and_asked_for_again(service: Service, address: str) -> None:
    first = service.ask("GET", address)
    assert first.status_code == 200
    assert first.headers["Cache-Control"].startswith("public, max-age=")
    tag = first.headers["ETag"]
    assert tag.startswith('"')
    for held in (tag, f"W/{tag}", f'"other", {tag}', "*"):
        again = service.ask("GET", address, headers={"If-None-Match": held})
        assert again.status_code == 304, held
        assert again.content == b""
        assert again.headers["ETag"] == tag
        assert again.headers["Cache-Control"] == first.headers["Cache-Control"]
    changed = service.ask("GET", address, headers={"If-None-Match": '"other"'})
    assert changed.status_code == 200
    assert changed.content == first.content


@pytest.mark.parametrize("address", LOOK_UPS)
def test_head_answers_as_get_does_without_the_body(service: Service, address: str) -> None:
    body, head = service.ask("GET", address), service.ask("HEAD", address)
    assert head.status_code == 200
    assert head.content == b""
    for name in ("Content-Type", "Content-Length", "ETag", "Cache-Control"):
        assert head.headers[name] == body.headers[name]


def test_the_same_cell_has_the_same_bytes_and_tag_by_post_and_by_get(service: Service) -> None:
    posted = [service.predict(**BRACKET) for _ in range(5)]
    looked_up = service.look_up(*PAIRS)
    assert {answer.content for answer in posted} == {looked_up.content}
    assert {answer.headers["ETag"] for answer in posted} == {looked_up.headers["ETag"]}


def test_another_notation_is_another_answer(service: Service) -> None:
    whole, short = service.look_up(*PAIRS), service.look_up(*PAIRS, ("notation", "ascii"))
    assert whole.headers["ETag"] != short.headers["ETag"]
    assert len(short.content) < len(whole.content)


def test_problems_are_never_kept_and_point_to_their_explanation(service: Service) -> None:
    answer = service.look_up(("electrolyte", "CaCO3"), ("curriculum", "gcse"))
    assert answer.status_code == 422
    assert answer.headers["Content-Type"] == "application/problem+json"
    assert answer.headers["Cache-Control"] == "no-store"
    assert "ETag" not in answer.headers
    assert answer.headers["Link"] == '</problems/insoluble>; rel="help"'
    assert service.ask("GET", "/problems/insoluble").status_code == 200


@pytest.mark.parametrize("address", ["/healthz", "/readyz"])
def test_health_is_never_kept(service: Service, address: str) -> None:
    assert service.ask("GET", address).headers["Cache-Control"] == "no-store"


def test_batches_are_never_kept(service: Service) -> None:
    whole = service.ask("POST", "/v1/predictions/batch", json={"items": [BRACKET]})
    assert whole.headers["Cache-Control"] == "no-store"
    lines = service.send(b"{}\n", JSON_LINES, "/v1/predictions/batch")
    assert lines.headers["Cache-Control"] == "no-store"
    assert lines.headers["Content-Type"] == JSON_LINES


@pytest.mark.parametrize("method", ["GET", "POST"])
def test_no_cookie_is_ever_set(service: Service, method: str) -> None:
    for address in [*LOOK_UPS, "/", "/nowhere"]:
        assert "Set-Cookie" not in service.ask(method, address).headers


@pytest.mark.parametrize(
    ("address", "methods"),
    [
        ("/v1/predictions", {"GET", "HEAD", "OPTIONS", "POST"}),
        ("/v1/predictions/batch", {"OPTIONS", "POST"}),
        ("/v1/curricula", {"GET", "HEAD", "OPTIONS"}),
        ("/healthz", {"GET", "HEAD", "OPTIONS"}),
    ],
)
def test_a_method_that_does_not_fit_is_told_the_ones_that_do(
    service: Service, address: str, methods: set[str]
) -> None:
    for method in {"GET", "POST", "PUT", "PATCH", "DELETE", "TRACE"} - methods:
        answer = service.ask(method, address)
        assert answer.status_code == 405, method
        assert set(answer.headers["Allow"].split(", ")) == methods
        assert answer.json()["code"] == "method-not-allowed"
