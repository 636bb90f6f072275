"""``refettle foresee``: what would go wrong with the person's own sequence."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.foresee_json import foresee_json
from refettle.cli.foresee_text import foresee_text, unsound
from refettle.cli.page import Page
from refettle.cli.refusal import refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting


def run(wishes: Namespace) -> Answer:
    """
    Return what is foreseen, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a fault is likely enough on any surface.
    """
    laid = bootstrap.lay_out(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    with waiting(f"Playing your steps on {laid.piece.name}"):
        foreseen = bootstrap.foresee(laid)
    code = int(any(unsound(surface.risks) for surface in foreseen))
    if wishes.json:
        return Answer(out=foresee_json(laid.piece.name, foreseen, laid.names, laid.findings), code=code)
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=foresee_text(laid.piece.name, foreseen, laid.names, laid.findings, page), code=code)
