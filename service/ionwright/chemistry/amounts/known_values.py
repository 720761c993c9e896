"""What is known in a task: what it states, what the course prints, and what the tables add."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.amounts.limits import check_given
from ionwright.chemistry.amounts.naming import name_of
from ionwright.chemistry.amounts.quantity import CONSTANTS_OF_NATURE, QUANTITIES, Key
from ionwright.chemistry.amounts.stated_values import figures_of, number_of, slack_of, value_in
from ionwright.chemistry.amounts.substance_meant import ion_carried
from ionwright.chemistry.amounts.totals import parts_of_totals
from ionwright.chemistry.amounts.unit_amount import unit_amounts
from ionwright.chemistry.amounts.unknown_metal import substance, substance_text
from ionwright.chemistry.amounts.values import EXACT, Known
from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.densities import density_g_cm3
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.written_quantity import expect, read_written

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from ionwright.chemistry.amounts.task import Constants, Given, Task
    from ionwright.chemistry.written_quantity import Written

__all__ = ["ByMass", "KnownValues", "checked_value", "keys_at_hand", "known_values", "molar_mass"]

_STANDARD_ATMOSPHERE: Final = "101.325 kPa"
_BY_MASS: Final = frozenset(
    {
        "mass",
        "specific_energy",
        "solid_volume",
        "thickness",
        "growth_rate",
        "density",
        "mass_before",
        "mass_after",
    }
)
_BY_DENSITY: Final = frozenset({"solid_volume", "thickness", "growth_rate"})
_OF_SOME_GAS: Final = frozenset({"temperature", "pressure", "gas_constant"})
"""Asked for, these are found from the volume of whatever gas there is."""
_OF_GAS_LAW: Final = frozenset(
    {"temperature", "pressure", "gas_constant", "water_vapour_pressure", "dry_pressure"}
)


class ByMass(NamedTuple):
    """A concentration that was given by mass.

    Parameters
    ----------
    weighed
        Formula of what the mass counts.
    molar_mass
        Of it [g/mol].
    number
        How many of the substance in question one formula of it holds.
    parts
        What its molar mass is made of: symbol, number of atoms, figure as printed.
    """

    written: Written
    weighed: str
    molar_mass: float
    number: int
    parts: tuple[tuple[str, int, str], ...]


def molar_mass(constants: Constants, of: str) -> float | None:
    """Molar mass by the figures of a course [g/mol]; None if they lack an element."""
    total = 0.0
    for symbol, number in substance(of).atoms:
        printed = constants.relative_atomic_mass(symbol)
        if printed is None:
            return None
        total += number * printed.value
    return total


@dataclass(frozen=True, slots=True, kw_only=True)
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
        What holds for want of another figure: the quantity concerned, and a sentence.
    molar_masses
        How each molar mass is made up of relative atomic masses: symbol, number of atoms, figure as printed.
    without_mass
        Molar masses that are not known, each with an element whose relative atomic mass the tables lack.
    chosen
        How much a task is reckoned for, where it leaves that open and the answer does not depend on it.
    by_mass
        Concentrations that were given by mass.
    """

    values: tuple[Known, ...]
    mentioned: tuple[Key, ...]
    written: Mapping[Key, Written]
    assumptions: tuple[tuple[Key, str], ...]
    molar_masses: Mapping[Key, tuple[tuple[str, int, str], ...]]
    without_mass: Mapping[Key, str]
    chosen: Mapping[Key, Written]
    by_mass: Mapping[Key, ByMass]


def known_values(task: Task, given: Mapping[Key, Given], wanted: Sequence[Key]) -> KnownValues:
    """Everything that is known at the start.

    Raises
    ------
    QuantityFault
        If a given value has the wrong dimension or cannot be, or the tables lack a figure that is needed.
    """
    gathered = _Gathered(task, _mentioned(task, list(given), wanted), frozenset(wanted))
    for key, one in given.items():
        gathered.add_given(key, one)
    _check_currencies(given)
    gathered.add_what_is_not_stated()
    return KnownValues(
        values=tuple(gathered.values.values()),
        mentioned=gathered.mentioned,
        written=gathered.written,
        assumptions=tuple(dict.fromkeys(gathered.assumptions)),
        molar_masses=gathered.molar_masses,
        without_mass=gathered.without_mass,
        chosen=gathered.chosen,
        by_mass=gathered.by_mass,
    )


def _check_currencies(given: Mapping[Key, Given]) -> None:
    """Make sure that all money of a task is of one currency: the tables know no rates of exchange."""
    found = {one.value.unit.currency: one for one in given.values() if one.value.unit.currency}
    if len(found) > 1:
        first, second = list(found)[:2]
        detail = f"The task counts in {first} and in {second}; there are no rates of exchange here."
        raise QuantityFault(
            "wrong-dimension", detail, where=found[second].where, remedy="Use one currency throughout."
        )


def _mentioned(task: Task, given: Sequence[Key], wanted: Sequence[Key]) -> tuple[Key, ...]:
    """All that a task is about, the parts of totals and the volumes of its gases included."""
    named = [*given, *wanted]
    kinds = {key.kind for key in named}
    named += parts_of_totals(task.circuit, kinds)
    if _OF_SOME_GAS.intersection(key.kind for key in wanted) and "volume" not in kinds:
        named += parts_of_totals(task.circuit, {"total_volume"})
    named += [Key("amount_at_start", task.circuit.process(id_).bath, of) for id_, of in task.circuit.used_up]
    return tuple(dict.fromkeys(named))


def keys_at_hand(task: Task, given: Sequence[Key], wanted: Sequence[Key]) -> tuple[set[Key], tuple[Key, ...]]:
    """What would be known if a task stated these quantities, whatever their values; and all that it then mentions."""
    gathered = _Gathered(task, _mentioned(task, given, wanted), frozenset(wanted))
    gathered.values = {key: Known(key, 1.0) for key in given}
    gathered.add_what_is_not_stated()
    return set(gathered.values), gathered.mentioned


def checked_value(key: Key, given: Given) -> float:
    """What a given quantity is in the unit of the solver.

    Raises
    ------
    QuantityFault
        If it has the wrong dimension or cannot be.
    """
    kind = QUANTITIES[key.kind]
    is_bare_money = kind.dimension == "currency" and given.value.unit.dimension == "fraction"
    try:
        if not is_bare_money:
            expect(given.value, kind.dimension, kind.noun)
    except QuantityFault as fault:
        raise fault.within(given.where) from None
    value = value_in(key.kind, given.value)
    check_given(key, value, given)
    return value


class _Gathered:
    """Known values while they are gathered."""

    def __init__(self, task: Task, mentioned: tuple[Key, ...], wanted: Collection[Key]) -> None:
        self.task = task
        self.mentioned = mentioned
        self.wanted = wanted
        self.kinds = {key.kind for key in mentioned}
        self.values: dict[Key, Known] = {}
        self.written: dict[Key, Written] = {}
        self.assumptions: list[tuple[Key, str]] = []
        self.by_mass: dict[Key, ByMass] = {}
        self.molar_masses: dict[Key, tuple[tuple[str, int, str], ...]] = {}
        self.without_mass: dict[Key, str] = {}
        self.chosen: dict[Key, Written] = {}

    # -------------------------------------------------------------- what the task states

    def add_given(self, key: Key, one: Given) -> None:
        kind = QUANTITIES[key.kind]
        if kind.dimension == "concentration" and one.value.unit.dimension == "density":
            self._add_by_mass(key, one)
            return
        value = checked_value(key, one)
        self.written[key] = one.value
        number = number_of(value, one.value, kind.unit, name_of(key))
        self.values[key] = Known(key, number, figures_of(key, value, one.value), slack_of(one.value))

    def _add_by_mass(self, key: Key, one: Given) -> None:
        """A concentration that counts the mass of what is dissolved, such as 14.7 g/dm3 of Ni²⁺."""
        weighed = one.weighed or key.of
        mass = molar_mass(self.task.constants, weighed)
        if mass is None:
            raise self._no_mass(weighed, one.where)
        carried = ion_carried(weighed, {substance(key.of)}) if one.weighed else None
        number = carried[1] if carried else 1
        g_dm3 = one.value.value * one.value.unit.si  # kg/m3, which is g/dm3
        check_given(key, g_dm3 / mass * number, one)
        value = number_of(g_dm3, one.value, "g/dm3", name_of(key)) / mass * number
        self.values[key] = Known(key, value, one.value.significant_figures, slack_of(one.value))
        self.by_mass[key] = ByMass(one.value, weighed, mass, number, self._parts(weighed))
        if not one.weighed:
            self.assume(key, f"The concentration counts the mass of {substance_text(key.of)} alone.")

    def add_what_is_not_stated(self) -> None:
        """Add what the course prints, what the tables hold, and what holds for want of a figure."""
        self.add_constants()
        self.add_unit_amounts()
        self.add_figures_of_substances()
        self.add_conditions()

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
            makes_it = {"avogadro_constant", "elementary_charge"} <= self.kinds
            return makes_it or bool(asked & {"avogadro_constant", "elementary_charge"})
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
        self.values[key] = Known(key, value_in(key.kind, written), EXACT, slack_of(written), is_given=False)

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
        slack = 0.0
        for symbol, number in substance(key.of).atoms:
            printed = self.task.constants.relative_atomic_mass(symbol)
            if printed is None:
                self.without_mass[key] = symbol
                return
            parts.append((symbol, number, printed.text))
            slack += number * printed.value * slack_of(printed)
        total = molar_mass(self.task.constants, key.of) or 0.0
        self.molar_masses[key] = tuple(parts)
        self.values[key] = Known(key, total, EXACT, slack / total, is_given=False)

    def _parts(self, of: str) -> tuple[tuple[str, int, str], ...]:
        """Symbols, numbers of atoms and figures of a substance, as far as the course has them."""
        found = (
            (symbol, n, self.task.constants.relative_atomic_mass(symbol)) for symbol, n in substance(of).atoms
        )
        return tuple((symbol, n, printed.text) for symbol, n, printed in found if printed is not None)

    def _no_mass(self, of: str, where: str) -> QuantityFault:
        detail = f"The tables hold no relative atomic mass for all of {substance_text(of)}."
        remedy = (
            'Give it under "relative_atomic_masses" of the conventions, or give the concentration in mol/dm3.'
        )
        return QuantityFault("needs-more", detail, where=where, remedy=remedy)

    def _add_density(self, key: Key) -> None:
        found = density_g_cm3(key.of)
        if found is not None:
            self._add(key, read_written(found.printed, dimension="density"))
            name = substance_text(key.of)
            text = f"The density of {name} is that of the compact metal at {found.t_C:g} °C; a layer may hold pores."
            self.assume(key, text)

    # -------------------------------------------------------------- what holds for want of a figure

    def add_conditions(self) -> None:
        pressure = Key("pressure")
        if self._by_gas_law() and pressure not in self.values and pressure not in self.wanted:
            known = self.kinds & {"temperature", "dry_pressure"}
            if "volume" in self.kinds and known and Key("dry_pressure") not in self.values:
                self._add(pressure, read_written(_STANDARD_ATMOSPHERE, dimension="pressure"))
                self.assume(
                    pressure, "No pressure was given; that of the standard atmosphere is taken, 101.325 kPa."
                )
        for key in self.mentioned:
            start = Key("bath_concentration", key.process, key.of)
            if key.kind == "concentration" and start not in self.mentioned and self._is_formed(key):
                self.values[start] = Known(start, 0.0, EXACT, is_given=False)
                name = substance_text(key.of)
                self.assume(start, f"No {name} was in the solution at the start.")

    def add_unit_amounts(self) -> None:
        """Choose a unit of what the task leaves open and what the answer does not depend on."""
        for key, text in tuple(unit_amounts(self.mentioned)):
            written = read_written(text)
            self._add(key, written)
            self.mentioned = (*self.mentioned, key)
            self.chosen[key] = written

    def assume(self, key: Key, sentence: str) -> None:
        """Say what is assumed of a quantity, if an answer should rest on it."""
        self.assumptions.append((key, sentence))

    def _is_formed(self, key: Key) -> bool:
        return self.task.circuit.net_per_electron(key.process, key.of) > 0

    def _by_gas_law(self) -> bool:
        """Whether volumes follow from temperature and pressure rather than from a molar volume."""
        if self.task.circuit.is_over_water:
            return True
        stated = "molar_gas_volume" in self.task.constants.stated or "molar_gas_volume" in self.kinds
        return bool(self.kinds & _OF_GAS_LAW) and not stated
