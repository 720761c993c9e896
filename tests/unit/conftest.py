"""Makers of cells, for which everything is optional but the electrolyte, and of installed plugins."""

import itertools
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from ionwright.chemistry.cell import Cell, CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient

MakeCell = Callable[..., Cell]
Install = Callable[..., str]

_numbers = itertools.count()


@pytest.fixture(scope="session")
def cell_of() -> MakeCell:
    def make(*electrolyte: str, concentration: str | None = None, **rest: object) -> Cell:
        ingredients = tuple(Ingredient(substance, concentration) for substance in electrolyte)
        return make_cell(CellDescription(electrolyte=ingredients, **rest))

    return make


@pytest.fixture
def install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Install]:
    """Puts a distribution with one plugin on the path, as an installer would; gives the name of its module."""
    modules: list[str] = []
    site = tmp_path / "site"
    site.mkdir()
    monkeypatch.syspath_prepend(site)

    def make(
        source: str, *, name: str = "skerry", distribution: str = "skerry-courses", package: str = ""
    ) -> str:
        module = f"skerry_plugin_{next(_numbers)}"
        modules.append(module)
        if package:
            (site / module).mkdir()
            (site / module / "curriculum.toml").write_text(package, encoding="utf-8")
            (site / module / "__init__.py").write_text(source, encoding="utf-8")
        else:
            (site / f"{module}.py").write_text(source, encoding="utf-8")
        info = site / f"{distribution.replace('-', '_')}-2.5.dist-info"
        info.mkdir(exist_ok=True)
        (info / "METADATA").write_text(
            f"Metadata-Version: 2.1\nName: {distribution}\nVersion: 2.5\n", encoding="utf-8"
        )
        points = info / "entry_points.txt"
        before = points.read_text(encoding="utf-8") if points.exists() else "[ionwright.plugins]\n"
        points.write_text(f"{before}{name} = {module}\n", encoding="utf-8")
        return module

    yield make
    for module in modules:
        sys.modules.pop(module, None)
