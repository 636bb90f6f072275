"""``refettle learn``: what one's own work says beside the handbook."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.learn_json import learn_json
from refettle.cli.learn_text import learn_text
from refettle.cli.page import Page
from refettle.cli.refusal import findings_note, refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width


def run(wishes: Namespace) -> Answer:
    """
    Return what a journal says, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a file holds an error.
    """
    found = bootstrap.learnt_from(wishes.file, wishes.workshop)
    if isinstance(found, bootstrap.Refused):
        return refusal(found, as_json=wishes.json)
    know, learnt, findings = found
    if wishes.json:
        return Answer(out=learn_json(know, learnt, findings))
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    return Answer(out=learn_text(know, learnt, page), notes=findings_note(findings))
