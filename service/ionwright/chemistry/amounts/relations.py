"""Relations between quantities: products, sums and tabulated functions, each solved for any of its members."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from ionwright.chemistry.amounts.quantity import Key

__all__ = ["ByTrial", "Number", "Product", "Quotient", "Relation", "Sum", "Tabulated", "Tally"]

Number = Any
"""A float, or a number with an uncertainty that computes in the same way."""


class Quotient(NamedTuple):
    """A product relation solved for one member: number × numerators / divisors."""

    number: Fraction
    numerators: tuple[Key, ...]
    divisors: tuple[Key, ...]


class Tally(NamedTuple):
    """A sum relation solved for one member: constant + added − subtracted."""

    constant: float
    added: tuple[Key, ...]
    subtracted: tuple[Key, ...]


@dataclass(frozen=True, slots=True)
class Product:
    """result = number × factors / divisors.

    Parameters
    ----------
    name
        Which law it is, for whoever tells the working.
    number
        Exact number in it, such as the ratio of a half-equation.
    shown_in
        Unit in which a member is put into the equation on paper, where that is not the unit of the solver.
    """

    name: str
    result: Key
    factors: tuple[Key, ...]
    divisors: tuple[Key, ...] = ()
    number: Fraction = Fraction(1)
    shown_in: tuple[tuple[Key, str], ...] = ()
    members: tuple[Key, ...] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "members", (self.result, *self.factors, *self.divisors))

    def rearranged(self, key: Key) -> Quotient:
        """The relation solved for one of its members."""
        if key == self.result:
            return Quotient(self.number, self.factors, self.divisors)
        if key in self.factors:
            others = tuple(k for k in self.factors if k != key)
            return Quotient(1 / self.number, (self.result, *self.divisors), others)
        others = tuple(k for k in self.divisors if k != key)
        return Quotient(self.number, self.factors, (self.result, *others))

    def solved_for(self, key: Key, values: Mapping[Key, Number]) -> Number | None:
        """The value of one member from those of all others; None where that would divide by zero."""
        number, numerators, divisors = self.rearranged(key)
        value: Number = number.numerator / number.denominator
        for member in numerators:
            value = value * values[member]
        for member in divisors:
            divisor = values[member]
            if divisor == 0:
                return None
            value = value / divisor
        return value


@dataclass(frozen=True, slots=True)
class Sum:
    """result = constant + added − subtracted."""

    name: str
    result: Key
    added: tuple[Key, ...]
    subtracted: tuple[Key, ...] = ()
    constant: float = 0.0
    members: tuple[Key, ...] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "members", (self.result, *self.added, *self.subtracted))

    def rearranged(self, key: Key) -> Tally:
        """The relation solved for one of its members."""
        if key == self.result:
            return Tally(self.constant, self.added, self.subtracted)
        if key in self.added:
            others = tuple(k for k in self.added if k != key)
            return Tally(-self.constant, (self.result, *self.subtracted), others)
        others = tuple(k for k in self.subtracted if k != key)
        return Tally(self.constant, self.added, (self.result, *others))

    def solved_for(self, key: Key, values: Mapping[Key, Number]) -> Number | None:
        """The value of one member from those of all others."""
        constant, added, subtracted = self.rearranged(key)
        return constant + sum(values[k] for k in added) - sum(values[k] for k in subtracted)


@dataclass(frozen=True, slots=True)
class Tabulated:
    """result = table(argument), for a table that rises or falls throughout.

    Parameters
    ----------
    table, inverse
        Plain functions of a float; either may raise an `IonwrightError` outside its range.
    """

    name: str
    result: Key
    argument: Key
    table: Callable[[float], float]
    inverse: Callable[[float], float]
    members: tuple[Key, ...] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "members", (self.result, self.argument))

    def solved_for(self, key: Key, values: Mapping[Key, Number]) -> Number | None:
        """The value of one member from that of the other."""
        function, at = (
            (self.table, values[self.argument]) if key == self.result else (self.inverse, values[self.result])
        )
        if isinstance(at, float | int):
            return function(at)
        import uncertainties  # noqa: PLC0415 - loaded only where an uncertainty was given

        return uncertainties.wrap(function)(at)


@dataclass(frozen=True, slots=True)
class ByTrial:
    """result = what fits, found by trial; it is solved for its result only.

    Parameters
    ----------
    arguments
        In the order in which `fitting` takes them.
    fitting
        Plain function of floats; it may raise an `IonwrightError` where nothing fits.
    """

    name: str
    result: Key
    arguments: tuple[Key, ...]
    fitting: Callable[..., float]
    members: tuple[Key, ...] = field(init=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "members", (self.result, *self.arguments))

    def solved_for(self, key: Key, values: Mapping[Key, Number]) -> Number | None:
        """The result from all arguments; None for any other member."""
        if key != self.result:
            return None
        arguments = [values[argument] for argument in self.arguments]
        if all(isinstance(argument, float | int) for argument in arguments):
            return self.fitting(*arguments)
        import uncertainties  # noqa: PLC0415 - loaded only where an uncertainty was given

        return uncertainties.wrap(self.fitting)(*arguments)


Relation = Product | Sum | Tabulated | ByTrial
