"""What one substance gives to water: its ions, or the reason why it gives none."""

from __future__ import annotations

from functools import lru_cache
from math import sqrt
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.faults import CellRefused, UnknownSpecies
from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, compound_of
from ionwright.chemistry.melt import melt_of
from ionwright.chemistry.solubility import SALTS, STRONGEST, Solubility, solubility

if TYPE_CHECKING:
    from ionwright.chemistry.concentration import Concentration

__all__ = ["DissolvedIons", "check_amount", "dissolved_ions", "weak_share"]

_HYDROGEN: Final = ion("H^+")
_OXIDE: Final = ion("O^2-")
_HYDROXIDE: Final = ion("OH^-")
_PEROXIDE: Final = ion("O2^2-")
_HYDRIDE: Final = ion("H^-")
_PURE_WATER: Final = (
    "Pure water hardly conducts, so a little dilute acid, or a salt such as sodium sulfate, is taken to be added to "
    "carry the current."
)
_LENIENCE: Final = 1.2
"""A salt is refused only if it clearly exceeds what dissolves: molality and concentration differ a little."""


class DissolvedIons(NamedTuple):
    """The ions of one formula unit in water, with what must be said about them."""

    ions: tuple[tuple[Ion, int], ...]
    assumptions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


@lru_cache(maxsize=8192)
def dissolved_ions(compound: Compound) -> DissolvedIons:
    """Return the ions that a substance gives to water.

    Parameters
    ----------
    compound
        Any compound of known ions that exists.

    Raises
    ------
    CellRefused
        It does not dissolve, reacts with water to something else, or dissolves as molecules.
    UnknownSpecies
        It would be an acid that schools do not know.
    """
    if compound == WATER:
        return DissolvedIons(compound.ions, (_PURE_WATER,))
    if compound.role == "molecule":
        return DissolvedIons(())
    _check_reaction_with_water(compound)
    if compound.role == "acid":
        return _acid(compound)
    assumptions = []
    if compound.role == "oxide":
        assumptions.append(_oxide_in_water(compound))
    notes = _check_solubility(compound)
    for one, _ in compound.ions:
        if one.unstable:
            raise CellRefused(
                "does-not-exist",
                f"{_capital(compound.name)} does not last in water. {one.unstable}",
                remedy="Choose a salt of the ion that lasts in water.",
            )
    if compound.strength == "weak":
        assumptions.append(_weak(compound))
    return DissolvedIons(compound.ions, tuple(assumptions), notes)


def _acid(compound: Compound) -> DissolvedIons:
    anion = compound.lattice_ions[-1][0]
    if not anion.acid_name:
        raise UnknownSpecies(
            "unknown-substance",
            f"{compound.formula} is not an acid that the tables know.",
            remedy=f"Take a salt of the {anion.name}, such as {compound_of(ion('Na^+'), anion).formula}.",
        )
    return DissolvedIons(compound.ions, (_weak(compound),) if compound.strength == "weak" else ())


def _weak(compound: Compound) -> str:
    kind = "acid" if compound.role == "acid" else "alkali"
    return f"{_capital(compound.name)} is a weak {kind}: only a small part of it is split into ions."


def _oxide_in_water(compound: Compound) -> str:
    metals = [one for one, _ in compound.lattice_ions if one.charge > 0]
    hydroxide = compound_of(metals[0], _HYDROXIDE)
    return f"{_capital(compound.name)} reacts with water and becomes {hydroxide.name}, whose ions are taken."


_WITH_WATER: Final = {
    _HYDRIDE: "reacts at once with water: hydrogen escapes and the metal hydroxide is left",
    _PEROXIDE: "reacts with water and gives the metal hydroxide, hydrogen peroxide and oxygen",
    ion("N^3-"): "reacts with water and gives the metal hydroxide and ammonia",
}


def _check_reaction_with_water(compound: Compound) -> None:
    for one, _ in compound.lattice_ions:
        if one in _WITH_WATER:
            raise CellRefused(
                "does-not-exist",
                f"There is no solution of {compound.name} in water: it {_WITH_WATER[one]}.",
                remedy="Ask for the hydroxide, or for the melt if there is one.",
            )


def _check_solubility(compound: Compound) -> tuple[str, ...]:
    found = _solubility_of(compound)
    if found.molecular:
        raise CellRefused(
            "non-electrolyte",
            f"{_capital(compound.name)} dissolves in water, but mostly as molecules, so it hardly conducts.",
            remedy="Choose a salt that splits into ions, such as a nitrate.",
        )
    if found.category in ("insoluble", "very-slight"):
        how = "does not dissolve" if found.category == "insoluble" else "dissolves far too little"
        raise CellRefused(
            "insoluble",
            f"{_capital(compound.name)} {how} in water, so too few ions carry a current. {found.reason}",
            remedy=_soluble_remedy(compound),
        )
    notes = []
    if found.category == "sparing":
        notes.append(f"{_capital(compound.name)} dissolves only a little, so its solution conducts weakly.")
    return tuple(notes)


def _solubility_of(compound: Compound) -> Solubility:
    """The solubility of the least soluble pair of its ions, those of the solid before those in water."""
    order = ("insoluble", "very-slight", "sparing", "soluble")
    pairs = [
        solubility(cation.species, anion.species)
        for ions in dict.fromkeys((compound.lattice_ions, compound.ions))
        for cation, _ in ions
        if cation.charge > 0 and cation is not _HYDROGEN
        for anion, _ in ions
        if anion.charge < 0
    ]
    return min(pairs, key=lambda one: order.index(one.category))


def _soluble_remedy(compound: Compound) -> str:
    melts = not compound.hydrate_water and melt_of(compound).outcome == "melts"
    return _soluble_salt(compound) + (" Or ask for it molten." if melts else "")


def _soluble_salt(compound: Compound) -> str:
    metals = [one for one, _ in compound.lattice_ions if one.is_metal and not one.unstable]
    if not metals:
        return "Choose a soluble salt."
    for name in ("SO4^2-", "Cl^-", "NO3^-"):
        if solubility(metals[0].species, ion(name).species).category == "soluble":
            other = compound_of(metals[0], ion(name))
            return f"Take a soluble salt, such as {other.name}, {other.formula}."
    return "Choose a soluble salt."


def check_amount(compound: Compound, concentration: Concentration | None) -> None:
    """Refuse a concentration that clearly exceeds what dissolves.

    Parameters
    ----------
    compound
        What is dissolved.
    concentration
        How much; None passes.

    Raises
    ------
    CellRefused
        More is asked for than water can hold (``bad-concentration``).
    """
    if concentration is None or concentration.mol_dm3 is None:
        return
    most = saturated_mol_kg(compound)
    lenience = 1.0 if compound.formula in STRONGEST else _LENIENCE
    if most is not None and concentration.mol_dm3 > lenience * most:
        raise CellRefused(
            "bad-concentration",
            f"So much {compound.name} does not dissolve: the strongest solution holds about {most:.3g} mol/dm³.",
            remedy=f"Give a concentration of at most {most:.3g} mol/dm³.",
        )


def saturated_mol_kg(compound: Compound) -> float | None:
    """Return the most that dissolves of a substance at about 25 °C [mol/kg of water]; None without a figure.

    Parameters
    ----------
    compound
        The substance; an oxide counts as its hydroxide.
    """
    formula = compound.anhydrous_formula
    if compound.role == "oxide":
        formula = compound_of(compound.lattice_ions[0][0], _HYDROXIDE).formula
    row = SALTS.get(formula)
    if row is None and formula in STRONGEST:
        return STRONGEST[formula]
    return None if row is None else row.solubility.saturated_mol_kg


def weak_share(compound: Compound, amount: float, common: float = 0.0) -> float:
    """Return the concentration of ions that a weak acid or alkali gives [mol/dm3].

    Parameters
    ----------
    compound
        A weak acid or alkali with a pKa (or pKb).
    amount
        What was dissolved [mol/dm3].
    common
        How much of one of its ions another substance brings [mol/dm3]; it holds the ionisation back.

    Notes
    -----
    First ionisation only: x (x + common) is K (c - x).
    """
    if compound.pKa is None:
        return amount
    constant: float = 10.0**-compound.pKa
    linear = constant + common
    root = sqrt(linear * linear + 4 * constant * amount)
    return 2 * constant * amount / (linear + root)
