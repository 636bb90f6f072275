"""Nights on which the clocks change: real hours of waits, hours that do not exist, calendars with their zone."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plan_pieces import facts
from refettle.cli import main
from refettle.domain.air import Air
from refettle.domain.airhours import steady
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.air_hours import read_epw
from refettle.files.clock_zone import hour_lengths, summer_hours
from refettle.files.workshop_file import read_workshop
from refettle.services.clock import DryClock
from refettle.services.free_time import clock_changes, windows

COAT = Step(verb="topcoat", what="alkyd-varnish", method="brush")
GLUE = Step(verb="repair", what="loose-joint")
BERLIN = ZoneInfo("Europe/Berlin")


def real_h(begins: str, begin_h: float, end_h: float) -> float:
    """Return the real hours between two moments of the clock on the wall, by the standard library alone."""
    first = datetime.fromisoformat(begins)
    begin, end = ((first + timedelta(hours=h)).replace(tzinfo=BERLIN) for h in (begin_h, end_h))
    return (end.astimezone(UTC) - begin.astimezone(UTC)).total_seconds() / 3600.0


# EU Directive 2000/84/EC: last Sunday of March and of October, at 1:00 UTC.
@pytest.mark.parametrize(
    ("begins", "hour", "length"), [("2026-10-24", 26, 2.0), ("2026-03-28", 26, 0.0), ("2027-03-28", 2, 0.0)]
)
def test_the_night_of_the_change_has_an_hour_of_another_length(begins: str, hour: int, length: float) -> None:
    assert hour_lengths("Europe/Berlin", begins)[0] == (hour, length)
    assert hour_lengths("", begins) == ()
    assert hour_lengths("Africa/Lagos", begins) == ()


@settings(max_examples=60, deadline=None)
@given(
    begin=st.floats(0.0, 72.0),
    wait=st.floats(0.5, 60.0),
    begins=st.sampled_from(["2026-10-23", "2026-03-27"]),
)
@pytest.mark.parametrize("step", [COAT, GLUE])
def test_a_wait_lasts_its_real_hours_over_the_change(
    step: Step, begin: float, wait: float, begins: str
) -> None:
    air = Air(temp_c=20.0, rh=0.5)
    hours = replace(steady(air), lengths=hour_lengths("Europe/Berlin", begins))
    over = DryClock(facts(), hours, air).over_h(step, begin, wait)
    if not any(hour <= moment < hour + 1 for hour, _ in hours.lengths for moment in (begin, over)):
        assert real_h(begins, begin, over) == pytest.approx(wait, abs=1e-6)


def test_without_a_zone_nothing_changes() -> None:
    clock = DryClock(facts(), steady(Air()), Air())
    assert clock.over_h(GLUE, 20.0, 12.0) == 32.0
    assert clock.over_h(COAT, 20.0, 12.0) == pytest.approx(32.0)


def test_free_hours_lose_the_hour_that_is_skipped() -> None:
    shop = Workshop(
        begins="2027-03-27",
        free=((6, 1.0, 4.5),),
        hour_lengths=hour_lengths("Europe/Berlin", "2027-03-27"),
    )
    assert list(windows(shop))[:3] == [(25.0, 26.0), (27.0, 28.5), (193.0, 196.5)]
    plain = replace(shop, hour_lengths=())
    assert list(windows(plain))[:1] == [(25.0, 28.5)]
    assert list(clock_changes(shop, 2)) == [(2, 2, -1.0)]
    assert list(clock_changes(shop, 1)) == []


FILE = "workshop: Shed\nbegins: 2027-03-22\nfree: {sun: 1:00-4:00}\n"


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        (FILE + "time zone: Europe/Berlin\n", "hour-missing", "the clocks skip 2:00 to 3:00 on Sunday 2027-03-28"),
        (FILE.replace("begins: 2027-03-22\n", "") + "time zone: Europe/Berlin\n", "zone-without-day", "without a first"),
        (FILE + "time zone: Europe/Berlinn\n", "unknown-zone", '"Europe/Berlinn" is no time zone'),
        (FILE + "time zone: Berlin\n", "unknown-zone", '"Berlin" is no time zone'),
        (FILE + "time zone: summer\n", "unknown-zone", '"summer" is no time zone'),
    ],
)  # fmt: skip
def test_what_is_odd_about_a_zone_is_told(text: str, code: str, said: str) -> None:
    _, findings = read_workshop(text, "shed.yaml", facts())
    assert [finding.code for finding in findings] == [code]
    assert findings[0].what.startswith(said)
    if "Berlin" in findings[0].what:
        assert findings[0].do == 'write "Europe/Berlin"'


@pytest.mark.parametrize("day", ["not on: [2027-03-28]", "not on: [sunday, monday]"])
def test_a_day_that_falls_out_misses_no_hour(day: str) -> None:
    text = FILE.replace("{sun: 1:00-4:00}", "{sun: 1:00-4:00, sat: 9:00-12:00}")
    shop, findings = read_workshop(f"{text}time zone: Europe/Berlin\n{day}\n", "shed.yaml", facts())
    assert findings == ()
    assert shop is not None


def test_a_weather_file_in_standard_time_is_moved_by_summer_time() -> None:
    rows = [
        f"2001,{when.month},{when.day},{when.hour + 1},0,f,{when.hour}.0,1.0,70,98000"
        for when in (datetime(2001, 1, 1) + timedelta(hours=n) for n in range(8760))  # noqa: DTZ001
    ]
    text = "\n".join([*["LOCATION,made up"] * 8, *rows])
    summer = summer_hours("Europe/Berlin", "2026-10-24")
    assert (summer[25], summer[28]) == (1, 0)
    hours, _ = read_epw(text, "town.epw", date(2026, 10, 24), summer)
    assert hours is not None
    assert (hours.temps_c[12], hours.temps_c[24 + 12]) == (11.0, 12.0)


def test_the_calendar_file_carries_the_zone_and_its_rules(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shop = tmp_path / "shed.yaml"
    text = "workshop: Shed\nbegins: 2026-10-19\nfree: {mon: 18:30-21:00, thu: 18:30-21:00, sat: 9:00-12:00}\n"
    shop.write_text(
        f"{text}time zone: Europe/Berlin\nair by the hour: {{day: {{low: 14 C, high: 20 C, humidity: 55 %}}}}\n",
        "utf-8",
    )
    piece = str(Path(__file__).parents[2] / "examples" / "blanket-chest.yaml")
    assert main(["days", piece, "--workshop", str(shop), "--ics"]) == 0
    made = icalendar.Calendar.from_ical(capsys.readouterr().out)
    assert {str(zone["TZID"]) for zone in made.walk("VTIMEZONE")} == {"Europe/Berlin"}
    begins = [
        event["DTSTART"].dt for event in made.walk("VEVENT") if isinstance(event["DTSTART"].dt, datetime)
    ]
    assert {(one.hour, one.minute) for one in begins if one.weekday() != 5} == {(18, 30)}
    offsets = {one.utcoffset() for one in begins}
    assert offsets == {timedelta(hours=1), timedelta(hours=2)}
    assert main(["days", piece, "--workshop", str(shop)]) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert "Clocks go back: an hour comes twice on Sun 2026-10-25 at 2:00." in page
