"""Which finish suits: every body of film that can be had for a surface's look, each by a search of its own."""

from dataclasses import dataclass, replace
from typing import Final

from refettle.domain.piece import Look, Piece
from refettle.domain.plan import Route
from refettle.domain.workshop import Workshop
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.clash import look_words
from refettle.planning.mended import as_mended
from refettle.planning.reasons import make_route
from refettle.services.cases import Case, relooked_case
from refettle.services.grouping import group_surfaces
from refettle.services.pools import weighed
from refettle.services.settled import settle

_NEIGHBOURS: Final = {
    "natural": ("natural", "waxed"),
    "oiled": ("oiled", "natural", "waxed"),
    "waxed": ("waxed", "natural"),
}
_GOOD, _WEAK = 0.7, 0.35
_MOST_STATES: Final = 4000


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """
    One finish that can be had on a surface.

    Attributes
    ----------
    facts
        Facts of the class that makes the body.
    route
        The best way that ends in it.
    taken
        Whether the plan takes it.
    stands
        What it stands up to, what it does not, and its upkeep, in words.
    """

    facts: FilmFacts
    route: Route
    taken: bool
    stands: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Finishes:
    """
    The finishes of one surface.

    Attributes
    ----------
    group
        Name of its group.
    look, use
        Look aimed at, in words; use.
    found
        Finishes that can be had, best first.
    barred
        Names of classes that were offered and lead nowhere.
    """

    group: str
    look: str
    use: str
    found: tuple[Finish, ...]
    barred: tuple[str, ...]


def finishes_for(piece: Piece, workshop: Workshop, know: Knowledge, surface: str) -> Finishes:
    """
    Return which finishes can be had on a surface for its look and use.

    Parameters
    ----------
    piece, workshop, know
        Piece, place, facts.
    surface
        Name of a surface of the piece.

    Returns
    -------
    Finishes
        Cheapest first, everything counted: money, hours, waiting, and what may go wrong.

    Notes
    -----
    One search a class, with that class wanted as body; for a clear look, waxing is asked too.
    """
    piece = as_mended(know, piece)
    settled = settle(know, piece, workshop, group_surfaces(piece.surfaces)).tries
    case, plan = next((case, found) for case, found in settled if surface in case.group.members)
    now = {step.what for step in plan.steps if step.is_coat}
    found: dict[str, Finish] = {}
    barred: dict[str, None] = {}
    for kind in _NEIGHBOURS.get(case.menu.look.kind, (case.menu.look.kind,)):
        asked = (
            case
            if kind == case.menu.look.kind
            else relooked_case(case, Look(kind=kind, sheen=case.menu.look.sheen))
        )
        for cls in _bodies(asked):
            if cls in found:
                continue
            route = _route_with(asked, cls)
            if route is None:
                barred[know.name("film", cls)] = None
                continue
            facts = know.film(cls)
            found[cls] = Finish(facts=facts, route=route, taken=cls in now, stands=stands_words(facts))
    best = sorted(found.values(), key=lambda finish: (finish.route.cost, finish.facts.id))
    return Finishes(
        group=case.group.name,
        look=look_words(case.menu.look),
        use=case.group.surface.use,
        found=tuple(best),
        barred=tuple(name for name in barred if name not in {f.facts.name for f in best}),
    )


def _bodies(case: Case) -> tuple[str, ...]:
    """Return the classes that are offered as the body of a look."""
    begin = case.bench.begin
    states = [state for world in begin.worlds for state in world.states]
    zones = [ground.zone for _ in begin.worlds for ground in begin.grounds]
    runs = case.menu.offers("body", states, zones)
    return tuple(dict.fromkeys(step.what for run in runs for step in run if step.is_coat))


def _route_with(case: Case, cls: str) -> Route | None:
    """Return the best route whose body is a class, or None."""
    menu = replace(case.menu, wanted=frozenset({cls}), wanted_stage="body")
    made = weighed(case, case.search(menu=menu, most=_MOST_STATES))
    if not any(step.what == cls for step in made.steps):
        return None
    return make_route(case.bench, menu, made, "asked", with_reasons=False)


def stands_words(facts: FilmFacts) -> tuple[str, ...]:
    """
    Return what a finish stands up to, what it does not, and its upkeep.

    Parameters
    ----------
    facts
        Facts of the class.

    Returns
    -------
    tuple of str
        E.g. ``stands wear and water``, ``weak against heat``, ``easily mended``.
    """
    scales = {
        "wear": facts.resist_wear, "water": facts.resist_water, "heat": facts.resist_heat,
        "alcohol": facts.resist_alcohol,
    }  # fmt: skip
    good = [word for word, value in scales.items() if value >= _GOOD]
    weak = [word for word, value in scales.items() if value <= _WEAK]
    said = [f"stands {_listed(good)}"] if good else []
    said += [f"weak against {_listed(weak)}"] if weak else []
    if facts.mendable >= _GOOD:
        said.append("easily mended")
    elif facts.mendable <= _WEAK:
        said.append("hard to mend in places")
    if facts.needs_bare or facts.family == "wax":
        said.append("wants renewing now and then")
    if facts.yellows >= _GOOD:
        said.append("yellows")
    return tuple(said)


def _listed(words: list[str]) -> str:
    """Return words in a row."""
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else words[0]
