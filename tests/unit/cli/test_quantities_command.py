"""`ionwright quantities`: the board to read, the JSON of the API, and refusals that show the text at fault."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main

NICKEL = "Ni^2+ + 2e- -> Ni"
KNOWN = ["--known", "current=0.50 A", "--known", "time=20 min"]
COURSE = ["--curriculum", "a-level"]
SERIES = ["--process", "silver cell=Ag^+ + e- -> Ag", "--process", "copper cell=Cu^2+ + 2e- -> Cu"]


def run(*arguments: str, columns: int = 80) -> Result:
    return CliRunner().invoke(main, ["quantities", *arguments, *COURSE], env={"COLUMNS": str(columns)})


def test_the_board_comes_first_and_then_the_answer() -> None:
    result = run(NICKEL, *KNOWN, "--find", "mass of Ni in mg")
    assert result.exit_code == 0, result.output
    lines = result.stdout.splitlines()
    assert lines[:3] == ["WORKING", "  1. Convert the time to seconds.", "       t = 20 min = 1200 s"]
    assert lines[lines.index("ANSWER") + 1] == "  Mass of Ni: 180 mg"
    assert lines.index("ANSWER") < lines.index("CONSTANTS")
    assert "  Faraday constant: 96500 C/mol" in lines
    assert "  Relative atomic masses: Ni 58.7" in lines


def test_long_equations_go_on_before_a_sign_of_equality() -> None:
    lines = run(NICKEL, *KNOWN, "--find", "mass", columns=50).stdout.splitlines()
    assert "       m(Ni) = n(Ni) × M(Ni)" in lines
    assert "         = 0.003109 mol × 58.7 g/mol = 0.1825 g" in lines
    assert "         ≈ 0.18 g" in lines


def test_the_json_is_the_api_s() -> None:
    result = run(NICKEL, *KNOWN, "--find", "mass", "--find", "charge", "--json")
    body = {
        "half_equation": NICKEL,
        "known": {"current": "0.50 A", "time": "20 min"},
        "find": ["mass", "charge"],
        "curriculum": "a-level",
    }
    posted = create_app(Settings()).test_client().post("/v1/quantities", json=body)
    assert json.loads(result.stdout) == posted.json


def test_an_electrode_of_a_cell_stands_for_a_half_equation() -> None:
    cell = ["--electrolyte", "NiSO4", "--cathode", "steel", "--anode", "nickel", "--electrode", "cathode"]
    assert "  Mass of Ni: 0.18 g\n" in run(*cell, *KNOWN, "--find", "mass").stdout


def test_a_bath_of_known_volume_goes_through_stages() -> None:
    cell = ["--electrolyte", "CuSO4@0.100 mol/dm3", "--known", "bath volume=250 cm3"]
    result = run(*cell, "--known", "current=0.750 A", "--find", "exhaustion time of Cu^2+ in min")
    assert "  Exhaustion time of Cu²⁺ (cell): 107 min\n" in result.stdout
    assert "STAGES\n  At first: copper at the cathode" in result.stdout


def test_cells_in_series_are_told_apart() -> None:
    result = run(*SERIES, "--known", "mass of Ag=2.16 g", "--find", "mass of Cu", "--find", "mass of Ag")
    assert (
        "ANSWERS\n  Mass of Cu (copper cell): 0.636 g\n  Mass of Ag (silver cell): 2.16 g\n" in result.stdout
    )


def test_the_charge_of_an_ion_is_found() -> None:
    known = ["--known", "current=1.50 A", "--known", "time=40.0 min", "--known", "mass=0.647 g"]
    assert "  Ion charge: 3\n" in run("--metal", "Cr", *known, "--find", "ion charge").stdout


def test_the_task_may_state_its_constants_and_figures() -> None:
    stated = ["--convention", "Faraday constant=96485 C/mol", "--convention", "Ni=58.69", "--figures", "5"]
    result = run(NICKEL, *KNOWN, "--find", "mass", *stated)
    assert "  Mass of Ni: 0.18248 g\n" in result.stdout
    assert "  Faraday constant: 96485 C/mol\n  Relative atomic masses: Ni 58.69\n" in result.stdout


def test_gas_over_water_is_told() -> None:
    known = [*KNOWN, "--known", "temperature=20 degC", "--known", "pressure=101 kPa"]
    result = run("2H+ + 2e- -> H2", *known, "--find", "volume", "--over-water")
    assert "  Gas collected: over water\n" in result.stdout


def test_a_terminal_without_unicode_is_served() -> None:
    runner = CliRunner(charset="ascii")
    arguments = ["quantities", *SERIES, "--known", "mass of Ag=2.16 g", "--find", "mass of Cu", *COURSE]
    result = runner.invoke(main, arguments)
    assert result.exit_code == 0
    assert "n(e-) / 2" in result.stdout
    assert "?" not in result.stdout


@pytest.mark.parametrize(
    ("arguments", "code", "shown"),
    [
        ([NICKEL, "--known", "current=-1 A"], "negative-quantity", "-1 A"),
        ([NICKEL, "--known", "current=20 min"], "wrong-dimension", "20 min"),
        ([NICKEL, "--known", "current = 1 xyz"], "unreadable-quantity", "1 xyz\n      ^"),
        ([NICKEL, "--known", "curent=1 A"], "unknown-quantity", "curent"),
        ([NICKEL, "--known", "mass of Cu=1 g"], "not-in-task", "mass of Cu"),
        ([NICKEL, "--find", "mass in s"], "wrong-dimension", "mass in s"),
        ([NICKEL, "--convention", "Ni=-1"], "negative-quantity", "-1"),
        ([NICKEL, "--curriculum", "nowhere"], "unknown-curriculum", "nowhere"),
        (["Ni^2+ + 2e- -> Qq"], "unknown-element", "Ni^2+ + 2e- -> Qq\n                   ^"),
        (["--metal", "Qq"], "unknown-element", "Qq"),
        (["--process", "a=Ag -> Ag"], "no-electrons", "Ag -> Ag"),
        (["--electrolyte", "CaCO3"], "insoluble", "CaCO3"),
        (["--electrolyte", "CaCO3", "--curriculum", "nowhere"], "insoluble", "CaCO3"),
        ([NICKEL], "needs-more", "mass"),
    ],
)
def test_a_refusal_shows_the_text_at_fault(arguments: list[str], code: str, shown: str) -> None:
    find = [] if "--find" in arguments else ["--find", "mass"]
    course = [] if "--curriculum" in arguments else COURSE
    result = CliRunner().invoke(main, ["quantities", *arguments, *find, *course])
    assert result.exit_code == 2
    assert result.stderr.startswith(f"Refused ({code}): ")
    assert f"\n    {shown}\n" in result.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        [NICKEL, "--metal", "Cr"],
        [NICKEL, "--electrode", "cathode"],
        [NICKEL, "--known", "current"],
        [NICKEL, "--known", "=1 A"],
        [NICKEL, "--convention", "speed=1 m/s"],
        [NICKEL, "--figures", "11"],
        ["--process", "Ag^+ + e- -> Ag"],
    ],
)
def test_a_command_line_that_sets_no_task_is_refused(arguments: list[str]) -> None:
    result = run(*arguments, "--find", "mass")
    assert result.exit_code == 2
    assert "Error: " in result.stderr
