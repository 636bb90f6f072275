"""Why each step is there: what would go wrong, or not be had, without it."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from refettle.domain.plan import Hit, Range, Risk, Route, StepCost
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.planning.cost import hazard, step_amounts
from refettle.planning.goal import reached
from refettle.planning.offers import Menu
from refettle.planning.replay import Traced, Weighed, causes_of, risks_of
from refettle.planning.search import VALUE_LOST_M2, Bench, Found, loses_original

_LOOK_VERBS = {"paint", "topcoat", "stain", "tone", "glaze", "wax"}


class Now(NamedTuple):
    """Chance of each fault [1] and of each of its causes with every step in place."""

    chances: dict[str, float]
    causes: dict[tuple[str, str], Weighed]


def traced_on(bench: Bench, steps: tuple[Step, ...]) -> list[list[tuple[Traced, State]]]:
    """Return what a sequence meets per world and zone, through the bench's memory."""
    rows = []
    for world in bench.begin.worlds:
        row = []
        for zone, state in enumerate(world.states):
            engine = bench.engines[zone]
            at = engine.state_id(state)
            met: dict[tuple[str, str], tuple[Hit, int]] = {}
            for number, step in enumerate(steps, start=1):
                at, hits = engine.play(at, step)
                for hit in hits:
                    key = (hit.fault, hit.cause)
                    if key not in met or hit.chance > met[key][0].chance:
                        met[key] = (hit, number)
            row.append((met, engine.state(at)))
        rows.append(row)
    return rows


def risks_on(bench: Bench, steps: tuple[Step, ...]) -> tuple[Risk, ...]:
    """Return the risks of a sequence on a bench, likeliest first."""
    return risks_of(bench.know, bench.begin, traced_on(bench, steps))


def numbered(risks: tuple[Risk, ...], steps: int) -> tuple[Risk, ...]:
    """Return risks with the numbers of the route's own steps; what only shows after them, in use, gets 0."""
    return tuple(replace(risk, step=0) if risk.step > steps else risk for risk in risks)


def look_had(bench: Bench, menu: Menu, steps: tuple[Step, ...]) -> bool:
    """Return whether a sequence reaches the look in the heaviest world on its main zone."""
    return reached(bench.know, bench.begin.grounds[0], menu.look, end_state(bench, steps))


def end_state(bench: Bench, steps: tuple[Step, ...]) -> State:
    """Return what a sequence leads to in the heaviest world on its main zone."""
    state: State = traced_on(bench, steps)[0][0][1]
    return state


def make_route(bench: Bench, menu: Menu, found: Found, aim: str, *, with_reasons: bool = True) -> Route:
    """Return a found sequence as a route with its amounts, risks and reasons."""
    steps = with_extras(menu, tuple(s for s in found.steps if s.verb != "use" and s.what != "cure"))
    whole = (*steps, *(s for s in found.steps if s.verb == "use" or s.what == "cure"))
    risks = numbered(risks_on(bench, whole), len(steps))
    now = Now({r.fault: r.chance for r in risks}, causes_of(bench.begin, traced_on(bench, whole)))
    reasons = [reason_of(bench, menu, whole, i, now) if with_reasons else "" for i in range(len(steps))]
    costs = step_costs(bench, steps, reasons)
    zero = Range(low=0.0, likely=0.0, high=0.0)
    lost = any(loses_original(s) for s in steps) and not bench.begin.worlds[0].states[0].bare
    value_lost = VALUE_LOST_M2.get(bench.surface.value, 0.0) * bench.surface.area_m2 if lost else 0.0
    minutes = sum((c.minutes for c in costs), start=zero)
    money = sum((c.money for c in costs), start=zero)
    elapsed = sum((c.wait_h for c in costs), start=zero)
    faults = sum(r.chance * bench.harm_of(r.fault) for r in risks)
    expected = (
        money.likely
        + minutes.likely / 60.0 * bench.workshop.hour_worth
        + elapsed.likely / 24.0 * bench.workshop.day_worth
        + value_lost
        + faults
    )
    ordered = tuple(sorted(risks, key=lambda r: -hazard(r.chance) * bench.harm_of(r.fault)))
    return Route(
        steps=tuple(costs), risks=ordered, cost=found.cost, expected_cost=expected, minutes=minutes, money=money,
        elapsed_h=elapsed, value_lost=value_lost, aim=aim, look=menu.look.kind,
    )  # fmt: skip


def step_costs(bench: Bench, steps: tuple[Step, ...], reasons: Sequence[str]) -> list[StepCost]:
    """Return what each step takes, in the heaviest world, with its reason."""
    costs = []
    bare = bench.begin.worlds[0].states[0].bare
    at = bench.engines[0].state_id(bench.begin.worlds[0].states[0])
    for step, reason in zip(steps, reasons, strict=True):
        amounts = step_amounts(
            bench.know, bench.workshop, bench.surface, step, on_bare=bare, recess_share=bench.recess_share()
        )
        because = tuple(dict.fromkeys(r for s, p in amounts.reads for r in bench.know.because(s, p)))
        costs.append(
            StepCost(
                step=step,
                minutes=amounts.minutes,
                litres=amounts.litres,
                money=amounts.money,
                wait_h=amounts.wait_h,
                because=because or (f"verb:{step.verb}",),
                reason=reason,
            )
        )
        at, _ = bench.engines[0].play(at, step)
        bare = bench.engines[0].state(at).bare
    return costs


def with_extras(menu: Menu, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return a route with what good practice adds: the air made first, a sample before colour is committed."""
    made: list[Step] = []
    climate = sample = False
    for step in steps:
        if step.air is not None and step.air == menu.made_air and not climate:
            made.append(Step(verb="climate", what=menu.made_how, air=menu.made_air))
            climate = True
        if step.verb in {"stain", "tone", "condition"} and not sample:
            made.append(Step(verb="sample", what="hidden place"))
            sample = True
        made.append(step)
    return tuple(made)


def reason_of(bench: Bench, menu: Menu, steps: tuple[Step, ...], index: int, now: Now) -> str:
    """
    Return why a step is there.

    Notes
    -----
    The route is replayed without it: either the look is no longer reached, or a risk rises; the rise
    that would cost most is named, with the cause that rises most.
    """
    step = steps[index]
    if step.verb in _GIVEN:
        return _GIVEN[step.verb]
    for mark, reason in _BY_MARK.items():
        if mark in step.how:
            return reason
    if step.verb == "bleach" and step.what in _BLEACHES:
        return _BLEACHES[step.what]
    if step.verb == "wait":
        return _WAITS.get(step.what, "so that what lies below can carry the next step")
    without = steps[:index] + steps[index + 1 :]
    if step.verb in _LOOK_VERBS and not look_had(bench, menu, without):
        return "makes the look"
    worst = _worst_rise(bench, risks_on(bench, without), now)
    if worst is not None:
        why = _risen(worst, causes_of(bench.begin, traced_on(bench, without)), now)
        return f"without it: {bench.know.fault(worst.fault).name}, {odds(worst.chance)} – {why}"
    if not look_had(bench, menu, without):
        return "without it the look is not reached"
    if step.verb == "repair" and not any(s.is_coat for s in steps[index:]):
        return "a flaw less to see"
    return _PLAIN.get(step.verb, "usual practice")


def _worst_rise(bench: Bench, before: tuple[Risk, ...], now: Now) -> Risk | None:
    """Return the risk whose rise without a step would cost most, or None where none rises by much."""
    worst, gain = None, 0.0
    for risk in before:
        # no step is there for lead: without a coat the next scuff would meet old paint
        if risk.fault == "lead-dust":
            continue
        was = now.chances.get(risk.fault, 0.0)
        rise = (hazard(risk.chance) - hazard(was)) * bench.harm_of(risk.fault)
        if rise > gain and risk.chance > was + 0.06:
            worst, gain = risk, rise
    return worst


def _risen(risk: Risk, without: dict[tuple[str, str], Weighed], now: Now) -> str:
    """Return the sentence of the cause of a risk that rises most without a step."""

    def rise(cause: str) -> float:
        key = (risk.fault, cause)
        return without[key].chance - (now.causes[key].chance if key in now.causes else 0.0)

    most = max((cause for fault, cause in without if fault == risk.fault), key=rise, default="")
    return without[risk.fault, most].hit.why if most else risk.why


_GIVEN = {
    "sample": "colour on this wood is seen before it is committed",
    "climate": "nothing dries as it should in this air",
}
_BY_MARK = {
    "open pores": "so that the white finds room in them",
    "edges": "so that it looks worn where wear would come",
}
_BLEACHES = {
    "oxalic-acid": "takes out the black that iron and tannin made in the wood",
    "chlorine": "takes old dye out of the wood",
    "peroxide-alkali": "makes the wood itself paler",
}
_WAITS = {
    "safe to wrap": "hard enough for blankets, not yet for hot dishes and wet glasses",
    "dry out": "remover and water must leave the wood first",
}
_PLAIN = {
    "repair": "mended before any coat goes on", "clean": "so that dirt is not sanded in",
    "rinse": "takes up what the remover left", "neutralise": "takes up what the remover left",
    "scrape": "takes off what is loose", "sand": "a clean, even ground", "scuff": "a key for the next coat",
    "bleach": "takes the mark out of the wood", "revive": "levels the old film with its own solvent",
    "wax": "a soft sheen and easy renewal", "topcoat": "protects what is below", "seal": "an even, closed ground",
    "prime": "an even, closed ground", "paint": "a second coat hides what shines through",
}  # fmt: skip


def odds(chance: float) -> str:
    """Return a chance in words."""
    for limit, words in (
        (0.03, "hardly"), (0.10, "unlikely"), (0.25, "perhaps one in six"), (0.45, "about one in three"),
        (0.65, "as likely as not"), (0.85, "likely"),
    ):  # fmt: skip
        if chance < limit:
            return words
    return "almost certain"
