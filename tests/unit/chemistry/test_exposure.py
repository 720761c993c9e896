"""Limits for gases in the air of a room."""

import pytest

from ionwright.chemistry.exposure import (
    limits,
    lower_explosive_percent,
    mg_m3_from_ppm,
    ppm_from_mg_m3,
    short_term_limits,
    strictest_short_term,
)
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.species import species
from ionwright.chemistry.tables import read_table

TABLE = read_table("exposure.toml")
FORMULAS = sorted({row["formula"] for row in TABLE["limit"]})


@pytest.mark.parametrize(
    ("formula", "jurisdiction", "kind", "printed", "verified"),
    [
        ("Cl2", "USA NIOSH", "REL ceiling 15 min", "0.5 ppm", True),
        ("Br2", "Ontario", "STEL 15 min", "0.2 ppm", True),
        ("I2", "Ontario", "STEL 15 min", "0.1 ppm", True),
        ("NO2", "USA NIOSH", "REL STEL 15 min", "1 ppm", True),
        ("SO2", "UK WEL", "STEL 15 min", "1 ppm", False),
        ("CO", "UK WEL", "STEL 15 min", "100 ppm", False),
        ("Hg", "Ontario", "STEL 15 min", "0.03 mg/m3", True),
    ],
)
def test_the_strictest_short_term_limit_counts_and_says_whether_it_was_read(
    formula: str, jurisdiction: str, kind: str, printed: str, verified: bool
) -> None:
    limit = strictest_short_term(formula)
    assert limit is not None
    assert (limit.formula, limit.jurisdiction, limit.kind) == (formula, jurisdiction, kind)
    assert (limit.printed, limit.verified) == (printed, verified)


def test_only_limits_for_a_quarter_of_an_hour_and_ceilings_are_short_term() -> None:
    assert [limit.kind for limit in short_term_limits("Cl2")] == [
        "STEL 15 min",
        "REL ceiling 15 min",
        "PEL ceiling",
        "STEL 15 min",
        "STEL 15 min",
    ]
    assert {limit.kind for limit in limits("Cl2") if not limit.is_short_term} == {"TWA 8 h", "IDLH"}


@pytest.mark.parametrize("formula", ["H2", "O2", "", "Xx"])
def test_a_gas_without_a_limit_in_the_tables_has_none(formula: str) -> None:
    assert limits(formula) == ()
    assert short_term_limits(formula) == ()
    assert strictest_short_term(formula) is None


def test_a_substance_with_a_limit_for_the_day_only_has_no_short_term_limit() -> None:
    assert [limit.kind for limit in limits("Pb")] == ["TWA 8 h"]
    assert strictest_short_term("Pb") is None


@pytest.mark.parametrize(
    ("formula", "ppm", "mg_m3"), [("Cl2", 0.5, 1.45), ("SO2", 1, 2.62), ("NO2", 1, 1.88), ("HCl", 5, 7.46)]
)
def test_parts_by_volume_and_mass_agree_at_25_degrees(formula: str, ppm: float, mg_m3: float) -> None:
    assert mg_m3_from_ppm(ppm, formula) == pytest.approx(mg_m3, rel=3e-3)
    assert ppm_from_mg_m3(mg_m3_from_ppm(ppm, formula), formula) == pytest.approx(ppm, rel=1e-12)


def test_a_limit_by_volume_is_told_by_mass_too_and_one_by_mass_stays_so() -> None:
    chlorine, mercury = strictest_short_term("Cl2"), strictest_short_term("Hg")
    assert chlorine is not None
    assert mercury is not None
    assert (chlorine.ppm, chlorine.mg_m3) == (0.5, pytest.approx(1.449, abs=1e-3))
    assert (mercury.ppm, mercury.mg_m3) == (None, 0.03)


def test_a_gas_of_an_element_without_a_mass_cannot_be_converted() -> None:
    with pytest.raises(QuantityFault, match="radon") as caught:
        mg_m3_from_ppm(1, "Rn")
    assert caught.value.code == "unknown-element"


@pytest.mark.parametrize(("formula", "percent"), [("H2", 4.0), ("CO", 10.9), ("NH3", 15.0), ("O2", None)])
def test_a_gas_that_burns_has_a_lower_explosive_limit(formula: str, percent: float | None) -> None:
    assert lower_explosive_percent(formula) == percent


@pytest.mark.parametrize("formula", FORMULAS)
def test_every_formula_is_canonical_and_every_limit_above_zero(formula: str) -> None:
    assert species(formula).ascii == formula
    assert all(limit.mg_m3 > 0 for limit in limits(formula))


def test_every_source_of_a_limit_resolves_and_every_source_is_used() -> None:
    assert {row["source"] for kind in ("limit", "flammable") for row in TABLE[kind]} == set(TABLE["sources"])


def test_what_was_recalled_from_the_british_list_is_marked_so() -> None:
    british = [limit for formula in FORMULAS for limit in limits(formula) if limit.jurisdiction == "UK WEL"]
    assert len(british) == 26
    assert not any(limit.verified for limit in british)
