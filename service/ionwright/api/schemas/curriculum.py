"""Shape of the list of curricula and of one curriculum."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording, wordings


class OriginSchema(ResponseSchema):
    """Where a curriculum comes from."""

    kind = wording("built-in, plugin or file.", "built-in", required=True)
    name = wording("Name of the plugin or of the file.", "gcse", required=True)
    version = wording("Version of the plugin's distribution.")


class CurriculumEntrySchema(ResponseSchema):
    """A curriculum in the list."""

    id = wording("Id, for requests.", "gcse", required=True)
    title = wording("Title.", required=True)
    region = wording("Where it is taught.")
    stage = wording("For which stage of school it is.")
    origin = fields.Nested(OriginSchema, required=True)
    status = wording("active: it answers requests.", "active", required=True)


class CurriculumRulesSchema(ResponseSchema):
    """The discharge rules in words, in the order in which they are applied."""

    cathode = wordings("Rules at the cathode.", required=True)
    anode = wordings("Rules at the anode.", required=True)


class MarkingPointSchema(ResponseSchema):
    """What marks are given for."""

    point = wording("species or balance.", "species", required=True)
    marks = fields.Integer(required=True, metadata=described("How many.", 1, minimum=0))
    for_ = fields.String(data_key="for", required=True, metadata=described("What they are given for."))


class MarkingConventionsSchema(ResponseSchema):
    """How half-equations are marked, and which ways of writing are taken."""

    points = fields.List(fields.Nested(MarkingPointSchema), required=True)
    state_symbols = wording("When they count: asked, required or not-used.", "asked", required=True)
    multiples = wording("A right line in twice the numbers: accepted, remarked or refused.", required=True)
    fractions = wording("A right line with fractions: accepted, remarked or refused.", required=True)
    subtracted_electrons = fields.Boolean(
        required=True, metadata=described("Whether an oxidation may take electrons away on the left.")
    )
    equals_sign = fields.Boolean(required=True, metadata=described("Whether = may stand for the arrow."))
    equilibrium_arrow = fields.Boolean(
        required=True, metadata=described("Whether ⇌ may stand for the arrow.")
    )
    electron_without_sign = fields.Boolean(required=True, metadata=described("Whether e may stand for e-."))


class FormsByMediumSchema(ResponseSchema):
    """From what a gas is written in each medium, the preferred form first."""

    acidic = wordings("In an acidic solution: ions, water or both.", "ions", required=True)
    neutral = wordings("In a neutral solution: ions, water or both.", "ions", "water", required=True)
    alkaline = wordings("In an alkaline solution: ions, water or both.", "water", required=True)


class CurriculumConventionsSchema(ResponseSchema):
    """How a curriculum writes equations and counts quantities; a constant that it does not print is absent."""

    hydrogen_from = fields.Nested(FormsByMediumSchema, required=True)
    oxygen_from = fields.Nested(FormsByMediumSchema, required=True)
    state_symbols = wording("When they count: asked, required or not-used.", "asked", required=True)
    oxidation_also_minus = fields.Boolean(
        required=True, metadata=described("Whether an oxidation may be written with electrons taken away.")
    )
    faraday_constant = wording("Charge of one mole of electrons, as the course prints it.", "96500 C/mol")
    molar_gas_volume = wording("Volume of one mole of a gas, as the course prints it.", "24 dm3/mol")
    gas_conditions = wording(
        "Temperature and pressure for which that volume stands, in words.",
        "room temperature and pressure, 20 degC and 1 atm",
    )
    other_molar_gas_volumes = fields.Dict(
        keys=fields.String(),
        values=fields.String(),
        metadata=described(
            "Further volumes of one mole of a gas that the course prints, by their conditions.",
            {"25 degC and 100 kPa": "24.79 dm3/mol"},
        ),
    )
    avogadro_constant = wording("Number of particles in one mole, as the course prints it.", "6.02e23 /mol")
    elementary_charge = wording("Charge of one electron, as the course prints it.", "1.60e-19 C")
    gas_constant = wording("Constant of the ideal gas law, as the course prints it.", "8.31 J/(mol K)")
    relative_atomic_mass_decimals = fields.Integer(
        metadata=described(
            "To how many decimals relative atomic masses are taken; absent if they stand as in the tables.",
            1,
            minimum=0,
            maximum=4,
        )
    )
    relative_atomic_masses = fields.Dict(
        keys=fields.String(),
        values=fields.String(),
        metadata=described(
            "Figures of its own that the course prints, by symbol.", {"Cu": "63.5", "Cl": "35.5"}
        ),
    )


class CourseScopeSchema(ResponseSchema):
    """What a course covers, in words; what its declaration does not say is absent."""

    quantities = wording("Which sums with charge and amounts are asked.", "Q = It, mass and volume liberated")
    electrodes = wordings("Which sorts of electrodes are met.", "inert", "copper anode")
    melts = wordings("Which melts are set.", "PbBr2", "NaCl")
    industry = wordings("Which works of industry are taught.", "aluminium", "copper refining")
    observations = wordings("What is looked for.", "damp blue litmus is bleached")
    vocabulary = wordings("Words that its papers use.", "discharged", "electrolyte")


class CurriculumSchema(CurriculumEntrySchema):
    """A curriculum with its conventions and rules."""

    conventions = fields.Nested(CurriculumConventionsSchema, required=True)
    marking = fields.Nested(MarkingConventionsSchema, required=True)
    rules = fields.Nested(CurriculumRulesSchema, required=True)
    scope = fields.Nested(CourseScopeSchema, metadata=described("What the course covers."))
    sources = fields.List(fields.Raw(), metadata=described("Where its rules were taken from."))
    certainty = fields.Raw(metadata=described("How sure the sources are."))


class SetAsideSchema(ResponseSchema):
    """A plugin or file that could not be used."""

    name = wording("Name of the plugin or of the file.", required=True)
    kind = wording("What it is.", required=True)
    reason = wording("Why it was set aside.", required=True)


class CurriculaSchema(ResponseSchema):
    """All curricula that are loaded, and what was set aside."""

    curricula = fields.List(fields.Nested(CurriculumEntrySchema), required=True)
    set_aside = fields.List(fields.Nested(SetAsideSchema), required=True)
