"""One list of plugins everywhere, a wheel with all it needs, a tidy top level, pins that fit."""

from __future__ import annotations

import re
import tomllib
from importlib.metadata import entry_points
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from packaging.requirements import Requirement

from ionwright import __version__
from ionwright.api.gunicorn_settings import DEFAULT_BIND
from ionwright.cli.serve import DEFAULT_HOST, DEFAULT_PORT

if TYPE_CHECKING:
    import zipfile

TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "service",
    "plugins",
    "openapi",
    "tests",
    "docker",
}
PIN = re.compile(r"^([A-Za-z0-9._-]+)==([^ ;\\]+)", re.MULTILINE)

# in pieces, so that this file does not hold what it forbids
DOMAINS = (
    ("pypi", "org"),
    ("python" + "hosted", "org"),
    ("npm" + "js", "org"),
    ("docker", "io"),
    ("debian", "org"),
)
HOSTS = [".".join(parts) for parts in DOMAINS]
PLACES = ["/" + place for place in ("work/", "root/", "home/", "Users/", "opt/pypi", "opt/wheels")]
FOREIGN = re.compile(
    "|".join(rf"(?<![\w.~]){re.escape(text)}" for text in PLACES) + "|" + "|".join(map(re.escape, HOSTS))
)


def folders_of_plugins(clone: Path) -> set[str]:
    return {folder.name for folder in (clone / "plugins").iterdir() if (folder / "__init__.py").is_file()}


def test_every_place_names_the_same_plugins(clone: Path, project: dict[str, Any]) -> None:
    folders = folders_of_plugins(clone)
    packages = {Path(path) for path in project["tool"]["hatch"]["build"]["targets"]["wheel"]["packages"]}
    contracts = {contract["name"]: contract for contract in project["tool"]["importlinter"]["contracts"]}
    assert {path.name for path in packages if path.parent.name == "plugins"} == folders
    assert set(project["project"]["entry-points"]["ionwright.plugins"].values()) == folders
    assert set(project["tool"]["importlinter"]["root_packages"]) == folders | {"ionwright"}
    assert set(contracts["The service names no plugin"]["forbidden_modules"]) == folders
    assert set(contracts["Plugins see the plugin surface only"]["source_modules"]) == folders
    assert set(contracts["Plugins know no other plugin"]["modules"]) == folders


def test_the_installed_package_offers_its_plugins(project: dict[str, Any]) -> None:
    declared = project["project"]["entry-points"]["ionwright.plugins"]
    installed = {point.name: point.value for point in entry_points(group="ionwright.plugins") if point.dist}
    assert declared.items() <= installed.items()


def test_plugins_holds_packages_and_nothing_else(clone: Path, tracked: list[Path]) -> None:
    loose = [path for path in tracked if path.parts[0] == "plugins" and len(path.parts) == 2]
    assert loose == []
    assert {path.parts[1] for path in tracked if path.parts[0] == "plugins"} == folders_of_plugins(clone)


def test_the_wheel_holds_every_tracked_file_of_the_packages(
    tracked: list[Path], wheel: zipfile.ZipFile
) -> None:
    """Tables, pages and type markers included: a file that stays behind is missed only in production."""
    roots = ("service/ionwright/", "plugins/")
    belonging = {path.as_posix() for path in tracked if path.as_posix().startswith(roots)}
    expected = {name.split("/", 1)[1] for name in belonging if not name.endswith(".md")}
    held = set(wheel.namelist())
    assert expected - held == set()
    assert {name for name in expected if name.endswith(".toml")}
    assert "ionwright/py.typed" in held


def test_the_wheel_holds_nothing_but_the_packages(clone: Path, wheel: zipfile.ZipFile) -> None:
    tops = {name.split("/")[0] for name in wheel.namelist() if ".dist-info/" not in name}
    assert tops == folders_of_plugins(clone) | {"ionwright"}


def test_the_wheel_names_command_and_plugins(wheel: zipfile.ZipFile) -> None:
    (name,) = (name for name in wheel.namelist() if name.endswith("/entry_points.txt"))
    points = wheel.read(name).decode()
    assert "ionwright = ionwright.cli:main" in points
    assert "gcse = ionwright_gcse" in points


def test_the_top_level_holds_only_the_fixed_names(tracked: list[Path]) -> None:
    tops = {path.parts[0] for path in tracked}
    assert {name for name in tops if not name.startswith(".")} <= TOP_LEVEL


def test_no_file_names_a_machine_or_a_registry(clone: Path, tracked: list[Path]) -> None:
    found = []
    for path in tracked:
        try:
            lines = (clone / path).read_text(encoding="utf-8").splitlines()
        except UnicodeDecodeError:
            continue
        found += [
            f"{path}:{number}: {line.strip()[:100]}"
            for number, line in enumerate(lines, 1)
            if FOREIGN.search(line)
        ]
    assert found == []


@pytest.mark.parametrize(
    ("pins", "wanted"),
    [
        ("requirements.txt", ("project", "dependencies")),
        ("build-requirements.txt", ("build-system", "requires")),
    ],
)
def test_the_pins_of_the_image_fit_the_package(
    pins: str, wanted: tuple[str, str], clone: Path, project: dict[str, Any]
) -> None:
    text = (clone / "docker" / pins).read_text(encoding="utf-8")
    pinned = {name.lower(): version for name, version in PIN.findall(text)}
    for requirement in map(Requirement, project[wanted[0]][wanted[1]]):
        assert pinned[requirement.name] in requirement.specifier, requirement
    assert text.count("--hash=sha256:") >= len(pinned) > 0
    assert "--index-url" not in text.replace("--no-emit-index-url", "")


def test_the_ports_agree(clone: Path) -> None:
    """The address is written in several places that may not import one another."""
    assert f"{DEFAULT_HOST}:{DEFAULT_PORT}" == DEFAULT_BIND
    dockerfile = (clone / "docker/Dockerfile").read_text(encoding="utf-8")
    assert f"IONWRIGHT_BIND=0.0.0.0:{DEFAULT_PORT}" in dockerfile
    assert f"EXPOSE {DEFAULT_PORT}" in dockerfile
    assert f'"127.0.0.1:{DEFAULT_PORT}:{DEFAULT_PORT}"' in (clone / "docker/compose.yaml").read_text(
        encoding="utf-8"
    )


def test_versions_agree(project: dict[str, Any]) -> None:
    assert project["project"]["version"] == __version__


def test_every_toml_file_of_the_clone_is_valid(clone: Path, tracked: list[Path]) -> None:
    files = [path for path in tracked if path.suffix == ".toml" and "sample" not in path.as_posix()]
    assert files
    for path in files:
        assert tomllib.loads((clone / path).read_text(encoding="utf-8")), path
