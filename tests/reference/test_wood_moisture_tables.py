"""Wood moisture and movement against the Wood Handbook's tables."""

import csv
from pathlib import Path

import numpy as np
import pytest

from refettle.physics.moisture import change_per_pct, emc_pct, movement_mm, settling_days

DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def celsius(temp_f: float) -> float:
    return (temp_f - 32.0) / 1.8


# Wood Handbook FPL-GTR-282 (2021) ch. 4 Table 4-2, printed to 0.1 %: tolerance 0.1.
@pytest.mark.parametrize("temp_f", sorted({float(row["temp_F"]) for row in rows("emc_table_4_2.csv")}))
def test_equilibrium_moisture_meets_every_cell_of_the_handbook_table(temp_f: float) -> None:
    for row in rows("emc_table_4_2.csv"):
        if float(row["temp_F"]) == temp_f:
            got = emc_pct(celsius(temp_f), float(row["rh_percent"]) / 100.0)
            assert got == pytest.approx(float(row["emc_percent"]), abs=0.1), row


# The Handbook prints Eq. (4-5) for both scales; the sets agree within 0.013 % of moisture.
@pytest.mark.parametrize("rh", [0.1, 0.3, 0.5, 0.65, 0.8, 0.9])
@pytest.mark.parametrize("temp_f", [40.0, 70.0, 100.0])
def test_the_celsius_constants_agree_with_the_handbooks_fahrenheit_constants(
    temp_f: float, rh: float
) -> None:
    fahrenheit = {
        row["parameter"]: sum(
            float(row[column]) * temp_f**power
            for power, column in enumerate(("c0", "c1_per_degree", "c2_per_degree_squared"))
        )
        for row in rows("emc_equation_4_5.csv")
        if row["temperature_unit"] == "F"
    }
    w, kh = fahrenheit["W"], fahrenheit["K"] * rh
    k1, k2 = fahrenheit["K1"], fahrenheit["K2"]
    by_fahrenheit = (
        1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))
    )
    assert emc_pct(celsius(temp_f), rh) == pytest.approx(by_fahrenheit, abs=0.02)


# A sister species' coefficient is printed for these (FPL-GTR-190 Tables 4-3 and 13-5): no link to be had.
LENT = {"Ash, green", "Birch, sweet", "Elm, cedar", "Maple, black"}


def test_total_shrinkage_gives_the_printed_coefficient_of_every_wood_in_both_tables() -> None:
    shrinkage = {row["species"]: row for row in rows("shrinkage_table_4_3.csv")}
    compared = 0
    for row in rows("dimensional_change_table_13_5.csv"):
        wood = shrinkage.get(row["species"])
        if wood is None or row["species"] in LENT or row["read_as"] != "read":
            continue
        for total, coefficient in (
            ("radial_percent_green_to_ovendry", "CR_per_percent_mc"),
            ("tangential_percent_green_to_ovendry", "CT_per_percent_mc"),
        ):
            got = change_per_pct(float(wood[total]))
            assert got == pytest.approx(float(row[coefficient]), abs=0.6e-5), (row["species"], total)
            compared += 1
    assert compared >= 70


def test_a_board_moves_by_its_printed_coefficient_for_each_percent_of_moisture() -> None:
    # FPL-GTR-190 ch. 13: dD = D·C·(Mf − Mi); white oak, tangential 0.00365 per percent (Table 13-5).
    oak = next(
        row for row in rows("dimensional_change_table_13_5.csv") if row["species"] == "White oak, commercial"
    )
    assert movement_mm(1000.0, float(oak["CT_per_percent_mc"]), 8.0, 9.0) == pytest.approx(3.65)
    assert movement_mm(1000.0, float(oak["CT_per_percent_mc"]), 9.0, 8.0) == pytest.approx(-3.65)


@pytest.mark.parametrize(("thick_mm", "share"), [(20.0, 0.5), (20.0, 0.9), (45.0, 0.97)])
def test_a_board_comes_to_the_moisture_of_its_room_as_diffusion_solved_step_by_step(
    thick_mm: float, share: float
):
    """Fick's second law in small steps (explicit, 80 layers), which shares nothing with the series."""
    water, layers, speed = np.zeros(80), 80, 1e-10
    step_m = thick_mm / 1000.0 / layers
    step_s = 0.4 * step_m**2 / speed
    seconds = 0.0
    while water.mean() < share:
        padded = np.concatenate(([2.0 - water[0]], water, [2.0 - water[-1]]))
        water = water + 0.4 * (padded[2:] - 2.0 * water + padded[:-2])
        seconds += step_s
    assert settling_days(thick_mm, share, speed) == pytest.approx(seconds / 86_400.0, rel=0.02)
