"""`ionwright curricula check`: faults with their lines, or a table of decisions."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest
from click.testing import CliRunner, Result

from ionwright.cli import main
from ionwright.curricula.host import load_curricula

if TYPE_CHECKING:
    from pathlib import Path

GOOD = """format = 1
id = "skerry-foundation"
title = "Skerry Point foundation course"
based_on = "igcse"

[anode]
halides = "always"
"""


def check(*arguments: str | Path) -> Result:
    return CliRunner().invoke(main, ["curricula", "check", *map(str, arguments)])


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "skerry.toml"
    path.write_text(GOOD, encoding="utf-8")
    return path


def test_a_good_declaration_is_told_with_what_it_decides_and_what_differs(file: Path) -> None:
    result = check(file)
    assert result.exit_code == 0
    head, columns, *rows = result.stdout.splitlines()
    assert head == (
        "skerry.toml declares skerry-foundation, Skerry Point foundation course, building on igcse."
    )
    assert columns.split() == ["cell", "cathode", "anode"]
    (brine,) = [row for row in rows if row.startswith("  NaCl, dilute")]
    assert brine.split("  ")[-1] == "* Cl₂ (igcse: O₂)"
    (strong,) = [row for row in rows if row.startswith("  NaCl, concentrated")]
    assert "*" not in strong
    assert "copper | silver" in result.stdout


def test_every_fault_is_told_with_its_line(file: Path) -> None:
    file.write_text(GOOD.replace("always", "often") + 'lamp = 3\n[marking]\nmultiples = "no"\n', "utf-8")
    result = check(file)
    assert result.exit_code == 1
    head, *faults = result.stdout.splitlines()
    assert head == "skerry.toml has 3 faults:"
    assert [fault.split(":")[0].strip() for fault in faults] == ["line 7", "line 8", "line 10"]
    assert "anode.halides: must be one of: always, when-concentrated, by-potential." in faults[0]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (b"x = = 3", "line 1:          the text: not readable as TOML"),
        (b"\xff\xfe", "the text: it cannot be read: 'utf-8' codec"),
        (b'format = 1\nid = "a"\ntitle = "A"\n', "not written out: cathode: "),
        (b'based_on = "south"\n', "line 1:          based_on: no curriculum 'south' to build on"),
    ],
)
def test_a_text_that_declares_nothing_is_told(file: Path, text: bytes, told: str) -> None:
    file.write_bytes(text)
    result = check(file)
    assert result.exit_code == 1
    assert told in result.stdout


def test_a_folder_is_checked_file_by_file(file: Path, tmp_path: Path) -> None:
    (tmp_path / "north.toml").write_text("format = 2", "utf-8")
    told = json.loads(check(tmp_path, "--json").stdout)
    assert [(one["file"], "faults" in one) for one in told] == [("north.toml", True), ("skerry.toml", False)]
    assert told[1]["based_on"] == "igcse"
    (brine,) = [cell for cell in told[1]["cells"] if cell["cell"].startswith("NaCl, dilute")]
    assert (brine["anode"], brine["anode_of_base"]) == ("Cl₂", "O₂")
    assert "cathode_of_base" not in brine


def test_an_id_that_is_loaded_already_is_noted(file: Path) -> None:
    file.write_text(GOOD.replace("skerry-foundation", "gcse"), "utf-8")
    result = check(file)
    assert result.exit_code == 0
    assert result.stdout.endswith(
        "The id gcse is loaded from built-in gcse; another file that claims it is set aside.\n"
    )


def test_an_empty_folder_is_refused(tmp_path: Path) -> None:
    result = check(tmp_path)
    assert result.exit_code == 2
    assert "There is no TOML file in" in result.stderr


@pytest.mark.parametrize("family", list(load_curricula()))
def test_the_declarations_that_ship_have_no_fault(family: str, pytestconfig: pytest.Config) -> None:
    folder = pytestconfig.rootpath / "plugins" / f"ionwright_{family.replace('-', '_')}"
    result = check(folder)
    assert result.exit_code == 0, result.stdout
    assert f"declares {family}, " in result.stdout
    assert "at fault" not in result.stdout
