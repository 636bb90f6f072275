"""
Check plans with own bookkeeping.

The checker replays a plan step by step and keeps its own account of films, drying, sums, chances and days.
It asks the same rules and reads the same facts as the planner, and takes the planner's word on what a step
does to dirt, colour and moisture. So it certifies that the books are right, not that the wood will do what
they say.
"""

from dataclasses import replace

from refettle.domain.finding import Finding
from refettle.domain.piece import Look, Piece, Surface
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.plan import Route
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_choice import choice
from refettle.planning.check_days import days
from refettle.planning.check_mending import mending
from refettle.planning.check_order import names_and_means, order_and_drying
from refettle.planning.check_sums import numbers
from refettle.planning.check_walk import prepare
from refettle.planning.check_whole import stand_in, whole
from refettle.planning.mended import as_mended
from refettle.planning.start import Start


def check_route(
    know: Knowledge,
    piece: Piece,
    workshop: Workshop,
    surface: Surface,
    route: Route,
    look: Look,
    begin: Start | None = None,
    meets: frozenset[str] = frozenset(),
) -> tuple[Finding, ...]:
    """
    Return what is wrong with a route.

    Parameters
    ----------
    know
        All facts.
    piece
        The piece, for its age, demands and the area of all its surfaces [m²].
    workshop
        Means, air and prices.
    surface
        The surface, or a stand-in with the area of its whole group [m²].
    route
        The route.
    look
        The look that it should end in.
    begin
        Where it starts from, for a mend; None = as the piece says.
    meets
        What the surface meets in use, values of `EVENT_MARKS`.

    Returns
    -------
    tuple
        Findings with the surface and the step's number as path; empty where the books are right. A route that
        names something unknown is not replayed.
    """
    check = prepare(know, piece, workshop, surface, route, look)
    if begin is not None:
        check = replace(check, begin=begin, meets=meets)
    found = tuple(names_and_means(check))
    if any(finding.code in {"unknown-name", "unknown-verb"} for finding in found):
        return found
    walked = check.with_walks()
    return (*found, *order_and_drying(walked), *numbers(walked))


def check_plan(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> tuple[Finding, ...]:
    """
    Return what is wrong with the plan of a piece.

    Parameters
    ----------
    know
        All facts.
    piece, workshop
        As planned.
    plan
        The plan.

    Returns
    -------
    tuple
        Findings on every route, alternatives and leaving it alone included, on sums, what is bought and the
        days; empty where the books are right.
    """
    found: list[Finding] = list(mending(know, piece, plan))
    piece = as_mended(know, piece)
    for group in plan.groups:
        surface = stand_in(piece, group)
        if surface is None:
            continue
        routes = [(group.route, group.look), *((route, group.look) for route in group.alternatives)]
        if group.leave_alone is not None:
            routes.append((group.leave_alone, Look(kind="keep")))
        for route, look in routes:
            if route is not None:
                made = check_route(know, piece, workshop, surface, route, look)
                found.extend(_of(route, finding) if route is not group.route else finding for finding in made)
    found.extend(whole(know, piece, workshop, plan))
    found.extend(choice(know, piece, workshop, plan))
    found.extend(days(know, piece, workshop, plan))
    return tuple(found)


def _of(route: Route, finding: Finding) -> Finding:
    """Return a finding that says to which of the other routes it belongs."""
    return replace(finding, where=replace(finding.where, path=f"{finding.where.path} ({route.aim})"))
