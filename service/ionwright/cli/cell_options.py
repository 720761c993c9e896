"""From the words of a command line to the cell that they describe, and back to the word that is at fault."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.cell import CellDescription
    from ionwright.chemistry.electrolyte import Ingredient


Command = TypeVar("Command", bound="Callable[..., Any]")

_SUBSTANCE_OPTIONS = (
    click.option(
        "--concentration", help='For substances without their own: "0.25 mol/dm3", dilute, concentrated.'
    ),
    click.option("--state", default="aqueous", show_default=True, help="aqueous or molten."),
    click.option(
        "--cathode", default="graphite", show_default=True, help="Material of the negative electrode."
    ),
    click.option(
        "--anode", default="graphite", show_default=True, help="Material of the positive electrode."
    ),
    click.option("--supply", default="dc", show_default=True, help="dc or ac."),
)
_CONDITION_OPTIONS = (
    click.option("--temperature", help='Such as "25 degC".'),
    click.option("--ph", type=click.FloatRange(0, 14), help="pH of the solution, if it was set."),
    click.option("--current-density", help='Such as "20 mA/cm2".'),
)


def substance_options(command: Command) -> Command:
    """Options for what is in a cell and between what it stands."""
    return _with_options(command, _SUBSTANCE_OPTIONS)


def condition_options(command: Command) -> Command:
    """Options for the conditions in a cell."""
    return _with_options(command, _CONDITION_OPTIONS)


def _with_options(command: Command, options: tuple[Callable[[Command], Command], ...]) -> Command:
    for option in reversed(options):  # as decorators that stand one below the other
        command = option(command)
    return command


def described(substances: tuple[str, ...], options: dict[str, Any]) -> CellDescription:
    """The cell that substances and options describe.

    Parameters
    ----------
    substances
        Each as a formula or name, with its own concentration behind an @ if it has one.
    options
        ``concentration`` for the substances without their own, and the other fields of a `CellDescription`.
    """
    from ionwright.chemistry.cell import CellDescription  # noqa: PLC0415 -- `ionwright --help` must be quick

    electrolyte = tuple(_ingredient(text, options["concentration"]) for text in substances)
    conditions = {name: value for name, value in options.items() if name != "concentration"}
    return CellDescription(electrolyte=electrolyte, **conditions)


def _ingredient(text: str, shared: str | None) -> Ingredient:
    from ionwright.chemistry.electrolyte import Ingredient  # noqa: PLC0415

    substance, at, own = text.partition("@")
    return Ingredient(substance.strip(), own.strip() if at else shared)


def text_at(where: str, substances: tuple[str, ...], options: dict[str, Any]) -> str:
    """Text of the command line that a refusal is about."""
    parts = where.split("/")
    if parts[0] == "electrolyte" and len(parts) > 1 and parts[1].isdigit():
        substance, at, own = substances[int(parts[1])].partition("@")
        if parts[-1] != "concentration":
            return substance.strip()
        return own.strip() if at else str(options.get("concentration") or "")
    value = options.get(parts[0])
    return "" if value is None else str(value)
