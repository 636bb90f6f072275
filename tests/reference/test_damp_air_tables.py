"""Damp air against printed psychrometric tables."""

import csv
from pathlib import Path

import pytest

from refettle.physics.air import dew_point_c, saturation_pa, warmed, water_g_kg, wet_bulb_c
from refettle.physics.limits import OutOfRange

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


# ASHRAE Handbook: Fundamentals (2017) ch. 1 Table 3, above freezing.
@pytest.mark.parametrize("row", [r for r in rows("saturation_pressure.csv") if 5 <= float(r["temp_C"]) <= 40])
def test_saturation_pressure_meets_the_printed_table(row: dict[str, str]) -> None:
    printed = float(row["saturation_pressure_Pa_table3"])
    assert saturation_pa(float(row["temp_C"])) == pytest.approx(printed, rel=0.0002)


# The same, Table 2; it counts the air's own effect on the vapour (0.5 %), which the sum leaves out.
def test_saturated_air_carries_the_water_of_the_printed_table() -> None:
    printed = [r for r in rows("saturation_pressure.csv") if r["saturation_humidity_ratio_kg_kg_table2"]]
    warm = [r for r in printed if 0 < float(r["temp_C"]) <= 40]
    assert warm
    for row in warm:
        ratio = 1000.0 * float(row["saturation_humidity_ratio_kg_kg_table2"])
        assert water_g_kg(float(row["temp_C"]), 1.0) / ratio == pytest.approx(0.995, abs=0.001)


# The same table counts over ice below freezing; the form counts over liquid water, which is higher.
@pytest.mark.parametrize("row", [r for r in rows("saturation_pressure.csv") if float(r["temp_C"]) < 0])
def test_below_freezing_the_pressure_over_water_lies_above_that_over_ice(row: dict[str, str]) -> None:
    assert saturation_pa(float(row["temp_C"])) > float(row["saturation_pressure_Pa_table3"])


def test_boiling_water_is_beyond_the_form_and_refused() -> None:
    with pytest.raises(OutOfRange, match=r"temp_c is 100\.0, must be -40 to 60 °C; °F or kelvin"):
        saturation_pa(100.0)


# Computed with PsychroLib 2.5.0 after ASHRAE, printed to these places: it holds units and humidity as a fraction.
@pytest.mark.parametrize("row", rows("dew_point.csv"))
def test_dew_point_wet_bulb_and_water_are_those_of_the_kept_rows(row: dict[str, str]) -> None:
    air = float(row["dry_bulb_C"]), float(row["rh_percent"]) / 100.0
    assert dew_point_c(*air) == pytest.approx(float(row["dew_point_C"]), abs=0.001)
    assert wet_bulb_c(*air) == pytest.approx(float(row["wet_bulb_C"]), abs=0.002)
    assert water_g_kg(*air) == pytest.approx(1000.0 * float(row["humidity_ratio_kg_kg"]), abs=0.001)


# The same rows: dew point and water stay when air is only warmed.
@pytest.mark.parametrize("row", rows("dew_point.csv"))
def test_a_heater_leaves_the_water_of_the_air_as_it_was(row: dict[str, str]) -> None:
    warm = warmed(float(row["dry_bulb_C"]), float(row["rh_percent"]) / 100.0, 38.0)
    assert warm[0] == 38.0
    assert dew_point_c(*warm) == pytest.approx(float(row["dew_point_C"]), abs=0.002)


def test_air_that_is_warm_enough_stays_as_it_is() -> None:
    assert warmed(21.0, 0.55, 20.0) == (21.0, 0.55)


# Common practice, no source: humidity is reported over liquid water below 0 °C too, and what falls is frost.
def test_frosty_air_falls_to_frost_and_never_above_its_own_warmth() -> None:
    assert dew_point_c(-10.0, 1.0) == -10.0
    assert -10.0 > dew_point_c(-10.0, 0.5) > -20.0


def test_saturation_over_water_goes_through_freezing_without_a_step() -> None:
    assert saturation_pa(0.02) / saturation_pa(0.0) == pytest.approx(1.0015, abs=0.0003)
