"""The ions that the tables know: their names, spellings and behaviour."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Final

from ionwright.chemistry.faults import UnknownSpecies
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

__all__ = ["IONS", "USUAL_CHARGES", "Ion", "ion", "ion_set", "stem_without_numeral"]


@dataclass(frozen=True, slots=True, eq=False)
class Ion:
    """One ion of the tables. There is one object per ion, so ions compare by identity.

    Parameters
    ----------
    species
        Formula and charge.
    stem
        The word inside a compound's name: ``"nickel(II)"``, ``"sulfate"``.
    aliases
        Further stems, older or of other countries.
    spellings
        Further ways in which formulas write the ion, such as ``"C2H3O2"`` for ethanoate.
    acid_names
        Names of the acid of a negative ion, the school name first; empty if schools know no such acid.
    acid_spellings
        Whole formulas of that acid that do not show its hydrogen apart, such as ``"(COOH)2"``.
    strong_acid
        Whether that acid is fully ionised in dilute solution.
    acid_pKa
        First ionisation of that acid [1]; None if strong or unknown.
    written_first
        Whether formulas write this negative ion before a positive ion of charge one: ``CH3COONa``.
    colour
        The usual look of about 0.1 mol/dm3 in water, as one short phrase.
    medium
        "alkaline" if solutions of the ion are, because it needs ammonia, alkali or cyanide beside it; else empty.
    plates
        How readily it is discharged from water: never, rarely, sometimes, concentration, usually, redox, molten only.
    spectator
        Whether in water it only carries charge.
    in_water
        What happens instead or besides at an electrode in water.
    unstable
        Why the free ion does not last in water; empty if it does.
    lattice_only
        Whether the ion is met in solids and melts only, because water destroys it.
    pKa
        Acid constant [1] of what `pKa_of` names in the table; None without a figure.
    note
        Remark of the table.
    sources
        Keys into ``sources.toml``.
    verified
        Whether the row was read in its source.
    element
        Symbol of the metal if this is a simple metal cation, else None.
    """

    species: Species
    stem: str
    aliases: tuple[str, ...] = ()
    spellings: tuple[str, ...] = ()
    acid_names: tuple[str, ...] = ()
    acid_spellings: tuple[str, ...] = ()
    strong_acid: bool = False
    acid_pKa: float | None = None
    written_first: bool = False
    colour: str = "colourless"
    medium: str = ""
    plates: str = "never"
    spectator: bool = False
    in_water: str = ""
    unstable: str = ""
    lattice_only: bool = False
    pKa: float | None = None
    note: str = ""
    sources: tuple[str, ...] = ()
    verified: bool = False
    element: str | None = None

    @property
    def name(self) -> str:
        """The name in running text, such as ``"nickel(II) ion"``."""
        return f"{self.stem} ion"

    @property
    def charge(self) -> int:
        """Charge number, with its sign."""
        return self.species.charge

    @property
    def is_metal(self) -> bool:
        """Whether this is the simple ion of one metal."""
        return self.element is not None

    @property
    def acid_name(self) -> str:
        """The school name of the acid of this negative ion; empty if there is none."""
        return self.acid_names[0] if self.acid_names else ""

    @property
    def source(self) -> str:
        """Key of the first source."""
        return self.sources[0] if self.sources else ""


_NOT_METALS: Final = frozenset(("H",))


def _metal_of(of: Species) -> str | None:
    if of.charge > 0 and len(of.atoms) == 1 and of.atoms[0][0] not in _NOT_METALS:
        return of.atoms[0][0]
    return None


def _from_row(row: dict[str, Any]) -> Ion:
    of = species(row["formula"])
    pKa = row.get("pKa")
    single_step = of.charge == -1 and not row.get("strong_acid", False)
    return Ion(
        species=of,
        stem=row["stem"],
        aliases=tuple(row.get("other_names", ())),
        spellings=tuple(row.get("spellings", ())),
        acid_names=tuple(row.get("acid", ())),
        acid_spellings=tuple(row.get("acid_spellings", ())),
        strong_acid=row.get("strong_acid", False),
        acid_pKa=row.get("acid_pKa", pKa if single_step else None),
        written_first=row.get("written_first", False),
        colour=row["colour"],
        medium=row.get("medium", ""),
        plates=row["plates"],
        spectator=row.get("spectator", False),
        in_water=row["in_water"],
        unstable=row.get("unstable", ""),
        lattice_only=row.get("lattice_only", False),
        pKa=pKa,
        note=row.get("note", ""),
        sources=tuple(row["sources"]),
        verified=row["verified"],
        element=_metal_of(of),
    )


IONS: Final[Mapping[Species, Ion]] = MappingProxyType(
    {one.species: one for one in map(_from_row, read_table("ions.toml")["ion"])}
)
"""Every ion of the tables by its species, positive ions first."""

USUAL_CHARGES: Final[Mapping[str, tuple[int, Mapping[str, int]]]] = MappingProxyType(
    {row["element"]: (row["charge"], row.get("with", {})) for row in read_table("ions.toml")["usual_charge"]}
)
"""By element: the charge that a name without a Roman numeral means, and the exceptions by partner ion."""


@lru_cache(maxsize=1024)
def ion(ascii_formula: str) -> Ion:
    """Return the ion with this canonical formula, such as ``"Ni^2+"``.

    Parameters
    ----------
    ascii_formula
        Formula and charge in canonical ASCII.

    Raises
    ------
    UnknownSpecies
        The tables hold no such ion.
    """
    found = IONS.get(species(ascii_formula))
    if found is None:
        raise UnknownSpecies("unknown-substance", f"The tables hold no ion {ascii_formula}.")
    return found


_GROUP_1: Final = ("Li", "Na", "K", "Rb", "Cs")
_GROUP_2: Final = ("Be", "Mg", "Ca", "Sr", "Ba")
_P_BLOCK: Final = ("Al", "Ga", "Sn", "Pb", "Bi")


def _in_family(one: Ion, family: str) -> bool:
    if family == "group1":
        return one.element in _GROUP_1
    if family == "group2":
        return one.element in _GROUP_2
    if family == "p-block":
        return one.element in _P_BLOCK
    if family == "d-block":
        return one.is_metal and one.element not in _GROUP_1 + _GROUP_2 + _P_BLOCK
    # what is left is "complex": a metal ion that holds molecules
    return one.charge > 0 and "[" in one.species.formula


_FAMILIES: Final = ("group1", "group2", "d-block", "p-block", "complex")


def ion_set(names: Iterable[str], sign: int) -> frozenset[Species]:
    """Return the species that a table row means by formulas and family names.

    Parameters
    ----------
    names
        Canonical formulas, or ``"group1"``, ``"group2"``, ``"d-block"``, ``"p-block"``, ``"complex"``, ``"any"``.
    sign
        1 for positive ions, -1 for negative ions: what ``"any"`` ranges over.
    """
    found: set[Species] = set()
    for name in names:
        if name == "any":
            found.update(of for of in IONS if of.charge * sign > 0)
        elif name in _FAMILIES:
            found.update(of for of, one in IONS.items() if _in_family(one, name))
        else:
            found.add(ion(name).species)
    return frozenset(found)


_NUMERAL: Final = re.compile(r"\((?:I|II|III|IV|V|VI|VII)\)$")


def stem_without_numeral(stem: str) -> str:
    """Return a stem without its closing Roman numeral: ``"copper"`` for ``"copper(II)"``."""
    return _NUMERAL.sub("", stem)
