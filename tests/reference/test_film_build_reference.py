"""Film build, spread and drying times of the classes against printed figures."""

import csv
from pathlib import Path

import pytest

from refettle.files.tables import load_knowledge
from refettle.physics.film import cut_solids_vol, cut_voc_g_l, dry_film_um, spread_m2_per_l

DATA = Path(__file__).parent / "data"
KNOW = load_knowledge()
CLASSES = KNOW.ids("film")
M2_L_PER_FT2_GAL = 0.024542
UM_PER_MIL = 25.4
FIRST_COAT_FACTOR = (
    1.55  # Gardner (1911), 38 formulas on white pine: second coat spreads 1.55 times the first
)

LAID_FILMS = tuple(
    id_ for id_ in CLASSES if KNOW.film(id_).dry_um > 0 and "old" not in KNOW.film(id_).role[:1]
)
FREE_FILMS = tuple(id_ for id_ in LAID_FILMS if not KNOW.film(id_).wiped_off)


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def ranges_of_other_sources(subject: str, prop: str, source: str) -> list[tuple[float, float]]:
    """Ranges that a printed figure can be held against: not those of the row it came from."""
    return [
        (row.low, row.high)
        for row in KNOW.rows(subject, prop)
        if row.source != source and row.low is not None and row.high is not None and not row.superseded_by
    ]


# Identity: DFT = WFT x VS. Defaults are round numbers, so a twentieth is allowed.
@pytest.mark.parametrize("id_", FREE_FILMS)
def test_dry_film_is_wet_film_times_volume_solids(id_: str) -> None:
    film = KNOW.film(id_)
    assert film.dry_um == pytest.approx(dry_film_um(film.wet_um, film.solids_vol), rel=0.05)


@pytest.mark.parametrize("id_", [id_ for id_ in CLASSES if KNOW.film(id_).wiped_off])
def test_a_wiped_class_leaves_no_more_than_it_was_given(id_: str) -> None:
    film = KNOW.film(id_)
    assert film.dry_um <= film.wet_um * film.solids_vol * 1.1


# Identity: A/V = 1000 x VS / DFT = 1000 / WFT.
@pytest.mark.parametrize("id_", FREE_FILMS)
def test_spread_rate_is_a_thousand_through_the_wet_film(id_: str) -> None:
    film = KNOW.film(id_)
    assert spread_m2_per_l(film.dry_um, film.solids_vol) == pytest.approx(1000.0 / film.wet_um, rel=0.05)


# Printed US form: ft2/gal = 1604 x VS / DFT[mil].
@pytest.mark.parametrize("id_", FREE_FILMS)
def test_spread_rate_agrees_with_the_printed_us_constant(id_: str) -> None:
    film = KNOW.film(id_)
    printed = 1604.0 * film.solids_vol / (film.dry_um / UM_PER_MIL) * M2_L_PER_FT2_GAL
    assert spread_m2_per_l(film.dry_um, film.solids_vol) == pytest.approx(printed, rel=0.001)


@pytest.mark.parametrize("row", rows("film_class_build.csv"), ids=lambda row: row["class"])
def test_solids_and_films_are_those_of_the_class_table(row: dict[str, str]) -> None:
    film = KNOW.film(row["class"])
    assert float(row["solids_low_pct"]) <= 100.0 * film.solids_vol <= float(row["solids_high_pct"])
    assert film.wet_um == float(row["wet_um"])
    assert film.dry_um == pytest.approx(float(row["dry_um"]), abs=0.5)


# A pound of resin adds about a tenth of a gallon to the alcohol (coatings-R2): 2-lb cut 16.7 %, 658 g/L.
@pytest.mark.parametrize("id_", ["shellac-waxed", "shellac-dewaxed", "shellac-unstated"])
def test_shellac_is_the_two_pound_cut_and_ranges_from_one_to_three(id_: str) -> None:
    low, likely, high = KNOW.range_of(f"film:{id_}", "solids_vol")
    assert (low, likely, high) == pytest.approx(tuple(cut_solids_vol(cut) for cut in (1, 2, 3)), abs=0.001)
    low, likely, high = KNOW.range_of(f"film:{id_}", "voc_g_l")
    assert (low, likely, high) == pytest.approx(tuple(cut_voc_g_l(cut) for cut in (3, 2, 1)), abs=1.0)


@pytest.mark.parametrize(
    "row", rows("film_spreading_rates.csv"), ids=lambda row: f"{row['class']}-{row['source']}"
)
def test_printed_spreading_rates_fit_the_wet_film_of_the_class(row: dict[str, str]) -> None:
    low, likely, high = KNOW.range_of(f"film:{row['class']}", "wet_um")
    thick = 1000.0 / (float(row["low_ft2_gal"]) * M2_L_PER_FT2_GAL)
    thin = 1000.0 / (float(row["high_ft2_gal"]) * M2_L_PER_FT2_GAL)
    if row["coat"] == "later":
        assert low <= thin
        assert thick <= high
    else:
        assert thin <= likely * FIRST_COAT_FACTOR <= thick


@pytest.mark.parametrize("id_", CLASSES)
def test_the_stages_of_drying_come_in_their_order(id_: str) -> None:
    film = KNOW.film(id_)
    stages = (film.touch_h, film.recoat_from_h, film.sand_h, film.wrap_h, film.cured_h)
    assert stages == tuple(sorted(stages))
    if film.recoat_until_h > 0:
        assert film.recoat_from_h <= film.recoat_until_h
        # a primer is dull and open: it may be painted long after it has cured; a glossy film may not
        assert "prime" in film.role or film.recoat_until_h <= film.cured_h


@pytest.mark.parametrize("id_", LAID_FILMS)
@pytest.mark.parametrize("end", [0, 2], ids=["low", "high"])
def test_the_quickest_and_slowest_of_a_class_keep_that_order_too(id_: str, end: int) -> None:
    names = ("touch_h", "recoat_from_h", "wrap_h", "cured_h")
    own = [
        next(row for row in KNOW.rows(f"film:{id_}", name) if row.source == "common-practice")
        for name in names
    ]
    stages = [row.low if end == 0 else row.high for row in own]
    assert None not in stages
    assert stages == sorted(stages, key=lambda hours: hours or 0.0)


# Printed drying times, each held against the ranges of the other sources of the same class. One observer
# of coatings-R4 had linseed dry only by day 10: beyond our 90 %, and kept as the upper end of that row.
@pytest.mark.parametrize(
    "row", rows("film_class_times.csv"), ids=lambda row: f"{row['property']}-{row['source']}-{row['low']}"
)
def test_printed_times_lie_within_our_low_and_high(row: dict[str, str]) -> None:
    for id_ in row["classes"].split(";"):
        held_against = ranges_of_other_sources(f"film:{id_}", row["property"], row["source"])
        assert held_against
        assert any(low <= float(row["low"]) and float(row["high"]) <= high for low, high in held_against), (
            f"{id_}: {held_against}"
        )


# Army manual (coatings-R7): nothing below 10 C; defence handbook (coatings-R8): most paints from 7 C;
# Wood Handbook ch. 16: oil-alkyd from 4 C, waterborne latex from 10 C; coatings-R48: never above 85 % RH.
@pytest.mark.parametrize("id_", LAID_FILMS)
def test_no_class_may_be_laid_in_colder_or_damper_air_than_the_manuals_allow(id_: str) -> None:
    film = KNOW.film(id_)
    coldest = 4.0 if film.cure_oxidative > 0 else 10.0
    assert film.min_c >= coldest
    assert film.rh_max <= 0.85
    assert film.max_c <= 32.0


def test_the_published_minimum_for_oil_alkyd_lies_in_our_range() -> None:
    low, likely, high = KNOW.range_of("film:alkyd-enamel", "min_c")
    assert low <= 4.0 <= likely <= 10.0 <= high
