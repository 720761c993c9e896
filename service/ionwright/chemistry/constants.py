"""Physical constants in full, for whatever a course does not print a figure of its own."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["CONSTANTS", "Constant"]


@dataclass(frozen=True, slots=True)
class Constant:
    """A physical constant.

    Parameters
    ----------
    id
        Its name in the API, such as ``"faraday_constant"``.
    symbol
        As it stands in a formula, such as ``"F"``.
    value
        In `unit`, in full.
    unit
        An SI unit as text, such as ``"C/mol"``.
    printed
        The figure as it is usually written, with its unit; at most ten figures.
    is_exact
        Whether it has its value by definition or as a product of such values.
    source
        Key into the ``[sources]`` table of constants.toml.
    verified
        Whether the figure was read in its source.
    """

    id: str
    symbol: str
    value: float
    unit: str
    printed: str
    is_exact: bool
    source: str
    verified: bool


CONSTANTS: Final[Mapping[str, Constant]] = MappingProxyType(
    {row["id"]: Constant(**row) for row in read_table("constants.toml")["constant"]}
)
"""Every constant of the table, by id: those of Faraday and Avogadro, the elementary charge, the gas constant, the zero
of the Celsius scale, the standard atmosphere and the standard pressure."""
