"""`ionwright predict`: one cell on the command line, laid out for reading or as the API's JSON."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any

import click

from ionwright.cli.registry import REFUSED, loaded_curricula, tell_refusal

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription
    from ionwright.chemistry.electrolyte import Ingredient
    from ionwright.teaching import Prediction

_EXAMPLES = """\b
Examples:
  ionwright predict NiSO4 --concentration "0.25 mol/dm3" \\
      --cathode steel --anode nickel --curriculum gcse
  ionwright predict "NaCl@0.5 mol/dm3" "KI@0.1 mol/dm3" --curriculum a-level
"""
# for terminals that show ASCII only; what is left after this becomes a question mark
_PLAIN = str.maketrans(
    {
        **dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789", strict=True)),
        "⁺": "+",
        "⁻": "-",
        "−": "-",
        "–": "-",
        "→": "->",
        "·": ".",
        "°": " deg",
        "’": "'",
    }
)


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
        prediction = _predicted(_described(substances, options), curriculum)
    except IonwrightError as refusal:
        given = _given(refusal.where, substances, options | {"curriculum": curriculum})
        tell_refusal(refusal, given)
        context.exit(REFUSED)
    from ionwright.teaching import prediction_document  # noqa: PLC0415

    document = prediction_document(prediction)
    if as_json:
        import orjson  # noqa: PLC0415

        click.echo(orjson.dumps(document))
    else:
        from ionwright.cli.layout import laid_out  # noqa: PLC0415

        _write(laid_out(document, width=_width()))


def _described(substances: tuple[str, ...], options: dict[str, Any]) -> CellDescription:
    from ionwright.chemistry.cell import CellDescription  # noqa: PLC0415

    electrolyte = tuple(_ingredient(text, options["concentration"]) for text in substances)
    conditions = {name: value for name, value in options.items() if name != "concentration"}
    return CellDescription(electrolyte=electrolyte, **conditions)


def _ingredient(text: str, shared: str | None) -> Ingredient:
    from ionwright.chemistry.electrolyte import Ingredient  # noqa: PLC0415

    substance, at, own = text.partition("@")
    return Ingredient(substance.strip(), own.strip() if at else shared)


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


def _given(where: str, substances: tuple[str, ...], options: dict[str, Any]) -> str:
    """Text of the command line that a refusal is about."""
    parts = where.split("/")
    if parts[0] == "electrolyte" and len(parts) > 1 and parts[1].isdigit():
        substance, at, own = substances[int(parts[1])].partition("@")
        if parts[-1] != "concentration":
            return substance.strip()
        return own.strip() if at else str(options.get("concentration") or "")
    value = options.get(parts[0])
    return "" if value is None else str(value)


def _width() -> int:
    from shutil import get_terminal_size  # noqa: PLC0415

    return max(40, min(get_terminal_size((88, 24)).columns, 110))


def _write(text: str) -> None:
    """Write to the terminal, in ASCII where it shows no more: never an end with a traceback."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(_PLAIN).encode(encoding, errors="replace").decode(encoding)
    click.echo(text)
