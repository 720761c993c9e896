"""Names a solution or a melt as it stands after dissolving, mixing and melting."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, compound_from, compound_of
from ionwright.chemistry.ionic_formula import IonicUnit

if TYPE_CHECKING:
    from collections.abc import Iterable

__all__ = ["melt_name", "solution_name"]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")


def _listed(names: Iterable[str]) -> str:
    *first, last = dict.fromkeys(names)
    return f"{', '.join(first)} and {last}" if first else last


def _anhydrous_name(compound: Compound) -> str:
    return compound_from(IonicUnit(compound.lattice_ions)).name if compound.hydrate_water else compound.name


def _dissolved_name(compound: Compound) -> str:
    """The name of a substance once it is in water: hydrates lose their water, oxides are hydroxides."""
    if compound.role == "oxide":
        return compound_of(compound.lattice_ions[0][0], _HYDROXIDE).name
    return _anhydrous_name(compound)


@lru_cache(maxsize=8192)
def melt_name(compounds: tuple[Compound, ...]) -> str:
    """Return the name of a melt, without the word "molten".

    Parameters
    ----------
    compounds
        What was melted, one or several.
    """
    return _listed(map(_anhydrous_name, compounds))


@lru_cache(maxsize=8192)
def solution_name(
    compounds: tuple[Compound, ...], left: tuple[Ion, ...], weak: tuple[Compound, ...] = ()
) -> str:
    """Return the name of a solution, without the word "solution".

    Parameters
    ----------
    compounds
        What was dissolved, one or several.
    left
        The ions that are there after mixing, without the few that weak acids and ammonia give.
    weak
        Weak acids and ammonia that are there after mixing.

    Returns
    -------
    str
        Such as ``"copper(II) sulfate"``, ``"hydrochloric acid"``, ``"sodium hydroxide and sodium chloride"`` or
        ``"water"``.
    """
    real = [one for one in compounds if one != WATER and one.ions]
    if len(real) == 1 and (real[0].role == "acid" or all(one in left for one, _ in real[0].ions)):
        return _dissolved_name(real[0])
    if not left and not weak:
        return WATER.name
    if len(left) == 2 and not weak and left[0].charge * left[1].charge < 0:
        return compound_of(*left).name
    return _listed([*_survivors(real, left, weak), *(one.name for one in weak)])


def _survivors(compounds: list[Compound], left: tuple[Ion, ...], weak: tuple[Compound, ...]) -> list[str]:
    """The substances that lost no ion, then the salts that the ions of the others make."""
    salts = [one for one in compounds if one not in weak and all(given in left for given, _ in one.ions)]
    whole = [one for one in compounds if one in salts or one in weak]
    names = [_dissolved_name(one) for one in whole]
    held = {given for one in salts for given, _ in one.ions}
    loose = [one for one in left if one not in held]
    for one in loose:
        partner = _partner(one, loose, left)
        if partner is not None:
            names.append(compound_of(one, partner).name)
    return names


def _partner(one: Ion, loose: list[Ion], left: tuple[Ion, ...]) -> Ion | None:
    """An ion of the other charge, rather one that lost its own partner, and no hydrogen or hydroxide ion."""
    return next(
        (
            other
            for other in (*loose, *left)
            if other.charge * one.charge < 0 and other is not _HYDROGEN and other is not _HYDROXIDE
        ),
        None,
    )
