"""What could run at each electrode of a cell."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.anode_metal import dissolved_ion
from ionwright.chemistry.cell import Cell
from ionwright.chemistry.competition import (
    anode_behaviour,
    anode_competition,
    cathode_competition,
)
from ionwright.chemistry.process import FROM_IONS, FROM_WATER, Kind
from ionwright.chemistry.species import species

HYDROGEN = "2H^+ + 2e- -> H2"
OXYGEN = "4OH^- -> O2 + 2H2O + 4e-"


def cathode(
    *ions: str, medium: str = "neutral", on: str = "graphite", melt_C: float | None = None
) -> list[str]:
    found = cathode_competition(tuple(map(species, ions)), medium, on, melt_C)
    return [process.written("").ascii for process in found.processes]


def anode(
    *ions: str, medium: str = "neutral", on: str = "graphite", melt_C: float | None = None
) -> list[str]:
    found = anode_competition(tuple(map(species, ions)), medium, on, melt_C)
    return [process.written("").ascii for process in found.processes]


@pytest.mark.parametrize(
    ("ions", "medium", "open_to_it"),
    [
        (["Na^+", "Cl^-"], "neutral", ["Na^+ + e- -> Na"]),
        (["Cu^2+", "SO4^2-"], "neutral", ["Cu^2+ + 2e- -> Cu", "Cu^2+ + e- -> Cu^+"]),
        (["Fe^3+", "Cl^-"], "neutral", ["Fe^3+ + 3e- -> Fe", "Fe^3+ + e- -> Fe^2+"]),
        (["Hg2^2+", "NO3^-"], "acidic", ["Hg2^2+ + 2e- -> 2Hg", "NO3^- + 4H^+ + 3e- -> NO + 2H2O"]),
        (["[Ag(CN)2]^-"], "neutral", ["[Ag(CN)2]^- + e- -> Ag + 2CN^-"]),
        (
            ["K^+", "MnO4^-"],
            "acidic",
            [
                "K^+ + e- -> K",
                "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",
                "MnO4^- + 4H^+ + 3e- -> MnO2 + 2H2O",
            ],
        ),
        (
            ["K^+", "MnO4^-"],
            "neutral",
            ["K^+ + e- -> K", "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-", "MnO4^- + e- -> MnO4^2-"],
        ),
        (["SO4^2-"], "acidic", []),
        (["Cl^-"], "acidic", []),
        (["VO^2+", "SO4^2-"], "acidic", ["VO^2+ + 2H^+ + e- -> V^3+ + H2O"]),
    ],
)
def test_every_reduction_of_the_ions_is_listed_in_the_form_of_the_medium(
    ions: list[str], medium: str, open_to_it: list[str]
) -> None:
    assert cathode(*ions, medium=medium) == [*open_to_it, HYDROGEN]


@pytest.mark.parametrize(
    ("ions", "medium", "open_to_it"),
    [
        (["Na^+", "Cl^-"], "neutral", ["2Cl^- -> Cl2 + 2e-"]),
        (["Na^+", "F^-"], "neutral", ["2F^- -> F2 + 2e-"]),
        (["K^+", "I^-"], "neutral", ["2I^- -> I2 + 2e-"]),
        (["Cu^2+", "SO4^2-"], "neutral", ["2SO4^2- -> S2O8^2- + 2e-"]),
        (["Na^+", "NO3^-"], "neutral", []),
        (["Sn^2+", "NO3^-"], "acidic", ["Sn^2+ -> Sn^4+ + 2e-"]),
        (["Pb^2+", "NO3^-"], "neutral", ["Pb^2+ + 2H2O -> PbO2 + 4H^+ + 2e-"]),
        (["Na^+", "C2O4^2-"], "neutral", ["C2O4^2- -> 2CO2 + 2e-"]),
        (["Na^+", "CH3COO^-"], "neutral", ["2CH3COO^- -> C2H6 + 2CO2 + 2e-"]),
        (["NH4^+", "SO4^2-"], "neutral", ["NH4^+ + 3H2O -> NO3^- + 10H^+ + 8e-", "2SO4^2- -> S2O8^2- + 2e-"]),
        (["Na^+", "S^2-"], "alkaline", ["S^2- -> S + 2e-"]),
    ],
)
def test_every_oxidation_of_the_ions_is_listed_beside_oxygen(
    ions: list[str], medium: str, open_to_it: list[str]
) -> None:
    assert anode(*ions, medium=medium) == [*open_to_it, OXYGEN]


def test_hydrogen_and_oxygen_have_both_ways_of_writing_with_states() -> None:
    hydrogen = cathode_competition((species("Na^+"),), "neutral", "graphite", None).of(Kind.HYDROGEN)[0]
    oxygen = anode_competition((species("Na^+"),), "neutral", "graphite", None).of(Kind.OXYGEN)[0]
    assert [(name, half.ascii) for name, half in hydrogen.forms] == [
        (FROM_IONS, "2H^+ + 2e- -> H2"),
        (FROM_WATER, "2H2O + 2e- -> H2 + 2OH^-"),
    ]
    assert [(name, half.ascii) for name, half in oxygen.forms] == [
        (FROM_IONS, "4OH^- -> O2 + 2H2O + 4e-"),
        (FROM_WATER, "2H2O -> O2 + 4H^+ + 4e-"),
    ]
    assert [term.state for term in oxygen.written(FROM_WATER).right] == ["g", "aq", ""]


@pytest.mark.parametrize(
    ("ion", "side", "kind", "product", "potential_V"),
    [
        ("Cu^2+", "cathode", Kind.METAL, "Cu", 0.34),
        ("Fe^3+", "cathode", Kind.METAL, "Fe", -0.04),
        ("Cr2O7^2-", "cathode", Kind.REACTION, "Cr^3+", 1.33),
        ("[Cu(NH3)4]^2+", "cathode", Kind.METAL, "Cu", -0.03),
        ("Cl^-", "anode", Kind.HALOGEN, "Cl2", 1.36),
        ("Fe^2+", "anode", Kind.CHARGE, "Fe^3+", 0.77),
        ("[Fe(CN)6]^4-", "anode", Kind.CHARGE, "[Fe(CN)6]^3-", 0.36),
        ("S2O3^2-", "anode", Kind.REACTION, "S4O6^2-", 0.09),
        ("S^2-", "anode", Kind.REACTION, "S", -0.48),
        ("Hg2^2+", "anode", Kind.REACTION, "Hg^2+", 0.91),
    ],
)
def test_a_process_has_its_kind_its_product_and_the_printed_potential(
    ion: str, side: str, kind: Kind, product: str, potential_V: float
) -> None:
    listing = cathode_competition if side == "cathode" else anode_competition
    process = listing((species(ion),), "neutral", "graphite", None).processes[0]
    assert (process.kind, process.reactant.ascii) == (kind, ion)
    assert [kind_.ascii for kind_ in process.products[:1]] == [product]
    assert process.potential_V == potential_V


def test_a_slow_process_is_left_out_beside_a_quick_one_of_the_same_ion() -> None:
    assert anode("Cl^-") == ["2Cl^- -> Cl2 + 2e-", OXYGEN]
    assert anode("Br^-") == ["2Br^- -> Br2 + 2e-", OXYGEN]


def test_of_slow_processes_only_the_one_that_schools_know_is_listed() -> None:
    found = cathode_competition((species("NO3^-"),), "acidic", "graphite", None).processes
    assert [process.couple for process in found] == ["NO3-/NO", "H+/H2"]
    assert found[0].slow.startswith("Nitrate is reduced only slowly")


def test_a_couple_that_needs_a_second_ion_waits_for_it() -> None:
    assert "Cu^2+ + I^- + e- -> CuI" not in cathode("Cu^2+", "Cl^-")
    assert "Cu^2+ + I^- + e- -> CuI" in cathode("Cu^2+", "I^-")


def test_mercury_takes_up_group_1_metals_and_no_others() -> None:
    assert cathode("Na^+", "Mg^2+", on="mercury").count("Na^+ + e- -> Na") == 2
    assert cathode("Na^+", "Mg^2+", on="mercury").count("Mg^2+ + 2e- -> Mg") == 1
    assert cathode("Na^+", "Mg^2+").count("Na^+ + e- -> Na") == 1


def test_sodium_in_an_amalgam_is_liquid_and_easier_to_make_than_the_metal() -> None:
    amalgam = cathode_competition((species("Na^+"),), "neutral", "mercury", None).of(Kind.AMALGAM)[0]
    assert amalgam.written("").right[0].state == "l"
    assert amalgam.potential_V == -1.8


@pytest.mark.parametrize(
    ("on", "ions", "medium", "own", "kind"),
    [
        ("copper", ["Cu^2+", "SO4^2-"], "neutral", "Cu -> Cu^2+ + 2e-", Kind.DISSOLVES),
        ("iron", ["Na^+", "NO3^-"], "neutral", "Fe -> Fe^2+ + 2e-", Kind.DISSOLVES),
        ("tin", ["Na^+", "Cl^-"], "neutral", "Sn -> Sn^2+ + 2e-", Kind.DISSOLVES),
        ("brass", ["Na^+", "Cl^-"], "neutral", "Zn -> Zn^2+ + 2e-", Kind.DISSOLVES),
        ("zinc", ["Na^+", "OH^-"], "alkaline", "Zn + 4OH^- -> Zn(OH)4^2- + 2e-", Kind.DISSOLVES),
        ("tin", ["Na^+", "OH^-"], "alkaline", "Sn + 6OH^- -> Sn(OH)6^2- + 4e-", Kind.DISSOLVES),
        ("silver", ["K^+", "CN^-"], "alkaline", "Ag + 2CN^- -> [Ag(CN)2]^- + e-", Kind.DISSOLVES),
        ("silver", ["Na^+", "OH^-"], "alkaline", None, None),
        ("silver", ["K^+", "CN^-"], "neutral", "Ag + 2CN^- -> [Ag(CN)2]^- + e-", Kind.DISSOLVES),
        ("gold", ["K^+", "CN^-"], "neutral", "Au + 2CN^- -> [Au(CN)2]^- + e-", Kind.DISSOLVES),
        ("gold", ["Na^+", "Cl^-"], "neutral", None, None),
        ("stainless-steel", ["Na^+", "Cl^-"], "neutral", "Fe -> Fe^2+ + 2e-", Kind.DISSOLVES),
        ("stainless-steel", ["Na^+", "SO4^2-"], "neutral", None, None),
        ("silver", ["Na^+", "Cl^-"], "neutral", "Ag + Cl^- -> AgCl + e-", Kind.FILM),
        ("silver", ["Na^+", "PO4^3-"], "neutral", "3Ag + PO4^3- -> Ag3PO4 + 3e-", Kind.FILM),
        ("copper", ["Na^+", "PO4^3-"], "neutral", "3Cu + 2PO4^3- -> Cu3(PO4)2 + 6e-", Kind.FILM),
        ("copper", ["Na^+", "CO3^2-"], "neutral", "Cu + CO3^2- -> CuCO3 + 2e-", Kind.FILM),
        ("mercury", ["Na^+", "Cl^-"], "neutral", "2Hg + 2Cl^- -> Hg2Cl2 + 2e-", Kind.FILM),
        ("lead", ["H^+", "SO4^2-"], "acidic", "Pb + SO4^2- -> PbSO4 + 2e-", Kind.FILM),
        ("aluminium", ["H^+", "SO4^2-"], "acidic", "2Al + 3H2O -> Al2O3 + 6H^+ + 6e-", Kind.FILM),
        ("aluminium", ["Na^+", "Cl^-"], "neutral", "Al -> Al^3+ + 3e-", Kind.DISSOLVES),
        ("aluminium", ["Na^+", "OH^-"], "alkaline", "Al + 4OH^- -> Al(OH)4^- + 3e-", Kind.DISSOLVES),
        ("nickel", ["Na^+", "OH^-"], "alkaline", None, None),
        ("graphite", ["Na^+", "Cl^-"], "neutral", None, None),
        ("tungsten", ["Na^+", "Cl^-"], "neutral", None, None),
        ("coated-titanium", ["Na^+", "Cl^-"], "neutral", None, None),
    ],
)  # fmt: skip
def test_the_metal_of_an_anode_dissolves_or_films_over_where_it_can(
    on: str, ions: list[str], medium: str, own: str | None, kind: Kind | None
) -> None:
    found = anode_competition(tuple(map(species, ions)), medium, on, None).of(Kind.DISSOLVES, Kind.FILM)
    assert [(process.written("").ascii, process.kind) for process in found] == ([(own, kind)] if own else [])


@pytest.mark.parametrize(
    ("on", "ions", "medium", "behaviour"),
    [
        ("copper", ["SO4^2-"], "neutral", "active"),
        ("copper", ["OH^-"], "alkaline", "passive"),
        ("zinc", ["OH^-"], "alkaline", "active"),
        ("aluminium", ["SO4^2-"], "acidic", "active"),
        ("graphite", ["SO4^2-"], "neutral", "inert"),
        ("stainless-steel", ["Cl^-"], "neutral", "active"),
        ("stainless-steel", ["OH^-"], "alkaline", "inert"),
        ("mercury", ["OH^-"], "alkaline", "passive"),
    ],
)
def test_an_anode_is_active_passive_or_inert_as_the_electrolyte_decides(
    on: str, ions: list[str], medium: str, behaviour: str
) -> None:
    assert anode_behaviour(tuple(map(species, ions)), medium, on, None) == behaviour


def test_carbon_that_burns_in_a_melt_still_counts_as_inert() -> None:
    assert anode_behaviour((species("Al^3+"), species("O^2-")), "molten", "graphite", 980.0) == "inert"


def test_the_potential_of_a_dissolving_anode_is_that_of_its_couple() -> None:
    (zinc,) = anode_competition((species("OH^-"),), "alkaline", "zinc", None).of(Kind.DISSOLVES)
    (phosphate,) = anode_competition((species("PO4^3-"),), "neutral", "silver", None).of(Kind.FILM)
    assert (zinc.couple, zinc.potential_V) == ("Zn(OH)4 2-/Zn", -1.2)
    assert (phosphate.couple, phosphate.potential_V) == ("", None)


@pytest.mark.parametrize(
    ("metal", "ion"),
    [("Cu", "Cu^2+"), ("Fe", "Fe^2+"), ("Sn", "Sn^2+"), ("Ag", "Ag^+"), ("Au", "Au^3+")],
)
def test_a_metal_dissolves_as_the_ion_that_schools_list(metal: str, ion: str) -> None:
    assert dissolved_ion(metal).ascii == ion


def test_ions_without_a_process_are_spectators_at_their_own_electrode_only() -> None:
    ions = tuple(map(species, ("NH4^+", "ClO4^-", "Na^+")))
    assert [kind.ascii for kind in cathode_competition(ions, "neutral", "graphite", None).spectators] == [
        "NH4^+"
    ]
    assert [kind.ascii for kind in anode_competition(ions, "neutral", "graphite", None).spectators] == [
        "ClO4^-"
    ]


def test_an_ion_whose_oxidation_is_not_in_the_tables_is_named() -> None:
    ions = tuple(map(species, ("K^+", "SCN^-")))
    assert [kind.ascii for kind in anode_competition(ions, "neutral", "graphite", None).untabulated] == [
        "SCN^-"
    ]
    assert cathode_competition(ions, "neutral", "graphite", None).untabulated == ()


@pytest.mark.parametrize(
    ("ions", "melt_C", "halves"),
    [
        (["Pb^2+", "Br^-"], 391.0, ["Pb^2+ + 2e- -> Pb"]),
        (["Al^3+", "Na^+", "O^2-", "AlF6^3-"], 980.0, ["Al^3+ + 3e- -> Al", "Na^+ + e- -> Na"]),
        (["Hg2^2+", "Cl^-"], 500.0, ["Hg2^2+ + 2e- -> 2Hg"]),
        (["NH4^+", "Cl^-"], 400.0, []),
    ],
)
def test_in_a_melt_only_simple_metal_ions_can_be_reduced(
    ions: list[str], melt_C: float, halves: list[str]
) -> None:
    assert cathode(*ions, medium="molten", melt_C=melt_C) == halves


@pytest.mark.parametrize(
    ("ion", "half"),
    [
        ("F^-", "2F^- -> F2 + 2e-"), ("Cl^-", "2Cl^- -> Cl2 + 2e-"), ("Br^-", "2Br^- -> Br2 + 2e-"),
        ("I^-", "2I^- -> I2 + 2e-"), ("S^2-", "S^2- -> S + 2e-"), ("H^-", "2H^- -> H2 + 2e-"),
        ("O^2-", "2O^2- -> O2 + 4e-"), ("OH^-", "4OH^- -> O2 + 2H2O + 4e-"),
        ("CO3^2-", "2CO3^2- -> O2 + 2CO2 + 4e-"),
    ],
)  # fmt: skip
def test_in_a_melt_an_anion_gives_its_element(ion: str, half: str) -> None:
    assert anode("Na^+", ion, medium="molten", on="platinum", melt_C=900.0) == [half]


def test_an_anion_without_a_simple_product_is_a_spectator_in_a_melt() -> None:
    found = anode_competition((species("K^+"), species("NO3^-")), "molten", "graphite", 354.0)
    assert found.processes == ()
    assert [kind.ascii for kind in found.spectators] == ["NO3^-"]


@pytest.mark.parametrize(
    ("on", "ions", "own"),
    [
        ("graphite", ["Al^3+", "O^2-"], ["C + 2O^2- -> CO2 + 4e-"]),
        ("graphite", ["Na^+", "CO3^2-"], ["C + 2CO3^2- -> 3CO2 + 4e-"]),
        ("graphite", ["Na^+", "Cl^-"], []),
        ("platinum", ["Na^+", "Cl^-"], []),
        ("coated-titanium", ["Na^+", "Cl^-"], []),
        ("iron", ["Na^+", "Cl^-"], ["Fe -> Fe^2+ + 2e-"]),
    ],
)
def test_in_a_melt_carbon_burns_in_oxide_and_a_metal_anode_dissolves(
    on: str, ions: list[str], own: list[str]
) -> None:
    found = anode_competition(tuple(map(species, ions)), "molten", on, 900.0).of(Kind.BURNS, Kind.DISSOLVES)
    assert [process.written("").ascii for process in found] == own


def test_sulfide_gives_the_same_kind_of_process_in_water_and_in_a_melt(cell_of: Callable[..., Cell]) -> None:
    in_water = cell_of("Na2S")
    in_melt = anode_competition((species("Na^+"), species("S^2-")), "molten", "platinum", 1200.0)
    assert in_water.at_anode().processes[0].kind is in_melt.processes[0].kind is Kind.REACTION
