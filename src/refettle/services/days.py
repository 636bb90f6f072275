"""A simple list of evenings: steps laid into free hours with their waits at the planning air."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import inf

from refettle.domain.piece_plan import Day, DayTask, GroupPlan, MendJob
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.search import setup_hours
from refettle.services.agenda import Agenda
from refettle.services.all_queues import all_queues, said
from refettle.services.around import Around
from refettle.services.clock import LONGEST_H, DryClock
from refettle.services.day_queues import DUSTY, Queue, Scale, Task, cure_h, key_where_closed, last_jobs
from refettle.services.day_rows import add, after_each_other, insert, put_together
from refettle.services.free_time import spray_h, windows
from refettle.services.turning import opposite

_ENOUGH_MIN = 8.0
_SPRAYED = frozenset({"spray", "aerosol"})


@dataclass(frozen=True, slots=True)
class _Bench:
    """
    What is laid and what it is laid by.

    Facts, place, queues, the clock of the air; what the room has been made; per queue those that hold the other faces of
    its parts, and those that share a surface with it; places of the pieces where one goes on before another; what was
    meant to be done when, and the free hours it was meant for.
    """

    know: Knowledge
    workshop: Workshop
    queues: list[Queue]
    clock: DryClock | None
    made: set[str] | None
    facing: dict[int, list[Queue]]
    sharing: dict[int, list[Queue]]
    places: dict[str, int]
    agenda: Agenda | None
    evenings: tuple[tuple[float, float], ...]

    def skip_kept(self) -> None:
        """Let queues pass by tasks that would make the room what it is already kept at; they are done with the next."""
        for queue in self.queues if self.made else ():
            while not queue.done and queue.tasks[queue.next].step.verb == "climate" and self._is(queue):
                queue.passed.append(queue.tasks[queue.next])
                queue.next += 1
                queue.left = 0.0 if queue.done else queue.tasks[queue.next].minutes

    def _is(self, queue: Queue) -> bool:
        """Return whether the room is what a queue's next task would make it."""
        return self.made is not None and queue.tasks[queue.next].step.what in self.made


@dataclass(slots=True)
class _Evening:
    """One evening while it is laid: clock [h], tasks so far, what is set up, if a coat is wet, when the next begins [h]."""

    clock_h: float
    end_h: float
    tasks: list[DayTask]
    ready: set[tuple[str, str]]
    minutes: float = 0.0
    wet: bool = False
    next_h: float = inf
    begin_h: float = 0.0


def lay_days(
    know: Knowledge,
    workshop: Workshop,
    plans: tuple[GroupPlan, ...],
    work: Around | None = None,
    mending: tuple[MendJob, ...] = (),
    pieces: tuple[str, ...] = (),
    clock: DryClock | None = None,
    scale: Scale | None = None,
    made: frozenset[str] | None = None,
    piece_first: bool = False,
    agenda: Agenda | None = None,
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
    clock
        Waits by the real hours; None = as planned.
    scale
        How a case differs from the likely one; None = not at all.
    made
        What the room is kept at from the first day on: ``warmer drier cooler``; once made it stays so, and nobody makes
        it again. None = each group does so for itself.
    piece_first
        Whether the first piece goes on with whatever it can before another has its turn; else dust of all pieces comes
        before their coats.
    agenda
        What was meant to be done when; its order goes before any other. None = none.

    Returns
    -------
    tuple
        Evenings with work, wrap day [d], cured day [d]. A step longer than an evening goes on the next.
        Dust-making steps come first in an evening, then coats, and none while a film is tacky. Two faces of a
        part that is turned over are not wet at once: the other face waits until the first is dry to touch.
        A wait that ends the same evening is sat out; waits need no evening of their own.
    """
    work = work or Around()
    queues, before = all_queues(know, workshop, plans, work, mending, pieces, scale)
    after = (*last_jobs(mending), *work.after)
    bench = _bench(know, workshop, queues, clock, made, pieces if piece_first else (), agenda)
    days: list[Day] = []
    free = [*windows(workshop), (inf, inf)]
    for (begin, end), (later, _) in pairwise(free):
        if all(q.done for q in queues):
            break
        first = before if not days else ()
        took = sum(task.minutes for task in first)
        tasks = list(after_each_other(first, begin))
        evening = _Evening(begin + took / 60.0, end, tasks, set(), took, next_h=later, begin_h=begin)
        _fill(bench, evening)
        if evening.tasks:
            add(days, Day(day=int(begin // 24) + 1, tasks=tuple(evening.tasks), minutes=evening.minutes))
    wrap = max((q.free_h for q in queues), default=0.0)
    cured = wrap + max((cure_h(know, workshop, p) for p in plans), default=0.0)
    for name in pieces or ("",):
        own = tuple(task for task in after if task.group.startswith(name))
        ready = max((q.free_h for q in queues if q.piece == name), default=0.0)
        if days and own and ready < LONGEST_H:
            minutes = sum(task.minutes for task in own)
            last, begin = put_together(workshop, ready, days, name, minutes, clock)
            insert(days, Day(day=last, tasks=after_each_other(own, begin), minutes=minutes))
    return tuple(days), int(wrap // 24) + 1, int(cured // 24) + 1


def _bench(
    know: Knowledge, workshop: Workshop, queues: list[Queue], clock: DryClock | None,
    made: frozenset[str] | None, first: tuple[str, ...], agenda: Agenda | None,
) -> _Bench:  # fmt: skip
    """Return what days are laid by; `first` are the pieces that go on one before the other."""
    return _Bench(
        know, workshop, queues, clock, None if made is None else set(made),
        facing={id(q): [o for o in queues if o is not q and opposite(o.surfaces, q.surfaces)] for q in queues},
        sharing={id(q): [o for o in queues if o.surfaces & q.surfaces] for q in queues},
        places={name: place for place, name in enumerate(first)},
        agenda=agenda, evenings=tuple(windows(workshop)) if agenda is not None else (),
    )  # fmt: skip


def _fill(bench: _Bench, evening: _Evening) -> None:
    """Lay tasks into an evening until its time is up or nothing more can be done; queues move on."""
    while True:
        bench.skip_kept()
        for queue in bench.queues if bench.clock is not None else ():
            key_where_closed(queue, evening.clock_h)
        fit = [q for q in bench.queues if not q.done and _fits(bench, q, evening)]
        now = [q for q in fit if _ready_h(bench, q, evening.clock_h) <= evening.clock_h]
        if now:
            _work(bench, min(now, key=lambda q: _rank(bench, q, evening)), evening)
        elif fit:
            evening.clock_h = min(_ready_h(bench, q, evening.clock_h) for q in fit)
        else:
            return


def _ready_h(bench: _Bench, queue: Queue, now_h: float) -> float:
    """Return when a queue's next task may begin [h]: its waits over, its turn come, and the air and the hour right."""
    task = queue.tasks[queue.next]
    ready = max([queue.free_h, *_gates(bench, queue, task)])
    if ready == inf:
        return ready
    if bench.agenda is not None and queue.left == task.minutes:
        ready = max(ready, bench.agenda.held_h(queue.name, task.left, bench.evenings))
    if task.step.is_coat and bench.workshop.places_m2 is not None:
        ready = _place_h(bench, queue, bench.workshop.places_m2, max(ready, now_h))
    if task.step.method in _SPRAYED:
        ready = spray_h(bench.workshop, max(ready, now_h))
    if bench.clock is None:
        return ready
    due = bench.clock.due_h(queue.name, queue.next, task.step, max(ready, now_h))
    return ready if due <= now_h else due


def _gates(bench: _Bench, queue: Queue, task: Task) -> Iterator[float]:
    """Yield when the mending that comes before a task is over, dust and the other face of its part are dry [h]."""
    queues, sharing = bench.queues, bench.sharing[id(queue)]
    if queue.stage != "first":
        yield from (q.over_h for q in queues if q.stage == "first" and q.piece == queue.piece)
    if not queue.stage:
        yield from (q.over_h for q in queues if q.stage == "around" and q.piece == queue.piece)
    if task.waits_for:
        yield from (q.ground_h(task.waits_for) for q in sharing if not q.stage)
    yield from (q.free_h for q in sharing if q.stage == "before colour" and q.next)
    if task.dusty:
        yield from (q.tacky_h for q in queues)
    if task.step.is_coat:
        yield from (q.tacky_h for q in bench.facing[id(queue)])
        yield from (q.over_h for q in sharing if q.stage == "before colour")


def _place_h(bench: _Bench, queue: Queue, places_m2: float, from_h: float) -> float:
    """Return when a coat finds room on the drying places [h]; a group larger than all of them is coated in rounds."""
    need = min(queue.loose_m2, places_m2)
    if need <= 0:
        return from_h
    wet = sorted((q.tacky_h, q.loose_m2) for q in bench.queues if q is not queue and q.tacky_h > from_h)
    taken = sum(min(area, places_m2) for _, area in wet)
    for until_h, area in wet:
        if taken + need <= places_m2 + 1e-9:
            return from_h
        taken -= min(area, places_m2)
        from_h = max(from_h, until_h)
    return from_h


def _fits(bench: _Bench, queue: Queue, evening: _Evening) -> bool:
    """Return whether enough of a queue's next task can be done in what is left of an evening."""
    task = queue.tasks[queue.next]
    ready_h = _ready_h(bench, queue, evening.clock_h)
    if task.dusty and evening.wet:
        return False
    if not evening.tasks and ready_h <= evening.clock_h:
        return True
    room = (evening.end_h - max(evening.clock_h, ready_h)) * 60.0 - _setup(bench, task, evening)
    if task.step.is_coat and queue.left == task.minutes and evening.tasks:
        return room >= queue.left
    return room >= min(queue.left, _ENOUGH_MIN)


def _setup(bench: _Bench, task: Task, evening: _Evening) -> float:
    """Return set-up and clean-up of a task in an evening, once for all that use the same [min]."""
    if (task.step.verb, task.step.what) in evening.ready:
        return 0.0
    return 60.0 * setup_hours(bench.know, task.step)


def _work(bench: _Bench, queue: Queue, evening: _Evening) -> None:
    """Do as much of a queue's next task as the evening has room for."""
    task, clock = queue.tasks[queue.next], bench.clock
    setup = _setup(bench, task, evening)
    room = (evening.end_h - evening.clock_h) * 60.0 - setup
    minutes = min(queue.left, max(room, _ENOUGH_MIN))
    begin_h = evening.clock_h
    evening.tasks.extend(_passed(bench, queue, begin_h))
    queue.passed.clear()
    evening.ready.add((task.step.verb, task.step.what))
    evening.clock_h += (minutes + setup) / 60.0
    evening.minutes += minutes + setup
    evening.wet = evening.wet or task.step.is_coat
    finished = queue.left - minutes < 1e-6
    whole = finished and not task.first_faces
    text = said(bench.know, queue, task)
    over_h = _over(task, evening.clock_h, task.wait_h, clock)
    wait_h = _real(task, over_h - evening.clock_h, clock) if whole else 0.0
    evening.tasks.append(
        DayTask(
            group=queue.name, number=task.number, text=text if whole else f"{text} (goes on)",
            minutes=minutes, wait_h=wait_h, begin_h=begin_h, air=task.step.air, left=task.left,
        )
    )  # fmt: skip
    if not finished:
        queue.left -= minutes
        return
    if bench.made is not None and task.step.verb == "climate":
        bench.made.add(task.step.what)
    _move_on(queue, task, evening.clock_h, over_h, clock)


def _passed(bench: _Bench, queue: Queue, begin_h: float) -> Iterator[DayTask]:
    """Yield the tasks that a queue has passed by: nobody does them."""
    for task in queue.passed:
        yield DayTask(
            group=queue.name, number=task.number, text=said(bench.know, queue, task), minutes=0.0, wait_h=0.0,
            begin_h=begin_h, air=task.step.air, left=task.left,
        )  # fmt: skip


def _move_on(queue: Queue, task: Task, end_h: float, over_h: float, clock: DryClock | None) -> None:
    """Let a queue come to its next task, the one before it done."""
    queue.next += 1
    queue.free_h = over_h
    if task.step.is_coat:
        queue.tacky_h = _over(task, end_h, task.tacky_h, clock)
        queue.until_h = inf if clock is None else clock.window_h(task.step, end_h)
    queue.left = 0.0 if queue.done else queue.tasks[queue.next].minutes


def _real(task: Task, took_h: float, clock: DryClock | None) -> float:
    """Return a wait after a task [h]: as planned, or what it took by the real hours."""
    return task.wait_h if clock is None else took_h


def _over(task: Task, begin_h: float, wait_h: float, clock: DryClock | None) -> float:
    """Return when a wait after a task is over [h]: as planned, or by the real hours."""
    return begin_h + wait_h if clock is None else clock.over_h(task.step, begin_h, wait_h)


def _rank(bench: _Bench, queue: Queue, evening: _Evening) -> tuple[int, bool, float, int]:
    """Return the turn of a queue's next task: mending; a coat whose window closes by the next evening; dust; coats last."""
    task = queue.tasks[queue.next]
    closes = task.step.is_coat and evening.clock_h <= queue.until_h < evening.next_h
    if bench.agenda is not None:
        return (
            -1 if closes else 0,
            *bench.agenda.turn(queue.name, task.left, evening.begin_h, begun=queue.left < task.minutes),
            0,
        )
    if queue.stage or closes:
        return -1, False, 0.0, 0
    kind = 0 if task.step.verb in DUSTY else (2 if task.step.is_coat else 1)
    return bench.places.get(queue.piece, 0), False, 0.0, kind
