"""What the drying model says about the air of a workshop."""

import math

import pytest

from refettle.physics.drying import (
    FAMILIES,
    STAGES,
    progress_rate,
    stage_hours,
    stage_spread,
)
from refettle.physics.rates import damp_oxidation_rate, evaporation_rate


@pytest.mark.parametrize("temp_c", [20.0, 21.5, 23.0])
@pytest.mark.parametrize("family", FAMILIES)
def test_the_hours_of_the_label_hold_all_over_the_labels_air(family: str, temp_c: float) -> None:
    for stage in STAGES:
        assert progress_rate(family, stage, temp_c, 0.50) == pytest.approx(1.0, rel=0.02)


def test_water_stands_still_in_saturated_air_until_touch() -> None:
    assert progress_rate("waterborne", "touch", 20.0, 1.0) == 0.0
    assert stage_hours("waterborne", "touch", 1.0, 20.0, 1.0) == math.inf


def test_a_waterborne_film_below_its_film_forming_temperature_makes_no_progress() -> None:
    assert progress_rate("waterborne", "recoat_from", 9.0, 0.5, min_c=10.0) == 0.0
    assert progress_rate("crosslinked", "recoat_from", 9.0, 0.5, min_c=10.0) == 0.0
    assert progress_rate("oxidative", "recoat_from", 9.0, 0.5, min_c=10.0) > 0.0


def test_a_neat_oil_does_not_care_for_a_fan() -> None:
    still = progress_rate("oxidative", "touch", 20.0, 0.5, 0.1, carrier="none")
    fan = progress_rate("oxidative", "touch", 20.0, 0.5, 1.0, carrier="none")
    assert still == fan


def test_oil_hardens_at_half_pace_in_saturated_air_and_fully_below_two_thirds() -> None:
    assert damp_oxidation_rate(0.65) == 1.0
    assert damp_oxidation_rate(1.0) == pytest.approx(0.5)
    assert progress_rate("oxidative", "cured", 20.0, 0.9) < progress_rate("oxidative", "cured", 20.0, 0.6)


def test_a_stain_dries_the_way_of_what_it_is_thinned_with() -> None:
    for carrier, family in (("water", "waterborne"), ("spirits", "oxidative"), ("alcohol", "evaporative")):
        as_stain = progress_rate("stain", "recoat_from", 12.0, 0.7, carrier=carrier)
        assert as_stain == progress_rate(family, "recoat_from", 12.0, 0.7, carrier=carrier)


def test_a_double_film_takes_twice_as_long_to_touch_and_longer_still_to_cure() -> None:
    assert stage_hours("evaporative", "touch", 1.0, 21.0, 0.5, wet_ratio=2.0) == pytest.approx(2.0)
    assert stage_hours("evaporative", "cured", 1.0, 21.0, 0.5, wet_ratio=2.0) == pytest.approx(4.0)


def test_air_above_three_metres_a_second_gains_nothing_more() -> None:
    assert evaporation_rate("water", 20.0, 0.5, 3.0) == evaporation_rate("water", 20.0, 0.5, 8.0)


def test_a_figure_for_one_temperature_can_be_scaled_from_there() -> None:
    at_23 = stage_hours("oxidative", "sand", 24.0, 20.0, 0.5, label_c=(23.0, 23.0))
    assert at_23 == pytest.approx(24.0 * 1.23, rel=0.02)  # 50 kJ/mol over 3 K


def test_hours_are_uncertain_by_a_third_indoors_and_twofold_outside() -> None:
    assert stage_spread("recoat_from", 18.0, 0.6) == 1.35
    assert stage_spread("recoat_from", 10.0, 0.6) == 2.0
    assert stage_spread("recoat_from", 18.0, 0.85) == 2.0
    assert stage_spread("cured", 20.0, 0.5) == 2.0
