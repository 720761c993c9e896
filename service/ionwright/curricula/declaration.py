"""A curriculum declared as data: TOML text to a Curriculum, with all faults of a text at once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from marshmallow import RAISE, Schema, ValidationError, fields, validate, validates_schema

from ionwright.chemistry.electrode import electrodes
from ionwright.chemistry.element import ELEMENTS
from ionwright.chemistry.ion import IONS
from ionwright.chemistry.species import Species, species
from ionwright.curricula.concentration import CONCENTRATED, DILUTE, ConcentrationRule
from ionwright.curricula.declared_cells import PrescribedCellSchema
from ionwright.curricula.declared_constants import PrintedConstantsSchema, printed_constants
from ionwright.curricula.declared_overpotentials import OverpotentialsSchema, overpotentials
from ionwright.curricula.faults import CurriculumFileFault
from ionwright.curricula.marking import FORMS, STATE_SYMBOLS, MarkingConventions
from ionwright.curricula.model import Conventions, Curriculum, DischargeRule
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
from ionwright.curricula.rules.prescribed_cells import PrescribedCells
from ionwright.curricula.rules.slow import SlowOxidationsOut, SlowReductionsOut
from ionwright.curricula.scope import CourseScope
from ionwright.errors import IonwrightError

FORMAT = 1
_LONGEST = 64 * 1024
_MOST_PHRASES = 40
_ID = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*\Z")
_HALIDES = ("Cl^-", "Br^-", "I^-")
LADDER = "ladder"
STANDARD_POTENTIAL = "standard-potential"
BY_POTENTIAL = "by-potential"
DEPOSITION_POTENTIAL = "deposition-potential"
GIVEN_COUPLES = "given-couples"
BY_HALIDES = "halides"
_FROM_CONCENTRATED = ("SO4^2-", "CH3COO^-")


class _Closed(Schema):
    """A table that takes no unknown keys."""

    class Meta:
        """Unknown keys are faults, so that a slip of the pen is seen."""

        unknown = RAISE


def is_id(text: object) -> bool:
    """Whether this can be the id of a curriculum: lower-case words joined by hyphens."""
    return isinstance(text, str) and _ID.match(text) is not None


def _one_of(*words: str) -> validate.OneOf:
    return validate.OneOf(words, error="must be one of: {choices}")


def _is_symbol(symbol: str) -> None:
    if symbol not in ELEMENTS:
        raise ValidationError(f"'{symbol}' is not the symbol of an element")


def _is_halide(text: str) -> None:
    try:
        is_halide = species(text).ascii in _HALIDES
    except IonwrightError:
        is_halide = False
    if not is_halide:
        raise ValidationError(
            f"'{text}' is not a halide that is discharged from water: {', '.join(_HALIDES)}"
        )


def _is_anion(text: str) -> None:
    try:
        is_known = species(text) in IONS and species(text).charge < 0
    except IonwrightError:
        is_known = False
    if not is_known:
        raise ValidationError(f"'{text}' is not a negative ion of the tables")


def _has_hydroxide(items: list[str]) -> None:
    if items and "OH^-" not in items:
        raise ValidationError("an order of discharge needs OH^-, for hydroxide, in its place")


def _each_once(items: list[str]) -> None:
    if len(set(items)) != len(items):
        raise ValidationError("an entry stands in the list twice")


def _is_electrode(word: str) -> None:
    if word not in electrodes():
        raise ValidationError(f"'{word}' is not an electrode of the tables")


_CATHODE_RULES = (LADDER, STANDARD_POTENTIAL, DEPOSITION_POTENTIAL, GIVEN_COUPLES)
_ANODE_RULES = (BY_HALIDES, DEPOSITION_POTENTIAL, GIVEN_COUPLES)


def _charge_changes() -> fields.String:
    return fields.String(load_default="decided", validate=_one_of("decided", "contested"))


class _CathodeSchema(_Closed):
    rule = fields.String(required=True, validate=_one_of(*_CATHODE_RULES))
    order = fields.List(fields.String(validate=_is_symbol), load_default=list)
    wider_order = fields.List(fields.String(validate=_is_symbol), load_default=list)
    hydrogen_as = fields.String(load_default="H+", validate=_one_of(*HYDROGEN_V))
    charge_changes = _charge_changes()

    @validates_schema(skip_on_field_errors=False)
    def _has_hydrogen(self, data: Mapping[str, Any], **_: object) -> None:
        for key in ("order", "wider_order"):
            if key not in data:
                continue  # a fault of the field itself, which is told anyway
            symbols = data[key]
            needed = data.get("rule") == LADDER and (key == "order" or symbols)
            if needed and "H" not in symbols:
                raise ValidationError("a reactivity series needs H, for hydrogen, in its place", key)
            if len(set(symbols)) != len(symbols):
                raise ValidationError("a symbol stands in the series twice", key)


class _AnodeSchema(_Closed):
    rule = fields.String(load_default=BY_HALIDES, validate=_one_of(*_ANODE_RULES))
    halides = fields.String(load_default=None, validate=_one_of(ALWAYS, WHEN_CONCENTRATED, BY_POTENTIAL))
    halide_ions = fields.List(
        fields.String(validate=_is_halide),
        load_default=lambda: list(_HALIDES),
        validate=(validate.Length(min=1), _each_once),
    )
    active_electrodes = fields.List(fields.String(validate=_is_electrode), load_default=list)
    films = fields.String(load_default="oxygen", validate=_one_of("oxygen", "film"))
    order = fields.List(
        fields.String(validate=_is_anion), load_default=list, validate=(_each_once, _has_hydroxide)
    )
    chloride = fields.String(load_default=BY_CONCENTRATION, validate=_one_of(BY_CONCENTRATION, ARGUED, FIRST))
    charge_changes = _charge_changes()
    from_concentrated = fields.Dict(
        keys=fields.String(validate=_one_of(*_FROM_CONCENTRATED)),
        values=fields.String(validate=_one_of(ANSWER, ACCEPTED)),
        load_default=dict,
    )
    oxide_melt_on_carbon = fields.String(load_default="oxygen", validate=_one_of("oxygen", "carbon-dioxide"))

    @validates_schema(skip_on_field_errors=False)
    def _has_halides(self, data: Mapping[str, Any], **_: object) -> None:
        if data.get("rule") == BY_HALIDES and "halides" in data and data["halides"] is None:
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


class _ConcentrationSchema(_Closed):
    threshold_mol_dm3 = _Number(load_default=1.0, validate=validate.Range(min=1e-6, max=40))
    doubtful_mol_dm3 = fields.List(
        _Number(), load_default=lambda: [0.1, 2.0], validate=validate.And(validate.Length(equal=2), _rising)
    )
    when_missing = fields.String(load_default=CONCENTRATED, validate=_one_of(CONCENTRATED, DILUTE))
    note = fields.String(load_default="")


def _forms_field() -> fields.List[str]:
    return fields.List(
        fields.String(validate=_one_of("ions", "water")),
        required=True,
        validate=(validate.Length(min=1), _each_once),
    )


class _FormsSchema(_Closed):
    acidic = _forms_field()
    neutral = _forms_field()
    alkaline = _forms_field()


class _ConventionsSchema(_Closed, PrintedConstantsSchema):
    hydrogen_from = fields.Nested(_FormsSchema, required=True)
    oxygen_from = fields.Nested(_FormsSchema, required=True)
    state_symbols = fields.String(load_default="asked", validate=_one_of(*STATE_SYMBOLS))
    oxidation_also_minus = fields.Boolean(load_default=True, truthy={True}, falsy={False})


def _yes_or_no() -> fields.Boolean:
    return fields.Boolean(truthy={True}, falsy={False})


def _marks() -> fields.Integer:
    return fields.Integer(strict=True, validate=validate.Range(min=0, max=20))


class _MarkingSchema(_Closed):
    species_marks = _marks()
    balance_marks = _marks()
    state_symbols = fields.String(validate=_one_of(*STATE_SYMBOLS))
    multiples = fields.String(validate=_one_of(*FORMS))
    fractions = fields.String(validate=_one_of(*FORMS))
    subtracted_electrons = _yes_or_no()
    equals_sign = _yes_or_no()
    equilibrium_arrow = _yes_or_no()
    electron_without_sign = _yes_or_no()

    @validates_schema
    def _gives_marks(self, data: Mapping[str, Any], **_: object) -> None:
        if data.get("species_marks", 1) + data.get("balance_marks", 1) == 0:
            raise ValidationError("a line needs at least one mark", "balance_marks")


def _phrases() -> fields.List[str]:
    return fields.List(
        fields.String(validate=validate.Length(min=1, max=120)),
        load_default=list,
        validate=(validate.Length(max=_MOST_PHRASES), _each_once),
    )


class _ScopeSchema(_Closed):
    quantities = fields.String(load_default="", validate=validate.Length(max=300))
    electrodes = _phrases()
    melts = _phrases()
    industry = _phrases()
    observations = _phrases()
    vocabulary = _phrases()


class _DeclarationSchema(_Closed):
    format = fields.Integer(
        required=True, strict=True, validate=validate.Equal(FORMAT, error=f"must be {FORMAT}")
    )
    id = fields.String(
        required=True, validate=validate.Regexp(_ID, error="must be lower-case words joined by hyphens")
    )
    title = fields.String(required=True, validate=validate.Length(min=1, max=120))
    region = fields.String(load_default="")
    stage = fields.String(load_default="")
    summary = fields.String(load_default="")
    based_on = fields.String()
    cathode = fields.Nested(_CathodeSchema, required=True)
    anode = fields.Nested(_AnodeSchema, required=True)
    concentration = fields.Nested(_ConcentrationSchema, load_default=lambda: _ConcentrationSchema().load({}))
    overpotentials = fields.Nested(OverpotentialsSchema, load_default=lambda: OverpotentialsSchema().load({}))
    prescribed_cells = fields.List(fields.Nested(PrescribedCellSchema), load_default=list)
    conventions = fields.Nested(_ConventionsSchema, required=True)
    marking = fields.Nested(_MarkingSchema, load_default=dict)
    scope = fields.Nested(_ScopeSchema, load_default=lambda: _ScopeSchema().load({}))
    certainty = fields.Dict(
        keys=fields.String(),
        values=fields.String(validate=_one_of("high", "medium", "low")),
        load_default=dict,
    )
    sources = fields.List(fields.String(), load_default=list)


def read_declaration(
    text: str, origin: str, bases: Mapping[str, Mapping[str, Any]] = MappingProxyType({})
) -> tuple[Curriculum, Mapping[str, Any]]:
    """The curriculum that a TOML text declares, and the declaration in full as data.

    Parameters
    ----------
    origin
        What to call the text in a fault, such as its file name.
    bases
        Full declarations by id, from which ``based_on`` may inherit.

    Raises
    ------
    CurriculumFileFault
        With every fault of the text and the key path of each.
    """
    if len(text) > _LONGEST:
        raise CurriculumFileFault(origin, (("", f"the text is longer than {_LONGEST} characters"),))
    try:
        data: dict[str, Any] = tomllib.loads(text)
    except (ValueError, RecursionError) as fault:  # a number of 5000 digits and deep nesting raise these
        raise CurriculumFileFault(origin, (("", f"not readable as TOML: {fault}"),)) from None
    data = _inherit(data, bases, origin)
    try:
        loaded = _DeclarationSchema().load(data)
    except ValidationError as fault:
        raise CurriculumFileFault(origin, tuple(_flatten(fault.messages_dict))) from None
    return _curriculum(loaded), data


def _inherit(data: dict[str, Any], bases: Mapping[str, Mapping[str, Any]], origin: str) -> dict[str, Any]:
    base = data.pop("based_on", None)
    if base is None:
        return data
    if not isinstance(base, str) or base not in bases:
        raise CurriculumFileFault(
            origin, (("based_on", f"no curriculum '{base}' to build on; known: {', '.join(bases)}"),)
        )
    return _merged(bases[base], data)


def _merged(base: Mapping[str, Any], over: Mapping[str, Any]) -> dict[str, Any]:
    merged = dict(base)
    for key, value in over.items():
        inner = merged.get(key)
        merged[key] = (
            _merged(inner, value) if isinstance(inner, Mapping) and isinstance(value, Mapping) else value
        )
    return merged


def _flatten(messages: Mapping[Any, Any], path: str = "") -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    for key, value in messages.items():
        here = path if key == "_schema" else f"{path}.{key}" if path else str(key)
        if isinstance(value, Mapping):
            found += _flatten(value, here)
        else:
            found += [(here, str(text).rstrip(".")) for text in value]
    return found


def _curriculum(loaded: Mapping[str, Any]) -> Curriculum:
    prescribed = tuple(loaded["prescribed_cells"])
    first: tuple[DischargeRule, ...] = (PrescribedCells(prescribed),) if prescribed else ()
    return Curriculum(
        id=loaded["id"],
        title=loaded["title"],
        region=loaded["region"],
        stage=loaded["stage"],
        summary=loaded["summary"],
        cathode_rules=(*first, *_cathode_rules(loaded)),
        anode_rules=(*first, *_anode_rules(loaded)),
        conventions=_conventions(loaded["conventions"]),
        marking=_marking(loaded["marking"], loaded["conventions"]),
        scope=_scope(loaded["scope"]),
        certainty=MappingProxyType(dict(loaded["certainty"])),
        sources=tuple(loaded["sources"]),
    )


def _cathode_rules(loaded: Mapping[str, Any]) -> tuple[DischargeRule, ...]:
    cathode = loaded["cathode"]
    rule = cathode["rule"]
    first: tuple[DischargeRule, ...] = (MeltCathode(), SlowReductionsOut(is_told=rule != LADDER))
    if rule == GIVEN_COUPLES:
        return (*first, GivenCouples())
    decisive: DischargeRule
    if rule == LADDER:
        decisive = Ladder(tuple(cathode["order"]), tuple(cathode["wider_order"]))
    elif rule == STANDARD_POTENTIAL:
        decisive = MostPositive(cathode["hydrogen_as"], cathode["charge_changes"])
    else:
        decisive = _deposition_potential("cathode", loaded["overpotentials"])
    return (
        *first,
        Amalgam(),
        Plating("the reactivity series" if rule == LADDER else "E°"),
        decisive,
    )


def _anode_rules(loaded: Mapping[str, Any]) -> tuple[DischargeRule, ...]:
    anode, concentration = loaded["anode"], _concentration(loaded["concentration"])
    is_by_halides = anode["rule"] == BY_HALIDES
    is_slow_told = not is_by_halides or anode["halides"] == BY_POTENTIAL
    slow, melt = (
        SlowOxidationsOut(is_told=is_slow_told),
        MeltAnode(anode["oxide_melt_on_carbon"], is_hydride_taught=is_slow_told),
    )
    if anode["rule"] == GIVEN_COUPLES:
        return (melt, slow, GivenCouples())
    first: tuple[DischargeRule, ...] = (
        ActiveElectrode(tuple(anode["active_electrodes"]), anode["films"], is_slow_told),
        melt,
        *_from_concentrated(anode["from_concentrated"], concentration),
        slow,
    )
    if anode["rule"] == DEPOSITION_POTENTIAL:
        return (*first, _deposition_potential("anode", loaded["overpotentials"]))
    if anode["halides"] == BY_POTENTIAL:
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


def _conventions(table: Mapping[str, Any]) -> Conventions:
    return Conventions(
        hydrogen=_forms(table["hydrogen_from"]),
        oxygen=_forms(table["oxygen_from"]),
        state_symbols=table["state_symbols"],
        oxidation_also_minus=table["oxidation_also_minus"],
        constants=printed_constants(table),
    )


def _marking(table: Mapping[str, Any], conventions: Mapping[str, Any]) -> MarkingConventions:
    """The marking conventions; what the table leaves out follows the way in which the course writes."""
    written = {
        "state_symbols": conventions["state_symbols"],
        "subtracted_electrons": conventions["oxidation_also_minus"],
    }
    return MarkingConventions(**(written | dict(table)))


def _scope(table: Mapping[str, Any]) -> CourseScope:
    lists = {name: tuple(phrases) for name, phrases in table.items() if name != "quantities"}
    return CourseScope(quantities=table["quantities"], **lists)


def _forms(table: Mapping[str, list[str]]) -> Mapping[str, tuple[str, ...]]:
    return MappingProxyType({medium: tuple(forms) for medium, forms in table.items()})
