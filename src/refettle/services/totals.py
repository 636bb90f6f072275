"""What the groups of a piece add up to: set-up, risks, tests, worth."""

from refettle.domain.piece import Piece
from refettle.domain.piece_plan import GroupPlan, Worth
from refettle.domain.plan import Range, Risk, TestAdvice
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.search import setup_hours


def setup_of(know: Knowledge, plans: tuple[GroupPlan, ...]) -> Range:
    """
    Return set-up and clean-up of a piece [min].

    Notes
    -----
    Groups that use the same material for the same work share its sessions: of those groups, the one with the
    most sessions counts.
    """
    routes = [tuple(c.step for c in plan.route.steps) for plan in plans if plan.route is not None]
    seen: dict[tuple[str, str], float] = {}
    for steps in routes:
        for key, hours in setups_of(know, steps).items():
            seen[key] = max(seen.get(key, 0.0), 60.0 * hours)
    total = sum(seen.values())
    return Range(low=0.7 * total, likely=total, high=1.5 * total)


def setups_of(know: Knowledge, steps: tuple[Step, ...]) -> dict[tuple[str, str], float]:
    """Return set-up and clean-up of one route per kind of work and material, over all its sessions [h]."""
    made: dict[tuple[str, str], float] = {}
    for step in steps:
        key = (step.verb, step.what)
        made[key] = made.get(key, 0.0) + setup_hours(know, step)
    return {key: hours for key, hours in made.items() if hours > 0}


def risks_of(plans: tuple[GroupPlan, ...]) -> tuple[tuple[str, Risk], ...]:
    """Return the risks over all groups, likeliest first."""
    rows = [(p.name, r) for p in plans if p.route is not None for r in p.route.risks if r.chance >= 0.03]
    return tuple(sorted(rows, key=lambda row: (-row[1].chance, row[0], row[1].fault)))


def tests_of(plans: tuple[GroupPlan, ...]) -> tuple[tuple[str, TestAdvice], ...]:
    """Return the tests over all groups, each once, safety first."""
    rows: dict[str, tuple[str, TestAdvice]] = {}
    for plan in plans:
        for advice in plan.tests:
            if advice.test not in rows or advice.gain > rows[advice.test][1].gain:
                rows[advice.test] = (plan.name, advice)
    return tuple(sorted(rows.values(), key=lambda row: (not row[1].needed, -row[1].gain)))


def worth_of(piece: Piece, money: Range, minutes: Range) -> Worth:
    """Return what an hour brings when done as planned [money/h]; a loss is largest an hour where least work is done."""
    low, high, paid = piece.sells_low, piece.sells_high, piece.paid
    per_hour = None
    if low is not None and high is not None and minutes.likely > 0:
        worst, best = low - (paid or 0.0) - money.high, high - (paid or 0.0) - money.low
        hours = minutes.low / 60.0, minutes.high / 60.0
        per_hour = Range(
            low=min(worst / h for h in hours),
            likely=(0.5 * (low + high) - (paid or 0.0) - money.likely) / (minutes.likely / 60.0),
            high=max(best / h for h in hours),
        )
    return Worth(paid=paid, sells_low=low, sells_high=high, per_hour=per_hour)
