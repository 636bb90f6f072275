"""Plans for the evenings made better: other orders, pieces taken out and laid anew, a few days freed for CP-SAT."""

from collections import defaultdict
from collections.abc import Callable

from ortools.sat.python import cp_model

from refettle.solver.evenings import Evenings, Plan
from refettle.solver.evenings_axis import Axis
from refettle.solver.evenings_bench import Bench
from refettle.solver.evenings_model import Model
from refettle.solver.evenings_sweep import EFFORT_OF_A_TRY, Draws, Order, Sweep, search
from refettle.solver.evenings_whole import Limits, solver_for

_ORDERS = 0.2
"""Share of the effort that goes into whole new orders [1]."""
_ANEW = 8
"""Times pieces are laid anew between two runs of the solver [1]."""
_SUB = 1.0
"""Longest run of the solver on a part [s]."""
_BUILD = 4e-4
"""Deterministic time that building the model of a free task counts for [s]."""


class Budget:
    """What is left of the limits."""

    def __init__(self, limits: Limits, stop: Callable[[], bool] | None = None) -> None:
        self.limits = limits
        self._stop = stop
        self.spent = 0.0
        self._began = limits.clock() if limits.clock is not None else 0.0

    def left(self) -> float:
        """Return what is left [s], by the clock where seconds are limited."""
        if self._stop is not None and self._stop():
            return 0.0
        if self.limits.seconds is not None and self.limits.clock is not None:
            return self.limits.seconds - (self.limits.clock() - self._began)
        return self.limits.effort - self.spent

    def solve(self, model: Model, most: float, seed: int) -> tuple[cp_model.CpSolver, bool, bool]:
        """Solve a model within what is left; say whether a plan was found and whether it is proved."""
        slice_s = min(most, max(0.05, self.left()))
        by_clock = slice_s if self.limits.seconds is not None else None
        solver = solver_for(slice_s, by_clock, self.limits.threads, seed)
        status = solver.solve(model.model)
        self.spent += solver.response_proto.deterministic_time + _BUILD * len(model.free)
        return solver, status in {cp_model.OPTIMAL, cp_model.FEASIBLE}, status == cp_model.OPTIMAL


def improve(
    problem: Evenings,
    plan: Plan,
    limits: Limits,
    on_better: Callable[[Plan], None] | None = None,
    stop: Callable[[], bool] | None = None,
) -> Plan:
    """
    Return a plan at least as good as the one given.

    Parameters
    ----------
    problem
        What is to be laid.
    plan
        A whole plan, as `sweep` gives it.
    limits
        How long to go on; with deterministic effort alone the same input gives the same plan.
    on_better
        Told of each better plan.
    stop
        Asked between the rounds whether to end.

    Returns
    -------
    Plan
        Its set-ups stand on the clock.
    """
    run = _Rounds(Axis(problem), plan, Budget(limits, stop), on_better)
    run.orders()
    while run.budget.left() > 0:
        for _ in range(_ANEW):
            run.anew()
        if run.budget.left() > 0:
            run.part()
    return run.best


class _Rounds:
    """Rounds of one improvement."""

    def __init__(
        self, axis: Axis, plan: Plan, budget: Budget, on_better: Callable[[Plan], None] | None
    ) -> None:
        self.axis, self.problem, self.budget, self.on_better = axis, axis.problem, budget, on_better
        self.best = plan
        self.draws = Draws(budget.limits.seed + 1)
        self.sweeps = Sweep(axis)
        self.size = 40.0
        tasks = self.problem.tasks
        self.of_piece: list[set[int]] = [set() for _ in self.problem.pieces]
        for n, task in enumerate(tasks):
            self.of_piece[task.piece].add(n)
        self.kits = [{tasks[n].kit for n in own} - {-1} for own in self.of_piece]
        self.per = max(1.0, len(tasks) / max(1, len(self.problem.pieces)))

    def take(self, plan: Plan) -> bool:
        """Take a plan that is no worse; say whether it is better."""
        better = plan.value < self.best.value
        if plan.value <= self.best.value:
            self.best = plan
        if better and self.on_better is not None:
            self.on_better(plan)
        return better

    def orders(self) -> None:
        """Try whole new orders for a share of the effort."""
        share = self.budget.left() * _ORDERS
        end = self.budget.left() - share
        by_clock = self.budget.limits.seconds is not None
        effort = float("inf") if by_clock else share
        plan, left = search(
            self.axis,
            orders=10**6,
            effort=effort,
            seed=self.budget.limits.seed,
            stop=lambda: self.budget.left() <= end if by_clock else self.budget.left() <= 0,
        )
        self.budget.spent += share
        if not left:
            self.take(plan)

    def day(self, piece: int) -> int:
        """Return the session in which a piece is ready."""
        at = self.best.starts[self.problem.pieces[piece].last]
        return 0 if at is None else self.axis.session_of[self.axis.up(at)]

    def group(self, count: int) -> list[int]:
        """Return pieces to free: alike in kit, near in time, late, or any."""
        pieces = range(len(self.problem.pieces))
        draws, mode = self.draws, self.draws.below(4)
        first = draws.below(len(pieces))
        if mode == 3:
            late = [n for n in pieces if self._late(n) > 0]
            first = late[draws.below(len(late))] if late else first
        if mode == 0:
            key = {n: -len(self.kits[n] & self.kits[first]) + draws.share() for n in pieces}
        elif mode == 1:
            key = {n: draws.share() for n in pieces}
        else:
            key = {n: abs(self.day(n) - self.day(first)) + draws.share() * 4 for n in pieces}
        key[first] = -(10**6)
        return sorted(pieces, key=lambda n: key[n])[: max(1, count)]

    def _late(self, piece: int) -> int:
        """Return the days a piece is late [d]."""
        one = self.problem.pieces[piece]
        return 0 if one.due_day is None else self.problem.sessions[self.day(piece)].day - one.due_day

    def anew(self) -> None:
        """Take a few pieces out and lay them anew in another order."""
        pieces = self.group(1 + self.draws.below(min(6, max(1, len(self.of_piece) // 2))))
        freed = set().union(*(self.of_piece[n] for n in pieces))
        bench = Bench(self.axis)
        bench.keep(self.best, set(range(len(self.problem.tasks))) - freed)
        shift = tuple((self.draws.share() - 0.5) * 10 for _ in self.of_piece)
        left = self.sweeps.lay(bench, Order(shift=shift), freed)
        self.budget.spent += (bench.tries + 3 * len(self.problem.tasks)) * EFFORT_OF_A_TRY
        if not left:
            plan = bench.plan()
            self.take(plan)

    def part(self) -> None:
        """Free all tasks of a few days or of a few pieces and put them to the solver."""
        free = self._days() if self.draws.below(2) else set()
        if not free:
            free = set().union(*(self.of_piece[n] for n in self.group(round(self.size / self.per))))
        free = closed(self.problem, free)
        bench = Bench(self.axis)
        bench.keep(self.best, set(range(len(self.problem.tasks))) - free)
        reach = (2, 5)[self.draws.below(2)]
        model = Model(bench, free, self.best, self._near(free, reach))
        if not model.possible:
            return
        seed = self.draws.below(10**6)
        solver, found, proved = self.budget.solve(model, _SUB, seed)
        if found:
            self.take(model.plan(solver))
        self.size = (
            min(len(self.problem.tasks), self.size * 1.1) if proved else max(self.per, self.size * 0.92)
        )

    def _days(self) -> set[int]:
        """Return the tasks of a few days in turn."""
        by_day: dict[int, list[int]] = defaultdict(list)
        for n, at in enumerate(self.best.starts):
            if at is not None:
                by_day[self.axis.session_of[self.axis.up(at)]].append(n)
        days = sorted(by_day)
        free: set[int] = set()
        for day in days[self.draws.below(len(days)) :]:
            free |= set(by_day[day])
            if len(free) >= self.size:
                break
        return free

    def _near(self, free: set[int], reach: int) -> dict[int, tuple[int, int]]:
        """Return the working slots within a few days of where the free tasks are."""
        spans: dict[int, tuple[int, int]] = {}
        per_day = 1440 // self.problem.slot_min
        for n in free:
            at = self.best.starts[n]
            if at is not None:
                low, high = at - reach * per_day, at + reach * per_day
                spans[n] = self.axis.up(max(0, low)), self.axis.up(high)
        return spans


def closed(problem: Evenings, free: set[int]) -> set[int]:
    """Return free tasks with the scuffs beside them, and no scuff whose coats both stay."""
    beside = {link.scuff for link in problem.links if {link.first, link.then} & free}
    lone = {n for n in free if problem.tasks[n].optional}
    return (free - lone) | (beside - {-1})
