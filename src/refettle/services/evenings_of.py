"""The work on several pieces as plain data for the search of evenings, and what it finds as an agenda."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil, floor
from typing import Final

from refettle.domain.piece_plan import DayTask
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.search import setup_hours
from refettle.services.agenda import Agenda
from refettle.services.clock import LONGEST_H, DryClock
from refettle.services.day_queues import KEY_SHARE, Queue, Task, removes_film
from refettle.services.free_time import spray_h, windows
from refettle.services.turning import opposite
from refettle.solver.evenings import Evenings, Link, Piece, Session, Wait, Wet
from refettle.solver.evenings import Task as Block

SLOT_MIN: Final = 5
_PER_H: Final = 60 // SLOT_MIN
_DM2: Final = 100
_LONGEST_SLOTS: Final = 24
"""Work longer than this is put as parts that follow each other [1]: two hours."""
_SPRAYED: Final = frozenset({"spray", "aerosol"})


@dataclass(slots=True)
class Posed:
    """
    Work on several pieces as it is put to the search.

    Attributes
    ----------
    evenings
        The plain data.
    meant
        Per task of it whose beginning is that of a task of a queue: the group and how many tasks are left with it.
    """

    evenings: Evenings
    meant: dict[int, tuple[str, int]]

    def agenda(self, starts: tuple[int | None, ...], *, hold: bool = True) -> Agenda:
        """Return what was found as an agenda; `starts` are slots, one for each task."""
        begins = {
            key: (start / _PER_H,)
            for place, key in self.meant.items()
            if (start := starts[place]) is not None
        }
        return Agenda(begins=begins, hold=hold)


@dataclass(slots=True)
class _Putting:
    """What is gathered while the work is put as plain data."""

    know: Knowledge
    workshop: Workshop
    clock: DryClock | None
    sessions: tuple[Session, ...]
    bodies: dict[int, int]
    tasks: list[Block] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)
    curves: dict[str, int] = field(default_factory=dict)
    permits: dict[tuple[str, bool, int], int] = field(default_factory=dict)
    intervals: list[tuple[tuple[int, int], ...]] = field(default_factory=list)
    kits: dict[tuple[str, str], int] = field(default_factory=dict)
    kit_min: list[int] = field(default_factory=list)
    meant: dict[int, tuple[str, int]] = field(default_factory=dict)
    places: dict[str, int] = field(default_factory=dict)
    spans: dict[int, list[tuple[int, int]]] = field(default_factory=lambda: defaultdict(list))


def posed(
    know: Knowledge, workshop: Workshop, clock: DryClock | None, queues: list[Queue],
    before: tuple[DayTask, ...], last: dict[str, tuple[float, int | None]], days: int,
) -> Posed:  # fmt: skip
    """
    Return the work of queues as plain data.

    Parameters
    ----------
    know, workshop, clock
        Facts; free hours; how waits pass in the real air, None = as planned.
    queues
        Groups and jobs, nothing of them done.
    before
        With what the first evening begins.
    last
        Per piece, the minutes it takes to put it together at the end [min] and its due day.
    days
        Days looked ahead [d].

    Returns
    -------
    Posed
        Steps that only make the room warm are left out. What it cannot say exactly (parts begun and left, the room made
        warm, gates that hang on what is done first) it says a little stricter or laxer: days are laid by `lay_days`
        after what was found, never taken from it.
    """
    work = _Putting(know, workshop, clock, _sessions(workshop, days, before), _bodies(queues))
    work.places.update((name, place) for place, name in enumerate(last))
    for place, queue in enumerate(queues):
        _put_queue(work, place, queue)
    _gates(work, queues)
    pieces = tuple(
        Piece(_put_last(work, queues, name, minutes, dry=bool(minutes or due)), _due(work.sessions, due))
        for name, (minutes, due) in last.items()
    )
    end = max((one.end for one in work.sessions), default=0)
    places = workshop.places_m2
    evenings = Evenings(
        slot_min=SLOT_MIN,
        sessions=work.sessions,
        hands=tuple((one.begin, one.end, 1) for one in work.sessions),
        curves=tuple(_curve(work, key, end) for key in work.curves),
        permits=tuple(work.intervals),
        kits=tuple(work.kit_min),
        places=10**6 if places is None else round(_DM2 * places),
        means=0,
        tasks=tuple(work.tasks),
        links=tuple(work.links),
        pieces=pieces,
    )
    return Posed(evenings, work.meant)


def _sessions(workshop: Workshop, days: int, before: tuple[DayTask, ...]) -> tuple[Session, ...]:
    """Return the free hours of the days looked ahead; the first begins when what comes before all is done."""
    found: list[Session] = []
    took = sum(task.minutes for task in before) / 60.0
    for begin_h, end_h in windows(workshop):
        if begin_h >= 24.0 * days:
            break
        begin, end = ceil((begin_h + took) * _PER_H - 1e-9), floor(end_h * _PER_H + 1e-9)
        took = 0.0 if begin < end else took - (end_h - begin_h)
        begin = max(begin, found[-1].end) if found else begin
        if begin < end:
            found.append(Session(begin, end, int(begin_h // 24) + 1))
    return tuple(found)


def _due(sessions: tuple[Session, ...], due_day: int | None) -> int | None:
    """Return the day of the evening on which a piece that is safe to wrap by its due day is put together at the latest."""
    if due_day is None:
        return None
    return next((one.day for one in sessions if one.day >= due_day), due_day)


def _bodies(queues: list[Queue]) -> dict[int, int]:
    """Return, per queue with faces of parts that others hold too, the number of that body."""
    body: dict[int, int] = {}
    for one in range(len(queues)):
        for two in range(one + 1, len(queues)):
            if opposite(queues[one].surfaces, queues[two].surfaces):
                same = body.get(one, body.get(two, len(body)))
                body[one] = body[two] = same
    return body


def _curve(work: _Putting, key: str, slots: int) -> tuple[float, ...]:
    """Return what has dried up to each slot."""
    return work.clock.dried(key, slots + 1, SLOT_MIN / 60.0) if work.clock is not None else ()


def _wait(work: _Putting, task: Task, hours: float) -> Wait:
    """Return a wait after a task, planned at so many hours."""
    key = work.clock.key(task.step) if work.clock is not None else ""
    if work.clock is None or not key or hours <= 0:
        return Wait(-1, ceil(max(0.0, hours) * _PER_H - 1e-9))
    place = work.curves.setdefault(key, len(work.curves))
    return Wait(place, hours * work.clock.planned_rate(key))


def _kit(work: _Putting, task: Task) -> int:
    """Return the place of what is set up for a task; -1 for nothing."""
    minutes = round(60.0 * setup_hours(work.know, task.step))
    if minutes <= 0:
        return -1
    key = (task.step.verb, task.step.what)
    if key not in work.kits:
        work.kits[key] = len(work.kits)
        work.kit_min.append(minutes)
    return work.kits[key]


def _permit(work: _Putting, task: Task, from_h: float) -> int:
    """Return the place of the hours in which a task may begin; -1 for all."""
    step = task.step
    airy = work.clock is not None and step.is_coat and step.air is None
    sprayed = step.method in _SPRAYED and bool(work.workshop.spraying)
    if not airy and not sprayed and from_h <= 0:
        return -1
    key = (step.what if airy else "", sprayed, round(from_h * _PER_H))
    if key not in work.permits:
        found = [
            span for one in work.sessions for span in _spans(work, task, one, sprayed=sprayed, from_h=from_h)
        ]
        work.permits[key] = len(work.intervals)
        work.intervals.append(tuple(found))
    return work.permits[key]


def _spans(
    work: _Putting, task: Task, one: Session, *, sprayed: bool, from_h: float
) -> Iterator[tuple[int, int]]:
    """Yield the slots of a session in which a task may begin."""
    slot = max(one.begin, ceil(from_h * _PER_H))
    begun: int | None = None
    while slot < one.end:
        hour = slot / _PER_H
        may = spray_h(work.workshop, hour) <= hour if sprayed else True
        if may and work.clock is not None:
            may = work.clock.free_h(task.step, hour) <= hour
        if may and begun is None:
            begun = slot
        if not may and begun is not None:
            yield begun, slot
            begun = None
        slot += 1
    if begun is not None:
        yield begun, one.end


def _wet(work: _Putting, queue: Queue, place: int, task: Task) -> Wet | None:
    """Return what a coat does to the room."""
    if not task.step.is_coat:
        return None
    tacky = _wait(work, task, task.tacky_h)
    most = work.workshop.places_m2
    area = 0 if most is None else floor(_DM2 * min(queue.loose_m2, most))
    return Wet(tacky=tacky, dry=tacky, area=area, face=work.bodies.get(place, -1), face_until=tacky)


def _put_queue(work: _Putting, place: int, queue: Queue) -> None:
    """Put the tasks of a queue one after the other."""
    before: tuple[Task, int] | None = None
    free_h = queue.free_h
    for task in queue.tasks:
        if task.step.verb == "climate":
            work.spans[place].append(work.spans[place][-1] if work.spans[place] else (-1, -1))
            continue
        slots = max(1, ceil(task.minutes / SLOT_MIN - 1e-9))
        parts = 1 if task.step.is_coat else max(1, ceil(slots / _LONGEST_SLOTS))
        first = len(work.tasks)
        for part in range(parts):
            length = slots // parts + (part < slots % parts)
            work.tasks.append(
                Block(
                    piece=_piece(work, queue),
                    length=length,
                    minutes=round(task.minutes / parts),
                    kit=_kit(work, task),
                    dusty=task.dusty,
                    wet=_wet(work, queue, place, task) if part == parts - 1 else None,
                    permit=_permit(work, task, free_h) if part == 0 else -1,
                )
            )
            if part:
                work.links.append(Link(first + part - 1, first + part, Wait(-1, 0)))
        work.meant[first] = (queue.name, task.left)
        work.spans[place].append((first, len(work.tasks) - 1))
        if before is not None:
            _follow(work, before, task, first)
        before, free_h = (task, work.spans[place][-1][1]), 0.0


def _piece(work: _Putting, queue: Queue) -> int:
    """Return the place of a queue's piece; `posed` has numbered them."""
    return work.places[queue.piece]


def _follow(work: _Putting, before: tuple[Task, int], task: Task, first: int) -> None:
    """Link a task to the one before it in its queue, with the wait and the window to recoat."""
    earlier, last = before
    most, scuff = None, -1
    if (
        work.clock is not None
        and earlier.step.is_coat
        and task.step.is_coat
        and not earlier.first_faces
        and not task.text
    ):
        window = work.know.film(earlier.step.what).recoat_until_h
        if 0 < window < LONGEST_H:
            most = _wait(work, earlier, work.clock.planned_window_h(earlier.step))
            minutes = KEY_SHARE * task.minutes
            scuff = len(work.tasks)
            work.tasks.append(
                Block(
                    piece=work.tasks[last].piece,
                    length=max(1, ceil(minutes / SLOT_MIN)),
                    minutes=round(minutes),
                    dusty=True,
                    optional=True,
                )
            )
    work.links.append(Link(last, first, _wait(work, earlier, earlier.wait_h), most, scuff))


def _gates(work: _Putting, queues: list[Queue]) -> None:
    """Link queues that wait for each other: what comes first, what must be ground before, mending before colour."""
    for place, queue in enumerate(queues):
        for other_place, other in enumerate(queues):
            if (
                place == other_place
                or queue.piece != other.piece
                or not work.spans[place]
                or not work.spans[other_place]
            ):
                continue
            first = queue.stage != "first" and other.stage == "first"
            around = not queue.stage and other.stage == "around"
            if first or around:
                begins = next((one for one, _ in work.spans[place] if one >= 0), -1)
                _after(work, other, other_place, len(other.tasks) - 1, begins)
            if not queue.surfaces & other.surfaces:
                continue
            if other.stage == "before colour":
                coat = next((n for n, task in enumerate(queue.tasks) if task.step.is_coat), None)
                if coat is not None:
                    _after(work, other, other_place, len(other.tasks) - 1, work.spans[place][coat][0])
            for number, task in enumerate(queue.tasks):
                if task.waits_for and not other.stage:
                    ground = _ground(other, task.waits_for)
                    if ground >= 0:
                        _after(work, other, other_place, ground, work.spans[place][number][0])


def _ground(queue: Queue, wanted: str) -> int:
    """Return the last task of a queue before a face is ``bare`` or ``smooth``; -1 for none."""
    last = -1
    for number, task in enumerate(queue.tasks):
        if task.step.is_coat:
            break
        if wanted == "smooth" or removes_film(task.step):
            last = number
    return last


def _after(work: _Putting, queue: Queue, place: int, number: int, then: int) -> None:
    """Link a task to the end of another queue's task and its wait."""
    first = work.spans[place][number][1]
    if first >= 0 and then >= 0 and first != then:
        task = queue.tasks[number]
        work.links.append(Link(first, then, _wait(work, task, task.wait_h)))


def _put_last(work: _Putting, queues: list[Queue], name: str, minutes: float, *, dry: bool) -> int:
    """Put together at the end a piece whose queues are all done, and dry if that is asked; return the task."""
    last = len(work.tasks)
    work.tasks.append(
        Block(
            piece=work.places[name],
            length=max(1, ceil(minutes / SLOT_MIN)),
            minutes=round(minutes),
        )
    )
    for place, queue in enumerate(queues):
        if queue.piece == name and work.spans[place]:
            end = len(queue.tasks) - 1
            if dry:
                _after(work, queue, place, end, last)
            else:
                work.links.append(Link(work.spans[place][end][1], last, Wait(-1, 0)))
    return last
