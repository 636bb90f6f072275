"""How to mend what went wrong: the same search, from the surface as it is now."""

from dataclasses import dataclass, replace

from refettle.domain.air import Air
from refettle.domain.piece import Look, Piece, Surface, Workshop
from refettle.domain.plan import Route
from refettle.domain.state import AGED, Film, State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.engine import play
from refettle.planning.offers import Menu
from refettle.planning.reasons import make_route
from refettle.planning.replay import trace
from refettle.planning.search import Bench, Found, Search
from refettle.planning.start import Start, World, relooked, start
from refettle.rules import RULES
from refettle.services.trouble import Diagnosis
from refettle.trouble.rank import Ranked

_CARDS = {card.id: card for card in RULES}
_LEAST = 0.08
_FEW = 4
_MOST = 150
_MOST_WORLDS = 4
_OTHER_COAT = 12.0
"""What a finish unlike that of its neighbours takes off the worth [money/m²]; judgement."""
_WARM = Air(temp_c=21.0, rh=0.5)
_GONE = 15
DEPTHS = ("leave", "wait", "film", "seal", "wood", "look")
"""How deep a mend goes: nothing; time and warmth; the film is levelled or coated again; a barrier first; to the
wood; another look."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mend:
    """
    One way to put it right.

    Attributes
    ----------
    name
        What it is, in plain words.
    depth
        One of `DEPTHS`.
    route
        The steps with costs and risks; None where nothing is done.
    cost
        What it costs in all, faults that may follow included [money].
    """

    name: str
    depth: str
    route: Route | None
    cost: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PutRight:
    """
    Ways to put trouble right on one surface.

    Attributes
    ----------
    causes
        The causes that the ways are made for, with their share of belief [1].
    mends
        Cheapest first.
    same
        Whether the likeliest cause taken alone, and the second alone, ask for the same steps.
    """

    causes: tuple[tuple[Ranked, float], ...]
    mends: tuple[Mend, ...]
    same: bool


def put_right(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, diagnosis: Diagnosis, *, fault: str = ""
) -> PutRight:
    """
    Return the ways to mend what a diagnosis found.

    Parameters
    ----------
    know, piece, workshop, surface
        As for the diagnosis.
    diagnosis
        Causes ranked.
    fault
        Fault that the person settled on; empty = as ranked.

    Returns
    -------
    PutRight
        Never dearer than starting over: that is one of the ways.

    Notes
    -----
    The state after what was done, changed by each likely cause as its card says, is where the search begins:
    one world per cause and reading of what was there before, weighed by belief.
    """
    causes = _likely(diagnosis, fault)
    if not causes:
        return PutRight(causes=(), mends=(), same=True)
    begin = _begin_now(know, piece, workshop, surface, diagnosis, causes)
    ways = _ways(know, piece, workshop, begin, diagnosis.steps)
    waits = _waits(know, workshop, begin, diagnosis, causes)
    mends = sorted((*waits, *ways), key=lambda mend: mend.cost)
    return PutRight(causes=causes, mends=tuple(mends), same=_same(know, piece, workshop, surface, diagnosis, causes) if len(causes) > 1 else True)


def _likely(diagnosis: Diagnosis, fault: str) -> tuple[tuple[Ranked, float], ...]:
    """Return the causes worth mending for, their chances made to add up to 1."""
    named = [c for c in diagnosis.causes if c.suspect.fault and (not fault or c.suspect.fault == fault)]
    top = [c for c in named if c.chance >= _LEAST * max((n.chance for n in named), default=0.0)][:_FEW]
    total = sum(c.chance for c in top)
    return tuple((c, c.chance / total) for c in top) if total > 0 else ()


def _begin_now(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, diagnosis: Diagnosis,
    causes: tuple[tuple[Ranked, float], ...],
) -> Start:  # fmt: skip
    """Return the surface as it is now, in every likely reading."""
    steps = tuple(s for s in diagnosis.steps if s.verb != "use")
    before = start(know, piece, replace(surface, done=()))
    worlds: list[World] = []
    traced = trace(know, before, steps, workshop.air_likely)
    for cause, share in causes:
        for world, row in zip(before.worlds, traced, strict=True):
            fits = max((h.chance for met, _ in row for h, _ in met.values() if h.rule == cause.suspect.rule), default=0.0)
            weight = share * world.weight * (fits if cause.suspect.rule else 1.0)
            states = tuple(_now(know, state, cause) for _, state in row)
            worlds.append(replace(world, label=_label(know, cause), weight=weight, states=states, marks=frozenset()))
    merged = _merged(worlds)
    total = sum(world.weight for world in merged) or 1.0
    kept = tuple(replace(world, weight=world.weight / total) for world in merged)
    return replace(before, worlds=kept)


def _label(know: Knowledge, cause: Ranked) -> str:
    """Return a reading in words."""
    return know.fault(cause.suspect.fault).name


def _merged(worlds: list[World]) -> list[World]:
    """Return worlds with equal ones put together, the heaviest few kept."""
    together: dict[tuple[State, ...], World] = {}
    for world in worlds:
        known = together.get(world.states)
        together[world.states] = world if known is None else replace(known, weight=known.weight + world.weight)
    return sorted(together.values(), key=lambda world: -world.weight)[:_MOST_WORLDS]


def _now(know: Knowledge, state: State, cause: Ranked) -> State:
    """
    Return a state with what a cause did to it.

    Notes
    -----
    Films that have dried are part of the old finish from now on. A film that stays soft for another reason than
    its air will not harden: it holds nothing.
    """
    card = _CARDS.get(cause.suspect.rule) or next(c for c in RULES if c.fault == cause.suspect.fault)
    changed = card.effect(state)
    soft = cause.suspect.fault in {"soft-film", "softened-in-use"}
    last = len(changed.stack) - 1
    films = []
    for i, film in enumerate(changed.stack):
        stays = film.ripe >= 100 or film.old
        if soft and i == last:
            films.append(replace(film, hold=_GONE, old=True, ripe=AGED, um=max(film.um, 1)))
        else:
            films.append(_settled(film) if stays else film)
    patchy = "patchy-colour" in changed.damage and not any(f.um for f in films)
    if patchy and films:
        films[-1] = replace(films[-1], um=1, old=True, ripe=AGED)
    return replace(changed, stack=tuple(films), charged=())


def _settled(film: Film) -> Film:
    """Return a film that counts as old from now on."""
    return replace(film, old=True, ripe=AGED)


def _bench(know: Knowledge, workshop: Workshop, begin: Start) -> Bench:
    """Return a fresh bench for the surface as it is now."""
    return Bench(know, workshop, begin.surface, begin)


def _search(bench: Bench, menu: Menu) -> Found:
    """Return the best way under a menu."""
    return Search(bench, menu, tuple(w.weight for w in bench.begin.worlds)).run(_MOST)


def _ways(know: Knowledge, piece: Piece, workshop: Workshop, begin: Start, steps: tuple[Step, ...]) -> list[Mend]:
    """Return the ways that the search finds: with the coats it has, on the film, from the wood, to another look."""
    look = begin.surface.look or Look(kind="natural")
    opened = _with_open_tins(workshop, steps)
    bench = _bench(know, opened, begin)
    menu = _menu(know, piece, opened, begin, look)
    tried = [(bench, menu), (bench, replace(menu, keep_film=True)), (bench, replace(menu, bare_first=True))]
    body = [s.what for s in steps if s.verb in {"paint", "topcoat"}][-1:]
    if body:
        tried.append((bench, replace(menu, wanted=frozenset(body), wanted_stage="body")))
    if look.kind not in {"opaque", "bare", "odour-free"}:
        painted = Look(kind="opaque")
        again = _bench(know, opened, relooked(know, begin, painted))
        tried.append((again, replace(menu, look=painted, surface=again.surface)))
    found: dict[tuple[Step, ...], Mend] = {}
    for on, with_menu in tried:
        way = _search(on, with_menu)
        if not way.steps or way.steps in found:
            continue
        route = make_route(on, with_menu, way, "put right", with_reasons=False)
        depth = "look" if with_menu.look.kind != look.kind else depth_of(route)
        same = with_menu.wanted_stage == "body"
        cost = way.cost if same else way.cost + _OTHER_COAT * _unlike(way.steps, body) * bench.surface.area_m2
        found[way.steps] = Mend(name=_NAMES[depth], depth=depth, route=route, cost=cost)
    return list(found.values())


def _unlike(steps: tuple[Step, ...], body: list[str]) -> bool:
    """Return whether a way lays another finish than the one that is there."""
    laid = {s.what for s in steps if s.verb in {"paint", "topcoat"}}
    return bool(body) and bool(laid) and not laid & set(body)


def _menu(know: Knowledge, piece: Piece, workshop: Workshop, begin: Start, look: Look) -> Menu:
    """Return what may be offered to put trouble right."""
    return Menu(
        know=know, workshop=workshop, surface=begin.surface, look=look, constraints=piece.constraints, trouble=True
    )


def _with_open_tins(workshop: Workshop, steps: tuple[Step, ...]) -> Workshop:
    """Return the workshop with the tins that were used standing open: what is left in them costs nothing."""
    laid = tuple(dict.fromkeys(s.what for s in steps if s.is_coat))
    kept = tuple(pair for pair in workshop.prices if pair[0] not in laid)
    return replace(workshop, prices=(*kept, *((cls, 0.0) for cls in laid)))


_NAMES = {
    "leave": "Leave it as it is", "wait": "Warm and wait", "film": "Mend the film", "seal": "Seal it and coat again",
    "wood": "Go back to the wood", "look": "Paint it instead",
}  # fmt: skip


def depth_of(route: Route) -> str:
    """Return how deep a route goes, of `DEPTHS`."""
    verbs = {cost.step.verb for cost in route.steps}
    to_bare = any("to bare" in cost.step.how for cost in route.steps)
    if "strip" in verbs or to_bare:
        return "wood"
    if verbs & {"prime", "seal"}:
        return "seal"
    worked = verbs - {"wait", "climate"}
    return "film" if worked else "leave"


def _waits(
    know: Knowledge, workshop: Workshop, begin: Start, diagnosis: Diagnosis, causes: tuple[tuple[Ranked, float], ...]
) -> list[Mend]:
    """
    Return warming and waiting, where the air is the cause.

    Notes
    -----
    The air is the cause of a film that stays soft where the same steps in warm, dry air do not meet that rule at
    half the chance: nothing else is helped by time.
    """
    aired = sum(share for cause, share in causes if _by_air(know, workshop, diagnosis, begin, cause))
    if aired < 0.5:  # noqa: PLR2004 - more likely than not
        return []
    bench = _bench(know, workshop, begin)
    step = Step(verb="wait", what="warm and dry", wait_after_h=120.0, air=_WARM)
    menu = Menu(know=know, workshop=workshop, surface=begin.surface, look=Look(kind="keep"))
    route = make_route(bench, menu, Found(steps=(step,), cost=0.0, expanded=0, exact=True, bound=0.0), "wait", with_reasons=False)
    rest = min((bench.harm_of(cause.suspect.fault) for cause, _ in causes), default=0.0)
    return [Mend(name=_NAMES["wait"], depth="wait", route=route, cost=5.0 * workshop.day_worth + (1.0 - aired) * rest)]


def _by_air(know: Knowledge, workshop: Workshop, diagnosis: Diagnosis, begin: Start, cause: Ranked) -> bool:
    """Return whether a soft film is the work of the air it had."""
    if cause.suspect.fault != "soft-film" or not cause.suspect.rule:
        return False
    ground = begin.grounds[0]
    first = start_states(begin)
    for state in first:
        at = state
        for step in diagnosis.steps:
            at, hits = play(know, ground, at, replace(step, air=_WARM), workshop.air_likely)
            worst = max((h.chance for h in hits if h.rule == cause.suspect.rule), default=0.0)
            if worst > 0.5 * cause.suspect.chance:
                return False
    return True


def start_states(begin: Start) -> tuple[State, ...]:
    """Return the states that a surface may begin in on its main zone."""
    return tuple(world.states[0] for world in begin.worlds)


def _same(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, diagnosis: Diagnosis,
    causes: tuple[tuple[Ranked, float], ...],
) -> bool:  # fmt: skip
    """Return whether the two likeliest causes, each alone, ask for a mend of the same depth."""
    depths = set()
    for cause, _ in causes[:2]:
        begin = _begin_now(know, piece, workshop, surface, diagnosis, ((cause, 1.0),))
        opened = _with_open_tins(workshop, diagnosis.steps)
        look = surface.look or Look(kind="natural")
        bench = _bench(know, opened, begin)
        menu = _menu(know, piece, opened, begin, look)
        way = _search(bench, menu)
        depths.add(depth_of(make_route(bench, menu, way, "alone", with_reasons=False)) if way.steps else "")
    return len(depths) <= 1
