"""What happens when a salt is melted: a melt of ions, molecules, or nothing but decomposition."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final, Literal, NamedTuple, Protocol

from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ion import ion_set
from ionwright.chemistry.ionic_compound import Compound, compound_from
from ionwright.chemistry.ionic_formula import neutral_unit
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from ionwright.chemistry.species import Species

__all__ = ["MELTS", "Melt", "dissolved_in", "flux_ions", "flux_note", "is_molten_only_in_mixture", "melt_of"]

Outcome = Literal["melts", "decomposes", "molecular"]


@dataclass(frozen=True, slots=True)
class Melt:
    """What heat does to a dry salt.

    Parameters
    ----------
    outcome
        melts: to ions that move; molecular: to molecules; decomposes: before a melt can be used.
    tells
        For decomposes the end of the sentence "On heating it ..."; for molecular a sentence of its own; else empty.
    melts_C
        Melting point [degC]; None without a figure.
    note
        A sentence to tell with the answer; may be empty.
    solvent_only
        Whether the melt only serves to dissolve what is electrolysed in it.
    beyond
        Why the melt, although it conducts, is not answered, as the end of a sentence; empty if it is.
    source
        Key into ``sources.toml``.
    estimated_emf_V, literature_emf_V
        Reversible decomposition voltage [V], worked out from enthalpies and entropies at `emf_temperature_K`, and as a
        handbook prints it; None without a figure.
    emf_temperature_K
        Temperature of the estimate [K].
    """

    outcome: Outcome
    tells: str = ""
    melts_C: float | None = None
    note: str = ""
    solvent_only: bool = False
    beyond: str = ""
    source: str = ""
    estimated_emf_V: float | None = None
    literature_emf_V: float | None = None
    emf_temperature_K: float | None = None


def _formula(text: str) -> str:
    unit = neutral_unit(read_formula(text))
    if unit is None:
        raise ValueError(text)
    return compound_from(unit).formula


def _melt(row: dict[str, Any]) -> Melt:
    emf = row.get("emf_V", {})
    return Melt(
        outcome=row["outcome"],
        tells=row.get("tells", ""),
        melts_C=row.get("melts_C"),
        note=row.get("note", ""),
        solvent_only=row.get("solvent_only", False),
        beyond=row.get("beyond", ""),
        source=row["source"],
        estimated_emf_V=emf.get("estimate"),
        literature_emf_V=emf.get("literature"),
        emf_temperature_K=emf.get("temperature_K"),
    )


_TABLE: Final = read_table("melts.toml")

MELTS: Final[dict[str, Melt]] = {_formula(row["formula"]): _melt(row) for row in _TABLE["melt"]}
"""The salts with rows of their own, by canonical formula."""


class _Rule(NamedTuple):
    cations: frozenset[Species]
    anions: frozenset[Species]
    melt: Melt


_RULES: Final = tuple(
    _Rule(ion_set(row["cations"], 1), ion_set(row["anions"], -1), _melt(row)) for row in _TABLE["rule"]
)
_WORST_FIRST: Final = ("decomposes", "molecular", "melts")


@lru_cache(maxsize=4096)
def melt_of(compound: Compound) -> Melt:
    """Return what heat does to a dry compound of ions.

    Parameters
    ----------
    compound
        A salt, oxide or alkali without water of crystallisation; a double salt is judged by its pairs of ions.
    """
    row = MELTS.get(compound.formula)
    if row is not None:
        return row
    positive = [one.species for one, _ in compound.lattice_ions if one.charge > 0]
    negative = [one.species for one, _ in compound.lattice_ions if one.charge < 0]
    found = [_by_rule(cation, anion) for cation in positive for anion in negative]
    return min(found, key=lambda melt: _WORST_FIRST.index(melt.outcome))


def _by_rule(cation: Species, anion: Species) -> Melt:
    return next(rule.melt for rule in _RULES if cation in rule.cations and anion in rule.anions)


class _Ingredient(Protocol):
    @property
    def compound(self) -> Compound: ...


class _Flux(NamedTuple):
    solvents: frozenset[str]
    dissolved: frozenset[str]
    note: str
    working_C: float | None


_FLUXES: Final = tuple(
    _Flux(
        frozenset(map(_formula, row["solvents"])),
        frozenset(map(_formula, row["for"])),
        row["note"],
        row.get("working_C"),
    )
    for row in _TABLE["flux"]
)


def _fluxes(formulas: Collection[str]) -> list[_Flux]:
    return [
        flux
        for flux in _FLUXES
        if flux.dissolved.intersection(formulas) and flux.solvents.intersection(formulas)
    ]


def flux_ions(ingredients: Iterable[_Ingredient]) -> frozenset[Species]:
    """Return the ions of a melt that belong only to a flux or solvent salt, and so are not discharged.

    Parameters
    ----------
    ingredients
        What was melted together, such as NaCl and CaCl2; of a single salt nothing is a flux.
    """
    compounds = [one.compound for one in ingredients]
    if len(compounds) < 2:
        return frozenset()
    formulas = {one.formula for one in compounds}
    solvents = frozenset[str]().union(*(flux.solvents for flux in _fluxes(formulas)))
    main = {one.species for c in compounds if c.formula not in solvents for one, _ in c.lattice_ions}
    extra = {one.species for c in compounds if c.formula in solvents for one, _ in c.lattice_ions}
    return frozenset(extra - main) if main else frozenset()


def flux_note(compounds: Iterable[Compound]) -> tuple[str, float | None]:
    """Return the sentence that tells what the flux in a mixture does, and the usual working temperature [degC].

    Parameters
    ----------
    compounds
        What was melted together; without a flux the sentence is empty and the temperature None.
    """
    found = _fluxes({one.formula for one in compounds})
    return (found[0].note, found[0].working_C) if found else ("", None)


def dissolved_in(solvent: Compound) -> tuple[str, ...]:
    """Return the formulas of what is electrolysed in a molten solvent salt, the usual one first.

    Parameters
    ----------
    solvent
        A salt such as cryolite.
    """
    return tuple(
        one for flux in _FLUXES if solvent.formula in flux.solvents for one in sorted(flux.dissolved)
    )


def is_molten_only_in_mixture(compound: Compound, others: Collection[Compound]) -> bool:
    """Tell whether a compound that gives no melt of its own dissolves in a flux that is there.

    Parameters
    ----------
    compound
        What does not melt to ions alone, such as AlCl3.
    others
        The other ingredients.
    """
    formulas = {one.formula for one in others}
    return any(
        (compound.formula in flux.dissolved and flux.solvents & formulas)
        or (compound.formula in flux.solvents and flux.dissolved & formulas)
        for flux in _FLUXES
    )
