"""Steps: what a person does to a surface, and the waits after it."""

from dataclasses import dataclass

from refettle.domain.air import Air

COAT_VERBS = frozenset(
    {"condition", "stain", "glaze", "tone", "fill_pores", "prime", "seal", "paint", "topcoat", "wax"}
)
VERBS = COAT_VERBS | frozenset(
    {
        "test", "take_off", "refit", "clean", "repair", "strip", "scrape", "rinse", "neutralise", "bleach",
        "sand", "scuff", "raise_grain", "mask", "sample", "rub_out", "revive", "air", "climate", "wait", "expose", "use",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """
    One step of a sequence.

    Attributes
    ----------
    verb
        One of `VERBS`.
    what
        What is used or meant: a class id for a coat; a cleaner, remover, wash, test, tool or damage id otherwise.
    method
        How a coat goes on: ``brush wipe pad roller spray aerosol``; the tool id for sanding and the like.
    coats
        Number of coats laid one after another [1].
    wait_between_h
        Wait between the coats of this step [h].
    wait_after_h
        Wait after the last coat or after the work [h].
    film
        ``thin``, ``normal`` or ``heavy``.
    grit
        FEPA P number; 0 when none is meant.
    how
        Further marks: ``not wiped``, ``wet``, ``dry``, ``steel wool``, ``covered``, ``slow thinner``, ``key``, ...
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
