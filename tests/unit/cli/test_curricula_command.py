"""`ionwright curricula`: what is loaded, and one of them in full."""

from __future__ import annotations

import json

from click.testing import CliRunner, Result

from ionwright.api import Settings, create_app
from ionwright.cli import main
from ionwright.curricula.host import load_curricula


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["curricula", *arguments])


def test_the_list_has_a_line_for_each() -> None:
    result = run("list")
    assert result.exit_code == 0
    assert [line.split()[0] for line in result.stdout.splitlines()] == list(load_curricula())


def test_the_list_as_json_has_them_in_full() -> None:
    listed = json.loads(run("list", "--json").stdout)
    assert [entry["id"] for entry in listed["curricula"]] == list(load_curricula())
    assert all(entry["rules"]["cathode"] for entry in listed["curricula"])
    assert listed["set_aside"] == []


def test_a_curriculum_is_shown_with_its_rules_in_order() -> None:
    result = run("show", "gcse")
    assert result.exit_code == 0
    assert result.stdout.startswith("GCSE (gcse)\n")
    assert "At the cathode, in this order:\n  1. " in result.stdout
    assert "At the anode, in this order:\n  1. " in result.stdout
    assert "Conventions:\n" in result.stdout


def test_a_curriculum_is_shown_with_what_it_covers() -> None:
    shown = run("show", "gcse").stdout
    assert "Scope:\n  quantities: none; charge and current belong to physics" in shown
    assert "  melts: PbBr2, NaCl, ZnCl2, Al2O3 in cryolite\n" in shown


def test_a_curriculum_is_shown_with_the_constants_that_it_prints() -> None:
    shown = run("show", "igcse").stdout
    assert "  molar gas volume: 24 dm3/mol\n" in shown
    assert "  relative atomic masses: Cu: 64; Cl: 35.5\n" in shown
    assert "faraday constant" not in shown
    assert "  faraday constant: 96500 C/mol\n" in run("show", "a-level").stdout


def test_a_curriculum_as_json_is_the_api_s() -> None:
    answer = create_app(Settings()).test_client().get("/v1/curricula/a-level")
    assert run("show", "a-level", "--json").stdout_bytes == answer.data + b"\n"


def test_an_unknown_curriculum_is_refused_with_a_near_one() -> None:
    result = run("show", "gcsee")
    assert result.exit_code == 2
    assert "Did you mean gcse" in result.stderr
