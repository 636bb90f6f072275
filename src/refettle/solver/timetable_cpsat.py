"""A timetable put to CP-SAT: intervals, cumulatives, starts within what lags allow."""

from ortools.sat.python import cp_model

from refettle.solver.timetable import Problem, Timetable, earliest, longest, tails
from refettle.solver.timetable_first import first_starts, knots

_SEED = 7
_FIRST = 0.25
"""Share of the time [1] that a first timetable may take."""
_MOST_OF_ALL = 0.9


def place(problem: Problem, *, seconds: float, threads: int = 1) -> Timetable:
    """
    Return a timetable that ends as early as can be found.

    Parameters
    ----------
    problem
        What is to be placed.
    seconds
        Limit by the clock [s].
    threads
        Workers of the solver [1]; one repeats itself, more need not.

    Returns
    -------
    Timetable
        No starts where none was found; proved where that is so for good.
    """
    return _placed(problem, seconds, threads)[0]


def _placed(problem: Problem, seconds: float, threads: int) -> tuple[Timetable, float]:
    """Return a timetable, and what the solver took of the time [s]."""
    first = earliest(problem)
    if first is None:
        return Timetable(starts=(), end=0, bound=0, proved=True), 0.0
    known, spent = _known(problem, seconds, threads)
    left = tails(problem)
    ends = [start + work.length for start, work in zip(known, problem.works, strict=False)]
    horizon = max(ends) if known else longest(problem)
    model = cp_model.CpModel()
    starts = [
        model.new_int_var(soonest, max(soonest, horizon - rest), f"s{n}")
        for n, (soonest, rest) in enumerate(zip(first, left, strict=True))
    ]
    end = model.new_int_var(max(map(sum, zip(first, left, strict=True)), default=0), horizon, "end")
    for start, rest in zip(starts, left, strict=True):
        model.add(start + rest <= end)
    for lag in problem.lags:
        model.add(starts[lag.then] - starts[lag.first] >= lag.least)
    _means(model, problem, starts, end)
    model.minimize(end)
    for start, at in zip(starts, known, strict=False):
        model.add_hint(start, at)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = max(0.1, seconds - spent)
    solver.parameters.num_workers = threads
    solver.parameters.random_seed = _SEED
    status = solver.solve(model)
    spent += solver.wall_time
    if status == cp_model.INFEASIBLE:
        return Timetable(starts=(), end=0, bound=0, proved=True), spent
    bound = max(0, round(solver.best_objective_bound))
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return Timetable(starts=known, end=max(ends, default=0), bound=bound, proved=False), spent
    found = tuple(solver.value(start) for start in starts)
    proved = status == cp_model.OPTIMAL
    return Timetable(starts=found, end=solver.value(end), bound=bound, proved=proved), spent


def _known(problem: Problem, seconds: float, threads: int) -> tuple[tuple[int, ...], float]:
    """Return a first timetable and the time it took [s]; none where a knot finds none in its share, or all is one knot."""
    parts = [part for part in knots(problem) if len(part) > 1]
    if any(len(part) > _MOST_OF_ALL * len(problem.works) for part in parts):
        return (), 0.0
    share, spent = _FIRST * seconds / max(1, len(parts)), [0.0]

    def alone(part: Problem) -> tuple[int, ...]:
        found, took = _placed(part, share, threads)
        spent.append(took)
        return found.starts

    return first_starts(problem, alone), sum(spent)


def _means(
    model: cp_model.CpModel, problem: Problem, starts: list[cp_model.IntVar], end: cp_model.IntVar
) -> None:
    """Let no means be held more often than it is there; its whole work fits before the end."""
    spans = [
        model.new_fixed_size_interval_var(start, work.length, f"w{n}")
        for n, (start, work) in enumerate(zip(starts, problem.works, strict=True))
    ]
    for at, there in enumerate(problem.means):
        held = [
            (n, take) for n, work in enumerate(problem.works) for means, take in work.takes
            if means == at and take and work.length
        ]  # fmt: skip
        if not held:
            continue
        model.add_cumulative([spans[n] for n, _ in held], [take for _, take in held], there)
        area = sum(problem.works[n].length * take for n, take in held)
        model.add(there * end >= area)
