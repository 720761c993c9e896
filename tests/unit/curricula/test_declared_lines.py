"""Finding the line of a key in a declaration."""

import pytest

from ionwright.curricula.declared_lines import line_of

TEXT = '''format = 1
id = "north"
summary = """
anode = not a key
[cathode]
"""

[anode]   # what is given off
halides = "often"
active_electrodes = [
  "copper",
  "coper",
]
"films" = "film"

[conventions.oxygen_from]
neutral = ["water"]

[[prescribed_cells]]
name = "brine"

[[ prescribed_cells ]]
name = "bracket"
anode = "gold"

[marking]
'''


@pytest.mark.parametrize(
    ("key_path", "line"),
    [
        ("format", 1),
        ("anode", 8),
        ("anode.halides", 9),
        ("anode.active_electrodes.1", 10),
        ("anode.films", 14),
        ("conventions.oxygen_from.neutral", 17),
        ("conventions.oxygen_from", 16),
        ("prescribed_cells", 19),
        ("prescribed_cells.0.name", 20),
        ("prescribed_cells.1.anode", 24),
        ("prescribed_cells.1.electrolyte", 22),
        ("marking.fractions", 26),
        ("cathode.order", None),
        ("title", None),
        ("", None),
    ],
)
def test_a_key_is_found_or_the_innermost_table_of_its_path(key_path: str, line: int | None) -> None:
    assert line_of(TEXT, key_path) == line


def test_dotted_keys_are_found() -> None:
    assert line_of("format = 1\nanode . halides = 'often'\n", "anode.halides") == 2
    assert line_of("format = 1\nanode.halides = 'often'\n", "anode.films") == 2


def test_a_fault_of_toml_says_its_line_itself() -> None:
    assert line_of("x = = 3", "", "not readable as TOML: Invalid value (at line 1, column 5)") == 1
