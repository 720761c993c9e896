"""Deposition potentials: Nernst and a table of overpotentials."""

import re
from collections.abc import Callable

import pytest

from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.deposition_potential import DepositionPotential, Overpotentials

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
TABLE = Overpotentials(
    {
        "H2": {"platinum": (0.12, 0.35), "graphite": (0.47, 0.97), "mercury": (1.04, 1.21)},
        "O2": {"platinum": (0.72, 1.28), "graphite": (0.53, 1.09)},
        "Cl2": {"platinum": (0.008, 0.05), "graphite": (0.05, 0.25)},
    },
    "graphite",
)
CATHODE, ANODE = DepositionPotential("cathode", TABLE, 0.1), DepositionPotential("anode", TABLE, 0.1)
OXYGEN, CHLORINE, HYDROGEN = "4OH^- -> O2 + 2H2O + 4e-", "2Cl^- -> Cl2 + 2e-", "2H^+ + 2e- -> H2"


@pytest.mark.parametrize(
    ("density_A_cm2", "size_V"),
    [(None, 0.81), (1e-3, 0.53), (1e-2, 0.81), (1e-1, 1.09), (1e-5, 0.53), (10.0, 1.09)],
)
def test_an_overpotential_grows_with_the_logarithm_of_the_current_density(
    density_A_cm2: float | None, size_V: float
) -> None:
    assert TABLE.at("O2", "graphite", density_A_cm2) == pytest.approx(size_V)


def test_a_material_outside_the_table_takes_the_figures_of_the_one_named_and_a_gas_without_any_has_none() -> (
    None
):
    assert TABLE.at("H2", "copper", None) == pytest.approx(0.72)
    assert TABLE.stands_in("H2", "copper")
    assert not TABLE.stands_in("H2", "mercury")
    assert TABLE.at("Br2", "graphite", None) == 0.0


@pytest.mark.parametrize(
    ("concentration", "rest", "half", "is_contested"),
    [
        ("1 mol/dm3", {}, CHLORINE, False),  # +1.36 V and 0.15 V against +0.82 V and 0.81 V
        ("0.1 mol/dm3", {}, CHLORINE, True),
        ("0.001 mol/dm3", {}, OXYGEN, True),
        ("0.001 mol/dm3", {"anode": "platinum"}, CHLORINE, False),
        ("1 mol/dm3", {"current_density": "1 mA/cm2"}, OXYGEN, True),  # at a low density the two come close
        ("1 mol/dm3", {"current_density": "100 mA/cm2"}, CHLORINE, False),
    ],
)
def test_chlorine_against_oxygen_goes_by_the_reckoning(
    *,
    quick_at: SituationAt,
    choice: Choice,
    concentration: str,
    rest: dict[str, str],
    half: str,
    is_contested: bool,
) -> None:
    ruling = ANODE.apply(quick_at("anode", "NaCl", concentration=concentration, **rest))
    assert choice(ruling) == half
    assert ruling.is_contested is is_contested


@pytest.mark.parametrize(
    ("substance", "rest", "half"),
    [
        ("ZnSO4", {}, "Zn^2+ + 2e- -> Zn"),
        ("ZnSO4", {"cathode": "platinum"}, HYDROGEN),
        ("ZnSO4", {"ph": 0.0, "cathode": "platinum"}, HYDROGEN),
        ("NiSO4", {}, "Ni^2+ + 2e- -> Ni"),
        ("CuSO4", {}, "Cu^2+ + 2e- -> Cu"),
        ("MnSO4", {}, HYDROGEN),
        ("Cr2(SO4)3", {}, HYDROGEN),
        ("NaCl", {}, HYDROGEN),
        ("FeCl3", {}, "Fe^3+ + e- -> Fe^2+"),
        ("KMnO4", {}, "MnO4^- + 2H2O + 3e- -> MnO2 + 4OH^-"),
    ],
)
def test_the_most_positive_deposition_potential_is_reduced(
    quick_at: SituationAt, choice: Choice, substance: str, rest: dict[str, object], half: str
) -> None:
    assert choice(CATHODE.apply(quick_at("cathode", substance, concentration="0.5 mol/dm3", **rest))) == half


@pytest.mark.parametrize(
    ("substance", "half"),
    [
        ("Pb(NO3)2", "Pb^2+ + 2H2O -> PbO2 + 4H^+ + 2e-"),
        ("MnSO4", "Mn^2+ + 2H2O -> MnO2 + 4H^+ + 2e-"),
        ("SnCl2", "Sn^2+ -> Sn^4+ + 2e-"),
        ("Cr2(SO4)3", OXYGEN),
        ("KI", "2I^- -> I2 + 2e-"),
        ("Na2SO4", OXYGEN),
        ("NaOH", OXYGEN),
        ("HCl", CHLORINE),
    ],
)
def test_the_least_positive_deposition_potential_is_oxidised(
    quick_at: SituationAt, choice: Choice, substance: str, half: str
) -> None:
    assert choice(ANODE.apply(quick_at("anode", substance, concentration="0.5 mol/dm3"))) == half


def test_the_reason_gives_both_figures_with_their_parts(quick_at: SituationAt) -> None:
    ruling = ANODE.apply(quick_at("anode", "NaCl", concentration="1 mol/dm3"))
    (because,) = ruling.because
    assert because == (
        "The deposition potential of chlorine (+1.51 V: +1.36 V and 0.15 V of overpotential) is less positive than "
        "that of oxygen (+1.63 V: +0.82 V and 0.81 V of overpotential), so chlorine forms."
    )
    assert [remark.because for remark in ruling.also_accepted] == [
        "A course that leaves overpotentials out finds that oxygen forms."
    ]


@pytest.mark.parametrize(
    ("concentration", "said"),
    [
        (None, "No concentration was given, so the reckoning took 1 mol/dm³."),
        ("dilute", "The word dilute was reckoned as 0.1 mol/dm³."),
        ("concentrated", "The word concentrated was reckoned as 2 mol/dm³."),
    ],
)
def test_what_stands_for_a_missing_concentration_is_told(
    quick_at: SituationAt, concentration: str | None, said: str
) -> None:
    assert said in ANODE.apply(quick_at("anode", "NaCl", concentration=concentration)).assumptions


def test_a_figure_that_stands_in_is_told(quick_at: SituationAt) -> None:
    ruling = CATHODE.apply(quick_at("cathode", "NaCl", cathode="copper", concentration="1 mol/dm3"))
    assert ruling.assumptions == (
        "The table has no overpotential of hydrogen at copper; that at graphite was taken.",
    )


@pytest.mark.parametrize(
    ("substance", "ph"), [("H2SO4", None), ("Na2SO4", None), ("NaOH", None), ("Na2SO4", 3.0)]
)
def test_the_gap_between_hydrogen_and_oxygen_is_the_same_at_every_ph(
    quick_at: SituationAt, substance: str, ph: float | None
) -> None:
    bare = Overpotentials({}, "graphite")
    told = [
        DepositionPotential(electrode, bare, 0.0)
        .apply(quick_at(electrode, substance, concentration="1 mol/dm3", ph=ph))
        .because[0]
        for electrode in ("cathode", "anode")
    ]
    first = [re.search(r"[+−]?\d\.\d\d(?= V)", text) for text in told]
    low_V, high_V = (float(found[0].replace("−", "-")) for found in first if found)
    assert high_V - low_V == pytest.approx(1.23, abs=0.011)


@pytest.mark.parametrize(
    ("substance", "half", "said"),
    [
        ("NaCl", "Na^+ + e- -> Na", "Sodium ions never deposit from a solution in water."),
        ("MnSO4", "Mn^2+ + 2e- -> Mn", "Manganese(II) ions hardly ever deposit from a solution in water."),
        ("Cr2(SO4)3", "Cr^3+ + e- -> Cr^2+", "Chromium(II) ions would give hydrogen with the water."),
    ],
)
def test_what_takes_no_part_in_spite_of_its_figure_is_told(
    quick_at: SituationAt, told: Told, substance: str, half: str, said: str
) -> None:
    assert told(CATHODE.apply(quick_at("cathode", substance)).ruled_out)[half] == said


@pytest.mark.parametrize(("substance", "is_contested"), [("FeSO4", True), ("ZnSO4", False), ("NiSO4", False)])
def test_hydrogen_is_accepted_where_only_the_overpotential_puts_it_behind_by_much(
    quick_at: SituationAt, substance: str, *, is_contested: bool
) -> None:
    ruling = CATHODE.apply(quick_at("cathode", substance, concentration="0.5 mol/dm3"))
    assert ruling.chosen is not None
    assert ruling.chosen.metal
    assert ruling.is_contested is is_contested
    if is_contested:
        assert [remark.because for remark in ruling.also_accepted] == [
            "Without overpotentials hydrogen forms first, by no more than 0.04 V; it is accepted too."
        ]
