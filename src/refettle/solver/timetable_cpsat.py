"""A timetable put to CP-SAT: intervals, cumulatives, starts within what lags allow."""

from ortools.sat.python import cp_model

from refettle.solver.timetable import Problem, Timetable, earliest, longest, tails

_SEED = 7


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
    first = earliest(problem)
    if first is None:
        return Timetable(starts=(), end=0, bound=0, proved=True)
    left = tails(problem)
    horizon = longest(problem)
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
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = threads
    solver.parameters.random_seed = _SEED
    solver.parameters.use_disjunctive_constraint_in_cumulative = True
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return Timetable(starts=(), end=0, bound=0, proved=True)
    bound = round(solver.best_objective_bound)
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return Timetable(starts=(), end=0, bound=max(bound, 0), proved=False)
    found = tuple(solver.value(start) for start in starts)
    return Timetable(starts=found, end=solver.value(end), bound=bound, proved=status == cp_model.OPTIMAL)


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
