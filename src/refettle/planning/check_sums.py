"""Checks of numbers: sums, litres, waits, chances, costs, and that each leads to its source."""

from collections.abc import Iterable, Iterator
from math import exp, isclose

from refettle.domain.finding import Finding
from refettle.domain.plan import Range, StepCost
from refettle.domain.step import VERBS, Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_walk import RouteCheck, Walk
from refettle.planning.cost import VALUE_LOST_M2, coat_litres, harm, hazard, price_per_litre
from refettle.planning.goal import flaws, reached
from refettle.rules import RULES

_PARTS = ("low", "likely", "high")
_CHANCE_NEAR = 1e-6
_SMALL_SHARE = 0.1
_LEAST_SETUP = 0.12
_MISSED_M2 = 90.0
_ADDED = frozenset({"sample", "climate"})
_SETUP_OF = {"spray": "spray-coat", "roller": "roll-coat", "wipe": "wipe-coat", "pad": "wipe-coat"}
_SHORT_SETUP_H = {"sand": 0.05, "scuff": 0.05, "clean": 0.05, "rinse": 0.05, "scrape": 0.05}

Chances = dict[tuple[str, str], float]
"""Fault and cause → chance [1]."""


def near(a: float, b: float) -> bool:
    """Return whether two sums are equal but for the last digits."""
    return isclose(a, b, rel_tol=1e-9, abs_tol=1e-6)


def total(ranges: Iterable[Range]) -> tuple[float, float, float]:
    """Return low, likely and high of some ranges, each added up."""
    rows = [(r.low, r.likely, r.high) for r in ranges]
    return (sum(r[0] for r in rows), sum(r[1] for r in rows), sum(r[2] for r in rows))


def same(amount: Range, sums: tuple[float, float, float]) -> bool:
    """Return whether a range is what its parts add up to."""
    return all(near(getattr(amount, part), own) for part, own in zip(_PARTS, sums, strict=True))


def setup_h(know: Knowledge, step: Step) -> float:
    """Return set-up and clean-up of a step [h]."""
    if step.is_coat:
        return know.labour(_SETUP_OF.get(step.method, "brush-coat")).setup_h * max(1, step.coats)
    return know.labour("strip").setup_h if step.verb == "strip" else _SHORT_SETUP_H.get(step.verb, 0.0)


def known_reason(know: Knowledge) -> frozenset[str]:
    """Return everything that a ``because`` may name: fact rows, rules and verbs."""
    rows = {row.id for props in know.rows_by_subject.values() for found in props.values() for row in found}
    return frozenset(rows | {f"rule:{card.id}" for card in RULES} | {f"verb:{verb}" for verb in VERBS})


def unknown_reasons(because: tuple[str, ...], known: frozenset[str]) -> list[str]:
    """Return the ids that lead nowhere; a formula is taken at its word."""
    return [
        i for i in because if i not in known and not (i.startswith("formula:") and len(i) > len("formula:"))
    ]


def numbers(check: RouteCheck) -> Iterator[Finding]:
    """Yield every number of a route that does not add up or leads to no source."""
    known = known_reason(check.know)
    for number, cost in enumerate(check.route.steps, start=1):
        yield from _one_step(check, number, cost, known)
    yield from _totals(check)
    yield from _risks(check, known)
    yield from _money_at_risk(check)


def _one_step(check: RouteCheck, number: int, cost: StepCost, known: frozenset[str]) -> Iterator[Finding]:
    """Yield what is wrong with the amounts of one step."""
    for name in ("minutes", "litres", "money", "wait_h"):
        amount: Range = getattr(cost, name)
        if not 0.0 <= amount.low <= amount.likely <= amount.high:
            yield check.finding(
                "range-upside-down",
                number,
                f"{name} runs {amount.low:g}, {amount.likely:g}, {amount.high:g}",
                "put low, likely, high in order",
            )
    step = cost.step
    wait = step.wait_between_h * (max(1, step.coats) - 1) + step.wait_after_h
    if not near(cost.wait_h.likely, wait):
        yield check.finding(
            "wait-differs",
            number,
            f"it says {cost.wait_h.likely:g} h of waiting, its waits add up to {wait:g} h",
            "add up the waits again",
        )
    litres = _litres(check, number, step)
    if not near(cost.litres.likely, litres):
        yield check.finding(
            "litres-differ",
            number,
            f"it says {cost.litres.likely:.3f} L, its coats take {litres:.3f} L",
            "work the litres out again",
        )
    if step.is_coat:
        money = litres * price_per_litre(check.know, check.workshop, step.what)
        if not near(cost.money.likely, money):
            yield check.finding(
                "price-differs",
                number,
                f"it says {cost.money.likely:.2f}, its litres cost {money:.2f}",
                "work the price out again",
            )
    if not cost.because or unknown_reasons(cost.because, known):
        lost = ", ".join(unknown_reasons(cost.because, known))
        what = f"its numbers rest on what nobody knows: {lost}" if lost else "its numbers lead to no source"
        yield check.finding("no-source", number, what, "name fact rows, rule:, formula: or verb:")


def _litres(check: RouteCheck, number: int, step: Step) -> float:
    """Return the litres of a step [L]: its first coat on what lies there, later ones on a sealed ground."""
    if not step.is_coat:
        return 0.0
    facts, area = check.know.film(step.what), check.surface.area_m2
    meets = next(m.before for m in check.walks[0].moments if m.number == number)
    drinks = check.know.wood(check.surface.wood).first_coat_factor if meets.bare else 1.0
    coats = [coat_litres(facts, area, step.method, step.film, first_coat_factor=drinks)]
    coats += [coat_litres(facts, area, step.method, step.film, first_coat_factor=1.0)] * (
        max(1, step.coats) - 1
    )
    return sum(coats)


def _totals(check: RouteCheck) -> Iterator[Finding]:
    """Yield totals of the route that are not the sums of its steps."""
    route = check.route
    for name, amount, parts in (
        ("minutes", route.minutes, [c.minutes for c in route.steps]),
        ("money", route.money, [c.money for c in route.steps]),
        ("elapsed hours", route.elapsed_h, [c.wait_h for c in route.steps]),
    ):
        sums = total(parts)
        if not same(amount, sums):
            yield check.finding(
                "sum-differs",
                0,
                f"{name} are {amount.likely:.2f}, its steps add up to {sums[1]:.2f}",
                "add up again",
            )
    lost = _value_lost(check)
    if not near(route.value_lost, lost):
        yield check.finding(
            "value-differs",
            0,
            f"value lost is {route.value_lost:.2f}, by its steps it is {lost:.2f}",
            "count the original surface once, where a step takes or hides it",
        )


def _value_lost(check: RouteCheck) -> float:
    """Return what is lost of the worth of an original surface [money]."""
    for moment in check.walks[0].moments:
        step = moment.step
        coarse = step.verb == "sand" and 0 < step.grit < 180
        through = step.verb in {"sand", "scrape"} and "to bare" in step.how
        if (step.verb in {"strip", "paint"} or coarse or through) and not check.walks[0].moments[
            0
        ].before.bare:
            return VALUE_LOST_M2.get(check.surface.value, 0.0) * check.surface.area_m2
    return 0.0


def _met(walk: Walk) -> Chances:
    """Return the highest chance of every cause on a walk: a cause counts once however many coats meet it."""
    met: Chances = {}
    for moment in walk.moments:
        for hit in moment.hits:
            key = (hit.fault, hit.cause)
            met[key] = max(hit.chance, met.get(key, 0.0))
    return met


def own_chances(check: RouteCheck) -> dict[str, float]:
    """
    Return the chance of every fault [1]: causes by 1−exp(−Σ hazard), the worst zone, worlds by their weight.

    Notes
    -----
    A zone of less than a tenth of the area counts by its share, as the plan's risks do.
    """
    shown: dict[str, dict[int, float]] = {}
    for walk in check.walks:
        hazards: dict[str, float] = {}
        for (fault, _), chance in _met(walk).items():
            hazards[fault] = hazards.get(fault, 0.0) + hazard(chance)
        part = min(1.0, check.begin.shares[walk.zone] / _SMALL_SHARE)
        for fault, sum_ in hazards.items():
            per = shown.setdefault(fault, {})
            per[walk.world] = max(per.get(walk.world, 0.0), part * (1.0 - exp(-sum_)))
    weights = [world.weight for world in check.begin.worlds]
    return {fault: sum(weights[w] * p for w, p in per.items()) for fault, per in shown.items()}


def _risks(check: RouteCheck, known: frozenset[str]) -> Iterator[Finding]:
    """Yield risks whose chance, step or source is not what the rules say."""
    own = own_chances(check)
    said = {risk.fault: risk.chance for risk in check.route.risks}
    for fault in sorted({*own, *said}):
        here, there = own.get(fault, 0.0), said.get(fault, 0.0)
        if abs(here - there) > _CHANCE_NEAR:
            name = check.know.name("fault", fault)
            yield check.finding(
                "chance-differs",
                0,
                f"{name} is given a chance of {there:.4f}, the rules say {here:.4f}",
                "play the route through all worlds again",
            )
    for risk in check.route.risks:
        met = {m.number if m.number <= len(check.steps) else 0 for w in check.walks for m in w.moments
               for hit in m.hits if hit.fault == risk.fault}  # fmt: skip
        name = check.know.name("fault", risk.fault)
        if risk.fault in own and risk.step not in met:
            yield check.finding(
                "risk-misplaced",
                risk.step,
                f"{name} is laid to this step, where no rule speaks of it",
                "name the step that adds most to it",
            )
        lost = unknown_reasons((*risk.because, *(f"rule:{r}" for r in risk.rules)), known)
        if lost or not risk.rules:
            what = (
                f"{name} rests on what nobody knows: {', '.join(lost)}"
                if lost
                else f"{name} rests on no rule"
            )
            yield check.finding("no-source", risk.step, what, "name the rules and fact rows behind it")


def _money_at_risk(check: RouteCheck) -> Iterator[Finding]:
    """Yield an expected cost that is not what it is made of, and a search cost that cannot be."""
    route, shop = check.route, check.workshop
    faults = sum(r.chance * _harm(check, r.fault) for r in route.risks)
    expected = (
        route.money.likely
        + route.minutes.likely / 60.0 * shop.hour_worth
        + route.elapsed_h.likely / 24.0 * shop.day_worth
        + route.value_lost
        + faults
    )
    if not near(route.expected_cost, expected):
        yield check.finding(
            "cost-differs",
            0,
            f"expected cost is {route.expected_cost:.2f}, its parts add up to {expected:.2f}",
            "add up money, hours, days, value lost and faults again",
        )
    if route.aim in {"balanced", "leave it alone"}:
        low, high = _search_cost(check)
        if not 0.995 * low - 0.5 <= route.cost <= 1.005 * high + 0.5:
            yield check.finding(
                "cost-differs",
                0,
                f"the search says {route.cost:.2f}, its steps make {low:.2f} to {high:.2f}",
                "follow the cost of the route step by step",
            )


def _search_cost(check: RouteCheck) -> tuple[float, float]:
    """Return what the search's cost lies between: each cause charged once, or at every step that meets it."""
    shop, area = check.workshop, check.surface.area_m2
    whole = sum(s.area_m2 for s in check.piece.surfaces) or area
    share = max(_LEAST_SETUP, area / whole)
    work = _value_lost(check)
    for cost in check.route.steps:
        if cost.step.verb not in _ADDED:
            hours = cost.minutes.likely / 60.0 + share * setup_h(check.know, cost.step)
            work += cost.money.likely + hours * shop.hour_worth + cost.wait_h.likely / 24.0 * shop.day_worth
    low = high = work
    for walk in check.walks:
        weight = check.begin.worlds[walk.world].weight * check.begin.shares[walk.zone]
        once = sum(hazard(p) * _harm(check, fault) for (fault, _), p in _met(walk).items())
        each = sum(hazard(h.chance) * _harm(check, h.fault) for m in walk.moments for h in m.hits)
        left = flaws(check.know, check.look, walk.end, area)
        missed = not reached(check.know, check.begin.grounds[walk.zone], check.look, walk.end)
        end = left + (_MISSED_M2 * max(area, 0.2) if missed else 0.0)
        low += weight * (once + end)
        high += weight * (each + end)
    return low, high


def _harm(check: RouteCheck, fault: str) -> float:
    """Return what a fault would cost on this surface [money]."""
    return harm(check.know, check.workshop, fault, check.surface.area_m2)
