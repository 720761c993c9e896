"""Query parameters to the members of a request, with the same strictness as bodies."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from ionwright.api.comparison_reader import COMPARISON_FIELDS, OTHER_COMPARISON_WORDS
from ionwright.api.demonstration_reader import BENCH_FIELDS, OTHER_DEMONSTRATION_WORDS
from ionwright.api.problems import Fault, validation_problem
from ionwright.api.request_reader import FIELDS, OTHER_WORDS
from ionwright.api.texts import near, shown
from ionwright.chemistry.amounts.quantity import TOLD
from ionwright.teaching.quantities.reading import STATED_CONSTANTS

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from werkzeug.datastructures import MultiDict

QUANTITIES_PARAMETERS = (
    "half_equation",
    "metal",
    "find",
    "curriculum",
    *TOLD,
    "significant_figures",
    "gas_collected",
    "notation",
    "language",
)
DISAGREEMENT_PARAMETERS = ("curriculum", "with", "electrode", "limit", "offset")
_CONVENTIONS = ("significant_figures", "gas_collected")
DEMONSTRATION_PARAMETERS = (*FIELDS, "aim", *BENCH_FIELDS, *STATED_CONSTANTS, *_CONVENTIONS)
_NOT_QUANTITIES = ("half_equation", "metal", "curriculum", "language")
_OTHER_PARAMETERS = {"equation": "half_equation", "wanted": "find", "unknown": "find", "course": "curriculum"}
_REPEATABLE = frozenset({"electrolyte", "notation"})
_NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d{1,3})?", re.ASCII)
_WHOLE = re.compile(r"\d{1,9}", re.ASCII)


def prediction_members(query: MultiDict[str, str]) -> dict[str, Any]:
    """Return the members of a prediction request that a query stands for.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    return _cell_members(query, faults_of_names(query, FIELDS, OTHER_WORDS, _REPEATABLE))


def comparison_members(query: MultiDict[str, str]) -> dict[str, Any]:
    """Return the members of a request for a comparison that a query stands for.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    repeatable = _REPEATABLE | {"curricula"}
    members = _cell_members(
        query, faults_of_names(query, COMPARISON_FIELDS, OTHER_COMPARISON_WORDS, repeatable)
    )
    if "curricula" in members:
        members["curricula"] = ",".join(query.getlist("curricula"))
    return members


def _cell_members(query: MultiDict[str, str], faults: list[Fault]) -> dict[str, Any]:
    """The members that a query stands for, those of a cell in their forms; `faults` are those of the names."""
    members: dict[str, Any] = {name: query[name] for name in query}
    substances = query.getlist("electrolyte")
    if len(substances) > 1:
        members["electrolyte"] = substances
    if "notation" in members:
        members["notation"] = ",".join(query.getlist("notation"))
    if "ph" in members:
        if _NUMBER.fullmatch(members["ph"].strip()):
            members["ph"] = float(members["ph"])
        else:
            detail = f'"ph" is {shown(members["ph"])}; it has to be a number in digits, such as 3.5.'
            faults.append(Fault(("ph",), "bad-number", detail))
    if faults:
        raise validation_problem(faults, source="query")
    return members


def equation_members(
    query: MultiDict[str, str], known: Sequence[str], other_words: Mapping[str, str]
) -> dict[str, Any]:
    """Return the members of a request about equations that a query stands for.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    faults = faults_of_names(query, known, other_words, frozenset({"notation"}))
    if faults:
        raise validation_problem(faults, source="query")
    members: dict[str, Any] = {name: query[name] for name in query}
    if "notation" in members:
        members["notation"] = ",".join(query.getlist("notation"))
    return members


def quantities_members(query: MultiDict[str, str]) -> dict[str, Any]:
    """Return the members of a request for quantities that a query stands for.

    A constant counts as one of the conventions, unless another constant is to be found from it.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    repeatable = frozenset({"find", "notation"})
    faults = faults_of_names(query, QUANTITIES_PARAMETERS, _OTHER_PARAMETERS, repeatable)
    members: dict[str, Any] = {name: query[name] for name in _NOT_QUANTITIES if name in query}
    if "find" in query:
        members["find"] = query.getlist("find")
    if "notation" in query:
        members["notation"] = ",".join(query.getlist("notation"))
    is_for_constant = any(_asks_for_constant(text) for text in query.getlist("find"))
    conventions: dict[str, Any] = {name: query[name] for name in _CONVENTIONS if name in query}
    known: dict[str, Any] = {}
    for name in TOLD:
        if name in query:
            is_convention = name in STATED_CONSTANTS and not is_for_constant
            (conventions if is_convention else known)[name] = query[name]
    _count_figures(conventions, faults)
    if faults:
        raise validation_problem(faults, source="query")
    return members | {"known": known} | ({"conventions": conventions} if conventions else {})


def _count_figures(conventions: dict[str, Any], faults: list[Fault]) -> None:
    """Turn the text of the significant figures, if there is one, into a number."""
    if "significant_figures" not in conventions:
        return
    figures = conventions["significant_figures"].strip()
    if _WHOLE.fullmatch(figures):
        conventions["significant_figures"] = int(figures)
    else:
        detail = f'"significant_figures" is {shown(figures)}; it has to be a whole number, such as 3.'
        faults.append(Fault(("significant_figures",), "bad-number", detail))


def demonstration_members(query: MultiDict[str, str]) -> dict[str, Any]:
    """Return the members of a request for the plan of a demonstration that a query stands for.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    other_words = OTHER_DEMONSTRATION_WORDS | {"aims": "aim", "see": "aim", "goal": "aim"}
    faults = faults_of_names(query, DEMONSTRATION_PARAMETERS, other_words, _REPEATABLE | {"aim"})
    conventions: dict[str, Any] = {
        name: query[name] for name in (*STATED_CONSTANTS, *_CONVENTIONS) if name in query
    }
    _count_figures(conventions, faults)
    if faults:
        raise validation_problem(faults, source="query")
    of_cell = prediction_members(type(query)((n, v) for n, v in query.items(multi=True) if n in FIELDS))
    members: dict[str, Any] = {name: query[name] for name in BENCH_FIELDS if name in query}
    if "aim" in query:
        members["aims"] = query.getlist("aim")
    if conventions:
        members["conventions"] = conventions
    members |= {name: of_cell.pop(name) for name in _BESIDE_A_CELL if name in of_cell}
    return members | {"cell": of_cell}


_BESIDE_A_CELL = ("curriculum", "notation", "language")


def _asks_for_constant(text: str) -> bool:
    return "_".join(text.lower().split()).startswith(STATED_CONSTANTS)


def search_members(query: MultiDict[str, str], *, default: int, highest: int) -> tuple[str, int]:
    """Return the text to look for and the most results to give.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    faults = faults_of_names(query, ("search", "limit"), {"q": "search", "query": "search"}, frozenset())
    text = query.get("search", "").strip()
    if len(text) > 200:
        detail = f'"search" may have 200 characters, and has {len(text)}.'
        faults.append(Fault(("search",), "too-long", detail))
    limit = read_count(query, "limit", default, (1, highest), faults)
    if faults:
        raise validation_problem(faults, source="query")
    return text, limit


def read_count(
    query: MultiDict[str, str], name: str, default: int, bounds: tuple[int, int], faults: list[Fault]
) -> int:
    """Whole number of a query parameter, or its default; 0, with a fault noted, if it is not one in the range."""
    lowest, highest = bounds
    given = query.get(name, str(default)).strip()
    if not _WHOLE.fullmatch(given):
        code = "bad-number"
    elif lowest <= int(given) <= highest:
        return int(given)
    else:
        code = "out-of-range"
    detail = f'"{name}" is {shown(given)}; it has to be a whole number from {lowest} to {highest}.'
    faults.append(Fault((name,), code, detail))
    return 0


def check_no_query(query: MultiDict[str, str]) -> None:
    """Refuse query parameters on an operation that takes none.

    Raises
    ------
    Problem
        With code ``validation-error``.
    """
    faults = faults_of_names(query, (), {}, frozenset())
    if faults:
        raise validation_problem(faults, source="query")


def faults_of_names(
    query: MultiDict[str, str],
    known: Sequence[str],
    other_words: Mapping[str, str],
    repeatable: frozenset[str],
) -> list[Fault]:
    """Faults of parameters that are not known, or are given more than once and may not be."""
    faults = []
    for name in query:
        if name not in known:
            meant = other_words.get(name.lower())
            hint = f'Did you mean "{meant}"?' if meant else near(name, known)
            hint = hint or ("The parameters here are " + ", ".join(known) + "." if known else "Leave it out.")
            detail = f"There is no query parameter {shown(name)}. {hint}"
            faults.append(Fault((name[:200],), "unknown-field", detail))
        elif name not in repeatable and len(query.getlist(name)) > 1:
            detail = f'"{name}" is given {len(query.getlist(name))} times. Give it once.'
            faults.append(Fault((name,), "repeated", detail))
    return faults
