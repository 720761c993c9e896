"""Tells why a text is no substance that can be electrolysed: unknown, near another, or charges that do not cancel."""

from __future__ import annotations

from difflib import get_close_matches
from functools import cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.faults import CellRefused, UnknownSpecies
from ionwright.chemistry.ion import IONS, Ion, ion
from ionwright.chemistry.ionic_compound import compound_of
from ionwright.chemistry.ionic_formula import mismatched_ions
from ionwright.chemistry.nomenclature import ACID_NAMES, normalised_name, shown_name
from ionwright.chemistry.not_electrolytes import (
    NON_ELECTROLYTE_NAMES,
    NON_METALS,
    refusal_of_formula,
    refusal_of_molecule,
)
from ionwright.chemistry.tables import read_table
from ionwright.chemistry.typed_ions import ion_text

if TYPE_CHECKING:
    from ionwright.chemistry.formula import Formula

__all__ = ["EXAMPLES", "near_names", "refusal_of_unresolved", "unknown_name"]

EXAMPLES: Final = 'Give a formula such as "CuSO4" or a name such as "copper(II) sulfate".'
"""What to write, for a remedy."""

_HYDROGEN: Final = ion("H^+")


def unknown_name(text: str) -> UnknownSpecies:
    """Return the refusal of a name that the tables do not know, with near matches.

    Parameters
    ----------
    text
        The name.
    """
    near = near_names(text)
    remedy = f"Did you mean {_listed(near)}?" if near else EXAMPLES
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
    return (
        *pairs,
        *ACID_NAMES,
        *(name for row in read_table("trivial_names.toml")["name"] for name in row["names"]),
        *NON_ELECTROLYTE_NAMES,
    )


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
    return tuple(map(shown_name, get_close_matches(name, likely, n=3, cutoff=0.82)))


def refusal_of_unresolved(formula: Formula) -> CellRefused | UnknownSpecies:
    """Return the reason why a well-formed formula is no compound of known ions.

    Parameters
    ----------
    formula
        A formula that could not be cut into ions whose charges cancel.
    """
    refusal = refusal_of_formula(formula)
    if refusal is not None:
        return refusal
    positive, negative = mismatched_ions(formula)
    if positive and len(negative) == 1:
        return _charges(formula, positive, negative)
    lone = (*positive, *negative)
    if len(lone) == 1 and lone[0].species.formula == formula.text:
        return _lone_ion(formula, lone[0])
    if _may_be_an_acid(formula):
        return UnknownSpecies(
            "unknown-substance",
            f"{formula.text} may be an acid, but the tables do not know its negative ion.",
            remedy="Take an acid such as H2SO4, HCl, HNO3 or H3PO4.",
        )
    refusal = refusal_of_molecule(formula)
    if refusal is not None:
        return refusal
    metals = [symbol for symbol in formula.composition if symbol not in NON_METALS]
    return UnknownSpecies(
        "unknown-substance",
        f"{formula.text} is not made of ions that the tables know.",
        remedy=f"Check the formula, or name a simpler salt of {metals[0]}.",
    )


def _may_be_an_acid(formula: Formula) -> bool:
    """Whether a formula looks like an oxo-acid: hydrogen first, oxygen last, one other non-metal but carbon between."""
    symbols = tuple(formula.composition)
    return (
        len(symbols) == 3
        and symbols[0] == "H"
        and symbols[2] == "O"
        and symbols[1] in NON_METALS - {"C", "N"}
    )


def _charges(formula: Formula, positive: tuple[Ion, ...], negative: tuple[Ion, ...]) -> CellRefused:
    right = [
        f"{ion_text(cation)} and {ion_text(anion)} combine as {compound_of(cation, anion).formula}"
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
        f"{formula.text} alone is the {one.name}, {ion_text(one)}, and its charge needs a {sign} ion beside it.",
        remedy=f"With {ion_text(partner)}, for example, it makes {compound_of(one, partner).formula}.",
    )
