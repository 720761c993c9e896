"""The air of the room, and where a demonstration may be done."""

from __future__ import annotations

import tomllib
from importlib.resources import files
from typing import TYPE_CHECKING

import pytest

from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.substance import SUBSTANCES
from ionwright.teaching.demonstrations import venue as places
from ionwright.teaching.demonstrations.venue import DEFERRING, FUME_CUPBOARD, NOT_FOR_A_CLASSROOM, OPEN_BENCH

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.teaching.demonstrations import Plan

    Planned = Callable[..., Plan]

CHLORINE_MG = 0.050 / 24 * 71 * 1000


def test_chlorine_is_reckoned_in_both_units_and_against_the_strictest_limit(planned: Planned) -> None:
    plan = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), within="20 min", room_volume="180 m3")
    (gas,) = plan.toxic
    assert gas.of == "Cl2"
    assert gas.evenly_mixed.mg_m3.value == pytest.approx(CHLORINE_MG / 180)
    assert gas.evenly_mixed.ppm.value == pytest.approx(CHLORINE_MG / 180 * 24.465 / 70.9, rel=1e-3)
    assert (gas.limit.ppm, gas.limit.verified) == (0.5, True)
    assert gas.at_peak is None
    assert "Near the cell there is far more" in gas.says
    assert gas.limit.jurisdiction in gas.says


def test_ventilation_lowers_the_peak(planned: Planned) -> None:
    still = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), room_volume="180 m3")
    aired = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), room_volume="180 m3", air_changes="6 /h")
    (gas,) = aired.toxic
    assert gas.at_peak is not None
    assert gas.at_peak.mg_m3.value < still.toxic[0].evenly_mixed.mg_m3.value
    none = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), room_volume="180 m3", air_changes="0")
    assert none.toxic[0].at_peak is not None
    assert none.toxic[0].at_peak.mg_m3.value == pytest.approx(CHLORINE_MG / 180)


def test_hydrogen_is_held_against_its_lower_limit(planned: Planned) -> None:
    plan = planned("H2SO4@0.5 mol/dm3", ("volume of H2", "48 cm3"), room_volume="100 m3")
    (gas,) = plan.flammable
    assert gas.lower_limit.value == 4
    assert gas.evenly_mixed.value == pytest.approx(48e-6 / 100 * 100)
    assert gas.air_to_limit.counted_in("cm3") == pytest.approx(1200)


def test_what_only_may_form_is_reckoned_as_the_worst_case(planned: Planned) -> None:
    plan = planned("NaCl@0.1 mol/dm3", ("volume of O2", "12 cm3"))
    (gas,) = plan.toxic
    assert (gas.of, gas.is_certain) == ("Cl2", False)
    assert gas.evenly_mixed.mg_m3.value == pytest.approx(0.012 / 24 * 2 * 71 * 1000 / 150)
    assert "not sure" in gas.says


@pytest.mark.parametrize(
    ("electrolyte", "aim", "rest", "verdict"),
    [
        ("CuSO4@0.5 mol/dm3", ("mass of Cu", "0.10 g"), {}, (OPEN_BENCH, "Nothing in the plan")),
        ("H2SO4@0.5 mol/dm3", ("volume of H2", "10 cm3"), {}, (OPEN_BENCH, "can be lit")),
        ("NiSO4@0.5 mol/dm3", ("mass of Ni", "0.10 g"), {"anode": "nickel"}, (OPEN_BENCH, "Nickel salts")),
        ("NaCl@2 mol/dm3", ("volume of Cl2", "1 cm3"), {}, (OPEN_BENCH, "Only a little toxic chlorine")),
        ("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), {}, (FUME_CUPBOARD, "Toxic chlorine forms")),
        (
            "NaCl@2 mol/dm3",
            ("volume of Cl2", "2 dm3"),
            {"within": "5 h"},
            (NOT_FOR_A_CLASSROOM, "times the short-term"),
        ),
        ("PbBr2", ("mass of Pb", "0.10 g"), {"state": "molten"}, (FUME_CUPBOARD, "A melt burns")),
        ("NaCl", ("mass of Na", "0.10 g"), {"state": "molten"}, (NOT_FOR_A_CLASSROOM, "industrial cell")),
        ("CdSO4@0.1 mol/dm3", ("volume of O2", "5 cm3"), {}, (NOT_FOR_A_CLASSROOM, "Cadmium")),
        ("K2Cr2O7@0.1 mol/dm3", ("volume of O2", "5 cm3"), {}, (NOT_FOR_A_CLASSROOM, "very toxic")),
        (
            "CuSO4@0.5 mol/dm3",
            ("mass of Cu", "50 g"),
            {"within": "20 min"},
            (NOT_FOR_A_CLASSROOM, "never turn to the mains"),
        ),
        (
            "CuSO4@0.5 mol/dm3",
            ("mass of Cu", "3 g"),
            {"highest_current": "10 A", "within": "20 min"},
            (OPEN_BENCH, "grow hot"),
        ),
        ("H2SO4@5 mol/dm3", ("volume of H2", "10 cm3"), {}, (FUME_CUPBOARD, "concentrated")),
        ("NaOH@4 mol/dm3", ("volume of H2", "10 cm3"), {}, (OPEN_BENCH, "alkali is concentrated")),
        (
            "NaCl@0.1 mol/dm3",
            ("volume of O2", "2 dm3"),
            {"within": "8 h"},
            (NOT_FOR_A_CLASSROOM, "So much toxic chlorine may form that no classroom"),
        ),
        (
            "H2SO4@0.5 mol/dm3",
            ("volume of O2", "5 cm3"),
            {"anode": "stainless steel"},
            (NOT_FOR_A_CLASSROOM, "chromium(VI)"),
        ),
        (
            "ZnSO4@0.5 mol/dm3",
            ("volume of O2", "5 cm3"),
            {"cathode": "mercury"},
            (NOT_FOR_A_CLASSROOM, "Mercury"),
        ),
        (
            "H2SO4@1 mol/dm3",
            ("volume of H2", "3 dm3"),
            {"within": "5 h"},
            (FUME_CUPBOARD, "more hydrogen than a demonstration needs"),
        ),
        (
            "H2SO4@1 mol/dm3",
            ("volume of H2", "12 dm3"),
            {"within": "8 h"},
            (NOT_FOR_A_CLASSROOM, "far more hydrogen"),
        ),
        (
            "CuSO4@0.5 mol/dm3",
            ("mass of Cu", "100 g"),
            {"highest_current": "1000 A"},
            (NOT_FOR_A_CLASSROOM, "never turn to the mains"),
        ),
        ("NaOH", ("mass of Na", "0.1 g"), {"state": "molten"}, (NOT_FOR_A_CLASSROOM, "industry only")),
        ("KF@1 mol/dm3", ("volume of O2", "5 cm3"), {}, (FUME_CUPBOARD, "Fluorides")),
        ("Na2S@0.5 mol/dm3", ("volume of H2", "5 cm3"), {}, (FUME_CUPBOARD, "hydrogen sulfide")),
        ("NH4Cl@2 mol/dm3", ("volume of H2", "5 cm3"), {}, (NOT_FOR_A_CLASSROOM, "explode without warning")),
        (
            "NH4Cl@0.05 mol/dm3",
            ("volume of H2", "5 cm3"),
            {},
            (NOT_FOR_A_CLASSROOM, "explode without warning"),
        ),
        ("KI@0.5 mol/dm3", ("mass of I2", "0.10 g"), {}, (OPEN_BENCH, "Only a little toxic iodine")),
        ("NaBr@0.5 mol/dm3", ("amount of Br2", "0.01 mmol"), {}, (FUME_CUPBOARD, "Bromine is very toxic")),
        (
            "NaCl@2 mol/dm3",
            ("volume of Cl2", "50 cm3"),
            {"room_volume": "180 m3", "air_changes": "200 /h"},
            (FUME_CUPBOARD, "ventilation helps"),
        ),
        (
            "NaCl@2 mol/dm3",
            ("volume of Cl2", "400 cm3"),
            {"room_volume": "10000 m3", "within": "2 h"},
            (FUME_CUPBOARD, "through 250 m³ of air"),
        ),
        (
            "NaCl@2 mol/dm3",
            ("volume of Cl2", "5 dm3"),
            {"room_volume": "10000 m3", "within": "9 h"},
            (NOT_FOR_A_CLASSROOM, "through 250 m³ of air"),
        ),
    ],
)
def test_where_a_demonstration_may_be_done(
    planned: Planned, electrolyte: str, aim: tuple[str, str], rest: dict[str, str], verdict: tuple[str, str]
) -> None:
    word, because = verdict
    plan = planned(electrolyte, aim, **rest)
    assert plan.venue.word == word
    assert because in " ".join(plan.venue.reasons)
    assert plan.venue.reasons[-1] == DEFERRING
    assert plan.prediction.cautions[-1].hazard == "all cells"


def test_carbon_dioxide_far_below_its_limit_is_no_reason(planned: Planned) -> None:
    plan = planned("Al2O3", ("mass of Al", "0.1 g"), state="molten")
    assert plan.toxic[0].of == "CO2"
    assert not any("carbon dioxide" in reason for reason in plan.venue.reasons)


def test_iodine_in_solution_is_counted_by_its_vapour(planned: Planned) -> None:
    dissolved = planned("KI@0.5 mol/dm3", ("mass of I2", "0.10 g"), room_volume="100 m3").toxic[0]
    assert dissolved.evenly_mixed.mg_m3.value == pytest.approx(100 / 100 / 100)
    assert "About 1% of the iodine" in dissolved.says
    (molten,) = planned("PbI2", ("mass of I2", "0.10 g"), state="molten", room_volume="100 m3").toxic
    assert molten.evenly_mixed.mg_m3.value == pytest.approx(100 / 100)


def test_how_much_would_do_on_the_open_bench_is_told(planned: Planned) -> None:
    plan = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), room_volume="150 m3")
    limit_mg = 0.5 * 70.9 / 24.465 * 150
    assert 7 < limit_mg / 10 / 71 * 24 < 8
    assert any("up to about 7 cm³ of it" in reason for reason in plan.venue.reasons)


@pytest.mark.parametrize(
    ("electrolyte", "rest"), [("NH4Cl@2 mol/dm3", {}), ("PbBr2", {"state": "molten"}), ("HCl@6 mol/dm3", {})]
)
def test_less_gas_is_no_way_to_the_open_bench_where_more_stands_against_it(
    planned: Planned, electrolyte: str, rest: dict[str, str]
) -> None:
    plan = planned(electrolyte, ("", "visible"), **rest)
    assert plan.toxic
    assert not any("would do on the open bench" in reason for reason in plan.venue.reasons)


def test_a_large_room_is_written_plainly(planned: Planned) -> None:
    plan = planned("NaCl@2 mol/dm3", ("volume of Cl2", "50 cm3"), room_volume="10000 m3", air_changes="0")
    assert "through 10000 m³" in plan.toxic[0].says
    assert "0 air changes" not in plan.toxic[0].says
    assert not any("ventilation helps" in reason for reason in plan.venue.reasons)


def test_the_hazards_that_send_a_demonstration_elsewhere_are_those_of_the_cautions() -> None:
    text = files("ionwright.teaching").joinpath("data", "cautions.toml").read_text(encoding="utf-8")
    table = tomllib.loads(text)
    rows = [row for row in table.values() if isinstance(row, dict)] + table["ion"]
    hazards = {row["hazard"] for row in rows}
    assert hazards >= set(places._BY_HAZARD)
    texts = [row["text"] for row in rows]
    texts += [e.caution + e.caution_as_anode for e in electrodes().values()]
    texts += [one.caution for one in SUBSTANCES.values()]
    for phrase in places._BY_PHRASE:
        assert any(phrase in one for one in texts), phrase


def test_every_rule_of_thumb_is_marked_as_our_own() -> None:
    text = files("ionwright.teaching").joinpath("data", "demonstrations.toml").read_text(encoding="utf-8")
    table = tomllib.loads(text)
    assert table["verified"] is False
    assert all(row["says"].endswith(".") for row in table.values() if isinstance(row, dict))
