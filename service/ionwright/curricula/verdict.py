"""Judges a competition: applies a curriculum's rules in order and keeps the trace."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.curricula.aside import Aside
from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.model import PASS, Curriculum, DischargeRule, Remark, Ruling, Situation

if TYPE_CHECKING:
    from collections.abc import Hashable

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.process import Competition, ElectrodeProcess
    from ionwright.chemistry.species import Species

DECIDED = "decided"
NOT_DECIDABLE = "not-decidable"


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a trace: a discharge rule that had something to say, and its ruling."""

    rule: DischargeRule
    ruling: Ruling


@dataclass(frozen=True, slots=True, eq=False)
class Verdict:
    """Which process runs at one electrode, and the trace of rules that led there; compared by identity.

    Parameters
    ----------
    competition
        What was judged.
    chosen
        The process that runs; None if the curriculum cannot decide.
    because
        The reasons for the choice, or for leaving it open.
    passed_over
        Every other process that the course speaks of, with the reason it does not run.
    spectators
        Ions that move to this electrode and take no part there.
    also_accepted
        Other answers that the curriculum accepts.
    is_contested
        Whether courses, marking schemes or real cells differ here.
    assumptions
        What had to be assumed.
    trace
        The rules that had something to say, in their order, each with its ruling.
    """

    competition: Competition
    chosen: ElectrodeProcess | None
    because: tuple[str, ...]
    passed_over: tuple[Remark, ...] = ()
    spectators: tuple[Species, ...] = ()
    also_accepted: tuple[Remark, ...] = ()
    is_contested: bool = False
    assumptions: tuple[str, ...] = ()
    trace: tuple[Step, ...] = ()

    @property
    def outcome(self) -> str:
        """``"decided"`` or ``"not-decidable"``."""
        return DECIDED if self.chosen else NOT_DECIDABLE


def judge(cell: Cell, electrode: str, curriculum: Curriculum) -> Verdict:
    """What a curriculum says of one electrode of a cell.

    Parameters
    ----------
    electrode
        ``"cathode"`` or ``"anode"``.

    Raises
    ------
    CurriculumFault
        If a rule chooses a process that is not in the competition, or no rule decides.
    """
    rules = curriculum.cathode_rules if electrode == "cathode" else curriculum.anode_rules
    readers = [getattr(rule, "also_reads", None) for rule in rules]
    if None in readers:
        return _judge(cell, electrode, curriculum, rules)
    read = tuple(reader(cell) for reader in readers if reader)
    key = (cell.likeness(electrode), id(curriculum), read)
    return _judged(key, Aside((cell, electrode, curriculum, rules)))


def judge_afresh(cell: Cell, electrode: str, curriculum: Curriculum) -> Verdict:
    """The same as `judge`, without keeping the verdict: for many cells at once, each of which is judged once.

    Raises
    ------
    CurriculumFault
        As `judge` does.
    """
    rules = curriculum.cathode_rules if electrode == "cathode" else curriculum.anode_rules
    return _judge(cell, electrode, curriculum, rules)


@lru_cache(maxsize=8192)
def _judged(_key: Hashable, case: Aside[tuple[Cell, str, Curriculum, tuple[DischargeRule, ...]]]) -> Verdict:
    """A verdict that holds for every cell with this key: rules that say what else they read are pure."""
    return _judge(*case.value)


def _judge(cell: Cell, electrode: str, curriculum: Curriculum, rules: tuple[DischargeRule, ...]) -> Verdict:
    competition = cell.at_cathode() if electrode == "cathode" else cell.at_anode()
    situation = Situation(cell, competition, competition.processes, curriculum.conventions)
    return _apply(rules, situation, curriculum)


def _apply(rules: tuple[DischargeRule, ...], situation: Situation, curriculum: Curriculum) -> Verdict:
    gathered = Ruling()
    trace: tuple[Step, ...] = ()
    for place, rule in enumerate(rules):
        ruling = rule.apply(situation)
        if ruling is PASS:
            continue
        trace = (*trace, Step(rule, ruling))
        gathered = _gather(gathered, ruling)
        if ruling.is_undecidable:
            return _open(situation.competition, gathered, trace)
        if ruling.chosen is not None:
            if ruling.chosen not in situation.competition.processes:
                raise CurriculumFault(
                    "impossible-choice", f"A rule of {curriculum.id} chose a process that is not possible."
                )
            if ruling.otherwise:
                gathered = _with_other_answer(gathered, ruling, rules[place + 1 :], situation, curriculum)
            return _decided(situation.competition, gathered, trace)
        if ruling.ruled_out:
            situation = situation.without({remark.process for remark in ruling.ruled_out})
    raise CurriculumFault(
        "no-decision", f"No rule of {curriculum.id} decides the {situation.competition.electrode}."
    )


def _gather(so_far: Ruling, ruling: Ruling) -> Ruling:
    return Ruling(
        because=so_far.because + ruling.because,
        ruled_out=so_far.ruled_out + ruling.ruled_out,
        also_accepted=so_far.also_accepted + ruling.also_accepted,
        is_contested=so_far.is_contested or ruling.is_contested,
        assumptions=so_far.assumptions + ruling.assumptions,
    )


def _with_other_answer(
    gathered: Ruling,
    ruling: Ruling,
    later: tuple[DischargeRule, ...],
    situation: Situation,
    curriculum: Curriculum,
) -> Ruling:
    """Add what the later rules would have chosen without the process that this rule chose."""
    rest = situation.without({ruling.chosen})
    if not rest.remaining:
        return gathered
    other = _apply(later, rest, curriculum)
    if other.chosen is None:
        return gathered
    return replace(gathered, also_accepted=(*gathered.also_accepted, Remark(other.chosen, ruling.otherwise)))


def _decided(competition: Competition, gathered: Ruling, trace: tuple[Step, ...]) -> Verdict:
    """The verdict of a trace that ends with a choice."""
    chosen = trace[-1].ruling.chosen
    return Verdict(
        competition,
        chosen,
        gathered.because,
        passed_over=(passed_over := _complete(competition, gathered.ruled_out, chosen)),
        spectators=_idle(competition, chosen, passed_over),
        also_accepted=gathered.also_accepted,
        is_contested=gathered.is_contested,
        assumptions=gathered.assumptions,
        trace=trace,
    )


def _open(competition: Competition, gathered: Ruling, trace: tuple[Step, ...]) -> Verdict:
    """The verdict of a trace that ends with a cell out of reach."""
    return Verdict(
        competition,
        None,
        trace[-1].ruling.because,
        passed_over=(passed_over := _complete(competition, gathered.ruled_out, None)),
        spectators=_idle(competition, None, passed_over),
        assumptions=gathered.assumptions,
        trace=trace,
    )


def _complete(
    competition: Competition, ruled_out: tuple[Remark, ...], chosen: ElectrodeProcess | None
) -> tuple[Remark, ...]:
    """One remark for each process that does not run and that the course speaks of, in the order of the competition."""
    reasons = {remark.process: remark.because for remark in reversed(ruled_out)}
    silent = "Another process is preferred." if chosen else "The rules of this course do not reach this cell."
    remarks = (Remark(p, reasons.get(p, silent)) for p in competition.processes if p != chosen)
    return tuple(remark for remark in remarks if remark.because)


def _idle(
    competition: Competition, chosen: ElectrodeProcess | None, passed_over: tuple[Remark, ...]
) -> tuple[Species, ...]:
    """The ions that move to this electrode and are in no process that is spoken of."""
    sign = 1 if competition.electrode == "cathode" else -1
    told = {remark.process.reactant for remark in passed_over} | ({chosen.reactant} if chosen else set())
    unspoken = (
        p.reactant for p in competition.processes if p.reactant.charge * sign > 0 and p.reactant not in told
    )
    return tuple(dict.fromkeys((*competition.spectators, *unspoken)))
