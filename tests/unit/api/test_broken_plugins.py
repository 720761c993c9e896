"""Plugins that are broken, each in its own way, beside one that works: all of it is told, and the rest is served."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.api import Settings, create_app
from ionwright.curricula import guard, host
from ionwright.curricula.host import load_curricula

if TYPE_CHECKING:
    from collections.abc import Callable

    from flask.testing import FlaskClient

BRACKET = {"electrolyte": "NiSO4", "cathode": "steel", "anode": "nickel"}
BRINE = {"electrolyte": "NaBr", "cathode": "graphite", "anode": "graphite"}
COURSE = """
import time
from dataclasses import dataclass, replace
from ionwright.chemistry.equation import equation
from ionwright.curricula import PASS, Conventions, Remark, Ruling, curriculum_from_package, hookimpl

museum = curriculum_from_package("ionwright_gcse")

@dataclass(frozen=True)
class Keeper:
    sentence = "The keeper decides."
    def apply(self, situation):
        {body}

@hookimpl
def ionwright_curricula():
    keeper = Keeper()
    return [replace(museum, id="{id}", cathode_rules=(keeper, *museum.cathode_rules))]
"""
UNBALANCED = """
from dataclasses import replace
from ionwright.chemistry.equation import read_equation
from ionwright.curricula import Conventions, curriculum_from_package, hookimpl

museum = curriculum_from_package("ionwright_gcse")

class Sloppy(Conventions):
    def written(self, process, medium):
        return read_equation("Cu^2+ + e^- -> Cu")

@hookimpl
def ionwright_curricula():
    told = museum.conventions
    sloppy = Sloppy(hydrogen=told.hydrogen, oxygen=told.oxygen, constants=told.constants)
    return [replace(museum, id="unbalanced", conventions=sloppy)]
"""
BROKEN = {
    "import": ("import no_such_lighthouse", "ModuleNotFoundError: No module named 'no_such_lighthouse'"),
    "signature": (
        "from ionwright.curricula import hookimpl\n@hookimpl\ndef ionwright_curricula(lamp):\n    return ()\n",
        "PluginValidationError: ",
    ),
    "hangs-on-import": ("while True:\n    pass\n", "TimeLimitPassed: longer than 0.3 s"),
    "taken": (COURSE.format(id="gcse", body="return PASS"), "the id 'gcse' is taken by built-in gcse"),
    "raises": (COURSE.format(id="raises", body="raise RuntimeError('fog')"), "raises RuntimeError: fog"),
    "exits": (COURSE.format(id="exits", body="raise SystemExit('lamp out')"), "raises SystemExit: lamp out"),
    "hangs": (COURSE.format(id="hangs", body="time.sleep(30)"), "takes longer than "),
    "foreign": (
        COURSE.format(
            id="foreign", body="return Ruling(situation.cell.at_anode().processes[0], ('So it is.',))"
        ),
        "speaks of a process that is not possible in the cell",
    ),
    "mutates": (
        COURSE.format(id="mutates", body="object.__setattr__(situation, 'remaining', ()); return PASS"),
        "changes what it is shown: Situation.remaining",
    ),
    "scopeless": (
        COURSE.format(id="scopeless", body="return PASS").replace(
            'id="scopeless"', 'id="scopeless", scope=None'
        ),
        "fails when it is tried: AttributeError: ",
    ),
    "unbalanced": (UNBALANCED, "which does not balance"),
}
FAILS_ON_BROMIDE = COURSE.format(
    id="moody", body="return 1 / ('NaBr' not in str(situation.cell.electrolyte)) and PASS"
)


@pytest.fixture
def moody(install: Callable[..., str], monkeypatch: pytest.MonkeyPatch) -> FlaskClient:
    monkeypatch.setattr(guard, "TIME_LIMIT_S", 0.3)
    monkeypatch.setattr(host, "_LOADING_LIMIT_S", 0.3)
    for name, (source, _) in BROKEN.items():
        install(source, name=name, distribution=f"skerry-{name}")
    install(FAILS_ON_BROMIDE, name="moody", distribution="skerry-moody")
    return create_app(Settings(), load_curricula()).test_client()


def ask(client: FlaskClient, cell: dict[str, Any], curriculum: str) -> Any:
    return client.post("/v1/predictions", json=cell | {"curriculum": curriculum})


def test_every_broken_plugin_is_set_aside_with_its_reason_and_all_others_answer(moody: FlaskClient) -> None:
    ready = moody.get("/readyz")
    assert ready.status_code == 200
    aside = {one["name"].removeprefix("skerry-"): one["reason"] for one in ready.json["set_aside"]}
    assert sorted(aside) == sorted(BROKEN)
    for name, (_, reason) in BROKEN.items():
        assert reason in aside[name], name
    assert "moody" in ready.json["curricula"]
    for curriculum in ready.json["curricula"]:
        assert ask(moody, BRACKET, curriculum).status_code == 200, curriculum


def test_a_rule_that_fails_on_one_cell_fails_there_alone_and_is_told(
    moody: FlaskClient, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.WARNING):
        answers = [ask(moody, BRINE, "moody") for _ in range(2)]
    assert [(answer.status_code, answer.json["code"]) for answer in answers] == [(500, "rule-failed")] * 2
    assert "its rule Keeper raises ZeroDivisionError" in caplog.text
    told = [one["reason"] for one in moody.get("/readyz").json["set_aside"] if one["name"] == "moody"]
    assert told == ["its rule Keeper raises ZeroDivisionError: division by zero"]
    assert ask(moody, BRACKET, "moody").status_code == 200
    assert ask(moody, BRINE, "gcse").status_code == 200
    compared = moody.post("/v1/comparisons", json=BRINE)
    assert [one["curriculum"] for one in compared.json["set_aside"]] == ["moody"]
