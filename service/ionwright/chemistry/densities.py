"""Densities of metals, from which the thickness of a plated layer follows."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["DENSITIES", "Density", "density_g_cm3"]


@dataclass(frozen=True, slots=True)
class Density:
    """The density of a metal in the form that is plated.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Ni"``.
    value
        In g/cm³.
    printed
        The figure as the table prints it, with its unit: its digits are its significant figures.
    t_C
        The temperature to which it belongs [°C].
    source
        Key into the ``[sources]`` table of densities.toml.
    verified
        Whether the figure was read in its source.
    """

    formula: str
    value: float
    printed: str
    t_C: float
    source: str
    verified: bool


DENSITIES: Final[Mapping[str, Density]] = MappingProxyType(
    {
        row["formula"]: Density(
            formula=row["formula"],
            value=float(row["printed"].partition(" ")[0]),
            printed=row["printed"],
            t_C=row["t_C"],
            source=row["source"],
            verified=row["verified"],
        )
        for row in read_table("densities.toml")["density"]
    }
)
"""Every density of the table, by formula."""


def density_g_cm3(formula: str) -> Density | None:
    """The density of this metal [g/cm³], or None where the table holds none.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Ni"``.
    """
    return DENSITIES.get(formula)
