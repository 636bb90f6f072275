"""Trouble on the terminal: what was understood, what may be behind it, how to put it right, what is learnt."""

import io
import json
import sys
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from refettle.cli import main

EXAMPLES = Path(__file__).parents[2] / "examples"
PIECE = """\
piece: Side table
form: list
wood: knotty pine
old finish: oil varnish
look: opaque white
surfaces:
  top: {area: 0.4 m2}
  shelf: {area: 0.3 m2}
"""
DONE = """\
done:
  - clean: soap and water
  - coat: acrylic furniture paint
    coats: 2
    wait between: 4 h
    wait after: 1 day
"""
SAYS = "brown spots come through over the knots two days later"


@pytest.fixture
def piece(tmp_path: Path) -> str:
    path = tmp_path / "table.yaml"
    path.write_text(PIECE + DONE, encoding="utf-8")
    return str(path)


def document(capsys: pytest.CaptureFixture[str], command: str, *words: str) -> dict[str, Any]:
    assert main([command, *words, "--json"]) == 0
    made: dict[str, Any] = json.loads(capsys.readouterr().out)
    text = files("refettle.cli").joinpath(f"{command}.schema.json").read_text("utf-8")
    jsonschema.validate(made, json.loads(text))
    return made


def page(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> str:
    assert main(list(words)) == code
    shown = capsys.readouterr().out
    assert max(map(len, shown.splitlines())) <= 80
    return shown


def test_diagnose_shows_what_it_understood_and_ranks_the_causes(
    piece: str, capsys: pytest.CaptureFixture[str]
):
    shown = page(capsys, "diagnose", piece, "top", "--says", SAYS)
    assert "exactly over the knots (on-knots)" in shown
    assert "it showed days later" in shown
    assert "--no SIGN" in shown
    causes = shown[shown.index("Likely causes") :]
    assert causes.index("Knots coming through (step 2)") < causes.index("Something else")
    assert "refettle mend" in shown


def test_an_answer_moves_the_causes_and_is_shown(piece: str, capsys: pytest.CaptureFixture[str]):
    before = document(capsys, "diagnose", piece, "top", "--says", "brown spots")
    after = document(
        capsys, "diagnose", piece, "top", "--says", "brown spots", "--no", "on-knots", "--when", "at once"
    )
    chances = [{f["fault"]: f["chance"] for f in made["faults"]}["knot-bleed"] for made in (before, after)]
    assert chances[1] < chances[0]
    assert {"sign": "on-knots", "name": "exactly over the knots", "surety": 0.0, "words": ""} in after[
        "signs"
    ]
    assert after["when"] == "at once"
    assert "on-knots" not in {question["sign"] for question in after["questions"]}


def test_words_that_mean_nothing_here_are_said_to(piece: str, capsys: pytest.CaptureFixture[str]):
    shown = page(capsys, "diagnose", piece, "top", "--says", "hmm")
    assert "Nothing that is known here" in shown
    assert "colour-up" in shown


@pytest.mark.parametrize(
    ("text", "head"),
    [
        (PIECE + DONE, "What was done\n"),
        (PIECE + DONE.replace("done:", "intend:"), 'What was done (taken from "intend")'),
        (PIECE, "Not told"),
    ],
)
def test_where_the_steps_come_from_is_said(
    text: str, head: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    path = tmp_path / "table.yaml"
    path.write_text(text, encoding="utf-8")
    assert head in page(capsys, "diagnose", str(path), "top", "--says", "pink")


def test_mend_names_the_way_its_price_the_others_and_the_shelf(
    piece: str, capsys: pytest.CaptureFixture[str]
):
    shown = page(capsys, "mend", piece, "top", "--says", SAYS)
    assert "Do it like this: " in shown
    assert "Other ways" in shown
    assert "Leave it as it is: no work" in shown
    assert "Had the same steps, so look there too: shelf." in shown
    assert "From the shelf, and to buy" in shown
    assert "Take care" in shown


def test_mend_as_json_follows_its_schema(piece: str, capsys: pytest.CaptureFixture[str]):
    made = document(capsys, "mend", piece, "top", "--says", SAYS)
    costs = [mend["cost"] for mend in made["mends"]]
    assert costs == sorted(costs)
    assert sum(cause["chance"] for cause in made["causes"]) == pytest.approx(1.0, abs=0.02)
    assert made["same_steps"] == ["shelf"]


def test_a_fault_can_be_settled(piece: str, capsys: pytest.CaptureFixture[str]):
    made = document(capsys, "mend", piece, "top", "--says", SAYS, "--fault", "peeling")
    assert {cause["fault"] for cause in made["taken_as"]} == {"peeling"}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--yes", "haz"], '"haz" is no sign – did you mean haze?'),
        (["--yes", "qqqqq"], '"qqqqq" is no sign – name one of colour-up'),
        (["--yes", "haze", "--no", "haze"], "haze is told both --yes and --no"),
        (["--when", "soon"], '--when: "soon" is no time – name one of at once, hours'),
    ],
)
def test_a_wrong_answer_is_one_note_and_2(
    piece: str, words: list[str], said: str, capsys: pytest.CaptureFixture[str]
):
    assert main(["diagnose", piece, "top", *words]) == 2
    assert said in " ".join(capsys.readouterr().err.split())


def test_an_unknown_fault_is_a_wrong_call(piece: str, capsys: pytest.CaptureFixture[str]):
    assert main(["mend", piece, "top", "--says", "pink", "--fault", "peelin"]) == 2
    assert "did you mean peeling?" in " ".join(capsys.readouterr().err.split())


def test_a_name_of_a_sign_or_fault_will_do(piece: str, capsys: pytest.CaptureFixture[str]):
    made = document(capsys, "diagnose", piece, "top", "--yes", "a white, grey or milky haze")
    assert made["signs"][0]["sign"] == "haze"
    made = document(capsys, "mend", piece, "top", "--says", "pink", "--fault", "Knots coming through")
    assert made["taken_as"][0]["fault"] == "knot-bleed"


def test_asking_goes_on_from_what_was_answered(
    piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr(sys, "stdin", io.StringIO("brown spots\nperhaps\nn\nsome day\ndays\nn\n\n\n\n\n\n"))
    assert main(["diagnose", piece, "top", "--ask"]) == 0
    shown = capsys.readouterr()
    assert shown.err.count("> ") >= 4
    assert "Likely causes" in shown.out
    assert "your answer" in shown.out or "not there" in shown.out


def test_asking_nobody_is_a_wrong_call(
    piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    assert main(["diagnose", piece, "top", "--ask"]) == 2
    assert "left unanswered" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["diagnose", "mend"])
def test_a_bad_file_gives_findings(command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    path = tmp_path / "bad.yaml"
    path.write_text("piece: A\nform: list\nwood: oka\nsurfaces: {top: {area: 1 m2}}\n", encoding="utf-8")
    assert main([command, str(path), "top", "--says", "pink"]) == 1
    assert "unknown-wood" in capsys.readouterr().err
    assert main([command, str(path), "top", "--says", "pink", "--json"]) == 1
    assert json.loads(capsys.readouterr().out)["findings"]


def test_learn_shows_what_own_work_says(capsys: pytest.CaptureFixture[str]):
    shown = page(capsys, "learn", str(EXAMPLES / "journal.yaml"))
    assert "8 entries from 4 pieces" in shown
    assert "handbook" in shown
    assert "colour-carried-up" in shown
    made = document(capsys, "learn", str(EXAMPLES / "journal.yaml"))
    assert made["entries"] == 8
    assert {row["rule"] for row in made["rules"]} == {"colour-carried-up", "water-condenses-in-film"}


def test_a_journal_named_in_the_workshop_file_is_counted_with_and_said(
    piece: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    (tmp_path / "journal.yaml").write_text((EXAMPLES / "journal.yaml").read_text("utf-8"), encoding="utf-8")
    shop, plain = tmp_path / "shop.yaml", tmp_path / "plain.yaml"
    shop.write_text("workshop: Shed\njournal: journal.yaml\n", encoding="utf-8")
    plain.write_text("workshop: Shed\n", encoding="utf-8")
    hours = []
    for one in (plain, shop):
        assert main(["plan", piece, "--workshop", str(one), "--json"]) == 0
        made = json.loads(capsys.readouterr().out)
        hours.append(sum(route["minutes"]["likely"] for route in made["routes"] if route["role"] == "taken"))
        noted = [finding for finding in made["findings"] if finding["code"] == "from-own-work"]
        assert len(noted) == (one == shop)
    assert hours[1] > hours[0]


def test_a_journal_that_is_not_there_or_not_right_stops_the_plan(
    piece: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    shop = tmp_path / "shop.yaml"
    shop.write_text("workshop: Shed\njournal: nowhere.yaml\n", encoding="utf-8")
    assert main(["plan", piece, "--workshop", str(shop)]) == 2
    assert "nowhere.yaml" in capsys.readouterr().err
    shop.write_text("workshop: Shed\njournal: bad.yaml\n", encoding="utf-8")
    (tmp_path / "bad.yaml").write_text("entries:\n  - {piece: A}\n", encoding="utf-8")
    assert main(["plan", piece, "--workshop", str(shop)]) == 1
    assert "no-entry" in capsys.readouterr().err
