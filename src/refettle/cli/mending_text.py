"""Mending of parts and of the whole, as a page."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import count_words, hours_words, minutes_words, money_words
from refettle.domain.piece_plan import MendJob, MendStep, PiecePlan

_HEADS: Final = {
    "first": "Before it comes in",
    "before colour": "Mend before colour",
    "after coats": "When the coats are hard",
}
_LATER: Final = (
    "Filling waits until the old finish is off, toning until the last sanding is done; the days say when."
)
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
        if any(step.waits_for for job in jobs for step in job.steps):
            page.write(_LATER, indent=2, hang=2)
        for alike in _alike(jobs):
            _job(page, alike, plan.currency)


def _alike(jobs: list[MendJob]) -> list[list[MendJob]]:
    """Return the jobs, those of several parts with the same trouble and the same operations together."""
    found: dict[object, list[MendJob]] = {}
    for job in jobs:
        key = (job.what, job.steps, job.money) if job.part else job.name
        found.setdefault(key, []).append(job)
    return list(found.values())


def _job(page: Page, jobs: list[MendJob], currency: str) -> None:
    """Write one job, or the same job on several parts."""
    page.gap()
    job, each = jobs[0], " each" if len(jobs) > 1 else ""
    name = job.name if len(jobs) == 1 else f"{', '.join(one.part for one in jobs)}: {job.what}"
    money = f"; {money_words(job.money, currency)}{each}" if job.money.likely > 0 else each and ";" + each
    page.write(f"{name[:1].upper()}{name[1:]}{money}", indent=2, hang=2)
    for number, step in enumerate(job.steps, start=1):
        page.ended(f"{number:>3}  {step.text}", minutes_words(step.minutes), indent=1, hang=7, keep=_TIME)
        page.write(_after(step), indent=6, hang=2)


def _after(step: MendStep) -> str:
    """Return the wait after an operation, and the clamps it holds till then."""
    if step.wait_h.likely <= 0:
        return ""
    clamps = f", {count_words(step.clamps, 'clamp')} on it" if step.clamps else ""
    return f"then {hours_words(step.wait_h)}{clamps}"
