"""The pick-list of electrolytes."""

from ionwright.chemistry.compound import read_substance
from ionwright.chemistry.electrolytes import known_electrolytes, search_electrolytes


def test_the_list_is_in_order_of_names_and_names_nothing_twice() -> None:
    names = [entry.name for entry in known_electrolytes()]
    assert len(names) > 150
    assert names == sorted(names)
    assert len({entry.formula for entry in known_electrolytes()}) == len(names)


def test_a_search_finds_by_name_formula_and_trivial_name() -> None:
    for text in ("nickel(II) sulf", "NiSO4", "NISO4"):
        assert "NiSO4" in [entry.formula for entry in search_electrolytes(text)]
    assert "NaOH" in [entry.formula for entry in search_electrolytes("caustic")]
    assert search_electrolytes("zzzz") == ()


def test_a_search_gives_no_more_than_it_is_asked_for() -> None:
    assert len(search_electrolytes("", limit=7)) == 7


def test_every_further_name_is_read_as_the_entry_it_stands_at() -> None:
    read = {
        (entry.formula, name): read_substance(name).compound.anhydrous_formula
        for entry in known_electrolytes()
        for name in entry.names
    }
    assert len(read) > 200
    assert [key for key, formula in read.items() if key[0].partition(".")[0] != formula] == []
