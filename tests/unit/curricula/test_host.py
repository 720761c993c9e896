"""Loading curricula: one that misbehaves is set aside with its reason, and the rest serves."""

import logging
from collections.abc import Callable
from pathlib import Path

import pytest

from ionwright.curricula.faults import CurriculumFault
from ionwright.curricula.host import Origin, Registry, SetAside, load_curricula

PLUGINS = Path(__file__).resolve().parents[3] / "plugins"
BUILT_IN = sorted(
    path.parent.name.removeprefix("ionwright_").replace("_", "-")
    for path in PLUGINS.glob("ionwright_*/curriculum.toml")
)
KNOWN = f"Known: {', '.join(BUILT_IN)}."
DECLARED = (PLUGINS / "ionwright_gcse" / "curriculum.toml").read_text(encoding="utf-8")
HEAD = """
from dataclasses import replace
from ionwright.curricula import hookimpl
import ionwright_gcse as course
museum = replace(course.ionwright_curricula()[0], id="museum")
"""
SLIPS = f"""{HEAD}
from ionwright.curricula import PrintedConstants
printed = PrintedConstants(faraday_constant="9650 C/mol", relative_atomic_masses={{"Cu": "29"}})
@hookimpl
def ionwright_curricula():
    return [replace(museum, conventions=replace(museum.conventions, constants=printed))]
"""

Install = Callable[..., str]


def test_the_curricula_of_the_installed_package_are_built_in() -> None:
    registry = load_curricula()
    assert list(registry) == BUILT_IN
    assert {origin.kind for origin in registry.origins.values()} == {"built-in"}
    assert registry.set_aside == ()


def test_a_plugin_of_another_distribution_adds_its_curricula(install: Install) -> None:
    install(
        f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [museum, replace(museum, id='north')]\n"
    )
    registry = load_curricula()
    assert list(registry) == sorted([*BUILT_IN, "museum", "north"])
    assert registry.origins["museum"] == Origin("plugin", "skerry-courses", "2.5")


@pytest.mark.parametrize("nothing", ["()", "None", "[]"])
def test_a_plugin_may_politely_give_nothing(install: Install, nothing: str) -> None:
    install(f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return {nothing}\n")
    registry = load_curricula()
    assert list(registry) == BUILT_IN
    assert registry.set_aside == ()


@pytest.mark.parametrize(
    ("source", "reason"),
    [
        ("import no_such_lighthouse", "ModuleNotFoundError: No module named 'no_such_lighthouse'"),
        ("raise RuntimeError('fog')", "RuntimeError: fog"),
        ("raise SystemExit('lamp out')", "SystemExit: lamp out"),
        ("def broken(:", "SyntaxError: "),
        (f"{HEAD}\n@hookimpl\ndef ionwright_curricula(lamp):\n    return ()\n", "PluginValidationError: "),
        (f"{HEAD}\n@hookimpl\ndef ionwright_curriculum():\n    return ()\n", "PluginValidationError: "),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return 1 / 0\n",
            "ZeroDivisionError: division by zero",
        ),
        (f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    raise SystemExit(3)\n", "SystemExit: 3"),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return museum\n",
            "TypeError: 'Curriculum' object is not iterable",
        ),
        (f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [3]\n", "gave a int, not a Curriculum"),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return ['x']\n",
            "gave a str, not a Curriculum",
        ),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return course.ionwright_curricula()\n",
            "the id 'gcse' is taken by built-in gcse",
        ),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [replace(museum, id=7)]\n",
            "'7' is no id: ",
        ),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [replace(museum, id=[])]\n",
            "'[]' is no id: ",
        ),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [replace(museum, id='My Course')]\n",
            "'My Course' is no id: ",
        ),
        (
            f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [replace(museum, conventions=None)]\n",
            "the constants of 'museum' are not right: constants: NoneType is not PrintedConstants",
        ),
        (
            SLIPS,
            "the constants of 'museum' are not right: faraday_constant: '9650 C/mol' is far from 96485.33212 C/mol",
        ),
        (
            f"{HEAD}\ndef ionwright_curricula():\n    return [museum]\n",
            "no function of it is marked with hookimpl",
        ),
    ],
    ids=[
        "import of what is not there",
        "raises on import",
        "exits on import",
        "syntax",
        "extra argument",
        "misspelt hook",
        "raises when called",
        "exits when called",
        "not iterable",
        "a number",
        "a string",
        "taken id",
        "number as id",
        "list as id",
        "words as id",
        "no conventions",
        "slips in its constants",
        "no marker",
    ],
)
def test_a_plugin_that_misbehaves_is_set_aside_with_its_reason_while_the_rest_serves(
    install: Install, source: str, reason: str
) -> None:
    install(source)
    registry = load_curricula()
    assert list(registry) == BUILT_IN
    (aside,) = registry.set_aside
    assert aside.reason.startswith(reason)


def test_of_several_curricula_of_one_plugin_only_the_bad_ones_are_set_aside(install: Install) -> None:
    install(f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [museum, 'x', museum]\n")
    registry = load_curricula()
    assert "museum" in registry
    assert [aside.reason for aside in registry.set_aside] == [
        "gave a str, not a Curriculum",
        "the id 'museum' is taken by plugin skerry-courses",
    ]


def test_what_is_set_aside_is_written_to_the_log(install: Install, caplog: pytest.LogCaptureFixture) -> None:
    install("raise RuntimeError('fog')", name="lamp")
    with caplog.at_level(logging.WARNING):
        load_curricula()
    assert caplog.messages == ["plugin lamp set aside: RuntimeError: fog"]


def test_plugins_are_loaded_in_the_order_of_their_names_so_the_first_keeps_an_id(install: Install) -> None:
    good = f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [museum]\n"
    install(good, name="b-lamp", distribution="second")
    install(good, name="a-lamp", distribution="first")
    registry = load_curricula()
    assert registry.origins["museum"].name == "first"
    assert registry.set_aside == (SetAside("plugin", "second", "the id 'museum' is taken by plugin first"),)


def test_a_plugin_can_be_left_out_by_name(install: Install) -> None:
    install("raise RuntimeError('fog')", name="lamp")
    registry = load_curricula(without=["lamp", "igcse"])
    assert list(registry) == [one for one in BUILT_IN if one != "igcse"]
    assert registry.set_aside == ()


def test_without_any_curriculum_the_start_fails_with_every_reason(install: Install) -> None:
    install("raise RuntimeError('fog')", name="lamp")
    with pytest.raises(CurriculumFault) as fault:
        load_curricula(without=BUILT_IN)
    assert fault.value.code == "no-curricula"
    assert fault.value.detail == "No curriculum could be loaded. lamp: RuntimeError: fog"


# -- files ------------------------------------------------------------------------------------------------------------


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "curricula"
    made.mkdir()
    return made


def test_a_file_of_a_folder_is_a_curriculum(folder: Path) -> None:
    (folder / "museum.toml").write_text(DECLARED.replace('id = "gcse"', 'id = "museum"'), encoding="utf-8")
    (folder / "readme.txt").write_text("not a curriculum", encoding="utf-8")
    registry = load_curricula(folder)
    assert list(registry) == sorted([*BUILT_IN, "museum"])
    assert registry.origins["museum"] == Origin("file", "museum.toml", "")


def test_a_file_may_build_on_an_installed_curriculum(folder: Path) -> None:
    (folder / "museum.toml").write_text(
        'based_on = "igcse"\nid = "museum"\ntitle = "Museum"\n', encoding="utf-8"
    )
    registry = load_curricula(folder)
    assert registry["museum"].title == "Museum"
    assert registry["museum"].anode_rules == registry["igcse"].anode_rules


def test_a_file_may_build_on_the_declaration_of_a_plugin(install: Install, folder: Path) -> None:
    install(
        f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [museum]\n",
        package=DECLARED.replace('id = "gcse"', 'id = "museum"'),
    )
    (folder / "north.toml").write_text('based_on = "museum"\nid = "north"\n', encoding="utf-8")
    assert "north" in load_curricula(folder)


@pytest.mark.parametrize(
    "source",
    [
        "raise RuntimeError('fog')",
        "raise SystemExit(1)",
        f"{HEAD}\n@hookimpl\ndef ionwright_curricula():\n    return [museum]\n",
    ],
    ids=["raises on import", "exits on import", "a module and no package"],
)
def test_a_plugin_that_ships_no_declaration_does_not_harm_the_files(
    install: Install, folder: Path, source: str
) -> None:
    install(source)
    (folder / "north.toml").write_text('based_on = "gcse"\nid = "north"\n', encoding="utf-8")
    assert "north" in load_curricula(folder)


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"format = 9", "format: must be 1; "),
        (b"not toml", "the declaration: not readable as TOML"),
        (b"\xff\xfe", "'utf-8' codec can't decode"),
        (b"deep = " + b"[" * 20_000, "the declaration: not readable as TOML"),
        (b'based_on = "nowhere"', "based_on: no curriculum 'nowhere' to build on; known: "),
        (DECLARED.encode(), "the id 'gcse' is taken by built-in gcse"),
    ],
    ids=["faulty", "not TOML", "not UTF-8", "too deep", "unknown base", "taken id"],
)
def test_a_file_that_cannot_be_used_is_set_aside_while_the_rest_serves(
    folder: Path, content: bytes, reason: str
) -> None:
    (folder / "bad.toml").write_bytes(content)
    (folder / "good.toml").write_text('based_on = "gcse"\nid = "good"\n', encoding="utf-8")
    registry = load_curricula(folder)
    assert list(registry) == sorted([*BUILT_IN, "good"])
    (aside,) = registry.set_aside
    assert (aside.kind, aside.name) == ("file", "bad.toml")
    assert aside.reason.startswith(reason)


def test_a_folder_with_the_name_of_a_file_is_set_aside(folder: Path) -> None:
    (folder / "odd.toml").mkdir()
    assert [aside.name for aside in load_curricula(folder).set_aside] == ["odd.toml"]


# -- the registry -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("asked", "remedy"),
    [
        ("gsce", f"Did you mean gcse or igcse? {KNOWN}"),
        ("alevel", f"Did you mean a-level? {KNOWN}"),
        ("zzz", KNOWN),
        ("", KNOWN),
    ],
)
def test_an_unknown_curriculum_is_refused_with_near_ones(asked: str, remedy: str) -> None:
    with pytest.raises(CurriculumFault) as fault:
        load_curricula()[asked]
    assert (fault.value.code, fault.value.where) == ("unknown-curriculum", "curriculum")
    assert fault.value.remedy == remedy


def test_a_long_id_is_repeated_in_part_only() -> None:
    with pytest.raises(CurriculumFault) as fault:
        load_curricula()["x" * 10_000]
    assert fault.value.detail == f"There is no curriculum '{'x' * 40}' here."


def test_a_registry_is_a_mapping_in_the_order_of_its_ids() -> None:
    whole = load_curricula()
    registry = Registry({"b": whole["gcse"], "a": whole["igcse"]}, {})
    assert list(registry.items()) == [("a", whole["igcse"]), ("b", whole["gcse"])]
    assert len(registry) == 2
    assert ("a" in registry, "gcse" in registry, 3 in registry) == (True, False, False)


@pytest.mark.parametrize(
    ("asked", "found"), [("GCSE", "gcse"), ("A level", "a-level"), ("  IGCSE ", "igcse")]
)
def test_capitals_and_spaces_in_an_id_are_forgiven(asked: str, found: str) -> None:
    assert load_curricula()[asked].id == found


def test_the_registry_keeps_the_promises_of_a_mapping() -> None:
    registry = load_curricula()
    assert registry.get("no such course") is None
    assert "no such course" not in registry
    assert list(registry) == BUILT_IN
