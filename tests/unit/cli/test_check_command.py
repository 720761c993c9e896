"""`ionwright check`: a marking to read, the JSON of the API, and refusals that point at the place."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

CELL = ["--electrolyte", "CuSO4", "--electrode", "cathode", "--curriculum", "gcse"]
GIVEN = ["--expected", "2Cl^- -> Cl2 + 2e-", "--curriculum", "igcse"]


def run(*arguments: str, **environment: str) -> Result:
    return CliRunner().invoke(main, ["check", *arguments], env={"COLUMNS": "80", **environment})


def test_a_right_line_gets_its_marks() -> None:
    result = run("Cu2+ + 2e- -> Cu", *CELL)
    assert result.exit_code == 0, result.output
    assert result.stdout == "CORRECT, 2 of 2 marks\n"


def test_a_fault_is_marked_in_the_line_and_its_answer_kept_back() -> None:
    result = run("Cu2+ + e- -> Cu", *CELL)
    assert result.exit_code == 0
    assert "INCORRECT, 1 of 2 marks" in result.stdout
    assert "    Cu2+ + e- -> Cu\n           ^^\n  wrong-electron-count: " in result.stdout
    assert "2e⁻" not in result.stdout


def test_the_answer_is_revealed_if_wanted() -> None:
    result = run("Cu2+ + e- -> Cu", *CELL, "--reveal")
    assert "Right:\n  Cu²⁺(aq) + 2e⁻ → Cu(s)" in result.stdout


def test_a_slip_is_named() -> None:
    result = run("2cl- -> cl2 + 2e-", *GIVEN)
    assert result.stdout.startswith("CORRECT, 2 of 2 marks")
    assert "slip: “cl” was read as “Cl”" in result.stdout


def test_an_unreadable_line_is_a_verdict_too() -> None:
    result = run("chlorine", *GIVEN)
    assert result.exit_code == 0
    assert result.stdout.startswith("UNREADABLE, 0 of 2 marks")


def test_the_json_is_the_api_s() -> None:
    result = run("Cu2+ + e- -> Cu", *CELL, "--json")
    body = {
        "answer": "Cu2+ + e- -> Cu",
        "cell": {"electrolyte": "CuSO4", "curriculum": "gcse"},
        "electrode": "cathode",
    }
    posted = create_app(Settings()).test_client().post("/v1/half-equations/check", json=body)
    assert json.loads(result.stdout) == posted.json


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["--curriculum", "gcse"], "Say what was asked"),
        (["--electrolyte", "CuSO4", "--curriculum", "gcse"], "Say which electrode"),
        ([*CELL, "--expected", "Cu^2+ + 2e- -> Cu"], "not both"),
    ],
)
def test_a_command_that_asks_nothing_or_two_things_is_refused(arguments: list[str], told: str) -> None:
    result = run("Cu2+ + 2e- -> Cu", *arguments)
    assert result.exit_code == 2
    assert told in result.stderr


@pytest.mark.parametrize(
    ("arguments", "code", "marked"),
    [
        (["--electrolyte", "CaCO3", "--electrode", "anode", "--curriculum", "gcse"], "insoluble", "CaCO3"),
        (["--electrolyte", "CaCO3", "--electrode", "anode", "--curriculum", "gcsee"], "insoluble", "CaCO3"),
        (
            ["--electrolyte", "CuSO4", "--electrode", "anode", "--curriculum", "gcsee"],
            "unknown-curriculum",
            "gcsee",
        ),
        (["--expected", "Ag^+ -> Ag", "--curriculum", "gcse"], "expectation-unbalanced", "Ag^+ -> Ag"),
        (["--expected", "Ag^+ -> ", "--curriculum", "gcse"], "unreadable-formula", "Ag^+ -> "),
    ],
)
def test_a_question_that_cannot_be_asked_is_refused(arguments: list[str], code: str, marked: str) -> None:
    result = run("Cu2+ + 2e- -> Cu", *arguments)
    assert result.exit_code == 2
    assert f"Refused ({code})" in result.stderr
    assert f"    {marked}\n" in result.stderr


def test_a_terminal_without_unicode_gets_plain_text() -> None:
    runner = CliRunner(charset="ascii")
    result = runner.invoke(main, ["check", "2cl- -> cl2 + e-", *GIVEN, "--reveal"])
    assert result.exit_code == 0, result.output
    assert "2Cl- -> Cl2 + 2e-" in result.output
