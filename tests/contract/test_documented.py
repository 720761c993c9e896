"""DEVELOPERS.md is complete: every hook, every key of a declaration, every quantity."""

import inspect
from collections.abc import Iterator
from pathlib import Path

from marshmallow import Schema, fields

from ionwright.chemistry.amounts.quantity import TOLD
from ionwright.curricula import hookspecs
from ionwright.curricula.declaration import DeclarationSchema

DEVELOPERS = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")


def declared_keys() -> set[str]:
    """Every key of the declaration format that holds a value; the tables that hold keys are left out."""
    return set(keys_of(DeclarationSchema()))


def keys_of(table: Schema) -> Iterator[str]:
    for key, field in table.fields.items():
        if isinstance(field, fields.Nested):
            yield from keys_of(field.schema)
            continue
        yield key
        if isinstance(field, fields.List) and isinstance(field.inner, fields.Nested):
            yield from keys_of(field.inner.schema)


def hooks() -> dict[str, str]:
    return {
        name: str(inspect.signature(value))
        for name, value in vars(hookspecs).items()
        if name.startswith("ionwright_") and callable(value)
    }


def test_every_key_of_a_declaration_is_described() -> None:
    keys = declared_keys()
    assert {"order", "halides", "threshold_mol_dm3", "alkaline"} <= keys
    assert sorted(key for key in keys if f"{key}`" not in DEVELOPERS) == []


def test_every_quantity_is_described() -> None:
    assert [name for name in TOLD if f"`{name}`" not in DEVELOPERS] == []


def test_every_hook_is_described_with_its_signature() -> None:
    assert hooks() == {"ionwright_curricula": "() -> 'Iterable[Curriculum]'"}
    assert "| `ionwright_curricula()` | 1 |" in DEVELOPERS


def test_every_hook_says_when_it_is_called_what_it_gives_and_since_when() -> None:
    documents = [inspect.getdoc(getattr(hookspecs, name)) or "" for name in hooks()]
    assert documents
    for text in documents:
        assert all(f"{word}: " in text for word in ("Called", "Result", "Since"))
