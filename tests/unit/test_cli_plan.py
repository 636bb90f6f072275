"""The page and the JSON of a plan."""

import json
import re
from dataclasses import replace
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from fakes_plan import TAKEN, leaks, painted, piece_plan, refused
from refettle import bootstrap
from refettle.cli import main
from refettle.cli.page import Page
from refettle.cli.plan_json import plan_json
from refettle.cli.plan_text import plan_text
from refettle.domain.piece_plan import Choice, GroupPlan
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge


@pytest.fixture(scope="module")
def know() -> Knowledge:
    return load_knowledge()


def page_of(
    know: Knowledge, *groups: GroupPlan, short: bool = False, everything: bool = False, width: int = 80
) -> str:
    page = Page(width=width)
    return plan_text(piece_plan(*groups), know, page, short=short, everything=everything)


def schema(name: str) -> dict[str, Any]:
    text = files("refettle.cli").joinpath(f"{name}.schema.json").read_text(encoding="utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def test_the_page_looks_as_it_did(know: Knowledge):
    golden = Path(__file__).parents[1] / "golden/hall-table.txt"
    assert page_of(know, painted(), refused()) == golden.read_text(encoding="utf-8")


@pytest.mark.parametrize("width", [80, 60, 50])
def test_no_line_is_longer_than_the_page(know: Knowledge, width: int):
    text = page_of(know, painted(), refused(), everything=True, width=width)
    assert max(map(len, text.splitlines())) <= width


def test_no_id_stands_on_the_page(know: Knowledge):
    assert not leaks(know, page_of(know, painted(), refused(), everything=True))


def test_there_are_no_two_blank_lines_and_no_spaces_at_the_end(know: Knowledge):
    text = page_of(know, painted(), refused())
    assert "\n\n\n" not in text
    assert not re.search(r" +$", text, flags=re.MULTILINE)
    assert text.endswith("\n")


def test_the_short_page_holds_the_lines_only(know: Knowledge):
    text = page_of(know, short=True)
    assert text.startswith("Hall table\nWorkshop: Garage; invented, for demonstration\n\n 1  Before anything")
    assert "What to do" not in text
    assert len(text.splitlines()) < 12


def test_a_step_says_what_how_long_material_waits_and_why(know: Knowledge):
    text = page_of(know)
    assert re.search(r"^   1  Wash with mild soap and water +15–30 min$", text, flags=re.MULTILINE)
    assert "      then 3 h (2–4.5 h); up to 1 EUR\n      Dirt keeps coats from holding.\n" in text
    assert "overnight after each coat (17–36 h in all); 0.2–0.5 L, 6–14 EUR" in text
    assert re.search(r"4  Wait until safe to wrap +10–21 days$", text, flags=re.MULTILINE)


def test_risks_stand_in_words_likeliest_first_and_small_ones_are_counted(know: Knowledge):
    text = page_of(know)
    told = text[text.index("What may still go wrong") :]
    assert told.index("about one in three  peeling") < told.index("perhaps one in six  water and heat marks")
    assert "(in use)" in told
    assert re.search(r"^    hardly +1 other$", told, flags=re.MULTILINE)
    assert "runs and sags" not in text
    assert "runs and sags" in page_of(know, everything=True)


def test_no_chance_is_said_in_hundredths(know: Knowledge):
    text = page_of(know, painted(), refused(), everything=True)
    risks = "".join(re.findall(r"What may still go wrong\n(?:    .*\n)+", text))
    assert risks
    assert not re.search(r"\d\d ?%|0\.\d", risks)


def test_other_ways_say_what_they_gain_and_where_they_differ(know: Knowledge):
    text = page_of(know)
    assert "Surer: peeling unlikely instead of about one in three" in text
    assert "without: Scuff P240 by hand, wet, and take up the dust" in text
    assert "Leave it alone: 15–30 min of work" in text


def test_an_impossible_look_names_the_clash_and_what_can_be_had(know: Knowledge):
    text = page_of(know, refused())
    assert "There is no way to this look" in text
    assert "foil or laminate face has no wood face to show" in text
    assert "painted: wash → 2 × paint" in text


def test_each_line_of_care_stands_once_with_its_steps(know: Knowledge):
    text = page_of(know)
    assert text.count("Wood dust.") == 1
    assert "Step 2 of top; step 2 of drawer.1/front" in text
    assert "Old paint may hold lead." in text


def test_alike_work_of_an_evening_shares_a_line(know: Knowledge):
    assert "    Wash with mild soap and water – top, legs\n" in page_of(know)


def test_twelve_assumed_values_are_shown_unless_all_are_asked_for(know: Knowledge):
    few, all_ = page_of(know), page_of(know, everything=True)
    assert few.count("everyday – not a top") == 12
    assert "and 3 more; --all shows every one" in few
    assert all_.count("everyday – not a top") == 15


def test_a_search_cut_short_says_so(know: Knowledge):
    assert "The search was cut short: another way may cost up to 8 % less" in page_of(know)


def test_only_headings_are_bold_and_only_where_wanted(know: Knowledge):
    plan = piece_plan()
    bold = plan_text(plan, know, Page(bold=True), short=False, everything=False)
    plain = plan_text(plan, know, Page(), short=False, everything=False)
    assert "\x1b" not in plain
    assert bold.replace("\x1b[1m", "").replace("\x1b[0m", "") == plain
    assert set(re.findall(r"\x1b\[\d+m", bold)) == {"\x1b[1m", "\x1b[0m"}


def test_the_json_of_a_plan_follows_its_schema(know: Knowledge):
    document = json.loads(plan_json(piece_plan(painted(), refused()), know))
    jsonschema.validate(document, schema("plan"))
    assert document["routes"][0]["steps"][2]["coats"] == 2
    assert document["routes"][0]["risks"][0]["chance"] == pytest.approx(TAKEN.risks[0].chance)
    assert document["groups"][1]["impossible"]["nearest"][0]["look"] == "opaque"


@pytest.mark.parametrize(
    "missing", ["surfaces", "routes", "risks", "tests", "buy", "money", "days", "findings"]
)
def test_the_schema_refuses_a_plan_without(missing: str, know: Knowledge):
    document = json.loads(plan_json(piece_plan(), know))
    del document[missing]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, schema("plan"))


def properties(node: object) -> list[tuple[str, dict[str, Any]]]:
    """Return every property of a schema with its name."""
    found: list[tuple[str, dict[str, Any]]] = []
    if isinstance(node, dict):
        found.extend(node.get("properties", {}).items())
        for below in node.values():
            found.extend(properties(below))
    if isinstance(node, list):
        for below in node:
            found.extend(properties(below))
    return found


@pytest.mark.parametrize(
    "name", ["plan", "foresee", "diagnose", "mend", "learn", "why", "buy", "days", "facts", "new"]
)
def test_every_property_of_a_schema_is_described_and_every_number_has_its_unit(name: str):
    jsonschema.Draft202012Validator.check_schema(schema(name))
    inner = {"low", "likely", "high"}  # the property that refers to a range says its unit
    for key, value in properties(schema(name)):
        assert value.get("description"), key
        if value.get("type") in {"number", "integer"} and key not in inner:
            assert re.search(r"\[.+\]", value["description"]), key


def test_plan_says_1_where_a_look_cannot_be_had(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
):
    file = tmp_path / "piece.yaml"
    file.write_text("piece: Box\nform: list\nwood: oak\nsurfaces:\n  lid: {area: 0.2 m2}\n", encoding="utf-8")
    monkeypatch.setattr(bootstrap, "plan", lambda _laid: piece_plan(painted(), refused()))
    assert main(["plan", str(file)]) == 1
    monkeypatch.setattr(bootstrap, "plan", lambda _laid: piece_plan(painted()))
    assert main(["plan", str(file), "--short"]) == 0
    shown = capsys.readouterr()
    assert "the year lies ahead" in shown.err
    assert "Hall table" in shown.out


@pytest.mark.parametrize(
    ("choice", "line"),
    [
        (
            Choice(ways=1240, cost=88.0, gap=0.0, splits=0, proved=True),
            "1 240 combinations: none of them costs less\n",
        ),
        (
            Choice(ways=3, cost=88.0, gap=0.0, splits=0, proved=False),
            "3 combinations: the best that was found in time\n",
        ),
        (
            Choice(ways=10**9, cost=88.0, gap=0.0, splits=0, proved=True, hurried=True),
            "over a million combinations: none of them costs less, days to the date weighed in\n",
        ),
    ],
)
def test_the_choice_says_among_how_many_it_is_best(know: Knowledge, choice: Choice, line: str):
    plan = replace(piece_plan(painted()), choice=choice)
    text = plan_text(plan, know, Page(width=240), short=False, everything=False)
    assert f"Chosen together from  {line}" in text


def test_where_there_is_one_way_nothing_is_said_of_a_choice(know: Knowledge):
    alone = Choice(ways=1, cost=88.0, gap=0.0, splits=0, proved=True)
    for choice in (None, alone):
        plan = replace(piece_plan(painted()), choice=choice)
        assert "Chosen together" not in plan_text(plan, know, Page(width=80), short=False, everything=False)
