"""What ``--help`` says: plain pages that are shown before anything else is loaded, `typing` included."""

GENERAL = """\
Refettle plans the refinishing of worn wooden furniture: what holds, in what
order, and why.

  refettle plan FILE              what to do with the piece, and what it takes
  refettle foresee FILE           what would go wrong with your own sequence
  refettle diagnose FILE SURFACE  something looks wrong: what may be behind it
  refettle mend FILE SURFACE      how to put it right from where it stands
  refettle why FILE SURFACE       why this is done to a surface, and not that
  refettle buy FILE...            one shopping list for several pieces
  refettle days FILE...           what to do on which evening, for all of them
  refettle facts WORD             what is known of a wood, a finish, a fault ...
  refettle facts white            why white, why craters, why it peels; veneer?
  refettle facts COAT --over COAT what goes over what
  refettle facts --air "8 C, 80 %"  is today too cold; with a COAT: how long
  refettle learn FILE             what your own work says beside the handbook
  refettle calc SUM VALUE...      wood moisture, dew, film, litres, grits
  refettle new FILE               a short piece file to begin with

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
refettle why FILE SURFACE [--not STEP|LOOK] [--finishes] [--section]
             [--svg] [--workshop FILE]
                         [--json]

Says why a surface gets the steps it gets, and what that rests on; whether a
step is needed; which finish suits.

  FILE              the piece file
  SURFACE           name of a surface, as the plan prints it
  --not STEP|LOOK   a step, class, remover or look you would have expected, such
                    as strip, "oil varnish" or opaque: why it was not taken;
                    for a step in the plan: whether one can do without it
  --section         the surface cut across its relief: what each tool reaches
  --svg             the same as a drawing, to standard output
  --finishes        every finish that can be had here, best first: what each
                    takes, what it stands, what may go wrong
{_SHARED}\

Exit 0: answered.  1: an error in a file.  2: wrong call.
"""

BUY = f"""\
refettle buy FILE... [--workshop FILE] [--json]

One shopping list for several pieces: litres are added up first, then set
against the shelf and rounded up to tins once. Says which piece needs how much,
what it costs, what will be left, and where leftovers and rags go.

  FILE...           piece files, one or more; a file named twice counts twice;
                    or a workshop file alone: all the pieces that it names
{_SHARED}\

Exit 0: all is in the list.  1: an error in a file, or a look that cannot be
had, so that nothing is counted for it.  2: wrong call.
"""

DAYS = f"""\
refettle days FILE... [--workshop FILE] [--keep DAYS] [--ics] [--svg]
              [--json]

Lays several pieces into your free hours: one pair of hands, set-up once for all
that use the same, no dust while anything is tacky, the two faces of a door one
after the other. Whose turn it is, is tried out and sought: least late, then the
fewest evenings. Ctrl-C while it seeks keeps the best so far. Says when each
piece is done and what goes on drying. Where the workshop file tells the air by
the hour, waits and coats follow it.

  FILE...           piece files, one or more; or a workshop file alone: all the
                    pieces that it names
{_SHARED}\
  --keep DAYS       days laid earlier, as --json wrote them: after an evening
                    lost, a step late or other air, nothing moves that need not
  --ics             a calendar file, to standard output: > days.ics
  --svg             a drawing: the air, and the work that hangs on it

Exit 0: laid.  1: an error in a file.  2: wrong call.
"""

FACTS = """\
refettle facts [WORD [PROPERTY]] [--json]
refettle facts [COAT] --over COAT [--json]
refettle facts [COAT] --air AIR [--json]

Says what is known of a thing and where it is known from: each property with its
value, range, unit and conditions, what it rests on, and what others say. Of a
fault, or of what you see (white, peels, sticky): what leads to it, how to tell
the causes apart, what avoids and what mends it. Of tests: which, in what order.

  WORD              a wood, class, contaminant, cleaner, remover, tool, test,
                    damage, repair, fault, build ..., by any of its names; or a
                    kind, such as woods: all its names; none: all kinds
  PROPERTY          one property, such as tannin or "recoat from"; with a kind,
                    that property of all its things, highest first
  --over COAT       whether COAT holds over this one; without COAT: which do
  --air AIR         may COAT be laid in this air, and the hours to each stage;
                    without COAT: which may. "8 C, 80 %"; "46 F, 80 %"
  --json            everything as JSON, units in the names
  --help            this page

Exit 0: answered.  2: nothing is called so; nearest words are named.
"""

CALC = """\
refettle calc SUM VALUE... [--json]

Small sums of the bench, each with its formula and where that is from.

  calc moisture AIR             what wood settles to: calc moisture "18 C, 65 %"
  calc settle THICKNESS         how long a board takes to get there: "20 mm"
  calc dew AIR                  the dew point, and whether a coat may be laid
  calc film WET SOLIDS          the dry film:  calc film "75 um" "34 %"
  calc cover AREA COATS WET SOLIDS
                                the litres:  calc cover "2 m2" 2 "75 um" "34 %"
  calc grits FIRST LAST         a sequence that leaves no scratch: P80 P220
  --json            the same as JSON, units in the names
  --help            this page

How long a coat takes in an air: see "refettle facts".

Exit 0: answered.  2: wrong call.
"""

NEW = """\
refettle new FILE [--form FORM] [--size SIZE] [--wood WORD] [--finish WORD]
                  [--look WORD] [--era WORD] [--json]

Writes a short piece file, with a comment beside each entry that says what it
may be. On a terminal, without options, it asks five questions. What is not said
is written as usual and marked. A file that is there already is left alone.

  FILE              the file to write; the piece is named after it
  --form FORM       table, "chest of drawers" ...; list = surfaces you measured
  --size SIZE       width x depth x height over all: "120 x 60 x 75 cm"
  --wood WORD       oak, pine ...; hardwood or softwood where not known
  --finish WORD     what is on it now: bare, shellac, "unknown paint" ...;
                    "don't know": the file names the spot tests that tell
  --look WORD       keep, natural, stained, oiled, waxed, "opaque white" ...
  --era WORD        1930s, "about 1900", 1925-1940
  --json            what was written, as JSON
  --help            this page

Exit 0: written.  2: wrong call, nothing written.
"""

DIAGNOSE = f"""\
refettle diagnose FILE SURFACE [--says TEXT] [--yes SIGN] [--no SIGN]
                  [--when TIME] [--ask] [--workshop FILE] [--json]

Says what may be behind trouble, likeliest first, by what was done ("done" in
the piece file, else "intend") and by what you see; and what to look at or try
next, because it tells most. "Something else" is always in the list.

  FILE              the piece file, best with "done"
  SURFACE           name of a surface, as the plan prints it
  --says TEXT       what you see, in your own words; it shows what it understood
  --yes SIGN        this is there, such as haze; may be repeated
  --no SIGN         this is not there; may be repeated
  --when TIME       when it showed: "at once", hours, days, weeks, months, years
  --ask             ask the questions that tell most, one after the other
{_SHARED}\

Exit 0: answered.  1: an error in a file.  2: wrong call.
"""

MEND = f"""\
refettle mend FILE SURFACE [--says TEXT] [--yes SIGN] [--no SIGN] [--when TIME]
              [--fault FAULT] [--workshop FILE] [--json]

Says how to put trouble right from the state the surface is really in: leave it,
wait in the warm, mend the film, seal it, go back to the wood, another look; the
way that costs least with all counted first. What it means for other surfaces
and for the shelf.

  FILE              the piece file, best with "done"
  SURFACE           name of a surface, as the plan prints it
  --says TEXT       what you see, in your own words
  --yes SIGN        this is there; may be repeated
  --no SIGN         this is not there; may be repeated
  --when TIME       when it showed: "at once", hours, days, weeks, months, years
  --fault FAULT     you know what it is: bleed-through, peeling ...
{_SHARED}\

Exit 0: there is a way.  1: an error in a file, or nothing that is known here.
2: wrong call.
"""

LEARN = f"""\
refettle learn FILE [--workshop FILE] [--json]

Says what your own work shows beside the handbook: hours by kind of work, what
you lay, how it dries with you, coats until it covers, faults that came and that
did not. Each leans on the handbook until there are entries enough.

  FILE              the journal: entries of work and of faults
{_SHARED}\

Exit 0: answered.  1: an error in a file.  2: wrong call.
"""

PAGES = {
    "plan": PLAN,
    "foresee": FORESEE,
    "diagnose": DIAGNOSE,
    "mend": MEND,
    "learn": LEARN,
    "why": WHY,
    "buy": BUY,
    "days": DAYS,
    "facts": FACTS,
    "calc": CALC,
    "new": NEW,
}


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
