"""The ways of each group from which one is chosen for the whole piece."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from refettle.domain.plan import Range
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.bench import Bench
from refettle.planning.cost import AIMS, BALANCED, Aim
from refettle.planning.offers import Menu
from refettle.planning.reasons import step_costs
from refettle.planning.search import MAX_EXPANSIONS, Found, Search
from refettle.services.agree import answers, asks_ground, bares, body_class, look_key
from refettle.services.cases import ASIDE, Case
from refettle.services.needs import needs_of, to_cover
from refettle.services.totals import setups_of
from refettle.services.ware import curve_of, ware_of
from refettle.solver.choice import Curve, Key, Problem, Way

_OPEN_TRIED = 3
_STAGES = {"stain": "colour", "tone": "colour", "condition": "colour", "prime": "under", "seal": "under",
           "wax": "protect", "strip": "remove"}  # fmt: skip
Tried = tuple[Case, Found]


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """
    One way of one group, as searched and as it is weighed.

    Attributes
    ----------
    case, found
        Group on its bench with the menu it was found on; its route, the cost in the balanced sum.
    way
        The same as plain data.
    delay
        What its waits cost in the balanced sum [money].
    """

    case: Case
    found: Found
    way: Way
    delay: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """
    Options of one group.

    Attributes
    ----------
    options
        Each with other steps; the group's own best first.
    bound
        No offered route of the group costs less, its part of what is shared included [money].
    """

    options: tuple[Option, ...]
    bound: float


def weighed(case: Case, found: Found) -> Found:
    """Return a route with its cost, and the bound on it, as weighed without hurry [money]."""
    if case.aim is BALANCED or not found.steps:
        return found
    cost = Search(case.bench, case.menu, case.weights).cost_of(found.steps)
    bound = cost if found.exact else cost * found.bound / max(found.cost, 1e-9)
    return replace(found, cost=cost, bound=bound)


def option_of(case: Case, found: Found) -> Option:
    """Return a route, its cost balanced, as an option: what is shared or bought whole taken out of its cost."""
    bench = case.bench
    worth = bench.workshop.hour_worth
    steps = tuple(s for s in found.steps if s.verb != "use" and s.what != "cure")
    own, delay = found.cost, 0.0
    sums: dict[Key, float] = {}
    for cost in step_costs(bench, steps, [""] * len(steps)):
        delay += cost.wait_h.likely / 24.0 * bench.workshop.day_worth
        needs = needs_of(bench.know, bench.surface.area_m2, cost)
        own -= cost.money.likely if needs else 0.0
        for key, amount in needs.items():
            sums[key] = sums.get(key, 0.0) + to_cover(amount)
    setups = setups_of(bench.know, steps)
    own -= bench.setup_share * worth * sum(setups.values())
    way = Way(
        own=max(0.0, own), sums=tuple(sums.items()),
        once=tuple((key, worth * hours) for key, hours in setups.items()),
        agrees=answers(bench, case.menu.look, steps),
    )  # fmt: skip
    return Option(case=case, found=found, way=way, delay=delay)


def pools_of(tries: Sequence[Tried], hurry: Aim | None = None) -> tuple[Pool, ...]:
    """
    Return the pool of each group.

    Parameters
    ----------
    tries
        Groups with their own best routes; at least one step each.
    hurry
        A further weighting for all of them, where a date presses.

    Returns
    -------
    tuple of Pool
        Own best; the other weightings; with what is there or shared at its least cost; with each material
        that another group has opened; old film kept and taken off, where the parts of a look differ.
    """
    total = sum(case.group.surface.area_m2 for case, _ in tries) or 1.0
    found: list[list[Tried]] = [list(_by_aims(*tried)) for tried in tries]
    bounds = []
    for (case, own), row in zip(tries, found, strict=True):
        least, bound = _at_least(case, own, case.group.surface.area_m2 / total)
        row.extend(least)
        bounds.append(bound)
    _alike(found, [row[0] for row in found], BALANCED)
    if hurry is not None:
        hasty = [_searched(case, case.menu, hurry) for case, _ in tries]
        for row, tried in zip(found, hasty, strict=True):
            row.append(tried)
        _alike(found, hasty, hurry)
    _opened(found)
    _washed(found)
    return tuple(
        Pool(options=tuple(_unlike(row)), bound=bound) for row, bound in zip(found, bounds, strict=True)
    )


def _by_aims(case: Case, own: Found) -> Iterator[Tried]:
    """Yield a group's own best, then what the other weightings find."""
    yield case, own
    if case.menu.look.kind == "bare":
        return
    for aim in AIMS[1:]:
        yield _searched(case, case.menu, aim, ASIDE)


def _searched(case: Case, menu: Menu, aim: Aim, most: int = MAX_EXPANSIONS) -> Tried:
    """Return a group searched on a menu under an aim, at most so many states expanded."""
    case = replace(case, menu=menu, aim=aim)
    return replace(case, aim=BALANCED), weighed(case, case.search(most=most))


def _at_least(case: Case, own: Found, part: float) -> tuple[list[Tried], float]:
    """
    Return what is found with shared things at their least, and what every offered route costs at the least.

    Notes
    -----
    What is on the shelf is free, set-up counts by the group's part of the area: over all groups that is never
    more than is paid once, and litres at their price are never more than the tins that hold them.
    """
    bench = case.bench
    shelf = frozenset(p.cls for p in bench.workshop.products if p.kind == "film" and p.have_l > 0)
    if own.exact and not shelf and bench.setup_share <= part:
        return [], own.bound
    return _with_prices(case, own, part, shelf)


def _with_prices(case: Case, own: Found, part: float, free: frozenset[str]) -> tuple[list[Tried], float]:
    """Return what is found with a part of set-up and some classes for nothing, and the bound of that search."""
    bench = case.bench
    prices = {**dict(bench.workshop.prices), **dict.fromkeys(sorted(free), 0.0)}
    shop = replace(bench.workshop, prices=tuple(sorted(prices.items())))
    menu = replace(case.menu, workshop=shop)

    def run() -> Found:
        least = Bench(bench.know, shop, bench.surface, bench.begin, part, bench.engines, bench.memory)
        return Search(least, menu, case.weights).run(ASIDE)

    found = bench.kept(menu, f"found, at the least, {part}", run)
    if not found.steps:
        return [], found.bound
    cost = Search(bench, case.menu, case.weights).cost_of(found.steps)
    return [(case, replace(found, cost=cost, exact=own.exact, bound=min(cost, own.bound)))], found.bound


def _alike(found: list[list[Tried]], leads: list[Tried], aim: Aim) -> None:
    """Add, for each look of several groups, the ways by which all its parts can be done as one of them leads."""
    looks: dict[str, list[int]] = {}
    for i, (case, route) in enumerate(leads):
        if route.steps and case.menu.look.kind != "bare":
            looks.setdefault(look_key(case.menu.look), []).append(i)
    for members in looks.values():
        if len(members) < 2:
            continue
        grounds = _grounds([leads[i] for i in members])
        made: dict[int, list[Tried]] = {}
        for i in members:
            made[i] = [_searched(leads[i][0], menu, aim) for menu in _menus(leads[i][0], grounds)[1:]]
        bodies = [body_class(f.steps) for i in members for _, f in (leads[i], *made[i])]
        classes = [cls for cls in dict.fromkeys(bodies) if cls]
        for i in members:
            found[i].extend(made[i])
            if len(classes) > 1:
                found[i].extend(_with_bodies([leads[i], *made[i]], classes, aim))


def _grounds(own: list[Tried]) -> tuple[bool, ...]:
    """Return the ways to treat the old film that are to be tried, off first; none where the parts agree."""
    asked = {bares(f.steps) for case, f in own if asks_ground(case.bench, case.menu.look)}
    return (True, False) if len(asked) > 1 else ()


def _menus(case: Case, grounds: tuple[bool, ...]) -> list[Menu]:
    """Return a group's own menu and those on which the old film must come off, or stay."""
    asked = grounds if asks_ground(case.bench, case.menu.look) else ()
    return [case.menu, *(replace(case.menu, bare_first=off, keep_film=not off) for off in asked)]


def _with_bodies(leads: list[Tried], classes: list[str], aim: Aim) -> Iterator[Tried]:
    """Yield a group searched with each class of body coat that it does not take by itself, on each of its menus."""
    for case, route in leads:
        for cls in classes:
            if body_class(route.steps) != cls:
                menu = replace(case.menu, wanted=frozenset({cls}), wanted_stage="body")
                yield _searched(case, menu, aim)


def _opened(found: list[list[Tried]]) -> None:
    """Add, for each group, the ways with what others have opened or the shelf holds: agents, colours, primers, wax."""
    opened = [_used(row[0][1]) for row in found]
    for row, own in zip(found, opened, strict=True):
        case = row[0][0]
        if case.menu.look.kind == "bare":
            continue
        counts: dict[tuple[str, str], int] = {}
        for key in (*_on_shelf(case), *(key for theirs in opened if theirs is not own for key in theirs)):
            if key not in own and key[0] in {stage for stage, _ in own}:
                counts[key] = counts.get(key, 0) + 1
        for stage, what in sorted(counts, key=lambda key: (-counts[key], key))[:_OPEN_TRIED]:
            menu = replace(case.menu, wanted=frozenset({what}), wanted_stage=stage)
            row.append(_searched(case, menu, BALANCED, ASIDE))


def _used(route: Found) -> tuple[tuple[str, str], ...]:
    """Return the materials of a route that can be another's too, with the stage at which they are offered."""
    return tuple(
        dict.fromkeys((_STAGES[s.verb], s.what) for s in route.steps if s.verb in _STAGES and s.what)
    )


def _on_shelf(case: Case) -> tuple[tuple[str, str], ...]:
    """Return the removers on the shelf, with the stage at which they are offered."""
    return tuple(
        ("remove", p.cls) for p in case.bench.workshop.products if p.kind == "remover" and p.have_l > 0
    )


def _washed(found: list[list[Tried]]) -> None:
    """Add, for each group, its best ways begun with a cleaner that another group uses or the shelf holds."""
    used = {s.what for row in found for s in row[0][1].steps if s.verb == "clean"}
    for row in found:
        case = row[0][0]
        there = {p.cls for p in case.bench.workshop.products if p.kind == "cleaner" and p.have_l > 0}
        row.extend(list(_rewashed(row, frozenset(used | there))))


def _rewashed(row: list[Tried], agents: frozenset[str]) -> Iterator[Tried]:
    """Yield the cheapest way per answer with its first cleaning done otherwise, by one of some agents."""
    case = row[0][0]
    begin = case.bench.begin
    states = [state for world in begin.worlds for state in world.states]
    runs = case.menu.offers("clean", states, [ground.zone for _ in begin.worlds for ground in begin.grounds])
    best: dict[object, Tried] = {}
    for tried in row:
        key = answers(case.bench, case.menu.look, tried[1].steps)
        if tried[1].steps and (key not in best or tried[1].cost < best[key][1].cost):
            best[key] = tried
    for menu_case, found in best.values():
        own = max((run for run in runs if run and found.steps[: len(run)] == run), key=len, default=())
        for run in runs if own else ():
            if run in {own, ()} or not agents.issuperset(s.what for s in run if s.verb == "clean"):
                continue
            steps = (*run, *found.steps[len(own) :])
            search = Search(case.bench, case.menu, case.weights)
            cost, missed = search.walked(steps)
            if missed is not None:
                cost += missed
                yield menu_case, replace(found, steps=steps, cost=cost, bound=min(cost, found.bound))


def _unlike(row: Iterable[Tried]) -> Iterator[Option]:
    """Yield what was found as options, each sequence once."""
    seen = set()
    for case, found in row:
        if found.steps and found.steps not in seen:
            seen.add(found.steps)
            yield option_of(case, found)


def problem_of(
    know: Knowledge, workshop: Workshop, pools: Sequence[Pool], more_delay: float = 0.0
) -> Problem:
    """
    Return the pools as plain data with what is bought whole.

    Parameters
    ----------
    know, workshop
        Facts; shelf and prices.
    pools
        The pools.
    more_delay
        By how much waits weigh more than in the balanced sum [1].

    Returns
    -------
    Problem
        For `choose`.
    """
    ways = tuple(
        tuple(replace(o.way, own=o.way.own + more_delay * o.delay) for o in pool.options) for pool in pools
    )
    most: dict[Key, float] = {}
    for pool in ways:
        largest: dict[Key, float] = {}
        for way in pool:
            for key, amount in way.sums:
                largest[key] = max(largest.get(key, 0.0), amount)
        for key, amount in largest.items():
            most[key] = most.get(key, 0.0) + amount
    curves: list[tuple[Key, Curve]] = [
        (key, curve_of(ware_of(know, workshop, key), amount)) for key, amount in most.items()
    ]
    return Problem(pools=ways, curves=tuple(curves))


def below_steps(know: Knowledge, workshop: Workshop, problem: Problem) -> float:
    """
    Return by how much what is bought whole can cost less than steps count it at [money].

    Notes
    -----
    Agents and abrasives that are there, or that the person gets cheaper: a bound from what steps count is too
    high by as much. Purchases cover more than the likely need, see `to_cover`; films are searched at no cost.
    """
    covers = to_cover(Range(low=0.8, likely=1.0, high=1.4))
    least = 0.0
    for key, curve in problem.curves:
        price = ware_of(know, workshop, key).step_price / covers
        most = sum(max(dict(way.sums).get(key, 0.0) for way in pool) for pool in problem.pools)
        least += max(0.0, *(price * min(upto, most) - cost for upto, cost in curve.steps))
    return least
