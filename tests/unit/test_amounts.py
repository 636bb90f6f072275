"""Amounts as people write them."""

import pytest

from refettle.files import amounts
from refettle.files.amounts import Unclear


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("60 cm", 600.0), ("60cm", 600.0), ("0.6 m", 600.0), ("24 in", 609.6), ('24"', 609.6),
        ("24 1/2 in", 622.3), ("1-1/2 in", 38.1), ("3/4 in", 19.05), ("2 ft", 609.6), ("2 ft 6 in", 762.0),
        ("5' 6\"", 1676.4), ("0,7 m", 700.0), ("1200 mm", 1200.0),
    ],
)  # fmt: skip
def test_a_length_is_read_in_its_unit(text: str, mm: float):
    assert amounts.length_mm(text) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "what", "do"),
    [
        ("24", '"24" has no unit', "name the unit (mm, cm, m, in, ft), e.g. 60 cm"),
        ("1,200 mm", 'the comma in "1,200 mm" can be read two ways', "write it with a point, e.g. 60 cm"),
        ("12 kg", '"kg" is not a unit of length', "use one of mm, cm, m, in, ft, e.g. 60 cm"),
        ("wide", '"wide" is not a length', "write a number and a unit (mm, cm, m, in, ft), e.g. 60 cm"),
        ("-3 cm", '"-3 cm" is below zero', "write a length above zero, e.g. 60 cm"),
        ("0 cm", '"0 cm" is no length', "write a length above zero, e.g. 60 cm"),
        ("3/0 in", '"3/0 in" is not a length', "write a number and a unit (mm, cm, m, in, ft), e.g. 60 cm"),
        ("2 ft 6 kg", '"2 ft 6 kg" is not a length', "write feet and inches, e.g. 2 ft 6 in"),
    ],
)
def test_an_unclear_length_says_what_to_write(text: str, what: str, do: str):
    assert amounts.length_mm(text) == Unclear(what=what, do=do)


def test_us_liquid_measures_are_exact():
    # a US gallon is 231 cubic inches: NIST Special Publication 811 (2008), appendix B
    assert amounts.volume_l("1 gal") == pytest.approx(3.785411784, abs=1e-9)
    assert amounts.volume_l("1 qt") == pytest.approx(0.946352946, abs=1e-9)
    assert amounts.volume_l("1 pt") == pytest.approx(0.473176473, abs=1e-9)
    assert amounts.volume_l("1 fl oz") == pytest.approx(0.0295735295625, abs=1e-9)


def test_areas_films_and_times_are_read():
    assert amounts.area_m2("9 sq ft") == pytest.approx(0.83612736, abs=1e-9)
    assert amounts.area_m2("0.8 m²") == 0.8
    assert amounts.film_um("3 mil") == pytest.approx(76.2)
    assert amounts.film_um("80 µm") == 80.0
    assert amounts.time_h("30 min") == 0.5
    assert amounts.time_h("1 week") == 168.0


def test_a_bare_time_asks_for_its_unit():
    assert amounts.time_h("4") == Unclear(
        what='"4" has no unit', do="name the unit (min, h, day, week), e.g. 4 h"
    )


@pytest.mark.parametrize(
    ("text", "celsius"), [("12 C", 12.0), ("12 °C", 12.0), ("50 F", 10.0), ("-4 °F", -20.0)]
)
def test_a_temperature_is_read_in_its_scale(text: str, celsius: float):
    assert amounts.temp_c(text) == celsius


@pytest.mark.parametrize(
    ("text", "what", "do"),
    [
        ("12", '"12" has no unit', "write degrees with C or F, e.g. 12 C"),
        ("cold", '"cold" is not a temperature', "write degrees with C or F, e.g. 12 C"),
        ("400 C", '"400 C" is no air to work in', "write a temperature between -40 C and 60 C"),
    ],
)
def test_an_unclear_temperature_says_what_to_write(text: str, what: str, do: str):
    assert amounts.temp_c(text) == Unclear(what=what, do=do)


def test_a_share_is_a_percentage_or_a_fraction():
    assert amounts.share("30 %") == 0.3
    assert amounts.share("30%") == 0.3
    assert amounts.share("0.3") == 0.3
    assert amounts.share("30") == Unclear(what='"30" has no unit', do="write 30 % or a number from 0 to 1")
    assert amounts.share("130 %") == Unclear(
        what='"130 %" is outside 0 % to 100 %', do="write a percentage from 0 % to 100 %"
    )
    assert amounts.share("most") == Unclear(
        what='"most" is not a share', do="write a percentage or a number from 0 to 1, e.g. 30 %"
    )


def test_a_grit_needs_its_system():
    assert amounts.grit("P180") == 180
    assert amounts.grit("180") == Unclear(
        what='"180" names no grit in the P system',
        do="write the number on the back of the sheet with its P, e.g. P180",
    )
    assert amounts.grit("P9") == Unclear(
        what='"P9" names no grit in the P system',
        do="write the number on the back of the sheet with its P, e.g. P180",
    )
    assert amounts.grit("P5000") == Unclear(
        what='"P5000" is no grit that is made', do="write a number from P12 to P2500"
    )


def test_money_has_no_sign_and_runs_upwards():
    assert amounts.money_range("180-240") == (180.0, 240.0)
    assert amounts.money_range("180 to 240") == (180.0, 240.0)
    assert amounts.money_range("200") == (200.0, 200.0)
    assert amounts.money_range("240-180") == Unclear(
        what='"240-180" runs downwards', do="write the lower sum first, e.g. 180-240"
    )
    assert amounts.money("40 coins") == Unclear(
        what='"40 coins" is not a sum of money',
        do="write the number alone, e.g. 40; the currency stands in the workshop file",
    )


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("1930s", (1930, 1939)), ("1934", (1934, 1934)), ("about 1900", (1890, 1910)),
        ("c. 1900", (1890, 1910)),
        ("1925-1940", (1925, 1940)), ("1925 to 1940", (1925, 1940)), ("unknown", None),
    ],
)  # fmt: skip
def test_a_time_of_making_is_a_span_of_years(text: str, span: tuple[int, int] | None):
    assert amounts.years(text) == span


@pytest.mark.parametrize(
    ("text", "what", "do"),
    [
        ("1900s", '"1900s" may be ten years or a hundred', "write 1900-1909 or 1900-1999"),
        ("1940-1925", '"1940-1925" runs downwards', "write the earlier year first, e.g. 1925-1940"),
        ("old", '"old" is no time that can be read', "write 1930s, 1934, about 1900, 1925-1940 or unknown"),
        (
            "1935s",
            '"1935s" is no time that can be read',
            "write 1930s, 1934, about 1900, 1925-1940 or unknown",
        ),
    ],
)
def test_an_unclear_time_of_making_says_what_to_write(text: str, what: str, do: str):
    assert amounts.years(text) == Unclear(what=what, do=do)


def test_counts_are_whole():
    assert amounts.count("3") == 3
    assert amounts.whole("0") == 0
    assert amounts.count("0") == Unclear(
        what='"0" is not a whole number from 1 to 100', do="write a whole number, e.g. 2"
    )
    assert amounts.whole("2.5") == Unclear(
        what='"2.5" is not a whole number', do="write a whole number, e.g. 3"
    )
    assert amounts.number("-1") == Unclear(
        what='"-1" is not a plain number of zero or more', do="write a number, e.g. 2.5"
    )


def test_a_long_text_is_cut_in_messages():
    assert amounts.quoted("x" * 60) == '"' + "x" * 40 + '…"'
