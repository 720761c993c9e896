"""The constants that a course prints, as texts, and its rounding of relative atomic masses."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Decimal
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.element import ELEMENTS

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["DIMENSIONS", "PrintedConstants"]

DIMENSIONS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "faraday_constant": "molar charge",
        "molar_gas_volume": "molar volume",
        "avogadro_constant": "per amount",
        "elementary_charge": "charge",
        "gas_constant": "gas constant",
    }
)
"""The dimension of each printed constant, by its name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedConstants:
    """The constants as a course prints them; an empty text stands for one that it does not print.

    Parameters
    ----------
    faraday_constant
        Such as ``"96500 C/mol"``.
    molar_gas_volume
        Such as ``"24.0 dm3/mol"``.
    gas_conditions
        For which temperature and pressure the molar gas volume stands, in words.
    other_molar_gas_volumes
        Further ones that it prints, by the temperature and pressure for which they stand, in words.
    avogadro_constant
        Such as ``"6.02e23 /mol"``.
    elementary_charge
        Such as ``"1.60e-19 C"``.
    gas_constant
        Such as ``"8.31 J/(mol K)"``.
    relative_atomic_masses
        Figures that the course prints for single elements, such as ``{"Cl": "35.5"}``.
    relative_atomic_mass_decimals
        To how many decimals it prints all others; None for as many as the tables hold.
    """

    faraday_constant: str = ""
    molar_gas_volume: str = ""
    gas_conditions: str = ""
    other_molar_gas_volumes: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    avogadro_constant: str = ""
    elementary_charge: str = ""
    gas_constant: str = ""
    relative_atomic_masses: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    relative_atomic_mass_decimals: int | None = None

    def relative_atomic_mass(self, symbol: str) -> str | None:
        """The relative atomic mass with which the course reckons, as it prints it.

        Parameters
        ----------
        symbol
            Of an element.

        Returns
        -------
        str | None
            The figure of its own for this element, else that of the tables rounded half up to its decimals; None if
            neither is known.
        """
        own = self.relative_atomic_masses.get(symbol)
        if own is not None:
            return own
        element = ELEMENTS.get(symbol)
        if element is None or element.relative_atomic_mass is None:
            return None
        text = repr(element.relative_atomic_mass)
        decimals = self.relative_atomic_mass_decimals
        if decimals is None or decimals >= len(text.partition(".")[2]):
            return text
        return str(Decimal(text).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP))

    def described(self) -> dict[str, Any]:
        """What the course prints, as plain data; what it does not print is absent."""
        texts = {name: getattr(self, name) for name in _TEXTS}
        told: dict[str, Any] = {name: text for name, text in texts.items() if text}
        if self.other_molar_gas_volumes:
            told["other_molar_gas_volumes"] = dict(self.other_molar_gas_volumes)
        if self.relative_atomic_mass_decimals is not None:
            told["relative_atomic_mass_decimals"] = self.relative_atomic_mass_decimals
        if self.relative_atomic_masses:
            told["relative_atomic_masses"] = dict(self.relative_atomic_masses)
        return told


_TEXTS: Final = (
    "faraday_constant",
    "molar_gas_volume",
    "gas_conditions",
    "avogadro_constant",
    "elementary_charge",
    "gas_constant",
)
