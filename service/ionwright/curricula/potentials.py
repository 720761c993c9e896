"""The two printed figures for water at pH 14, beside which 0.00 V and +1.23 V stand for pH 0."""

from ionwright.chemistry.couple import couples

WATER_V = couples()["H2O/H2"].printed_V
"""Water to hydrogen, as data sheets print it [V]."""

HYDROXIDE_V = couples()["O2/OH-"].printed_V
"""Hydroxide ions to oxygen, as data sheets print it [V]."""
