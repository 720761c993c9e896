"""From the words of a command line to the cell that they describe, and back to the word that is at fault."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from ionwright.chemistry.cell import CellDescription
    from ionwright.chemistry.electrolyte import Ingredient


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
