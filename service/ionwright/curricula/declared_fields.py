"""Pieces of which the tables of a declaration are made: closed tables, and fields with their faults."""

from __future__ import annotations

from marshmallow import RAISE, Schema, ValidationError, fields, validate

from ionwright.chemistry.couple import HYDROXIDE
from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.species import species
from ionwright.errors import IonwrightError

HALIDES = ("Cl^-", "Br^-", "I^-")
_MOST_PHRASES = 40


class ClosedSchema(Schema):
    """A table that takes no unknown keys."""

    class Meta:
        """Unknown keys are faults, so that a slip of the pen is seen."""

        unknown = RAISE


def one_of(*words: str) -> validate.OneOf:
    """A check that a word is one of these."""
    return validate.OneOf(words, error="must be one of: {choices}")


def is_symbol(symbol: str) -> None:
    """Check the symbol of an element."""
    if symbol not in ELEMENTS:
        raise ValidationError(f"'{symbol}' is not the symbol of an element")


def is_halide(text: str) -> None:
    """Check a halide that is discharged from water."""
    try:
        is_one = species(text).ascii in HALIDES
    except IonwrightError:
        is_one = False
    if not is_one:
        raise ValidationError(f"'{text}' is not a halide that is discharged from water: {', '.join(HALIDES)}")


def is_anion(text: str) -> None:
    """Check a negative ion of the tables."""
    try:
        is_one = (ion := species(text)) in IONS and ion.charge < 0
    except IonwrightError:
        is_one = False
    if not is_one:
        raise ValidationError(f"'{text}' is not a negative ion of the tables")


def has_hydroxide(items: list[str]) -> None:
    """Check that an order of discharge, if there is one, holds hydroxide."""
    if items and all(species(text) != HYDROXIDE for text in items):
        raise ValidationError("an order of discharge needs OH^-, for hydroxide, in its place")


def each_once(items: list[str]) -> None:
    """Check that no entry stands in a list twice."""
    if len(set(items)) != len(items):
        raise ValidationError("an entry stands in the list twice")


def is_electrode(word: str) -> None:
    """Check an electrode of the tables."""
    if word not in electrodes():
        raise ValidationError(f"'{word}' is not an electrode of the tables")


def yes_or_no() -> fields.Boolean:
    """A key that is true or false."""
    return fields.Boolean(truthy={True}, falsy={False})


def phrases() -> fields.List[str]:
    """A key that lists phrases."""
    return fields.List(
        fields.String(validate=validate.Length(min=1, max=120)),
        load_default=list,
        validate=(validate.Length(max=_MOST_PHRASES), each_once),
    )
