"""A prediction laid out for a terminal: sections, wrapped lines, no colours needed."""

from __future__ import annotations

from textwrap import wrap
from typing import TYPE_CHECKING, Any

from ionwright.chemistry.notation import species_text
from ionwright.chemistry.species import species
from ionwright.errors import IonwrightError

if TYPE_CHECKING:
    from collections.abc import Iterable

_LABEL = 15
_STATES = {"aqueous": "in water", "molten": "molten"}
_SIDES = {"cathode": "cathode (-)", "anode": "anode (+)"}


def laid_out(document: dict[str, Any], *, width: int) -> str:
    """Return a prediction document as text of the given width."""
    sections = [
        ("Cell", _cell(document)),
        ("Ions", _ions(document["ions"])),
        ("At the cathode (-)", _electrode(document["cathode"])),
        ("At the anode (+)", _electrode(document["anode"])),
        ("Overall", _overall(document)),
        ("Solution", _solution(document)),
        ("What you see", _seen(document)),
        ("Tests", _tests(document)),
        ("Cautions", [("", caution["text"]) for caution in document.get("cautions", ())]),
    ]
    blocks = [section(title, rows, width) for title, rows in sections if rows]
    return "\n\n".join(blocks)


Rows = list[tuple[str, str]]


def section(title: str, rows: Rows, width: int) -> str:
    """Return a section: its title, and rows of a label and a text wrapped behind it."""
    lines = [title.upper()]
    for label, text in rows:
        first = "  " + (f"{label:<{_LABEL}}" if label else "")
        rest = "  " + " " * (_LABEL if label else 0)
        if len(first.rstrip()) > _LABEL + 1:
            first = first.rstrip() + "  "
        lines += wrap(text, width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False) or [
            first
        ]
    return "\n".join(lines)


def _cell(document: dict[str, Any]) -> Rows:
    rows = cell_rows(document["cell"])
    rows.append(("Curriculum", document["curriculum"]["title"]))
    rows += [("Assumed", text) for text in document.get("assumptions", ())]
    return rows + [("Note", text) for text in document.get("notes", ())]


def cell_rows(cell: dict[str, Any]) -> Rows:
    """Return what is in a cell and what its electrodes are made of."""
    rows = []
    for substance in cell["electrolyte"]:
        amount = f", {substance['concentration']}" if "concentration" in substance else ""
        state = _STATES.get(cell["state"], cell["state"])
        rows.append(("Electrolyte", f"{substance['name']}, {substance['formula']}{amount}, {state}"))
    for side, label in _SIDES.items():
        electrode = cell[side]
        rows.append((label.capitalize(), f"{electrode['material']}, {electrode['behaviour']}"))
    return rows


def _ions(ions: Iterable[dict[str, Any]]) -> Rows:
    return [
        (
            formula_text(ion["formula"]),
            f"{ion['name']}, from the {ion['source']}, moves to the {ion['moves_towards']}",
        )
        for ion in ions
    ]


def _electrode(verdict: dict[str, Any]) -> Rows:
    products = ", ".join(
        f"{product['name']} ({formula_text(product['formula'])})" for product in verdict["products"]
    )
    rows = [("Product" if len(verdict["products"]) < 2 else "Products", products or "not decided")]
    if "half_equation" in verdict:
        rows.append(("Half-equation", equation_text(verdict["half_equation"])))
    rows += [("Because" if first else " ", reason) for first, reason in _numbered(verdict["because"])]
    for competitor in verdict.get("competition", ()):
        if competitor["outcome"] != "discharged":
            rows.append(("Not", f"{equation_text(competitor['half_equation'])}: {competitor['because']}"))
    for accepted in verdict.get("also_accepted", ()):
        rows.append(
            (
                "Also accepted",
                f"{', '.join(map(formula_text, accepted['products']))}: {accepted.get('because', '')}",
            )
        )
    return rows


def _numbered(reasons: list[str]) -> Iterable[tuple[bool, str]]:
    return ((number == 0, reason) for number, reason in enumerate(reasons))


def _overall(document: dict[str, Any]) -> Rows:
    rows = []
    if "overall_equation" in document:
        rows.append(("Equation", equation_text(document["overall_equation"])))
    if "electron_balance" in document:
        balance = document["electron_balance"]
        text = (
            f"cathode times {balance['cathode_multiplier']}, anode times {balance['anode_multiplier']},"
            f" {balance['electrons']} {'electron' if balance['electrons'] == 1 else 'electrons'} passed on"
        )
        rows.append(("Electrons", text))
    ratio = document.get("ratio", {})
    for key, label in (("moles", "Moles"), ("gas_volumes", "Gas volumes")):
        if ratio.get(key):
            text = " : ".join(f"{part['value']:g} {formula_text(part['formula'])}" for part in ratio[key])
            rows.append((label, text))
    return rows


def _solution(document: dict[str, Any]) -> Rows:
    solution = document.get("solution", {})
    names = {
        "ions_removed": "Leave",
        "ions_formed": "Form",
        "ions_remaining": "Stay",
        "ph": "pH",
        "colour": "Colour",
        "becomes": "Becomes",
    }
    rows = [("", solution["summary"])] if solution.get("summary") else []
    for key, label in names.items():
        value = solution.get(key)
        if value:
            rows.append((label, ", ".join(map(formula_text, value)) if isinstance(value, list) else value))
    return rows


def _seen(document: dict[str, Any]) -> Rows:
    return [
        (_SIDES[side].capitalize(), text)
        for side in _SIDES
        for text in document[side].get("observations", ())
    ]


def _tests(document: dict[str, Any]) -> Rows:
    return [
        (formula_text(test["product"]), f"{test['test']} {test['result']}")
        for side in _SIDES
        for test in document[side].get("tests", ())
    ]


def equation_text(equation: dict[str, Any]) -> str:
    """Return an equation in the best notation for a line of text."""
    return str(equation.get("text", equation["ascii"]))


def formula_text(ascii_formula: str) -> str:
    """Return a formula as it is written on paper; what is no formula stays as it is."""
    try:
        return species_text(species(ascii_formula))
    except IonwrightError:
        return ascii_formula
