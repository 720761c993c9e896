"""Numbers with the figures they deserve."""

from math import inf, nan

import pytest

from ionwright.chemistry.figures import Rendered, notations, rounded, with_uncertainty
from ionwright.chemistry.units import read_unit
from ionwright.errors import IonwrightError


@pytest.mark.parametrize(
    ("value", "figures", "text"),
    [
        (0.5, 2, "0.50"), (1234, 2, "1200"), (1250, 2, "1300"), (0.05, 1, "0.05"), (20, 2, "20"), (20, 4, "20.00"),
        # half up on the decimal as it is written, where binary fractions lie a little below
        (2.675, 3, "2.68"), (1.005, 3, "1.01"), (0.15, 1, "0.2"), (0.25, 1, "0.3"), (2.5, 1, "3"), (1.45, 2, "1.5"),
        (-2.675, 3, "-2.68"), (-0.5, 1, "-0.5"), (0.1 + 0.2, 3, "0.300"),
        (9.99, 2, "10"), (9.995, 3, "10.0"), (99.95, 3, "100"), (0.0996, 2, "0.10"),
        (99999, 5, "99999"), (99999.4, 5, "99999"), (99999.5, 5, "1.0000e5"), (100000, 1, "1e5"), (1e5, 3, "1.00e5"),
        (123456, 3, "1.23e5"), (6.02214076e23, 3, "6.02e23"), (0.001, 2, "0.0010"), (0.00099, 1, "0.001"),
        (0.00099, 2, "9.9e-4"), (0.000999, 2, "0.0010"), (1.8e-4, 2, "1.8e-4"), (-1.8e-4, 2, "-1.8e-4"),
        (0, 3, "0"), (-0.0, 3, "0"), (5e-324, 2, "5.0e-324"), (1.7976931348623157e308, 3, "1.80e308"),
        # ties that a calculation lost in the last binary digits
        (7.5249999999999995e20, 3, "7.53e20"), (-7.5249999999999995e20, 3, "-7.53e20"),
        (0.28499999999999995, 2, "0.29"), (9.994999999999997, 3, "10.0"),
        (2.674999999999, 3, "2.67"), (2.6749, 3, "2.67"),
        # nothing is lost where many figures are asked for
        (7.5249999999999995, 16, "7.525000000000000"), (7.5249999999999995, 17, "7.5249999999999995"),
        (1.23456789012346, 15, "1.23456789012346"), (1.2345678901235, 13, "1.234567890124"),
        (1.5, 0, "2"), (1 / 3, 40, "0.33333333333333330"),
    ],
)  # fmt: skip
def test_a_number_is_rounded_half_up(value: float, figures: int, text: str) -> None:
    assert rounded(value, figures) == text


@pytest.mark.parametrize(
    ("value", "figures", "unit", "rendered"),
    [
        (0.1823, 3, "g", Rendered("0.182 g", "0.182 g", r"0.182\,\mathrm{g}")),
        (1.8e-4, 2, "mol", Rendered(
            "1.8 × 10⁻⁴ mol", "1.8 × 10<sup>−4</sup> mol", r"1.8 \times 10^{-4}\,\mathrm{mol}")),
        (6.022e23, 3, "1/mol", Rendered(
            "6.02 × 10²³ mol⁻¹", "6.02 × 10<sup>23</sup> mol<sup>−1</sup>", r"6.02 \times 10^{23}\,\mathrm{mol^{-1}}")),
        (24, 3, "dm3/mol", Rendered("24.0 dm³/mol", "24.0 dm<sup>3</sup>/mol", r"24.0\,\mathrm{dm^3\,mol^{-1}}")),
        (95, 2, "%", Rendered("95%", "95%", r"95\%")),
        (2, 1, "1", Rendered("2", "2", "2")),
        (-5, 1, "degC", Rendered("−5 °C", "−5 °C", r"-5\,\mathrm{{}^{\circ}C}")),
        (0.28, 2, "GBP/kWh", Rendered("£0.28/kWh", "£0.28/kWh", r"\text{£}0.28/\mathrm{kWh}")),
        (-3.5, 2, "USD", Rendered("−$3.5", "−$3.5", r"-\$3.5")),
        (3.5, 2, "EUR/m3", Rendered("€3.5/m³", "€3.5/m<sup>3</sup>", r"\text{€}3.5/\mathrm{m^3}")),
        (12, 2, "CHF", Rendered("12 CHF", "12 CHF", r"12\,\mathrm{CHF}")),
    ],
)  # fmt: skip
def test_a_quantity_is_shown_in_each_notation(
    value: float, figures: int, unit: str, rendered: Rendered
) -> None:
    assert notations(value, figures, read_unit(unit)) == rendered


@pytest.mark.parametrize(
    ("value", "uncertainty", "unit", "text", "figures"),
    [
        (0.1823, 0.0042, "g", "(0.182 ± 0.004) g", 3), (0.1823, 0.0014, "g", "(0.1823 ± 0.0014) g", 4),
        (1.823e-4, 4.2e-6, "mol", "(1.82 ± 0.04) × 10⁻⁴ mol", 3), (1234, 56, "C", "(1230 ± 60) C", 3),
        (123456, 1500, "C", "(1.235 ± 0.015) × 10⁵ C", 4), (5, 123, "g", "(10 ± 120) g", 1),
        (0, 0.5, "g", "(0.0 ± 0.5) g", 1),
        (0.5, 0.096, "g", "(0.5 ± 0.1) g", 1), (0.5, 0.195, "g", "(0.50 ± 0.20) g", 2),
        (99.96, 0.5, "g", "(100.0 ± 0.5) g", 4),
        (0.0005, 2, "g", "(0 ± 2) g", 1), (95, 2, "%", "(95 ± 2)%", 2), (1.5, 0.2, "1", "1.5 ± 0.2", 2),
        (-1.5, 0.2, "g", "(−1.5 ± 0.2) g", 2), (0.28, 0.02, "GBP/kWh", "£(0.28 ± 0.02)/kWh", 2),
        (2.5, 0.5, "K", "(2.5 ± 0.5) K", 2),
        (2.5, 1, "K", "(2.5 ± 1.0) K", 2), (0.25, 0.5, "K", "(0.3 ± 0.5) K", 1),
        (7.5249999999999995, 0.03, "g", "(7.53 ± 0.03) g", 3), (7.5, 0.34999999999999998, "g", "(7.5 ± 0.4) g", 2),
        (7.5, 0.19999999999999998, "g", "(7.5 ± 0.2) g", 2),
        (1, 0, "g", "1.00000000000000 g", 15), (1e44, 1e-40, "g", "1.00000000000000 × 10⁴⁴ g", 15),
    ],
)  # fmt: skip
def test_an_uncertainty_sets_the_figures(
    value: float, uncertainty: float, unit: str, text: str, figures: int
) -> None:
    rendered, significant_figures = with_uncertainty(value, uncertainty, read_unit(unit))
    assert (rendered.text, significant_figures) == (text, figures)


def test_an_uncertainty_is_typeset() -> None:
    rendered, _ = with_uncertainty(1.823e-4, 4.2e-6, read_unit("cm3"))
    assert rendered.html == "(1.82 ± 0.04) × 10<sup>−4</sup> cm<sup>3</sup>"
    assert rendered.latex == r"(1.82 \pm 0.04) \times 10^{-4}\,\mathrm{cm^3}"


@pytest.mark.parametrize("value", [inf, -inf, nan])
def test_what_is_not_finite_is_refused(value: float) -> None:
    gram = read_unit("g")
    for attempt in (
        lambda: rounded(value, 3),
        lambda: notations(value, 3, gram),
        lambda: with_uncertainty(1.0, value, gram),
    ):
        with pytest.raises(IonwrightError) as caught:
            attempt()
        assert caught.value.code == "not-finite"
