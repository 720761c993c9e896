"""Pieces of an equation on the board, each in plain text, HTML and LaTeX at once."""

from __future__ import annotations

from functools import lru_cache
from html import escape
from typing import TYPE_CHECKING, Final, NamedTuple

from ionwright.chemistry.amounts.unknown_metal import substance_html, substance_text
from ionwright.chemistry.figures import notations
from ionwright.curricula.aside import Aside

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.chemistry.amounts.quantity import Key
    from ionwright.chemistry.units import Unit

__all__ = [
    "DIVIDED",
    "EQUALS",
    "MINUS",
    "PLUS",
    "ROUNDED",
    "TIMES",
    "Piece",
    "joined",
    "number_piece",
    "quotient",
    "symbol",
]


class Piece(NamedTuple):
    """One part of an equation in three notations."""

    text: str
    html: str
    latex: str


EQUALS: Final = Piece(" = ", " = ", " = ")
ROUNDED: Final = Piece(" ≈ ", " ≈ ", " \\approx ")
TIMES: Final = Piece(" × ", " × ", " \\times ")
DIVIDED: Final = Piece(" ÷ ", " ÷ ", " \\div ")
PLUS: Final = Piece(" + ", " + ", " + ")
MINUS: Final = Piece(" − ", " − ", " - ")

_SYMBOLS: Final[dict[str, Piece]] = {
    "charge": Piece("Q", "<i>Q</i>", "Q"),
    "current": Piece("I", "<i>I</i>", "I"),
    "time": Piece("t", "<i>t</i>", "t"),
    "amount_of_electrons": Piece("n(e⁻)", "<i>n</i>(e<sup>−</sup>)", "n(\\ce{e-})"),
    "number_of_electrons": Piece("N(e⁻)", "<i>N</i>(e<sup>−</sup>)", "N(\\ce{e-})"),
    "voltage": Piece("U", "<i>U</i>", "U"),
    "power": Piece("P", "<i>P</i>", "P"),
    "energy": Piece("E", "<i>E</i>", "E"),
    "energy_price": Piece("price", "price", "\\text{price}"),
    "cost": Piece("cost", "cost", "\\text{cost}"),
    "temperature": Piece("T", "<i>T</i>", "T"),
    "pressure": Piece("p", "<i>p</i>", "p"),
    "water_vapour_pressure": Piece("p(H₂O)", "<i>p</i>(H<sub>2</sub>O)", "p(\\ce{H2O})"),
    "dry_pressure": Piece("p(dry)", "<i>p</i>(dry)", "p_\\text{dry}"),
    "faraday_constant": Piece("F", "<i>F</i>", "F"),
    "avogadro_constant": Piece("L", "<i>L</i>", "L"),
    "elementary_charge": Piece("e", "<i>e</i>", "e"),
    "gas_constant": Piece("R", "<i>R</i>", "R"),
    "molar_gas_volume": Piece("Vₘ", "<i>V</i><sub>m</sub>", "V_\\mathrm{m}"),
    "efficiency": Piece("η", "<i>η</i>", "\\eta"),
    "share": Piece("x", "<i>x</i>", "x"),
    "useful_charge": Piece("Q(used)", "<i>Q</i>(used)", "Q_\\text{used}"),
    "electrons_used": Piece("n(e⁻ used)", "<i>n</i>(e<sup>−</sup> used)", "n_\\text{used}(\\ce{e-})"),
    "area": Piece("A", "<i>A</i>", "A"),
    "current_density": Piece("j", "<i>j</i>", "j"),
    "ion_charge": Piece("z", "<i>z</i>", "z"),
    "amount": Piece("n", "<i>n</i>", "n"),
    "number_of_particles": Piece("N", "<i>N</i>", "N"),
    "mass": Piece("m", "<i>m</i>", "m"),
    "mass_before": Piece("m({} before)", "<i>m</i>({} before)", "m_\\text{before}"),
    "mass_after": Piece("m({} after)", "<i>m</i>({} after)", "m_\\text{after}"),
    "molar_mass": Piece("M", "<i>M</i>", "M"),
    "relative_atomic_mass": Piece("Aᵣ", "<i>A</i><sub>r</sub>", "A_\\mathrm{r}"),
    "volume": Piece("V", "<i>V</i>", "V"),
    "solid_volume": Piece("V", "<i>V</i>", "V"),
    "density": Piece("ρ", "<i>ρ</i>", "\\rho"),
    "thickness": Piece("d", "<i>d</i>", "d"),
    "growth_rate": Piece("r", "<i>r</i>", "r"),
    "bath_volume": Piece("V(bath)", "<i>V</i>(bath)", "V_\\text{bath}"),
    "bath_concentration": Piece("c₀", "<i>c</i><sub>0</sub>", "c_0"),
    "concentration_change": Piece("Δc", "Δ<i>c</i>", "\\Delta c"),
    "concentration": Piece("c", "<i>c</i>", "c"),
    "amount_at_start": Piece("n₀", "<i>n</i><sub>0</sub>", "n_0"),
    "amount_left": Piece("n({} left)", "<i>n</i>({} left)", "n_\\text{left}"),
    "amount_used": Piece("n(net {})", "<i>n</i>(net {})", "n_\\text{net}"),
    "electrons_until_none": Piece("n(e⁻ for all {})", "<i>n</i>(e<sup>−</sup> for all {})", "n_\\text{all}(\\ce{e-})"),
    "useful_charge_until_none": Piece("Q(used for all {})", "<i>Q</i>(used for all {})", "Q_\\text{used, all}"),
    "exhaustion_charge": Piece("Q(for all {})", "<i>Q</i>(for all {})", "Q_\\text{all}"),
    "exhaustion_time": Piece("t(for all {})", "<i>t</i>(for all {})", "t_\\text{all}"),
    "charge_left": Piece("Q(still)", "<i>Q</i>(still)", "Q_\\text{still}"),
    "time_left": Piece("t(still)", "<i>t</i>(still)", "t_\\text{still}"),
    "total_mass": Piece("m(deposit)", "<i>m</i>(deposit)", "m_\\text{deposit}"),
    "total_volume": Piece("V(gas)", "<i>V</i>(gas)", "V_\\text{gas}"),
    "specific_energy": Piece("w", "<i>w</i>", "w"),
}  # fmt: skip


_WITH_ITS_OWN_PLACE: Final = frozenset({"charge_left", "time_left"})


@lru_cache(maxsize=4096)
def symbol(key: Key, *, is_one_of_several: bool = False) -> Piece:
    """The symbol of a quantity, with the substance in brackets if it has one.

    Parameters
    ----------
    is_one_of_several
        Whether there are several processes, so that what belongs to one has to be told from the others.
    """
    bare = _SYMBOLS[key.kind]
    if key.of and key.kind not in _WITH_ITS_OWN_PLACE:
        named = Piece(substance_text(key.of), substance_html(key.of), f"\\ce{{{key.of}}}")
        if "{}" in bare.text:
            latex = f"{bare.latex}({named.latex})" if "(" not in bare.latex else bare.latex
            return Piece(bare.text.format(named.text), bare.html.format(named.html), latex)
        return Piece(*(f"{symbol}({of})" for symbol, of in zip(bare, named, strict=True)))
    if is_one_of_several and key.process and key.kind in _OF_ONE:
        return Piece(
            f"{_OF_ONE[key.kind].text}{key.process})",
            f"{_OF_ONE[key.kind].html}{escape(key.process)})",
            f"{_OF_ONE[key.kind].latex}\\text{{{_plain_latex(key.process)}}}}}",
        )
    return bare


_OF_ONE: Final[dict[str, Piece]] = {
    "useful_charge": Piece("Q(", "<i>Q</i>(", "Q_{"),
    "electrons_used": Piece("n(e⁻, ", "<i>n</i>(e<sup>−</sup>, ", "n_{e, "),
    "share": Piece("x(", "<i>x</i>(", "x_{"),
    "efficiency": Piece("η(", "<i>η</i>(", "\\eta_{"),
    "area": Piece("A(", "<i>A</i>(", "A_{"),
    "current_density": Piece("j(", "<i>j</i>(", "j_{"),
}


def _plain_latex(text: str) -> str:
    """A name of the sender without what LaTeX would take for a command."""
    return "".join(char if char.isalnum() or char in " .-" else " " for char in text)


def number_piece(value: float, figures: int, unit: Unit) -> Piece:
    """A number with its unit."""
    return _number_piece(value, figures, unit.symbol, Aside(unit))


@lru_cache(maxsize=8192)
def _number_piece(value: float, figures: int, _symbol: str, unit: Aside[Unit]) -> Piece:
    rendered = notations(value, figures, unit.value)
    return Piece(rendered.text, rendered.html, rendered.latex)


def plain(text: str) -> Piece:
    """The same characters in every notation."""
    return Piece(text, text, text)


def joined(separator: Piece, pieces: Iterable[Piece]) -> Piece:
    """Pieces with a separator between them."""
    listed = list(pieces)
    if len(listed) == 1:
        return listed[0]
    texts, htmls, latexes = zip(*listed, strict=True)
    return Piece(separator.text.join(texts), separator.html.join(htmls), separator.latex.join(latexes))


def quotient(numerators: list[Piece], divisors: list[Piece]) -> Piece:
    """A product of the first over a product of the second."""
    is_alone = len(numerators) == 1 and not divisors
    numerators = numerators if is_alone else [_in_brackets(piece) for piece in numerators]
    divisors = [_in_brackets(piece) for piece in divisors]
    top = joined(TIMES, numerators) if numerators else plain("1")
    if not divisors:
        return top
    below = joined(TIMES, divisors)
    bracketed = below if len(divisors) == 1 else Piece(f"({below.text})", f"({below.html})", below.latex)
    text = f"{top.text} ÷ {bracketed.text}"
    return Piece(text, f"{top.html} ÷ {bracketed.html}", f"\\frac{{{top.latex}}}{{{below.latex}}}")


def _in_brackets(piece: Piece) -> Piece:
    """A number with a power of ten, so that it stays together in a product."""
    if " × " not in piece.text:
        return piece
    return Piece(f"({piece.text})", f"({piece.html})", f"({piece.latex})")
