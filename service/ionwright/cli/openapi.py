"""`ionwright openapi`: the contract of the API, made afresh from the schemas."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

import click


@click.command(short_help="Print or write the OpenAPI document.")
@click.option(
    "--write",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Folder for ionwright.json and examples/ instead of printing.",
)
@click.option("--json", "_as_json", is_flag=True, help="Print JSON, which is what is printed anyway.")
def openapi(folder: Path | None, *, _as_json: bool) -> None:
    """Print the OpenAPI document, or write it and its examples to a folder."""
    # by name: the command stands beside the API and does not build on it
    files = import_module("ionwright.api.contract_files").contract_files()
    if folder is None:
        click.echo(files["ionwright.json"], nl=False)
        return
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(content, encoding="utf-8")
        click.echo(str(path))
