"""The functions for a notebook."""

import pytest

import ionwright
from ionwright.errors import IonwrightError
from ionwright.notebook import balance, check, combine, demonstration, faraday, predict


def test_the_package_hands_out_the_functions_themselves() -> None:
    assert ionwright.predict is predict
    assert ionwright.balance is balance
    assert ionwright.combine is combine
    assert ionwright.check is check
    assert ionwright.demonstration is demonstration
    assert ionwright.faraday is faraday
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


NICKEL = "Ni^2+ + 2e- -> Ni"
SERIES = {"silver cell": "Ag+ + e- -> Ag", "copper cell": "Cu2+ + 2e- -> Cu"}


def test_the_nickel_on_the_bracket_is_worked_on_the_board() -> None:
    solved = faraday(NICKEL, find="mass", curriculum="a-level", current="0.50 A", time="20 min")
    assert solved.answers[0].value == pytest.approx(0.18248704663)
    lines = str(solved).splitlines()
    assert "    Q = I × t = 0.50 A × 1200 s = 600 C" in lines
    assert lines[-1] == "Mass of Ni: 0.18 g"


def test_several_quantities_are_found_at_once_and_told_apart() -> None:
    solved = faraday(
        SERIES,
        find=("mass of Cu", "charge"),
        curriculum="a-level",
        given={"mass of Ag at silver cell": "2.16 g"},
    )
    assert str(solved).splitlines()[-2:] == ['Mass of Cu in "copper cell": 0.636 g', "Charge: 1930 C"]


def test_a_task_may_state_its_constants() -> None:
    stated = {"faraday_constant": "96485 C/mol", "Ni": "58.69"}
    solved = faraday(
        NICKEL,
        find="mass",
        curriculum="a-level",
        conventions=stated,
        figures=5,
        current="0.50 A",
        time="20 min",
    )
    assert solved.answers[0].rendered.text == "0.18248 g"


def test_gas_may_be_collected_over_water() -> None:
    known = {"current": "0.50 A", "time": "20 min", "temperature": "20 degC", "pressure": "101 kPa"}
    dry, wet = (
        faraday("2H+ + 2e- -> H2", find="volume", curriculum="a-level", over_water=over_water, **known)
        for over_water in (False, True)
    )
    assert wet.answers[0].value / dry.answers[0].value == pytest.approx(101 / (101 - 2.339), rel=1e-3)


def test_the_charge_of_an_ion_is_found_from_its_metal() -> None:
    known = {"current": "1.50 A", "time": "40.0 min", "mass": "0.647 g"}
    solved = faraday(metal="Cr", find="ion_charge", curriculum="a-level", **known)
    assert solved.answers[0].value == 3


@pytest.mark.parametrize(
    ("task", "code"),
    [
        ({}, "needs-more"),
        ({"half_equation": NICKEL, "metal": "Cr"}, "needs-more"),
        ({"half_equation": NICKEL}, "needs-more"),
        ({"half_equation": NICKEL, "current": "-1 A"}, "negative-quantity"),
        ({"half_equation": NICKEL, "curent": "1 A"}, "unknown-quantity"),
        ({"half_equation": NICKEL, "conventions": {"Qq": "1"}}, "unknown-element"),
        ({"half_equation": NICKEL, "curriculum": "nowhere"}, "unknown-curriculum"),
    ],
)
def test_a_task_that_cannot_be_worked_out_is_refused(task: dict[str, object], code: str) -> None:
    with pytest.raises(IonwrightError) as refusal:
        faraday(**{"find": "mass", "curriculum": "a-level", **task})
    assert refusal.value.code == code


BRINE = {"concentration": "2 mol/dm3", "see": "30 cm3 of H2", "curriculum": "igcse"}


def test_brine_is_planned_for_the_lamp_room() -> None:
    plan = demonstration("NaCl", **BRINE, within="20 min", room_volume="120 m3", air_changes="4 /h")
    assert plan.charge.counted_in("C") == pytest.approx(0.030 / 24 * 2 * 96485, rel=1e-3)
    lines = str(plan).splitlines()
    assert lines[0] == "Place: fume cupboard."
    assert "Local rules, your school's own risk assessment" in str(plan)
    assert any(line.startswith("To be seen: 30 cm³ of H₂ at the cathode") for line in lines)


def test_a_plan_may_state_its_conventions() -> None:
    stated = {"faraday_constant": "96000 C/mol", "molar_gas_volume": "24.0 dm3/mol"}
    plan = demonstration("NaCl", **BRINE, conventions=stated, figures=4)
    assert plan.charge.text == "240.0 C"


@pytest.mark.parametrize(
    ("rest", "code"),
    [
        ({"see": "1 g of Zn"}, "not-formed"),
        ({"see": ()}, "needs-more"),
        ({"within": "3 A"}, "wrong-dimension"),
        ({"rom_volume": "3 m3"}, "unknown-quantity"),
        ({"curriculum": "nowhere"}, "unknown-curriculum"),
    ],
)
def test_a_plan_that_cannot_be_made_is_refused(rest: dict[str, str], code: str) -> None:
    with pytest.raises(IonwrightError) as refusal:
        demonstration("NaCl", **(BRINE | rest))
    assert refusal.value.code == code
