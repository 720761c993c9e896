"""Which currents do it: how long each takes, which limits bind, and which is to be preferred."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, isclose, log10, sqrt
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.teaching.demonstrations.measure import Measure, fitting
from ionwright.teaching.demonstrations.reckoning import Asked, Reckoning, stated
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from ionwright.teaching.demonstrations.reading import Bench

__all__ = ["CurrentChoice", "CurrentRow", "Shortfall", "choose_current"]

_RUNGS: Final = (1.0, 1.5, 2.0, 3.0, 5.0, 7.5)
_MOST_ROWS: Final = 5
_SLACK: Final = 1 + 1e-9
_CALM_S: Final = 60.0
"""So long a run may at least take before a current is raised only to be seen on an ammeter."""
_BRIEFEST: Final = 0.05
"""Currents that do it in less than this part of the time are left out of the table: little is gained by them."""


class _Bound(NamedTuple):
    """A highest current, why it is the highest, and the rule of thumb behind it, if there is one."""

    current_A: float
    because: str
    rule: str = ""


@dataclass(frozen=True, slots=True)
class CurrentRow:
    """One current.

    Parameters
    ----------
    current, time
        What it is and how long it takes to give what is aimed at.
    densities
        Current density at each electrode whose area is known.
    fits
        Whether it keeps within time and limits.
    because
        Which limit binds, as a sentence; of a current that fits, how much of the time it takes.
    """

    current: Measure
    time: Measure
    densities: Mapping[str, Measure]
    fits: bool
    because: str

    @property
    def current_A(self) -> float:  # noqa: N802 - unit symbols keep their case
        """The current [A]."""
        return self.current.counted_in("A")

    @property
    def time_s(self) -> float:
        """The time [s]."""
        return self.time.counted_in("s")


@dataclass(frozen=True, slots=True)
class Shortfall:
    """By how much the aim cannot be met.

    Parameters
    ----------
    reached
        Part of the charge that passes in the time at the highest current [%].
    missing_time
        How much longer it takes at that current.
    needed_current
        The lowest current that would do it in the time.
    says
        All of that as a sentence.
    """

    reached: Measure
    missing_time: Measure
    needed_current: Measure
    says: str


@dataclass(frozen=True, slots=True)
class CurrentChoice:
    """The currents of a plan.

    Parameters
    ----------
    lowest
        The lowest current that does it in time.
    highest
        The highest that the supply and the electrodes allow.
    highest_because
        What sets it, as a sentence.
    rows
        Currents in rising order.
    recommended
        The row to be preferred; where none fits, the one that comes nearest.
    because
        Why that one, as a sentence.
    shortfall
        None if the aim can be met.
    rules
        Names of the rules of thumb that it rests on.
    """

    lowest: Measure
    highest: Measure
    highest_because: str
    rows: tuple[CurrentRow, ...]
    recommended: CurrentRow
    because: str
    shortfall: Shortfall | None
    rules: tuple[str, ...]


def choose_current(
    reckoning: Reckoning, bench: Bench, charge_C: float, deposits: Mapping[str, bool]
) -> CurrentChoice:
    """The currents with which a charge passes within the time, and the one to be preferred.

    Parameters
    ----------
    charge_C
        What the aims take [C].
    deposits
        Of each electrode, whether a solid grows there.
    """
    chooser = _Chooser(reckoning, bench, charge_C, deposits)
    return chooser.of_set_current(bench.current_A) if bench.current_A else chooser.free()


class _Chooser:
    """Weighs the currents of one plan."""

    def __init__(
        self, reckoning: Reckoning, bench: Bench, charge_C: float, deposits: Mapping[str, bool]
    ) -> None:
        self._reckoning = reckoning
        self._bench = bench
        self._charge = stated("charge", charge_C, "C")
        self._charge_C = charge_C
        self._grows_deposit = any(deposits.values())
        self._bounds = sorted(self._upper_bounds(deposits), key=lambda bound: bound.current_A)
        self.lowest_A = self._current_for(bench.longest_s)

    def _current_for(self, time_s: float) -> float:
        return self._reckoning.value([self._charge, stated("time", time_s, "s")], Asked("current", "A"))

    def _time_for(self, current_A: float) -> float:
        return self._reckoning.value([self._charge, stated("current", current_A, "A")], Asked("time", "s"))

    def _upper_bounds(self, deposits: Mapping[str, bool]) -> Iterator[_Bound]:
        bench = self._bench
        if bench.highest_A is not None:
            yield _Bound(bench.highest_A, f"the supply gives at most {_current(bench.highest_A)}")
        else:
            most = rule_of_thumb("school_supply").in_unit("A")
            yield _Bound(most, f"a school supply gives at most about {_current(most)}", "school_supply")
        for electrode, area in bench.areas_cm2.items():
            rule = "deposit_density" if deposits.get(electrode) else "other_density"
            density = rule_of_thumb(rule).in_unit("A/cm2")
            current = self._reckoning.value(
                [
                    stated("current_density", density, "A/cm2", process=electrode),
                    stated("area", area, "cm2", process=electrode),
                ],
                Asked("current", "A"),
            )
            said = rule_of_thumb(rule).written
            because = (
                f"above {_current(current)} the {electrode} would carry more than about {said.value:g} mA/cm²"
            )
            yield _Bound(current, because, rule)
        if bench.shortest_s:
            current = self._current_for(bench.shortest_s)
            yield _Bound(current, f"a higher current takes less than {_time(bench.shortest_s)}")

    @property
    def _highest(self) -> _Bound:
        return self._bounds[0]

    def free(self) -> CurrentChoice:
        """Any current may be chosen."""
        low, high = self.lowest_A, self._highest
        if low > high.current_A * _SLACK:
            return self._too_little()
        rungs = [
            rung
            for rung in _ladder(low, high.current_A)
            if low <= rung * _SLACK and rung <= high.current_A * _SLACK
        ]
        best, because, rule = self._best(low, rungs)
        rows = self._rows(rungs or [best], best)
        return self._choice(rows, best, because, None, (*self._rules(), *rule))

    def _best(self, low: float, rungs: Sequence[float]) -> tuple[float, str, tuple[str, ...]]:
        """The current to be preferred among round ones that fit, why, and the rule of thumb that it rests on."""
        high = self._highest
        if not rungs:
            best = min(_rounded_up(low), high.current_A)
            return best, f"{_current(best)} is about the only current that fits, since {high.because}.", ()
        if self._bench.shortest_s:
            middle = sqrt(low * high.current_A)
            best = min(rungs, key=lambda rung: abs(rung - middle))
            return best, f"{_current(best)} takes {self._said_time(best)}, well inside the span.", ()
        margin = low * rule_of_thumb("margin").written.value
        meter = rule_of_thumb("school_meter").in_unit("A")
        shown = min(meter, self._current_for(_CALM_S))
        roomy = [rung for rung in rungs if rung * _SLACK >= max(margin, shown)]
        if not roomy:
            best = rungs[-1]
            because = (
                f"{_current(best)} is the highest round current that the limits allow, since {high.because}; it "
                f"takes {self._said_time(best)}{'' if best >= margin else ' and leaves little of the time free'}."
            )
            return best, because, ()
        best = roomy[0]
        if best > meter * _SLACK or shown <= margin:
            why, rule = "that leaves about a third of the time free", "margin"
        else:
            why, rule = "that a school ammeter shows well", "school_meter"
        because = f"{_current(best)} is the lowest round current {why}: it takes {self._said_time(best)}."
        if best * _SLACK < meter:
            because = (
                f"{_current(best)} does it in {self._said_time(best)}, but an ordinary school ammeter hardly shows so "
                "little: the aim is a very small one."
            )
            rule = "school_meter"
        return best, f"{because} {self._why_so_low()}", (rule,)

    def _why_so_low(self) -> str:
        if self._grows_deposit:
            return "A lower current gives a firmer deposit."
        return "A lower current keeps the cell calm, and its gas is easier to collect."

    def _said_time(self, current_A: float) -> str:
        return fitting(self._time_for(current_A), "s", 3).text

    def of_set_current(self, current_A: float) -> CurrentChoice:
        """The current is set already."""
        row = self._row(current_A)
        because = f"The current is set to {_current(current_A)}. {row.because}"
        shortfall = None
        if row.time_s > self._bench.longest_s * _SLACK:
            shortfall = self._shortfall(current_A, row.time_s)
            because = f"The current is set to {_current(current_A)}. {shortfall.says}"
        return self._choice((row,), current_A, because, shortfall, self._rules())

    def _too_little(self) -> CurrentChoice:
        high = self._highest
        best = high.current_A
        row = self._row(best)
        shortfall = self._shortfall(best, row.time_s)
        because = f"No current does it in time: {high.because}. {shortfall.says}"
        rows = (row, self._row(_rounded_up(self.lowest_A)))
        return self._choice(rows, best, because, shortfall, self._rules())

    def _shortfall(self, current_A: float, time_s: float) -> Shortfall:
        longest = self._bench.longest_s
        passed = self._reckoning.value(
            [stated("current", current_A, "A"), stated("time", longest, "s")], Asked("charge", "C")
        )
        reached = fitting(passed / self._charge_C, "1", 2)
        missing = fitting(time_s - longest, "s", 3)
        needed = fitting(_rounded_up(self.lowest_A), "A", 2)
        says = (
            f"At {_current(current_A)} it takes {fitting(time_s, 's', 3).text}, {missing.text} longer than there is: "
            f"within {_time(longest)} about {reached.text} of it is reached. "
            f"It takes about {needed.text} to do it in time."
        )
        return Shortfall(reached, missing, needed, says)

    def _rules(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(bound.rule for bound in self._bounds if bound.rule))

    def _rows(self, rungs: Sequence[float], best: float) -> tuple[CurrentRow, ...]:
        """The table: some currents that fit, and the nearest on either side that does not."""
        brief = self._current_for(self._bench.longest_s * _BRIEFEST)
        told = [rung for rung in rungs if rung <= max(brief, best) * _SLACK]
        start = max(0, min(told.index(best) - 1, len(told) - _MOST_ROWS))
        told = told[start : start + _MOST_ROWS]
        ladder = _ladder(told[0] / 2, told[-1] * 2)
        below = [rung for rung in ladder if rung * _SLACK < self.lowest_A]
        above = [rung for rung in ladder if rung > self._highest.current_A * _SLACK]
        return tuple(self._row(current) for current in (*below[-1:], *told, *above[:1]))

    def _row(self, current_A: float) -> CurrentRow:
        bench = self._bench
        time = self._time_for(current_A)
        densities = {
            electrode: fitting(
                self._reckoning.value(
                    [stated("current", current_A, "A"), stated("area", area, "cm2", process=electrode)],
                    Asked("current_density", "A/cm2", process=electrode),
                ),
                "A/cm2",
                2,
            )
            for electrode, area in bench.areas_cm2.items()
        }
        faults = [f"{bound.because}" for bound in self._bounds if current_A > bound.current_A * _SLACK]
        if time > bench.longest_s * _SLACK:
            faults.insert(0, f"it takes longer than {_time(bench.longest_s)}")
        because = (
            f"It is {'too low' if time > bench.longest_s * _SLACK else 'too high'}: {'; '.join(faults)}."
            if faults
            else f"It fits: it takes {fitting(time / bench.longest_s, '1', 2).text} of the {_time(bench.longest_s)}."
        )
        return CurrentRow(_neat(current_A, "A"), fitting(time, "s", 3), densities, not faults, because)

    def _choice(
        self,
        rows: tuple[CurrentRow, ...],
        best: float,
        because: str,
        shortfall: Shortfall | None,
        rules: tuple[str, ...],
    ) -> CurrentChoice:
        high = self._highest
        return CurrentChoice(
            lowest=fitting(self.lowest_A, "A", 2),
            highest=_neat(high.current_A, "A"),
            highest_because=f"{high.because[:1].upper()}{high.because[1:]}.",
            rows=rows,
            recommended=min(rows, key=lambda row: abs(row.current_A - best)),
            because=because,
            shortfall=shortfall,
            rules=rules,
        )


def _ladder(low: float, high: float) -> list[float]:
    """Round currents from a little below the one to a little above the other [A]."""
    first, last = floor(log10(low)) - 1, floor(log10(high)) + 1
    return [float(f"{rung:g}e{power}") for power in range(first, last + 1) for rung in _RUNGS]


def _rounded_up(current_A: float) -> float:
    """The current to two figures, and not below it [A]."""
    step = 10.0 ** (floor(log10(current_A)) - 1)
    return float(f"{ceil(current_A / step / _SLACK) * step:.2g}")


def _neat(value: float, symbol: str) -> Measure:
    """A value that somebody set, with two figures, or with a third where it has one."""
    measure = fitting(value, symbol, 2)
    return measure if isclose(measure.value, float(f"{measure.value:.2g}")) else fitting(value, symbol, 3)


def _current(current_A: float) -> str:
    return _neat(current_A, "A").text


def _time(time_s: float) -> str:
    return _neat(time_s, "s").text
