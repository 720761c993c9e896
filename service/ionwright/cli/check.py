"""`ionwright check`: a student's line against what was asked, laid out for reading or as the API's JSON."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.cell_options import described, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write, write_json

if TYPE_CHECKING:
    from ionwright.teaching.marking import Expectation

_EXAMPLES = """\b
Examples:
  ionwright check "Ni2+ + 2e- -> Ni" --electrolyte NiSO4 --anode nickel \\
      --electrode cathode --curriculum gcse
  ionwright check "Cl- -> Cl + e-" --expected "2Cl^- -> Cl2 + 2e-" --curriculum igcse
"""
_CELL_OPTIONS = ("concentration", "state", "cathode", "anode")


@click.command(short_help="Check a student's half-equation.", epilog=_EXAMPLES)
@click.argument("answer")
@click.option("--curriculum", required=True, help="Id of the curriculum; see `ionwright curricula list`.")
@click.option("--expected", multiple=True, help="A half-equation that is right; repeat it for several.")
@click.option("--electrolyte", multiple=True, help="Substance in the cell; repeat it for a mixture.")
@click.option(
    "--electrode", type=click.Choice(["cathode", "anode"]), help="The electrode that was asked about."
)
@click.option(
    "--written-as",
    type=click.Choice(["reduction", "oxidation"]),
    help="Direction, if the task asks for one whichever way the process runs.",
)
@click.option("--concentration", help='"0.25 mol/dm3", dilute or concentrated.')
@click.option("--state", default="aqueous", show_default=True, help="aqueous or molten.")
@click.option("--cathode", default="graphite", show_default=True, help="Material of the negative electrode.")
@click.option("--anode", default="graphite", show_default=True, help="Material of the positive electrode.")
@click.option("--state-symbols", is_flag=True, help="The task asks for state symbols.")
@click.option("--reveal", is_flag=True, help="Say what would have been right.")
@click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")
@click.pass_context
def check(
    context: click.Context, /, answer: str, curriculum: str, *, as_json: bool, reveal: bool, **options: Any
) -> None:
    """Check a student's line against an electrode of a cell, or against a half-equation that is right."""
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `ionwright --help` must be quick

    _check_question(options)
    try:
        expectation = _expectation(curriculum, options)
    except IonwrightError as refusal:
        given = _given(refusal.where, options | {"curriculum": curriculum})
        tell_refusal(refusal, given)
        context.exit(REFUSED)
    from ionwright.teaching.marking import check as check_line  # noqa: PLC0415
    from ionwright.teaching.marking import marking_document  # noqa: PLC0415

    document = marking_document(check_line(answer, expectation))
    if as_json:
        write_json(document)
    else:
        write(laid_out(document, answer, columns=width(), reveal=reveal))


def _check_question(options: dict[str, Any]) -> None:
    """Refuse a command line that asks nothing, or two things at once."""
    if options["expected"] and options["electrolyte"]:
        raise click.UsageError("Give either --expected or --electrolyte with --electrode, not both.")
    if not options["expected"] and not options["electrolyte"]:
        raise click.UsageError("Say what was asked: --electrolyte with --electrode, or --expected.")
    if options["electrolyte"] and not options["electrode"]:
        raise click.UsageError("Say which electrode was asked about: --electrode cathode or anode.")


def _expectation(curriculum_id: str, options: dict[str, Any]) -> Expectation:
    from ionwright.chemistry.cell import make_cell  # noqa: PLC0415
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415
    from ionwright.teaching.marking import electrode_expectation, given_expectation  # noqa: PLC0415

    asked = options["state_symbols"]
    if options["expected"]:
        curriculum = loaded_curricula()[curriculum_id]
        return given_expectation(options["expected"], curriculum, states_asked=asked)
    cell = described(options["electrolyte"], {name: options[name] for name in _CELL_OPTIONS})
    try:
        curriculum = loaded_curricula()[curriculum_id]
    except CurriculumFault:
        make_cell(cell)  # faults of a cell come before an unknown curriculum
        raise
    return electrode_expectation(
        cell, options["electrode"], curriculum, written_as=options["written_as"] or "", states_asked=asked
    )


def _given(where: str, options: dict[str, Any]) -> str:
    """Text of the command line that a refusal is about."""
    if where.startswith("expected/"):
        return str(options["expected"][int(where.partition("/")[2])])
    return text_at(where, options["electrolyte"], options)


def laid_out(document: dict[str, Any], answer: str, *, columns: int, reveal: bool) -> str:
    """Return a marking as text.

    Parameters
    ----------
    document
        The marking as plain data.
    answer
        The line that was checked.
    columns
        How wide the text may be.
    reveal
        Whether to say what would have been right.
    """
    marks = document["marks"]
    awarded, available = marks["awarded"], marks["available"]
    lines = [f"{document['verdict'].upper()}, {awarded} of {available} mark{'' if available == 1 else 's'}"]
    for one in (*document["faults"], *document["slips"]):
        lines += ["", *_with_marks(answer, one["at"], columns)]
        head = f"{one['code']}: " if "code" in one else "slip: "
        lines += _wrapped(head + one["feedback"], columns)
        if reveal and "reveals" in one:
            lines += _wrapped(one["reveals"], columns)
    if reveal:
        lines += ["", "Right:"]
        lines += [line for form in document["accepted_forms"] for line in _wrapped(form["text"], columns)]
    return "\n".join(lines)


def _with_marks(answer: str, at: list[int], columns: int) -> list[str]:
    """The line with marks under the place, where the terminal can show both."""
    start, end = at
    if not answer.isprintable() or not answer or len(answer) + 4 > columns:
        return []
    return [f"    {answer}", "    " + " " * start + "^" * max(1, end - start)]


def _wrapped(text: str, columns: int) -> list[str]:
    return wrap(text, columns, initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False)
