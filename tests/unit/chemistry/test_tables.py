"""The tables that ship inside the package."""

import pytest

from ionwright.chemistry.tables import read_table


def test_a_table_is_read_once_and_shared() -> None:
    assert read_table("couples.toml") is read_table("couples.toml")


def test_a_table_that_does_not_ship_is_not_found() -> None:
    with pytest.raises(FileNotFoundError):
        read_table("quarks.toml")


@pytest.mark.parametrize("name", ["couples.toml", "electrodes.toml"])
def test_every_source_key_resolves_and_every_source_is_used(name: str) -> None:
    table = read_table(name)
    used = {row["source"] for rows in table.values() if isinstance(rows, list) for row in rows}
    assert used == set(table["sources"])


@pytest.mark.parametrize("name", ["couples.toml", "electrodes.toml"])
def test_every_row_says_whether_its_figure_was_read_again(name: str) -> None:
    rows = [row for rows in read_table(name).values() if isinstance(rows, list) for row in rows]
    assert len(rows) > 40
    assert all(isinstance(row["verified"], bool) for row in rows)


def test_figures_recalled_from_memory_say_so_in_their_source() -> None:
    table = read_table("metals.toml")
    assert table["verified"] is False
    assert "recalled" in table["source"]
