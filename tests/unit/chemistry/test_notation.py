"""Every notation of an equation, for people, pages, screen readers and programs."""

import json
from xml.etree import ElementTree as ET

import pytest

from ionwright.chemistry.equation import equation, read_equation
from ionwright.chemistry.faults import Unbalanced
from ionwright.chemistry.notation import NOTATIONS, rendered, species_html, species_text, spoken_species
from ionwright.chemistry.species import ELECTRON, species
from ionwright.errors import IonwrightError

NICKEL = equation("Ni^2+(aq) + 2e- -> Ni(s)")
TETRAAMMINE = equation("[Cu(NH3)4]^2+(aq) + 2e- -> Cu(s) + 4NH3(aq)")
SULFATE = equation("SO4^2- + Ba^2+ -> BaSO4")
HALF = equation("Cl^- -> 1/2Cl2 + e-")
HYDRATE = equation("NiSO4.6H2O -> NiSO4 + 6H2O")
ALL = (NICKEL, TETRAAMMINE, SULFATE, HALF, HYDRATE)
CORE = {"math", "mrow", "mi", "mn", "mo", "mtext", "mspace", "msub", "msup", "msubsup", "mfrac"}


@pytest.mark.parametrize(
    ("notation", "expected"),
    [
        ("ascii", "Ni^2+ + 2e- -> Ni"),
        ("text", "Ni²⁺(aq) + 2e⁻ → Ni(s)"),
        ("html", "Ni<sup>2+</sup>(aq) + 2e<sup>\u2212</sup> → Ni(s)"),
        ("latex", r"\ce{Ni^2+(aq) + 2e- -> Ni(s)}"),
        ("spoken", "nickel two plus, aqueous, plus two electrons, gives nickel, solid"),
        ("electrons", 2),
    ],
)
def test_nickel_plating_in_every_notation(notation: str, expected: object) -> None:
    assert rendered(NICKEL)[notation] == expected


def test_tokens_are_plain_data() -> None:
    assert rendered(NICKEL)["tokens"] == [
        {
            "role": "reactant",
            "side": "left",
            "coefficient": 1,
            "formula": "Ni",
            "charge": 2,
            "state": "aq",
            "elements": {"Ni": 1},
        },
        {"role": "electron", "side": "left", "coefficient": 2, "formula": "e", "charge": -1, "elements": {}},
        {
            "role": "product",
            "side": "right",
            "coefficient": 1,
            "formula": "Ni",
            "charge": 0,
            "state": "s",
            "elements": {"Ni": 1},
        },
    ]


@pytest.mark.parametrize("each", ALL, ids=str)
def test_everything_survives_json(each: object) -> None:
    written = rendered(each)  # type: ignore[arg-type]
    assert json.loads(json.dumps(written)) == written
    assert [name for name in written if name != "electrons"] == list(NOTATIONS)


@pytest.mark.parametrize(
    ("name", "text", "html", "latex", "spoken"),
    [
        (
            "complex",
            "[Cu(NH₃)₄]²⁺(aq) + 2e⁻ → Cu(s) + 4NH₃(aq)",
            (
                "[Cu(NH<sub>3</sub>)<sub>4</sub>]<sup>2+</sup>(aq) + 2e<sup>\u2212</sup> → "
                "Cu(s) + 4NH<sub>3</sub>(aq)"
            ),
            r"\ce{[Cu(NH3)4]^2+(aq) + 2e- -> Cu(s) + 4NH3(aq)}",
            (
                "open bracket C u open bracket N H 3 close bracket 4 close bracket two plus, aqueous, "
                "plus two electrons, gives copper, solid, plus four N H 3, aqueous"
            ),
        ),
        (
            "sulfate",
            "SO₄²⁻ + Ba²⁺ → BaSO₄",
            "SO<sub>4</sub><sup>2\u2212</sup> + Ba<sup>2+</sup> → BaSO<sub>4</sub>",
            r"\ce{SO4^2- + Ba^2+ -> BaSO4}",
            "S O 4 two minus, plus barium two plus, gives B a S O 4",
        ),
        (
            "half",
            "Cl⁻ → ½Cl₂ + e⁻",
            "Cl<sup>\u2212</sup> → ½Cl<sub>2</sub> + e<sup>\u2212</sup>",
            r"\ce{Cl^- -> 1/2Cl2 + e-}",
            "chlorine one minus, gives one half C l 2, plus one electron",
        ),
        (
            "hydrate",
            "NiSO₄·6H₂O → NiSO₄ + 6H₂O",
            "NiSO<sub>4</sub>·6H<sub>2</sub>O → NiSO<sub>4</sub> + 6H<sub>2</sub>O",
            r"\ce{NiSO4*6H2O -> NiSO4 + 6H2O}",
            "N i S O 4 dot 6 H 2 O, gives N i S O 4, plus six H 2 O",
        ),
    ],
)
def test_groups_fractions_and_hydrates(name: str, text: str, html: str, latex: str, spoken: str) -> None:
    each = {"complex": TETRAAMMINE, "sulfate": SULFATE, "half": HALF, "hydrate": HYDRATE}[name]
    written = rendered(each)
    assert written["text"] == text
    assert written["html"] == html
    assert written["latex"] == latex
    assert written["spoken"] == spoken


@pytest.mark.parametrize("each", ALL, ids=str)
def test_mathml_is_well_formed_core_with_upright_elements(each: object) -> None:
    markup = rendered(each)["mathml"]  # type: ignore[arg-type]
    root = ET.fromstring(markup)  # noqa: S314 - the text is our own
    names = [node.tag.removeprefix("{http://www.w3.org/1998/Math/MathML}") for node in root.iter()]
    assert set(names) <= CORE
    assert root.get("alttext") == each.ascii  # type: ignore[attr-defined]
    assert root.get("intent") == ":chemical-equation"
    for node in root.iter("{http://www.w3.org/1998/Math/MathML}mi"):
        assert len(node.text or "") > 1 or node.get("mathvariant") == "normal"


def test_mathml_children_have_the_number_their_element_wants() -> None:
    wanted = {"msub": 2, "msup": 2, "msubsup": 3, "mfrac": 2}
    for each in ALL:
        for node in ET.fromstring(rendered(each)["mathml"]).iter():  # noqa: S314 - the text is our own
            name = node.tag.rpartition("}")[2]
            assert len(node) == wanted.get(name, len(node))


def test_subscript_and_charge_stand_above_one_another_with_a_true_minus() -> None:
    assert (
        '<msubsup><mi mathvariant="normal">O</mi><mn>4</mn><mrow><mn>2</mn>'
        '<mo lspace="0" rspace="0" form="postfix">\u2212</mo></mrow></msubsup>'
    ) in rendered(SULFATE)["mathml"]


def test_only_what_is_asked_for_is_written_and_ascii_always() -> None:
    assert set(rendered(NICKEL, frozenset({"text"}))) == {"ascii", "text", "electrons"}
    assert set(rendered(SULFATE, frozenset())) == {"ascii"}


def test_an_unknown_notation_is_refused() -> None:
    with pytest.raises(IonwrightError) as caught:
        rendered(NICKEL, frozenset({"braille"}))
    assert caught.value.code == "unknown-notation"
    assert "spoken" in caught.value.remedy


def test_an_unbalanced_equation_never_leaves() -> None:
    with pytest.raises(Unbalanced):
        rendered(equation("Ni^2+ + e- -> Ni"))


def test_changing_an_answer_does_not_change_the_next() -> None:
    rendered(NICKEL)["ascii"] = "spoiled"
    assert rendered(NICKEL)["ascii"] == "Ni^2+ + 2e- -> Ni"


def test_half_an_electron_is_written_as_a_fraction() -> None:
    assert rendered(equation("1/2Ag^+ + 1/2e- -> 1/2Ag"))["electrons"] == "1/2"


@pytest.mark.parametrize("each", ALL, ids=str)
def test_the_unicode_text_is_read_back(each: object) -> None:
    assert read_equation(rendered(each)["text"]) == each  # type: ignore[arg-type]


def test_single_species() -> None:
    assert species_text(species("SO4^2-")) == "SO₄²⁻"
    assert species_html(species("SO4^2-")) == "SO<sub>4</sub><sup>2\u2212</sup>"
    assert spoken_species(species("Na^+")) == "sodium one plus"
    assert spoken_species(species("[Fe(CN)6]^3-")) == (
        "open bracket F e open bracket C N close bracket 6 close bracket three minus"
    )
    assert species_text(ELECTRON) == "e⁻"
    assert spoken_species(ELECTRON) == "electron"
