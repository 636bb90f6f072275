"""The scorers of diagnose, mend and the smallest change count as they say; invented cases."""

import json
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

import trade_cases
from case_remedy_words import DEPTH_OF_ACT, change_kind, deepest, read_remedy
from case_trouble import kinds_of_change, seen_of
from refettle.domain.step import Step
from trade_cases import truth_of

CASE = """\
schema: trade_cases
schema_version: 1
cases:
  - id: X-1
    situation: invented
    item:
      piece: chest
      part: top
      substrate: [pine_knotty]
      build: solid
      status: second_hand
      age: 1930s
      existing_finish: varnish_alkyd
      geometry: [flat]
      condition: [clean]
    wanted_look: opaque_light
    climate: {temperature_c: 20, rh_percent: 50}
    steps:
      - {n: 1, op: scuff, what: scuffed, grit: '220'}
      - {n: 2, op: coat, class: acrylic_paint_waterborne, method: brush, coats: 2, wait_between_h: 4, wait_after_h: 24}
      - {n: 3, op: use, what: in the house}
    outcome: fails
    symptom: Brown spots come through over the knots.
    seen_after_step: 2
    failure:
      defect: knot_bleed
      also: []
      remedy: Seal the knots with shellac and repaint.
      would_have_avoided: Shellac primer first.
    evidence: {agreement: agrees, filled_in_by_writer: []}
"""


@pytest.fixture
def case_file(tmp_path: Path) -> str:
    path = tmp_path / "cases.yaml"
    path.write_text(CASE, encoding="utf-8")
    return str(path)


@pytest.mark.parametrize(
    ("text", "depths"),
    [
        ("Strip and start again.", {"wood"}),
        ("Scuff and recoat.", {"film"}),
        ("Seal with shellac, then repaint.", {"seal"}),
        ("Warm the room and wait.", {"wait"}),
        ("Leave it.", {"leave"}),
        ("Rub it out, or strip.", {"film", "wood"}),
        ("Xyzzy.", set()),
    ],
)
def test_a_remedy_is_read_by_its_verbs_alternatives_apart(text: str, depths: set[str]):
    assert read_remedy(text).depths == depths
    assert read_remedy(text).acts <= set(DEPTH_OF_ACT)


def test_the_deepest_is_the_deepest():
    assert deepest(["film", "leave", "wood", "seal"]) == "wood"
    assert deepest(["wait", "film"]) == "film"


def test_changes_have_kinds():
    assert change_kind("seal:shellac-dewaxed") == "barrier"
    assert change_kind("put:oil-primer") == "barrier"
    assert change_kind("put:alkyd-enamel") == "material"
    assert change_kind("between:usual") == "wait"


def test_kinds_of_change_are_told_from_the_sequences():
    paint = Step(verb="paint", what="acrylic-paint", coats=2, wait_between_h=2.0)
    wash = Step(verb="clean", what="mineral-spirits")
    slow = Step(verb="paint", what="acrylic-paint", coats=2, wait_between_h=8.0)
    seal = Step(verb="seal", what="shellac-dewaxed")
    other = Step(verb="paint", what="alkyd-enamel", coats=2)
    assert kinds_of_change((paint,), (wash, paint)) == {"wash"}
    assert kinds_of_change((paint,), (slow,)) == {"wait"}
    assert kinds_of_change((paint,), (seal, paint)) == {"barrier"}
    assert kinds_of_change((paint,), (other,)) == {"material"}
    assert kinds_of_change((wash, paint), (paint,)) == {"leave out"}
    assert kinds_of_change((paint,), (paint,)) == frozenset()


def test_a_case_is_told_up_to_the_step_that_showed_it(case_file: str):
    case = trade_cases.read_cases(Path(case_file))[0]
    seen = seen_of(case, truth_of(case))
    assert not seen.ended
    assert "use" not in {step.verb for step in seen.adapted.piece.intend[0].steps}
    assert "use" in {step.verb for step in seen.whole.piece.intend[0].steps}
    assert seen.symptom.startswith("Brown")


def test_the_three_scores_are_printed(case_file: str, capsys: pytest.CaptureFixture[str]):
    assert trade_cases.main(["--diagnose", "--mend", "--intend", case_file]) == 0
    shown = capsys.readouterr().out
    assert "Diagnose: first 1, in first three 1 of 1" in shown
    assert "Mend: agreed" in shown
    assert "Intend: agreed" in shown


@pytest.mark.parametrize(
    ("option", "keys"),
    [
        ("--diagnose", {"asked", "first", "first_three", "baseline"}),
        ("--mend", {"asked", "agreed"}),
        ("--intend", {"asked", "agreed"}),
    ],
)
def test_a_score_as_json(option: str, keys: set[str], case_file: str, capsys: pytest.CaptureFixture[str]):
    assert trade_cases.main([option, case_file, "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert keys <= set(made)
    assert made["asked"] == 1


def test_a_wrong_symptom_is_a_miss(case_file: str, capsys: pytest.CaptureFixture[str]):
    path = Path(case_file)
    path.write_text(CASE.replace("Brown spots come through over the knots.", "It smells."), encoding="utf-8")
    assert trade_cases.main(["--diagnose", case_file, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["first"] == 0
