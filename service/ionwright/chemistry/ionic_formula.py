"""Takes a formula apart into known ions, by its pieces and not only by its composition."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import islice, product
from math import gcd
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.formula import Atom, Formula, Group
from ionwright.chemistry.ion import IONS, Ion, ion, ion_set

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

__all__ = ["IonicUnit", "known_piece", "mismatched_ions", "neutral_unit", "pieces", "reduced"]

_MAX_PIECES: Final = 16
_MAX_RUN: Final = 14
_MAX_PARTS: Final = 24
_MAX_SPLITS: Final = 40
_MAX_TRIALS: Final = 400


@dataclass(frozen=True, slots=True)
class IonicUnit:
    """What one formula unit holds.

    Parameters
    ----------
    ions
        Each ion with its number, positive ions first; the charges cancel.
    water
        Number of water molecules that crystallise with it.
    """

    ions: tuple[tuple[Ion, int], ...]
    water: int = 0


def _spelled() -> dict[str, tuple[Ion, ...]]:
    found: dict[str, list[Ion]] = {}
    for one in IONS.values():
        formula = one.species.formula
        for text in {formula, formula.removeprefix("[").removesuffix("]"), *one.spellings}:
            found.setdefault(text, []).append(one)
    return {text: tuple(sorted(ions, key=lambda one: abs(one.charge))) for text, ions in found.items()}


_SPELLED: Final = _spelled()
_PEROXIDE: Final = ion("O2^2-")
_HYDRIDE: Final = ion("H^-")
_OXIDE: Final = ion("O^2-")
_HYDROGEN: Final = ion("H^+")
_FORMS_PEROXIDE: Final = ion_set(["group1", "group2", "H^+"], 1)

Piece = tuple[str, int]
"""The text of an ion, and how many of it stand in the formula."""


def known_piece(text: str) -> tuple[Ion, ...]:
    """Return the ions that a formula writes with this text, charge left out; empty if none."""
    return _SPELLED.get(text, ())


def pieces(formula: Formula) -> tuple[tuple[Piece, ...], ...]:
    """Return every way to cut the formula into known ions, the fewest pieces first.

    Parameters
    ----------
    formula
        A formula; of what follows a hydrate dot, water is left out and the rest is cut as well.
    """
    cuts = _cuts_of(formula.parts)
    for number, attached in formula.attached:
        if _is_water(attached):
            continue
        more = _cuts_of(attached.parts)
        cuts = [
            first + tuple((text, count * number) for text, count in second)
            for first in cuts
            for second in more
        ]
        if attached.attached:
            return ()
    return tuple(sorted(cuts[:_MAX_SPLITS], key=len))


def _is_water(formula: Formula) -> bool:
    return formula.text in ("H2O", "OH2")


def _cuts_of(parts: tuple[Atom | Group, ...]) -> list[tuple[Piece, ...]]:
    if len(parts) > _MAX_PARTS:
        return []
    texts = tuple(part.text for part in parts)
    return list(islice(_cuts(parts, texts, 0), _MAX_SPLITS))


def _cuts(parts: tuple[Atom | Group, ...], texts: tuple[str, ...], start: int) -> Iterator[tuple[Piece, ...]]:
    if start == len(parts):
        yield ()
        return
    for length, piece in _first_pieces(parts, texts, start):
        for rest in _cuts(parts, texts, start + length):
            if len(rest) < _MAX_PIECES:
                yield (piece, *rest)


def _first_pieces(
    parts: tuple[Atom | Group, ...], texts: tuple[str, ...], start: int
) -> Iterator[tuple[int, Piece]]:
    run = ""
    for length in range(min(_MAX_RUN, len(parts) - start), 0, -1):
        run = "".join(texts[start : start + length])
        if length > 1 and run in _SPELLED:
            yield length, (run, 1)
    part = parts[start]
    inside = part.symbol if isinstance(part, Atom) else "".join(inner.text for inner in part.parts)
    if inside != run and inside in _SPELLED:
        yield 1, (inside, part.count)  # before the ion of several atoms: AuI3 holds no triiodide
    if run in _SPELLED:
        yield 1, (run, 1)


def neutral_unit(formula: Formula) -> IonicUnit | None:
    """Return the ions of a formula if it can be cut into ions whose charges cancel, else None.

    Parameters
    ----------
    formula
        Any formula. Of several ways the one with the fewest pieces wins.
    """
    water = sum(number for number, attached in formula.attached if _is_water(attached))
    cuts = pieces(formula)
    for chosen in (_uniform, _mixed_valence):
        for cut in cuts:
            ions = chosen(cut)
            if ions is not None:
                return reduced(ions, water)
    return None


def _uniform(cut: tuple[Piece, ...]) -> list[tuple[Ion, int]] | None:
    """Give every piece one charge so that all cancel."""
    candidates = [_SPELLED[text] for text, _ in cut]
    for ions in islice(product(*candidates), _MAX_TRIALS):
        total = 0
        for one, (_, count) in zip(ions, cut, strict=True):
            total += one.charge * count
        if total == 0 and _sensible(ions):
            return [(one, count) for one, (_, count) in zip(ions, cut, strict=True)]
    return None


def _mixed_valence(cut: tuple[Piece, ...]) -> list[tuple[Ion, int]] | None:
    """Give the metal of an oxide two charges, as in Fe3O4."""
    if len(cut) != 2 or cut[1][0] != "O" or len(_SPELLED[cut[0][0]]) < 2:
        return None
    (metal, metals), (_, oxides) = cut
    low, high = _SPELLED[metal][:2]
    more = 2 * oxides - low.charge * metals
    step = high.charge - low.charge
    if more <= 0 or more % step or more // step >= metals:
        return None
    return [(low, metals - more // step), (high, more // step), (_OXIDE, oxides)]


def _sensible(ions: tuple[Ion, ...]) -> bool:
    """Refuse peroxides of other metals, and hydrides beside other negative ions."""
    if _PEROXIDE in ions and not all(one.species in _FORMS_PEROXIDE for one in ions if one.charge > 0):
        return False
    if _HYDRIDE in ions:
        return all(one is _HYDRIDE or one.is_metal for one in ions)
    return True


def reduced(ions: Iterable[tuple[Ion, int]], water: int = 0) -> IonicUnit:
    """Return the unit with equal ions joined, positive ions first by charge, and no common factor.

    Parameters
    ----------
    ions
        Ions with their numbers, in the order of the formula.
    water
        Number of water molecules.
    """
    total: Counter[Ion] = Counter()
    for one, count in ions:
        total[one] += count
    factor = gcd(water, *total.values()) if water else gcd(*total.values())
    ordered = sorted(total.items(), key=lambda item: item[0].charge if item[0].charge > 0 else 99)
    if _keeps_its_numbers(ordered):
        factor = 1
    return IonicUnit(tuple((one, count // factor) for one, count in ordered), water // factor)


def _keeps_its_numbers(ions: list[tuple[Ion, int]]) -> bool:
    """One of each ion at most needs no reducing; molecules such as H2C2O4 keep their hydrogen anyway."""
    return any(count == 1 for _, count in ions)


def mismatched_ions(formula: Formula) -> tuple[tuple[Ion, ...], tuple[Ion, ...]]:
    """Return the positive and the negative ions a formula seems to mean although its charges do not cancel.

    Returns
    -------
    tuple
        The possible positive and negative ions; both empty if the formula is not made of known ions.
    """
    best: tuple[tuple[Ion, ...], tuple[Ion, ...]] = ((), ())
    if any(not _is_water(attached) for _, attached in formula.attached):
        return best
    lone = [one for one in _SPELLED.get(formula.text, ()) if one.species.formula == formula.text]
    if lone:
        one = lone[0]
        return ((one,), ()) if one.charge > 0 else ((), (one,))
    for cut in pieces(formula):
        everything = [
            one for text, _ in cut for one in _SPELLED[text] if not one.lattice_only or one is _OXIDE
        ]
        positive = _with_sisters(one for one in everything if one.charge > 0)
        negative = tuple(dict.fromkeys(one for one in everything if one.charge < 0))
        if positive and negative:
            return positive, negative
        if not best[0] and not best[1]:
            best = positive, negative
    return best


def _with_sisters(ions: Iterable[Ion]) -> tuple[Ion, ...]:
    """Add the other lasting ions of the same metals, such as Hg2^2+ to Hg^2+."""
    found: dict[Ion, None] = {}
    for one in ions:
        found.setdefault(one)
        for other in IONS.values():
            if one.element and other.element == one.element and not other.unstable:
                found.setdefault(other)
    lasting = tuple(one for one in found if not one.unstable)
    return lasting or tuple(found)
