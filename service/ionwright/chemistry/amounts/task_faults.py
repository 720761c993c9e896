"""Says why a task cannot be worked out: figures that do not go together, or too little to go on."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.naming import listed, name_of, shown, with_article
from ionwright.chemistry.amounts.network import reachable
from ionwright.chemistry.amounts.quantity import Key
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.faults import QuantityFault

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ionwright.chemistry.amounts.known_values import KnownValues
    from ionwright.chemistry.amounts.network import Clash, Solution
    from ionwright.chemistry.amounts.relations import Relation
    from ionwright.chemistry.amounts.task import Given, Wanted

__all__ = ["contradiction", "needs_more"]

_OF_WHAT_FORMS: Final = frozenset(
    {"mass", "amount", "volume", "thickness", "number_of_particles", "total_mass"}
)


def contradiction(clashes: Sequence[Clash], given: Mapping[Key, Given], solution: Solution) -> QuantityFault:
    """The fault of a task whose figures do not go together."""
    clash = next((c for c in clashes if c.key in given), clashes[0])
    if clash.relation.name == "shares":
        return _too_many_shares(clash, given, solution)
    figures = max(3, min(solution.values[clash.key].figures, 5))
    basis = _listed(given, clash.rests_on)
    other = shown(clash.key, nominal(clash.other), figures)
    if clash.key in given:
        said = f"the task says {given[clash.key].value.text}"
    else:
        rest = _listed(given, solution.values[clash.key].given)
        stated = shown(clash.key, nominal(clash.value), figures)
        said = f"{rest} {'give' if ' and ' in rest else 'gives'} {stated}"
    name = with_article(name_of(clash.key))
    detail = f"These do not go together: from {basis} follows {name} of {other}, but {said}."
    remedy = "Check the figures and units, or leave one of them out."
    named = {key.kind for key in given}
    if named & _OF_WHAT_FORMS and "efficiency" not in named and "share" not in named:
        remedy += ' If part of the current goes elsewhere, ask for the "efficiency".'
    return QuantityFault("contradictory", detail, where=_where(clash, given), remedy=remedy)


def _where(clash: Clash, given: Mapping[Key, Given]) -> str:
    if clash.key in given:
        return given[clash.key].where
    return next((one.where for key, one in given.items() if key in clash.rests_on), "")


def _too_many_shares(clash: Clash, given: Mapping[Key, Given], solution: Solution) -> QuantityFault:
    shares = [key for key in clash.relation.members if key in solution.values]
    total = sum(nominal(solution.values[key].number) for key in shares)
    detail = (
        f"The shares of the current at one electrode come to {shown(Key('share'), total, 3)}, not to 100%."
    )
    where = next((given[key].where for key in reversed(shares) if key in given), "")
    return QuantityFault("contradictory", detail, where=where, remedy="Leave one out to have it worked out.")


def _listed(given: Mapping[Key, Given], keys: frozenset[Key]) -> str:
    """The given quantities among these, those of the same name with their process."""
    names = [name_of(key) for key in given]
    told = ((key, name_of(key, is_whole=names.count(name_of(key)) > 1)) for key in given if key in keys)
    return listed([f"the {name} of {given[key].value.text}" for key, name in told]) or "the constants"


def needs_more(
    wanted: Wanted, key: Key, relations: Sequence[Relation], knowns: KnownValues, hints: Sequence[str]
) -> QuantityFault:
    """The fault of a wish that cannot be fulfilled, with what would be enough.

    Parameters
    ----------
    hints
        Ways to make it follow, in words.
    """
    detail = f"The {name_of(key)} cannot be found from what is given."
    known = {one.key for one in knowns.values}
    for mass, symbol in knowns.without_mass.items():
        if key in reachable(relations, known | {mass}):
            name = substance_text(mass.of)
            detail = f"The tables hold no relative atomic mass of {symbol}, so that {name} cannot be weighed."
            remedy = f'Give it under "relative_atomic_masses" of the conventions: {{"{symbol}": "..."}}.'
            return QuantityFault("needs-more", detail, where=wanted.where, remedy=remedy)
    remedy = (
        f"Give also {'; or '.join(hints)}."
        if hints
        else "Nothing in this task leads to it: check which substance and which process it is asked of."
    )
    return QuantityFault("needs-more", detail, where=wanted.where, remedy=remedy)
