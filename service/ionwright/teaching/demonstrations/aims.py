"""What should be seen: which product of which electrode an aim means, and how much of it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.amounts.circuit import Circuit
from ionwright.chemistry.amounts.known_values import checked_value
from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.chemistry.amounts.subject import keys_meant
from ionwright.chemistry.amounts.task import Given
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.densities import density_g_cm3
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.written_quantity import read_written
from ionwright.curricula.wording import listed
from ionwright.errors import IonwrightError
from ionwright.teaching.demonstrations.description import VISIBLE
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb
from ionwright.teaching.quantities.phrases import Phrase, read_phrase

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from ionwright.chemistry.amounts.circuit import Process
    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.written_quantity import Written
    from ionwright.teaching.demonstrations.description import Aim

__all__ = ["QUANTITIES_OF_AIMS", "ReadAim", "read_aim"]

QUANTITIES_OF_AIMS: Final = ("mass", "volume", "amount", "thickness", "number_of_particles")
"""What can be aimed at."""

_NOT_THERE: Final = frozenset({"needs-more", "not-in-task"})
"""Codes of what a process does not have; another may have it."""

_SAYS_VISIBLE: Final = re.compile(
    rf"(?:an? )?{VISIBLE}(?: (?:coat|layer|amount|volume|gas|bead))?", re.IGNORECASE
)
_VISIBLE: Final = {
    "s": ("thickness", "visible_coat"),
    "l": ("mass", "visible_bead"),
    "g": ("volume", "visible_gas"),
    "aq": ("amount", "visible_colour"),
    "s without density": ("amount", "visible_colour"),
}
"""By the look of a product: the quantity that makes it visible, and the rule of thumb that says how much."""
_FIRST_SEEN: Final = tuple(_VISIBLE)
_NOT_SEEN: Final = frozenset({"H2O", "H^+", "OH^-"})


@dataclass(frozen=True, slots=True)
class ReadAim:
    """An aim once it is understood.

    Parameters
    ----------
    key
        The quantity, with the electrode and the product that it belongs to.
    written
        How much of it.
    rule
        The rule of thumb that says how much; empty if the aim says so itself.
    """

    aim: Aim
    key: Key
    written: Written
    rule: str = ""

    @property
    def needs_area(self) -> bool:
        """Whether it depends on the area of the electrode."""
        return self.key.kind == "thickness"


def read_aim(aim: Aim, processes: Sequence[Process]) -> ReadAim:
    """The product, the electrode and the amount that an aim means.

    Parameters
    ----------
    processes
        One for each electrode that is decided.

    Raises
    ------
    IonwrightError
        ``not-formed`` with what the cell does give, ``needs-more`` where several products could be meant, or the
        fault of the quantity; with the path of the aim in ``where``.
    """
    try:
        return _read(aim, processes)
    except IonwrightError as fault:
        raise fault.within(aim.where) from None


def _read(aim: Aim, processes: Sequence[Process]) -> ReadAim:
    phrase = _phrase(aim.quantity) if aim.quantity.strip() else None
    of = aim.of or (phrase.of if phrase else "")
    electrode = aim.electrode or (phrase.process if phrase else "")
    is_visible = _SAYS_VISIBLE.fullmatch(" ".join(aim.value.split())) is not None
    if phrase is None and not is_visible:
        return _by_dimension(aim, of, electrode, processes)
    name = phrase.quantity if phrase else ""
    if name and name not in QUANTITIES_OF_AIMS:
        detail = f"The {QUANTITIES[name].noun} is nothing that is seen to form."
        remedy = f"Aim at one of these: {listed(_said(one) for one in QUANTITIES_OF_AIMS)}."
        raise QuantityFault("unknown-quantity", detail, where="quantity", remedy=remedy)
    if is_visible:
        return _visible(aim, name, of, electrode, processes)
    return _stated(aim, name, of, electrode, processes)


def _phrase(text: str) -> Phrase:
    try:
        return read_phrase(text)
    except IonwrightError as fault:
        raise fault.within("quantity") from None


def _said(name: str) -> str:
    return name.replace("_", " ")


def _by_dimension(aim: Aim, of: str, electrode: str, processes: Sequence[Process]) -> ReadAim:
    """An aim that does not name its quantity: the unit tells which it is."""
    dimension = _written(aim.value, "").unit.dimension
    for name in QUANTITIES_OF_AIMS:
        if QUANTITIES[name].dimension == dimension and dimension != "fraction":
            return _stated(aim, name, of, electrode, processes)
    detail = f"The aim does not say which quantity {aim.value.strip()} is."
    remedy = 'Name it, such as "mass", "volume" or "thickness".'
    raise QuantityFault("needs-more", detail, where="quantity", remedy=remedy)


def _written(text: str, dimension: str) -> Written:
    try:
        return read_written(text, dimension=dimension)
    except IonwrightError as fault:
        raise fault.within("value") from None


def _stated(aim: Aim, name: str, of: str, electrode: str, processes: Sequence[Process]) -> ReadAim:
    key, state = _only(name, of, electrode, processes)
    written = _written(aim.value, QUANTITIES[key.kind].dimension)
    checked_value(key, Given(key.kind, written, where="value"))
    if name == "thickness" and state != "s":
        raise _no_coat(key)
    return ReadAim(aim, key, written)


def _visible(aim: Aim, name: str, of: str, electrode: str, processes: Sequence[Process]) -> ReadAim:
    found = [
        (key, look)
        for key, state in _products(name or "mass", of, electrode, processes)
        if key.of not in _NOT_SEEN and (look := _look(key.of, state)) in _VISIBLE
    ]
    if not found:
        key, _ = _only(name or "mass", of, electrode, processes)
        detail = f"There is no rule here for how much {substance_text(key.of)} can be seen."
        raise QuantityFault(
            "needs-more", detail, where="value", remedy='Give an amount of it, such as "0.1 mmol".'
        )
    if len(found) > 1 and of:
        _only(name or "mass", of, electrode, processes)
    # without a product, a coat on the cathode is what a teacher means, and a gas where there is none
    key, look = min(found, key=lambda one: _FIRST_SEEN.index(one[1]))
    kind, rule = _VISIBLE[look]
    if name and name != kind:
        detail = f'"{VISIBLE}" says nothing of the {_said(name)} of {substance_text(key.of)}.'
        remedy = f"Leave the quantity out, which means a {_said(kind)}, or give a figure."
        raise QuantityFault("needs-more", detail, where="value", remedy=remedy)
    return ReadAim(aim, key._replace(kind=kind), rule_of_thumb(rule).written, rule)


def _look(of: str, state: str) -> str:
    return "s without density" if state == "s" and not density_g_cm3(of) else state


def _no_coat(key: Key) -> QuantityFault:
    detail = f"{substance_text(key.of)} makes no coat that has a thickness."
    return QuantityFault("not-formed", detail, where="quantity", remedy="Aim at its mass or its volume.")


def _only(name: str, of: str, electrode: str, processes: Sequence[Process]) -> tuple[Key, str]:
    """The one product that is meant, with its state."""
    found = list(_products(name, of, electrode, processes))
    if len(found) > 1:
        which = " or ".join(f"{substance_text(key.of)} at the {key.process}" for key, _ in found)
        detail = f"The {_said(name)} could be that of {which}."
        raise QuantityFault("needs-more", detail, remedy='Say which with "of" or "electrode".')
    if not found:
        _refuse_quantity(name, of, electrode, processes)
        raise _not_formed(of, electrode, processes)
    return found[0]


def _refuse_quantity(name: str, of: str, electrode: str, processes: Sequence[Process]) -> None:
    """Refuse a quantity that a product which does form cannot have."""
    for key, _ in _products("mass", of, electrode, processes) if name != "mass" else ():
        process = next(process for process in processes if process.id == key.process)
        try:
            keys_meant(Circuit((process,)), name, of, "")
        except QuantityFault as fault:
            raise QuantityFault("not-formed", fault.detail, where="quantity", remedy=fault.remedy) from None


def _products(name: str, of: str, electrode: str, processes: Sequence[Process]) -> Iterator[tuple[Key, str]]:
    """The products that a quantity can belong to, with their states."""
    for process in processes:
        if electrode.strip().lower() not in ("", process.id):
            continue
        try:
            keys = keys_meant(Circuit((process,)), name, of, "")
        except QuantityFault as fault:
            if fault.code not in _NOT_THERE:
                raise
            continue
        formed = {t.species.ascii: t.state for t in process.half.right if not t.species.is_electron}
        yield from ((key, formed[key.of]) for key in keys if key.of in formed)


def _not_formed(of: str, electrode: str, processes: Sequence[Process]) -> QuantityFault:
    given = ", and ".join(text for p in processes if (text := _gives(p)))
    where = f" at the {electrode}" if electrode else ""
    named = f'"{of.strip()[:60]}"' if of.strip() else "Nothing of that kind"
    return QuantityFault(
        "not-formed",
        f"{named} {'does not form' if of.strip() else 'forms'}{where} in this cell.",
        where="of" if of else "",
        remedy=f"It gives {given}.{_left_open(processes)}",
    )


def _gives(process: Process) -> str:
    """What an electrode gives, water left out; empty if that is nothing else."""
    formed = [t.species.ascii for t in process.half.right if not t.species.is_electron]
    named = listed(substance_text(one) for one in formed if one != "H2O")
    return f"{named} at the {process.id}" if named else ""


def _left_open(processes: Sequence[Process]) -> str:
    """That an electrode is not decided, as a sentence with a space in front; empty if both are."""
    decided = {process.id for process in processes}
    open_ = [name for name in ("cathode", "anode") if name not in decided]
    return f" What happens at the {open_[0]} is not decided by the course." if open_ else ""
