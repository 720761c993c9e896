"""`ionwright compare`: one cell under several curricula, or the cells on which curricula disagree."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.cell_options import condition_options, described, substance_options, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write, write_json

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ionwright.curricula import Curriculum
    from ionwright.curricula.host import Registry

_EXAMPLES = """\b
Examples:
  ionwright compare NaCl --concentration dilute
  ionwright compare NiSO4 --cathode steel --anode nickel --curricula gcse,a-level
  ionwright compare --between gcse igcse
  ionwright compare --between gcse all --electrode anode --limit 20
"""
_OF_CELL = (
    "concentration",
    "state",
    "cathode",
    "anode",
    "supply",
    "temperature",
    "ph",
    "current_density",
)
_OF_LIST = ("electrode", "limit", "offset")
_ALL = "all"


@click.command(short_help="Compare curricula on a cell, or find where they disagree.", epilog=_EXAMPLES)
@click.argument("substances", nargs=-1, metavar="[SUBSTANCE]...")
@click.option(
    "--curricula", multiple=True, help="Ids with commas between them, or repeated; all if left out."
)
@click.option(
    "--between",
    nargs=2,
    metavar="ID OTHER",
    help="In place of a cell: list the cells of the tables on which two curricula disagree. OTHER may be all.",
)
@click.option(
    "--electrode", type=click.Choice(["cathode", "anode"]), help="With --between: only this electrode."
)
@click.option(
    "--limit",
    type=click.IntRange(1, 10000),
    default=50,
    show_default=True,
    help="With --between: the most to list.",
)
@click.option("--offset", type=click.IntRange(0), default=0, help="With --between: how many to pass over.")
@substance_options
@condition_options
@click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")
@click.pass_context
def compare(
    context: click.Context,
    /,
    substances: tuple[str, ...],
    curricula: tuple[str, ...],
    between: tuple[str, str] | None,
    *,
    as_json: bool,
    **options: Any,
) -> None:
    """Compare curricula on a cell, grouped by agreement, with the rule that makes the difference.

    Name the substance by formula or name; several make a mixture, each with its own concentration after an @.
    With --between no cell is named: the cells on which two curricula disagree are listed, by the rules that do it.
    """
    if bool(substances) == bool(between):
        raise click.UsageError("Name a substance, or two curricula with --between: one of the two.")
    if between:
        _refuse_beside_between(context, ("curricula", *_OF_CELL))
        document = _disagreements(context, between, options)
    else:
        _refuse_without_between(context, _OF_LIST)
        of_cell = {name: options[name] for name in _OF_CELL}
        document = _comparison(context, substances, of_cell, curricula)
    if as_json:
        write_json(document)
    else:
        from ionwright.cli import comparison_layout  # noqa: PLC0415

        laid_out = (
            comparison_layout.disagreements_laid_out if between else comparison_layout.comparison_laid_out
        )
        write(laid_out(document, width=width()))


def _refuse_beside_between(context: click.Context, names: tuple[str, ...]) -> None:
    for name in _given(context, names):
        raise click.UsageError(
            f"--{name.replace('_', '-')} belongs to a cell and cannot stand beside --between."
        )


def _refuse_without_between(context: click.Context, names: tuple[str, ...]) -> None:
    for name in _given(context, names):
        raise click.UsageError(f"--{name.replace('_', '-')} belongs to --between.")


def _given(context: click.Context, names: tuple[str, ...]) -> tuple[str, ...]:
    """The options among these that the command line gives."""
    default = click.core.ParameterSource.DEFAULT
    return tuple(name for name in names if context.get_parameter_source(name) is not default)


def _comparison(
    context: click.Context, substances: tuple[str, ...], of_cell: dict[str, Any], ids: tuple[str, ...]
) -> dict[str, Any]:
    """The document of a comparison; what is wrong with the cell comes before an unknown curriculum."""
    from ionwright.chemistry.cell import make_cell  # noqa: PLC0415
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `ionwright --help` must be quick
    from ionwright.teaching.comparison import compare as compare_curricula  # noqa: PLC0415
    from ionwright.teaching.comparison_document import comparison_document  # noqa: PLC0415

    registry = loaded_curricula()
    try:
        cell = make_cell(described(substances, of_cell))
    except IonwrightError as refusal:
        tell_refusal(refusal, text_at(refusal.where, substances, of_cell))
        context.exit(REFUSED)
    named = [id_.strip() for text in ids for id_ in text.split(",")]
    curricula = _chosen(context, registry, named) if named else tuple(registry.values())
    return comparison_document(compare_curricula(cell, curricula))


def _disagreements(
    context: click.Context, between: tuple[str, str], options: dict[str, Any]
) -> dict[str, Any]:
    from ionwright.teaching.disagreement import disagreements  # noqa: PLC0415
    from ionwright.teaching.disagreement_document import disagreements_document  # noqa: PLC0415

    registry = loaded_curricula()
    id_, other = between
    if other == _ALL and _ALL not in registry:
        (curriculum,) = _chosen(context, registry, [id_])
        others = tuple(one for one in registry.values() if one is not curriculum)
    else:
        curriculum, *rest = _chosen(context, registry, [id_, other])
        others = tuple(rest)
    found = disagreements(curriculum, others, options["electrode"])
    return disagreements_document(found, offset=options["offset"], limit=options["limit"])


def _chosen(context: click.Context, registry: Registry, ids: Sequence[str]) -> tuple[Curriculum, ...]:
    """The curricula with these ids, in their order; ends the command if one is not loaded."""
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415

    found: dict[str, Curriculum] = {}
    for id_ in ids:
        try:
            curriculum = registry[id_]
        except CurriculumFault as fault:
            tell_refusal(fault, id_)
            context.exit(REFUSED)
        if curriculum.id in found:
            raise click.UsageError(f"{curriculum.id} is named more than once. Name each curriculum once.")
        found[curriculum.id] = curriculum
    return tuple(found.values())
