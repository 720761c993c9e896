"""What melting gives: the ions of a melt, or the reason why there is no melt."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.ionic_compound import WATER, Compound
from ionwright.chemistry.melt import Melt, dissolved_in, flux_note, is_molten_only_in_mixture, melt_of

if TYPE_CHECKING:
    from ionwright.chemistry.ion import Ion

__all__ = ["Melted", "melted"]

_ALUMINA: Final = "Al2O3"
_IN_CRYOLITE_C: Final = 960.0
_ALUMINA_ASSUMPTION: Final = (
    "Aluminium oxide melts only above 2000 °C, so it is taken to be dissolved in molten cryolite at "
    "about 960 °C."
)


class Melted(NamedTuple):
    """The ions of a melt, with what must be said about it."""

    ions: tuple[Ion, ...]
    melting_point_C: float | None
    assumptions: tuple[str, ...]
    notes: tuple[str, ...]


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


@lru_cache(maxsize=4096)
def melted(compounds: tuple[Compound, ...]) -> Melted:
    """Return the melt of one compound, or of several together.

    Parameters
    ----------
    compounds
        What is melted.

    Raises
    ------
    CellRefused
        One of them gives no melt of ions; ``where`` names it.
    """
    notes = []
    for index, one in enumerate(compounds):
        others = compounds[:index] + compounds[index + 1 :]
        try:
            notes.append(_check(one, others))
        except CellRefused as fault:
            raise fault.within(f"electrolyte/{index}/substance") from None
    note, working_C = flux_note(compounds) if len(compounds) > 1 else ("", None)
    assumptions: tuple[str, ...] = ()
    if len(compounds) == 1:
        working_C = melt_of(compounds[0]).melts_C
        if compounds[0].formula == _ALUMINA:
            working_C = _IN_CRYOLITE_C
            assumptions = (_ALUMINA_ASSUMPTION,)
    ions = dict.fromkeys(one for c in compounds for one, _ in c.lattice_ions)
    ordered = tuple(sorted(ions, key=lambda one: one.charge < 0))
    if note:
        notes = [note]  # what the salts do alone does not hold in the mixture
    return Melted(ordered, working_C, assumptions, tuple(dict.fromkeys(one for one in notes if one)))


def _check_solvent(compound: Compound, melt: Melt, others: tuple[Compound, ...]) -> None:
    formulas = dissolved_in(compound)
    if not any(one.formula in formulas for one in others):
        raise CellRefused(
            "not-an-electrolyte",
            f"{melt.note} Alone it is only the solvent.",
            remedy=f"Ask for {formulas[0]}, which is dissolved in it."
            if formulas
            else "Add what it dissolves.",
        )


def _check(compound: Compound, others: tuple[Compound, ...]) -> str:
    """Refuse what gives no melt of ions; return the note that goes with it."""
    name = _capital(compound.name)
    if compound == WATER:
        raise CellRefused(
            "no-melt-of-water",
            "Water is no melt of ions: molten ice is just water, which is made of molecules and hardly conducts.",
            remedy="Ask for water, or dilute sulfuric acid, in the state aqueous.",
        )
    if compound.role in ("acid", "molecule") or compound.strength == "weak":
        raise CellRefused(
            "molecular-melt",
            f"{name} without water is made of molecules, not ions, so it is no molten electrolyte.",
            remedy="Dissolve it in water: the state is then aqueous.",
        )
    if compound.hydrate_water:
        raise CellRefused(
            "decomposes-before-melting",
            f"{name} loses its water of crystallisation when it is heated, so the hydrate gives no melt of its own.",
            remedy=f"Ask for the anhydrous salt, {compound.anhydrous_formula}.",
        )
    melt = melt_of(compound)
    if melt.solvent_only:
        _check_solvent(compound, melt, others)
    if melt.beyond:
        raise CellRefused(
            "not-an-electrolyte",
            f"{name} melts and conducts, but it is no electrolyte for a school: {melt.beyond}.",
            remedy="Ask for a melt of simple ions, such as molten PbBr2 or NaCl.",
        )
    if melt.outcome == "melts":
        return melt.note
    if is_molten_only_in_mixture(compound, others):
        return ""
    if melt.outcome == "molecular":
        raise CellRefused(
            "molecular-melt",
            f"Liquid {compound.name} hardly conducts. {melt.tells}",
            remedy="Use a solution in water, or a mixture with a salt such as NaCl.",
        )
    raise CellRefused(
        "decomposes-before-melting",
        f"{name} gives no melt that could be electrolysed: on heating it {melt.tells}.",
        remedy="Use a solution in water if it dissolves, or the chloride of the metal.",
    )
