"""Checks of days: the evenings laid out again on an own clock."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from refettle.domain.finding import Finding
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import Day, DayTask, PiecePlan
from refettle.domain.plan import StepCost
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_sums import near, setup_h
from refettle.planning.check_whole import finding

_DUSTY = frozenset({"sand", "scuff", "scrape", "strip"})
_GOES_ON = " (goes on)"
_SLACK_MIN = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """One coat, or one other step: its number, step, hands-on [min], the wait after it [h]."""

    number: int
    step: Step
    minutes: float
    wait_h: float


@dataclass(slots=True)
class _Line:
    """The parts of one group, how far they are done, and when the next may start [h]."""

    parts: list[_Part]
    next: int = 0
    spent: float = 0.0
    free_h: float = float("-inf")


@dataclass(slots=True)
class _Clock:
    """One evening: own clock and its end [h], what is set up, whether a coat is wet."""

    now_h: float
    end_h: float
    minutes: float = 0.0
    wet: bool = False
    ready: set[tuple[str, str]] = field(default_factory=set)


def days(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> Iterator[Finding]:
    """
    Yield what is wrong with the evenings of a plan.

    Notes
    -----
    An evening begins at the same hour every day. Tasks follow each other with their set-up; where a wait is
    not over, the clock moves on to its end; what then runs past the evening is found.
    """
    lines = {g.name: _Line(_parts(g.route.steps)) for g in plan.groups if g.route is not None}
    last = 0
    for day in plan.days:
        path = f"days/{day.day}"
        if day.day <= last:
            yield finding(
                piece, "days-disordered", path, f"it stands after day {last}", "put the days in order"
            )
        last = day.day
        yield from _evening(know, piece, workshop, day, lines)
    for name, line in lines.items():
        if line.next < len(line.parts):
            part = line.parts[line.next]
            yield finding(
                piece,
                "step-without-day",
                f"{name}/{part.number}",
                "no evening is left for it, or not enough of one",
                "lay every coat into the evenings",
            )
    wrap = max((line.free_h for line in lines.values()), default=0.0)
    if wrap > float("-inf") and plan.wrap_day < int(wrap // 24) + 1:
        yield finding(
            piece,
            "wrap-too-early",
            "days",
            f"wrapping is on day {plan.wrap_day}, the last wait ends on day {int(wrap // 24) + 1}",
            "wait for the last film",
        )
    if plan.cured_day < plan.wrap_day:
        yield finding(
            piece,
            "days-disordered",
            "days",
            "it is cured before it is safe to wrap",
            "cure takes longer than wrapping",
        )


def _parts(costs: tuple[StepCost, ...]) -> list[_Part]:
    """Return the coats and other steps of a route; a step that only waits lengthens the wait before it."""
    parts: list[_Part] = []
    for number, cost in enumerate(costs, start=1):
        step = cost.step
        if step.verb == "wait":
            if parts:
                was = parts.pop()
                parts.append(
                    _Part(
                        number=was.number,
                        step=was.step,
                        minutes=was.minutes,
                        wait_h=was.wait_h + step.wait_after_h,
                    )
                )
            continue
        coats = max(1, step.coats) if step.is_coat else 1
        for coat in range(coats):
            wait = step.wait_after_h if coat == coats - 1 else step.wait_between_h
            parts.append(_Part(number=number, step=step, minutes=cost.minutes.likely / coats, wait_h=wait))
    return parts


def _evening(
    know: Knowledge, piece: Piece, workshop: Workshop, day: Day, lines: dict[str, _Line]
) -> Iterator[Finding]:
    """Yield what is wrong with one evening; lines move on."""
    path, begin = f"days/{day.day}", (day.day - 1) * 24.0
    clock = _Clock(now_h=begin, end_h=begin + workshop.hours_per_evening)
    for task in day.tasks:
        if task.number == 0:
            clock.now_h += task.minutes / 60.0
            clock.minutes += task.minutes
            continue
        line = lines.get(task.group)
        if line is None or line.next >= len(line.parts):
            yield finding(
                piece, "task-too-many", path, f'"{task.text}" is no step still to do', "take it out"
            )
            continue
        part = line.parts[line.next]
        if task.number != part.number:
            what = f"step {task.number} of {task.group} is done while step {part.number} is next"
            yield finding(piece, "task-disordered", path, what, "keep the order of the route")
            line.next = next((i for i, p in enumerate(line.parts) if p.number == task.number), line.next)
            part = line.parts[line.next]
        yield from _timely(piece, path, clock, line, part)
        _do(know, clock, line, part, task)
        yield from _ended(piece, path, clock, line, part, task)
    took, longest = (clock.now_h - begin) * 60.0, workshop.hours_per_evening * 60.0
    if took > longest + _SLACK_MIN and len(day.tasks) > 1:
        what = f"it takes {took:.0f} min, an evening has {longest:.0f} min"
        yield finding(piece, "evening-too-long", path, what, "move work to another evening")
    if not near(day.minutes, clock.minutes):
        what = f"it says {day.minutes:.0f} min, its tasks and set-ups add up to {clock.minutes:.0f} min"
        yield finding(piece, "sum-differs", path, what, "add up again")


def _timely(piece: Piece, path: str, clock: _Clock, line: _Line, part: _Part) -> Iterator[Finding]:
    """Yield a task before its time: the wait before it not over, or dust while a coat is wet."""
    if line.free_h > clock.end_h:
        hours = line.free_h - clock.end_h
        what = f"step {part.number} comes too early: the wait before it ends {hours:.1f} h after this evening"
        yield finding(piece, "task-too-early", path, what, "move it to a later evening")
    if part.step.verb in _DUSTY and "wet" not in part.step.how and clock.wet:
        what = f"step {part.number} makes dust while a coat is wet"
        yield finding(piece, "dust-on-wet", path, what, "do dusty work before coats, or another evening")


def _do(know: Knowledge, clock: _Clock, line: _Line, part: _Part, task: DayTask) -> None:
    """Let a task take its time, with set-up once an evening for all that use the same."""
    key = (part.step.verb, part.step.what)
    coats = max(1, part.step.coats) if part.step.is_coat else 1
    setup = 0.0 if key in clock.ready else 60.0 * setup_h(know, part.step) / coats
    clock.ready.add(key)
    clock.now_h = max(clock.now_h, min(line.free_h, clock.end_h)) + (task.minutes + setup) / 60.0
    clock.minutes += task.minutes + setup
    clock.wet = clock.wet or part.step.is_coat
    line.spent += task.minutes


def _ended(
    piece: Piece, path: str, clock: _Clock, line: _Line, part: _Part, task: DayTask
) -> Iterator[Finding]:
    """Yield a task that takes or waits otherwise than its step; the line moves on once it is done."""
    if task.text.endswith(_GOES_ON):
        return
    if not near(line.spent, part.minutes) or not near(task.wait_h, part.wait_h):
        what = (
            f"step {task.number} of {task.group} takes {line.spent:.0f} min and then {task.wait_h:g} h here, "
            f"{part.minutes:.0f} min and {part.wait_h:g} h in the route"
        )
        yield finding(piece, "task-differs", path, what, "take both from the route")
    line.free_h, line.spent = clock.now_h + part.wait_h, 0.0
    line.next += 1
