"""`ionwright predict`: an answer to read, the JSON of the API, and refusals that point at the place."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from typing import Any

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

BRACKET = ["NiSO4", "--concentration", "0.25 mol/dm3", "--cathode", "steel", "--anode", "nickel"]


def run(*arguments: str, **environment: str) -> Result:
    return CliRunner().invoke(main, ["predict", *arguments], env={"COLUMNS": "80", **environment})


def posted(**members: Any) -> bytes:
    answer = create_app(Settings()).test_client().post("/v1/predictions", json=members)
    assert answer.status_code == 200, answer.text
    return answer.data


def test_the_answer_is_laid_out_in_sections() -> None:
    result = run(*BRACKET, "--curriculum", "gcse")
    assert result.exit_code == 0, result.output
    headings = [line for line in result.stdout.splitlines() if line and not line.startswith(" ")]
    assert headings == [
        "CELL",
        "IONS",
        "AT THE CATHODE (-)",
        "AT THE ANODE (+)",
        "OVERALL",
        "SOLUTION",
        "WHAT YOU SEE",
        "TESTS",
        "CAUTIONS",
    ]
    assert "  Product        nickel (Ni)" in result.stdout
    assert "  Half-equation  Ni²⁺(aq) + 2e⁻ → Ni(s)" in result.stdout
    assert "  Electrolyte    nickel(II) sulfate, NiSO4, 0.25 mol/dm3, in water" in result.stdout


@pytest.mark.parametrize("columns", ["40", "80", "200"])
def test_lines_fit_the_terminal(columns: str) -> None:
    result = run("NaCl@0.5 mol/dm3", "KI@0.1 mol/dm3", "--curriculum", "a-level", COLUMNS=columns)
    assert result.exit_code == 0
    assert max(map(len, result.stdout.splitlines())) <= min(int(columns), 110)


def test_the_json_is_the_api_s_byte_for_byte() -> None:
    result = run(*BRACKET, "--curriculum", "gcse", "--json")
    assert (
        result.stdout_bytes
        == posted(
            electrolyte="NiSO4",
            concentration="0.25 mol/dm3",
            cathode="steel",
            anode="nickel",
            curriculum="gcse",
        )
        + b"\n"
    )


def test_a_mixture_has_its_own_concentrations() -> None:
    result = run(
        "NaCl@0.5 mol/dm3", "KI", "--concentration", "0.1 mol/dm3", "--curriculum", "a-level", "--json"
    )
    substances = json.loads(result.stdout)["cell"]["electrolyte"]
    assert [(s["formula"], s["concentration"]) for s in substances] == [
        ("NaCl", "0.5 mol/dm3"),
        ("KI", "0.1 mol/dm3"),
    ]


def test_conditions_reach_the_cell() -> None:
    result = run("PbBr2", "--state", "molten", "--temperature", "400 degC", "--curriculum", "gcse", "--json")
    cell = json.loads(result.stdout)["cell"]
    assert (cell["state"], cell["temperature"]) == ("molten", "400 degC")


def test_a_refusal_points_at_the_place_and_ends_with_2() -> None:
    result = run("NaCl(", "--curriculum", "gcse")
    assert result.exit_code == 2
    assert result.stdout == ""
    told, given, mark, *_ = result.stderr.splitlines()
    assert told.startswith("Refused (unreadable-formula): ")
    assert given == "    NaCl("
    assert mark.strip() == "^"
    assert "Traceback" not in result.output


@pytest.mark.parametrize(
    ("arguments", "code", "given"),
    [
        (["CaCO3", "--curriculum", "gcse"], "insoluble", "CaCO3"),
        (["NaCl", "CaCO3", "--curriculum", "gcse"], "insoluble", "CaCO3"),
        (["NaCl@5 bananas", "--curriculum", "gcse"], "bad-concentration", "5 bananas"),
        (["NaCl", "--concentration", "5 bananas", "--curriculum", "gcse"], "bad-concentration", "5 bananas"),
        (["NaCl", "--anode", "unobtainium", "--curriculum", "gcse"], "unknown-electrode", "unobtainium"),
        (["NaCl", "--supply", "ac", "--curriculum", "gcse"], "alternating-supply", "ac"),
        (["NaCl", "--curriculum", "gcsee"], "unknown-curriculum", "gcsee"),
        (["CaCO3", "--curriculum", "gcsee"], "insoluble", "CaCO3"),
    ],
)
def test_refusals_show_the_text_that_they_are_about(arguments: list[str], code: str, given: str) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stderr.startswith(f"Refused ({code}): ")
    assert f"\n    {given}\n" in result.stderr


@pytest.mark.parametrize("arguments", [[], ["NaCl"], ["NaCl", "--curriculum", "gcse", "--ph", "15"]])
def test_a_command_that_lacks_something_says_so(arguments: list[str]) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert "Usage:" in result.stderr


def test_a_folder_of_curricula_that_is_not_there_is_told() -> None:
    result = run("NaCl", "--curriculum", "gcse", IONWRIGHT_CURRICULA="/no/such/folder")
    assert result.exit_code == 2
    assert "there is no such folder" in result.stderr


def test_a_plugin_can_be_left_out() -> None:
    result = run("NaCl", "--curriculum", "igcse", IONWRIGHT_WITHOUT="igcse")
    assert result.exit_code == 2
    assert "unknown-curriculum" in result.stderr


def test_a_terminal_that_shows_ascii_only_gets_ascii() -> None:
    command = [sys.executable, "-m", "ionwright", "predict", "CuSO4", "--curriculum", "gcse"]
    environment = os.environ | {"PYTHONIOENCODING": "ascii"}
    done = subprocess.run(command, check=True, capture_output=True, env=environment)
    assert b"  Half-equation  Cu2+(aq) + 2e- -> Cu(s)" in done.stdout.splitlines()
    assert b"?" not in done.stdout


def test_a_cell_beyond_the_course_is_laid_out_too() -> None:
    result = run("K2Cr2O7", "--curriculum", "gcse")
    assert result.exit_code == 0
    assert "  Product        not decided\n" in result.stdout
    assert "OVERALL" not in result.stdout


def test_the_help_shows_the_command_of_the_bracket() -> None:
    assert '\n    ionwright predict NiSO4 --concentration "0.25 mol/dm3" \\\n' in run("--help").stdout
