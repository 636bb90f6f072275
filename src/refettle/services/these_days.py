"""What the days do to a plan: its steps played with the waits and the air that they really get."""

from collections.abc import Iterator
from dataclasses import replace

from refettle.domain.air import Air
from refettle.domain.airhours import AirHours
from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import DayTask, GroupPlan, PiecePlan
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_whole import stand_in
from refettle.planning.mended import as_mended
from refettle.planning.offers import CLOSING_USE, CURE
from refettle.planning.reasons import odds
from refettle.planning.replay import foresee
from refettle.planning.start import start
from refettle.services.calendar import Calendar
from refettle.services.day_queues import KEYED

RISEN = 0.1
"""Rise of a chance [1] from which it is told (design: the same from which a start would be blocked)."""
_SCUFF = "scuff before that coat: by then its window to recoat has closed; or free an evening before it does"
_NEARER = "free another evening nearer to the step before, or make the air better for that step"
_KEY = Step(verb="scuff", grit=320, method="synthetic-pad", how=frozenset({"clean dust"}))
_GOES_ON = " (goes on)"
_DRIES_H = 72.0


def riskier(
    know: Knowledge, name: str, piece: Piece, plan: PiecePlan, calendar: Calendar
) -> Iterator[Finding]:
    """
    Yield the faults that the days of a piece make likelier than its plan says.

    Parameters
    ----------
    know
        Facts.
    name
        Name of the piece, as in the days.
    piece, plan
        The piece and its plan.
    calendar
        The days.

    Yields
    ------
    Finding
        One for each fault of a group whose chance has risen by more than `RISEN`.
    """
    mended = as_mended(know, piece)
    for group in plan.groups:
        surface = stand_in(mended, group)
        steps = as_laid(group, f"{name}: {group.name}", calendar) if surface is not None else ()
        if surface is None or not steps or group.route is None:
            continue
        begin = start(know, mended, replace(surface, look=group.look))
        planned = {risk.fault: risk.chance for risk in group.route.risks}
        made = next((c.step.air for c in reversed(group.route.steps) if c.step.is_coat), None)
        closed = (*steps, replace(CURE, air=made), CLOSING_USE)
        for risk in foresee(know, begin, closed, calendar.workshop.air_likely):
            was = planned.get(risk.fault, 0.0)
            if risk.chance > was + RISEN:
                what = (
                    f"{name}: {group.name}: in these days {know.name('fault', risk.fault)} is {odds(risk.chance)}, "
                    f"the plan says {odds(was)}: {risk.why}"
                )
                do = _SCUFF if "not scuffed" in risk.why else _NEARER
                yield Finding(
                    code="riskier-days", level="warning", where=Where(file="days"), what=what, do=do
                )


def as_laid(group: GroupPlan, label: str, calendar: Calendar) -> tuple[Step, ...]:
    """
    Return the steps of a group with the waits and the air that its days give them.

    Parameters
    ----------
    group
        The group with its plan.
    label
        Its name in the days.
    calendar
        The days.

    Returns
    -------
    tuple of Step
        Coat by coat; empty where not all of it is laid. A wait lasts until the next work on the group begins, the last
        as long as was planned.
    """
    tasks = [t for day in calendar.days for t in day.tasks if t.group == label and t.number]
    done = [task for task in tasks if not task.text.endswith(_GOES_ON)]
    costs = group.route.steps if group.route is not None else ()
    steps: list[Step] = []
    for number, cost in enumerate(costs, start=1):
        coats = [task for task in done if task.number == number and task.text != KEYED]
        if cost.step.verb == "wait":
            continue
        if len(coats) != (max(1, cost.step.coats) if cost.step.is_coat else 1):
            return ()
        for task in coats:
            before = done[done.index(task) - 1] if done.index(task) else None
            if before is not None and before.text == KEYED:
                steps.append(_KEY)
            steps.append(_one(cost.step, task, done, calendar))
    return tuple(steps)


def _one(step: Step, task: DayTask, done: list[DayTask], calendar: Calendar) -> Step:
    """Return one coat or other work with its real wait and air."""
    end_h = task.begin_h + task.minutes / 60.0
    after = next((other.begin_h for other in done[done.index(task) + 1 :]), end_h + task.wait_h)
    air = (
        step.air
        if calendar.workshop.hours is None
        else step.air or _mean(calendar.workshop.hours, task.begin_h, after)
    )
    one = replace(step, wait_after_h=max(0.0, after - end_h), wait_between_h=0.0, air=air)
    return replace(one, coats=1) if step.is_coat else one


def _mean(hours: AirHours, begin_h: float, end_h: float) -> Air:
    """Return the mean air from a moment to another, of three days at the most."""
    airs = [
        hours.at(hour)
        for hour in range(int(begin_h), max(int(begin_h) + 1, int(min(end_h, begin_h + _DRIES_H))))
    ]
    return Air(
        temp_c=sum(air.temp_c for air in airs) / len(airs),
        rh=sum(air.rh for air in airs) / len(airs),
        air_m_s=hours.air_m_s,
    )
