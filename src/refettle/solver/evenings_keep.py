"""A plan for the evenings mended after something has changed: as few steps as can be leave their sessions."""

from refettle.solver.evenings import Evenings, Plan
from refettle.solver.evenings_axis import Axis
from refettle.solver.evenings_bench import Bench, plan_of
from refettle.solver.evenings_better import Budget, closed
from refettle.solver.evenings_model import Model
from refettle.solver.evenings_sweep import EFFORT_OF_A_TRY, Order, Sweep
from refettle.solver.evenings_whole import Limits

_MOVE = 15
"""Price of a task that leaves its session [1]."""
_MOST_FREE = 40
"""Tasks up to which the solver is asked to settle a mend [1]: a larger model takes longer to build than it gives."""
_SUB = 0.2
"""Longest run of the solver on a mend [s]."""


def keep(problem: Evenings, old: Plan, now_slot: int, limits: Limits) -> tuple[Plan, tuple[int, ...]]:
    """
    Return a plan for a changed problem that leaves as much as can be where it was.

    Parameters
    ----------
    problem
        The problem as it is now.
    old
        The plan as it was, for the same tasks; its set-ups too.
    now_slot
        Slot from which on things may still be moved; what began before stays.
    limits
        How long to go on.

    Returns
    -------
    tuple
        Plan, and tasks for which no room is left: none where the plan is whole.
    """
    mend = _Mend(Axis(problem), old, now_slot)
    budget = Budget(limits)
    laid, broken = mend.standing()
    if not broken:
        return mend.plan(laid), ()
    best: tuple[tuple[int, int, int], Plan] | None = None
    left: tuple[int, ...] = ()
    free, wider = mend.spread(broken), iter(mend.widening(broken))
    while True:
        bench = mend.kept(free)
        missing = mend.sweeps.lay(bench, mend.order, free)
        budget.spent += (bench.tries + len(problem.tasks)) * EFFORT_OF_A_TRY
        plan = bench.plan()
        key = len(missing), _MOVE * mend.moved(plan) + plan.value, len(free)
        if best is None or key < best[0]:
            best, left = (key, plan), tuple(missing)
        if not missing or budget.left() <= 0:
            break
        grown = free | mend.after(missing)
        wide = grown if grown != free else next(wider, None)
        if wide is None:
            break
        free = wide
    assert best is not None  # noqa: S101
    if not left and budget.left() > 0:
        return mend.settled(best[1], broken, budget), ()
    return best[1], left


class _Mend:
    """A plan being mended."""

    def __init__(self, axis: Axis, old: Plan, now: int) -> None:
        self.axis, self.problem, self.old = axis, axis.problem, old
        self.now = axis.up(now)
        self.sweeps = Sweep(axis)
        self.order = Order(shift=(0.0,) * len(self.problem.pieces))
        self.at: dict[int, int] = {}
        self.gone: set[int] = set()
        for n, slot in enumerate(old.starts):
            if slot is None:
                continue
            at = axis.up(slot)
            if at < axis.size and axis.real[at] == slot:
                self.at[n] = at
            else:
                self.gone.add(n)
        self.past = {n for n, at in self.at.items() if (old.starts[n] or 0) < now}

    def plan(self, bench: Bench) -> Plan:
        """Return what is laid, in real slots."""
        return plan_of(self.axis, bench.at, bench.kits)

    def _kits(self, bench: Bench, wanted: set[tuple[int, int]]) -> None:
        """Set up the kits of the tasks that stay, where there are hands for it."""
        for kit, _, slot in self.old.kits_at:
            at = self.axis.up(slot)
            if at >= self.axis.size or self.axis.real[at] != slot:
                continue
            home = self.axis.session_of[at]
            end = at + self.axis.kit_slots[kit]
            within = end <= self.axis.spans[home][1]
            free = within and all(bench.used[t] < self.axis.cap[t] for t in range(at, end))
            if (kit, home) in wanted and (free or at < self.now):
                bench.put_kit(kit, home, at)

    def standing(self) -> tuple[Bench, set[int]]:
        """Return the bench with all that still holds, and the tasks that do not."""
        bench = Bench(self.axis)
        tasks = self.problem.tasks
        self._kits(
            bench,
            {(tasks[n].kit, self.axis.session_of[at]) for n, at in self.at.items() if tasks[n].kit >= 0},
        )
        bench.now = 0
        broken = set(self.gone)
        broken |= {n for n, t in enumerate(tasks) if n not in self.at and not t.optional}
        for n, at in sorted(self.at.items(), key=lambda pair: (pair[0] not in self.past, pair[1])):
            if n in self.past or (n not in broken and self._holds(bench, n, at, broken)):
                bench.put(n, at)
            else:
                broken.add(n)
        return bench, broken

    def _holds(self, bench: Bench, n: int, at: int, broken: set[int]) -> bool:
        """Return whether a task may stay where it was beside what is laid."""
        task, home = self.problem.tasks[n], self.axis.session_of[at]
        if at + task.length > self.axis.spans[home][1] or (
            task.kit >= 0 and (task.kit, home) not in bench.kits
        ):
            return False
        for link in self.axis.into[n]:
            first = bench.at[link.first]
            if first is None:
                if link.first in broken and self.axis.follows(link):
                    return False
                continue
            if link.most is not None and self.axis.open_list(link.most)[bench.end(link.first) - 1] < at:
                scuff = bench.at[link.scuff] if link.scuff >= 0 else None
                if scuff is None:
                    return False
            if link.together and self.axis.session_of[first] != home:
                return False
        return bench.soonest(n) <= at and at in set(bench.fits(n, home, at, at))

    def after(self, missing: list[int]) -> set[int]:
        """Return the tasks that come right after some others and have not begun."""
        return self.spread({link.then for n in missing for link in self.axis.out[n]})

    def widening(self, broken: set[int]) -> list[set[int]]:
        """Return ever wider sets of tasks to free: the rest of the broken pieces, neighbours in time, all."""
        tied = self.spread(broken)
        tasks = self.problem.tasks
        pieces = {tasks[n].piece for n in tied}
        sets = [self._of(pieces)]
        begun = {p: min([self.at[n] for n in self.at if tasks[n].piece == p and n not in self.past] or [0])
                 for p in range(len(self.problem.pieces))}  # fmt: skip
        middle = min((begun[p] for p in pieces), default=0)
        others = sorted((p for p in begun if p not in pieces), key=lambda p: (abs(begun[p] - middle), p))
        step = 1
        while others:
            pieces |= set(others[:step])
            others = others[step:]
            sets.append(self._of(pieces))
            step *= 2
        return sets

    def _of(self, pieces: set[int]) -> set[int]:
        """Return the tasks of pieces that have not begun."""
        every = {n for n, task in enumerate(self.problem.tasks) if task.piece in pieces}
        return self.spread(every)

    def spread(self, free: set[int]) -> set[int]:
        """Return tasks with those tied to them and the scuffs beside them, none that has begun."""
        heads = {self.sweeps.head_of.get(n, n) for n in free}
        blocks = [self.sweeps.blocks.get(n, [n]) for n in heads]
        return closed(self.problem, {n for block in blocks for n in block}) - self.past

    def kept(self, free: set[int]) -> Bench:
        """Return the bench with all but the free tasks laid."""
        bench = Bench(self.axis)
        tasks = self.problem.tasks
        stay = {n: at for n, at in self.at.items() if n not in free}
        self._kits(
            bench, {(tasks[n].kit, self.axis.session_of[at]) for n, at in stay.items() if tasks[n].kit >= 0}
        )
        for n, at in stay.items():
            bench.put(n, at)
        bench.log.clear()
        bench.now = self.now
        return bench

    def moved(self, plan: Plan) -> int:
        """Return how many later tasks are not in the session they were in [1]."""
        homes = self.axis.session_of
        count = 0
        for n, slot in enumerate(plan.starts):
            if n in self.past or self.old.starts[n] is None:
                continue
            count += slot is None or n not in self.at or homes[self.axis.up(slot)] != homes[self.at[n]]
        return count

    def settled(self, plan: Plan, broken: set[int], budget: Budget) -> Plan:
        """Return the plan with broken tasks, and those moved for them, put to the solver once more."""
        homes = self.axis.session_of
        shifted = {n for n, at in enumerate(plan.starts) if at != self.old.starts[n]} | broken
        free = self.spread(shifted)
        if len(free) > _MOST_FREE:
            return plan
        bench = Bench(self.axis, self.now)
        bench.keep(plan, set(range(len(self.problem.tasks))) - free)
        model = Model(bench, free, plan)
        if not model.possible:
            return plan
        model.stay({n: homes[at] for n, at in self.at.items() if n in free}, _MOVE)
        solver, found, _ = budget.solve(model, _SUB, budget.limits.seed)
        if not found:
            return plan
        other = model.plan(solver)
        mine, theirs = (_MOVE * self.moved(one) + one.value for one in (plan, other))
        return other if theirs < mine else plan
