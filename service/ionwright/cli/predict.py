"""`ionwright predict`: one cell on the command line, laid out for reading or as the API's JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.cell_options import condition_options, described, substance_options, text_at
from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal
from ionwright.cli.terminal import width, write, write_json

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
@substance_options
@condition_options
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
        write_json(document)
    else:
        from ionwright.cli.layout import laid_out  # noqa: PLC0415

        write(laid_out(document, width=width()))


def _predicted(cell: CellDescription, curriculum_id: str) -> Prediction:
    """Predict a cell; what is wrong with the cell comes before an unknown curriculum."""
    from ionwright.chemistry.cell import make_cell  # noqa: PLC0415
    from ionwright.curricula import CurriculumFault  # noqa: PLC0415
    from ionwright.teaching import predict as predict_cell  # noqa: PLC0415

    registry = loaded_curricula()
    try:
        curriculum = registry[curriculum_id]
    except CurriculumFault:
        make_cell(cell)
        raise
    return predict_cell(cell, curriculum)
