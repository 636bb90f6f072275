"""The bench while a plan is laid: what is taken in which working slot, and where another task still fits."""

from collections.abc import Iterator
from typing import Any

from refettle.solver.evenings import Evenings, Plan, Task, Wet, value
from refettle.solver.evenings_axis import Axis


def spread(bits: int, length: int) -> int:
    """Return the starts at which a work of some length would meet any of the slots set in `bits`."""
    reach = 1
    while reach < length:
        step = min(reach, length - reach)
        bits |= bits >> step
        reach += step
    return bits


def ones(begin: int, end: int) -> int:
    """Return bits set from one slot until another."""
    return ((1 << (end - begin)) - 1) << begin if end > begin else 0


class Bench:
    """
    A plan in the making, on the line of working slots.

    Attributes
    ----------
    at
        Working slot at which each task begins; None where it is not laid.
    kits
        Working slot at which a kit's set-up begins, by kit and session.
    room
        Slots with a free hand left in each session [1].
    tries
        Times a room was looked for [1], the measure of effort.
    """

    def __init__(self, axis: Axis, now: int = 0) -> None:
        self.axis, self.problem = axis, axis.problem
        self.now = now
        self.at: list[int | None] = [None] * len(self.problem.tasks)
        self.kits: dict[tuple[int, int], int] = {}
        self.used = [0] * axis.size
        most = max([1, *(task.hands for task in self.problem.tasks)])
        self.full = [
            [sum(1 << (t - a) for t in range(a, b) if axis.cap[t] < hands) for a, b in axis.spans]
            for hands in range(most + 1)
        ]
        self.room = [sum(axis.cap[a:b]) for a, b in axis.spans]
        self.bits = {"dust": 0, "tacky": 0}
        self.things = [0] * self.problem.means
        self.load = [0] * axis.size
        self.faces: dict[int, list[tuple[int, int]]] = {}
        self.log: list[tuple[Any, Any, Any]] = []
        self.tries = 0

    def _set(self, holder: Any, key: Any, new: Any) -> None:  # noqa: ANN401
        """Set a value so that it can be taken back."""
        self.log.append((holder, key, holder.get(key) if isinstance(holder, dict) else holder[key]))
        holder[key] = new

    def undo(self, mark: int) -> None:
        """Take back all that was laid since the log was so long."""
        while len(self.log) > mark:
            holder, key, old = self.log.pop()
            if old is None and isinstance(holder, dict):
                del holder[key]
            else:
                holder[key] = old

    def _hold(self, session: int, start: int, length: int, hands: int) -> None:
        """Let hands be busy."""
        end = start + length
        used = [n + hands for n in self.used[start:end]]
        self._set(self.used, slice(start, end), used)
        self._set(self.room, session, self.room[session] - length * hands)
        begin, cap = self.axis.spans[session][0], self.axis.cap
        for count in range(1, len(self.full)):
            bits = self.full[count][session]
            for n, busy in enumerate(used):
                if busy + count > cap[start + n]:
                    bits |= 1 << (start + n - begin)
            self._set(self.full[count], session, bits)

    def put(self, number: int, start: int) -> None:
        """Lay a task, and the set-up of its kit where it is the first to want it."""
        task, session = self.problem.tasks[number], self.axis.session_of[start]
        if task.kit >= 0 and (task.kit, session) not in self.kits:
            self.put_kit(task.kit, session, self.kit_start(task.kit, session))
        self._set(self.at, number, start)
        end = start + task.length
        self._hold(session, start, task.length, task.hands)
        if task.dusty:
            self._set(self.bits, "dust", self.bits["dust"] | ones(start, end))
        for thing in task.means:
            self._set(self.things, thing, self.things[thing] | ones(start, end))
        if task.wet is not None:
            self._wet(task.wet, start, end)

    def _wet(self, wet: Wet, start: int, end: int) -> None:
        """Let the room know of a coat."""
        ready = self.axis.ready_list
        dry = ready(wet.dry)[end - 1]
        held = slice(start, dry)
        self._set(self.load, held, [n + wet.area for n in self.load[held]])
        if wet.tacky is not None:
            self._set(self.bits, "tacky", self.bits["tacky"] | ones(start, ready(wet.tacky)[end - 1]))
        if wet.face >= 0:
            until = ready(wet.face_until or wet.dry)[end - 1]
            self._set(self.faces, wet.face, [*self.faces.get(wet.face, []), (start, until)])

    def put_kit(self, kit: int, session: int, start: int) -> None:
        """Set up a kit."""
        self._set(self.kits, (kit, session), start)
        self._hold(session, start, self.axis.kit_slots[kit], 1)

    def kit_start(self, kit: int, session: int) -> int:
        """Return the first working slot at which a kit can be set up; -1 for none [1]."""
        begin, end = self.axis.spans[session]
        length = self.axis.kit_slots[kit]
        if self.room[session] < length:
            return -1
        blocked = spread(self.full[1][session] | ones(end - begin, end - begin + length), length)
        free = ~blocked & ones(max(0, self.now - begin), end - begin)
        return begin + (free & -free).bit_length() - 1 if free else -1

    def fits(self, number: int, session: int, low: int, high: int) -> Iterator[int]:
        """Yield the working slots from `low` to `high` in a session at which a task can begin."""
        self.tries += 1
        task = self.problem.tasks[number]
        begin, end = self.axis.spans[session]
        low = max(low, begin, self.now)
        if task.kit >= 0 and self.axis.kit_slots[task.kit]:
            at = self.kits.get((task.kit, session))
            set_up = self.kit_start(task.kit, session) if at is None else at
            need = task.length * task.hands + (self.axis.kit_slots[task.kit] if at is None else 0)
            if set_up < 0 or self.room[session] < need:
                return
            low = max(low, set_up + self.axis.kit_slots[task.kit])
        high = min(high, end - task.length)
        if low > high or self.room[session] < task.length * task.hands:
            return
        blocked = spread(self._blocked(task, begin, end), task.length)
        free = ~blocked & ones(low - begin, high - begin + 1)
        while free:
            bit = free & -free
            free ^= bit
            start = begin + bit.bit_length() - 1
            if (task.permit < 0 or self._permitted(task, start)) and self._rests(number, start):
                yield start

    def _blocked(self, task: Task, begin: int, end: int) -> int:
        """Return the slots of a session that a task may not touch, as bits."""
        bits = self.full[task.hands][self.axis.session_of[begin]]
        part = ones(0, end - begin)
        for thing in task.means:
            bits |= (self.things[thing] >> begin) & part
        if task.dusty:
            bits |= (self.bits["tacky"] >> begin) & part
        if task.wet is not None and task.wet.tacky is not None:
            bits |= (self.bits["dust"] >> begin) & part
        return bits

    def _permitted(self, task: Task, start: int) -> bool:
        """Return whether a task may begin at a working slot."""
        slot = self.axis.real[start]
        return any(begin <= slot < end for begin, end in self.problem.permits[task.permit])

    def _rests(self, number: int, start: int) -> bool:
        """Return whether a task's coat can dry where it is, and what is laid after it stays right."""
        task = self.problem.tasks[number]
        end = start + task.length
        wet, ready = task.wet, self.axis.ready_list
        if wet is not None:
            if max(self.load[start : ready(wet.dry)[end - 1]]) + wet.area > self.problem.places:
                return False
            if wet.tacky is not None:
                tacky = ready(wet.tacky)[end - 1]
                if (self.bits["dust"] >> start) & ones(0, tacky - start):
                    return False
            if wet.face in self.faces:
                until = ready(wet.face_until or wet.dry)[end - 1]
                if any(a < until and start < b for a, b in self.faces[wet.face]):
                    return False
        return self._before_laid(number, start, end)

    def _before_laid(self, number: int, start: int, end: int) -> bool:
        """Return whether tasks that are already laid may follow a task laid so."""
        for link in self.axis.out[number]:
            then = self.at[link.then]
            if then is None:
                continue
            if self.axis.ready_list(link.wait)[end - 1] > then:
                return False
            if link.together and self.axis.session_of[start] != self.axis.session_of[then]:
                return False
            if link.most is not None and self.axis.open_list(link.most)[end - 1] < then:
                scuff = self.at[link.scuff] if link.scuff >= 0 else None
                if scuff is None or scuff < self.axis.ready_list(link.wait)[end - 1]:
                    return False
        return True

    def soonest(self, number: int) -> int:
        """Return the first working slot that the tasks laid before one let it have [1]."""
        low = 0
        for link in self.axis.into[number]:
            at = self.at[link.first]
            if at is None:
                continue
            low = max(low, self.axis.ready_list(link.wait)[self.end(link.first) - 1])
            scuff = self.at[link.scuff] if link.scuff >= 0 else None
            if scuff is not None:
                low = max(low, scuff + self.problem.tasks[link.scuff].length)
        return low

    def end(self, number: int) -> int:
        """Return the working slot after a laid task [1]."""
        return (self.at[number] or 0) + self.problem.tasks[number].length

    def keep(self, plan: Plan, kept: set[int]) -> None:
        """Lay some tasks of a plan as they are, set-ups first."""
        up, homes = self.axis.up, self.axis.session_of
        starts = {n: up(plan.starts[n] or 0) for n in kept if plan.starts[n] is not None}
        wanted = {(self.problem.tasks[n].kit, homes[at]) for n, at in starts.items()}
        for kit, session, at in plan.kits_at:
            if (kit, session) in wanted:
                self.put_kit(kit, session, up(at))
        for n, at in starts.items():
            self.put(n, at)
        self.log.clear()

    def plan(self) -> Plan:
        """Return what is laid, in real slots."""
        return plan_of(self.axis, self.at, self.kits)


def plan_of(axis: Axis, at: list[int | None], kits: dict[tuple[int, int], int]) -> Plan:
    """Return a plan in real slots from one in working slots."""
    problem: Evenings = axis.problem
    starts = tuple(None if one is None else axis.real[one] for one in at)
    laid = {
        (task.kit, axis.session_of[one])
        for task, one in zip(problem.tasks, at, strict=True)
        if one is not None and task.kit >= 0
    }
    kits_at = sorted((kit, home, axis.real[one]) for (kit, home), one in kits.items() if (kit, home) in laid)
    return Plan(starts=starts, kits_at=tuple(kits_at), value=value(problem, starts).total)
