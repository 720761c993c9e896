"""Enumerates the competition: from couples, water and the electrode itself, whatever could run at an electrode."""

from __future__ import annotations

from functools import cache, lru_cache
from math import lcm

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER, Couple, couples, metal_couples
from ionwright.chemistry.electrode import GRAPHITE, MERCURY, Electrode, anode_cases, electrodes
from ionwright.chemistry.equation import Equation, Term, equation
from ionwright.chemistry.medium import ACIDIC, ALKALINE, for_medium, with_states
from ionwright.chemistry.process import FROM_IONS, FROM_WATER, Competition, ElectrodeProcess, Kind
from ionwright.chemistry.solubility import solubility
from ionwright.chemistry.species import ELECTRON, Species, species
from ionwright.chemistry.tables import read_table

INERT = "inert"
PASSIVE = "passive"
ACTIVE = "active"

_HALOGENS = frozenset(species(formula) for formula in ("F2", "Cl2", "Br2", "I2"))
_AMALGAMATING = ("Li^+", "Na^+", "K^+", "Rb^+", "Cs^+")
# Formation of sodium amalgam lies near -1.8 V (recalled: chlor-alkali literature), far above sodium's own -2.71 V.
_AMALGAM_V = -1.8
_CARBON = species("C")
# Anions that bring down a dissolving metal at the electrode itself; complex and organic ions are left out.
_FILM_FORMERS = frozenset(
    {"Cl^-", "Br^-", "I^-", "SO4^2-", "CO3^2-", "PO4^3-", "HPO4^2-", "CrO4^2-", "C2O4^2-", "S^2-"}
)


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
        found = [process for ion in ions if ion.charge > 0 for process in _melt_reductions(ion, melt_C)]
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
    found = _electrode_oxidations(ions, medium, electrodes()[electrode_id], melt_C)
    if melt_C is not None:
        found += [process for ion in ions if (process := _melt_oxidation(ion, melt_C))]
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
    own = _electrode_oxidations(ions, medium, electrodes()[electrode_id], melt_C)
    if any(process.kind is not Kind.BURNS for process in own):
        return ACTIVE
    return PASSIVE if electrodes()[electrode_id].anode != INERT else INERT


def anode_film(ions: tuple[Species, ...], medium: str, electrode_id: str) -> str:
    """What is seen at an anode that a thin film makes passive; empty where the tables say nothing."""
    case = next((c for c in anode_cases(electrode_id) if _applies(c.anion, ions, medium)), None)
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


# -- in water ---------------------------------------------------------------------------------------------------------


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
    suited = with_states(for_medium(half, medium))
    kind = _kind(reactants, products, is_reduction=is_reduction)
    return ElectrodeProcess(
        kind=kind,
        reactant=reactants[0],
        products=(products[:1] if kind is Kind.METAL else products) or suited.products,
        forms=(("", suited),),
        potential_V=couple.printed_V,
        couple=couple.name,
        slow=couple.slow_reduction if is_reduction else couple.slow_oxidation,
        is_listed=couple.on_school_sheet,
    )


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


# -- the electrode itself ---------------------------------------------------------------------------------------------


def _applies(anion: str, ions: tuple[Species, ...], medium: str) -> bool:
    if anion == "*":
        return True
    return medium == ALKALINE if anion == "OH^-" else species(anion) in ions


def _electrode_oxidations(
    ions: tuple[Species, ...], medium: str, electrode: Electrode, melt_C: float | None
) -> list[ElectrodeProcess]:
    if melt_C is not None:
        return _melt_electrode(ions, electrode, melt_C)
    case = next((c for c in anode_cases(electrode.id) if _applies(c.anion, ions, medium)), None)
    if case and case.equation:
        return [_own(electrode.metal, equation(case.equation), case.behaviour, case.seen)]
    if case or electrode.anode == INERT or not electrode.metal:
        return []
    ion = dissolved_ion(electrode.metal)
    film = next((anion for anion in ions if _is_film(ion, anion)), None)
    if film:
        return [_own(electrode.metal, _film_equation(electrode.metal, ion, film), "films", "")]
    return [_own(electrode.metal, _dissolving(electrode.metal, ion), "dissolves", "")]


@cache
def dissolved_ion(metal: str) -> Species:
    """The simple ion that a metal gives when it dissolves as an anode: the one of the couple that schools list."""
    return metal_couples()[metal][0].oxidised[0]


def _is_film(ion: Species, anion: Species) -> bool:
    return anion.ascii in _FILM_FORMERS and solubility(ion, anion).category == "insoluble"


@cache
def _dissolving(metal: str, ion: Species) -> Equation:
    atoms = ion.atoms[0][1]
    return Equation((Term(species(metal), atoms),), (Term(ion), Term(ELECTRON, ion.charge)))


@cache
def _film_equation(metal: str, ion: Species, anion: Species) -> Equation:
    """The metal with its anion as an insoluble film: aM + bX → MₐX_b + electrons."""
    electrons = lcm(ion.charge, -anion.charge)
    cations, anions = electrons // ion.charge, electrons // -anion.charge
    film = species(_unit(ion.formula, cations) + _unit(anion.formula, anions))
    left = (Term(species(metal), cations * ion.atoms[0][1]), Term(anion, anions))
    return Equation(left, (Term(film), Term(ELECTRON, electrons)))


def _unit(formula: str, count: int) -> str:
    if count == 1:
        return formula
    is_simple = sum(character.isupper() for character in formula) == 1 and formula.isalpha()
    return f"{formula}{count}" if is_simple else f"({formula}){count}"


@lru_cache(maxsize=1024)
def _own(metal: str, half: Equation, behaviour: str, seen: str) -> ElectrodeProcess:
    kind = Kind.FILM if behaviour == "films" else Kind.DISSOLVES
    products = tuple(kind_ for kind_ in half.products if kind_ not in {HYDROGEN_ION, WATER})
    couple = _own_couple(metal, half, products)
    return ElectrodeProcess(
        kind,
        species(metal),
        products,
        (("", with_states(half)),),
        couple.printed_V if couple else None,
        couple.name if couple else "",
        is_listed=True,
        seen=seen,
    )


def _own_couple(metal: str, half: Equation, products: tuple[Species, ...]) -> Couple | None:
    """The row of the table that this oxidation reverses, if there is one."""
    for couple in couples().values():
        if species(metal) in couple.reduced and set(couple.oxidised) == set(products):
            return couple
    return None


# -- in a melt --------------------------------------------------------------------------------------------------------


def _melt_reductions(ion: Species, melt_C: float) -> list[ElectrodeProcess]:
    """A simple metal ion gives its metal; other cations have no process in a melt."""
    if len(ion.atoms) != 1:
        return []
    symbol, count = ion.atoms[0]
    half = Equation((Term(ion), Term(ELECTRON, ion.charge)), (Term(species(symbol), count),))
    rows = [c for c in metal_couples().get(symbol, ()) if c.oxidised[0] == ion]
    return [
        ElectrodeProcess(
            Kind.METAL,
            ion,
            (species(symbol),),
            (("", with_states(half, melt_C=melt_C)),),
            rows[0].printed_V if rows else None,
            rows[0].name if rows else "",
            is_listed=True,
        )
    ]


_MELT_OXIDATIONS = {
    "F^-": ("2F^- -> F2 + 2e-", Kind.HALOGEN, "F2/F-"),
    "Cl^-": ("2Cl^- -> Cl2 + 2e-", Kind.HALOGEN, "Cl2/Cl-"),
    "Br^-": ("2Br^- -> Br2 + 2e-", Kind.HALOGEN, "Br2(l)/Br-"),
    "I^-": ("2I^- -> I2 + 2e-", Kind.HALOGEN, "I2(s)/I-"),
    "S^2-": ("S^2- -> S + 2e-", Kind.REACTION, "S/S2-"),
    "H^-": ("2H^- -> H2 + 2e-", Kind.HYDROGEN, ""),
    "O^2-": ("2O^2- -> O2 + 4e-", Kind.OXYGEN, ""),
    "OH^-": ("4OH^- -> O2 + 2H2O + 4e-", Kind.OXYGEN, "O2/OH-"),
    "CO3^2-": ("2CO3^2- -> O2 + 2CO2 + 4e-", Kind.OXYGEN, ""),
}
_BURNING = {"O^2-": "C + 2O^2- -> CO2 + 4e-", "CO3^2-": "C + 2CO3^2- -> 3CO2 + 4e-"}


@lru_cache(maxsize=512)
def _melt_oxidation(ion: Species, melt_C: float) -> ElectrodeProcess | None:
    row = _MELT_OXIDATIONS.get(ion.ascii)
    if row is None:
        return None
    text, kind, name = row
    half = with_states(equation(text), melt_C=melt_C)
    products = tuple(kind_ for kind_ in half.products if kind_ != WATER)
    potential_V = couples()[name].printed_V if name else None
    return ElectrodeProcess(kind, ion, products, (("", half),), potential_V, name, is_listed=True)


def _melt_electrode(ions: tuple[Species, ...], electrode: Electrode, melt_C: float) -> list[ElectrodeProcess]:
    if electrode.id == GRAPHITE:
        return [
            ElectrodeProcess(
                Kind.BURNS,
                _CARBON,
                (species("CO2"),),
                (("", with_states(equation(_BURNING[ion.ascii]), melt_C=melt_C)),),
                seen="The carbon anode slowly burns away and has to be replaced.",
            )
            for ion in ions
            if ion.ascii in _BURNING
        ]
    if electrode.anode == INERT or not electrode.metal:
        return []
    ion = dissolved_ion(electrode.metal)
    half = with_states(_dissolving(electrode.metal, ion), melt_C=melt_C)
    couple = metal_couples()[electrode.metal][0]
    return [
        ElectrodeProcess(
            Kind.DISSOLVES,
            species(electrode.metal),
            (ion,),
            (("", half),),
            couple.printed_V,
            couple.name,
            is_listed=True,
        )
    ]
