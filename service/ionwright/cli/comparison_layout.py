"""A comparison of curricula, and the cells on which they disagree, laid out for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from ionwright.cli.layout import cell_rows, equation_text, formula_text, section

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.cli.layout import Rows


def comparison_laid_out(document: dict[str, Any], *, width: int) -> str:
    """Return the document of a comparison as text of the given width."""
    sections = [
        ("Cell", _cell(document)),
        ("Cathode (-)", _electrode(document["cathode"])),
        ("Difference at the cathode", _differences(document["cathode"])),
        ("Anode (+)", _electrode(document["anode"])),
        ("Difference at the anode", _differences(document["anode"])),
        ("Conventions", [_shared("", one) for way in document["conventions"] for one in way["readings"]]),
        ("Set aside", [(one["curriculum"], one["reason"]) for one in document.get("set_aside", ())]),
    ]
    return "\n\n".join(section(title, rows, width) for title, rows in sections if rows)


def disagreements_laid_out(document: dict[str, Any], *, width: int) -> str:
    """Return a page of disagreements as text of the given width."""
    found = [section("Disagreements", _overview(document), width)]
    for number, group in enumerate(document["groups"], 1):
        if group["disagreements"]:
            found.append(section(f"{number}. At the {group['electrode']}", _group(document, group), width))
    return "\n\n".join(found)


def _cell(document: dict[str, Any]) -> Rows:
    rows = cell_rows(document["cell"])
    rows.append(("Curricula", _named(one["id"] for one in document["curricula"])))
    rows += [_shared("Assumed", one) for one in document["assumptions"]]
    return rows + [("Note", text) for text in document["notes"]]


def _named(ids: Iterable[str]) -> str:
    return ", ".join(ids)


def _shared(label: str, one: dict[str, Any]) -> tuple[str, str]:
    return label, f"{one['text']} ({_named(one['curricula'])})"


def _electrode(side: dict[str, Any]) -> Rows:
    rows = [("", side["summary"])]
    for group in side["groups"]:
        rows += _agreement(group)
    return rows


def _agreement(group: dict[str, Any]) -> Rows:
    products = ", ".join(f"{one['name']} ({formula_text(one['formula'])})" for one in group["products"])
    rows = [("Answer", f"{products or 'not decided'}: {_named(group['curricula'])}")]
    halves = group.get("half_equations", ())
    for half in halves:
        whose = f" ({_named(half['curricula'])})" if len(halves) > 1 else ""
        rows.append(("Half-equation", equation_text(half["half_equation"]) + whose))
    for reason in group["reasons"]:
        whose = f" ({_named(reason['curricula'])})" if len(group["reasons"]) > 1 else ""
        rows.append(("Because", " ".join(reason["because"]) + whose))
    if group["contested"]:
        rows.append(("Contested", f"marked so by {_named(group['contested'])}"))
    for accepted in group["also_accepted"]:
        formulas = ", ".join(map(formula_text, accepted["products"]))
        rows.append(("Also accepted", f"{formulas}: {accepted['because']} ({_named(accepted['curricula'])})"))
    return rows


def _differences(side: dict[str, Any]) -> Rows:
    """For each pair of groups the rules that part them; their reasons stand with the answers."""
    rows = []
    for difference in side["differences"]:
        first, second = difference["between"]
        rows.append(("", f"{first['answer']} / {second['answer']}"))
        rows += [(_named(one["curricula"]), one["rule"]) for one in (*first["rules"], *second["rules"])]
        if difference["accepted_across"]:
            rows.append(("Accept both", _named(difference["accepted_across"])))
    return rows


def _overview(document: dict[str, Any]) -> Rows:
    others = _named(one["id"] for one in document["others"]) or "no other"
    shown = sum(len(group["disagreements"]) for group in document["groups"])
    rows = [
        ("Curriculum", document["curriculum"]["title"]),
        ("Against", others),
        ("Found", f"{document['count']} on {document['cells']} cells of the tables"),
    ]
    if document["count"]:
        first = document["offset"] + 1
        rows.append(("Shown", f"{first} to {document['offset'] + shown}" if shown else "none on this page"))
    if "next_offset" in document:
        rows.append(("Next page", f"--offset {document['next_offset']}"))
    return rows


def _group(document: dict[str, Any], group: dict[str, Any]) -> Rows:
    rows = [
        (document["curriculum"]["id"], group["rule"]),
        (_named(group["others"]), group["other_rule"]),
        ("In all", str(group["count"])),
    ]
    return rows + [("", _disagreement(one)) for one in group["disagreements"]]


def _disagreement(one: dict[str, Any]) -> str:
    cell = one["cell"]
    told = [f"{one['name']}, {formula_text(cell['electrolyte'])}"]
    told.append(" or ".join(one["concentrations"]) or cell["state"])
    told += [f"{cell[side]} {side}" for side in ("cathode", "anode") if cell[side] != "graphite"]
    both = " (one side accepts both)" if one["accepted_across"] else ""
    return f"{', '.join(told)}: {one['answer']['text']} / {one['other_answer']['text']}{both}"
