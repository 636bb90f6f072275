"""``refettle days``: what to do on which evening, for one piece or several."""

import os
import sys
from argparse import Namespace
from typing import TYPE_CHECKING

from refettle import bootstrap
from refettle.bootstrap.days import days_of
from refettle.cli.days_text import days_json, days_text
from refettle.cli.page import Page
from refettle.cli.refusal import findings_note, refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, until_stopped, waiting
from refettle.cli.words import count_words

if TYPE_CHECKING:
    from refettle.services.calendar import Calendar


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
    words = f"Planning {count_words(len(laid), 'piece')}"
    with waiting(words) as say, until_stopped() as stop:
        found = days_of(
            laid, wishes.keep, stop, lambda best: say(f"{words}: {len(best.days)} evenings so far")
        )
    if isinstance(found, bootstrap.Refused):
        return refusal(found, as_json=wishes.json)
    calendar = found.calendar
    if wishes.ics or wishes.svg:
        return _file(calendar, wishes)
    findings = tuple(dict.fromkeys((*(f for one in laid for f in one.findings), *calendar.findings)))
    if wishes.json:
        return Answer(out=days_json(found, laid[0].names, findings))
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=days_text(found, laid[0].names, page), notes=findings_note(findings))


def _file(calendar: "Calendar", wishes: Namespace) -> Answer:
    """Return the days as a calendar file or a drawing."""
    if wishes.ics and wishes.svg:
        raise bootstrap.WrongCall(what="--ics and --svg each stand alone", do="ask one after the other")
    if wishes.svg:
        from refettle.cli.days_svg import days_svg  # noqa: PLC0415 - only on wish

        return Answer(out=days_svg(calendar))
    if not calendar.workshop.begins:
        raise bootstrap.WrongCall(
            what="a calendar file needs the day it begins",
            do='write "begins: 2026-10-05" in the workshop file',
        )
    from refettle.cli.days_ics import days_ics  # noqa: PLC0415 - only on wish

    return Answer(out=days_ics(calendar))
