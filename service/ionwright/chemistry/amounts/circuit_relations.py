"""The relations between the quantities of a circuit, in the order in which a teacher would use them."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.bath_relations import bath_relations
from ionwright.chemistry.amounts.charge_taken import amount_relation, charge_parts, electrons_of
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.relations import ByTrial, Product, Relation, Sum, Tabulated
from ionwright.chemistry.amounts.totals import total_relations
from ionwright.chemistry.amounts.unknown_metal import substance
from ionwright.chemistry.amounts.wet_gas import wet_gas_temperature_K
from ionwright.chemistry.water_vapour import temperature_of_vapour_pressure, vapour_pressure_kPa

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from ionwright.chemistry.amounts.circuit import Circuit, Process

__all__ = ["circuit_relations"]

CHARGE: Final = Key("charge")
CURRENT: Final = Key("current")
TIME: Final = Key("time")
ELECTRONS: Final = Key("amount_of_electrons")
FARADAY: Final = Key("faraday_constant")
AVOGADRO: Final = Key("avogadro_constant")
PRESSURE: Final = Key("pressure")
TEMPERATURE: Final = Key("temperature")
ENERGY: Final = Key("energy")

_J_PER_KWH: Final = 3_600_000
_ZERO_CELSIUS_K: Final = 273.15
_BY_MASS: Final = frozenset(
    {"mass", "molar_mass", "relative_atomic_mass", "specific_energy", "solid_volume", "density", "thickness",
     "growth_rate", "mass_before", "mass_after"}
)  # fmt: skip
_OF_A_SOLID: Final = frozenset({"solid_volume", "density", "thickness", "growth_rate"})
_OF_AN_ELECTRODE: Final = frozenset({"mass_before", "mass_after"})
_OF_A_LAYER: Final = frozenset({"thickness", "growth_rate"})
_ELECTRICAL: Final = frozenset({"voltage", "energy", "cost", "energy_price", "power", "specific_energy"})


@lru_cache(maxsize=1024)
def circuit_relations(
    circuit: Circuit, mentioned: tuple[Key, ...], asked: frozenset[str] = frozenset()
) -> tuple[Relation, ...]:
    """The relations that bear on some quantities.

    Parameters
    ----------
    mentioned
        Every quantity that is known or asked for, constants that nobody mentioned apart.
    asked
        The kinds of those that are asked for.
    """
    kinds = {key.kind for key in mentioned}
    found = [*_of_circuit(kinds, asked)]
    if circuit.is_over_water:
        found += _of_vapour(kinds, asked)
    # a share that is left over comes first: it keeps more figures than a difference of charges
    found += [_of_shares(sharing) for sharing in _shared_electrodes(circuit)]
    for process in circuit.processes:
        found += _of_process(circuit, process, mentioned, asked)
    found += _of_shared_charges(circuit)
    found += total_relations(circuit, kinds)
    found += bath_relations(circuit, mentioned)
    return tuple(dict.fromkeys(found))


def _of_circuit(kinds: set[str], asked: frozenset[str]) -> Iterator[Relation]:
    yield Product("charge", CHARGE, (CURRENT, TIME))
    yield Product("faraday", CHARGE, (ELECTRONS, FARADAY))
    number, elementary = Key("number_of_electrons"), Key("elementary_charge")
    if "elementary_charge" in kinds or ("number_of_electrons" in kinds and "faraday_constant" in kinds):
        yield Product("electron charge", CHARGE, (number, elementary))
    if "number_of_electrons" in kinds:
        yield Product("electron count", number, (ELECTRONS, AVOGADRO))
    makes_faraday = {"avogadro_constant", "elementary_charge"} <= kinds and "faraday_constant" not in kinds
    if makes_faraday or asked & {"faraday_constant", "avogadro_constant", "elementary_charge"}:
        yield Product("constants", FARADAY, (AVOGADRO, elementary))
    if kinds & _ELECTRICAL:
        voltage, power = Key("voltage"), Key("power")
        yield Product("energy", ENERGY, (voltage, CHARGE))
        yield Product("power", power, (voltage, CURRENT))
        yield Product("energy by power", ENERGY, (power, TIME))
    if kinds & {"cost", "energy_price"}:
        price, in_kwh = Key("energy_price"), ((ENERGY, "kWh"),)
        yield Product("cost", Key("cost"), (ENERGY, price), number=Fraction(1, _J_PER_KWH), shown_in=in_kwh)
    if "molar_gas_volume" in kinds:
        law = (Key("gas_constant"), TEMPERATURE)
        yield Product("molar volume of an ideal gas", Key("molar_gas_volume"), law, (PRESSURE,))


def _of_vapour(kinds: set[str], asked: frozenset[str]) -> Iterator[Relation]:
    """Of a gas over water; the table is left out where the task gives the vapour pressure, or data for it."""
    dry, vapour = Key("dry_pressure"), Key("water_vapour_pressure")
    yield Sum("dry gas", PRESSURE, (dry, vapour))
    is_for_temperature = TEMPERATURE.kind in asked and PRESSURE.kind not in kinds
    is_given = vapour.kind in kinds and vapour.kind not in asked and not is_for_temperature
    is_from_data = vapour.kind in asked and {"volume", "pressure"} <= kinds - asked
    if not is_given and not is_from_data:
        yield Tabulated("water vapour", vapour, TEMPERATURE, _vapour_pressure, _temperature)


def _vapour_pressure(temperature_K: float) -> float:
    return vapour_pressure_kPa(temperature_K - _ZERO_CELSIUS_K)


def _temperature(pressure_kPa: float) -> float:
    return temperature_of_vapour_pressure(pressure_kPa) + _ZERO_CELSIUS_K


def _of_process(
    circuit: Circuit, process: Process, mentioned: Collection[Key], asked: frozenset[str]
) -> Iterator[Relation]:
    parts = charge_parts(circuit, process, mentioned)
    if parts:
        useful = Key("useful_charge", process.id)
        yield Product("useful charge", useful, (CHARGE, *parts))
        yield Product("faraday", useful, (Key("electrons_used", process.id), FARADAY))
    kinds_of: dict[str, set[str]] = {}
    for key in mentioned:
        if key.process == process.id and key.of and QUANTITIES[key.kind].scope == "species":
            kinds_of.setdefault(key.of, set()).add(key.kind)
    named = {key.kind for key in mentioned if key.process == process.id}
    if named & {"area", "current_density"}:
        area = Key("area", process.id)
        yield Product("current density", Key("current_density", process.id), (CURRENT,), (area,))
    electrons = electrons_of(circuit, process, mentioned)
    for of, kinds in kinds_of.items():
        yield amount_relation(process, of, electrons)
        if "ion_charge" in named and not process.has_unknown_charge and process.state(of) in {"s", "l"}:
            charge = Key("ion_charge", process.id)
            yield Product("ion charge", electrons, (Key("amount", process.id, of), charge))
        yield from _of_species(process, of, kinds)
        if "volume" in kinds:
            amount, volume = Key("amount", process.id, of), Key("volume", process.id, of)
            yield from _of_gas(amount, volume, circuit, asks_temperature=TEMPERATURE.kind in asked)


def _of_species(process: Process, of: str, kinds: set[str]) -> Iterator[Relation]:
    def of_it(kind: str) -> Key:
        return Key(kind, process.id, of)

    amount, mass = of_it("amount"), of_it("mass")
    if kinds & _BY_MASS:
        yield Product("molar mass", mass, (amount, of_it("molar_mass")))
    if "number_of_particles" in kinds:
        yield Product("particles", of_it("number_of_particles"), (amount, AVOGADRO))
    if "relative_atomic_mass" in kinds:
        atoms = Fraction(sum(number for _, number in substance(of).atoms))
        relative = of_it("relative_atomic_mass")
        yield Product("relative atomic mass", of_it("molar_mass"), (relative,), number=atoms)
    if "specific_energy" in kinds:
        yield Product("specific energy", of_it("specific_energy"), (ENERGY,), (mass,))
    yield from _of_solid(process, of, kinds)


def _of_solid(process: Process, of: str, kinds: set[str]) -> Iterator[Relation]:
    """Of a deposit, or of an electrode that dissolves."""

    def of_it(kind: str) -> Key:
        return Key(kind, process.id, of)

    mass, solid, layer = of_it("mass"), of_it("solid_volume"), of_it("thickness")
    if kinds & _OF_AN_ELECTRODE:
        before, after = of_it("mass_before"), of_it("mass_after")
        if process.per_electron(of) > 0:
            yield Sum("mass gained", after, (before, mass))
        else:
            yield Sum("mass lost", after, (before,), (mass,))
    if kinds & _OF_A_SOLID:
        yield Product("density", mass, (of_it("density"), solid))
    if kinds & _OF_A_LAYER:
        yield Product("layer", solid, (layer, Key("area", process.id)))
    if "growth_rate" in kinds:
        yield Product("growth", layer, (of_it("growth_rate"), TIME))


def _of_gas(amount: Key, volume: Key, circuit: Circuit, *, asks_temperature: bool) -> Iterator[Relation]:
    if not circuit.is_over_water:
        yield Product("molar gas volume", volume, (amount, Key("molar_gas_volume")))
    dry = Key("dry_pressure") if circuit.is_over_water else PRESSURE
    yield Product("gas law", volume, (amount, Key("gas_constant"), TEMPERATURE), (dry,))
    if circuit.is_over_water and asks_temperature:
        arguments = (PRESSURE, volume, amount, Key("gas_constant"))
        yield ByTrial("wet gas", TEMPERATURE, arguments, wet_gas_temperature_K)


def _shared_electrodes(circuit: Circuit) -> Iterator[list[Process]]:
    """The processes at each electrode that has several."""
    for electrode in dict.fromkeys(process.electrode for process in circuit.processes):
        sharing = [p for p in circuit.processes if p.electrode == electrode]
        if len(sharing) > 1:
            yield sharing


def _of_shares(sharing: list[Process]) -> Sum:
    *others, last = (Key("share", p.id) for p in sharing)
    return Sum("shares", last, (), tuple(others), constant=1.0)


def _of_shared_charges(circuit: Circuit) -> Iterator[Relation]:
    for sharing in _shared_electrodes(circuit):
        yield Sum("shared charge", CHARGE, tuple(Key("useful_charge", p.id) for p in sharing))
