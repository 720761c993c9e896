"""`ionwright demonstration`: the plan of a demonstration on the command line, for reading or as the API's JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.cell_options import described, substance_options, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write, write_json

if TYPE_CHECKING:
    from ionwright.teaching.demonstrations import DemonstrationDescription, Plan

_EXAMPLES = """\b
Examples:
  ionwright demonstration NiSO4 --concentration "0.25 mol/dm3" --cathode steel --anode nickel \\
      --see "2 um of Ni" --cathode-area "40 cm2" --within "25 min" --curriculum gcse
  ionwright demonstration "NaCl@2 mol/dm3" --see "30 cm3 of H2" --room-volume "120 m3" \\
      --air-changes "4 /h" --curriculum igcse
"""
_OF_CONVENTIONS = frozenset({"conventions", "over_water", "figures"})
_OF_CELL = ("concentration", "state", "cathode", "anode", "supply", "temperature", "ph")
_AREAS = ("cathode_area", "anode_area")


@click.command(short_help="Plan a demonstration: current, time, bath, air and place.", epilog=_EXAMPLES)
@click.argument("substances", nargs=-1, required=True, metavar="SUBSTANCE...")
@click.option(
    "--see",
    "aims",
    multiple=True,
    required=True,
    help='What should be seen: "10 cm3 of H2", "2 um of Ni", "visible Ni". May be repeated.',
)
@click.option("--curriculum", required=True, help="Id of the curriculum; see `ionwright curricula list`.")
@click.option("--within", help='A time or a span: "20 min", "10 to 20 min". A lesson if left out.')
@click.option("--current", help='The current that is set, such as "0.50 A".')
@click.option("--highest-current", help="The most that the supply gives.")
@click.option("--electrode-area", help='Area of each electrode under the surface, such as "25 cm2".')
@click.option("--cathode-area", help="Area of the cathode.")
@click.option("--anode-area", help="Area of the anode.")
@click.option("--bath-volume", help='Volume of the electrolyte, such as "200 cm3".')
@click.option("--room-volume", help='Volume of the room, such as "180 m3".')
@click.option("--air-changes", help='How often an hour its air is renewed, such as "3 /h".')
@click.option("--efficiency", help='Current efficiency at the electrode of the aims, such as "95%".')
@click.option("--gas-temperature", help='Of gases that are collected, such as "20 degC".')
@click.option("--gas-pressure", help='Of gases that are collected, such as "101 kPa".')
@substance_options
@click.option("--temperature", help='Of the electrolyte, such as "25 degC".')
@click.option("--ph", type=click.FloatRange(0, 14), help="pH of the solution, if it was set.")
@click.option(
    "--convention",
    "conventions",
    multiple=True,
    metavar="NAME=VALUE",
    help='In place of what the course prints: "faraday_constant=96485 C/mol", "Ni=58.7".',
)
@click.option("--over-water", is_flag=True, help="Gases are collected over water.")
@click.option("--figures", type=click.IntRange(1, 10), help="Significant figures of the amounts.")
@click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")
@click.pass_context
def demonstration(
    context: click.Context, /, substances: tuple[str, ...], curriculum: str, *, as_json: bool, **options: Any
) -> None:
    """Plan a demonstration: which current for how long shows what should be seen, and where it may be done.

    Name the substance by formula or name; several make a mixture, each with its own concentration after an @.
    The plan is no risk assessment: local rules and qualified staff come first.
    """
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `ionwright --help` must be quick

    try:
        plan = _planned(_description(substances, options), curriculum)
    except IonwrightError as refusal:
        tell_refusal(refusal, _given(refusal.where, substances, options | {"curriculum": curriculum}))
        context.exit(REFUSED)
    from ionwright.teaching.demonstrations import demonstration_document  # noqa: PLC0415

    document = demonstration_document(plan)
    if as_json:
        write_json(document)
    else:
        from ionwright.cli.demonstration_layout import plan_laid_out  # noqa: PLC0415

        write(plan_laid_out(document, width=width()))


def _description(substances: tuple[str, ...], options: dict[str, Any]) -> DemonstrationDescription:
    from ionwright.cli.quantities import stated_conventions  # noqa: PLC0415
    from ionwright.teaching.demonstrations import DemonstrationDescription, aim_of  # noqa: PLC0415

    bench = {
        name: value.strip()
        for name, value in options.items()
        if name not in {*_OF_CELL, *_OF_CONVENTIONS, "aims"} and value is not None
    }
    shared = bench.pop("electrode_area", None)
    if shared is not None:
        bench = dict.fromkeys(_AREAS, shared) | bench
    return DemonstrationDescription(
        cell=described(substances, {name: options[name] for name in _OF_CELL}),
        aims=tuple(aim_of(text, f"aims/{index}") for index, text in enumerate(options["aims"])),
        **bench,
        conventions=stated_conventions(options),
    )


def _given(where: str, substances: tuple[str, ...], options: dict[str, Any]) -> str:
    """Text of the command line that a refusal is about."""
    parts = where.split("/")
    if parts[0] == "cell":
        return text_at("/".join(parts[1:]), substances, options)
    if parts[0] == "conventions":
        stated = (text.partition("=") for text in options["conventions"])
        return next((value.strip() for name, _, value in stated if _is_named(name, parts[-1])), "")
    if parts[0] == "aims" and len(parts) > 1:
        return str(options["aims"][int(parts[1])])
    if parts[0] in _AREAS and options[parts[0]] is None:
        return str(options["electrode_area"] or "")
    return text_at(where, substances, options)


def _is_named(name: str, place: str) -> bool:
    """Whether the name of a convention, as it was written, is that of a place in the description."""
    return place in (name.strip(), name.strip().lower().replace(" ", "_"))


def _planned(description: DemonstrationDescription, curriculum_id: str) -> Plan:
    """The plan; what is wrong with the description comes before an unknown curriculum."""
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415
    from ionwright.teaching.demonstrations import plan_demonstration  # noqa: PLC0415

    registry = loaded_curricula()
    try:
        curriculum = registry[curriculum_id]
    except CurriculumFault:
        plan_demonstration(description, next(iter(registry.values())))
        raise
    return plan_demonstration(description, curriculum)
