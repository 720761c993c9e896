"""`ionwright quantities`: a task about amounts on the command line, for reading or as the API's JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

import click

from ionwright.cli.cell_options import described, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write, write_json

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.errors import IonwrightError
    from ionwright.teaching.quantities import ProcessDescription, Solved, TaskConventions, TaskDescription

_EXAMPLES = """\b
Examples:
  ionwright quantities "Ni^2+ + 2e- -> Ni" --known "current=0.50 A" --known "time=20 min" \\
      --find "mass of Ni in mg" --curriculum a-level
  ionwright quantities --electrolyte "CuSO4@0.100 mol/dm3" --known "current=0.75 A" \\
      --known "bath volume=250 cm3" --find "exhaustion time of Cu^2+" --curriculum gcse
  ionwright quantities --process "silver cell=Ag^+ + e- -> Ag" \\
      --process "copper cell=Cu^2+ + 2e- -> Cu" --known "mass of Ag=2.16 g" \\
      --find "mass of Cu" --curriculum a-level
"""
_OF_CELL: Final = ("concentration", "state", "cathode", "anode", "supply", "temperature", "ph")
_OF_NAMES: Final = frozenset({"unknown-quantity", "needs-more", "not-in-task"})
"""Refusals that speak of the name of a quantity rather than of its value."""


@click.command(short_help="Work out how much, how long, how thick.", epilog=_EXAMPLES)
@click.argument("half_equation", required=False)
@click.option("--known", multiple=True, metavar="QUANTITY=VALUE", help='Such as "current=0.50 A"; repeat it.')
@click.option("--find", multiple=True, required=True, help='Such as "mass of Ni in mg"; may be repeated.')
@click.option("--curriculum", required=True, help="Id of the curriculum; see `ionwright curricula list`.")
@click.option(
    "--electrolyte", multiple=True, help="Substance in a cell that is predicted; repeat it for a mixture."
)
@click.option("--electrode", type=click.Choice(["cathode", "anode"]), help="Of the cell; both if left out.")
@click.option(
    "--process",
    "processes",
    multiple=True,
    metavar="NAME=HALF_EQUATION",
    help="One of several in one circuit.",
)
@click.option("--metal", help="A metal whose ion has an unknown charge, or a letter such as X.")
@click.option(
    "--convention",
    "conventions",
    multiple=True,
    metavar="NAME=VALUE",
    help='In place of what the course prints: "faraday_constant=96485 C/mol", "Ni=58.7".',
)
@click.option("--over-water", is_flag=True, help="Gases are collected over water.")
@click.option("--figures", type=click.IntRange(1, 10), help="Significant figures of the answers.")
@click.option(
    "--concentration", help='For substances without their own: "0.25 mol/dm3", dilute, concentrated.'
)
@click.option("--state", default="aqueous", show_default=True, help="aqueous or molten.")
@click.option("--cathode", default="graphite", show_default=True, help="Material of the negative electrode.")
@click.option("--anode", default="graphite", show_default=True, help="Material of the positive electrode.")
@click.option("--supply", default="dc", show_default=True, help="dc or ac.")
@click.option("--temperature", help='Of the electrolyte, such as "25 degC".')
@click.option("--ph", type=click.FloatRange(0, 14), help="pH of the solution, if it was set.")
@click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")
@click.pass_context
def quantities(context: click.Context, /, curriculum: str, *, as_json: bool, **options: Any) -> None:
    """Work out any quantity of an electrolysis from any others, with the working as on the board.

    Say what runs: a half-equation, a cell (--electrolyte), several in one circuit (--process), or a --metal.
    """
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `ionwright --help` must be quick

    task = _task(options)
    try:
        solved = _solved(task, curriculum)
    except IonwrightError as refusal:
        tell_refusal(refusal, _given(refusal, task, options | {"curriculum": curriculum}))
        context.exit(REFUSED)
    from ionwright.teaching.quantities import quantities_document  # noqa: PLC0415

    document = quantities_document(solved)
    if as_json:
        write_json(document)
    else:
        from ionwright.cli.quantities_layout import quantities_laid_out  # noqa: PLC0415

        write(quantities_laid_out(document, width=width()))


def _task(options: dict[str, Any]) -> TaskDescription:
    from ionwright.teaching.quantities import AskedQuantity, StatedQuantity, TaskDescription  # noqa: PLC0415

    known = _pairs("--known", options["known"], "current=0.50 A")
    return TaskDescription(
        processes=_processes(options),
        known=tuple(StatedQuantity(name, value, where=f"known/{i}") for i, (name, value) in enumerate(known)),
        find=tuple(AskedQuantity(text.strip(), where=f"find/{i}") for i, text in enumerate(options["find"])),
        conventions=stated_conventions(options),
    )


def _pairs(option: str, texts: Iterable[str], example: str) -> list[tuple[str, str]]:
    """The names and values of an option that takes both in one text."""
    pairs = []
    for text in texts:
        name, _, value = text.partition("=")
        if not name.strip() or not value.strip():
            raise click.UsageError(
                f'{option} takes a name and a value, such as "{example}"; it has {text!r}.'
            )
        pairs.append((name.strip(), value.strip()))
    return pairs


def _processes(options: dict[str, Any]) -> tuple[ProcessDescription, ...]:
    """What runs, if the command line says so in exactly one way."""
    from ionwright.teaching.quantities import ProcessDescription  # noqa: PLC0415

    ways = [name for name in ("half_equation", "electrolyte", "processes", "metal") if options[name]]
    if len(ways) != 1:
        raise click.UsageError("Say what runs: a half-equation, or --electrolyte, or --process, or --metal.")
    if options["electrode"] and not options["electrolyte"]:
        raise click.UsageError("--electrode belongs to a cell: name its --electrolyte.")
    if options["processes"]:
        pairs = _pairs("--process", options["processes"], "silver cell=Ag^+ + e- -> Ag")
        return tuple(
            ProcessDescription(id=id_, half_equation=half, where=f"processes/{i}")
            for i, (id_, half) in enumerate(pairs)
        )
    if options["electrolyte"]:
        cell = described(options["electrolyte"], {name: options[name] for name in _OF_CELL})
        return (ProcessDescription(id="cell", cell=cell, electrode=options["electrode"] or "", where="cell"),)
    (way,) = ways
    return (ProcessDescription(id="process", **{way: options[way].strip()}, where=way),)


def stated_conventions(options: dict[str, Any]) -> TaskConventions:
    """Return what the options state in place of what the course prints."""
    from ionwright.chemistry.element import ELEMENTS  # noqa: PLC0415
    from ionwright.teaching.quantities import TaskConventions  # noqa: PLC0415
    from ionwright.teaching.quantities.reading import STATED_CONSTANTS  # noqa: PLC0415

    constants, masses = {}, {}
    for name, value in _pairs("--convention", options["conventions"], "faraday_constant=96485 C/mol"):
        constant = name.lower().replace(" ", "_")
        if constant in STATED_CONSTANTS:
            constants[constant] = value
        elif name in ELEMENTS:
            masses[name] = value
        else:
            known = ", ".join(STATED_CONSTANTS)
            raise click.UsageError(f"--convention takes {known} or the symbol of an element, not {name!r}.")
    return TaskConventions(
        constants=tuple(constants.items()),
        relative_atomic_masses=tuple(masses.items()),
        significant_figures=options["figures"],
        gas_collected="over water" if options["over_water"] else "",
    )


def _solved(task: TaskDescription, curriculum_id: str) -> Solved:
    """Solve a task; what is wrong with its cell comes before an unknown curriculum."""
    from ionwright.chemistry.cell import make_cell  # noqa: PLC0415
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415
    from ionwright.errors import IonwrightError  # noqa: PLC0415
    from ionwright.teaching.quantities import solve_task  # noqa: PLC0415

    try:
        curriculum = loaded_curricula()[curriculum_id]
    except CurriculumFault:
        for process in task.processes:
            if process.cell is not None:
                try:
                    make_cell(process.cell)
                except IonwrightError as refusal:
                    raise refusal.within(process.where) from None
        raise
    return solve_task(task, curriculum)


def _given(refusal: IonwrightError, task: TaskDescription, options: dict[str, Any]) -> str:
    """Text of the command line that a refusal is about."""
    parts = refusal.where.split("/")
    place = parts[1] if len(parts) > 1 else ""
    if parts[0] == "cell":
        return text_at("/".join(parts[1:]), options["electrolyte"], options)
    if parts[0] == "known" and place:
        stated = task.known[int(place)]
        return stated.phrase if refusal.code in _OF_NAMES or len(parts) > 2 else stated.value
    if parts[0] == "find" and place:
        return task.find[int(place)].phrase
    if parts[0] == "processes" and place:
        return task.processes[int(place)].half_equation
    if parts[0] == "conventions":
        texts = dict((*task.conventions.constants, *task.conventions.relative_atomic_masses))
        return texts.get(parts[-1], "")
    return str(options.get(parts[0]) or "").strip()
