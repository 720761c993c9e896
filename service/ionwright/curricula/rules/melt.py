"""Discharge in a melt: no water competes, so the ions of the salt itself are discharged."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ionwright.chemistry.couple import HYDROXIDE
from ionwright.chemistry.melt import flux_ions
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import species
from ionwright.curricula.model import PASS, ReadsNothingElse, Remark, Ruling, Situation, undecidable
from ionwright.curricula.wording import contender, forming, ions, listed, metal, sentence_start

if TYPE_CHECKING:
    from ionwright.chemistry.species import Species

# How easily anions are discharged from a melt, the easiest first: by decomposition voltages of molten salts
# (melts.toml) and, for hydride and sulfide, by the potentials of their couples.
_EASIEST_FIRST = ("H^-", "S^2-", "I^-", "Br^-", "OH^-", "O^2-", "Cl^-", "CO3^2-", "F^-")

_HYDRIDE = species("H^-")


@dataclass(frozen=True, slots=True)
class MeltCathode(ReadsNothingElse):
    """In a melt the metal ion is discharged; of several metals the least reactive, the ions of a flux last."""

    @property
    def sentence(self) -> str:
        """The rule in words."""
        return (
            "In a melt there is no water: the metal ions are discharged and the metal forms at the cathode."
        )

    def apply(self, situation: Situation) -> Ruling:
        """Choose the metal that forms; pass for a solution in water."""
        if not situation.cell.is_molten:
            return PASS
        metals = situation.of(Kind.METAL)
        if not metals or any(_is_oxo_anion(ion) for ion in situation.cell.own_ions):
            return _beyond("cathode", situation)
        flux = flux_ions(situation.cell.electrolyte.ingredients)
        contest = [p for p in metals if p.reactant not in flux] or list(metals)
        chosen = max(contest, key=lambda p: p.potential_V if p.potential_V is not None else -9.0)
        name = metal(chosen.metal)
        if len(metals) == 1:
            subject = sentence_start(ions(chosen.reactant))
            because = (
                f"{subject} are the only positive ions in the melt, so they are discharged and {name} forms."
            )
        else:
            because = f"Of the metals in the melt {name} is the one whose ions are discharged most easily."
        return Ruling(
            chosen=chosen,
            because=(because,),
            ruled_out=tuple(
                Remark(p, _stays(p, name, is_flux=p.reactant in flux)) for p in metals if p is not chosen
            ),
        )


def _is_oxo_anion(ion: Species) -> bool:
    """Whether the ion would bring oxygen to the cathode: carbonate, sulfate and nitrate melts are no simple melts."""
    return (
        ion.charge < 0
        and len(ion.atoms) > 1
        and ion != HYDROXIDE
        and any(symbol == "O" for symbol, _ in ion.atoms)
    )


def _stays(process: ElectrodeProcess, name: str, *, is_flux: bool) -> str:
    subject = sentence_start(ions(process.reactant))
    if is_flux:
        return f"{subject} belong to the salt that lowers the melting point; {name} is discharged."
    return f"{subject} are discharged less easily than those of {name}."


@dataclass(frozen=True, slots=True)
class MeltAnode(ReadsNothingElse):
    """In a melt the negative ion is discharged; of several the one discharged most easily.

    Parameters
    ----------
    oxide_on_carbon
        What the course writes for an oxide melt at a carbon anode: ``"oxygen"``, or ``"carbon-dioxide"``.
    is_hydride_taught
        Whether the course goes deep enough for hydrogen at the anode; else a hydride is left open.
    """

    oxide_on_carbon: str = "oxygen"
    is_hydride_taught: bool = True

    @property
    def sentence(self) -> str:
        """The rule in words."""
        told = "In a melt the negative ions are discharged and the non-metal forms at the anode"
        if self.oxide_on_carbon == "oxygen":
            return f"{told}."
        return f"{told}; from an oxide melt a carbon anode burns to carbon dioxide."

    def apply(self, situation: Situation) -> Ruling:
        """Choose the non-metal that forms; pass for a solution in water, and for an anode that reacts itself."""
        if not situation.cell.is_molten or situation.of(Kind.DISSOLVES, Kind.FILM):
            return PASS
        burning = situation.of(Kind.BURNS)
        contest = [p for p in situation.remaining if p.kind is not Kind.BURNS]
        if not contest:
            return _beyond("anode", situation)
        chosen = min(contest, key=lambda p: _EASIEST_FIRST.index(p.reactant.ascii))
        name = ions(chosen.reactant)
        if chosen.reactant == _HYDRIDE and not self.is_hydride_taught:
            return undecidable(
                f"This course has no rule for {name} at the anode; in fact hydrogen forms there, from the negative ion."
            )
        if burning and chosen.kind is Kind.OXYGEN and self.oxide_on_carbon != "oxygen":
            return _burns(burning[0], chosen, situation)
        if len(contest) == 1:
            start = f"{sentence_start(name)} are the only negative ions in the melt, so they are discharged"
            because = f"{start} and {forming(chosen)}."
        else:
            start = f"Of the negative ions in the melt {name} are discharged most easily"
            because = f"{start}, so {forming(chosen)}."
        return Ruling(
            chosen=chosen,
            because=(because,),
            ruled_out=tuple(Remark(p, _why_not(p, name)) for p in situation.remaining if p is not chosen),
            also_accepted=tuple(
                Remark(p, "On carbon the oxygen burns the anode, so carbon dioxide is what leaves the cell.")
                for p in burning
            ),
            is_contested=bool(burning),
        )


def _burns(chosen: ElectrodeProcess, oxygen: ElectrodeProcess, situation: Situation) -> Ruling:
    """The ruling that the carbon of the anode burns in an oxide melt, with oxygen accepted too."""
    why = "The oxide ions give up electrons at hot carbon, which burns: carbon dioxide leaves the cell."
    return Ruling(
        chosen=chosen,
        because=(why,),
        ruled_out=tuple(
            Remark(
                p,
                "At hot carbon no free oxygen is left."
                if p is oxygen
                else _why_not(p, ions(oxygen.reactant)),
            )
            for p in situation.remaining
            if p is not chosen
        ),
        also_accepted=(Remark(oxygen, "Courses that leave the carbon out write oxygen."),),
        is_contested=True,
    )


def _why_not(process: ElectrodeProcess, name: str) -> str:
    if process.kind is Kind.BURNS:
        return "The course writes the discharge of the ions first; the hot carbon then burns in the oxygen."
    return f"{sentence_start(contender(process))} are discharged less easily than {name}."


def _beyond(electrode: str, situation: Situation) -> Ruling:
    present = listed(ions(ion) for ion in situation.cell.own_ions)
    return undecidable(
        f"A melt of {present} does not give the simple answer of one metal and one non-metal, "
        f"and school courses have no rule for its {electrode}."
    )
