"""One group of surfaces on the plan's page: what it is, what to test, what to do, what may go wrong."""

from dataclasses import dataclass, field
from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import (
    area_words,
    chance_words,
    count_words,
    hours_words,
    litres_words,
    minutes_words,
    money_words,
    wait_range_words,
)
from refettle.domain.piece_plan import GroupPlan
from refettle.domain.plan import Impossible, Risk, Route, StepCost, TestAdvice
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import look_words
from refettle.services.step_words import step_words, wait_words

SMALL: Final = 0.03
"""Chance [1] below which a risk is only counted."""
_CHANCE: Final = 24
_TIME: Final = 10
_WORTH_SHORTENING: Final = 3
"""Steps from which a way that was told before is not told again."""
_AIMS: Final = {
    "cheaper": "Cheaper",
    "fewer hours": "Fewer hours",
    "surer": "Surer",
    "sooner": "Sooner",
}


@dataclass(slots=True)
class Told:
    """
    What earlier groups of a page have told already, so that it is not said twice.

    Attributes
    ----------
    tests
        Safety tests, with the name of the group that told them.
    ways
        Groups by look and steps, the first of each.
    """

    tests: dict[str, str] = field(default_factory=dict)
    ways: dict[tuple[str, tuple[Step, ...]], GroupPlan] = field(default_factory=dict)


def write_group(
    page: Page, group: GroupPlan, know: Knowledge, currency: str, told: Told, *, everything: bool
) -> None:
    """
    Write one group.

    Parameters
    ----------
    page
        The page.
    group
        The group.
    know
        Names.
    currency
        Word beside money.
    told
        What earlier groups have told; this group's is added.
    everything
        Every small risk too, and nothing shortened.
    """
    page.heading(f"{_start(group.name)}: {look_words(group.look)}")
    members = "" if group.members == (group.name,) else f"{', '.join(group.members)}; "
    chosen = "" if group.asked else "; nobody asked for a look, this one costs least"
    page.write(f"{members}{area_words(group.area_m2)}, {group.relief}{chosen}", indent=2)
    before = _before(group, told)
    if before is not None and group.route is not None and not everything:
        _as_before(page, group, before, know, currency)
        page.gap()
        return
    _worlds(page, group)
    _tests(page, group, know, currency, told.tests)
    if group.impossible is not None:
        _impossible(page, group.impossible)
    if group.route is not None:
        _steps(page, group.route, know, currency)
        _sums(page, group, group.route, currency)
        write_risks(page, group.route.risks, know, len(group.route.steps), everything=everything)
        _alternatives(page, group, group.route, know, currency)
    page.gap()


def _before(group: GroupPlan, told: Told) -> GroupPlan | None:
    """Return the group that has told this one's way and look, or None; then this one is remembered."""
    if group.route is None or len(group.route.steps) < _WORTH_SHORTENING:
        return None
    way = (look_words(group.look), tuple(cost.step for cost in group.route.steps))
    first = told.ways.setdefault(way, group)
    return None if first is group or first.worlds != group.worlds else first


def _as_before(page: Page, group: GroupPlan, before: GroupPlan, know: Knowledge, currency: str) -> None:
    """Write a group that is worked like an earlier one: what it takes, and what may go wrong here alone."""
    route, first = group.route, before.route
    if route is None or first is None:
        return
    page.gap()
    page.write(f"The same {len(route.steps)} steps as {before.name}, for the same reasons.", indent=2, hang=2)
    page.write(f"In all {totals_words(route, currency)}", indent=2, hang=2)
    there = {risk.fault: chance_words(risk.chance) for risk in first.risks}
    here = tuple(risk for risk in route.risks if there.get(risk.fault) != chance_words(risk.chance))
    if any(risk.chance >= SMALL for risk in here):
        page.gap()
        page.write("What may go wrong, where it differs", indent=2)
        _risk_rows(page, [risk for risk in here if risk.chance >= SMALL], know, len(route.steps))


def _worlds(page: Page, group: GroupPlan) -> None:
    """Write what the old finish may be."""
    if len(group.worlds) == 1:
        page.write(f"Now: {group.worlds[0][0]}", indent=2, hang=2)
        return
    if group.worlds:
        page.gap()
        page.write("What is on it now", indent=2)
    for label, share in group.worlds:
        page.marked(chance_words(share), label, indent=4, column=_CHANCE)


def _tests(page: Page, group: GroupPlan, know: Knowledge, currency: str, told: dict[str, str]) -> None:
    """Write the tests that come first, with what each answer would lead to."""
    if not group.tests:
        return
    page.gap()
    page.write("Test first", indent=2)
    for advice in group.tests:
        if advice.needed and told.setdefault(advice.test, group.name) != group.name:
            page.write(
                f"{_start(know.name('test', advice.test))}: as for {told[advice.test]}", indent=4, hang=2
            )
        else:
            _test(page, advice, currency)


def _test(page: Page, advice: TestAdvice, currency: str) -> None:
    """Write one test with its answers."""
    if advice.needed:
        page.write(f"{_start(advice.why)}; needed for safety", indent=4, hang=2)
    else:
        pays = (
            f"saves about {advice.gain:.0f} {currency} over its price of about {advice.price:.0f} {currency}"
        )
        page.write(f"{_start(advice.why)}; {pays}", indent=4, hang=2)
    for answer, chance, then in advice.answers:
        page.write(f"{answer} ({chance_words(chance)}): {then}", indent=6, hang=2)


def _start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"


def _impossible(page: Page, impossible: Impossible) -> None:
    """Write which demands clash and what can be had."""
    page.gap()
    page.write("There is no way to this look. These do not go together:", indent=2)
    for demand in impossible.clash:
        page.write(demand, indent=4, hang=2)
    if impossible.nearest:
        page.gap()
        page.write("What can be had, nearest first:", indent=2)
    for _, words in impossible.nearest:
        page.write(words, indent=4, hang=2)


def _steps(page: Page, route: Route, know: Knowledge, currency: str) -> None:
    """Write what to do."""
    page.gap()
    if not route.steps:
        page.write("Nothing to do: it stays as it is.", indent=2)
        return
    page.write("What to do", indent=2)
    write_steps(page, route, know, currency)


def write_steps(page: Page, route: Route, know: Knowledge, currency: str) -> None:
    """Write the steps, numbered, each with its time, waits, material and reason."""
    for number, cost in enumerate(route.steps, start=1):
        waits = cost.step.verb == "wait"
        timed = (
            hours_words(cost.wait_h) if waits else minutes_words(cost.minutes) if cost.minutes.high else ""
        )
        page.ended(f"{number:>3}  {step_words(know, cost.step)}", timed, indent=1, hang=7, keep=_TIME)
        details = "" if waits else _wait(cost), _material(cost, currency)
        page.write("; ".join(part for part in details if part), indent=6, hang=2)
        if cost.reason:
            page.write(f"{_start(cost.reason)}.", indent=6, hang=2)


def _wait(cost: StepCost) -> str:
    """Return the waits of a step: between its coats, after it, in all."""
    step = cost.step
    after, between = wait_words(step.wait_after_h), wait_words(step.wait_between_h)
    if step.coats < 2 or not between:
        said = wait_range_words(cost.wait_h)
        return f"then {said}" if said else ""
    if not after:
        return f"{between} between coats ({hours_words(cost.wait_h)} in all)"
    same = f"{between} after each coat" if after == between else f"{between} between coats, then {after}"
    return f"{same} ({hours_words(cost.wait_h)} in all)"


def _material(cost: StepCost, currency: str) -> str:
    """Return litres and money of a step."""
    if cost.money.high <= 0:
        return ""
    return ", ".join(part for part in (litres_words(cost.litres), money_words(cost.money, currency)) if part)


def _sums(page: Page, group: GroupPlan, route: Route, currency: str) -> None:
    """Write what the group takes in all, and how sure the search is."""
    if route.steps:
        page.gap()
        page.write(f"In all {totals_words(route, currency)}", indent=2, hang=2)
    if route.value_lost > 0:
        page.write(
            f"Loses about {route.value_lost:.0f} {currency} that the original finish is worth",
            indent=2,
            hang=2,
        )
    if not group.exact:
        page.write(
            f"The search was cut short: another way may cost up to {100 * group.gap:.0f} % less",
            indent=2,
            hang=2,
        )


def totals_words(route: Route, currency: str) -> str:
    """Return work, money and waiting of a route."""
    parts = [f"{minutes_words(route.minutes)} of work"]
    if route.money.high > 0:
        parts.append(f"{money_words(route.money, currency)} of material")
    if route.elapsed_h.high > 0:
        parts.append(f"{hours_words(route.elapsed_h)} of waiting")
    return ", ".join(parts)


def write_risks(
    page: Page,
    risks: tuple[Risk, ...],
    know: Knowledge,
    steps: int,
    *,
    everything: bool,
    floor: float = SMALL,
) -> None:
    """
    Write risks in words, likeliest first, with the reason and the step.

    Parameters
    ----------
    page
        The page.
    risks
        Risks.
    know
        Names.
    steps
        Number of steps that a person does [1]; what comes later is use.
    everything
        Whether small ones are shown too.
    floor
        Chance [1] below which a risk is small.
    """
    ordered = sorted(risks, key=lambda risk: -risk.chance)
    shown = [risk for risk in ordered if everything or risk.chance >= floor]
    if ordered:
        page.gap()
        page.write("What may still go wrong", indent=2)
    _risk_rows(page, shown, know, steps)
    if len(shown) < len(ordered):
        mark = "hardly" if floor <= SMALL else "unlikely or less"
        others = count_words(len(ordered) - len(shown), "other" if shown else "fault")
        page.marked(mark, others, indent=4, column=_CHANCE)


def _risk_rows(page: Page, risks: list[Risk], know: Knowledge, steps: int) -> None:
    """Write risks, each with its chance in words, its reason and the step."""
    for risk in risks:
        why = f": {risk.why}" if risk.why else ""
        words = f"{know.name('fault', risk.fault)}{why} ({_when(risk.step, steps)})"
        page.marked(chance_words(risk.chance), words, indent=4, column=_CHANCE)


def _when(step: int, steps: int) -> str:
    """Return when a fault comes from: a step, or later."""
    return f"step {step}" if 0 < step <= steps else "in use"


def _alternatives(page: Page, group: GroupPlan, route: Route, know: Knowledge, currency: str) -> None:
    """Write other ways: what each gains and where it differs; and leaving it alone."""
    alone = group.leave_alone if group.leave_alone is not None and route.look != "keep" else None
    if not group.alternatives and alone is None:
        return
    page.gap()
    page.write("Other ways", indent=2)
    for other in group.alternatives:
        page.write(
            f"{_AIMS.get(other.aim, other.aim)}: {_gain(route, other, know, currency)}", indent=4, hang=2
        )
        _difference(page, route, other, know)
    if alone is not None:
        page.write(f"Leave it alone: {totals_words(alone, currency)}", indent=4, hang=2)
        page.write("; ".join(step_words(know, cost.step) for cost in alone.steps), indent=6, hang=2)


def _gain(route: Route, other: Route, know: Knowledge, currency: str) -> str:
    """Return what an alternative gains in its name."""
    match other.aim:
        case "cheaper":
            said = [money_words(way.money, currency) for way in (other, route)]
            share = 1.0 - other.money.likely / max(route.money.likely, 0.01)
        case "fewer hours":
            said = [minutes_words(way.minutes) for way in (other, route)]
            share = 1.0 - other.minutes.likely / max(route.minutes.likely, 0.01)
        case "sooner":
            said = [f"{hours_words(way.elapsed_h)} of waiting" for way in (other, route)]
            share = 1.0 - other.elapsed_h.likely / max(route.elapsed_h.likely, 0.01)
        case _:
            return _surer(route, other, know)
    return f"{said[0]} instead of {said[1]}" if said[0] != said[1] else f"by about {100 * share:.0f} %"


def _surer(route: Route, other: Route, know: Knowledge) -> str:
    """Return the fault whose chance falls most."""
    left = {risk.fault: risk.chance for risk in other.risks}
    falls = [(risk.chance - left.get(risk.fault, 0.0), risk) for risk in route.risks]
    fall, risk = max(falls, key=lambda pair: pair[0])
    before, after = chance_words(risk.chance), chance_words(left.get(risk.fault, 0.0))
    name = know.name("fault", risk.fault)
    if fall <= 0 or before == after:
        return f"a little less of {name}"
    return f"{name} {after} instead of {before}"


def _difference(page: Page, route: Route, other: Route, know: Knowledge) -> None:
    """Write what is left out and what is done instead."""
    mine = [step_words(know, cost.step) for cost in route.steps]
    theirs = [step_words(know, cost.step) for cost in other.steps]
    out = [words for words in mine if words not in theirs]
    new = [words for words in theirs if words not in mine]
    if out:
        page.write(f"without: {'; '.join(out)}", indent=6, hang=2)
    if new:
        page.write(f"{'instead' if out else 'and'}: {'; '.join(new)}", indent=6, hang=2)
    for cost in other.steps if not out and not new else ():
        waits = _wait(cost)
        if waits and waits not in {_wait(own) for own in route.steps}:
            page.write(f"{step_words(know, cost.step)}: {waits}", indent=6, hang=2)
