"""Processes and competitions as values."""

import pytest

from ionwright.chemistry.equation import equation
from ionwright.chemistry.process import FROM_IONS, FROM_WATER, Competition, ElectrodeProcess, Kind
from ionwright.chemistry.species import species


def process(kind: Kind, reactant: str, *products: str) -> ElectrodeProcess:
    half = equation("Cu^2+ + 2e- -> Cu")
    return ElectrodeProcess(kind, species(reactant), tuple(map(species, products)), (("", half),))


HYDROGEN = ElectrodeProcess(
    Kind.HYDROGEN,
    species("H^+"),
    (species("H2"),),
    ((FROM_IONS, equation("2H^+ + 2e- -> H2")), (FROM_WATER, equation("2H2O + 2e- -> H2 + 2OH^-"))),
)


@pytest.mark.parametrize(
    ("form", "written"),
    [
        (FROM_IONS, "2H^+ + 2e- -> H2"),
        (FROM_WATER, "2H2O + 2e- -> H2 + 2OH^-"),
        ("from-steam", "2H^+ + 2e- -> H2"),
    ],
)
def test_a_process_is_written_as_asked_or_in_its_first_form(form: str, written: str) -> None:
    assert HYDROGEN.written(form).ascii == written


@pytest.mark.parametrize(
    ("kind", "reactant", "products", "metal"),
    [
        (Kind.METAL, "Cu^2+", ["Cu"], "Cu"),
        (Kind.AMALGAM, "Na^+", ["Na"], "Na"),
        (Kind.METAL, "AuCl4^-", ["Au", "Cl^-"], "Au"),
        (Kind.METAL, "MnO4^-", ["MnO2"], ""),
        (Kind.DISSOLVES, "Cu", ["Cu^2+"], "Cu"),
        (Kind.FILM, "Ag", ["AgCl"], "Ag"),
        (Kind.HALOGEN, "Cl^-", ["Cl2"], ""),
        (Kind.CHARGE, "Fe^3+", ["Fe^2+"], ""),
        (Kind.BURNS, "C", ["CO2"], ""),
    ],
)
def test_only_a_metal_that_deposits_or_dissolves_names_a_metal(
    kind: Kind, reactant: str, products: list[str], metal: str
) -> None:
    assert process(kind, reactant, *products).metal == metal


def test_processes_compare_by_identity() -> None:
    one, other = process(Kind.METAL, "Cu^2+", "Cu"), process(Kind.METAL, "Cu^2+", "Cu")
    assert one != other
    assert len({one, other, one}) == 2


def test_a_competition_is_sifted_by_kind_in_order() -> None:
    copper, silver = process(Kind.METAL, "Cu^2+", "Cu"), process(Kind.METAL, "Ag^+", "Ag")
    competition = Competition("cathode", (copper, HYDROGEN, silver), ())
    assert competition.of(Kind.METAL) == (copper, silver)
    assert competition.of(Kind.HYDROGEN, Kind.METAL) == (copper, HYDROGEN, silver)
    assert competition.of(Kind.FILM) == ()
