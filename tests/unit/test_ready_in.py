"""A date to be ready by: a quicker sequence is taken, and what will not be done or cured by then is said."""

from dataclasses import replace

from plan_pieces import facts, made, old, one_surface
from refettle.domain.piece import Look
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.services.plan import plan_piece


def planned(hours: float | None) -> PiecePlan:
    """Plan a worn oak top under oil polyurethane, wanted clear and satin within some hours."""
    top = one_surface(
        "top", look=Look(kind="natural", sheen="satin"), layers=(old("oil-polyurethane"),), use="table"
    )
    return plan_piece(replace(made(top), deadline_h=hours), Workshop(), facts())


def waits(plan: PiecePlan) -> float:
    """Return the likely hours from the first step to the last of the only group."""
    return plan.groups[0].route.elapsed_h.likely


def codes(plan: PiecePlan) -> set[str]:
    """Return the codes of the findings of a plan."""
    return {finding.code for finding in plan.findings}


def test_without_a_date_nothing_is_said_of_one() -> None:
    assert not codes(planned(None)) & {"not-enough-time", "not-cured-by-then"}


def test_a_date_far_away_changes_nothing() -> None:
    free, far = planned(None), planned(24.0 * 365)
    assert far.groups[0].route.steps == free.groups[0].route.steps
    assert codes(far) == codes(free)


def test_a_date_close_by_takes_a_quicker_sequence_and_says_what_is_not_cured_by_then() -> None:
    free, close = planned(None), planned(24.0)
    assert waits(close) < waits(free)
    assert codes(close) & {"not-enough-time", "not-cured-by-then"}
