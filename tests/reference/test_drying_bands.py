"""Drying against the published bands that could be read; every error is stated, none is fitted away."""

import csv
import math
from pathlib import Path

import pytest

from refettle.physics.drying import stage_hours
from refettle.physics.rates import chemistry_rate, evaporation_rate, relative_evaporation

DATA = Path(__file__).parent / "data"
PA_PER_MMHG = 133.322


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


BANDS = rows("two_pack_recoat.csv")
"""Unified Facilities Guide Specification 09 97 series: aliphatic two-pack polyurethane over itself."""


def middle_c(band: dict[str, str]) -> float:
    return ((float(band["low_f"]) + float(band["high_f"])) / 2.0 - 32.0) / 1.8


def error(stage: str, band: dict[str, str]) -> float:
    """Return model over printed figure, less one; the 71–80 °F band is the one anchor."""
    anchor = BANDS[1]
    label = (middle_c(anchor), middle_c(anchor))
    got = stage_hours("crosslinked", stage, float(anchor[f"{stage}_h"]), middle_c(band), 0.50, label_c=label)
    return got / float(band[f"{stage}_h"]) - 1.0


NEAR = 0.05
"""How far the stated error itself may be off [1]: a better model must state its new error, a worse one fails."""


@pytest.mark.parametrize(
    ("place", "stated"), [(0, 0.11), (1, 0.0), (2, 0.05), (3, -0.01), (4, 0.06), (5, 0.53)]
)
def test_the_error_on_every_printed_earliest_recoat_of_the_two_pack_is_as_stated(
    place: int, stated: float
) -> None:
    # Printed 8, 6, 4, 3, 2, 1 h from 16–21 to 44–49 °C; the hottest is beyond any workshop, on the careful side.
    assert error("recoat_from", BANDS[place]) == pytest.approx(stated, abs=NEAR)


@pytest.mark.parametrize(
    ("place", "stated"), [(0, 0.50), (1, 0.0), (2, -0.08), (3, -0.52), (4, -0.32), (5, 1.94)]
)
def test_the_error_on_every_printed_latest_recoat_of_the_two_pack_is_as_stated(
    place: int, stated: float
) -> None:
    # Printed 48, 48, 36, 24, 12, 2 h. Coldest: the print caps the window, the model lengthens it. From 35 °C on the
    # model halves it at once, so 33–38 °C (its middle just past 35) closes early; 44–49 °C is called open too long.
    assert error("recoat_until", BANDS[place]) == pytest.approx(stated, abs=NEAR)


def test_without_the_halving_above_35_degrees_the_hottest_window_would_be_six_times_too_long() -> None:
    # The same print: 2 h at 44–49 °C. Chemistry alone is off by +488 %, which is why the window is halved there.
    warm = middle_c(BANDS[1])
    alone = 48.0 / chemistry_rate(middle_c(BANDS[5]), label_c=(warm, warm))
    assert alone / 2.0 - 1.0 == pytest.approx(4.88, abs=NEAR)


# Unified Facilities Guide Specification 09 97 series: pot life halves per +10 °C, doubles per −10 °C, from 21 °C.
@pytest.mark.parametrize(("temp_c", "ruled", "stated"), [(31.0, 2.0, -0.02), (11.0, 0.5, -0.03)])
def test_the_error_on_the_pot_life_rule_is_as_stated(temp_c: float, ruled: float, stated: float) -> None:
    assert chemistry_rate(temp_c, label_c=(21.0, 21.0)) / ruled - 1.0 == pytest.approx(stated, abs=0.01)


# Measured activation energies of a tin-catalysed fluorinated two-pack polyurethane, 15–45 °C (coatings notes R23):
# from 23 to 15 °C it takes 1.39 to 1.49 times as long, at 45 °C 0.44 to 0.37.
@pytest.mark.parametrize(
    ("measured_j_mol", "temp_c", "stated"),
    [(29_300.0, 15.0, 0.26), (35_600.0, 15.0, 0.18), (29_300.0, 45.0, -0.44), (35_600.0, 45.0, -0.33)],
)
def test_the_error_on_a_tin_catalysed_two_pack_is_as_stated(
    measured_j_mol: float, temp_c: float, stated: float
) -> None:
    longer = math.exp(measured_j_mol / 8.314462618 * (1 / (temp_c + 273.15) - 1 / 296.15))
    got = 1.0 / chemistry_rate(temp_c, label_c=(23.0, 23.0))
    assert got / longer - 1.0 == pytest.approx(stated, abs=0.02)


# Wood Science and Technology 56 (2022) 743: water-borne on balsa, 60 °C, 40 % RH, surface dry after 573 s; its air
# speed is not told. From the 0.75 h of the class at 23 °C, 50 %.
@pytest.mark.parametrize(("air_m_s", "stated"), [(0.1, 0.81), (1.0, -0.23), (3.0, -0.54)])
def test_the_error_on_a_waterborne_film_in_an_oven_is_as_stated(air_m_s: float, stated: float) -> None:
    got_s = stage_hours("waterborne", "touch", 0.75, 60.0, 0.40, air_m_s, label_c=(23.0, 23.0)) * 3600.0
    assert got_s / 573.0 - 1.0 == pytest.approx(stated, abs=NEAR)


EVAPORATION = {row["liquid"]: row for row in rows("relative_evaporation.csv")}
"""A published list of relative rates (n-butyl acetate 1). Its mineral spirits are a blend with no one pressure."""


def evaporation_error(liquid: str) -> float:
    """Return the rule over the published rate, less one."""
    row = EVAPORATION[liquid]
    reference_pa = float(EVAPORATION["n-butyl acetate"]["vapour_pressure_20c_mmhg"]) * PA_PER_MMHG
    got = relative_evaporation(
        float(row["vapour_pressure_20c_mmhg"]) * PA_PER_MMHG, float(row["molar_mass_g_mol"]), reference_pa
    )
    return got / float(row["published_rate"]) - 1.0


@pytest.mark.parametrize(
    ("liquid", "stated"),
    [
        ("acetone", 0.35), ("methyl ethyl ketone", -0.02), ("ethanol", 0.05), ("xylene", 0.15), ("water", -0.24),
        ("n-butyl acetate", -0.16),
    ],
)  # fmt: skip
def test_the_error_on_every_published_evaporation_rate_is_as_stated(liquid: str, stated: float) -> None:
    assert evaporation_error(liquid) == pytest.approx(stated, abs=0.03)


def test_over_all_liquids_the_rule_is_unbiased_and_scatters_by_a_fifth() -> None:
    # Stated: scatter of a factor 1.20 about no bias, once the raw ratio is taken times 0.84.
    logs = [math.log(1.0 + evaporation_error(liquid)) for liquid in EVAPORATION]
    mean = sum(logs) / len(logs)
    assert math.exp(mean) == pytest.approx(1.0, abs=NEAR)
    assert math.exp(math.sqrt(sum((log - mean) ** 2 for log in logs) / (len(logs) - 1))) == pytest.approx(
        1.20, abs=NEAR
    )


# Heats of vaporisation 38 (toluene) to 51 kJ/mol (decane): the span of real solvents at 10 and 30 °C
# relative to 23 °C ("What the evidence says", computed from open property tables).
@pytest.mark.parametrize(("temp_c", "low", "high"), [(10.0, 0.38, 0.49), (30.0, 1.43, 1.62)])
@pytest.mark.parametrize("carrier", ["alcohol", "strong", "spirits"])
def test_solvents_leave_with_warmth_as_real_solvents_do(
    carrier: str, temp_c: float, low: float, high: float
) -> None:
    assert low <= evaporation_rate(carrier, temp_c, 0.50, label_c=(23.0, 23.0)) <= high


# Between a film that does not cool (vapour pressure deficit alone) and one that cools to the wet bulb
# ("Comparison with readable data", form uncertainty of the water drive at 50 % RH).
@pytest.mark.parametrize(("temp_c", "low", "high"), [(10.0, 0.44, 0.70), (30.0, 1.15, 1.51)])
def test_water_leaves_between_the_isothermal_and_the_wet_bulb_rule(
    temp_c: float, low: float, high: float
) -> None:
    assert low < evaporation_rate("water", temp_c, 0.50, label_c=(23.0, 23.0)) < high
