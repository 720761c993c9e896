"""What acids and alkalis do to each other in a mixture: who gives hydrogen ions to whom, and what is left."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.condensation import CONDENSATIONS
from ionwright.chemistry.dissolving import weak_share
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.ion import Ion, ion
from ionwright.chemistry.ionic_compound import Compound, acid_chain, acid_step, compound_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.condensation import Condensation
    from ionwright.chemistry.mixture import Solute

__all__ = ["Amounts", "Settled", "settled"]

_HYDROGEN: Final = ion("H^+")
_HYDROXIDE: Final = ion("OH^-")
_AMMONIUM: Final = ion("NH4^+")
_AMMONIA: Final = compound_of(_AMMONIUM, _HYDROXIDE)
_NEARLY: Final = 1e-9

Amounts = dict[Ion, float | None]
"""Concentration of each ion that the substances give [mol/dm3]; None if it is not known."""


class Settled(NamedTuple):
    """What is there once acids and alkalis have reacted.

    Parameters
    ----------
    amounts
        The ions.
    weak
        Weak acids and ammonia that are there as molecules; their small share of ions is among `amounts`.
    firm
        The ions that are there beside this share.
    formed
        Ions that no substance brought.
    assumptions
        What happened, in sentences.
    """

    amounts: Amounts
    weak: tuple[Compound, ...]
    firm: tuple[Ion, ...]
    formed: tuple[Ion, ...]
    assumptions: tuple[str, ...]


def settled(solutes: Iterable[Solute]) -> Settled:
    """Return what is in a mixture once acids and alkalis have reacted.

    Parameters
    ----------
    solutes
        The substances, water left out.

    Raises
    ------
    CellRefused
        Acid and alkali meet and the amount of one is not known (``bad-concentration``).
    """
    brew = _Brew()
    for solute in solutes:
        brew.add(solute)
    brew.neutralise()
    brew.alkali_on_weak_acids()
    brew.alkali_on_acid_ions()
    brew.alkali_on_ammonium()
    brew.acid_on_ammonia()
    brew.acid_on_weak_ions()
    for row in CONDENSATIONS:
        brew.weak_on_condensing_ions(row)
    firm = tuple(brew.amounts)
    brew.ionise()
    return Settled(brew.amounts, tuple(brew.weak), firm, tuple(brew.formed), tuple(brew.said))


class _Brew:
    """A mixture while it reacts: ions in `amounts`, and in `weak` the molecules that are not yet split."""

    def __init__(self) -> None:
        self.amounts: Amounts = {}
        self.weak: dict[Compound, float | None] = {}
        self.formed: list[Ion] = []
        self.said: list[str] = []

    def add(self, solute: Solute) -> None:
        """Put in one substance."""
        compound = solute.compound
        if compound.strength == "weak" and compound.pKa is not None:
            self.weak[compound] = _sum(self.weak.get(compound, 0.0), solute.amount)
            return
        for one, count in solute.ions:
            self._more(one, None if solute.amount is None else solute.amount * count)

    def _more(self, one: Ion, amount: float | None) -> None:
        self.amounts[one] = _sum(self.amounts.get(one, 0.0), amount)

    def _less(self, one: Ion, amount: float) -> None:
        left = (self.amounts[one] or 0.0) - amount
        if left <= _NEARLY * amount:
            del self.amounts[one]
        else:
            self.amounts[one] = left

    def _less_weak(self, compound: Compound, amount: float) -> None:
        left = (self.weak[compound] or 0.0) - amount
        if left <= _NEARLY * amount:
            del self.weak[compound]
        else:
            self.weak[compound] = left

    def _form(self, one: Ion, amount: float) -> None:
        if one not in self.amounts:
            self.formed.append(one)
        self._more(one, amount)

    def neutralise(self) -> None:
        """Let strong acid and strong alkali turn into water."""
        if _HYDROGEN not in self.amounts or _HYDROXIDE not in self.amounts:
            return
        amount = min(
            _known(self.amounts[one], _NEUTRALISE, _ACID_AND_ALKALI) for one in (_HYDROGEN, _HYDROXIDE)
        )
        self._less(_HYDROGEN, amount)
        self._less(_HYDROXIDE, amount)
        survivor = next((one for one in (_HYDROGEN, _HYDROXIDE) if one in self.amounts), None)
        if survivor is None:
            self.said.append(
                "The acid and the alkali neutralise each other exactly, and only the salt is left in the water."
            )
        else:
            self.said.append(
                f"The acid and the alkali neutralise each other; {self.amounts[survivor]:.3g} mol/dm³ of "
                f"{survivor.stem} ions is left."
            )

    def alkali_on_weak_acids(self) -> None:
        """Let hydroxide ions, then ammonia, take the hydrogen of weak acids."""
        for acid in [one for one in self.weak if one.role == "acid"]:
            for alkali in (_HYDROXIDE, _AMMONIA):
                if acid in self.weak and (alkali in self.amounts or alkali in self.weak):
                    self._salt_of(acid, alkali)

    def _salt_of(self, acid: Compound, alkali: Ion | Compound) -> None:
        number = acid.ions[0][1]
        available = _known(self.weak[acid], _NEUTRALISE, _ACID_AND_ALKALI)
        given = self.weak[alkali] if isinstance(alkali, Compound) else self.amounts[alkali]
        used = min(_known(given, _NEUTRALISE, _ACID_AND_ALKALI), available * number)
        if isinstance(alkali, Compound):
            self._less_weak(alkali, used)
            self._form(_AMMONIUM, used)
        else:
            self._less(alkali, used)
        chain = acid_chain(acid.ions[-1][0])
        per_step = number / len(chain)  # 1 where every step is known, else all hydrogen goes at once
        steps = used / available / per_step
        whole = min(int(steps + _NEARLY), len(chain) - 1)
        further = min(max(steps - whole, 0.0), 1.0)
        self._less_weak(acid, available * (further if whole == 0 else 1.0))
        for place, share in ((whole - 1, 1.0 - further), (whole, further)):
            if place >= 0 and share > _NEARLY:
                self._form(chain[place], available * share)
        self.said.append(f"The {acid.name} and the alkali neutralise each other.")

    def alkali_on_acid_ions(self) -> None:
        """Let hydroxide ions take the hydrogen of such ions as hydrogencarbonate."""
        for one in list(self.amounts):
            step = acid_step(one)
            if step is None or _HYDROXIDE not in self.amounts:
                continue
            number, parent = step
            doing = f"The alkali turns {one.stem} ions into {parent.stem} ions"
            there = _known(self.amounts[one], doing, _REACTANTS)
            amount = min(there, _known(self.amounts[_HYDROXIDE], doing, _REACTANTS) / number)
            self._less(one, amount)
            self._less(_HYDROXIDE, amount * number)
            self._form(parent, amount)
            self.said.append(f"{doing}.")

    def alkali_on_ammonium(self) -> None:
        """Let hydroxide ions set ammonia free from ammonium ions."""
        if _HYDROXIDE not in self.amounts or _AMMONIUM not in self.amounts:
            return
        amount = min(_known(self.amounts[one], _AMMONIA_FREE, _REACTANTS) for one in (_AMMONIUM, _HYDROXIDE))
        self._less(_AMMONIUM, amount)
        self._less(_HYDROXIDE, amount)
        self.weak[_AMMONIA] = _sum(self.weak.get(_AMMONIA, 0.0), amount)
        self.said.append(f"{_AMMONIA_FREE}; what stays dissolved makes the solution weakly alkaline.")

    def acid_on_ammonia(self) -> None:
        """Let hydrogen ions turn ammonia into ammonium ions."""
        if _HYDROGEN not in self.amounts or _AMMONIA not in self.weak:
            return
        acid = _known(self.amounts[_HYDROGEN], _NEUTRALISE, _ACID_AND_ALKALI)
        amount = min(acid, _known(self.weak[_AMMONIA], _NEUTRALISE, _ACID_AND_ALKALI))
        self._less(_HYDROGEN, amount)
        self._less_weak(_AMMONIA, amount)
        self._form(_AMMONIUM, amount)
        self.said.append("The acid turns the ammonia into ammonium ions.")

    def acid_on_weak_ions(self) -> None:
        """Let hydrogen ions turn the ions of weak acids back into acid; without amounts it is left aside."""
        for one in list(self.amounts):
            acid, there, hydrogen = _weak_acid_of(one), self.amounts.get(one), self.amounts.get(_HYDROGEN)
            if acid is None or not there or not hydrogen:
                continue
            amount = min(there, hydrogen)
            self._less(one, amount)
            self._less(_HYDROGEN, amount)
            self.weak[acid] = _sum(self.weak.get(acid, 0.0), amount)
            self.said.append(
                f"The acid turns {one.stem} ions into {acid.name}, which hardly splits into ions."
            )

    def weak_on_condensing_ions(self, row: Condensation) -> None:
        """Let weak acids join ions such as chromate, and ammonia part them; without amounts it is left aside."""
        for compound in list(self.weak):
            is_acid = compound.role == "acid"
            old, new, ratio = (
                (row.single, row.joined, 1 / row.number)
                if is_acid
                else (row.joined, row.single, float(row.number))
            )
            each = 1.0 if is_acid else float(row.number)
            there, supply = self.amounts.get(old), self.weak[compound]
            if not there or not supply or len(compound.ions) != 2 or compound.ions[0][1] != 1:
                continue
            turned = min(there, supply / each)
            self._less(old, turned)
            self._less_weak(compound, turned * each)
            self._form(new, turned * ratio)
            self._form(compound.ions[1][0] if is_acid else _AMMONIUM, turned * each)
            self.said.append(row.acid if is_acid else row.alkali)

    def ionise(self) -> None:
        """Let what is left of weak acids and ammonia give its small share of ions."""
        for compound, amount in self.weak.items():
            ions = [one for one, _ in compound.ions]
            share = None
            if amount is not None:
                common = sum(self.amounts.get(one) or 0.0 for one in ions)
                share = weak_share(compound, amount, common)
            for one in ions:
                self._more(one, share)


_NEUTRALISE: Final = "The acid and the alkali neutralise each other"
_ACID_AND_ALKALI: Final = "Give both concentrations in mol/dm³, or name the salt that they make."
_REACTANTS: Final = "Give both concentrations in mol/dm³, or name what they make."
_AMMONIA_FREE: Final = "The alkali sets ammonia free from the ammonium ions"


def _sum(before: float | None, more: float | None) -> float | None:
    return None if before is None or more is None else before + more


def _known(amount: float | None, doing: str, remedy: str) -> float:
    if amount is None:
        raise CellRefused(
            "bad-concentration",
            f"{doing}, and what is left depends on how much there is of each.",
            where="electrolyte",
            remedy=remedy,
        )
    return amount


def _weak_acid_of(one: Ion) -> Compound | None:
    """The weak acid of an ion of charge one, such as ethanoic acid."""
    if one.charge != -1 or not one.acid_name or one.strong_acid or one.acid_pKa is None:
        return None
    return compound_of(_HYDROGEN, one)
