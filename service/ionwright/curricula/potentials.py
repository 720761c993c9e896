"""The printed figures for water at pH 14, beside which 0.00 V and +1.23 V stand for pH 0, and hydrogen between them."""

from types import MappingProxyType

from ionwright.chemistry.couple import couples

WATER_V = couples()["H2O/H2"].printed_V
"""Water to hydrogen, as data sheets print it [V]."""

HYDROXIDE_V = couples()["O2/OH-"].printed_V
"""Hydroxide ions to oxygen, as data sheets print it [V]."""

HYDROGEN_V = MappingProxyType({"H+": 0.0, "H+ at pH 7": -0.41, "water": WATER_V})
"""Where hydrogen stands in a neutral solution [V], by what it is counted as; 7 times −0.059 V is −0.41 V."""
