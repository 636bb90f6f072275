"""A call outside a formula's range is refused, with the value, the range and the likely slip."""

import math
from collections.abc import Callable

import pytest

from refettle.physics import abrasives, air, drying, film, moisture, rates
from refettle.physics.limits import OutOfRange

SLIPS: tuple[tuple[Callable[[], object], str], ...] = (
    (
        lambda: film.dry_film_um(100.0, 30.0),
        "solids_vol is 30.0, must be above 0, at most 1 m³/m³; a percentage slipped in",
    ),
    (
        lambda: film.wet_film_um(0.0, 0.3),
        "dry_film_um is 0.0, must be above 0, at most 2000 µm; millimetres or mils taken for µm",
    ),
    (
        lambda: film.litres_to_buy(1.0, 30.0, 0.3, transfer_efficiency=50.0),
        "transfer_efficiency is 50.0, must be above 0, at most 1; a percentage slipped in",
    ),
    (
        lambda: film.litres_to_buy(1.0, 30.0, 0.3, coats=0),
        "coats is 0, must be 1 to 20 coats; coats forgotten",
    ),
    (
        lambda: film.solids_vol_from_voc(400.0, 0.78),
        "solvent_g_l is 0.78, must be 600 to 1700 g/L; kg/L taken for g/L",
    ),
    (
        lambda: air.dew_point_c(20.0, 50.0),
        "rh is 50.0, must be above 0, at most 1; a percentage slipped in",
    ),
    (
        lambda: moisture.emc_pct(20.0, 65.0),
        "rh is 65.0, must be 0 to 1; a percentage slipped in",
    ),
    (
        lambda: moisture.movement_mm(600.0, 0.0037, 8.0, 60.0),
        "to_pct is 60.0, must be 0 to 30 %; wetter wood no longer moves",
    ),
    (
        lambda: rates.evaporation_rate("water", 68.0, 0.5),
        "temp_c is 68.0, must be -10 to 60 °C; °F or kelvin taken for °C",
    ),
    (
        lambda: drying.progress_rate("varnish", "touch", 20.0, 0.5),
        ("family is 'varnish', must be one of evaporative, waterborne, oxidative, crosslinked, "
        "wax, stain, dye, filler"),
    ),
    (
        lambda: drying.progress_rate("waterborne", "dry", 20.0, 0.5),
        "stage is 'dry', must be one of touch, recoat_from, recoat_until, sand, wrap, cured",
    ),
    (
        lambda: drying.stage_hours("waterborne", "touch", 1e5, 20.0, 0.5),
        "label_h is 100000.0, must be 0 to 8760 h; minutes taken for hours",
    ),
    (
        lambda: abrasives.removed_um((40, 60)),
        "grits_p is 40, must be 60 to 2000 P; no stock figures for coarser grits",
    ),
)  # fmt: skip


@pytest.mark.parametrize(("call", "text"), SLIPS, ids=[text.split(" is ")[0] for _, text in SLIPS])
def test_a_slip_is_named_with_its_value_range_and_likely_cause(call: Callable[[], object], text: str) -> None:
    with pytest.raises(OutOfRange) as caught:
        call()
    assert str(caught.value) == text


def test_not_a_number_is_out_of_every_range() -> None:
    with pytest.raises(OutOfRange):
        film.dry_film_um(math.nan, 0.3)
    with pytest.raises(OutOfRange):
        moisture.emc_pct(20.0, math.nan)


def test_a_grade_that_is_not_on_the_p_scale_is_refused() -> None:
    with pytest.raises(OutOfRange, match="grit_p is 130, must be one of 40, 50, 60"):
        abrasives.grain_um(130)


def test_a_foil_does_not_dry() -> None:
    with pytest.raises(OutOfRange, match="family is 'foil'"):
        drying.progress_rate("foil", "touch", 20.0, 0.5)
