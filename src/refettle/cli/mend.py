"""``refettle mend``: how to put right what went wrong."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.mend_json import mend_json
from refettle.cli.mend_text import mend_text
from refettle.cli.page import Page
from refettle.cli.refusal import refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting
from refettle.cli.trouble_words import said_in


def run(wishes: Namespace) -> Answer:
    """
    Return the ways to put trouble right, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a file holds an error, or nothing is known that could be mended.
    """
    laid = bootstrap.lay_out(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    surface = bootstrap.surface_named(laid.piece, wishes.surface, laid.know)
    with waiting(f"Looking for ways to mend {surface}"):
        mended = bootstrap.mend(laid, surface, said_in(wishes), wishes.fault or "")
    code = 0 if mended.right.mends else 1
    if wishes.json:
        return Answer(out=mend_json(laid, mended), code=code)
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=mend_text(laid, mended, page), code=code)
