"""What an overall equation does to the ions of the electrolyte."""

import pytest

from ionwright.chemistry.equation import equation
from ionwright.chemistry.species import species
from ionwright.teaching.ion_change import IonChange, ion_change


def change(own: list[str], medium: str, overall: str) -> IonChange:
    return ion_change(tuple(map(species, own)), medium, equation(overall))


def names(kinds: tuple[object, ...]) -> set[str]:
    return {kind.ascii for kind in kinds}


@pytest.mark.parametrize(
    ("own", "medium", "overall", "removed", "formed", "remaining", "ph"),
    [
        # copper sulfate: sulfuric acid is left, however the course writes the oxygen
        (["Cu^2+", "SO4^2-"], "neutral", "2Cu^2+ + 2H2O -> 2Cu + O2 + 4H^+", {"Cu^2+"}, {"H^+"}, {"SO4^2-"}, "falls"),
        (["Cu^2+", "SO4^2-"], "neutral", "2Cu^2+ + 4OH^- -> 2Cu + O2 + 2H2O", {"Cu^2+"}, {"H^+"}, {"SO4^2-"}, "falls"),
        # brine: sodium hydroxide is left, however the course writes the hydrogen
        (["Na^+", "Cl^-"], "neutral", "2H2O + 2Cl^- -> H2 + 2OH^- + Cl2", {"Cl^-"}, {"OH^-"}, {"Na^+"}, "rises"),
        (["Na^+", "Cl^-"], "neutral", "2H^+ + 2Cl^- -> H2 + Cl2", {"Cl^-"}, {"OH^-"}, {"Na^+"}, "rises"),
        # hydrochloric acid is used up
        (["H^+", "Cl^-"], "acidic", "2H^+ + 2Cl^- -> H2 + Cl2", {"H^+", "Cl^-"}, set(), set(), "rises"),
        # water alone: neutral salt, acid, alkali
        (["Na^+", "SO4^2-"], "neutral", "2H2O -> 2H2 + O2", set(), set(), {"Na^+", "SO4^2-"}, "unchanged"),
        (["H^+", "SO4^2-"], "acidic", "2H2O -> 2H2 + O2", set(), set(), {"H^+", "SO4^2-"}, "falls"),
        (["Na^+", "OH^-"], "alkaline", "2H2O -> 2H2 + O2", set(), set(), {"Na^+", "OH^-"}, "rises"),
        # copper purified: nothing changes
        (["Cu^2+", "SO4^2-"], "neutral", "Cu -> Cu", set(), set(), {"Cu^2+", "SO4^2-"}, "unchanged"),
        # silver in alkaline bath would use up hydroxide
        (["Zn^2+", "OH^-"], "alkaline", "2Zn^2+ + 4OH^- -> 2Zn + O2 + 2H2O", {"Zn^2+", "OH^-"}, set(), set(), "falls"),
        # a melt has no pH
        (["Pb^2+", "Br^-"], "molten", "Pb^2+ + 2Br^- -> Pb + Br2", {"Pb^2+", "Br^-"}, set(), set(), "does not apply"),
        (["Na^+", "OH^-"], "molten", "4Na^+ + 4OH^- -> 4Na + O2 + 2H2O",
         {"Na^+", "OH^-"}, set(), set(), "does not apply"),
    ],
)  # fmt: skip
def test_ions_leave_form_and_stay(
    *,
    own: list[str],
    medium: str,
    overall: str,
    removed: set[str],
    formed: set[str],
    remaining: set[str],
    ph: str,
) -> None:
    found = change(own, medium, overall)
    assert (names(found.removed), names(found.formed), names(found.remaining)) == (removed, formed, remaining)
    assert found.ph(found.solids()) == ph


@pytest.mark.parametrize(
    ("own", "overall", "solids"),
    [
        (["Mg^2+", "Cl^-"], "2H2O + 2Cl^- -> H2 + 2OH^- + Cl2", ["magnesium hydroxide"]),
        (["Fe^3+", "Cl^-"], "2H2O + 2Cl^- -> H2 + 2OH^- + Cl2", ["iron(III) hydroxide"]),
        (["Na^+", "Cl^-"], "Cu + 2H2O -> H2 + Cu^2+ + 2OH^-", ["copper(II) hydroxide"]),
        (["Na^+", "Cl^-"], "2H2O + 2Cl^- -> H2 + 2OH^- + Cl2", []),
        (["Ca^2+", "NO3^-"], "2H2O -> 2H2 + O2", []),
        (["Ag^+", "NO3^-"], "4Ag^+ + 2H2O -> 4Ag + O2 + 4H^+", []),
    ],
)
def test_a_solid_settles_where_a_new_ion_meets_one_that_brings_it_down(
    own: list[str], overall: str, solids: list[str]
) -> None:
    assert [solid.name for solid in change(own, "neutral", overall).solids()] == solids


def test_nothing_settles_in_a_melt() -> None:
    assert change(["Mg^2+", "Cl^-"], "molten", "Mg^2+ + 2Cl^- -> Mg + Cl2").solids() == ()


def test_a_metal_that_dissolves_into_its_hydroxide_leaves_the_ph_alone() -> None:
    found = change(["Na^+", "Cl^-"], "neutral", "Cu + 2H2O -> H2 + Cu^2+ + 2OH^-")
    assert found.ph(found.solids()) == "unchanged"


def test_hydrogen_ions_made_in_alkali_meet_hydroxide_and_become_water() -> None:
    found = change(["Na^+", "OH^-"], "alkaline", "2Ag^+ + H2O -> 2Ag + 2H^+ + 1/2O2")
    assert "OH^-" in names(found.removed)
    assert "H^+" not in names(found.formed)


@pytest.mark.parametrize(
    ("overall", "uses_water"),
    [("2H2O -> 2H2 + O2", True), ("Cu -> Cu", False), ("2H^+ + 2Cl^- -> H2 + Cl2", True)],
)
def test_water_is_used_up_where_it_supplies_the_hydrogen(overall: str, *, uses_water: bool) -> None:
    assert change(["Na^+", "Cl^-"], "neutral", overall).uses_water is uses_water
