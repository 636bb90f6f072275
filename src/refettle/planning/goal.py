"""When a look is reached, and what is left to be desired."""

from refettle.domain.ground import Ground
from refettle.domain.piece import Look
from refettle.domain.state import State
from refettle.knowledge.knowledge import Knowledge
from refettle.rules.situation import shared_film_barrier
from refettle.rules.use import OLD_FILM_HOLDS, SMELLS

_FLAW_MONEY = 60.0
OPEN_PORES = 0.3
"""Openness of pores [1] from which they hold liming white; judgement."""
_SMELL_LEFT = 0.15
"""Strength of a smell [1] that is taken for none; judgement."""
_SHOWN_THROUGH = frozenset({"natural", "stained", "waxed"})
"""Looks in which one sees where a film is gone."""
_OF_FILM = frozenset({"worn-film", "scratches", "crazed-film"})


def out_of_reach(know: Knowledge, ground: Ground, look: Look) -> bool:
    """Return whether no step whatever can bring the look: there is no wood face to show, or no pore for the white."""
    clear = look.base not in {"keep", "opaque", "odour-free", "bare"}
    facts = know.wood(ground.wood)
    return (clear and not facts.shows_wood) or (look.kind == "limed" and facts.open_pores < OPEN_PORES)


def reached(know: Knowledge, ground: Ground, look: Look, state: State) -> bool:
    """
    Return whether a state shows the look that is wanted.

    Parameters
    ----------
    know
        All facts.
    ground
        Wood and zone.
    look
        The look.
    state
        State at the end.

    Returns
    -------
    bool
        Hollows are judged by what the eye expects of them: old paint left there is a fault that the
        rules charge, not a look missed. Oil renews oil: an old finish that lies in the wood may stay under
        a fresh one (common practice), a film may not.
    """
    films = [f for f in state.stack if f.um > 0]
    new = [f for f in state.stack if not f.old]
    old_opaque = any(f.old and know.film(f.cls).opaque and f.um > 2 for f in films)
    if look.kind == "keep":
        return not any(know.film(f.cls).opaque for f in new)
    if look.kind == "odour-free":
        return _smell_held(know, state)
    if look.kind == "antiqued" and not _glazed(know, state):
        return False
    if look.base == "opaque":
        return state.colour == "opaque" and any(know.film(f.cls).opaque for f in new)
    if look.kind != "bare" and not know.wood(ground.wood).shows_wood:
        return False
    if ground.zone != "recess" and (old_opaque or state.colour == "opaque"):
        return False
    if look.kind == "bare":
        return not films
    return _clear_reached(know, ground, look, state)


def _glazed(know: Knowledge, state: State) -> bool:
    """Return whether a glaze lies over fresh paint and a clear coat over the glaze."""
    roles = [know.film(film.cls).role for film in state.stack if not film.old]
    glaze = [number for number, role in enumerate(roles) if "glaze" in role]
    return bool(glaze) and glaze[-1] < len(roles) - 1


def _smell_held(know: Knowledge, state: State) -> bool:
    """Return whether what smells in the wood is out of it or behind films that hold most of it back."""
    through = shared_film_barrier(know, state, "blocks_smoke", OLD_FILM_HOLDS)
    return all(state.strength(cause) * through <= _SMELL_LEFT for cause in SMELLS)


def _clear_reached(know: Knowledge, ground: Ground, look: Look, state: State) -> bool:
    """Return whether a clear look is reached."""
    top = state.top
    if top is None:
        return False
    facts = know.film(top.cls)
    wish = look.depth
    own = round(100 * (1.0 - know.wood(ground.wood).lightness))
    if look.kind == "bleached":
        return state.colour in {"wood", "old"} and state.depth <= max(5, own - 12)
    if look.kind == "natural":
        if state.colour in {"stained", "dyed", "limed", "whitened"}:
            return False
        return wish is None or state.depth <= max(wish, own) + 12
    if look.kind in {"limed", "whitewashed"}:
        return state.colour == {"limed": "limed", "whitewashed": "whitened"}[look.kind]
    if look.kind == "dyed" and state.colour != "dyed":
        return False
    if look.base == "stained":
        return wish is None or state.depth >= wish - 15
    if look.kind == "oiled":
        return (
            facts.needs_bare
            and (facts.cure_oxidative > 0.5 or facts.for_use == "food")
            and not any(f.old and f.um > 2 and not know.film(f.cls).needs_bare for f in state.stack)
        )
    if look.kind == "waxed":
        return facts.family == "wax"
    return True


def flaws(know: Knowledge, look: Look, state: State, area_m2: float) -> float:
    """
    Return what flaws left at the end take off the worth of the surface [money].

    Notes
    -----
    Each damage left counts by how much it offends under this look; judgement, docs/why/cost.md.
    """
    size = min(1.0, 0.35 + area_m2)
    total = sum(offence(know, look, state, name) for name in state.damage) * _FLAW_MONEY * size
    if look.base in _SHOWN_THROUGH:
        total += _bare_in_places(know, state) * _FLAW_MONEY * size
    if look.kind == "keep":
        total += 0.15 * _FLAW_MONEY * sum(p for _, p in state.on_top) / 100.0 * size
    return total


def _bare_in_places(know: Knowledge, state: State) -> float:
    """Return the share of an old film that is gone and that nothing fresh covers [1]; oil that lies in the wood is none."""
    top = state.top
    if top is None or not top.old or know.film(top.cls).needs_bare:
        return 0.0
    return top.patchy / 100.0


def offence(know: Knowledge, look: Look, state: State, damage: str) -> float:
    """Return how much a damage that is left offends under a look [1]."""
    facts = know.damage(damage)
    shows = facts.shows_opaque if look.base == "opaque" else facts.shows_clear
    return 0.1 * shows if damage in _OF_FILM and _film_renewed(know, state, damage) else shows


def _film_renewed(know: Knowledge, state: State, name: str) -> bool:
    """Return whether a fresh film has hidden a worn or scratched one."""
    fresh = sum(f.um for f in state.stack if not f.old)
    if name == "crazed-film":
        return not any(f.old and f.um > 2 for f in state.stack)
    return fresh >= 15 and not any(
        know.film(f.cls).family == "wax" for f in state.stack[-1:] if len(state.stack) < 2
    )


def flaws_at_least(know: Knowledge, look: Look, state: State, area_m2: float) -> float:
    """Return what the damage left once all mending is done takes off the worth at the least [money]."""
    size = min(1.0, 0.35 + area_m2)
    total = 0.0
    for name in state.damage:
        facts = know.damage(name)
        shows = facts.shows_opaque if look.base == "opaque" else facts.shows_clear
        total += (0.1 if name in _OF_FILM else 1.0) * shows * _FLAW_MONEY * size
    return total
