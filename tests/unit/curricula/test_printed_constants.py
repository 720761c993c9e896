"""The constants that a course prints: relative atomic masses, and what a declaration may say of them."""

import subprocess
import sys
from typing import Any

import pytest

from ionwright.curricula.constant_faults import faults_of_constants
from ionwright.curricula.constants import PrintedConstants
from ionwright.curricula.declaration import read_declaration
from ionwright.curricula.faults import CurriculumFileFault

FORMS = "{ acidic = ['ions'], neutral = ['ions'], alkaline = ['ions'] }"


def declaration(conventions: str) -> str:
    return (
        "format = 1\nid = 'skerry-point'\ntitle = 'Skerry Point school days'\n"
        "cathode = { rule = 'standard-potential' }\nanode = { halides = 'by-potential' }\n"
        f"[conventions]\nhydrogen_from = {FORMS}\noxygen_from = {FORMS}\n{conventions}"
    )


def declared(conventions: str, bases: dict[str, Any] | None = None) -> PrintedConstants:
    return read_declaration(declaration(conventions), "museum.toml", bases or {})[0].conventions.constants


def faults(conventions: str) -> dict[str, str]:
    with pytest.raises(CurriculumFileFault) as caught:
        declared(conventions)
    return dict(caught.value.faults)


@pytest.mark.parametrize(
    ("decimals", "symbol", "text"),
    [
        (None, "Cu", "63.546"),
        (None, "H", "1.008"),
        (0, "Cu", "64"),
        (0, "O", "16"),
        (1, "H", "1.0"),
        (1, "Cl", "35.5"),
        (1, "Ag", "107.9"),
        (2, "Ag", "107.87"),
        (4, "Cl", "35.45"),
    ],
)
def test_a_mass_is_that_of_the_tables_rounded_half_up_to_the_decimals_of_the_course(
    decimals: int | None, symbol: str, text: str
) -> None:
    assert PrintedConstants(relative_atomic_mass_decimals=decimals).relative_atomic_mass(symbol) == text


def test_a_figure_that_the_course_prints_wins_over_the_tables() -> None:
    printed = PrintedConstants(relative_atomic_masses={"Cl": "35.5"}, relative_atomic_mass_decimals=0)
    assert printed.relative_atomic_mass("Cl") == "35.5"
    assert printed.relative_atomic_mass("Ni") == "59"


@pytest.mark.parametrize("symbol", ["Rn", "Xx", "", "copper"])
def test_an_element_without_a_figure_has_no_mass(symbol: str) -> None:
    assert PrintedConstants(relative_atomic_mass_decimals=1).relative_atomic_mass(symbol) is None


def test_a_course_may_print_a_mass_that_the_tables_lack() -> None:
    assert declared("relative_atomic_masses = { Rn = '222' }").relative_atomic_mass("Rn") == "222"


def test_a_course_that_prints_nothing_has_nothing_to_tell() -> None:
    assert declared("") == PrintedConstants()
    assert PrintedConstants().described() == {}


def test_every_key_of_a_declaration_arrives_as_it_was_written() -> None:
    printed = declared(
        "faraday_constant = '9.65e4 C/mol'\nmolar_gas_volume = '22.4 dm3/mol'\ngas_conditions = '0 degC and 1 atm'\n"
        "avogadro_constant = '6.022e23 /mol'\nelementary_charge = '1.6e-19 C'\ngas_constant = '8.314 J/(mol K)'\n"
        "relative_atomic_mass_decimals = 2\nrelative_atomic_masses = { Cu = '63.5' }"
    )
    assert printed.described() == {
        "faraday_constant": "9.65e4 C/mol",
        "molar_gas_volume": "22.4 dm3/mol",
        "gas_conditions": "0 degC and 1 atm",
        "avogadro_constant": "6.022e23 /mol",
        "elementary_charge": "1.6e-19 C",
        "gas_constant": "8.314 J/(mol K)",
        "relative_atomic_mass_decimals": 2,
        "relative_atomic_masses": {"Cu": "63.5"},
    }


BASE = read_declaration(
    declaration(
        "faraday_constant = '96500 C/mol'\nmolar_gas_volume = '24 dm3/mol'\nrelative_atomic_mass_decimals = 1\n"
        "relative_atomic_masses = { Cu = '63.5', Cl = '35.5' }"
    ),
    "",
)[1]


def test_a_course_inherits_constants_and_changes_those_that_it_names() -> None:
    text = (
        "based_on = 'skerry-point'\nid = 'north'\n[conventions]\nmolar_gas_volume = '22.4 dm3/mol'\n"
        "relative_atomic_masses.Cu = '64'\n"
    )
    printed = read_declaration(text, "", {"skerry-point": BASE})[0].conventions.constants
    assert printed.described() == {
        "faraday_constant": "96500 C/mol",
        "molar_gas_volume": "22.4 dm3/mol",
        "relative_atomic_mass_decimals": 1,
        "relative_atomic_masses": {"Cu": "64", "Cl": "35.5"},
    }


def test_an_empty_text_takes_away_what_was_inherited() -> None:
    text = (
        "based_on = 'skerry-point'\nid = 'north'\n[conventions]\nfaraday_constant = ''\n"
        "relative_atomic_masses.Cu = ''\n"
    )
    printed = read_declaration(text, "", {"skerry-point": BASE})[0].conventions.constants
    assert printed.faraday_constant == ""
    assert dict(printed.relative_atomic_masses) == {"Cl": "35.5"}
    assert printed.relative_atomic_mass("Cu") == "63.5"


def test_masses_that_were_read_cannot_be_changed() -> None:
    masses = declared("relative_atomic_masses = { Cu = '63.5' }").relative_atomic_masses
    with pytest.raises(TypeError):
        masses["Cu"] = "64"  # type: ignore[index]


@pytest.mark.parametrize(
    ("conventions", "path", "fault"),
    [
        ("gas_constant = 8.31", "gas_constant", "Not a valid string"),
        (f"gas_conditions = '{'warm ' * 30}'", "gas_conditions", "Longer than maximum length 120"),
        ("relative_atomic_mass_decimals = 5", "relative_atomic_mass_decimals", "Must be greater than"),
        ("relative_atomic_mass_decimals = -1", "relative_atomic_mass_decimals", "Must be greater than"),
        ("relative_atomic_mass_decimals = true", "relative_atomic_mass_decimals", "Not a valid integer"),
        ("relative_atomic_mass_decimals = '1'", "relative_atomic_mass_decimals", "Not a valid integer"),
        ("relative_atomic_masses = 3", "relative_atomic_masses", "Not a valid mapping type"),
        (
            "relative_atomic_masses = { Xx = '1' }",
            "relative_atomic_masses.Xx",
            "'Xx' is not the symbol of an element",
        ),
        (
            "relative_atomic_masses = { Cu = 63.5 }",
            "relative_atomic_masses.Cu",
            "Not a valid string: write the figure in quotes",
        ),
        (
            "relative_atomic_masses = { Cu = 'about 63' }",
            "relative_atomic_masses.Cu",
            "'about 63' is not a figure",
        ),
        ("relative_atomic_masses = { Rn = '0.0' }", "relative_atomic_masses.Rn", "'0.0' is not a figure"),
        (
            "relative_atomic_masses = { Cu = '29' }",
            "relative_atomic_masses.Cu",
            "'29' is far from 63.546, the relative atomic mass of copper",
        ),
    ],
)
def test_a_fault_of_a_constant_is_told_with_its_key_path(conventions: str, path: str, fault: str) -> None:
    found = faults(conventions)
    assert list(found) == [f"conventions.{path}"]
    assert found[f"conventions.{path}"].startswith(fault)


@pytest.mark.parametrize(
    ("name", "text", "fault"),
    [
        ("faraday_constant", "9650 C/mol", "'9650 C/mol' is far from 96485.33212 C/mol"),
        ("faraday_constant", "0 C/mol", "'0 C/mol' is far from 96485.33212 C/mol"),
        ("molar_gas_volume", "24000 dm3/mol", "'24000 dm3/mol' is far from the 22 to 25 dm3/mol of a gas"),
        ("avogadro_constant", "6.02e22 /mol", "'6.02e22 /mol' is far from 6.02214076e23 /mol"),
        ("elementary_charge", "1.60e19 C", "'1.60e19 C' is far from 1.602176634e-19 C"),
        ("gas_constant", "0.0821 J/(mol K)", "'0.0821 J/(mol K)' is far from 8.314462618 J/(mol K)"),
    ],
)
def test_a_slip_in_a_figure_is_told_with_the_figure_that_is_known(name: str, text: str, fault: str) -> None:
    found = faults(f"{name} = '{text}'")
    assert list(found) == [f"conventions.{name}"]
    assert found[f"conventions.{name}"].startswith(fault)


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("faraday_constant", "96500 dm3/mol", "The Faraday constant is in coulombs per mole"),
        ("faraday_constant", "96500 C", "The Faraday constant is in coulombs per mole; you gave coulombs"),
        ("molar_gas_volume", "24 dm3", "molar gas volume"),
        ("avogadro_constant", "6.02e23 mol", "The Avogadro constant is a number per mole"),
        ("elementary_charge", "1.6e-19 A", "elementary charge"),
        ("gas_constant", "8.31 J/mol", "gas constant"),
    ],
)
def test_a_constant_of_the_wrong_dimension_is_told_with_its_key_path(name: str, text: str, said: str) -> None:
    found = faults(f"{name} = '{text}'")
    assert list(found) == [f"conventions.{name}"]
    assert said in found[f"conventions.{name}"]


@pytest.mark.parametrize(
    "text", ["96500", "about 96500 C/mol", "96500 lamps", "C/mol", "nan C/mol", "1e999 C/mol"]
)
def test_a_constant_that_is_no_quantity_is_told_with_its_key_path(text: str) -> None:
    assert list(faults(f"faraday_constant = '{text}'")) == ["conventions.faraday_constant"]


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("faraday_constant", "9.65 × 10⁴ C mol⁻¹"),
        ("faraday_constant", "96 500 C/mol"),
        ("faraday_constant", "26.8 A h/mol"),
        ("faraday_constant", "96000 C/mol"),
        ("molar_gas_volume", "24000 cm3/mol"),
        ("molar_gas_volume", "22.4 L/mol"),
        ("avogadro_constant", "6.02 × 10²³ mol⁻¹"),
        ("elementary_charge", "1.6e-19 C"),
        ("gas_constant", "8.314 J K-1 mol-1"),
    ],
)
def test_a_constant_may_be_written_in_any_unit_of_its_kind(name: str, text: str) -> None:
    assert getattr(declared(f"{name} = '{text}'"), name) == text


def test_the_conditions_of_a_gas_are_words_and_not_read() -> None:
    assert declared("gas_conditions = 'beside the lamp'").gas_conditions == "beside the lamp"


@pytest.mark.parametrize(
    ("printed", "faults_found"),
    [
        (PrintedConstants(), {}),
        (PrintedConstants(faraday_constant=96500), {"faraday_constant": "Not a valid string"}),  # type: ignore[arg-type]
        (PrintedConstants(relative_atomic_masses=3), {"relative_atomic_masses": "Not a valid mapping"}),  # type: ignore[arg-type]
        ({"faraday_constant": "96500 C/mol"}, {"constants": "dict is not PrintedConstants"}),
    ],
)
def test_constants_from_a_plugin_are_looked_at_too(printed: object, faults_found: dict[str, str]) -> None:
    found = dict(faults_of_constants(printed))
    assert list(found) == list(faults_found)
    assert all(found[name].startswith(fault) for name, fault in faults_found.items())


def test_the_usual_spelling_of_a_constant_needs_no_reader_of_quantities() -> None:
    """A command that only lists curricula must not wait for the library of units."""
    script = (
        "import sys\nfrom ionwright.curricula.host import load_curricula\n"
        "load_curricula()\nprint('pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_every_faulty_mass_is_told_at_once() -> None:
    assert set(faults("relative_atomic_masses = { Cu = '29', Cl = '35.5', Zz = '1' }")) == {
        "conventions.relative_atomic_masses.Cu",
        "conventions.relative_atomic_masses.Zz",
    }


def test_further_molar_gas_volumes_are_told_with_their_conditions() -> None:
    printed = declared("other_molar_gas_volumes = { '0 degC and 100 kPa' = '22.71 dm3/mol', 'none' = '' }")
    assert dict(printed.other_molar_gas_volumes) == {"0 degC and 100 kPa": "22.71 dm3/mol"}
    assert printed.described()["other_molar_gas_volumes"] == {"0 degC and 100 kPa": "22.71 dm3/mol"}


@pytest.mark.parametrize("volume", ["'224 dm3/mol'", "24", "'24 g'"])
def test_a_further_molar_gas_volume_that_is_none_is_a_fault(volume: str) -> None:
    assert list(faults(f"other_molar_gas_volumes = {{ room = {volume} }}")) == [
        "conventions.other_molar_gas_volumes.room"
    ]


def test_further_volumes_from_a_plugin_are_looked_at_too() -> None:
    printed = PrintedConstants(other_molar_gas_volumes={"room": "2 dm3/mol"})
    assert [name for name, _ in faults_of_constants(printed)] == ["other_molar_gas_volumes.room"]
    assert faults_of_constants(PrintedConstants(other_molar_gas_volumes=3)) == (  # type: ignore[arg-type]
        ("other_molar_gas_volumes", "Not a valid mapping type"),
    )
