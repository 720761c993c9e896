"""The curricula that ship: what they declare, and the half-equations that three of them write in each medium."""

import tomllib
from importlib import import_module
from importlib.metadata import entry_points
from pathlib import Path

import pytest

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.curricula.host import load_curricula
from ionwright.curricula.rules.halides import Halides
from ionwright.curricula.rules.ladder import Ladder
from ionwright.curricula.rules.least_positive import LeastPositive
from ionwright.curricula.rules.most_positive import MostPositive
from ionwright.teaching import predict

PLUGINS = Path(__file__).resolve().parents[3] / "plugins"
PACKAGES = sorted(folder.name for folder in PLUGINS.glob("ionwright_*") if (folder / "__init__.py").exists())
REGISTRY = load_curricula()
FROM_H = "2H^+ + 2e- -> H2"
FROM_WATER = "2H2O + 2e- -> H2 + 2OH^-"
FROM_OH = "4OH^- -> O2 + 2H2O + 4e-"
WATER_TO_OXYGEN = "2H2O -> O2 + 4H^+ + 4e-"


@pytest.mark.parametrize(
    ("curriculum", "substance", "hydrogen", "oxygen"),
    [
        ("gcse", "H2SO4", [FROM_H], [FROM_OH, WATER_TO_OXYGEN]),
        ("gcse", "Na2SO4", [FROM_H, FROM_WATER], [FROM_OH, WATER_TO_OXYGEN]),
        ("gcse", "NaOH", [FROM_H, FROM_WATER], [FROM_OH]),
        ("igcse", "H2SO4", [FROM_H], [FROM_OH, WATER_TO_OXYGEN]),
        ("igcse", "Na2SO4", [FROM_H, FROM_WATER], [FROM_OH, WATER_TO_OXYGEN]),
        ("igcse", "NaOH", [FROM_H, FROM_WATER], [FROM_OH]),
        ("a-level", "H2SO4", [FROM_H], [WATER_TO_OXYGEN]),
        ("a-level", "Na2SO4", [FROM_WATER, FROM_H], [WATER_TO_OXYGEN, FROM_OH]),
        ("a-level", "NaOH", [FROM_WATER], [FROM_OH]),
    ],
)
def test_hydrogen_and_oxygen_are_written_as_the_course_writes_them_in_acid_water_and_alkali(
    curriculum: str, substance: str, hydrogen: list[str], oxygen: list[str]
) -> None:
    told = predict(CellDescription(electrolyte=(Ingredient(substance),)), REGISTRY[curriculum])
    forms = [
        [half.ascii for half in (account.half_equation, *account.also_written) if half]
        for account in (told.cathode, told.anode)
    ]
    assert forms == [hydrogen, oxygen]


@pytest.mark.parametrize("curriculum", ["gcse", "igcse", "a-level"])
@pytest.mark.parametrize(
    ("substance", "rest", "cathode", "anode"),
    [
        ("CuCl2", {}, "Cu^2+ + 2e- -> Cu", "2Cl^- -> Cl2 + 2e-"),
        ("KBr", {"anode": "platinum"}, None, "2Br^- -> Br2 + 2e-"),
        ("AgNO3", {"anode": "silver", "cathode": "steel"}, "Ag^+ + e- -> Ag", "Ag -> Ag^+ + e-"),
        ("CuSO4", {"anode": "copper", "cathode": "copper"}, "Cu^2+ + 2e- -> Cu", "Cu -> Cu^2+ + 2e-"),
        ("PbBr2", {"state": "molten"}, "Pb^2+ + 2e- -> Pb", "2Br^- -> Br2 + 2e-"),
        ("Al2O3", {"state": "molten"}, "Al^3+ + 3e- -> Al", "2O^2- -> O2 + 4e-"),
    ],
)
def test_on_these_cells_all_three_courses_agree(
    curriculum: str, substance: str, rest: dict[str, str], cathode: str | None, anode: str
) -> None:
    cell = CellDescription(electrolyte=(Ingredient(substance, None if rest else "concentrated"),), **rest)
    told = predict(cell, REGISTRY[curriculum])
    assert cathode is None or str(told.cathode.half_equation) == cathode
    assert str(told.anode.half_equation) == anode


@pytest.mark.parametrize(
    ("name", "package"),
    [(package.removeprefix("ionwright_").replace("_", "-"), package) for package in PACKAGES],
)
def test_each_package_is_registered_and_gives_the_curriculum_of_its_name(name: str, package: str) -> None:
    points = {point.name: point.value for point in entry_points(group="ionwright.plugins")}
    (given,) = import_module(package).ionwright_curricula()
    assert points[name] == package
    assert given.id == name


@pytest.mark.parametrize("package", PACKAGES)
def test_each_declaration_gives_its_sources_and_how_sure_it_is(package: str) -> None:
    declared = tomllib.loads((PLUGINS / package / "curriculum.toml").read_text(encoding="utf-8"))
    assert declared["sources"]
    assert {"cathode", "anode", "conventions"} <= set(declared["certainty"])


@pytest.mark.parametrize(
    ("curriculum", "symbols"),
    [("gcse", ["Li", "Sn", "Pb", "Pt"]), ("igcse", ["Ca", "Au"])],
)
def test_the_series_of_a_course_holds_its_own_metals_and_hydrogen_between_lead_and_copper(
    curriculum: str, symbols: list[str]
) -> None:
    ladder = REGISTRY[curriculum].cathode_rules[-1]
    assert isinstance(ladder, Ladder)
    assert set(symbols) <= set(ladder.order)
    assert ladder.order.index("Fe") < ladder.order.index("H") < ladder.order.index("Cu")


@pytest.mark.parametrize("curriculum", ["gcse", "igcse"])
def test_the_longer_series_keeps_the_order_of_the_printed_one_about_hydrogen(curriculum: str) -> None:
    ladder = REGISTRY[curriculum].cathode_rules[-1]
    assert isinstance(ladder, Ladder)
    above, wider_above = (set(series[: series.index("H")]) for series in (ladder.order, ladder.wider_order))
    assert above <= wider_above
    assert set(ladder.order) <= set(ladder.wider_order)


@pytest.mark.parametrize(("curriculum", "mode"), [("gcse", "always"), ("igcse", "when-concentrated")])
def test_a_halide_counts_as_the_course_says(curriculum: str, mode: str) -> None:
    (rule,) = (rule for rule in REGISTRY[curriculum].anode_rules if isinstance(rule, Halides))
    assert rule.mode == mode
    assert [ion.ascii for ion in rule.halides] == ["Cl^-", "Br^-", "I^-"]


def test_a_level_decides_by_potentials_with_hydrogen_at_zero() -> None:
    curriculum = REGISTRY["a-level"]
    assert curriculum.cathode_rules[-1] == MostPositive("H+")
    assert isinstance(curriculum.anode_rules[-1], LeastPositive)


@pytest.mark.parametrize(
    ("curriculum", "constants"),
    [
        ("gcse", {"molar_gas_volume": "24 dm3/mol"}),
        ("igcse", {"molar_gas_volume": "24 dm3/mol"}),
        (
            "a-level",
            {
                "faraday_constant": "96500 C/mol",
                "molar_gas_volume": "24.0 dm3/mol",
                "avogadro_constant": "6.02e23 /mol",
                "elementary_charge": "1.60e-19 C",
                "gas_constant": "8.31 J/(mol K)",
                "other_molar_gas_volumes": {"stp, 273 K and 101 kPa": "22.4 dm3/mol"},
            },
        ),
    ],
)
def test_a_course_prints_only_the_constants_that_it_uses(
    curriculum: str, constants: dict[str, object]
) -> None:
    printed = REGISTRY[curriculum].conventions.constants.described()
    assert printed.pop("gas_conditions")
    assert {name: text for name, text in printed.items() if "relative" not in name} == constants


@pytest.mark.parametrize(
    ("curriculum", "masses"),
    [
        ("gcse", "H 1, O 16, Na 23, Cl 35.5, Fe 56, Ni 59, Cu 63.5, Zn 65, Br 80, Ag 108, I 127, Pb 207"),
        ("igcse", "H 1, O 16, Na 23, Cl 35.5, Fe 56, Ni 59, Cu 64, Zn 65, Br 80, Ag 108, I 127, Pb 207"),
        (
            "a-level",
            "H 1.0, O 16.0, Na 23.0, Cl 35.5, Fe 55.8, Ni 58.7, Cu 63.5, Zn 65.4, Br 79.9, Ag 107.9, I 126.9, Pb 207.2",
        ),
    ],
)
def test_relative_atomic_masses_are_those_of_the_course_s_periodic_table(
    curriculum: str, masses: str
) -> None:
    printed = REGISTRY[curriculum].conventions.constants
    symbols = [pair.split()[0] for pair in masses.split(", ")]
    assert ", ".join(f"{symbol} {printed.relative_atomic_mass(symbol)}" for symbol in symbols) == masses
