"""Solids that settle out at first and dissolve again in an excess of ammonia, alkali or cyanide, as complex ions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import Compound, compound_of
from ionwright.chemistry.solubility import solubility
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["Excess", "in_excess"]

_LIGAND_NAMES: Final = {"NH3": "ammonia", "OH^-": "alkali", "CN^-": "cyanide"}
_COMPLEXES: Final[Mapping[tuple[Ion, str], Ion]] = {
    (ion(row["cation"]), row["ligand"]): ion(row["complex"]) for row in read_table("reactions.toml")["excess"]
}


class Excess(NamedTuple):
    """What an excess does, and what to ask for instead; two sentences."""

    detail: str
    remedy: str


def in_excess(cation: Ion, anion: Ion, salt: Compound, giver: Compound) -> Excess | None:
    """Return what an excess of the precipitant does to a solid; None if it does nothing that the tables know.

    Parameters
    ----------
    cation, anion
        The ions that settle out together.
    salt
        The substance that brings the positive ion.
    giver
        The substance that brings the negative ion; ammonia counts as itself, not as a hydroxide.
    """
    ligand = giver.formula if giver.formula in _LIGAND_NAMES else anion.species.ascii
    held = _COMPLEXES.get((cation, ligand))
    if held is None:
        return None
    partners = salt.lattice_ions if held.charge > 0 else giver.lattice_ions
    partner = next((one for one, _ in partners if one.charge * held.charge < 0), None)
    if partner is None or _stays_solid(held, partner):
        return None
    called = _LIGAND_NAMES[ligand]
    return Excess(
        f"In an excess of {called} the solid dissolves again, as {held.stem} ions.",
        f"If the solution with an excess of {called} is meant, ask for {_bracketed(held, partner)}.",
    )


def _stays_solid(held: Ion, partner: Ion) -> bool:
    cation, anion = (held, partner) if held.charge > 0 else (partner, held)
    return solubility(cation.species, anion.species).category != "soluble"


def _bracketed(held: Ion, partner: Ion) -> str:
    """The formula of the complex salt, with the square brackets that schools write round every complex ion."""
    formula, inside = compound_of(held, partner).formula, held.species.formula
    has_brackets = inside.startswith("[") or f"[{inside}]" in formula
    return formula if has_brackets else formula.replace(inside, f"[{inside}]", 1)
