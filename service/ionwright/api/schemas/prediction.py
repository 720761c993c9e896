"""Shape of a prediction: the verdict at both electrodes and all that a teacher says about the cell."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings
from ionwright.api.schemas.equation import EquationSchema


class CurriculumNameSchema(ResponseSchema):
    """The curriculum that the answer follows."""

    id = wording("Id of the curriculum.", "gcse", required=True)
    title = wording("Its title.", required=True)


class CellSubstanceSchema(ResponseSchema):
    """A substance of the electrolyte, as it was understood."""

    formula = wording("Formula in plain text.", "NiSO4", required=True)
    name = wording("Systematic name.", "nickel(II) sulfate", required=True)
    concentration = wording("Concentration, if one was given.", "0.25 mol/dm3")


class CellElectrodeSchema(ResponseSchema):
    """An electrode, as it was understood."""

    material = wording("What the electrode is made of.", "steel", required=True)
    behaviour = wording("inert, or active if it takes part itself.", "inert", required=True)


class CellSchema(ResponseSchema):
    """The cell, as it was understood."""

    electrolyte = fields.List(fields.Nested(CellSubstanceSchema), required=True)
    state = wording("aqueous or molten.", "aqueous", required=True)
    cathode = fields.Nested(CellElectrodeSchema, required=True)
    anode = fields.Nested(CellElectrodeSchema, required=True)
    temperature = wording("Temperature of a melt.", "393 degC")


class PresentIonSchema(ResponseSchema):
    """An ion in the electrolyte."""

    formula = wording("Formula in plain text.", "Ni^2+", required=True)
    name = wording("Name of the ion.", "nickel(II) ion", required=True)
    source = wording("Where it comes from: electrolyte or water.", "electrolyte", required=True)
    moves_towards = wording("The electrode that attracts it.", "cathode", required=True)


class ProductSchema(ResponseSchema):
    """What forms at an electrode."""

    formula = wording("Formula in plain text.", "Ni", required=True)
    name = wording("Its name.", "nickel", required=True)
    state = wording("s, l, g or aq.", "s", required=True)
    share = fields.Float(metadata=described("Share of the current, from 0 to 1.", 1.0))


class AcceptedAnswerSchema(ResponseSchema):
    """Another answer that the curriculum accepts."""

    products = wordings("Formulas of its products.", "H2", required=True)
    half_equation = fields.Nested(EquationSchema)
    because = wording("Why it is accepted too.")


class CompetitorSchema(ResponseSchema):
    """A process that could run at an electrode, and what became of it."""

    half_equation = fields.Nested(EquationSchema, required=True)
    outcome = wording(
        "What the rules made of it, such as discharged or passed over.", "discharged", required=True
    )
    because = wording("The reason, as a sentence.", required=True)


class SpectatorSchema(ResponseSchema):
    """An ion that moves to an electrode and is not discharged there."""

    formula = wording("Formula in plain text.", "Na^+", required=True)
    because = wording("The reason, as a sentence.", required=True)


class ProductTestSchema(ResponseSchema):
    """How a product is recognised."""

    product = wording("What is tested for.", required=True)
    test = wording("What is done.", required=True)
    result = wording("What is seen if it is there.", required=True)


class ElectrodeVerdictSchema(ResponseSchema):
    """What happens at one electrode, and why."""

    outcome = wording(
        "decided, or not-decidable if the course's rules do not reach this cell.", "decided", required=True
    )
    contested = fields.Boolean(metadata=described("Whether good sources differ about it."))
    products = fields.List(fields.Nested(ProductSchema), required=True)
    half_equation = fields.Nested(
        EquationSchema, metadata=described("The process that runs, if one was decided.")
    )
    also_written = fields.List(
        fields.Nested(EquationSchema), metadata=described("Other ways in which the course writes it.")
    )
    also_accepted = fields.List(fields.Nested(AcceptedAnswerSchema))
    competition = fields.List(fields.Nested(CompetitorSchema))
    spectators = fields.List(fields.Nested(SpectatorSchema))
    because = wordings("The reasons, in the order in which a teacher gives them.", required=True)
    observations = wordings("What is seen at the electrode.")
    tests = fields.List(fields.Nested(ProductTestSchema))


class ElectronBalanceSchema(ResponseSchema):
    """How often each half-equation is taken so that the electrons cancel."""

    cathode_multiplier = fields.Integer(required=True, metadata=described("Factor of the cathode's.", 1))
    anode_multiplier = fields.Integer(required=True, metadata=described("Factor of the anode's.", 1))
    electrons = fields.Integer(required=True, metadata=described("Electrons passed on.", 2))


class ShareOfRatioSchema(ResponseSchema):
    """One part of a ratio."""

    formula = wording("Formula of the product.", "H2", required=True)
    value = fields.Float(required=True, metadata=described("Its part, in the smallest whole numbers.", 2))


class RatioSchema(ResponseSchema):
    """In which ratio the products form."""

    moles = fields.List(fields.Nested(ShareOfRatioSchema))
    gas_volumes = fields.List(fields.Nested(ShareOfRatioSchema))


class SolutionSchema(ResponseSchema):
    """What becomes of the electrolyte."""

    ions_removed = wordings("Ions that leave it.", "Cl^-")
    ions_formed = wordings("Ions that come into it.", "OH^-")
    ions_remaining = wordings("Ions that stay.", "Na^+")
    precipitates = wordings("Solids that fall out of it.")
    ph = wording("How the pH moves.", "rises")
    colour = wording("What becomes of the colour.")
    becomes = wording("What the solution turns into.")
    summary = wording("All this in one or two sentences.")


class CautionSchema(ResponseSchema):
    """A hazard of what goes in or comes out."""

    hazard = wording("Kind of hazard.", required=True)
    text = fields.String(required=True, metadata=described("What to do about it."))


class PredictionSchema(ResponseSchema):
    """The answer to one cell under one curriculum. Members may be added; ignore those not known to you."""

    curriculum = fields.Nested(CurriculumNameSchema, required=True)
    cell = fields.Nested(CellSchema, required=True)
    assumptions = wordings("What was taken as understood.")
    notes = wordings("What is worth knowing about this electrolyte.")
    ions = fields.List(fields.Nested(PresentIonSchema), required=True)
    cathode = fields.Nested(ElectrodeVerdictSchema, required=True)
    anode = fields.Nested(ElectrodeVerdictSchema, required=True)
    overall_equation = fields.Nested(EquationSchema)
    electron_balance = fields.Nested(ElectronBalanceSchema)
    ratio = fields.Nested(RatioSchema)
    solution = fields.Nested(SolutionSchema)
    cautions = fields.List(fields.Nested(CautionSchema))
