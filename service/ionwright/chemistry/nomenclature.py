"""Names of compounds: from names to ions, in British and American, new and old words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.element import ELEMENTS, find_element
from ionwright.chemistry.faults import CellRefused
from ionwright.chemistry.formula import read_formula
from ionwright.chemistry.ion import IONS, USUAL_CHARGES, Ion, ion, stem_without_numeral
from ionwright.chemistry.ionic_compound import compound_from
from ionwright.chemistry.ionic_formula import IonicUnit, neutral_unit, reduced

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = [
    "ACID_NAMES",
    "NamedUnit",
    "ion_of_name",
    "normalised_name",
    "refuse_unknown_charge",
    "shown_name",
    "unit_of_name",
]


@dataclass(frozen=True, slots=True)
class NamedUnit:
    """What a name means.

    Parameters
    ----------
    unit
        Ions with numbers, and water of crystallisation.
    assumption
        What had to be assumed, as a sentence; empty if the name says everything.
    """

    unit: IonicUnit
    assumption: str = ""


_PREFIXES: Final = {
    "mono": 1, "di": 2, "bis": 2, "tri": 3, "tris": 3, "tetra": 4, "penta": 5, "hexa": 6, "hepta": 7, "octa": 8,
    "nona": 9, "deca": 10, "undeca": 11, "dodeca": 12,
}  # fmt: skip
_ROMAN: Final = {"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6, "vii": 7}
_NUMERALS: Final = {value: roman for roman, value in _ROMAN.items()}
_SPELLINGS: Final = (("sulph", "sulf"), ("aluminum", "aluminium"), ("cesium", "caesium"), ("’", "'"), ("‐", "-"),
                     ("‑", "-"), ("–", "-"), ("—", "-"))  # fmt: skip
_SPACED_NUMERAL: Final = re.compile(r"[\s-]*\(\s*(vii|vi|iv|v|iii|ii|i)\s*\)")
_LOOSE_NUMERAL: Final = re.compile(r"(?<=[a-z])[\s-]+(vii|vi|iv|v|iii|ii|i)(?=[\s-])")
_CHARGE_NUMBER: Final = re.compile(r"\s*\(\s*([1-7])\s*\+?\s*\)")
_TWO_NUMERALS: Final = re.compile(r"\s*\(\s*(iii|ii|i|iv|v)\s*[,/]\s*(vii|vi|iv|v|iii|ii)\s*\)")
_AFTER_NUMERAL: Final = re.compile(r"\)[\s-]*(?=[a-z])")
_HYDRATE: Final = re.compile(
    r"[\s-]+(?:(mono|di|tri|tetra|penta|hexa|hepta|octa|nona|deca|undeca|dodeca)hydrate|(\d{1,2})[\s-]?(?:water|hydrate))$"
)
_ADDED_WATER: Final = re.compile(r"\s*[.·*•]\s*(\d{0,2})\s*h2o$")
_VAGUE_WATER: Final = re.compile(
    r"^(?:hydrated|anhydrous|crystalline)\s+|[\s-]+hydrate$|\s+anhydrous$|,\s*anhydrous$"
)


def normalised_name(text: str) -> str:
    """Return a name in lower case, with British spelling, single spaces and its numerals in plain brackets.

    Parameters
    ----------
    text
        A name as somebody typed it.
    """
    name = " ".join(text.lower().split())
    for other, ours in _SPELLINGS:
        name = name.replace(other, ours)
    name = _CHARGE_NUMBER.sub(lambda match: f"({_NUMERALS[int(match[1])]})", name)
    name = _TWO_NUMERALS.sub(r"(\1,\2)", name)
    name = _LOOSE_NUMERAL.sub(r"(\1)", name)
    name = _SPACED_NUMERAL.sub(r"(\1)", name)
    return _AFTER_NUMERAL.sub(_space_unless_stem_goes_on, name)


def _space_unless_stem_goes_on(match: re.Match[str]) -> str:
    return ") "


def _stems(one: Ion) -> set[str]:
    found = {stem.lower() for stem in (one.stem, *one.aliases)}
    if one.charge < 0:
        found |= {
            stem.replace("hydrogen", "hydrogen ", 1)
            for stem in found
            if stem.startswith(("hydrogen", "dihydrogen"))
        }
    elif one.element and "(" not in one.stem:
        found.add(f"{one.stem}({_NUMERALS[one.charge]})")
    return found


_POSITIVE: Final = {stem: one for one in IONS.values() if one.charge > 0 for stem in _stems(one)}
_NEGATIVE: Final = {stem: one for one in IONS.values() if one.charge < 0 for stem in _stems(one)}
_BY_ELEMENT: Final = {
    (one.element, one.charge): one for one in IONS.values() if one.element and one.species.atoms[0][1] == 1
}
_BARE: Final = {ELEMENTS[symbol].name: symbol for symbol in USUAL_CHARGES}
_OXIDE: Final = ion("O^2-")
_JOINT_NUMERALS: Final = re.compile(r"^([a-z]+)\(([ivx]+),([ivx]+)\)$")
_CHARGED_METAL: Final = re.compile(r"^([a-z]+)\(([ivx]+|\d{1,2})\)\s?([a-z() -]+)$")
_TUTTON: Final = ion("SO4^2-")
_HYDROGEN: Final = ion("H^+")

ACID_NAMES: Final = {name.lower(): one for one in IONS.values() for name in one.acid_names}
"""Names of acids in lower case, each with the negative ion of the acid."""


def unit_of_name(text: str) -> NamedUnit | None:
    """Return the ions that a compound's name means, or None if it is not a name made of known ions.

    Parameters
    ----------
    text
        A name such as ``"copper sulphate pentahydrate"`` or ``"iron(III) chloride"``, in any case.
    """
    name, water = _without_water(normalised_name(text))
    acid = ACID_NAMES.get(name)
    if acid is not None:
        return NamedUnit(reduced([(_HYDROGEN, -acid.charge), (acid, 1)], water))
    words = name.replace(" and ", " ").split(" ")
    for split in range(1, min(len(words), 4)):
        anion, anions = _negative(" ".join(words[split:]))
        if anion is None:
            continue
        found = _with_positive(words[:split], anion, anions)
        if found is not None:
            return NamedUnit(IonicUnit(found.unit.ions, water), found.assumption)
    return None


def _without_water(name: str) -> tuple[str, int]:
    match = _HYDRATE.search(name)
    if match:
        return name[: match.start()], int(match[2]) if match[2] else _PREFIXES[match[1]]
    match = _ADDED_WATER.search(name)
    if match:
        return name[: match.start()], int(match[1] or 1)
    return _VAGUE_WATER.sub("", name), 0


def _negative(name: str) -> tuple[Ion | None, int | None]:
    """The negative ion, and the number that a prefix gives: 3 in trichloride."""
    found = _NEGATIVE.get(name)
    if found is not None:
        return found, None
    for prefix, number in _PREFIXES.items():
        if name.startswith(prefix):
            found = _NEGATIVE.get(name[len(prefix) :]) or _NEGATIVE.get(prefix[-1] + name[len(prefix) :])
            if found is not None:
                return found, number
    return None, None


def _with_positive(words: list[str], anion: Ion, anions: int | None) -> NamedUnit | None:
    words = _single_words(words)
    cations: list[Ion] = []
    told: dict[Ion, int] = {}
    assumed = ""
    for word in words:
        one, number = _positive(word)
        if one is None:
            metal, number = _bare_metal(word)
            if not metal:
                return None
            one = _of_usual_charge(metal, number, anion, anions)
            if number and anions and (mixed := _of_two_charges(metal, number, anion, anions)) is not None:
                return NamedUnit(mixed)
            if one is not None and not anions and not number:
                assumed = word
        if one is None:
            return None
        cations.append(one)
        told[one] = number
    if not cations or len(cations) > 2 or (_HYDROGEN in cations and not _may_follow_hydrogen(anion)):
        return None
    mixed = _mixed_oxide(cations, anion)
    unit = mixed or _balanced(cations, anion)
    _check_numbers(unit, {**told, anion: anions or 0})
    return NamedUnit(unit, _assumption(assumed, cations, anion) if assumed else "")


def _may_follow_hydrogen(anion: Ion) -> bool:
    """Acids go by their own names; "hydrogen" leads only the names of acids that schools do not know."""
    return (
        not anion.acid_name
        and not anion.lattice_only
        and not anion.stem.startswith(("hydrogen", "dihydrogen"))
    )


def _single_words(words: list[str]) -> list[str]:
    """One word per positive ion: "iron(ii,iii)" names two, and so does "ammonium-nickel"."""
    if len(words) != 1:
        return words
    match = _JOINT_NUMERALS.match(words[0])
    if match:
        return [f"{match[1]}({match[2]})", f"{match[1]}({match[3]})"]
    return words[0].split("-")


def _positive(word: str) -> tuple[Ion | None, int]:
    """The positive ion, and the number a prefix gives: 2 in disodium."""
    if word in _POSITIVE and word not in _BARE:
        return _POSITIVE[word], 0
    for prefix, number in _PREFIXES.items():
        rest = word[len(prefix) :]
        if word.startswith(prefix) and rest in _POSITIVE and "(" not in rest:
            return _POSITIVE[rest], number
    return None, 0


def _check_numbers(unit: IonicUnit, told: Mapping[Ion, int]) -> None:
    """Refuse a name whose prefixes contradict the charges, such as sodium dichloride."""
    if all(not told.get(one) or told[one] == count for one, count in unit.ions):
        return
    right = compound_from(unit)
    raise CellRefused(
        "charges-do-not-cancel",
        f"The numbers in the name do not fit the charges of the ions, which combine as {right.formula}.",
        remedy=f'Write "{right.name}", or the formula {right.formula}.',
    )


def _of_two_charges(metal: str, number: int, anion: Ion, anions: int) -> IonicUnit | None:
    """An oxide whose metal has two charges, by its numbers: triiron tetraoxide."""
    if anion is not _OXIDE:
        return None
    unit = neutral_unit(read_formula(f"{metal}{number}O{anions}"))
    return unit if unit and len(unit.ions) == 3 else None


def _mixed_oxide(cations: list[Ion], anion: Ion) -> IonicUnit | None:
    """The oxide M3O4 of one metal with two charges, such as iron(II,III) oxide."""
    if len(cations) != 2 or anion is not _OXIDE or cations[0].element != cations[1].element:
        return None
    unit = neutral_unit(read_formula(f"{cations[0].element}3O4"))
    return unit if unit and {one for one, _ in unit.ions} == {*cations, anion} else None


def ion_of_name(text: str) -> Ion | None:
    """Return the ion that a name with the word "ion" means, such as ``"copper(II) ions"``; None if it means none.

    Parameters
    ----------
    text
        A name in any case.
    """
    name = normalised_name(text)
    stem = name.removesuffix("s").removesuffix(" ion")
    if stem == name or stem == name.removesuffix("s"):
        return None
    if stem in _BARE:
        return _BY_ELEMENT.get((_BARE[stem], USUAL_CHARGES[_BARE[stem]][0]))
    return _POSITIVE.get(stem) or _NEGATIVE.get(stem)


def refuse_unknown_charge(name: str) -> None:
    """Refuse a name that gives a metal a charge it does not have, such as copper(V) sulfate.

    Parameters
    ----------
    name
        A name as `normalised_name` returns it; any other name passes.

    Raises
    ------
    CellRefused
        The metal has no such ion (``does-not-exist``).
    """
    match = _CHARGED_METAL.match(name)
    element = find_element(match[1]) if match else None
    if match is None or element is None:
        return
    known = [one for (symbol, _), one in sorted(_BY_ELEMENT.items()) if symbol == element.symbol]
    if not known or any(name.startswith(f"{stem} ") for one in known for stem in _stems(one)):
        return
    names = " and ".join(one.stem for one in known if not one.unstable) or known[0].stem
    anion, _ = _negative(match[3])
    usual = _BY_ELEMENT.get((element.symbol, USUAL_CHARGES.get(element.symbol, (0, {}))[0]), known[0])
    remedy = f'Did you mean "{usual.stem} {anion.stem}"?' if anion else f"Name a salt of {usual.stem}."
    raise CellRefused(
        "does-not-exist",
        f"{match[1].capitalize()} has no ion of charge {match[2].upper()} in its salts; the tables know {names}.",
        remedy=remedy,
    )


def _bare_metal(word: str) -> tuple[str, int]:
    """The symbol of a metal named without its numeral, and the number a prefix gives: 2 in dicopper."""
    if word in _BARE:
        return _BARE[word], 0
    for prefix, number in _PREFIXES.items():
        symbol = _BARE.get(word[len(prefix) :]) if word.startswith(prefix) else None
        if symbol:
            return symbol, number
    return "", 0


def _of_usual_charge(metal: str, number: int, anion: Ion, anions: int | None) -> Ion | None:
    if anions or number:
        return _BY_ELEMENT.get((metal, -anion.charge * (anions or 1) // (number or 1)))
    usual, exceptions = USUAL_CHARGES[metal]
    return _BY_ELEMENT.get((metal, exceptions.get(anion.species.ascii, usual)))


def _assumption(word: str, cations: list[Ion], anion: Ion) -> str:
    taken = next((one for one in cations if stem_without_numeral(one.stem) == word), None)
    if taken is None or taken.stem == word:
        return ""
    return f"{word.capitalize()} {anion.stem} is taken as {taken.stem} {anion.stem}."


def _balanced(cations: list[Ion], anion: Ion) -> IonicUnit:
    counts = [1] * len(cations)
    if len(cations) == 2 and anion is _TUTTON and {one.charge for one in cations} == {1, 2}:
        # double sulfates of this kind crystallise with two of the single-charged ions
        counts = [2 if one.charge == 1 else 1 for one in cations]
    positive = sum(one.charge * count for one, count in zip(cations, counts, strict=True))
    factor = 1
    while (positive * factor) % -anion.charge:
        factor += 1
    ions = [(one, count * factor) for one, count in zip(cations, counts, strict=True)]
    return reduced([*ions, (anion, positive * factor // -anion.charge)])


_SHOWN_NUMERAL: Final = re.compile(r"\((?:vii|vi|iv|v|iii|ii|i)(?:,(?:vii|vi|iv|v|iii|ii))?\)")


def shown_name(name: str) -> str:
    """Return a name in lower case with its Roman numerals in capitals: ``lead(IV) oxide``.

    Parameters
    ----------
    name
        A name as `normalised_name` returns it.
    """
    return _SHOWN_NUMERAL.sub(lambda match: match[0].upper(), name)
