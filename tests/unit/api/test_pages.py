"""Pages: all from the service, under a strict policy, and every problem explained."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from ionwright.api.examples import EXAMPLES
from ionwright.api.problem_kinds import PROBLEM_KINDS

if TYPE_CHECKING:
    from flask.testing import FlaskClient

PAGES = ["/docs", "/problems", "/problems/insoluble"]


@pytest.mark.parametrize("address", PAGES)
def test_pages_forbid_everything_from_elsewhere(client: FlaskClient, address: str) -> None:
    answer = client.get(address)
    assert answer.status_code == 200
    policy = answer.headers["Content-Security-Policy"]
    assert policy.startswith("default-src 'self';")
    assert "unsafe" not in policy
    assert answer.headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize("address", PAGES)
def test_pages_hold_no_address_elsewhere_and_no_inline_script(client: FlaskClient, address: str) -> None:
    page = client.get(address).text
    for found in re.findall(r'(?:src|href|action)="([^"]*)"', page):
        assert found.startswith(("/", "#")), found
    assert re.search(r"<script(?![^>]*\bsrc=)", page) is None
    assert not re.search(r"\son[a-z]+=", page)
    assert " style=" not in page


@pytest.mark.parametrize("address", PAGES)
def test_everything_a_page_refers_to_is_there(client: FlaskClient, address: str) -> None:
    page = client.get(address).text
    ids = set(re.findall(r'\bid="([^"]+)"', page))
    for found in set(re.findall(r'(?:src|href)="([^"]*)"', page)):
        if found.startswith("#"):
            assert found[1:] in ids, found
        else:
            assert client.get(found, buffered=True).status_code in (200, 302), found


def test_ids_on_the_api_page_are_unique(client: FlaskClient) -> None:
    ids = re.findall(r'\bid="([^"]+)"', client.get("/docs").text)
    assert sorted(ids) == sorted(set(ids))


def test_the_api_page_shows_every_operation_and_example(client: FlaskClient) -> None:
    page = client.get("/docs").text
    for example in EXAMPLES:
        assert f'id="{example.operation}"' in page
        assert example.summary.replace("'", "&#39;") in page


def test_commands_on_the_api_page_name_the_address_that_was_used(client: FlaskClient) -> None:
    page = client.get("/docs", base_url="http://skerry.example:8080/chem").text
    assert "curl http://skerry.example:8080/chem/v1/curricula" in page
    assert "address-of-this-service.invalid" not in page


def test_the_front_door_leads_to_the_api_page_and_names_the_document(client: FlaskClient) -> None:
    answer = client.get("/")
    assert answer.status_code == 302
    assert answer.headers["Location"] == "/docs"
    assert '</openapi.json>; rel="service-desc"' in answer.headers["Link"]


@pytest.mark.parametrize("code", sorted(PROBLEM_KINDS))
def test_every_kind_of_problem_is_explained_for_people_and_programs(client: FlaskClient, code: str) -> None:
    page = client.get(f"/problems/{code}")
    assert page.mimetype == "text/html"
    assert PROBLEM_KINDS[code].title in page.text
    data = client.get(f"/problems/{code}", headers={"Accept": "application/json"})
    assert data.json == {
        "code": code,
        "status": PROBLEM_KINDS[code].status,
        "title": PROBLEM_KINDS[code].title,
        "meaning": PROBLEM_KINDS[code].meaning,
    }
    assert "Accept" in data.headers["Vary"]


def test_an_unknown_kind_of_problem_is_not_found_and_a_near_one_is_offered(client: FlaskClient) -> None:
    answer = client.get("/problems/insolubel")
    assert answer.status_code == 404
    assert 'Did you mean "insoluble"?' in answer.json["detail"]


def test_the_document_names_the_path_under_which_the_service_stands(client: FlaskClient) -> None:
    assert client.get("/openapi.json").json["servers"] == [{"url": "/"}]
    behind = client.get("/openapi.json", base_url="http://skerry.example/chem")
    assert behind.json["servers"] == [{"url": "/chem"}]
