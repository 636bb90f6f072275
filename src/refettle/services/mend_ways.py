"""The ways in which trouble is put right: the search from the surface as it is, under several menus."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from refettle.domain.piece import Look, Piece, Surface
from refettle.domain.plan import Route
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.bench import Bench
from refettle.planning.cost import harm
from refettle.planning.engine import Engine, Memory
from refettle.planning.goal import offence
from refettle.planning.offers import Menu
from refettle.planning.reasons import make_route
from refettle.planning.search import Found, Search
from refettle.planning.start import Start, relooked
from refettle.services.agree import bares
from refettle.services.since import Since

_MOST = 200
_OTHER_COAT = 12.0
"""What a finish unlike that of its neighbours takes off the worth [money/m²]; judgement."""
_PLACE = 0.15
"""Share of a face that trouble in one place takes [1]; judgement."""
_BLENDS, _BLENDS_IN_PAINT, _BLENDS_HARDLY = 3.0, 8.0, 20.0
_AGAIN = 2.0
"""How many times a fault counts that comes back after its mend [1]; judgement."""
_OFFENDS = 0.2
DEPTHS = ("leave", "wait", "film", "seal", "wood", "look")
"""How deep a mend goes: nothing; time and warmth; the film is levelled or coated again; a barrier first; to the
wood; another look."""
NAMES = {
    "leave": "Leave it as it is", "wait": "Warm and wait", "film": "Mend the film", "seal": "Seal it and coat again",
    "wood": "Go back to the wood", "look": "Paint it instead",
}  # fmt: skip


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
    place
        Whether it is done where the trouble sits and nowhere else.
    """

    name: str
    depth: str
    route: Route | None
    cost: float
    place: bool = False


@dataclass(frozen=True, slots=True)
class Bed:
    """What all searches of one surface share: facts, place, piece, open tins, what was done, what was played."""

    know: Knowledge
    piece: Piece
    workshop: Workshop
    steps: tuple[Step, ...]
    look: Look
    faults: tuple[str, ...]
    place: bool
    meets: frozenset[str]
    since: Since
    memory: Memory
    engines: list[Engine]

    def bench(self, begin: Start, *, again: bool = True) -> Bench:
        """
        Return a bench that remembers what the others have judged on the same ground.

        Notes
        -----
        With `again`, what went wrong once counts `_AGAIN` times where it may come back, and on the whole face.
        """
        before = self.since.before
        same = begin.grounds == before.grounds
        made = Bench(
            self.know, self.workshop, begin.surface, begin,
            memory=self.memory, engines=self.engines if same else [],
        )  # fmt: skip
        if again:
            area = before.surface.area_m2
            made.count_as(
                {fault: _AGAIN * harm(self.know, self.workshop, fault, area) for fault in self.faults}
            )
        return made

    def menu(self, surface: Surface) -> Menu:
        """Return what may be offered to put trouble right."""
        return Menu(
            know=self.know, workshop=self.workshop, surface=surface, look=self.look,
            constraints=self.piece.constraints, trouble=True, meets=self.meets,
        )  # fmt: skip

    def body(self) -> str:
        """Return the class that made the look; empty where none was laid."""
        laid = [step.what for step in self.steps if step.verb in {"paint", "topcoat"}]
        return laid[-1] if laid else ""


def search_on(bench: Bench, menu: Menu, most: int = _MOST) -> Found:
    """Return the best way under a menu."""
    return Search(bench, menu, tuple(w.weight for w in bench.begin.worlds)).run(most)


def ways_of(bed: Bed, begin: Start, left: float) -> list[Mend]:
    """
    Return the ways that the search finds.

    Parameters
    ----------
    bed, begin
        The surface as it is.
    left
        What it costs to leave what went wrong [money].

    Returns
    -------
    list of Mend
        With the coats it has, on the film, from the wood, to another look; where the trouble sits in one place,
        there alone too.
    """
    bench, menu, body = bed.bench(begin), bed.menu(begin.surface), bed.body()
    own = replace(menu, wanted=frozenset({body}), wanted_stage="body")
    first = search_on(bench, menu)
    tried = [(bench, menu, first)]
    others = _others(menu, own if body else None, first.steps)
    tried += [(bench, other, search_on(bench, other)) for other in others]
    if bed.look.kind not in {"opaque", "bare", "odour-free"}:
        painted = Look(kind="opaque")
        again = bed.bench(relooked(bed.know, begin, painted))
        repaint = replace(menu, look=painted, surface=again.surface)
        tried.append((again, repaint, _quickly(bed, again, repaint)))
    if bed.place:
        small = replace(begin, surface=replace(begin.surface, area_m2=_PLACE * begin.surface.area_m2))
        there = bed.bench(small)
        local = replace(own if body else menu, surface=there.surface)
        tried += [(there, one, search_on(there, one)) for one in (local, replace(local, bare_first=True))]
    found: dict[tuple[tuple[Step, ...], bool], Mend] = {}
    for on, with_menu, way in tried:
        mend = _as_mend(bed, on, with_menu, way, left)
        if mend is not None and mend.route is not None:
            key = (tuple(cost.step for cost in mend.route.steps), mend.place)
            found.setdefault(key, mend)
    return list(found.values())


def _quickly(bed: Bed, on: Bench, menu: Menu) -> Found:
    """Return the best way in the likeliest reading, with what it costs in all of them: enough for a way beside the point."""
    likeliest = replace(on.begin, worlds=(replace(on.begin.worlds[0], weight=1.0),))
    way = search_on(bed.bench(likeliest), menu)
    if not way.steps:
        return way
    whole = Search(on, menu, tuple(world.weight for world in on.begin.worlds))
    return replace(way, cost=whole.cost_of(way.steps))


def _others(menu: Menu, own: Menu | None, best: tuple[Step, ...]) -> Iterator[Menu]:
    """Yield the menus worth searching beside the plain one: none whose best way is the plain one's, as it is allowed too."""
    if not best or bares(best):
        yield replace(menu, keep_film=True)
    else:
        yield replace(menu, bare_first=True)
    if own is not None and not any(step.what in own.wanted and step.is_coat for step in best):
        yield own


def _as_mend(bed: Bed, on: Bench, menu: Menu, way: Found, left: float) -> Mend | None:
    """Return a way found under a menu as a mend, or None where it does nothing."""
    if not way.steps:
        return None
    route = make_route(bed.bench(on.begin, again=False), menu, way, "put right", with_reasons=False)
    if not route.steps:
        return None
    body, whole = bed.body(), bed.since.before.surface.area_m2
    depth = "look" if menu.look.kind != bed.look.kind else depth_of(route, menu.look)
    place = on.surface.area_m2 < whole
    cost = way.cost + left * _unmended(bed, on, menu.look, way.steps)
    cost += _OTHER_COAT * _unlike(way.steps, body) * whole
    if place:
        cost += _blend(bed, body) * whole
    name = f"{NAMES[depth]}, at the place only" if place else NAMES[depth]
    return Mend(name=name, depth=depth, route=route, cost=cost, place=place)


def _blend(bed: Bed, body: str) -> float:
    """Return what a place that was mended alone takes off the worth, as it shows [money/m²]; judgement."""
    if not body:
        return 0.0
    facts = bed.know.film(body)
    if facts.redissolves or facts.needs_bare:
        return _BLENDS
    return _BLENDS_HARDLY if not facts.opaque else _BLENDS_IN_PAINT


def _unmended(bed: Bed, on: Bench, look: Look, steps: tuple[Step, ...]) -> float:
    """Return the share of belief in which what went wrong is still seen after a way [1]."""
    before = {name for row in bed.since.ends for _, state in row for name in state.damage}
    seen = 0.0
    for world in on.begin.worlds:
        for engine, state, share in zip(on.engines, world.states, on.begin.shares, strict=True):
            new, end = state.damage - before, state
            for step in steps:
                end = engine.after(end, step)
            if any(offence(bed.know, look, end, name) > _OFFENDS for name in new & end.damage):
                seen += world.weight * share
    return seen


def _unlike(steps: tuple[Step, ...], body: str) -> bool:
    """Return whether a way ends in another finish than the one that is there, or in none."""
    laid = {s.what for s in steps if s.verb in {"paint", "topcoat"}}
    return bool(body) and body not in laid and (bool(laid) or bares(steps))


def depth_of(route: Route, look: Look) -> str:
    """
    Return how deep a route goes, of `DEPTHS`.

    Notes
    -----
    A sealer that is itself the finish is a film like any other; against smell any film is there to seal.
    """
    steps = [cost.step for cost in route.steps]
    verbs = {step.verb for step in steps}
    if "strip" in verbs or any("to bare" in step.how for step in steps):
        return "wood"
    coats = [step for step in steps if step.is_coat]
    if coats and look.kind == "odour-free":
        return "seal"
    if any(step.verb in {"prime", "seal"} and step is not coats[-1] for step in coats):
        return "seal"
    return "film" if verbs - {"wait", "climate"} else "leave"
