"""The anode's own part in the competition: it dissolves, films over, burns, or stays as it is."""

from __future__ import annotations

from functools import cache, lru_cache
from math import lcm

from ionwright.chemistry.couple import HYDROGEN_ION, WATER, Couple, couples, metal_couples
from ionwright.chemistry.electrode import GRAPHITE, Electrode, anode_cases
from ionwright.chemistry.equation import Equation, Term, equation
from ionwright.chemistry.medium import ALKALINE, with_states
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.solubility import solubility
from ionwright.chemistry.species import ELECTRON, Species, species
from ionwright.chemistry.tables import read_table

INERT = "inert"
_CARBON = species("C")
_BURNING = {"O^2-": "C + 2O^2- -> CO2 + 4e-", "CO3^2-": "C + 2CO3^2- -> 3CO2 + 4e-"}
# In a melt hydride is oxidised before any electrode metal, and hydroxide makes the metals passive.
_SPARES_METALS = frozenset({"H^-", "OH^-"})
# Anions that bring down a dissolving metal at the electrode itself; complex and organic ions are left out.
_FILM_FORMERS = frozenset(
    {"Cl^-", "Br^-", "I^-", "SO4^2-", "CO3^2-", "PO4^3-", "HPO4^2-", "CrO4^2-", "C2O4^2-", "S^2-"}
)


def applies(anion: str, ions: tuple[Species, ...], medium: str) -> bool:
    """Whether a row for an anion fits an electrolyte: ``"*"`` always, ``"OH^-"`` an alkaline one."""
    if anion == "*":
        return True
    return medium == ALKALINE if anion == "OH^-" else species(anion) in ions


def electrode_oxidations(
    ions: tuple[Species, ...], medium: str, electrode: Electrode, melt_C: float | None
) -> list[ElectrodeProcess]:
    """How the anode itself could react in this electrolyte; empty where it is inert or passive."""
    if melt_C is not None:
        return _melt_electrode(ions, electrode, melt_C)
    case = next((c for c in anode_cases(electrode.id) if applies(c.anion, ions, medium)), None)
    if case and case.equation:
        return [_own(electrode.metal, equation(case.equation), case.behaviour, case.seen)]
    if case or electrode.anode == INERT or not electrode.metal:
        return []
    ion = dissolved_ion(electrode.metal)
    film = _tabulated_film(electrode.metal, ions) or _insoluble_film(electrode.metal, ion, ions)
    if film:
        return [_own(electrode.metal, film, "films", "")]
    return [_own(electrode.metal, _dissolving(electrode.metal, ion), "dissolves", "")]


@lru_cache(maxsize=1024)
def _tabulated_film(metal: str, ions: tuple[Species, ...]) -> Equation | None:
    """A film that the table of couples knows: the metal with an anion of the solution gives a solid."""
    for couple in couples().values():
        if species(metal) not in couple.reduced or couple.reduction.reactants != couple.oxidised:
            continue
        anions = [kind for kind in couple.reduced if kind.charge]
        if anions and set(anions) <= set(ions) and all(not kind.charge for kind in couple.oxidised):
            return couple.reduction.reversed()
    return None


def _insoluble_film(metal: str, ion: Species, ions: tuple[Species, ...]) -> Equation | None:
    """A film that the solubility of the metal's salts makes likely."""
    anion = next((kind for kind in ions if _is_film(ion, kind)), None)
    return _film_equation(metal, ion, anion) if anion else None


@cache
def dissolved_ion(metal: str) -> Species:
    """The simple ion that a metal gives when it dissolves as an anode: the one of the couple that schools list.

    Mercury is the exception of the table: an anode of it gives the dimercury(I) ion, because the metal is there in
    excess to reduce mercury(II).
    """
    row = next((row for row in read_table("electrodes.toml")["dissolves_as"] if row["metal"] == metal), None)
    return species(row["ion"]) if row else metal_couples()[metal][0].oxidised[0]


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
    if electrode.anode == INERT or not electrode.metal or any(ion.ascii in _SPARES_METALS for ion in ions):
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
