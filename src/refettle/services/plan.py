"""Plan a piece: every group its route, then what the whole needs."""

from dataclasses import dataclass, replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Look, Piece, Surface, Workshop
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.plan import Impossible, Route, TestAdvice
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import explain_clash, relooked_bench
from refettle.planning.cost import AIMS, BALANCED, Aim
from refettle.planning.offers import Menu
from refettle.planning.pool import build_pool, paying_tests, price_of_test
from refettle.planning.reasons import make_route
from refettle.planning.search import MAX_EXPANSIONS, Bench, Found, Search
from refettle.planning.start import lead_chance, start
from refettle.services.buying import ZERO, to_buy
from refettle.services.cautions import cautions_of
from refettle.services.days import lay_days
from refettle.services.grouping import Group, group_surfaces
from refettle.services.lines import first_screen
from refettle.services.step_words import step_words
from refettle.services.totals import risks_of, setup_of, tests_of, worth_of

_BETTER = 0.10
_ASIDE = 250
_FREE_LOOKS = ("keep", "natural", "opaque")


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """
    One group on its bench, ready to be asked.

    Attributes
    ----------
    group
        The group.
    bench
        Surface, worlds and engines.
    menu
        What may be offered for the look aimed at.
    asked
        Whether the look was asked for.
    """

    group: Group
    bench: Bench
    menu: Menu
    asked: bool

    @property
    def weights(self) -> tuple[float, ...]:
        """Return the belief per world [1]."""
        return tuple(w.weight for w in self.bench.begin.worlds)

    def search(self, aim: Aim = BALANCED, menu: Menu | None = None, most: int = MAX_EXPANSIONS) -> Found:
        """Return the best route under an aim, at most so many states expanded."""
        return Search(self.bench, menu or self.menu, self.weights, aim).run(most)


def open_case(
    know: Knowledge,
    piece: Piece,
    workshop: Workshop,
    group: Group,
    *,
    setup_share: float,
    look: Look | None = None,
) -> Case:
    """Return a group laid out for the search; a look that is not asked for is chosen by cost."""
    wish = look or group.surface.look
    surface = group.surface if wish is None else replace(group.surface, look=wish)
    begin = start(know, piece, surface)
    bench = Bench(know, workshop, surface, begin, setup_share)
    menu = Menu(know=know, workshop=workshop, surface=surface, look=wish or Look(kind="keep"),
                constraints=piece.constraints)  # fmt: skip
    return Case(group=group, bench=bench, menu=menu, asked=wish is not None)


def _choose_look(
    know: Knowledge, piece: Piece, workshop: Workshop, group: Group, setup_share: float
) -> tuple[Case, Found]:
    """Return the case and route of the look that costs least, flaws left counted, where none is asked for."""
    best: tuple[Case, Found] | None = None
    for kind in _FREE_LOOKS:
        case = open_case(know, piece, workshop, group, setup_share=setup_share, look=Look(kind=kind))
        found = case.search()
        if found.steps and (best is None or found.cost < best[1].cost):
            best = (replace(case, asked=False), found)
    if best is None:
        case = open_case(know, piece, workshop, group, setup_share=setup_share, look=Look(kind="keep"))
        return replace(case, asked=False), case.search()
    return best


def first_try(
    know: Knowledge, piece: Piece, workshop: Workshop, group: Group, *, setup_share: float
) -> tuple[Case, Found]:
    """Return a group on its bench with the best route for itself alone."""
    if group.surface.look is None:
        return _choose_look(know, piece, workshop, group, setup_share)
    case = open_case(know, piece, workshop, group, setup_share=setup_share)
    return case, case.search()


def body_class(found: Found) -> str:
    """Return the class that makes the look of a route; empty where none does."""
    bodies = [s.what for s in found.steps if s.verb in {"paint", "topcoat"}]
    paints = [s.what for s in found.steps if s.verb == "paint"]
    return paints[-1] if paints else (bodies[-1] if bodies else "")


def agree_on_body(tries: list[tuple[Case, Found]]) -> list[tuple[Case, Found]]:
    """
    Return the tries with one class of body coat per look, so that parts that should match do.

    Notes
    -----
    For each look, every class that some group chose is tried on all groups of that look; the one with
    the least total cost is taken by all that can. One look, one tin, one set of brushes.
    """
    result = list(tries)
    looks: dict[tuple[str, str, int | None, str], list[int]] = {}
    for i, (case, found) in enumerate(tries):
        look = case.menu.look
        if found.steps and look.kind in {"natural", "stained", "oiled", "opaque"} and body_class(found):
            looks.setdefault((look.kind, look.colour, look.depth, look.sheen), []).append(i)
    for members in looks.values():
        classes = list(dict.fromkeys(body_class(tries[i][1]) for i in members))
        if len(classes) < 2:
            continue
        best: tuple[float, list[tuple[int, Case, Found]]] | None = None
        for cls in classes:
            made = _all_with(tries, members, cls)
            if made is None:
                continue
            total = sum(found.cost for _, _, found in made)
            if best is None or total < best[0]:
                best = (total, made)
        if best is not None:
            for i, case, found in best[1]:
                result[i] = (case, found)
    return result


def _all_with(
    tries: list[tuple[Case, Found]], members: list[int], cls: str
) -> list[tuple[int, Case, Found]] | None:
    """Return the tries of some groups with one body class, or None where one cannot take it."""
    made = []
    for i in members:
        case, found = tries[i]
        if body_class(found) != cls:
            menu = replace(case.menu, wanted=frozenset({cls}), wanted_stage="body")
            case = replace(case, menu=menu)
            found = case.search()
            if not found.steps:
                return None
        made.append((i, case, found))
    return made


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


def relooked_case(case: Case, look: Look) -> Case:
    """Return the same group on a fresh bench with another look wanted."""
    bench = relooked_bench(case.bench, look)
    menu = replace(case.menu, look=look, surface=bench.surface, wanted=frozenset(), wanted_stage="")
    return replace(case, bench=bench, menu=menu)


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
    tries = [
        first_try(know, piece, workshop, g, setup_share=max(0.12, g.surface.area_m2 / total)) for g in groups
    ]
    plans = tuple(group_plan(know, piece, case, found, brief=brief) for case, found in agree_on_body(tries))
    words = {}
    for plan in plans:
        if plan.route is not None:
            for cost in plan.route.steps:
                for step in (cost.step, *_single_coats(cost.step)):
                    words[step] = step_words(know, step)
    days, wrap_day, cured_day = lay_days(know, workshop, plans, words)
    buy = to_buy(know, workshop, plans)
    money = sum((b.money for b in buy), start=ZERO)
    minutes = sum((p.route.minutes for p in plans if p.route is not None), start=setup_of(know, plans))
    lead = {p.name: _lead_of(know, piece, g) for p, g in zip(plans, groups, strict=True)}
    whole = PiecePlan(
        piece=piece.name, workshop=workshop.name, currency=workshop.currency, invented=piece.invented, lines=(),
        groups=plans, risks=risks_of(plans), tests=tests_of(plans), buy=buy, money=money, minutes=minutes, days=days,
        wrap_day=wrap_day, cured_day=cured_day,
        cautions=cautions_of(know, piece, workshop, plans, groups, lead),
        findings=tuple(f for p in plans if p.impossible is not None for f in p.impossible.findings),
        assumed=(*piece.assumed, *workshop.assumed), worth=worth_of(piece, money, minutes),
        knowledge_version=know.version,
    )  # fmt: skip
    return replace(whole, lines=first_screen(know, workshop, whole))


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


def bench_of(know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface) -> Case:
    """Return the case of the group that holds a surface."""
    groups = group_surfaces(piece.surfaces)
    total = sum(g.surface.area_m2 for g in groups) or 1.0
    group = next(g for g in groups if surface.name in g.members)
    share = max(0.12, group.surface.area_m2 / total)
    if group.surface.look is None:
        return _choose_look(know, piece, workshop, group, share)[0]
    return open_case(know, piece, workshop, group, setup_share=share)
