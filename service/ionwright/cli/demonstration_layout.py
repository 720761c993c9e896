"""The plan of a demonstration laid out for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.cli.layout import equation_text, formula_text, section
from ionwright.cli.quantities_layout import working_lines

if TYPE_CHECKING:
    from ionwright.cli.layout import Rows


def plan_laid_out(document: dict[str, Any], *, width: int) -> str:
    """Return the document of a plan as text of the given width."""
    sections = [
        ("Where", _where(document)),
        ("What should be seen", _aims(document)),
        ("Current and time", _currents(document)),
        ("What is seen", _seen(document)),
        ("Setting up", [("", text) for text in document["preparation"]]),
        ("What forms and what is used up", _turnover(document)),
        (
            "Bath",
            [("", text) for text in (*(use["text"] for use in document["bath"]), document["bath_note"])],
        ),
        ("Air", [("", gas["text"]) for gas in (*document["toxic_gases"], *document["flammable_gases"])]),
        ("Cautions", [("", caution["text"]) for caution in document["cautions"]]),
        ("Doubts", [("", text) for text in document["doubts"]]),
        ("Assumed", [("", text) for text in (*document["assumptions"], *document["rules_of_thumb"])]),
    ]
    blocks = [section(title, rows, width) for title, rows in sections if rows]
    return "\n\n".join([*blocks, "\n".join(["WORKING", *working_lines(document["working"], width)])])


def _where(document: dict[str, Any]) -> Rows:
    verdict = document["verdict"]
    return [("Verdict", verdict["where"]), *(("", reason) for reason in verdict["reasons"])]


def _aims(document: dict[str, Any]) -> Rows:
    rows = [(formula_text(aim["of"]), _aim(aim)) for aim in document["aims"]]
    return [
        *rows,
        *((name.capitalize(), equation_text(half)) for name, half in document["half_equations"].items()),
    ]


def _seen(document: dict[str, Any]) -> Rows:
    seen = [(name.capitalize(), text) for name, texts in document["observations"].items() for text in texts]
    tests = [
        (formula_text(test["product"]), f"{test['test']} {test['result']}") for test in document["tests"]
    ]
    return [*seen, *tests]


def _aim(aim: dict[str, Any]) -> str:
    quantity = aim["quantity"].replace("_", " ")
    return f"{aim['size']['text']} at the {aim['electrode']} ({quantity}); it takes {aim['charge']['text']}"


def _currents(document: dict[str, Any]) -> Rows:
    rows = []
    for row in document["currents"]:
        densities = ", ".join(
            f"{density['text']} at the {electrode}" for electrode, density in row["current_densities"].items()
        )
        mark = " *" if row == document["recommended"] else ""
        text = f"{row['time']['text']}. {densities}{'. ' if densities else ''}{row['because']}"
        rows.append((row["current"]["text"] + mark, text))
    is_met = "yes" if document["is_met"] else "no"
    return [*rows, ("*", document["because"]), ("Aims met", is_met)]


def _turnover(document: dict[str, Any]) -> Rows:
    rows = []
    for word, members in (("forms", document["formed"]), ("is used up", document["used_up"])):
        for one in members:
            volume = f", {one['volume']['text']}" if "volume" in one else ""
            text = f"{one['mass']['text']}{volume}, {one['amount']['text']} {word} at the {one['electrode']}"
            rows.append((formula_text(one["of"]), text))
    if "total_gas" in document:
        rows.append(("All gases", document["total_gas"]["text"]))
    return rows
