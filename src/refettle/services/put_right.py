"""How to mend what went wrong: the same search, from the surface as it is now."""

from dataclasses import dataclass, replace

from refettle.domain.air import Air
from refettle.domain.piece import Look, Piece, Surface
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import harm, hazard
from refettle.planning.engine import Engine, Memory, play
from refettle.planning.offers import Menu
from refettle.planning.reasons import make_route
from refettle.planning.search import Found
from refettle.planning.start import Start
from refettle.services.mend_ways import NAMES, Bed, Mend, depth_of, search_on, ways_of
from refettle.services.since import Believed, as_it_is, played_since
from refettle.services.trouble import Diagnosis
from refettle.trouble.rank import Ranked

_LEAST = 0.08
_FEW = 4
_FEWER = 60
_MORE_LIKELY_THAN_NOT = 0.5
_WORTH_ASKING = 0.1
_SAID = 0.5
_IN_ONE_PLACE = frozenset(
    {
        "on-knots",
        "joints",
        "edges",
        "nails",
        "under-things",
        "touched",
        "ring",
        "veneer-bubble",
        "runs",
        "black",
    }
)
"""Signs that place trouble."""
_LASTS = frozenset({"wall", "dark", "shut", "hands", "damp", "plastic-cover"})
"""What a surface goes on meeting where it stands."""
_WARM = Air(temp_c=21.0, rh=0.5)


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
    begin
        The surface as it is now, from which the ways start; None where there are none.
    meets
        What it goes on meeting where it stands, values of `EVENT_MARKS`.
    """

    causes: tuple[tuple[Ranked, float], ...]
    mends: tuple[Mend, ...]
    same: bool
    lead: float = 0.0
    begin: Start | None = None
    meets: frozenset[str] = frozenset()


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
    till = _till_seen(diagnosis)
    steps = tuple(step for step in till if step.verb != "use")
    opened = _with_open_tins(workshop, steps)
    since = played_since(know, piece, workshop, surface, till)
    memory = Memory(know)
    engines = [
        Engine(know=know, ground=g, air=opened.air_likely, memory=memory) for g in since.before.grounds
    ]
    bed = Bed(
        know=know, piece=piece, workshop=opened, steps=steps, look=_look_of(know, surface, steps),
        faults=tuple(dict.fromkeys(cause.suspect.fault for cause, _ in causes)), place=_in_one_place(diagnosis),
        meets=_meets(diagnosis), since=since, memory=memory, engines=engines,
    )  # fmt: skip
    begin = as_it_is(know, since, causes)
    left = _left_alone(bed, begin, causes)
    mends = (*_waits(bed, begin, causes), *ways_of(bed, begin, left.cost), left)
    return PutRight(
        causes=causes, mends=tuple(sorted(mends, key=lambda mend: mend.cost)), same=_same(bed, causes),
        lead=max(world.states[0].strength("lead") for world in begin.worlds),
        begin=begin,
        meets=bed.meets,
    )  # fmt: skip


def _till_seen(diagnosis: Diagnosis) -> tuple[Step, ...]:
    """Return what was done until the trouble showed: no weeks of curing where it showed within days."""
    early = diagnosis.told.when in {"immediate", "hours", "days"}
    return tuple(step for step in diagnosis.steps if not (early and step.what == "cure"))


def _in_one_place(diagnosis: Diagnosis) -> bool:
    """Return whether what is told says that the trouble sits in one place."""
    return any(surety >= _SAID and sign in _IN_ONE_PLACE for sign, surety in diagnosis.told.signs.items())


def _meets(diagnosis: Diagnosis) -> frozenset[str]:
    """Return what the surface goes on meeting where it stands, as the steps tell it."""
    told = [step for step in diagnosis.steps if step.verb in {"use", "expose"}]
    return frozenset(mark for step in told for mark in step.how & _LASTS)


def _look_of(know: Knowledge, surface: Surface, steps: tuple[Step, ...]) -> Look:
    """Return the look that is wanted: the one asked for, else the one that the coats laid have made."""
    if surface.look is not None:
        return surface.look
    laid = [step for step in steps if step.is_coat]
    if any(step.verb == "paint" or know.film(step.what).opaque for step in laid):
        return Look(kind="opaque")
    return Look(kind="stained" if any(step.verb == "stain" for step in laid) else "natural")


def _left_alone(bed: Bed, begin: Start, causes: Believed) -> Mend:
    """Return leaving it: no work, and the fault at its harm as the search counts one that is sure."""
    area = begin.surface.area_m2
    stays = sum(share * harm(bed.know, bed.workshop, cause.suspect.fault, area) for cause, share in causes)
    return Mend(name=NAMES["leave"], depth="leave", route=None, cost=hazard(1.0) * stays)


def _likely(diagnosis: Diagnosis, fault: str) -> tuple[tuple[Ranked, float], ...]:
    """Return the causes worth mending for, their chances made to add up to 1."""
    named = [c for c in diagnosis.causes if c.suspect.fault and (not fault or c.suspect.fault == fault)]
    top = [c for c in named if c.chance >= _LEAST * max((n.chance for n in named), default=0.0)][:_FEW]
    total = sum(c.chance for c in top)
    return tuple((c, c.chance / total) for c in top) if total > 0 else ()


def _with_open_tins(workshop: Workshop, steps: tuple[Step, ...]) -> Workshop:
    """Return the workshop with the tins that were used standing open: what is left in them costs nothing."""
    laid = tuple(dict.fromkeys(s.what for s in steps if s.is_coat))
    kept = tuple(pair for pair in workshop.prices if pair[0] not in laid)
    return replace(workshop, prices=(*kept, *((cls, 0.0) for cls in laid)))


def _waits(bed: Bed, begin: Start, causes: Believed) -> list[Mend]:
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
    area = begin.surface.area_m2
    rest = min((harm(bed.know, bed.workshop, cause.suspect.fault, area) for cause, _ in causes), default=0.0)
    cost = 5.0 * bed.workshop.day_worth + (1.0 - aired) * rest
    return [Mend(name=NAMES["wait"], depth="wait", route=route, cost=cost)]


def _by_air(bed: Bed, cause: Ranked) -> bool:
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


def _same(bed: Bed, causes: Believed) -> bool:
    """Return whether the two likeliest causes, each alone, ask for a mend of the same depth."""
    depths = set()
    for cause, _ in causes[:2] if len(causes) > 1 and causes[1][1] >= _WORTH_ASKING else ():
        bench = bed.bench(as_it_is(bed.know, bed.since, ((cause, 1.0),)))
        menu = bed.menu(bench.surface)
        way = search_on(bench, menu, _FEWER)
        depths.add(
            depth_of(make_route(bench, menu, way, "alone", with_reasons=False), bed.look) if way.steps else ""
        )
    return len(depths) <= 1
