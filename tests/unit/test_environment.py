"""The virtual environment that both README commands make: when it is made, renewed, left alone, and what it says."""

from __future__ import annotations

import ast
import importlib.util
import subprocess
import sys
import zipfile
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from types import ModuleType

CLONE = Path(__file__).resolve().parents[2]
COMMANDS = (CLONE / "service" / "run.py", CLONE / "tests" / "run.py")


def loaded(path: Path) -> ModuleType:
    specification = importlib.util.spec_from_file_location(path.stem, path)
    assert specification is not None
    assert specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    sys.modules[path.stem] = module
    specification.loader.exec_module(module)
    return module


environment = loaded(CLONE / "service" / "environment.py")


def make_wheel(folder: Path, answer: int) -> Path:
    """The smallest wheel there is: one module with one number."""
    path = folder / "lamp-1.0-py3-none-any.whl"
    with zipfile.ZipFile(path, "w") as wheel:
        wheel.writestr("lamp.py", f"ANSWER = {answer}\n")
        wheel.writestr("lamp-1.0.dist-info/METADATA", "Metadata-Version: 2.1\nName: lamp\nVersion: 1.0\n")
        wheel.writestr(
            "lamp-1.0.dist-info/WHEEL", "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
        )
        wheel.writestr("lamp-1.0.dist-info/RECORD", "")
    return path


def test_an_environment_is_made_left_alone_and_renewed(tmp_path: Path) -> None:
    wheel = make_wheel(tmp_path, 1)
    made = environment.Environment(
        folder=tmp_path / ".venv",
        install=("--no-index", "--force-reinstall", str(wheel)),
        sources=(wheel,),
        command="make light",
    )

    def answer() -> str:
        command = [str(made.program("python")), "-c", "import lamp; print(lamp.ANSWER)"]
        return subprocess.run(command, check=True, capture_output=True, text=True).stdout.strip()

    made.make_ready()
    assert answer() == "1"

    witness = tmp_path / ".venv" / "still-the-same"
    witness.touch()
    stamp = (tmp_path / ".venv" / environment.STAMP).stat().st_mtime_ns
    made.make_ready()
    assert (tmp_path / ".venv" / environment.STAMP).stat().st_mtime_ns == stamp

    make_wheel(tmp_path, 2)
    made.make_ready()
    assert answer() == "2"
    assert witness.exists()

    wheel.write_bytes(b"torn")
    with pytest.raises(environment.EnvironmentFault, match=r"PIP_NO_INDEX=1 .* make light"):
        made.make_ready()
    assert not (tmp_path / ".venv" / environment.STAMP).exists()


def test_a_python_that_cannot_make_environments_is_told_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "ensurepip", None)
    made = environment.Environment(
        folder=tmp_path / ".venv", install=("x",), sources=(), command="make light"
    )
    with pytest.raises(environment.EnvironmentFault, match="apt-get install python3-venv"):
        made.make_ready()


def test_the_hash_follows_content_and_not_byte_code(tmp_path: Path) -> None:
    (tmp_path / "lamp.py").write_text("1", encoding="utf-8")
    first = environment.content_hash([tmp_path])
    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "__pycache__" / "lamp.pyc").write_text("1", encoding="utf-8")
    assert environment.content_hash([tmp_path]) == first
    (tmp_path / "lamp.py").write_text("2", encoding="utf-8")
    assert environment.content_hash([tmp_path]) != first


@pytest.mark.parametrize("command", COMMANDS, ids=lambda path: path.parent.name)
def test_an_old_python_can_read_the_command_as_far_as_the_sentence(command: Path) -> None:
    tree = ast.parse(command.read_text(encoding="utf-8"), feature_version=(3, 6))
    docstring, first, check = tree.body[:3]
    assert isinstance(docstring, ast.Expr)
    assert isinstance(first, ast.Import)
    assert [name.name for name in first.names] == ["sys"]
    assert isinstance(check, ast.If)
    assert "needs Python 3.11" in ast.unparse(check)
    assert not any(isinstance(node, ast.JoinedStr) for node in ast.walk(check))


@pytest.mark.parametrize(
    ("platform_name", "program"), [("posix", Path("bin/python")), ("nt", Path("Scripts/python.exe"))]
)
def test_programs_are_found_on_every_system(
    platform_name: str, program: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = environment.Environment(folder=CLONE / ".venv", install=("x",), sources=(), command="make light")
    monkeypatch.setattr(environment.os, "name", platform_name)
    try:
        found = made.program("python")
    finally:
        monkeypatch.undo()
    assert found == CLONE / ".venv" / program
