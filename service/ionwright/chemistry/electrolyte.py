"""Electrolytes: which ions a solution or a melt holds, at what concentrations, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite
from typing import TYPE_CHECKING, Final, Literal

from ionwright.chemistry.asked_state import State, state_to_work_with
from ionwright.chemistry.compound import SubstanceReading, read_substance
from ionwright.chemistry.concentration import Concentration, concentration_of, read_concentration
from ionwright.chemistry.condensation import condense
from ionwright.chemistry.dissolving import check_amount, dissolved_ions, weak_share
from ionwright.chemistry.faults import CellRefused, FormulaError
from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import WATER, Compound, molecular
from ionwright.chemistry.melting import melted
from ionwright.chemistry.mixture import Mixed, Solute, after_mixing, check_formed, check_given_ph
from ionwright.chemistry.not_electrolytes import MoleculesOnly
from ionwright.chemistry.solubility import nonexistence_reason
from ionwright.chemistry.solution_name import melt_name, solution_name
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Callable

    from ionwright.chemistry.proton_transfer import Amounts
    from ionwright.chemistry.species import Species

__all__ = ["Dissolved", "Electrolyte", "Ingredient", "PresentIon", "make_electrolyte"]

_MAX_INGREDIENTS: Final = 8
_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")
_Kw: Final = 1e-14
"""Ionic product of water at 25 °C [mol2/dm6]."""

Word = Literal["dilute", "concentrated"]


@dataclass(frozen=True, slots=True)
class Ingredient:
    """A substance as somebody names it, with the concentration beside it.

    Parameters
    ----------
    substance
        A formula, a name or an everyday name.
    concentration
        A quantity or a word; None if not said.
    """

    substance: str
    concentration: str | None = None


@dataclass(frozen=True, slots=True)
class Dissolved:
    """An ingredient once it is understood.

    Parameters
    ----------
    compound
        What it is.
    text_given
        As it was named.
    concentration
        As it was given, or as the name implies; None if nothing is known.
    is_concentration_given
        Whether it stood in a field of its own.
    """

    compound: Compound
    text_given: str
    concentration: Concentration | None = None
    is_concentration_given: bool = False


@dataclass(frozen=True, slots=True)
class PresentIon:
    """An ion of the electrolyte.

    Parameters
    ----------
    ion
        Which ion.
    concentration
        Amount concentration [mol/dm3]; None if not known, and always None in a melt.
    source
        Whether the dissolved substance or the water gives it.
    """

    ion: Ion
    concentration: float | None
    source: Literal["electrolyte", "water"]


@dataclass(frozen=True, slots=True)
class Electrolyte:
    """What conducts in a cell.

    Parameters
    ----------
    ingredients
        What was dissolved or melted.
    state
        aqueous or molten.
    ions
        All ions present; in water H^+ and OH^- among them.
    medium
        acidic, neutral, alkaline or molten.
    assumptions
        Sentences that tell what had to be assumed.
    melting_point_C
        Of a melt [degC]; None for a solution or without a figure.
    notes
        Sentences worth telling with the answer.
    word
        dilute or concentrated, if that was said of the whole electrolyte.
    solution_name
        What the solution or melt is once all has dissolved, reacted or melted, such as ``"copper(II) sulfate"`` or
        ``"sodium hydroxide and sodium chloride"``, without the words "solution" and "molten".
    """

    ingredients: tuple[Dissolved, ...]
    state: State
    ions: tuple[PresentIon, ...]
    medium: Literal["acidic", "neutral", "alkaline", "molten"]
    assumptions: tuple[str, ...] = ()
    melting_point_C: float | None = None
    notes: tuple[str, ...] = ()
    word: Word | None = None
    solution_name: str = ""

    @property
    def cations(self) -> tuple[PresentIon, ...]:
        """The positive ions."""
        return tuple(one for one in self.ions if one.ion.charge > 0)

    @property
    def anions(self) -> tuple[PresentIon, ...]:
        """The negative ions."""
        return tuple(one for one in self.ions if one.ion.charge < 0)

    def concentration_of(self, species: Species) -> float | None:
        """Concentration of an ion [mol/dm3]; None if it is not known or the ion is not there."""
        return next((one.concentration for one in self.ions if one.ion.species == species), None)

    def has(self, species: Species) -> bool:
        """Whether an ion is there."""
        return any(one.ion.species == species for one in self.ions)


def make_electrolyte(ingredients: tuple[Ingredient, ...], state: str, ph: float | None) -> Electrolyte:
    """Return the electrolyte that these ingredients make.

    Parameters
    ----------
    ingredients
        One substance, or several for a mixture.
    state
        aqueous, molten, solid or liquid.
    ph
        pH [1] if it is given, else None; it overrides what the substances would give.

    Raises
    ------
    IonwrightError
        With ``where`` set. Checked in the order reading, charges, existence, state, solubility.
    """
    if not ingredients:
        raise FormulaError(
            "unreadable-formula",
            "No electrolyte is given.",
            where="electrolyte",
            remedy='Name one, such as "CuSO4".',
        )
    if len(ingredients) > _MAX_INGREDIENTS:
        raise CellRefused(
            "too-many-substances",
            f"A mixture may hold at most {_MAX_INGREDIENTS} substances.",
            where="electrolyte",
            remedy="Leave out what only carries charge.",
        )
    readings = _readings(ingredients, state)
    solutes, assumptions = _solutes(ingredients, readings)
    for index, one in enumerate(solutes):
        _check_existence(one.compound, index)
    chosen, said = state_to_work_with(
        state, readings, has_concentration=any(one.concentration for one in solutes)
    )
    assumptions += said
    if chosen == "molten":
        implied = {reading.concentration_assumption for reading in readings}
        return _melt(solutes, [one for one in assumptions if one not in implied])
    return _solution(solutes, ph, assumptions)


def _readings(ingredients: tuple[Ingredient, ...], state: str) -> list[SubstanceReading]:
    """What the substances are; what has no ions may stand only beside something that has."""
    read = read_substance if len(ingredients) == 1 else _beside_others
    readings = [_reading(read, one, index, state) for index, one in enumerate(ingredients)]
    roles = [one.compound.role for one in readings]
    if "molecule" in roles and set(roles) <= {"molecule", "water"}:
        index = roles.index("molecule")
        _reading(read_substance, ingredients[index], index, state)  # raises: nothing here conducts
    return readings


def _reading(
    read: Callable[[str], SubstanceReading], ingredient: Ingredient, index: int, state: str
) -> SubstanceReading:
    try:
        return read(ingredient.substance)
    except MoleculesOnly as refusal:
        fault = refusal.when_molten() if state in ("molten", "liquid") else refusal
        raise fault.within(f"electrolyte/{index}/substance") from None
    except IonwrightError as fault:
        raise fault.within(f"electrolyte/{index}/substance") from None


@lru_cache(maxsize=4096)
def _beside_others(text: str) -> SubstanceReading:
    """What a text means in a mixture, where a substance without ions may stand too."""
    try:
        return read_substance(text)
    except MoleculesOnly as refusal:
        molecule = refusal.molecule
        if not molecule.mixes:
            raise refusal.beside_others() from None
        return SubstanceReading(
            molecular(molecule.formula, molecule.name), assumptions=(molecule.assumption,)
        )


def _solutes(
    ingredients: tuple[Ingredient, ...], readings: list[SubstanceReading]
) -> tuple[tuple[Dissolved, ...], list[str]]:
    solutes: list[Dissolved] = []
    assumptions: list[str] = []
    for index, (given, reading) in enumerate(zip(ingredients, readings, strict=True)):
        assumptions += reading.assumptions
        concentration = reading.concentration
        if given.concentration is not None:
            try:
                concentration = read_concentration(given.concentration)
                if reading.compound.role != "molecule":
                    concentration = concentration_of(reading.compound, concentration)
            except IonwrightError as fault:
                raise fault.within(f"electrolyte/{index}/concentration") from None
        elif concentration is not None:
            if reading.concentration_assumption:
                assumptions.append(reading.concentration_assumption)
            try:
                concentration = concentration_of(reading.compound, concentration)
            except IonwrightError as fault:
                raise fault.within(f"electrolyte/{index}/substance") from None
        solutes.append(
            Dissolved(reading.compound, given.substance, concentration, given.concentration is not None)
        )
    return tuple(solutes), assumptions


def _check_existence(compound: Compound, index: int) -> None:
    reason = nonexistence_reason(compound)
    if reason:
        raise CellRefused(
            "does-not-exist",
            reason,
            where=f"electrolyte/{index}/substance",
            remedy="Choose another salt of one of its ions.",
        )


def _melt(solutes: tuple[Dissolved, ...], assumptions: list[str]) -> Electrolyte:
    compounds = tuple(one.compound for one in solutes)
    melt = melted(compounds)
    if any(one.concentration and one.concentration.word is None for one in solutes):
        assumptions.append("A melt is the pure salt, so the concentration is left aside.")
    return Electrolyte(
        ingredients=solutes,
        state="molten",
        ions=tuple(PresentIon(one, None, "electrolyte") for one in melt.ions),
        medium="molten",
        assumptions=(*assumptions, *melt.assumptions),
        melting_point_C=melt.melting_point_C,
        notes=melt.notes,
        solution_name=melt_name(compounds),
    )


def _solution(solutes: tuple[Dissolved, ...], ph: float | None, assumptions: list[str]) -> Electrolyte:
    _check_ph(ph)
    notes: list[str] = []
    told: dict[Compound, tuple[str, ...]] = {}
    parts: list[Solute] = []
    for index, one in enumerate(solutes):
        try:
            ions = dissolved_ions(one.compound)
        except IonwrightError as fault:
            others = (other.compound.role for other in solutes if other is not one)
            if fault.code == "insoluble" and not {"water", "molecule"}.issuperset(others):
                fault.remedy = f"Leave the {one.compound.name} out."
            raise fault.within(f"electrolyte/{index}/substance") from None
        try:
            check_amount(one.compound, one.concentration)
        except IonwrightError as fault:
            field = "concentration" if one.is_concentration_given else "substance"
            raise fault.within(f"electrolyte/{index}/{field}") from None
        told[one.compound] = ions.assumptions
        notes += ions.notes
        amount = one.concentration.mol_dm3 if one.concentration else None
        parts.append(Solute(one.compound, amount, ions.ions))
    mixed = after_mixing(tuple(parts)) if len(parts) > 1 else _alone(parts[0])
    amounts = mixed.amounts
    assumptions += [one for compound in told if _stays(compound, mixed, len(parts)) for one in told[compound]]
    assumptions += mixed.assumptions
    if ph is not None:
        check_given_ph(amounts, ph, of_acid=any(one.compound.role == "acid" for one in parts))
    firm = list(mixed.firm)
    for change in condense(amounts, ph, buffered=bool(mixed.weak)):
        assumptions += [change.tells, *check_formed(change.formed, amounts)]
        firm = [one for one in (*firm, change.formed) if one in amounts]
    return Electrolyte(
        ingredients=tuple(one for one in solutes if one.compound.formula),
        state="aqueous",
        ions=_with_water(amounts, ph),
        medium=_medium(amounts, ph),
        assumptions=tuple(dict.fromkeys(assumptions)),
        notes=tuple(dict.fromkeys(notes)),
        word=_word(solutes),
        solution_name=solution_name(tuple(one.compound for one in solutes), tuple(firm), mixed.weak),
    )


def _stays(compound: Compound, mixed: Mixed, number: int) -> bool:
    """Whether what was said of a substance by itself still holds: in a mixture water is only the solvent."""
    return number == 1 or compound.strength != "weak" or compound in mixed.weak


def _alone(solute: Solute) -> Mixed:
    amounts = _amounts_of_one(solute)
    return Mixed(amounts, (), tuple(amounts), ())


def _amounts_of_one(solute: Solute) -> Amounts:
    if solute.compound is WATER:
        return {}
    if solute.amount is None:
        return {one: None for one, _ in solute.ions}
    if solute.compound.strength == "weak":
        ionised = weak_share(solute.compound, solute.amount)
        return {one: ionised for one, _ in solute.ions}
    return {one: solute.amount * count for one, count in solute.ions}


def _check_ph(ph: float | None) -> None:
    if ph is not None and not (isfinite(ph) and -1 <= ph <= 15):
        raise CellRefused(
            "out-of-range",
            "A pH lies between about 0 and 14.",
            where="ph",
            remedy="Give a pH from 0 to 14, or leave it out.",
        )


def _with_water(amounts: Amounts, ph: float | None) -> tuple[PresentIon, ...]:
    """All ions, the hydrogen and hydroxide ions of water among them."""
    hydrogen, hydroxide = amounts.get(_HYDROGEN), amounts.get(_HYDROXIDE)
    if ph is not None:
        hydrogen, hydroxide = 10.0**-ph, 10.0 ** (ph - 14)
    elif _HYDROGEN in amounts:
        hydroxide = _Kw / hydrogen if hydrogen else None
    elif _HYDROXIDE in amounts:
        hydrogen = _Kw / hydroxide if hydroxide else None
    elif _needs_alkali(amounts):
        hydrogen = hydroxide = None
    else:
        hydrogen = hydroxide = 1e-7
    found = [
        PresentIon(one, amount, "electrolyte")
        for one, amount in amounts.items()
        if one is not _HYDROGEN and one is not _HYDROXIDE
    ]
    found.append(PresentIon(_HYDROGEN, hydrogen, "electrolyte" if _HYDROGEN in amounts else "water"))
    found.append(PresentIon(_HYDROXIDE, hydroxide, "electrolyte" if _HYDROXIDE in amounts else "water"))
    return tuple(found)


def _medium(amounts: Amounts, ph: float | None) -> Literal["acidic", "neutral", "alkaline"]:
    if ph is not None:
        return "acidic" if ph < 6 else "alkaline" if ph > 8 else "neutral"
    if _HYDROGEN in amounts:
        return "acidic"
    if _HYDROXIDE in amounts or _needs_alkali(amounts):
        return "alkaline"
    return "neutral"


def _needs_alkali(amounts: Amounts) -> bool:
    return any(one.medium == "alkaline" for one in amounts)


def _word(solutes: tuple[Dissolved, ...]) -> Word | None:
    words = {
        one.concentration.word for one in solutes if one.concentration and one.compound.role != "molecule"
    }
    return words.pop() if len(words) == 1 else None
