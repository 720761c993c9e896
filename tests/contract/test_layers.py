"""Imports point downwards only, plugins see the plugin surface only: the contracts of pyproject.toml."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from importlinter.cli import lint_imports_command

BREACHES = {
    "chemistry imports a third-party package": ("service/ionwright/chemistry/formula.py", "import flask"),
    "chemistry imports a higher layer": (
        "service/ionwright/chemistry/formula.py",
        "import ionwright.curricula",
    ),
    "teaching imports the API": ("service/ionwright/teaching/__init__.py", "import ionwright.api"),
    "the command line imports the API": ("service/ionwright/cli/serve.py", "import ionwright.api.exposure"),
    "the service names a plugin": ("service/ionwright/curricula/__init__.py", "import ionwright_gcse"),
    "a plugin sees more than the surface": (
        "plugins/ionwright_gcse/__init__.py",
        "import ionwright.teaching",
    ),
    "a plugin knows another plugin": ("plugins/ionwright_gcse/__init__.py", "import ionwright_igcse"),
    "a module has no layer": ("service/ionwright/stray.py", '"""Nobody placed this."""'),
}


def test_imports_keep_to_the_layers(clone: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(clone)
    monkeypatch.setattr(sys, "path", list(sys.path))
    report = CliRunner().invoke(lint_imports_command, ["pyproject.toml", "--no-cache", "--no-logo"])
    assert report.exit_code == 0, report.output


@pytest.mark.parametrize("breach", BREACHES)
def test_a_breach_of_the_layers_is_caught(breach: str, clone: Path, tmp_path: Path) -> None:
    """A contract that catches nothing would look the same as one that is kept."""
    name, line = BREACHES[breach]
    shutil.copy(clone / "pyproject.toml", tmp_path)
    for root in ("service", "plugins"):
        shutil.copytree(clone / root, tmp_path / root, ignore=shutil.ignore_patterns("__pycache__"))
    breached = tmp_path / name
    text = breached.read_text(encoding="utf-8") if breached.exists() else ""
    breached.write_text(f"{text}\n{line}\n", encoding="utf-8")
    report = subprocess.run(
        [Path(sys.executable).parent / "lint-imports", "--no-cache", "--no-logo"],
        cwd=tmp_path,
        env={
            **os.environ,
            "PYTHONPATH": os.pathsep.join((str(tmp_path / "service"), str(tmp_path / "plugins"))),
        },
        check=False,
        capture_output=True,
        text=True,
    )
    assert report.returncode == 1, report.stdout
    assert "BROKEN" in report.stdout or "stray" in report.stdout, report.stdout
