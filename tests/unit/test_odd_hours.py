"""Odd air and odd free hours: each is told with its line, none hangs and none is taken in silence."""

from datetime import date, datetime, timedelta

import pytest

from plan_pieces import facts
from refettle.domain.air import Air
from refettle.domain.airhours import AirHours, HoursFrom
from refettle.domain.finding import Finding
from refettle.files.air_hours import read_epw, read_logger
from refettle.files.hours_entries import air_of
from refettle.files.workshop_file import read_workshop
from refettle.services.clock import DryClock

HEAD = "Time,Temperature (°C),Relative Humidity (%)"
FIRST = datetime(2026, 10, 1)  # noqa: DTZ001 - a wall clock
HOUR = timedelta(hours=1)


def rows(count: int, pattern: str = "%Y-%m-%d %H:%M", *, begin: int = 0, air: str = "12.0,70") -> list[str]:
    return [f"{FIRST + HOUR * (begin + n):{pattern}},{air}" for n in range(count)]


def logged(lines: list[str]) -> tuple[AirHours | None, tuple[Finding, ...]]:
    return read_logger("\n".join([HEAD, *lines]), "log.csv")


def codes(said: tuple[Finding, ...]) -> list[str]:
    return [finding.code for finding in said]


def test_a_time_that_stands_twice_is_told_once_with_its_first_line() -> None:
    hours, said = logged([*rows(48), *rows(3, begin=10, air="20.0,70")])
    assert codes(said) == ["time-twice"]
    assert said[0].where.line == 50
    assert said[0].what.startswith("3 times stand here more than once")
    assert hours is not None
    assert hours.temps_c[10] == 16.0


def test_times_that_step_back_are_told_and_put_in_order() -> None:
    hours, said = logged([*rows(24, begin=24, air="9.0,70"), *rows(24)])
    assert codes(said) == ["time-back"]
    assert said[0].what == "times step back from 2026-10-02 23:00 to 2026-10-01 00:00"
    assert said[0].where.line == 26
    assert hours is not None
    assert (hours.temps_c[0], hours.temps_c[24]) == (12.0, 9.0)


def test_a_clock_that_was_reset_leaves_the_longest_run_and_no_century_is_filled() -> None:
    hours, said = logged(["1970-01-01 00:00,12.0,70", *rows(72)])
    assert codes(said) == ["long-gap"]
    assert "only 2026-10-01 to 2026-10-03 is used" in said[0].do
    assert hours is not None
    assert len(hours.temps_c) == 72


def test_month_before_day_is_read_by_what_keeps_the_readings_together() -> None:
    hours, said = logged(rows(20 * 24, "%m/%d/%Y %H:%M"))
    assert said == ()
    assert hours is not None
    assert len(hours.temps_c) == 20 * 24
    early, said = logged(rows(6 * 24, "%m/%d/%Y %H:%M", begin=-24 * 3))
    assert said == ()
    assert early is not None
    assert early.said == "logger log.csv, 2026-09-28 to 2026-10-03"


def test_humidity_a_little_above_a_hundred_is_fog_and_far_above_is_no_reading() -> None:
    hours, said = logged([*rows(24), *rows(24, begin=24, air="8.0,102")])
    assert [(f.code, f.level, f.where.line) for f in said] == [("over-damp", "note", 26)]
    assert hours is not None
    assert hours.rhs[30] == 1.0
    hours, said = logged([*rows(48), *rows(20, begin=48, air="8.0,140")])
    assert codes(said) == ["row-left-out"] * 6
    assert said[-1].what == "15 more rows are left out, the first here"
    assert hours is not None
    assert len(hours.temps_c) == 48


def test_times_with_zone_and_seconds_are_read_by_the_wall_clock() -> None:
    hours, said = logged(rows(48, "%Y-%m-%dT%H:%M:%S+02:00"))
    assert said == ()
    assert hours is not None
    assert len(hours.temps_c) == 48


def test_a_humidity_kept_at_the_limit_of_a_coat_bars_it_in_no_hour() -> None:
    minutes = [f"{FIRST + HOUR * n / 6:%Y-%m-%d %H:%M},12.0,70" for n in range(6 * 48)]
    hours, _ = logged(minutes)
    assert hours is not None
    assert set(hours.rhs) == {0.70}


def epw(odd: dict[int, tuple[str, str]], rows_left: int = 8760) -> str:
    body = []
    for hour in range(rows_left):
        when = datetime(2001, 1, 1) + HOUR * hour  # noqa: DTZ001
        temp, rh = odd.get(hour, (f"{when.month}.0", "70"))
        body.append(f"2001,{when.month},{when.day},{when.hour + 1},60,flags,{temp},1.0,{rh},98000")
    return "\n".join([*["LOCATION,made up"] * 8, *body])


@pytest.mark.parametrize("odd", [("99.9", "70"), ("12.0", "999"), ("-80", "70"), ("x", "70"), ("nan", "70")])
def test_what_a_weather_file_did_not_measure_is_filled_and_told(odd: tuple[str, str]) -> None:
    hours, said = read_epw(epw({100: odd, 101: odd}), "town.epw", date(2026, 1, 1))
    assert [(f.code, f.where.line) for f in said] == [("gap", 109)]
    assert said[0].what == "2 hours have no reading of temperature or humidity, the first here"
    assert hours is not None
    assert (hours.temps_c[100], hours.rhs[100]) == (1.0 if odd[0] != "12.0" else 12.0, 0.70)


def test_a_weather_file_of_gaps_is_refused() -> None:
    hours, said = read_epw(epw(dict.fromkeys(range(2000), ("99.9", "999"))), "town.epw", date(2026, 1, 1))
    assert hours is None
    assert said[-1].what == "2000 of 8760 hours have no reading of temperature or humidity"


def test_a_row_that_is_no_weather_is_named() -> None:
    lines = epw({}).splitlines()
    lines[500] = "nonsense"
    hours, said = read_epw("\n".join(lines), "town.epw", date(2026, 1, 1))
    assert hours is None
    assert [(f.code, f.where.line) for f in said] == [("row-left-out", 501), ("no-epw", 0)]


def test_a_leap_day_begins_on_the_next_day_there_is() -> None:
    hours, _ = read_epw(epw({}), "town.epw", date(2028, 2, 29))
    assert hours is not None
    assert hours.temps_c[0] == 3.0


@pytest.mark.parametrize(
    ("lines", "code", "line", "what"),
    [
        ("free: {}", "no-value", 2, "no hours are written"),
        ("free: {mon: 22:00-1:00}", "unclear-amount", 2, '"22:00-1:00" are no hours of a day'),
        ("free: {mon: 24:30-25:00}", "unclear-amount", 2, '"24:30-25:00" are no hours of a day'),
        ("free: {mon: 18:00-18:05}", "short-hours", 2, "hardly anything is set up and cleaned away in this"),
        ("hours per evening: 5 min", "short-hours", 2, "5 min an evening"),
        ("not on: [mon, tue, wed, thu, fri, sat, sun]", "never-free", 2, "every day on which somebody"),
        ("free: {mon: 18:00-21:00}\nnot on: [monday]", "never-free", 3, "every day on which somebody"),
        ("free: {mon: 18:00-21:00}\nspraying: {sat: 9:00-12:00}", "never-sprayed", 3, "no free hours lie"),
        ("air by the hour: {day: {low: -60 C, high: 4 C}}", "unclear-amount", 2, '"-60 C" is no air'),
        ("air by the hour: {day: {low: 4 C}}", "one-air", 2, "a day needs a low and a high"),
        (
            "air by the hour: {day: {low: 4 C, high: 9 C}, heated: 8:00-8:00}",
            "unclear-amount", 2, '"8:00-8:00" are no hours of a day',
        ),
    ],
)  # fmt: skip
def test_hours_that_nobody_can_use_are_told_once(lines: str, code: str, line: int, what: str) -> None:
    _, said = read_workshop(f"workshop: Shed\n{lines}\n", "shed.yaml", facts())
    assert [(f.code, f.where.line) for f in said] == [(code, line)]
    assert said[0].what.startswith(what)


def test_a_heater_may_be_on_past_midnight() -> None:
    text = (
        "workshop: Shed\nair by the hour: {day: {low: 4 C, high: 9 C}, heated to: 18 C, heated: 22:00-6:00}\n"
    )
    shop, said = read_workshop(text, "shed.yaml", facts())
    assert said == ()
    assert shop is not None
    assert shop.hours_from is not None
    assert shop.hours_from.heated == frozenset({22, 23, 0, 1, 2, 3, 4, 5})


def test_the_coldest_air_that_can_be_written_can_be_reckoned_with() -> None:
    hours, said = air_of(HoursFrom(low_c=-40.0, high_c=-30.0, building="unheated garage"), "", "", "")
    assert said == ()
    assert hours is not None
    assert -40.0 <= min(hours.temps_c) <= -30.0
    clock = DryClock(facts(), hours, Air())
    assert clock.hours.at(5).rh <= 0.99
