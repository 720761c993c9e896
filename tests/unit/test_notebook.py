"""The functions for a notebook."""

import pytest

import ionwright
from ionwright.errors import IonwrightError
from ionwright.notebook import predict


def test_the_package_hands_out_the_function_itself() -> None:
    assert ionwright.predict is predict


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
