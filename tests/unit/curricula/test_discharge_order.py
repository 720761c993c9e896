"""A list of negative ions, the hardest to discharge first."""

from collections.abc import Callable

import pytest

from ionwright.chemistry.species import species
from ionwright.curricula.concentration import ConcentrationRule
from ionwright.curricula.model import Ruling, Situation
from ionwright.curricula.rules.discharge_order import DischargeOrder
from ionwright.curricula.rules.halides import ALWAYS, WHEN_CONCENTRATED, Halides

SituationAt = Callable[..., Situation]
Told = Callable[..., dict[str, str]]
Choice = Callable[[Ruling], str]
ORDER = tuple(map(species, ("F^-", "SO4^2-", "NO3^-", "Cl^-", "Br^-", "I^-", "OH^-")))
RULE = DischargeOrder(ORDER)
OXYGEN = "4OH^- -> O2 + 2H2O + 4e-"
IODINE = "2I^- -> I2 + 2e-"


@pytest.mark.parametrize(
    ("substance", "reason"),
    [
        (
            "Na2SO4",
            "Hydroxide ions are discharged more easily than sulfate ions, so they are chosen and oxygen forms.",
        ),
        (
            "NaNO3",
            "Hydroxide ions are discharged more easily than nitrate ions, so they are chosen and oxygen forms.",
        ),
        ("NaOH", "Hydroxide ions are the only negative ions that can be discharged here, so oxygen forms."),
    ],
)
def test_the_last_in_the_list_is_discharged(
    quick_at: SituationAt, choice: Choice, substance: str, reason: str
) -> None:
    ruling = RULE.apply(quick_at("anode", substance))
    assert choice(ruling) == OXYGEN
    assert ruling.because == (reason,)


def test_the_place_in_the_list_decides_and_not_the_potential(
    quick_at: SituationAt, choice: Choice, told: Told
) -> None:
    situation = quick_at("anode", "KI")
    assert choice(RULE.apply(situation)) == OXYGEN
    turned = DischargeOrder(tuple(map(species, ("OH^-", "Cl^-", "I^-")))).apply(situation)
    assert choice(turned) == IODINE
    assert told(turned.ruled_out) == {OXYGEN: "Hydroxide ions are harder to discharge than iodide ions."}


def test_an_ion_outside_the_list_that_is_oxidised_easily_is_left_open(quick_at: SituationAt) -> None:
    ruling = RULE.apply(quick_at("anode", "Na2S"))
    assert ruling.is_undecidable
    assert "sulfide ions at the anode: they are not in its order of discharge." in ruling.because[0]


@pytest.mark.parametrize("mode", [ALWAYS, WHEN_CONCENTRATED])
def test_of_two_halides_the_order_decides(
    situation_at: SituationAt, choice: Choice, told: Told, mode: str
) -> None:
    halides = tuple(map(species, ("Cl^-", "Br^-", "I^-")))
    rule = Halides(halides, mode, ConcentrationRule(1.0, (0.1, 2.0), "concentrated"), ORDER)
    ruling = rule.apply(situation_at("anode", "NaCl", "NaI", concentration="concentrated"))
    why = "Iodide ions are discharged more easily than chloride ions: they stand later in the order of discharge."
    assert choice(ruling) == IODINE
    assert ruling.because[-1] == why
    assert told(ruling.ruled_out)["2Cl^- -> Cl2 + 2e-"] == why


def test_without_an_order_two_halides_stay_open(situation_at: SituationAt) -> None:
    halides = tuple(map(species, ("Cl^-", "I^-")))
    rule = Halides(halides, ALWAYS, ConcentrationRule(1.0, (0.1, 2.0), "concentrated"), (species("Cl^-"),))
    assert rule.apply(situation_at("anode", "NaCl", "NaI")).is_undecidable


def test_the_order_is_told() -> None:
    assert RULE.sentence.endswith("bromide ions, iodide ions, hydroxide ions.")
