"""Faults made by hand, and what the checker says of each in full."""

from dataclasses import replace

import pytest

from plan_pieces import facts, made, old, one_surface, planned
from refettle.domain.air import Air
from refettle.domain.piece import Look, Piece, Product, Surface
from refettle.domain.piece_plan import Day, PiecePlan
from refettle.domain.plan import Range, Risk, Route, StepCost
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.planning import check_ledger as ledger
from refettle.planning.check import check_plan, check_route
from refettle.planning.start import start

ZERO = Range(low=0.0, likely=0.0, high=0.0)
SHOP = Workshop()
SHELLAC = Step(
    verb="topcoat", what="shellac-dewaxed", method="brush", coats=2, wait_between_h=3.0, wait_after_h=3.0
)
PAINT = Step(verb="paint", what="acrylic-paint", method="brush", wait_after_h=8.0)
WRAP = Step(verb="wait", what="safe to wrap", wait_after_h=200.0)
SCUFF = Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"clean dust"}))
SHELLAC_FACTS = facts().film("shellac-dewaxed")
NATURAL = Look(kind="natural")


def by_hand(*steps: Step) -> Route:
    """Return a route of bare steps, nothing worked out."""
    costs = tuple(
        StepCost(step=s, minutes=ZERO, litres=ZERO, money=ZERO, wait_h=ZERO, because=("verb:wait",))
        for s in steps
    )
    return Route(
        steps=costs,
        risks=(),
        cost=0.0,
        expected_cost=0.0,
        minutes=ZERO,
        money=ZERO,
        elapsed_h=ZERO,
        value_lost=0.0,
        aim="by hand",
        look="natural",
    )


def said(
    code: str,
    *steps: Step,
    surface: Surface | None = None,
    shop: Workshop = SHOP,
    year: int = 1995,
    demands: frozenset[str] = frozenset(),
) -> list[str]:
    """Return the findings of one code on a route made by hand."""
    top = surface or one_surface("top", look=NATURAL)
    piece = made(top, year=year, demands=demands)
    found = check_route(facts(), piece, shop, top, by_hand(*steps), top.look or NATURAL)
    return [finding.text() for finding in found if finding.code == code]


STAINED = one_surface("top", look=Look(kind="stained"))
PAINTED_OVER = one_surface("top", look=NATURAL, layers=(old("alkyd-enamel", kind="paint"),))
LOOSE = one_surface("top", look=NATURAL, damage=("loose-joint",))
DYE = Step(verb="stain", what="water-dye", method="wipe", wait_after_h=12.0)


@pytest.mark.parametrize(
    ("code", "steps", "text"),
    [
        (
            "unknown-verb",
            (Step(verb="polish"),),
            'demo: top/1: "polish" is no step – use one of the verbs of a step  [unknown-verb]',
        ),
        (
            "unknown-name",
            (replace(SHELLAC, what="gold"),),
            'demo: top/1: "gold" is no known class – name a known class  [unknown-name]',
        ),
        (
            "unknown-name",
            (SCUFF, Step(verb="clean", what="tea")),
            'demo: top/2: "tea" is no known cleaner – name a known cleaner  [unknown-name]',
        ),
        (
            "unknown-name",
            (Step(verb="strip", what="tea"),),
            'demo: top/1: "tea" is no known remover – name a known remover  [unknown-name]',
        ),
        (
            "unknown-name",
            (Step(verb="bleach", what="tea"),),
            'demo: top/1: "tea" is no known bleach – name a known bleach  [unknown-name]',
        ),
        (
            "unknown-name",
            (replace(SCUFF, method="thumb"),),
            'demo: top/1: "thumb" is no known tool – name a known tool  [unknown-name]',
        ),
        (
            "tool-not-there",
            (replace(SCUFF, method="random-orbit"),),
            (
                "demo: top/1: the workshop has no random-orbit sander – do it by hand or add it to the tools"
                "  [tool-not-there]"
            ),
        ),
        (
            "method-not-there",
            (replace(SHELLAC, method="spray"),),
            'demo: top/1: the workshop cannot "spray" – lay it on in a way the workshop has  [method-not-there]',
        ),
        (
            "method-unfit",
            (replace(SHELLAC, method="roller"),),
            (
                f'demo: top/1: dewaxed shellac is not made to "roller" – use {" or ".join(SHELLAC_FACTS.methods)}'
                "  [method-unfit]"
            ),
        ),
        (
            "recoat-too-early",
            (replace(SHELLAC, wait_between_h=0.5), WRAP),
            (
                f"demo: top/1: dewaxed shellac below has dried for 0.5 h of the {SHELLAC_FACTS.recoat_from_h:g} h it "
                "needs at the label's air before a coat – wait about "
                f"{SHELLAC_FACTS.recoat_from_h - 0.5:.1f} h (at the label's air) longer before it  [recoat-too-early]"
            ),
        ),
        (
            "sand-too-early",
            (replace(SHELLAC, wait_after_h=1.0), SCUFF, WRAP),
            (
                f"demo: top/2: dewaxed shellac has dried for 1.0 h of the {SHELLAC_FACTS.sand_h:g} h it needs at the "
                f"label's air before it can be sanded – wait about {SHELLAC_FACTS.sand_h - 1.0:.1f} h (at the label's "
                "air) longer before it  [sand-too-early]"
            ),
        ),
        (
            "wrap-too-early",
            (SHELLAC,),
            (
                f"demo: top/1: dewaxed shellac has dried for 3 h of the {SHELLAC_FACTS.wrap_h:g} h it needs at the "
                "label's air before it is wrapped – end the route with a longer wait  [wrap-too-early]"
            ),
        ),
        (
            "air-unfit",
            (replace(SHELLAC, air=Air(temp_c=8.0, rh=0.9)), WRAP),
            (
                f"demo: top/1: dewaxed shellac wants {SHELLAC_FACTS.min_c:g}–{SHELLAC_FACTS.max_c:g} °C and at most "
                f"{SHELLAC_FACTS.rh_max:.0%}; it gets 8 °C and 90% – make the air first, or take a class that bears it"
                "  [air-unfit]"
            ),
        ),
        (
            "air-not-made",
            (replace(SHELLAC, air=Air(temp_c=18.0, rh=0.5)), WRAP),
            (
                "demo: top/1: dewaxed shellac counts on 18 °C and 50%, which no step makes before it – make the air "
                "first  [air-not-made]"
            ),
        ),
        (
            "hardware-too-late",
            (SHELLAC, Step(verb="take_off"), WRAP),
            "demo: top/2: hardware comes off after a coat – take it off before the first coat  [hardware-too-late]",
        ),
        (
            "hardware-too-early",
            (Step(verb="refit"), SHELLAC, WRAP),
            (
                "demo: top/1: hardware is refitted before the last coat – refit it after the last coat"
                "  [hardware-too-early]"
            ),
        ),
        (
            "look-missed",
            (SCUFF,),
            "demo: top: the steps do not end in the look wanted: natural – plan it again  [look-missed]",
        ),
        (
            "look-missed",
            (PAINT, WRAP),
            "demo: top: the steps do not end in the look wanted: natural – plan it again  [look-missed]",
        ),
    ],
)
def test_what_cannot_be_done_is_said(code: str, steps: tuple[Step, ...], text: str) -> None:
    assert said(code, *steps) == [text]


def test_a_sound_route_by_hand_has_nothing_against_its_order() -> None:
    codes = {
        "recoat-too-early", "sand-too-early", "wrap-too-early", "air-unfit", "air-not-made", "look-missed",
        "films-differ", "coat-before-repair", "colour-without-sample", "lead-untested", "against-demand",
    }  # fmt: skip
    assert [text for code in sorted(codes) for text in said(code, SCUFF, SHELLAC, SCUFF, SHELLAC, WRAP)] == []


def test_slow_air_makes_a_wait_too_short() -> None:
    cold = replace(SHOP, air_likely=Air(temp_c=12.0, rh=0.65))
    waits = replace(SHELLAC, wait_between_h=SHELLAC_FACTS.recoat_from_h)
    assert said("recoat-too-early", waits, WRAP) == []
    assert len(said("recoat-too-early", waits, WRAP, shop=cold)) == 1


def test_structure_is_mended_before_any_coat() -> None:
    name = facts().name("damage", "loose-joint")
    mend = Step(verb="repair", what=facts().damage("loose-joint").mend, wait_after_h=24.0)
    text = f"demo: top/1: {name} is not mended yet – mend it before any coat  [coat-before-repair]"
    assert said("coat-before-repair", SHELLAC, mend, WRAP, surface=LOOSE) == [text]
    assert said("coat-before-repair", mend, SHELLAC, WRAP, surface=LOOSE) == []


def test_colour_waits_for_a_sample() -> None:
    text = (
        "demo: top/1: colour goes on before a sample was seen – make a sample first  [colour-without-sample]"
    )
    sample = Step(verb="sample", what="hidden place")
    assert said("colour-without-sample", DYE, SHELLAC, WRAP, surface=STAINED) == [text]
    assert said("colour-without-sample", sample, DYE, SHELLAC, WRAP, surface=STAINED) == []


def test_old_paint_makes_no_dust_and_gets_no_heat_before_a_test_for_lead() -> None:
    dust = "demo: top/1: dry dust from old coats that may hold lead; nothing has ruled it out – test for lead first, or"
    heat = "demo: top/1: heat from old coats that may hold lead; nothing has ruled it out – test for lead first, or"
    rest = " work wet and without heat  [lead-untested]"
    gun = Step(verb="strip", what="heat-gun")
    assert said("lead-untested", SCUFF, surface=PAINTED_OVER, year=1938) == [dust + rest]
    assert said("lead-untested", gun, surface=PAINTED_OVER, year=1938) == [heat + rest]
    wet = replace(SCUFF, how=frozenset({"wet"}))
    assert said("lead-untested", wet, surface=PAINTED_OVER, year=1938) == []
    tested = replace(PAINTED_OVER, tested=(("lead-test", "no"),))
    assert said("lead-untested", SCUFF, surface=tested, year=1938) == [dust + rest]
    ruled_out = replace(PAINTED_OVER, lead_chance=0.0)
    assert said("lead-untested", SCUFF, gun, surface=ruled_out, year=1938) == []


@pytest.mark.parametrize(
    ("demand", "steps", "text"),
    [
        (
            "no stripping",
            (Step(verb="strip", what="strong-solvent"),),
            "demo: top/1: it goes against the demand: no stripping – keep the old film  [against-demand]",
        ),
        (
            "no bare wood",
            (Step(verb="sand", grit=80, method="hand-block", how=frozenset({"to bare"})),),
            "demo: top/1: it goes against the demand: no bare wood – keep the old film  [against-demand]",
        ),
        (
            "no spraying",
            (SCUFF, replace(SHELLAC, method="aerosol"), WRAP),
            "demo: top/2: it goes against the demand: no spraying – lay it on by hand  [against-demand]",
        ),
        (
            "no upkeep",
            (Step(verb="wax", what="paste-wax", method="wipe", wait_after_h=48.0),),
            "demo: top/1: it goes against the demand: no upkeep – end in a film that needs none  [against-demand]",
        ),
    ],
)
def test_demands_hold(demand: str, steps: tuple[Step, ...], text: str) -> None:
    assert said("against-demand", *steps, surface=PAINTED_OVER, demands=frozenset({demand})) == [text]
    assert said("against-demand", *steps, surface=PAINTED_OVER) == []


# ---------------------------------------------------------------------------------------------------------------------
# The own account


def test_the_account_and_the_planner_part_where_a_film_is_missing() -> None:
    state = start(facts(), made(PAINTED_OVER), PAINTED_OVER).worlds[0].states[0]
    account = ledger.opened(facts(), state)
    assert ledger.differs(account, state) == ""
    assert ledger.differs(replace(account, layers=()), state) == (
        "films are 2 × alkyd-enamel there, none by own count"
    )
    thick = replace(account.layers[0], um=account.layers[0].um + 50)
    assert ledger.differs(replace(account, layers=(thick,)), state) == (
        f"alkyd-enamel is {state.stack[0].um} µm there, {thick.um:.0f} µm by own count"
    )
    assert ledger.differs(replace(account, wood_um=100.0), state) == (
        f"{state.wood_um} µm of wood are left there, 100 µm by own count"
    )


def test_coats_of_one_kind_are_one_film_and_dry_anew_with_each() -> None:
    know = facts()
    account = ledger.Account(layers=(), wood_um=5000.0, structural=frozenset())
    account = ledger.waited(know, ledger.coated(know, account, SHELLAC), 3.0, Air())
    (layer,) = account.layers
    assert (layer.coats, layer.dried_h) == (1, pytest.approx(3.0))
    (layer,) = ledger.coated(know, account, SHELLAC).layers
    assert (layer.coats, layer.dried_h, layer.um) == (2, 0.0, pytest.approx(2 * SHELLAC_FACTS.dry_um))
    assert [one.cls for one in ledger.coated(know, account, PAINT).layers] == [
        "shellac-dewaxed",
        "acrylic-paint",
    ]


# ---------------------------------------------------------------------------------------------------------------------
# Numbers of a planned route, and of the whole plan

PIECE = made(one_surface("top", look=Look(kind="opaque", colour="white"), layers=(old("shellac-waxed"),)))


def plan_of(piece: Piece = PIECE) -> tuple[PiecePlan, Route]:
    """Return a sound plan and its only route."""
    plan = planned(piece, SHOP, brief=True)
    route = plan.groups[0].route
    assert route is not None
    return plan, route


def with_route(plan: PiecePlan, route: Route) -> PiecePlan:
    """Return the plan with another route for its only group."""
    return replace(plan, groups=(replace(plan.groups[0], route=route),))


def with_step(route: Route, number: int, cost: StepCost) -> Route:
    """Return the route with one step's amounts changed."""
    return replace(route, steps=(*route.steps[: number - 1], cost, *route.steps[number:]))


def told(plan: PiecePlan, piece: Piece = PIECE, shop: Workshop = SHOP) -> list[str]:
    """Return all findings on a plan."""
    return [finding.text() for finding in check_plan(facts(), piece, shop, plan)]


def first_coat(route: Route) -> int:
    """Return the number of the first coat."""
    return next(n for n, c in enumerate(route.steps, start=1) if c.step.is_coat)


def test_the_plan_that_is_damaged_below_is_sound() -> None:
    assert told(plan_of()[0]) == []


def test_amounts_of_a_step_are_worked_out_again() -> None:
    plan, route = plan_of()
    number = first_coat(route)
    cost = route.steps[number - 1]
    litres, money, wait = cost.litres.likely, cost.money.likely, cost.wait_h.likely
    made_wrong = {
        replace(cost, litres=Range(low=0.0, likely=litres / 2, high=litres)): (
            f"it says {litres / 2:.3f} L, its coats take {litres:.3f} L – work the litres out again  [litres-differ]"
        ),
        replace(cost, money=Range(low=0.0, likely=money / 2, high=money)): (
            f"it says {money / 2:.2f}, its litres cost {money:.2f} – work the price out again  [price-differs]"
        ),
        replace(cost, wait_h=Range(low=0.0, likely=wait + 1, high=wait + 2)): (
            f"it says {wait + 1:g} h of waiting, its waits add up to {wait:g} h – add up the waits again  [wait-differs]"
        ),
        replace(cost, minutes=Range(low=3.0, likely=2.0, high=1.0)): (
            "minutes runs 3, 2, 1 – put low, likely, high in order  [range-upside-down]"
        ),
        replace(cost, because=()): (
            "its numbers lead to no source – name fact rows, rule:, formula: or verb:  [no-source]"
        ),
        replace(cost, because=("f-0", "rule:none")): (
            "its numbers rest on what nobody knows: f-0, rule:none – name fact rows, rule:, formula: or verb:"
            "  [no-source]"
        ),
    }
    for wrong, text in made_wrong.items():
        assert f"demo: top/{number}: {text}" in told(with_route(plan, with_step(route, number, wrong)))


def test_totals_of_a_route_are_added_up_again() -> None:
    plan, route = plan_of()
    more = Range(low=1.0, likely=1.0, high=1.0)
    expected, lost = route.expected_cost, route.value_lost
    made_wrong = {
        replace(route, minutes=route.minutes + more): (
            f"minutes are {route.minutes.likely + 1:.2f}, its steps add up to {route.minutes.likely:.2f} – add up again"
            "  [sum-differs]"
        ),
        replace(route, elapsed_h=route.elapsed_h + more): (
            f"elapsed hours are {route.elapsed_h.likely + 1:.2f}, its steps add up to {route.elapsed_h.likely:.2f} – "
            "add up again  [sum-differs]"
        ),
        replace(route, value_lost=lost + 5.0): (
            f"value lost is {lost + 5.0:.2f}, by its steps it is {lost:.2f} – count the original surface once, where a "
            "step takes or hides it  [value-differs]"
        ),
        replace(route, expected_cost=expected - 1.0): (
            f"expected cost is {expected - 1.0:.2f}, its parts add up to {expected:.2f} – add up money, hours, days, "
            "value lost and faults again  [cost-differs]"
        ),
    }
    for wrong, text in made_wrong.items():
        assert f"demo: top: {text}" in told(with_route(plan, wrong))


def test_a_search_cost_that_its_steps_cannot_make_is_found() -> None:
    plan, route = plan_of()
    found = [text for text in told(with_route(plan, replace(route, cost=1.0))) if "the search says" in text]
    assert len(found) == 1
    assert found[0].startswith("demo: top: the search says 1.00, its steps make ")
    assert found[0].endswith(" – follow the cost of the route step by step  [cost-differs]")


def test_chances_are_those_of_the_rules() -> None:
    plan, route = plan_of()
    worst = route.risks[0]
    name = facts().name("fault", worst.fault)
    text = (
        f"demo: top: {name} is given a chance of {worst.chance / 2:.4f}, the rules say {worst.chance:.4f} – play the "
        "route through all worlds again  [chance-differs]"
    )
    lower: Risk = replace(worst, chance=worst.chance / 2)
    assert text in told(with_route(plan, replace(route, risks=(lower, *route.risks[1:]))))
    gone = f"demo: top: {name} is given a chance of 0.0000, the rules say {worst.chance:.4f} – play the route"
    assert any(t.startswith(gone) for t in told(with_route(plan, replace(route, risks=route.risks[1:]))))


def test_a_risk_is_laid_to_a_step_that_meets_it() -> None:
    plan, route = plan_of()
    later = next(r for r in route.risks if r.step == 0)
    moved = tuple(replace(r, step=1) if r is later else r for r in route.risks)
    name = facts().name("fault", later.fault)
    assert (
        f"demo: top/1: {name} is laid to this step, where no rule speaks of it – name the step that adds most to it"
        "  [risk-misplaced]"
    ) in told(with_route(plan, replace(route, risks=moved)))


def test_every_surface_is_planned_once() -> None:
    plan, _ = plan_of()
    twice = replace(plan, groups=plan.groups * 2)
    unknown = replace(plan, groups=(replace(plan.groups[0], members=("top", "lid")),))
    assert "demo: top: it is planned 2 times – put it in exactly one group  [surface-not-once]" in told(twice)
    assert (
        "demo: top: the group names a surface that the piece has not – name its own  [surface-unknown]"
        in told(unknown)
    )
    assert (
        "demo: top: it has neither or both of a route and a reason why not – give one of the two  [no-answer]"
        in told(replace(plan, groups=(replace(plan.groups[0], route=None),)))
    )


def test_what_is_bought_is_enough_and_used() -> None:
    plan, _ = plan_of()
    item = next(i for i in plan.buy if i.kind == "film")
    rest = tuple(i for i in plan.buy if i is not item)
    short = replace(plan, buy=(replace(item, buy="0.01 L"), *rest))
    assert (
        f"demo: buy/{item.cls}: {item.name}: 0 L there and 0.01 L bought do not make the {item.need_l.likely:.2f} L "
        "needed – buy more  [runs-short]"
    ) in told(short)
    assert (
        f"demo: buy/{item.cls}: {item.name} is used and not on the list – put it there  [runs-short]"
        in told(replace(plan, buy=rest))
    )
    strange = replace(item, cls="danish-oil" if facts().has("film", "danish-oil") else "drying-oil")
    name = facts().name("film", strange.cls)
    assert (
        f"demo: buy/{strange.cls}: no step uses {name} – take it off the list  [bought-for-nothing]"
        in told(replace(plan, buy=(*plan.buy, strange)))
    )
    shelf = replace(SHOP, products=(Product(name="rest of a tin", cls=item.cls, have_l=0.3),))
    assert (
        f"demo: buy/{item.cls}: the list says 0 L of {item.name} is there, the shelf holds 0.3 L – read the shelf "
        "again  [shelf-differs]"
    ) in told(plan, shop=shelf)


def test_two_tin_sizes_count_together() -> None:
    plan, _ = plan_of()
    item = next(i for i in plan.buy if i.kind == "film")
    need = Range(low=1.0, likely=1.7, high=2.0)
    enough = replace(item, need_l=need, buy="2 × 0.75 L + 0.25 L")
    rest = tuple(i for i in plan.buy if i is not item)
    assert told(replace(plan, buy=(enough, *rest))) == []


def test_sums_risks_and_lines_of_the_whole_plan() -> None:
    plan, _ = plan_of()
    more = Range(low=2.0, likely=2.0, high=2.0)
    money, minutes = plan.money.likely, plan.minutes.likely
    assert (
        f"demo: money is {money + 2:.2f}, what is bought adds up to {money:.2f} – add up again  [sum-differs]"
    ) in told(replace(plan, money=plan.money + more))
    assert (
        f"demo: hands-on is {minutes + 2:.0f} min, its routes, set-ups and work on the whole piece add up to "
        f"{minutes:.0f} min – add up again"
        "  [sum-differs]"
    ) in told(replace(plan, minutes=plan.minutes + more))
    assert "demo: the first screen has 0 lines – say it in one to eight  [lines-off]" in told(
        replace(plan, lines=())
    )
    fault = plan.risks[0][1].fault
    assert (
        f"demo: top: {fault} stands otherwise in the piece's list than in the group's – take the piece's list from its "
        "groups  [risk-differs]"
    ) in told(replace(plan, risks=plan.risks[1:]))


# ---------------------------------------------------------------------------------------------------------------------
# Days


def with_days(plan: PiecePlan, *days: Day) -> PiecePlan:
    """Return the plan with other evenings."""
    return replace(plan, days=days)


def test_an_evening_left_out_is_found() -> None:
    plan, _ = plan_of()
    last = plan.days[-1].tasks[0]
    assert (
        f"demo: top/{last.number}: no evening is left for it, or not enough of one – lay every coat into the evenings"
        "  [step-without-day]"
    ) in told(with_days(plan, *plan.days[:-1]))


def test_a_task_comes_once_in_turn_and_as_long_as_its_step() -> None:
    plan, _ = plan_of()
    *before, last = plan.days
    task = last.tasks[-1]
    twice = replace(last, tasks=(*last.tasks, task), minutes=last.minutes + task.minutes)
    assert (
        f'demo: days/{last.day}: "{task.text}" is no step still to do – take it out  [task-too-many]'
        in told(with_days(plan, *before, twice))
    )
    hasty = replace(last, tasks=(*last.tasks[:-1], replace(task, wait_h=1.0)))
    assert (
        f"demo: days/{last.day}: step {task.number} of top takes {task.minutes:.0f} min and then 1 h here, "
        f"{task.minutes:.0f} min and {task.wait_h:g} h in the route – take both from the route  [task-differs]"
    ) in told(with_days(plan, *before, hasty))
    first = plan.days[0]
    swapped = replace(first, tasks=first.tasks[::-1])
    was, now = first.tasks[0].number, first.tasks[-1].number
    assert was != now
    assert (
        f"demo: days/{first.day}: step {now} of top is done while step {was} is next – keep the order of the route"
        "  [task-disordered]"
    ) in told(with_days(plan, swapped, *plan.days[1:]))


def test_no_task_comes_before_the_wait_ahead_of_it_is_over() -> None:
    plan, _ = plan_of()
    waits = next(i for i, d in enumerate(plan.days[:-1]) if d.tasks[-1].wait_h > SHOP.hours_per_evening)
    day, after = plan.days[waits], plan.days[waits + 1]
    joined = replace(day, tasks=day.tasks + after.tasks, minutes=day.minutes + after.minutes)
    found = told(with_days(plan, *plan.days[:waits], joined, *plan.days[waits + 2 :]))
    path = f"demo: days/{day.day}: step {after.tasks[0].number} comes too early: the wait before it ends "
    assert [
        t for t in found if t.startswith(path) and t.endswith("move it to a later evening  [task-too-early]")
    ]


def test_dust_stays_away_from_wet_coats() -> None:
    plan, route = plan_of()
    scuff = next(
        n for n, c in enumerate(route.steps, start=1) if c.step.verb == "scuff" and n > first_coat(route)
    )
    day = next(d for d in plan.days if any(t.number == scuff - 1 for t in d.tasks))
    after = next(d for d in plan.days if any(t.number == scuff for t in d.tasks))
    joined = replace(day, tasks=day.tasks + after.tasks, minutes=day.minutes + after.minutes)
    kept = tuple(joined if d is day else d for d in plan.days if d is not after)
    assert (
        f"demo: days/{day.day}: step {scuff} makes dust while a coat is wet – do dusty work before coats, or another "
        "evening  [dust-on-wet]"
    ) in told(with_days(plan, *kept))


def test_evenings_keep_their_length_their_sums_and_their_order() -> None:
    plan, _ = plan_of()
    first = plan.days[0]
    short = replace(SHOP, hours_per_evening=0.1)
    assert any(
        t.startswith(f"demo: days/{first.day}: it takes ")
        and t.endswith("move work to another evening  [evening-too-long]")
        for t in told(plan, shop=short)
    )
    off = replace(first, minutes=first.minutes + 5)
    assert (
        f"demo: days/{first.day}: it says {first.minutes + 5:.0f} min, its tasks and set-ups add up to "
        f"{first.minutes:.0f} min – add up again  [sum-differs]"
    ) in told(with_days(plan, off, *plan.days[1:]))
    back = with_days(plan, *plan.days[:-1], replace(plan.days[-1], day=first.day))
    assert (
        f"demo: days/{first.day}: it stands after day {plan.days[-2].day} – put the days in order  [days-disordered]"
    ) in told(back)


def test_wrapping_waits_for_the_last_film() -> None:
    plan, _ = plan_of()
    found = told(replace(plan, wrap_day=plan.days[-1].day))
    text = f"demo: days: wrapping is on day {plan.days[-1].day}, the last wait ends on day "
    assert [
        t for t in found if t.startswith(text) and t.endswith(" – wait for the last film  [wrap-too-early]")
    ]
    assert (
        "demo: days: it is cured before it is safe to wrap – cure takes longer than wrapping  [days-disordered]"
        in told(replace(plan, cured_day=plan.wrap_day - 1))
    )
