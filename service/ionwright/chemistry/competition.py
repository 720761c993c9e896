"""Enumerates the competition: from couples, water and the electrode itself, whatever could run at an electrode."""

from __future__ import annotations

from functools import cache, lru_cache

from ionwright.chemistry.anode_metal import INERT, applies, electrode_oxidations
from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, Couple, couples, metal_couples
from ionwright.chemistry.electrode import MERCURY, anode_cases, electrodes
from ionwright.chemistry.equation import Equation, Term
from ionwright.chemistry.medium import ACIDIC, ALKALINE, NEUTRAL, for_medium, with_states
from ionwright.chemistry.melt_process import melt_oxidation, melt_reductions
from ionwright.chemistry.process import FROM_IONS, FROM_WATER, Competition, ElectrodeProcess, Kind
from ionwright.chemistry.species import ELECTRON, Species, species
from ionwright.chemistry.tables import read_table

PASSIVE = "passive"
ACTIVE = "active"

_HALOGENS = frozenset(species(formula) for formula in ("F2", "Cl2", "Br2", "I2"))
_AMALGAMATING = ("Li^+", "Na^+", "K^+", "Rb^+", "Cs^+")
# Formation of sodium amalgam lies near -1.8 V (recalled: chlor-alkali literature), far above sodium's own -2.71 V.
_AMALGAM_V = -1.8
# Nernst slope at 25 °C, RT ln 10 / F [V per unit of pH and electron].
_SLOPE_V = 0.05916


@lru_cache(maxsize=8192)
def cathode_competition(
    ions: tuple[Species, ...], medium: str, electrode_id: str, melt_C: float | None
) -> Competition:
    """Every reduction open at the cathode.

    Parameters
    ----------
    ions
        What the electrolyte itself gives (the ions of water are understood), in a fixed order.
    medium
        ``"acidic"``, ``"neutral"``, ``"alkaline"`` or ``"molten"``.
    electrode_id
        The cathode's material.
    melt_C
        Temperature of a melt [degC]; None for a solution in water.
    """
    if melt_C is not None:
        found = [process for ion in ions if ion.charge > 0 for process in melt_reductions(ion, melt_C)]
    else:
        found = _reductions(ions, medium)
        if electrode_id == MERCURY:
            found += [_amalgam(ion) for ion in ions if ion.ascii in _AMALGAMATING]
        found.append(_hydrogen())
    return _competition("cathode", found, ions)


@lru_cache(maxsize=8192)
def anode_competition(
    ions: tuple[Species, ...], medium: str, electrode_id: str, melt_C: float | None
) -> Competition:
    """Every oxidation open at the anode, the electrode's own included; parameters as for the cathode."""
    found = electrode_oxidations(ions, medium, electrodes()[electrode_id], melt_C)
    if melt_C is not None:
        found += [process for ion in ions if (process := melt_oxidation(ion, melt_C))]
    else:
        found += _oxidations(ions, medium)
        found.append(_oxygen())
    return _competition("anode", found, ions, tuple(ion for ion in ions if ion in _untabulated()))


@cache
def _untabulated() -> frozenset[Species]:
    return frozenset(species(row["ion"]) for row in read_table("couples.toml")["untabulated_oxidation"])


@lru_cache(maxsize=4096)
def anode_behaviour(ions: tuple[Species, ...], medium: str, electrode_id: str, melt_C: float | None) -> str:
    """Whether this anode is ``"active"`` (it reacts), ``"passive"`` (a thin film stops it) or ``"inert"`` here."""
    own = electrode_oxidations(ions, medium, electrodes()[electrode_id], melt_C)
    if any(process.kind is not Kind.BURNS for process in own):
        return ACTIVE
    return PASSIVE if electrodes()[electrode_id].anode != INERT else INERT


def anode_film(ions: tuple[Species, ...], medium: str, electrode_id: str) -> str:
    """What is seen at an anode that a thin film makes passive; empty where the tables say nothing."""
    case = next((c for c in anode_cases(electrode_id) if applies(c.anion, ions, medium)), None)
    return case.seen if case and case.behaviour == PASSIVE else ""


def _competition(
    electrode: str,
    found: list[ElectrodeProcess],
    ions: tuple[Species, ...],
    untabulated: tuple[Species, ...] = (),
) -> Competition:
    sign = 1 if electrode == "cathode" else -1
    taking_part = {process.reactant for process in found}
    idle = tuple(ion for ion in ions if ion.charge * sign > 0 and ion not in taking_part)
    return Competition(electrode, tuple(found), idle, untabulated)


@cache
def _hydrogen() -> ElectrodeProcess:
    forms = (
        (FROM_IONS, with_states(couples()["H+/H2"].reduction)),
        (FROM_WATER, with_states(couples()["H2O/H2"].reduction)),
    )
    potential_V = couples()["H+/H2"].printed_V
    return ElectrodeProcess(
        Kind.HYDROGEN, HYDROGEN_ION, (species("H2"),), forms, potential_V, "H+/H2", is_listed=True
    )


@cache
def _oxygen() -> ElectrodeProcess:
    forms = (
        (FROM_IONS, with_states(couples()["O2/OH-"].reduction.reversed())),
        (FROM_WATER, with_states(couples()["O2/H2O"].reduction.reversed())),
    )
    potential_V = couples()["O2/H2O"].printed_V
    return ElectrodeProcess(
        Kind.OXYGEN, HYDROXIDE, (species("O2"),), forms, potential_V, "O2/H2O", is_listed=True
    )


@cache
def _couples_by_ion(side: str) -> dict[Species, tuple[Couple, ...]]:
    """Couples indexed by the ion that names them: on the oxidised or on the reduced side."""
    index: dict[Species, list[Couple]] = {}
    for couple in couples().values():
        needed = couple.oxidised if side == "oxidised" else couple.reduced
        if needed:
            index.setdefault(needed[0], []).append(couple)
    return {ion: tuple(rows) for ion, rows in index.items()}


def _reductions(ions: tuple[Species, ...], medium: str) -> list[ElectrodeProcess]:
    index = _couples_by_ion("oxidised")
    found: list[ElectrodeProcess] = []
    for ion in ions:
        rows = [c for c in _for_medium(index.get(ion, ()), medium) if c.is_reduction_listed]
        open_to_it = [couple for couple in rows if all(needed in ions for needed in couple.oxidised)]
        found += _worth_listing([_of_couple(couple, medium, is_reduction=True) for couple in open_to_it])
    return found


def _oxidations(ions: tuple[Species, ...], medium: str) -> list[ElectrodeProcess]:
    index = _couples_by_ion("reduced")
    found: list[ElectrodeProcess] = []
    for ion in ions:
        open_to_it = [
            couple for couple in index.get(ion, ()) if all(needed in ions for needed in couple.reduced)
        ]
        found += _worth_listing([_of_couple(couple, medium, is_reduction=False) for couple in open_to_it])
    return found


def _worth_listing(processes: list[ElectrodeProcess]) -> list[ElectrodeProcess]:
    """What an ion can do at a useful rate; if nothing, the one slow process that schools have heard of."""
    quick = [process for process in processes if not process.slow]
    return quick or sorted(processes, key=lambda process: not process.is_listed)[:1]


def _for_medium(rows: tuple[Couple, ...], medium: str) -> tuple[Couple, ...]:
    """Without the couples written for the other medium, where the table has some for this one."""
    unfit = "alkali" if medium == ACIDIC else "acid"
    has_own = any(couple.medium in {"acid", "alkali"} and couple.medium != unfit for couple in rows)
    return tuple(couple for couple in rows if couple.medium != unfit) if has_own else rows


@lru_cache(maxsize=1024)
def _of_couple(couple: Couple, medium: str, *, is_reduction: bool) -> ElectrodeProcess:
    half = couple.reduction if is_reduction else couple.reduction.reversed()
    reactants, products = (
        (couple.oxidised, couple.reduced) if is_reduction else (couple.reduced, couple.oxidised)
    )
    # acid couples keep their hydrogen ions in a neutral solution, as data sheets print them: water holds some
    keeps_acid = is_reduction and medium == NEUTRAL and couple.medium == "acid"
    suited = with_states(half if keeps_acid else for_medium(half, medium))
    kind = _kind(reactants, products, is_reduction=is_reduction)
    return ElectrodeProcess(
        kind=kind,
        reactant=reactants[0],
        products=(products[:1] if kind is Kind.METAL else products) or suited.products,
        forms=(("", suited),),
        potential_V=_potential(couple, medium),
        couple=couple.name,
        slow=couple.slow_reduction if is_reduction else couple.slow_oxidation,
        is_listed=couple.on_school_sheet,
    )


def _potential(couple: Couple, medium: str) -> float:
    """The printed potential, carried over to the pH for which hydrogen and oxygen are counted in this medium [V].

    Data sheets print some couples for pH 0 and some for pH 14, and the two must never be compared: in alkali all
    count at pH 14, elsewhere at pH 0. The shift is 0.0592 V for each unit of pH, times ions per electron.
    """
    net = {term.species: -term.coefficient for term in couple.reduction.left}
    net |= {term.species: term.coefficient for term in couple.reduction.right}
    per_electron = 1 / couple.reduction.electrons
    if medium == ALKALINE:
        shift_V = _SLOPE_V * 14 * float(net.get(HYDROGEN_ION, 0) * per_electron)
    else:
        shift_V = _SLOPE_V * 14 * float(net.get(HYDROXIDE, 0) * per_electron)
    return round(couple.printed_V + shift_V, 2)


def _kind(reactants: tuple[Species, ...], products: tuple[Species, ...], *, is_reduction: bool) -> Kind:
    first = products[0] if products else None
    if is_reduction and first and first.formula in metal_couples() and not first.charge:
        return Kind.METAL
    if not is_reduction and products and products[0] in _HALOGENS:
        return Kind.HALOGEN
    if (
        len(reactants) == len(products) == 1
        and reactants[0].atoms == products[0].atoms
        and products[0].charge
    ):
        return Kind.CHARGE
    return Kind.REACTION


@cache
def _amalgam(ion: Species) -> ElectrodeProcess:
    metal = ion.formula
    half = Equation((Term(ion, 1, "aq"), Term(ELECTRON, ion.charge)), (Term(species(metal), 1, "l"),))
    return ElectrodeProcess(
        Kind.AMALGAM,
        ion,
        (species(metal),),
        (("", half),),
        _AMALGAM_V,
        seen="No gas is seen; the metal dissolves in the mercury.",
    )
