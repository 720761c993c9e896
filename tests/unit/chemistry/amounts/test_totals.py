"""The mass of a mixed deposit, and the volume of gases that are collected together."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.amounts import Circuit, Key, Process
from ionwright.chemistry.amounts.totals import parts_of_totals, total_relations
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.medium import with_states

WATER = {"cathode": "2H+ + 2e- -> H2", "anode": "2H2O -> O2 + 4H+ + 4e-"}
ALLOY = {"nickel": "Ni^2+ + 2e- -> Ni @ cathode", "zinc": "Zn^2+ + 2e- -> Zn @ cathode"}


def circuit(halves: dict[str, str]) -> Circuit:
    return Circuit(
        tuple(
            Process(id_, with_states(read_equation(half.partition(" @ ")[0])), id_, id_)
            for id_, half in halves.items()
        )
    )


def test_both_gases_from_water_are_added(find: Callable[..., list[float]]) -> None:
    """1930 C give 240 cm³ of hydrogen and 120 cm³ of oxygen."""
    assert find(WATER, {"charge": "1930 C"}, "total_volume") == pytest.approx([0.36])


def test_the_charge_follows_from_the_volume_of_both_gases(find: Callable[..., list[float]]) -> None:
    assert find(WATER, {"total_volume": "360 cm3"}, "charge") == pytest.approx([1930])


def test_the_volume_of_one_gas_follows_from_that_of_both(find: Callable[..., list[float]]) -> None:
    assert find(WATER, {"total_volume": "360 cm3"}, ("volume", "O2")) == pytest.approx([0.12])


def test_a_mixed_deposit_weighs_what_its_metals_weigh(find: Callable[..., list[float]]) -> None:
    """3860 C, three quarters into nickel: 0.015 mol × 58.7 + 0.005 mol × 65.4 = 0.8805 g + 0.3270 g."""
    known = {"charge": "3860 C", ("share", "Ni"): "75.0%"}
    assert find(ALLOY, known, "total_mass") == pytest.approx([1.2075])


def test_a_total_has_only_parts_of_its_own_state() -> None:
    assert parts_of_totals(circuit(WATER), {"total_volume"}) == (
        Key("volume", "cathode", "H2"), Key("volume", "anode", "O2"),
    )  # fmt: skip
    assert parts_of_totals(circuit(WATER), {"total_mass"}) == ()
    assert parts_of_totals(circuit(ALLOY), {"total_mass"}) == (
        Key("mass", "nickel", "Ni"), Key("mass", "zinc", "Zn"),
    )  # fmt: skip
    assert parts_of_totals(circuit(ALLOY), {"mass"}) == ()


def test_a_total_without_parts_is_no_relation() -> None:
    assert list(total_relations(circuit(WATER), {"total_mass"})) == []
    (relation,) = total_relations(circuit(WATER), {"total_volume"})
    assert relation.result == Key("total_volume")


def test_a_total_that_nothing_makes_up_is_refused(refusal: Callable[..., Exception]) -> None:
    fault = refusal(WATER, {"charge": "1930 C"}, "total_mass")
    assert (fault.code, fault.where) == ("needs-more", "find")
