"""The curricula for a command, loaded as the environment says, and refusals written for a terminal."""

from __future__ import annotations

import logging
import os
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from ionwright.curricula.host import Registry
    from ionwright.errors import IonwrightError

REFUSED = 2


def loaded_curricula() -> Registry:
    """Load the curricula that the environment names, as the service does.

    Raises
    ------
    click.UsageError
        If ``IONWRIGHT_CURRICULA`` names no folder.
    """
    from ionwright.curricula.host import load_curricula  # noqa: PLC0415 -- `ionwright --help` must be quick

    # the commands tell what was set aside themselves
    logging.getLogger("ionwright.curricula").addHandler(logging.NullHandler())
    named = os.environ.get("IONWRIGHT_CURRICULA", "").strip()
    folder = Path(named) if named else None
    if folder is not None and not folder.is_dir():
        raise click.UsageError(
            f"IONWRIGHT_CURRICULA names the folder {named!r}, and there is no such folder."
        )
    without = [name.strip() for name in os.environ.get("IONWRIGHT_WITHOUT", "").split(",") if name.strip()]
    return load_curricula(folder, without)


def tell_refusal(refusal: IonwrightError, given: str) -> None:
    """Write a refusal to the error stream: what is wrong, the text with a mark under the place, the remedy.

    Parameters
    ----------
    refusal
        What the layers below refused.
    given
        The text that it is about; empty if it is about the whole cell.
    """
    lines = [f"Refused ({refusal.code}): {refusal.detail}"]
    if given and given.isprintable():
        lines.append(f"    {given}")
        if refusal.position is not None and 0 <= refusal.position <= len(given):
            lines.append("    " + " " * refusal.position + "^")
    if refusal.remedy:
        lines.append(refusal.remedy)
    click.echo("\n".join(lines), err=True)
