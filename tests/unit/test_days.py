"""Evenings of one piece and of several: faces, dust, set-ups and hours."""

import json
from datetime import date, datetime
from importlib.resources import files
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import jsonschema
import pytest
import vobject  # type: ignore[import-untyped]

from refettle.cli import main

EXAMPLES = Path(__file__).parents[2] / "examples"
WORKSHOP = EXAMPLES / "workshop.yaml"
TWO = (EXAMPLES / "sideboard.yaml", EXAMPLES / "blanket-chest.yaml")

DOOR = """\
piece: Narrow cupboard
form: wardrobe
width: 60 cm
depth: 40 cm
height: 150 cm
wood: birch
old finish: bare
look: opaque white satin
"""


def days_of(capsys: pytest.CaptureFixture[str], *names: Path) -> dict[str, Any]:
    code = main(["days", *map(str, names), "--workshop", str(WORKSHOP), "--json"])
    assert code == 0
    loaded: dict[str, Any] = json.loads(capsys.readouterr().out)
    return loaded


@pytest.fixture(scope="module")
def schema() -> dict[str, Any]:
    text = files("refettle.cli").joinpath("days.schema.json").read_text(encoding="utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def test_two_pieces_share_evenings_and_follow_the_schema(
    capsys: pytest.CaptureFixture[str], schema: dict[str, Any]
):
    found = days_of(capsys, *TWO)
    jsonschema.Draft202012Validator(schema).validate(found)
    shared = [
        day for day in found["days"] if len({task["group"].partition(": ")[0] for task in day["tasks"]}) == 2
    ]
    assert shared
    assert [one["piece"] for one in found["ready"]] == ["Sideboard", "Blanket chest"]


def test_two_pieces_take_no_more_than_one_after_the_other_and_no_less_than_the_longer(
    capsys: pytest.CaptureFixture[str],
):
    both = days_of(capsys, *TWO)["ready"]
    last = max(one["wrap_day"] for one in both)
    assert max(one["alone_day"] for one in both) <= last <= sum(one["alone_day"] for one in both)


def test_each_step_of_each_piece_is_done_with_the_hours_it_has_alone(capsys: pytest.CaptureFixture[str]):
    def hours(found: dict[str, Any], piece: str) -> dict[tuple[str, int], float]:
        sums: dict[tuple[str, int], float] = {}
        for day in found["days"]:
            for task in day["tasks"]:
                if task["group"].startswith(f"{piece}: "):
                    key = (task["group"], task["step"])
                    sums[key] = sums.get(key, 0.0) + task["minutes"]
        return sums

    both = days_of(capsys, *TWO)
    for name, piece in zip(TWO, ("Sideboard", "Blanket chest"), strict=True):
        alone = hours(days_of(capsys, name), piece)
        together = hours(both, piece)
        assert together.keys() == alone.keys()
        for key, minutes in alone.items():
            assert together[key] == pytest.approx(minutes, abs=0.01), key


def test_steps_of_a_group_keep_their_order_and_no_evening_overruns_by_much(
    capsys: pytest.CaptureFixture[str],
):
    found = days_of(capsys, *TWO)
    at: dict[str, int] = {}
    for day in found["days"]:
        assert day["minutes"] <= 2 * 60 + 60
        for task in day["tasks"]:
            if task["step"]:
                assert task["step"] >= at.get(task["group"], 0)
                at[task["group"]] = task["step"]


def test_both_faces_of_a_door_are_never_coated_in_one_go(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    piece = tmp_path / "cupboard.yaml"
    piece.write_text(DOOR, encoding="utf-8")
    found = days_of(capsys, piece)
    tasks = [task for day in found["days"] for task in day["tasks"] if "side outside" in task["group"]]
    coats = [task["text"] for task in tasks if "coat of" in task["text"]]
    first = [text for text in coats if text.endswith(": first faces (goes on)")]
    turned = [text for text in coats if text.endswith(": turn over, the other faces")]
    assert len(coats) == 6
    assert [len(first), len(turned)] == [3, 3]
    assert coats[0::2] == first
    assert coats[1::2] == turned


def test_what_goes_on_after_an_evening_ends_later(capsys: pytest.CaptureFixture[str]):
    found = days_of(capsys, *TWO)
    waits = [(day["day"], wait) for day in found["days"] for wait in day["waits"]]
    assert waits
    assert all(wait["until_day"] > day for day, wait in waits)


def test_the_page_is_no_wider_than_it_may_be(capsys: pytest.CaptureFixture[str]):
    main(["days", *map(str, TWO), "--workshop", str(WORKSHOP)])
    page = capsys.readouterr().out
    assert max(map(len, page.splitlines())) <= 80
    assert "than alone" in " ".join(page.split())


def test_the_same_file_twice_is_two_pieces(capsys: pytest.CaptureFixture[str]):
    found = days_of(capsys, TWO[1], TWO[1])
    assert len(found["ready"]) == 2
    assert len({one["piece"] for one in found["ready"]}) == 2


def test_a_fault_in_one_file_is_said_with_its_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    piece = tmp_path / "broken.yaml"
    piece.write_text("refettle: 1\nname: Broken\nform: cabnet\n", encoding="utf-8")
    assert main(["days", str(TWO[1]), str(piece)]) == 1
    said = capsys.readouterr()
    assert "not a known form" in " ".join((said.out + said.err).split())


WORMY = """\
piece: Panelled door
form: door
width: 76 cm
depth: 4 cm
height: 198 cm
wood: pine
era: 1900-1909
old finish: unknown paint
old coats: 5
look: natural matt
wrong:
  whole: [old woodworm]
"""
LOOSE = """\
piece: Plain chair
form: chair
width: 46 cm
depth: 44 cm
height: 98 cm
wood: beech
old finish: shellac
look: waxed
wrong:
  whole: {loose joints: 4}
"""


def test_a_lead_test_waits_for_nothing_and_a_sick_piece_holds_up_no_other(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    wormy, loose = tmp_path / "wormy.yaml", tmp_path / "loose.yaml"
    wormy.write_text(WORMY, encoding="utf-8")
    loose.write_text(LOOSE, encoding="utf-8")
    found = days_of(capsys, wormy, loose)
    first = found["days"][0]
    assert first["day"] == 1
    assert "test for lead" in first["tasks"][0]["text"]
    chair = next(one for one in found["ready"] if one["piece"] == "Plain chair")
    alone = days_of(capsys, loose)["ready"][0]
    assert chair["last_day"] <= alone["last_day"] + 7
    washed = [
        day["day"]
        for day in found["days"]
        for task in day["tasks"]
        if task["group"].startswith("Panelled door") and task["step"] == 1
    ]
    treated = [
        day["day"] for day in found["days"] for task in day["tasks"] if task["group"].endswith("woodworm")
    ]
    assert treated
    assert min(washed) > max(treated)


def test_nothing_is_done_to_what_is_in_clamps(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    loose = tmp_path / "loose.yaml"
    loose.write_text(LOOSE, encoding="utf-8")
    order = [task for day in days_of(capsys, loose)["days"] for task in day["tasks"]]
    glued = next(task for task in order if task["text"].startswith("Glue"))
    end = glued["begin_h"] + glued["minutes"] / 60
    assert glued["wait_h"] > 1
    assert not [task for task in order if end - 1e-3 <= task["begin_h"] < end + glued["wait_h"] - 1e-3]
    assert [task["text"] for task in order if task["begin_h"] >= end][:4].count("Load it") == 1


OCTOBER = """\
workshop: Garage in October
begins: 2026-10-05
free:
  mon: 18:30-21:00
  wed: 18:30-21:00
  sat: [9:00-12:00, 13:30-17:00]
not on: [2026-10-14]
air by the hour:
  day: {low: 4 C, high: 13 C, humidity: 80 %}
  building: unheated garage
"""


@pytest.fixture
def october(tmp_path: Path) -> str:
    path = tmp_path / "october.yaml"
    path.write_text(OCTOBER, encoding="utf-8")
    return str(path)


def test_days_have_dates_times_and_air_and_stay_in_the_free_hours(
    october: str, capsys: pytest.CaptureFixture[str], schema: dict[str, Any]
):
    words = ["days", *map(str, TWO), "--workshop", october]
    assert main([*words, "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(schema).validate(made)
    assert made["begins"] == "2026-10-05"
    assert "unheated garage" in made["air"]
    free = {0: [(18.5, 21.0)], 2: [(18.5, 21.0)], 5: [(9.0, 12.0), (13.5, 17.0)]}
    for day in made["days"]:
        assert day["day"] != 10
        for task in day["tasks"]:
            begin = task["begin_h"] - 24 * (day["day"] - 1)
            spans = free[(day["day"] - 1) % 7]
            assert any(low - 1e-6 <= begin <= high for low, high in spans), (day["day"], task)
    assert main(words) == 0
    shown = capsys.readouterr().out
    assert "Mon 2026-10-05: 10 °C" in shown
    assert "    18:30  " in shown
    assert max(map(len, shown.splitlines())) <= 80


def test_the_calendar_file_is_read_back_by_another_library(october: str, capsys: pytest.CaptureFixture[str]):
    """RFC 5545, read by vobject, which shares no code with the writer."""
    assert main(["days", *map(str, TWO), "--workshop", october, "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert main(["days", *map(str, TWO), "--workshop", october, "--ics"]) == 0
    events = list(vobject.readOne(capsys.readouterr().out).vevent_list)
    work = [event for event in events if "safe to wrap" not in event.summary.value]
    days = {(event.dtstart.value.date() - date(2026, 10, 5)).days + 1 for event in work}
    assert days == {day["day"] for day in made["days"]}
    assert all(event.dtend.value > event.dtstart.value for event in events)
    assert len({event.uid.value for event in events}) == len(events)
    first = min(work, key=lambda event: event.dtstart.value)
    assert first.dtstart.value == datetime(2026, 10, 5, 18, 30)  # noqa: DTZ001 - a wall clock
    assert len(events) - len(work) == 2


def test_the_drawing_is_whole_and_holds_every_day(october: str, capsys: pytest.CaptureFixture[str]):
    assert main(["days", *map(str, TWO), "--workshop", october, "--svg"]) == 0
    root = ET.fromstring(capsys.readouterr().out)  # noqa: S314 - our own
    titles = [node.text or "" for node in root.iter("{http://www.w3.org/2000/svg}title")]
    assert any(title.startswith("Mon 2026-10-05: ") for title in titles)
    assert root.find("{http://www.w3.org/2000/svg}polyline") is not None


def test_a_calendar_file_needs_a_day_to_begin(capsys: pytest.CaptureFixture[str]):
    assert main(["days", str(TWO[0]), "--workshop", str(WORKSHOP), "--ics"]) == 2
    assert "needs the day it begins" in capsys.readouterr().err
    assert main(["days", str(TWO[0]), "--workshop", str(WORKSHOP), "--ics", "--svg"]) == 2


def test_where_no_coat_can_ever_be_laid_it_is_said_and_nothing_hangs(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    shop = tmp_path / "ice.yaml"
    shop.write_text(
        OCTOBER.replace("low: 4 C, high: 13 C", "low: -9 C, high: -2 C")
        + "air: {temperature: 18 C, humidity: 55 %}\n",
        encoding="utf-8",
    )
    piece = tmp_path / "box.yaml"
    piece.write_text(
        "piece: Box\nform: list\nwood: pine\nold finish: bare\nlook: opaque white\nsurfaces: {top: {area: 1 m2}}\n"
    )
    assert main(["days", str(piece), "--workshop", str(shop), "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert "never-laid" in {finding["code"] for finding in made["findings"]}
    assert made["ready"][0]["finished"] is False
    assert made["blocks"][0]["until_h"] is None


def test_a_logger_beside_the_workshop_file_gives_the_air(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    rows = [f"2026-10-01 {hour:02d}:00;{12 + hour / 4:.1f};60" for hour in range(24)]
    (tmp_path / "log.csv").write_text("Time;Temp (C);RH\n" + "\n".join(rows), encoding="utf-8")
    shop = tmp_path / "shop.yaml"
    shop.write_text("workshop: Shed\nair by the hour: {logger: log.csv}\n", encoding="utf-8")
    assert main(["days", str(TWO[1]), "--workshop", str(shop)]) == 0
    assert "logger" in capsys.readouterr().out
    (tmp_path / "log.csv").unlink()
    assert main(["days", str(TWO[1]), "--workshop", str(shop)]) == 2
    assert "log.csv" in capsys.readouterr().err
