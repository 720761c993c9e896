"""What a student is told: places in the text, help that keeps the answer back, and the reason of the course."""

from __future__ import annotations

import pytest

from ionwright.curricula.host import load_curricula
from ionwright.errors import IonwrightError
from ionwright.teaching import CellDescription, Ingredient
from ionwright.teaching.marking import (
    Marking,
    MarkingFault,
    check,
    electrode_expectation,
    given_expectation,
    marking_document,
)

CURRICULA = load_curricula()
BRINE = CellDescription(electrolyte=(Ingredient("NaCl", "concentrated"),))


def at_brine(line: str, electrode: str = "cathode", curriculum: str = "gcse") -> Marking:
    return check(line, electrode_expectation(BRINE, electrode, CURRICULA[curriculum]))


@pytest.mark.parametrize(
    ("line", "code", "place"),
    [
        ("2H+ + e- -> H2", "wrong-electron-count", "e-"),
        ("2H+ -> H2 + 2e-", "electrons-wrong-side", "2e-"),
        (" H⁺ + e⁻ → H", "monatomic-gas", "H"),
        ("2H- + 2e- -> H2", "wrong-ion-charge", "2H-"),
        ("2Na+ + 2H+ + 2e- -> 2Na+ + H2", "spectator-ions", "2Na+"),
        ("2H+ + 2e+ -> H2", "electron-sign", "e+"),
        ("2H2O + 2e- -> H2 + OH-", "atoms-not-balanced", "OH-"),
        ("Na+ + e- -> Na", "wrong-species", "Na"),
        ("2H+ -> H2", "no-electrons", "2H+ -> H2"),
        ("2H+ + ?e- -> H2", "unreadable", "?"),
    ],
)
def test_a_fault_says_where_it_is(line: str, code: str, place: str) -> None:
    fault = at_brine(line).faults[0]
    start, end = fault.at
    assert (fault.code, line[start:end]) == (code, place)


@pytest.mark.parametrize(
    "line",
    [
        "Na+ + e- -> Na",
        "2Cl- -> Cl2 + 2e-",
        "H2 -> 2H+ + 2e-",
        "Na+ -> Na",
        "2NaCl + 2H2O -> 2NaOH + H2 + Cl2",
        "Zn2+ + 2e- -> Zn",
        "nonsense",
    ],
)
def test_help_keeps_the_answer_back_and_what_reveals_gives_it(line: str) -> None:
    marking = at_brine(line)
    for fault in marking.faults:
        assert "2H⁺" not in fault.feedback
        assert "ydrogen ions" not in fault.feedback
        assert "2H⁺ + 2e⁻ → H₂" in fault.reveals


def test_the_reason_of_the_course_is_told() -> None:
    fault = at_brine("Na+ + e- -> Na").faults[0]
    assert fault.feedback.startswith(
        "Your line balances. But sodium cannot form here, because something else at the cathode"
    )
    assert fault.reveals.startswith("Sodium is above hydrogen in the reactivity series")


def test_a_reason_that_gives_nothing_away_helps_at_once() -> None:
    iodide = CellDescription(electrolyte=(Ingredient("FeCl3"),))
    marking = check("2H+ + 2e- -> H2", electrode_expectation(iodide, "cathode", CURRICULA["a-level"]))
    assert marking.faults[0].code == "wrong-species"
    assert marking.faults[0].feedback


def test_a_consistent_line_is_told_that_it_balances() -> None:
    assert at_brine("Na+ + e- -> Na").faults[0].feedback.startswith("Your line balances. But ")
    assert "balances" not in at_brine("Na+ + 2e- -> Na").faults[0].feedback


def test_a_student_is_shown_the_form_that_was_meant() -> None:
    fault = at_brine("2H2O + e- -> H2 + 2OH-").faults[0]
    assert fault.reveals == "2 electrons must stand on the left: 2H₂O + 2e⁻ → H₂ + 2OH⁻."


def test_the_document_holds_what_the_contract_says() -> None:
    document = marking_document(at_brine("2h+ + e- -> h2"), frozenset({"ascii"}))
    assert document["verdict"] == "incorrect"
    assert (document["marks"]["awarded"], document["marks"]["available"]) == (1, 2)
    assert [point["awarded"] for point in document["marks"]["points"]] == [1, 0]
    assert document["reading"] == {"ascii": "2H^+ + e- -> H2", "electrons": 1}
    assert document["model_answer"] == {"ascii": "2H^+ + 2e- -> H2", "electrons": 2}
    assert [form["ascii"] for form in document["accepted_forms"]] == [
        "2H^+ + 2e- -> H2",
        "2H2O + 2e- -> H2 + 2OH^-",
    ]
    assert [(slip["written"], slip["read_as"], slip["at"]) for slip in document["slips"]] == [
        ("h", "H", [1, 2]),
        ("h2", "H2", [12, 14]),
    ]


def test_an_unreadable_line_has_no_reading() -> None:
    document = marking_document(at_brine("hydrogen"))
    assert document["verdict"] == "unreadable"
    assert "reading" not in document


@pytest.mark.parametrize(
    ("texts", "code", "where"),
    [
        ((), "expectation-missing", "expected"),
        (("Ag^+ -> Ag",), "expectation-unbalanced", "expected/0"),
        (("Ag^+ + e- -> Ag", "H^+ + OH^- -> H2O"), "expectation-without-electrons", "expected/1"),
        (("silver",), "unreadable-formula", "expected/0"),
    ],
)
def test_what_cannot_be_marked_against_is_refused(texts: tuple[str, ...], code: str, where: str) -> None:
    with pytest.raises(IonwrightError) as caught:
        given_expectation(texts, CURRICULA["gcse"])
    assert (caught.value.code, caught.value.where) == (code, where)


def test_an_electrode_that_the_course_does_not_decide_is_refused() -> None:
    manganese = CellDescription(electrolyte=(Ingredient("MnSO4"),))
    with pytest.raises(MarkingFault) as caught:
        electrode_expectation(manganese, "cathode", CURRICULA["igcse"])
    assert caught.value.code == "expectation-undecided"


def test_a_question_is_worked_out_once() -> None:
    assert electrode_expectation(BRINE, "anode", CURRICULA["gcse"]) is electrode_expectation(
        CellDescription(electrolyte=(Ingredient("NaCl", "concentrated"),)), "anode", CURRICULA["gcse"]
    )
    assert electrode_expectation(BRINE, "anode", CURRICULA["gcse"]) is not electrode_expectation(
        BRINE, "anode", CURRICULA["igcse"]
    )


@pytest.mark.parametrize(
    "line", ["nickel", "Ni 2 e- -> ", "Ni2 + 2e- Ni", "-> Ni", "2Ni^2 -> x", "Ni^ + 2e- -> Ni"]
)
def test_an_example_in_a_remedy_never_gives_the_answer_away(line: str) -> None:
    expectation = given_expectation(("Ni^2+ + 2e- -> Ni",), CURRICULA["gcse"])
    marking = check(line, expectation)
    assert marking.verdict == "unreadable"
    assert "Ni^2+" not in marking.faults[0].feedback


@pytest.mark.parametrize(
    ("electrolyte", "electrode", "line", "place", "opening"),
    [
        (
            "NaOH",
            "cathode",
            "2H+ + 2e- -> H2",
            "2H+",
            "Your line balances, and the product is right. But this solution is alkaline",
        ),
        (
            "H2SO4",
            "cathode",
            "2H2O + 2e- -> H2 + 2OH-",
            "2OH-",
            "Your line balances, and the product is right. But hydroxide ions do not",
        ),
        (
            "NaOH",
            "anode",
            "2H2O -> O2 + 4H+ + 4e-",
            "4H+",
            "Your line balances, and oxygen is right. But hydrogen ions cannot be left over",
        ),
        (
            "H2SO4",
            "anode",
            "4OH- -> O2 + 2H2O + 4e-",
            "4OH-",
            "Your line balances, and oxygen is right. But an acid holds hardly any",
        ),
    ],
)
def test_a_form_that_does_not_suit_the_solution_never_has_its_product_denied(
    electrolyte: str, electrode: str, line: str, place: str, opening: str
) -> None:
    cell = CellDescription(electrolyte=(Ingredient(electrolyte, "1 mol/dm3"),))
    fault = check(line, electrode_expectation(cell, electrode, CURRICULA["a-level"])).faults[0]
    start, end = fault.at
    assert (fault.code, line[start:end]) == ("wrong-species", place)
    assert fault.feedback.startswith(opening)


@pytest.mark.parametrize(
    ("line", "helps", "reveals"),
    [
        (
            "MnO4- + 8H+ + 5e- -> 4H2O",
            "What stands on the left is right so far. Manganese is there, but not on the right: what becomes of it?",
            "Mn²⁺ is missing on the right: ",
        ),
        (
            "8H+ + 5e- -> Mn2+ + 4H2O",
            (
                "What stands on the right is right so far. Manganese is there, but not on the left: "
                "where does it come from?"
            ),
            "MnO₄⁻ is missing on the left: ",
        ),
    ],
)
def test_what_is_missing_is_not_blamed_on_what_is_there(line: str, helps: str, reveals: str) -> None:
    expectation = given_expectation(("MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",), CURRICULA["a-level"])
    fault = check(line, expectation).faults[0]
    assert fault.feedback == helps
    assert fault.reveals.startswith(reveals)


def test_a_plating_bath_that_is_not_contested_takes_the_metal_only() -> None:
    bath = CellDescription(electrolyte=(Ingredient("NiSO4"),), cathode="steel", anode="nickel")
    expectation = electrode_expectation(bath, "cathode", CURRICULA["gcse"])
    assert [form.without_states().ascii for form in expectation.forms] == ["Ni^2+ + 2e- -> Ni"]
    fault = check("2H+ + 2e- -> H2", expectation).faults[0]
    assert fault.feedback.startswith(
        "Your line balances. But hydrogen is not what forms here, because something else"
    )
    assert fault.reveals.startswith("In a plating bath most of the current deposits nickel")


@pytest.mark.parametrize(
    ("line", "code", "helps"),
    [
        ("2Cl- -> Cl2 + 2e-", "reversed", "The change is right, but the task asks for it as a reduction."),
        ("Cl2 -> 2Cl- + 2e-", "electrons-wrong-side", "The task asks for it as a reduction."),
        ("2H+ + 2e- -> H2", "wrong-electrode", "Which ions move to the anode?"),
    ],
)
def test_a_task_that_asks_for_the_other_direction_is_never_contradicted(
    line: str, code: str, helps: str
) -> None:
    expectation = electrode_expectation(BRINE, "anode", CURRICULA["igcse"], written_as="reduction")
    fault = check(line, expectation).faults[0]
    assert fault.code == code
    assert helps in fault.feedback
    assert "gained or lost" not in fault.feedback
    assert fault.reveals.endswith("For the anode, written as a reduction: Cl₂ + 2e⁻ → 2Cl⁻.")


def test_another_change_of_the_same_element_is_called_that() -> None:
    expectation = given_expectation(("Fe^2+ -> Fe^3+ + e-",), CURRICULA["a-level"])
    faults = check("Fe -> Fe2+ + 2e-", expectation).faults
    assert [fault.code for fault in faults] == ["wrong-species"]
    assert faults[0].feedback.startswith("Your line is a correct half-equation, but for another change.")


def at(electrolyte: str, electrode: str, line: str, *, curriculum: str = "gcse", **cell: str) -> Marking:
    amount = None if "state" in cell else "1 mol/dm3"
    description = CellDescription(electrolyte=(Ingredient(electrolyte, amount),), **cell)
    return check(line, electrode_expectation(description, electrode, CURRICULA[curriculum]))


@pytest.mark.parametrize(
    ("electrolyte", "electrode", "line", "helps"),
    [
        (
            "CuSO4",
            "anode",
            "SO42- -> SO4 + 2e-",
            "sulfate ions stay in solution: something else gives up electrons more easily.",
        ),
        (
            "CuSO4",
            "anode",
            "Cu -> Cu2+ + 2e-",
            "so there is no copper to dissolve. What else can give up electrons?",
        ),
        ("CuSO4", "cathode", "Cu2+ + e- -> Cu+", "Your line balances, but it stops at Cu⁺."),
        ("CuSO4", "cathode", "Cu2+ + SO42- + 2e- -> Cu + SO42-", "This ion stands on both sides unchanged."),
        ("CuSO4", "cathode", "Cu2+ + SO42- + 2e- -> Cu", "This ion does not react. Leave it out."),
        ("CuSO4", "cathode", "CuSO4 -> Cu + SO4", "Your line shows no electrons gained or lost."),
        ("CuSO4", "cathode", "2Cu2+ + 2H2O -> 2Cu + O2 + 4H+", "This is an equation for a whole reaction."),
        ("CuSO4", "cathode", "Cu -> Cu+ + e-", "Your line balances. But it runs backwards."),
        (
            "CuSO4",
            "cathode",
            "Cu2+ + e- -> Cu",
            "The charge is 1+ on the left and 0 on the right. Change the number of electrons until they are equal.",
        ),
        (
            "HCl",
            "cathode",
            "2H + 2e- -> H2",
            "You wrote an atom, H. Which particle is in the solution, and what is its",
        ),
        ("HCl", "anode", "2Cl2- -> Cl2 + 2e-", "Chlorine stands in the solution as single ions."),
        (
            "CuSO4",
            "anode",
            "4OH- -> O2 + 4H+ + 4e-",
            "Your left side holds more oxygen than your right side. Which other product holds oxygen?",
        ),
    ],
)
def test_help_fits_the_fault(electrolyte: str, electrode: str, line: str, helps: str) -> None:
    assert helps in at(electrolyte, electrode, line).faults[0].feedback


def test_there_is_no_water_in_a_melt() -> None:
    fault = at("NaCl", "cathode", "2H+ + 2e- -> H2", state="molten").faults[0]
    helps = "But the electrolyte is molten, so there is no water in it. Which ions are there?"
    assert fault.feedback == f"Your line balances. {helps}"


def test_a_charge_on_what_reacts_is_asked_about_before_it_reacts() -> None:
    expectation = given_expectation(("Cl2 + 2e- -> 2Cl^-",), CURRICULA["a-level"])
    fault = check("Cl2- + e- -> 2Cl-", expectation).faults[0]
    assert fault.feedback.endswith("Does chlorine carry one before it reacts?")


def test_what_is_short_of_atoms_is_the_side_that_is_marked() -> None:
    line = "4OH- -> O2 + 4H+ + 4e-"
    start, end = at("CuSO4", "anode", line).faults[0].at
    assert line[start:end] == "O2 + 4H+ + 4e-"


@pytest.mark.parametrize(
    ("line", "helps"),
    [
        ("copper + 2e- -> copper", "This is a name. Write formulas and charges instead of names."),
        ("Cu2+ + 2e- -> copper", "This is a name. Write formulas and charges instead of names."),
        ("Cv2+ + 2e- -> Cv", "There is no element Cv. Check the symbol."),
        ('Cu2+ " + 2e- -> Cu', 'The sign " cannot be part of a formula: leave it out.'),
        ("Cu2+ + 2e- = = Cu", "There is a second arrow. Write one equation."),
        ("I do not know", "An equation needs an arrow. Put an arrow between the sides: A -> B."),
        ("Cu2+ + 2e-", "An equation needs an arrow. Put an arrow between the sides: A -> B."),
    ],
)
def test_what_stops_the_reading_is_told_in_plain_words(line: str, helps: str) -> None:
    fault = at("CuSO4", "cathode", line).faults[0]
    assert (fault.code, fault.feedback) == ("unreadable", f"This cannot be read. {helps}")


def test_what_is_said_to_be_missing_stands_in_the_line_that_is_shown() -> None:
    faults = at_brine("4OH- -> O2 + 4e-", "anode").faults
    assert [fault.code for fault in faults] == ["wrong-species", "atoms-not-balanced"]
    assert faults[1].reveals == "2Cl⁻ → Cl₂ + 2e⁻."
    shown = at("CuSO4", "anode", "4OH- -> O2 + 4e-").faults[0].reveals
    assert shown == "H₂O is missing. 4OH⁻ → O₂ + 2H₂O + 4e⁻."


@pytest.mark.parametrize(
    ("expected", "line", "place", "helps"),
    [
        (
            "O2 + 2H2O + 4e- -> 4OH^-",
            "O2 + 4H+ + 4e- -> 2H2O",
            "4H+",
            "Your line balances, and the change is right. But it is written for another solution.",
        ),
        (
            "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",
            "MnO4- + 4H+ + 3e- -> MnO2 + 2H2O",
            "MnO2",
            "Your line balances, but it shows another change. Which product is asked for?",
        ),
        (
            "Cr2O7^2- + 14H^+ + 6e- -> 2Cr^3+ + 7H2O",
            "CrO42- + 8H+ + 3e- -> Cr3+ + 4H2O",
            "CrO42-",
            "Your line balances, but it shows another change. Which particle does the question start from?",
        ),
        (
            "H2O2 -> O2 + 2H^+ + 2e-",
            "H2O2 + 2H+ + 2e- -> 2H2O",
            "2H2O",
            "Your line balances, but it shows another change. Which product is asked for?",
        ),
        (
            "C2O4^2- -> 2CO2 + 2e-",
            "H2C2O4 -> 2CO2 + 2H+ + 2e-",
            "H2C2O4",
            "Your line balances, and the change is right. But look at H₂C₂O₄: does it hold as many hydrogen ions",
        ),
        (
            "2S2O3^2- -> S4O6^2- + 2e-",
            "I2 + 2S2O32- -> S4O62- + 2I-",
            "I2 + 2S2O32- -> S4O62- + 2I-",
            "This is an equation for a whole reaction. A half-equation shows one of the two changes in it only",
        ),
    ],
)
def test_a_line_that_answers_another_task_is_named_as_such(
    expected: str, line: str, place: str, helps: str
) -> None:
    fault = check(line, given_expectation((expected,), CURRICULA["a-level"])).faults[0]
    assert (line[slice(*fault.at)], fault.feedback[: len(helps)]) == (place, helps)


@pytest.mark.parametrize(
    ("electrolyte", "electrode", "line", "place", "helps"),
    [
        ("AgNO3", "cathode", "2Ag+ + 2e- -> Ag2", "Ag2", "Your line balances. But silver is not made of molecules."),
        ("CuCl2", "anode", "Cl- -> Cl+ + 2e-", "Cl+", "Your line balances, but it stops at Cl⁺. Which substance forms"),
        ("CuCl2", "anode", "Cl2- -> Cl2 + e-", "Cl2-", "Your line balances. But chlorine stands in the solution as"),
        ("CuSO4", "cathode", "Cu+ + e- -> CuSO4", "CuSO4", "CuSO₄ is a compound. Which element forms at the cathode?"),
        ("CuSO4", "cathode", "CuSO4 + 2e- -> CuS", "CuSO4", "CuSO₄ stands in the solution as its ions. Which of"),
        ("KBr", "anode", "K+ + e- -> K", "K+", "Your line balances. But at the anode, are electrons gained or lost?"),
        ("ZnSO4", "cathode", "Zn -> Zn2+ + 2e-", "Zn", "Your line balances. But at the cathode, are electrons gained"),
        ("Na2SO4", "cathode", "O2 + 4H+ + 4e- -> 2H2O", "O2", "Your line balances. But oxygen is not what belongs"),
        ("CuSO4", "cathode", "Cu2+ + 2e- -> MnO2", "MnO2", "Manganese(IV) oxide is not what belongs here."),
    ],
)  # fmt: skip
def test_what_is_told_of_a_strange_species_is_true_of_the_cell(
    electrolyte: str, electrode: str, line: str, place: str, helps: str
) -> None:
    cell = CellDescription(electrolyte=(Ingredient(electrolyte),))
    fault = check(line, electrode_expectation(cell, electrode, CURRICULA["gcse"])).faults[0]
    assert (fault.code, line[slice(*fault.at)], fault.feedback[: len(helps)]) == (
        "wrong-species",
        place,
        helps,
    )


def test_an_active_anode_is_not_asked_about_the_ions_of_the_solution() -> None:
    cell = CellDescription(electrolyte=(Ingredient("CuSO4"),), cathode="copper", anode="copper")
    expectation = electrode_expectation(cell, "anode", CURRICULA["gcse"])
    fault = check("CuSO4 -> Cu2+ + SO42- + 2e-", expectation).faults[0]
    assert fault.feedback == ("CuSO₄ stands in the solution as its ions. What is there besides them?")


def test_a_compound_is_not_denied_where_one_may_form() -> None:
    cell = CellDescription(electrolyte=(Ingredient("Al2O3"),), state="molten")
    expectation = electrode_expectation(cell, "anode", CURRICULA["igcse"])
    assert "is a compound" not in check("O2- + C -> CO + 2e-", expectation).faults[0].feedback


def test_oxide_is_not_taken_for_water_without_its_hydrogen() -> None:
    expectation = given_expectation(("Cr2O7^2- + 14H^+ + 6e- -> 2Cr^3+ + 7H2O",), CURRICULA["a-level"])
    fault = check("Cr2O72- + 6e- -> 2Cr3+ + 7O2-", expectation).faults[0]
    assert fault.feedback == "Your line balances, but it shows another change. Which product is asked for?"


def test_a_name_with_a_numeral_stands_small_inside_a_sentence() -> None:
    cell = CellDescription(electrolyte=(Ingredient("CuSO4"),))
    expectation = electrode_expectation(cell, "cathode", CURRICULA["gcse"])
    fault = check("MnO4- + 4H+ + 3e- -> MnO2 + 2H2O", expectation).faults[0]
    assert fault.feedback.startswith("Your line balances. But there are no permanganate ions")
    fault = check("Mn2+ + 2H2O + 2e- -> MnO2 + 4H+ + 4e-", expectation).faults[0]
    assert "But Mang" not in fault.feedback


def test_a_metal_anode_is_asked_about_as_what_is_there() -> None:
    cell = CellDescription(electrolyte=(Ingredient("CuSO4"),), cathode="copper", anode="copper")
    expectation = electrode_expectation(cell, "anode", CURRICULA["gcse"])
    fault = check("Cu2+ + 2e- -> Cu", expectation).faults[0]
    assert fault.code == "wrong-electrode"
    assert "What is there at the anode, and are electrons gained or lost there?" in fault.feedback


def test_a_missing_and_a_wrong_state_symbol_are_told_apart() -> None:
    expectation = given_expectation(("Cu^2+(aq) + 2e- -> Cu(s)",), CURRICULA["igcse"], states_asked=True)
    assert [one.feedback for one in check("Cu2+ + 2e- -> Cu(l)", expectation).faults] == [
        "State symbols are wanted here, and Cu²⁺ has none.",
        "Look again at the state symbol of Cu: in which state is it here?",
    ]
