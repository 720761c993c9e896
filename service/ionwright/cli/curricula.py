"""`ionwright curricula`: what is loaded, the rules of one curriculum in words, and a check of new ones."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.curriculum_check import check
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import write_json

if TYPE_CHECKING:
    from collections.abc import Mapping

    from ionwright.curricula.host import Registry

_JSON = click.option("--json", "as_json", is_flag=True, help="Print JSON.")


@click.group(short_help="List curricula, show the rules of one, or check a new one.")
def curricula() -> None:
    """List the curricula that are loaded, show the rules of one, or check a declaration that is being written."""


curricula.add_command(check)


@curricula.command(name="list")
@_JSON
def list_curricula(*, as_json: bool) -> None:
    """List the curricula, and what was set aside."""
    registry = loaded_curricula()
    entries = [_described(registry, curriculum_id) for curriculum_id in registry]
    aside = [{"name": item.name, "kind": item.kind, "reason": item.reason} for item in registry.set_aside]
    if as_json:
        write_json({"curricula": entries, "set_aside": aside})
        return
    width = max((len(entry["id"]) for entry in entries), default=0)
    for entry in entries:
        click.echo(f"{entry['id']:<{width}}  {entry['title']} ({entry['stage']}, {entry['region']})")
    for item in aside:
        click.echo(f"Set aside: {item['kind']} {item['name']}: {item['reason']}", err=True)


@curricula.command()
@click.argument("curriculum_id", metavar="ID")
@_JSON
@click.pass_context
def show(context: click.Context, curriculum_id: str, *, as_json: bool) -> None:
    """Show the conventions and rules of one curriculum."""
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415 -- `ionwright --help` must be quick

    registry = loaded_curricula()
    try:
        entry = _described(registry, curriculum_id)
    except CurriculumFault as fault:
        tell_refusal(fault, curriculum_id)
        context.exit(REFUSED)
    if as_json:
        write_json(entry)
        return
    click.echo(f"{entry['title']} ({entry['id']})\n{entry.get('summary', '')}\n")
    for side in ("cathode", "anode"):
        click.echo(f"At the {side}, in this order:")
        for number, sentence in enumerate(entry["rules"][side], 1):
            click.echo(click.wrap_text(sentence, 88, f"  {number}. ", "     "))
        click.echo()
    _show_table("Conventions", entry["conventions"])
    if entry["scope"]:
        click.echo()
        _show_table("Scope", entry["scope"])


def _show_table(title: str, table: Mapping[str, object]) -> None:
    click.echo(f"{title}:")
    for name, value in table.items():
        click.echo(click.wrap_text(f"{name.replace('_', ' ')}: {_in_words(value)}", 88, "  ", "    "))


def _described(registry: Registry, curriculum_id: str) -> dict[str, Any]:
    from ionwright.curricula import describe  # noqa: PLC0415

    curriculum = registry[curriculum_id]
    origin = registry.origins[curriculum_id]
    found = {"kind": origin.kind, "name": origin.name}
    if origin.version:
        found["version"] = origin.version
    return describe(curriculum) | {"origin": found, "status": "active"}


def _in_words(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return "; ".join(f"{key}: {_in_words(part)}" for key, part in value.items())
    if isinstance(value, (list, tuple)):
        return ", ".join(_in_words(part) for part in value)
    return str(value)
