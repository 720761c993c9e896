"""From the members of a task to what is known in it and what is asked, by phrases or by entries of a list."""

from __future__ import annotations

from decimal import Decimal
from math import isfinite
from typing import TYPE_CHECKING, Any, Final

from ionwright.api.problems import Fault, Path
from ionwright.api.texts import (
    LONGEST_TEXT,
    named,
    note_unknown_fields,
    read_quantity,
    read_text,
    shown,
    wrong_type,
)
from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.errors import IonwrightError
from ionwright.teaching.quantities import AskedQuantity, StatedQuantity
from ionwright.teaching.quantities.phrases import read_phrase

if TYPE_CHECKING:
    from collections.abc import Sequence

KNOWN_FIELDS = ("quantity", "of", "process", "value")
ASKED_FIELDS = ("quantity", "of", "process", "unit")
MOST_KNOWN = 40
_FEWEST_FIGURES: Final = 3
MOST_ASKED = 40
_KNOWN_EXAMPLE: Final = '{"current": "0.50 A", "time": "20 min"}'
_ASKED_EXAMPLE: Final = '"mass of Ni in mg"'
_TEXT_EXAMPLES: Final = {"of": '"Ag"', "process": '"silver cell"', "unit": '"mg"'}
_OTHER_WORDS: Final = {
    "name": "quantity", "substance": "of", "species": "of", "formula": "of", "electrode": "process",
    "cell": "process", "units": "unit", "amount": "value",
}  # fmt: skip
_EXAMPLES: Final = {
    "temperature": "25 degC", "pressure": "101 kPa", "water_vapour_pressure": "2.3 kPa", "cost": "1.20 GBP",
    "energy_price": "0.28 GBP/kWh", "faraday_constant": "96500 C/mol", "avogadro_constant": "6.02e23 /mol",
    "elementary_charge": "1.60e-19 C", "gas_constant": "8.31 J/(mol K)", "molar_gas_volume": "24 dm3/mol",
}  # fmt: skip


def read_value(value: Any, path: Path, quantity: str, faults: list[Fault]) -> str:
    """The value of a quantity as a text with its unit; a plain number only of what has no unit.

    Parameters
    ----------
    quantity
        One of `QUANTITIES`, or empty for a name that no quantity has.
    """
    kind = QUANTITIES.get(quantity)
    is_plain = kind is None or kind.dimension == "fraction"
    if type(value) in (int, float) and is_plain:
        if not isfinite(value):
            faults.append(Fault(path, "out-of-range", f"{named(path)} is too large a number."))
        return repr(value) if kind is None or kind.name == "ion_charge" else _with_figures(value)
    unit = "" if kind is None or kind.answer_unit == "1" else kind.answer_unit
    example = _EXAMPLES.get(quantity, f"2.5 {unit}".strip().replace(" %", "%"))
    text = read_quantity(value, path, f'"{example}"', faults)
    if type(value) is dict and text:
        return f"{_with_figures(value['value'])} {value['unit'].strip()}"
    return text


def _with_figures(number: float) -> str:
    """A JSON number with at least three figures: it could not carry the zeros at its end."""
    exact = Decimal(repr(number))
    missing = _FEWEST_FIGURES - len(exact.as_tuple().digits)
    if not number or missing <= 0 or not exact.is_finite():
        return repr(number)
    place = Decimal(1).scaleb(exact.adjusted() - _FEWEST_FIGURES + 1)
    return f"{exact.quantize(place):e}" if abs(exact.adjusted()) > 5 else f"{exact.quantize(place):f}"


def read_known(value: Any, faults: list[Fault]) -> tuple[StatedQuantity, ...]:
    """What a task states, in the order in which it states it."""
    path: Path = ("known",)
    if type(value) is dict:
        if _is_too_many(value, path, MOST_KNOWN, faults):
            return ()
        return tuple(_by_phrase(name, value[name], i, faults) for i, name in enumerate(value))
    if type(value) is list:
        if _is_too_many(value, path, MOST_KNOWN, faults):
            return ()
        return tuple(_stated(item, (*path, i), f"known/{i}", faults) for i, item in enumerate(value))
    faults.append(wrong_type(value, path, "an object of quantities, or a list", _KNOWN_EXAMPLE))
    return ()


def _is_too_many(value: Sequence[Any] | dict[str, Any], path: Path, most: int, faults: list[Fault]) -> bool:
    if len(value) <= most:
        return False
    detail = f"{named(path)} takes {most} quantities at most, and has {len(value)}."
    faults.append(Fault(path, "too-many", detail))
    return True


def _by_phrase(phrase: str, value: Any, index: int, faults: list[Fault]) -> StatedQuantity:
    path: Path = ("known", phrase)
    if len(phrase) > LONGEST_TEXT or not phrase.strip():
        detail = f'The name {shown(phrase)} in "known" is no quantity. Write it as in {_KNOWN_EXAMPLE}.'
        faults.append(Fault(("known",), "too-long" if phrase.strip() else "empty", detail))
        return StatedQuantity("", "")
    text = read_value(value, path, _quantity_in(phrase), faults)
    return StatedQuantity(phrase, text, where=f"known/{index}")


def _quantity_in(phrase: str) -> str:
    """The quantity that a phrase names; empty if none, which is told when the task is solved."""
    try:
        return read_phrase(phrase).quantity
    except IonwrightError:
        return ""


def _stated(item: Any, path: Path, where: str, faults: list[Fault]) -> StatedQuantity:
    if type(item) is not dict:
        example = '{"quantity": "mass", "of": "Ag", "value": "2.16 g"}'
        faults.append(wrong_type(item, path, "a known quantity", example))
        return StatedQuantity("", "")
    note_unknown_fields(item, path, KNOWN_FIELDS, faults, _OTHER_WORDS)
    phrase = _name(item, path, faults)
    text = ""
    if "value" in item:
        text = read_value(item["value"], (*path, "value"), _quantity_in(phrase), faults)
    else:
        detail = f'{named(path)} lacks its "value", such as "2.16 g".'
        faults.append(Fault((*path, "value"), "missing-field", detail))
    return StatedQuantity(phrase, text, **_texts(item, ("of", "process"), path, faults), where=where)


def _name(item: dict[str, Any], path: Path, faults: list[Fault]) -> str:
    place = (*path, "quantity")
    if "quantity" in item:
        return read_text(item["quantity"], place, '"mass"', faults)
    faults.append(Fault(place, "missing-field", f'{named(path)} lacks its "quantity", such as "mass".'))
    return ""


def _texts(item: dict[str, Any], names: tuple[str, ...], path: Path, faults: list[Fault]) -> dict[str, str]:
    return {
        name: read_text(item[name], (*path, name), _TEXT_EXAMPLES[name], faults)
        for name in names
        if name in item
    }


def read_asked(value: Any, faults: list[Fault]) -> tuple[AskedQuantity, ...]:
    """What a task asks for, in the order in which it asks."""
    path: Path = ("find",)
    if type(value) is str:
        return (AskedQuantity(read_text(value, path, _ASKED_EXAMPLE, faults), where="find/0"),)
    if type(value) is not list:
        faults.append(wrong_type(value, path, "a quantity or a list of them", _ASKED_EXAMPLE))
        return ()
    if not value:
        detail = f'"find" is an empty list. Name at least one quantity, such as {_ASKED_EXAMPLE}.'
        faults.append(Fault(path, "empty", detail))
    if _is_too_many(value, path, MOST_ASKED, faults):
        return ()
    return tuple(_asked(item, (*path, i), f"find/{i}", faults) for i, item in enumerate(value))


def _asked(item: Any, path: Path, where: str, faults: list[Fault]) -> AskedQuantity:
    if type(item) is str:
        return AskedQuantity(read_text(item, path, _ASKED_EXAMPLE, faults), where=where)
    if type(item) is not dict:
        faults.append(wrong_type(item, path, "a quantity", _ASKED_EXAMPLE))
        return AskedQuantity("")
    note_unknown_fields(item, path, ASKED_FIELDS, faults, _OTHER_WORDS)
    texts = _texts(item, ("of", "process", "unit"), path, faults)
    return AskedQuantity(_name(item, path, faults), **texts, where=where)
