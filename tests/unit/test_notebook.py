"""The functions for a notebook."""

import pytest

import ionwright
from ionwright.errors import IonwrightError
from ionwright.notebook import balance, check, combine, predict


def test_the_package_hands_out_the_functions_themselves() -> None:
    assert ionwright.predict is predict
    assert ionwright.balance is balance
    assert ionwright.combine is combine
    assert ionwright.check is check
    with pytest.raises(AttributeError):
        ionwright.nothing_of_this_name  # noqa: B018 - asking is the test


def test_the_bracket_of_the_museum_is_nickel_plated() -> None:
    bracket = predict("NiSO4", cathode="steel", anode="nickel", curriculum="gcse")
    assert str(bracket.cathode.half_equation) == "Ni^2+ + 2e- -> Ni"
    assert str(bracket.anode.half_equation) == "Ni -> Ni^2+ + 2e-"


def test_several_substances_share_one_concentration() -> None:
    mixture = predict("NaCl", "KNO3", concentration="dilute", curriculum="igcse")
    words = [one.concentration.word for one in mixture.cell.electrolyte.ingredients if one.concentration]
    assert words == ["dilute", "dilute"]


def test_every_part_of_a_cell_can_be_named() -> None:
    told = predict(
        "NaCl",
        curriculum="a-level",
        state="molten",
        cathode="steel",
        anode="graphite",
        supply="dc",
        temperature="900 degC",
        current_density="1 A/cm2",
    )
    assert told.cell.melt_C == 900
    assert told.cell.current_density_A_cm2 == 1
    assert predict("Na2SO4", curriculum="a-level", ph=1).cell.medium == "acidic"


@pytest.mark.parametrize(
    ("electrolyte", "rest", "code"),
    [
        (["NaCl"], {"curriculum": "gsce"}, "unknown-curriculum"),
        ([], {"curriculum": "gcse"}, "unreadable-formula"),
        (["AgCl"], {"curriculum": "gcse"}, "insoluble"),
        (["NaCl"], {"curriculum": "gcse", "supply": "ac"}, "alternating-supply"),
        (["AgCl"], {"curriculum": "nowhere"}, "insoluble"),
    ],
)
def test_what_cannot_be_answered_is_refused_cell_first(
    electrolyte: list[str], rest: dict[str, str], code: str
) -> None:
    with pytest.raises(IonwrightError) as refusal:
        predict(*electrolyte, **rest)
    assert refusal.value.code == code


def test_silvering_the_reflector_adds_up() -> None:
    found = combine("Cu -> Cu^2+ + 2e-", "Ag+ + e- -> Ag")
    assert found.combined.overall.ascii == "2Ag^+ + Cu -> 2Ag + Cu^2+"
    with pytest.raises(IonwrightError) as refusal:
        combine("Cu -> Cu^2+ + 2e-", "Ag -> Ag^+ + e-")
    assert refusal.value.code == "both-oxidations"


def test_a_line_is_marked_against_an_electrode() -> None:
    def marked(answer: str) -> tuple[str, list[str]]:
        marking = check(
            answer, "NiSO4", cathode="steel", anode="nickel", electrode="cathode", curriculum="gcse"
        )
        return marking.verdict, [fault.code for fault in marking.faults]

    assert marked("Ni2+ + 2e- -> Ni") == ("correct", [])
    assert marked("Ni2+ + e- -> Ni") == ("incorrect", ["wrong-electron-count"])
    assert marked("nickel")[0] == "unreadable"


def test_a_line_is_marked_against_half_equations_that_are_right() -> None:
    from_water = "2H2O + 2e- -> H2 + 2OH^-"
    one = check(from_water, expected="2H^+ + 2e- -> H2", curriculum="a-level")
    either = check(from_water, expected=("2H^+ + 2e- -> H2", from_water), curriculum="a-level")
    assert (one.verdict, either.verdict) == ("incorrect", "correct")


def test_a_task_may_ask_for_states_and_for_a_direction() -> None:
    brine = {"electrode": "anode", "curriculum": "igcse", "concentration": "concentrated"}
    turned = check("Cl2 + 2e- -> 2Cl-", "NaCl", written_as="reduction", **brine)
    bare = check("2Cl- -> Cl2 + 2e-", "NaCl", state_symbols=True, **brine)
    assert turned.verdict == "correct"
    assert {fault.code for fault in bare.faults} == {"state-symbols"}


@pytest.mark.parametrize(
    ("electrolyte", "rest", "code"),
    [
        ([], {}, "question-missing"),
        (["NaCl"], {}, "question-missing"),
        (["NaCl"], {"electrode": "left"}, "question-missing"),
        (["NaCl"], {"electrode": "anode", "expected": "2Cl^- -> Cl2 + 2e-"}, "question-missing"),
        ([], {"expected": "Cl^- -> Cl2 + 2e-"}, "expectation-unbalanced"),
        (["AgCl"], {"electrode": "anode", "curriculum": "nowhere"}, "insoluble"),
        (["NaCl"], {"electrode": "anode", "curriculum": "nowhere"}, "unknown-curriculum"),
    ],
)
def test_what_cannot_be_asked_is_refused(electrolyte: list[str], rest: dict[str, str], code: str) -> None:
    with pytest.raises(IonwrightError) as refusal:
        check("2Cl- -> Cl2 + 2e-", *electrolyte, **{"curriculum": "gcse", **rest})
    assert refusal.value.code == code
