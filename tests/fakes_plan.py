"""A plan with every kind of entry in it, small and invented, for tests of what shows plans."""

from dataclasses import replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Assumed, Look
from refettle.domain.piece_plan import (
    Caution,
    Choice,
    Day,
    DayTask,
    GroupPlan,
    PiecePlan,
    Purchase,
    Worth,
)
from refettle.domain.plan import Impossible, Range, Risk, Route, StepCost, TestAdvice
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge

ZERO = Range(low=0.0, likely=0.0, high=0.0)


def span(likely: float) -> Range:
    """Return a range around a value."""
    return Range(low=0.7 * likely, likely=likely, high=1.5 * likely)


def cost(
    step: Step, *, minutes: float = 20.0, litres: float = 0.0, money: float = 0.0, reason: str = ""
) -> StepCost:
    """Return what a step takes; its waits are those of the step."""
    wait = step.wait_after_h + step.wait_between_h * (step.coats - 1)
    return StepCost(
        step=step,
        minutes=span(minutes),
        litres=span(litres),
        money=span(money),
        wait_h=span(wait),
        because=("f-1",),
        reason=reason,
    )


def risk(fault: str, chance: float, step: int = 1, why: str = "wax lies below the coat") -> Risk:
    """Return a risk."""
    return Risk(
        fault=fault,
        chance=chance,
        step=step,
        why=why,
        rules=("dirt-between-coats",),
        because=("f-2",),
        worlds=(("waxy shellac", chance),),
    )


def route(
    *steps: StepCost, aim: str = "balanced", risks: tuple[Risk, ...] = (), look: str = "opaque"
) -> Route:
    """Return a route whose sums are those of its steps."""
    return Route(
        steps=steps,
        risks=risks,
        cost=40.0,
        expected_cost=42.0,
        minutes=sum((s.minutes for s in steps), ZERO),
        money=sum((s.money for s in steps), ZERO),
        elapsed_h=sum((s.wait_h for s in steps), ZERO),
        value_lost=12.0,
        aim=aim,
        look=look,
    )


WASH = cost(
    Step(verb="clean", what="soap-water", wait_after_h=3.0), money=0.5, reason="dirt keeps coats from holding"
)
SCUFF = cost(
    Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"wet", "clean dust"})),
    reason="a key for the next coat",
)
PAINT = cost(
    Step(verb="paint", what="acrylic-paint", method="brush", coats=2, wait_between_h=12.0, wait_after_h=12.0),
    litres=0.3,
    money=9.0,
    reason="makes the look",
)
WRAP = cost(Step(verb="wait", what="safe to wrap", wait_after_h=336.0), minutes=0.0)
TAKEN = route(
    WASH,
    SCUFF,
    PAINT,
    WRAP,
    risks=(risk("peeling", 0.3, step=3), risk("water-heat-marks", 0.12, step=5), risk("runs", 0.01, step=3)),
)


def painted() -> GroupPlan:
    """Return a group with a route, other ways, a test and an old finish that may be two things."""
    return GroupPlan(
        name="top",
        members=("top", "leaf.left", "leaf.right"),
        area_m2=1.2,
        relief="flat",
        look=Look(kind="opaque", colour="white", depth=5, sheen="satin"),
        asked=True,
        worlds=(("waxy shellac", 0.7), ("nitrocellulose lacquer, silicone", 0.3)),
        route=TAKEN,
        alternatives=(
            route(WASH, PAINT, aim="fewer hours", risks=TAKEN.risks),
            route(
                WASH,
                replace(SCUFF, step=replace(SCUFF.step, grit=180)),
                PAINT,
                WRAP,
                aim="surer",
                risks=(risk("peeling", 0.05, step=3),),
            ),
        ),
        leave_alone=route(WASH, aim="leave it alone", look="keep"),
        tests=(
            TestAdvice(
                test="lead-test",
                gain=0.0,
                price=4.0,
                needed=True,
                why="test for lead before anything",
                answers=(("yes", 0.3, "ask someone licensed for lead"), ("no", 0.7, "go on as planned")),
            ),
            TestAdvice(
                test="alcohol-drop",
                gain=14.0,
                price=2.0,
                why="alcohol drop: its answer decides what to do",
                answers=(("yes", 0.7, "wash → 2 × paint"), ("no", 0.3, "strip → paint")),
            ),
        ),
        exact=False,
        gap=0.08,
    )


def refused() -> GroupPlan:
    """Return a group whose look cannot be had."""
    return GroupPlan(
        name="inside",
        members=("inside",),
        area_m2=0.4,
        relief="flat",
        look=Look(kind="natural"),
        asked=True,
        worlds=(("bare wood", 1.0),),
        route=None,
        impossible=Impossible(
            clash=("clear finish, the wood's own colour", "foil or laminate face has no wood face to show"),
            nearest=(("opaque", "painted: wash → 2 × paint"),),
            because=("f-3",),
        ),
    )


def piece_plan(*groups: GroupPlan) -> PiecePlan:
    """Return a plan of some groups with an entry of every kind."""
    told = groups or (painted(),)
    return PiecePlan(
        piece="Hall table",
        workshop="Garage",
        currency="EUR",
        invented=True,
        lines=(
            "Before anything: cut a notch through all coats where it won't show and test for lead.",
            "Do it like this: wash → scuff wet → 2 waterborne acrylic furniture paint.",
        ),
        groups=told,
        risks=tuple((g.name, r) for g in told if g.route for r in g.route.risks),
        tests=tuple((g.name, t) for g in told for t in g.tests),
        buy=(
            Purchase(
                cls="acrylic-paint",
                kind="film",
                name="waterborne acrylic furniture paint",
                need_l=span(0.35),
                have_l=0.1,
                buy="0.75 L",
                money=span(24.0),
                because=("f-4",),
            ),
            Purchase(
                cls="shellac-dewaxed",
                kind="film",
                name="dewaxed shellac",
                need_l=span(0.1),
                have_l=0.4,
                buy="",
                money=ZERO,
            ),
            Purchase(
                cls="abrasive-sheet.P240",
                kind="abrasive",
                name="abrasive sheet P240",
                need_count=span(1.2),
                have_count=1.0,
                bought_count=1.0,
                buy="1",
                money=span(1.0),
            ),
        ),
        choice=Choice(ways=1240, cost=88.0, gap=0.07, splits=0, proved=True),
        gear=(
            Purchase(
                cls="water-brush",
                kind="gear",
                name="brush for water-borne coats",
                need_count=Range(low=1.0, likely=1.0, high=1.0),
                bought_count=1.0,
                buy="1",
                money=span(9.0),
            ),
            Purchase(
                cls="gloves",
                kind="gear",
                name="pair of solvent-proof gloves",
                need_count=Range(low=1.0, likely=1.0, high=1.0),
                have_count=6.0,
                buy="",
                money=ZERO,
            ),
        ),
        money=span(25.0),
        minutes=span(90.0),
        days=(
            Day(
                day=1,
                minutes=45.0,
                tasks=(
                    DayTask(
                        group="top", number=1, text="Wash with mild soap and water", minutes=20.0, wait_h=3.0
                    ),
                    DayTask(
                        group="legs", number=1, text="Wash with mild soap and water", minutes=20.0, wait_h=3.0
                    ),
                ),
            ),
        ),
        wrap_day=18,
        cured_day=32,
        cautions=(
            Caution(id="lead", steps=(), text="old paint may hold lead.", source="cfr-16-1303"),
            Caution(
                id="dust", steps=("top/2", "drawer.1/front/2"), text="Wood dust.", source="common-practice"
            ),
        ),
        findings=(
            Finding(
                code="odd-year",
                level="warning",
                where=Where(file="table.yaml", line=3, path="era"),
                what="the year lies ahead",
                do="check it",
            ),
        ),
        assumed=tuple(
            Assumed(path=f"surfaces/leg.{n}/use", value="everyday", why="not a top") for n in range(1, 16)
        ),
        worth=Worth(
            paid=40.0,
            sells_low=180.0,
            sells_high=240.0,
            per_hour=Range(low=-2.0, likely=9.0, high=14.0),
        ),
        knowledge_version="fake",
    )


def leaks(know: Knowledge, text: str) -> set[str]:
    """Return the ids with a hyphen that stand in a text and are not part of somebody's name."""
    names = sorted(
        {i.name for kind in know.identities.values() for i in kind.values() if "-" in i.name}, key=len
    )
    for name in reversed(names):
        text = text.replace(name, "").replace(name.capitalize(), "")
    ids = {id_ for kind in know.identities.values() for id_ in kind if "-" in id_}
    return {id_ for id_ in ids if id_ in text}
