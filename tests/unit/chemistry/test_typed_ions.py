"""Ions typed in the place of a substance."""

import pytest

from ionwright.chemistry.compound import read_substance
from ionwright.errors import IonwrightError


def refusal(text):
    with pytest.raises(IonwrightError) as caught:
        read_substance(text)
    return caught.value


@pytest.mark.parametrize(
    ("text", "formula"),
    [
        ("Na+Cl-", "NaCl"),
        ("Cu²⁺SO₄²⁻", "CuSO4"),
        ("Na+ + Cl-", "NaCl"),
        ("Na+ Cl-", "NaCl"),
        ("2Na+ + SO4^2-", "Na2SO4"),
        ("2Na+SO42-", "Na2SO4"),
        ("Cu+2SO4-2", "CuSO4"),
        ("H+, Cl-", "HCl"),
        ("CH3COO-Na+", "CH3COONa"),
        ("sodium ions and chloride ions", "NaCl"),
        ("copper ions and sulphate ions", "CuSO4"),
    ],
)
def test_a_neutral_string_of_ions_is_the_salt(text, formula):
    reading = read_substance(text)
    assert reading.compound.formula == formula
    assert reading.assumptions == (f'"{text}" is read as {formula}.',)


@pytest.mark.parametrize(
    ("text", "detail", "remedy"),
    [
        ("Cu2+", "copper(II) ions alone", "Name a salt, such as CuSO4."),
        ("Cu²⁺(aq)", "copper(II) ions alone", "Name a salt, such as CuSO4."),
        ("SO4^2-", "sulfate ions alone", "Name a salt, such as Na2SO4."),
        ("Na+", "sodium ions alone", "Name a salt, such as Na2SO4."),
        ("Ag+", "silver ions alone", "Name a salt, such as AgNO3."),
        ("H+", "hydrogen ions alone", "Name an acid, such as H2SO4."),
        ("OH-", "hydroxide ions alone", "Name an alkali, such as NaOH."),
        ("Na+ + K+", "sodium ions and potassium ions alone", "Name a salt, such as Na2SO4."),
        ("copper(II) ions", "copper(II) ions alone", "Name a salt, such as CuSO4."),
        ("Cu+", "copper(I) ions alone", "Name a substance in which the ion lasts."),
        ("Na+, SO4^2-", "Na⁺ and SO4²⁻ do not cancel", "Together they make Na2SO4."),
    ],
)
def test_ions_alone_need_a_partner(text, detail, remedy):
    fault = refusal(text)
    assert fault.code == "charges-do-not-cancel"
    assert detail in fault.detail
    assert fault.remedy == remedy


@pytest.mark.parametrize(
    ("text", "code"),
    [("NaCl + KI", "unreadable-formula"), ("X+", "unknown-element"), ("e-", "unreadable-formula")],
)
def test_what_is_no_string_of_known_ions_is_refused_as_before(text, code):
    assert refusal(text).code == code
