"""What goes over what: the rules run along one coat laid over another, fresh, cured and old."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import prod
from typing import Final

from refettle.domain.air import STANDARD_AIR
from refettle.domain.piece import OldLayer, Piece, Surface
from refettle.domain.plan import Hit
from refettle.domain.state import State
from refettle.domain.step import COAT_VERBS, Step
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.engine import play
from refettle.planning.start import start
from refettle.rules import RULES

BARRIER: Final = "shellac-dewaxed"
HOLDS: Final = 0.15
"""Chance [1] up to which one coat is said to hold on another; judgement, half of what `foresee` calls sound."""
STATES: Final = ("fresh", "cured", "old")
WAYS: Final = ("as it is", "scuffed", "barrier")
_MEET: Final = frozenset(card.id for card in RULES if card.layer in {"between", "below"})
_ORDER: Final = (
    "topcoat",
    "paint",
    "prime",
    "seal",
    "wax",
    "stain",
    "glaze",
    "tone",
    "fill_pores",
    "condition",
)
_KEY: Final = Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"clean dust"}))
_STANDARD_WOOD: Final = "maple"
_LEAST: Final = 0.03
_SPARE: Final = 1.1


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """
    One coat laid over another in one state and one way.

    Attributes
    ----------
    state
        One of `STATES`: at its recoat time, cured, an old film.
    way
        One of `WAYS`: as it is, scuffed, over a barrier of dewaxed shellac on the scuffed film.
    hits
        What may go wrong where they meet, likeliest first.
    """

    state: str
    way: str
    hits: tuple[Hit, ...]

    @property
    def chance(self) -> float:
        """Return the chance that something goes wrong where they meet [1]."""
        return 1.0 - prod(1.0 - hit.chance for hit in self.hits)

    @property
    def holds(self) -> bool:
        """Return whether it is said to hold."""
        return self.chance <= HOLDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """
    One coat over another.

    Attributes
    ----------
    upper, lower
        Ids of the classes.
    meetings
        Every state in every way.
    """

    upper: str
    lower: str
    meetings: tuple[Meeting, ...]

    def best(self, state: str) -> Meeting:
        """Return the plainest way that holds in a state, else the one that fails least."""
        ways = [meeting for meeting in self.meetings if meeting.state == state]
        return next((way for way in ways if way.holds), min(ways, key=lambda way: way.chance))

    def at(self, state: str, way: str) -> Meeting:
        """Return one meeting; KeyError where a class is its own barrier."""
        for meeting in self.meetings:
            if (meeting.state, meeting.way) == (state, way):
                return meeting
        raise KeyError(way)

    @property
    def states(self) -> tuple[str, ...]:
        """Return the states that the lower film can be in."""
        return tuple(dict.fromkeys(meeting.state for meeting in self.meetings))

    @property
    def trouble(self) -> float:
        """Return how much stands against it [1]: plainer ways first, then less chance."""
        best = [self.best(state) for state in self.states]
        steps = sum(WAYS.index(way.way) if way.holds else len(WAYS) for way in best)
        return (steps + sum(way.chance for way in best) / 10.0) / len(best)


def usual_coats(know: Knowledge) -> tuple[str, ...]:
    """Return the classes that one lays at home: no old finishes, none for trained hands alone."""
    return tuple(
        cls
        for cls in know.ids("film")
        if set(know.film(cls).role) & COAT_VERBS
        and "old" not in know.film(cls).role
        and not know.film(cls).trade_only
    )


def coat_step(know: Knowledge, cls: str, *, coats: int = 1, wait_h: float | None = None) -> Step:
    """
    Return the step that lays a class as it is usually laid.

    Parameters
    ----------
    know
        All facts.
    cls
        Id of the class.
    coats
        Number of coats [1].
    wait_h
        Wait after each [h]; None = its recoat time and a little more.

    Returns
    -------
    Step
        Brushed, wiped or sprayed, as its first way says; the excess taken off where that is due.
    """
    facts = know.film(cls)
    dry = _SPARE * facts.recoat_from_h
    return Step(
        verb=next((verb for verb in _ORDER if verb in facts.role), "topcoat"),
        what=cls,
        method="brush" if "brush" in facts.methods else next(iter(facts.methods), "brush"),
        coats=coats,
        wait_between_h=dry,
        wait_after_h=dry if wait_h is None else wait_h,
        how=frozenset({"wiped"}) if facts.wiped_off else frozenset(),
    )


def one_over_other(know: Knowledge, upper: str, lower: str) -> Pair:
    """
    Return how one class holds over another.

    Parameters
    ----------
    know
        All facts.
    upper, lower
        Ids of the classes.

    Returns
    -------
    Pair
        Nine meetings at most: three states of the lower film in three ways.

    Notes
    -----
    Played on flat, clean, sound wood with little colour and small pores, at 20 °C and 50 %. What the coat would
    meet on the bare wood too is left out: it has nothing to do with what lies below.
    """
    meetings = []
    ways = WAYS[:2] if BARRIER in {upper, lower} else WAYS
    alone = {hit.rule: hit.chance for hit in _hits(know, _bare(), (), upper)}
    for hit in _hits(know, _bare(), (), BARRIER):
        alone[hit.rule] = max(hit.chance, alone.get(hit.rule, 0.0))
    for state in _states(know.film(lower)):
        surface, before = _laid(know, lower, state)
        for way in ways:
            hits = [
                hit
                for hit in _hits(know, surface, before, upper, _prepared(know, way, state))
                if hit.chance >= _LEAST
                and (hit.rule in _MEET or hit.chance > alone.get(hit.rule, 0.0) + _LEAST)
            ]
            hits.sort(key=lambda hit: -hit.chance)
            meetings.append(Meeting(state=state, way=way, hits=tuple(hits)))
    return Pair(upper=upper, lower=lower, meetings=tuple(meetings))


def all_over(know: Knowledge, lower: str, uppers: Iterable[str] | None = None) -> tuple[Pair, ...]:
    """Return how the usual coats hold over a class, best first."""
    wanted = usual_coats(know) if uppers is None else uppers
    return tuple(
        sorted((one_over_other(know, upper, lower) for upper in wanted), key=lambda pair: pair.trouble)
    )


def _bare() -> Surface:
    """Return the standard surface without a film."""
    return Surface(name="face", part="face", area_m2=1.0, wood=_STANDARD_WOOD, orientation="up")


def _laid(know: Knowledge, lower: str, state: str) -> tuple[Surface, tuple[Step, ...]]:
    """Return the standard surface and the steps that bring the lower film to a state."""
    facts: FilmFacts = know.film(lower)
    coats = max(1, round(facts.coats))
    bare = _bare()
    if state == "old":
        return replace(bare, layers=(OldLayer(guesses=((lower, 1.0),), coats=coats),)), ()
    wait_h = (
        None if state == "fresh" else max(facts.cured_h, facts.recoat_until_h, _SPARE * facts.recoat_from_h)
    )
    return bare, (coat_step(know, lower, coats=coats, wait_h=wait_h),)


def _states(facts: FilmFacts) -> tuple[str, ...]:
    """Return the states a lower film can be in: old finishes are old, a colour in the wood is no old film."""
    if "old" in facts.role or facts.family == "foil":
        return ("old",)
    return STATES if facts.dry_um > 0 else STATES[:2]


def _prepared(know: Knowledge, way: str, state: str) -> tuple[Step, ...]:
    """Return the steps between the two coats; a fresh coat takes the barrier without a key."""
    if way == "as it is":
        return ()
    if way == "scuffed":
        return (_KEY,)
    barrier = replace(coat_step(know, BARRIER), verb="seal")
    return (barrier,) if state == "fresh" else (_KEY, barrier)


def _hits(
    know: Knowledge, surface: Surface, before: tuple[Step, ...], upper: str, between: tuple[Step, ...] = ()
) -> list[Hit]:
    """Return what laying a coat, and the steps just before it, meet; the strongest of each rule."""
    begin = start(know, Piece(name="standard", form="list", surfaces=(surface,)), surface)
    ground = begin.grounds[0]
    state: State = begin.worlds[0].states[0]
    strongest: dict[str, Hit] = {}
    for number, step in enumerate((*before, *between, coat_step(know, upper))):
        state, hits = play(know, ground, state, step, STANDARD_AIR)
        for hit in hits if number >= len(before) else ():
            if hit.rule not in strongest or hit.chance > strongest[hit.rule].chance:
                strongest[hit.rule] = hit
    return list(strongest.values())
