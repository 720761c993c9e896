"""What to set up, and what to mind when the figures of a plan meet a real bench."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.ionic_compound import molar_mass
from ionwright.chemistry.notation import species_text
from ionwright.chemistry.species import species
from ionwright.curricula.wording import listed, product, sentence_start
from ionwright.teaching.demonstrations.measure import fitting
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb
from ionwright.teaching.demonstrations.venue import NOT_FOR_A_CLASSROOM

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from ionwright.chemistry.electrolyte import Dissolved
    from ionwright.chemistry.ionic_compound import Compound
    from ionwright.teaching.demonstrations.currents import CurrentChoice
    from ionwright.teaching.demonstrations.reading import Bench
    from ionwright.teaching.demonstrations.turnover import Turnover
    from ionwright.teaching.prediction import Prediction

__all__ = ["Setting", "preparation", "provisos"]

_CONDENSING: Final = frozenset({"Br2", "I2", "H2O", "Hg", "S", "Zn"})
"""Products that leave a melt as vapour and are no gases in the room."""
_SMALLEST_CM2: Final = 1.0


class Setting(NamedTuple):
    """What a plan has settled before the bench is set up.

    Parameters
    ----------
    deposits
        Of each electrode, whether a solid grows there.
    efficient
        The electrodes to which the current efficiency that was given belongs.
    place
        Where it may be done, as in `Venue.word`.
    """

    prediction: Prediction
    bench: Bench
    choice: CurrentChoice
    deposits: Mapping[str, bool]
    formed: Sequence[Turnover]
    efficient: Sequence[str]
    has_toxic_gas: bool
    place: str


def preparation(setting: Setting) -> Iterator[tuple[str, str]]:
    """What to set up, as sentences, each with the rule of thumb it rests on or an empty text."""
    if setting.place == NOT_FOR_A_CLASSROOM:
        yield "This is not to be set up in a classroom: show it by a film, a model or its figures.", ""
        return
    current = setting.choice.recommended.current
    text = (
        f"Turn the supply up from zero until the ammeter shows {current.text}: a few volts usually do, and about 12 V "
        "is the most. Switch it off before leads or electrodes are touched."
    )
    yield text, ""
    time = setting.choice.recommended.time
    if setting.choice.recommended.time_s > rule_of_thumb("unattended").in_unit("s"):
        yield f"The run takes {time.text}: never leave the cell alone while the current flows.", "unattended"
    yield from _areas(setting)
    cell = setting.prediction.cell
    if cell.melt_C is not None:
        yield f"The melt is worked at about {cell.melt_C:.0f} °C.", ""
    else:
        yield from ((text, "") for text in _weighing(cell.electrolyte.ingredients, setting.bench.bath_dm3))
    if setting.has_toxic_gas:
        yield (
            "All of this is for one cell: ten cells at a time in a class make ten times as much gas in the room.",
            "",
        )


def _areas(setting: Setting) -> Iterator[tuple[str, str]]:
    """How large an electrode should be on which a solid grows, where nothing is said of it."""
    density = rule_of_thumb("deposit_density")
    for electrode, grows in setting.deposits.items():
        area_cm2 = setting.choice.recommended.current_A / density.in_unit("A/cm2")
        if grows and electrode not in setting.bench.areas_cm2 and area_cm2 >= _SMALLEST_CM2:
            text = (
                f"Give the {electrode} at least about {fitting(area_cm2, 'cm2', 2).text} under the surface, so that it "
                f"carries no more than about {density.written.value:g} mA/cm²."
            )
            yield text, "deposit_density"


def _weighing(ingredients: Sequence[Dissolved], bath_dm3: float | None) -> Iterator[str]:
    """How much of each substance the bath holds."""
    for one in ingredients if bath_dm3 is not None else ():
        concentration = one.concentration.mol_dm3 if one.concentration else None
        mass = molar_mass(one.compound)
        if bath_dm3 is None or concentration is None or mass is None:
            continue
        formula = (
            species_text(species(one.compound.formula))
            if "." not in one.compound.formula
            else one.compound.name
        )
        lead = (
            f"{fitting(bath_dm3, 'dm3', 3).text} at {fitting(concentration, 'mol/dm3', 3).text} holds "
            f"{fitting(concentration * bath_dm3 * mass, 'g', 3).text} of {formula}"
        )
        if one.compound.role == "salt" and _may_be_hydrate(one.compound):
            yield f"{lead}, counted without water of crystallisation: of a hydrate, weigh out more."
        else:
            yield f"{lead}."


def _may_be_hydrate(compound: Compound) -> bool:
    """Whether a salt that is written without water is often sold with it: not a salt of two single charges."""
    charges = {abs(one.species.charge) for one, _ in compound.ions}
    return not compound.hydrate_water and charges != {1}


def provisos(setting: Setting) -> Iterator[str]:
    """What was taken for granted of the cautions, the current and the gases, as sentences."""
    yield (
        "The cautions are general ones, recalled and not read in a source: the supplier's safety data sheets count "
        "before them."
    )
    efficiency = setting.bench.efficiency
    if efficiency is None:
        yield "All of the current is counted for the products named; in practice somewhat less of them forms."
    elif efficiency < 1:
        rest = fitting(1 - efficiency, "1", 2).text
        of_water = "" if setting.prediction.cell.is_molten else ", such as hydrogen or oxygen from the water,"
        yield f"What the other {rest} of the current gives at the {listed(setting.efficient)}{of_water} is not counted."
    gases = [one.of for one in setting.formed if one.state == "g"]
    if gases and not setting.prediction.cell.is_molten:
        above_all = ", of chlorine above all" if "Cl2" in gases else ""
        yield f"Gas that dissolves is not taken off: at first less is collected than forms{above_all}."
    for of in dict.fromkeys(one for one in gases if one in _CONDENSING):
        name = sentence_start(product(species(of)))
        yield f"{name} leaves the melt as a vapour that condenses as it cools; its volume is told as that of a gas."
