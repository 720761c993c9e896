"""What is seen at each electrode, and how each product is tested."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from ionwright.chemistry.couple import HYDROGEN_ION, HYDROXIDE
from ionwright.chemistry.electrode import GRAPHITE
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.medium import MOLTEN, NEUTRAL
from ionwright.chemistry.process import ElectrodeProcess, Kind
from ionwright.chemistry.species import Species, species
from ionwright.chemistry.substance import SUBSTANCES
from ionwright.curricula.wording import ions, metal, product, sentence_start

if TYPE_CHECKING:
    from ionwright.chemistry.cell import Cell
    from ionwright.chemistry.equation import Equation
    from ionwright.teaching.accounting import Share

_OXYGEN = species("O2")
_HYDROGEN = species("H2")
_SOLUBLE_GASES = frozenset({"Cl2", "CO2", "SO2", "NH3", "NO2"})


@dataclass(frozen=True, slots=True)
class ProductTest:
    """How a product is shown to be what it is."""

    product: str
    test: str
    result: str


def observations(cell: Cell, electrode: str, process: ElectrodeProcess, half: Equation) -> tuple[str, ...]:
    """What is seen at one electrode, as sentences.

    Parameters
    ----------
    electrode
        ``"cathode"`` or ``"anode"``.
    process
        The process that runs there.
    half
        Its half-equation as written.
    """
    material = cell.cathode if electrode == "cathode" else cell.anode
    film = cell.anode_film() if electrode == "anode" else ""
    return _observations(
        _Scene(electrode, process, half, material.id, film, cell.medium, _is_deeply_coloured(cell))
    )


def _is_deeply_coloured(cell: Cell) -> bool:
    """Whether the solution hides the colour of an indicator."""
    tints = (IONS[ion].colour for ion in cell.own_ions)
    return any(not tint.startswith(("colourless", "pale", "very pale", "pink", "green")) for tint in tints)


class _Scene(NamedTuple):
    """All that decides what is seen at one electrode."""

    electrode: str
    process: ElectrodeProcess
    half: Equation
    material: str
    film: str
    medium: str
    is_deeply_coloured: bool


@lru_cache(maxsize=4096)
def _observations(scene: _Scene) -> tuple[str, ...]:
    electrode, process = scene.electrode, scene.process
    is_molten = scene.medium == MOLTEN
    seen = [scene.film] if scene.film else []
    if process.seen:
        seen.append(process.seen)
    elif process.kind is Kind.CHARGE:
        seen.append(_recolouring(process, electrode))
    elif process.kind is Kind.DISSOLVES:
        seen.append(_dissolving(process, is_molten=is_molten))
    else:
        solid = {term.species for term in scene.half.right if term.state == "s"}
        seen += [
            # A metal that melts above the temperature of its molten salt is seen as a solid.
            _of_product(kind, electrode, as_in_melt=is_molten and kind not in solid)
            for kind in process.products
        ]
    seen += _of_the_electrode(scene)
    if scene.medium == NEUTRAL and not scene.is_deeply_coloured:
        seen += _indicator(electrode, scene.half)
    return _each_once(seen)


def _each_once(sentences: list[str]) -> tuple[str, ...]:
    """The sentences without those that another one tells in full before it goes on: two gases may look alike."""
    return tuple(
        one
        for one in dict.fromkeys(sentences)
        if not any(one != other and other.startswith(one.removesuffix(".") + ",") for other in sentences)
    )


def _of_the_electrode(scene: _Scene) -> list[str]:
    kind = scene.process.kind
    if kind is Kind.METAL and scene.medium != MOLTEN:
        return ["The cathode gains mass."]
    if kind is Kind.DISSOLVES:
        return ["The anode loses mass."]
    if kind is Kind.OXYGEN and scene.material == GRAPHITE and scene.medium == MOLTEN:
        return [
            "The hot carbon of the anode burns in the oxygen, so the anode has to be replaced from time to time."
        ]
    if kind is Kind.OXYGEN and scene.material == GRAPHITE:
        return ["Some of the carbon is slowly oxidised, so black specks may fall from the anode."]
    return []


def _of_product(kind: Species, electrode: str, *, as_in_melt: bool) -> str:
    known = SUBSTANCES.get(kind.ascii)
    if known is None:
        return f"{sentence_start(product(kind))} {'form' if kind.charge else 'forms'} at the {electrode}."
    text = (known.observation_in_melt if as_in_melt else "") or known.observation
    return text.replace("{electrode}", electrode)


def _dissolving(process: ElectrodeProcess, *, is_molten: bool) -> str:
    name = metal(process.metal)
    coloured = [k for k in process.products if k in IONS and not IONS[k].colour.startswith("colourless")]
    if coloured and not is_molten:
        return f"The {name} of the anode dissolves and gets thinner; its ions are {_colour(coloured[0])}."
    return f"The {name} of the anode dissolves and gets thinner."


def _colour(kind: Species) -> str:
    known = IONS.get(kind)
    return known.colour.partition("(")[0].strip() if known else "colourless"


def _recolouring(process: ElectrodeProcess, electrode: str) -> str:
    before, after = process.reactant, process.products[0]
    if _colour(before) == _colour(after):
        return f"Nothing is deposited and no gas is given off at the {electrode}: {ions(before)} become {ions(after)}."
    return (
        f"No gas is given off at the {electrode}; the solution there goes from {_colour(before)} to {_colour(after)} "
        f"as {ions(before)} become {ions(after)}."
    )


def _indicator(electrode: str, half: Equation) -> list[str]:
    """What universal indicator shows round an electrode that makes acid or alkali in a neutral solution."""
    gas = {term.species for term in half.right}
    takes = {term.species for term in half.left}
    if electrode == "cathode" and _HYDROGEN in gas and (HYDROXIDE in gas or HYDROGEN_ION in takes):
        return [
            "If universal indicator is added, it turns blue to purple round the cathode, where alkali is left."
        ]
    if electrode == "anode" and _OXYGEN in gas and (HYDROGEN_ION in gas or HYDROXIDE in takes):
        return ["If universal indicator is added, it turns red round the anode, where acid is left."]
    return []


@lru_cache(maxsize=512)
def gas_volume_remark(gas_volumes: tuple[Share, ...]) -> str:
    """How the volumes of two gases compare, as a sentence; empty for fewer than two."""
    if len(gas_volumes) != 2:
        return ""
    first, second = sorted(gas_volumes, key=lambda share: -share.value)
    if first.value == second.value:
        soluble = [product(s.species) for s in (first, second) if s.species.formula in _SOLUBLE_GASES]
        less = f", but {soluble[0]} dissolves well, so less of it collects" if soluble else ""
        return f"Equal volumes of {product(first.species)} and {product(second.species)} form{less}."
    if second.value == 1:
        times = {2: "Twice", 3: "Three times", 4: "Four times"}.get(first.value, f"{first.value} times")
        return f"{times} as much {product(first.species)} as {product(second.species)} collects, by volume."
    ratio = f"{first.value} to {second.value}, by volume"
    return (
        f"{sentence_start(product(first.species))} and {product(second.species)} form in the ratio {ratio}."
    )


@lru_cache(maxsize=512)
def product_tests(products: tuple[Species, ...], *, is_molten: bool = False) -> tuple[ProductTest, ...]:
    """How the products of one electrode are tested; substances without a classroom test are left out."""
    found = []
    for kind in products:
        row = SUBSTANCES.get(kind.ascii)
        if row and is_molten and row.test_in_melt:
            found.append(ProductTest(kind.ascii, row.test_in_melt, row.test_result_in_melt))
        elif row and row.test:
            found.append(ProductTest(kind.ascii, row.test, row.test_result))
    return tuple(found)
