"""`ionwright predict`: one cell on the command line, laid out for reading or as the API's JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.cell_options import described, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription
    from ionwright.teaching import Prediction

_EXAMPLES = """\b
Examples:
  ionwright predict NiSO4 --concentration "0.25 mol/dm3" \\
      --cathode steel --anode nickel --curriculum gcse
  ionwright predict "NaCl@0.5 mol/dm3" "KI@0.1 mol/dm3" --curriculum a-level
"""


@click.command(short_help="Predict what happens in a cell.", epilog=_EXAMPLES)
@click.argument("substances", nargs=-1, required=True, metavar="SUBSTANCE...")
@click.option("--curriculum", required=True, help="Id of the curriculum; see `ionwright curricula list`.")
@click.option(
    "--concentration", help='For substances without their own: "0.25 mol/dm3", dilute, concentrated.'
)
@click.option("--state", default="aqueous", show_default=True, help="aqueous or molten.")
@click.option("--cathode", default="graphite", show_default=True, help="Material of the negative electrode.")
@click.option("--anode", default="graphite", show_default=True, help="Material of the positive electrode.")
@click.option("--supply", default="dc", show_default=True, help="dc or ac.")
@click.option("--temperature", help='Such as "25 degC".')
@click.option("--ph", type=click.FloatRange(0, 14), help="pH of the solution, if it was set.")
@click.option("--current-density", help='Such as "20 mA/cm2".')
@click.option("--json", "as_json", is_flag=True, help="Print the JSON that the API answers with.")
@click.pass_context
def predict(
    context: click.Context, /, substances: tuple[str, ...], curriculum: str, *, as_json: bool, **options: Any
) -> None:
    """Predict what happens in a cell.

    Name the substance by formula or name; several make a mixture, each with its own concentration after an @.
    """
    from ionwright.errors import IonwrightError  # noqa: PLC0415 -- `ionwright --help` must be quick

    try:
        prediction = _predicted(described(substances, options), curriculum)
    except IonwrightError as refusal:
        given = text_at(refusal.where, substances, options | {"curriculum": curriculum})
        tell_refusal(refusal, given)
        context.exit(REFUSED)
    from ionwright.teaching import prediction_document  # noqa: PLC0415

    document = prediction_document(prediction)
    if as_json:
        import orjson  # noqa: PLC0415

        click.echo(orjson.dumps(document))
    else:
        from ionwright.cli.layout import laid_out  # noqa: PLC0415

        write(laid_out(document, width=width()))


def _predicted(cell: CellDescription, curriculum_id: str) -> Prediction:
    """Predict a cell; what is wrong with the cell comes before an unknown curriculum."""
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415
    from ionwright.teaching import predict as predict_cell  # noqa: PLC0415

    registry = loaded_curricula()
    try:
        curriculum = registry[curriculum_id]
    except CurriculumFault:
        predict_cell(cell, next(iter(registry.values())))
        raise
    return predict_cell(cell, curriculum)
