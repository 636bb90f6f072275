"""The choice put to CP-SAT: one worker, one seed, a limit in its own time, so that it repeats itself."""

from ortools.sat.python import cp_model

from refettle.solver.choice import WholeProblem, WholeWay

_SEED = 7
_LONGEST = 2.0
"""Limit in the solver's deterministic time, about a second each on a slow machine [1]."""


def solve(problem: WholeProblem) -> tuple[tuple[int, ...], bool]:
    """
    Return the places of the ways of the cheapest choice, and whether that is proved.

    Parameters
    ----------
    problem
        In whole numbers.

    Returns
    -------
    tuple
        Place in its pool per group; whether no other choice costs less.

    Notes
    -----
    Ties are broken by the places: the sum is multiplied so that they never outweigh a thousandth of money.
    """
    model = cp_model.CpModel()
    taken = [[model.new_bool_var(f"g{g}w{w}") for w in range(len(pool))] for g, pool in enumerate(problem.pools)]
    for row in taken:
        model.add_exactly_one(row)
    every = [
        (way, var) for pool, row in zip(problem.pools, taken, strict=True) for way, var in zip(pool, row, strict=True)
    ]  # fmt: skip
    ties = 1 + sum(len(pool) - 1 for pool in problem.pools)
    cost = sum(way.own * var for way, var in every)
    total = ties * (cost + _shared(model, every) + _bought(model, problem, every) + _split(model, problem, every))
    model.minimize(total + sum(place * var for row in taken for place, var in enumerate(row)))
    for pool, row in zip(problem.pools, taken, strict=True):
        cheapest = min(range(len(pool)), key=lambda w: (pool[w].own, w))
        for place, var in enumerate(row):
            model.add_hint(var, place == cheapest)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = _SEED
    solver.parameters.max_deterministic_time = _LONGEST
    status = solver.solve(model)
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return tuple(min(range(len(p)), key=lambda w: p[w].own) for p in problem.pools), False
    places = tuple(next(w for w, var in enumerate(row) if solver.value(var)) for row in taken)
    return places, status == cp_model.OPTIMAL


Taken = list[tuple[WholeWay, cp_model.IntVar]]


def _shared(model: cp_model.CpModel, every: Taken) -> cp_model.LinearExprT:
    """Return what is paid once: per thing the dearest of the ways taken."""
    users: dict[tuple[str, str], list[tuple[int, cp_model.IntVar]]] = {}
    for way, var in every:
        for key, paid in way.once:
            users.setdefault(key, []).append((paid, var))
    whole: list[cp_model.IntVar] = []
    for key, rows in users.items():
        dearest = model.new_int_var(0, max(paid for paid, _ in rows), "/".join(key))
        for paid, var in rows:
            model.add(dearest >= paid * var)
        whole.append(dearest)
    return sum(whole)


def _bought(model: cp_model.CpModel, problem: WholeProblem, every: Taken) -> cp_model.LinearExprT:
    """Return what is bought whole: per thing one step of its curve, high enough for all ways taken."""
    cost: cp_model.LinearExprT = 0
    for place, steps in enumerate(problem.curves):
        uses = [(amount, var) for way, var in every for key, amount in way.sums if key == place]
        if not uses:
            continue
        most = sum(amount for amount, _ in uses)
        ends = [upto for upto, _ in steps[:-1]] + [max(steps[-1][0], most)]
        held = [model.new_bool_var(f"c{place}s{n}") for n in range(len(steps))]
        model.add_exactly_one(held)
        model.add(sum(amount * var for amount, var in uses) <= sum(end * var for end, var in zip(ends, held, strict=True)))
        cost += sum(paid * var for (_, paid), var in zip(steps, held, strict=True))
    return cost


def _split(model: cp_model.CpModel, problem: WholeProblem, every: Taken) -> cp_model.LinearExprT:
    """Return the price of further answers to questions on which groups should agree."""
    answered: dict[str, dict[str, list[cp_model.IntVar]]] = {}
    for way, var in every:
        for question, answer in way.agrees:
            answered.setdefault(question, {}).setdefault(answer, []).append(var)
    cost: cp_model.LinearExprT = 0
    for question, answers in answered.items():
        if len(answers) < 2:
            continue
        given = []
        for answer, ways in answers.items():
            said = model.new_bool_var(f"{question}: {answer}")
            for var in ways:
                model.add_implication(var, said)
            given.append(said)
        more = model.new_int_var(0, len(answers) - 1, question)
        model.add(more >= sum(given) - 1)
        cost += problem.split * more
    return cost
