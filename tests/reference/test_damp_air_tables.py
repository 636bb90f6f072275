"""Damp air against printed psychrometric tables."""

import csv
from pathlib import Path

import pytest

from refettle.physics.air import dew_point_c, saturation_pa
from refettle.physics.limits import OutOfRange

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


# ASHRAE Handbook: Fundamentals (2017) ch. 1 Table 3; the form claims 0.35 % at 5–40 °C.
@pytest.mark.parametrize("row", [r for r in rows("saturation_pressure.csv") if 5 <= float(r["temp_C"]) <= 40])
def test_saturation_pressure_meets_the_printed_table_within_a_third_of_a_percent(row: dict[str, str]) -> None:
    printed = float(row["saturation_pressure_Pa_table3"])
    assert saturation_pa(float(row["temp_C"])) == pytest.approx(printed, rel=0.0035)


# The same table counts over ice below freezing; the form counts over liquid water, which is higher.
@pytest.mark.parametrize("row", [r for r in rows("saturation_pressure.csv") if float(r["temp_C"]) < 0])
def test_below_freezing_the_pressure_over_water_lies_above_that_over_ice(row: dict[str, str]) -> None:
    assert saturation_pa(float(row["temp_C"])) > float(row["saturation_pressure_Pa_table3"])


def test_boiling_water_is_beyond_the_form_and_refused() -> None:
    with pytest.raises(OutOfRange, match=r"temp_c is 100\.0, must be -30 to 60 °C; °F or kelvin"):
        saturation_pa(100.0)


# Computed with PsychroLib 2.5.0 after ASHRAE; a Magnus form agrees within 0.02 K.
@pytest.mark.parametrize("row", rows("dew_point.csv"))
def test_dew_point_agrees_with_an_open_psychrometric_library(row: dict[str, str]) -> None:
    got = dew_point_c(float(row["dry_bulb_C"]), float(row["rh_percent"]) / 100.0)
    assert got == pytest.approx(float(row["dew_point_C"]), abs=0.02)
