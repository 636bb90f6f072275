"""What ``--help`` says: plain pages that are shown before anything else is loaded, `typing` included."""

GENERAL = """\
Refettle plans the refinishing of worn wooden furniture: what holds, in what
order, and why.

  refettle plan FILE              what to do with the piece, and what it takes
  refettle foresee FILE           what would go wrong with your own sequence
  refettle why FILE SURFACE       why this is done to a surface, and not that

FILE is a piece file: a few lines on wood, old finish and the look you want.
More on one command:  refettle plan --help
Which version:        refettle --version

Exit 0: fine.  1: problems found, or no way to a look.  2: wrong call.
"""

_SHARED = """\
  --workshop FILE   tools, air, free hours, shelf and prices; without it a usual
                    workshop is taken, and the page says what was assumed
  --json            everything as JSON, units in the names
  --help            this page
"""

PLAN = f"""\
refettle plan FILE [--workshop FILE] [--short] [--all] [--json]

Says what to do with a piece: the eight lines that decide, then each surface
with its steps, risks and other ways, what to buy, the days, care, money.

  FILE              the piece file
{_SHARED}\
  --short           the eight lines only
  --all             every value that was assumed and every small risk

Exit 0: there is a plan.  1: an error in a file, or a look that cannot be had.
2: wrong call.
"""

FORESEE = f"""\
refettle foresee FILE [--workshop FILE] [--json]

Runs the sequence that stands under "intend" in the piece file through all that
the old finish may be, says what would go wrong, at which step and why, and
looks for the smallest change that makes it sound.

  FILE              the piece file, with "intend"
{_SHARED}\

Exit 0: sound.  1: a fault is at least about one in three, or an error in a
file.  2: wrong call, or nothing is intended.
"""

WHY = f"""\
refettle why FILE SURFACE [--not STEP|LOOK] [--workshop FILE] [--json]

Says why a surface gets the steps it gets, and what that rests on.

  FILE              the piece file
  SURFACE           name of a surface, as the plan prints it
  --not STEP|LOOK   a step, class, remover or look you would have expected, such
                    as strip, "oil varnish" or opaque: why it was not taken
{_SHARED}\

Exit 0: answered.  1: an error in a file.  2: wrong call.
"""

PAGES = {"plan": PLAN, "foresee": FORESEE, "why": WHY}


def asked(given: list[str]) -> str | None:
    """
    Return the page that a command line asks for.

    Parameters
    ----------
    given
        Words of the command line.

    Returns
    -------
    str or None
        A help page; also for no words at all. None where a command is to run.
    """
    if not given:
        return GENERAL
    before = list(given[: given.index("--")]) if "--" in given else list(given)
    if "--help" not in before and "-h" not in before:
        return None
    return PAGES.get(given[0], GENERAL)
