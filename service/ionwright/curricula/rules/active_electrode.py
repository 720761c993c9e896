"""Anodes that react themselves."""

from __future__ import annotations

from dataclasses import dataclass

from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.curricula.model import PASS, ReadsNothingElse, Remark, Ruling, Situation
from ionwright.curricula.wording import contender, listed, products, sentence_start

_SALT_FILM_ELEMENTS = frozenset({"Cl", "Br", "I"})


@dataclass(frozen=True, slots=True)
class ActiveElectrode(ReadsNothingElse):
    """A metal anode that is easier to oxidise than the anions reacts itself.

    Parameters
    ----------
    taught
        Electrode materials for which the course teaches it; for the others the answer is given and marked as beyond it.
    films
        ``"film"``: an oxide or sulfate skin that grows counts as the answer; ``"oxygen"``: the course treats such an
        anode as inert.
    is_slow_told
        Whether the course goes deep enough to name oxidations that are too slow anyway; else those ions simply stay.
    """

    taught: tuple[str, ...]
    films: str
    is_slow_told: bool

    @property
    def sentence(self) -> str:
        """The rule in words."""
        taught = (
            listed((name.replace("-", " ") for name in self.taught), "or") if self.taught else "other metals"
        )
        return f"An active anode dissolves instead of an anion being discharged; the course teaches it for {taught}."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the electrode's own oxidation."""
        own = situation.of(Kind.DISSOLVES, Kind.FILM)
        if not own:
            return PASS
        chosen = own[0]
        if chosen.kind is Kind.FILM and not _is_salt_film(chosen) and self.films == "oxygen":
            return Ruling(
                ruled_out=(
                    Remark(chosen, "This course treats such an anode as inert; in fact a film grows on it."),
                ),
                also_accepted=(
                    Remark(chosen, f"In fact a film of {products(chosen)} grows on the anode first."),
                ),
                is_contested=True,
            )
        anode = situation.cell.anode
        is_taught = anode.id in self.taught
        return Ruling(
            chosen=chosen,
            because=(_why_active(chosen, anode.name),),
            ruled_out=tuple(
                Remark(p, _why_not_beside(p, anode.name, situation) if self._is_told(p) else "")
                for p in situation.remaining
                if p is not chosen
            ),
            is_contested=not is_taught,
            otherwise="" if is_taught else "A course that treats every anode as inert gives this answer.",
            assumptions=()
            if is_taught
            else (
                f"The course does not name {anode.name} as an active electrode; the same reasoning was applied to it.",
            ),
        )

    def _is_told(self, process: ElectrodeProcess) -> bool:
        return process.reactant.charge <= 0 and (self.is_slow_told or not process.slow)


def _why_not_beside(process: ElectrodeProcess, name: str, situation: Situation) -> str:
    """Why an anion, or water, is not oxidised beside an anode that reacts itself."""
    half = situation.conventions.written(process, situation.cell.medium)
    if process.kind is Kind.OXYGEN and process.reactant not in half.reactants:
        return f"Water is not oxidised: {name} gives up electrons more easily."
    return f"{sentence_start(contender(process))} stay in solution: {name} is oxidised more easily."


def _is_salt_film(process: ElectrodeProcess) -> bool:
    return any(symbol in _SALT_FILM_ELEMENTS for symbol, _ in process.products[0].atoms)


def _why_active(process: ElectrodeProcess, name: str) -> str:
    if process.kind is Kind.FILM:
        return (
            f"The anode is {name}, which is oxidised more easily than the ions in the solution, "
            f"but what forms does not dissolve: a film of {products(process)} grows on it."
        )
    return (
        f"The anode is {name}, an active electrode: its atoms lose electrons more easily than the negative ions, "
        f"so it dissolves as {products(process)} instead of an anion being discharged."
    )
