"""Laws of reading, writing and combining that hold for every equation, not only the familiar ones."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.equation import Equation, Term, combine, equation, read_equation
from ionwright.chemistry.formula import Atom, Formula, Group, read_formula
from ionwright.chemistry.notation import rendered, species_text
from ionwright.chemistry.species import ELECTRON, Species, read_species, readings, species
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Callable

SUBSCRIPTS = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
SUPERSCRIPTS = str.maketrans("0123456789+-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻")
TYPED = "NaClOHSKCuFeZgpb0123456789+-−–⁺⁻²³₂₄^_()[]{}.·*→=>< \teē½/,lsgq\u0304\u0421\ud800"

atoms = st.builds(Atom, st.sampled_from(sorted(ELEMENTS)), st.integers(1, 99))
numerals = {"I", "II", "III", "IV", "V", "VI", "VII", "VIII"}


def _is_formula_only(group: Group) -> bool:
    """Leave out what names and state symbols look like: (III), (S)."""
    return "".join(part.text for part in group.parts) not in numerals and group.text != "(S)"


groups = st.builds(
    Group, st.lists(atoms, min_size=1, max_size=3).map(tuple), st.integers(1, 12), st.sampled_from("([")
).filter(_is_formula_only)
nested = st.builds(
    Group,
    st.lists(atoms | groups, min_size=1, max_size=3).map(tuple),
    st.integers(1, 4),
    st.sampled_from("(["),
).filter(_is_formula_only)
cores = st.lists(atoms | groups | nested, min_size=1, max_size=4).map(tuple)
water = read_formula("H2O")
formulas = st.builds(
    Formula, cores, st.one_of(st.just(()), st.integers(1, 24).map(lambda number: ((number, water),)))
)
charges = st.integers(-4, 4)


@st.composite
def any_species(draw: st.DrawFn) -> Species:
    formula = draw(formulas.filter(lambda each: len(each.text) < 80))
    charge = draw(charges)
    sign = "+" if charge > 0 else "-"
    return species(formula.text + (f"^{abs(charge) if abs(charge) > 1 else ''}{sign}" if charge else ""))


coefficients = st.one_of(st.integers(1, 30), st.builds(Fraction, st.integers(1, 9), st.integers(2, 9))).map(
    lambda number: int(number) if number.denominator == 1 else number
)
terms = st.builds(Term, any_species() | st.just(ELECTRON), coefficients)
sides = st.lists(terms, min_size=1, max_size=4).map(tuple)
equations = st.builds(Equation, sides, sides).filter(lambda each: len(each.ascii) < 400)

# half-equations of the museum's cells, all reductions
REDUCTIONS = tuple(
    map(
        equation,
        (
            "Ni^2+ + 2e- -> Ni",
            "Ag^+ + e- -> Ag",
            "[Ag(CN)2]^- + e- -> Ag + 2CN^-",
            "Zn^2+ + 2e- -> Zn",
            "Al^3+ + 3e- -> Al",
            "2H^+ + 2e- -> H2",
            "2H2O + 2e- -> H2 + 2OH^-",
            "Cl2 + 2e- -> 2Cl^-",
            "1/2Br2 + e- -> Br^-",
            "O2 + 2H2O + 4e- -> 4OH^-",
            "O2 + 4H^+ + 4e- -> 2H2O",
            "S2O8^2- + 2e- -> 2SO4^2-",
            "MnO4^- + 8H^+ + 5e- -> Mn^2+ + 4H2O",
            "PbO2 + 4H^+ + SO4^2- + 2e- -> PbSO4 + 2H2O",
            "Cr2O7^2- + 14H^+ + 6e- -> 2Cr^3+ + 7H2O",
            "[Cu(NH3)4]^2+ + 2e- -> Cu + 4NH3",
            "O2 + 4e- -> 2O^2-",
        ),
    )
)
KNOWN = frozenset(found for each in REDUCTIONS for found in (*each.reactants, *each.products))


# ------------------------------------------------------------------ printing and reading


@given(formulas)
def test_a_printed_formula_reads_back_as_the_same_tree(formula: Formula) -> None:
    assert read_formula(formula.text) == formula


@given(formulas)
def test_composition_is_the_sum_of_core_and_attached(formula: Formula) -> None:
    total = dict(formula.core_composition)
    for number, attached in formula.attached:
        for symbol, count in attached.composition.items():
            total[symbol] = total.get(symbol, 0) + number * count
    assert formula.composition == total


@given(any_species())
def test_printed_species_read_back(found: Species) -> None:
    assert species(found.ascii) == found
    assert read_species(found.ascii) == found
    assert readings(species_text(found)) == (found,)


@given(equations)
def test_a_printed_equation_reads_back(found: Equation) -> None:
    assert equation(found.ascii) == found
    assert read_equation(found.ascii) == found


@given(st.sampled_from(REDUCTIONS), st.integers(1, 40), st.booleans())
def test_every_notation_that_can_be_typed_reads_back(each: Equation, times: int, backwards: bool) -> None:
    found = each.scaled(times)
    found = found.reversed() if backwards else found
    written = rendered(found)
    assert read_equation(written["ascii"]) == found
    assert read_equation(written["text"]) == found
    assert read_equation(written["latex"].removeprefix(r"\ce{").removesuffix("}")) == found


# ------------------------------------------------------------------ what people type


def _charge_spellings(charge: int) -> st.SearchStrategy[str]:
    if not charge:
        return st.just("")
    sign, number = "+" if charge > 0 else "-", abs(charge)
    size = str(number) if number > 1 else ""
    ways = [
        f"^{size}{sign}",
        f"^{{{size}{sign}}}",
        f"({size}{sign})",
        f"{size}{sign}".translate(SUPERSCRIPTS),
        f"{size}{sign}",
        f" {size}{sign}",
        sign * number,
        f"{sign}{size}",
        f"^{size}\u2212" if charge < 0 else f"^{size}\uff0b",
        f"{size}\u2013" if charge < 0 else f"{size}{sign}",
    ]
    return st.sampled_from(ways)


def _formula_spellings(formula: str) -> st.SearchStrategy[str]:
    ways: list[Callable[[str], str]] = [
        str,
        lambda text: text.translate(SUBSCRIPTS),
        lambda text: "".join(f"_{c}" if c.isdigit() else c for c in text),
        lambda text: text.replace(".", "·"),
    ]
    return st.sampled_from(ways).map(lambda way: way(formula))


@st.composite
def scrambled(draw: st.DrawFn, found: Equation) -> str:
    """Write an equation as somebody might type it; spaces are kept around joiners, as most people do."""
    written = []
    for side in (found.left, found.right):
        texts = []
        for term in side:
            if term.species.is_electron:
                text = draw(st.sampled_from(("e", "e-", "e⁻", "ē", "e^-", "e\u2212")))
            else:
                text = draw(_formula_spellings(term.species.formula)) + draw(
                    _charge_spellings(term.species.charge)
                )
            number = "" if term.coefficient == 1 else str(term.coefficient)
            if number == "1/2":
                number = draw(st.sampled_from(("1/2", "½", "0.5", "(1/2)", "0,5")))
            texts.append(number + draw(st.sampled_from(("", " "))) + text)
        written.append(draw(st.sampled_from((" + ", "  +  ", " +"))).join(texts))
    arrow = draw(st.sampled_from((" -> ", " → ", " = ", " ⇌ ", " --> ", " ⟶ ", "  =>  ", " ⇄ ")))
    return arrow.join(written)


@given(st.data(), st.sampled_from(REDUCTIONS), st.booleans())
def test_scrambled_spellings_still_read_the_same(
    data: st.DataObject, each: Equation, backwards: bool
) -> None:
    found = each.reversed() if backwards else each
    text = data.draw(scrambled(found))
    assert read_equation(text, KNOWN) == found
    assert read_equation(text) == found


@given(st.sampled_from(REDUCTIONS), st.sampled_from(("e", "e-", "e⁻")), st.sampled_from((" - ", " − ", "-")))
def test_electrons_may_be_subtracted_on_the_other_side(each: Equation, electron: str, minus: str) -> None:
    oxidation = each.reversed()
    left = " + ".join(term.ascii for term in oxidation.left)
    right = " + ".join(term.ascii for term in oxidation.right if not term.species.is_electron)
    read = read_equation(f"{left}{minus}{each.electrons}{electron} -> {right}")
    assert set(read.right) == set(oxidation.right)
    assert read.left == oxidation.left


# ------------------------------------------------------------------ bad input


def _fault_of(reader: Callable[[str], object], text: str) -> IonwrightError | None:
    try:
        reader(text)
    except IonwrightError as fault:
        return fault
    return None


@settings(max_examples=400)
@given(st.text(max_size=60) | st.text(TYPED, max_size=60))
@example("\0")
@example("Na\0Cl")
@example("^")
@example("(")
@example("Ni^{")
@example("_")
@example("1/")
@example("٣H2")
@example("²")
@example("e\u0304\u0304")
@example("(+)")
@example("{2}")
@example("=")
@example("+->+")
@example("<->")
@example("1½")
def test_no_text_raises_anything_but_a_fault_with_a_place(text: str) -> None:
    readers: tuple[Callable[[str], object], ...] = (
        read_formula,
        readings,
        read_equation,
        species,
        equation,
        lambda given: read_equation(f"{given} -> {given}"),
    )
    for fault in filter(None, (_fault_of(reader, text) for reader in readers)):
        assert fault.detail.endswith(".")
        assert fault.remedy
        assert fault.position is not None
        assert 0 <= fault.position <= 2 * len(text) + 4


@given(
    st.text(TYPED, max_size=30).filter(lambda text: ">" not in text and "→" not in text and "=" not in text)
)
def test_a_fault_inside_a_formula_points_at_the_same_place_behind_leading_spaces(text: str) -> None:
    assume(text)
    assume(text.strip() == text)
    fault, later = _fault_of(readings, text), _fault_of(readings, "  " + text)
    assert (fault is None) == (later is None)
    if fault and later:
        assert fault.position is not None
        assert later.position == fault.position + 2


@pytest.mark.parametrize(
    "text",
    [
        "(" * 10_000,
        "H2" * 5000,
        "+" * 10_000,
        "-" * 10_000 + ">",
        "9" * 10_000 + "H",
        "SO42-+" * 5000 + "->H",
        "H" + "9" * 5000 + "+",
        "e" * 10_000,
        "½" * 10_000 + "->",
    ],
)
def test_long_input_is_refused_at_once(text: str) -> None:
    for reader in (read_formula, readings, read_equation, species, equation):
        with pytest.raises(IonwrightError):
            reader(text)


# ------------------------------------------------------------------ counting and combining


@given(equations)
def test_an_equation_lacks_what_its_reverse_has_too_much(found: Equation) -> None:
    atoms, charge = found.imbalance()
    back, back_charge = found.reversed().imbalance()
    assert back == {symbol: -number for symbol, number in atoms.items()}
    assert back_charge == -charge
    assert found.electrons == -found.reversed().electrons


@given(equations, st.builds(Fraction, st.integers(1, 50), st.integers(1, 50)))
def test_scaling_scales_what_is_missing_and_lowest_terms_undo_it(found: Equation, factor: Fraction) -> None:
    atoms, charge = found.imbalance()
    scaled_atoms, scaled_charge = found.scaled(factor).imbalance()
    assert scaled_atoms == {symbol: number * factor for symbol, number in atoms.items()}
    assert scaled_charge == charge * factor
    lowest = found.in_lowest_terms()
    assert found.scaled(factor).in_lowest_terms() == lowest
    assert all(isinstance(term.coefficient, int) for term in (*lowest.left, *lowest.right))


@given(
    st.sampled_from(REDUCTIONS),
    st.sampled_from(REDUCTIONS),
    st.builds(Fraction, st.integers(1, 6), st.integers(1, 6)),
    st.booleans(),
)
def test_combining_always_balances_without_electrons_in_lowest_terms(
    reduction: Equation, reversed_oxidation: Equation, factor: Fraction, join_water: bool
) -> None:
    oxidation = reversed_oxidation.reversed().scaled(factor)
    combined = combine(reduction, oxidation, join_water=join_water)
    overall = combined.overall
    assert overall.is_balanced
    assert overall == overall.in_lowest_terms()
    assert overall.electrons == 0
    assert ELECTRON not in {term.species for term in (*overall.left, *overall.right)}
    assert combined.electrons == combined.reduction_multiplier * reduction.electrons
    assert combined.electrons == -combined.oxidation_multiplier * oxidation.electrons
    assert combined.is_transfer == (reduction == reversed_oxidation)
    if not combined.is_transfer:
        assert not set(overall.reactants) & set(overall.products)
    ions = {species("H^+"), species("OH^-")}
    is_neutralisation = {*overall.reactants, *overall.products} == ions | {species("H2O")}
    if join_water and not is_neutralisation:
        assert not ions <= set(overall.reactants)
        assert not ions <= set(overall.products)
