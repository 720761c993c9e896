"""Reads what people call a substance (formula, name, bottle label) and finds its compound."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from difflib import get_close_matches
from functools import cache, lru_cache
from typing import Final, Literal

from ionwright.chemistry.concentration import Concentration, read_concentration
from ionwright.chemistry.faults import CellRefused, FormulaError, UnknownSpecies
from ionwright.chemistry.formula import Formula, read_formula
from ionwright.chemistry.ion import IONS, Ion, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, compound_from, compound_of, molar_mass
from ionwright.chemistry.ionic_formula import IonicUnit, mismatched_ions, neutral_unit, reduced
from ionwright.chemistry.nomenclature import ACID_NAMES, normalised_name, shown_name, unit_of_name
from ionwright.chemistry.not_electrolytes import (
    NON_ELECTROLYTE_NAMES,
    NON_METALS,
    refusal_of_formula,
    refusal_of_molecule,
    refusal_of_name,
)
from ionwright.chemistry.recasing import recasings
from ionwright.chemistry.tables import read_table
from ionwright.errors import IonwrightError

__all__ = [
    "WATER",
    "Compound",
    "SubstanceReading",
    "compound_from",
    "compound_of",
    "molar_mass",
    "near_names",
    "read_substance",
]

StateWord = Literal["aqueous", "molten", "solid"]
MAX_LENGTH: Final = 200
"""Longest text of a substance, in characters."""


@dataclass(frozen=True, slots=True)
class SubstanceReading:
    """What a text means.

    Parameters
    ----------
    compound
        The compound.
    concentration
        The concentration that the text itself gives; None if it gives none.
    state_word
        aqueous, molten or solid if the text says so; else None.
    assumptions
        Sentences that tell what had to be assumed.
    concentration_assumption
        The sentence that goes with `concentration` if an everyday name implies it; void once another one is given.
    """

    compound: Compound
    concentration: Concentration | None = None
    state_word: StateWord | None = None
    assumptions: tuple[str, ...] = ()
    concentration_assumption: str = ""

    @property
    def concentration_word(self) -> Literal["dilute", "concentrated"] | None:
        """The word for the concentration that the text itself gives."""
        return self.concentration.word if self.concentration else None


@dataclass(frozen=True, slots=True)
class _Bare:
    """A text without its qualifiers."""

    text: str
    concentration: str = ""
    state: StateWord | None = None


_LEADING: Final = re.compile(
    r"^(?:(?P<c>very dilute|diluted?|dil\.?|concentrated|conc\.?|saturated|sat\.|strong|weak)"
    r"|(?P<m>molten|fused|melted)|(?P<s>solid|powdered|crystals of)|(?P<a>aqueous|aq\.?|(?:an? |the )?solution of)"
    r"|(?P<l>liquid)|(?P<x>an?|the|of|dry|pure|some|cold|warm|hot))\s+",
    re.IGNORECASE,
)
_TRAILING: Final = re.compile(
    r"(?:\s*\((?:(?P<a>aq|aqueous)|(?P<m>molten|l|fused)|(?P<s>s|solid)|(?P<c>dilute|dil\.?|concentrated|conc\.?|saturated))\)"
    r"|,?\s+(?:(?P<a2>solution|aqueous|\(?aq\)?)|(?P<m2>melt|molten)|(?P<s2>crystals|powder|solid|lattice)"
    r"|(?P<c2>dilute|dil\.?|concentrated|conc\.?|saturated)))$",
    re.IGNORECASE,
)
_AMOUNT_BEHIND: Final = re.compile(
    r"^(.*?\S)[\s,@]+(\d[\d.,eE+-]*\s?(?:m?mol|mM\b|M\b|k?g\b|mg\b|moles?\b).*)$"
)
_AMOUNT_BEFORE: Final = re.compile(
    r"^(\d[\d.,]*\s?(?:mM|M|m?mol\s?/\s?(?:dm3|dm³|L|l)|m?mol\s?(?:dm|L|l)\^?-?[⁻-]?[13³¹]|g\s?/\s?(?:dm3|dm³|L|l)))\s+(.+)$"
)
_IN_CRYOLITE: Final = re.compile(r",?\s+(?:dissolved\s+)?in\s+(?:molten\s+)?cryolite$", re.IGNORECASE)
_JOINED: Final = re.compile(r"\s+(?:\+|&|and|with|plus)\s+|\s*[,;]\s+", re.IGNORECASE)
_WORDED: Final = re.compile(r"[A-Za-z][a-z]{2,}")


def _bare(text: str) -> _Bare:
    concentration = ""
    state: StateWord | None = None
    match = _IN_CRYOLITE.search(text)
    if match:
        text, state = text[: match.start()], "molten"
    match = _AMOUNT_BEHIND.match(text)
    if match:
        text, concentration = match[1], match[2]
    elif match := _AMOUNT_BEFORE.match(text):
        text, concentration = match[2], match[1]
    for _ in range(4):
        match = _LEADING.match(text) or _TRAILING.search(text)
        if match is None:
            break
        rest = text[match.end() :] if match.start() == 0 else text[: match.start()]
        if not rest.strip():
            break
        text = rest.strip()
        kinds = {name[0]: value for name, value in match.groupdict().items() if value}
        concentration = kinds.get("c", concentration)
        state = _state_word(kinds) or state
    return _Bare(text, concentration, state)


def _state_word(kinds: dict[str, str]) -> StateWord | None:
    if "m" in kinds or "l" in kinds:
        return "molten"
    if "s" in kinds:
        return "solid"
    return "aqueous" if "a" in kinds else None


_TRIVIAL: Final = {name: row for row in read_table("trivial_names.toml")["name"] for name in row["names"]}
_HYDROGEN: Final = ion("H^+")


def _acid_formulas() -> dict[str, Compound]:
    return {
        spelling: compound_from(reduced([(_HYDROGEN, -one.charge), (one, 1)]))
        for one in IONS.values()
        for spelling in one.acid_spellings
    }


_ACID_FORMULAS: Final = _acid_formulas()
_AMMONIA: Final = compound_of(ion("NH4^+"), ion("OH^-"))


@lru_cache(maxsize=8192)
def read_substance(text: str) -> SubstanceReading:
    """Return the compound that a text means, with the qualifiers that stand beside it.

    Parameters
    ----------
    text
        A formula, a name or an everyday name, with or without words such as "dilute" or "molten", or a concentration.

    Raises
    ------
    FormulaError
        A formula cannot be read (``unreadable-formula``, ``unknown-element``).
    UnknownSpecies
        The tables do not know the substance (``unknown-substance``).
    CellRefused
        It is no electrolyte, or its charges do not cancel.
    """
    plain = " ".join(text.split())
    if not plain:
        raise FormulaError("unreadable-formula", "No substance is given.", remedy=_EXAMPLES)
    if len(plain) > MAX_LENGTH:
        raise FormulaError(
            "unreadable-formula",
            f"The text is longer than {MAX_LENGTH} characters.",
            position=MAX_LENGTH,
            remedy=_EXAMPLES,
        )
    found = _trivial(normalised_name(plain)) or _known(plain)
    if found is not None:
        return found
    bare = _bare(plain)
    concentration = read_concentration(bare.concentration) if bare.concentration else None
    reading = _trivial(normalised_name(bare.text)) or SubstanceReading(*_compound_of_text(bare.text))
    return replace(
        reading,
        concentration=concentration or reading.concentration,
        concentration_assumption="" if concentration else reading.concentration_assumption,
        state_word=bare.state or reading.state_word,
    )


_EXAMPLES: Final = 'Give a formula such as "CuSO4" or a name such as "copper(II) sulfate".'


def _known(plain: str) -> SubstanceReading | None:
    """A formula or a name that needs nothing taken off; the common case, so it is tried before all else."""
    if _WORDED.search(plain):
        named = unit_of_name(plain)
        if named is None:
            return None
        return SubstanceReading(
            compound_from(named.unit), assumptions=(named.assumption,) if named.assumption else ()
        )
    try:
        formula = read_formula(plain)
    except FormulaError:
        return None
    compound = _compound_of_formula(formula)
    return None if compound is None else SubstanceReading(compound)


def _compound_of_formula(formula: Formula) -> Compound | None:
    text = formula.text
    if text in _ACID_FORMULAS:
        return _ACID_FORMULAS[text]
    if text == "NH3":
        return _AMMONIA
    if refusal_of_formula(formula) is not None:
        return None
    unit = neutral_unit(formula)
    if unit is None or not _is_plausible(unit):
        return None
    return compound_from(unit)


def _is_plausible(unit: IonicUnit) -> bool:
    """An acid has one kind of negative ion; several single atoms beside hydrogen are a molecule."""
    positive = [one for one, _ in unit.ions if one.charge > 0]
    return positive != [_HYDROGEN] or len(unit.ions) == 2


def _trivial(name: str) -> SubstanceReading | None:
    row = _TRIVIAL.get(name)
    if row is None:
        return None
    compound = WATER if row["means"] == "H2O" else _compound_of_formula(read_formula(row["means"]))
    if compound is None:
        raise UnknownSpecies("unknown-substance", f'"{name}" is not in the tables.')
    assumption = row.get("assumption", "")
    if "concentration" in row:
        implied = read_concentration(row["concentration"])
        return SubstanceReading(compound, concentration=implied, concentration_assumption=assumption)
    return SubstanceReading(compound, assumptions=(assumption,) if assumption else ())


def _compound_of_text(text: str) -> tuple[Compound, Concentration | None, StateWord | None, tuple[str, ...]]:
    compound, assumption = _read(text)
    return compound, None, None, (assumption,) if assumption else ()


def _read(text: str) -> tuple[Compound, str]:
    """The compound of a text without qualifiers, and what had to be assumed; raises if there is none."""
    name = normalised_name(text)
    refusal = refusal_of_name(name)
    if refusal is not None and (len(text) > 3 or not text[0].isupper()):
        raise refusal
    if _WORDED.search(text):
        named = unit_of_name(text)
        if named is not None:
            return compound_from(named.unit), named.assumption
    return _read_formula_text(text)


def _read_formula_text(text: str) -> tuple[Compound, str]:
    fault: IonwrightError
    try:
        formula = read_formula(text)
    except FormulaError as error:
        fault = error
    else:
        compound = _compound_of_formula(formula)
        if compound is not None:
            return compound, ""
        fault = _why_not(formula)
        if fault.code in ("not-an-electrolyte",) or refusal_of_formula(formula) is not None:
            raise fault
    _refuse_mixture(text)
    recased = _recased(text)
    if recased is not None:
        return recased, f'"{text}" is read as {recased.formula}.'
    if _looks_like_a_name(text):
        raise _unknown(text)
    raise fault


def _recased(text: str) -> Compound | None:
    """The one compound, or the refusal of the one molecule, that the letters spell when case is ignored."""
    found: dict[str, Compound] = {}
    refusals: list[CellRefused] = []
    for candidate in recasings(text):
        try:
            formula = read_formula(candidate)
        except FormulaError:
            continue
        compound = _compound_of_formula(formula)
        if compound is not None:
            found[compound.formula] = compound
        elif (refusal := refusal_of_formula(formula)) is not None and len(formula.composition) > 1:
            refusals.append(refusal)
    if len(found) == 1:
        return next(iter(found.values()))
    if not found and len(refusals) == 1:
        raise refusals[0]
    return None


def _refuse_mixture(text: str) -> None:
    match = _JOINED.search(text)
    if match is not None:
        raise FormulaError(
            "unreadable-formula",
            "One text names one substance, and this one seems to name several.",
            position=match.start(),
            remedy="Give a mixture as a list, with one substance in each place.",
        )


def _looks_like_a_name(text: str) -> bool:
    letters = [character for character in text if character.isalpha()]
    return (
        len(letters) >= 3
        and (_WORDED.search(text) is not None or text.islower())
        and not any(c.isdigit() for c in text)
    )


def _unknown(text: str) -> UnknownSpecies:
    near = near_names(text)
    remedy = f"Did you mean {_listed(near)}?" if near else _EXAMPLES
    return UnknownSpecies(
        "unknown-substance", f'The tables know no substance called "{text[:60]}".', remedy=remedy
    )


def _listed(names: tuple[str, ...]) -> str:
    quoted = [f'"{name}"' for name in names]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"


@cache
def _all_names() -> tuple[str, ...]:
    plain = [
        one
        for one in IONS.values()
        if not one.lattice_only and not one.unstable and "[" not in one.species.formula
    ]
    positive = [one for one in plain if one.charge > 0 and one is not _HYDROGEN]
    negative = [one for one in plain if one.charge < 0]
    stems = [stem for one in positive for stem in {one.stem.lower(), one.stem.partition("(")[0]}]
    pairs = [f"{stem} {one.stem}" for stem in dict.fromkeys(stems) for one in negative]
    return (*pairs, *ACID_NAMES, *_TRIVIAL, *NON_ELECTROLYTE_NAMES)


def near_names(text: str) -> tuple[str, ...]:
    """Return up to three names in the tables that resemble a text; none if nothing is near.

    Parameters
    ----------
    text
        A name that was not found.
    """
    name = normalised_name(text)[:60]
    likely = tuple(
        known for known in _all_names() if known[:1] == name[:1] and abs(len(known) - len(name)) <= 4
    )
    return tuple(map(shown_name, get_close_matches(name, likely, n=3, cutoff=0.8)))


def _why_not(formula: Formula) -> IonwrightError:
    """The reason why a well-formed formula is no compound of known ions."""
    refusal = refusal_of_formula(formula)
    if refusal is not None:
        return refusal
    positive, negative = mismatched_ions(formula)
    if positive and len(negative) == 1:
        return _charges(formula, positive, negative)
    if len(negative) == 1 and not positive or len(positive) == 1 and not negative:
        return _lone_ion(formula, (*positive, *negative)[0])
    refusal = refusal_of_molecule(formula)
    if refusal is not None:
        return refusal
    metals = [symbol for symbol in formula.composition if symbol not in NON_METALS]
    return UnknownSpecies(
        "unknown-substance",
        f"{formula.text} is not made of ions that the tables know.",
        remedy=f"Check the formula, or name a simpler salt of {metals[0]}.",
    )


_SUPERSCRIPT: Final = str.maketrans("0123456789+-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻")


def _ion_text(one: Ion) -> str:
    formula, _, charge = one.species.ascii.rpartition("^")
    return formula + charge.translate(_SUPERSCRIPT)


def _charges(formula: Formula, positive: tuple[Ion, ...], negative: tuple[Ion, ...]) -> CellRefused:
    right = [
        f"{_ion_text(cation)} and {_ion_text(anion)} combine as {compound_of(cation, anion).formula}"
        for cation in positive
        for anion in negative
    ]
    return CellRefused(
        "charges-do-not-cancel",
        f"The charges of the ions in {formula.text} do not cancel.",
        remedy=f"{'; '.join(right[:4])}.",
    )


def _lone_ion(formula: Formula, one: Ion) -> CellRefused:
    partner = ion("Na^+") if one.charge < 0 else ion("Cl^-")
    sign = "positive" if one.charge < 0 else "negative"
    return CellRefused(
        "charges-do-not-cancel",
        f"{formula.text} alone is the {one.name}, {_ion_text(one)}, and its charge needs a {sign} ion beside it.",
        remedy=f"With {_ion_text(partner)}, for example, it makes {compound_of(one, partner).formula}.",
    )
