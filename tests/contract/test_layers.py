"""Imports point downwards only, plugins see the plugin surface only: the contracts of pyproject.toml."""

from __future__ import annotations

import logging
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from importlinter.cli import lint_imports_command

LAYERS, PURE = "Layers import downwards only", "Chemistry is pure"
BREACHES = [
    (PURE, "service/ionwright/chemistry/formula.py", "import flask"),
    (LAYERS, "service/ionwright/chemistry/formula.py", "import ionwright.curricula"),
    (LAYERS, "service/ionwright/teaching/__init__.py", "import ionwright.api"),
    (LAYERS, "service/ionwright/cli/serve.py", "import ionwright.api.exposure"),
    (LAYERS, "service/ionwright/stray.py", '"""Nobody gave this module a layer."""'),
    ("Teaching knows no HTTP", "service/ionwright/teaching/__init__.py", "import orjson"),
    ("The service names no plugin", "service/ionwright/curricula/__init__.py", "import ionwright_gcse"),
    (
        "Plugins see the plugin surface only",
        "plugins/ionwright_gcse/__init__.py",
        "import ionwright.teaching",
    ),
    ("Plugins know no other plugin", "plugins/ionwright_gcse/__init__.py", "import ionwright_igcse"),
]


def test_imports_keep_to_the_layers(clone: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(clone)
    monkeypatch.setattr(sys, "path", list(sys.path))
    report = CliRunner().invoke(lint_imports_command, ["pyproject.toml", "--no-cache", "--no-logo"])
    # the command sets up logging for itself and switches every other logger off
    for logger in logging.root.manager.loggerDict.values():
        if isinstance(logger, logging.Logger):
            logger.disabled = False
    assert report.exit_code == 0, report.output


@pytest.mark.parametrize(
    ("contract", "name", "line"), BREACHES, ids=[f"{each[2]} in {each[1]}" for each in BREACHES]
)
def test_a_breach_is_caught_by_its_contract(
    contract: str, name: str, line: str, clone: Path, tmp_path: Path
) -> None:
    """A contract that catches nothing would look the same as one that is kept."""
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
    assert f"{contract} BROKEN" in " ".join(report.stdout.split()), report.stdout


def test_every_contract_has_a_breach_that_it_catches(project: dict[str, Any]) -> None:
    contracts = {contract["name"] for contract in project["tool"]["importlinter"]["contracts"]}
    assert contracts == {contract for contract, _, _ in BREACHES}
