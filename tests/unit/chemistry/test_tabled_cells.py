"""The cells of the tables: which setups are there, and that each says something of its own."""

import pytest

from ionwright.chemistry.cell import make_cell
from ionwright.chemistry.electrolytes import known_electrolytes
from ionwright.chemistry.tabled_cells import TabledCell, tabled_cells


def described(tabled: TabledCell) -> tuple[str, str | None, str, str, str]:
    one = tabled.description
    (ingredient,) = one.electrolyte
    return ingredient.substance, ingredient.concentration, one.state, one.cathode, one.anode


SETUPS = {described(tabled): tabled.electrodes for tabled in tabled_cells()}


def test_no_cell_stands_there_twice() -> None:
    assert len(SETUPS) == len(tabled_cells())


@pytest.mark.parametrize(
    ("setup", "electrodes"),
    [
        (("NaCl", "dilute", "aqueous", "graphite", "graphite"), ("cathode", "anode")),
        (("NaCl", "concentrated", "aqueous", "graphite", "graphite"), ("cathode", "anode")),
        (("NaCl", "dilute", "aqueous", "graphite", "copper"), ("anode",)),
        (("NaCl", "dilute", "aqueous", "mercury", "graphite"), ("cathode",)),
        (("NiSO4", "dilute", "aqueous", "graphite", "nickel"), ("cathode", "anode")),
        (("NaCl", None, "molten", "graphite", "graphite"), ("cathode", "anode")),
    ],
)
def test_a_setup_is_there_for_the_electrodes_where_it_matters(
    setup: tuple[str, str | None, str, str, str], electrodes: tuple[str, ...]
) -> None:
    assert SETUPS[setup] == electrodes


@pytest.mark.parametrize(
    "setup",
    [
        ("CaCO3", "dilute", "aqueous", "graphite", "graphite"),  # does not dissolve
        ("CuSO4", None, "molten", "graphite", "graphite"),  # decomposes
        ("NaCl", "dilute", "aqueous", "graphite", "platinum"),  # as graphite
        ("ZnSO4", "dilute", "aqueous", "graphite", "copper"),  # as in acids and sodium salts
    ],
)
def test_what_cannot_be_or_says_nothing_new_is_left_out(setup: tuple[str, str | None, str, str, str]) -> None:
    assert setup not in SETUPS


def test_the_cells_are_those_of_their_descriptions() -> None:
    for tabled in tabled_cells()[::97]:
        assert make_cell(tabled.description) == tabled.cell


def test_they_stand_in_the_order_of_the_pick_list() -> None:
    names = [tabled.name for tabled in tabled_cells()]
    assert names == sorted(names)
    assert set(names) <= {known.name for known in known_electrolytes()}


def test_active_anodes_are_active() -> None:
    active = [tabled for tabled in tabled_cells() if tabled.description.anode != "graphite"]
    assert len(active) > 1000
    assert {tabled.cell.anode_behaviour() for tabled in active} == {"active"}
