"""What happens when solutions meet: neutralisation, reactions that destroy ions, precipitates."""

from __future__ import annotations

from dataclasses import dataclass
from math import log10
from typing import Final, NamedTuple

from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.in_excess import in_excess
from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, compound_of
from ionwright.chemistry.proton_transfer import Amounts, settled
from ionwright.chemistry.solubility import clash_reason, nonexistence_reason, solubility

__all__ = ["Mixed", "Solute", "after_mixing", "check_formed", "check_given_ph"]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")
_OXIDE: Final = ion("O^2-")
_PH_TOLERANCE: Final = 2.0
"""How far a given pH may lie from the one that acid or alkali makes [1]: measured values differ from plain theory."""


@dataclass(frozen=True, slots=True)
class Solute:
    """One substance in a mixture: what it is, how much of it [mol/dm3], and the ions of one formula unit."""

    compound: Compound
    amount: float | None
    ions: tuple[tuple[Ion, int], ...]


class Mixed(NamedTuple):
    """The ions after mixing, with what must be said; `firm` are the ions that weak acids and ammonia do not give."""

    amounts: Amounts
    assumptions: tuple[str, ...]
    firm: tuple[Ion, ...]
    weak: tuple[Compound, ...]


def after_mixing(solutes: tuple[Solute, ...]) -> Mixed:
    """Return the ions of a mixture once acids and alkalis have reacted with each other.

    Parameters
    ----------
    solutes
        Two substances or more.

    Raises
    ------
    CellRefused
        They destroy each other (``does-not-exist``), a solid settles out (``precipitates``), or an acid and an alkali
        meet in unknown amounts (``bad-concentration``).
    """
    real = [(index, one) for index, one in enumerate(solutes) if one.compound is not WATER and one.ions]
    reacted = settled(one for _, one in real)
    amounts = reacted.amounts
    assumptions = list(reacted.assumptions)
    for position, (_, first) in enumerate(real):
        for index, second in real[position + 1 :]:
            assumptions += _check_pair(first, second, amounts, index)
    for one in reacted.formed:
        if one.charge < 0:
            assumptions += check_formed(one, amounts, real[-1][0])
    return Mixed(amounts, tuple(assumptions), reacted.firm, reacted.weak)


def _check_pair(first: Solute, second: Solute, amounts: Amounts, index: int) -> list[str]:
    said: list[str] = []
    for one, other in ((first, second), (second, first)):
        meeting = _Meeting(one.compound, other.compound, amounts, index)
        for cation, _ in one.ions:
            if cation.charge > 0 and cation in amounts:
                for anion, _ in other.ions:
                    if anion.charge < 0 and anion in amounts:
                        said += _check_ions(cation, anion, meeting)
    for ion_here, _ in first.ions:
        for ion_there, _ in second.ions:
            if ion_here.charge * ion_there.charge > 0:
                _check_clash(ion_here, ion_there, index)
    return said


class _Meeting(NamedTuple):
    """Where two ions meet: who brings the positive and who the negative one, in what, and the place to blame."""

    salt: Compound
    giver: Compound
    amounts: Amounts
    place: int


def _check_clash(one: Ion, other: Ion, index: int) -> None:
    reason = clash_reason(one.species, other.species)
    if reason:
        raise CellRefused(
            "does-not-exist",
            f"The {one.name} and the {other.name} cannot stay in one solution: {reason}.",
            where=f"electrolyte/{index}/substance",
            remedy="Leave one of the two out.",
        )


def _check_ions(cation: Ion, anion: Ion, meeting: _Meeting) -> list[str]:
    _, giver, amounts, index = meeting
    if cation is _HYDROGEN:
        if giver.role != "acid":
            _check_clash(cation, anion, index)
        return []
    _check_clash(cation, anion, index)
    solid = compound_of(cation, anion)
    if solid.strength == "weak":
        return []
    if anion is _HYDROXIDE:
        solid = solid if not nonexistence_reason(solid) else compound_of(cation, _OXIDE)
    elif reason := nonexistence_reason(solid):
        raise CellRefused(
            "does-not-exist",
            f"The {cation.name} and the {anion.name} cannot stay in one solution. {reason}",
            where=f"electrolyte/{index}/substance",
            remedy="Leave one of the two out.",
        )
    try:
        return _check_precipitate(cation, anion, solid, amounts, index)
    except CellRefused as fault:
        again = in_excess(cation, anion, meeting.salt, giver)
        if again is not None:
            fault.detail = f"{fault.detail} {again.detail}"
            fault.remedy = again.remedy
        raise


def _check_precipitate(cation: Ion, anion: Ion, solid: Compound, amounts: Amounts, index: int) -> list[str]:
    found = solubility(cation.species, anion.species)
    if found.category == "soluble":
        return []
    product = _ion_product(cation, anion, amounts)
    if product is not None and found.Ksp is not None:
        if product <= found.Ksp:
            return []
    elif found.category == "sparing":
        name = solid.name[:1].upper() + solid.name[1:]
        return [
            f"{name} dissolves only a little: the solution is taken as dilute enough for none to settle out."
        ]
    raise CellRefused(
        "precipitates",
        f"The {cation.name} and the {anion.name} settle out together as solid {solid.name}, {solid.formula}, so they "
        "do not both stay in the solution.",
        where=f"electrolyte/{index}/substance",
        remedy=f"Take salts that share an ion, or another salt in place of the one that brings the {anion.name}.",
    )


def _ion_product(cation: Ion, anion: Ion, amounts: Amounts) -> float | None:
    """Product of the concentrations, each to the power of its number in the formula; None if one is not known."""
    first, second = amounts.get(cation), amounts.get(anion)
    if first is None or second is None:
        return None
    numbers = dict(compound_of(cation, anion).lattice_ions)
    return float(first ** numbers[cation] * second ** numbers[anion])


def check_formed(formed: Ion, amounts: Amounts, place: int = 0) -> list[str]:
    """Check an ion that formed after mixing against the others; returns what must be said.

    Parameters
    ----------
    formed
        The new ion.
    amounts
        All the ions that are there.
    place
        Number of the ingredient to blame.

    Raises
    ------
    CellRefused
        A solid settles out (``precipitates``), or the ion and another destroy each other (``does-not-exist``).
    """
    said: list[str] = []
    for one in amounts:
        if one is not formed:
            _check_clash(formed, one, place)
        if one.charge * formed.charge < 0 and one is not _HYDROGEN:
            said += _check_precipitate(one, formed, compound_of(one, formed), amounts, place)
    return said


def check_given_ph(amounts: Amounts, ph: float, *, of_acid: bool) -> None:
    """Refuse a pH that the ions would not survive, or that acid or alkali among them contradicts.

    Parameters
    ----------
    amounts
        The ions that the substances give.
    ph
        The pH that was given [1].
    of_acid
        Whether an acid is among the substances.

    Raises
    ------
    CellRefused
        Acid or alkali contradicts it (``out-of-range``), a hydroxide settles out (``precipitates``), or acid destroys
        an ion (``does-not-exist``).
    """
    _check_contradiction(amounts, ph)
    if ph > 8:
        with_alkali: Amounts = {**amounts, _HYDROXIDE: 10.0 ** (ph - 14)}
        for one in amounts:
            if one.is_metal:
                _check_hydroxide(one, with_alkali)
    elif ph < 6 and not of_acid:
        for one in amounts:
            reason = clash_reason(_HYDROGEN.species, one.species)
            if reason:
                raise CellRefused(
                    "does-not-exist",
                    f"At pH {ph:g} the {one.name} does not last: {reason}.",
                    where="ph",
                    remedy="Give a higher pH, or leave it out.",
                )


def _check_contradiction(amounts: Amounts, ph: float) -> None:
    for one, kind, side, own in (
        (_HYDROGEN, "acid", "acidic", 0.0),
        (_HYDROXIDE, "alkali", "alkaline", 14.0),
    ):
        if one not in amounts:
            continue
        amount = amounts[one]
        expected = abs(own + log10(amount)) if amount else 7.0
        far = ph > 7 if kind == "acid" else ph < 7
        if far or (amount and abs(ph - expected) > _PH_TOLERANCE):
            makes = f"a solution of pH about {expected:.0f}" if amount else f"an {side} solution"
            raise CellRefused(
                "out-of-range",
                f"A pH of {ph:g} contradicts the {kind}: it makes {makes}.",
                where="ph",
                remedy=f"Leave the pH out, or leave the {kind} out.",
            )


def _check_hydroxide(one: Ion, amounts: Amounts) -> None:
    solid = compound_of(one, _HYDROXIDE)
    if nonexistence_reason(solid):
        solid = compound_of(one, _OXIDE)
    try:
        _check_precipitate(one, _HYDROXIDE, solid, amounts, 0)
    except CellRefused as fault:
        fault.where = "ph"
        fault.remedy = "Give a lower pH, or leave it out."
        raise
