"""Work on the whole piece before the first step and after the last."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from refettle.domain.piece_plan import DayTask, GroupPlan
from refettle.domain.plan import Range
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import PLACE_HOURS
from refettle.services.step_words import step_words

WHOLE: Final = "whole piece"


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """
    Work on the whole piece, or on several.

    Attributes
    ----------
    tests
        What safety asks for, before anything else.
    before
        Before the first step, when the piece is in the house.
    after
        When the films can be handled.
    """

    tests: tuple[DayTask, ...] = ()
    before: tuple[DayTask, ...] = ()
    after: tuple[DayTask, ...] = ()


def has_moving_parts(names: Iterable[str]) -> bool:
    """Return whether surfaces belong to doors, drawers, a lid or leaves, whose hardware comes off."""
    return any(word in name for name in names for word in ("door", "drawer", "lid", "leaf", "gate"))


def around(know: Knowledge, plans: tuple[GroupPlan, ...]) -> Around:
    """
    Return the work on the whole piece before the first step and after the last.

    Notes
    -----
    Tests that safety asks for come first of all; hardware comes off where there are doors, drawers, a lid
    or leaves, and goes back when the films can be handled.
    """
    worked = [p for p in plans if p.route is not None and p.route.steps]
    moving = has_moving_parts(name for plan in plans for name in plan.members)
    tests = tuple(
        _whole(step_words(know, Step(verb="test", what=advice.test)), know.test(advice.test).minutes)
        for advice in {a.test: a for p in worked for a in p.tests if a.needed}.values()
    )
    if not worked or not moving:
        return Around(tests=tests)
    off, on = Step(verb="take_off"), Step(verb="refit")
    return Around(
        tests=tests,
        before=(_whole(step_words(know, off), 60.0 * PLACE_HOURS["take_off"]),),
        after=(_whole(step_words(know, on), 60.0 * PLACE_HOURS["refit"]),),
    )


def around_minutes(work: Around) -> Range:
    """Return the hands-on time of work on the whole piece [min]; spread as that of set-up."""
    likely = sum(task.minutes for task in (*work.tests, *work.before, *work.after))
    return Range(low=0.7 * likely, likely=likely, high=1.5 * likely)


def _whole(text: str, minutes: float) -> DayTask:
    """Return a task on the whole piece."""
    return DayTask(group=WHOLE, number=0, text=text, minutes=minutes, wait_h=0.0)
