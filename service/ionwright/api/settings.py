"""What an operator can set, read once from the environment into one frozen value."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Mapping


class SettingFault(IonwrightError):
    """An environment variable that cannot be used: the service does not start on a guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """The settings of one service process; every field has an environment variable of its own.

    Parameters
    ----------
    curricula_folder
        ``IONWRIGHT_CURRICULA``: folder of TOML files with curricula of your own; none if empty.
    without
        ``IONWRIGHT_WITHOUT``: names of curriculum plugins to leave out, separated by commas.
    cache_entries
        ``IONWRIGHT_CACHE_ENTRIES``: how many encoded answers each worker keeps.
    cache_bytes
        ``IONWRIGHT_CACHE_BYTES``: how many bytes these answers may take in each worker.
    body_limit
        ``IONWRIGHT_BODY_LIMIT``: longest request body that is read, in bytes.
    batch_limit
        ``IONWRIGHT_BATCH_LIMIT``: most items in one JSON batch.
    lines_limit
        ``IONWRIGHT_LINES_LIMIT``: most lines in one JSON Lines batch.
    line_limit
        ``IONWRIGHT_LINE_LIMIT``: longest line of a JSON Lines batch, in bytes.
    """

    curricula_folder: Path | None = None
    without: tuple[str, ...] = ()
    cache_entries: int = 4096
    cache_bytes: int = 64 * 1024 * 1024
    body_limit: int = 1024 * 1024
    batch_limit: int = 1000
    lines_limit: int = 5000
    line_limit: int = 16 * 1024

    @classmethod
    def from_environment(cls, environment: Mapping[str, str] | None = None) -> Settings:
        """Settings as the environment states them, the defaults for what it leaves out.

        Raises
        ------
        SettingFault
            A value is not a whole number in its range, or the folder does not exist.
        """
        given = os.environ if environment is None else environment
        usual = cls()
        return cls(
            curricula_folder=_folder(given, "IONWRIGHT_CURRICULA"),
            without=_names(given, "IONWRIGHT_WITHOUT"),
            cache_entries=_whole(given, "IONWRIGHT_CACHE_ENTRIES", usual.cache_entries, 0, 10_000_000),
            cache_bytes=_whole(given, "IONWRIGHT_CACHE_BYTES", usual.cache_bytes, 0, 64 * 1024**3),
            body_limit=_whole(given, "IONWRIGHT_BODY_LIMIT", usual.body_limit, 1024, 1024**3),
            batch_limit=_whole(given, "IONWRIGHT_BATCH_LIMIT", usual.batch_limit, 1, 1000),
            lines_limit=_whole(given, "IONWRIGHT_LINES_LIMIT", usual.lines_limit, 1, 1_000_000),
            line_limit=_whole(given, "IONWRIGHT_LINE_LIMIT", usual.line_limit, 256, 1024**2),
        )


def _names(given: Mapping[str, str], name: str) -> tuple[str, ...]:
    return tuple(word for word in (part.strip() for part in given.get(name, "").split(",")) if word)


def _folder(given: Mapping[str, str], name: str) -> Path | None:
    text = given.get(name, "").strip()
    if not text:
        return None
    folder = Path(text)
    if not folder.is_dir():
        raise SettingFault(
            "bad-setting",
            f"{name} names the folder {text!r}, and there is no such folder.",
            where=name,
            remedy="Make the folder, or leave the variable unset.",
        )
    return folder


def _whole(given: Mapping[str, str], name: str, default: int, lowest: int, highest: int) -> int:
    text = given.get(name, "").strip()
    if not text:
        return default
    if text.isascii() and text.isdigit() and len(text) <= 12 and lowest <= int(text) <= highest:
        return int(text)
    raise SettingFault(
        "bad-setting",
        f"{name} is {text!r}, which is not a whole number from {lowest} to {highest}.",
        where=name,
        remedy=f"Write digits only, such as {default}.",
    )
