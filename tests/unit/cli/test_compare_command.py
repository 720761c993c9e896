"""`ionwright compare`: an answer to read, the JSON of the API, and refusals that point at the place."""

from __future__ import annotations

import json
from typing import Any

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

BRINE = ["NaCl", "--concentration", "dilute", "--curricula", "gcse,igcse"]


def run(*arguments: str, **environment: str) -> Result:
    return CliRunner().invoke(main, ["compare", *arguments], env={"COLUMNS": "80", **environment})


def api_answer(method: str, path: str, **options: Any) -> bytes:
    answer = create_app(Settings()).test_client().open(path, method=method, **options)
    assert answer.status_code == 200, answer.text
    return answer.data


def test_the_answer_is_laid_out_in_sections() -> None:
    result = run(*BRINE)
    assert result.exit_code == 0, result.output
    headings = [line for line in result.stdout.splitlines() if line and not line.startswith(" ")]
    assert headings == ["CELL", "CATHODE (-)", "ANODE (+)", "DIFFERENCE AT THE ANODE"]
    assert "  Answer         hydrogen (H₂): gcse, igcse\n" in result.stdout
    assert "  chlorine / oxygen\n  gcse           If chloride ions, " in result.stdout
    assert "  igcse          From a concentrated solution of chloride ions" in result.stdout


@pytest.mark.parametrize("columns", ["40", "80", "200"])
@pytest.mark.parametrize("arguments", [BRINE, ["--between", "gcse", "a-level"]], ids=["cell", "list"])
def test_lines_fit_the_terminal(arguments: list[str], columns: str) -> None:
    result = run(*arguments, COLUMNS=columns)
    assert result.exit_code == 0
    assert max(map(len, result.stdout.splitlines())) <= min(int(columns), 110)


def test_the_json_is_the_api_s_byte_for_byte() -> None:
    members = {"electrolyte": "NaCl", "concentration": "dilute", "curricula": ["gcse", "igcse"]}
    expected = api_answer("POST", "/v1/comparisons", json=members)
    assert run(*BRINE, "--json").stdout_bytes == expected + b"\n"


def test_ids_may_be_repeated_in_any_order() -> None:
    again = run(*BRINE[:3], "--curricula", "igcse", "--curricula", " gcse")
    assert again.stdout == run(*BRINE).stdout


def test_all_curricula_are_compared_if_none_is_named() -> None:
    listed = CliRunner().invoke(main, ["curricula", "list", "--json"])
    ids = [one["id"] for one in json.loads(listed.stdout)["curricula"]]
    compared = json.loads(run("CuSO4", "--json").stdout)
    assert [one["id"] for one in compared["curricula"]] == ids


def test_a_cell_beyond_a_course_is_laid_out_too() -> None:
    result = run("NaCl", "KI", "--concentration", "concentrated", "--curricula", "gcse,a-level")
    assert result.exit_code == 0
    assert "  Answer         not decided: gcse\n" in result.stdout


def test_the_cells_on_which_two_curricula_disagree_are_listed() -> None:
    result = run("--between", "gcse", "igcse", "--electrode", "anode", "--limit", "500")
    assert result.exit_code == 0, result.output
    assert "  sodium chloride, NaCl, dilute: chlorine / oxygen" in result.stdout
    assert "Next page" not in result.stdout


def test_the_list_is_the_api_s_byte_for_byte() -> None:
    expected = api_answer("GET", "/v1/comparisons/disagreements?curriculum=gcse&with=igcse&limit=7&offset=3")
    result = run("--between", "gcse", "igcse", "--limit", "7", "--offset", "3", "--json")
    assert result.stdout_bytes == expected + b"\n"


def test_one_curriculum_is_held_against_all_others() -> None:
    result = run("--between", "gcse", "all", "--limit", "1", "--json")
    others = [one["id"] for one in json.loads(result.stdout)["others"]]
    assert {"igcse", "a-level"} <= set(others)
    assert "gcse" not in others


def test_a_page_behind_the_end_says_so() -> None:
    assert "none on this page" in run("--between", "gcse", "igcse", "--offset", "99999").stdout


@pytest.mark.parametrize(
    ("arguments", "code", "given"),
    [
        (["CaCO3", "--curricula", "gcsee"], "insoluble", "CaCO3"),
        (["NaCl@5 bananas"], "bad-concentration", "5 bananas"),
        (["NaCl", "--anode", "unobtainium"], "unknown-electrode", "unobtainium"),
        (["NaCl", "--curricula", "gcse,gcsee"], "unknown-curriculum", "gcsee"),
        (["--between", "gcsee", "igcse"], "unknown-curriculum", "gcsee"),
    ],
)
def test_refusals_show_the_text_that_they_are_about(arguments: list[str], code: str, given: str) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stderr.startswith(f"Refused ({code}): ")
    assert f"\n    {given}\n" in result.stderr


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        ([], "Name a substance, or two curricula"),
        (["NaCl", "--between", "gcse", "igcse"], "one of the two"),
        (["NaCl", "--limit", "3"], "--limit belongs to --between"),
        (["--between", "gcse", "igcse", "--anode", "copper"], "--anode belongs to a cell"),
        (["--between", "gcse", "igcse", "--current-density", "1"], "--current-density belongs to a cell"),
        (["--between", "gcse", "gcse"], "named more than once"),
        (["NaCl", "--curricula", "gcse,GCSE"], "named more than once"),
    ],
)
def test_what_does_not_go_together_is_told(arguments: list[str], told: str) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert "Usage:" in result.stderr
    assert told in result.stderr
