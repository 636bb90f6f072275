"""The plan of a piece as JSON; ``plan.schema.json`` describes every name."""

from typing import Any

from refettle.cli.json_parts import (
    SCHEMA_VERSION,
    Document,
    day_json,
    finding_json,
    range_json,
    risk_json,
    rounded,
    step_json,
    written,
)
from refettle.domain.piece_plan import Choice, GroupPlan, MendJob, PiecePlan, Purchase, Worth
from refettle.domain.plan import Impossible, Range, Route, StepCost, TestAdvice
from refettle.knowledge.knowledge import Knowledge
from refettle.services.cautions import FOLLOW


def plan_json(plan: PiecePlan, know: Knowledge) -> str:
    """
    Return a plan as a JSON document.

    Parameters
    ----------
    plan
        The plan.
    know
        Names.

    Returns
    -------
    str
        Valid against ``plan.schema.json``.
    """
    document: dict[str, Any] = {
        "schema_version": SCHEMA_VERSION,
        "knowledge_version": plan.knowledge_version,
        "piece": {
            "name": plan.piece,
            "workshop": plan.workshop,
            "currency": plan.currency,
            "invented": plan.invented,
        },
        "lines": list(plan.lines),
        "surfaces": [{"name": name, "group": group.name} for group in plan.groups for name in group.members],
        "groups": [_group(group) for group in plan.groups],
        "routes": [route for group in plan.groups for route in _routes(group, know)],
        "risks": [{"group": name, **risk_json(risk, know)} for name, risk in plan.risks],
        "tests": [{"group": name, **_test(advice, know)} for name, advice in plan.tests],
        "buy": [purchase_json(item) for item in plan.buy],
        "gear": [purchase_json(item) for item in plan.gear],
        "money": range_json(plan.money),
        "minutes": range_json(plan.minutes),
        "mending": [_job(job) for job in plan.mending],
        "days": [day_json(day) for day in plan.days],
        "choice": None if plan.choice is None else _choice(plan.choice),
        "wrap_day": plan.wrap_day,
        "cured_day": plan.cured_day,
        "follow": FOLLOW,
        "cautions": [
            {"id": c.id, "steps": list(c.steps), "text": c.text, "source": c.source} for c in plan.cautions
        ],
        "worth": _worth(plan.worth),
        "assumed": [
            {"path": a.path, "value": a.value, "why": a.why, "because": list(a.because)} for a in plan.assumed
        ],
        "findings": [finding_json(finding) for finding in plan.findings],
    }
    return written(document)


def _job(job: MendJob) -> Document:
    """Return a mending job."""
    return {
        "name": job.name,
        "part": job.part,
        "what": job.what,
        "stage": job.stage,
        "surfaces": list(job.surfaces),
        "money": range_json(job.money),
        "reason": job.reason,
        "steps": [
            {
                "text": step.text,
                "minutes": range_json(step.minutes),
                "wait_h": range_json(step.wait_h),
                "clamps": step.clamps,
                "waits_for": step.waits_for,
                "because": list(step.because),
            }
            for step in job.steps
        ],
    }


def _group(group: GroupPlan) -> Document:
    """Return what a group is, without its routes."""
    look = group.look
    return {
        "name": group.name,
        "members": list(group.members),
        "area_m2": rounded(group.area_m2),
        "relief": group.relief,
        "look": {"kind": look.kind, "colour": look.colour, "depth_pct": look.depth, "sheen": look.sheen},
        "asked": group.asked,
        "worlds": [{"world": label, "share": rounded(share)} for label, share in group.worlds],
        "impossible": None if group.impossible is None else _impossible(group.impossible),
        "exact": group.exact,
        "gap": rounded(group.gap),
    }


def _impossible(impossible: Impossible) -> Document:
    """Return why a look cannot be had and what can."""
    return {
        "clash": list(impossible.clash),
        "nearest": [{"look": look, "text": text} for look, text in impossible.nearest],
        "because": list(impossible.because),
    }


def _routes(group: GroupPlan, know: Knowledge) -> list[Document]:
    """Return all routes of a group: the one to take, other ways, leaving it alone."""
    routes: list[tuple[str, Route]] = [] if group.route is None else [("taken", group.route)]
    routes.extend(("other", route) for route in group.alternatives)
    if group.leave_alone is not None:
        routes.append(("leave alone", group.leave_alone))
    return [{"group": group.name, "role": role, **route_json(route, know)} for role, route in routes]


def route_json(route: Route, know: Knowledge) -> Document:
    """Return one route."""
    return {
        "aim": route.aim,
        "look": route.look,
        "steps": [_step(number, cost, know) for number, cost in enumerate(route.steps, start=1)],
        "risks": [risk_json(risk, know) for risk in route.risks],
        "cost": rounded(route.cost),
        "expected_cost": rounded(route.expected_cost),
        "minutes": range_json(route.minutes),
        "money": range_json(route.money),
        "elapsed_h": range_json(route.elapsed_h),
        "value_lost": rounded(route.value_lost),
    }


def _step(number: int, cost: StepCost, know: Knowledge) -> Document:
    """Return one step of a route with what it takes."""
    return {
        "number": number,
        **step_json(cost.step, know),
        "minutes": range_json(cost.minutes),
        "litres": range_json(cost.litres),
        "money": range_json(cost.money),
        "wait_h": range_json(cost.wait_h),
        "reason": cost.reason,
        "because": list(cost.because),
    }


def _test(advice: TestAdvice, know: Knowledge) -> Document:
    """Return a test."""
    return {
        "test": advice.test,
        "name": know.name("test", advice.test),
        "needed": advice.needed,
        "gain": rounded(advice.gain),
        "price": rounded(advice.price),
        "why": advice.why,
        "answers": [
            {"answer": answer, "chance": rounded(chance), "then": then}
            for answer, chance, then in advice.answers
        ],
    }


def purchase_json(item: Purchase) -> Document:
    """Return one material."""
    return {
        "kind": item.kind,
        "id": item.cls,
        "name": item.name,
        "need_l": range_json(item.need_l),
        "have_l": rounded(item.have_l),
        "bought_l": rounded(item.bought_l),
        "need_count": range_json(item.need_count),
        "have_count": rounded(item.have_count),
        "bought_count": rounded(item.bought_count),
        "left": range_json(item.left),
        "buy": item.buy,
        "money": range_json(item.money),
        "because": list(item.because),
    }


def _choice(choice: Choice) -> Document:
    """Return how the routes were chosen together."""
    return {
        "ways": choice.ways,
        "cost": rounded(choice.cost),
        "gap": rounded(choice.gap),
        "splits": choice.splits,
        "proved": choice.proved,
        "hurried": choice.hurried,
    }


def _worth(worth: Worth) -> Document:
    """Return whether it pays."""
    return {
        "paid": worth.paid,
        "sells_low": worth.sells_low,
        "sells_high": worth.sells_high,
        "per_hour": _maybe(worth.per_hour),
    }


def _maybe(amount: Range | None) -> Document | None:
    """Return a range where there is one."""
    return None if amount is None else range_json(amount)
