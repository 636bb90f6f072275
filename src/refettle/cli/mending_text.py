"""Mending of parts and of the whole, as a page."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import hours_words, minutes_words, money_words
from refettle.domain.piece_plan import MendJob, MendStep, PiecePlan

_HEADS: Final = {
    "first": "Before it comes in",
    "before colour": "Mend before colour",
    "after coats": "When the coats are hard",
}
_TIME: Final = 9


def write_mending(page: Page, plan: PiecePlan, stages: tuple[str, ...]) -> None:
    """
    Write the jobs of some stages, each with its operations.

    Parameters
    ----------
    page
        The page.
    plan
        The plan.
    stages
        Stages to be written, in their order.
    """
    for stage in stages:
        jobs = [job for job in plan.mending if job.stage == stage]
        if jobs:
            page.heading(_HEADS[stage])
        for job in jobs:
            _job(page, job, plan.currency)


def _job(page: Page, job: MendJob, currency: str) -> None:
    """Write one job."""
    page.gap()
    money = f"; {money_words(job.money, currency)}" if job.money.likely > 0 else ""
    page.write(f"{job.name[:1].upper()}{job.name[1:]}{money}", indent=2, hang=2)
    for number, step in enumerate(job.steps, start=1):
        page.ended(f"{number:>3}  {step.text}", minutes_words(step.minutes), indent=1, hang=7, keep=_TIME)
        page.write(_after(step), indent=6, hang=2)


def _after(step: MendStep) -> str:
    """Return the wait after an operation, and the clamps it holds till then."""
    if step.wait_h.likely <= 0:
        return ""
    clamps = f", {step.clamps} clamps on it" if step.clamps else ""
    return f"then {hours_words(step.wait_h)}{clamps}"
