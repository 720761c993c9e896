"""Lint, format and types are clean, and every exception to them says which rule and why."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

PROGRAMS = Path(sys.executable).parent
NOQA = re.compile(r"#\s*(?:ruff:\s*)?noqa\b(?P<rest>.*)")
IGNORED_TYPE = re.compile(r"#\s*type:\s*ignore(?P<rest>.*)")


@pytest.mark.parametrize("command", ["ruff check", "ruff format --check", "mypy"])
def test_the_tool_finds_nothing(command: str, clone: Path) -> None:
    program, *arguments = command.split()
    report = subprocess.run(
        [PROGRAMS / program, *arguments], cwd=clone, check=False, capture_output=True, text=True
    )
    assert report.returncode == 0, report.stdout + report.stderr


def python_lines(clone: Path, tracked: list[Path]) -> list[tuple[str, str]]:
    return [
        (f"{path}:{number}", line)
        for path in tracked
        if path.suffix == ".py" and path.name != Path(__file__).name
        for number, line in enumerate((clone / path).read_text(encoding="utf-8").splitlines(), 1)
    ]


def test_every_silenced_lint_rule_is_named(clone: Path, tracked: list[Path]) -> None:
    blanket = [
        f"{where}: {line.strip()}"
        for where, line in python_lines(clone, tracked)
        if (found := NOQA.search(line)) and not re.match(r":\s*[A-Z]+[0-9]+", found["rest"])
    ]
    assert blanket == []


def test_every_silenced_type_error_has_its_code_and_reason(clone: Path, tracked: list[Path]) -> None:
    """In tests the code is enough: what they pass wrongly on purpose is plain to see."""
    code, reason = r"\[[a-z-]+(, ?[a-z-]+)*\]", r"\s+# \w"
    bare = [
        f"{where}: {line.strip()}"
        for where, line in python_lines(clone, tracked)
        if (found := IGNORED_TYPE.search(line))
        and not re.match(code if where.startswith("tests") else code + reason, found["rest"])
    ]
    assert bare == []


def test_types_stay_strict(project: dict[str, Any]) -> None:
    settings = project["tool"]["mypy"]
    assert settings["strict"] is True
    loosened = [entry for entry in settings["overrides"] if set(entry) - {"module", "ignore_missing_imports"}]
    assert loosened == []


def test_every_rule_switched_off_everywhere_has_its_reason(clone: Path) -> None:
    text = (clone / "pyproject.toml").read_text(encoding="utf-8")
    (block,) = re.findall(r"^ignore = \[\n(.*?)^\]", text, re.DOTALL | re.MULTILINE)
    without_reason = [line for line in block.splitlines() if "#" not in line]
    assert without_reason == []
