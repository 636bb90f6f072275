"""``refettle plan``: what to do with a piece."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.cli.page import Page
from refettle.cli.plan_json import plan_json
from refettle.cli.plan_text import plan_text
from refettle.cli.refusal import findings_note, refusal
from refettle.cli.terminal import Answer, bold_wanted, page_width, waiting


def run(wishes: Namespace) -> Answer:
    """
    Return the plan of a piece as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 1 where a look cannot be had or a finding is an error.
    """
    laid = bootstrap.lay_out(wishes.file, wishes.workshop)
    if isinstance(laid, bootstrap.Refused):
        return refusal(laid, as_json=wishes.json)
    with waiting(f"Planning {laid.piece.name}"):
        plan = bootstrap.plan(laid)
    impossible = any(group.route is None for group in plan.groups)
    code = int(impossible or any(finding.level == "error" for finding in plan.findings))
    if wishes.json:
        return Answer(out=plan_json(plan, laid.names), code=code)
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    text = plan_text(plan, laid.names, page, short=wishes.short, everything=wishes.all)
    return Answer(out=text, notes=findings_note(plan.findings) if wishes.short else "", code=code)
