"""What is told of the electrolyte."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.cell import Cell
from ionwright.chemistry.equation import equation
from ionwright.teaching import Prediction
from ionwright.teaching.solution import SolutionAccount, solution_account

ToldOf = Callable[..., Prediction]


def solution(prediction: Prediction) -> SolutionAccount:
    assert prediction.solution is not None
    return prediction.solution


@pytest.mark.parametrize(
    ("electrolyte", "rest", "becomes"),
    [
        (["CuSO4"], {}, "sulfuric acid"),
        (["AgNO3"], {}, "nitric acid"),
        (["NaCl"], {"concentration": "concentrated"}, "sodium hydroxide solution"),
        (["KBr"], {}, "potassium hydroxide solution"),
        (["Na2SO4"], {}, "more concentrated sodium sulfate solution"),
        (["H2SO4"], {}, "more concentrated sulfuric acid"),
        (["CuSO4"], {"anode": "copper"}, "unchanged copper(II) sulfate solution"),
        (
            ["CuCl2"],
            {"concentration": "concentrated"},
            "more dilute copper(II) chloride solution, and in the end water",
        ),
        (["HCl"], {"concentration": "concentrated"}, "more dilute hydrochloric acid, and in the end water"),
        (["CuSO4"], {"anode": "zinc"}, "zinc sulfate solution"),
        (["FeCl3"], {"concentration": "concentrated"}, "iron(II) chloride solution"),
        (
            ["MgCl2"],
            {"concentration": "concentrated"},
            "more dilute magnesium chloride solution with a precipitate of magnesium hydroxide",
        ),
        (
            ["NaCl"],
            {"anode": "magnesium"},
            "sodium chloride solution with a precipitate of magnesium hydroxide",
        ),
    ],
)
def test_the_electrolyte_becomes_what_its_ions_make(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], becomes: str
) -> None:
    assert solution(told_of(*electrolyte, **rest)).becomes == becomes


@pytest.mark.parametrize(
    ("electrolyte", "rest", "ph"),
    [
        (["CuSO4"], {}, "falls"),
        (["NaCl"], {"concentration": "concentrated"}, "rises"),
        (["H2SO4"], {}, "falls"),
        (["NaOH"], {}, "rises"),
        (["Na2SO4"], {}, "unchanged"),
        (["CuSO4"], {"anode": "copper"}, "unchanged"),
        (["PbBr2"], {"state": "molten"}, "does not apply"),
    ],
)
@pytest.mark.parametrize("curriculum", ["gcse", "igcse", "a-level"])
def test_the_ph_goes_the_same_way_however_a_course_writes_its_equations(
    told_of: ToldOf, curriculum: str, electrolyte: list[str], rest: dict[str, str], ph: str
) -> None:
    assert solution(told_of(*electrolyte, curriculum=curriculum, **rest)).ph == ph


@pytest.mark.parametrize(
    ("electrolyte", "rest", "colour"),
    [
        (["CuSO4"], {}, "the blue colour of the copper(II) ions fades"),
        (["CuSO4"], {"anode": "copper"}, "stays blue"),
        (["NaCl"], {"concentration": "concentrated"}, "stays colourless"),
        (["KI"], {}, "turns brown round the anode"),
        (["KBr"], {}, "turns orange round the anode"),
        (["Na2SO4"], {"anode": "cobalt"}, "stays colourless"),
        (["H2SO4"], {"anode": "copper"}, "turns blue with copper(II) ions"),
        (["PbBr2"], {"state": "molten"}, "does not apply"),
    ],
)
def test_the_colour_follows_the_ions(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], colour: str
) -> None:
    assert solution(told_of(*electrolyte, **rest)).colour == colour


@pytest.mark.parametrize(
    ("electrolyte", "rest", "parts"),
    [
        (
            ["CuSO4"],
            {},
            ["Copper(II) ions leave", "hydrogen ions from water are left behind", "sulfate ions stay"],
        ),
        (
            ["NaCl"],
            {"concentration": "concentrated"},
            ["Chloride ions leave", "hydroxide ions from water are left behind"],
        ),
        (["Na2SO4"], {}, ["Only water is used up.", "Sodium ions and sulfate ions stay."]),
        (["CuSO4"], {"anode": "copper"}, ["Copper is carried from the anode to the cathode"]),
        (["CuSO4"], {"anode": "zinc"}, ["Copper(II) ions leave", "zinc ions are made"]),
        (["NaCl"], {"anode": "magnesium"}, ["magnesium hydroxide"]),
        (["PbBr2"], {"state": "molten"}, ["leave the melt, which is slowly used up."]),
        (
            ["Al2O3", "Na3AlF6"],
            {"state": "molten"},
            ["Aluminium ions and oxide ions leave", "stay in the melt."],
        ),
    ],
)
def test_the_summary_tells_what_leaves_forms_and_stays(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], parts: list[str]
) -> None:
    summary = solution(told_of(*electrolyte, **rest)).summary
    assert [part for part in parts if part not in summary] == []


def test_a_melt_of_the_anodes_own_metal_does_not_change(cell_of: Callable[..., Cell]) -> None:
    account = solution_account(cell_of("ZnCl2", state="molten", anode="iron"), equation("Zn -> Zn"))
    assert account.becomes == "molten zinc chloride"
    assert account.summary.startswith("The melt does not change.")


def test_a_precipitate_is_named_once(told_of: ToldOf) -> None:
    account = solution(told_of("MgCl2", "MgSO4", concentration="concentrated"))
    assert account.precipitates == ("magnesium hydroxide",)


def test_several_ions_that_are_left_are_listed(told_of: ToldOf) -> None:
    becomes = solution(told_of("AgNO3", "Cu(NO3)2")).becomes
    assert becomes == "a solution of Cu²⁺, H⁺ and NO₃⁻"
