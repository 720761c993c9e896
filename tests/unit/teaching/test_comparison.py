"""Comparisons: who stands with whom, the rule that parts them, and how all this is told."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import pytest

from ionwright.chemistry.cell import Cell, CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.process import Kind
from ionwright.curricula.host import Registry
from ionwright.curricula.model import Curriculum, Remark, Ruling, Situation, undecidable
from ionwright.teaching.comparison import (
    CHOOSES,
    LEAVES_OPEN,
    RULES_OUT,
    Comparison,
    ElectrodeComparison,
    compare,
)
from ionwright.teaching.comparison_document import comparison_document

THREE = ("a-level", "gcse", "igcse")


@dataclass(frozen=True, slots=True)
class Saying:
    """A rule that says what it is told to say."""

    ruling: Callable[[Situation], Ruling]
    sentence: str

    def apply(self, situation: Situation) -> Ruling:
        return self.ruling(situation)


@pytest.fixture(scope="session")
def compared(cell_of: Callable[..., Cell], registry: Registry) -> Callable[..., Comparison]:
    def make(*electrolyte: str, curricula: tuple[str, ...] = THREE, **rest: object) -> Comparison:
        return compare(cell_of(*electrolyte, **rest), [registry[id_] for id_ in curricula])

    return make


def grouped(side: ElectrodeComparison) -> list[tuple[str, list[str]]]:
    return [(g.answer.text, [s.curriculum.id for s in g.standings]) for g in side.groups]


def parted(side: ElectrodeComparison) -> list[list[tuple[str, str, str]]]:
    """For each difference who parts by which rule, shortened, and what it does."""
    found = []
    for difference in side.differences:
        rows = []
        for group, partings in zip(difference.groups, difference.partings, strict=True):
            for standing, one in zip(group.standings, partings, strict=True):
                rows.append((standing.curriculum.id, one.rule[:20], one.effect))
        found.append(rows)
    return found


def test_courses_with_the_same_products_stand_together(compared: Callable[..., Comparison]) -> None:
    brine = compared("NaCl", concentration="dilute")
    assert grouped(brine.cathode) == [("hydrogen", ["a-level", "gcse", "igcse"])]
    assert grouped(brine.anode) == [("oxygen", ["a-level", "igcse"]), ("chlorine", ["gcse"])]


def test_the_first_rule_that_parts_two_answers_is_named(compared: Callable[..., Comparison]) -> None:
    brine = compared("NaCl", concentration="dilute")
    assert parted(brine.anode) == [
        [
            ("a-level", "At the anode the cou", CHOOSES),
            ("igcse", "From a concentrated ", RULES_OUT),
            ("gcse", "If chloride ions, br", CHOOSES),
        ]
    ]
    (_, igcse), (gcse,) = brine.anode.differences[0].partings
    assert igcse.because == ("The solution is dilute, so chloride ions stay in solution.",)
    assert gcse.because == ("Chloride ions are present, so chlorine forms at the anode rather than oxygen.",)


def test_courses_that_cannot_decide_are_the_last_group(compared: Callable[..., Comparison]) -> None:
    both = compared("NaCl", "KI", concentration="concentrated", curricula=("a-level", "gcse"))
    assert grouped(both.anode) == [("iodine", ["a-level"]), ("not decided", ["gcse"])]
    assert [effect for *_, effect in parted(both.anode)[0]] == [CHOOSES, LEAVES_OPEN]


def test_an_amalgam_is_another_answer_than_the_metal(
    cell_of: Callable[..., Cell], registry: Registry
) -> None:
    def kind(wanted: Kind) -> Callable[[Situation], Ruling]:
        return lambda situation: Ruling(chosen=situation.of(wanted)[0])

    courses = [
        replace(registry["gcse"], id=wanted.name.lower(), cathode_rules=(Saying(kind(wanted), "Told."),))
        for wanted in (Kind.AMALGAM, Kind.METAL)
    ]
    found = compare(cell_of("NaCl", cathode="mercury"), courses)
    assert grouped(found.cathode) == [("sodium amalgam", ["amalgam"]), ("sodium", ["metal"])]
    names = [group["products"][0]["name"] for group in comparison_document(found)["cathode"]["groups"]]
    assert names == ["sodium amalgam", "sodium"]


def test_a_rule_that_struck_the_other_answer_out_comes_before_the_choice(
    cell_of: Callable[..., Cell], registry: Registry
) -> None:
    def strike(situation: Situation) -> Ruling:
        halogens = situation.of(Kind.HALOGEN)
        return Ruling(ruled_out=tuple(Remark(p, "Not in this museum.") for p in halogens))

    strict = replace(
        registry["gcse"],
        id="strict",
        anode_rules=(Saying(strike, "No halogens here."), *registry["igcse"].anode_rules),
    )
    cell = cell_of("NaCl", concentration="concentrated")
    (difference,) = compare(cell, [strict, registry["gcse"]]).anode.differences
    by_id = {
        standing.curriculum.id: one
        for group, partings in zip(difference.groups, difference.partings, strict=True)
        for standing, one in zip(group.standings, partings, strict=True)
    }
    assert by_id["strict"] == ("No halogens here.", ("Not in this museum.",), RULES_OUT)
    assert by_id["gcse"].effect == CHOOSES


def test_a_course_whose_rules_fail_is_set_aside_and_the_others_are_compared(
    cell_of: Callable[..., Cell], registry: Registry
) -> None:
    silent = replace(registry["gcse"], id="silent", anode_rules=())
    found = compare(cell_of("NaCl"), [silent, registry["gcse"]])
    assert [one.id for one in found.curricula] == ["gcse"]
    assert [(one.id, reason) for one, reason in found.set_aside] == [
        ("silent", "No rule of silent decides the anode.")
    ]
    assert grouped(found.cathode) == [("hydrogen", ["gcse"])]
    told = comparison_document(found)
    assert told["set_aside"] == [{"curriculum": "silent", "reason": "No rule of silent decides the anode."}]


def test_a_rule_that_breaks_harms_no_other_course_and_is_logged(
    cell_of: Callable[..., Cell], registry: Registry, caplog: pytest.LogCaptureFixture
) -> None:
    def slip(_: Situation) -> Ruling:
        raise ZeroDivisionError("a slip of its author")

    careless = replace(registry["gcse"], id="careless", anode_rules=(Saying(slip, "Divides."),))
    found = compare(cell_of("NaCl"), [careless, registry["igcse"]])
    assert grouped(found.cathode) == [("hydrogen", ["igcse"])]
    assert [(one.id, reason) for one, reason in found.set_aside] == [
        ("careless", "A rule of careless failed on this cell; the failure is in the log.")
    ]
    assert "a slip of its author" in caplog.text


def test_a_cell_that_would_not_work_is_refused_as_for_a_prediction(registry: Registry) -> None:
    limewash = CellDescription(electrolyte=(Ingredient("CaCO3", None),))
    with pytest.raises(CellRefused) as caught:
        compare(limewash, registry.values())
    assert caught.value.code == "insoluble"


def test_a_course_that_is_given_twice_counts_once(compared: Callable[..., Comparison]) -> None:
    assert grouped(compared("NaCl", curricula=("gcse", "gcse")).cathode) == [("hydrogen", ["gcse"])]


# --- as plain data


def told(compared: Callable[..., Comparison], *electrolyte: str, **rest: object) -> dict[str, Any]:
    return comparison_document(compared(*electrolyte, **rest), frozenset({"ascii"}))


def test_each_course_writes_in_its_own_form(compared: Callable[..., Comparison]) -> None:
    (group,) = told(compared, "NaCl", concentration="dilute")["cathode"]["groups"]
    assert [(one["curricula"], one["half_equation"]["ascii"]) for one in group["half_equations"]] == [
        (["a-level"], "2H2O + 2e- -> H2 + 2OH^-"),
        (["gcse", "igcse"], "2H^+ + 2e- -> H2"),
    ]
    assert group["products"] == [{"formula": "H2", "name": "hydrogen", "state": "g"}]


def test_who_answers_what_is_told_in_one_sentence(compared: Callable[..., Comparison]) -> None:
    brine = told(compared, "NaCl", concentration="dilute", curricula=("gcse", "igcse"))
    assert brine["cathode"]["summary"] == "Both courses: hydrogen."
    assert brine["cathode"]["agreed"] is True
    assert brine["anode"]["summary"] == "Chlorine (GCSE); oxygen (International GCSE and O level)."
    assert brine["anode"]["agreed"] is False
    alone = told(compared, "NaCl", curricula=("gcse",))
    assert alone["anode"]["summary"] == "GCSE: chlorine."


def test_a_long_list_of_courses_is_cut_in_the_sentence(
    cell_of: Callable[..., Cell], registry: Registry
) -> None:
    many = [replace(registry["gcse"], id=f"course-{n}", title=f"Course {n}") for n in range(6)]
    found = comparison_document(compare(cell_of("NaCl", concentration="dilute"), [*many, registry["igcse"]]))
    assert found["anode"]["summary"] == (
        "Chlorine (Course 0, Course 1, Course 2, and 3 more); oxygen (International GCSE and O level)."
    )


def test_contested_answers_are_marked_and_what_is_also_accepted_is_told(
    compared: Callable[..., Comparison],
) -> None:
    anode = told(compared, "NaCl", concentration="dilute")["anode"]
    oxygen = anode["groups"][0]
    assert "a-level" in oxygen["contested"]
    accepted = {id_: one["products"] for one in oxygen["also_accepted"] for id_ in one["curricula"]}
    assert accepted["a-level"] == ["Cl2"]
    assert "a-level" in anode["differences"][0]["accepted_across"]


def test_how_a_concentration_was_read_is_told_of_each_course(compared: Callable[..., Comparison]) -> None:
    brine = told(compared, "NaCl", concentration="0.10 mol/dm3", curricula=("gcse", "igcse"))
    (reading,) = [one for one in brine["assumptions"] if "0.1 mol/dm³ of chloride ions" in one["text"]]
    assert reading["curricula"] == ["igcse"]


def test_what_was_assumed_of_the_cell_holds_for_all(compared: Callable[..., Comparison]) -> None:
    melt = told(compared, "Al2O3", state="molten")
    (cryolite,) = [one for one in melt["assumptions"] if "cryolite" in one["text"]]
    assert cryolite["curricula"] == list(THREE)


def test_conventions_are_told_only_where_they_differ(
    cell_of: Callable[..., Cell], registry: Registry
) -> None:
    gcse = registry["gcse"]
    twin = replace(gcse, id="twin")
    strict = replace(gcse, id="strict", conventions=replace(gcse.conventions, state_symbols="required"))
    assert comparison_document(compare(cell_of("NaCl"), [gcse, twin]))["conventions"] == []
    (states,) = comparison_document(compare(cell_of("NaCl"), [gcse, twin, strict]))["conventions"]
    assert states["about"] == "state symbols"
    assert {"curricula": ["strict"], "text": "State symbols are required."} in states["readings"]


def test_an_open_cell_has_reasons_and_no_equation(cell_of: Callable[..., Cell], registry: Registry) -> None:
    beyond = Saying(lambda _: undecidable("Nobody knows."), "It stops here.")
    course: Curriculum = replace(registry["gcse"], id="brief", anode_rules=(beyond,))
    (group,) = comparison_document(compare(cell_of("NaCl"), [course]))["anode"]["groups"]
    assert group["outcome"] == "not-decidable"
    assert group["products"] == []
    assert "half_equations" not in group
    assert group["reasons"] == [
        {"curricula": ["brief"], "rule": "It stops here.", "because": ["Nobody knows."]}
    ]
