"""``refettle diagnose``: what may be behind trouble on a surface."""

import os
import sys
from argparse import Namespace
from dataclasses import replace

from refettle import bootstrap
from refettle.cli.diagnose_json import diagnose_json
from refettle.cli.diagnose_text import diagnose_text, question_words, worth_asking
from refettle.cli.page import Page
from refettle.cli.refusal import refusal
from refettle.cli.terminal import Answer, bold_wanted, folded, page_width, waiting
from refettle.cli.trouble_words import said_in

_MOST_ASKED = 5
_YES = frozenset({"y", "yes"})
_NO = frozenset({"n", "no"})


def run(wishes: Namespace) -> Answer:
    """
    Return what may be behind trouble, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a file holds an error.
    """
    laid = bootstrap.lay_out(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    surface = bootstrap.surface_named(laid.piece, wishes.surface, laid.know)
    said = said_in(wishes)
    if wishes.ask:
        said = _asked(laid, surface, said)
    with waiting(f"Looking into {surface}"):
        looked = bootstrap.look_into(laid, surface, said)
    if wishes.json:
        return Answer(out=diagnose_json(laid, looked))
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=diagnose_text(laid, looked, said, wishes.file, wishes.workshop, page))


def _asked(laid: bootstrap.Laid, surface: str, said: bootstrap.Said) -> bootstrap.Said:
    """Return what the person says after the questions that tell most; Enter alone leaves one out."""
    if not said.text:
        said = replace(said, text=_line("What do you see? In your own words"))
    passed: set[str] = set()
    for _ in range(_MOST_ASKED):
        looked = bootstrap.look_into(laid, surface, said)
        left = [q for q in worth_asking(looked, most=100) if q.sign not in passed]
        if not left:
            break
        question = left[0]
        passed.add(question.sign)
        said = _answered(said, question.sign, question_words(looked, question))
    return said


def _answered(said: bootstrap.Said, sign: str, words: str) -> bootstrap.Said:
    """Return what is said with the answer to one question."""
    if sign == "when":
        words = f"{words} at once, or hours, days, weeks, months, years later"
        while True:
            answer = _line(f"{words}; Enter: don't know").removesuffix(" later")
            try:
                bootstrap.told_of_time(answer)
            except bootstrap.WrongCall as wrong:
                sys.stderr.write(folded(str(wrong)))
                continue
            return replace(said, when=answer)
    while True:
        answer = _line(f"{words} yes, no; Enter: don't know").casefold()
        if answer in _YES:
            return replace(said, yes=(*said.yes, sign))
        if answer in _NO:
            return replace(said, no=(*said.no, sign))
        if not answer:
            return said


def _line(question: str) -> str:
    """Return one line of the person; WrongCall where nobody is there to answer."""
    sys.stderr.write(folded(question) + "> ")
    sys.stderr.flush()
    line = sys.stdin.readline()
    if not line:
        raise bootstrap.WrongCall(
            what="the questions were left unanswered",
            do="give what you know with --says, --yes, --no, --when",
        )
    return " ".join(line.split())
