"""The choice put to CP-SAT: one worker, one seed, a limit in its own time, so that it repeats itself."""

from ortools.sat.python import cp_model

from refettle.solver.choice import WholeProblem, WholeWay, ties

_SEED = 7
_LONGEST = 0.5
"""Limit in the solver's deterministic time [1]: a second or two by the clock."""
Terms = list[tuple[int, cp_model.IntVar]]
"""Factors with their variables; together a sum."""
Taken = list[tuple[WholeWay, cp_model.IntVar]]


def solve(problem: WholeProblem, first: tuple[int, ...]) -> tuple[tuple[int, ...], bool]:
    """
    Return the places of the ways of the cheapest choice, and whether that is proved.

    Parameters
    ----------
    problem
        In whole numbers.
    first
        Places of a good choice to begin with.

    Returns
    -------
    tuple
        Place in its pool per group; whether no other choice costs less.

    Notes
    -----
    Ties are broken by the places: the sum is multiplied so that they never outweigh a thousandth of money.
    """
    model = cp_model.CpModel()
    rows: list[Taken] = [
        [(way, model.new_bool_var(f"g{g}w{w}")) for w, way in enumerate(pool)]
        for g, pool in enumerate(problem.pools)
    ]
    for row, good in zip(rows, first, strict=True):
        model.add_exactly_one([var for _, var in row])
        for place, (_, var) in enumerate(row):
            model.add_hint(var, place == good)
    every = [pair for row in rows for pair in row]
    cost = [(way.own, var) for way, var in every]
    cost += [*_shared(model, every), *_bought(model, problem, every), *_split(model, problem, every)]
    told_apart = ties(problem)
    total = [(told_apart * factor, var) for factor, var in cost]
    total += [(place, var) for row in rows for place, (_, var) in enumerate(row)]
    model.minimize(_sum(total))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = _SEED
    solver.parameters.max_deterministic_time = _LONGEST
    status = solver.solve(model)
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return first, False
    places = tuple(next(w for w, (_, var) in enumerate(row) if solver.value(var)) for row in rows)
    return places, status == cp_model.OPTIMAL


def _sum(terms: Terms) -> cp_model.LinearExprT:
    """Return terms as one expression."""
    return cp_model.LinearExpr.weighted_sum([var for _, var in terms], [factor for factor, _ in terms])


def _shared(model: cp_model.CpModel, every: Taken) -> Terms:
    """Return what is paid once: per thing the dearest of the ways taken."""
    users: dict[tuple[str, str], Terms] = {}
    for way, var in every:
        for key, paid in way.once:
            users.setdefault(key, []).append((paid, var))
    whole: Terms = []
    for key, rows in users.items():
        dearest = model.new_int_var(0, max(paid for paid, _ in rows), "/".join(key))
        for paid, var in rows:
            model.add(dearest >= _sum([(paid, var)]))
        whole.append((1, dearest))
    return whole


def _bought(model: cp_model.CpModel, problem: WholeProblem, every: Taken) -> Terms:
    """Return what is bought whole: per thing one step of its curve, high enough for all ways taken."""
    cost: Terms = []
    for place, steps in enumerate(problem.curves):
        uses = [(amount, var) for way, var in every for key, amount in way.sums if key == place]
        if not uses:
            continue
        most = sum(amount for amount, _ in uses)
        ends = [upto for upto, _ in steps[:-1]] + [max(steps[-1][0], most)]
        held = [model.new_bool_var(f"c{place}s{n}") for n in range(len(steps))]
        model.add_exactly_one(held)
        model.add(_sum([*uses, *((-end, var) for end, var in zip(ends, held, strict=True))]) <= 0)
        cost += [(paid, var) for (_, paid), var in zip(steps, held, strict=True)]
    return cost


def _split(model: cp_model.CpModel, problem: WholeProblem, every: Taken) -> Terms:
    """Return the price of further answers to questions on which groups should agree."""
    answered: dict[str, dict[str, list[cp_model.IntVar]]] = {}
    for way, var in every:
        for question, answer in way.agrees:
            answered.setdefault(question, {}).setdefault(answer, []).append(var)
    cost: Terms = []
    for question, answers in answered.items():
        given: Terms = []
        for answer, ways in answers.items():
            said = model.new_bool_var(f"{question}: {answer}")
            for var in ways:
                model.add_implication(var, said)
            given.append((1, said))
        more = model.new_int_var(0, len(given), question)
        model.add(_sum([*given, (-1, more)]) <= 1)
        cost.append((problem.split, more))
    return cost
