"""What is known in a task: what it states, what the course prints, and what the tables add."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, log10
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.amounts.limits import check_given
from ionwright.chemistry.amounts.quantity import CONSTANTS_OF_NATURE, QUANTITIES, Key
from ionwright.chemistry.amounts.totals import parts_of_totals
from ionwright.chemistry.amounts.unknown_metal import substance, substance_text
from ionwright.chemistry.amounts.values import EXACT, Known
from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.densities import density_g_cm3
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.units import read_unit
from ionwright.chemistry.written_quantity import expect, read_written

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from ionwright.chemistry.amounts.task import Given, Task
    from ionwright.chemistry.written_quantity import Written

__all__ = ["KnownValues", "checked_value", "known_values", "value_in"]

_STANDARD_ATMOSPHERE: Final = "101.3 kPa"
_BY_MASS: Final = frozenset(
    {"mass", "specific_energy", "solid_volume", "thickness", "growth_rate", "density"}
)
_BY_DENSITY: Final = frozenset({"solid_volume", "thickness", "growth_rate"})
_OF_GAS_LAW: Final = frozenset(
    {"temperature", "pressure", "gas_constant", "water_vapour_pressure", "dry_pressure"}
)


@dataclass(frozen=True, slots=True)
class KnownValues:
    """What the solver starts from.

    Parameters
    ----------
    values
        Given quantities first.
    mentioned
        Every quantity that is given or asked for, or that a figure of the task stands for.
    written
        The text of every known value, by quantity.
    assumptions
        What holds for want of another figure, as sentences.
    molar_masses
        How each molar mass is made up of relative atomic masses: symbol, number of atoms, figure as printed.
    """

    values: tuple[Known, ...]
    mentioned: tuple[Key, ...]
    written: Mapping[Key, Written]
    assumptions: tuple[str, ...]
    molar_masses: Mapping[Key, tuple[tuple[str, int, str], ...]]


def known_values(task: Task, given: Mapping[Key, Given], wanted: Sequence[Key]) -> KnownValues:
    """Everything that is known at the start.

    Raises
    ------
    QuantityFault
        If a given value has the wrong dimension or cannot be, or the tables lack a figure that is needed.
    """
    named = [*given, *wanted]
    named += parts_of_totals(task.circuit, {key.kind for key in named})
    named += [Key("amount_at_start", task.circuit.process(id_).bath, of) for id_, of in task.circuit.used_up]
    gathered = _Gathered(task, tuple(dict.fromkeys(named)), frozenset(wanted))
    for key, one in given.items():
        gathered.add_given(key, one)
    gathered.add_constants()
    gathered.add_figures_of_substances()
    gathered.add_conditions()
    return KnownValues(
        tuple(gathered.values.values()),
        gathered.mentioned,
        gathered.written,
        tuple(dict.fromkeys(gathered.assumptions)),
        gathered.molar_masses,
    )


def value_in(kind: str, written: Written) -> float:
    """What a written quantity is in the unit of the solver."""
    own = read_unit(QUANTITIES[kind].unit)
    return (written.value + written.unit.offset) * written.unit.si / own.si


def checked_value(key: Key, given: Given) -> float:
    """What a given quantity is in the unit of the solver.

    Raises
    ------
    QuantityFault
        If it has the wrong dimension or cannot be.
    """
    kind = QUANTITIES[key.kind]
    try:
        expect(given.value, kind.dimension, kind.noun)
    except QuantityFault as fault:
        raise fault.within(given.where) from None
    value = value_in(key.kind, given.value)
    check_given(key, value, given)
    return value


def _figures(key: Key, value: float, written: Written) -> int:
    """Significant figures in the unit of the solver: 20 °C, good to one degree, is 293 K."""
    if key.kind == "ion_charge":
        return EXACT
    if not written.unit.offset or not written.value:
        return written.significant_figures
    return written.significant_figures + floor(log10(abs(value))) - floor(log10(abs(written.value)))


def _slack(written: Written) -> float:
    """Half a unit of the last written place, relative to the value [1]."""
    size = abs(written.value)
    if not size:
        return 0.0
    place = floor(log10(size)) - written.significant_figures + 1
    return float(0.5 * 10.0**place / size)


class _Gathered:
    """Known values while they are gathered."""

    def __init__(self, task: Task, mentioned: tuple[Key, ...], wanted: Collection[Key]) -> None:
        self.task = task
        self.mentioned = mentioned
        self.wanted = wanted
        self.kinds = {key.kind for key in mentioned}
        self.values: dict[Key, Known] = {}
        self.written: dict[Key, Written] = {}
        self.assumptions: list[str] = []
        self.molar_masses: dict[Key, tuple[tuple[str, int, str], ...]] = {}

    # -------------------------------------------------------------- what the task states

    def add_given(self, key: Key, one: Given) -> None:
        kind = QUANTITIES[key.kind]
        value = checked_value(key, one)
        self.written[key] = one.value
        number = _with_uncertainty(value, one.value, kind.unit)
        figures = _figures(key, value, one.value)
        self.values[key] = Known(key, number, figures, _slack(one.value))

    # -------------------------------------------------------------- what the course prints

    def add_constants(self) -> None:
        for name in CONSTANTS_OF_NATURE:
            key = Key(name)
            if key not in self.values and key not in self.wanted and not self._would_decide(name):
                self._add_constant(key)
        volume = Key("molar_gas_volume")
        if (
            "volume" in self.kinds
            and volume not in self.values
            and volume not in self.wanted
            and not self._by_gas_law()
        ):
            self._add_printed(volume)

    def _would_decide(self, name: str) -> bool:
        """Whether a constant must be left open, since it would settle the one that is to be found from data."""
        asked = {key.kind for key in self.wanted}
        if name == "faraday_constant":
            return bool(asked & {"avogadro_constant", "elementary_charge"})
        return name == "avogadro_constant" and "faraday_constant" in asked

    def _add_constant(self, key: Key) -> None:
        printed = self.task.constants.values.get(key.kind)
        if printed is not None:
            self._add_printed(key)
            return
        constant = CONSTANTS[key.kind]
        self._add(key, read_written(constant.printed, dimension=QUANTITIES[key.kind].dimension))

    def _add_printed(self, key: Key) -> None:
        printed = self.task.constants.values.get(key.kind)
        if printed is not None:
            self._add(key, printed)

    def _add(self, key: Key, written: Written) -> None:
        self.written[key] = written
        self.values[key] = Known(key, value_in(key.kind, written), EXACT, _slack(written), is_given=False)

    # -------------------------------------------------------------- what the tables say of substances

    def add_figures_of_substances(self) -> None:
        for process, of in dict.fromkeys((k.process, k.of) for k in self.mentioned if k.of):
            kinds = {k.kind for k in self.mentioned if (k.process, k.of) == (process, of)}
            if kinds & _BY_MASS and not kinds & {"molar_mass", "relative_atomic_mass"}:
                self._add_molar_mass(Key("molar_mass", process, of))
            if kinds & _BY_DENSITY and "density" not in kinds:
                self._add_density(Key("density", process, of))

    def _add_molar_mass(self, key: Key) -> None:
        parts: list[tuple[str, int, str]] = []
        total, slack = 0.0, 0.0
        for symbol, number in substance(key.of).atoms:
            printed = self.task.constants.relative_atomic_mass(symbol)
            if printed is None:
                return
            parts.append((symbol, number, printed.text))
            total += number * printed.value
            slack += number * printed.value * _slack(printed)
        self.molar_masses[key] = tuple(parts)
        self.values[key] = Known(key, total, EXACT, slack / total, is_given=False)

    def _add_density(self, key: Key) -> None:
        found = density_g_cm3(key.of)
        if found is not None:
            self._add(key, read_written(found.printed, dimension="density"))
            self.assumptions.append(
                f"The density of {substance_text(key.of)} is that of the compact metal at {found.t_C:g} °C;"
                " a plated layer may hold pores."
            )

    # -------------------------------------------------------------- what holds for want of a figure

    def add_conditions(self) -> None:
        pressure = Key("pressure")
        if self._by_gas_law() and pressure not in self.values and pressure not in self.wanted:
            known = self.kinds & {"temperature", "dry_pressure"}
            if "volume" in self.kinds and known and Key("dry_pressure") not in self.values:
                self._add(pressure, read_written(_STANDARD_ATMOSPHERE, dimension="pressure"))
                self.assumptions.append(
                    "No pressure was given: it is taken as that of the standard atmosphere, 101.3 kPa."
                )
        for key in self.mentioned:
            start = Key("bath_concentration", key.process, key.of)
            if key.kind == "concentration" and start not in self.mentioned and self._is_formed(key):
                self.values[start] = Known(start, 0.0, EXACT, is_given=False)
                name = substance_text(key.of)
                self.assumptions.append(f"No {name} was in the solution at the start.")

    def _is_formed(self, key: Key) -> bool:
        return self.task.circuit.net_per_electron(key.process, key.of) > 0

    def _by_gas_law(self) -> bool:
        """Whether volumes follow from temperature and pressure rather than from a molar volume."""
        if self.task.circuit.is_over_water:
            return True
        stated = "molar_gas_volume" in self.task.constants.stated or "molar_gas_volume" in self.kinds
        return bool(self.kinds & _OF_GAS_LAW) and not stated


def _with_uncertainty(value: float, written: Written, unit: str) -> Any:
    if written.uncertainty is None:
        return value
    import uncertainties  # noqa: PLC0415 - loaded only where an uncertainty was given

    return uncertainties.ufloat(value, written.uncertainty * written.unit.si / read_unit(unit).si)
