"""Curricula declared in TOML: what a good declaration gives, and every fault of a bad one at once."""

import pytest

from ionwright.chemistry.species import species
from ionwright.curricula.constants import PrintedConstants
from ionwright.curricula.declaration import is_id, read_declaration
from ionwright.curricula.faults import CurriculumFileFault
from ionwright.curricula.rules.active_electrode import ActiveElectrode
from ionwright.curricula.rules.halides import Halides
from ionwright.curricula.rules.ladder import Ladder
from ionwright.curricula.rules.least_positive import LeastPositive
from ionwright.curricula.rules.most_positive import MostPositive
from ionwright.curricula.rules.prescribed_cells import PrescribedCell, PrescribedCells
from ionwright.curricula.scope import CourseScope

GOOD = """
format = 1
id = "skerry-point"
title = "Skerry Point school days"

[cathode]
rule = "ladder"
order = ["Na", "C", "Zn", "H", "Cu"]

[anode]
halides = "always"

[conventions.hydrogen_from]
acidic = ["ions"]
neutral = ["ions", "water"]
alkaline = ["water"]

[conventions.oxygen_from]
acidic = ["water"]
neutral = ["ions", "water"]
alkaline = ["ions"]
"""


def faults(text: str, bases: dict[str, object] | None = None) -> dict[str, str]:
    with pytest.raises(CurriculumFileFault) as caught:
        read_declaration(text, "museum.toml", bases or {})
    assert caught.value.code == "bad-curriculum"
    return dict(caught.value.faults)


def changed(*pairs: tuple[str, str]) -> str:
    text = GOOD
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def test_a_short_declaration_is_a_whole_curriculum() -> None:
    curriculum, data = read_declaration(GOOD, "museum.toml")
    assert (curriculum.id, curriculum.title) == ("skerry-point", "Skerry Point school days")
    assert (curriculum.region, curriculum.stage, curriculum.summary, curriculum.sources) == ("", "", "", ())
    assert data["cathode"]["order"] == ["Na", "C", "Zn", "H", "Cu"]


def test_what_is_left_out_has_its_usual_value() -> None:
    curriculum, _ = read_declaration(GOOD, "museum.toml")
    halides = next(rule for rule in curriculum.anode_rules if isinstance(rule, Halides))
    assert [ion.ascii for ion in halides.halides] == ["Cl^-", "Br^-", "I^-"]
    assert (halides.concentration.threshold_mol_dm3, halides.concentration.doubtful_mol_dm3) == (
        1.0,
        (0.1, 2.0),
    )
    assert (curriculum.conventions.state_symbols, curriculum.conventions.oxidation_also_minus) == (
        "asked",
        True,
    )


@pytest.mark.parametrize(
    ("pairs", "cathode", "anode"),
    [
        (
            [],
            ["MeltCathode", "SlowReductionsOut", "Amalgam", "Plating", "Ladder"],
            ["ActiveElectrode", "MeltAnode", "SlowOxidationsOut", "Halides", "OxygenOtherwise"],
        ),
        (
            [('rule = "ladder"', 'rule = "standard-potential"'), ('"always"', '"by-potential"')],
            ["MeltCathode", "SlowReductionsOut", "Amalgam", "Plating", "MostPositive"],
            ["ActiveElectrode", "MeltAnode", "SlowOxidationsOut", "LeastPositive"],
        ),
    ],
)
def test_the_words_of_a_declaration_choose_the_rules_in_their_order(
    pairs: list[tuple[str, str]], cathode: list[str], anode: list[str]
) -> None:
    curriculum, _ = read_declaration(changed(*pairs), "museum.toml")
    assert [type(rule).__name__ for rule in curriculum.cathode_rules] == cathode
    assert [type(rule).__name__ for rule in curriculum.anode_rules] == anode


@pytest.mark.parametrize(
    ("pairs", "cathode", "anode"),
    [
        ([('"always"', '"always"\norder = ["Cl^-", "OH^-"]')], "Ladder", "DischargeOrder"),
        ([('"always"', '"always"\norder = ["SO4^2-", "OH-"]')], "Ladder", "DischargeOrder"),
        (
            [
                ('rule = "ladder"', 'rule = "deposition-potential"'),
                ('halides = "always"', 'rule = "deposition-potential"'),
            ],
            "DepositionPotential",
            "DepositionPotential",
        ),
        (
            [('rule = "ladder"', 'rule = "given-couples"'), ('"always"', '"always"\nrule = "given-couples"')],
            "GivenCouples",
            "GivenCouples",
        ),
    ],
)
def test_the_other_ways_of_deciding_stand_last(
    pairs: list[tuple[str, str]], cathode: str, anode: str
) -> None:
    curriculum, _ = read_declaration(changed(*pairs), "museum.toml")
    assert type(curriculum.cathode_rules[-1]).__name__ == cathode
    assert type(curriculum.anode_rules[-1]).__name__ == anode


def test_prescribed_cells_stand_before_all_rules_of_both_electrodes() -> None:
    text = GOOD + '[[prescribed_cells]]\nname = "iodide"\nelectrolyte = ["potassium iodide"]\n'
    curriculum, _ = read_declaration(text, "museum.toml")
    first = curriculum.cathode_rules[0]
    assert first == curriculum.anode_rules[0]
    assert first == PrescribedCells((PrescribedCell("iodide", frozenset({"KI"}), "aqueous", "inert"),))


def test_overpotentials_and_special_products_reach_their_rules() -> None:
    text = changed(
        (
            'halides = "always"',
            (
                'rule = "deposition-potential"\noxide_melt_on_carbon = "carbon-dioxide"\n'
                '[anode.from_concentrated]\n"SO4^2-" = "accepted"\n'
                "[overpotentials]\nmargin_V = 0.2\nO2 = { platinum = [0.72, 1.28] }"
            ),
        )
    )
    rules = {type(rule).__name__: rule for rule in read_declaration(text, "")[0].anode_rules}
    deposition = rules["DepositionPotential"]
    assert deposition.margin_V == 0.2
    assert deposition.overpotentials.by_gas["O2"] == {"platinum": (0.72, 1.28)}
    assert rules["FromConcentrated"].ions == {species("SO4^2-"): "accepted"}
    assert rules["MeltAnode"].oxide_on_carbon == "carbon-dioxide"


def test_only_a_course_by_potentials_speaks_of_what_is_too_slow() -> None:
    by_potential = changed(('rule = "ladder"', 'rule = "standard-potential"'), ('"always"', '"by-potential"'))
    plain, deep = read_declaration(GOOD, "")[0], read_declaration(by_potential, "")[0]
    assert [plain.cathode_rules[1].is_told, plain.anode_rules[2].is_told] == [False, False]
    assert [deep.cathode_rules[1].is_told, deep.anode_rules[2].is_told] == [True, True]


def test_a_full_declaration_reaches_every_rule() -> None:
    text = changed(
        ('rule = "ladder"', 'rule = "standard-potential"\nhydrogen_as = "water"'),
        (
            'halides = "always"',
            (
                'halides = "by-potential"\nactive_electrodes = ["copper", "steel"]\nfilms = "film"\n'
                "[concentration]\nthreshold_mol_dm3 = 2\ndoubtful_mol_dm3 = [0.5, 3]\n"
                'when_missing = "dilute"\nnote = "ours"'
            ),
        ),
        (
            "[conventions.hydrogen_from]",
            (
                '[conventions]\nstate_symbols = "required"\noxidation_also_minus = false\n'
                'faraday_constant = "96500 C/mol"\nmolar_gas_volume = "24 dm3/mol"\n[conventions.hydrogen_from]'
            ),
        ),
    )
    curriculum, _ = read_declaration(text + '[certainty]\nanode = "low"\n', "museum.toml")
    active, *_, least = curriculum.anode_rules
    assert curriculum.cathode_rules[-1] == MostPositive("water")
    assert active == ActiveElectrode(("copper", "steel"), "film", is_slow_told=True)
    assert isinstance(least, LeastPositive)
    assert (least.concentration.threshold_mol_dm3, least.concentration.when_missing) == (2.0, "dilute")
    assert curriculum.conventions.constants == PrintedConstants(
        faraday_constant="96500 C/mol", molar_gas_volume="24 dm3/mol"
    )
    assert (curriculum.conventions.state_symbols, curriculum.conventions.oxidation_also_minus) == (
        "required",
        False,
    )
    assert dict(curriculum.certainty) == {"anode": "low"}


def test_the_scope_is_kept_as_it_is_said() -> None:
    text = GOOD + '[scope]\nquantities = "Q = It"\nmelts = ["PbBr2"]\n'
    assert read_declaration(text, "")[0].scope == CourseScope(quantities="Q = It", melts=("PbBr2",))


def test_the_forms_of_each_medium_are_kept_in_order() -> None:
    conventions = read_declaration(GOOD, "")[0].conventions
    assert dict(conventions.hydrogen) == {
        "acidic": ("ions",),
        "neutral": ("ions", "water"),
        "alkaline": ("water",),
    }
    assert dict(conventions.oxygen) == {
        "acidic": ("water",),
        "neutral": ("ions", "water"),
        "alkaline": ("ions",),
    }


def test_what_was_read_cannot_be_changed() -> None:
    curriculum, _ = read_declaration(GOOD, "")
    with pytest.raises(TypeError):
        curriculum.certainty["anode"] = "high"  # type: ignore[index]


@pytest.mark.parametrize(
    ("old", "new", "path", "fault"),
    [
        ("format = 1\n", "", "format", "Missing data for required field"),
        ("format = 1", "format = 2", "format", "must be 1"),
        ("format = 1", 'format = "1"', "format", "Not a valid integer"),
        ("format = 1", "format = 1.5", "format", "Not a valid integer"),
        ('id = "skerry-point"\n', "", "id", "Missing data for required field"),
        ('"skerry-point"', '"Skerry Point"', "id", "must be lower-case words joined by hyphens"),
        ('"skerry-point"', '"skerry--point"', "id", "must be lower-case words joined by hyphens"),
        ('"skerry-point"', '"skerry-point\\n"', "id", "must be lower-case words joined by hyphens"),
        ('"skerry-point"', '"1st"', "id", "must be lower-case words joined by hyphens"),
        ('"skerry-point"', "7", "id", "Not a valid string"),
        ('title = "Skerry Point school days"', 'title = ""', "title", "Length must be between 1 and 120"),
        ('title = "Skerry Point school days"', "title = 1979-05-27", "title", "Not a valid string"),
        ('rule = "ladder"', 'rule = "stairs"', "cathode.rule", "must be one of: ladder, standard-potential"),
        ('rule = "ladder"\n', "", "cathode.rule", "Missing data for required field"),
        ('"Zn", "H"', '"Zn"', "cathode.order", "a reactivity series needs H, for hydrogen, in its place"),
        ('"Zn", "H"', '"Zn", "H", "Zn"', "cathode.order", "a symbol stands in the series twice"),
        ('"Zn", "H"', '"Zink", "H"', "cathode.order.2", "'Zink' is not the symbol of an element"),
        ('order = ["Na", "C", "Zn", "H", "Cu"]', 'order = "Na"', "cathode.order", "Not a valid list"),
        ('order = ["Na", "C", "Zn", "H", "Cu"]\n', "", "cathode.order", "a reactivity series needs H"),
        (
            "[anode]",
            'wider_order = ["Na", "Cu"]\n[anode]',
            "cathode.wider_order",
            "a reactivity series needs H",
        ),
        (
            "[anode]",
            'hydrogen_as = "steam"\n[anode]',
            "cathode.hydrogen_as",
            "must be one of: H+, H+ at pH 7, water",
        ),
        (
            '"always"',
            '"sometimes"',
            "anode.halides",
            "must be one of: always, when-concentrated, by-potential",
        ),
        (
            '"always"',
            '"always"\nhalide_ions = ["Cl-", "chloride"]',
            "anode.halide_ions.1",
            "'chloride' is not a halide",
        ),
        (
            '"always"',
            '"always"\nhalide_ions = ["NaCl"]',
            "anode.halide_ions.0",
            "'NaCl' is not a halide",
        ),
        (
            '"always"',
            '"always"\nhalide_ions = ["F^-"]',
            "anode.halide_ions.0",
            "'F^-' is not a halide that is discharged from water",
        ),
        ('"always"', '"always"\nhalide_ions = []', "anode.halide_ions", "Shorter than minimum length 1"),
        (
            '"always"',
            '"always"\nhalide_ions = ["Cl^-", "Cl^-"]',
            "anode.halide_ions",
            "an entry stands in the list twice",
        ),
        (
            '"always"',
            '"always"\nactive_electrodes = ["wood"]',
            "anode.active_electrodes.0",
            "'wood' is not an electrode",
        ),
        ('halides = "always"', "", "anode.halides", "Missing data for required field"),
        (
            '"always"',
            '"always"\nrule = "dice"',
            "anode.rule",
            "must be one of: halides, deposition-potential, given",
        ),
        (
            '"always"',
            '"always"\nchloride = "last"',
            "anode.chloride",
            "must be one of: by-concentration, argued, first",
        ),
        ('"always"', '"always"\norder = ["Cl^-"]', "anode.order", "an order of discharge needs OH^-"),
        (
            '"always"',
            '"always"\norder = ["OH^-", "OH^-"]',
            "anode.order",
            "an entry stands in the list twice",
        ),
        (
            '"always"',
            '"always"\norder = ["Na^+", "OH^-"]',
            "anode.order.0",
            "'Na^+' is not a negative ion of the tables",
        ),
        ('"always"', '"always"\norder = ["lamp", "OH^-"]', "anode.order.0", "'lamp' is not a negative ion"),
        (
            '"always"',
            '"always"\ncharge_changes = "no"',
            "anode.charge_changes",
            "must be one of: decided, contested",
        ),
        (
            '"always"',
            '"always"\n[anode.from_concentrated]\n"SO4^2-" = "maybe"',
            "anode.from_concentrated.SO4^2-.value",
            "must be one of: answer, accepted",
        ),
        (
            '"always"',
            '"always"\n[anode.from_concentrated]\n"NO3^-" = "answer"',
            "anode.from_concentrated.NO3^-.key",
            "must be one of: SO4^2-, CH3COO^-",
        ),
        (
            '"always"',
            '"always"\noxide_melt_on_carbon = "soot"',
            "anode.oxide_melt_on_carbon",
            "must be one of: oxygen, carbon-dioxide",
        ),
        (
            '"always"',
            '"always"\n[overpotentials.H2]\nwood = [0.1, 0.2]',
            "overpotentials.H2.wood",
            "'wood' is not an electrode of the tables",
        ),
        (
            '"always"',
            '"always"\n[overpotentials.H2]\niron = [0.2, 0.1]',
            "overpotentials.H2.iron",
            "two figures are wanted",
        ),
        (
            '"always"',
            '"always"\n[overpotentials]\nmargin_V = 2',
            "overpotentials.margin_V",
            "Must be greater",
        ),
        (
            '"always"',
            '"always"\n[overpotentials]\notherwise = "wood"',
            "overpotentials.otherwise",
            "'wood' is not an electrode of the tables",
        ),
        (
            '"always"',
            '"always"\n[[prescribed_cells]]\nname = "chalk"\nelectrolyte = ["CaCO3"]',
            "prescribed_cells.0.electrolyte",
            "'CaCO3' is no electrolyte: ",
        ),
        (
            '"always"',
            '"always"\n[[prescribed_cells]]\nname = "brine"\nanode = "wood"',
            "prescribed_cells.0.anode",
            "'wood' is neither inert, any, plating nor an electrode",
        ),
        (
            '"always"',
            '"always"\n[[prescribed_cells]]\nanode = "any"',
            "prescribed_cells.0.name",
            "Missing data",
        ),
        ('"always"', '"always"\nfilms = "maybe"', "anode.films", "must be one of: oxygen, film"),
        (
            '"always"',
            '"always"\n[concentration]\nthreshold_mol_dm3 = 0',
            "concentration.threshold_mol_dm3",
            "Must be greater",
        ),
        (
            '"always"',
            '"always"\n[concentration]\nthreshold_mol_dm3 = 41',
            "concentration.threshold_mol_dm3",
            "Must be greater",
        ),
        (
            '"always"',
            '"always"\n[concentration]\nthreshold_mol_dm3 = nan',
            "concentration.threshold_mol_dm3",
            "Special numeric",
        ),
        (
            '"always"',
            '"always"\n[concentration]\nthreshold_mol_dm3 = []',
            "concentration.threshold_mol_dm3",
            "Not a valid number",
        ),
        (
            '"always"',
            '"always"\n[concentration]\nthreshold_mol_dm3 = "1"',
            "concentration.threshold_mol_dm3",
            "Not a valid number",
        ),
        (
            '"always"',
            '"always"\n[concentration]\ndoubtful_mol_dm3 = [0.1, true]',
            "concentration.doubtful_mol_dm3.1",
            "Not a valid number",
        ),
        (
            '"always"',
            '"always"\n[concentration]\ndoubtful_mol_dm3 = [2.0, 0.1]',
            "concentration.doubtful_mol_dm3",
            "the lower figure comes first",
        ),
        (
            '"always"',
            '"always"\n[concentration]\ndoubtful_mol_dm3 = [1]',
            "concentration.doubtful_mol_dm3",
            "Length must be 2",
        ),
        (
            '"always"',
            '"always"\n[concentration]\nwhen_missing = "ask"',
            "concentration.when_missing",
            "must be one of",
        ),
        (
            'acidic = ["ions"]',
            "acidic = []",
            "conventions.hydrogen_from.acidic",
            "Shorter than minimum length 1",
        ),
        (
            'acidic = ["ions"]',
            'acidic = ["steam"]',
            "conventions.hydrogen_from.acidic.0",
            "must be one of: ions, water",
        ),
        ('acidic = ["ions"]\n', "", "conventions.hydrogen_from.acidic", "Missing data for required field"),
        (
            'alkaline = ["ions"]',
            'alkaline = ["ions"]\nmolten = ["ions"]',
            "conventions.oxygen_from.molten",
            "Unknown field",
        ),
        (
            "[conventions.hydrogen_from]",
            '[conventions]\noxidation_also_minus = "yes"\n[conventions.hydrogen_from]',
            "conventions.oxidation_also_minus",
            "Not a valid boolean",
        ),
        (
            "[conventions.hydrogen_from]",
            '[conventions]\nstate_symbols = "often"\n[conventions.hydrogen_from]',
            "conventions.state_symbols",
            "must be one of: asked, required, not-used",
        ),
        (
            "[conventions.hydrogen_from]",
            "[conventions]\nfaraday_constant = 96500\n[conventions.hydrogen_from]",
            "conventions.faraday_constant",
            "Not a valid string",
        ),
        (
            "[cathode]",
            '[certainty]\nanode = "perfect"\n[cathode]',
            "certainty.anode.value",
            "must be one of: high, medium, low",
        ),
        ("[cathode]", "[scope]\nmelts = [3]\n[cathode]", "scope.melts.0", "Not a valid string"),
        (
            "[cathode]",
            '[scope]\nmelts = ["NaCl", "NaCl"]\n[cathode]',
            "scope.melts",
            "an entry stands in the list",
        ),
        ("[cathode]", '[scope]\nsums = "none"\n[cathode]', "scope.sums", "Unknown field"),
        ("[cathode]", "sources = [3]\n[cathode]", "sources.0", "Not a valid string"),
        ("[cathode]", 'colour = "blue"\n[cathode]', "colour", "Unknown field"),
        ('"always"', '"always"\nhalide = ["Cl^-"]', "anode.halide", "Unknown field"),
        ("[cathode]", "[[cathode]]", "cathode", "Invalid input type"),
    ],
)
def test_a_fault_is_told_with_its_key_path(old: str, new: str, path: str, fault: str) -> None:
    found = faults(changed((old, new)))
    assert list(found) == [path]
    assert found[path].startswith(fault)


def test_a_marking_without_any_mark_is_a_fault() -> None:
    found = faults(GOOD + "[marking]\nspecies_marks = 0\nbalance_marks = 0\n")
    assert found == {"marking.balance_marks": "a line needs at least one mark"}


def test_every_fault_of_a_file_is_told_at_once() -> None:
    text = changed(
        ("format = 1", "format = 3"),
        ('"skerry-point"', '"Skerry"'),
        ('"Na", "C", "Zn", "H"', '"Na", "Zz"'),
        ("[anode]", 'hydrogen_as = "steam"\nladder = 1\n[anode]'),
        ('"always"', '"never"'),
        ('acidic = ["water"]\n', ""),
    )
    assert set(faults(text)) == {
        "format",
        "id",
        "cathode.order",
        "cathode.order.1",
        "cathode.hydrogen_as",
        "cathode.ladder",
        "anode.halides",
        "conventions.oxygen_from.acidic",
    }


def test_a_series_without_hydrogen_is_told_beside_other_faults_of_its_table() -> None:
    text = changed(('"Zn", "H"', '"Zn"'), ("[anode]", 'hydrogen_as = "steam"\n[anode]'))
    assert set(faults(text)) == {"cathode.order", "cathode.hydrogen_as"}


def test_an_empty_file_lacks_everything_that_is_needed() -> None:
    assert set(faults("")) == {"format", "id", "title", "cathode", "anode", "conventions"}


def test_a_refusal_names_the_file_and_lists_the_faults_in_a_sentence() -> None:
    with pytest.raises(CurriculumFileFault) as caught:
        read_declaration(changed(("format = 1", "format = 2"), ('"always"', '"never"')), "museum.toml")
    assert caught.value.origin == "museum.toml"
    assert caught.value.detail == (
        "museum.toml: format: must be 1; anode.halides: must be one of: always, when-concentrated, by-potential"
    )


@pytest.mark.parametrize(
    "text",
    [
        "format = ",
        "{}",
        "[cathode",
        "id = 'a'\nid = 'b'",
        "\x00",
        "\ufeffformat = 1",
        "title = 1979-13-99",
        "format = " + "9" * 5000,
        "deep = " + "[" * 20_000,
        "deep = " + "{a=" * 5_000,
    ],
    ids=[
        "no value",
        "JSON",
        "open bracket",
        "a key twice",
        "NUL",
        "byte order mark",
        "no date",
        "5000 digits",
        "nested lists",
        "nested tables",
    ],
)
def test_what_is_not_readable_as_toml_is_refused(text: str) -> None:
    found = faults(text)
    assert list(found) == [""]
    assert found[""].startswith("not readable as TOML: ")


def test_dotted_keys_of_any_depth_are_only_unknown() -> None:
    assert faults("a" + ".a" * 20_000 + " = 1")["a"] == "Unknown field"


def test_a_text_beyond_64_kibibytes_is_not_read() -> None:
    assert faults("#" * 65_537) == {"": "the text is longer than 65536 characters"}
    assert read_declaration(GOOD + "#" * (65_536 - len(GOOD)), "")[0].id == "skerry-point"


BASES = {"skerry-point": read_declaration(GOOD, "")[1]}


def test_a_declaration_may_build_on_another_and_change_what_it_names() -> None:
    text = 'based_on = "skerry-point"\nid = "north"\ntitle = "North"\n[cathode]\norder = ["K", "H", "Ag"]\n'
    curriculum, data = read_declaration(text, "north.toml", BASES)
    ladder = curriculum.cathode_rules[-1]
    assert isinstance(ladder, Ladder)
    assert (curriculum.id, ladder.order) == ("north", ("K", "H", "Ag"))
    assert data["cathode"]["rule"] == "ladder"
    assert "based_on" not in data


@pytest.mark.parametrize(
    ("own", "summary"),
    [("", "Builds on Skerry Point school days."), ('summary = "Silver last."\n', "Silver last.")],
)
def test_the_summary_of_another_is_not_taken_over(own: str, summary: str) -> None:
    text = f'based_on = "skerry-point"\nid = "north"\ntitle = "North"\n{own}[cathode]\norder = ["K", "H", "Ag"]\n'
    assert read_declaration(text, "north.toml", BASES)[0].summary == summary


def test_building_on_another_leaves_it_as_it_was() -> None:
    read_declaration('based_on = "skerry-point"\nid = "north"\n[cathode]\norder = ["H"]\n', "", BASES)
    assert BASES["skerry-point"]["cathode"]["order"] == ["Na", "C", "Zn", "H", "Cu"]


def test_one_key_deep_in_a_table_can_be_changed_alone() -> None:
    text = 'based_on = "skerry-point"\nid = "north"\n[conventions.oxygen_from]\nneutral = ["water"]\n'
    oxygen = read_declaration(text, "", BASES)[0].conventions.oxygen
    assert dict(oxygen) == {"acidic": ("water",), "neutral": ("water",), "alkaline": ("ions",)}


def test_a_faulty_change_of_an_inherited_table_is_told() -> None:
    assert faults('based_on = "skerry-point"\nid = "north"\nanode = 3\n', BASES) == {
        "anode": "Invalid input type"
    }


@pytest.mark.parametrize(
    ("base", "fault"),
    [
        ('"south"', "no curriculum 'south' to build on; known: skerry-point"),
        ('["skerry-point"]', "no curriculum '['skerry-point']' to build on; known: skerry-point"),
        ("3", "no curriculum '3' to build on; known: skerry-point"),
    ],
)
def test_an_unknown_base_is_refused_with_those_that_are_known(base: str, fault: str) -> None:
    assert faults(f"based_on = {base}\n{GOOD}", BASES) == {"based_on": fault}


@pytest.mark.parametrize(
    ("text", "is_good"),
    [
        ("gcse", True),
        ("a-level", True),
        ("a2-b3", True),
        ("", False),
        ("-a", False),
        ("a-", False),
        ("A", False),
        ("a\n", False),
        (7, False),
        (None, False),
    ],
)
def test_an_id_is_lower_case_words_joined_by_hyphens(text: object, is_good: object) -> None:
    assert is_id(text) is is_good
