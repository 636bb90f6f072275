"""A surface as it is now: what was done to it, and what each likely cause has done since."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from refettle.domain.piece import Piece, Surface
from refettle.domain.plan import Hit
from refettle.domain.state import AGED, Film, State
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.replay import trace
from refettle.planning.start import Start, World, start
from refettle.rules import RULES
from refettle.trouble.rank import Ranked

Believed = tuple[tuple[Ranked, float], ...]
"""Causes with their share of belief [1]."""
_CARDS = {card.id: card for card in RULES}
_GONE = 15
_NEVER_HARD = 20
_MOST_WORLDS = 4
_SOFT = frozenset({"soft-film", "softened-in-use"})


@dataclass(frozen=True, slots=True)
class Since:
    """
    A surface before, with where each world stands after what was done.

    Attributes
    ----------
    before
        The surface before.
    ends
        Per world and zone: chance of each rule met on the way [1], and the state at the end.
    """

    before: Start
    ends: tuple[tuple[tuple[dict[str, float], State], ...], ...]


def played_since(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, steps: tuple[Step, ...]
) -> Since:
    """
    Return a surface with what was done to it played in every world.

    Notes
    -----
    Rules that speak in use are asked; the state is the one before it.
    """
    before = start(know, piece, replace(surface, done=()))
    work = tuple(step for step in steps if step.verb != "use")
    whole = trace(know, before, steps, workshop.air_likely)
    till = trace(know, before, work, workshop.air_likely) if work != steps else whole
    ends = tuple(
        tuple(
            (_chances(hit for hit, _ in met.values()), state)
            for (met, _), (_, state) in zip(row, end, strict=True)
        )
        for row, end in zip(whole, till, strict=True)
    )
    return Since(before, ends)


def _chances(hits: Iterable[Hit]) -> dict[str, float]:
    """Return the highest chance of each rule met [1]."""
    met: dict[str, float] = {}
    for hit in hits:
        met[hit.rule] = max(met.get(hit.rule, 0.0), hit.chance)
    return met


def as_it_is(know: Knowledge, since: Since, causes: Believed) -> Start:
    """
    Return the surface as it is now, in every likely reading.

    Parameters
    ----------
    know
        All facts.
    since
        What was done to it.
    causes
        What may have gone wrong.

    Returns
    -------
    Start
        One world per cause and reading of what was there before, weighed by belief; equal ones are put together
        and the heaviest few kept.
    """
    worlds: list[World] = []
    for cause, share in causes:
        rule, name = cause.suspect.rule, know.fault(cause.suspect.fault).name
        for world, row in zip(since.before.worlds, since.ends, strict=True):
            fits = max((met.get(rule, 0.0) for met, _ in row), default=0.0) if rule else 1.0
            states = tuple(_now(state, cause) for _, state in row)
            weight = share * world.weight * fits
            label = f"{name}, on {world.label}" if len(since.before.worlds) > 1 else name
            worlds.append(replace(world, label=label, weight=weight, states=states, marks=frozenset()))
    merged = _told_apart(_merged(worlds))
    total = sum(world.weight for world in merged) or 1.0
    return replace(since.before, worlds=tuple(replace(w, weight=w.weight / total) for w in merged))


def _merged(worlds: list[World]) -> list[World]:
    """Return worlds with equal ones put together, the heaviest few kept."""
    together: dict[tuple[State, ...], World] = {}
    for world in worlds:
        known = together.get(world.states)
        together[world.states] = (
            world if known is None else replace(known, weight=known.weight + world.weight)
        )
    return sorted(together.values(), key=lambda world: -world.weight)[:_MOST_WORLDS]


def _told_apart(worlds: list[World]) -> list[World]:
    """Return worlds with a number behind a label that stood before, so that each has its own."""
    labels: list[str] = []
    for world in worlds:
        same = sum(label == world.label or label.startswith(f"{world.label} (") for label in labels)
        labels.append(f"{world.label} ({same + 1})" if same else world.label)
    return [replace(world, label=label) for world, label in zip(worlds, labels, strict=True)]


def _now(state: State, cause: Ranked) -> State:
    """
    Return a state with what a cause did to it.

    Notes
    -----
    Films that have dried are part of the old finish from now on. A film that stays soft for another reason than
    its air will not harden: it holds nothing, and is too soft to sand or to scrape.
    """
    card = _CARDS.get(cause.suspect.rule) or next(c for c in RULES if c.fault == cause.suspect.fault)
    changed = card.effect(state)
    soft = cause.suspect.fault in _SOFT
    last = len(changed.stack) - 1
    films = []
    for i, film in enumerate(changed.stack):
        stays = film.ripe >= 100 or film.old
        if soft and i == last:
            films.append(replace(film, hold=_GONE, old=True, ripe=_NEVER_HARD, um=max(film.um, 1)))
        else:
            films.append(_settled(film) if stays else film)
    patchy = "patchy-colour" in changed.damage and not any(f.um for f in films)
    if patchy and films:
        films[-1] = replace(films[-1], um=1, old=True, ripe=AGED)
    return replace(changed, stack=tuple(films), charged=())


def _settled(film: Film) -> Film:
    """Return a film that counts as old from now on."""
    return replace(film, old=True, ripe=AGED)
