"""Settings: the environment gives them, and a bad one stops the start with a sentence."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING

import pytest

from ionwright.api.settings import SettingFault, Settings

if TYPE_CHECKING:
    from pathlib import Path


def test_an_empty_environment_gives_the_usual_settings() -> None:
    assert Settings.from_environment({}) == Settings()


def test_every_setting_can_be_given(tmp_path: Path) -> None:
    given = {
        "IONWRIGHT_CURRICULA": str(tmp_path),
        "IONWRIGHT_WITHOUT": "igcse, a-level,",
        "IONWRIGHT_CACHE_ENTRIES": "10",
        "IONWRIGHT_CACHE_BYTES": "2000",
        "IONWRIGHT_BODY_LIMIT": "4096",
        "IONWRIGHT_BATCH_LIMIT": "20",
        "IONWRIGHT_LINES_LIMIT": "30",
        "IONWRIGHT_LINE_LIMIT": "512",
    }
    assert Settings.from_environment(given) == Settings(
        curricula_folder=tmp_path,
        without=("igcse", "a-level"),
        cache_entries=10,
        cache_bytes=2000,
        body_limit=4096,
        batch_limit=20,
        lines_limit=30,
        line_limit=512,
    )


@pytest.mark.parametrize("text", ["many", "-1", "1.5", "5000", "٣", "1_0", "9" * 400])
def test_a_number_out_of_range_stops_the_start(text: str) -> None:
    with pytest.raises(SettingFault) as caught:
        Settings.from_environment({"IONWRIGHT_BATCH_LIMIT": text})
    assert caught.value.where == "IONWRIGHT_BATCH_LIMIT"
    assert "from 1 to 1000" in caught.value.detail


def test_a_folder_that_does_not_exist_stops_the_start(tmp_path: Path) -> None:
    with pytest.raises(SettingFault, match="there is no such folder"):
        Settings.from_environment({"IONWRIGHT_CURRICULA": str(tmp_path / "absent")})


def test_the_docstring_names_the_variable_of_every_setting() -> None:
    described = Settings.__doc__ or ""
    for setting in fields(Settings):
        assert f"\n    {setting.name}\n        ``IONWRIGHT_" in described
