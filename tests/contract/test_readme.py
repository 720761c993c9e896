"""README.md says what is so: its commands are the ones we use, its files load, its links lead somewhere."""

from __future__ import annotations

import json
import re
import tomllib
from typing import TYPE_CHECKING

import pytest

from ionwright.api.gunicorn_settings import DEFAULT_BIND
from ionwright.curricula.host import load_curricula

if TYPE_CHECKING:
    from pathlib import Path

FENCE = re.compile(r"^```(\w+)\n(.*?)^```$", re.DOTALL | re.MULTILINE)
SETTING = re.compile(r"IONWRIGHT_[A-Z]+(?:_[A-Z]+)*")
RUN, TEST = "python3 service/run.py", "python3 tests/run.py"


@pytest.fixture(scope="module")
def readme(clone: Path) -> str:
    return (clone / "README.md").read_text(encoding="utf-8")


def fences(readme: str, language: str) -> list[str]:
    return [text.strip() for kind, text in FENCE.findall(readme) if kind == language]


def test_the_first_two_commands_are_to_run_and_to_test(readme: str, clone: Path) -> None:
    assert fences(readme, "sh")[:2] == [RUN, TEST]
    assert (clone / RUN.split()[1]).is_file()
    assert (clone / TEST.split()[1]).is_file()


def test_what_is_submitted_is_checked_with_the_readmes_test_command(clone: Path) -> None:
    calls = re.findall(r"python3 tests/\S+.*", (clone / ".ci/run").read_text(encoding="utf-8"))
    assert [call.split(" 2>&1")[0] for call in calls] == [TEST]


def test_the_scripts_call_themselves_as_the_readme_does(clone: Path) -> None:
    assert f'command="{RUN}"' in (clone / "service/run.py").read_text(encoding="utf-8")
    assert f'command="{TEST}"' in (clone / "tests/run.py").read_text(encoding="utf-8")


def test_requests_go_to_the_default_address(readme: str) -> None:
    addresses = re.findall(r"http://([0-9.]+:\d+)", readme)
    assert addresses
    assert set(addresses) == {DEFAULT_BIND}


def test_json_is_json(readme: str) -> None:
    texts = fences(readme, "json")
    assert texts
    assert all(isinstance(json.loads(text), dict) for text in texts)


def test_the_curriculum_shown_loads(readme: str, tmp_path: Path) -> None:
    declarations = fences(readme, "toml")
    assert declarations
    for text in declarations:
        id_ = tomllib.loads(text)["id"]
        (tmp_path / f"{id_}.toml").write_text(text, encoding="utf-8")
    registry = load_curricula(tmp_path)
    assert registry.set_aside == ()
    assert all(registry.origins[tomllib.loads(text)["id"]].kind == "file" for text in declarations)


def test_every_setting_is_in_the_table(readme: str, clone: Path) -> None:
    sources = [
        *(clone / "service/ionwright").rglob("*.py"),
        clone / "docker/Dockerfile",
        clone / "docker/compose.yaml",
    ]
    used = {name for path in sources for name in SETTING.findall(path.read_text(encoding="utf-8"))}
    table = "\n".join(line for line in readme.splitlines() if line.startswith("| `IONWRIGHT_"))
    assert used == set(SETTING.findall(table))


def test_files_named_in_the_documents_exist(readme: str, clone: Path) -> None:
    text = readme + (clone / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`((?:docker|tests|service|plugins)/[\w./-]+|\.ci/run|pyproject\.toml)`", text))
    assert named
    assert {name for name in named if not (clone / name).exists()} == set()


def test_every_dependency_is_argued(clone: Path) -> None:
    text = (clone / "DEVELOPERS.md").read_text(encoding="utf-8").split("## Dependencies")[1]
    project = tomllib.loads((clone / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    names = [
        re.split(r"[><=\[~! ]", line)[0]
        for line in (*project["dependencies"], *project["optional-dependencies"]["test"])
    ]
    assert [name for name in names if name not in text] == []
