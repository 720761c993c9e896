"""`ionwright balance` and `ionwright combine`: an answer to read, the JSON of the API, and refusals."""

from __future__ import annotations

from typing import Any

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

COPPER, SILVER = "Cu -> Cu^2+ + 2e-", "Ag^+ + e- -> Ag"


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, arguments, env={"COLUMNS": "80"})


def posted(operation: str, **members: Any) -> bytes:
    answer = create_app(Settings()).test_client().post(f"/v1/half-equations/{operation}", json=members)
    assert answer.status_code == 200, answer.text
    return answer.data


def test_a_half_equation_is_laid_out_with_its_steps() -> None:
    result = run("balance", "MnO4- -> Mn2+", "--medium", "acidic")
    assert result.exit_code == 0, result.output
    lines = result.stdout.splitlines()
    assert lines[:2] == ["MnO₄⁻ + 8H⁺ + 5e⁻ → Mn²⁺ + 4H₂O", "Reduction: 5 electrons on the left."]
    assert [line for line in lines if line.isupper()] == ["STEPS", "OXIDATION NUMBERS"]
    assert "  left   MnO4^-  Mn +7 *, O −2" in lines
    assert max(map(len, lines)) <= 80


def test_a_whole_equation_shows_its_halves() -> None:
    result = run("balance", "Cl2 -> Cl- + ClO3-", "--medium", "alkaline")
    assert result.exit_code == 0
    assert "  Reduction  5 x ( Cl₂ + 2e⁻ → 2Cl⁻ )" in result.stdout
    assert "  Oxidation  1 x ( Cl₂ + 12OH⁻ → 2ClO₃⁻ + 6H₂O + 10e⁻ )" in result.stdout
    assert "not a half-equation" in result.stdout


def test_the_json_is_the_api_s_byte_for_byte() -> None:
    result = run("balance", "S2O32- -> S4O62-", "--json")
    assert result.stdout_bytes == posted("balance", equation="S2O32- -> S4O62-") + b"\n"
    result = run("combine", COPPER, SILVER, "--json")
    assert result.stdout_bytes == posted("combine", oxidation=COPPER, reduction=SILVER) + b"\n"


@pytest.mark.parametrize(
    "arguments",
    [
        [COPPER, SILVER],
        ["--oxidation", COPPER, "--reduction", SILVER],
        ["--reduction", SILVER, COPPER],
    ],
)
def test_two_half_equations_are_added(arguments: list[str]) -> None:
    result = run("combine", *arguments)
    assert result.exit_code == 0, result.output
    assert result.stdout.splitlines()[0] == "2Ag⁺ + Cu → 2Ag + Cu²⁺"


@pytest.mark.parametrize(
    ("arguments", "lines"),
    [
        (
            ["balance", "Mn$ -> Mn"],
            ['Refused (unreadable-formula): "$" is no part of a formula.', "    Mn$ -> Mn", "      ^"],
        ),
        (
            ["balance", "Zn -> Cu"],
            [
                "Refused (no-solution): Zinc (Zn) stands only on the left, in Zn; copper (Cu) stands only on the right,"
            ],
        ),
        (
            ["balance", "NO3^- -> NO + NO2", "--medium", "acidic"],
            ["    NO3^- + 4H^+ + 3e- -> NO + 2H2O", "    NO3^- + 2H^+ + e- -> NO2 + H2O"],
        ),
        (["combine", COPPER, COPPER], ["Refused (both-oxidations): Both half-equations release electrons."]),
        (
            ["combine", "Cu -> Cu2+ + e-", SILVER],
            ["    Cu -> Cu2+ + e-", "It balances as Cu -> Cu^2+ + 2e-."],
        ),
    ],
)
def test_refusals_say_what_is_wrong_and_where(arguments: list[str], lines: list[str]) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stdout == ""
    for line in lines:
        assert line in result.stderr


@pytest.mark.parametrize("arguments", [[], [COPPER], [COPPER, SILVER, SILVER]])
def test_two_half_equations_are_needed(arguments: list[str]) -> None:
    result = run("combine", *arguments)
    assert result.exit_code == 2
    assert "Give two half-equations" in result.stderr
