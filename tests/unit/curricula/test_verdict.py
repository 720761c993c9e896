"""The trace of rules: who chooses, who rules out, and what a careless rule is told."""

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.model import (
    PASS,
    Conventions,
    Curriculum,
    DischargeRule,
    ReadsNothingElse,
    Remark,
    Ruling,
    Situation,
    undecidable,
)
from ionwright.curricula.verdict import Step, Verdict, judge, judge_afresh


@dataclass(frozen=True, slots=True)
class Saying:
    """A rule that says what it is told to say."""

    ruling: Callable[[Situation], Ruling]
    sentence: str = "As told."

    def apply(self, situation: Situation) -> Ruling:
        return self.ruling(situation)


def course(*rules: DischargeRule) -> Curriculum:
    forms = {"neutral": ("ions",)}
    return Curriculum(
        id="museum",
        title="Museum",
        region="",
        stage="",
        summary="",
        cathode_rules=rules,
        anode_rules=rules,
        conventions=Conventions(forms, forms),
    )


def chooses(kind: Kind, **rest: object) -> Saying:
    return Saying(lambda s: Ruling(chosen=s.of(kind)[0], because=(f"{kind.name} it is.",), **rest))


def rules_out(kind: Kind, because: str) -> Saying:
    return Saying(lambda s: Ruling(ruled_out=tuple(Remark(p, because) for p in s.of(kind))))


PASSES = Saying(lambda _: PASS)


@pytest.fixture
def brine(cell_of: Callable[..., Cell]) -> Cell:
    return cell_of("NaCl")


def remarks(verdict: Verdict) -> list[tuple[Kind, str]]:
    return [(remark.process.kind, remark.because) for remark in verdict.passed_over]


def test_the_first_rule_that_chooses_decides(brine: Cell) -> None:
    verdict = judge(brine, "anode", course(PASSES, chooses(Kind.HALOGEN), chooses(Kind.OXYGEN)))
    assert verdict.chosen is brine.at_anode().of(Kind.HALOGEN)[0]
    assert verdict.because == ("HALOGEN it is.",)
    assert verdict.outcome == "decided"


def test_each_electrode_is_judged_by_its_own_competition(brine: Cell) -> None:
    assert judge(brine, "cathode", course(chooses(Kind.HYDROGEN))).competition.electrode == "cathode"
    assert judge(brine, "anode", course(chooses(Kind.OXYGEN))).competition.electrode == "anode"


def test_what_an_earlier_rule_ruled_out_is_hidden_from_the_later_ones(brine: Cell) -> None:
    seen: list[tuple[ElectrodeProcess, ...]] = []

    def look(situation: Situation) -> Ruling:
        seen.append(situation.remaining)
        return Ruling(chosen=situation.remaining[0], because=("It is left.",))

    judge(brine, "anode", course(rules_out(Kind.HALOGEN, "Not today."), Saying(look)))
    assert [process.kind for process in seen[0]] == [Kind.OXYGEN]


def test_the_first_reason_given_for_a_process_is_the_one_that_is_kept(brine: Cell) -> None:
    verdict = judge(
        brine,
        "anode",
        course(
            rules_out(Kind.HALOGEN, "Not today."),
            Saying(
                lambda s: Ruling(
                    chosen=s.remaining[0],
                    ruled_out=tuple(Remark(p, "Never.") for p in s.competition.of(Kind.HALOGEN)),
                )
            ),
        ),
    )
    assert remarks(verdict) == [(Kind.HALOGEN, "Not today.")]


def test_a_process_that_no_rule_speaks_of_gets_a_plain_reason(brine: Cell) -> None:
    assert remarks(judge(brine, "anode", course(chooses(Kind.OXYGEN)))) == [
        (Kind.HALOGEN, "Another process is preferred.")
    ]


def test_a_process_with_an_empty_reason_is_not_spoken_of_and_its_ion_only_looks_on(brine: Cell) -> None:
    verdict = judge(brine, "anode", course(rules_out(Kind.HALOGEN, ""), chooses(Kind.OXYGEN)))
    assert verdict.passed_over == ()
    assert [kind.ascii for kind in verdict.spectators] == ["Cl^-"]


def test_reasons_assumptions_and_doubts_of_all_rules_are_gathered(brine: Cell) -> None:
    doubting = Saying(lambda _: Ruling(because=("Salt is dear.",), assumptions=("One.",), is_contested=True))
    verdict = judge(brine, "anode", course(doubting, chooses(Kind.HALOGEN, assumptions=("Two.",))))
    assert verdict.because == ("Salt is dear.", "HALOGEN it is.")
    assert verdict.assumptions == ("One.", "Two.")
    assert verdict.is_contested


def test_an_undecidable_ruling_ends_the_trace_with_its_own_reason_only(brine: Cell) -> None:
    verdict = judge(
        brine,
        "anode",
        course(
            rules_out(Kind.HALOGEN, "Not today."),
            Saying(lambda _: undecidable("Too deep.")),
            chooses(Kind.OXYGEN),
        ),
    )
    assert (verdict.chosen, verdict.outcome) == (None, "not-decidable")
    assert verdict.because == ("Too deep.",)
    assert remarks(verdict) == [
        (Kind.HALOGEN, "Not today."),
        (Kind.OXYGEN, "The rules of this course do not reach this cell."),
    ]


def test_a_rule_that_chooses_what_is_not_in_the_competition_is_at_fault(
    cell_of: Callable[..., Cell], brine: Cell
) -> None:
    (copper, *_) = cell_of("CuSO4").at_cathode().processes
    with pytest.raises(CurriculumFault) as fault:
        judge(brine, "cathode", course(Saying(lambda _: Ruling(chosen=copper))))
    assert fault.value.code == "impossible-choice"
    assert "museum" in fault.value.detail


@pytest.mark.parametrize("rules", [(), (PASSES,), (rules_out(Kind.HALOGEN, "No."), PASSES)])
def test_a_course_whose_rules_all_pass_is_at_fault(brine: Cell, rules: tuple[DischargeRule, ...]) -> None:
    with pytest.raises(CurriculumFault) as fault:
        judge(brine, "anode", course(*rules))
    assert fault.value.code == "no-decision"
    assert fault.value.detail == "No rule of museum decides the anode."


def test_a_choice_beyond_the_course_brings_the_answer_that_the_later_rules_give(brine: Cell) -> None:
    first = chooses(Kind.HALOGEN, otherwise="A simpler class says this.")
    verdict = judge(brine, "anode", course(first, chooses(Kind.OXYGEN)))
    assert [(r.process.kind, r.because) for r in verdict.also_accepted] == [
        (Kind.OXYGEN, "A simpler class says this.")
    ]


def test_a_choice_beyond_the_course_stands_alone_if_the_later_rules_reach_no_answer(brine: Cell) -> None:
    first = chooses(Kind.HALOGEN, otherwise="A simpler class says this.")
    verdict = judge(brine, "anode", course(first, Saying(lambda _: undecidable("Too deep."))))
    assert verdict.also_accepted == ()
    assert verdict.outcome == "decided"


def test_a_choice_beyond_the_course_stands_alone_if_nothing_else_is_left(brine: Cell) -> None:
    first = rules_out(Kind.OXYGEN, "No oxygen here.")
    verdict = judge(
        brine, "anode", course(first, chooses(Kind.HALOGEN, otherwise="A simpler class says this."))
    )
    assert verdict.also_accepted == ()


def test_an_ion_with_a_process_that_is_told_is_no_spectator(cell_of: Callable[..., Cell]) -> None:
    mixed = cell_of("NaCl", "NaClO4")
    verdict = judge(mixed, "anode", course(rules_out(Kind.HALOGEN, "Not today."), chooses(Kind.OXYGEN)))
    assert [kind.ascii for kind in verdict.spectators] == ["ClO4^-"]


def test_spectators_of_an_undecided_electrode_are_those_of_the_competition(
    cell_of: Callable[..., Cell],
) -> None:
    verdict = judge(cell_of("KNO3"), "anode", course(Saying(lambda _: undecidable("Too deep."))))
    assert [kind.ascii for kind in verdict.spectators] == ["NO3^-"]


@dataclass(frozen=True, slots=True)
class Counting(ReadsNothingElse):
    """Chooses hydrogen and counts how often it is asked."""

    asked: list[str]
    sentence: str = "Hydrogen, always."

    def apply(self, situation: Situation) -> Ruling:
        self.asked.append(situation.competition.electrode)
        return Ruling(chosen=situation.of(Kind.HYDROGEN)[0])


def test_cells_that_differ_only_in_what_no_rule_reads_share_a_verdict(cell_of: Callable[..., Cell]) -> None:
    asked: list[str] = []
    museum = course(Counting(asked))
    weak, strong = (cell_of("NaCl", concentration=text) for text in ("0.1 mol/dm3", "0.7 mol/dm3"))
    assert judge(weak, "cathode", museum) is judge(strong, "cathode", museum)
    assert asked == ["cathode"]


def test_another_electrode_material_or_another_course_is_judged_anew(cell_of: Callable[..., Cell]) -> None:
    asked: list[str] = []
    museum = course(Counting(asked))
    for cell in (cell_of("NaCl"), cell_of("NaCl", cathode="steel"), cell_of("KCl")):
        judge(cell, "cathode", museum)
    judge(cell_of("NaCl"), "cathode", course(Counting(asked)))
    assert len(asked) == 4


def test_a_rule_that_does_not_say_what_it_reads_is_asked_every_time(brine: Cell) -> None:
    asked: list[str] = []

    def choose(situation: Situation) -> Ruling:
        asked.append(situation.competition.electrode)
        return Ruling(chosen=situation.of(Kind.HYDROGEN)[0])

    museum = course(Saying(choose))
    assert judge(brine, "cathode", museum) is not judge(brine, "cathode", museum)
    assert len(asked) == 2


def test_the_trace_holds_the_rules_that_spoke_in_their_order(brine: Cell) -> None:
    silent = Saying(lambda _: PASS, "Says nothing.")
    strikes_out = Saying(
        lambda s: Ruling(ruled_out=(Remark(s.remaining[0], "Not here."),)), "Strikes one out."
    )
    chooses = Saying(lambda s: Ruling(chosen=s.remaining[0]), "Takes the first.")
    verdict = judge(brine, "cathode", course(silent, strikes_out, chooses))
    assert [step.rule.sentence for step in verdict.trace] == ["Strikes one out.", "Takes the first."]
    assert verdict.trace[-1].ruling.chosen is verdict.chosen


def test_the_trace_of_an_open_verdict_ends_with_the_rule_that_left_it_open(brine: Cell) -> None:
    gives_up = Saying(lambda _: undecidable("Beyond this course."), "Gives up.")
    verdict = judge(brine, "cathode", course(gives_up))
    assert verdict.trace == (Step(gives_up, undecidable("Beyond this course.")),)
    assert verdict.chosen is None


def test_a_verdict_judged_afresh_is_the_same_and_is_not_kept(cell_of: Callable[..., Cell]) -> None:
    asked: list[str] = []
    museum = course(Counting(asked))
    first, second = (judge_afresh(cell_of("NaCl"), "cathode", museum) for _ in range(2))
    assert first.chosen is second.chosen
    assert len(asked) == 2
