"""Ions that stand where a substance should: strings such as "Na+Cl-" that mean a salt, and ions all alone."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.faults import CellRefused, FormulaError
from ionwright.chemistry.ion import IONS, Ion, ion
from ionwright.chemistry.ionic_compound import Compound, compound_from, compound_of
from ionwright.chemistry.ionic_formula import reduced
from ionwright.chemistry.nomenclature import ion_of_name
from ionwright.chemistry.solubility import nonexistence_reason, solubility
from ionwright.chemistry.species import read_species

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["compound_of_typed_ions", "ion_text"]

_MAX_IONS: Final = 6
_SIGNED: Final = re.compile(r"[+⁺\-⁻−–]|\bions?\b", re.IGNORECASE)
_SEPARATOR: Final = re.compile(r"\s*[,;&]\s*|\s+(?:and|with|plus|\+)\s+", re.IGNORECASE)
_SIGN: Final = "+⁺\\-⁻−–"
_AFTER_SIGN: Final = re.compile(rf"(?<=[{_SIGN}])\s*(?=\d*[A-Z\[])")
_AFTER_SIGN_AND_NUMBER: Final = re.compile(rf"(?<=[{_SIGN}]\d)\s*(?=[A-Z\[])|(?<=[{_SIGN}])\s*(?=[A-Z\[])")
_COEFFICIENT: Final = re.compile(r"^(\d{1,2})(?=[A-Z\[])")
_SUPERSCRIPT: Final = str.maketrans("0123456789+-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻")

Counted = list[tuple[Ion, int]]


def ion_text(one: Ion) -> str:
    """Return the formula of an ion with its charge raised: ``"SO4²⁻"``.

    Parameters
    ----------
    one
        Any ion.
    """
    formula, _, charge = one.species.ascii.rpartition("^")
    return formula + charge.translate(_SUPERSCRIPT)


def compound_of_typed_ions(text: str) -> Compound | None:
    """Return the salt that a string of ions means; None if the text is no string of known ions.

    Parameters
    ----------
    text
        Such as ``"Na+Cl-"``, ``"Cu²⁺ SO₄²⁻"`` or ``"sodium ions and chloride ions"``.

    Raises
    ------
    CellRefused
        The ions carry charge of one sign, or their charges do not cancel (``charges-do-not-cancel``).
    """
    if _SIGNED.search(text) is None:
        return None
    found = [ions for ions in _readings(text) if ions]
    if not found:
        return None
    ions = next((ions for ions in found if _charge(ions) == 0), found[0])
    positive = list(dict.fromkeys(one for one, _ in ions if one.charge > 0))
    negative = list(dict.fromkeys(one for one, _ in ions if one.charge < 0))
    if not positive or not negative:
        raise _alone(positive or negative)
    if len(positive) > 2 or len(negative) > 1:
        return None
    if _charge(ions):
        raise CellRefused(
            "charges-do-not-cancel",
            f"The charges of {' and '.join(map(ion_text, (*positive, *negative)))} do not cancel.",
            remedy=f"Together they make {compound_of(*positive, *negative).formula}.",
        )
    return compound_from(reduced(ions))


def _charge(ions: Counted) -> int:
    return sum(one.charge * count for one, count in ions)


def _readings(text: str) -> Iterator[Counted]:
    """The ions, with a number after a sign taken as a coefficient of the next ion, then as the charge of the last."""
    for boundary in (_AFTER_SIGN, _AFTER_SIGN_AND_NUMBER):
        pieces = [piece for part in _SEPARATOR.split(text) for piece in boundary.split(part)]
        if len(pieces) <= _MAX_IONS:
            yield _all_ions(pieces)


def _all_ions(pieces: list[str]) -> Counted:
    """Every piece as an ion with its coefficient; empty if one is none."""
    ions = []
    for piece in pieces:
        match = _COEFFICIENT.match(piece)
        one = _ion(piece[match.end() :] if match else piece)
        if one is None:
            return []
        ions.append((one, int(match[1]) if match else 1))
    return ions


def _ion(piece: str) -> Ion | None:
    named = ion_of_name(piece)
    if named is not None:
        return named
    try:
        return IONS.get(read_species(piece, IONS))
    except FormulaError:
        return None


def _alone(ions: list[Ion]) -> CellRefused:
    names = " and ".join(f"{one.name}s" for one in ions)
    salts = [salt.formula for one in ions if (salt := _salt(one)) is not None]
    kind = (
        "an acid"
        if ions[0].species.formula == "H"
        else "an alkali"
        if ions[0].species.formula == "OH"
        else "a salt"
    )
    return CellRefused(
        "charges-do-not-cancel",
        f"A solution cannot hold {names} alone: ions of the other charge must stand beside them.",
        remedy=f"Name {kind}, such as {salts[0]}." if salts else "Name a substance in which the ion lasts.",
    )


def _salt(one: Ion) -> Compound | None:
    """A soluble salt of an ion."""
    if one.unstable:
        return None
    for partner in map(ion, ("SO4^2-", "Cl^-", "NO3^-") if one.charge > 0 else ("Na^+", "K^+")):
        cation, anion = (one, partner) if one.charge > 0 else (partner, one)
        if solubility(cation.species, anion.species).category == "soluble":
            salt = compound_of(cation, anion)
            if not nonexistence_reason(salt):
                return salt
    return None
