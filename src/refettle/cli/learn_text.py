"""What one's own work says beside the handbook, as a page."""

from typing import Final

from refettle.cli.page import Page
from refettle.cli.words import count_words
from refettle.knowledge.knowledge import Knowledge
from refettle.learning.offsets import Offset
from refettle.learning.rates import Rate, Rates
from refettle.rules import RULES
from refettle.services.learn import Learnt

_COLUMN: Final = 34
_CARDS: Final = {card.id: card for card in RULES}
_RELIEF: Final = {"flat": "flat", "frame": "frames and panels", "carved": "carved and turned"}
_LIKE: Final = 0.05
"""Share [1] within which own work counts as the handbook says."""
_NAMED: Final = 'Name the journal in the workshop file: "journal: FILE". Plans then count with it and say so.'
_ANEW: Final = (
    'To hand it on: --json. To begin anew: "since: 2026-06-01", or "forget: [WORD]", in the journal.'
)
_FIRM: Final = 1.0
"""Standard deviations [1] from which an offset is more than chance."""


def kind_words(know: Knowledge, kind: str) -> str:
    """Return a kind of work, or a film class, as one says it."""
    head, mark, rest = kind.partition(":")
    if mark:
        return f"strip with {know.name('remover', rest)}" if head == "strip" else know.name("repair", rest)
    labour, slash, relief = kind.partition("/")
    return f"{know.name('labour', labour)}, {_RELIEF[relief]}" if slash else know.name("film", kind)


def learn_text(know: Knowledge, learnt: Learnt, page: Page) -> str:
    """
    Return the page of what is learnt.

    Parameters
    ----------
    know
        Names.
    learnt
        What a journal says.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Hours, material, drying, coats, faults; and how to use it, hand it on and begin anew.
    """
    log = learnt.log
    page.heading(f"{log.name}: what your own work says")
    entries = count_words(len(log.work) + len(log.faults), "entry", "entries")
    left = f"; {log.left_out} older ones left out" if log.left_out else ""
    page.write(f"{entries} from {count_words(learnt.pieces, 'piece')}{left}.", indent=2, hang=2)
    page.write(
        "Few entries move little: each kind leans on your other work, and that on the handbook.",
        indent=2,
        hang=2,
    )
    _rates(page, know, "Hours", learnt.hours, "of the handbook's time")
    _rates(page, know, "Material laid", learnt.litres, "of the handbook's litres")
    _rates(
        page, know, "Drying until it may be recoated", learnt.drying, "of the label's hours, in the same air"
    )
    _rates(page, know, "Coats until it covers", learnt.coats, "of those foreseen")
    _faults(page, know, learnt)
    page.heading("How it is used")
    page.write(
        'Name the journal in the workshop file: "journal: FILE". Plans then count with it and say so.',
        indent=2,
        hang=2,
    )
    page.write(
        'To hand it on: --json. To begin anew: "since: 2026-06-01", or "forget: [WORD]", in the journal.',
        indent=2,
        hang=2,
    )
    return page.text()


def _rates(page: Page, know: Knowledge, head: str, rates: Rates, of: str) -> None:
    """Write the factors of one sort."""
    if not rates.kinds:
        return
    page.heading(f"{head}: share {of}")
    for kind, rate in sorted(rates.kinds.items(), key=lambda pair: -abs(pair[1].factor - 1.0)):
        page.marked(kind_words(know, kind), _rate_words(rate, _minutes(know, kind)), indent=2, column=_COLUMN)
    page.marked("all else", _rate_words(rates.others, 0.0), indent=2, column=_COLUMN)


def _minutes(know: Knowledge, kind: str) -> float:
    """Return what the handbook says a square metre of a kind of work takes [min]; 0 for what has no such rate."""
    labour, slash, relief = kind.partition("/")
    if slash:
        return 60.0 / float(getattr(know.labour(labour), f"{relief}_m2_h"))
    head, mark, remover = kind.partition(":")
    return 60.0 * know.remover(remover).h_m2 if mark and head == "strip" else 0.0


def _rate_words(rate: Rate, minutes: float) -> str:
    """Return a factor with its width and what it stands on; of time the minutes a square metre as well."""
    likely = "as in the handbook" if abs(rate.factor - 1.0) < _LIKE else f"{100 * rate.factor:.0f} %"
    width = f"{100 * rate.low:.0f}–{100 * rate.high:.0f} %"
    own = count_words(rate.entries, "own entry", "own entries")
    stands = f"from {own}" if rate.entries else "from your other work"
    told = f"; handbook {minutes:.0f} min a m², with you {rate.factor * minutes:.0f}" if minutes else ""
    return f"{likely} ({width}), {stands}{told}"


def _faults(page: Page, know: Knowledge, learnt: Learnt) -> None:
    """Write what came of what was foreseen."""
    if not learnt.offsets:
        return
    page.heading("Faults: foreseen, and what came")
    for rule, found in sorted(learnt.offsets.items(), key=lambda pair: -abs(pair[1].offset)):
        name = know.name("fault", _CARDS[rule].fault)
        page.marked(f"{name}", f"{rule}: {_came(found)}", indent=2, column=_COLUMN)


def _came(found: Offset) -> str:
    """Return what came of one rule, and what becomes of its chances."""
    seen = f"foreseen {found.foreseen:.1f} times in {found.entries}, came {found.seen:g} times"
    if abs(found.offset) < _FIRM * found.width:
        return f"{seen}; within what chance does, its odds are moved by {100 * (2.718281828**found.offset - 1):+.0f} %"
    way = "likelier" if found.offset > 0 else "less likely"
    return f"{seen}; {way} with you, its odds times {2.718281828**found.offset:.1f}"
