"""Reads what people call a substance (formula, name, bottle label) and finds its compound."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final, Literal, TypeAlias

from ionwright.chemistry.concentration import Concentration, read_concentration
from ionwright.chemistry.faults import CellRefused, FormulaError, UnknownSpecies
from ionwright.chemistry.formula import Formula, read_formula
from ionwright.chemistry.ion import IONS, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, compound_from, compound_of, molar_mass
from ionwright.chemistry.ionic_formula import IonicUnit, neutral_unit, reduced
from ionwright.chemistry.label import StateWord, read_label
from ionwright.chemistry.nomenclature import normalised_name, refuse_unknown_charge, unit_of_name
from ionwright.chemistry.not_electrolytes import MoleculesOnly, refusal_of_formula, refusal_of_name
from ionwright.chemistry.recasing import recasings
from ionwright.chemistry.tables import read_table
from ionwright.chemistry.typed_ions import compound_of_typed_ions
from ionwright.chemistry.unresolved import EXAMPLES, near_names, refusal_of_unresolved, unknown_name

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


_WORDED: Final = re.compile(r"[A-Za-z][a-z]{2,}")
_JOINED: Final = re.compile(r"\s+(?:\+|&|and|with|plus)\s+|\s*[,;]\s+", re.IGNORECASE)
_TRIVIAL: Final = {name: row for row in read_table("trivial_names.toml")["name"] for name in row["names"]}
_HYDROGEN: Final = ion("H^+")
_TAKEN_BY_HYDROGEN: Final = (ion("O^2-"), ion("N^3-"))


def _acid_formulas() -> dict[str, Compound]:
    return {
        spelling: _spelled_acid(compound_from(reduced([(_HYDROGEN, -one.charge), (one, 1)])), spelling)
        for one in IONS.values()
        for spelling in one.acid_spellings
    }


def _spelled_acid(acid: Compound, spelling: str) -> Compound:
    """The acid; an anhydride such as CrO3 keeps its formula, for its molar mass is another."""
    same = read_formula(spelling).composition == read_formula(acid.formula).composition
    return acid if same else replace(acid, formula=spelling)


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
        raise FormulaError("unreadable-formula", "No substance is given.", remedy=EXAMPLES)
    if len(plain) > MAX_LENGTH:
        raise FormulaError(
            "unreadable-formula",
            f"The text is longer than {MAX_LENGTH} characters.",
            position=MAX_LENGTH,
            remedy=EXAMPLES,
        )
    found = _as_formula(plain) or _as_name(plain)
    if found is not None:
        return found
    bare = read_label(plain)
    concentration = read_concentration(bare.concentration) if bare.concentration else None
    try:
        reading = _trivial(normalised_name(bare.text)) or SubstanceReading(*_compound_of_text(bare.text))
    except MoleculesOnly as refusal:
        raise (refusal.when_molten() if bare.state == "molten" else refusal) from None
    return replace(
        reading,
        concentration=concentration or reading.concentration,
        concentration_assumption="" if concentration else reading.concentration_assumption,
        state_word=bare.state or reading.state_word,
    )


def _as_formula(plain: str) -> SubstanceReading | None:
    """A formula that needs nothing taken off; the common case, so it is tried before all else."""
    if _WORDED.search(plain):
        return None
    try:
        formula = read_formula(plain)
    except FormulaError:
        return None
    compound = _compound_of_formula(formula)
    return None if compound is None else SubstanceReading(compound)


def _may_be_a_name(text: str) -> bool:
    return text.isupper() or _WORDED.search(text) is not None


def _as_name(plain: str) -> SubstanceReading | None:
    """A name that needs nothing taken off."""
    name = normalised_name(plain)
    found = _trivial(name)
    if found is not None:
        return found
    named = unit_of_name(name) if _may_be_a_name(plain) else None
    if named is None:
        return None
    return SubstanceReading(
        compound_from(named.unit), assumptions=(named.assumption,) if named.assumption else ()
    )


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
    """An acid has one kind of negative ion, and hydrogen ions do not stand beside oxide or nitride ions."""
    positive = [one for one, _ in unit.ions if one.charge > 0]
    if (
        _HYDROGEN in positive
        and len(unit.ions) > 2
        and any(one in _TAKEN_BY_HYDROGEN for one, _ in unit.ions)
    ):
        return False
    if positive != [_HYDROGEN]:
        return True
    return len(unit.ions) == 2 and not unit.ions[1][0].species.formula.startswith("HF")


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
    if _may_be_a_name(text):
        named = unit_of_name(text)
        if named is not None:
            return compound_from(named.unit), named.assumption
        refuse_unknown_charge(name)
    return _read_formula_text(text)


Refusal: TypeAlias = FormulaError | CellRefused | UnknownSpecies
"""What can stand against a formula."""


def _read_formula_text(text: str) -> tuple[Compound, str]:
    fault: Refusal
    try:
        formula = read_formula(text)
    except FormulaError as error:
        salt = compound_of_typed_ions(text)
        if salt is not None:
            return salt, f'"{text}" is read as {salt.formula}.'
        fault = error
    else:
        compound = _compound_of_formula(formula)
        if compound is not None:
            return compound, ""
        fault = refusal_of_unresolved(formula)
        if fault.code == "not-an-electrolyte" or refusal_of_formula(formula) is not None:
            raise _with_look_alike(fault, text)
    _refuse_mixture(text)
    recased = _recased(text)
    if recased is not None:
        return recased, f'"{text}" is read as {recased.formula}.'
    if _looks_like_a_name(text):
        raise unknown_name(text)
    raise _with_look_alike(fault, text)


_LOOK_ALIKES: Final = (("0", "O"), ("1", "l"), ("I", "l"), ("l", "I"), ("O", "0"))


def _with_look_alike(fault: Refusal, text: str) -> Refusal:
    """Add a hint if a formula makes sense once a figure or letter is changed for the one that looks like it."""
    for typed, meant in _LOOK_ALIKES:
        if typed not in text:
            continue
        candidate = text.replace(typed, meant)
        try:
            formula = read_formula(candidate)
        except FormulaError:
            continue
        if _compound_of_formula(formula) is not None:
            fault.remedy = f'Did you mean "{candidate}"? {fault.remedy}'.strip()
            break
    return fault


def _recased(text: str) -> Compound | None:
    """The one compound, or the refusal of the one molecule, that the letters spell when case is ignored."""
    found: dict[str, Compound] = {}
    molecules: list[CellRefused] = []
    mismatched: list[CellRefused | UnknownSpecies] = []
    elements: list[CellRefused] = []
    for candidate in recasings(text):
        try:
            formula = read_formula(candidate)
        except FormulaError:
            continue
        compound = _compound_of_formula(formula)
        if compound is not None:
            found[compound.formula] = compound
        elif (refusal := refusal_of_formula(formula)) is not None:
            if len(formula.composition) > 1:
                molecules.append(refusal)
            elif text.isalpha():
                elements.append(refusal)
        elif (fault := refusal_of_unresolved(formula)).code == "charges-do-not-cancel":
            mismatched.append(fault)
    if len(found) == 1:
        return next(iter(found.values()))
    refusals = molecules or elements or mismatched
    if not found and len(refusals) == 1:
        raise refusals[0]
    return None


def _refuse_mixture(text: str) -> None:
    if text.lower().startswith(("acidified ", "acidic ")):
        raise FormulaError(
            "unreadable-formula",
            "Acidified means that an acid is there as well, and one text names one substance.",
            position=0,
            remedy="Give a list of the salt and the acid, such as CuSO4 and H2SO4.",
        )
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
