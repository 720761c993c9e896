"""Compounds: what one formula unit holds, what it gives in water, its formula and its name."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import lcm
from typing import Final, Literal

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ion import IONS, Ion, ion
from ionwright.chemistry.ionic_formula import IonicUnit, reduced

__all__ = [
    "WATER",
    "Compound",
    "Role",
    "acid_chain",
    "acid_step",
    "compound_from",
    "compound_of",
    "molar_mass",
    "molecular",
]

Role = Literal["salt", "acid", "alkali", "oxide", "water", "molecule"]
Counted = tuple[tuple[Ion, int], ...]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")
_OXIDE: Final = ion("O^2-")
_AMMONIUM: Final = ion("NH4^+")
_NITRIDE: Final = ion("N^3-")
_HYDROGENSULFATE: Final = ion("HSO4^-")
_SULFATE: Final = ion("SO4^2-")

_WATERS: Final = (
    "", "mono", "di", "tri", "tetra", "penta", "hexa", "hepta", "octa", "nona", "deca", "undeca", "dodeca",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Compound:
    """A substance made of ions, or one that gives ions to water.

    Parameters
    ----------
    formula
        Canonical text, water of crystallisation included.
    name
        School name, in lower case, such as ``"nickel(II) sulfate hexahydrate"``.
    ions
        What one formula unit gives in water, with numbers.
    lattice_ions
        What the formula itself holds: the ions of a melt.
    role
        salt, acid, alkali, oxide, water, or molecule for what gives no ions and only stands in a mixture.
    strength
        Whether it is fully (strong) or hardly (weak) split into ions in dilute solution.
    hydrate_water
        Molecules of water in the formula.
    pKa
        Of a weak acid its first pKa, of a weak base its pKb [1]; None if strong or unknown.
    """

    formula: str
    name: str
    ions: Counted
    lattice_ions: Counted
    role: Role
    strength: Literal["strong", "weak"] = "strong"
    hydrate_water: int = 0
    pKa: float | None = None

    def __hash__(self) -> int:
        return hash(self.formula)

    @property
    def anhydrous_formula(self) -> str:
        """The formula without water of crystallisation."""
        return self.formula.partition(".")[0]


WATER: Final = Compound(
    "H2O", "water", ((_HYDROGEN, 1), (_HYDROXIDE, 1)), ((_HYDROGEN, 1), (_HYDROXIDE, 1)), "water", "weak"
)
"""Pure water."""

_AMMONIA: Final = Compound(
    "NH3",
    "ammonia",
    ((_AMMONIUM, 1), (_HYDROXIDE, 1)),
    ((_AMMONIUM, 1), (_HYDROXIDE, 1)),
    "alkali",
    "weak",
    pKa=4.75,
)


def _parents() -> dict[Ion, tuple[int, Ion]]:
    """Each acid anion with the hydrogen ions it can give and what is then left: HCO3^- with 1 and CO3^2-."""
    by_formula = {one.species.formula: one for one in IONS.values() if one.charge < 0}
    found = {}
    for formula, one in by_formula.items():
        for prefix, number in (("H2", 2), ("H", 1)):
            parent = by_formula.get(formula.removeprefix(prefix)) if formula.startswith(prefix) else None
            if parent is not None and parent.charge == one.charge - number:
                found[one] = number, parent
                break
    return found


_PARENTS: Final = _parents()


def acid_step(one: Ion) -> tuple[int, Ion] | None:
    """Return how many hydrogen ions alkali takes from a negative ion, and the ion then left; None if it takes none.

    Parameters
    ----------
    one
        Any ion, such as HCO3^-, which gives 1 and CO3^2-.
    """
    step = _PARENTS.get(one)
    return None if step is None or step[1].lattice_only else step


@lru_cache(maxsize=256)
def acid_chain(anion: Ion) -> tuple[Ion, ...]:
    """Return the ions that an acid turns into as it loses its hydrogen one by one: H2PO4^-, HPO4^2-, PO4^3-.

    Parameters
    ----------
    anion
        The last of them.

    Returns
    -------
    tuple of Ion
        Only the last where the tables do not know all of those before it.
    """
    by_number = {number: one for one, (number, parent) in _PARENTS.items() if parent is anion}
    before = [by_number[number] for number in range(-anion.charge - 1, 0, -1) if number in by_number]
    return (*before, anion) if len(before) == -anion.charge - 1 else (anion,)


def molecular(formula: str, name: str) -> Compound:
    """Return a substance without ions, to stand beside others in a mixture.

    Parameters
    ----------
    formula
        Its formula; empty if it has none.
    name
        Its name, in lower case.
    """
    return Compound(formula, name, (), (), "molecule")


def _piece_text(one: Ion, count: int) -> str:
    formula = one.species.formula
    if count == 1:
        return formula
    if formula.startswith("["):
        return f"{formula}{count}"
    if len(one.species.atoms) == 1 and one.species.atoms[0][1] == 1:
        return f"{formula}{count}"
    return f"[{formula}]{count}" if "(" in formula else f"({formula}){count}"


def _formula_text(ions: Counted, water: int) -> str:
    if len({one.element for one, _ in ions if one.charge > 0}) == 1 and len(ions) == 3 and ions[1][0].element:
        (low, lows), (_, highs), last = ions  # one metal with two charges, as in Fe3O4
        ions = ((low, lows + highs), last)
    parts = [_piece_text(one, count) for one, count in ions]
    if len(ions) == 2 and ions[1][0].written_first and ions[1][1] == 1 and ions[0][1] == 1:
        parts.reverse()
    core = "".join(parts)
    return core if not water else f"{core}.{'' if water == 1 else water}H2O"


def _name_text(ions: Counted, water: int) -> str:
    positive = [one for one, _ in ions if one.charge > 0]
    negative = [one for one, _ in ions if one.charge < 0]
    if positive == [_HYDROGEN] and len(negative) == 1 and negative[0].acid_name:
        name = negative[0].acid_name
    else:
        name = " ".join([*_positive_stems(positive), *(one.stem for one in negative)])
    if not water:
        return name
    if water < len(_WATERS):
        prefix = _WATERS[water]
        return f"{name} {prefix}hydrate"
    return f"{name} {water}-water"


def _positive_stems(ions: list[Ion]) -> list[str]:
    """The words for positive ions; two ions of one metal share a word, as in iron(II,III)."""
    if len(ions) == 2 and ions[0].element and ions[0].element == ions[1].element:
        low, high = (one.stem.partition("(") for one in ions)
        return [f"{low[0]}({low[2].rstrip(')')},{high[2]}"]
    return [one.stem for one in ions]


def _without_acid_anions(ions: Counted) -> Counted:
    """Join free hydrogen ions with anions that still hold hydrogen: H^+ and HCO3^- are carbonic acid."""
    if not any(one is _HYDROGEN for one, _ in ions) or not any(one in _PARENTS for one, _ in ions):
        return ions
    flat: list[tuple[Ion, int]] = []
    for one, count in ions:
        number, parent = _PARENTS.get(one, (0, one))
        flat.append((parent, count))
        if number:
            flat.append((_HYDROGEN, count * number))
    return reduced(flat).ions


def _in_water(ions: Counted) -> Counted:
    """What the ions of a solid become in water: oxide gives hydroxide, hydrogensulfate splits."""
    changed: list[tuple[Ion, int]] = []
    for one, count in ions:
        if one is _OXIDE:
            changed.append((_HYDROXIDE, 2 * count))
        elif one is _HYDROGENSULFATE:
            changed += [(_HYDROGEN, count), (_SULFATE, count)]
        else:
            changed.append((one, count))
    if changed == list(ions):
        return ions
    total: dict[Ion, int] = {}
    for one, count in changed:
        total[one] = total.get(one, 0) + count
    return tuple(sorted(total.items(), key=lambda item: item[0].charge < 0))


def compound_from(unit: IonicUnit) -> Compound:
    """Return the compound of a neutral set of ions.

    Parameters
    ----------
    unit
        Ions with numbers whose charges cancel, and water of crystallisation.
    """
    ions = _without_acid_anions(unit.ions)
    kinds = {one for one, _ in ions}
    if kinds <= {_HYDROGEN, _HYDROXIDE, _OXIDE}:
        return WATER
    if kinds in ({_AMMONIUM, _HYDROXIDE}, {_HYDROGEN, _NITRIDE}):
        return _AMMONIA
    negative = [one for one, _ in ions if one.charge < 0]
    acid = negative[0] if kinds - set(negative) == {_HYDROGEN} and len(negative) == 1 else None
    role: Role = "salt"
    weak_pKa = None
    if acid is not None:
        role = "acid"
        weak_pKa = None if acid.strong_acid else acid.acid_pKa
    elif _OXIDE in kinds:
        role = "oxide"
    elif negative == [_HYDROXIDE]:
        role = "alkali"
    return Compound(
        formula=_formula_text(ions, unit.water),
        name=_name_text(ions, unit.water),
        ions=_in_water(ions),
        lattice_ions=ions,
        role=role,
        strength="strong" if weak_pKa is None else "weak",
        hydrate_water=unit.water,
        pKa=weak_pKa,
    )


@lru_cache(maxsize=4096)
def compound_of(*ions: Ion) -> Compound:
    """Return the simplest neutral compound that these ions make.

    Parameters
    ----------
    ions
        At least one positive and one negative ion; one of each positive ion is taken, or as many as cancel.

    Raises
    ------
    CellRefused
        The ions all carry charge of one sign.
    """
    positive = sum(one.charge for one in ions if one.charge > 0)
    negative = sum(one.charge for one in ions if one.charge < 0)
    if not positive or not negative:
        raise CellRefused("charges-do-not-cancel", "A compound needs both positive and negative ions.")
    total = lcm(positive, -negative)
    counted = [
        (one, total // positive if one.charge > 0 else total // -negative) for one in dict.fromkeys(ions)
    ]
    return compound_from(reduced(counted))


@lru_cache(maxsize=1024)
def molar_mass(compound: Compound) -> float | None:
    """Molar mass with the water of crystallisation [g/mol]; None if the mass of an element is not known."""
    total = 0.0
    for symbol, count in read_formula(compound.formula).composition.items():
        mass = ELEMENTS[symbol].relative_atomic_mass
        if mass is None:
            return None
        total += mass * count
    return total
