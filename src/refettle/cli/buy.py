"""``refettle buy``: one shopping list for several pieces."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.buy_json import buy_json
from refettle.cli.buy_text import buy_text
from refettle.cli.page import Page
from refettle.cli.refusal import refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting
from refettle.cli.words import count_words


def run(wishes: Namespace) -> Answer:
    """
    Return the shopping list, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a look cannot be had, so that something is missing in the list, or a file holds an error.
    """
    laid = bootstrap.lay_out_many(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    with waiting(f"Planning {count_words(len(laid), 'piece')}"):
        shopping = bootstrap.shopping(laid)
    code = int(bool(shopping.left_out))
    names = laid[0].names
    findings = tuple(dict.fromkeys(finding for one in laid for finding in one.findings))
    pieces = bootstrap.piece_names(laid)
    if wishes.json:
        return Answer(out=buy_json(pieces, shopping, laid[0].workshop, names, findings), code=code)
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=buy_text(pieces, shopping, laid[0].workshop, findings, page), code=code)
