"""Plan a piece: every group its route, then what the whole needs."""

from dataclasses import replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Look, Piece
from refettle.domain.piece_plan import Day, GroupPlan, PiecePlan
from refettle.domain.plan import Impossible, Route, TestAdvice
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import explain_clash
from refettle.planning.cost import AIMS, BALANCED
from refettle.planning.goal import offence
from refettle.planning.mended import as_mended
from refettle.planning.pool import build_pool, paying_tests, price_of_test
from refettle.planning.reasons import end_state, make_route, odds
from refettle.planning.search import Found
from refettle.planning.start import answer_chance
from refettle.services.agree import answers
from refettle.services.around import around, around_minutes
from refettle.services.buying import ZERO, to_buy
from refettle.services.cases import ASIDE, Case, relooked_case
from refettle.services.cautions import LEAD_TOLD, cautions_of
from refettle.services.days import lay_days
from refettle.services.gear import gear_of
from refettle.services.grouping import group_surfaces
from refettle.services.lines import first_screen
from refettle.services.mending import bought_for, give_up_signs, jobs_of, minutes_of
from refettle.services.pools import weighed
from refettle.services.settled import Settled, days_asked, settle
from refettle.services.totals import risks_of, setup_of, tests_of, worth_of

_BETTER = 0.10
_FALLS = 0.05
"""Fall of one fault's chance [1] from which a way is offered as surer; judgement."""
_IN_DAYS_H = 48.0
_LIKELY = 0.6
_SHOWS = 0.3


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
    tests = (*_needed_tests(know, case, found), *paying_tests(case.bench, pool, skip=_UNSEARCHED))
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


def _needed_tests(know: Knowledge, case: Case, found: Found) -> tuple[TestAdvice, ...]:
    """Return the tests that safety asks for."""
    surface = case.group.surface
    chance = lead_of(case)
    answered = {t for t, _ in surface.tested}
    touches = any(s.verb in {"sand", "scuff", "scrape", "strip", "clean"} for s in found.steps)
    if chance < LEAD_TOLD or "lead-test" in answered or not touches:
        return ()
    true = answer_chance(know, "lead-test", yes=True, marks=frozenset({"lead"}))
    false = answer_chance(know, "lead-test", yes=True, marks=frozenset())
    yes = chance * true + (1.0 - chance) * false
    return (
        TestAdvice(
            test="lead-test",
            gain=0.0,
            price=price_of_test(case.bench, "lead-test"),
            answers=(("yes", yes, "no sanding, no heat; ask someone licensed for lead"),
                     ("no", 1.0 - yes, "go on as planned, still wet: a home test can miss some, a laboratory decides")),
            needed=True,
            why="cut a notch through all coats where it won't show and test for lead; until then no dry sanding, no heat",
        ),
    )  # fmt: skip


def fails_likely(know: Knowledge, piece: Piece, plans: tuple[GroupPlan, ...]) -> tuple[Finding, ...]:
    """Return the findings that the best way there is to a look goes wrong more likely than not."""
    told = []
    for plan in plans:
        worst = max(plan.route.risks if plan.route is not None else (), key=lambda r: r.chance, default=None)
        if worst is None or worst.chance < _LIKELY:
            continue
        name = know.fault(worst.fault).name
        what = f"even the best way found: {name}, {odds(worst.chance)} – {worst.why}"
        do = "ask for another look or finish, or take it as it comes"
        where = Where(file=piece.name, path=plan.name)
        told.append(Finding(code="likely-to-fail", level="warning", where=where, what=what, do=do))
    return tuple(told)


def marks_that_stay(know: Knowledge, piece: Piece, agreed: list[tuple[Case, Found]]) -> tuple[Finding, ...]:
    """Return the findings that damage which shows under the look is still there at the end."""
    told = []
    for case, found in agreed:
        if not found.steps or case.menu.look.kind == "bare":
            continue
        state = end_state(case.bench, found.steps)
        left = [name for name in sorted(state.damage) if offence(know, case.menu.look, state, name) > _SHOWS]
        if left:
            what = f"{' and '.join(know.name('damage', name) for name in left)} will still show"
            do = "mending it costs more than it is counted to spoil; to see what it takes, ask why --not with the step"
            where = Where(file=piece.name, path=case.group.name)
            told.append(Finding(code="mark-stays", level="note", where=where, what=what, do=do))
    return tuple(told)


def looks_split(piece: Piece, settled: Settled) -> tuple[Finding, ...]:
    """Return the finding that parts of one look cannot all be done alike."""
    if not settled.choice.splits:
        return ()
    what = "not all parts of one look can be done alike: they differ in their coat, or in old film kept and taken off"
    do = "look at a sample of each side by side, or ask for another look for one of them"
    return (Finding(code="look-split", level="note", where=Where(file=piece.name), what=what, do=do),)


def lead_of(case: Case) -> float:
    """Return the chance of lead on a group, answers of tests counted in [1]; 0 where nothing opaque is on it."""
    return max(world.states[0].strength("lead") for world in case.bench.begin.worlds)


def _alternatives(case: Case, found: Found, route: Route) -> tuple[Route, ...]:
    """
    Return the routes of the other weightings that are at least 10 % better in their name.

    Notes
    -----
    They agree with what the other parts of the look are given, so that each may be taken by itself.
    """
    kept = []
    seen = {found.steps}
    free = replace(case.menu, wanted=frozenset(), wanted_stage="", bare_first=False, keep_film=False)
    agreed = answers(case.bench, case.menu.look, found.steps)
    for aim in AIMS[1:]:
        other = case.search(aim, free, most=ASIDE)
        if case.menu != free and answers(case.bench, case.menu.look, other.steps) != agreed:
            other = case.search(aim, most=ASIDE)
        if not other.steps or other.steps in seen:
            continue
        made = make_route(case.bench, case.menu, other, aim.name, with_reasons=False)
        if _clearly(case, aim.name, made, route):
            seen.add(other.steps)
            kept.append(made)
    return tuple(kept)


def _clearly(case: Case, aim: str, made: Route, route: Route) -> bool:
    """Return whether a route is clearly better than another in its aim's name; a surer one in some fault by itself."""
    if aim == "surer":
        left = {risk.fault: risk.chance for risk in made.risks}
        if all(risk.chance - left.get(risk.fault, 0.0) < _FALLS for risk in route.risks):
            return False
    return _measure(case, made, aim) <= (1.0 - _BETTER) * _measure(case, route, aim)


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
    found = weighed(other, other.search())
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
    piece = as_mended(know, piece)
    groups = group_surfaces(piece.surfaces)
    settled = settle(know, piece, workshop, groups)
    agreed = settled.tries
    plans = tuple(group_plan(know, piece, case, found, brief=brief) for case, found in agreed)
    work = around(know, plans)
    mending = jobs_of(know, piece, workshop)
    days, wrap_day, cured_day = lay_days(know, workshop, plans, work, mending)
    buy = (*to_buy(know, workshop, plans), *bought_for(mending))
    money = sum((b.money for b in buy), start=ZERO)
    minutes = sum((p.route.minutes for p in plans if p.route is not None), start=setup_of(know, plans))
    minutes += around_minutes(work) + minutes_of(mending)
    lead = {case.group.name: lead_of(case) for case, _ in agreed}
    cautions = cautions_of(know, piece, workshop, plans, groups, lead)
    whole = PiecePlan(
        piece=piece.name, workshop=workshop.name, currency=workshop.currency, invented=piece.invented, lines=(),
        groups=plans, risks=risks_of(plans), tests=tests_of(plans), buy=buy, money=money, minutes=minutes, days=days,
        wrap_day=wrap_day, cured_day=cured_day,
        cautions=cautions, gear=gear_of(know, workshop, plans, cautions),
        findings=(
            *too_late(piece, days, wrap_day, cured_day),
            *fails_likely(know, piece, plans),
            *marks_that_stay(know, piece, agreed),
            *give_up_signs(know, piece),
            *looks_split(piece, settled),
            *(f for p in plans if p.impossible is not None for f in p.impossible.findings),
        ),
        assumed=(*piece.assumed, *workshop.assumed), worth=worth_of(piece, money, minutes),
        knowledge_version=know.version, mending=mending, choice=settled.choice if settled.choice.ways > 0 else None,
        due_day=0 if piece.deadline_h is None else int(days_asked(piece.deadline_h)),
    )  # fmt: skip
    return replace(whole, lines=first_screen(know, workshop, whole))


def too_late(piece: Piece, days: tuple[Day, ...], wrap_day: int, cured_day: int) -> tuple[Finding, ...]:
    """Return the finding that the date cannot be kept, or that it is kept before the film has cured."""
    if piece.deadline_h is None:
        return ()
    asked = days_asked(piece.deadline_h)
    where = Where(file=piece.name, path="ready in")
    last = max((day.day for day in days if any(task.number for task in day.tasks)), default=0)
    if wrap_day > asked:
        hours = piece.deadline_h
        within = f"{hours / 24.0:.0f} days" if hours >= _IN_DAYS_H else f"{hours:g} hours"
        what = (
            f"asked for in {within}; the last coat is on day {last}, safe to wrap on day {wrap_day}, "
            f"cured on day {cured_day}"
        )
        do = "say so now, do less, work on more evenings, or make the room warmer"
        return (Finding(code="not-enough-time", level="warning", where=where, what=what, do=do),)
    if cured_day > asked:
        what = f"the last coat is on day {last}, but it is cured only on day {cured_day}"
        do = "until then no hot dishes, wet glasses, cloths or wrapping"
        return (Finding(code="not-cured-by-then", level="note", where=where, what=what, do=do),)
    return ()
