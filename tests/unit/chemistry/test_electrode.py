"""Electrode materials: their names, what they do as an anode, and what is refused."""

from collections import Counter

import pytest

from ionwright.chemistry.couple import metal_couples
from ionwright.chemistry.electrode import anode_cases, electrodes, find_electrode
from ionwright.chemistry.equation import equation
from ionwright.chemistry.faults import CellRefused, UnknownSpecies
from ionwright.chemistry.tables import read_table

TABLE = read_table("electrodes.toml")
WRITTEN = [row for row in TABLE["anode_case"] if "equation" in row]


@pytest.mark.parametrize(
    ("text", "id_"),
    [
        ("graphite", "graphite"), ("C", "graphite"), ("c", "graphite"), ("carbon rods", "graphite"),
        ("Graphite Electrode", "graphite"), ("pencil lead", "graphite"), ("Pt", "platinum"),
        ("inert", "platinum"), ("platinum-foil", "platinum"), ("  copper\tplate ", "copper"), ("Cu sheet", "copper"),
        ("Cu anode", "copper"), ("coated titanium anode", "coated-titanium"), ("coated-titanium", "coated-titanium"),
        ("DSA", "coated-titanium"), ("mixed_metal_oxide", "coated-titanium"), ("18/8", "stainless-steel"),
        ("stainless steel", "stainless-steel"), ("mild steel", "steel"), ("galvanised steel", "zinc"),
        ("galvanized-steel", "zinc"), ("iron nail", "iron"), ("quicksilver", "mercury"), ("aluminum", "aluminium"),
        ("wolfram", "tungsten"), ("lead(IV) oxide", "lead-dioxide"), ("PbO2", "lead-dioxide"), ("Co", "cobalt"),
        ("kitchen foil", "aluminium"),
    ],
)  # fmt: skip
def test_a_material_is_found_by_name_symbol_and_trade_name(text: str, id_: str) -> None:
    assert find_electrode(text).id == id_


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("platnum", "Did you mean platinum?"),
        ("nickle", "Did you mean nickel?"),
        ("stainles steel", "Did you mean stainless steel?"),
        ("graphit", "Did you mean graphite?"),
        ("aluminuim", "Did you mean aluminium?"),
    ],
)
def test_a_near_name_is_offered_once(text: str, hint: str) -> None:
    with pytest.raises(UnknownSpecies) as refusal:
        find_electrode(text)
    assert refusal.value.code == "unknown-electrode"
    assert refusal.value.remedy == hint


@pytest.mark.parametrize("text", ["", " ", "plate", "unobtainium", "\x00", "Ω", "electrode sheet", "Xe"])
def test_a_name_like_no_material_gets_the_common_ones(text: str) -> None:
    with pytest.raises(UnknownSpecies) as refusal:
        find_electrode(text)
    assert refusal.value.remedy.startswith("Common materials are graphite,")


def test_a_text_of_any_length_is_refused_in_a_short_sentence() -> None:
    with pytest.raises(UnknownSpecies) as refusal:
        find_electrode("x" * 1_000_000)
    assert refusal.value.detail == f"No electrode material called '{'x' * 60}…' is known here."


def test_a_known_name_with_a_long_tail_is_not_taken_for_the_material() -> None:
    with pytest.raises(UnknownSpecies):
        find_electrode("copper" + " " * 60)


@pytest.mark.parametrize(
    ("text", "start"),
    [("wood", "Wood"), ("Perspex", "Plastic"), ("S", "Sulfur"), ("glass rod", "Glass"), ("NaCl", "Salt")],
)
def test_what_does_not_conduct_is_refused(text: str, start: str) -> None:
    with pytest.raises(CellRefused) as refusal:
        find_electrode(text)
    assert refusal.value.code == "non-conducting-electrode"
    assert refusal.value.detail.startswith(f"{start} does not conduct electricity")


@pytest.mark.parametrize(
    ("text", "start"), [("sodium", "Sodium"), ("K", "Potassium"), ("Ca electrode", "Calcium")]
)
def test_what_attacks_water_is_refused(text: str, start: str) -> None:
    with pytest.raises(CellRefused) as refusal:
        find_electrode(text)
    assert refusal.value.code == "electrode-reacts"
    assert refusal.value.detail.startswith(f"{start} cannot be an electrode: it reacts with water")


def test_no_name_means_two_materials() -> None:
    names = Counter(
        name
        for kind in ("electrode", "non_conductor", "reacts_with_water")
        for row in TABLE[kind]
        for name in {
            n.casefold() for n in (row.get("id", row["name"]).replace("-", " "), row["name"], *row["aliases"])
        }
    )
    assert [name for name, times in names.items() if times > 1] == []


@pytest.mark.parametrize("row", TABLE["electrode"], ids=lambda row: row["id"])
def test_every_alias_finds_its_own_material(row: dict[str, object]) -> None:
    found = {find_electrode(name).id for name in (row["id"], row["name"], *row["aliases"])}
    assert found == {row["id"]}


@pytest.mark.parametrize("row", WRITTEN, ids=lambda row: f"{row['electrode']} in {row['anion']}")
def test_every_written_anode_reaction_is_a_balanced_oxidation_of_the_electrode(row: dict[str, str]) -> None:
    half = equation(row["equation"])
    half.check()
    assert half.electrons < 0
    assert electrodes()[row["electrode"]].metal in {kind.ascii for kind in half.reactants}


def test_every_anode_case_names_a_material_of_the_table_and_what_is_seen() -> None:
    for row in TABLE["anode_case"]:
        assert row["electrode"] in electrodes()
        assert row["seen"].endswith(".")
        assert ("equation" in row) == (row["behaviour"] != "passive")


def test_the_behaviour_of_every_material_is_one_of_three_words() -> None:
    assert {one.anode for one in electrodes().values()} == {"inert", "active", "filming"}


def test_every_metal_that_can_react_has_a_couple() -> None:
    active = {one.metal for one in electrodes().values() if one.anode != "inert"}
    assert active <= set(metal_couples())
    assert "" not in active


def test_the_first_fitting_case_counts_so_the_general_one_stands_last() -> None:
    assert [case.anion for case in anode_cases("aluminium")] == ["OH^-", "Cl^-", "Br^-", "I^-", "*"]
    assert [case.anion for case in anode_cases("silver")][-1] == "OH^-"
    assert anode_cases("graphite") == ()


@pytest.mark.parametrize(
    ("id_", "melts_C"), [("mercury", -38.8), ("tin", 231.9), ("copper", 1084.6), ("graphite", None)]
)
def test_melting_points_are_those_of_a_data_book(id_: str, melts_C: float | None) -> None:
    assert electrodes()[id_].melts_C == melts_C
