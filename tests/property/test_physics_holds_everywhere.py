"""What must hold of the physics for any air, film and sequence in range."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from refettle.physics.abrasives import GRAIN_UM, is_valid_sequence, removed_um
from refettle.physics.air import dew_margin_k, dew_point_c, saturation_pa
from refettle.physics.drying import FAMILIES, STAGES, progress_rate, stage_hours
from refettle.physics.film import dry_film_um, litres_to_buy, spread_m2_per_l, thinned_solids_vol, wet_film_um
from refettle.physics.moisture import emc_pct, movement_mm
from refettle.physics.rates import CARRIERS

TEMPS_C = st.floats(-10.0, 60.0)
HUMIDITIES = st.floats(0.0, 1.0)
SPEEDS_M_S = st.floats(0.0, 5.0)
RATIOS = st.floats(0.2, 5.0)
FILMS_UM = st.floats(1.0, 400.0)
SHARES = st.floats(0.05, 1.0)
WORDS = {
    "family": st.sampled_from(FAMILIES),
    "stage": st.sampled_from(STAGES),
    "carrier": st.sampled_from(CARRIERS),
}
ROUNDING = 1.0 - 1e-9


@given(**WORDS, temp_c=TEMPS_C, rh_a=HUMIDITIES, rh_b=HUMIDITIES, air_m_s=SPEEDS_M_S)
def test_damper_air_never_dries_any_coat_faster(
    family: str, stage: str, carrier: str, temp_c: float, rh_a: float, rh_b: float, air_m_s: float
) -> None:
    dry, damp = sorted((rh_a, rh_b))
    in_dry = progress_rate(family, stage, temp_c, dry, air_m_s, carrier=carrier)
    in_damp = progress_rate(family, stage, temp_c, damp, air_m_s, carrier=carrier)
    assert in_damp * ROUNDING <= in_dry


@given(
    stage=st.sampled_from(("touch", "recoat_from", "sand", "cured")), temp_c=TEMPS_C, rh=st.floats(0.0, 0.9)
)
def test_distinctly_damper_air_dries_a_waterborne_coat_slower(stage: str, temp_c: float, rh: float) -> None:
    dry = progress_rate("waterborne", stage, temp_c, rh)
    assert progress_rate("waterborne", stage, temp_c, rh + 0.05) < dry


@given(**WORDS, temp_a=TEMPS_C, temp_b=TEMPS_C, rh=HUMIDITIES)
def test_warmer_air_never_dries_slower(
    family: str, stage: str, carrier: str, temp_a: float, temp_b: float, rh: float
) -> None:
    cold, warm = sorted((temp_a, temp_b))
    in_cold = progress_rate(family, stage, cold, rh, carrier=carrier, min_c=10.0)
    assert in_cold * ROUNDING <= progress_rate(family, stage, warm, rh, carrier=carrier, min_c=10.0)


@given(
    **WORDS, temp_c=TEMPS_C, rh=HUMIDITIES, slow=SPEEDS_M_S, fast=SPEEDS_M_S, ratio_a=RATIOS, ratio_b=RATIOS
)
def test_a_thinner_film_in_livelier_air_never_dries_slower(
    family: str, stage: str, carrier: str, temp_c: float, rh: float,
    slow: float, fast: float, ratio_a: float, ratio_b: float,
) -> None:  # fmt: skip
    slow, fast = sorted((slow, fast))
    thin, thick = sorted((ratio_a, ratio_b))
    worse = progress_rate(family, stage, temp_c, rh, slow, thick, carrier=carrier)
    assert worse * ROUNDING <= progress_rate(family, stage, temp_c, rh, fast, thin, carrier=carrier)


@given(**WORDS, hours=st.floats(0.1, 500.0), temp_c=TEMPS_C, rh=st.floats(0.0, 0.95))
def test_hours_times_rate_make_up_the_labels_hours(
    family: str, stage: str, carrier: str, hours: float, temp_c: float, rh: float
) -> None:
    took = stage_hours(family, stage, hours, temp_c, rh, carrier=carrier)
    assert took * progress_rate(family, stage, temp_c, rh, carrier=carrier) == pytest.approx(hours)


@given(wet=FILMS_UM, solids=SHARES)
def test_wet_and_dry_film_invert_each_other(wet: float, solids: float) -> None:
    assert wet_film_um(dry_film_um(wet, solids), solids) == pytest.approx(wet)


@given(wet=FILMS_UM, solids=SHARES, thinner=st.floats(0.0, 1.0))
def test_spread_is_the_same_by_wet_film_and_by_dry_film_thinned_or_not(
    wet: float, solids: float, thinner: float
) -> None:
    thinned = thinned_solids_vol(solids, thinner)
    assert spread_m2_per_l(dry_film_um(wet, thinned), thinned) == pytest.approx(1000.0 / wet)


@given(area=st.floats(0.1, 50.0), film=FILMS_UM, solids=SHARES, stays=SHARES, coats=st.integers(1, 6))
def test_litres_bought_lay_the_dry_film_that_was_asked_for(
    area: float, film: float, solids: float, stays: float, coats: int
) -> None:
    litres = litres_to_buy(area, film, solids, coats=coats, transfer_efficiency=stays)
    laid_um = litres * stays * solids * 1000.0 / area
    assert laid_um == pytest.approx(film * coats)


@given(temp_c=st.floats(-20.0, 50.0), rh=st.floats(0.05, 1.0))
def test_air_cooled_to_its_dew_point_is_saturated(temp_c: float, rh: float) -> None:
    dew = dew_point_c(temp_c, rh)
    assert dew <= temp_c + 1e-9
    if dew >= -30.0:
        vapour_pa = rh * saturation_pa(temp_c)
        if dew > 0.02:  # solved to 0.001 K, in which the pressure changes by less than 0.01 %
            assert saturation_pa(dew) == pytest.approx(vapour_pa, rel=2e-4)
        else:  # frost falls at a warmer point than dew would
            assert saturation_pa(dew) >= vapour_pa * (1.0 - 2e-4) or dew == temp_c
        assert dew_margin_k(dew, temp_c, rh) == pytest.approx(0.0)


@given(temp_c=st.floats(-10.0, 60.0), rh_a=HUMIDITIES, rh_b=HUMIDITIES)
def test_wood_in_damper_air_is_never_drier(temp_c: float, rh_a: float, rh_b: float) -> None:
    dry, damp = sorted((rh_a, rh_b))
    assert emc_pct(temp_c, dry) <= emc_pct(temp_c, damp) + 1e-9


@given(
    size=st.floats(1.0, 3000.0),
    change=st.floats(0.0005, 0.006),
    low=st.floats(4.0, 14.0),
    high=st.floats(4.0, 14.0),
)
def test_wood_that_swells_shrinks_back_by_as_much(
    size: float, change: float, low: float, high: float
) -> None:
    assert movement_mm(size, change, low, high) == pytest.approx(-movement_mm(size, change, high, low))


@given(grits=st.lists(st.sampled_from([grade for grade in GRAIN_UM if grade >= 60]), min_size=1, max_size=5))
def test_a_valid_sequence_gets_finer_all_the_way_and_each_grit_more_costs_wood(grits: list[int]) -> None:
    if is_valid_sequence(tuple(grits)):
        assert grits == sorted(set(grits))
    assert removed_um(tuple(grits)) <= removed_um((60, *grits))
