"""Laws of tasks about amounts: there and back, in any unit, in proportion, and with a working that can be checked."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from math import floor, log10
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ionwright.chemistry.amounts import QUANTITIES, TOLD, Key
from ionwright.chemistry.amounts.circuit import Process
from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.couple import couples
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.equation import Equation
from ionwright.chemistry.medium import with_states
from ionwright.chemistry.units import read_unit
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities import (
    AskedQuantity,
    ProcessDescription,
    Solved,
    StatedQuantity,
    TaskConventions,
    TaskDescription,
    quantities_document,
    solve_task,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from ionwright.curricula import Curriculum

REGISTRY = load_curricula()
A_LEVEL = REGISTRY["a-level"]
CURRICULA = ("gcse", "igcse", "a-level")


def _both_ways(half: Equation) -> tuple[Equation, Equation]:
    return half, Equation(half.right, half.left)


HALVES = tuple(
    with_states(half)
    for couple in couples().values()
    if couple.is_reduction_listed
    for half in _both_ways(couple.reduction)
)
TEXTS = {half.ascii: half for half in HALVES}
HALF = st.sampled_from(sorted(TEXTS))
FACTOR = st.floats(min_value=0.01, max_value=100, allow_nan=False)

OF_A_SPECIES = ("amount", "mass", "number_of_particles", "volume", "thickness", "growth_rate")
LIKE_UNITS = {
    "current": ("A", "mA", "uA", "kA"),
    "time": ("s", "min", "h", "ms", "d"),
    "charge": ("C", "A h", "mAh", "kC"),
    "efficiency": ("", "%"),
    "area": ("cm2", "dm2", "mm2", "m2"),
    "temperature": ("K", "degC"),
    "pressure": ("kPa", "Pa", "bar", "atm", "mmHg", "mbar"),
    "mass": ("g", "kg", "mg", "ug", "t"),
    "volume": ("dm3", "cm3", "m3", "L", "mL"),
    "bath_volume": ("dm3", "cm3", "m3", "mL"),
    "bath_concentration": ("mol/dm3", "mmol/dm3", "mol/m3", "M"),
    "voltage": ("V", "mV", "kV"),
    "molar_gas_volume": ("dm3/mol", "cm3/mol", "m3/mol"),
}


def asked(
    known: Mapping[str, str], find: Iterable[str], *processes: ProcessDescription, **rest: object
) -> Solved:
    return solve_task(
        TaskDescription(
            processes=processes,
            known=tuple(StatedQuantity(name, text, where=f"known/{name}") for name, text in known.items()),
            find=tuple(AskedQuantity(name, where=f"find/{name}") for name in find),
            conventions=TaskConventions(**rest),
        ),
        A_LEVEL,
    )


def solved_or_refused(task: TaskDescription, curriculum: Curriculum) -> Solved | None:
    """The solution, or None for a refusal that says what is wrong and where."""
    refusal = None
    try:
        return solve_task(task, curriculum)
    except IonwrightError as raised:
        refusal = raised
    assert refusal.code
    assert refusal.detail
    assert refusal.where, refusal
    return None


def half_process(text: str, id_: str = "process", electrode: str = "") -> ProcessDescription:
    return ProcessDescription(id=id_, half_equation=text, electrode=electrode, where="half_equation")


def values(solved: Solved) -> dict[Key, float]:
    return {answer.key: answer.value for answer in solved.answers}


@dataclass(frozen=True)
class Lot:
    """A half-equation with a substance in it, and knowns from which all about it follows."""

    half: str
    of: str
    state: str
    known: Mapping[str, str]

    @property
    def kinds(self) -> tuple[str, ...]:
        """What can be asked of the substance, its molar mass and density being tabulated or stated."""
        by_state = {"g": ("volume",), "s": ("thickness", "growth_rate", "volume")}.get(self.state, ())
        return ("amount", "mass", "number_of_particles", *by_state)

    def solved(self, known: Mapping[str, str], find: Iterable[str]) -> Solved:
        phrases = [f"{kind} of {self.of}" if kind in OF_A_SPECIES else kind for kind in find]
        renamed = {(f"{k} of {self.of}" if k in OF_A_SPECIES else k): text for k, text in known.items()}
        if self.state == "s":
            renamed[f"density of {self.of}"] = "7.5 g/cm3"
        return asked(renamed, phrases, half_process(self.half))


@st.composite
def lots(draw: st.DrawFn) -> Lot:
    half = draw(HALF)
    terms = [t for t in Process("x", TEXTS[half], "x", "x").terms if t.state != "l"]
    net = [t for t in terms if Process("x", TEXTS[half], "x", "x").per_electron(t.species.ascii)]
    term = draw(st.sampled_from(net)) if net else None
    assume(term is not None)
    known = {
        "current": f"{draw(st.floats(0.01, 50)):.6g} A",
        "time": f"{draw(st.floats(10, 1e5)):.6g} s",
        "efficiency": f"{draw(st.floats(0.2, 0.98)):.6g}",
        "area": f"{draw(st.floats(1, 500)):.6g} cm2",
    }
    return Lot(half, term.species.ascii, term.state, known)


# ------------------------------------------------------------------ there and back


@settings(max_examples=150, deadline=None)
@given(lots(), st.data())
def test_what_was_found_gives_back_what_is_left_out(lot: Lot, data: st.DataObject) -> None:
    find = (*lot.kinds, "charge", "amount_of_electrons", "current_density")
    solved = lot.solved(lot.known, find)
    left_out = data.draw(st.sampled_from(sorted(lot.known)))
    resting = [
        answer
        for answer in solved.answers
        if any(key.kind == left_out for key in solved.worked.values[answer.key].given)
        and (answer.key.kind, left_out) != ("growth_rate", "time")  # the same at any time
    ]
    assume(resting)
    fed = data.draw(st.sampled_from(resting))
    known = {name: text for name, text in lot.known.items() if name != left_out}
    name = "volume" if fed.key.kind == "solid_volume" else fed.key.kind
    back = lot.solved({**known, name: f"{fed.value!r} {fed.unit.text}"}, [left_out])
    (answer,) = back.answers
    number, unit = (*lot.known[left_out].split(), "")[:2]
    expected = float(number) * read_unit(unit or "1").si / answer.unit.si
    assert answer.value == pytest.approx(expected, rel=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.floats(1, 99), st.floats(0.1, 200), st.floats(0.2, 0.9), st.data())
def test_gases_lead_back_to_the_conditions_that_they_were_collected_at(
    t_C: float, charge_C: float, share: float, data: st.DataObject
) -> None:
    """Dry or over water, whichever of charge, temperature and pressure is left out."""
    collected = data.draw(st.sampled_from(["dry", "over water"]))
    known = {
        "charge": f"{charge_C!r} C",
        "temperature": f"{t_C!r} degC",
        "pressure": f"{90 + 90 * share!r} kPa",
    }
    process = half_process("2H+ + 2e- -> H2")
    (volume,) = asked(known, ["volume"], process, gas_collected=collected).answers
    left_out = data.draw(st.sampled_from(sorted(known)))
    number, unit = known.pop(left_out).split()
    (back,) = asked(
        {**known, "volume": f"{volume.value!r} dm3"},
        [f"{left_out} in {unit}"],
        process,
        gas_collected=collected,
    ).answers
    assert back.value == pytest.approx(float(number), rel=1e-9, abs=1e-7)


# ------------------------------------------------------------------ units and proportions


def in_other_unit(text: str, unit: str) -> str:
    number, own = (*text.split(), "")[:2]
    one, other = read_unit(own or "1"), read_unit(unit or "1")
    value = (float(number) * one.si + one.offset - other.offset) / other.si
    return f"{value!r} {unit}"


@settings(max_examples=120, deadline=None)
@given(lots(), st.data())
def test_units_of_the_knowns_never_change_the_answers(lot: Lot, data: st.DataObject) -> None:
    find = (*lot.kinds, "charge", "amount_of_electrons", "current_density")
    changed = {
        name: in_other_unit(text, data.draw(st.sampled_from(LIKE_UNITS[name])))
        for name, text in lot.known.items()
    }
    plain, other = values(lot.solved(lot.known, find)), values(lot.solved(changed, find))
    assert plain.keys() == other.keys()
    assert list(other.values()) == pytest.approx(list(plain.values()), rel=1e-9)


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_units_of_gases_and_baths_never_change_the_answers(data: st.DataObject) -> None:
    known = {
        "charge": "1500 C",
        "temperature": "295 K",
        "pressure": "100.5 kPa",
        "bath_volume": "0.5 dm3",
        "voltage": "3.2 V",
        "bath_concentration": "0.2 mol/dm3",
    }
    changed = {n: in_other_unit(text, data.draw(st.sampled_from(LIKE_UNITS[n]))) for n, text in known.items()}
    find = ("volume of Cl2", "energy", "concentration of Cl-", "exhaustion_charge of Cl-")
    process = half_process("2Cl- -> Cl2 + 2e-")
    plain, other = values(asked(known, find, process)), values(asked(changed, find, process))
    assert list(other.values()) == pytest.approx(list(plain.values()), rel=1e-9)


@settings(max_examples=80, deadline=None)
@given(lots(), st.sampled_from(["current", "time", "efficiency"]), st.floats(0.1, 1))
def test_products_grow_in_proportion_to_the_charge_that_makes_them(
    lot: Lot, name: str, factor: float
) -> None:
    number, unit = (*lot.known[name].split(), "")[:2]
    scaled = {**lot.known, name: f"{float(number) * factor!r} {unit}"}
    kinds = [kind for kind in lot.kinds if kind != "growth_rate"]
    one, other = values(lot.solved(lot.known, kinds)), values(lot.solved(scaled, kinds))
    assert list(other.values()) == pytest.approx([factor * value for value in one.values()], rel=1e-9)


@settings(max_examples=60, deadline=None)
@given(HALF, st.floats(1, 1e6))
def test_twice_the_charge_makes_and_uses_up_twice_as_much_of_everything(half: str, charge_C: float) -> None:
    of = [t.species.ascii for t in Process("x", TEXTS[half], "x", "x").terms]
    find = [f"amount of {species}" for species in dict.fromkeys(of)]
    process = half_process(half)
    one = values(asked({"charge": f"{charge_C!r} C"}, find, process))
    two = values(asked({"charge": f"{2 * charge_C!r} C"}, find, process))
    assert one.keys() == two.keys()
    assert list(two.values()) == pytest.approx([2 * value for value in one.values()], rel=1e-9)


# ------------------------------------------------------------------ cells

SOLUTES = (
    "NaCl", "CuSO4", "NiSO4", "AgNO3", "ZnSO4", "KI", "H2SO4", "NaOH", "CuCl2", "NaBr", "Na2SO4", "HCl", "FeSO4",
    "MgBr2", "KNO3",
)  # fmt: skip
ELECTRODES = ("", "graphite", "platinum", "copper", "silver", "nickel")


@st.composite
def cells(draw: st.DrawFn) -> CellDescription:
    concentration = draw(st.sampled_from([None, "dilute", "concentrated", "0.5 mol/dm3"]))
    solutes = draw(st.lists(st.sampled_from(SOLUTES), min_size=1, max_size=2, unique=True))
    electrodes = {
        name: electrode for name in ("cathode", "anode") if (electrode := draw(st.sampled_from(ELECTRODES)))
    }
    return CellDescription(electrolyte=tuple(Ingredient(one, concentration) for one in solutes), **electrodes)


@settings(max_examples=80, deadline=None)
@given(cells(), st.sampled_from(CURRICULA), st.floats(1, 1e5))
def test_as_many_electrons_pass_at_the_cathode_as_at_the_anode(
    cell: CellDescription, course: str, charge_C: float
) -> None:
    """Whatever a course predicts, each amount leads back to the same amount of electrons."""
    task = TaskDescription(
        processes=(ProcessDescription(id="cell", cell=cell, where="cell"),),
        known=(StatedQuantity("charge", f"{charge_C!r} C", where="known/charge"),),
        find=(AskedQuantity("amount of electrons"), AskedQuantity("amount")),
    )
    solved = solved_or_refused(task, REGISTRY[course])
    if solved is None:
        return
    electrons = values(solved)[Key("amount_of_electrons")]
    processes = {process.id: process for process in solved.worked.task.circuit.processes}
    told = {answer.key.process for answer in solved.answers if answer.key.of}
    assert told == set(processes)
    for answer in solved.answers:
        if answer.key.of:
            per_electron = abs(processes[answer.key.process].per_electron(answer.key.of))
            assert answer.value == pytest.approx(electrons * float(per_electron), rel=1e-12)


# ------------------------------------------------------------------ a mess of knowns

NUMBERS = (
    "0.50",
    "2",
    "1e-3",
    "96500",
    "0",
    "-3",
    "100",
    "20",
    "1e9",
    "1e-12",
    "0.5 ± 0.1",
    "3 ± 5",
    "nan",
    "1,500",
    "",
)
UNITS = (
    "", "A", "mA", "s", "min", "C", "A h", "mol", "g", "mg", "dm3", "cm3", "%", "K", "degC", "kPa", "atm", "V", "kWh",
    "cm2", "um", "um/min", "mol/dm3", "g/cm3", "C/mol", "1/mol", "dm3/mol", "J/(mol K)", "GBP/kWh", "GBP", "kWh/kg",
    "g/mol", "furlong", "A/cm2", "J", "W",
)  # fmt: skip
SUBSTANCES = ("", "", "Ni", "Ni^2+", "H2", "Cl2", "Cl-", "H+", "O2", "copper", "NaCl", "X", "Xx", "H2O", "e-")
MESSY_HALVES = (
    "Ni^2+ + 2e- -> Ni", "2H+ + 2e- -> H2", "2Cl- -> Cl2 + 2e-", "2H2O -> O2 + 4H+ + 4e-", "Ni -> Ni^2+ + 2e-",
    "X^2+ + 2e- -> X", "Cl2 -> Cl-", "",
)  # fmt: skip


@st.composite
def phrases(draw: st.DrawFn) -> tuple[str, str]:
    """A phrase, and a value that more often than not fits it."""
    name = draw(st.sampled_from(TOLD))
    of = draw(st.sampled_from(SUBSTANCES))
    process = draw(st.sampled_from(("", "", "", "one", "two", "three")))
    unit = QUANTITIES[name].answer_unit if draw(st.integers(0, 3)) else draw(st.sampled_from(UNITS))
    phrase = name + (f" of {of}" if of else "") + (f" at {process}" if process else "")
    return phrase, f"{draw(st.sampled_from(NUMBERS))} {'' if unit == '1' else unit}"


@st.composite
def messes(draw: st.DrawFn) -> TaskDescription:
    ids = draw(st.sampled_from([("one",), ("one", "two"), ("one", "two", "three"), ("one", "one")]))
    processes = tuple(
        ProcessDescription(
            id=id_,
            half_equation=draw(st.sampled_from(MESSY_HALVES)),
            electrode=draw(st.sampled_from(("", "", "cathode"))),
            metal=draw(st.sampled_from(("", "", "", "", "Cr", "X", "Xx"))),
            where=f"processes/{number}",
        )
        for number, id_ in enumerate(ids)
    )
    known = draw(st.lists(phrases(), max_size=6))
    find = draw(st.lists(phrases(), min_size=1, max_size=3))
    return TaskDescription(
        processes=processes,
        known=tuple(StatedQuantity(*one, where=f"known/{number}") for number, one in enumerate(known)),
        find=tuple(AskedQuantity(one, where=f"find/{number}") for number, (one, _) in enumerate(find)),
        conventions=TaskConventions(gas_collected=draw(st.sampled_from(("", "", "dry", "over water")))),
    )


@settings(max_examples=500, deadline=None)
@given(messes())
def test_no_mess_of_knowns_is_ever_met_with_anything_but_an_answer_or_a_refusal(
    task: TaskDescription,
) -> None:
    solved = solved_or_refused(task, A_LEVEL)
    if solved is None:
        return
    document = quantities_document(solved)
    assert document["found"]
    assert all(step["text"] and step["sentence"] for step in document["working"])


# ------------------------------------------------------------------ a working that can be checked

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
NUMBER = re.compile(r"[£€$₹]?(−?\d+(?:\.\d+)?)(?: × 10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?")
OPERATORS = (" × ", " ÷ ", " + ", " − ")


@dataclass(frozen=True)
class Shown:
    """A number on the board, by how much it may be off, and how many numbers it was reckoned from."""

    value: float
    spread: float
    count: int = 1
    unit: str = ""


def as_shown(digits: str, power: int, unit: str) -> Shown:
    """A number as it is written; those that are carried have four figures or more, but for zeros at the end."""
    decimals = len(digits.partition(".")[2])
    zeros = 0 if decimals else len(digits) - len(digits.rstrip("0"))
    value = float(digits.replace("−", "-")) * 10.0**power
    return Shown(value, min(0.5 * 10.0 ** (power - decimals + zeros), 5e-4 * abs(value)), 1, unit)


class Reckoner:
    """Reckons what stands in a member of an equation, units left out; no member with symbols."""

    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0

    def sum(self) -> Shown:
        found = self.product()
        while self.text.startswith((" + ", " − "), self.at):
            sign = 1 if self.text[self.at + 1] == "+" else -1
            self.at += 3
            other = self.product()
            value = found.value + sign * other.value
            found = Shown(value, found.spread + other.spread, found.count + other.count)
        return found

    def product(self) -> Shown:
        found = self.factor()
        while self.text.startswith((" × ", " ÷ "), self.at):
            is_times = self.text[self.at + 1] == "×"
            self.at += 3
            other = self.factor()
            value = found.value * other.value if is_times else found.value / other.value
            spread = abs(value) * sum(one.spread / abs(one.value) for one in (found, other) if one.value)
            found = Shown(value, spread, found.count + other.count)
        return found

    def factor(self) -> Shown:
        if self.text.startswith("(", self.at):
            self.at += 1
            found = self.sum()
            assert self.text[self.at] == ")"
            self.at += 1
            return found
        match = NUMBER.match(self.text, self.at)
        if match is None:
            raise ValueError(self.text)
        self.at = match.end()
        return as_shown(match[1], int((match[2] or "0").translate(RAISED)), self.unit())

    def unit(self) -> str:
        """The unit up to the next operator, or up to the bracket that closes round it."""
        start, depth = self.at, 0
        while self.at < len(self.text) and not self.text.startswith(OPERATORS, self.at):
            depth += {"(": 1, ")": -1}.get(self.text[self.at], 0)
            if depth < 0:
                break
            self.at += 1
        return self.text[start : self.at].strip()


def reckoned(member: str) -> Shown | None:
    """A member that holds numbers only; None if symbols stand in it."""
    reckoner = Reckoner(member)
    try:
        found = reckoner.sum()
    except ValueError:
        return None
    assert reckoner.at == len(member), member
    return found


def in_si(shown: Shown) -> tuple[float, float]:
    unit = read_unit(shown.unit or "1")
    return shown.value * unit.si + unit.offset, shown.spread * unit.si


def check_step(text: str) -> int:
    """Each member is what the one before it comes to, within the figures shown; says how many were compared."""
    found = [reckoned(member) for member in text.partition(" ≈ ")[0].split(" = ")]
    pairs = [(one, other) for one, other in pairwise(found) if one is not None and other is not None]
    for one, other in pairs:
        if one.count > 1:  # a reckoning, in coherent units
            assert abs(one.value - other.value) <= (one.spread + other.spread) * 1.001, text
        else:
            (first, its_spread), (second, spread) = in_si(one), in_si(other)
            assert abs(first - second) <= (its_spread + spread) * 1.001, text
    return len(pairs)


def check_last(text: str, figures: int) -> None:
    """Reckoning with what is written gives the answer, but for a little beside the half of its last place."""
    carried, _, final = text.partition(" ≈ ")
    members = [reckoned(member) for member in carried.split(" = ")]
    places = [number for number, member in enumerate(members) if member is not None and member.count > 1]
    if not final or not places:
        return
    reckoning, coherent, answer = members[places[-1]], members[places[-1] + 1], reckoned(final)
    assert reckoning is not None
    assert coherent is not None
    assert answer is not None
    own, unit = read_unit(coherent.unit or "1"), read_unit(answer.unit or "1")
    value = (reckoning.value * own.si + own.offset - unit.offset) / unit.si
    place = 10.0 ** (floor(log10(abs(answer.value))) - figures + 1)
    assert abs(value - answer.value) <= place * (0.5 + 0.06 * reckoning.count), text


@st.composite
def boards(draw: st.DrawFn) -> tuple[str, dict[str, str]]:
    """A task of a kind that is set at school, with numbers of one to five figures."""

    def number(low: float, high: float) -> str:
        return f"{draw(st.floats(low, high)):.{draw(st.integers(0, 4))}e}"

    current, time = f"{number(0.1, 30)} A", f"{number(1, 300)} {draw(st.sampled_from(['s', 'min', 'h']))}"
    percent = f"{draw(st.integers(20, 99))}%"
    kind = draw(st.sampled_from(sorted(_BOARDS)))
    filled = {
        name: text.format(
            current=current, time=time, percent=percent, area=number(1, 500), small=number(0.1, 1),
            large=number(100, 900), celsius=draw(st.integers(5, 60)),
        )
        for name, text in _BOARDS[kind][1].items()
    }  # fmt: skip
    return kind, filled


_NICKEL = ("nickel", "Ni^2+ + 2e- -> Ni", "")
_HYDROGEN = ("hydrogen", "2H+ + 2e- -> H2", "")
_BOARDS = {
    "mass": ([_NICKEL], {"current": "{current}", "time": "{time}", "efficiency": "{percent}"}, ["mass in mg"]),
    "plating": (
        [_NICKEL], {"current": "{current}", "time": "{time}", "area": "{area} cm2"},
        ["thickness", "growth_rate", "current_density"],
    ),
    "time": ([_NICKEL], {"mass": "{small} g", "current": "{current}"}, ["time in min", "number_of_particles"]),
    "efficiency": ([_NICKEL], {"mass": "{small} g", "charge": "{large}e3 C"}, ["efficiency"]),
    "gas": ([_HYDROGEN], {"current": "{current}", "time": "{time}"}, ["volume in cm3"]),
    "gas law": (
        [_HYDROGEN], {"charge": "{large} C", "temperature": "{celsius} degC", "pressure": "{large} mmHg"},
        ["volume in cm3"],
    ),
    "wet gas": ([_HYDROGEN], {"charge": "{large} C", "temperature": "{celsius} degC"}, ["volume in cm3"]),
    "series": (
        [_NICKEL, ("silver", "Ag^+ + e- -> Ag", "")], {"mass of Ag": "{small} g"}, ["mass of Ni", "charge"],
    ),
    "shared": (
        [("nickel", "Ni^2+ + 2e- -> Ni", "cathode"), ("hydrogen", "2H+ + 2e- -> H2", "cathode")],
        {"share of Ni": "{percent}", "charge": "{large} C"}, ["mass of Ni", "volume of H2"],
    ),
    "bath": (
        [_NICKEL], {"bath_volume": "{large} cm3", "bath_concentration": "{large} mol/m3", "charge": "{area} C"},
        ["concentration", "exhaustion_charge", "charge_left"],
    ),
    "cost": (
        [_NICKEL], {"mass": "{large} kg", "voltage": "{small} V", "energy_price": "£0.28/kWh"},
        ["energy in kWh", "cost", "specific_energy"],
    ),
    "constant": ([_NICKEL], {"mass": "{small} g", "current": "{current}", "time": "{time}"}, ["faraday_constant"]),
}  # fmt: skip


@settings(max_examples=250, deadline=None)
@given(boards())
def test_the_figures_of_each_step_reproduce_its_result(board: tuple[str, dict[str, str]]) -> None:
    kind, known = board
    halves, _, find = _BOARDS[kind]
    task = TaskDescription(
        processes=tuple(half_process(half, id_, electrode) for id_, half, electrode in halves),
        known=tuple(StatedQuantity(name, text, where=f"known/{name}") for name, text in known.items()),
        find=tuple(AskedQuantity(name) for name in find),
        conventions=TaskConventions(gas_collected="over water" if kind == "wet gas" else ""),
    )
    solved = solved_or_refused(task, A_LEVEL)
    if solved is None:
        return
    texts = [step.equation.text for step in solved.steps]
    assert sum(map(check_step, texts)) > 0
    for answer in solved.answers:
        last = [text for text in texts if text.endswith(f" {answer.rendered.text}")]
        assert last, (answer.rendered.text, texts)
        for text in last:
            check_last(text, answer.figures)
