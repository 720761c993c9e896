"""Watches over rules that other people wrote: one that misbehaves costs its own course an answer, and nobody else."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, Final

from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.model import Remark, Ruling
from ionwright.curricula.snapshot import Snapshot
from ionwright.curricula.time_limit import TimeLimitPassed, within

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable

    from ionwright.chemistry.cell import Cell
    from ionwright.curricula.model import Curriculum, DischargeRule, Situation

__all__ = ["TIME_LIMIT_S", "guarded"]

TIME_LIMIT_S: Final = 1.0
"""Time that a rule of a plugin may take over one electrode [s]; our own take well under a millisecond."""

_OWN: Final = "ionwright."
_TEXTS: Final = ("because", "assumptions")


def guarded(curriculum: Curriculum, report: Callable[[str], None]) -> Curriculum:
    """The curriculum, with every rule that is not one of the package's own under watch.

    Parameters
    ----------
    report
        Is told, once for each kind of failure, what a rule did.

    Raises
    ------
    CurriculumFault
        Code ``rule-failed`` if something that stands among the rules is no rule.
    """
    watch = _Watch(curriculum.id, report)
    return replace(
        curriculum,
        cathode_rules=tuple(_watched(rule, watch) for rule in curriculum.cathode_rules),
        anode_rules=tuple(_watched(rule, watch) for rule in curriculum.anode_rules),
    )


def _watched(rule: Any, watch: _Watch) -> DischargeRule:
    kind = type(rule)
    if kind.__module__.startswith(_OWN):
        return rule  # type: ignore[no-any-return]  # a rule of the package
    if not callable(getattr(rule, "apply", None)) or not isinstance(getattr(rule, "sentence", None), str):
        told = f"{kind.__name__} is no rule: it needs a method apply and a text sentence"
        raise CurriculumFault("rule-failed", told)
    return (_RuleThatReads if hasattr(rule, "also_reads") else _Rule)(rule, watch)


class _Watch:
    """Runs the rules of one curriculum; after one that hangs, runs none of them again."""

    __slots__ = ("_id", "_report", "_told", "_withdrawn")

    def __init__(self, id_: str, report: Callable[[str], None]) -> None:
        self._id = id_
        self._report = report
        self._told: set[str] = set()
        self._withdrawn = ""

    def run(self, name: str, method: Callable[[Any], Any], seen: Any) -> Any:
        """What a rule's method returns for what it is shown.

        Raises
        ------
        CurriculumFault
            Code ``rule-failed`` if it raises, hangs, or changes what it is shown.
        """
        if self._withdrawn:
            raise self._fault(self._withdrawn)
        before = Snapshot(seen)
        try:
            returned = within(TIME_LIMIT_S, method, seen)
        except TimeLimitPassed:
            before.restore()
            self._withdrawn = f"its rule {name} takes longer than {TIME_LIMIT_S:g} s"
            raise self.failed(self._withdrawn) from None
        except CurriculumFault:
            raise
        except BaseException as fault:  # a rule that exits must not end the service
            before.restore()
            raise self.failed(f"its rule {name} raises {type(fault).__name__}: {fault}") from fault
        changed = before.restore()
        if changed:
            raise self.failed(f"its rule {name} changes what it is shown: {changed[0]}")
        return returned

    def failed(self, reason: str) -> CurriculumFault:
        """The fault to raise for a failure, which is reported if nothing like it was before."""
        reason = reason[:300]
        if reason not in self._told and len(self._told) < _MOST_TOLD:
            self._told.add(reason)
            self._report(reason)
        return self._fault(reason)

    def _fault(self, reason: str) -> CurriculumFault:
        return CurriculumFault("rule-failed", f"The curriculum {self._id} is at fault: {reason}.")


_MOST_TOLD: Final = 8


class _Rule:
    """A discharge rule under watch."""

    __slots__ = ("_rule", "_watch", "sentence")

    def __init__(self, rule: DischargeRule, watch: _Watch) -> None:
        self._rule = rule
        self._watch = watch
        self.sentence = rule.sentence

    def apply(self, situation: Situation) -> Ruling:
        """Judge the remaining processes; the ruling is looked over before it counts."""
        name = type(self._rule).__name__
        ruling = self._watch.run(name, self._rule.apply, situation)
        amiss = _amiss(ruling, situation)
        if amiss:
            raise self._watch.failed(f"its rule {name} {amiss}")
        return ruling  # type: ignore[no-any-return]  # looked over above


class _RuleThatReads(_Rule):
    """A discharge rule under watch that says what else it reads."""

    __slots__ = ()

    def also_reads(self, cell: Cell) -> Hashable:
        """What the rule takes into account of a cell beyond what every rule does."""
        name = type(self._rule).__name__
        read = self._watch.run(name, self._rule.also_reads, cell)  # type: ignore[attr-defined]  # looked for before
        try:
            hash(read)
        except TypeError:
            raise self._watch.failed(f"its rule {name} reads a value that has no hash") from None
        return read  # type: ignore[no-any-return]  # any value with a hash will do


def _amiss(ruling: object, situation: Situation) -> str:
    """What is wrong with a ruling; empty if nothing is."""
    if not isinstance(ruling, Ruling):
        return f"returns {type(ruling).__name__}, not a Ruling"
    for name in _TEXTS:
        texts = getattr(ruling, name)
        if not isinstance(texts, tuple) or not all(isinstance(text, str) for text in texts):
            return f'gives "{name}" that is no tuple of sentences'
    named = [] if ruling.chosen is None else [ruling.chosen]
    for remark in (*_listed(ruling.ruled_out), *_listed(ruling.also_accepted)):
        if not isinstance(remark, Remark) or not isinstance(remark.because, str):
            return "rules out or accepts something that is no Remark with a reason"
        named.append(remark.process)
    if any(process not in situation.competition.processes for process in named):
        return "speaks of a process that is not possible in the cell"
    return ""


def _listed(remarks: object) -> tuple[object, ...]:
    return remarks if isinstance(remarks, tuple) else (remarks,)
