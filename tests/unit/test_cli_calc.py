"""Small sums against published tables, and what cannot be read."""

import json
from importlib.resources import files
from typing import Any

import jsonschema
import psychrolib
import pytest

from refettle.cli import main

psychrolib.SetUnitSystem(psychrolib.SI)


def sums(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, float]:
    assert main(["calc", *words, "--json"]) == 0
    made: dict[str, Any] = json.loads(capsys.readouterr().out)
    jsonschema.validate(
        made, json.loads(files("refettle.cli").joinpath("calc.schema.json").read_text("utf-8"))
    )
    values: dict[str, float] = made["values"]
    return values


@pytest.mark.parametrize(
    ("air", "pct"),
    [("21.1 C, 50 %", 9.2), ("70 F, 65 %", 12.0), ("-1.1 C, 30 %", 6.3), ("32.2 C, 80 %", 15.4)],
)
def test_wood_moisture_is_that_of_the_handbook(air: str, pct: float, capsys: pytest.CaptureFixture[str]):
    """Wood Handbook (FPL-GTR-282), Table 4-2, to its one decimal; as kept in ``tests/reference/data``."""
    assert sums(capsys, "moisture", air)["moisture_pct"] == pytest.approx(pct, abs=0.15)


def test_a_board_from_a_damp_shed_takes_weeks(capsys: pytest.CaptureFixture[str]):
    """Common practice, no source: 20 mm boards take weeks; four times as long at twice the thickness."""
    thin, thick = sums(capsys, "settle", "20 mm"), sums(capsys, "settle", "40 mm")
    assert 3 < thin["days_low_d"] < 14 < thin["days_high_d"] < 60
    assert thick["days_low_d"] == pytest.approx(4 * thin["days_low_d"], rel=1e-3)
    assert main(["calc", "settle", "20 mm"]) == 0
    assert "5 days to 5 weeks" in capsys.readouterr().out
    for slip, said in (("1 m", "1000 mm is no board"), ("x", "is not a length")):
        assert main(["calc", "settle", slip]) == 2
        assert said in capsys.readouterr().err


@pytest.mark.parametrize(("temp", "rh"), [(5, 90), (12, 80), (20, 50), (28, 35)])
def test_the_dew_point_is_that_of_a_psychrometric_library(
    temp: int, rh: int, capsys: pytest.CaptureFixture[str]
):
    """Against psychrolib (ASHRAE 2017)."""
    expected = psychrolib.GetTDewPointFromRelHum(float(temp), rh / 100)
    assert sums(capsys, "dew", f"{temp} C, {rh} %")["dew_point_c"] == pytest.approx(expected, abs=0.1)


def test_film_and_litres_are_identities(capsys: pytest.CaptureFixture[str]):
    film = sums(capsys, "film", "75 um", "34 %")
    assert film["dry_um"] == pytest.approx(25.5)
    assert film["spread_m2_l"] == pytest.approx(1000 / 75, rel=1e-3)
    assert sums(capsys, "cover", "2 m2", "2", "75 um", "34 %")["litres_l"] == pytest.approx(
        2 * 2 * 0.075 / 0.95 + 0.05, rel=1e-3
    )


def test_a_sequence_of_grits_begins_and_ends_where_it_should(capsys: pytest.CaptureFixture[str]):
    assert main(["calc", "grits", "P80", "P220"]) == 0
    shown = capsys.readouterr().out
    assert shown.startswith("P80 → ")
    assert "P220\n" in shown
    assert "Source: FEPA" in shown


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["weight"], '"weight" is no sum – name one of moisture, settle, dew'),
        (["dew"], "0 values were given, 1 needed"),
        (["dew", "warm"], "calc dew"),
        (["film", "75 um"], "1 value was given, 2 needed"),
        (["film", "lots", "34 %"], "calc film"),
        (["grits", "P220", "P80"], "no sequence of P grits leads from P220 to P80"),
        (["film", "0 um", "34 %"], "calc film"),
    ],
)
def test_what_cannot_be_worked_out_says_what_is_needed(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
):
    assert main(["calc", *words]) == 2
    assert said in " ".join(capsys.readouterr().err.split())
