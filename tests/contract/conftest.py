"""What the contract tests look at: the clone, the files git tracks, the wheel built from it."""

from __future__ import annotations

import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path
from typing import Any

import pytest


@pytest.fixture(scope="session")
def clone() -> Path:
    return Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def project(clone: Path) -> dict[str, Any]:
    return tomllib.loads((clone / "pyproject.toml").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def tracked(clone: Path) -> list[Path]:
    """Paths of the tracked files that are there, relative to the clone."""
    if not (clone / ".git").exists():
        pytest.skip("not a git clone: what is tracked cannot be known")
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=clone, check=True, capture_output=True, text=True)
    return [Path(name) for name in listed.stdout.split("\0") if name and (clone / name).is_file()]


@pytest.fixture(scope="session")
def wheel(clone: Path, tmp_path_factory: pytest.TempPathFactory) -> zipfile.ZipFile:
    """The wheel as pip would build it, but without the network."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "--target", "wheel", "--directory", str(folder)]
    subprocess.run(command, cwd=clone, check=True, capture_output=True)
    (built,) = folder.glob("*.whl")
    return zipfile.ZipFile(built)
