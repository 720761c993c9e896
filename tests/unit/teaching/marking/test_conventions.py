"""Courses mark differently: each convention that a curriculum can declare changes what a line earns."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from ionwright.curricula import Curriculum, CurriculumFileFault, describe
from ionwright.curricula.declaration import read_declaration
from ionwright.curricula.host import load_curricula
from ionwright.teaching.marking import check, given_expectation

GCSE = load_curricula()["gcse"]
DECLARATION = """
format = 1
id = "skerry-foundation"
title = "Skerry Point foundation course"

[cathode]
rule = "ladder"
order = ["K", "Zn", "H", "Cu"]

[anode]
halides = "always"

[conventions]
state_symbols = "{states}"
oxidation_also_minus = {minus}
hydrogen_from = {{acidic = ["ions"], neutral = ["ions"], alkaline = ["ions"]}}
oxygen_from = {{acidic = ["ions"], neutral = ["ions"], alkaline = ["ions"]}}

{marking}
"""


def declared(marking: str = "", *, states: str = "asked", minus: str = "true") -> Curriculum:
    text = DECLARATION.format(marking=marking, states=states, minus=minus)
    return read_declaration(text, "skerry.toml")[0]


def marked(
    line: str, expected: str, *, states_asked: bool = False, **conventions: Any
) -> tuple[str, int, list[str]]:
    curriculum = replace(GCSE, marking=replace(GCSE.marking, **conventions))
    marking = check(line, given_expectation((expected,), curriculum, states_asked=states_asked))
    return marking.verdict, marking.awarded, [fault.code for fault in marking.faults]


CHLORINE, SILVER = "2Cl^- -> Cl2 + 2e-", "Ag^+(aq) + e- -> Ag(s)"


@pytest.mark.parametrize(
    ("line", "expected", "conventions", "told"),
    [
        ("2Ag+ + 2e- -> 2Ag", SILVER, {"multiples": "remarked"}, ("correct", 2, ["not-lowest-terms"])),
        ("2Ag+ + 2e- -> 2Ag", SILVER, {"multiples": "accepted"}, ("correct", 2, [])),
        ("2Ag+ + 2e- -> 2Ag", SILVER, {"multiples": "refused"}, ("incorrect", 1, ["not-lowest-terms"])),
        ("Cl- -> ½Cl2 + e-", CHLORINE, {"fractions": "accepted"}, ("correct", 2, [])),
        ("Cl- -> ½Cl2 + e-", CHLORINE, {"fractions": "remarked"}, ("correct", 2, ["not-lowest-terms"])),
        ("Cl- -> ½Cl2 + e-", CHLORINE, {"fractions": "refused"}, ("incorrect", 1, ["not-lowest-terms"])),
        (
            "2Cl- - 2e- -> Cl2",
            CHLORINE,
            {"subtracted_electrons": False},
            ("incorrect", 0, ["electrons-wrong-side"]),
        ),
        ("2Cl- = Cl2 + 2e-", CHLORINE, {"equals_sign": False}, ("incorrect", 1, ["arrow"])),
        ("2Cl- ⇌ Cl2 + 2e-", CHLORINE, {"equals_sign": False}, ("correct", 2, [])),
        ("2Cl- ⇌ Cl2 + 2e-", CHLORINE, {"equilibrium_arrow": False}, ("incorrect", 1, ["arrow"])),
        ("2Cl- <-> Cl2 + 2e-", CHLORINE, {"equilibrium_arrow": False}, ("incorrect", 1, ["arrow"])),
        ("2Cl- -> Cl2 + 2e", CHLORINE, {"electron_without_sign": False}, ("incorrect", 1, ["electron-sign"])),
        ("Ag+ + e- -> Ag", SILVER, {"state_symbols": "required"}, ("incorrect", 1, ["state-symbols"] * 2)),
        ("Ag+(aq) + e- -> Ag(s)", SILVER, {"state_symbols": "required"}, ("correct", 2, [])),
        ("Ag+(s) + e- -> Ag(s)", SILVER, {"state_symbols": "asked"}, ("correct", 2, [])),
        ("Ag+ + e- -> Ag", SILVER, {"species_marks": 3, "balance_marks": 3}, ("correct", 6, [])),
        ("Ag+ + 2e- -> Ag", SILVER, {"species_marks": 3, "balance_marks": 3}, ("incorrect", 3, None)),
        ("Ag+ + 2e- -> Ag", SILVER, {"species_marks": 0}, ("incorrect", 0, None)),
    ],
)
def test_a_convention_changes_what_a_line_earns(
    line: str, expected: str, conventions: dict[str, Any], told: tuple[str, int, list[str] | None]
) -> None:
    verdict, awarded, codes = marked(line, expected, **conventions)
    assert (verdict, awarded) == told[:2]
    if told[2] is not None:
        assert codes == told[2]


def test_a_course_without_state_symbols_never_counts_them() -> None:
    asked = marked("Ag+ + e- -> Ag", SILVER, states_asked=True, state_symbols="not-used")
    assert asked == ("correct", 2, [])


def test_a_curriculum_declares_its_marking() -> None:
    curriculum = declared(
        "[marking]\nspecies_marks = 3\nbalance_marks = 2\nmultiples = 'refused'\nequals_sign = false"
    )
    assert curriculum.marking.available == 5
    told = describe(curriculum)["marking"]
    assert [(point["point"], point["marks"]) for point in told["points"]] == [("species", 3), ("balance", 2)]
    assert (told["multiples"], told["fractions"], told["equals_sign"]) == ("refused", "accepted", False)


def test_what_is_left_out_follows_the_way_in_which_the_course_writes() -> None:
    marking = declared(states="required", minus="false").marking
    assert (marking.state_symbols, marking.subtracted_electrons) == ("required", False)
    assert (marking.species_marks, marking.balance_marks, marking.multiples) == (1, 1, "remarked")


@pytest.mark.parametrize(
    ("table", "where"),
    [
        ("species_marks = -1", "marking.species_marks"),
        ("species_marks = 1.5", "marking.species_marks"),
        ("species_marks = 0\nbalance_marks = 0", "marking.balance_marks"),
        ("multiples = 'sometimes'", "marking.multiples"),
        ("equals_sign = 'yes'", "marking.equals_sign"),
        ("bonus = 1", "marking.bonus"),
    ],
)
def test_a_fault_in_the_table_is_named(table: str, where: str) -> None:
    with pytest.raises(CurriculumFileFault) as caught:
        declared(f"[marking]\n{table}")
    assert [path for path, _ in caught.value.faults] == [where]


@pytest.mark.parametrize("curriculum", load_curricula().values(), ids=lambda curriculum: curriculum.id)
def test_every_built_in_curriculum_says_how_it_marks(curriculum: Curriculum) -> None:
    assert 1 <= curriculum.marking.available <= 6
    assert curriculum.certainty["marking"] in ("high", "medium", "low")
