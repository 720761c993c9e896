"""The names of units that are read, and nothing else: symbols, words, and what each is worth."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["SYMBOLS", "TOKENS", "WORDS", "Factors", "Token"]

Factors = tuple[tuple[str, int], ...]
"""A product of units, as symbols of `TOKENS` with their powers."""


@dataclass(frozen=True, slots=True)
class Token:
    """One unit that is no product of others.

    Parameters
    ----------
    symbol
        Canonical ASCII, such as ``"mA"``.
    definition
        What it is worth, in the language of pint and in other symbols of this table.
    plural
        What several of it are called in a sentence.
    text
        For people, such as ``"µm"``.
    latex
        The same as LaTeX, upright where it stands.
    currency
        Code of the currency, for money only.
    """

    symbol: str
    definition: str
    plural: str
    text: str
    latex: str
    currency: str = ""


_PREFIXES: Final = {
    "n": ("nano", "1e-9"), "u": ("micro", "1e-6"), "m": ("milli", "1e-3"), "c": ("centi", "1e-2"),
    "d": ("deci", "1e-1"), "h": ("hecto", "1e2"), "k": ("kilo", "1e3"), "M": ("mega", "1e6"),
}  # fmt: skip

_CODES: Final = (
    "COD", "GBP", "EUR", "USD", "INR", "AUD", "BDT", "BRL", "CAD", "CHF", "CNY", "CZK", "DKK", "EGP",
    "GHS", "HKD", "HUF", "JPY", "KES", "KRW", "LKR", "MXN", "MYR", "NGN", "NOK", "NPR", "NZD", "PHP",
    "PKR", "PLN", "RON", "SEK", "SGD", "THB", "TRY", "UGX", "ZAR",
)  # fmt: skip
_SIGNS: Final = {"GBP": "£", "EUR": "€", "USD": "$", "INR": "₹"}
_SIGNS_IN_LATEX: Final = {"$": "\\$", "£": "\\text{£}", "€": "\\text{€}", "₹": "\\text{₹}"}

# symbol, definition, word, prefixes. The order is the order inside a product: A h, kg/(mol K).
_METRIC: Final = (
    ("A", "[current]", "ampere", "numk"),
    ("V", "W / A", "volt", "mk"),
    ("ohm", "V / A", "ohm", "mk"),
    ("W", "J / s", "watt", "mkM"),
    ("C", "A * s", "coulomb", "umkM"),
    ("J", "kg * m**2 / s**2", "joule", "mkM"),
    ("Wh", "3600 J", "watt-hour", "mkM"),
    ("eV", "1.602176634e-19 J", "electronvolt", ""),
    ("Pa", "kg / (m * s**2)", "pascal", "hkM"),
    ("bar", "100000 Pa", "bar", "m"),
    ("atm", "101325 Pa", "atmosphere", ""),
    ("mmHg", "133.322387415 Pa", "millimetre of mercury", ""),
    ("Torr", "133.32236842105263157894736842 Pa", "torr", ""),
    ("kg", "[mass]", "kilogram", ""),
    ("g", "0.001 kg", "gram", "num"),
    ("t", "1000 kg", "tonne", ""),
    ("L", "0.001 m**3", "litre", "umcdk"),
    ("M", "1000 mol / m**3", "mole per cubic decimetre", ""),
    ("mM", "1 mol / m**3", "millimole per cubic decimetre", ""),
    ("uM", "0.001 mol / m**3", "micromole per cubic decimetre", ""),
    ("m", "[length]", "metre", "numcdk"),
    ("mol", "[amount]", "mole", "numk"),
    ("K", "[temperature]", "kelvin", ""),
    ("degC", "K; offset: 273.15", "degree Celsius", ""),
    ("d", "86400 s", "day", ""),
    ("h", "3600 s", "hour", ""),
    ("min", "60 s", "minute", ""),
    ("s", "[time]", "second", "m"),
    ("%", "0.01", "per cent", ""),
    ("ppm", "1e-6", "part per million", ""),
)
_COINS: Final = (("p", "GBP", "pence"), ("ct", "EUR", "cents"))
_UNCHANGED: Final = {"bar", "torr", "kelvin", "per cent"}

_TEXTS: Final = {"ohm": "Ω", "degC": "°C"}
_LATEX: Final = {"ohm": "\\Omega", "degC": "{}^{\\circ}C", "%": "\\%"}

_SPELLINGS: Final = {
    "ampere": ("amp",), "metre": ("meter",), "litre": ("liter",), "gram": ("gramme",), "second": ("sec",),
    "hour": ("hr",), "minute": ("min",), "mole": ("mol",),
}  # fmt: skip

_ALSO: Final[dict[str, Factors]] = {
    "Ah": (("A", 1), ("h", 1)), "mAh": (("mA", 1), ("h", 1)), "kAh": (("kA", 1), ("h", 1)),
    "As": (("A", 1), ("s", 1)), "cc": (("cm", 3),), "ccm": (("cm", 3),), "°C": (("degC", 1),), "℃": (("degC", 1),),
    "Ω": (("ohm", 1),), "kΩ": (("kohm", 1),), "mΩ": (("mohm", 1),), "°K": (("K", 1),), "¢": (("ct", 1),),
    "l": (("L", 1),), "ml": (("mL", 1),), "ul": (("uL", 1),), "cl": (("cL", 1),), "dl": (("dL", 1),),
    "Rs": (("INR", 1),), "RM": (("MYR", 1),), "pct": (("%", 1),), "gm": (("g", 1),), "gms": (("g", 1),),
    "Kg": (("kg", 1),), "KG": (("kg", 1),),
}  # fmt: skip

_ALSO_WORDS: Final[dict[str, Factors]] = {
    "micron": (("um", 1),), "microns": (("um", 1),), "celsius": (("degC", 1),), "molar": (("M", 1),),
    "millimolar": (("mM", 1),), "percent": (("%", 1),), "atm": (("atm", 1),), "torr": (("Torr", 1),),
    "degc": (("degC", 1),), "kwh": (("kWh", 1),), "kpa": (("kPa", 1),), "hpa": (("hPa", 1),), "mmhg": (("mmHg", 1),),
    "ltr": (("L", 1),), "pence": (("p", 1),), "penny": (("p", 1),), "atoms": (), "ions": (), "molecules": (),
    "electrons": (), "particles": (),
}  # fmt: skip


def _token(symbol: str, definition: str, plural: str) -> Token:
    text = _TEXTS.get(symbol) or symbol.replace("ohm", "Ω")
    if len(symbol) > 1 and symbol[0] == "u":
        text = f"µ{symbol[1:]}"
    latex = _LATEX.get(symbol) or text.replace("µ", "\\mu ").replace("Ω", "\\Omega")
    return Token(symbol, definition, plural, text, latex)


def _with_prefixes() -> dict[str, Token]:
    tokens: dict[str, Token] = {}
    for symbol, definition, word, prefixes in _METRIC:
        plural = word if word in _UNCHANGED else _plural(word)
        tokens[symbol] = _token(symbol, definition, plural)
        for prefix in prefixes:
            name, power = _PREFIXES[prefix]
            tokens[prefix + symbol] = _token(prefix + symbol, f"{power} {symbol}", name + plural)
    return tokens


def _plural(word: str) -> str:
    first, *rest = word.split(" ", 1)
    return " ".join((f"{first}es" if first.endswith("s") else f"{first}s", *rest))


def _money() -> dict[str, Token]:
    coded = {code: _coin(code, f"[{code}]", code, code) for code in _CODES}
    return coded | {coin: _coin(coin, f"0.01 {code}", plural, code) for coin, code, plural in _COINS}


def _coin(symbol: str, definition: str, plural: str, code: str) -> Token:
    text = _SIGNS.get(symbol, symbol)
    return Token(symbol, definition, plural, text, _SIGNS_IN_LATEX.get(text, text), currency=code)


def _words() -> dict[str, Factors]:
    words: dict[str, Factors] = {}
    for symbol, _, word, prefixes in _METRIC:
        for spelling in (word, *_SPELLINGS.get(word, ())):
            for prefix in ("", *prefixes):
                name = (_PREFIXES[prefix][0] if prefix else "") + spelling
                words[name] = words[_plural(name)] = ((prefix + symbol, 1),)
    return {word: factors for word, factors in words.items() if " " not in word} | _ALSO_WORDS


TOKENS: Final[Mapping[str, Token]] = MappingProxyType(_money() | _with_prefixes())
"""Every unit that is no product of others, by its symbol, in the order in which a product names them."""

SYMBOLS: Final[Mapping[str, Factors]] = MappingProxyType(
    {symbol: ((symbol, 1),) for symbol in TOKENS}
    | {sign: ((code, 1),) for code, sign in _SIGNS.items()}
    | _ALSO
)
"""What a symbol means; upper and lower case are different."""

WORDS: Final[Mapping[str, Factors]] = MappingProxyType(_words())
"""What a word in lower case means; it may be written in either case."""
