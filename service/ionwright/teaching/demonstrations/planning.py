"""Plans a demonstration: from what should be seen to current, time, amounts, bath, air and place."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from ionwright.chemistry.faults import QuantityFault
from ionwright.chemistry.figures import rounded
from ionwright.chemistry.medium import state_of
from ionwright.chemistry.typesetting import as_text
from ionwright.curricula.wording import product
from ionwright.errors import IonwrightError
from ionwright.teaching.demonstrations.aims import ReadAim, read_aim
from ionwright.teaching.demonstrations.air import Release, Room, flammable_gases, toxic_gases
from ionwright.teaching.demonstrations.bath import Run, bath_uses
from ionwright.teaching.demonstrations.currents import choose_current
from ionwright.teaching.demonstrations.measure import Measure, fitting
from ionwright.teaching.demonstrations.plan import Plan, PlannedAim
from ionwright.teaching.demonstrations.preparation import Setting, preparation, provisos
from ionwright.teaching.demonstrations.reading import Bench, read_bench
from ionwright.teaching.demonstrations.reckoning import Asked, Reckoning, stated
from ionwright.teaching.demonstrations.rules_of_thumb import rule_of_thumb
from ionwright.teaching.demonstrations.turnover import total_gas_dm3, turnovers
from ionwright.teaching.demonstrations.venue import Evidence, venue
from ionwright.teaching.quantities.description import StatedQuantity

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from ionwright.chemistry.amounts.circuit import Process
    from ionwright.curricula.model import Curriculum
    from ionwright.teaching.demonstrations.currents import CurrentChoice
    from ionwright.teaching.demonstrations.description import DemonstrationDescription
    from ionwright.teaching.demonstrations.turnover import Turnover
    from ionwright.teaching.prediction import Prediction
    from ionwright.teaching.quantities.working import Step

__all__ = ["plan_demonstration"]

_OVER_WATER: Final = "20 degC"
_OF_THE_ROOM: Final = "25 degC"
_FEWEST_FIGURES: Final = 2
_MOST_FIGURES: Final = 4


def plan_demonstration(description: DemonstrationDescription, curriculum: Curriculum) -> Plan:
    """The plan of a demonstration under a curriculum.

    Raises
    ------
    IonwrightError
        For a cell that would not work, an aim that the cell does not give (``not-formed``), a quantity that cannot
        be, or too little to go on (``needs-more``); its ``where`` names the field.
    """
    bench = read_bench(description)
    reckoning = Reckoning(description, curriculum)
    made = reckoning.circuit
    processes = made.circuit.processes
    if not description.aims:
        raise QuantityFault(
            "needs-more",
            "Nothing is said of what should be seen.",
            where="aims",
            remedy="Name a product and how much of it.",
        )
    aims = tuple(read_aim(aim, processes) for aim in description.aims)
    planner = _Planner(description, curriculum, bench, reckoning, aims)
    try:
        return planner.plan(made.predictions[0][1], processes)
    except IonwrightError as fault:
        if not fault.where:
            fault.where = aims[0].aim.where
        raise


class _Planner:
    """Puts one plan together."""

    def __init__(
        self,
        description: DemonstrationDescription,
        curriculum: Curriculum,
        bench: Bench,
        reckoning: Reckoning,
        aims: tuple[ReadAim, ...],
    ) -> None:
        self._description = description
        self._curriculum = curriculum
        self._reckoning = reckoning
        self._aims = aims
        self._rules: list[str] = ["lesson"] if bench.is_lesson_assumed else []
        self._assumptions: list[str] = []
        self._areas = {"cathode": description.cathode_area, "anode": description.anode_area}
        self._bench = self._with_areas(bench)
        self._figures = self._figures_of(aims)
        reckoning.always = tuple(self._always())

    def plan(self, prediction: Prediction, processes: Sequence[Process]) -> Plan:
        """The plan, from the prediction and the electrode processes of the cell."""
        decided = {process.id for process in processes}
        areas = {name: area for name, area in self._bench.areas_cm2.items() if name in decided}
        self._bench = replace(self._bench, areas_cm2=areas)
        aims = self._planned()
        charge_C = max(aim.charge.counted_in("C") for aim in aims)
        deposits = {p.id: any(t.state == "s" for t in p.half.right) for p in processes}
        choice = choose_current(self._reckoning, self._bench, charge_C, deposits)
        formed, used = turnovers(self._reckoning, processes, charge_C, self._figures)
        bath_dm3 = None if prediction.cell.is_molten else self._bench.bath_dm3
        run = Run(choice.recommended.current_A, bath_dm3, self._figures)
        baths = bath_uses(self._reckoning, prediction, processes, (formed, used), run)
        room = self._room(choice)
        released = {one.of: one for one in self._possible(prediction, charge_C)}
        released |= {one.of: one for one in _released(formed)}
        toxic = toxic_gases(released.values(), room)
        flammable = flammable_gases(released.values(), room)
        if (toxic or flammable) and self._bench.room_m3 is None:
            self._rules.append("room")
        place = venue(Evidence(prediction, self._bench, choice, toxic, flammable))
        setting = Setting(
            prediction=prediction,
            bench=self._bench,
            choice=choice,
            deposits=deposits,
            formed=formed,
            efficient=tuple(dict.fromkeys(aim.electrode for aim in aims)),
            has_toxic_gas=bool(toxic),
            place=place.word,
        )
        self._assumptions += provisos(setting)
        steps = tuple(preparation(setting))
        used_rules = [*self._rules, *choice.rules, *(["bath_share"] if baths else []), *place.rules]
        used_rules += [rule for _, rule in steps if rule]
        gas = total_gas_dm3(formed)
        return Plan(
            curriculum=self._curriculum,
            prediction=prediction,
            aims=aims,
            charge=fitting(charge_C, "C", self._figures),
            choice=choice,
            formed=formed,
            used=used,
            total_gas=None if gas is None else fitting(gas, "dm3", self._figures),
            baths=baths,
            preparation=tuple(text for text, _ in steps),
            bath_note=_bath_note(prediction, is_used_up=bool(baths)),
            toxic=toxic,
            flammable=flammable,
            venue=place,
            doubts=tuple(_doubts(prediction)),
            assumptions=tuple(dict.fromkeys((*self._assumptions, *prediction.assumptions))),
            rules=tuple(rule_of_thumb(name).sentence for name in dict.fromkeys(used_rules)),
            working=self._working(aims, choice),
        )

    # -------------------------------------------------------------- what the plan starts from

    def _with_areas(self, bench: Bench) -> Bench:
        """The bench, with an area assumed where only a visible coat is asked for."""
        areas = dict(bench.areas_cm2)
        for aim in self._aims:
            electrode = aim.key.process
            if not aim.needs_area or electrode in areas:
                continue
            if not aim.rule:
                detail = f"How thick a coat grows depends on the area of the {electrode}, which is not given."
                remedy = 'Give the area under the surface, such as "25 cm2".'
                raise QuantityFault("needs-more", detail, where=f"{electrode}_area", remedy=remedy)
            areas[electrode] = rule_of_thumb("electrode_area").in_unit("cm2")
            self._areas[electrode] = rule_of_thumb("electrode_area").written.text
            self._rules.append("electrode_area")
        return replace(bench, areas_cm2=areas)

    def _figures_of(self, aims: Sequence[ReadAim]) -> int:
        stated_figures = self._description.conventions.significant_figures
        if stated_figures:
            return stated_figures
        fewest = min(aim.written.significant_figures for aim in aims)
        return min(max(fewest, _FEWEST_FIGURES), _MOST_FIGURES)

    def _always(self) -> Iterator[StatedQuantity]:
        if self._bench.efficiency is not None:
            for electrode in dict.fromkeys(aim.key.process for aim in self._aims):
                text = self._description.efficiency
                yield StatedQuantity("efficiency", text, process=electrode, where="efficiency")
        yield from self._gas_conditions()

    def _gas_conditions(self) -> Iterator[StatedQuantity]:
        """At which temperature and pressure gases are measured, where no molar volume says it."""
        description = self._description
        conventions = description.conventions
        temperature, pressure = description.gas_temperature, description.gas_pressure
        printed = self._curriculum.conventions.constants.molar_gas_volume
        is_over_water = conventions.gas_collected == "over water"
        has_volume = printed or "molar_gas_volume" in dict(conventions.constants)
        if not temperature and (is_over_water or pressure or not has_volume):
            temperature = _OVER_WATER if is_over_water else _OF_THE_ROOM
            self._assumptions.append(f"Gases are measured at {temperature.replace(' degC', ' °C')}.")
            if not pressure:
                pressure = "101.3 kPa"
                self._assumptions.append("Gases are measured at 101.3 kPa, the standard atmosphere.")
        if temperature:
            yield StatedQuantity("temperature", temperature, where="gas_temperature")
        if pressure:
            yield StatedQuantity("pressure", pressure, where="gas_pressure")

    def _room(self, choice: CurrentChoice) -> Room:
        bench = self._bench
        volume = bench.room_m3
        if volume is None:
            volume = rule_of_thumb("room").in_unit("m3")
        return Room(volume, bench.air_changes_per_h, choice.recommended.time.counted_in("h"))

    # -------------------------------------------------------------- aims

    def _planned(self) -> tuple[PlannedAim, ...]:
        charges = [self._reckoning.value(self._known(aim), Asked("charge", "C")) for aim in self._aims]
        most = max(charges)
        self._rules += [aim.rule for aim in self._aims if aim.rule]
        return tuple(
            PlannedAim(
                quantity="volume" if aim.key.kind == "solid_volume" else aim.key.kind,
                of=aim.key.of,
                electrode="anode" if aim.key.process == "anode" else "cathode",
                size=Measure(aim.written.value, aim.written.unit, aim.written.significant_figures),
                charge=fitting(charge, "C", self._figures),
                rule=rule_of_thumb(aim.rule).sentence if aim.rule else "",
                decides=charge == most,
            )
            for aim, charge in zip(self._aims, charges, strict=True)
        )

    def _known(self, aim: ReadAim) -> list[StatedQuantity]:
        electrode = aim.key.process
        name = "volume" if aim.key.kind == "solid_volume" else aim.key.kind
        text = f"{aim.written.value!r} {aim.written.unit.symbol}".removesuffix(" 1")
        known = [StatedQuantity(name, text, aim.key.of, electrode, aim.aim.where)]
        if aim.needs_area:
            text = self._areas[electrode]
            known.append(StatedQuantity("area", text, process=electrode, where=f"{electrode}_area"))
        return known

    def _working(self, aims: Sequence[PlannedAim], choice: CurrentChoice) -> tuple[Step, ...]:
        """How charge and time follow from the aim that decides and from the current."""
        aim = next(read for read, planned in zip(self._aims, aims, strict=True) if planned.decides)
        current = choice.recommended.current
        known = [
            *self._known(aim),
            StatedQuantity("current", f"{rounded(current.value, current.figures)} {current.unit.symbol}"),
        ]
        known[0] = replace(known[0], value=aim.written.text)
        time = choice.recommended.time.unit.symbol
        return self._reckoning.solve(known, (Asked("charge", "C"), Asked("time", time)), self._figures).steps

    # -------------------------------------------------------------- what might form

    def _possible(self, prediction: Prediction, charge_C: float) -> Iterator[Release]:
        """Products of other answers that the course accepts: as the worst case, all of the charge is theirs."""
        cell, conventions = prediction.cell, self._curriculum.conventions
        for account in (prediction.cathode, prediction.anode):
            sure = set(account.products)
            for remark in account.verdict.also_accepted:
                half = conventions.written(remark.process, cell.medium).ascii
                reckoning = Reckoning(self._description, self._curriculum, half)
                for kind in remark.process.products:
                    if kind in sure or kind.charge:
                        continue
                    mass = reckoning.value([stated("charge", charge_C, "C")], Asked("mass", "g", kind.ascii))
                    yield Release(
                        kind.ascii, state_of(kind, melt_C=cell.melt_C), mass, None, is_certain=False
                    )


def _bath_note(prediction: Prediction, *, is_used_up: bool) -> str:
    if prediction.solution is None:
        return "What becomes of the bath depends on the electrode that the course leaves undecided."
    if is_used_up:
        return prediction.solution.summary
    lead = "No ion of the electrolyte is used up as a whole, so that the bath lasts."
    return f"{lead} {prediction.solution.summary}"


def _released(formed: Sequence[Turnover]) -> Iterator[Release]:
    for one in formed:
        yield Release(one.of, one.state, one.mass_g, one.volume_dm3, is_certain=True)


def _doubts(prediction: Prediction) -> Iterator[str]:
    for name, account in (("cathode", prediction.cathode), ("anode", prediction.anode)):
        verdict = account.verdict
        if account.half_equation is None:
            yield (
                f"The course does not decide what happens at the {name}, so nothing that forms there is counted: "
                f"{' '.join(verdict.because)}"
            )
        elif verdict.is_contested:
            yield (
                f"Courses, or school and practice, differ on the {name}: "
                f"the amounts are those of {as_text(account.half_equation)}."
            )
        if account.half_equation is not None:
            for remark in verdict.also_accepted:
                others = ", ".join(product(kind) for kind in remark.process.products)
                yield f"At the {name} another answer is accepted too, {others}: {remark.because}"
