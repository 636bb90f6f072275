"""``refettle days``: what to do on which evening, for one piece or several."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.days_text import days_json, days_text
from refettle.cli.page import Page
from refettle.cli.refusal import findings_note, refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting
from refettle.cli.words import count_words


def run(wishes: Namespace) -> Answer:
    """
    Return the evenings, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a file holds an error.
    """
    laid = bootstrap.lay_out_many(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    with waiting(f"Planning {count_words(len(laid), 'piece')}"):
        calendar = bootstrap.calendar(laid)
    findings = tuple(dict.fromkeys(finding for one in laid for finding in one.findings))
    if wishes.json:
        return Answer(out=days_json(calendar, laid[0].workshop, laid[0].names, findings))
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=days_text(calendar, laid[0].workshop, page), notes=findings_note(findings))
