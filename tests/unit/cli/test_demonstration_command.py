"""`ionwright demonstration`: a plan to read, the JSON of the API, and refusals."""

from __future__ import annotations

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

BRINE = ("NaCl@2 mol/dm3", "--see", "30 cm3 of H2", "--within", "20 min", "--curriculum", "igcse")


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["demonstration", *arguments], env={"COLUMNS": "88"})


def test_a_plan_is_laid_out_in_sections() -> None:
    result = run(*BRINE, "--room-volume", "120 m3", "--air-changes", "4 /h", "--bath-volume", "150 cm3")
    assert result.exit_code == 0, result.output
    titles = [
        line for line in result.stdout.splitlines() if line and line == line.upper() and line[0].isalpha()
    ]
    assert titles == [
        "WHERE",
        "WHAT SHOULD BE SEEN",
        "CURRENT AND TIME",
        "WHAT IS SEEN",
        "SETTING UP",
        "WHAT FORMS AND WHAT IS USED UP",
        "BATH",
        "AIR",
        "CAUTIONS",
        "DOUBTS",
        "ASSUMED",
        "WORKING",
    ]
    assert "  Aims met       yes" in result.stdout
    assert "  Verdict        fume cupboard" in result.stdout
    assert "With 4 air changes an hour it peaks" in " ".join(result.stdout.split())
    assert max(map(len, result.stdout.splitlines())) <= 88


def test_the_json_is_the_api_s_byte_for_byte() -> None:
    result = run(*BRINE, "--electrode-area", "30 cm2", "--json")
    body = {
        "cell": {"electrolyte": "NaCl@2 mol/dm3"},
        "aims": "30 cm3 of H2",
        "within": "20 min",
        "electrode_area": "30 cm2",
        "curriculum": "igcse",
    }
    answer = create_app(Settings()).test_client().post("/v1/demonstrations", json=body)
    assert answer.status_code == 200
    assert result.stdout_bytes == answer.data + b"\n"


def test_conventions_stand_in_for_what_the_course_prints() -> None:
    told = ("--convention", "faraday_constant=96485 C/mol", "--convention", "molar gas volume=22.4 dm3/mol")
    result = run(*BRINE, *told, "--figures", "4")
    assert result.exit_code == 0, result.output
    charge = 0.030 / 22.4 * 2 * 96485
    assert f"it takes {charge:.1f} C" in result.stdout
    over_water = run(*BRINE, "--over-water", "--gas-temperature", "20 degC", "--gas-pressure", "100 kPa")
    assert over_water.exit_code == 0, over_water.output


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (("CuSO4", "--see", "1 g of Zn", "--curriculum", "gcse"), ["Refused (not-formed)", "It gives Cu"]),
        (("CaCO3", "--see", "visible", "--curriculum", "gcse"), ["Refused (insoluble)", "    CaCO3"]),
        (
            ("CuSO4", "--see", "1 g of Cu", "--within", "3 A", "--curriculum", "gcse"),
            ["wrong-dimension", "    3 A"],
        ),
        (
            ("CuSO4", "--see", "1 um of Cu", "--electrode-area", "-3 cm2", "--curriculum", "gcse"),
            ["negative-quantity", "    -3 cm2"],
        ),
        (("CuSO4", "--see", "1 um of Cu", "--curriculum", "gcse"), ["needs-more", "area of the cathode"]),
        (("CuSO4", "--see", "visible", "--curriculum", "nowhere"), ["unknown-curriculum", "    nowhere"]),
        (
            ("CuSO4", "--see", "visible", "--convention", "faraday_constant=3 A", "--curriculum", "gcse"),
            ["wrong-dimension", "    3 A"],
        ),
        (("CuSO44", "--see", "visible", "--curriculum", "nowhere"), ["unknown-substance"]),
    ],
)
def test_a_refusal_is_told_with_the_text_at_fault(arguments: tuple[str, ...], told: list[str]) -> None:
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stdout == ""
    for text in told:
        assert text in result.stderr


def test_an_aim_is_asked_for() -> None:
    result = run("CuSO4", "--curriculum", "gcse")
    assert result.exit_code == 2
    assert "--see" in result.stderr
