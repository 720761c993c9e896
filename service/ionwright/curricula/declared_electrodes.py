"""The tables of a declaration that choose discharge rules, and the rules that they choose."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from marshmallow import ValidationError, fields, validate, validates_schema

from ionwright.chemistry.species import Species, species
from ionwright.curricula.concentration import CONCENTRATED, DILUTE, ConcentrationRule
from ionwright.curricula.declared_fields import (
    HALIDES,
    ClosedSchema,
    each_once,
    has_hydroxide,
    is_anion,
    is_electrode,
    is_halide,
    is_symbol,
    one_of,
)
from ionwright.curricula.declared_overpotentials import overpotentials
from ionwright.curricula.potentials import HYDROGEN_V
from ionwright.curricula.rules.active_electrode import ActiveElectrode
from ionwright.curricula.rules.deposition_potential import DepositionPotential
from ionwright.curricula.rules.discharge_order import DischargeOrder
from ionwright.curricula.rules.from_concentrated import ACCEPTED, ANSWER, FromConcentrated
from ionwright.curricula.rules.given_couples import GivenCouples
from ionwright.curricula.rules.halides import ALWAYS, WHEN_CONCENTRATED, Halides, OxygenOtherwise
from ionwright.curricula.rules.ladder import Ladder
from ionwright.curricula.rules.least_positive import ARGUED, BY_CONCENTRATION, FIRST, LeastPositive
from ionwright.curricula.rules.melt import MeltAnode, MeltCathode
from ionwright.curricula.rules.mercury import Amalgam
from ionwright.curricula.rules.most_positive import MostPositive
from ionwright.curricula.rules.plating import Plating
from ionwright.curricula.rules.slow import SlowOxidationsOut, SlowReductionsOut

if TYPE_CHECKING:
    from collections.abc import Mapping

    from ionwright.curricula.model import DischargeRule

__all__ = ["AnodeSchema", "CathodeSchema", "ConcentrationSchema", "anode_rules", "cathode_rules"]

_LADDER = "ladder"
_STANDARD_POTENTIAL = "standard-potential"
_BY_POTENTIAL = "by-potential"
_DEPOSITION_POTENTIAL = "deposition-potential"
_GIVEN_COUPLES = "given-couples"
_BY_HALIDES = "halides"
_FROM_CONCENTRATED = ("SO4^2-", "CH3COO^-")
_CATHODE_RULES = (_LADDER, _STANDARD_POTENTIAL, _DEPOSITION_POTENTIAL, _GIVEN_COUPLES)
_ANODE_RULES = (_BY_HALIDES, _DEPOSITION_POTENTIAL, _GIVEN_COUPLES)


def _charge_changes() -> fields.String:
    return fields.String(load_default="decided", validate=one_of("decided", "contested"))


class CathodeSchema(ClosedSchema):
    """What decides at the cathode."""

    rule = fields.String(required=True, validate=one_of(*_CATHODE_RULES))
    order = fields.List(fields.String(validate=is_symbol), load_default=list)
    wider_order = fields.List(fields.String(validate=is_symbol), load_default=list)
    hydrogen_as = fields.String(load_default="H+", validate=one_of(*HYDROGEN_V))
    charge_changes = _charge_changes()

    @validates_schema(skip_on_field_errors=False)
    def _has_hydrogen(self, data: Mapping[str, Any], **_: object) -> None:
        for key in ("order", "wider_order"):
            if key not in data:
                continue  # a fault of the field itself, which is told anyway
            symbols = data[key]
            needed = data.get("rule") == _LADDER and (key == "order" or symbols)
            if needed and "H" not in symbols:
                raise ValidationError("a reactivity series needs H, for hydrogen, in its place", key)
            if len(set(symbols)) != len(symbols):
                raise ValidationError("a symbol stands in the series twice", key)


class AnodeSchema(ClosedSchema):
    """What decides at the anode."""

    rule = fields.String(load_default=_BY_HALIDES, validate=one_of(*_ANODE_RULES))
    halides = fields.String(load_default=None, validate=one_of(ALWAYS, WHEN_CONCENTRATED, _BY_POTENTIAL))
    halide_ions = fields.List(
        fields.String(validate=is_halide),
        load_default=lambda: list(HALIDES),
        validate=(validate.Length(min=1), each_once),
    )
    active_electrodes = fields.List(fields.String(validate=is_electrode), load_default=list)
    films = fields.String(load_default="oxygen", validate=one_of("oxygen", "film"))
    order = fields.List(
        fields.String(validate=is_anion), load_default=list, validate=(each_once, has_hydroxide)
    )
    chloride = fields.String(load_default=BY_CONCENTRATION, validate=one_of(BY_CONCENTRATION, ARGUED, FIRST))
    charge_changes = _charge_changes()
    from_concentrated = fields.Dict(
        keys=fields.String(validate=one_of(*_FROM_CONCENTRATED)),
        values=fields.String(validate=one_of(ANSWER, ACCEPTED)),
        load_default=dict,
    )
    oxide_melt_on_carbon = fields.String(load_default="oxygen", validate=one_of("oxygen", "carbon-dioxide"))

    @validates_schema(skip_on_field_errors=False)
    def _has_halides(self, data: Mapping[str, Any], **_: object) -> None:
        if data.get("rule") == _BY_HALIDES and "halides" in data and data["halides"] is None:
            raise ValidationError("Missing data for required field", "halides")


def _rising(pair: list[float]) -> None:
    if pair != sorted(pair):
        raise ValidationError("the lower figure comes first")


class _Number(fields.Float):
    """A number that is written as one: neither a text nor true or false."""

    def _validated(self, value: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.make_error("invalid", input=value)
        return super()._validated(value)


class ConcentrationSchema(ClosedSchema):
    """How a concentration is read."""

    threshold_mol_dm3 = _Number(load_default=1.0, validate=validate.Range(min=1e-6, max=40))
    doubtful_mol_dm3 = fields.List(
        _Number(), load_default=lambda: [0.1, 2.0], validate=validate.And(validate.Length(equal=2), _rising)
    )
    when_missing = fields.String(load_default=CONCENTRATED, validate=one_of(CONCENTRATED, DILUTE))
    note = fields.String(load_default="")


def cathode_rules(loaded: Mapping[str, Any]) -> tuple[DischargeRule, ...]:
    """The discharge rules of the cathode, from a declaration that was loaded without a fault."""
    cathode = loaded["cathode"]
    rule = cathode["rule"]
    first: tuple[DischargeRule, ...] = (MeltCathode(), SlowReductionsOut(is_told=rule != _LADDER))
    if rule == _GIVEN_COUPLES:
        return (*first, GivenCouples())
    decisive: DischargeRule
    if rule == _LADDER:
        decisive = Ladder(tuple(cathode["order"]), tuple(cathode["wider_order"]))
    elif rule == _STANDARD_POTENTIAL:
        decisive = MostPositive(cathode["hydrogen_as"], cathode["charge_changes"])
    else:
        decisive = _deposition_potential("cathode", loaded["overpotentials"])
    return (
        *first,
        Amalgam(),
        Plating("the reactivity series" if rule == _LADDER else "E°"),
        decisive,
    )


def anode_rules(loaded: Mapping[str, Any]) -> tuple[DischargeRule, ...]:
    """The discharge rules of the anode, from a declaration that was loaded without a fault."""
    anode, concentration = loaded["anode"], _concentration(loaded["concentration"])
    is_by_halides = anode["rule"] == _BY_HALIDES
    is_slow_told = not is_by_halides or anode["halides"] == _BY_POTENTIAL
    slow, melt = (
        SlowOxidationsOut(is_told=is_slow_told),
        MeltAnode(anode["oxide_melt_on_carbon"], is_hydride_taught=is_slow_told),
    )
    if anode["rule"] == _GIVEN_COUPLES:
        return (melt, slow, GivenCouples())
    first: tuple[DischargeRule, ...] = (
        ActiveElectrode(tuple(anode["active_electrodes"]), anode["films"], is_slow_told),
        melt,
        *_from_concentrated(anode["from_concentrated"], concentration),
        slow,
    )
    if anode["rule"] == _DEPOSITION_POTENTIAL:
        return (*first, _deposition_potential("anode", loaded["overpotentials"]))
    if anode["halides"] == _BY_POTENTIAL:
        return (*first, LeastPositive(concentration, anode["chloride"], anode["charge_changes"]))
    halides: tuple[Species, ...] = tuple(species(text) for text in anode["halide_ions"])
    order = tuple(species(text) for text in anode["order"])
    last: DischargeRule = DischargeOrder(order) if order else OxygenOtherwise()
    return (*first, Halides(halides, anode["halides"], concentration, order), last)


def _from_concentrated(
    standings: Mapping[str, str], concentration: ConcentrationRule
) -> tuple[DischargeRule, ...]:
    ions = {species(text): standing for text, standing in standings.items()}
    return (FromConcentrated(MappingProxyType(ions), concentration),) if ions else ()


def _deposition_potential(electrode: str, table: Mapping[str, Any]) -> DischargeRule:
    return DepositionPotential(electrode, overpotentials(table), table["margin_V"])


def _concentration(table: Mapping[str, Any]) -> ConcentrationRule:
    low, high = table["doubtful_mol_dm3"]
    return ConcentrationRule(table["threshold_mol_dm3"], (low, high), table["when_missing"])
