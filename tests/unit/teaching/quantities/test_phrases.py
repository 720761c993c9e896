"""Quantities by a phrase."""

import pytest

from ionwright.chemistry.faults import QuantityFault
from ionwright.teaching.quantities.phrases import Phrase, read_phrase


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("mass", Phrase("mass")),
        ("Mass of Ni", Phrase("mass", "Ni")),
        ("mass of Ni in mg", Phrase("mass", "Ni", "mg")),
        ("mass of Ag in g at silver cell", Phrase("mass", "Ag", "g", "silver cell")),
        ("time in h", Phrase("time", "", "h")),
        ("share at nickel", Phrase("share", "", "", "nickel")),
        ("amount of electrons", Phrase("amount_of_electrons")),
        ("amount of electrons in mmol", Phrase("amount_of_electrons", "", "mmol")),
        ("number of particles of Cl2", Phrase("number_of_particles", "Cl2")),
        ("number of electrons", Phrase("number_of_electrons")),
        ("amount of Cu2+", Phrase("amount", "Cu2+")),
        ("current-density", Phrase("current_density")),
        ("exhaustion time of Cu^2+ in min", Phrase("exhaustion_time", "Cu^2+", "min")),
    ],
)
def test_a_phrase_says_quantity_substance_unit_and_process(text, phrase):
    assert read_phrase(text) == phrase


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("moles of Cu", Phrase("amount", "Cu")),
        ("gas volume of H2", Phrase("volume", "H2")),
        ("yield", Phrase("efficiency")),
        ("mass of Ag at cathode in mg", Phrase("mass", "Ag", "mg", "cathode")),
        ("amount at start of Cu2+", Phrase("amount_at_start", "Cu2+")),
        ("concentration at the end of Cu2+ in mmol/dm3", Phrase("concentration", "Cu2+", "mmol/dm3")),
        ("amount of e-", Phrase("amount_of_electrons")),
        ("mass of nickel deposited", Phrase("mass", "nickel")),
        ("mass of Ni that is deposited in mg at bracket", Phrase("mass", "Ni", "mg", "bracket")),
        ("volume of O2 given off in cm3", Phrase("volume", "O2", "cm3")),
        ("time needed", Phrase("time")),
        ("charge passed in C", Phrase("charge", "", "C")),
    ],
)
def test_other_words_of_the_trade_and_any_order_are_read(text, phrase):
    assert read_phrase(text) == phrase


@pytest.mark.parametrize(("text", "meant"), [("masss", "mass"), ("volumes", "volume"), ("curent", "current")])
def test_a_misspelt_word_is_refused_with_the_one_that_is_meant(text, meant):
    with pytest.raises(QuantityFault) as fault:
        read_phrase(text)
    assert fault.value.code == "unknown-quantity"
    assert fault.value.remedy == f'Did you mean "{meant}"?'


def test_a_word_like_nothing_gets_the_list():
    with pytest.raises(QuantityFault, match="The quantities are charge, current, time"):
        read_phrase("xyzzy")


@pytest.mark.parametrize(
    "text", ["of " * 5000, "mass of" + " of" * 3000, " in at of " * 900, "x" * 100_000, ""]
)
def test_a_hostile_phrase_is_refused(text):
    with pytest.raises(QuantityFault):
        read_phrase(text)
