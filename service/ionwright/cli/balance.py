"""`ionwright balance` and `ionwright combine`: half-equations on the command line, for reading or as JSON."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.registry import REFUSED, tell_refusal
from ionwright.cli.terminal import width, write, write_json

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.errors import IonwrightError

_MEDIA = ("acidic", "alkaline", "neutral", "molten", "none")
_BALANCE_EXAMPLES = """\b
Examples:
  ionwright balance "MnO4^- -> Mn^2+" --medium acidic
  ionwright balance "Cl2 -> Cl^- + ClO3^-" --medium alkaline
"""
_COMBINE_EXAMPLES = """\b
Example:
  ionwright combine "Cu -> Cu^2+ + 2e-" "Ag^+ + e- -> Ag"
"""
_JSON = click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")


@click.command(short_help="Balance a half-equation, or a whole redox equation.", epilog=_BALANCE_EXAMPLES)
@click.argument("equation")
@click.option(
    "--medium",
    type=click.Choice(_MEDIA),
    help="What may be added; if left out, alkaline where OH^- is given, else acidic.",
)
@_JSON
@click.pass_context
def balance(context: click.Context, equation: str, medium: str | None, *, as_json: bool) -> None:
    """Balance a half-equation of which the species are given.

    The steps are those that are written on the board. A whole redox equation is split into its half-equations.
    """
    from ionwright.chemistry.balancing import balance as balance_text  # noqa: PLC0415 -- `--help` must be quick
    from ionwright.errors import IonwrightError  # noqa: PLC0415
    from ionwright.teaching.balance_document import balance_document  # noqa: PLC0415

    try:
        document = balance_document(balance_text(equation, medium))
    except IonwrightError as refusal:
        _refuse(context, refusal, equation)
    _print(document, _balanced(document), as_json=as_json)


@click.command(short_help="Add an oxidation and a reduction.", epilog=_COMBINE_EXAMPLES)
@click.argument("half_equations", nargs=-1, metavar="[OXIDATION REDUCTION]")
@click.option("--oxidation", help="The half-equation that releases electrons.")
@click.option("--reduction", help="The half-equation that takes electrons up.")
@_JSON
@click.pass_context
def combine(
    context: click.Context,
    half_equations: tuple[str, ...],
    oxidation: str | None,
    reduction: str | None,
    *,
    as_json: bool,
) -> None:
    """Add two half-equations so that the electrons cancel: first the oxidation, then the reduction."""
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `--help` must be quick
    from ionwright.teaching.balance_document import combination_document  # noqa: PLC0415
    from ionwright.teaching.half_equations import combine_half_equations  # noqa: PLC0415

    texts = [*half_equations]
    given = {
        name: option if option is not None else texts.pop(0) if texts else ""
        for name, option in (("oxidation", oxidation), ("reduction", reduction))
    }
    if texts or not all(given.values()):
        raise click.UsageError("Give two half-equations: the oxidation, then the reduction.")
    try:
        document = combination_document(combine_half_equations(**given))
    except IonwrightError as refusal:
        _refuse(context, refusal, given.get(refusal.where, ""))
    _print(document, _combined(document), as_json=as_json)


def _refuse(context: click.Context, refusal: IonwrightError, given: str) -> None:
    tell_refusal(refusal, given)
    for equation in getattr(refusal, "basis", ()):
        click.echo(f"    {equation.ascii}", err=True)
    context.exit(REFUSED)


def _print(document: dict[str, Any], lines: Iterable[str], *, as_json: bool) -> None:
    if as_json:
        write_json(document)
    else:
        write("\n".join(lines))


def _balanced(document: dict[str, Any]) -> list[str]:
    lines = [document["half_equation"]["text"]]
    if "side" in document:
        electrons = f"{document['electrons']} electron{'s' * (document['electrons'] > 1)}"
        lines.append(f"{document['kind'].capitalize()}: {electrons} on the {document['side']}.")
    lines += _notes(document["notes"])
    if "halves" in document:
        lines += ["", "HALF-EQUATIONS", *_halves(document["halves"])]
    return [*lines, "", "STEPS", *_steps(document["steps"]), "", "OXIDATION NUMBERS", *_numbers(document)]


def _combined(document: dict[str, Any]) -> list[str]:
    return [
        document["overall_equation"]["text"],
        *_notes(document["notes"]),
        "",
        "HALF-EQUATIONS",
        *_halves(document),
        "",
        "STEPS",
        *_steps(document["steps"]),
    ]


def _notes(notes: list[str]) -> list[str]:
    return [line for note in notes for line in wrap(note, width())]


def _halves(halves: dict[str, Any]) -> list[str]:
    return [
        f"  {name.capitalize():<10} {halves[name]['multiplier']} x ( {halves[name]['half_equation']['text']} )"
        for name in ("reduction", "oxidation")
    ]


def _steps(steps: list[dict[str, Any]]) -> list[str]:
    lines = []
    for number, step in enumerate(steps, 1):
        first = f"  {number}. "
        lines += wrap(step["text"], width(), initial_indent=first, subsequent_indent=" " * len(first))
        lines.append(f"       {step['equation']['text']}")
    return lines


def _numbers(document: dict[str, Any]) -> list[str]:
    """For each species its numbers; those that change are marked."""
    rows: dict[tuple[str, str], list[str]] = {}
    for number in document["oxidation_numbers"]:
        text = f"{number['element']} {number['text']}"
        if number.get("is_average"):
            text += " (average)"
        if number.get("changes"):
            text += " *"
        rows.setdefault((number["side"], number["species"]), []).append(text)
    column = max((len(species) for _, species in rows), default=0)
    lines = [
        f"  {side:<6} {species:<{column}}  {', '.join(texts)}" for (side, species), texts in rows.items()
    ]
    return [*lines, "  * changes"] if any("*" in line for line in lines) else lines
