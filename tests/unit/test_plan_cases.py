"""The patterns of the plan check mean what the header of the schema says; made-up plans take the place of ours."""

import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

import plan_cases
from plan_case_acts import Ending, endings_of, lanes_of, reason_fault, warnings_of
from plan_case_patterns import Act, Lane, Matcher
from plan_case_pieces import Adapted, adapt_piece, given_part
from plan_cases import Raw, Read, judge_look, judge_must, judge_must_not, judge_top, judge_warn
from refettle.domain.piece import Look
from refettle.domain.piece_plan import Caution, GroupPlan, PiecePlan, Worth
from refettle.domain.plan import Impossible, Range, Risk, Route, StepCost
from refettle.domain.plan import TestAdvice as Advice
from refettle.domain.step import Step
from refettle.files.tables import load_knowledge

TABLES = {
    "groups": {"opaque": ["latex_paint", "alkyd_enamel"], "waterborne_any": ["latex_paint"]},
    "blocks": {"dye": ["shellac_primer_pigmented"]},
    "roles": {"primer": ["bonding_primer", "shellac_primer_pigmented"]},
}
MATCHER = Matcher(TABLES)
KNOW = load_knowledge()


def act(*ops: str, **fields: Any) -> Act:  # noqa: ANN401 - fields of an act, or words
    """Return an act; words of `said` as strings of words."""
    said = {key: frozenset(fields.pop(key).split()) for key in list(fields) if isinstance(fields[key], str)}
    for key in ("classes", "loosely", "depends_on"):
        if key in said:
            fields[key] = said.pop(key)
    return Act(ops=frozenset(ops), said=said, **fields)


def coat(cls: str, **fields: Any) -> Act:  # noqa: ANN401
    return act("coat", classes=cls, coats=fields.pop("coats", 1), **fields)


def lane(*acts: Act, surface: str = "top", refused: bool = False) -> Lane:
    return Lane(surface=surface, acts=acts, refused=refused)


def holds(pattern: Raw, *acts: Act, loose: bool = True) -> bool:
    return MATCHER.holds(pattern, lane(*acts), loose=loose)


WASH = act("clean", removes="wax grease", what="solvent_wash")
SCUFF = act("scuff", tool="hand", to="key")
PAINT = coat("latex_paint")
PRIMER = coat("shellac_primer_pigmented")


@pytest.mark.parametrize(
    ("pattern", "fits", "misfits"),
    [
        ({"op": "clean"}, WASH, SCUFF),
        ({"op_in": ["sand", "scuff"]}, SCUFF, WASH),
        ({"op": "coat", "class_in": ["latex_paint"]}, PAINT, PRIMER),
        ({"op": "coat", "group": "opaque"}, PAINT, PRIMER),
        ({"op": "coat", "blocks": "dye"}, PRIMER, PAINT),
        ({"op": "coat", "role": "primer"}, PRIMER, PAINT),
        ({"op": "clean", "removes": "wax"}, WASH, act("clean", removes="grime")),
        ({"op": "clean", "removes_any": ["skin_oil", "grease"]}, WASH, act("clean", removes="wax")),
        ({"op": "test", "what": "lead"}, act("test", what="lead"), act("test", what="patch")),
        (
            {"op": "mask", "what_in": ["glass", "mirror"]},
            act("mask", what="glass"),
            act("mask", what="floor"),
        ),
        ({"op": "sand", "tool": "machine"}, act("sand", tool="machine"), act("sand", tool="hand")),
        ({"op": "sand", "to": "bare"}, act("sand", to="bare"), act("sand", to="level")),
        ({"op": "sand", "coarser_than_grit": 150}, act("sand", grit=120), act("sand", grit=150)),
        ({"op": "sand", "coarser_than_grit": 150}, act("sand", grit=80), act("sand")),
        ({"op": "rinse", "wetness": "flooding"}, act("rinse", wetness="flooding"), act("rinse")),
        ({"op": "coat", "film": "heavy"}, coat("latex_paint", film="heavy"), PAINT),
        ({"op": "coat", "on": "bare"}, coat("latex_paint", on="bare"), PAINT),
        ({"op": "coat", "colour": "dark"}, coat("latex_paint", colour="dark"), PAINT),
        ({"op": "wait", "use": "sun"}, act("wait", use="sun"), act("wait")),
        ({"op": "strip", "reach": "pores"}, act("strip", reach="pores"), act("strip")),
        ({"op": "coat", "thinner": "slow"}, coat("latex_paint", thinner="slow"), PAINT),
        (
            {"op": "coat", "directly_on": "chalk_paint"},
            coat("latex_paint", directly_on="chalk_paint"),
            coat("latex_paint", directly_on="bare"),
        ),
        ({"op": "coat", "coats_at_least": 3}, coat("alkyd_enamel", coats=3), coat("alkyd_enamel", coats=2)),
        ({"op": "sand", "minutes_at_least": 30}, act("sand", minutes=30.0), act("sand", minutes=29.0)),
        (
            {"op": "coat", "temperature_below_c": 10},
            coat("latex_paint", temp_c=9.0),
            coat("latex_paint", temp_c=10.0),
        ),
        ({"op": "coat", "temperature_below_c": 10}, coat("latex_paint", temp_c=9.0), PAINT),
        (
            {"op": "coat", "rh_above_percent": 75},
            coat("latex_paint", rh_pct=80.0),
            coat("latex_paint", rh_pct=75.0),
        ),
        ({"op": "wait", "at_least_h": 24}, act("wait", wait_h=24.0), act("wait", wait_h=23.0)),
    ],
)
def test_each_key_of_a_pattern_tells_one_act_from_another(pattern: Raw, fits: Act, misfits: Act):
    assert holds(pattern, fits)
    assert not holds(pattern, misfits)


def test_a_key_or_a_row_that_the_header_does_not_know_is_refused():
    with pytest.raises(ValueError, match='"shininess" is not a key'):
        holds({"op": "coat", "shininess": 3}, PAINT)
    with pytest.raises(ValueError, match='groups: no row "metallic"'):
        holds({"op": "coat", "group": "metallic"}, PAINT)


def test_sanding_is_dry_unless_wet_is_said_and_nothing_else_is():
    assert holds({"op": "sand", "dry": True}, act("sand"))
    assert not holds({"op": "sand", "dry": True}, act("sand", dry=False))
    assert not holds({"op": "scuff", "dry": True}, act("scuff"))


def test_alcohol_counts_as_solvent_where_a_step_must_be_but_not_where_it_must_not():
    strip = act("strip", classes="alcohol", loosely="solvent")
    pattern = {"op": "strip", "class_in": ["solvent"]}
    assert holds(pattern, strip)
    assert not holds(pattern, strip, loose=False)


def test_one_of_several_patterns_is_enough_and_shares_the_place():
    pattern = {"any_of": [{"op": "scuff"}, {"op": "sand"}], "before": {"op": "coat"}}
    assert holds(pattern, SCUFF, PAINT)
    assert not holds(pattern, PAINT, SCUFF)
    assert not holds(pattern, WASH, PAINT)


def test_before_means_before_the_first_and_holds_where_there_is_none():
    pattern = {"op": "scuff", "before": {"op": "coat"}}
    assert holds(pattern, SCUFF, PAINT, PAINT)
    assert not holds(pattern, PAINT, SCUFF, PAINT)
    assert holds(pattern, SCUFF)


def test_after_means_after_some_other_act():
    pattern = {"op": "rinse", "after": {"op_in": ["bleach", "rinse"]}, "before": {"op": "coat"}}
    rinse = act("rinse")
    assert holds(pattern, act("bleach"), rinse, PAINT)
    assert holds(pattern, rinse, rinse, PAINT)
    assert not holds(pattern, rinse, PAINT)
    assert not holds(pattern, rinse, act("bleach"), PAINT)


def test_followed_by_group_asks_for_a_later_coat():
    pattern = {"op": "coat", "class_in": ["shellac_primer_pigmented"], "followed_by_group": "opaque"}
    assert holds(pattern, PRIMER, PAINT)
    assert not holds(pattern, PAINT, PRIMER)


def test_coats_of_one_class_add_up_over_the_surface():
    pattern = {"op": "coat", "class_in": ["alkyd_enamel"], "coats_at_least": 3}
    assert holds(pattern, coat("alkyd_enamel"), SCUFF, coat("alkyd_enamel", coats=2))
    assert not holds(pattern, coat("alkyd_enamel"), coat("latex_paint", coats=2))


@pytest.mark.parametrize(("start_h", "met"), [(52.0, True), (51.0, True), (50.0, False)])
def test_a_wait_counts_the_hours_between_two_acts_however_the_plan_writes_them(start_h: float, met: bool):
    pattern = {"op": "wait", "at_least_h": 48, "after": {"op": "rinse"}, "before": {"op": "coat"}}
    rinse = act("rinse", start_h=2.0, end_h=3.0)
    assert holds(pattern, act("rinse", end_h=1.0), rinse, replace(PAINT, start_h=start_h)) is met
    assert not holds(pattern, replace(PAINT, start_h=99.0))


def read(*lanes: Lane, endings: tuple[Ending, ...] = (), warnings: tuple[str, ...] = ()) -> Read:
    return Read(lanes=lanes, endings=endings, warnings=warnings)


def must(entry: Raw, *lanes: Lane, endings: tuple[Ending, ...] = ()) -> bool | None:
    return judge_must(entry, read(*lanes, endings=endings), MATCHER)[0]


def must_not(entry: Raw, *lanes: Lane) -> bool | None:
    return judge_must_not(entry, read(*lanes), MATCHER)[0]


def test_each_asks_every_surface_and_any_asks_one():
    done, undone = lane(SCUFF), lane(WASH, surface="leg")
    assert must({"surface": "any", "op": "scuff"}, done, undone) is True
    assert must({"surface": "each", "op": "scuff"}, done, undone) is False
    assert must({"surface": "leg", "op": "scuff"}, done, undone) is False
    assert must_not({"surface": "each", "op": "scuff"}, done, undone) is False
    assert must_not({"surface": "leg", "op": "scuff"}, done, undone) is True


def test_a_condition_that_does_not_hold_takes_the_expectation_out_of_the_count():
    entry = {"surface": "top", "op": "rinse", "when": {"op": "bleach"}}
    assert must(entry, lane(WASH)) is None
    assert must(entry, lane(act("bleach"))) is False
    assert must_not({"surface": "top", "op": "clean", "when": {"op": "bleach"}}, lane(WASH)) is None
    assert must_not({"surface": "top", "op": "clean", "when": {"op": "clean"}}, lane(WASH)) is False
    warn = {"surface": "piece", "any_of": ["lead"], "when": {"op": "strip"}}
    assert judge_warn(warn, read(lane(WASH)), MATCHER)[0] is None
    assert judge_warn(warn, read(lane(act("strip")), warnings=("lead",)), MATCHER)[0] is True


def test_a_surface_without_steps_owes_nothing_and_a_refused_look_lifts_what_says_so():
    assert must({"surface": "top", "op": "strip"}, lane(refused=True)) is None
    assert must({"surface": "each", "op": "scuff"}, lane(SCUFF), lane(surface="leg", refused=True)) is True
    refused = (Ending(surface="top", planned=False, offered=frozenset(), top="none"),)
    entry = {"surface": "top", "op": "strip", "unless_refused": True}
    assert must(entry, lane(WASH), endings=refused) is None
    assert must(entry, lane(WASH), endings=(replace(refused[0], planned=True),)) is False


def test_a_forbidden_step_is_excused_by_the_test_it_waits_for_or_by_its_own_property():
    dry = {"surface": "top", "op": "sand", "dry": True}
    after = {**dry, "unless_after": {"op": "test", "what": "lead", "result": "negative"}}
    assert must_not(after, lane(act("sand"))) is False
    assert must_not(after, lane(act("sand", depends_on="lead:negative"))) is True
    thin = {"surface": "top", "op": "coat", "unless_attr": {"thinner": "slow"}}
    assert must_not(thin, lane(PAINT)) is False
    assert must_not(thin, lane(coat("latex_paint", thinner="slow"))) is True


@pytest.mark.parametrize(
    ("feasible", "planned", "offered", "warnings", "met"),
    [
        ("yes", True, "", (), True),
        ("yes", False, "opaque_light", (), False),
        ("no", True, "", (), False),
        ("no", False, "opaque_light", (), True),
        ("no", False, "freshened", (), False),
        ("only_with_risk", True, "", (), False),
        ("only_with_risk", True, "", ("peeling",), True),
        ("only_with_risk", False, "natural_clear", (), True),
    ],
)
def test_a_look_agrees_as_the_header_says(
    feasible: str, planned: bool, offered: str, warnings: tuple[str, ...], met: bool
):
    ending = Ending(surface="top", planned=planned, offered=frozenset(offered.split()), top="")
    entry = {
        "surface": "top", "feasible": feasible, "risk": ["peeling"],
        "alternatives": ["opaque_light", "natural_clear_later"],
    }  # fmt: skip
    assert judge_look(entry, read(endings=(ending,), warnings=warnings), MATCHER)[0] is met


@pytest.mark.parametrize(
    ("top", "met"), [("none", True), ("paste_wax", False), ("milk_paint", None), ("", None)]
)
def test_a_top_coat_in_neither_list_is_not_counted(top: str, met: bool | None):
    ending = Ending(surface="top", planned=True, offered=frozenset(), top=top)
    entry = {"surface": "each", "acceptable": ["none"], "not_acceptable": ["paste_wax"]}
    assert judge_top(entry, read(endings=(ending,)), MATCHER)[0] is met


RAW = {
    "id": "X-1",
    "situation": "An oak table whose joints have come loose.",
    "item": {
        "piece": "dining table", "form": "table", "status": "second_hand", "age": "1930s",
        "size_cm": [160, 90, 76], "use": "daily meals; child in the house", "value": "ordinary",
    },
    "workshop": {
        "temperature_c": 14, "rh_percent": 60, "ventilation": "poor", "spray_gun": False, "deadline_h": 48,
        "constraints": ["no_stripping"],
    },
    "surfaces": [
        {
            "id": "top", "part": "top", "substrate": ["oak"], "build": "veneer", "veneer_mm": 0.6,
            "existing_finish": "shellac_clear_waxed", "finish_identified": "tested_alcohol",
            "condition": ["wax"], "geometry": ["flat"], "wanted_look": "opaque_light",
            "wanted_colour": "warm white", "wanted_sheen": "matt",
        }
    ],
    "expect": {"must": [{"id": "m1", "surface": "top", "op": "scuff"}]},
    "sources": [],
}  # fmt: skip


def test_the_adapter_refuses_expectations_and_sources():
    assert set(given_part(RAW)) == {"situation", "item", "workshop", "surfaces"}
    with pytest.raises(ValueError, match="look at: expect, id, sources"):
        adapt_piece(RAW)


def test_a_piece_is_read_as_a_person_would_write_it_down():
    adapted = adapt_piece(given_part(RAW))
    (top,) = adapted.piece.surfaces
    assert adapted.surface_of == {"top": "top"}
    assert top.look == Look(kind="opaque", colour="warm white", depth=7, sheen="matt")
    assert (top.veneer_um, top.area_m2, top.use) == (600, 1.44, "table")
    assert top.tested == (("alcohol-drop", "yes"),)
    assert "loose-joint" in top.damage
    assert dict(top.contamination)["wax"] == 0.9
    assert adapted.piece.child
    assert adapted.piece.constraints == {"no stripping"}
    assert adapted.piece.deadline_h == 48.0
    assert (adapted.workshop.air_likely.temp_c, adapted.workshop.ventilation) == (14.0, "poor")
    assert "spray" not in adapted.workshop.methods
    assert adapted.unread == ()


ZERO = Range(low=0.0, likely=0.0, high=0.0)


def plan_of(
    *steps: Step,
    kind: str = "opaque",
    tests: tuple[Advice, ...] = (),
    risks: tuple[Risk, ...] = (),
    reasons: tuple[tuple[int, str], ...] = (),
    impossible: Impossible | None = None,
    cautions: tuple[Caution, ...] = (),
) -> PiecePlan:
    name = "top"
    costs = tuple(
        StepCost(step=step, minutes=replace(ZERO, likely=60.0), litres=ZERO, money=ZERO,
                 wait_h=replace(ZERO, likely=step.wait_after_h), reason=dict(reasons).get(number, ""))
        for number, step in enumerate(steps)
    )  # fmt: skip
    route = Route(
        steps=costs, risks=tuple(risks), cost=0.0, expected_cost=0.0, minutes=ZERO, money=ZERO, elapsed_h=ZERO,
        value_lost=0.0, aim="balanced", look=kind,
    )  # fmt: skip
    group = GroupPlan(
        name=name, members=(name,), area_m2=1.0, relief="flat", look=Look(kind=kind, depth=7), asked=True, worlds=(),
        route=None if impossible else route, impossible=impossible, tests=tests,
    )  # fmt: skip
    return PiecePlan(
        piece="x", workshop="w", currency="EUR", invented=True, lines=(), groups=(group,),
        risks=tuple((name, risk) for risk in risks), tests=tuple((name, test) for test in tests), buy=(), money=ZERO,
        minutes=ZERO, days=(), wrap_day=9, cured_day=9, cautions=cautions, findings=(), assumed=(),
        worth=Worth(paid=None, sells_low=None, sells_high=None, per_hour=None),
        knowledge_version="",
    )  # fmt: skip


def adapted() -> Adapted:
    return adapt_piece(given_part(RAW))


def test_a_plan_reads_in_the_words_of_the_file():
    plan = plan_of(
        Step(verb="clean", what="mineral-spirits", wait_after_h=2.0),
        Step(verb="repair", what="glue-joint", wait_after_h=12.0),
        Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"wet"})),
        Step(verb="prime", what="shellac-primer", coats=2, wait_after_h=3.0),
        Step(verb="paint", what="acrylic-paint", coats=2),
        Step(verb="wax", what="paste-wax"),
    )
    (top,) = lanes_of(plan, adapted(), KNOW)
    wash, mend, scuff, prime, paint, wax = top.acts
    assert wash.said["removes"] == {"wax"}
    assert mend.said["what"] == {"glue_joint"}
    assert (scuff.dry, scuff.said["to"]) == (False, {"key"})
    assert (prime.classes, prime.coats, prime.temp_c) == ({"shellac_primer_pigmented"}, 2, 14.0)
    assert prime.said["directly_on"] == {"shellac_clear_waxed"}
    assert (paint.start_h, paint.said["colour"]) == (pytest.approx(21.0), {"light"})
    assert wax.said["directly_on"] == {"acrylic_paint_waterborne"}
    (ending,) = endings_of(plan, (top,), adapted())
    assert (ending.planned, ending.top) == (True, "acrylic_paint_waterborne")


def test_stripping_ends_on_bare_wood_and_its_wash_takes_the_residue():
    plan = plan_of(
        Step(verb="strip", what="strong-solvent"),
        Step(verb="rinse", what="mineral-spirits", wait_after_h=24.0),
        Step(verb="wax", what="paste-wax"),
        kind="natural",
    )
    (top,) = lanes_of(plan, adapted(), KNOW)
    assert top.acts[0].classes == {"solvent"}
    assert "residue" in top.acts[1].said["removes"]
    assert top.acts[2].said["what"] == {"dry_out"}
    (ending,) = endings_of(plan, (top,), adapted())
    assert (ending.planned, ending.top) == (False, "paste_wax")


def test_dry_work_waits_for_the_lead_test_where_that_is_needed():
    test = Advice(test="lead-test", gain=0.0, price=1.0, needed=True)
    sand = Step(verb="sand", grit=180, method="random-orbit")
    wet = replace(sand, how=frozenset({"wet"}))
    (top,) = lanes_of(plan_of(sand, wet, tests=(test,)), adapted(), KNOW)
    assert [sorted(act.depends_on) for act in top.acts] == [[], ["lead:negative"], []]
    (top,) = lanes_of(plan_of(sand, tests=(replace(test, needed=False),)), adapted(), KNOW)
    assert top.acts[-1].depends_on == frozenset()


def test_a_refusal_offers_the_nearest_looks():
    clash = Impossible(clash=("a", "b"), nearest=(("opaque", "painted"),))
    lanes = lanes_of(plan_of(impossible=clash), adapted(), KNOW)
    (ending,) = endings_of(plan_of(impossible=clash), lanes, adapted())
    assert lanes[0].refused
    assert (ending.planned, ending.top) == (False, "")
    assert "opaque_light" in ending.offered


def test_warnings_come_from_tests_risks_reasons_repairs_cautions_and_figures():
    plan = plan_of(
        Step(verb="scuff"),
        Step(verb="repair", what="glue-joint"),
        tests=(Advice(test="lead-test", gain=0.0, price=1.0, needed=True),),
        risks=(
            Risk(fault="craters", chance=0.1, step=1, why=""),
            Risk(fault="runs", chance=0.09, step=1, why=""),
        ),
        reasons=((0, "without it: peeling, likely – no key – none at all"),),
        cautions=(Caution(id="vapour-spirits", steps=(), text="", source=""),),
    )
    assert warnings_of(plan, adapted(), KNOW) == (
        "lead", "fisheye", "peeling", "structural", "fire_flash", "solvent_vapour", "not_enough_time",
    )  # fmt: skip
    assert "cure_before_use" in warnings_of(replace(plan, cured_day=30), adapted(), KNOW)
    assert "not_enough_time" not in warnings_of(replace(plan, wrap_day=2), adapted(), KNOW)


def test_only_a_reason_that_names_a_fault_warns():
    assert reason_fault("without it: craters (fisheye), likely – silicone", KNOW) == "craters"
    assert reason_fault("makes the look", KNOW) == ""
    assert reason_fault("without it the look is not reached", KNOW) == ""


def test_a_plan_passes_only_when_nothing_is_missed():
    raw = {**RAW, "expect": {**RAW["expect"], "must_not": [{"id": "n1", "surface": "top", "op": "strip"}]}}
    good, bad = Step(verb="scuff"), Step(verb="strip", what="strong-solvent")
    for steps, passed, met in (((good,), 1, 2), ((good, bad), 0, 1)):
        verdicts = plan_cases.judge([raw], MATCHER, KNOW, lambda *_given, steps=steps: plan_of(*steps))
        totals = plan_cases.score(verdicts)
        assert (totals["pieces"], totals["passed"], totals["expectations"], totals["met"]) == (
            1,
            passed,
            2,
            met,
        )
        assert [miss["id"] for miss in totals["misses"]] == ([] if passed else ["n1"])


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("schema: trade_cases\nschema_version: 1\n", "follows schema trade_cases version 1"),
        ("schema: plan_cases\nschema_version: 1\npieces: none\n", "holds no list of pieces"),
        ("schema: plan_cases\nschema_version: 1\npieces:\n- {id: x}\n", "x: lacks situation"),
        ("a: [\n", "is not YAML"),
    ],
)
def test_a_file_of_another_schema_is_a_wrong_call(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: str, says: str
):
    path = tmp_path / "pieces.yaml"
    path.write_text(content, encoding="utf-8")
    assert plan_cases.main([str(path)]) == 2
    assert says in capsys.readouterr().err
