"""What no quantity of an electrolysis can be: signs, zeros, wild sizes, and results that nature does not allow."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.naming import listed, name_of, shown
from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.constants import CONSTANTS
from ionwright.chemistry.faults import QuantityFault

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

    from ionwright.chemistry.amounts.task import Given, Task
    from ionwright.chemistry.amounts.values import Value

__all__ = ["check_given", "check_results"]

_MAY_RUN_OVER: Final = 0.02
"""By how much a result may pass a bound through rounding and measuring before it counts as impossible."""

_MOST_CHARGES: Final = 8
_OF_A_WHOLE: Final = frozenset({"efficiency", "share"})


def check_given(key: Key, value: float, given: Given) -> None:
    """Make sure that a given value can be.

    Parameters
    ----------
    value
        In the unit of the solver.

    Raises
    ------
    QuantityFault
        ``not-finite``, ``below-absolute-zero``, ``negative-quantity``, ``zero-quantity``, ``out-of-range`` or
        ``absurd-magnitude``.
    """
    kind = QUANTITIES[key.kind]
    fault = _fault_of(key, value, given.value.text)
    if fault is not None:
        code, detail, remedy = fault
        raise QuantityFault(code, detail, where=given.where, remedy=remedy)
    if kind.name == "ion_charge" and (value != int(value) or value > _MOST_CHARGES):
        detail = f"An ion cannot have {given.value.text} charges."
        raise QuantityFault(
            "out-of-range", detail, where=given.where, remedy="Write a whole number from 1 to 8."
        )
    if kind.name in _OF_A_WHOLE and value > 1:
        detail = f"The {name_of(key)} is {given.value.text}; it cannot be more than 100%."
        remedy = "Write it as a percentage, such as 95%, or as a part of one, such as 0.95."
        raise QuantityFault("out-of-range", detail, where=given.where, remedy=remedy)
    if not kind.low <= value <= kind.high and not (value == 0 and kind.may_be_zero):
        size = "small" if value < kind.low else "large"
        detail = f"The {name_of(key)} of {given.value.text} is far too {size} for any electrolysis."
        if key.kind in CONSTANTS:
            detail = f"{given.value.text} is far from the {name_of(key)}, {CONSTANTS[key.kind].printed}."
        raise QuantityFault(
            "absurd-magnitude", detail, where=given.where, remedy="Check the number and the unit."
        )


def _fault_of(key: Key, value: float, text: str) -> tuple[str, str, str] | None:
    kind = QUANTITIES[key.kind]
    if not isfinite(value):
        return "not-finite", f"The {name_of(key)} has to be a finite number.", "Write a number such as 0.50."
    if key.kind == "temperature" and value <= 0:
        return (
            "below-absolute-zero",
            f"{text} is not above absolute zero, -273.15 °C.",
            "Check the number and the unit.",
        )
    if value < 0:
        return (
            "negative-quantity",
            f"The {name_of(key)} is {text}; it cannot be negative.",
            "Give it without a sign.",
        )
    if value == 0 and not kind.may_be_zero:
        return (
            "zero-quantity",
            f"The {name_of(key)} is zero; it has to be more than that.",
            "Give a value above zero, or leave it out and ask for it.",
        )
    return None


def check_results(
    task: Task, values: Mapping[Key, Value], given: Mapping[Key, Given], asked: Collection[Key] = ()
) -> None:
    """Make sure that what follows can be: no efficiency above 100 %, no more used up than there is.

    Parameters
    ----------
    asked
        What is asked for; when something runs out may be asked beyond that moment too.

    Raises
    ------
    QuantityFault
        ``contradictory`` or ``below-vapour-pressure``.
    """
    for key, value in values.items():
        number = nominal(value.number)
        if key.kind in _OF_A_WHOLE and number > 1 + max(_MAY_RUN_OVER, value.slack):
            raise _over_the_whole(key, number, value, given)
        if key.kind == "share" and number < -max(_MAY_RUN_OVER, value.slack):
            raise QuantityFault(
                "contradictory",
                "The shares of the current at one electrode come to more than 100%.",
                where=_first(value, given),
                remedy="Shares of one electrode add up to 100%; leave one out to have it worked out.",
            )
        if key.kind == "dry_pressure" and number <= 0:
            raise _below_vapour(value, given)
        if key.kind == "ion_charge" and value.relation is not None and not _is_charge(number):
            raise _no_charge(key, number, value, given)
        is_past = key.kind in _STILL and key not in asked and key not in given
        may_be_negative = key.kind in _TOLD_ELSEWHERE or is_past or _is_of_a_replenished_bath(key, task)
        if number < 0 and not may_be_negative and not _is_crumb(number, value, values):
            raise _negative(key, number, value, given)
        is_about_the_end = bool(asked) and _OF_THE_END.issuperset(one.kind for one in asked)
        if (
            key.kind in _AT_START
            and not is_about_the_end
            and number < -_MAY_RUN_OVER * _at_start(key, values)
        ):
            raise _more_than_there_is(key, values, given)


_OF_THE_END: Final = frozenset({"exhaustion_time", "exhaustion_charge", "amount_at_start"})
_TOLD_ELSEWHERE: Final = frozenset({"share", "dry_pressure", "concentration", "amount_left", "mass_after"})
_STILL: Final = frozenset({"charge_left", "time_left"})
_NET: Final = frozenset({"amount_used", "concentration_change"})
_FROM_A_WHOLE: Final = 0.2
"""How far measured data may lie from a whole number of charges and still mean it."""


def _is_of_a_replenished_bath(key: Key, task: Task) -> bool:
    """Whether it is the net change of an ion that several processes take and give, so that it may go either way."""
    return key.kind in _NET and len(task.circuit.touching(key.process, key.of)) > 1


def _is_charge(number: float) -> bool:
    return 1 <= round(number) <= 8 and abs(number - round(number)) <= _FROM_A_WHOLE


def _no_charge(key: Key, number: float, value: Value, given: Mapping[Key, Given]) -> QuantityFault:
    basis = listed([f"the {name_of(k)} of {given[k].value.text}" for k in given if k in value.given])
    return QuantityFault(
        "contradictory",
        f"From {basis} follows a charge of {number:.3g} on the ion, which is not a whole number from 1 to 8.",
        where=_first(value, given),
        remedy="Check the figures and units, and which metal it is.",
    )


_CRUMB: Final = 1e-9
"""Of what a difference is made of, the part that rounding may leave."""


def _is_crumb(number: float, value: Value, values: Mapping[Key, Value]) -> bool:
    return abs(number) <= _CRUMB * max((abs(nominal(values[k].number)) for k in value.inputs), default=0.0)


def _negative(key: Key, number: float, value: Value, given: Mapping[Key, Given]) -> QuantityFault:
    basis = listed([f"the {name_of(k)} of {given[k].value.text}" for k in given if k in value.given])
    return QuantityFault(
        "contradictory",
        f"These do not go together: from {basis} would follow a negative {name_of(key)}, {shown(key, number, 3)}.",
        where=_first(value, given),
        remedy="Check the figures and units, and which is the larger.",
    )


_AT_START: Final = {
    "mass_after": "mass_before",
    "concentration": "bath_concentration",
    "amount_left": "amount_at_start",
}


def _at_start(key: Key, values: Mapping[Key, Value]) -> float:
    start = values.get(Key(_AT_START[key.kind], key.process, key.of))
    return nominal(start.number) if start else 0.0


def _over_the_whole(key: Key, number: float, value: Value, given: Mapping[Key, Given]) -> QuantityFault:
    basis = listed([f"the {name_of(k)} of {given[k].value.text}" for k in given if k in value.given])
    return QuantityFault(
        "contradictory",
        f"From {basis} follows a {name_of(key)} of {shown(key, number, 3)}: more than the charge can give.",
        where=_first(value, given),
        remedy="Check the figures and units.",
    )


def _below_vapour(value: Value, given: Mapping[Key, Given]) -> QuantityFault:
    return QuantityFault(
        "below-vapour-pressure",
        "The pressure is not above the vapour pressure of water at this temperature, so that there is no dry gas:"
        " the water would boil.",
        where=_first(value, given),
        remedy="Check the pressure, which is that of gas and vapour together, and the temperature.",
    )


def _more_than_there_is(key: Key, values: Mapping[Key, Value], given: Mapping[Key, Given]) -> QuantityFault:
    if key.kind == "mass_after":
        return QuantityFault(
            "contradictory",
            f"More of the {substance_text(key.of)} would dissolve than the electrode weighs before.",
            where=_first(values[key], given),
            remedy="Check the figures and units.",
        )
    start = values.get(Key("amount_at_start", key.process, key.of))
    holds = (
        f" holds only {shown(Key('amount', '', ''), nominal(start.number), 3)}" if start else " does not hold"
    )
    return QuantityFault(
        "contradictory",
        f"The bath{holds} of {substance_text(key.of)}: it runs out before that.",
        where=_first(values[key], given),
        remedy='Give less charge or mass; "exhaustion_time" and "exhaustion_charge" say when it runs out.',
    )


def _first(value: Value, given: Mapping[Key, Given]) -> str:
    return next((given[key].where for key in given if key in value.given), "")
