"""Electrode processes in a melt: the ions of the salt themselves, since no water competes."""

from __future__ import annotations

from functools import lru_cache

from ionwright.chemistry.couple import WATER, couples, metal_couples
from ionwright.chemistry.equation import Equation, Term, equation
from ionwright.chemistry.medium import with_states
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import ELECTRON, Species, species


def melt_reductions(ion: Species, melt_C: float) -> list[ElectrodeProcess]:
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


@lru_cache(maxsize=512)
def melt_oxidation(ion: Species, melt_C: float) -> ElectrodeProcess | None:
    """The discharge of a simple anion, hydroxide or carbonate; None for other ions."""
    row = _MELT_OXIDATIONS.get(ion.ascii)
    if row is None:
        return None
    text, kind, name = row
    half = with_states(equation(text), melt_C=melt_C)
    products = tuple(kind_ for kind_ in half.products if kind_ != WATER)
    potential_V = couples()[name].printed_V if name else None
    return ElectrodeProcess(kind, ion, products, (("", half),), potential_V, name, is_listed=True)
