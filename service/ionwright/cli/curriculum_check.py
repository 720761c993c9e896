"""`ionwright curricula check`: every fault of a declaration, and what it decides beside the course it builds on."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.registry import loaded_curricula

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription
    from ionwright.curricula import Curriculum
    from ionwright.curricula.host import Registry
    from ionwright.teaching.declaration_check import CheckedCell, Decision

FAULTY = 1
_HEADS = ("cell", "cathode", "anode")


@click.command(short_help="Check a declaration, and see what it decides.")
@click.argument("path", type=click.Path(exists=True, path_type=Path), metavar="PATH")
@click.option("--json", "as_json", is_flag=True, help="Print JSON.")
@click.pass_context
def check(context: click.Context, path: Path, *, as_json: bool) -> None:
    """Tell every fault of the declaration in PATH with its line, or else what it decides on a set of cells.

    PATH is a TOML file, or a folder of them. What differs from the course it builds on is marked with *. The exit code
    is 1 if a declaration has faults.
    """
    paths = sorted(path.rglob("*.toml")) if path.is_dir() else [path]
    if not paths:
        raise click.UsageError(f"There is no TOML file in {str(path)!r}.")
    registry = loaded_curricula()
    checked = [_checked(one, registry) for one in paths]
    if as_json:
        import orjson  # noqa: PLC0415 -- `ionwright --help` must be quick

        click.echo(orjson.dumps(checked, option=orjson.OPT_INDENT_2))
    else:
        click.echo("\n\n".join(_laid_out(one) for one in checked))
    if any("faults" in one for one in checked):
        context.exit(FAULTY)


def _checked(path: Path, registry: Registry) -> dict[str, Any]:
    """What is to be told of one file, as plain data."""
    from ionwright.curricula import CurriculumFileFault  # noqa: PLC0415
    from ionwright.curricula.declared_lines import line_of  # noqa: PLC0415

    try:
        text = path.read_text(encoding="utf-8")
        curriculum = registry.declared(text, path.name)
    except (OSError, UnicodeDecodeError) as fault:
        return {"file": path.name, "faults": [{"key": "", "fault": f"it cannot be read: {fault}"}]}
    except CurriculumFileFault as refusal:
        faults = []
        for key, told in refusal.faults:
            line = line_of(text, key, told)
            faults.append({"key": key, "fault": told} | ({} if line is None else {"line": line}))
        return {"file": path.name, "faults": sorted(faults, key=lambda one: one.get("line", 0))}
    return {"file": path.name} | _decided(curriculum, text, registry)


def _decided(curriculum: Curriculum, text: str, registry: Registry) -> dict[str, Any]:
    from ionwright.teaching.declaration_check import decisions  # noqa: PLC0415

    base_id = tomllib.loads(text).get("based_on", "")
    told: dict[str, Any] = {"id": curriculum.id, "title": curriculum.title}
    if base_id:
        told["based_on"] = base_id
    if curriculum.id in registry:
        origin = registry.origins[curriculum.id]
        told["note"] = (
            f"The id {curriculum.id} is loaded from {origin.kind} {origin.name};"
            " another file that claims it is set aside."
        )
    base = registry[base_id] if base_id else None
    return told | {"cells": [_row(cell) for cell in decisions(curriculum, base)]}


def _row(cell: CheckedCell) -> dict[str, Any]:
    row: dict[str, Any] = {"cell": _name(cell.description)}
    for place, side in enumerate(_HEADS[1:]):
        row[side] = _answer(cell.decided[place])
        if cell.base is not None and cell.differs[place]:
            row[f"{side}_of_base"] = _answer(cell.base[place])
    return row


def _name(description: CellDescription) -> str:
    from ionwright.cli.layout import formula_text  # noqa: PLC0415

    (ingredient,) = description.electrolyte
    amount = ingredient.concentration or description.state
    electrodes = description.cathode
    if description.anode != description.cathode:
        electrodes = f"{description.cathode} | {description.anode}"
    return f"{formula_text(ingredient.substance)}, {amount}, {electrodes}"


def _answer(decision: Decision) -> str:
    from ionwright.chemistry.notation import species_text  # noqa: PLC0415

    if decision.fault:
        return f"at fault: {decision.fault}"
    if not decision.products:
        return "not decided"
    answer = " + ".join(map(species_text, decision.products))
    accepted = [" + ".join(map(species_text, products)) for products in decision.also_accepted]
    return f"{answer} (or {', '.join(accepted)})" if accepted else answer


def _laid_out(checked: dict[str, Any]) -> str:
    if "faults" in checked:
        faults = checked["faults"]
        lines = [f"{checked['file']} has {len(faults)} fault{'s' if len(faults) > 1 else ''}:"]
        for fault in faults:
            place = f"line {fault['line']}" if "line" in fault else "not written out"
            lines.append(f"  {place + ':':<17}{fault['key'] or 'the text'}: {fault['fault']}.")
        return "\n".join(lines)
    base = checked.get("based_on", "")
    head = f"{checked['file']} declares {checked['id']}, {checked['title']}"
    lines = [head + (f", building on {base}." if base else "."), *_table(checked["cells"], base)]
    return "\n".join(lines + ([f"\n{checked['note']}"] if "note" in checked else []))


def _table(rows: list[dict[str, Any]], base: str) -> list[str]:
    """The rows as a table; an answer that differs from that of the base is marked, with the base's behind it."""
    shown = [
        tuple(
            f"* {row[head]} ({base}: {row[f'{head}_of_base']})" if f"{head}_of_base" in row else row[head]
            for head in _HEADS
        )
        for row in rows
    ]
    widths = [max(map(len, column)) for column in zip(_HEADS, *shown, strict=True)]
    return [
        "  " + "  ".join(f"{part:<{width}}" for part, width in zip(parts, widths, strict=True)).rstrip()
        for parts in (_HEADS, *shown)
    ]
