"""The card of a fault rule: what it says, where it shows, and on what it stands."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import exp, log
from typing import Literal

from refettle.domain.plan import Hit
from refettle.domain.state import Film, State, changed
from refettle.rules.situation import Read, Situation, limited

Level = Literal["coat", "work", "expose", "use"]
Onset = Literal["immediate", "hours", "days", "weeks", "months", "years"]
_NOTICED = 60
_LIFTED = 15
_MUSTY = 40
_COME_UP = 90
_FIBRES_THROUGH = 50
"""Share of a film that standing fibres go through [%]; judgement."""
Judge = Callable[[Situation], "Cause | None"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """
    What a judge answers when its cause is met.

    Attributes
    ----------
    chance
        Chance that the fault shows [1].
    why
        One sentence without full stop.
    reads
        Facts read.
    cause
        Finer name where one rule knows several causes; empty = the rule's id.
    """

    chance: float
    why: str
    reads: tuple[Read, ...] = ()
    cause: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """
    One rule.

    Attributes
    ----------
    id
        Permanent id in words.
    fault
        Fault id.
    mechanism
        Name of the mechanism it belongs to.
    levels
        Events at which it is asked.
    effect
        What the fault does to a surface.
    layer
        Where it sits: ``wood``, ``below``, ``between``, ``film``, ``on top``.
    onset
        Earliest and latest time at which it usually shows.
    signs
        What the person sees.
    sources
        Keys of sources.
    judge
        Pure function that answers with a cause or None.
    """

    id: str
    fault: str
    mechanism: str
    levels: tuple[Level, ...]
    effect: Callable[[State], State]
    layer: str
    onset: tuple[Onset, Onset]
    signs: tuple[str, ...]
    sources: tuple[str, ...]
    judge: Judge

    def ask(self, situation: Situation) -> Hit | None:
        """Return the hit of this rule in a situation, or None where it stays silent."""
        cause = self.judge(situation)
        if cause is None or cause.chance < 0.005:
            return None
        offset = situation.know.offsets.get(self.id, 0.0)
        return Hit(
            fault=self.fault,
            rule=self.id,
            cause=cause.cause or self.id,
            chance=limited(shifted(cause.chance, offset)),
            reads=cause.reads,
            why=cause.why,
        )


def shifted(chance: float, offset: float) -> float:
    """Return a chance with an offset on its log-odds [1]; what is impossible or sure stays so."""
    if offset == 0.0 or chance <= 0.0 or chance >= 1.0:
        return chance
    return 1.0 / (1.0 + exp(-(log(chance / (1.0 - chance)) + offset)))


def _change_top(state: State, **changes: object) -> State:
    """Return the state with its uppermost film changed."""
    if not state.stack:
        return state
    top: Film = changed(state.stack[-1], **changes)
    return replace(state, stack=(*state.stack[:-1], top))


def film_lets_go(state: State) -> State:
    """Return the state with its top film flaking: it must come off before anything is laid on it."""
    return _change_top(state, hold=_LIFTED)


def films_let_go(state: State) -> State:
    """Return the state with its top film lifted together with the one below."""
    lifted = tuple(replace(film, hold=_LIFTED) for film in state.stack[-2:])
    return replace(state, stack=(*state.stack[: -len(lifted)], *lifted)) if lifted else state


def film_stays_soft(state: State) -> State:
    """Return the state with its top film soft."""
    return _change_top(state, ripe=20)


def film_is_marked(state: State) -> State:
    """Return the state with a flaw in the top film that sanding level and a further coat mend."""
    return replace(state, damage=state.damage | {"worn-film"})


def colour_is_wrong(state: State) -> State:
    """Return the state with a colour that must be sealed in or taken back."""
    return replace(state, damage=state.damage | {"worn-film"}, raised=state.raised)


def colour_has_come_up(state: State) -> State:
    """Return the state with colour in the film itself: the next coat of the same draws it up again."""
    return replace(state, damage=state.damage | {"worn-film"}).with_cause("bled-colour", _COME_UP)


def colour_is_patchy(state: State) -> State:
    """Return the state with colour that shows uneven under anything clear."""
    return replace(state, damage=state.damage | {"patchy-colour"})


def film_is_yellowed(state: State) -> State:
    """Return the state with a film that has gone yellow for good."""
    return replace(state, damage=state.damage | {"yellowed-film"})


def film_is_cracked(state: State) -> State:
    """Return the state with a crazed top film."""
    return replace(_change_top(state, hold=60), damage=state.damage | {"crazed-film"})


def wood_is_stained(state: State) -> State:
    """Return the state with a mark in the wood."""
    return replace(state, damage=state.damage | {"black-ring"})


def wood_is_dark(state: State) -> State:
    """Return the state with wood darkened by alkali."""
    return replace(state, damage=state.damage | {"darkened-wood"})


def wood_is_rough(state: State) -> State:
    """Return the state with fibres that stand through its film: cut off, they leave the wood open there."""
    through = max((film.patchy for film in state.stack[-1:]), default=0)
    return replace(_change_top(state, patchy=max(through, _FIBRES_THROUGH)), raised=True)


def veneer_is_loose(state: State) -> State:
    """Return the state with loose veneer."""
    return replace(state, damage=state.damage | {"lifted-veneer"})


def wood_is_cut_through(state: State) -> State:
    """Return the state with the face veneer or edge cut through."""
    return replace(state, wood_um=0, damage=state.damage | {"missing-veneer"})


def film_has_ring(state: State) -> State:
    """Return the state with a white ring in the film."""
    return replace(state, damage=state.damage | {"white-ring"})


def smell_is_there(state: State) -> State:
    """Return the state with a smell in the wood as strong as one that is noticed."""
    known = [name for name, _ in state.in_wood if name in {"smoke", "rodent", "musty"}] or ["musty"]
    for name in known:
        state = state.with_cause(name, max(_NOTICED, round(100 * state.strength(name))))
    return state


def mould_is_there(state: State) -> State:
    """Return the state with mould on it, its smell in the wood, and what feeds it."""
    musty = max(_MUSTY, round(100 * state.strength("musty")))
    return replace(state.with_soil("mould", 80).with_cause("musty", musty), damp=max(state.damp, 4))


def nothing_changes(state: State) -> State:
    """Return the state as it was: the fault does not sit in the surface."""
    return state
