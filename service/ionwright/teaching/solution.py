"""What happens to the electrolyte, told: ions, pH, colour, and what it becomes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from ionwright.chemistry.compound import compound_of
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import MOLTEN
from ionwright.chemistry.notation import species_text
from ionwright.curricula.wording import ions, listed, product, sentence_start
from ionwright.teaching.ion_change import NO_PH, IonChange, Solid, ion_change

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation
    from ionwright.chemistry.species import Species

COLOURLESS = "colourless"
# Products that stay dissolved and colour the solution.
_COLOURED_PRODUCTS = {"Br2": "orange", "I2": "brown"}


@dataclass(frozen=True, slots=True, eq=False)
class SolutionAccount:
    """The electrolyte as the current flows; compared by identity.

    Parameters
    ----------
    removed, formed, remaining
        Ions used up, made, and left alone.
    precipitates
        Names of solids that form where new ions meet others.
    ph
        ``"rises"``, ``"falls"``, ``"unchanged"`` or, for a melt, ``"does not apply"``.
    colour, becomes, summary
        In words.
    """

    removed: tuple[Species, ...]
    formed: tuple[Species, ...]
    remaining: tuple[Species, ...]
    precipitates: tuple[str, ...]
    ph: str
    colour: str
    becomes: str
    summary: str


def solution_account(cell: Cell, overall: Equation) -> SolutionAccount:
    """What the overall equation does to the electrolyte of a cell."""
    return _account(cell.own_ions, cell.medium, cell.electrolyte.solution_name, overall)


@lru_cache(maxsize=4096)
def _account(own: tuple[Species, ...], medium: str, name: str, overall: Equation) -> SolutionAccount:
    change = ion_change(own, medium, overall)
    solids = change.solids()
    if medium == MOLTEN:
        becomes, colour = f"{'less ' if change.removed else ''}molten {name}", NO_PH
        summary = _melt_summary(change)
    else:
        becomes, colour = _becomes(change, solids, name), _colour(change, solids, overall)
        summary = _summary(change, solids, becomes, overall)
    return SolutionAccount(
        removed=change.removed,
        formed=change.formed,
        remaining=change.remaining,
        precipitates=tuple(dict.fromkeys(solid.name for solid in solids)),
        ph=change.ph(solids),
        colour=colour,
        becomes=becomes,
        summary=summary,
    )


def _tint(kind: Species) -> str:
    """Colour of an ion in water without the table's remarks in brackets; empty for a colourless one."""
    known = IONS.get(kind)
    short = known.colour.partition("(")[0].strip() if known else COLOURLESS
    return "" if short.startswith(COLOURLESS) else short


def _colour(change: IonChange, solids: tuple[Solid, ...], overall: Equation) -> str:
    settled = {solid.cation for solid in solids}
    removed = change.removed
    formed = [kind for kind in change.formed if kind not in settled]
    parts = [f"the {_tint(kind)} colour of the {ions(kind)} fades" for kind in removed if _tint(kind)]
    parts += [
        f"turns {_tint(kind)} with {ions(kind)}" for kind in formed if _tint(kind) and kind not in change.own
    ]
    dyes = [
        _COLOURED_PRODUCTS[kind.formula] for kind in overall.products if kind.formula in _COLOURED_PRODUCTS
    ]
    parts += [f"turns {dye} round the anode" for dye in dyes]
    stays = dict.fromkeys(_tint(kind) for kind in change.remaining if _tint(kind))
    if stays:
        parts.append(f"stays {listed(stays)}")
    return ", ".join(parts) if parts else f"stays {COLOURLESS}"


def _becomes(change: IonChange, solids: tuple[Solid, ...], name: str) -> str:
    same = _solution_name(name)
    if not change.removed and not change.formed:
        if same == "water":
            return same
        return f"more concentrated {same}" if change.uses_water else f"unchanged {same}"
    formed = change.formed
    gone = {solid.cation for solid in solids} | {solid.anion for solid in solids}
    left = dict.fromkeys((*change.remaining, *(kind for kind in formed if kind not in gone)))
    cations = [kind for kind in left if kind.charge > 0]
    anions = [kind for kind in left if kind.charge < 0]
    if not anions and any(kind in formed for kind in cations):
        # not all of what leaves can go: the new ions need it beside them
        anions = [kind for kind in change.removed if kind.charge < 0]
    solid = f" with a precipitate of {listed(dict.fromkeys(one.name for one in solids))}" if solids else ""
    if not left:
        return f"more dilute {same}, and in the end water{solid}"
    if not cations or not anions:
        return f"more dilute {same}{solid}"
    if len(cations) == len(anions) == 1:
        return f"{_solution_name(compound_of(IONS[cations[0]], IONS[anions[0]]).name)}{solid}"
    return f"a solution of {listed(species_text(kind) for kind in (*cations, *anions))}{solid}"


def _solution_name(name: str) -> str:
    return name if name.endswith((" acid", "water")) else f"{name} solution"


def _summary(change: IonChange, solids: tuple[Solid, ...], becomes: str, overall: Equation) -> str:
    if not change.removed and not change.formed:
        return _summary_without_change(change, becomes, overall)
    changed = _changed(change)
    leaving = [kind for kind in change.removed if kind not in changed]
    parts = [
        *([f"{_subject(leaving)} leave the solution"] if leaving else []),
        *(f"{ions(old)} are changed to {ions(new)}" for old, new in changed.items()),
        *_arrivals(tuple(kind for kind in change.formed if kind not in changed.values())),
        *([f"{_subject(change.remaining)} stay"] if change.remaining else []),
    ]
    sentences = [f"{sentence_start('; '.join(parts))}."]
    if solids:
        named = listed(dict.fromkeys(f"{solid.look} {solid.name}".strip() for solid in solids))
        sentences.append(f"Where the new ions meet the others, {named} settles out as a solid.")
    sentences.append(f"The electrolyte becomes {becomes}.")
    return " ".join(sentences)


def _changed(change: IonChange) -> dict[Species, Species]:
    """Ions that only change their charge, with what they become."""
    pairs = ((old, new) for old in change.removed for new in change.formed)
    return {old: new for old, new in pairs if old.atoms == new.atoms}


def _summary_without_change(change: IonChange, becomes: str, overall: Equation) -> str:
    if change.uses_water and becomes == "water":
        return "The water is slowly used up."
    if change.uses_water:
        stay = f"{sentence_start(_subject(change.remaining))} stay. " if change.remaining else ""
        return f"Only water is used up. {stay}The electrolyte becomes {becomes}."
    carried = product(overall.products[0])
    return (
        f"{sentence_start(carried)} is carried from the anode to the cathode: for every ion discharged another forms, "
        "so the solution does not change."
    )


def _melt_summary(change: IonChange) -> str:
    stay = f" {sentence_start(_subject(change.remaining))} stay in the melt." if change.remaining else ""
    made = f" {sentence_start(_subject(change.formed))} are made." if change.formed else ""
    if change.removed:
        return (
            f"{sentence_start(_subject(change.removed))} leave the melt, which is slowly used up.{made}{stay}"
        )
    return f"The melt does not change.{stay}"


def _subject(kinds: Iterable[Species]) -> str:
    return listed(ions(kind) for kind in kinds)


def _arrivals(formed: tuple[Species, ...]) -> list[str]:
    of_water = [kind for kind in formed if kind in {HYDROGEN_ION, HYDROXIDE}]
    made = [kind for kind in formed if kind not in of_water]
    left = [f"{_subject(of_water)} from water are left behind"] if of_water else []
    return left + ([f"{_subject(made)} are made"] if made else [])
