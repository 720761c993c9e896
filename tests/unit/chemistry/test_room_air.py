"""The air of a room: the formula of the peak against a reckoning in small steps, and its two ends."""

import pytest

from ionwright.chemistry.room_air import evenly_mixed_mg_m3, peak_mg_m3


def stepped(mass_mg: float, time_h: float, room_m3: float, air_changes_per_h: float) -> float:
    steps, concentration = 200_000, 0.0
    step_h = time_h / steps
    for _ in range(steps):
        concentration += step_h * (mass_mg / time_h / room_m3 - air_changes_per_h * concentration)
    return concentration


@pytest.mark.parametrize(
    ("mass_mg", "time_h", "room_m3", "changes"),
    [(150.0, 0.25, 180.0, 3.0), (1000.0, 2.0, 60.0, 6.0), (5.0, 0.1, 200.0, 0.5)],
)
def test_the_peak_is_what_small_steps_reach(
    mass_mg: float, time_h: float, room_m3: float, changes: float
) -> None:
    assert peak_mg_m3(mass_mg, time_h, room_m3, changes) == pytest.approx(
        stepped(mass_mg, time_h, room_m3, changes), rel=1e-4
    )


def test_without_ventilation_all_of_it_stays() -> None:
    assert peak_mg_m3(150, 0.5, 180, 0) == evenly_mixed_mg_m3(150, 180) == pytest.approx(0.8333, rel=1e-4)
    assert peak_mg_m3(150, 0.5, 180, 1e-6) == pytest.approx(150 / 180, rel=1e-5)


def test_a_long_run_comes_to_the_source_over_the_air_flow() -> None:
    assert peak_mg_m3(1000, 100, 50, 4) == pytest.approx(1000 / 100 / (4 * 50))


def test_more_ventilation_never_makes_it_worse() -> None:
    peaks = [peak_mg_m3(100, 0.5, 150, changes) for changes in (0, 1, 2, 5, 10, 50)]
    assert peaks == sorted(peaks, reverse=True)
    assert len(set(peaks)) == len(peaks)
