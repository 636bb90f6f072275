"""Air by the hour: typical days, loggers, weather files, rooms; and waits that follow it."""

from datetime import date

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plan_pieces import facts
from refettle.domain.air import Air
from refettle.domain.airhours import AirHours, HoursFrom, steady
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.air_hours import read_epw, read_logger
from refettle.files.hours_entries import air_of
from refettle.files.workshop_file import read_workshop
from refettle.physics.climate import day_rhs, day_temps_c, indoors
from refettle.planning.effects import drying_rate
from refettle.services.clock import LONGEST_H, DryClock
from refettle.services.free_time import planning_air, windows

COAT = Step(verb="topcoat", what="alkyd-varnish", method="brush")
psychrolib.SetUnitSystem(psychrolib.SI)


def logged(hours: int, temp: str = "10.0", *, skip: range = range(0)) -> str:
    rows = [
        f"2026-10-{1 + hour // 24:02d} {hour % 24:02d}:00,{temp},70"
        for hour in range(hours)
        if hour not in skip
    ]
    return "\n".join(["Time,Temperature (°C),Relative Humidity (%)", *rows])


def test_a_day_runs_from_its_low_to_its_high_and_its_water_stays() -> None:
    """Water in the air by psychrolib: the same at every hour within a hundredth."""
    temps = day_temps_c(4.0, 14.0)
    assert min(temps) == 4.0
    assert max(temps) == 14.0
    rhs = day_rhs(temps, 0.70)
    water = [psychrolib.GetVapPresFromRelHum(t, rh) for t, rh in zip(temps, rhs, strict=True) if rh < 0.985]
    assert max(water) / min(water) == pytest.approx(1.0, abs=0.01)
    assert rhs[5] > rhs[15]


def test_a_garage_follows_late_and_less_and_a_heater_dries() -> None:
    temps = day_temps_c(2.0, 14.0) * 4
    rhs = day_rhs(day_temps_c(2.0, 14.0), 0.75) * 4
    inside, damp = indoors(temps, rhs, lag_h=10.0, air_changes_h=0.6)
    last = slice(72, 96)
    assert max(inside[last]) - min(inside[last]) < 0.6 * 12.0
    assert inside[last].index(max(inside[last])) > temps[last].index(max(temps[last]))
    warm, dry = indoors(temps, rhs, lag_h=10.0, air_changes_h=0.6, heated_to_c=18.0)
    assert min(warm) == 18.0
    assert max(dry) < min(damp)
    assert sum(inside[last]) / 24 == pytest.approx(sum(temps[last]) / 24, abs=0.3)


@pytest.mark.parametrize(
    ("text", "temp"),
    [
        (logged(48), 10.0),
        (logged(48).replace(",", ";").replace("10.0", "10,0"), 10.0),
        (logged(48).replace("(°C)", "(°F)").replace("10.0", "50.0"), 10.0),
        (logged(48).replace("2026-10-01 ", "01.10.2026 ").replace("2026-10-02 ", "02.10.2026 "), 10.0),
        ("Logger 7\nserial 12\n" + logged(48), 10.0),
        (logged(48).replace(",", "\t"), 10.0),
    ],
)
def test_loggers_write_in_many_ways(text: str, temp: float) -> None:
    hours, said = read_logger(text, "log.csv")
    assert said == ()
    assert hours is not None
    assert len(hours.temps_c) == 48
    assert hours.temps_c[7] == pytest.approx(temp)
    assert hours.rhs[7] == pytest.approx(0.70)


def test_gaps_and_odd_rows_are_told_and_nothing_is_lost_in_silence() -> None:
    hours, said = read_logger(logged(72, skip=range(20, 30)), "log.csv")
    assert [finding.code for finding in said] == ["gap"]
    assert hours is not None
    assert len(hours.temps_c) == 72
    broken = logged(48).replace("2026-10-01 05:00,10.0,70", "2026-10-01 05:00,oops,70")
    hours, said = read_logger(broken.replace("2026-10-01 06:00,10.0", "2026-10-01 06:00,400"), "log.csv")
    assert [finding.code for finding in said] == ["row-left-out", "row-left-out"]
    assert [finding.where.line for finding in said] == [7, 8]
    assert hours is not None


@pytest.mark.parametrize(
    ("text", "code"), [("a,b\n1,2\n", "no-columns"), (logged(5), "too-short"), ("", "no-columns")]
)
def test_what_is_no_log_is_refused(text: str, code: str) -> None:
    hours, said = read_logger(text, "log.csv")
    assert hours is None
    assert said[-1].code == code


def epw(rows: int = 8760) -> str:
    head = ["LOCATION,made up"] * 8
    days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    when = [(m + 1, d + 1) for m, n in enumerate(days) for d in range(n)]
    body = []
    for hour in range(rows):
        month, day = when[hour // 24]
        body.append(f"2001,{month},{day},{hour % 24 + 1},60,flags,{month}.0,1.0,{60 + month},98000")
    return "\n".join([*head, *body])


def test_a_weather_file_begins_on_the_day_that_is_named() -> None:
    hours, said = read_epw(epw(), "town.epw", date(2026, 10, 5))
    assert said == ()
    assert hours is not None
    assert len(hours.temps_c) == 8760
    assert (hours.temps_c[0], hours.rhs[0]) == (10.0, 0.70)
    assert hours.temps_c[24 * 27] == 11.0
    assert read_epw(epw(100), "town.epw", date(2026, 10, 5))[1][0].code == "no-epw"


WORKSHOP = """\
workshop: Shed
begins: 2026-10-05
free: {mon: 18:30-21:00, sat: [9:00-12:00, 13:30-17:00]}
not on: [2026-10-12, thursday]
air by the hour:
  day: {low: 4 C, high: 14 C, humidity: 80 %}
  building: unheated garage
"""


def test_free_hours_are_read_and_days_fall_out() -> None:
    shop, said = read_workshop(WORKSHOP, "shed.yaml", facts())
    assert said == ()
    assert shop is not None
    found = [window for window in windows(shop) if window[0] < 24 * 14]
    assert found == [(18.5, 21.0), (129.0, 132.0), (133.5, 137.0), (297.0, 300.0), (301.5, 305.0)]
    assert shop.hours_from == HoursFrom(low_c=4.0, high_c=14.0, rh=0.8, building="unheated garage")


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("free: {mon: 21:00-18:00}", "unclear-amount"),
        ("free: {mon: 25:00-26:00}", "unclear-amount"),
        ("free: {mon: [18:00-20:00, 19:00-21:00]}", "hours-overlap"),
        ("free: {someday: 18:00-20:00}", "unknown-key"),
        ("begins: soon", "unclear-date"),
        ("not on: [2026-13-01]", "unclear-date"),
        ("air by the hour: {building: cellar}", "one-air"),
        ("air by the hour: {logger: a.csv, weather: b.epw}", "one-air"),
        ("air by the hour: {day: {low: 14 C, high: 4 C}}", "one-air"),
    ],
)
def test_hours_that_cannot_be_are_findings(line: str, code: str) -> None:
    shop, said = read_workshop(f"workshop: Shed\n{line}\n", "shed.yaml", facts())
    assert shop is None
    assert code in {finding.code for finding in said}


def test_a_weather_file_without_a_day_to_begin_is_refused() -> None:
    hours, said = air_of(HoursFrom(weather="town.epw"), epw(), "town.epw", "")
    assert hours is None
    assert said[0].code == "no-begin"


def test_plans_are_made_for_the_air_of_the_free_hours() -> None:
    hours = AirHours(temps_c=(5.0,) * 12 + (15.0,) * 12, rhs=(0.9,) * 12 + (0.5,) * 12)
    shop = Workshop(free=((0, 18.0, 20.0), (2, 8.0, 10.0)), hours=hours)
    likely, safe = planning_air(shop)
    assert likely.temp_c == pytest.approx(10.0)
    assert likely.rh == pytest.approx(0.7)
    assert (safe.temp_c, safe.rh) == (5.0, 0.9)


@settings(max_examples=40, deadline=None)
@given(temp=st.floats(12.0, 28.0), rh=st.floats(0.35, 0.7), begin=st.floats(0, 200), wait=st.floats(1, 60))
def test_in_steady_air_a_wait_is_the_planned_one_times_the_rates(
    temp: float, rh: float, begin: float, wait: float
) -> None:
    planned, air = Air(temp_c=20.0, rh=0.5), Air(temp_c=temp, rh=rh)
    clock = DryClock(facts(), steady(air), planned)
    film = facts().film("alkyd-varnish")
    expected = wait * drying_rate(film, planned) / drying_rate(film, air)
    assert clock.over_h(COAT, begin, wait) - begin == pytest.approx(expected, rel=1e-6)


@settings(max_examples=40, deadline=None)
@given(first=st.floats(0, 300), later=st.floats(0, 100), wait=st.floats(0.5, 100))
def test_who_begins_later_is_ready_no_earlier(first: float, later: float, wait: float) -> None:
    temps = tuple(2.0 + 8.0 * (hour % 7) / 3.0 for hour in range(24 * 9))
    clock = DryClock(facts(), AirHours(temps_c=temps, rhs=(0.7,) * len(temps)), Air())
    assert clock.over_h(COAT, first + later, wait) >= clock.over_h(COAT, first, wait) - 1e-9


def test_a_cold_night_counts_less_than_a_warm_day() -> None:
    air = AirHours(temps_c=(22.0,) * 12 + (4.0,) * 12, rhs=(0.5,) * 24)
    clock = DryClock(facts(), air, Air(temp_c=22.0, rh=0.5))
    by_day, by_night = clock.over_h(COAT, 0.0, 8.0), clock.over_h(COAT, 12.0, 8.0) - 12.0
    assert by_day == pytest.approx(8.0, abs=0.01)
    assert by_night > 12.0


def test_a_coat_is_blocked_with_its_reason_until_the_air_is_fit_again() -> None:
    paint = Step(verb="paint", what="acrylic-paint", method="brush")
    air = AirHours(temps_c=(4.0,) * 10 + (16.0,) * 14, rhs=(0.6,) * 24)
    clock = DryClock(facts(), air, Air())
    assert "needs" in clock.block(paint, 3.0)
    assert clock.free_h(paint, 3.0) == 10.0
    assert clock.free_h(paint, 12.5) == 12.5
    assert clock.due_h("top", 1, paint, 3.0) == 10.0
    assert clock.blocks["top", 1].until_h == 10.0
    damp = DryClock(facts(), steady(Air(temp_c=15.0, rh=0.97)), Air())
    assert damp.free_h(paint, 0.0) > LONGEST_H
    assert damp.free_h(Step(verb="paint", what="acrylic-paint", air=Air()), 0.0) == 0.0
    assert damp.free_h(Step(verb="sand", method="hand-block", grit=180), 0.0) == 0.0
