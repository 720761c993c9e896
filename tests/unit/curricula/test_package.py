"""The declaration that ships inside a plugin package."""

import sys
from pathlib import Path

import pytest

from ionwright.curricula.faults import CurriculumFileFault
from ionwright.curricula.package import curriculum_from_package

SHIPPED = Path(__file__).resolve().parents[3] / "plugins" / "ionwright_gcse" / "curriculum.toml"


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "skerry_package"
    folder.mkdir()
    (folder / "__init__.py").write_text("", encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.delitem(sys.modules, "skerry_package", raising=False)
    return folder


def test_the_file_beside_the_package_is_read(package: Path) -> None:
    (package / "curriculum.toml").write_text(SHIPPED.read_text(encoding="utf-8"), encoding="utf-8")
    assert curriculum_from_package("skerry_package").id == "gcse"


def test_another_file_can_be_named_and_a_faulty_one_is_named_in_the_refusal(package: Path) -> None:
    (package / "other.toml").write_text("format = 2", encoding="utf-8")
    with pytest.raises(CurriculumFileFault) as caught:
        curriculum_from_package("skerry_package", "other.toml")
    assert caught.value.origin == "skerry_package/other.toml"


def test_a_package_without_a_declaration_has_no_curriculum(package: Path) -> None:
    assert package.is_dir()
    with pytest.raises(FileNotFoundError):
        curriculum_from_package("skerry_package")
