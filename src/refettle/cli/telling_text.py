"""Spot tests as a page: what to do, what a yes speaks for, how often they err; and old finishes by age."""

from collections.abc import Iterable
from math import floor
from typing import Final

from refettle.cli.page import Page
from refettle.knowledge.knowledge import Knowledge
from refettle.services.step_words import wait_words
from refettle.services.telling import Telling, likely_by_age, tests_by_question

_YEARS: Final = 18
_SURE: Final = 0.02


def tests_text(know: Knowledge, page: Page) -> str:
    """
    Return the page of all spot tests.

    Parameters
    ----------
    know
        All facts.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Each question with its tests in order, then what an old finish is likely to be by its age.
    """
    page.heading("What finish is on it: spot tests, in this order")
    page.write(
        "Where nobody looks, on a clean spot, one drop; wait the minutes it says. Stop at the first yes. "
        'Ventilate, no flame, gloves. Write the answers under "tests:" in the piece file.',
        indent=2,
    )
    for number, (question, tests) in enumerate(tests_by_question(know).items()):
        if number:
            page.heading(f"To tell {question}")
        page.gap()
        write_tests(page, tests, numbered=True)
        if not number:
            _by_age(page, know)
    return page.text()


def write_tests(page: Page, tests: Iterable[Telling], *, numbered: bool = False, errors: bool = True) -> None:
    """
    Write spot tests.

    Parameters
    ----------
    page
        Page to write on.
    tests
        The tests, in the order one tries them.
    numbered
        Whether each has its number.
    errors
        Whether to say how often each errs.
    """
    for number, told in enumerate(tests, start=1):
        head = f"{number:>2}  " if numbered else ""
        ask = f"{head}{told.ask}{'?' if ': ' in told.ask else '.'}"
        minutes = f"{told.facts.minutes:g} min"
        page.ended(ask, minutes, indent=2, hang=len(head) or 2, keep=7)
        body = 2 + (len(head) or 2)
        page.write(f"Yes: {', '.join(told.speaks_for)}.", indent=body, hang=5)
        if errors:
            page.write(f"{_errors(told)}.", indent=body, hang=2)


def _errors(told: Telling) -> str:
    """Return how often a test errs, when its answer shows, and what is worth knowing of it."""
    facts = told.facts
    often = f"misses {_one_in(1.0 - facts.yes_if_true)}, cries wolf {_one_in(facts.yes_if_false)}"
    parts = [f"{facts.name}: {often}"]
    if facts.wait_h >= 0.5:
        parts.append(f"answer after {wait_words(facts.wait_h)}")
    notes = [row.note for row in told.rows[:1] if row.note]
    return "; ".join((*parts, *notes))


def _one_in(chance: float) -> str:
    """Return a share as one says it: ``1 in 8``."""
    return "hardly ever" if chance < _SURE else f"1 in {max(2, floor(1.0 / chance + 0.5))}"


def _by_age(page: Page, know: Knowledge) -> None:
    """Write what an old finish is likely to be before any test."""
    page.heading("Before any test, by age (likeliest first; judgement)")
    page.gap()
    for one in likely_by_age(know):
        page.marked(one.years, f"{', '.join(one.clear)}", indent=2, column=_YEARS)
        page.marked("", f"painted: {', '.join(one.paint)}", indent=2, column=_YEARS)
