"""Balancing on the board: the steps, what is said, and that each does what it says."""

from __future__ import annotations

import pytest

from ionwright.chemistry.balancing import balance
from ionwright.chemistry.equation import equation
from ionwright.chemistry.faults import Unbalanced
from ionwright.chemistry.species import ELECTRON
from ionwright.teaching.balance_document import balance_document
from ionwright.teaching.board import board_steps, check_step, signed


def lines(skeleton: str, medium: str) -> list[tuple[str, str]]:
    return [(step.text, step.equation.ascii) for step in board_steps(balance(skeleton, medium))]


def test_in_acid_element_oxygen_hydrogen_charge() -> None:
    assert lines("MnO4^- -> Mn^2+", "acidic") == [
        ("Make the elements other than oxygen and hydrogen agree: 1 Mn on each side.", "MnO4^- -> Mn^2+"),
        (
            "Balance oxygen with water: the left has 4 O more, so write 4H₂O on the right.",
            "MnO4^- -> Mn^2+ + 4H2O",
        ),
        (
            "Balance hydrogen with hydrogen ions: the right has 8 H more, so write 8H⁺ on the left.",
            "MnO4^- + 8H^+ -> Mn^2+ + 4H2O",
        ),
        (
            "Balance the charge with electrons: it is +7 on the left and +2 on the right, so write 5e⁻ on the left.",
            "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",
        ),
    ]


def test_in_alkali_hydroxide_is_added_on_both_sides_and_water_cancelled() -> None:
    assert lines("MnO4^- -> MnO2", "alkaline")[-3:] == [
        (
            "Balance the charge with electrons: it is +3 on the left and 0 on the right, so write 3e⁻ on the left.",
            "MnO4^- + 4H^+ + 3e- -> MnO2 + 2H2O",
        ),
        (
            "An alkaline solution holds no H⁺ to speak of: add 4OH⁻ on both sides. With 4H⁺ they become 4H₂O.",
            "MnO4^- + 4H2O + 3e- -> MnO2 + 2H2O + 4OH^-",
        ),
        ("Cancel 2H₂O on both sides.", "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-"),
    ]


def test_in_a_melt_oxygen_is_balanced_with_oxide() -> None:
    assert lines("Al2O3 -> Al", "molten") == [
        ("Make the elements other than oxygen agree: 2 Al on each side.", "Al2O3 -> 2Al"),
        (
            "Balance oxygen with oxide ions: the left has 3 O more, so write 3O²⁻ on the right.",
            "Al2O3 -> 2Al + 3O^2-",
        ),
        (
            "Balance the charge with electrons: it is 0 on the left and −6 on the right, so write 6e⁻ on the left.",
            "Al2O3 + 6e- -> 2Al + 3O^2-",
        ),
    ]


def test_with_hydronium_ions() -> None:
    assert lines("O2 -> H3O^+", "acidic")[-1] == (
        (
            "Write the hydrogen ions as H₃O⁺: each takes up one H₂O, so the same number of water molecules is added on"
            " the other side."
        ),
        "O2 + 4H3O^+ + 4e- -> 6H2O",
    )


def test_a_whole_equation_is_put_together_from_its_halves() -> None:
    assert lines("Cl2 -> Cl^- + ClO3^-", "alkaline") == [
        ("Write the reduction by itself: chlorine goes from 0 to −1.", "Cl2 + 2e- -> 2Cl^-"),
        (
            "Write the oxidation by itself: chlorine goes from 0 to +5.",
            "Cl2 + 12OH^- -> 2ClO3^- + 6H2O + 10e-",
        ),
        ("Multiply the reduction by 5, so that 10e⁻ stand in both.", "5Cl2 + 10e- -> 10Cl^-"),
        (
            "Add the two. The electrons cancel, and so does what stands on both sides. Then divide by 2.",
            "3Cl2 + 6OH^- -> 5Cl^- + ClO3^- + 3H2O",
        ),
    ]


def test_ions_that_only_look_on_are_put_back() -> None:
    assert lines("Cu + HNO3 -> Cu(NO3)2 + NO + H2O", "none")[-2:] == [
        (
            "Add the two. The electrons cancel, and so does what stands on both sides.",
            "2NO3^- + 8H^+ + 3Cu -> 2NO + 4H2O + 3Cu^2+",
        ),
        (
            "Write the substances that were given in the place of their ions, with the ions that took no part.",
            "3Cu + 8HNO3 -> 3Cu(NO3)2 + 2NO + 4H2O",
        ),
    ]


def test_where_the_charge_agrees_there_is_no_half_equation() -> None:
    text, written = lines("CrO4^2- -> Cr2O7^2-", "acidic")[-1]
    assert text == (
        "The charge agrees already, −2 on each side: no electrons are needed, so this is not a half-equation."
    )
    assert written == "2CrO4^2- + 2H^+ -> Cr2O7^2- + H2O"


@pytest.mark.parametrize(
    ("skeleton", "medium"),
    [
        ("H2O -> H2", "neutral"),
        ("OH^- -> O2", "alkaline"),
        ("H2O2 -> H2O", "acidic"),
        ("O2 -> HO2^-", "alkaline"),
        ("MnO4^- + H3O^+ -> Mn^2+", "acidic"),
        ("As2S3 -> AsO4^3- + SO4^2-", "alkaline"),
        ("CrI3 + Cl2 -> CrO4^2- + IO4^- + Cl^-", "alkaline"),
        ("NaCl + AgNO3 -> AgCl + NaNO3", "none"),
        ("Cl2 + H2O -> HCl + HClO", "none"),
        ("Na + Cl2 -> NaCl", "none"),
        ("H^+ + OH^- -> H2O", "neutral"),
    ],
)
def test_the_last_step_is_the_answer(skeleton: str, medium: str) -> None:
    balanced = balance(skeleton, medium)
    steps = board_steps(balanced)
    assert steps[-1].equation == balanced.equation
    assert all(step.text.endswith((".", ":")) for step in steps)


def test_a_step_that_does_not_do_what_it_says_is_caught() -> None:
    with pytest.raises(Unbalanced, match="does not do what the step says"):
        check_step("Balance oxygen with water.", equation("MnO4^- -> Mn^2+ + 3H2O"), {"H", "charge"})


def test_signs_are_written_as_chemists_do() -> None:
    assert [signed(number) for number in (7, -2, 0)] == ["+7", "−2", "0"]


def test_the_document_of_a_half_equation() -> None:
    document = balance_document(balance("S4O6^2- -> S2O3^2-", "acidic"), frozenset({"ascii"}))
    assert document["half_equation"] == {"ascii": "S4O6^2- + 2e- -> 2S2O3^2-", "electrons": 2}
    assert (document["kind"], document["electrons"], document["side"]) == ("reduction", 2, "left")
    assert document["medium"] == "acidic"
    assert document["reading"] == {"ascii": "S4O6^2- -> S2O3^2-"}
    assert document["oxidation_numbers"][0] == {
        "element": "S",
        "species": "S4O6^2-",
        "side": "left",
        "atoms": 4,
        "value": "5/2",
        "text": "+5/2",
        "is_average": True,
        "changes": True,
    }
    assert document["steps"][-1]["equation"] == document["half_equation"]
    assert document["notes"] == []
    assert "halves" not in document


def test_the_document_of_a_whole_equation_says_that_it_is_one() -> None:
    document = balance_document(balance("Na + Cl2 -> NaCl", "none"), frozenset({"ascii"}))
    assert (document["kind"], document["electrons"]) == ("redox", 0)
    assert "side" not in document
    assert document["halves"] == {
        "reduction": {"half_equation": {"ascii": "Cl2 + 2e- -> 2Cl^-", "electrons": 2}, "multiplier": 1},
        "oxidation": {"half_equation": {"ascii": "Na -> Na^+ + e-", "electrons": 1}, "multiplier": 2},
        "electrons": 2,
    }
    (note,) = document["notes"]
    assert "not a half-equation" in note


def test_what_is_undecided_has_no_value() -> None:
    document = balance_document(balance("CuFeSe2 -> Cu^2+ + Fe^3+ + SeO4^2-", "acidic"), frozenset({"ascii"}))
    copper = document["oxidation_numbers"][0]
    because = "No rule fixes Cu or Fe here, and the charge alone does not say how they share."
    assert copper == {
        "element": "Cu",
        "species": "CuFeSe2",
        "side": "left",
        "atoms": 1,
        "text": "not decided",
        "because": because,
    }


@pytest.mark.parametrize(
    ("skeleton", "medium", "said"),
    [
        ("H^+ -> H2", "alkaline", "H⁺ was left out"),
        ("Na^+ + K^+ + Cu^2+ -> Cu + Na^+ + K^+", "none", "Na⁺ and K⁺ were given on both sides"),
        ("H2O2 -> O2", "acidic", "couple that the table"),
        ("5H2O2 + 2MnO4^- -> 2Mn^2+ + 5O2", "acidic", "The numbers that were given settled"),
    ],
)
def test_notes_tell_how_the_answer_was_found(skeleton: str, medium: str, said: str) -> None:
    document = balance_document(balance(skeleton, medium), frozenset({"ascii"}))
    assert any(said in note for note in document["notes"])
    assert ELECTRON.ascii not in document["notes"]
