"""The API page in a real browser: it asks nobody but the service, and its form works."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "live"))

from service import Service, running_service

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, Page

CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(
        CHROMIUM is None, reason="no Chromium on this machine (Debian: apt-get install chromium)"
    ),
]


@pytest.fixture(scope="module")
def service(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Service]:
    with running_service(tmp_path_factory.mktemp("browser") / "service.log") as running:
        yield running


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield browser
        browser.close()


@pytest.fixture
def page(browser: Browser, service: Service) -> Iterator[Page]:
    """The API page, on which no outside request, no error and no breach of the policy may happen."""
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("request", lambda r: None if r.url.startswith(service.address) else faults.append(r.url))
    # the browser notes a refusal of the service as an error of its own
    expected = "status of 422"
    page.on(
        "console", lambda m: faults.append(m.text) if m.type != "log" and expected not in m.text else None
    )
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("requestfailed", lambda request: faults.append(f"failed: {request.url}"))
    page.goto(f"{service.address}/docs")
    yield page
    context.close()
    assert faults == []


def test_the_page_loads_with_its_own_style_and_headings(page: Page) -> None:
    assert page.title().startswith("Ionwright")
    assert page.locator("h1").count() == 1
    assert (
        page.evaluate("getComputedStyle(document.querySelector('.masthead')).borderBottomStyle") == "double"
    )


def test_the_first_example_can_be_tried(page: Page) -> None:
    page.click("#try-send")
    page.wait_for_selector("#try-answer:visible")
    assert page.inner_text("#try-status") == "Answered with status 200."
    words = page.inner_text("#try-words")
    assert "At the cathode: nickel. Ni²⁺(aq) + 2e⁻ → Ni(s)" in words
    assert '"curriculum"' in page.inner_text("#try-json")


def test_another_example_can_be_chosen_and_a_refusal_is_told_in_words(page: Page) -> None:
    page.select_option("#try-choice", label="Refused: the limewash of the tower does not dissolve")
    assert "CaCO3" in page.input_value("#try-body")
    page.click("#try-send")
    page.wait_for_selector("#try-answer:visible")
    assert page.inner_text("#try-status") == "Answered with status 422."
    assert "dissolve" in page.inner_text("#try-words")


def test_a_request_of_one_s_own_can_be_sent_with_the_keyboard(page: Page) -> None:
    page.fill("#try-body", '{"electrolyte": "CuSO4", "curriculum": "gcse"}')
    page.focus("#try-send")
    page.keyboard.press("Enter")
    page.wait_for_selector("#try-answer:visible")
    assert "At the cathode: copper." in page.inner_text("#try-words")


@pytest.mark.parametrize("width", [320, 1280])
def test_the_page_never_scrolls_sideways(page: Page, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_every_control_has_a_name(page: Page) -> None:
    unnamed = page.evaluate(
        "[...document.querySelectorAll('input, select, textarea, button')]"
        ".filter(e => !(e.labels && e.labels.length) && !e.textContent.trim()).map(e => e.outerHTML)"
    )
    assert unnamed == []


def test_text_can_be_read_on_its_ground_in_both_colour_schemes(page: Page) -> None:
    contrast = """
    () => {
      const light = (c) => { const v = c.match(/[0-9.]+/g).slice(0, 3).map((x) => x / 255)
        .map((x) => (x <= 0.03928 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4));
        return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2]; };
      const ratio = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      const ground = (e) => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor;
        if (!c.startsWith('rgba(0, 0, 0, 0')) return c; } return 'rgb(255, 255, 255)'; };
      return Math.min(...[...document.querySelectorAll('h1, h2, p, a, code, th, td, button, .method, .must')]
        .filter((e) => e.offsetParent).map((e) => ratio(light(getComputedStyle(e).color), light(ground(e)))));
    }"""
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]  # one of the two schemes
        assert page.evaluate(contrast) >= 4.5
