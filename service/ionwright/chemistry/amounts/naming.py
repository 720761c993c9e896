"""Names a quantity in a sentence and shows its value in a fitting unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ionwright.chemistry.amounts.quantity import QUANTITIES, Key
from ionwright.chemistry.amounts.unknown_metal import substance_text
from ionwright.chemistry.figures import notations
from ionwright.chemistry.units import read_unit

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["listed", "name_of", "shown", "with_article"]


def name_of(key: Key, *, is_whole: bool = False) -> str:
    """What a quantity is called in a sentence, without an article: "mass of Ni".

    Parameters
    ----------
    is_whole
        Whether to name the process too.
    """
    kind = QUANTITIES[key.kind]
    noun = kind.noun_of(substance_text(key.of)) if key.of else kind.noun
    return f'{noun} in "{key.process}"' if is_whole and key.process else noun


def with_article(name: str) -> str:
    """A name with its article: "a charge", "an amount of Ni"."""
    return f"{'an' if name[:1].lower() in 'aeiou' else 'a'} {name}"


def listed(parts: Sequence[str]) -> str:
    """Parts of a sentence with commas and "and"."""
    return ", ".join(parts[:-1]) + " and " + parts[-1] if len(parts) > 1 else "".join(parts)


def shown(key: Key, value: float, figures: int) -> str:
    """A value of the solver in the usual unit of the quantity, as plain text."""
    kind = QUANTITIES[key.kind]
    unit, own = read_unit(kind.answer_unit), read_unit(kind.unit)
    return notations(value * own.si / unit.si - unit.offset, figures, unit).text
