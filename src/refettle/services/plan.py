"""Plan a piece: every group its route, then what the whole needs."""

from dataclasses import replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Look, Piece, Workshop
from refettle.domain.piece_plan import Day, GroupPlan, PiecePlan
from refettle.domain.plan import Impossible, Route, TestAdvice
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import explain_clash
from refettle.planning.cost import AIMS, BALANCED, Aim
from refettle.planning.engine import Memory
from refettle.planning.pool import build_pool, paying_tests, price_of_test
from refettle.planning.reasons import make_route
from refettle.planning.search import Found
from refettle.planning.start import lead_chance, start
from refettle.services.agree import agree_on_body, agree_on_ground
from refettle.services.buying import ZERO, to_buy
from refettle.services.cases import Case, first_try, relooked_case
from refettle.services.cautions import cautions_of
from refettle.services.days import around, lay_days
from refettle.services.grouping import Group, group_surfaces
from refettle.services.lines import first_screen
from refettle.services.step_words import step_words
from refettle.services.totals import risks_of, setup_of, tests_of, worth_of

_BETTER = 0.10
_ASIDE = 100
_BY_THE_DATE = Aim(name="by the date", days=12.0)


def group_plan(know: Knowledge, piece: Piece, case: Case, found: Found, *, brief: bool = False) -> GroupPlan:
    """
    Return the plan of one group from its route.

    Parameters
    ----------
    know, piece
        Facts and piece.
    case, found
        The group on its bench and its route, empty where there is none.
    brief
        Leave out alternatives, tests and reasons.

    Returns
    -------
    GroupPlan
        With a route, or with the reason why there is none.
    """
    group = case.group
    base = GroupPlan(
        name=group.name, members=group.members, area_m2=group.surface.area_m2, relief=group.surface.relief,
        look=case.menu.look, asked=case.asked,
        worlds=tuple((w.label, w.weight) for w in case.bench.begin.worlds), route=None,
        exact=found.exact, gap=0.0 if found.exact or not found.steps else 1.0 - found.bound / max(found.cost, 1e-9),
    )  # fmt: skip
    if not found.steps:
        return replace(base, impossible=_refusal(case, piece))
    route = make_route(case.bench, case.menu, found, BALANCED.name, with_reasons=not brief)
    if brief:
        return replace(base, route=route)
    pool = build_pool(case.bench, case.menu, found)
    tests = (*_needed_tests(know, piece, case, found), *paying_tests(case.bench, pool, skip=_UNSEARCHED))
    return replace(
        base,
        route=route,
        tests=tests,
        alternatives=_alternatives(case, found, route),
        leave_alone=_leave_alone(case),
    )


_UNSEARCHED = frozenset({"lead-test"})


def _refusal(case: Case, piece: Piece) -> Impossible:
    """Return the clash as a value with its finding."""
    clash = explain_clash(case.bench, case.menu)
    nearest = "; ".join(words for _, words in clash.nearest[:2])
    where = case.group.surface.where
    finding = Finding(
        code="look-out-of-reach",
        level="warning",
        where=where if where.file else Where(file=piece.name),
        what=f"{case.group.name}: {' and '.join(clash.clash)} cannot be had together",
        do=f"nearest that can be had: {nearest}" if nearest else "change the look or lift a demand",
        because=clash.because,
    )
    return replace(clash, findings=(finding,))


def _needed_tests(know: Knowledge, piece: Piece, case: Case, found: Found) -> tuple[TestAdvice, ...]:
    """Return the tests that safety asks for."""
    surface = case.group.surface
    painted = any(know.film(f.cls).opaque for w in case.bench.begin.worlds for f in w.states[0].stack)
    chance = lead_chance(piece, surface)
    answered = {t for t, _ in surface.tested}
    touches = any(s.verb in {"sand", "scuff", "scrape", "strip", "clean"} for s in found.steps)
    if not painted or chance < 0.03 or "lead-test" in answered or not touches:
        return ()
    return (
        TestAdvice(
            test="lead-test",
            gain=0.0,
            price=price_of_test(case.bench, "lead-test"),
            answers=(("yes", chance, "no sanding, no heat; ask someone licensed for lead"),
                     ("no", 1.0 - chance, "go on as planned, dry sanding allowed")),
            needed=True,
            why="cut a notch through all coats where it won't show and test for lead; until then no dry sanding, no heat",
        ),
    )  # fmt: skip


def _alternatives(case: Case, found: Found, route: Route) -> tuple[Route, ...]:
    """Return the routes of the other weightings that are at least 10 % better in their name."""
    kept = []
    seen = {found.steps}
    for aim in AIMS[1:]:
        other = case.search(aim, most=_ASIDE)
        if not other.steps or other.steps in seen:
            continue
        made = make_route(case.bench, case.menu, other, aim.name, with_reasons=False)
        if _measure(case, made, aim.name) <= (1.0 - _BETTER) * _measure(case, route, aim.name):
            seen.add(other.steps)
            kept.append(made)
    return tuple(kept)


def _measure(case: Case, route: Route, aim: str) -> float:
    """Return what an aim counts in a route."""
    if aim == "cheaper":
        return route.money.likely
    if aim == "fewer hours":
        return route.minutes.likely
    if aim == "sooner":
        return route.elapsed_h.likely
    return sum(r.chance * case.bench.harm_of(r.fault) for r in route.risks)


def _leave_alone(case: Case) -> Route | None:
    """Return the route of keeping the old finish, where there is one to keep."""
    states = case.bench.begin.worlds[0].states[0]
    if case.menu.look.kind == "keep" or states.bare:
        return None
    other = relooked_case(case, Look(kind="keep"))
    found = other.search()
    if not found.steps:
        return None
    return make_route(other.bench, other.menu, found, "leave it alone", with_reasons=False)


def plan_piece(piece: Piece, workshop: Workshop, know: Knowledge, *, brief: bool = False) -> PiecePlan:
    """
    Return the plan of a piece.

    Parameters
    ----------
    piece, workshop
        As read from their files.
    know
        All facts.
    brief
        Leave out alternatives, tests and reasons: for measuring the search alone.

    Returns
    -------
    PiecePlan
        Never raises for a piece that was read: an impossible look is an answer.
    """
    groups = group_surfaces(piece.surfaces)
    total = sum(g.surface.area_m2 for g in groups) or 1.0
    memory = Memory(know)
    tries = [
        first_try(know, piece, workshop, g, setup_share=max(0.12, g.surface.area_m2 / total), memory=memory)
        for g in groups
    ]
    agreed = agree_on_body(agree_on_ground(tries))
    if piece.deadline_h is not None:
        agreed = [hurried(case, found, piece.deadline_h) for case, found in agreed]
    plans = tuple(group_plan(know, piece, case, found, brief=brief) for case, found in agreed)
    words = {}
    for plan in plans:
        if plan.route is not None:
            for cost in plan.route.steps:
                for step in (cost.step, *_single_coats(cost.step)):
                    words[step] = step_words(know, step)
    days, wrap_day, cured_day = lay_days(know, workshop, plans, words, *around(know, plans))
    buy = to_buy(know, workshop, plans)
    money = sum((b.money for b in buy), start=ZERO)
    minutes = sum((p.route.minutes for p in plans if p.route is not None), start=setup_of(know, plans))
    lead = {p.name: _lead_of(know, piece, g) for p, g in zip(plans, groups, strict=True)}
    whole = PiecePlan(
        piece=piece.name, workshop=workshop.name, currency=workshop.currency, invented=piece.invented, lines=(),
        groups=plans, risks=risks_of(plans), tests=tests_of(plans), buy=buy, money=money, minutes=minutes, days=days,
        wrap_day=wrap_day, cured_day=cured_day,
        cautions=cautions_of(know, piece, workshop, plans, groups, lead),
        findings=(
            *too_late(piece, days, cured_day),
            *(f for p in plans if p.impossible is not None for f in p.impossible.findings),
        ),
        assumed=(*piece.assumed, *workshop.assumed), worth=worth_of(piece, money, minutes),
        knowledge_version=know.version,
    )  # fmt: skip
    return replace(whole, lines=first_screen(know, workshop, whole))


def hurried(case: Case, found: Found, deadline_h: float) -> tuple[Case, Found]:
    """Return a route that keeps the date where the balanced one does not and a faster one is to be had."""
    if _elapsed_h(found) <= deadline_h:
        return case, found
    fast = case.search(_BY_THE_DATE, most=_ASIDE)
    return (case, fast) if fast.steps and _elapsed_h(fast) < _elapsed_h(found) else (case, found)


def _elapsed_h(found: Found) -> float:
    """Return the waits of a route until its last coat can be touched and laid on with care [h]."""
    waits = [s.wait_between_h * max(0, s.coats - 1) + s.wait_after_h for s in found.steps if s.what != "cure"]
    return sum(waits)


def too_late(piece: Piece, days: tuple[Day, ...], cured_day: int) -> tuple[Finding, ...]:
    """Return the finding that the date cannot be kept, or that it is kept before the film has cured."""
    if piece.deadline_h is None:
        return ()
    asked = piece.deadline_h / 24.0
    where = Where(file=piece.name, path="ready in")
    last = max((day.day for day in days if any(task.number for task in day.tasks)), default=0)
    if last > asked + 1:
        what = f"asked for in {asked:.0f} days, the last coat is on day {last}, cured on day {cured_day}"
        do = "say so now, do less, work on more evenings, or make the room warmer"
        return (Finding(code="not-enough-time", level="warning", where=where, what=what, do=do),)
    if cured_day > asked + 1:
        what = f"the last coat is on day {last}, but it is cured only on day {cured_day}"
        do = "until then no hot dishes, wet glasses, cloths or wrapping"
        return (Finding(code="not-cured-by-then", level="note", where=where, what=what, do=do),)
    return ()


def _single_coats(step: Step) -> tuple[Step, ...]:
    """Return the coats of a step as the day list lays them."""
    if not step.is_coat or step.coats < 2:
        return ()
    one = replace(step, coats=1, wait_between_h=0.0, wait_after_h=step.wait_between_h)
    return (one, replace(one, wait_after_h=step.wait_after_h))


def _lead_of(know: Knowledge, piece: Piece, group: Group) -> float:
    """Return the chance of lead on a group [1]; 0 where nothing opaque is on it."""
    begin = start(know, piece, group.surface)
    return max(w.states[0].strength("lead") for w in begin.worlds)
