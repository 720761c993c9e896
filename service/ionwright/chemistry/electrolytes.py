"""Pick-lists: the electrolytes that the tables can name, and a search among them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from ionwright.chemistry.compound import Compound, compound_of, read_substance
from ionwright.chemistry.dissolving import dissolved_ions
from ionwright.chemistry.ion import IONS, Ion, ion, stem_without_numeral
from ionwright.chemistry.melting import melted
from ionwright.chemistry.nomenclature import normalised_name
from ionwright.chemistry.solubility import SALTS, Category, nonexistence_reason, solubility
from ionwright.chemistry.tables import read_table
from ionwright.errors import IonwrightError

__all__ = ["KnownElectrolyte", "known_electrolytes", "search_electrolytes"]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")
# The anions of a school's shelf; others are understood when they are named, but would make the list unwieldy.
_SHELF: Final = tuple(
    map(
        ion,
        (
            "F^-",
            "Cl^-",
            "Br^-",
            "I^-",
            "OH^-",
            "O^2-",
            "SO4^2-",
            "HSO4^-",
            "NO3^-",
            "CO3^2-",
            "HCO3^-",
            "CH3COO^-",
        ),
    )
)


@dataclass(frozen=True, slots=True)
class KnownElectrolyte:
    """One entry of the pick-list.

    Parameters
    ----------
    formula
        Canonical formula.
    name
        School name.
    names
        Further names that are understood.
    solubility
        soluble, sparing, very-slight or insoluble; "soluble" for acids and alkalis that mix with water, and
        "reacts" for what water turns into something else or destroys.
    melts
        Whether the dry substance gives a melt of ions.
    """

    formula: str
    name: str
    names: tuple[str, ...]
    solubility: Category | Literal["reacts"]
    melts: bool


def _melts(compound: Compound) -> bool:
    try:
        melted((compound,))
    except IonwrightError:
        return False
    return True


def _solubility(compound: Compound) -> Category | Literal["reacts"]:
    if compound.role in ("acid", "water") or compound.strength == "weak":
        return "soluble"
    if compound.role == "oxide":
        cation, anion = compound.lattice_ions[0][0], compound.lattice_ions[1][0]
        return "reacts" if solubility(cation.species, anion.species).category == "soluble" else "insoluble"
    row = SALTS.get(compound.anhydrous_formula)
    if row is not None:
        return row.solubility.category
    order = ("insoluble", "very-slight", "sparing", "soluble")
    pairs = [
        solubility(cation.species, anion.species).category
        for cation, _ in compound.lattice_ions
        if cation.charge > 0
        for anion, _ in compound.lattice_ions
        if anion.charge < 0
    ]
    return min(pairs, key=order.index)


def _usable(compound: Compound) -> bool:
    if nonexistence_reason(compound):
        return False
    try:
        dissolved_ions(compound)
    except IonwrightError:
        return _melts(compound)
    return True


def _other_names(compound: Compound, trivial: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    names = list(trivial.get(compound.anhydrous_formula, ()))
    if len(compound.lattice_ions) == 2:
        (cation, _), (anion, _) = compound.lattice_ions
        if compound.role == "acid":
            names += anion.acid_names[1:]
        elif cation.is_metal:
            names += _variants(cation, anion)
    return tuple(dict.fromkeys(name for name in names if name != compound.name and _means(name, compound)))


def _means(name: str, compound: Compound) -> bool:
    """Whether the name by itself is read as this compound: "copper chloride" is not read as copper(I) chloride."""
    return read_substance(name).compound.anhydrous_formula == compound.anhydrous_formula


def _variants(cation: Ion, anion: Ion) -> list[str]:
    stems = [cation.stem, *(alias for alias in cation.aliases if "(" not in alias)]
    bare = stem_without_numeral(cation.stem)
    anions = [anion.stem, *anion.aliases[:2]]
    if "sulf" in anion.stem:
        anions.append(anion.stem.replace("sulf", "sulph"))
    found = [f"{stem} {name}" for stem in stems for name in anions]
    return found if bare == cation.stem else [*(f"{bare} {name}" for name in anions), *found]


@cache
def known_electrolytes() -> tuple[KnownElectrolyte, ...]:
    """Return the electrolytes of the tables that a school may meet, in order of their names.

    Returns
    -------
    tuple of KnownElectrolyte
        Only what dissolves or melts to ions; every other neutral combination of known ions is understood as well.
    """
    trivial: dict[str, tuple[str, ...]] = {}
    for row in read_table("trivial_names.toml")["name"]:
        formula = row["means"].partition(".")[0]
        trivial[formula] = (*trivial.get(formula, ()), *row["names"])
    compounds: dict[str, Compound] = {row.compound.formula: row.compound for row in SALTS.values()}
    simple = [
        one
        for one in IONS.values()
        if one.charge > 0 and (one.is_metal or one is ion("NH4^+")) and not one.unstable
    ]
    for cation in simple:
        for anion in _SHELF:
            compound = compound_of(cation, anion)
            compounds.setdefault(compound.formula, compound)
    for anion in IONS.values():
        if anion.acid_name:
            acid = compound_of(_HYDROGEN, anion)
            compounds.setdefault(acid.formula, acid)
    found = [
        KnownElectrolyte(one.formula, one.name, _other_names(one, trivial), _solubility(one), _melts(one))
        for one in compounds.values()
        if _usable(one)
    ]
    return tuple(sorted(found, key=lambda one: (one.name, one.formula)))


def search_electrolytes(text: str, limit: int = 50) -> tuple[KnownElectrolyte, ...]:
    """Return the electrolytes whose formula or one of whose names holds a text, the closest first.

    Parameters
    ----------
    text
        Part of a formula or of a name, in any case; empty for all.
    limit
        Most entries to return.
    """
    wanted = normalised_name(text)
    ranked: list[tuple[int, int, KnownElectrolyte]] = []
    for position, one in enumerate(known_electrolytes()):
        rank = _rank(one, wanted)
        if rank is not None:
            ranked.append((rank, position, one))
    ranked.sort(key=lambda item: item[:2])
    return tuple(one for _, _, one in ranked[: max(limit, 0)])


def _rank(one: KnownElectrolyte, wanted: str) -> int | None:
    """0 for an exact match, 1 for a beginning, 2 for a part, 3 for a part of another name; None for no match."""
    formula, name = one.formula.lower(), one.name.lower()
    if wanted in (formula, name) or wanted in one.names:
        return 0
    if formula.startswith(wanted) or name.startswith(wanted):
        return 1
    if wanted in formula or wanted in name:
        return 2
    return 3 if any(wanted in normalised_name(other) for other in one.names) else None
