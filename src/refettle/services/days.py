"""A simple list of evenings: steps laid into free hours with their waits at the planning air."""

from dataclasses import dataclass, replace
from math import inf

from refettle.domain.piece import Workshop
from refettle.domain.piece_plan import Day, DayTask, GroupPlan, MendJob
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import drying_rate
from refettle.planning.search import setup_hours
from refettle.services.around import Around
from refettle.services.step_words import step_words
from refettle.services.turning import opposite, turned_share

_DUSTY = frozenset({"sand", "scuff", "scrape", "strip"})
_REMOVING = frozenset({"strip", "rinse", "neutralise"})
_LONGEST_DAYS = 400
_BEGINS_H = 18.0
_ENOUGH_MIN = 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    """One coat or other work: its step, the step's number, hands-on [min], the wait after it [h], its own words."""

    step: Step
    number: int
    minutes: float
    wait_h: float
    text: str = ""
    tacky_h: float = 0.0
    first_faces: bool = False
    waits_for: str = ""

    @property
    def dusty(self) -> bool:
        """Return whether it makes dust that a wet film would catch."""
        return self.step.verb in _DUSTY and "wet" not in self.step.how


@dataclass(slots=True)
class _Queue:
    """
    Tasks of one group or job.

    The next, the hour from which it may start, what is left of it [min]; when the last coat is dry to touch [h];
    the piece, where there are several.
    """

    name: str
    tasks: tuple[_Task, ...]
    free_h: float
    next: int = 0
    left: float = 0.0
    stage: str = ""
    surfaces: frozenset[str] = frozenset()
    tacky_h: float = 0.0
    piece: str = ""

    def ground_h(self, wanted: str) -> float:
        """Return when a face is ``bare`` or ``smooth`` [h]; infinite while that is still to be done."""
        last = -1
        for number, task in enumerate(self.tasks):
            if task.step.is_coat:
                break
            if wanted == "smooth" or removes_film(task.step):
                last = number
        return self.free_h if self.next > last else inf

    @property
    def done(self) -> bool:
        """Return whether all is done."""
        return self.next >= len(self.tasks)

    @property
    def over_h(self) -> float:
        """Return when all is done and its last wait over [h]; infinite while something is left."""
        return self.free_h if self.done else inf


@dataclass(slots=True)
class _Evening:
    """One evening while it is laid: clock [h], tasks so far, what is set up, whether a coat is wet."""

    clock_h: float
    end_h: float
    tasks: list[DayTask]
    ready: set[tuple[str, str]]
    minutes: float = 0.0
    wet: bool = False


def session_days(evenings_per_week: float) -> list[int]:
    """Return the days of a week on which there is an evening, spread evenly; day 0 first."""
    count = max(1, min(7, round(evenings_per_week)))
    return [int(i * 7 / count) for i in range(count)]


def lay_days(
    know: Knowledge,
    workshop: Workshop,
    plans: tuple[GroupPlan, ...],
    work: Around | None = None,
    mending: tuple[MendJob, ...] = (),
    pieces: tuple[str, ...] = (),
) -> tuple[tuple[Day, ...], int, int]:
    """
    Return the evenings, the day it is safe to wrap and the day it is cured.

    Parameters
    ----------
    know
        All facts.
    workshop
        Free evenings and hours.
    plans
        Plans of the groups, in working order.
    work
        Work on the whole piece (number 0): tests before anything else on the first evening, the rest before the
        first step and on the day it is safe to wrap.
    mending
        Jobs: but for tests, nothing of a piece begins before those that come first are over; no coat goes on a
        surface before its jobs are, and nothing is done to it while they wait in clamps; what comes after the coats
        is done with the refitting.
    pieces
        Names of several pieces, if groups, jobs and work begin with one: ``name: group``.

    Returns
    -------
    tuple
        Evenings with work, wrap day [d], cured day [d]. A step longer than an evening goes on the next.
        Dust-making steps come first in an evening, then coats, and none while a film is tacky. Two faces of a
        part that is turned over are not wet at once: the other face waits until the first is dry to touch.
        A wait that ends the same evening is sat out; waits need no evening of their own.
    """
    work = work or Around()
    queues = [*(_job_queue(job) for job in mending if job.stage != "after coats")]
    queues.extend(_queue(know, workshop, p) for p in plans if p.route is not None)
    for queue in queues:
        queue.piece = next((name for name in pieces if queue.name.startswith(f"{name}: ")), "")
    after = (*_last_jobs(mending), *work.after)
    before: tuple[DayTask, ...] = (*work.tests, *work.before)
    if any(q.stage == "first" for q in queues) and work.before:
        queues = [*_around_queues(work.before, pieces), *queues]
        before = work.tests
    week = session_days(workshop.evenings_per_week)
    days: list[Day] = []
    day = 0
    while any(not q.done for q in queues) and day < _LONGEST_DAYS:
        if day % 7 in week:
            begin = day * 24.0 + _BEGINS_H
            first = before if not days else ()
            took = sum(task.minutes for task in first)
            evening = _Evening(
                begin + took / 60.0, begin + workshop.hours_per_evening, list(first), set(), minutes=took
            )
            _fill(know, queues, evening)
            if evening.tasks:
                days.append(Day(day=day + 1, tasks=tuple(evening.tasks), minutes=evening.minutes))
        day += 1
    wrap = max((q.free_h for q in queues), default=0.0)
    cured = wrap + max((_cure_h(know, workshop, p) for p in plans), default=0.0)
    if days and after:
        last = max(int(wrap // 24) + 1, days[-1].day + 1)
        days.append(Day(day=last, tasks=after, minutes=sum(task.minutes for task in after)))
    return tuple(days), int(wrap // 24) + 1, int(cured // 24) + 1


def _queue(know: Knowledge, workshop: Workshop, plan: GroupPlan) -> _Queue:
    """Return the tasks of a plan, coat by coat; a step that only waits lengthens the wait before it."""
    tasks: list[_Task] = []
    free_h = 0.0
    for number, cost in enumerate(plan.route.steps if plan.route is not None else (), start=1):
        step, minutes = cost.step, cost.minutes.likely
        if step.verb == "wait":
            if tasks:
                tasks[-1] = _Task(
                    step=tasks[-1].step, number=tasks[-1].number, minutes=tasks[-1].minutes,
                    wait_h=tasks[-1].wait_h + step.wait_after_h,
                )  # fmt: skip
            else:
                free_h = _BEGINS_H + step.wait_after_h
            continue
        coats = max(1, step.coats) if step.is_coat else 1
        for coat in range(1, coats + 1):
            wait = step.wait_after_h if coat == coats else step.wait_between_h
            one = _one(step, coats, wait)
            tacky = _tacky_h(know, workshop, step)
            whole = _Task(step=one, number=number, minutes=minutes / coats, wait_h=wait, tacky_h=tacky)
            tasks.extend(_by_faces(whole, turned_share(plan.members)) if step.is_coat else (whole,))
    return _Queue(
        plan.name,
        tuple(tasks),
        free_h,
        left=tasks[0].minutes if tasks else 0.0,
        surfaces=frozenset(plan.members),
    )


def removes_film(step: Step) -> bool:
    """Return whether a step takes an old film off, or washes away what took it off."""
    return step.verb in _REMOVING or "to bare" in step.how


def _around_queues(before: tuple[DayTask, ...], pieces: tuple[str, ...]) -> list[_Queue]:
    """Return the work before the first step as queues, where something comes before even that."""
    queues = []
    for task in before:
        one = _Task(step=Step(verb="take_off"), number=0, minutes=task.minutes, wait_h=0.0, text=task.text)
        piece = next((name for name in pieces if task.group.startswith(f"{name}: ")), "")
        queues.append(_Queue(task.group, (one,), 0.0, left=task.minutes, stage="around", piece=piece))
    return queues


def _tacky_h(know: Knowledge, workshop: Workshop, step: Step) -> float:
    """Return the hours until a coat is dry to touch in the air it has [h]: then its part may be turned over."""
    if not step.is_coat:
        return 0.0
    facts = know.film(step.what)
    return facts.touch_h / drying_rate(facts, step.air or workshop.air_likely)


def _by_faces(task: _Task, turned: float) -> tuple[_Task, ...]:
    """Return a coat as one task, or as two where parts must be turned over between their faces."""
    if turned <= 0:
        return (task,)
    return (
        replace(task, minutes=(1.0 - turned) * task.minutes, wait_h=task.tacky_h, first_faces=True),
        replace(task, minutes=turned * task.minutes),
    )


def _job_queue(job: MendJob) -> _Queue:
    """Return the operations of a job."""
    tasks = tuple(
        _Task(
            step=Step(verb="repair"),
            number=0,
            minutes=step.minutes.likely,
            wait_h=step.wait_h.likely,
            text=first_clause(step.text),
            waits_for=step.waits_for,
        )
        for step in job.steps
    )
    return _Queue(
        job.name,
        tasks,
        0.0,
        left=tasks[0].minutes if tasks else 0.0,
        stage=job.stage,
        surfaces=frozenset(job.surfaces),
    )


def first_clause(text: str) -> str:
    """Return what an operation is without its particulars, as a list of days has room for."""
    for mark in (":", ";", ". ", ", "):
        text = text.partition(mark)[0]
    return text


def _last_jobs(mending: tuple[MendJob, ...]) -> tuple[DayTask, ...]:
    """Return the tasks that come when the coats are hard."""
    return tuple(
        DayTask(group=job.name, number=0, text=first_clause(step.text), minutes=step.minutes.likely, wait_h=0.0)
        for job in mending if job.stage == "after coats" for step in job.steps
    )  # fmt: skip


def _one(step: Step, coats: int, wait: float) -> Step:
    """Return one coat of a step with the wait that follows it."""
    if coats == 1:
        return step
    return Step(
        verb=step.verb, what=step.what, method=step.method, coats=1, wait_after_h=wait, film=step.film,
        grit=step.grit, how=step.how, air=step.air,
    )  # fmt: skip


def _fill(know: Knowledge, queues: list[_Queue], evening: _Evening) -> None:
    """Lay tasks into an evening until its time is up or nothing more can be done; queues move on."""
    while True:
        fit = [q for q in queues if not q.done and _fits(know, q, queues, evening)]
        now = [q for q in fit if _ready_h(q, queues) <= evening.clock_h]
        if now:
            _work(know, min(now, key=_rank), evening)
        elif fit:
            evening.clock_h = min(_ready_h(q, queues) for q in fit)
        else:
            return


def _ready_h(queue: _Queue, queues: list[_Queue]) -> float:
    """Return when a queue's next task may begin [h]: its own waits, and the mending that comes before it, over."""
    own = [q for q in queues if q.piece == queue.piece]
    gates = [q.over_h for q in own if q.stage == "first" and queue.stage != "first"]
    gates += [q.over_h for q in own if q.stage == "around" and not queue.stage]
    task = queue.tasks[queue.next]
    if task.waits_for:
        gates += [q.ground_h(task.waits_for) for q in queues if not q.stage and q.surfaces & queue.surfaces]
    gates += [
        q.free_h for q in queues if q.stage == "before colour" and q.next and q.surfaces & queue.surfaces
    ]
    if task.dusty:
        gates += [q.tacky_h for q in queues]
    if task.step.is_coat:
        gates += [q.tacky_h for q in queues if q is not queue and opposite(q.surfaces, queue.surfaces)]
        gates += [q.over_h for q in queues if q.stage == "before colour" and q.surfaces & queue.surfaces]
    return max([queue.free_h, *gates])


def _fits(know: Knowledge, queue: _Queue, queues: list[_Queue], evening: _Evening) -> bool:
    """Return whether enough of a queue's next task can be done in what is left of an evening."""
    task = queue.tasks[queue.next]
    ready_h = _ready_h(queue, queues)
    if task.dusty and evening.wet:
        return False
    if not evening.tasks and ready_h <= evening.clock_h:
        return True
    room = (evening.end_h - max(evening.clock_h, ready_h)) * 60.0 - _setup(know, task, evening)
    if task.step.is_coat and queue.left == task.minutes and evening.tasks:
        return room >= queue.left
    return room >= min(queue.left, _ENOUGH_MIN)


def _setup(know: Knowledge, task: _Task, evening: _Evening) -> float:
    """Return set-up and clean-up of a task in an evening, once for all that use the same [min]."""
    return 0.0 if (task.step.verb, task.step.what) in evening.ready else 60.0 * setup_hours(know, task.step)


def _work(know: Knowledge, queue: _Queue, evening: _Evening) -> None:
    """Do as much of a queue's next task as the evening has room for."""
    task = queue.tasks[queue.next]
    setup = _setup(know, task, evening)
    room = (evening.end_h - evening.clock_h) * 60.0 - setup
    minutes = min(queue.left, max(room, _ENOUGH_MIN))
    evening.ready.add((task.step.verb, task.step.what))
    evening.clock_h += (minutes + setup) / 60.0
    evening.minutes += minutes + setup
    evening.wet = evening.wet or task.step.is_coat
    finished = queue.left - minutes < 1e-6
    whole = finished and not task.first_faces
    text = _said(know, queue, task)
    evening.tasks.append(
        DayTask(
            group=queue.name, number=task.number, text=text if whole else f"{text} (goes on)",
            minutes=minutes, wait_h=task.wait_h if whole else 0.0,
        )
    )  # fmt: skip
    if not finished:
        queue.left -= minutes
        return
    queue.next += 1
    queue.free_h = evening.clock_h + task.wait_h
    if task.step.is_coat:
        queue.tacky_h = evening.clock_h + task.tacky_h
    queue.left = 0.0 if queue.done else queue.tasks[queue.next].minutes


def _said(know: Knowledge, queue: _Queue, task: _Task) -> str:
    """Return a task in words, with the faces it is for where its parts are turned over."""
    text = task.text or step_words(know, task.step)
    if task.first_faces:
        return f"{text}: first faces"
    turned = queue.next > 0 and queue.tasks[queue.next - 1].first_faces
    return f"{text}: turn over, the other faces" if turned else text


def _rank(queue: _Queue) -> int:
    """Return the turn of a queue's next task in an evening: mending, dust, then the rest, coats last."""
    task = queue.tasks[queue.next]
    if queue.stage:
        return -1
    return 0 if task.step.verb in _DUSTY else (2 if task.step.is_coat else 1)


def _cure_h(know: Knowledge, workshop: Workshop, plan: GroupPlan) -> float:
    """Return the hours from wrapping to full cure of the slowest film of a plan, in the air it has [h]."""
    if plan.route is None:
        return 0.0
    slowest = 0.0
    for cost in plan.route.steps:
        if cost.step.is_coat:
            facts = know.film(cost.step.what)
            rate = drying_rate(facts, cost.step.air or workshop.air_likely)
            slowest = max(slowest, (facts.cured_h - facts.wrap_h) / rate)
    return slowest
