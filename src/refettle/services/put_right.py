"""How to mend what went wrong: the same search, from the surface as it is now."""

from dataclasses import dataclass, replace

from refettle.domain.air import Air
from refettle.domain.piece import Look, Piece, Surface, Workshop
from refettle.domain.plan import Route
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.bench import Bench
from refettle.planning.cost import hazard
from refettle.planning.engine import Engine, Memory, play
from refettle.planning.offers import Menu
from refettle.planning.reasons import make_route
from refettle.planning.search import Found, Search
from refettle.planning.start import Start, relooked
from refettle.services.agree import bares
from refettle.services.since import Believed, Since, as_it_is, played_since
from refettle.services.trouble import Diagnosis
from refettle.trouble.rank import Ranked

_LEAST = 0.08
_FEW = 4
_MOST = 150
_FEWER = 60
_MORE_LIKELY_THAN_NOT = 0.5
_OTHER_COAT = 12.0
"""What a finish unlike that of its neighbours takes off the worth [money/m²]; judgement."""
_WARM = Air(temp_c=21.0, rh=0.5)
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
        Whether the likeliest cause taken alone, and the second alone, ask for a mend of the same depth.
    lead
        Chance of lead in what is on it now [1].
    """

    causes: tuple[tuple[Ranked, float], ...]
    mends: tuple[Mend, ...]
    same: bool
    lead: float = 0.0


@dataclass(frozen=True, slots=True)
class _Bed:
    """What all searches of one surface share: facts, place, piece, open tins, what was done, what was played."""

    know: Knowledge
    piece: Piece
    workshop: Workshop
    steps: tuple[Step, ...]
    look: Look
    since: Since
    memory: Memory
    engines: list[Engine]

    def bench(self, begin: Start) -> Bench:
        """Return a bench that remembers what the others have judged on the same ground."""
        same = begin.grounds == self.since.before.grounds
        return Bench(
            self.know, self.workshop, begin.surface, begin,
            memory=self.memory, engines=self.engines if same else [],
        )  # fmt: skip

    def menu(self, surface: Surface) -> Menu:
        """Return what may be offered to put trouble right."""
        return Menu(
            know=self.know, workshop=self.workshop, surface=surface, look=self.look,
            constraints=self.piece.constraints, trouble=True,
        )  # fmt: skip

    def body(self) -> str:
        """Return the class that made the look; empty where none was laid."""
        laid = [step.what for step in self.steps if step.verb in {"paint", "topcoat"}]
        return laid[-1] if laid else ""


def put_right(
    know: Knowledge,
    piece: Piece,
    workshop: Workshop,
    surface: Surface,
    diagnosis: Diagnosis,
    *,
    fault: str = "",
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
    steps = _till_seen(diagnosis)
    opened = _with_open_tins(workshop, steps)
    since = played_since(know, piece, workshop, surface, steps)
    memory = Memory(know)
    engines = [
        Engine(know=know, ground=g, air=opened.air_likely, memory=memory) for g in since.before.grounds
    ]
    bed = _Bed(know, piece, opened, steps, _look_of(know, surface, steps), since, memory, engines)
    begin = as_it_is(know, since, causes)
    mends = (*_waits(bed, begin, causes), *_ways(bed, begin), _left_alone(bed, begin, causes))
    return PutRight(
        causes=causes, mends=tuple(sorted(mends, key=lambda mend: mend.cost)), same=_same(bed, causes),
        lead=max(world.states[0].strength("lead") for world in begin.worlds),
    )  # fmt: skip


def _till_seen(diagnosis: Diagnosis) -> tuple[Step, ...]:
    """Return what was done until the trouble showed: no weeks of curing where it showed within days."""
    steps = tuple(step for step in diagnosis.steps if step.verb != "use")
    early = diagnosis.told.when in {"immediate", "hours", "days"}
    return steps[:-1] if early and steps and steps[-1].what == "cure" else steps


def _look_of(know: Knowledge, surface: Surface, steps: tuple[Step, ...]) -> Look:
    """Return the look that is wanted: the one asked for, else the one that the coats laid have made."""
    if surface.look is not None:
        return surface.look
    laid = [step for step in steps if step.is_coat]
    if any(step.verb == "paint" or know.film(step.what).opaque for step in laid):
        return Look(kind="opaque")
    return Look(kind="stained" if any(step.verb == "stain" for step in laid) else "natural")


def _left_alone(bed: _Bed, begin: Start, causes: Believed) -> Mend:
    """Return leaving it: no work, and the fault at its harm as the search counts one that is sure."""
    bench = bed.bench(begin)
    stays = sum(share * bench.harm_of(cause.suspect.fault) for cause, share in causes)
    return Mend(name=_NAMES["leave"], depth="leave", route=None, cost=hazard(1.0) * stays)


def _likely(diagnosis: Diagnosis, fault: str) -> tuple[tuple[Ranked, float], ...]:
    """Return the causes worth mending for, their chances made to add up to 1."""
    named = [c for c in diagnosis.causes if c.suspect.fault and (not fault or c.suspect.fault == fault)]
    top = [c for c in named if c.chance >= _LEAST * max((n.chance for n in named), default=0.0)][:_FEW]
    total = sum(c.chance for c in top)
    return tuple((c, c.chance / total) for c in top) if total > 0 else ()


def _search(bench: Bench, menu: Menu, most: int = _MOST) -> Found:
    """Return the best way under a menu."""
    return Search(bench, menu, tuple(w.weight for w in bench.begin.worlds)).run(most)


def _ways(bed: _Bed, begin: Start) -> list[Mend]:
    """Return the ways that the search finds: with the coats it has, on the film, from the wood, to another look."""
    bench, menu, body = bed.bench(begin), bed.menu(begin.surface), bed.body()
    tried = [(bench, menu), (bench, replace(menu, keep_film=True)), (bench, replace(menu, bare_first=True))]
    if body:
        tried.append((bench, replace(menu, wanted=frozenset({body}), wanted_stage="body")))
    if bed.look.kind not in {"opaque", "bare", "odour-free"}:
        painted = Look(kind="opaque")
        again = bed.bench(relooked(bed.know, begin, painted))
        tried.append((again, replace(menu, look=painted, surface=again.surface)))
    found: dict[tuple[Step, ...], Mend] = {}
    for on, with_menu in tried:
        way = _search(on, with_menu)
        if not way.steps or way.steps in found:
            continue
        route = make_route(on, with_menu, way, "put right", with_reasons=False)
        depth = "look" if with_menu.look.kind != bed.look.kind else depth_of(route)
        same = with_menu.wanted_stage == "body"
        cost = way.cost if same else way.cost + _OTHER_COAT * _unlike(way.steps, body) * bench.surface.area_m2
        found[way.steps] = Mend(name=_NAMES[depth], depth=depth, route=route, cost=cost)
    return list(found.values())


def _unlike(steps: tuple[Step, ...], body: str) -> bool:
    """Return whether a way ends in another finish than the one that is there, or in none."""
    laid = {s.what for s in steps if s.verb in {"paint", "topcoat"}}
    return bool(body) and body not in laid and (bool(laid) or bares(steps))


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


def _waits(bed: _Bed, begin: Start, causes: Believed) -> list[Mend]:
    """
    Return warming and waiting, where the air is the cause.

    Notes
    -----
    The air is the cause of a film that stays soft where the same steps in warm, dry air do not meet that rule at
    half the chance: nothing else is helped by time.
    """
    aired = sum(share for cause, share in causes if _by_air(bed, cause))
    if aired < _MORE_LIKELY_THAN_NOT:
        return []
    bench = bed.bench(begin)
    step = Step(verb="wait", what="warm and dry", wait_after_h=120.0, air=_WARM)
    menu = Menu(know=bed.know, workshop=bed.workshop, surface=begin.surface, look=Look(kind="keep"))
    found = Found(steps=(step,), cost=0.0, expanded=0, exact=True, bound=0.0)
    route = make_route(bench, menu, found, "wait", with_reasons=False)
    rest = min((bench.harm_of(cause.suspect.fault) for cause, _ in causes), default=0.0)
    cost = 5.0 * bed.workshop.day_worth + (1.0 - aired) * rest
    return [Mend(name=_NAMES["wait"], depth="wait", route=route, cost=cost)]


def _by_air(bed: _Bed, cause: Ranked) -> bool:
    """Return whether a soft film is the work of the air it had."""
    if cause.suspect.fault != "soft-film" or not cause.suspect.rule:
        return False
    ground = bed.since.before.grounds[0]
    for world in bed.since.before.worlds:
        state = world.states[0]
        for step in bed.steps:
            state, hits = play(bed.know, ground, state, replace(step, air=_WARM), bed.workshop.air_likely)
            worst = max((h.chance for h in hits if h.rule == cause.suspect.rule), default=0.0)
            if worst > 0.5 * cause.suspect.chance:
                return False
    return True


def _same(bed: _Bed, causes: Believed) -> bool:
    """Return whether the two likeliest causes, each alone, ask for a mend of the same depth."""
    depths = set()
    for cause, _ in causes[:2] if len(causes) > 1 else ():
        bench = bed.bench(as_it_is(bed.know, bed.since, ((cause, 1.0),)))
        menu = bed.menu(bench.surface)
        way = _search(bench, menu, _FEWER)
        depths.add(depth_of(make_route(bench, menu, way, "alone", with_reasons=False)) if way.steps else "")
    return len(depths) <= 1
