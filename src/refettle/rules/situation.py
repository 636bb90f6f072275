"""What a rule looks at, and the few readings that rules share."""

from dataclasses import dataclass

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.state import Film, State
from refettle.domain.step import Step
from refettle.knowledge.facts import FilmFacts, WoodFacts
from refettle.knowledge.knowledge import Knowledge

Read = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """
    One step meeting one surface.

    Attributes
    ----------
    know
        All facts.
    ground
        What does not change.
    before
        State when the step begins; for the second and later coats of one step, after the coat before.
    step
        The step.
    air
        Air of the step.
    new
        Facts of the class being laid; None where no coat is laid.
    coat_no
        Number of this coat within its step, from 1; 0 where no coat is laid.
    """

    know: Knowledge
    ground: Ground
    before: State
    step: Step
    air: Air
    new: FilmFacts | None = None
    coat_no: int = 0

    @property
    def wood(self) -> WoodFacts:
        """Return the facts of the wood."""
        return self.know.wood(self.ground.wood)

    @property
    def below(self) -> Film | None:
        """Return the uppermost film before the step."""
        return self.before.top

    @property
    def keyed(self) -> bool:
        """Return whether the top was dulled with a grit that gives a key, or worn dull by use."""
        if 80 <= self.before.grit <= 400:
            return True
        below = self.below
        return below is not None and below.old and below.patchy >= 15

    @property
    def over_bare(self) -> bool:
        """Return whether the coat meets wood rather than a film."""
        return self.before.bare

    @property
    def light_paint(self) -> bool:
        """Return whether a light colour is wanted and not the wood's own: paint, or white in or over the wood."""
        white = self.before.colour in {"limed", "whitened"}
        return white or (self.ground.wish == "opaque" and self.ground.wish_depth <= 45)


def film_key(cls: str) -> str:
    """Return the subject under which facts of a class stand."""
    return f"film:{cls}"


def cure_share(know: Knowledge, film: Film) -> float:
    """Return how far a film has cured [1]: 1 = cured for use."""
    facts = know.film(film.cls)
    full = 100.0 * max(facts.cured_h, facts.recoat_from_h) / max(facts.recoat_from_h, 0.1)
    return min(1.0, film.ripe / full)


def shared_film_barrier(know: Knowledge, state: State, prop: str, old_blocks: float | None = None) -> float:
    """
    Return the share of a cause that still gets through the films on the wood.

    Parameters
    ----------
    know
        All facts.
    state
        Surface before the coat.
    prop
        Which blocking property counts, e.g. ``blocks_tannin``.
    old_blocks
        Share held back by an intact old clear film [1]; None = by the class alone.

    Returns
    -------
    float
        Share that gets through [1].
    """
    through = 1.0
    for film in state.stack:
        if film.um <= 0:
            continue
        held = float(getattr(know.film(film.cls), prop))
        if film.old:
            held = max(held, old_blocks or 0.0)
            cover = (film.hold / 100.0) * (1.0 - film.patchy / 100.0)
            through *= 1.0 - held * cover
        else:
            through *= (1.0 - held) ** max(1, film.coats)
    return through


def limited(chance: float) -> float:
    """Return a chance kept between 0 and 0.99."""
    return min(0.99, max(0.0, chance))


def ramp(value: float, low: float, high: float) -> float:
    """Return 0 at or below `low`, 1 at or above `high`, straight between; `high` may lie below `low`."""
    if high == low:
        return 1.0 if value >= high else 0.0
    share = (value - low) / (high - low)
    return min(1.0, max(0.0, share))
