"""Shape of the plan of a demonstration."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings
from ionwright.api.schemas.equation import EquationSchema
from ionwright.api.schemas.prediction import CautionSchema, ProductTestSchema
from ionwright.api.schemas.quantities import CourseSchema, WorkingStepSchema


class MeasureSchema(ResponseSchema):
    """A quantity of a plan."""

    value = fields.Float(required=True, metadata=described("The value in full, in `unit`.", 16.17))
    unit = wording("Its unit.", "min", required=True)
    significant_figures = fields.Integer(
        required=True, metadata=described("To how many figures the texts give it.", 3, minimum=1)
    )
    text = wording("Rounded, with the unit, as plain text.", "16.2 min", required=True)
    html = wording("The same in HTML.", required=True)
    latex = wording("The same in LaTeX.", required=True)


def _measure(description: str, *, required: bool = True) -> fields.Nested:
    return fields.Nested(MeasureSchema, required=required, metadata=described(description))


def _true_or_false(description: str, *, required: bool = True) -> fields.Boolean:
    return fields.Boolean(required=required, metadata=described(description))


class PlaceSchema(ResponseSchema):
    """Where the demonstration may be done. It is no risk assessment."""

    where = wording(
        "`open bench with ventilation`, `fume cupboard` or `not for a classroom`.",
        "fume cupboard",
        required=True,
    )
    reasons = wordings(
        "Why, the gravest first; the last defers to local rules and qualified staff.", required=True
    )


class PlannedAimSchema(ResponseSchema):
    """What should be seen, and the charge that it takes."""

    quantity = wording("Name of the quantity.", "thickness", required=True)
    of = wording("Formula of the product.", "Ni", required=True)
    name = wording("Its name.", "nickel", required=True)
    electrode = wording("Where it forms.", "cathode", required=True)
    size = _measure("How much of it.")
    charge = _measure("The charge that gives it.")
    decides = _true_or_false("Whether no other aim takes more charge.")
    rule_of_thumb = wording("Of an aim that only says visible: the rule that says how much that is.")


class CurrentRowSchema(ResponseSchema):
    """One current."""

    current = _measure("The current.")
    time = _measure("How long it takes to give what should be seen.")
    current_densities = fields.Dict(
        keys=fields.String(),
        values=fields.Nested(MeasureSchema),
        required=True,
        metadata=described("By the electrode, where its area is known."),
    )
    fits = _true_or_false("Whether it keeps within the time and the limits.")
    because = wording("Which limit binds, or how much of the time it takes.", required=True)


class HighestCurrentSchema(MeasureSchema):
    """The highest current that the limits allow."""

    because = wording("What sets it.", required=True)


class ShortfallSchema(ResponseSchema):
    """By how much the aim cannot be met in the time."""

    reached = _measure("The part that is reached in the time.")
    missing_time = _measure("How much longer it takes.")
    needed_current = _measure("The current that would do it in time.")
    text = wording("All of that as a sentence.", required=True)


class TurnoverSchema(ResponseSchema):
    """How much of a species forms or is used up at one electrode."""

    of = wording("Its formula.", "Cl2", required=True)
    electrode = wording("Where.", "anode", required=True)
    state = wording("State symbol.", "g", required=True)
    amount = _measure("Amount of substance.")
    mass = _measure("Mass.")
    volume = _measure("Volume, of a gas.", required=False)


class BathUseSchema(ResponseSchema):
    """What becomes of an ion of the electrolyte that is used up."""

    of = wording("Its formula.", "Cu^2+", required=True)
    used = _measure("Net amount that is used up.")
    needed_amount = _measure("What the bath should hold so that at most a tenth of it is used up.")
    needed_concentration = _measure("That amount in the volume given.", required=False)
    needed_volume = _measure("Volume of the solution as it is that holds that amount.", required=False)
    share_used = _measure("The part that is used up.", required=False)
    runs_out_after = _measure("When none would be left, at the current of the plan.", required=False)
    is_enough = _true_or_false("Whether the bath keeps most of it.", required=False)
    text = wording("All of that in words.", required=True)


class AirLimitSchema(ResponseSchema):
    """A limit for a gas in the air of a room."""

    jurisdiction = wording("Who set it.", "UK WEL", required=True)
    kind = wording("Over what time and with what force.", "STEL 15 min", required=True)
    text = wording("As it was set.", "0.5 ppm", required=True)
    ppm = fields.Float(metadata=described("Parts by volume in a million.", 0.5))
    mg_m3 = fields.Float(required=True, metadata=described("By mass [mg/m³], at 25 °C.", 1.45))
    verified = _true_or_false("Whether the figure was read in its source, not recalled.")


class InAirSchema(ResponseSchema):
    """A concentration in air."""

    ppm = _measure("Parts by volume in a million.")
    mass = _measure("By mass.")
    times_limit = fields.Float(required=True, metadata=described("How many times the strictest limit.", 0.46))


class ToxicGasSchema(ResponseSchema):
    """A toxic gas in the air of the room. Near the cell there is far more than the average of the room."""

    of = wording("Its formula.", "Cl2", required=True)
    name = wording("Its name.", "chlorine", required=True)
    is_certain = _true_or_false("Whether it forms for sure; otherwise the worst case is reckoned.")
    strictest_limit = fields.Nested(AirLimitSchema, required=True)
    limits = fields.List(
        fields.Nested(AirLimitSchema),
        required=True,
        metadata=described("All short-term limits of the tables."),
    )
    evenly_mixed = fields.Nested(
        InAirSchema,
        required=True,
        metadata=described("What is counted of it, spread through the room, without ventilation."),
    )
    peak_with_ventilation = fields.Nested(
        InAirSchema, metadata=described("At the end of the run: c(t) = G/Qv × (1 − exp(−Qv t/V)).")
    )
    air_to_limit = _measure("Volume of air that what is counted just brings to the limit.")
    text = wording("All of that in words.", required=True)


class FlammableGasSchema(ResponseSchema):
    """A gas that can be lit."""

    of = wording("Its formula.", "H2", required=True)
    name = wording("Its name.", "hydrogen", required=True)
    lower_explosive_limit = _measure("The share of air from which it can be lit.")
    evenly_mixed = _measure("The share if all of it spreads through the room.")
    air_to_limit = _measure("Volume of mixture that all of it could bring to that limit.")
    text = wording("All of that in words.", required=True)


class DemonstrationSchema(ResponseSchema):
    """The plan of a demonstration."""

    curriculum = fields.Nested(CourseSchema, required=True)
    verdict = fields.Nested(PlaceSchema, required=True)
    aims = fields.List(fields.Nested(PlannedAimSchema), required=True)
    charge = _measure("The charge that the aims take.")
    is_met = _true_or_false(
        "Whether the aims are met in time, within the limits, and before an ion runs out."
    )
    recommended = fields.Nested(
        CurrentRowSchema,
        required=True,
        metadata=described("The current to prefer, or the nearest if none fits."),
    )
    because = wording("Why that one.", required=True)
    currents = fields.List(
        fields.Nested(CurrentRowSchema),
        required=True,
        metadata=described("Some currents in rising order, with the nearest that do not fit."),
    )
    lowest_current = _measure("The lowest current that does it in time.")
    highest_current = fields.Nested(HighestCurrentSchema, required=True)
    shortfall = fields.Nested(ShortfallSchema, metadata=described("Left out if the aim can be met in time."))
    half_equations = fields.Dict(
        keys=fields.String(),
        values=fields.Nested(EquationSchema),
        required=True,
        metadata=described("By the electrode; one that the course leaves undecided is left out."),
    )
    overall_equation = fields.Nested(
        EquationSchema, metadata=described("Left out if an electrode is undecided.")
    )
    formed = fields.List(fields.Nested(TurnoverSchema), required=True)
    used_up = fields.List(fields.Nested(TurnoverSchema), required=True)
    total_gas = _measure("Volume of all gases together; left out without a gas.", required=False)
    observations = fields.Dict(
        keys=fields.String(),
        values=fields.List(fields.String()),
        required=True,
        metadata=described("What is seen, by the electrode."),
    )
    tests = fields.List(
        fields.Nested(ProductTestSchema),
        required=True,
        metadata=described("How the products are recognised."),
    )
    preparation = wordings(
        "What to set up: supply, electrodes, the substance that the bath holds.", required=True
    )
    bath = fields.List(
        fields.Nested(BathUseSchema),
        required=True,
        metadata=described("Each ion of the electrolyte that the cell as a whole uses up."),
    )
    bath_note = wording("What becomes of the bath.", required=True)
    toxic_gases = fields.List(fields.Nested(ToxicGasSchema), required=True)
    flammable_gases = fields.List(fields.Nested(FlammableGasSchema), required=True)
    cautions = fields.List(fields.Nested(CautionSchema), required=True)
    doubts = wordings("What is undecided or contested.", required=True)
    assumptions = wordings("What was taken for granted.", required=True)
    rules_of_thumb = wordings("Orders of magnitude of our own on which the plan rests.", required=True)
    working = fields.List(
        fields.Nested(WorkingStepSchema),
        required=True,
        metadata=described("How the charge and the time follow, as on the board."),
    )
