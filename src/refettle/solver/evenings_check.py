"""A plan for the evenings gone through slot by slot, sharing nothing with what laid it."""

from collections.abc import Iterator

from refettle.solver.evenings import Evenings, Plan, Wait

_TINY = 1e-9


def violations(problem: Evenings, plan: Plan) -> list[str]:
    """
    Return what a plan breaks, found slot by slot.

    Parameters
    ----------
    problem
        What was to be laid.
    plan
        Plan with its set-ups.

    Returns
    -------
    list of str
        Empty where it holds.
    """
    walk = _Walk(problem, plan)
    broken = [*walk.left_out(), *walk.sessions(), *walk.kits(), *walk.hands()]
    broken += [*walk.means(), *walk.dust(), *walk.places(), *walk.faces()]
    return [*broken, *walk.waits(), *walk.windows(), *walk.together()]


class _Walk:
    """A problem, a plan, and the tasks that are in it."""

    def __init__(self, problem: Evenings, plan: Plan) -> None:
        self.problem = problem
        self.plan = plan
        self.at = {n: at for n, at in enumerate(plan.starts) if at is not None}
        self.horizon = max((one.end for one in problem.sessions), default=0)

    def end(self, task: int) -> int:
        """Return the slot after a task [1]."""
        return self.at[task] + self.problem.tasks[task].length

    def over(self, begin: int, wait: Wait) -> int:
        """Return the slot at which a wait is over, walked slot by slot; far away where never [1]."""
        if wait.curve < 0:
            return begin + round(wait.need)
        curve = self.problem.curves[wait.curve]
        slot = begin
        if wait.need <= 0:
            return slot
        while slot < len(curve):
            if curve[slot] - curve[begin] >= wait.need - _TINY:
                return slot
            slot += 1
        return 10**9

    def session(self, slot: int) -> int:
        """Return the session a slot lies in; -1 for none."""
        found = [n for n, one in enumerate(self.problem.sessions) if one.begin <= slot < one.end]
        return found[0] if found else -1

    def left_out(self) -> Iterator[str]:
        """Yield tasks that are missing."""
        if len(self.plan.starts) != len(self.problem.tasks):
            yield f"{len(self.plan.starts)} starts for {len(self.problem.tasks)} tasks"
        for n, task in enumerate(self.problem.tasks):
            if n not in self.at and not task.optional:
                yield f"task {n} is left out"

    def sessions(self) -> Iterator[str]:
        """Yield tasks outside a session, or begun when they may not be."""
        for n, at in self.at.items():
            task = self.problem.tasks[n]
            home = self.session(at)
            if home < 0 or self.session(at + task.length - 1) != home:
                yield f"task {n} at {at} does not lie within one session"
            if task.permit >= 0:
                allowed = self.problem.permits[task.permit]
                if not any(begin <= at < end for begin, end in allowed):
                    yield f"task {n} may not begin at {at}"

    def kits(self) -> Iterator[str]:
        """Yield kits not set up before their first use, twice, or outside a session."""
        begun: dict[tuple[int, int], int] = {}
        for kit, home, at in self.plan.kits_at:
            if (kit, home) in begun:
                yield f"kit {kit} is set up twice in session {home}"
            begun[kit, home] = at + self._kit_slots(kit)
            one = self.problem.sessions[home]
            if at < one.begin or begun[kit, home] > one.end:
                yield f"kit {kit} at {at} is not set up within session {home}"
        for n, at in self.at.items():
            kit = self.problem.tasks[n].kit
            ready = begun.get((kit, self.session(at)))
            if kit >= 0 and (ready is None or at < ready):
                yield f"task {n} at {at} finds kit {kit} not set up"

    def _kit_slots(self, kit: int) -> int:
        """Return the slots a set-up takes [1]."""
        slots = 0
        while slots * self.problem.slot_min < self.problem.kits[kit]:
            slots += 1
        return slots

    def hands(self) -> Iterator[str]:
        """Yield slots in which more hands are busy than there are."""
        busy: dict[int, int] = {}
        for n, at in self.at.items():
            for slot in range(at, self.end(n)):
                busy[slot] = busy.get(slot, 0) + self.problem.tasks[n].hands
        for kit, _, at in self.plan.kits_at:
            for slot in range(at, at + self._kit_slots(kit)):
                busy[slot] = busy.get(slot, 0) + 1
        there: dict[int, int] = {}
        for begin, end, count in self.problem.hands:
            there.update(dict.fromkeys(range(begin, end), count))
        for slot, count in sorted(busy.items()):
            if count > there.get(slot, 0):
                yield f"{count} hands are busy at {slot}, there are {there.get(slot, 0)}"

    def means(self) -> Iterator[str]:
        """Yield things in use twice at once."""
        held: dict[tuple[int, int], int] = {}
        for n, at in self.at.items():
            for thing in self.problem.tasks[n].means:
                for slot in range(at, self.end(n)):
                    if (thing, slot) in held:
                        yield f"thing {thing} is held by tasks {held[thing, slot]} and {n} at {slot}"
                    held[thing, slot] = n

    def dust(self) -> Iterator[str]:
        """Yield dust raised while a coat is laid on or tacky."""
        dusty: dict[int, list[int]] = {}
        for n, at in self.at.items():
            for slot in range(at, self.end(n) if self.problem.tasks[n].dusty else at):
                dusty.setdefault(slot, []).append(n)
        for n, at in self.at.items():
            wet = self.problem.tasks[n].wet
            if wet is None or wet.tacky is None:
                continue
            until = self.over(self.end(n), wet.tacky)
            for slot in range(at, min(until, self.horizon)):
                others = [one for one in dusty.get(slot, ()) if one != n]
                if others:
                    yield f"task {others[0]} raises dust at {slot} while the coat of task {n} is tacky"
                    break

    def places(self) -> Iterator[str]:
        """Yield slots in which more drying places are taken than there are."""
        taken = [0] * (self.horizon + 1)
        for n, at in self.at.items():
            wet = self.problem.tasks[n].wet
            if wet is not None:
                for slot in range(at, min(self.over(self.end(n), wet.dry), self.horizon)):
                    taken[slot] += wet.area
        for slot, area in enumerate(taken):
            if area > self.problem.places:
                yield f"{area} drying places are taken at {slot}, there are {self.problem.places}"

    def faces(self) -> Iterator[str]:
        """Yield bodies with two wet faces."""
        held: dict[tuple[int, int], int] = {}
        for n, at in self.at.items():
            wet = self.problem.tasks[n].wet
            if wet is None or wet.face < 0:
                continue
            until = self.over(self.end(n), wet.face_until or wet.dry)
            for slot in range(at, min(until, self.horizon)):
                other = held.setdefault((wet.face, slot), n)
                if other != n:
                    yield f"tasks {other} and {n} have body {wet.face} wet on two faces at {slot}"
                    break

    def waits(self) -> Iterator[str]:
        """Yield tasks begun before their wait is over."""
        for link in self.problem.links:
            if link.first in self.at and link.then in self.at:
                ready = self.over(self.end(link.first), link.wait)
                if self.at[link.then] < ready:
                    yield f"task {link.then} begins at {self.at[link.then]}, task {link.first} lets it from {ready} on"

    def windows(self) -> Iterator[str]:
        """Yield tasks begun after their window has closed, with no scuff between."""
        for link in self.problem.links:
            if link.most is None or link.first not in self.at or link.then not in self.at:
                continue
            end = self.end(link.first)
            if self.at[link.then] <= self.over(end, link.most):
                continue
            lifted = link.scuff in self.at and (
                self.at[link.scuff] >= self.over(end, link.wait)
                and self.end(link.scuff) <= self.at[link.then]
            )
            if not lifted:
                yield f"task {link.then} begins at {self.at[link.then]}, too late after task {link.first}"

    def together(self) -> Iterator[str]:
        """Yield tasks that belong together and lie in two sessions."""
        for link in self.problem.links:
            both = link.first in self.at and link.then in self.at
            if (
                link.together
                and both
                and self.session(self.at[link.first]) != self.session(self.at[link.then])
            ):
                yield f"tasks {link.first} and {link.then} do not lie in one session"
