"""Shape of a balanced equation and of two combined half-equations."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import AnyOf, ResponseSchema, described, wording, wordings
from ionwright.api.schemas.equation import EquationSchema


class BoardStepSchema(ResponseSchema):
    """One line on the board."""

    text = wording(
        "What is said.",
        "Balance oxygen with water: the left has 4 O more, so write 4H₂O on the right.",
        required=True,
    )
    equation = fields.Nested(
        EquationSchema,
        required=True,
        metadata=described("The equation as it stands then; only the last one has to balance."),
    )


class OxidationNumberSchema(ResponseSchema):
    """The oxidation number of an element in a species of the equation."""

    element = wording("Symbol of the element.", "Mn", required=True)
    species = wording("The species.", "MnO4^-", required=True)
    side = wording("left or right.", "left", required=True)
    atoms = fields.Integer(
        required=True, metadata=described("How many atoms of the species have it.", 1, minimum=1)
    )
    value = AnyOf(
        fields.Integer(),
        fields.String(metadata={"pattern": r"^-?\d+/\d+$"}),
        metadata=described(
            "The oxidation number: a whole one as a number, any other as text with a fraction bar, since no decimal"
            " is exact; left out where the rules do not decide.",
            7,
            "5/2",
        ),
    )
    text = wording(
        "The same as chemists write it; not decided where the rules do not decide.", "+7", required=True
    )
    because = wording(
        "Why it is not decided; left out where it is.",
        "No rule fixes Cu or Fe here, and the charge alone does not say how they share.",
    )
    is_average = fields.Boolean(
        metadata=described("Whether the atoms are unlike, so that the value is an average.")
    )
    changes = fields.Boolean(
        metadata=described("Whether atoms with this number change it; left out where that cannot be told.")
    )


class MultipliedHalfSchema(ResponseSchema):
    """A half-equation and what it is multiplied by."""

    half_equation = fields.Nested(EquationSchema, required=True)
    multiplier = fields.Integer(required=True, metadata=described("Factor.", 5, minimum=1))


class HalvesSchema(ResponseSchema):
    """The half-equations of a whole redox equation."""

    reduction = fields.Nested(MultipliedHalfSchema, required=True)
    oxidation = fields.Nested(MultipliedHalfSchema, required=True)
    electrons = fields.Integer(
        required=True, metadata=described("How many go over, once multiplied.", 10, minimum=1)
    )


class BalanceSchema(ResponseSchema):
    """A balanced equation, the way to it, and its oxidation numbers."""

    half_equation = fields.Nested(
        EquationSchema,
        required=True,
        metadata=described("The balanced equation; no half-equation if kind is redox or not-redox."),
    )
    kind = wording(
        "oxidation or reduction; redox for a whole equation whose electrons cancel; not-redox if none go over.",
        "reduction",
        required=True,
    )
    electrons = fields.Integer(
        required=True, metadata=described("How many electrons stand in it.", 5, minimum=0)
    )
    side = wording("Side of the electrons, left or right; left out if there are none.", "left")
    medium = wording("What the solution or melt offered.", "acidic", required=True)
    reading = fields.Nested(
        EquationSchema, required=True, metadata=described("What was read in the text that was sent.")
    )
    steps = fields.List(
        fields.Nested(BoardStepSchema), required=True, metadata=described("The way to it, as on the board.")
    )
    oxidation_numbers = fields.List(
        fields.Nested(OxidationNumberSchema),
        required=True,
        metadata=described("Of every element in every species, on both sides."),
    )
    halves = fields.Nested(HalvesSchema)
    notes = wordings("What to know about the way in which it was found.", required=True)


class CombinationSchema(ResponseSchema):
    """Two half-equations, multiplied and added."""

    oxidation = fields.Nested(MultipliedHalfSchema, required=True)
    reduction = fields.Nested(MultipliedHalfSchema, required=True)
    electrons = fields.Integer(
        required=True, metadata=described("How many go over, once multiplied.", 2, minimum=1)
    )
    overall_equation = fields.Nested(
        EquationSchema,
        required=True,
        metadata=described("The sum, without electrons and without what is common to both sides."),
    )
    steps = fields.List(
        fields.Nested(BoardStepSchema), required=True, metadata=described("The way to it, as on the board.")
    )
    notes = wordings("What to know about it.", required=True)
