"""``refettle why``: why this is done to a surface, and not that."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.page import Page
from refettle.cli.refusal import findings_note, refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting
from refettle.cli.why_finishes import finishes_json, finishes_text
from refettle.cli.why_json import why_json
from refettle.cli.why_text import why_text


def run(wishes: Namespace) -> Answer:
    """
    Return the reasons for a surface's steps, as page or JSON.

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
    if wishes.finishes:
        return _finishes(laid, surface, wishes)
    with waiting(f"Asking why for {surface}"):
        said = bootstrap.why(laid, surface, wishes.not_this)
    if wishes.json:
        return Answer(
            out=why_json(laid.piece.name, surface, wishes.not_this, said, laid.names, laid.findings)
        )
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(
        out=why_text(said, laid.names, laid.workshop.currency, page), notes=findings_note(laid.findings)
    )


def _finishes(laid: bootstrap.Laid, surface: str, wishes: Namespace) -> Answer:
    """Return which finishes suit a surface."""
    if wishes.not_this:
        raise bootstrap.WrongCall(what="--finishes and --not each stand alone", do="ask one after the other")
    with waiting(f"Trying every finish on {surface}"):
        said = bootstrap.finishes(laid, surface)
    if wishes.json:
        return Answer(out=finishes_json(laid, surface, said))
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    out = finishes_text(said, laid.names, laid.workshop.currency, page)
    return Answer(out=out, notes=findings_note(laid.findings))
