"""What is seen at each electrode, and how products are tested."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.species import species
from ionwright.teaching import Prediction
from ionwright.teaching.accounting import Share
from ionwright.teaching.observation import gas_volume_remark, product_tests

ToldOf = Callable[..., Prediction]


@pytest.mark.parametrize(
    ("electrolyte", "rest", "electrode", "seen"),
    [
        (["CuSO4"], {}, "cathode", "A pink-brown coating of copper grows on the cathode."),
        (["CuSO4"], {}, "cathode", "The cathode gains mass."),
        (["CuSO4"], {}, "anode", "Bubbles of a colourless gas rise from the anode."),
        (["CuSO4"], {"anode": "copper"}, "anode", "The anode loses mass."),
        (
            ["CuSO4"],
            {"anode": "copper"},
            "anode",
            "The copper of the anode dissolves and gets thinner; its ions are blue.",
        ),
        (
            ["ZnSO4"],
            {"anode": "zinc"},
            "anode",
            "The anode loses mass.",
        ),
        (["Na2S"], {}, "anode", "Yellow sulfur clouds the solution round the anode."),
        (["PbBr2"], {"state": "molten"}, "anode", "Red-brown vapour of bromine rises at the anode."),
        (
            ["PbBr2"],
            {"state": "molten"},
            "cathode",
            "A shiny silvery bead of molten lead collects under the cathode.",
        ),
        (["NaCl"], {"cathode": "mercury"}, "cathode", "No gas is seen; the metal dissolves in the mercury."),
        (
            ["NaOH"],
            {"anode": "nickel"},
            "anode",
            "The nickel turns dark at the surface and gas bubbles off it.",
        ),
        (["NaOH"], {"anode": "zinc"}, "anode", "The zinc slowly dissolves and may darken."),
        (["Hg2(NO3)2"], {}, "anode", "Mercury(II) ions form at the anode."),
    ],
)
def test_an_electrode_shows_what_happens_there(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str], electrode: str, seen: str
) -> None:
    assert seen in getattr(told_of(*electrolyte, **rest), electrode).observations


def test_two_gases_that_look_alike_are_told_in_one_sentence(told_of: ToldOf) -> None:
    told = told_of("Na2CO3", state="molten", curriculum="a-level").anode.observations
    assert [one for one in told if "colourless gas" in one] == [
        "Bubbles of a colourless gas rise from the anode, and a carbon anode slowly burns away."
    ]


@pytest.mark.parametrize(
    ("substance", "electrode", "start"),
    [
        ("FeCl3", "cathode", "No gas is given off at the cathode; the solution there goes from "),
        (
            "SnCl2",
            "anode",
            "Nothing is deposited and no gas is given off at the anode: tin(II) ions become tin(IV) ions.",
        ),
    ],
)
def test_an_ion_that_changes_its_charge_recolours_the_solution_or_shows_nothing(
    told_of: ToldOf, substance: str, electrode: str, start: str
) -> None:
    account = getattr(told_of(substance, concentration="concentrated"), electrode)
    assert account.observations[0].startswith(start)


@pytest.mark.parametrize(
    ("rest", "is_seen"),
    [({"anode": "graphite"}, True), ({"anode": "platinum"}, False)],
)
def test_carbon_burns_a_little_in_the_oxygen_that_forms_on_it(
    told_of: ToldOf, rest: dict[str, str], *, is_seen: bool
) -> None:
    seen = told_of("Na2SO4", **rest).anode.observations
    assert any("carbon" in one for one in seen) is is_seen


@pytest.mark.parametrize("curriculum", ["gcse", "a-level"])
def test_indicator_shows_alkali_at_the_cathode_and_acid_at_the_anode_of_a_neutral_salt(
    told_of: ToldOf, curriculum: str
) -> None:
    told = told_of("Na2SO4", curriculum=curriculum)
    assert any("blue to purple round the cathode" in one for one in told.cathode.observations)
    assert any("red round the anode" in one for one in told.anode.observations)


@pytest.mark.parametrize(
    ("electrolyte", "rest"), [(["H2SO4"], {}), (["NaOH"], {}), (["NaCl"], {"state": "molten"})]
)
def test_indicator_is_not_spoken_of_in_acid_alkali_or_a_melt(
    told_of: ToldOf, electrolyte: list[str], rest: dict[str, str]
) -> None:
    told = told_of(*electrolyte, **rest)
    assert "indicator" not in " ".join((*told.cathode.observations, *told.anode.observations))


@pytest.mark.parametrize(
    ("melt", "seen"),
    [
        ("ZnCl2", "A grey coating of zinc grows on the cathode."),
        ("PbBr2", "A shiny silvery bead of molten lead collects under the cathode."),
    ],
)
def test_a_metal_that_melts_above_its_molten_salt_is_seen_as_a_solid(
    told_of: ToldOf, melt: str, seen: str
) -> None:
    assert told_of(melt, state="molten").cathode.observations == (seen,)


def volumes(*shares: tuple[str, int]) -> str:
    return gas_volume_remark(tuple(Share(species(formula), value) for formula, value in shares))


@pytest.mark.parametrize(
    ("shares", "remark"),
    [
        ([("H2", 2), ("O2", 1)], "Twice as much hydrogen as oxygen collects, by volume."),
        ([("O2", 1), ("H2", 3)], "Three times as much hydrogen as oxygen collects, by volume."),
        ([("H2", 4), ("O2", 1)], "Four times as much hydrogen as oxygen collects, by volume."),
        ([("H2", 5), ("N2", 1)], "5 times as much hydrogen as nitrogen collects, by volume."),
        (
            [("H2", 1), ("Cl2", 1)],
            "Equal volumes of hydrogen and chlorine form, but chlorine dissolves well, so less of it collects.",
        ),
        ([("H2", 1), ("O2", 1)], "Equal volumes of hydrogen and oxygen form."),
        ([("H2", 2), ("O2", 3)], "Oxygen and hydrogen form in the ratio 3 to 2, by volume."),
        ([("H2", 1)], ""),
        ([], ""),
        ([("H2", 1), ("C2H6", 1), ("CO2", 2)], ""),
    ],
)
def test_two_gases_are_compared_by_volume(shares: list[tuple[str, int]], remark: str) -> None:
    assert volumes(*shares) == remark


@pytest.mark.parametrize(
    ("formula", "test", "result"),
    [
        ("H2", "Hold a lighted splint at the mouth of the tube.", "The gas burns with a squeaky pop."),
        ("O2", "Hold a glowing splint in the gas.", "The splint bursts into flame again."),
        ("Cl2", "Hold damp blue litmus paper in the gas.", "The paper turns red and is then bleached white."),
    ],
)
def test_a_gas_has_its_classroom_test(formula: str, test: str, result: str) -> None:
    (found,) = product_tests((species(formula),))
    assert (found.product, found.test, found.result) == (formula, test, result)


def test_products_without_a_test_are_left_out() -> None:
    found = product_tests((species("Fe^2+"), species("O2"), species("XeF6")))
    assert [one.product for one in found] == ["O2"]


def test_bromine_from_a_melt_is_tested_in_its_vapour_only() -> None:
    (in_melt,) = product_tests((species("Br2"),), is_molten=True)
    (in_water,) = product_tests((species("Br2"),))
    assert "vapour" in in_melt.test
    assert "cyclohexane" not in in_melt.test
    assert in_melt != in_water
