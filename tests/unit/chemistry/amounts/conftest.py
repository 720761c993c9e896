"""A circuit, what is known and what is asked, in a few words, worked out with the constants of a school data sheet."""

from collections.abc import Callable, Mapping

import pytest

from ionwright.chemistry.amounts import Circuit, Constants, Given, Process, Task, Wanted, WorkedOut, work_out
from ionwright.chemistry.amounts.quantity import QUANTITIES
from ionwright.chemistry.amounts.unknown_metal import metal_half
from ionwright.chemistry.amounts.values import nominal
from ionwright.chemistry.equation import read_equation
from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.medium import with_states
from ionwright.chemistry.units import read_unit
from ionwright.chemistry.written_quantity import Written, read_written

SHEET = {
    "faraday_constant": "96500 C/mol",
    "avogadro_constant": "6.02e23 /mol",
    "elementary_charge": "1.60e-19 C",
    "gas_constant": "8.31 J/(mol K)",
    "molar_gas_volume": "24.0 dm3/mol",
}
MASSES = {
    "H": "1.0", "O": "16.0", "Al": "27.0", "S": "32.1", "Cl": "35.5", "Cr": "52.0", "Fe": "55.8", "Ni": "58.7",
    "Cu": "63.5", "Zn": "65.4", "Ag": "107.9",
}  # fmt: skip

Named = str | tuple[str, ...]


def _process(id_: str, said: str) -> Process:
    """A process from "half-equation", "half-equation @ electrode" or "half-equation @ electrode @ bath"."""
    text, _, rest = said.partition(" @ ")
    electrode, _, bath = rest.partition(" @ ")
    if "->" not in text:
        return Process(id_, metal_half(text), electrode or id_, bath or id_, has_unknown_charge=True)
    return Process(id_, with_states(read_equation(text)), electrode or id_, bath or electrode or id_)


def _split(named: Named) -> tuple[str, str, str]:
    quantity, of, process = (*((named,) if isinstance(named, str) else named), "", "")[:3]
    return quantity, of, process


def _given(named: Named, text: str) -> Given:
    quantity, of, process = _split(named)
    written = read_written(text, dimension=QUANTITIES[quantity].dimension)
    return Given(quantity, written, of, process, where=f"known/{quantity}")


def _wanted(named: Named) -> Wanted:
    quantity, _, unit = (named if isinstance(named, str) else named[0]).partition(" in ")
    _, of, process = _split(named)
    return Wanted(quantity, of, process, read_unit(unit) if unit else None, where="find")


def _constants(sheet: Mapping[str, str], stated: Mapping[str, str], masses: Mapping[str, str]) -> Constants:
    def read(name: str, text: str) -> Written:
        return read_written(text, dimension=QUANTITIES[name].dimension)

    values = {name: read(name, text) for name, text in {**sheet, **stated}.items()}

    def mass(symbol: str) -> Written | None:
        return read_written(masses[symbol]) if symbol in masses else None

    return Constants(values, mass, stated=frozenset(stated))


@pytest.fixture(scope="session")
def work() -> Callable[..., WorkedOut]:
    """Works out a task: half-equations, what is known, what is asked."""

    def make(
        halves: str | Mapping[str, str],
        known: Mapping[Named, str],
        *find: Named,
        over_water: bool = False,
        used_up: tuple[tuple[str, str], ...] = (),
        present: tuple[tuple[str, str], ...] = (),
        figures: int | None = None,
        sheet: Mapping[str, str] = SHEET,
        stated: Mapping[str, str] | None = None,
    ) -> WorkedOut:
        named = {"process": halves} if isinstance(halves, str) else halves
        circuit = Circuit(tuple(_process(*one) for one in named.items()), over_water, used_up, present)
        given = tuple(_given(*one) for one in known.items())
        constants = _constants(sheet, stated or {}, MASSES)
        return work_out(Task(circuit, given, tuple(map(_wanted, find)), constants, figures))

    return make


@pytest.fixture(scope="session")
def find(work: Callable[..., WorkedOut]) -> Callable[..., list[float]]:
    """The numbers of the answers, in the units of the solver."""

    def make(
        halves: str | Mapping[str, str], known: Mapping[Named, str], *asked: Named, **rest: object
    ) -> list[float]:
        worked = work(halves, known, *asked, **rest)
        return [nominal(worked.values[key].number) for _, key in worked.answers]

    return make


@pytest.fixture(scope="session")
def refusal(work: Callable[..., WorkedOut]) -> Callable[..., QuantityFault]:
    """The fault with which a task is refused."""

    def make(
        halves: str | Mapping[str, str], known: Mapping[Named, str], *asked: Named, **rest: object
    ) -> QuantityFault:
        with pytest.raises(QuantityFault) as raised:
            work(halves, known, *asked, **rest)
        return raised.value

    return make
