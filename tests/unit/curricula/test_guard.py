"""Rules of plugins under watch: whatever one does, its own course pays for it and the others answer."""

from __future__ import annotations

import sys
import threading
import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

import pytest

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula import (
    PASS,
    CurriculumFault,
    Remark,
    Ruling,
    Situation,
    curriculum_from_package,
    judge,
)
from ionwright.curricula import guard as guard_module
from ionwright.curricula.guard import guarded
from ionwright.curricula.time_limit import TimeLimitPassed, within

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.cell import Cell
    from ionwright.curricula import Curriculum

BRACKET = make_cell(
    CellDescription(electrolyte=(Ingredient("NiSO4", "0.5 mol/dm3"),), cathode="steel", anode="nickel")
)
LANTERN = curriculum_from_package("ionwright_gcse")


@dataclass(frozen=True)
class Keeper:
    """A rule that does what it is told."""

    does: Callable[[Situation], Any]
    sentence: str = "The keeper decides."

    def apply(self, situation: Situation) -> Any:
        return self.does(situation)


@dataclass(frozen=True)
class ReadingKeeper(Keeper):
    """A rule that also says what it reads."""

    reads: Callable[[Cell], Any] = lambda cell: ()

    def also_reads(self, cell: Cell) -> Any:
        return self.reads(cell)


def under_watch(rule: Any, reported: list[str]) -> Curriculum:
    course = replace(LANTERN, id="museum", cathode_rules=(rule, *LANTERN.cathode_rules))
    return guarded(course, reported.append)


def raise_fog(_: Situation) -> Ruling:
    raise RuntimeError("fog")


def leave(_: Situation) -> Ruling:
    sys.exit("lamp out")


def choose_foreign(_: Situation) -> Ruling:
    return Ruling(chosen=BRACKET.at_anode().processes[0], because=("It is nicer.",))


def accept_foreign(_: Situation) -> Ruling:
    return Ruling(also_accepted=(Remark(BRACKET.at_anode().processes[0], "Why not."),))


def forget_processes(situation: Situation) -> Ruling:
    object.__setattr__(situation.competition, "processes", ())
    return PASS


def misspell_a_species(situation: Situation) -> Ruling:
    object.__setattr__(situation.remaining[0].reactant, "charge", 7)
    return PASS


def forget_and_fail(situation: Situation) -> Ruling:
    object.__setattr__(situation.competition, "processes", ())
    raise RuntimeError("fog")


def one_text(_: Situation) -> Ruling:
    return Ruling(because="It is the keeper's wish.")  # type: ignore[arg-type]  # the slip that is tried


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        (Keeper(raise_fog), "its rule Keeper raises RuntimeError: fog"),
        (Keeper(leave), "its rule Keeper raises SystemExit: lamp out"),
        (Keeper(lambda _: None), "its rule Keeper returns NoneType, not a Ruling"),
        (Keeper(choose_foreign), "its rule Keeper speaks of a process that is not possible in the cell"),
        (Keeper(accept_foreign), "its rule Keeper speaks of a process that is not possible in the cell"),
        (Keeper(forget_processes), "its rule Keeper changes what it is shown: Competition.processes"),
        (Keeper(misspell_a_species), "its rule Keeper changes what it is shown: Species.charge"),
        (Keeper(forget_and_fail), "its rule Keeper raises RuntimeError: fog"),
        (Keeper(one_text), 'its rule Keeper gives "because" that is no tuple of sentences'),
        (
            Keeper(lambda _: Ruling(ruled_out=("hydrogen",))),  # type: ignore[arg-type]  # the slip that is tried
            "its rule Keeper rules out or accepts something that is no Remark with a reason",
        ),
        (
            ReadingKeeper(lambda _: PASS, reads=lambda cell: []),
            "its rule ReadingKeeper reads a value that has no hash",
        ),
        (
            ReadingKeeper(lambda _: PASS, reads=lambda cell: cell.lamp),  # type: ignore[attr-defined]  # the slip that is tried
            "its rule ReadingKeeper raises AttributeError: 'Cell' object has no attribute 'lamp'",
        ),
    ],
)
def test_a_rule_that_misbehaves_is_told_and_what_it_was_shown_is_whole(rule: Any, told: str) -> None:
    before = [(process, process.reactant.charge) for process in BRACKET.at_cathode().processes]
    reported: list[str] = []
    course = under_watch(rule, reported)
    for _ in range(2):
        with pytest.raises(CurriculumFault) as caught:
            judge(BRACKET, "cathode", course)
        assert caught.value.code == "rule-failed"
        assert str(caught.value) == f"The curriculum museum is at fault: {told}."
    assert reported == [told]
    assert [(process, process.reactant.charge) for process in BRACKET.at_cathode().processes] == before
    assert judge(BRACKET, "cathode", LANTERN).chosen is not None
    assert judge(BRACKET, "anode", course).chosen is not None


@pytest.mark.parametrize("hang", ["waits", "turns"])
def test_a_rule_that_hangs_is_not_run_again(hang: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guard_module, "TIME_LIMIT_S", 0.05)
    runs = []

    def waits(_: Situation) -> Ruling:
        runs.append(1)
        time.sleep(20)
        return PASS

    def turns(_: Situation) -> Ruling:
        runs.append(1)
        while True:
            pass

    reported: list[str] = []
    course = under_watch(Keeper({"waits": waits, "turns": turns}[hang]), reported)
    for _ in range(3):
        with pytest.raises(CurriculumFault, match=r"its rule Keeper takes longer than 0\.05 s"):
            judge(BRACKET, "cathode", course)
    assert len(runs) == 1
    assert len(reported) == 1


def test_a_thread_that_turns_in_vain_is_stopped() -> None:
    def turns() -> None:
        while True:
            pass

    before = set(threading.enumerate())
    with pytest.raises(TimeLimitPassed, match=r"longer than 0\.05 s"):
        within(0.05, turns)
    for thread in set(threading.enumerate()) - before:
        thread.join(20)
        assert not thread.is_alive()


def test_a_rule_that_behaves_is_heard(cells: list[Cell]) -> None:
    reported: list[str] = []
    course = under_watch(ReadingKeeper(lambda _: PASS), reported)
    for cell in cells:
        for electrode in ("cathode", "anode"):
            assert judge(cell, electrode, course).chosen is judge(cell, electrode, LANTERN).chosen
    assert reported == []


def test_a_rule_of_another_kind_of_object_is_refused() -> None:
    with pytest.raises(CurriculumFault, match="int is no rule: it needs a method apply and a text sentence"):
        under_watch(3, [])


def test_rules_of_the_package_run_as_they_are() -> None:
    assert guarded(LANTERN, lambda _: None).anode_rules == LANTERN.anode_rules


@pytest.fixture(scope="module")
def cells() -> list[Cell]:
    described = [
        CellDescription(electrolyte=(Ingredient(formula, word),), anode=anode, state=state)
        for formula, word, anode, state in [
            ("NaCl", "concentrated", "graphite", "aqueous"),
            ("CuSO4", "0.5 mol/dm3", "copper", "aqueous"),
            ("AgNO3", "dilute", "platinum", "aqueous"),
            ("PbBr2", None, "graphite", "molten"),
        ]
    ]
    return [make_cell(one) for one in described]
