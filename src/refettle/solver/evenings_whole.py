"""All tasks of the evenings put to CP-SAT at once: a plan, its bound and, for few pieces, the proof."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from ortools.sat.python import cp_model

from refettle.solver.evenings import LATE_DAY, Evenings, Piece, Plan
from refettle.solver.evenings_axis import Axis
from refettle.solver.evenings_bench import Bench
from refettle.solver.evenings_model import Model
from refettle.solver.evenings_reach import Reach


@dataclass(frozen=True, slots=True)
class Limits:
    """
    How long to go on.

    Attributes
    ----------
    effort
        Deterministic time [s]: the same on every machine, roughly seconds.
    seconds
        Limit by the clock [s]; None for none, so that the same input gives the same plan.
    clock
        Tells the time [s]; wanted where `seconds` is given.
    threads
        Workers of the solver [1]; more than one need not repeat themselves.
    seed
        What the search grows from.
    """

    effort: float = 2.0
    seconds: float | None = None
    clock: Callable[[], float] | None = None
    threads: int = 1
    seed: int = 0

    def __post_init__(self) -> None:
        if self.seconds is not None and self.clock is None:
            message = "a limit in seconds wants a clock: pass clock=time.monotonic"
            raise ValueError(message)


def solver_for(effort: float, seconds: float | None, threads: int, seed: int) -> cp_model.CpSolver:
    """Return a solver with its limits set."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = threads
    solver.parameters.random_seed = seed
    solver.parameters.cp_model_probing_level = 0
    if seconds is None:
        solver.parameters.max_deterministic_time = max(effort, 1e-3)
    else:
        solver.parameters.max_time_in_seconds = max(seconds, 1e-3)
    return solver


def whole(problem: Evenings, hint: Plan | None, limits: Limits) -> Plan:
    """
    Return the best plan found with all tasks free, and a bound no plan can beat.

    Parameters
    ----------
    problem
        What is to be laid.
    hint
        A plan known already, best from a sweep; None for none, which finds little.
    limits
        How long to go on.

    Returns
    -------
    Plan
        The hint with a bound where nothing better was found.

    Raises
    ------
    ValueError
        If neither a hint is given nor a plan found in time.
    """
    axis = Axis(problem)
    known = hint if hint is not None and _complete(problem, hint) else None
    spans = latest(axis, known.value) if known is not None else {}
    model = Model(Bench(axis), set(range(len(problem.tasks))), known, spans)
    if not model.possible:
        if known is None:
            message = "no plan fits the sessions: give more sessions or fewer pieces"
            raise ValueError(message)
        return known
    solver = solver_for(limits.effort, limits.seconds, limits.threads, limits.seed)
    status = solver.solve(model.model)
    bound = max(0, round(solver.best_objective_bound))
    if status in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        found = model.plan(solver)
        if known is None or found.value <= known.value:
            proved = status == cp_model.OPTIMAL and bound == found.value
            return replace(found, bound=min(bound, found.value), proved=proved)
    if known is None:
        message = "no plan was found in time: sweep first and pass the plan as a hint"
        raise ValueError(message)
    return replace(known, bound=min(bound, known.value))


def _complete(problem: Evenings, plan: Plan) -> bool:
    """Return whether a plan leaves out nothing but optional tasks."""
    pairs = zip(problem.tasks, plan.starts, strict=True)
    return all(task.optional or at is not None for task, at in pairs)


def latest(axis: Axis, best: int) -> dict[int, tuple[int, int]]:
    """
    Return the working slots within which a better plan must have the last task of each piece.

    Parameters
    ----------
    axis
        Tables of the problem.
    best
        Value of a known plan [1].

    Returns
    -------
    dict
        First and last slot, by task; a piece readier later would cost more than the known plan does.
    """
    problem = axis.problem
    reach = Reach(Bench(axis), set(range(len(problem.tasks))), {})
    spans: dict[int, tuple[int, int]] = {}
    soonest = {piece.last: _day(axis, reach, piece.last) for piece in problem.pieces}
    least = sum(_ready_cost(piece, soonest[piece.last]) for piece in problem.pieces)
    for piece in problem.pieces:
        spare = best - least + _ready_cost(piece, soonest[piece.last])
        days = [one.day for one in problem.sessions if _ready_cost(piece, one.day) <= spare]
        ends = [span[1] for one, span in zip(problem.sessions, axis.spans, strict=True) if one.day in days]
        spans[piece.last] = 0, max(ends, default=axis.size) - 1
    return spans


def _day(axis: Axis, reach: Reach, task: int) -> int:
    """Return the first day on which a task may lie."""
    starts = reach.starts[task]
    return axis.problem.sessions[axis.session_of[int(starts[0])]].day if len(starts) else 0


def _ready_cost(piece: Piece, day: int) -> int:
    """Return what a piece costs that is ready on a day [1]."""
    return day + (0 if piece.due_day is None else LATE_DAY * max(0, day - piece.due_day))
