"""Laws of comparisons: every course stands in exactly one group, and nothing depends on the order of the courses."""

import json
from collections.abc import Callable

from hypothesis import given, settings
from hypothesis import strategies as st

from ionwright.chemistry.cell import CellDescription, make_cell
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.chemistry.electrolytes import known_electrolytes
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import predict
from ionwright.teaching.comparison import ElectrodeComparison, accepts, compare
from ionwright.teaching.comparison_document import comparison_document

REGISTRY = load_curricula()
IDS = ("a-level", "gcse", "igcse")
DESCRIPTIONS = st.builds(
    CellDescription,
    electrolyte=st.lists(
        st.builds(
            Ingredient,
            st.sampled_from([known.formula for known in known_electrolytes()]),
            st.sampled_from([None, "dilute", "concentrated", "0.1 mol/dm3", "2 mol/dm3"]),
        ),
        min_size=1,
        max_size=2,
        unique_by=lambda one: one.substance,
    ).map(tuple),
    state=st.sampled_from(["aqueous", "aqueous", "molten"]),
    cathode=st.sampled_from(["graphite", "mercury", "copper"]),
    anode=st.sampled_from(["graphite", *electrodes()]),
)
COURSES = st.lists(st.sampled_from(IDS), min_size=1, unique=True)


def check_side(side: ElectrodeComparison, ids: set[str]) -> None:
    standing = [one.curriculum.id for group in side.groups for one in group.standings]
    assert sorted(standing) == sorted(ids)
    answers = [group.answer for group in side.groups]
    assert len(answers) == len(set(answers))
    assert len(side.differences) == len(answers) * (len(answers) - 1) // 2
    for difference in side.differences:
        for group, other, partings in zip(
            difference.groups, reversed(difference.groups), difference.partings, strict=True
        ):
            for one, parting in zip(group.standings, partings, strict=True):
                rules = (*one.curriculum.cathode_rules, *one.curriculum.anode_rules)
                assert parting.rule in {rule.sentence for rule in rules}
                assert parting.because
                assert all(text.endswith(".") for text in parting.because)
                assert isinstance(accepts(one.verdict, other.answer), bool)


def refusal_of(question: Callable[[], object]) -> tuple[str, str] | None:
    """Code and place of the refusal; None for an answer."""
    try:
        question()
    except IonwrightError as refusal:
        return refusal.code, refusal.where
    return None


@given(description=DESCRIPTIONS, ids=COURSES, data=st.data())
@settings(max_examples=150, deadline=None)
def test_every_course_stands_in_one_group_whatever_the_order(
    description: CellDescription, ids: list[str], data: st.DataObject
) -> None:
    try:
        cell = make_cell(description)
    except IonwrightError:
        return
    found = compare(cell, [REGISTRY[id_] for id_ in ids])
    check_side(found.cathode, set(ids))
    check_side(found.anode, set(ids))
    document = comparison_document(found)
    mixed = data.draw(st.permutations(ids))
    again = comparison_document(compare(description, [REGISTRY[id_] for id_ in mixed]))
    assert json.dumps(document) == json.dumps(again)


@given(description=DESCRIPTIONS, id_=st.sampled_from(IDS))
@settings(max_examples=150, deadline=None)
def test_one_course_is_one_group_and_says_what_it_predicts(description: CellDescription, id_: str) -> None:
    refusal = refusal_of(lambda: predict(description, REGISTRY[id_]))
    assert refusal_of(lambda: compare(description, [REGISTRY[id_]])) == refusal
    if refusal:
        return
    prediction, found = predict(description, REGISTRY[id_]), compare(description, [REGISTRY[id_]])
    for side, account in ((found.cathode, prediction.cathode), (found.anode, prediction.anode)):
        (group,) = side.groups
        assert side.differences == ()
        assert group.answer.formulas == tuple(kind.ascii for kind in account.products)
        assert group.standings[0].half_equation == account.half_equation
