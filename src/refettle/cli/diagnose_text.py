"""What may be behind trouble, as a page."""

from typing import Final

from refettle.bootstrap import Laid, Looked, Said
from refettle.cli.page import Page
from refettle.cli.plan_text import write_findings
from refettle.cli.trouble_words import (
    COLUMN,
    asked_as,
    call,
    cause_lines,
    fault_words,
    start,
    write_done,
    write_understood,
)
from refettle.trouble.rank import Question, told_apart
from refettle.trouble.words import ONSETS

LEAST: Final = 0.02
_MOST: Final = 5
_ASKED: Final = 3
_TELLS: Final = 0.03
"""Information [bit] from which a question is worth its words."""
_TIMES: Final = " | ".join(f'"{asked_as(when)}"' if " " in asked_as(when) else when for when in ONSETS)
_CLOSE: Final = 0.4
"""Share of the first cause [1] from which a second one is worth telling apart."""


def diagnose_text(laid: Laid, looked: Looked, said: Said, file: str, workshop: str | None, page: Page) -> str:
    """
    Return the page of what may be behind trouble.

    Parameters
    ----------
    laid
        Piece and names.
    looked
        What was found.
    said
        What the person said, for the calls that go on from here.
    file, workshop
        Paths, for the same.
    page
        Empty page of the right width.

    Returns
    -------
    str
        What was understood, what was done, the causes, what to find out next, how to go on.
    """
    know = laid.names
    page.heading(f"{laid.piece.name}, {looked.surface.name}: what may be behind it")
    write_understood(page, looked)
    write_done(page, looked, know)
    page.heading("Likely causes")
    for chance, name, why in cause_lines(looked, know, LEAST, _MOST):
        page.marked(chance, name, indent=2, column=COLUMN)
        page.write(why, indent=COLUMN, hang=0)
    _next_questions(page, looked)
    _apart(page, laid, looked)
    page.heading("How to put it right")
    page.write(call("mend", file, looked.surface.name, said, workshop=workshop), indent=2, hang=2)
    write_findings(page, laid.findings)
    return page.text()


def worth_asking(looked: Looked, most: int = _ASKED) -> tuple[Question, ...]:
    """Return the questions that tell most, none that tells next to nothing."""
    return tuple(question for question in looked.found.questions if question.tells >= _TELLS)[:most]


def question_words(looked: Looked, question: Question) -> str:
    """Return how a question is put."""
    return "When did it show?" if question.sign == "when" else looked.book.signs[question.sign].question


def _next_questions(page: Page, looked: Looked) -> None:
    """Write what to find out next, that which tells most first, and how to answer."""
    asked = worth_asking(looked)
    if not asked:
        return
    page.heading("To know better, that which tells most first")
    for question in asked:
        minutes = f" ({question.minutes:g} min)" if question.minutes else ""
        page.write(f"{question_words(looked, question)}{minutes}", indent=2, hang=2)
        if question.sign == "when":
            page.write(f"--when {_TIMES}", indent=4, hang=2)
        else:
            page.write(f"--yes {question.sign}   or   --no {question.sign}", indent=4)


def rivals(looked: Looked) -> tuple[int, int] | None:
    """Return the places of the two likeliest causes of different faults where the second is close; else None."""
    causes = looked.found.causes
    if not causes[0].suspect.fault:
        return None
    for at, other in enumerate(causes[1:], start=1):
        if other.suspect.fault and other.suspect.fault != causes[0].suspect.fault:
            return (0, at) if other.chance >= _CLOSE * causes[0].chance else None
    return None


def _apart(page: Page, laid: Laid, looked: Looked) -> None:
    """Write whether the two likeliest faults can be told apart."""
    pair = rivals(looked)
    if pair is None:
        return
    first, second = (looked.found.causes[at] for at in pair)
    names = [fault_words(laid.names, cause.suspect.fault) for cause in (first, second)]
    sign = told_apart(first, second, looked.found.questions, looked.book)
    page.heading(f"{start(names[0])} or {names[1]}?")
    if sign:
        page.write(f"This tells them apart best: {looked.book.signs[sign].question}", indent=2, hang=2)
        return
    page.write(
        "Nothing that one can see or try tells these two apart; mend says whether it makes a difference.",
        indent=2, hang=2,
    )  # fmt: skip
