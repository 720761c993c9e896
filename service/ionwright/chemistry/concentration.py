"""Concentrations as people write them: a number with a unit, or a word."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final, Literal, Never

from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.ionic_compound import molar_mass

if TYPE_CHECKING:
    from ionwright.chemistry.ionic_compound import Compound

__all__ = ["MAX_MOL_DM3", "Concentration", "concentration_of", "read_concentration"]

MAX_MOL_DM3: Final = 40.0
"""No solution in water holds more than this of anything [mol/dm3]."""

_MAX_LENGTH: Final = 60
_MIN: Final = 1e-9
_MAX_G_DM3: Final = 3000.0
_EXAMPLE: Final = 'Write a number and a unit such as "0.25 mol/dm3", or "dilute" or "concentrated".'

Word = Literal["dilute", "concentrated"]


@dataclass(frozen=True, slots=True)
class Concentration:
    """How much is dissolved.

    Parameters
    ----------
    text
        As it was written, so that significant figures survive.
    word
        dilute or concentrated, if a word was given; else None.
    mol_dm3
        Amount concentration [mol/dm3]; None if only a word, or a mass, is known.
    g_dm3
        Mass concentration [g/dm3]; None unless it was given so.
    saturated
        Whether the word was "saturated".
    """

    text: str
    word: Word | None = None
    mol_dm3: float | None = None
    g_dm3: float | None = None
    saturated: bool = False


_WORDS: Final[dict[str, Word]] = {
    "dilute": "dilute", "diluted": "dilute", "dil": "dilute", "very dilute": "dilute", "weak": "dilute",
    "low": "dilute", "concentrated": "concentrated", "conc": "concentrated", "concentrate": "concentrated",
    "very concentrated": "concentrated", "strong": "concentrated", "high": "concentrated", "saturated": "concentrated",
    "sat": "concentrated", "sat'd": "concentrated",
}  # fmt: skip

_NUMBER: Final = re.compile(
    r"([+-]?\d{1,12}(?:[.,]\d{1,12})*|[+-]?\.\d{1,12})(?:\s?[x*×·]\s?10\s?\^?\s?([+-]?\d{1,3})|e([+-]?\d{1,3}))?(?![\d.,])",
    re.IGNORECASE,
)
_FOLDED: Final = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻−–‐‑μµ·", "0123456789----" + "-" + "uu.")

_MOLAR: Final = {"M": 1.0, "mM": 1e-3, "uM": 1e-6, "molar": 1.0, "millimolar": 1e-3}
_AMOUNTS: Final = {
    "mol": 1.0, "mole": 1.0, "moles": 1.0, "mols": 1.0, "mmol": 1e-3, "millimol": 1e-3, "umol": 1e-6, "kmol": 1e3,
}  # fmt: skip
_MASSES: Final = {
    "g": 1.0, "gram": 1.0, "grams": 1.0, "mg": 1e-3, "ug": 1e-6, "kg": 1e3, "gramme": 1.0, "grammes": 1.0,
}  # fmt: skip
_VOLUMES_DM3: Final = {
    "dm3": 1.0, "l": 1.0, "litre": 1.0, "liter": 1.0, "litres": 1.0, "liters": 1.0, "ltr": 1.0, "cubicdecimetre": 1.0,
    "cubicdecimeter": 1.0, "cm3": 1e-3, "ml": 1e-3, "cc": 1e-3, "m3": 1e3, "dl": 0.1, "100cm3": 0.1, "100ml": 0.1,
    "1000cm3": 1.0, "1000ml": 1.0, "1dm3": 1.0, "1l": 1.0, "500cm3": 0.5, "500ml": 0.5, "250cm3": 0.25, "250ml": 0.25,
}  # fmt: skip


def _units() -> dict[str, tuple[str, float]]:
    found = {unit: ("mol", factor) for unit, factor in _MOLAR.items()}
    for kind, tops in (("mol", _AMOUNTS), ("g", _MASSES)):
        for top, size in tops.items():
            for below, volume in _VOLUMES_DM3.items():
                found[f"{top}/{below}"] = kind, size / volume
                if not below[0].isdigit():
                    inverse = f"{below}-1" if not below.endswith("3") else f"{below[:-1]}-3"
                    found[f"{top}{inverse}"] = kind, size / volume
                    found[f"{top}.{inverse}"] = kind, size / volume
    return found


_UNITS: Final = _units()
_LOWER: Final = {unit.lower(): meaning for unit, meaning in _UNITS.items() if unit not in _MOLAR}
_SUPPORTED: Final = "Units that are understood: mol/dm³, mol/L, M, mmol/dm³, mol/m³, g/dm³, g/L, g/100 cm³."


def _refuse(detail: str, *, position: int | None = None, remedy: str = _EXAMPLE) -> Never:
    raise CellRefused("bad-concentration", detail, position=position, remedy=remedy)


@lru_cache(maxsize=4096)
def read_concentration(text: str) -> Concentration:
    """Return the concentration that a text says.

    Parameters
    ----------
    text
        A number with a unit (``"0.25 mol/dm3"``, ``"10 g/dm3"``, ``"2 M"``) or a word
        (``"dilute"``, ``"concentrated"``, ``"saturated"``), at most 60 characters.

    Raises
    ------
    CellRefused
        The text is no concentration, or an impossible one (``bad-concentration``).
    """
    if len(text) > _MAX_LENGTH:
        _refuse(f"The concentration is longer than {_MAX_LENGTH} characters.")
    plain = " ".join(text.translate(_FOLDED).split())
    if not plain:
        _refuse("The concentration is empty.")
    word = plain.lower().removesuffix(" solution").rstrip(".")
    if word in _WORDS:
        return Concentration(text, word=_WORDS[word], saturated=word.startswith("sat"))
    number, rest = _number(plain)
    unit = rest.strip()
    meaning = _meaning(unit)
    if meaning is None:
        _refuse_unit(unit, plain, position=len(plain) - len(rest.lstrip()))
    kind, factor = meaning
    _check_number(number * factor, kind)
    if kind == "mol":
        return Concentration(text, mol_dm3=number * factor)
    return Concentration(text, g_dm3=number * factor)


def _number(plain: str) -> tuple[float, str]:
    match = _NUMBER.match(plain)
    if match is None:
        if plain.lower().lstrip("+-").startswith(("nan", "inf")):
            _refuse("A concentration must be a finite number.", position=0)
        _refuse(f'"{plain}" does not start with a number and is not a word for a concentration.', position=0)
    digits = match[1]
    if "," in digits:
        digits = _without_comma(digits)
    if digits.count(".") > 1:
        _refuse(f'"{match[1]}" is not a number.', position=0)
    exponent = int(match[2] or match[3] or 0)
    if abs(exponent) > 99:
        _refuse("The power of ten in the concentration is out of all range.", position=0)
    return float(digits) * 10.0**exponent, plain[match.end() :]


def _without_comma(digits: str) -> str:
    whole, _, decimals = digits.partition(",")
    if "." in digits or "," in decimals or (len(decimals) == 3 and whole.lstrip("+-") != "0"):
        _refuse(
            f'"{digits}" can be read in two ways.',
            position=digits.index(","),
            remedy=f'Write it with a decimal point and no thousands mark, such as "{whole}.{decimals[:2] or "0"}".',
        )
    return f"{whole}.{decimals}"


def _meaning(unit: str) -> tuple[str, float] | None:
    if unit in _MOLAR:
        return _UNITS[unit]
    tidy = (
        unit.lower()
        .replace("^", "")
        .replace("{", "")
        .replace("}", "")
        .replace("cubic decimet", "cubicdecimet")
    )
    tidy = re.sub(r"\s*(?:/|\bper\b)\s*", "/", tidy)
    tidy = re.sub(r"\s*\.\s*", ".", tidy).replace(" ", "").strip("()")
    return _LOWER.get(tidy) or _LOWER.get(tidy.replace("(", "").replace(")", "")) or _UNITS.get(tidy)


def _refuse_unit(unit: str, plain: str, *, position: int) -> Never:
    if not unit:
        _refuse(
            f'"{plain}" has no unit.',
            position=position,
            remedy=f'Write "{plain} mol/dm3" if that is meant. {_SUPPORTED}',
        )
    if unit.startswith("%"):
        _refuse("A percentage does not say what it is a percentage of.", position=position, remedy=_SUPPORTED)
    _refuse(f'"{unit}" is not a unit of concentration.', position=position, remedy=_SUPPORTED)


def _check_number(size: float, kind: str) -> None:
    if size < 0:
        _refuse("A concentration cannot be negative.", position=0)
    if size == 0:
        _refuse(
            "At a concentration of zero there is no electrolyte.",
            position=0,
            remedy="Give a concentration above zero.",
        )
    if size < _MIN:
        _refuse("So little is dissolved that it could not carry a current.", position=0)
    if size > (MAX_MOL_DM3 if kind == "mol" else _MAX_G_DM3):
        limit = f"{MAX_MOL_DM3:g} mol/dm³" if kind == "mol" else f"{_MAX_G_DM3:g} g/dm³"
        _refuse(f"No solution in water is stronger than about {limit}.", position=0)


def concentration_of(compound: Compound, given: Concentration) -> Concentration:
    """Return the concentration with its amount worked out from a mass, for this compound.

    Parameters
    ----------
    compound
        What is dissolved; its water of crystallisation counts in the mass.
    given
        The concentration as it was read.

    Raises
    ------
    CellRefused
        The molar mass is not known, or the amount is impossible (``bad-concentration``).
    """
    if given.g_dm3 is None or given.mol_dm3 is not None:
        return given
    mass = molar_mass(compound)
    if mass is None:
        _refuse(
            f"The molar mass of {compound.formula} is not in the tables.",
            remedy="Give the concentration in mol/dm³.",
        )
    _check_number(given.g_dm3 / mass, "mol")
    return replace(given, mol_dm3=given.g_dm3 / mass)
