"""Which salts dissolve, which pairs of ions cannot exist, and what settles out of a mixture."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final, Literal, NamedTuple

from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ion import Ion, ion, ion_set
from ionwright.chemistry.ionic_compound import Compound, compound_from
from ionwright.chemistry.ionic_formula import neutral_unit
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species

__all__ = [
    "SALTS",
    "STRONGEST",
    "Category",
    "SaltRow",
    "Solubility",
    "clash_reason",
    "nonexistence_reason",
    "solubility",
    "solubility_by_rule",
]

Category = Literal["soluble", "sparing", "very-slight", "insoluble"]


@dataclass(frozen=True, slots=True)
class Solubility:
    """How well a salt dissolves in cold water, and why we say so.

    Parameters
    ----------
    category
        soluble (over about 0.05 mol/kg), sparing (0.005 to 0.05), very-slight (0.0001 to 0.005) or insoluble.
    reason
        A sentence: the solubility rule, or the figure of the table where it is telling.
    source
        Key into ``sources.toml``.
    saturated_mol_kg
        Amount that one kilogram of water holds at about 25 °C [mol/kg]; None without a figure.
    Ksp
        Solubility product at 25 °C [1]; None without a figure.
    molecular
        Whether the salt dissolves as molecules and so hardly conducts.
    note
        Remark of the table; may be empty.
    """

    category: Category
    reason: str
    source: str
    saturated_mol_kg: float | None = None
    Ksp: float | None = None
    molecular: bool = False
    note: str = ""


class SaltRow(NamedTuple):
    """One row of the salt table: the compound and what is known of it."""

    compound: Compound
    solubility: Solubility


def _compound(formula: str) -> Compound:
    unit = neutral_unit(read_formula(formula))
    if unit is None:
        raise ValueError(formula)
    return compound_from(unit)


def _row(row: dict[str, Any]) -> SaltRow:
    compound = _compound(row["formula"])
    grams = row.get("g_20C", row.get("g_25C"))
    reason = ""
    if grams is not None and grams < 10:
        reason = f"Only about {grams:.2g} g of it dissolves in 100 g of water."
    return SaltRow(
        compound,
        Solubility(
            category=row["category"],
            reason=reason,
            source=row["source"],
            saturated_mol_kg=row.get("sat"),
            Ksp=row.get("Ksp"),
            molecular=row.get("molecular", False),
            note=row.get("note", ""),
        ),
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


_TABLE: Final = read_table("solubility.toml")

SALTS: Final[dict[str, SaltRow]] = {row.compound.formula: row for row in map(_row, _TABLE["salt"])}
"""The salts with figures of their own, by canonical formula without water."""


STRONGEST: Final[dict[str, float]] = {row["formula"]: row["mol_dm3"] for row in _TABLE["strongest"]}
"""The strongest solutions that acids and ammonia come in [mol/dm3], by formula."""


def _pairs(row: SaltRow) -> tuple[Species, Species] | None:
    ions = row.compound.lattice_ions
    return (ions[0][0].species, ions[1][0].species) if len(ions) == 2 else None


class _Exception(NamedTuple):
    cations: frozenset[Species]
    anions: frozenset[Species]
    category: Category


class _Rule(NamedTuple):
    cations: frozenset[Species]
    anions: frozenset[Species]
    category: Category
    exceptions: tuple[_Exception, ...]
    sentence: str
    source: str


def _rule(row: dict[str, Any]) -> _Rule:
    return _Rule(
        cations=ion_set(row.get("cations", ["any"]), 1),
        anions=ion_set(row["anions"], -1),
        category=row["category"],
        exceptions=tuple(
            _Exception(
                ion_set(one["cations"], 1), ion_set(one.get("anions", row["anions"]), -1), one["category"]
            )
            for one in row.get("exceptions", ())
        ),
        sentence=row["sentence"],
        source=row["source"],
    )


_BY_PAIR: Final = {pair: row.solubility for row in SALTS.values() if (pair := _pairs(row)) is not None}
_RULES: Final = tuple(map(_rule, _TABLE["rule"]))


def _with_reason(pair: tuple[Species, Species], found: Solubility) -> Solubility:
    """A row without a telling figure borrows the sentence of the rule."""
    return found if found.reason else replace(found, reason=solubility_by_rule(*pair).reason)


@lru_cache(maxsize=16384)
def solubility(cation: Species, anion: Species) -> Solubility:
    """Return how well the salt of two ions dissolves in cold water.

    Parameters
    ----------
    cation, anion
        Two ions of the tables. A figure of the salt table wins over the rules.
    """
    found = _BY_PAIR.get((cation, anion))
    if found is None:
        return solubility_by_rule(cation, anion)
    return _with_reason((cation, anion), found)


def solubility_by_rule(cation: Species, anion: Species) -> Solubility:
    """Return what the solubility rules alone say about the salt of two ions.

    Parameters
    ----------
    cation, anion
        Two ions of the tables.
    """
    for rule in _RULES:
        if cation in rule.cations and anion in rule.anions:
            for one in rule.exceptions:
                if cation in one.cations and anion in one.anions:
                    return Solubility(one.category, rule.sentence, rule.source)
            return Solubility(rule.category, rule.sentence, rule.source)
    return Solubility("insoluble", "No rule says that this salt dissolves.", "textbook-rules")


class _Clash(NamedTuple):
    pairs: frozenset[tuple[Species, Species]]
    reason: str


def _clash(row: dict[str, Any]) -> _Clash:
    left, right = (frozenset(ion(name).species for name in row[side]) for side in ("first", "second"))
    spared = {(ion(one).species, ion(other).species) for one, other in row.get("except", ())}
    return _Clash(
        frozenset((one, other) for one in left for other in right if (one, other) not in spared),
        row["reason"],
    )


_CLASHES: Final = {
    (one, other): clash.reason.format(first=ion(one.ascii).name, second=ion(other.ascii).name)
    for clash in map(_clash, _TABLE["clash"])
    for one, other in clash.pairs
}
_ACID_CLASHES: Final[dict[Species, str]] = {
    ion(anion).species: row["reason"] for row in _TABLE["acid_clash"] for anion in row["anions"]
}
_HYDROGEN: Final = ion("H^+").species


def clash_reason(one: Species, other: Species) -> str:
    """Return why two ions destroy each other in one solution, as the end of a sentence; empty if they do not.

    Parameters
    ----------
    one, other
        Two ions, in any order.
    """
    if _HYDROGEN in (one, other):
        return _ACID_CLASHES.get(other if one == _HYDROGEN else one, "")
    return _CLASHES.get((one, other)) or _CLASHES.get((other, one), "")


class _Nonexistent(NamedTuple):
    cations: frozenset[Species]
    anions: frozenset[Species]
    reason: str


_NONEXISTENT: Final = tuple(
    _Nonexistent(ion_set(row["cations"], 1), ion_set(row["anions"], -1), row["reason"])
    for row in _TABLE["nonexistent"]
)


@lru_cache(maxsize=4096)
def nonexistence_reason(compound: Compound) -> str:
    """Return why a compound does not exist, or does not last, as a sentence; empty if it does.

    Parameters
    ----------
    compound
        Any compound of known ions.
    """
    positive: list[Ion] = [one for one, _ in compound.lattice_ions if one.charge > 0]
    negative: list[Ion] = [one for one, _ in compound.lattice_ions if one.charge < 0]
    name = _capital(compound.name)
    for cation in positive:
        for anion in negative:
            if compound.role == "acid" and anion.acid_name:
                continue
            reason = clash_reason(cation.species, anion.species)
            if reason:
                return f"{name} does not exist: {reason}."
            for row in _NONEXISTENT:
                if cation.species in row.cations and anion.species in row.anions:
                    return row.reason.format(name=name)
    return ""
