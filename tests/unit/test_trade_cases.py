"""The scorer of trade cases counts as the issue says; a fake takes the place of the rules."""

import json
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

import trade_cases
from case_pieces import Adapted, adapt_case, given_part
from case_scores import (
    Engine,
    Truth,
    Verdict,
    baseline,
    brier,
    merge_risks,
    rules_of_one_case,
    strictly,
    tally,
)
from case_trials import own_plan_results, stability, twin_results, variants_of
from refettle.domain.piece import Own, Piece
from refettle.domain.plan import Risk
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop

PLAIN = {
    "item": {
        "piece": "chest", "part": "top", "substrate": ["oak"], "build": "solid", "status": "second_hand",
        "age": "1930s", "existing_finish": "none", "geometry": ["flat"], "condition": ["clean"],
    },
    "wanted_look": "natural_clear",
    "climate": {"temperature_c": 20, "rh_percent": 50},
    "steps": [
        {"n": 1, "op": "sand", "what": "sanded", "grit": "180"},
        {"n": 2, "op": "coat", "class": "varnish_alkyd", "method": "brush", "coats": 2, "wait_between_h": 10},
    ],
}  # fmt: skip


def risk(fault: str, chance: float, *rules: str) -> Risk:
    return Risk(fault=fault, chance=chance, step=1, why="so", rules=rules)


def adapted(**changes: object) -> Adapted:
    return adapt_case(PLAIN | changes)


def verdict(truth: Truth, *risks: Risk, unmapped: tuple[str, ...] = ()) -> Verdict:
    return Verdict(truth=truth, adapted=replace(adapted(), unmapped=unmapped), risks=risks)


def failing(case: str = "a", main: str = "peeling", **changes: object) -> Truth:
    return replace(Truth(case=case, fails=True, main=main), **changes)


SOUND = Truth(case="s", fails=False)


def engine(
    foresee: Callable[[Piece, Workshop], tuple[Risk, ...]],
    plan: Callable[[Piece, Workshop], Piece | None] = lambda _piece, _workshop: None,
) -> Engine:
    return Engine(foresee=lambda piece, workshop: {"face": foresee(piece, workshop)}, plan=plan)


def test_the_main_defect_among_the_first_three_is_foreseen():
    risks = (risk("runs", 0.9), risk("odour", 0.8), risk("peeling", 0.3))
    assert verdict(failing(), *risks).foreseen()


def test_the_fourth_place_is_not_enough():
    risks = (risk("runs", 0.9), risk("odour", 0.8), risk("bubbles", 0.7), risk("peeling", 0.6))
    assert not verdict(failing(), *risks).foreseen()


def test_a_chance_below_the_threshold_is_not_foreseen():
    assert not verdict(failing(), risk("peeling", 0.29)).foreseen()
    assert verdict(failing(), risk("peeling", 0.29)).foreseen(0.2)


def test_an_accepted_further_defect_counts():
    truth = failing(also=frozenset({"fisheye"}))
    assert verdict(truth, risk("craters", 0.5)).foreseen()


def test_a_case_that_was_not_understood_counts_as_missed_or_as_a_false_alarm():
    assert not verdict(failing(), risk("peeling", 0.9), unmapped=("x",)).foreseen()
    assert verdict(SOUND, unmapped=("x",)).false_alarm()


def test_a_sound_case_with_any_fault_from_three_in_ten_is_a_false_alarm():
    assert verdict(SOUND, risk("incomplete-removal", 0.3)).false_alarm()
    assert not verdict(SOUND, risk("incomplete-removal", 0.29)).false_alarm()


def test_surfaces_merge_by_the_greatest_chance_and_hazards_are_left_out():
    merged = merge_risks(
        {"a": (risk("peeling", 0.2), risk("lead-dust", 0.9)), "b": (risk("peeling", 0.5), risk("runs", 0.6))}
    )
    assert [(one.fault, one.chance) for one in merged] == [("runs", 0.6), ("peeling", 0.5)]


def test_the_tally_adds_up_and_names_the_misses():
    cases = [
        verdict(failing("a"), risk("peeling", 0.5)),
        verdict(failing("b"), risk("runs", 0.5)),
        verdict(SOUND, risk("runs", 0.5)),
        verdict(replace(SOUND, case="t")),
    ]
    assert tally(cases).as_dict() == {
        "failing": 2,
        "foreseen": 1,
        "sound": 2,
        "false_alarms": 1,
        "misses": ["b"],
        "false_alarm_cases": ["s"],
    }


def test_the_baseline_names_the_three_commonest_and_alarms_every_sound_case():
    mains = ["peeling", "peeling", "odour", "odour", "fisheye", "mould"]
    cases = [verdict(failing(str(at), main)) for at, main in enumerate(mains)]
    found = baseline([*cases, verdict(SOUND)])
    assert found == {
        "defects": ["odour", "peeling", "fisheye"],
        "failing": 6,
        "foreseen": 5,
        "false_alarms": 1,
    }


def test_brier_is_the_mean_square_of_forecast_less_outcome():
    cases = [verdict(failing(), risk("peeling", 0.5), risk("runs", 0.5)), verdict(SOUND, risk("runs", 0.2))]
    found = brier(cases)
    assert found["case"] == pytest.approx(((0.75 - 1.0) ** 2 + 0.2**2) / 2)
    assert found["case_base"] == pytest.approx(0.25)
    assert found["defect"] == pytest.approx((0.5**2 + 0.5**2 + 0.2**2) / (2 * 33))
    assert found["defect_base"] == pytest.approx((0.5**2 + 0.5**2) / (2 * 33))


def test_rules_that_decide_one_case_only_are_named():
    cases = [
        verdict(failing("a"), risk("peeling", 0.5, "no-key", "wax")),
        verdict(failing("b"), risk("peeling", 0.5, "no-key")),
        verdict(failing("c"), risk("runs", 0.5, "thick")),
    ]
    assert rules_of_one_case(cases) == {"wax": "a"}


def test_the_strict_count_takes_every_unread_word_as_a_miss():
    read = adapted(steps=[{"op": "clean", "what": "naphtha, gribbled"}])
    plain = Verdict(truth=failing(), adapted=read, risks=(risk("peeling", 0.9),))
    assert plain.foreseen()
    assert not strictly(plain).foreseen()


def test_each_filled_in_input_is_varied_by_itself():
    found = variants_of(
        adapted(), ("temperature", "RH", "waits", "number of coats", "grit", "species", "piece")
    )
    changes = {variant.change: variant.adapted for variant in found}
    assert changes["3 °C cooler"].workshop.air_likely.temp_c == 17.0
    assert changes["10 points damper"].workshop.air_likely.rh == pytest.approx(0.6)
    steps = {name: variant.piece.intend[0].steps for name, variant in changes.items()}
    assert steps["waits × 0.7"][1].wait_between_h == pytest.approx(7.0)
    assert (steps["one coat less"][1].coats, steps["one coat more"][1].coats) == (1, 3)
    assert (steps["one grit coarser"][0].grit, steps["one grit finer"][0].grit) == (150, 220)
    assert changes["wood unnamed"].piece.surfaces[0].wood == "hardwood"


def test_nothing_is_varied_that_the_source_states():
    assert variants_of(adapted(), ()) == ()


def test_a_verdict_that_hangs_on_a_filled_in_input_is_listed():
    def foresee(_piece: Piece, workshop: Workshop) -> tuple[Risk, ...]:
        return (risk("peeling", 0.5 if workshop.air_likely.temp_c >= 20 else 0.1),)

    case = verdict(failing(filled_in=("temperature",)), risk("peeling", 0.5))
    found = stability([case], engine(foresee))
    assert found.tried["temperature"] == 2
    assert [(flip.case, flip.change) for flip in found.flips] == [("a", "3 °C cooler")]


def test_a_twin_holds_when_the_chance_at_least_halves():
    def foresee(piece: Piece, _workshop: Workshop) -> tuple[Risk, ...]:
        scuffed = any(step.verb == "scuff" for step in piece.intend[0].steps)
        return (risk("peeling", 0.2 if scuffed else 0.4),)

    case = verdict(failing(advice="Scuff it first."), risk("peeling", 0.4))
    assert [result.holds for result in twin_results([case], engine(foresee))] == [True]
    other = verdict(failing(advice="Gribble it."), risk("peeling", 0.4))
    assert [result.holds for result in twin_results([other], engine(foresee))] == [False]
    unseen = verdict(failing(advice="Scuff it first."))
    assert [result.holds for result in twin_results([unseen], engine(foresee))] == [False]


def test_our_own_plan_must_avoid_the_fault_and_bring_no_other():
    def plan(piece: Piece, _workshop: Workshop) -> Piece:
        assert piece.intend == ()
        return replace(piece, intend=(Own(surface="face", steps=(Step(verb="clean"),), where=()),))

    case = verdict(failing(), risk("peeling", 0.9))
    good = own_plan_results([case], engine(lambda _p, _w: (risk("peeling", 0.1), risk("runs", 0.29)), plan))
    assert [result.holds for result in good] == [True]
    still = own_plan_results([case], engine(lambda _p, _w: (risk("peeling", 0.11),), plan))
    assert [result.holds for result in still] == [False]
    other = own_plan_results([case], engine(lambda _p, _w: (risk("runs", 0.3),), plan))
    assert other[0].others == ("runs 0.30",)
    refused = own_plan_results([case], engine(lambda _p, _w: ()))
    assert refused[0].refused
    assert not refused[0].holds


def test_our_own_plan_is_asked_only_for_second_hand_failures():
    new = verdict(failing(second_hand=False, group="new_work"))
    assert own_plan_results([new, verdict(SOUND)], engine(lambda _p, _w: ())) == ()


FILE = """
schema: trade_cases
schema_version: 1
cases:
- id: one
  item: {piece: chest, part: top, substrate: [oak], build: solid, status: second_hand, age: 1930s,
         existing_finish: none, geometry: [flat], condition: [clean]}
  wanted_look: natural_clear
  climate: {temperature_c: null, rh_percent: null}
  steps:
  - {n: 1, op: coat, class: varnish_alkyd, method: brush, coats: 1}
  outcome: fails
  failure: {defect: peeling, also: [], would_have_avoided: Scuff first.}
  evidence: {agreement: agrees, filled_in_by_writer: [waits]}
- id: two
  item: {piece: chest, part: top, substrate: [oak], build: solid, status: new_work, age: new,
         existing_finish: none, geometry: [flat], condition: [clean]}
  wanted_look: natural_clear
  climate: {temperature_c: null, rh_percent: null}
  steps:
  - {n: 1, op: coat, class: varnish_alkyd, method: brush, coats: 1}
  outcome: fails
  failure: {defect: odour, also: [], would_have_avoided: Scuff first.}
  evidence: {agreement: disputed, filled_in_by_writer: []}
"""


@pytest.fixture
def cases_file(tmp_path: Path) -> Path:
    path = tmp_path / "cases.yaml"
    path.write_text(FILE, encoding="utf-8")
    return path


def test_the_forecast_sees_four_keys_of_a_case_and_disputed_cases_stand_apart(
    cases_file: Path, capsys: pytest.CaptureFixture[str]
):
    fake = engine(lambda _piece, _workshop: (risk("peeling", 0.6, "no-key"),))
    assert trade_cases.main([str(cases_file), "--json"], fake) == 0
    scored = json.loads(capsys.readouterr().out)
    assert (scored["failing"], scored["foreseen"], scored["misses"]) == (1, 1, [])
    assert scored["groups"]["second_hand"]["failing"] == 1
    assert scored["groups"]["disputed"]["misses"] == ["two"]
    assert scored["rules_of_one_case"] == {"no-key": "one"}
    case = trade_cases.read_cases(cases_file)[0]
    assert set(given_part(case)) == {"item", "wanted_look", "climate", "steps"}


def test_the_report_prints_every_part(cases_file: Path, capsys: pytest.CaptureFixture[str]):
    fake = engine(lambda _piece, _workshop: (risk("peeling", 0.6, "no-key"),))
    assert trade_cases.main([str(cases_file)], fake) == 0
    text = capsys.readouterr().out
    for part in (
        "Cases not disputed",
        "three commonest",
        "Brier",
        "Filled-in",
        "one case only",
        "Twins",
        "Our own plan",
    ):
        assert part in text


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("schema: plan_cases\nschema_version: 1\n", "follows schema plan_cases version 1"),
        ("schema: trade_cases\nschema_version: 2\n", "this scorer reads trade_cases version 1"),
        ("pieces: []\n", "names no schema"),
        ("schema: trade_cases\nschema_version: 1\ncases: none\n", "holds no list of cases"),
        ("a: [\n", "is not YAML"),
        ("schema: trade_cases\nschema_version: 1\ncases:\n- {id: x}\n", "x: lacks item"),
        (FILE.replace("defect: peeling", "defect: gribbling"), '"gribbling" is not a defect'),
        (FILE.replace("outcome: fails", "outcome: maybe"), 'outcome is "maybe"'),
    ],
)
def test_a_file_of_another_schema_is_refused_in_one_sentence(
    content: str, says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    path = tmp_path / "other.yaml"
    path.write_text(content, encoding="utf-8")
    assert trade_cases.main([str(path)], engine(lambda _p, _w: ())) == 2
    caught = capsys.readouterr()
    assert says in caught.err
    assert caught.out == ""


def test_a_missing_file_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    assert trade_cases.main([str(tmp_path / "none.yaml")], engine(lambda _p, _w: ())) == 2
    assert "none.yaml: cannot be read" in capsys.readouterr().err


def test_words_are_listed_without_any_score(cases_file: Path, capsys: pytest.CaptureFixture[str]):
    def never(_piece: Piece, _workshop: Workshop) -> tuple[Risk, ...]:
        raise AssertionError

    assert trade_cases.main([str(cases_file), "--words"], engine(never)) == 0
    assert "2 of 2 cases read without an unknown word" in capsys.readouterr().out
