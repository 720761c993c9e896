"""Plans of demonstrations: charge, current, amounts, bath, checked against sums done by hand."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from ionwright.errors import IonwrightError
from ionwright.teaching.demonstrations import aim_of
from ionwright.teaching.quantities import TaskConventions

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.teaching.demonstrations import Plan

    Planned = Callable[..., Plan]

F = 96500


def test_a_coat_of_nickel_takes_the_charge_of_its_mass(planned: Planned) -> None:
    plan = planned(
        "NiSO4@0.25 mol/dm3",
        ("thickness of Ni", "2 um"),
        cathode="steel",
        anode="nickel",
        cathode_area="25 cm2",
    )
    mass = 2e-4 * 25 * 8.90
    assert plan.charge.counted_in("C") == pytest.approx(mass / 58.7 * 2 * F)
    nickel = next(one for one in plan.formed if one.of == "Ni")
    assert nickel.mass_g == pytest.approx(mass)
    lost = next(one for one in plan.used if one.of == "Ni" and one.electrode == "anode")
    assert lost.mass_g == pytest.approx(mass)
    assert plan.baths == ()
    assert plan.bath_note.startswith("No ion of the electrolyte is used up as a whole")


def test_an_efficiency_asks_for_more_charge_and_dissolves_more_of_the_anode(planned: Planned) -> None:
    plan = planned(
        "NiSO4@0.25 mol/dm3", ("mass of Ni", "0.10 g"), cathode="steel", anode="nickel", efficiency="80%"
    )
    assert plan.charge.counted_in("C") == pytest.approx(0.10 / 58.7 * 2 * F / 0.80)
    masses = {(one.of, one.electrode): one.mass_g for one in (*plan.formed, *plan.used)}
    assert masses["Ni", "cathode"] == pytest.approx(0.10)
    assert masses["Ni", "anode"] == pytest.approx(0.125)


def test_gases_of_both_electrodes_are_counted(planned: Planned) -> None:
    plan = planned("NaCl@2 mol/dm3", ("volume of H2", "48 cm3"), within="20 min")
    volumes = {one.of: one.volume_dm3 for one in plan.formed if one.volume_dm3}
    assert volumes == {"H2": pytest.approx(0.048), "Cl2": pytest.approx(0.048)}
    assert plan.total_gas is not None
    assert plan.total_gas.counted_in("cm3") == pytest.approx(96)
    assert plan.charge.counted_in("C") == pytest.approx(0.048 / 24 * 2 * F)


def test_the_aim_that_takes_most_charge_decides(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), ("volume of O2", "10 cm3"))
    assert [aim.decides for aim in plan.aims] == [True, False]
    assert plan.charge.counted_in("C") == pytest.approx(0.20 / 63.5 * 2 * F)


def test_rows_rise_and_their_times_fall(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within="30 min", cathode_area="25 cm2")
    rows = plan.choice.rows
    assert len(rows) >= 3
    for one, other in pairwise(rows):
        assert one.current_A < other.current_A
        assert one.time_s > other.time_s
    for row in rows:
        assert row.current_A * row.time_s == pytest.approx(plan.charge.counted_in("C"))
        assert row.densities["cathode"].counted_in("mA/cm2") == pytest.approx(row.current_A * 1000 / 25)
        fits = row.time_s <= 1800 and row.densities["cathode"].counted_in("mA/cm2") <= 50
        assert row.fits is fits
    assert plan.choice.recommended in rows
    assert plan.choice.recommended.fits
    assert plan.is_met


def test_a_span_sets_a_lowest_and_a_highest_current(planned: Planned) -> None:
    plan = planned("H2SO4@0.5 mol/dm3", ("volume of H2", "24 cm3"), within="10 to 20 min")
    assert plan.choice.lowest.counted_in("A") == pytest.approx(193 / 1200)
    assert plan.choice.highest.counted_in("A") == pytest.approx(193 / 600)
    assert 600 <= plan.choice.recommended.time_s <= 1200


def test_a_current_that_is_set_is_kept(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within="30 min", current="0.40 A")
    assert plan.choice.recommended.current_A == 0.40
    assert plan.choice.recommended.time_s == pytest.approx(0.20 / 63.5 * 2 * F / 0.40)
    assert plan.is_met


def test_what_cannot_be_met_says_by_how_much(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within="10 min", highest_current="0.50 A")
    charge = 0.20 / 63.5 * 2 * F
    short = plan.choice.shortfall
    assert short is not None
    assert not plan.is_met
    assert short.reached.counted_in("1") == pytest.approx(0.50 * 600 / charge)
    assert short.missing_time.counted_in("s") == pytest.approx(charge / 0.50 - 600)
    assert short.needed_current.counted_in("A") >= charge / 600
    assert "the supply gives at most 0.50 A" in plan.choice.because


def test_a_small_cathode_binds_before_the_supply(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within="10 min", cathode_area="4 cm2")
    assert plan.choice.highest.counted_in("A") == pytest.approx(0.2)
    assert "the cathode would carry more than about 50 mA/cm²" in plan.choice.highest_because
    assert plan.choice.shortfall is not None


def test_the_bath_is_asked_to_hold_ten_times_what_is_used(planned: Planned) -> None:
    plan = planned("CuSO4@0.10 mol/dm3", ("mass of Cu", "0.20 g"), bath_volume="50 cm3", current="0.50 A")
    (copper,) = plan.baths
    used = 0.20 / 63.5
    assert copper.of == "Cu^2+"
    assert copper.used.counted_in("mol") == pytest.approx(used)
    assert copper.needed_concentration is not None
    assert copper.needed_concentration.counted_in("mol/dm3") == pytest.approx(10 * used / 0.050)
    assert copper.needed_volume is not None
    assert copper.needed_volume.counted_in("dm3") == pytest.approx(10 * used / 0.10)
    assert copper.share is not None
    assert copper.share.counted_in("1") == pytest.approx(used / 0.005)
    assert copper.runs_out_after is not None
    assert copper.runs_out_after.counted_in("s") == pytest.approx(0.005 * 2 * F / 0.50)
    assert copper.is_enough is False


def test_a_bath_that_runs_out_first_spoils_the_plan(planned: Planned) -> None:
    plan = planned("CuSO4@0.010 mol/dm3", ("mass of Cu", "0.20 g"), bath_volume="50 cm3")
    assert not plan.is_met
    assert "before the aim is met" in plan.baths[0].says


def test_without_a_volume_the_needed_one_is_told(planned: Planned) -> None:
    plan = planned("CuSO4@0.10 mol/dm3", ("mass of Cu", "0.20 g"))
    assert plan.baths[0].needed_volume is not None
    assert plan.baths[0].needed_concentration is None
    assert plan.baths[0].share is None


@pytest.mark.parametrize(
    ("electrolyte", "rest", "seen"),
    [
        ("NiSO4@0.25 mol/dm3", {"cathode": "steel", "anode": "nickel"}, ("thickness", "Ni", "1 µm")),
        ("H2SO4@0.5 mol/dm3", {}, ("volume", "H2", "10 cm³")),
        ("PbBr2", {"state": "molten"}, ("mass", "Pb", "0.2 g")),
        ("KI@0.5 mol/dm3", {"phrase": "I2"}, ("amount", "I2", "0.1 mmol")),
        ("NaBr@0.5 mol/dm3", {"phrase": "Br2"}, ("amount", "Br2", "0.1 mmol")),
        ("KI@0.5 mol/dm3", {}, ("volume", "H2", "10 cm³")),
    ],
)
def test_what_is_visible_is_a_rule_of_thumb_that_says_so(
    planned: Planned, electrolyte: str, rest: dict[str, str], seen: tuple[str, str, str]
) -> None:
    of = rest.pop("phrase", "")
    plan = planned(electrolyte, (f"amount of {of}" if of else "", "visible"), **rest)
    (aim,) = plan.aims
    assert (aim.quantity, aim.of, aim.size.text) == seen
    assert "rule of thumb" in aim.rule
    assert aim.rule in plan.rules


def test_a_course_without_a_molar_volume_measures_gases_at_room_temperature(planned: Planned) -> None:
    plan = planned(
        "H2SO4@0.5 mol/dm3",
        ("volume of H2", "24 cm3"),
        gas_temperature="20 degC",
        gas_pressure="100 kPa",
        conventions=TaskConventions(gas_collected="over water"),
    )
    amount = (100 - 2.3388) * 0.024 / (8.314 * 293.15)
    assert plan.charge.counted_in("C") == pytest.approx(amount * 2 * F, rel=1e-3)


def test_an_undecided_electrode_is_said_to_be_undecided(planned: Planned) -> None:
    plan = planned(
        "KMnO4@0.1 mol/dm3",
        ("volume of O2", "10 cm3"),
        curriculum="gcse",
        cathode_area="5 cm2",
        anode_area="5 cm2",
    )
    assert any("does not decide what happens at the cathode" in doubt for doubt in plan.doubts)
    assert {one.electrode for one in plan.formed} == {"anode"}
    assert set(plan.choice.recommended.densities) == {"anode"}


def test_an_aim_at_an_undecided_electrode_is_told_why_it_is_refused(planned: Planned) -> None:
    with pytest.raises(IonwrightError) as caught:
        planned("KMnO4@0.1 mol/dm3", ("mass of MnO2", "1 g"), curriculum="gcse")
    assert caught.value.code == "not-formed"
    assert caught.value.remedy.endswith("What happens at the cathode is not decided by the course.")


def test_a_contested_electrode_is_said_to_be_contested(planned: Planned) -> None:
    plan = planned("NaCl@0.1 mol/dm3", ("volume of H2", "10 cm3"))
    assert any("differ on the anode" in doubt for doubt in plan.doubts)
    assert any("chlorine" in doubt for doubt in plan.doubts)


def test_the_working_ends_at_the_charge_and_the_time(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within="30 min", current="0.40 A")
    texts = [step.equation.text for step in plan.working]
    assert any(text.startswith("Q = ") for text in texts)
    assert texts[-1].startswith("t = Q ÷ I = ")


@pytest.mark.parametrize(
    ("aim", "rest", "code", "where"),
    [
        (("mass of Zn", "1 g"), {}, "not-formed", "aims/0/of"),
        (("thickness of O2", "1 um"), {}, "not-formed", "aims/0/quantity"),
        (("mass of Cu", "-1 g"), {}, "negative-quantity", "aims/0/value"),
        (("mass of Cu", "0 g"), {}, "zero-quantity", "aims/0/value"),
        (("mass of Cu", "1 A"), {}, "wrong-dimension", "aims/0/value"),
        (("mass of Cu", "soon"), {}, "unreadable-quantity", "aims/0/value"),
        (("mass of Cu", "1e20 g"), {}, "absurd-magnitude", "aims/0/value"),
        (("mass", "1 g"), {}, "needs-more", "aims/0"),
        (("current", "1 A"), {}, "unknown-quantity", "aims/0/quantity"),
        (("weightiness", "1 g"), {}, "unknown-quantity", "aims/0/quantity"),
        (("thickness of Cu", "1 um"), {}, "needs-more", "cathode_area"),
        (("mass of Cu", "1 g"), {"within": "-3 min"}, "negative-quantity", "within"),
        (("mass of Cu", "1 g"), {"within": "20 to 10 min"}, "contradictory", "within"),
        (("mass of Cu", "1 g"), {"within": "1e-6 min"}, "absurd-magnitude", "within"),
        (("mass of Cu", "1 g"), {"within": "5 A"}, "wrong-dimension", "within"),
        (("mass of Cu", "1 g"), {"current": "0 A"}, "zero-quantity", "current"),
        (("mass of Cu", "1 g"), {"current": "nan"}, "not-finite", "current"),
        (("mass of Cu", "1 g"), {"highest_current": "20 min"}, "wrong-dimension", "highest_current"),
        (("mass of Cu", "1 g"), {"cathode_area": "3 cm"}, "wrong-dimension", "cathode_area"),
        (("mass of Cu", "1 g"), {"bath_volume": "-1 dm3"}, "negative-quantity", "bath_volume"),
        (("mass of Cu", "1 g"), {"room_volume": "1e30 m3"}, "absurd-magnitude", "room_volume"),
        (("mass of Cu", "1 g"), {"air_changes": "-1"}, "negative-quantity", "air_changes"),
        (("mass of Cu", "1 g"), {"efficiency": "120%"}, "out-of-range", "efficiency"),
        (
            ("volume of O2", "1 cm3"),
            {"gas_temperature": "-300 degC"},
            "below-absolute-zero",
            "gas_temperature",
        ),
    ],
)
def test_what_cannot_be_is_refused_with_its_field(
    planned: Planned, aim: tuple[str, str], rest: dict[str, str], code: str, where: str
) -> None:
    with pytest.raises(IonwrightError) as caught:
        planned("CuSO4@0.5 mol/dm3", aim, **rest)
    assert (caught.value.code, caught.value.where) == (code, where)


def test_an_aim_that_the_cell_does_not_give_is_told_what_it_gives(planned: Planned) -> None:
    with pytest.raises(IonwrightError) as caught:
        planned("CuSO4@0.5 mol/dm3", ("mass of Zn", "1 g"))
    assert caught.value.remedy.startswith("It gives Cu at the cathode, and O₂ and H⁺ at the anode")


def test_what_each_electrode_gives_is_told_together(planned: Planned) -> None:
    with pytest.raises(IonwrightError) as caught:
        planned("Na2SO4@0.5 mol/dm3", ("mass of Zn", "1 g"))
    assert caught.value.remedy == "It gives H₂ and OH⁻ at the cathode, and O₂ and H⁺ at the anode."


def test_a_current_that_an_ammeter_shows_is_preferred(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "1 mg"), within="10 h")
    assert plan.choice.recommended.current_A == pytest.approx(0.010)
    assert "school ammeter shows well" in plan.choice.because
    tiny = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "1 ug"))
    assert tiny.choice.recommended.time_s >= 30
    assert tiny.choice.recommended.current.text.endswith("µA")
    assert "hardly shows so little" in tiny.choice.because


def test_reasons_for_a_low_current_fit_the_cell(planned: Planned) -> None:
    gas = planned("H2SO4@0.5 mol/dm3", ("volume of H2", "10 cm3")).choice.because
    coat = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g")).choice.because
    assert "deposit" not in gas
    assert coat.endswith("A lower current gives a firmer deposit.")


def test_the_preparation_tells_what_to_weigh_and_how_large_an_electrode_to_take(planned: Planned) -> None:
    plan = planned("CuSO4@0.50 mol/dm3", ("mass of Cu", "0.20 g"), bath_volume="200 cm3", current="0.50 A")
    told = " ".join(plan.preparation)
    assert "until the ammeter shows 0.50 A" in told
    assert "200 cm³ at 0.500 mol/dm³ holds 16.0 g of CuSO₄, counted without water" in told
    assert "cathode at least about 10 cm² under the surface" in told
    assert any("50 mA/cm²" in rule for rule in plan.rules)
    salt = planned("NaCl@2.0 mol/dm3", ("volume of H2", "10 cm3"), bath_volume="200 cm3")
    assert "200 cm³ at 2.00 mol/dm³ holds 23.4 g of NaCl." in salt.preparation
    hydrate = planned("CuSO4.5H2O@0.50 mol/dm3", ("mass of Cu", "0.20 g"), bath_volume="200 cm3")
    assert "holds 25.0 g of copper(II) sulfate pentahydrate." in " ".join(hydrate.preparation)


def test_a_long_run_is_not_left_alone(planned: Planned) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "5 g"), within="5 h")
    assert any("never leave the cell alone" in text for text in plan.preparation)
    brief = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.1 g"))
    assert not any("alone" in text for text in brief.preparation)


def test_what_is_not_for_a_classroom_is_not_set_up(planned: Planned) -> None:
    plan = planned("NaCl", ("mass of Na", "0.1 g"), state="molten")
    assert [text[:24] for text in plan.preparation] == ["This is not to be set up"]


def test_a_melt_is_told_its_temperature_and_a_class_its_share(planned: Planned) -> None:
    told = " ".join(planned("PbBr2", ("mass of Pb", "0.10 g"), state="molten").preparation)
    assert "°C" in told
    assert "ten times as much gas" in told


@pytest.mark.parametrize(
    ("electrolyte", "aim", "rest", "told"),
    [
        ("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.10 g"), {}, "All of the current is counted"),
        ("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.10 g"), {}, "recalled and not read in a source"),
        (
            "NiSO4@0.5 mol/dm3",
            ("mass of Ni", "0.10 g"),
            {"efficiency": "95%", "anode": "nickel"},
            "the other 5.0% of the current gives at the cathode",
        ),
        ("NaCl@2 mol/dm3", ("volume of Cl2", "10 cm3"), {}, "of chlorine above all"),
        ("PbBr2", ("mass of Pb", "0.10 g"), {"state": "molten"}, "Bromine leaves the melt as a vapour"),
    ],
)
def test_what_is_taken_for_granted_is_told(
    planned: Planned, electrolyte: str, aim: tuple[str, str], rest: dict[str, str], told: str
) -> None:
    assert any(told in one for one in planned(electrolyte, aim, **rest).assumptions)


@pytest.mark.parametrize(
    ("text", "value", "of"),
    [
        ("10 cm3 of H2", "10 cm3", "H2"),
        ("10 cm3 H2", "10 cm3", "H2"),
        ("0.2g copper", "0.2g", "copper"),
        ("5 C", "5 C", ""),
        ("10 cm 3", "10 cm 3", ""),
        ("a visible coat of nickel", "a visible coat", "nickel"),
        ("visible Ni coat", "visible", "Ni"),
        ("Visible", "Visible", ""),
        ("visible gas", "visible", ""),
        ("some Cu", "some Cu", ""),
    ],
)
def test_an_aim_is_read_as_people_write_it(text: str, value: str, of: str) -> None:
    aim = aim_of(text)
    assert (aim.value, aim.of) == (value, of)


def test_a_room_is_not_asked_for_in_cubic_centimetres(planned: Planned) -> None:
    with pytest.raises(IonwrightError) as caught:
        planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), room_volume="5 m2")
    assert caught.value.remedy == 'Write it as in "150 m3".'


def test_small_amounts_keep_the_usual_units(planned: Planned) -> None:
    plan = planned("KI@0.5 mol/dm3", ("amount of I2", "0.10 mmol"))
    hydrogen = next(one for one in plan.formed if one.of == "H2")
    assert (hydrogen.amount.text, hydrogen.mass.text) == ("0.10 mmol", "0.20 mg")


@pytest.mark.parametrize(
    ("written", "seconds"),
    [
        ("20 min", 1200),
        ("1 h 20 min", 4800),
        ("a lesson", 2400),
        ("between 10 and 20 min", 1200),
        ("10-20 min", 1200),
        ("30 s to 2 h", 7200),
    ],
)
def test_times_are_read_as_people_write_them(planned: Planned, written: str, seconds: int) -> None:
    plan = planned("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.20 g"), within=written)
    assert plan.choice.lowest.counted_in("A") == pytest.approx(plan.charge.counted_in("C") / seconds)
