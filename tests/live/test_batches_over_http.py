"""Batches over the wire: as many answers as requests, while the sender is still reading."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from service import Service

pytestmark = pytest.mark.live

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel", "curriculum": "gcse"}
BRINE = {"electrolyte": "NaCl", "concentration": "concentrated", "curriculum": "igcse"}
LIMEWASH = {"electrolyte": "CaCO3", "curriculum": "gcse"}


def test_a_batch_answers_as_single_requests_do(service: Service) -> None:
    items = [BRACKET, LIMEWASH, BRINE]
    assert service.predict_all(items) == [service.predict(**item).json() for item in items]


def test_lines_answer_as_single_requests_do(service: Service) -> None:
    text = "\n".join([json.dumps(BRACKET), '{"electrolyte": ', json.dumps(LIMEWASH), json.dumps(BRINE)])
    bracket, broken, limewash, brine, end = service.predict_lines(text)
    assert bracket == service.predict(**BRACKET).json()
    assert broken["code"] == "malformed-json"
    assert limewash == service.predict(**LIMEWASH).json()
    assert brine == service.predict(**BRINE).json()
    assert end == {"done": True, "count": 4}


def test_thousands_of_lines_are_answered_to_a_sender_that_reads_only_at_the_end(service: Service) -> None:
    line = json.dumps(BRINE | {"notation": "ascii"})
    answers = service.predict_lines("\n".join([line] * 3000))
    assert len(answers) == 3001
    assert answers[-1] == {"done": True, "count": 3000}
