"""Laws of the marking desk: what is right stays right in every dress, and one wrong stroke is always found."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from itertools import product
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ionwright.chemistry.couple import couples
from ionwright.chemistry.equation import Equation, Term
from ionwright.chemistry.notation import rendered
from ionwright.chemistry.species import ELECTRON, Species
from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import CellDescription, Ingredient
from ionwright.teaching.marking import (
    IN_ORDER,
    MarkingFault,
    check,
    electrode_expectation,
    given_expectation,
    marking_document,
)
from ionwright.teaching.marking.expectation import Standing

if TYPE_CHECKING:
    from ionwright.teaching.marking import Expectation

CURRICULA = load_curricula()
ELECTROLYTES = ("CuSO4", "NaCl", "KI", "H2SO4", "NaOH", "AgNO3", "ZnBr2", "CuCl2", "NiSO4", "FeCl3", "MgSO4")
MELTS = ("PbBr2", "NaCl", "Al2O3", "ZnCl2", "KI")
ANODES = ("graphite", "copper", "silver", "nickel", "zinc")


@cache
def cells() -> tuple[Expectation, ...]:
    """What is expected at both electrodes of many cells under every curriculum."""
    described = [
        CellDescription(electrolyte=(Ingredient(substance, word),), anode=anode)
        for substance, anode, word in product(ELECTROLYTES, ANODES, ("dilute", "concentrated"))
    ] + [CellDescription(electrolyte=(Ingredient(substance),), state="molten") for substance in MELTS]
    found = []
    for cell, electrode, curriculum in product(described, ("cathode", "anode"), CURRICULA.values()):
        try:
            found.append(electrode_expectation(cell, electrode, curriculum))
        except MarkingFault:
            continue  # the course does not decide this electrode
        except IonwrightError:
            continue  # the cell would not work
    return tuple(found)


@cache
def tabled() -> tuple[Expectation, ...]:
    """Every couple of the tables as a given half-equation, both ways round."""
    halves = [couple.reduction for couple in couples().values()]
    texts = [half.ascii for half in halves] + [half.reversed().ascii for half in halves]
    return tuple(given_expectation((text,), CURRICULA["a-level"]) for text in texts)


def questions() -> st.SearchStrategy[Expectation]:
    return st.sampled_from(cells()) | st.sampled_from(tabled())


ARROWS = st.sampled_from([" -> ", "->", " → ", " --> ", " = ", " ⇌ ", "  ⟶ ", " => "])
PLUSES = st.sampled_from([" + ", " +  ", "  + "])
ELECTRONS = st.sampled_from(["e-", "e", "e⁻", "e^-", "e−", "e^{-}"])


@st.composite
def spelt(draw: st.DrawFn, kind: Species) -> str:
    """A species in one of the spellings that say one thing only."""
    if kind.is_electron:
        return draw(ELECTRONS)
    unicode = rendered(Equation((Term(kind),), (Term(kind),)), frozenset({"text"}))["text"].partition(" ")[0]
    plain = kind.ascii.replace("^", "")
    number, sign = str(abs(kind.charge)), "+" if kind.charge > 0 else "-"
    options = [kind.ascii, unicode]
    if kind.charge:
        options += [f"{kind.formula}({number}{sign})", f"{kind.formula}^{{{number}{sign}}}"]
    if abs(kind.charge) == 1 and kind.formula[-1].isalpha():
        options.append(plain)
    return draw(st.sampled_from(options))


@st.composite
def dressed(draw: st.DrawFn, half: Equation, *, needs_states: bool = False) -> str:
    """A half-equation in another order, spelling, arrow and spacing, with state symbols or, if it may, without."""
    sides = []
    has_states = needs_states or draw(st.booleans())
    for side in (half.left, half.right):
        terms = []
        for term in draw(st.permutations(side)):
            number = "" if term.coefficient == 1 else str(term.coefficient)
            gap = draw(st.sampled_from(["", " "])) if number else ""
            state = f"({term.state})" if has_states and term.state else ""
            terms.append(f"{number}{gap}{draw(spelt(term.species))}{state}")
        sides.append(draw(PLUSES).join(terms))
    return draw(ARROWS).join(sides)


MULTIPLES = st.integers(1, 12) | st.sampled_from([Fraction(1, 2), Fraction(3, 2)])


@given(data=st.data(), expectation=questions())
@settings(max_examples=600, deadline=None)
def test_every_accepted_form_is_right_however_it_is_written(
    data: st.DataObject, expectation: Expectation
) -> None:
    half = data.draw(st.sampled_from(expectation.forms)).scaled(data.draw(MULTIPLES))
    line = data.draw(dressed(half, needs_states=expectation.wants_states))
    marking = check(line, expectation)
    assert marking.verdict == "correct", (line, [fault.code for fault in marking.faults])
    assert marking.awarded == expectation.marking.available
    assert all(fault.is_remark for fault in marking.faults)


@given(data=st.data(), expectation=st.sampled_from(cells()))
@settings(max_examples=200, deadline=None)
def test_electrons_may_be_taken_away_on_the_left_of_an_oxidation(
    data: st.DataObject, expectation: Expectation
) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    assume(half.electrons < 0)
    assume(expectation.marking.subtracted_electrons and not expectation.wants_states)
    left = " + ".join(term.ascii for term in half.left)
    right = " + ".join(term.ascii for term in half.right if not term.species.is_electron)
    assert check(f"{left} - {-half.electrons}e- -> {right}", expectation).verdict == "correct"


# ------------------------------------------------------------------ one wrong stroke


def with_term(half: Equation, index: int, term: Term) -> Equation:
    terms = [*half.left, *half.right]
    terms[index] = term
    return Equation(tuple(terms[: len(half.left)]), tuple(terms[len(half.left) :]))


@given(data=st.data(), expectation=questions(), number=st.integers(1, 9))
@settings(max_examples=500, deadline=None)
def test_a_wrong_number_is_found(data: st.DataObject, expectation: Expectation, number: int) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    terms = (*half.left, *half.right)
    index = data.draw(st.integers(0, len(terms) - 1))
    term = terms[index]
    assume(number != term.coefficient)
    line = with_term(half, index, Term(term.species, number)).ascii
    marking = check(line, expectation)
    codes = [fault.code for fault in marking.faults]
    assert marking.verdict == "incorrect", line
    if len(terms) > 2:
        assert codes[0] == ("wrong-electron-count" if term.species.is_electron else "atoms-not-balanced"), (
            line
        )
    start, end = marking.faults[0].at
    assert 0 <= start < end <= len(line)
    if term.species.is_electron:
        assert line[start:end].endswith("e-")


@given(data=st.data(), expectation=questions())
@settings(max_examples=400, deadline=None)
def test_a_wrong_charge_is_found(data: st.DataObject, expectation: Expectation) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    terms = (*half.left, *half.right)
    index = data.draw(st.integers(0, len(terms) - 1))
    old = terms[index].species
    assume(old.charge and not old.is_electron)
    charge = data.draw(st.integers(-4, 4).filter(lambda charge: charge not in (0, old.charge)))
    new = Species(old.formula, charge, old.atoms)
    assume(new not in {term.species for term in terms})
    line = with_term(half, index, Term(new, terms[index].coefficient)).ascii
    marking = check(line, expectation)
    assert marking.verdict == "incorrect", line
    codes = [fault.code for fault in marking.faults]
    # with another charge it can be the very ion of which the course says that it does not react
    assert codes[0] == "wrong-ion-charge" or codes[0] == "wrong-species", line
    if not expectation.electrode:
        assert codes[0] == "wrong-ion-charge", line


@given(data=st.data(), expectation=questions())
@settings(max_examples=300, deadline=None)
def test_electrons_on_the_wrong_side_are_found(data: st.DataObject, expectation: Expectation) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    number = abs(half.electrons)
    left = tuple(term for term in half.left if not term.species.is_electron)
    right = tuple(term for term in half.right if not term.species.is_electron)
    electrons = (Term(ELECTRON, number),)
    line = Equation(
        *((left, (*right, *electrons)) if half.electrons > 0 else ((*left, *electrons), right))
    ).ascii
    marking = check(line, expectation)
    assert marking.verdict == "incorrect", line
    assert marking.faults[0].code == "electrons-wrong-side", line
    assert marking.awarded == 0


@given(data=st.data(), expectation=questions())
@settings(max_examples=300, deadline=None)
def test_electrons_left_out_are_found(data: st.DataObject, expectation: Expectation) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    sides = [tuple(t for t in side if not t.species.is_electron) for side in (half.left, half.right)]
    line = Equation(sides[0], sides[1]).ascii
    marking = check(line, expectation)
    assert marking.verdict == "incorrect", line
    assert marking.faults[0].code == "no-electrons", line


@given(expectation=questions(), data=st.data())
@settings(max_examples=300, deadline=None)
def test_a_line_that_runs_backwards_is_found(data: st.DataObject, expectation: Expectation) -> None:
    half = data.draw(st.sampled_from(expectation.forms))
    backwards = half.reversed()
    assume(backwards not in expectation.forms)
    marking = check(backwards.ascii, expectation)
    assert marking.verdict == "incorrect"
    codes = [fault.code for fault in marking.faults]
    # in a plating bath the line backwards is what happens at the other electrode, and is called that alone
    elsewhere = {one.equation for one in expectation.targets if one.standing is Standing.OTHER_ELECTRODE}
    assert codes == (["wrong-electrode"] if backwards in elsewhere else ["reversed"]), backwards.ascii


@given(expectation=st.sampled_from(cells()), other=st.sampled_from(cells()))
@settings(max_examples=300, deadline=None)
def test_the_answer_to_another_question_earns_nothing(expectation: Expectation, other: Expectation) -> None:
    half = other.model_answer
    assume(half.without_states() not in {form.without_states() for form in expectation.forms})
    marking = check(half.ascii, expectation)
    assert (marking.verdict, marking.awarded) == ("incorrect", 0), half.ascii
    codes = [fault.code for fault in marking.faults]
    # a film of AgCl beside a bare silver anode holds the very ion, with one that stands by
    told = ("wrong-electrode", "wrong-species", "reversed", "wrong-ion-charge", "spectator-ions")
    assert codes[0] in told, (half.ascii, codes)
    assert "atoms-not-balanced" not in codes
    assert "charge-not-balanced" not in codes


@given(expectation=st.sampled_from(cells()))
@settings(max_examples=100, deadline=None)
def test_ions_that_stand_by_are_found(expectation: Expectation) -> None:
    half = expectation.model_answer
    taking_part = {term.species.formula for term in (*half.left, *half.right)}
    idle = [
        kind
        for kind in expectation.present
        if kind.formula not in taking_part and kind.ascii not in ("H^+", "OH^-")
    ]
    assume(idle)
    term = Term(idle[0])
    line = Equation((*half.left, term), (*half.right, term)).ascii
    marking = check(line, expectation)
    assert marking.verdict == "incorrect"
    assert marking.faults[0].code == "spectator-ions", line


# ------------------------------------------------------------------ whatever may come


NOISE = st.text(max_size=80) | st.text(
    alphabet="HOCulNae0123456789+-=>→^(){}[] .,*½⁺⁻²₂ē\\$:<sup/", max_size=60
)


@given(text=NOISE, expectation=questions())
@settings(max_examples=1500, deadline=None)
def test_no_text_is_too_strange(text: str, expectation: Expectation) -> None:
    marking = check(text, expectation)
    document = marking_document(marking)
    assert document["verdict"] in ("correct", "incorrect", "unreadable")
    assert ("reading" in document) == (document["verdict"] != "unreadable")
    assert 0 <= document["marks"]["awarded"] <= document["marks"]["available"]
    for fault in document["faults"]:
        start, end = fault["at"]
        assert 0 <= start <= end <= len(text)
        assert fault["code"] in IN_ORDER
        assert fault["feedback"].endswith((".", "?"))
        assert fault["reveals"].endswith(".")


@pytest.mark.parametrize(
    "text",
    [
        "(" * 499,
        "[" * 20 + "Cu" + "->" * 100,
        "e " * 249,
        "Cl2-+" * 80,
        "2" * 500,
        "x" * 1_000_000,
        "+" * 500,
    ],
)
def test_hostile_text_is_refused(text: str) -> None:
    assert check(text, cells()[0]).verdict == "unreadable"
