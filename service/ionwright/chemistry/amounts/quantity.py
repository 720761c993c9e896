"""The quantities of an electrolysis: what each is called, what it belongs to, and in which unit it is counted."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["CONSTANTS_OF_NATURE", "QUANTITIES", "TOLD", "Key", "QuantityKind", "Scope"]

Scope = Literal["circuit", "process", "bath", "species"]
"""What a quantity belongs to: the circuit, one process, what is dissolved in one bath, or a species in one process."""


class Key(NamedTuple):
    """One quantity of one thing, such as the mass of nickel in the plating cell.

    Parameters
    ----------
    kind
        Name of the quantity, one of `QUANTITIES`.
    process
        Id of the process; empty for a quantity of the circuit.
    of
        Canonical ASCII of the species; empty for quantities that belong to no species.
    """

    kind: str
    process: str = ""
    of: str = ""


@dataclass(frozen=True, slots=True)
class QuantityKind:
    """One sort of quantity.

    Parameters
    ----------
    name
        Name in the API, in TOML and in code.
    phrase
        What it is called in a sentence, with ``{}`` where "of" and the substance go, if not at the end.
    dimension
        Name of its dimension, as `ionwright.chemistry.units.Unit` has it.
    unit
        Unit in which it is counted inside the solver. These units are coherent: no factor stands in a relation.
    answer_unit
        Unit of an answer where none is asked for.
    scope
        What it belongs to.
    low, high
        Smallest and largest value that is not absurd [unit].
    may_be_zero
        Whether zero is a possible value.
    """

    name: str
    phrase: str
    dimension: str
    unit: str
    answer_unit: str
    scope: Scope
    low: float
    high: float
    may_be_zero: bool = False

    @property
    def noun(self) -> str:
        """What it is called where no substance is named."""
        return self.phrase.replace("{}", "")

    def noun_of(self, substance: str) -> str:
        """What it is called with a substance: "concentration of Cu²⁺ at the start"."""
        head, place, tail = self.phrase.partition("{}")
        return f"{head} of {substance}{tail}" if place else f"{self.phrase} of {substance}"


def _kind(  # noqa: PLR0913 - one row of the table below
    name: str, dimension: str, unit: str, scope: Scope, span: tuple[float, float], *,
    noun: str = "", answer_unit: str = "", may_be_zero: bool = False,
) -> QuantityKind:  # fmt: skip
    noun = noun or name.replace("_", " ")
    return QuantityKind(name, noun, dimension, unit, answer_unit or unit, scope, *span, may_be_zero)


# The spans are far wider than any bench or works: what lies outside is a slip of the pen or of the unit.
_KINDS: Final = (
    _kind("charge", "charge", "C", "circuit", (1e-9, 1e15)),
    _kind("current", "current", "A", "circuit", (1e-9, 1e7)),
    _kind("time", "time", "s", "circuit", (1e-6, 1e10)),
    _kind("amount_of_electrons", "amount", "mol", "circuit", (1e-15, 1e10)),
    _kind("number_of_electrons", "fraction", "1", "circuit", (1, 1e35)),
    _kind("voltage", "voltage", "V", "circuit", (1e-4, 1e5)),
    _kind("power", "power", "W", "circuit", (1e-12, 1e12)),
    _kind("energy", "energy", "J", "circuit", (1e-9, 1e20)),
    _kind("energy_price", "price of energy", "1/kWh", "circuit", (1e-6, 1e4), noun="price of energy"),
    _kind("cost", "currency", "1", "circuit", (1e-15, 1e15)),
    _kind("temperature", "temperature", "K", "circuit", (200.0, 2500.0)),
    _kind("pressure", "pressure", "kPa", "circuit", (0.1, 1e4)),
    _kind(
        "water_vapour_pressure", "pressure", "kPa", "circuit", (1e-3, 1e3), noun="vapour pressure of water",
        may_be_zero=True,
    ),
    _kind("dry_pressure", "pressure", "kPa", "circuit", (1e-3, 1e4), noun="pressure of the dry gas"),
    _kind("faraday_constant", "molar charge", "C/mol", "circuit", (1e4, 1e6), noun="Faraday constant"),
    _kind("avogadro_constant", "per amount", "1/mol", "circuit", (1e22, 1e25), noun="Avogadro constant"),
    _kind("elementary_charge", "charge", "C", "circuit", (1e-20, 1e-18), noun="charge of one electron"),
    _kind("gas_constant", "gas constant", "J/(mol K)", "circuit", (1.0, 100.0)),
    _kind("molar_gas_volume", "molar volume", "dm3/mol", "circuit", (1.0, 1e3), noun="molar gas volume"),
    _kind("efficiency", "fraction", "1", "process", (1e-6, 1.0), noun="current efficiency", answer_unit="%"),
    _kind("share", "fraction", "1", "process", (1e-9, 1.0), noun="share of the current", answer_unit="%"),
    _kind("useful_charge", "charge", "C", "process", (1e-9, 1e15)),
    _kind("electrons_used", "amount", "mol", "process", (1e-15, 1e10), noun="amount of electrons used"),
    _kind("area", "area", "cm2", "process", (1e-6, 1e9), noun="area of the electrode"),
    _kind("current_density", "current density", "A/cm2", "process", (1e-9, 1e3), answer_unit="mA/cm2"),
    _kind("ion_charge", "fraction", "1", "process", (1.0, 8.0), noun="number of charges on the ion"),
    _kind("amount", "amount", "mol", "species", (1e-15, 1e10)),
    _kind("number_of_particles", "fraction", "1", "species", (1, 1e35)),
    _kind("mass", "mass", "g", "species", (1e-12, 1e12)),
    _kind("mass_before", "mass", "g", "species", (1e-12, 1e12), noun="mass{} before the run"),
    _kind("mass_after", "mass", "g", "species", (0.0, 1e12), noun="mass{} after the run", may_be_zero=True),
    _kind("molar_mass", "molar mass", "g/mol", "species", (0.5, 1e5)),
    _kind("relative_atomic_mass", "fraction", "1", "species", (0.5, 400.0)),
    _kind("volume", "volume", "dm3", "species", (1e-12, 1e12)),
    _kind("solid_volume", "volume", "cm3", "species", (1e-12, 1e12), noun="volume"),
    _kind("density", "density", "g/cm3", "species", (1e-5, 30.0)),
    _kind("thickness", "length", "cm", "species", (1e-9, 1e3), answer_unit="um"),
    _kind("growth_rate", "speed", "cm/s", "species", (1e-14, 1.0), answer_unit="um/min", noun="rate of growth"),
    _kind("bath_volume", "volume", "dm3", "bath", (1e-6, 1e9), noun="volume of the bath"),
    _kind("bath_concentration", "concentration", "mol/dm3", "bath", (1e-9, 40.0), noun="concentration{} at the start"),
    _kind("concentration_change", "concentration", "mol/dm3", "bath", (0.0, 40.0), noun="change of concentration",
          may_be_zero=True),
    _kind("concentration", "concentration", "mol/dm3", "bath", (0.0, 80.0), noun="concentration{} at the end",
          may_be_zero=True),
    _kind("amount_at_start", "amount", "mol", "bath", (1e-15, 1e10), noun="amount{} at the start"),
    _kind("amount_left", "amount", "mol", "bath", (0.0, 1e10), noun="amount{} left", may_be_zero=True),
    _kind("exhaustion_charge", "charge", "C", "bath", (1e-9, 1e15), noun="charge until none{} is left"),
    _kind("exhaustion_time", "time", "s", "bath", (1e-6, 1e12), noun="time until none{} is left"),
    _kind("charge_left", "charge", "C", "bath", (0.0, 1e15), noun="charge still to pass until none{} is left",
          may_be_zero=True),
    _kind("time_left", "time", "s", "bath", (0.0, 1e12), noun="time still to go until none{} is left",
          may_be_zero=True),
    _kind("amount_used", "amount", "mol", "bath", (1e-15, 1e10), noun="net amount{} used up or formed"),
    _kind("electrons_until_none", "amount", "mol", "bath", (1e-15, 1e10),
          noun="amount of electrons until none{} is left"),
    _kind("useful_charge_until_none", "charge", "C", "bath", (1e-9, 1e15),
          noun="useful charge until none{} is left"),
    _kind("total_mass", "mass", "g", "circuit", (1e-12, 1e12), noun="total mass of the deposit"),
    _kind("total_volume", "volume", "dm3", "circuit", (1e-12, 1e12), noun="total volume of gas"),
    _kind("specific_energy", "specific energy", "J/g", "species", (1e-6, 1e9), noun="energy for each mass",
          answer_unit="kWh/kg"),
)  # fmt: skip

QUANTITIES: Final[Mapping[str, QuantityKind]] = MappingProxyType({kind.name: kind for kind in _KINDS})
"""Every sort of quantity by its name."""

_INNER: Final = frozenset(
    {"solid_volume", "useful_charge", "electrons_used", "dry_pressure", "amount_used", "electrons_until_none",
     "useful_charge_until_none"}
)  # fmt: skip

TOLD: Final = tuple(name for name in QUANTITIES if name not in _INNER)
"""The quantities that a task may state or ask for; the others are steps on the way."""

CONSTANTS_OF_NATURE: Final = ("faraday_constant", "avogadro_constant", "elementary_charge", "gas_constant")
"""Quantities that a course prints; they count as known unless they are asked for."""
