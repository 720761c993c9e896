"""The reverse question: which cells two courses answer differently, by which rules, a page at a time."""

from dataclasses import replace
from typing import Any

import pytest

from ionwright.chemistry.tabled_cells import tabled_cells
from ionwright.curricula.host import Registry
from ionwright.teaching.comparison import compare
from ionwright.teaching.disagreement import Disagreement, Disagreements, disagreements
from ionwright.teaching.disagreement_document import disagreements_document


@pytest.fixture(scope="module")
def found(registry: Registry) -> Disagreements:
    return disagreements(registry["gcse"], [registry["igcse"]])


def rows(found: Disagreements) -> list[Disagreement]:
    return [row for group in found.groups for row in group.disagreements]


def test_dilute_chlorides_are_where_gcse_and_igcse_part(found: Disagreements) -> None:
    (group,) = [one for one in found.groups if one.rules.electrode == "anode"]
    assert "whatever the concentration" in group.rules.rule
    assert group.rules.other_rule.startswith("From a concentrated solution of chloride ions")
    (brine,) = [row for row in group.disagreements if row.tabled.name == "sodium chloride"]
    assert (brine.answer.text, brine.other_answer.text) == ("chlorine", "oxygen")
    assert brine.concentrations == ("dilute",)
    assert brine.others == ("igcse",)


def test_one_side_that_accepts_both_answers_is_told(found: Disagreements) -> None:
    by_name = {row.tabled.name: row for row in rows(found)}
    assert by_name["potassium iodide"].accepted_across is True


def test_every_disagreement_is_one_for_the_comparison_too(found: Disagreements, registry: Registry) -> None:
    for group in found.groups:
        for row in group.disagreements[::9]:
            compared = compare(row.tabled.cell, [registry["gcse"], registry["igcse"]])
            side = compared.cathode if group.rules.electrode == "cathode" else compared.anode
            answers = {one.standings[0].curriculum.id: one.answer for one in side.groups}
            assert answers == {"gcse": row.answer, "igcse": row.other_answer}
            sentences = {one.rule for partings in side.differences[0].partings for one in partings}
            assert sentences == {group.rules.rule, group.rules.other_rule}


def test_nothing_is_left_out(found: Disagreements, registry: Registry) -> None:
    listed = {(row.tabled.name, row.tabled.description.anode) for row in rows(found)}
    for tabled in tabled_cells()[::13]:
        if tabled.electrodes == ("cathode", "anode"):
            compared = compare(tabled.cell, [registry["gcse"], registry["igcse"]])
            is_split = len(compared.cathode.groups) > 1 or len(compared.anode.groups) > 1
            assert not is_split or (tabled.name, tabled.description.anode) in listed, tabled.name


def test_cells_that_differ_in_the_concentration_alone_are_taken_together(registry: Registry) -> None:
    bare = replace(registry["gcse"], id="bare", anode_rules=registry["gcse"].anode_rules[1:])
    found = disagreements(registry["igcse"], [bare], "anode")
    keys = [
        (row.tabled.name, row.tabled.description.anode, row.answer, row.other_answer, row.accepted_across)
        for row in rows(found)
    ]
    assert len(keys) == len(set(keys))
    assert ("dilute", "concentrated") in {row.concentrations for row in rows(found)}


def test_a_course_agrees_with_its_twin_and_does_not_count_itself(registry: Registry) -> None:
    gcse = registry["gcse"]
    found = disagreements(gcse, [gcse, replace(gcse, id="twin")])
    assert [other.id for other in found.others] == ["twin"]
    assert found.count == 0
    assert found.groups == ()


def test_the_other_way_round_is_the_same_with_the_sides_changed(
    found: Disagreements, registry: Registry
) -> None:
    back = disagreements(registry["igcse"], [registry["gcse"]])
    forth = {(one.rules.rule, one.rules.other_rule, len(one.disagreements)) for one in found.groups}
    assert {(one.rules.other_rule, one.rules.rule, len(one.disagreements)) for one in back.groups} == forth


def test_others_that_answer_alike_by_the_same_rule_stand_in_one_row(registry: Registry) -> None:
    twin = replace(registry["igcse"], id="twin")
    one = disagreements(registry["gcse"], [registry["igcse"]])
    two = disagreements(registry["gcse"], [twin, registry["igcse"]])
    assert two.count == one.count
    assert {row.others for row in rows(two)} == {("igcse", "twin")}
    assert two.groups[0].others == ("igcse", "twin")


def test_a_course_whose_rules_fail_on_a_cell_is_not_held_to_it(registry: Registry) -> None:
    silent = replace(registry["gcse"], id="silent", anode_rules=())
    found = disagreements(registry["igcse"], [silent])
    assert {group.rules.electrode for group in found.groups} == {"cathode"}


def test_a_rule_that_breaks_is_logged_once_and_not_for_every_cell(
    registry: Registry, caplog: pytest.LogCaptureFixture
) -> None:
    careless = replace(registry["gcse"], id="careless", anode_rules=(None,))
    found = disagreements(registry["igcse"], [careless])
    assert {group.rules.electrode for group in found.groups} == {"cathode"}
    assert [record.message for record in caplog.records] == ["the rules of careless failed"]


def page(found: Disagreements, **sizes: int) -> dict[str, Any]:
    return disagreements_document(found, **sizes)


def test_pages_put_together_are_the_whole(found: Disagreements) -> None:
    whole = page(found, limit=10_000)
    assert "next_offset" not in whole
    assert sum(len(group["disagreements"]) for group in whole["groups"]) == whole["count"] == found.count
    together: list[list[Any]] = [[] for _ in whole["groups"]]
    offset: int | None = 0
    while offset is not None:
        part = page(found, offset=offset, limit=40)
        assert sum(len(group["disagreements"]) for group in part["groups"]) <= 40
        for number, group in enumerate(part["groups"]):
            together[number] += group["disagreements"]
        offset = part.get("next_offset")
    assert together == [group["disagreements"] for group in whole["groups"]]


def test_a_page_behind_the_end_is_empty_and_still_names_the_rules(found: Disagreements) -> None:
    behind = page(found, offset=100_000)
    assert [group["disagreements"] for group in behind["groups"]] == [[] for _ in found.groups]
    assert sum(group["count"] for group in behind["groups"]) == found.count


def test_the_largest_group_comes_first(found: Disagreements) -> None:
    sizes = [len(group.disagreements) for group in found.groups]
    assert sizes == sorted(sizes, reverse=True)
    assert found.cells == len(tabled_cells())
