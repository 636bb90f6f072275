"""Steps: what a person does to a surface, and the waits after it."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from refettle.domain.air import Air

COAT_VERBS = frozenset(
    {"condition", "stain", "glaze", "tone", "fill_pores", "prime", "seal", "paint", "topcoat", "wax"}
)
VERBS = COAT_VERBS | frozenset(
    {
        "test", "take_off", "refit", "clean", "repair", "strip", "scrape", "rinse", "neutralise", "bleach",
        "sand", "scuff", "raise_grain", "mask", "sample", "rub_out", "revive", "air", "climate", "wait",
        "expose", "use",
    }
)  # fmt: skip

EVENT_MARKS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "sun": "sun",
        "heat": "heat",
        "hot dish": "hot-dish",
        "cold": "cold",
        "freezing": "freezing",
        "damp air": "damp",
        "dry air": "dry-air",
        "storm": "wet-storm",
        "standing water": "standing-water",
        "closed": "shut",
        "dark": "dark",
        "against a wall": "wall",
        "stacked": "stacked",
        "loaded": "loaded",
        "wrapped": "wrapped",
        "freight": "freight",
        "plastic cover": "plastic-cover",
        "hands": "hands",
        "years": "years",
    }
)
"""
What a surface can meet: the person's word → the mark in `Step.how` of ``expose`` and ``use``.

``storm`` is driving rain, ``dry air`` a heated room in winter, ``closed`` faces shut on each other or away
from air, ``loaded`` things standing on it, ``hands`` a place gripped daily, ``years`` a long time in use.
"""

WORK_MARKS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "wiped": "wiped",
        "not wiped": "not wiped",
        "not thinned": "not thinned",
        "slow thinner": "slow thinner",
        "over-brushed": "over-brushed",
        "shaken": "shaken",
        "wet": "wet",
        "steel wool": "steel wool",
        "across grain": "across grain",
        "through the grits": "sequence",
        "to bare": "to bare",
        "raise grain": "raise",
        "clean dust": "clean dust",
        "hollows": "hollows",
        "pores": "pores",
        "open pores": "open pores",
        "edges": "edges",
        "one pass": "one pass",
        "thorough": "thorough",
        "flooding": "flooding",
        "soaking": "soaking",
        "iron": "iron",
        "nails": "nails",
        "squeeze-out off": "squeeze-out off",
    }
)
"""
How coats are laid and work is done: the person's word → the mark in `Step.how`.

``wiped`` excess is taken off, ``over-brushed`` worked on while it sets, ``shaken`` a tin not stirred but
shaken; ``raise grain`` damped, dried and cut again, ``clean dust`` dust taken up afterwards; ``hollows`` and
``pores`` say where one scrapes, ``open pores`` brushes them open for white, ``edges`` rubs through there on
purpose; ``one pass`` of a remover and no more; ``thorough`` washed several times; ``flooding`` runs with water,
``soaking`` left wet; ``iron`` and ``nails`` stand in the wood; ``squeeze-out off`` glue is taken off while wet.
"""

_WORDS: Final = {mark: word for words in (WORK_MARKS, EVENT_MARKS) for word, mark in words.items()}


def mark_words(how: frozenset[str]) -> tuple[str, ...]:
    """
    Return marks as the person writes them.

    Parameters
    ----------
    how
        Marks of a step.

    Returns
    -------
    tuple
        Words in the order of the alphabet; a mark of no list as it stands.
    """
    return tuple(sorted(_WORDS.get(mark, mark) for mark in how))


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """
    One step of a sequence.

    Attributes
    ----------
    verb
        One of `VERBS`.
    what
        What is used or meant: a class id for a coat; for ``expose`` and ``use`` the word for what is met; a
        cleaner, remover, wash, test, tool or damage id otherwise.
    method
        How a coat goes on: ``brush wipe pad roller spray aerosol``; the tool id for sanding and the like.
    coats
        Number of coats laid one after another, or of passes of a remover [1].
    wait_between_h
        Wait between the coats of this step [h].
    wait_after_h
        Wait after the last coat or after the work [h].
    film
        ``thin``, ``normal`` or ``heavy``.
    grit
        FEPA P number; 0 when none is meant.
    how
        Further marks: values of `WORK_MARKS` and, of ``expose`` and ``use``, of `EVENT_MARKS`.
    air
        Air of this step where it differs from the workshop's.
    """

    verb: str
    what: str = ""
    method: str = ""
    coats: int = 1
    wait_between_h: float = 0.0
    wait_after_h: float = 0.0
    film: str = "normal"
    grit: int = 0
    how: frozenset[str] = frozenset()
    air: Air | None = None

    @property
    def is_coat(self) -> bool:
        """Return whether the step lays material on the surface."""
        return self.verb in COAT_VERBS
