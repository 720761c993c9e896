"""Where a demonstration may be done: on the open bench, in a fume cupboard, or not in a classroom; and why."""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, log10
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE
from ionwright.chemistry.exposure import limits
from ionwright.chemistry.species import species
from ionwright.curricula.wording import listed, product, sentence_start
from ionwright.teaching.caution import nitrogen_halide_caution
from ionwright.teaching.demonstrations.air import volume_text
from ionwright.teaching.demonstrations.measure import fitting
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ionwright.teaching.demonstrations.air import FlammableGas, GasInRoom
    from ionwright.teaching.demonstrations.currents import CurrentChoice
    from ionwright.teaching.demonstrations.reading import Bench
    from ionwright.teaching.prediction import ElectrodeAccount, Prediction

__all__ = ["DEFERRING", "FUME_CUPBOARD", "NOT_FOR_A_CLASSROOM", "OPEN_BENCH", "Evidence", "Venue", "venue"]

OPEN_BENCH: Final = "open bench with ventilation"
FUME_CUPBOARD: Final = "fume cupboard"
NOT_FOR_A_CLASSROOM: Final = "not for a classroom"
_SEVERITY: Final = (OPEN_BENCH, FUME_CUPBOARD, NOT_FOR_A_CLASSROOM)

_HARMLESS_PPM: Final = 1000
"""A gas with a limit as high as this, such as carbon dioxide, is not called toxic."""

DEFERRING: Final = (
    "This is no risk assessment. Local rules, your school's own risk assessment and the judgement of qualified staff "
    "come first."
)
"""The reason that ends every verdict."""

_BY_HAZARD: Final = {
    "very high temperature": NOT_FOR_A_CLASSROOM,
    "very toxic": NOT_FOR_A_CLASSROOM,
    "deadly poison": NOT_FOR_A_CLASSROOM,
    "toxic, explosive salts": NOT_FOR_A_CLASSROOM,
    "toxic metal, reacts with water": NOT_FOR_A_CLASSROOM,
    "explosive product": NOT_FOR_A_CLASSROOM,
    "toxic gas with acid": FUME_CUPBOARD,
    "hot melt": FUME_CUPBOARD,
    "toxic": OPEN_BENCH,
    "toxic, sensitising": OPEN_BENCH,
}
"""Hazards of the cautions, by where they send a demonstration."""
_BY_PHRASE: Final = {
    "no place in a classroom": NOT_FOR_A_CLASSROOM,
    "banned in most schools": NOT_FOR_A_CLASSROOM,
    "banned from most schools": NOT_FOR_A_CLASSROOM,
    "do not use it as an anode": NOT_FOR_A_CLASSROOM,
    "cells belong in industry": NOT_FOR_A_CLASSROOM,
    "baths belong in industry only": NOT_FOR_A_CLASSROOM,
    "made in industry only": NOT_FOR_A_CLASSROOM,
    "causes cancer: industry only": NOT_FOR_A_CLASSROOM,
    "teachers or industry only": NOT_FOR_A_CLASSROOM,
    "not made in schools": NOT_FOR_A_CLASSROOM,
    "never in a school": NOT_FOR_A_CLASSROOM,
    "never use them in a school": NOT_FOR_A_CLASSROOM,
    "avoid them in schools": NOT_FOR_A_CLASSROOM,
    "work in a fume cupboard": FUME_CUPBOARD,
    "show it only in a fume cupboard": FUME_CUPBOARD,
    "and use a fume cupboard": FUME_CUPBOARD,
    "not for pupils": FUME_CUPBOARD,
    "must not be used by pupils": FUME_CUPBOARD,
}
"""Words of the cautions, likewise."""


@dataclass(frozen=True, slots=True)
class Venue:
    """Where a demonstration may be done.

    Parameters
    ----------
    word
        `OPEN_BENCH`, `FUME_CUPBOARD` or `NOT_FOR_A_CLASSROOM`.
    reasons
        Why, the gravest first; the last one defers to local rules.
    rules
        Names of the rules of thumb that the reasons rest on.
    """

    word: str
    reasons: tuple[str, ...]
    rules: tuple[str, ...]


class Evidence(NamedTuple):
    """What the verdict rests on."""

    prediction: Prediction
    bench: Bench
    choice: CurrentChoice
    toxic: tuple[GasInRoom, ...]
    flammable: tuple[FlammableGas, ...]


class _Reason(NamedTuple):
    word: str
    text: str
    rule: str = ""


def venue(evidence: Evidence) -> Venue:
    """Where a demonstration may be done, from all that is known of it."""
    reasons = [
        *_of_cautions(evidence.prediction),
        *_of_explosives(evidence.prediction, evidence.toxic),
        *_of_acid(evidence.prediction),
        *_of_current(evidence.bench, evidence.choice),
        *(reason for gas in evidence.flammable for reason in _of_flammable(gas)),
        *_of_open_electrodes(evidence.prediction),
    ]
    # less of a gas helps only where nothing else keeps the cell from the open bench
    is_gas_alone = len(evidence.toxic) == 1 and all(reason.word == OPEN_BENCH for reason in reasons)
    reasons += [reason for gas in evidence.toxic for reason in _of_toxic(gas, may_be_less=is_gas_alone)]
    reasons.sort(key=lambda reason: -_SEVERITY.index(reason.word))
    word = reasons[0].word if reasons else OPEN_BENCH
    texts = [reason.text for reason in reasons] or [
        "Nothing in the plan asks for more than a well-ventilated room and the usual care."
    ]
    named = [reason.rule for reason in reasons if reason.rule]
    if evidence.toxic:
        named += ["counted_air", *(gas.rule for gas in evidence.toxic if gas.rule)]
    rules = tuple(dict.fromkeys(named))
    return Venue(word, (*dict.fromkeys(texts), DEFERRING), rules)


def _of_cautions(prediction: Prediction) -> Iterator[_Reason]:
    for caution in prediction.cautions:
        words = [word for phrase, word in _BY_PHRASE.items() if phrase in caution.text]
        if caution.hazard in _BY_HAZARD:
            words.append(_BY_HAZARD[caution.hazard])
        if words:
            yield _Reason(max(words, key=_SEVERITY.index), caution.text)


def _of_explosives(prediction: Prediction, toxic: tuple[GasInRoom, ...]) -> Iterator[_Reason]:
    """A halogen that may form among ammonium ions, even where the course answers otherwise."""
    caution = nitrogen_halide_caution(prediction.cell.own_ions, (gas.of for gas in toxic))
    if caution:
        yield _Reason(NOT_FOR_A_CLASSROOM, caution.text)


def _of_acid(prediction: Prediction) -> Iterator[_Reason]:
    """An acid or an alkali so strong that pupils should not handle it."""
    strong = rule_of_thumb("strong_acid").in_unit("mol/dm3")
    for present in prediction.cell.electrolyte.ions:
        if (present.concentration or 0) < strong:
            continue
        if present.ion.species == HYDROGEN_ION:
            text = "The acid is concentrated: it burns and may fume, and is not for pupils."
            yield _Reason(FUME_CUPBOARD, text, "strong_acid")
        elif present.ion.species == HYDROXIDE:
            text = "The alkali is concentrated: it burns skin and above all eyes, and is not for pupils."
            yield _Reason(OPEN_BENCH, text, "strong_acid")


def _of_current(bench: Bench, choice: CurrentChoice) -> Iterator[_Reason]:
    school = rule_of_thumb("school_supply").in_unit("A")
    needed = choice.recommended.current
    if choice.shortfall is not None and not bench.current_A:
        needed = choice.shortfall.needed_current
    needed_A = needed.counted_in("A")
    if needed_A >= rule_of_thumb("classroom_current").in_unit("A"):
        text = (
            f"It takes {needed.text}, which no cell in a classroom should carry: ask for less or take longer, and "
            "never turn to the mains, a car battery or another strong source."
        )
        yield _Reason(NOT_FOR_A_CLASSROOM, text, "classroom_current")
    elif needed_A > max(school, bench.highest_A or 0.0) * (1 + 1e-9):
        text = (
            f"It takes {needed.text}, more than the supply gives: ask for less or take longer, and never turn to the "
            "mains, a car battery or another strong source."
        )
        yield _Reason(OPEN_BENCH, text, "school_supply")
    elif needed_A > school:
        text = (
            f"{needed.text} is more than an ordinary school supply gives: wires, clips and cell may grow hot."
        )
        yield _Reason(OPEN_BENCH, text, "school_supply")


def _of_toxic(gas: GasInRoom, *, may_be_less: bool) -> Iterator[_Reason]:
    name = product(species(gas.of))
    forms = "forms" if gas.is_certain else "may form, which is not sure"
    is_toxic = gas.limit.ppm is not None and gas.limit.ppm < _HARMLESS_PPM
    named = f"toxic {name}" if is_toxic else name
    if gas.times_judged > rule_of_thumb("classroom_multiple").written.value:
        does_form = "forms" if gas.is_certain else "may form"
        text = f"So much {named} {does_form} that no classroom should hold it: {_in_the_room(gas)}."
        yield _Reason(NOT_FOR_A_CLASSROOM, text, "classroom_multiple")
    elif gas.times_judged > rule_of_thumb("open_bench_share").in_unit("1"):
        less = _less_of(gas) if may_be_less else ""
        text = f"{sentence_start(named)} {forms}: {_in_the_room(gas)}, and near the cell to far more.{less}"
        yield _Reason(FUME_CUPBOARD, text, "open_bench_share")
    elif is_toxic:
        text = (
            f"Only a little {named} {forms}: keep the current and the time as small as planned, and the air "
            "moving away from everybody."
        )
        yield _Reason(OPEN_BENCH, text, "open_bench_share")


def _in_the_room(gas: GasInRoom) -> str:
    """What it comes to in the air that is counted, as a clause."""
    times = gas.times_judged
    share = "more than 1000 times" if times >= 1000 else f"{times:.2g} times"
    if times <= 1:
        share = f"{fitting(times, '1', 2).text} of"
    kind = "short-term limit" if gas.limit.is_short_term else "limit"
    if not gas.limit.verified:
        kind += ", as recalled and not read"
    is_aired = gas.at_peak is not None and gas.at_peak.times_limit < gas.evenly_mixed.times_limit
    helps = " (ventilation helps, but least near the cell)" if is_aired else ""
    return f"spread evenly through {volume_text(gas.judged_m3)} of air it would come to {share} the {kind}{helps}"


def _less_of(gas: GasInRoom) -> str:
    """How much of it would do on the open bench, as a sentence with a space in front; empty if that is not known."""
    if gas.volume_dm3 is None or not gas.is_certain:
        return ""
    most_dm3 = gas.volume_dm3 * rule_of_thumb("open_bench_share").in_unit("1") / gas.times_judged
    step = 10.0 ** floor(log10(most_dm3))
    most = fitting(floor(most_dm3 / step * (1 + 1e-9)) * step, "dm3", 1)
    return f" By our own rule of thumb up to about {most.text} of it would do on the open bench."


def _of_flammable(gas: FlammableGas) -> Iterator[_Reason]:
    name = product(species(gas.of))
    volume = gas.volume.counted_in("dm3")
    if gas.evenly_mixed.value > gas.lower_limit.value / 10:
        text = f"So much {name} forms that the air of the whole room comes near to what can be lit."
        yield _Reason(NOT_FOR_A_CLASSROOM, text)
    elif volume >= rule_of_thumb("hydrogen_too_much").in_unit("dm3"):
        text = f"{gas.volume.text} is far more {name} than a classroom may hold: it can make an explosion that injures."
        yield _Reason(NOT_FOR_A_CLASSROOM, text, "hydrogen_too_much")
    elif volume >= rule_of_thumb("hydrogen_led_away").in_unit("dm3"):
        text = (
            f"{gas.volume.text} is more {name} than a demonstration needs: collect a test tube of it at most, and lead "
            "the rest away in a fume cupboard, far from flames and sparks."
        )
        yield _Reason(FUME_CUPBOARD, text, "hydrogen_led_away")
    else:
        text = f"The {name} can be lit: no flames, and nothing that would catch it above the cell."
        yield _Reason(OPEN_BENCH, text)


def _of_open_electrodes(prediction: Prediction) -> Iterator[_Reason]:
    for name, account in (("cathode", prediction.cathode), ("anode", prediction.anode)):
        gases = list(dict.fromkeys(product(species(of)) for of in _possible(account)))
        if account.half_equation is None and gases:
            text = f"The course leaves the {name} open: it might give {listed(gases, 'or')}, which is toxic."
            yield _Reason(FUME_CUPBOARD, text)


def _possible(account: ElectrodeAccount) -> Iterator[str]:
    """The toxic gases that an electrode might give."""
    for process in account.verdict.competition.processes:
        yield from (
            kind.ascii
            for kind in process.products
            if any(limit.ppm is not None for limit in limits(kind.ascii))
        )
