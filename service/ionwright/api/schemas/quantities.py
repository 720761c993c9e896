"""Shape of the answers to a task about amounts, and of the working."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings
from ionwright.api.schemas.equation import EquationSchema
from ionwright.api.schemas.prediction import RatioSchema


class CourseSchema(ResponseSchema):
    """The curriculum whose constants were used."""

    id = wording("Its id.", "a-level", required=True)
    title = wording("Its name.", required=True)


class WorkedProcessSchema(ResponseSchema):
    """A process of the circuit."""

    id = wording("Name of the process in this task.", "silver cell", required=True)
    half_equation = fields.Nested(
        EquationSchema, metadata=described("Left out where the charge of the ion is not known beforehand.")
    )


class FoundQuantitySchema(ResponseSchema):
    """A quantity that was asked for, with its value."""

    quantity = wording("Name of the quantity.", "mass", required=True)
    of = wording("Formula of the substance; left out if it belongs to none.", "Ni")
    process = wording("Id of the process, if there are several.", "silver cell")
    value = fields.Float(required=True, metadata=described("The value in full, in `unit`.", 0.18248186))
    unit = wording("Its unit; 1 for a plain number.", "g", required=True)
    significant_figures = fields.Integer(
        required=True, metadata=described("How many figures the value deserves.", 2, minimum=1)
    )
    text = wording("Rounded, with the unit, as plain text.", "0.18 g", required=True)
    html = wording("The same in HTML.", required=True)
    latex = wording("The same in LaTeX.", required=True)
    uncertainty = fields.Float(
        metadata=described("Standard uncertainty in `unit`, if a known quantity has one.", 0.004)
    )
    before_rounding = fields.Float(
        metadata=described("For a number of charges, which is whole: what the data give.", 3.02)
    )


class WorkingStepSchema(ResponseSchema):
    """One step as on the board."""

    sentence = wording("What is done and why.", required=True)
    text = wording("The equation with numbers and units, as plain text.", required=True)
    html = wording("The same in HTML.", required=True)
    latex = wording("The same in LaTeX.", required=True)


class MomentSchema(ResponseSchema):
    """A moment of a run."""

    charge = wording("The charge that has passed by then.", "4820 C", required=True)
    time = wording("The time that has passed by then, where the current is known.", "6430 s")


class ElectrodeInStageSchema(ResponseSchema):
    """What an electrode does in one stage."""

    products = wordings("Formulas of what forms.", "Cu", required=True)
    half_equation = fields.Nested(
        EquationSchema, metadata=described("Left out where the course leaves the electrode undecided.")
    )


class StageSchema(ResponseSchema):
    """A span of the run in which the same processes go on."""

    from_ = fields.Nested(MomentSchema, data_key="from", required=True, metadata=described("When it begins."))
    until = fields.Nested(
        MomentSchema, metadata=described("When it ends; left out if nothing runs out any more.")
    )
    runs_out = wordings("Ions of which nothing is left at its end.", "Cu^2+")
    cathode = fields.Nested(ElectrodeInStageSchema, required=True)
    anode = fields.Nested(ElectrodeInStageSchema, required=True)
    summary = wording("The stage in a sentence.", required=True)


class UsedConventionsSchema(ResponseSchema):
    """The constants on which the answers rest, as the course prints them or as the task states them."""

    faraday_constant = wording("Faraday constant.", "96500 C/mol")
    molar_gas_volume = wording("Volume of one mole of gas.", "24 dm3/mol")
    avogadro_constant = wording("Avogadro constant.", "6.02e23 /mol")
    elementary_charge = wording("Charge of one electron.", "1.60e-19 C")
    gas_constant = wording("Gas constant.", "8.31 J/(mol K)")
    relative_atomic_masses = fields.Dict(
        keys=fields.String(), values=fields.String(), metadata=described("Figures by symbol.", {"Ni": "58.7"})
    )
    gas_collected = wording("dry or over water, if a volume of gas plays a part.", "over water")


class QuantitiesSchema(ResponseSchema):
    """The answers to a task about amounts, the working, and what was taken for granted."""

    curriculum = fields.Nested(CourseSchema, required=True)
    processes = fields.List(fields.Nested(WorkedProcessSchema), required=True)
    ratio = fields.Nested(
        RatioSchema, metadata=described("Of a cell: in which ratio the products of its electrodes form.")
    )
    found = fields.List(
        fields.Nested(FoundQuantitySchema),
        required=True,
        metadata=described("What was asked for, in that order; several if a quantity fits several things."),
    )
    working = fields.List(
        fields.Nested(WorkingStepSchema),
        required=True,
        metadata=described("The steps, each behind those that it needs."),
    )
    stages = fields.List(
        fields.Nested(StageSchema),
        metadata=described("Of one cell with a bath of known volume: what forms until which ion runs out."),
    )
    conventions = fields.Nested(UsedConventionsSchema, required=True)
    assumptions = wordings("What was taken for granted, as sentences.", required=True)
