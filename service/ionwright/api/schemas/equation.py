"""Shape of an equation in its notations."""

from __future__ import annotations

from marshmallow import fields

from ionwright.api.schemas.base import ResponseSchema, described, wording


class EquationSchema(ResponseSchema):
    """A half-equation or an overall equation; `ascii` is always there, the others on request."""

    tokens = fields.List(
        fields.Dict(), metadata=described("The equation in pieces, for programs that set it themselves.")
    )
    ascii = wording(
        "Plain text without state symbols, which can be read back.", "Ni^2+ + 2e- -> Ni", required=True
    )
    text = fields.String(metadata=described("Unicode text with state symbols.", "Ni²⁺(aq) + 2e⁻ → Ni(s)"))
    html = wording("HTML with sub and sup elements.")
    mathml = wording("MathML Core.")
    latex = wording("LaTeX for mhchem.", r"\ce{Ni^2+(aq) + 2e- -> Ni(s)}")
    spoken = wording("Words for screen readers.")
    electrons = fields.Integer(
        metadata=described("Number of electrons, if the equation has any.", 2, minimum=1)
    )
