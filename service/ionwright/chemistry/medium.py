"""Writing a half-equation for the medium: with hydrogen ions, with hydroxide ions, or from water alone; and states."""

from __future__ import annotations

from fractions import Fraction

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE, WATER
from ionwright.chemistry.equation import Equation, Term
from ionwright.chemistry.species import ELECTRON, Species
from ionwright.chemistry.tables import read_table

ACIDIC = "acidic"
NEUTRAL = "neutral"
ALKALINE = "alkaline"
MOLTEN = "molten"

_GASES = frozenset({"H2", "O2", "Cl2", "F2", "CO2", "CO", "NO", "NO2", "N2", "NH3", "SO2", "H2S", "C2H6"})
_VOLATILE_IN_MELT = frozenset({"Br2", "I2", "H2O", "S"})
_DISSOLVED_IN_WATER = frozenset({"Br2", "I2", "NH3", "SO2", "H2O2", "H2SO3", "HClO", "HNO2", "H2C2O4"})


def state_of(kind: Species, *, melt_C: float | None = None) -> str:
    """State symbol of a species in a cell.

    Parameters
    ----------
    melt_C
        Working temperature of a melt [degC]; None for a solution in water at room temperature.

    Returns
    -------
    str
        ``"s"``, ``"l"``, ``"g"`` or ``"aq"``; empty for the electron.
    """
    if kind.is_electron:
        return ""
    in_water = melt_C is None
    if kind.charge:
        return "aq" if in_water else "l"
    if in_water and kind.formula in _DISSOLVED_IN_WATER:
        return "aq"
    if kind.formula in _GASES or (not in_water and kind.formula in _VOLATILE_IN_MELT):
        return "g"
    if kind == WATER:
        return "l"
    melts_C = read_table("metals.toml")["melts_C"].get(kind.formula)
    return "l" if melts_C is not None and melts_C < (25 if melt_C is None else melt_C) else "s"


def with_states(half: Equation, *, melt_C: float | None = None) -> Equation:
    """The same equation with the state symbol of every species."""

    def dressed(terms: tuple[Term, ...]) -> tuple[Term, ...]:
        return tuple(Term(t.species, t.coefficient, state_of(t.species, melt_C=melt_C)) for t in terms)

    return Equation(dressed(half.left), dressed(half.right))


def for_medium(half: Equation, medium: str) -> Equation:
    """The half-equation rewritten so that it uses only what the medium offers.

    In acid no hydroxide ion stands in it, in alkali no hydrogen ion, and in a neutral solution neither is used up:
    water supplies it and the other one is left. The rewriting adds n(H⁺ + OH⁻ = H₂O) and so keeps the balance.
    """
    net = _net(half)
    hydrogen_ions, hydroxide = net.get(HYDROGEN_ION, Fraction(0)), net.get(HYDROXIDE, Fraction(0))
    to_hydroxide = (
        hydrogen_ions if medium == ALKALINE or (medium == NEUTRAL and hydrogen_ions < 0) else Fraction(0)
    )
    to_hydrogen = hydroxide if medium == ACIDIC or (medium == NEUTRAL and hydroxide < 0) else Fraction(0)
    if not to_hydroxide and not to_hydrogen:
        return half
    net[HYDROGEN_ION] = hydrogen_ions - to_hydroxide - to_hydrogen
    net[HYDROXIDE] = hydroxide - to_hydroxide - to_hydrogen
    net[WATER] = net.get(WATER, Fraction(0)) + to_hydroxide + to_hydrogen
    return _equation(net, half)


def _net(half: Equation) -> dict[Species, Fraction]:
    net: dict[Species, Fraction] = {}
    for sign, terms in ((-1, half.left), (1, half.right)):
        for term in terms:
            net[term.species] = net.get(term.species, Fraction(0)) + sign * term.coefficient
    return net


def _equation(net: dict[Species, Fraction], model: Equation) -> Equation:
    """Lay out net amounts in the order a teacher writes: principal species, water, H⁺ or OH⁻, electrons last."""
    order = [t.species for t in (*model.left, *model.right)]
    aids = (WATER, HYDROGEN_ION, HYDROXIDE, ELECTRON)
    ranked = [kind for kind in order if kind not in aids] + list(aids)
    left = tuple(Term(k, _plain(-net[k])) for k in ranked if net.get(k, 0) < 0)
    right = tuple(Term(k, _plain(net[k])) for k in ranked if net.get(k, 0) > 0)
    return Equation(left, right)


def _plain(value: Fraction) -> int | Fraction:
    return int(value) if value.denominator == 1 else value
