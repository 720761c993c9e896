"""What the air of a room may hold of a gas for a short time, and from what share hydrogen and its like burn."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.species import species
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Iterable

__all__ = [
    "Limit",
    "limits",
    "lower_explosive_percent",
    "mg_m3_from_ppm",
    "ppm_from_mg_m3",
    "short_term_limits",
    "strictest_short_term",
]

_T_K: Final = CONSTANTS["zero_celsius"].value + 25
_MOLAR_VOLUME_DM3: Final = 1000 * CONSTANTS["gas_constant"].value * _T_K / CONSTANTS["atmosphere"].value
_SHORT_TERM: Final = ("STEL", "ceiling")


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit for a substance in the air of a room.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Cl2"``.
    jurisdiction
        Who set it, such as ``"UK WEL"``.
    kind
        Over what time and with what force, such as ``"STEL 15 min"``.
    printed
        The figure as it was set, with its unit.
    ppm
        Parts by volume in a million parts of air; None where the limit is set by mass, as for a mist or a dust.
    mg_m3
        By mass [mg/m³], at 25 °C and 101.325 kPa.
    source
        Key into the ``[sources]`` table of exposure.toml.
    verified
        Whether the figure was read in its source, not recalled.
    """

    formula: str
    jurisdiction: str
    kind: str
    printed: str
    ppm: float | None
    mg_m3: float
    source: str
    verified: bool

    @property
    def is_short_term(self) -> bool:
        """Whether it holds for a quarter of an hour or at any moment, rather than for a working day."""
        return any(word in self.kind for word in _SHORT_TERM)


def limits(formula: str) -> tuple[Limit, ...]:
    """Every limit of the tables for this substance, in their order; empty if they hold none.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Cl2"``.
    """
    return _by_formula().get(formula, ())


def short_term_limits(formula: str) -> tuple[Limit, ...]:
    """The limits for a quarter of an hour and the ceilings for this substance; empty if the tables hold none.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Cl2"``.
    """
    return tuple(limit for limit in limits(formula) if limit.is_short_term)


def strictest_short_term(formula: str) -> Limit | None:
    """The lowest short-term limit for this substance, one that was read before one that was recalled; None without any.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"Cl2"``.
    """
    found = short_term_limits(formula)
    return min(found, key=lambda limit: (limit.mg_m3, not limit.verified)) if found else None


def lower_explosive_percent(formula: str) -> float | None:
    """The share of air by volume from which this gas can be lit [%], or None where the tables hold none.

    Parameters
    ----------
    formula
        Canonical ASCII, such as ``"H2"``.
    """
    for row in read_table("exposure.toml")["flammable"]:
        if row["formula"] == formula and row["kind"] == "LEL":
            return float(row["percent_by_volume"])
    return None


def mg_m3_from_ppm(ppm: float, formula: str) -> float:
    """The mass of a gas in a cubic metre of air [mg/m³] from its parts by volume in a million.

    Parameters
    ----------
    ppm
        Parts by volume in a million parts of air.
    formula
        Of the gas.

    Raises
    ------
    QuantityFault
        ``unknown-element`` if a relative atomic mass is not known.

    Notes
    -----
    As an ideal gas at 25 °C and 101.325 kPa, which is how limits are converted.
    """
    return ppm * _molar_mass_g(formula) / _MOLAR_VOLUME_DM3


def ppm_from_mg_m3(mg_m3: float, formula: str) -> float:
    """The parts by volume in a million of a gas in air from its mass in a cubic metre [mg/m³].

    Parameters
    ----------
    mg_m3
        Mass of the gas in a cubic metre of air [mg/m³].
    formula
        Of the gas.

    Raises
    ------
    QuantityFault
        ``unknown-element`` if a relative atomic mass is not known.

    Notes
    -----
    As an ideal gas at 25 °C and 101.325 kPa, which is how limits are converted.
    """
    return mg_m3 * _MOLAR_VOLUME_DM3 / _molar_mass_g(formula)


@cache
def _by_formula() -> dict[str, tuple[Limit, ...]]:
    found: dict[str, list[Limit]] = {}
    for limit in _read(read_table("exposure.toml")["limit"]):
        found.setdefault(limit.formula, []).append(limit)
    return {formula: tuple(those) for formula, those in found.items()}


def _read(rows: Iterable[dict[str, Any]]) -> Iterable[Limit]:
    for row in rows:
        formula, value, by_volume = row["formula"], float(row["value"]), row["unit"] == "ppm"
        yield Limit(
            formula=formula,
            jurisdiction=row["jurisdiction"],
            kind=row["kind"],
            printed=f"{row['value']} {row['unit']}",
            ppm=value if by_volume else None,
            mg_m3=mg_m3_from_ppm(value, formula) if by_volume else value,
            source=row["source"],
            verified=row["verified"],
        )


@cache
def _molar_mass_g(formula: str) -> float:
    """The molar mass of a gas whose formula the tables hold [g/mol]."""
    return sum(count * _mass(symbol) for symbol, count in species(formula).atoms)


def _mass(symbol: str) -> float:
    mass = ELEMENTS[symbol].relative_atomic_mass
    if mass is None:
        raise QuantityFault(
            "unknown-element",
            f"The tables hold no relative atomic mass of {ELEMENTS[symbol].name} ({symbol}).",
        )
    return mass
