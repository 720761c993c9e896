"""README.md says what is so: its commands are the ones we use, its files load, its links lead somewhere."""

from __future__ import annotations

import json
import re
import shlex
import subprocess
import sys
import tomllib
from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from ionwright.api import create_app
from ionwright.api.gunicorn_settings import DEFAULT_BIND
from ionwright.curricula.host import load_curricula

if TYPE_CHECKING:
    from pathlib import Path

    from flask.testing import FlaskClient

FENCE = re.compile(r"^```(\w+)\n(.*?)^```$", re.DOTALL | re.MULTILINE)
SETTING = re.compile(r"IONWRIGHT_[A-Z]+(?:_[A-Z]+)*")
RUN, TEST = "python3 service/run.py", "python3 tests/run.py"


@pytest.fixture(scope="module")
def readme(clone: Path) -> str:
    return (clone / "README.md").read_text(encoding="utf-8")


def fences(readme: str, language: str) -> list[str]:
    return [text.strip() for kind, text in FENCE.findall(readme) if kind == language]


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    return create_app().test_client()


def command_lines(readme: str, program: str) -> list[list[str]]:
    """The commands of the shell fences that call `program`, split as a shell would."""
    lines: list[list[str]] = []
    for fence in fences(readme, "sh"):
        words = shlex.split(fence)
        starts = [place for place, word in enumerate(words) if word in ("curl", ".venv/bin/ionwright")]
        lines += [words[start:end] for start, end in pairwise([*starts, len(words)])]
    return [words for words in lines if words[0] == program]


def holds(whole: object, part: object) -> bool:
    """Whether `part` is `whole` with members left out, in the objects of its lists too."""
    if isinstance(part, list) and isinstance(whole, list) and len(part) == len(whole):
        return all(map(holds, whole, part))
    if isinstance(part, dict) and isinstance(whole, dict):
        return all(name in whole and holds(whole[name], value) for name, value in part.items())
    return whole == part


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


def test_every_request_gets_the_answer_shown(readme: str, client: FlaskClient) -> None:
    requests = [words for words in command_lines(readme, "curl") if "-d" in words]
    for request, shown in zip(requests, map(json.loads, fences(readme, "json")), strict=True):
        body = json.loads(request[request.index("-d") + 1])
        answer = client.post(request[2].split("9648")[1], json=body)
        assert answer.status_code == 200
        assert len(shown) > 3
        for name, member in shown.items():
            assert holds(answer.json[name], member), answer.json[name]


def test_the_links_show_where_two_courses_part(readme: str, client: FlaskClient) -> None:
    links = [words[2].split("9648")[1] for words in command_lines(readme, "curl") if "-d" not in words]
    answers = [client.get(link).json for link in links if "/predictions?" in link]
    assert [answer["anode"]["products"][0]["formula"] for answer in answers] == ["O2", "Cl2"]
    (comparison,) = [client.get(link).json for link in links if "/comparisons?" in link]
    assert [side["answer"] for side in comparison["anode"]["differences"][0]["between"]] == [
        "chlorine",
        "oxygen",
    ]
    (disagreements,) = [client.get(link).json for link in links if "/disagreements?" in link]
    assert disagreements["next_offset"] == 10


def test_the_commands_of_the_terminal_work(readme: str) -> None:
    lines = command_lines(readme, ".venv/bin/ionwright")
    assert lines
    for words in lines:
        done = subprocess.run(
            [sys.executable, "-m", "ionwright", *words[1:]], check=False, capture_output=True
        )
        assert done.returncode == 0, done.stderr
        assert done.stdout


def test_the_notebook_works(readme: str) -> None:
    (cell,) = fences(readme, "python")
    done = subprocess.run([sys.executable, "-c", cell], check=False, capture_output=True, text=True)
    assert (done.stdout, done.stderr) == ("Ag^+ + e- -> Ag\n", "")


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
