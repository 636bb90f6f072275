"""First plans without a solver: session after session, dust first, then coats by kit; many orders tried in turn."""

from collections.abc import Callable, Collection
from dataclasses import dataclass, replace

from refettle.solver.evenings import Evenings, Link, Plan
from refettle.solver.evenings_axis import Axis
from refettle.solver.evenings_bench import Bench

EFFORT_OF_A_TRY = 2e-5
"""Deterministic time that looking for room once counts for [s]; about what it takes."""
_MASK = (1 << 64) - 1
_FIRST = (10**6, 3, 4, 5, 6, 8, 10, 14)
_FAR = 10**6


class Draws:
    """Numbers that repeat themselves for the same seed."""

    def __init__(self, seed: int) -> None:
        self._state = (seed * 0x9E3779B97F4A7C15 + 0x1234567) & _MASK

    def below(self, count: int) -> int:
        """Return a whole number below another."""
        self._state = (self._state * 6364136223846793005 + 1442695040888963407) & _MASK
        return (self._state >> 33) % count

    def share(self) -> float:
        """Return a number from 0 to below 1."""
        return self.below(1 << 30) / (1 << 30)


@dataclass(frozen=True, slots=True)
class Order:
    """
    How a sweep goes about it.

    Attributes
    ----------
    shift
        Days by which each piece is taken to be due sooner (negative) or later [d].
    open_pieces
        Pieces worked on at a time at the most [1].
    tail
        Hours of waits ahead that count for a day [h].
    """

    shift: tuple[float, ...]
    open_pieces: int = _FAR
    tail: float = 10.0


class Sweep:
    """What sweeps over one problem share; each `lay` is one sweep."""

    def __init__(self, axis: Axis) -> None:
        self.axis, self.problem = axis, axis.problem
        followers = {link.then for link in self.problem.links if axis.follows(link)}
        self.heads = [n for n, t in enumerate(self.problem.tasks) if not t.optional and n not in followers]
        self.blocks = {n: axis.tied(n) for n in self.heads}
        self.head_of = {n: head for head, block in self.blocks.items() for n in block}
        self.ahead = self._ahead()

    def _ahead(self) -> list[float]:
        """Return the hours of waits still ahead after each task, roughly [h]."""
        ahead = [0.0] * len(self.problem.tasks)
        hour = 60 / self.problem.slot_min
        for _ in range(len(ahead)):
            moved = False
            for link in self.problem.links:
                need = link.wait.need if link.wait.curve >= 0 else link.wait.need / hour
                more = ahead[link.then] + need + 0.5
                if more > ahead[link.first] + 1e-9:
                    ahead[link.first], moved = more, True
            if not moved:
                break
        return ahead

    def lay(self, bench: Bench, order: Order, tasks: Collection[int] | None = None) -> list[int]:
        """
        Lay tasks session after session.

        Parameters
        ----------
        bench
            What is laid already; laid further in place.
        order
            How to go about it.
        tasks
            Tasks to lay; all where None.

        Returns
        -------
        list of int
            Tasks for which no room was left.
        """
        run = _Run(self, bench, order, tasks)
        for session in range(len(self.problem.sessions)):
            if not run.left:
                break
            if self.axis.spans[session][1] > bench.now:
                run.session(session)
        return sorted(n for head in run.left for n in self.blocks[head])


class _Run:
    """One sweep under way."""

    def __init__(self, sweep: Sweep, bench: Bench, order: Order, tasks: Collection[int] | None) -> None:
        self.sweep, self.bench, self.order = sweep, bench, order
        self.problem, self.axis = sweep.problem, sweep.axis
        self.left = {
            head for head in sweep.heads if bench.at[head] is None and (tasks is None or head in tasks)
        }
        far = max((one.day for one in self.problem.sessions), default=0)
        due = [far if piece.due_day is None else piece.due_day for piece in self.problem.pieces]
        self.due = [day + shift for day, shift in zip(due, order.shift, strict=True)]
        self.missing = {head: self._missing(head) for head in self.left}
        self.ready = {head for head, count in self.missing.items() if not count}
        self.by_due = sorted(range(len(due)), key=lambda piece: self.due[piece])
        self.todo = [0] * len(due)
        for head in self.left:
            self.todo[self.problem.tasks[head].piece] += 1
        self.low: dict[int, int] = {}

    def _missing(self, head: int) -> int:
        """Return how many tasks must be laid before a block."""
        block = self.sweep.blocks[head]
        tasks, at = self.problem.tasks, self.bench.at
        return sum(
            1
            for n in block
            for link in self.axis.into[n]
            if link.first not in block and not tasks[link.first].optional and at[link.first] is None
        )

    def slack(self, task: int) -> float:
        """Return how many days a task may wait, roughly [d]."""
        return self.due[self.problem.tasks[task].piece] - self.sweep.ahead[task] / self.order.tail

    def session(self, session: int) -> None:
        """Lay what a session has room for."""
        end = self.axis.spans[session][1]
        opened = set([piece for piece in self.by_due if self.todo[piece]][: self.order.open_pieces])
        for dust_first in (True, False):
            fresh = {n for n in self.ready if self.problem.tasks[n].piece in opened}
            while fresh and self.bench.room[session] > 0:
                can = [n for n in fresh if self._soonest(n) < end]
                fresh = set()
                for n in self._sorted(can, dust_first):
                    if self._try(n, session):
                        fresh |= self._laid(n, opened)
                    if self.bench.room[session] <= 0:
                        break

    def _soonest(self, head: int) -> int:
        """Return the first working slot for a block whose forerunners are laid."""
        if head not in self.low:
            self.low[head] = self.bench.soonest(head)
        return self.low[head]

    def _sorted(self, heads: list[int], dust_first: bool) -> list[int]:
        """Return tasks in the order in which to try them."""
        tasks = self.problem.tasks
        if dust_first:
            dry = [n for n in heads if (wet := tasks[n].wet) is None or wet.tacky is None]
            return sorted(dry, key=lambda n: (self.slack(n), n))
        count: dict[int, int] = {}
        press: dict[int, float] = {}
        for n in heads:
            kit = tasks[n].kit
            count[kit] = count.get(kit, 0) + 1
            press[kit] = min(press.get(kit, _FAR), self.slack(n))
        return sorted(heads, key=lambda n: self._coat_key(n, press, count))

    def _coat_key(
        self, n: int, press: dict[int, float], count: dict[int, int]
    ) -> tuple[float, int, float, int]:
        """Return the key by which coats of one kit stand together, the most pressing kit first."""
        kit = self.problem.tasks[n].kit
        return press[kit] - count[kit], kit, self.slack(n), n

    def _laid(self, head: int, opened: set[int]) -> set[int]:
        """Return the blocks that may be laid now that one is."""
        self.left.discard(head)
        self.ready.discard(head)
        self.todo[self.problem.tasks[head].piece] -= 1
        fresh = set()
        block = self.sweep.blocks[head]
        for n in block:
            for link in self.axis.out[n]:
                other = self.sweep.head_of.get(link.then, head)
                if other == head or other not in self.missing:
                    continue
                self.missing[other] -= 1
                if not self.missing[other] and other in self.left:
                    self.ready.add(other)
                    if self.problem.tasks[other].piece in opened:
                        fresh.add(other)
        return fresh

    def _try(self, head: int, session: int) -> bool:
        """Lay a block within a session, a scuff before it where a window has closed; say whether it went."""
        mark = len(self.bench.log)
        high = self.axis.spans[session][1]
        low = self._soonest(head)
        for link in self.axis.into[head]:
            if link.most is None or link.scuff < 0 or self.bench.at[link.first] is None:
                continue
            if self.bench.at[link.scuff] is not None:
                low = max(low, self.bench.soonest(head))
                continue
            until = self.axis.open_list(link.most)[self.bench.end(link.first) - 1]
            if until >= max(low, self.axis.spans[session][0], self.bench.now):
                high = min(high, until)
            else:
                low = max(low, self._scuffed(link, session))
        if low < self.axis.size and self._block(self.sweep.blocks[head], session, low, high):
            return True
        self.bench.undo(mark)
        return False

    def _scuffed(self, link: Link, session: int) -> int:
        """Lay a scuff and return the slot after it; the size of the axis where there is no room."""
        low = self.axis.ready_list(link.wait)[self.bench.end(link.first) - 1]
        for start in self.bench.fits(link.scuff, session, low, self.axis.size):
            self.bench.put(link.scuff, start)
            return self.bench.end(link.scuff)
        return self.axis.size

    def _block(self, block: list[int], session: int, low: int, high: int) -> bool:
        """Lay a task and what must follow it closely; say whether all of it went."""
        for start in self.bench.fits(block[0], session, low, high):
            mark = len(self.bench.log)
            self.bench.put(block[0], start)
            if all(self._follow(n) for n in block[1:]):
                return True
            self.bench.undo(mark)
        return False

    def _follow(self, n: int) -> bool:
        """Lay a task soon after the one that ties it; say whether it went."""
        low, high = self.bench.soonest(n), self.axis.size - 1
        for link in self.axis.into[n]:
            at = self.bench.at[link.first]
            if at is None or not self.axis.follows(link):
                continue
            if link.most is not None:
                high = min(high, self.axis.open_list(link.most)[self.bench.end(link.first) - 1])
            if link.together:
                high = min(high, self.axis.spans[self.axis.session_of[at]][1] - 1)
        if low > high:
            return False
        for session in range(self.axis.session_of[low], self.axis.session_of[high] + 1):
            for start in self.bench.fits(n, session, low, high):
                self.bench.put(n, start)
                return True
        return False


def sweep(problem: Evenings, *, tries: int = 1, seed: int = 0) -> tuple[Plan, tuple[int, ...]]:
    """
    Return a first plan, and the tasks it has no room for.

    Parameters
    ----------
    problem
        What is to be laid.
    tries
        Orders tried [1]; the first that lays all ends the search when it is 1.
    seed
        What the orders grow from.

    Returns
    -------
    tuple
        Plan, and tasks without room within the sessions: none where the plan is whole.
    """
    return search(Axis(problem), orders=tries, seed=seed)


def search(
    axis: Axis,
    *,
    orders: int,
    effort: float = float("inf"),
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
) -> tuple[Plan, tuple[int, ...]]:
    """
    Return the best of many sweeps, each order grown from the best one so far.

    Parameters
    ----------
    axis
        Tables of the problem.
    orders
        Orders tried at the most [1].
    effort
        Deterministic time for all of them [s].
    seed
        What the orders grow from.
    stop
        Asked after each sweep whether to end.

    Returns
    -------
    tuple
        Plan, and tasks without room within the sessions.
    """
    sweeps, draws = Sweep(axis), Draws(seed)
    count = len(axis.problem.pieces)
    flat = Order(shift=(0.0,) * count)
    best: tuple[tuple[int, int], Plan, tuple[int, ...], Order] | None = None
    for n in range(max(1, orders)):
        if n < len(_FIRST):
            order = replace(flat, open_pieces=_FIRST[n])
        else:
            order = _grown(best[3] if best else flat, best[1] if best else None, axis, draws)
        bench = Bench(axis)
        left = tuple(sweeps.lay(bench, order))
        plan = bench.plan()
        effort -= (bench.tries + 4 * len(axis.problem.tasks)) * EFFORT_OF_A_TRY
        if best is None or (len(left), plan.value) <= best[0]:
            best = (len(left), plan.value), plan, left, order
        if effort <= 0 or (stop is not None and stop()):
            break
    assert best is not None  # noqa: S101
    return best[1], best[2]


def _grown(order: Order, plan: Plan | None, axis: Axis, draws: Draws) -> Order:
    """Return an order near another: late pieces sooner, some at random."""
    shift = list(order.shift)
    for n, piece in enumerate(axis.problem.pieces):
        at = None if plan is None else plan.starts[piece.last]
        if piece.due_day is not None and at is not None and draws.below(3) == 0:
            late = axis.problem.sessions[axis.session_of[axis.up(at)]].day - piece.due_day
            shift[n] -= min(6, max(0, late)) * draws.share()
        if draws.below(max(2, len(shift) // 3)) == 0:
            shift[n] += (draws.share() - 0.5) * (4, 8, 16)[draws.below(3)]
    opened = order.open_pieces
    if draws.below(4) == 0:
        opened = (2, 3, 4, 5, 6, 7, 8, 10, 12, 16, _FAR)[draws.below(11)]
    tail = (3.0, 5.0, 8.0, 10.0, 15.0, 25.0)[draws.below(6)] if draws.below(6) == 0 else order.tail
    return Order(shift=tuple(shift), open_pieces=opened, tail=tail)
