"""Surfaces drawn by lot for tests of planning, and a plain account of what a route costs."""

from dataclasses import dataclass
from functools import cache
from math import log

from hypothesis import strategies as st

from refettle.domain.piece import Look, OldLayer, Piece, Surface, Zone
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import VALUE_LOST_M2, Aim, harm
from refettle.planning.engine import play
from refettle.planning.goal import flaws, reached
from refettle.planning.offers import STAGES, Menu
from refettle.planning.search import Bench, loses_original
from refettle.planning.start import Start, start

WORKSHOP = Workshop(tools=frozenset({"random-orbit"}))
LOOKS = ("natural", "stained", "opaque", "keep", "oiled", "waxed", "bare", "odour-free")
HOLLOWS = (Zone(name="flat", share=0.6), Zone(name="recess", share=0.4))


@cache
def know() -> Knowledge:
    """Return the package's knowledge, read once."""
    return load_knowledge()


def surface(**fields: object) -> Surface:
    """Return an oak top without an old finish, some fields set."""
    given = {"name": "top", "part": "top", "area_m2": 0.8, "orientation": "up", "wood": "oak", **fields}
    return Surface(**given)  # type: ignore[arg-type]


def begin(one: Surface, year: int | None = None) -> Start:
    """Return the start of a surface of a piece of its own."""
    return start(know(), Piece(name="x", form="list", surfaces=(one,), year_from=year, year_to=year), one)


def bench_of(one: Surface, year: int | None = None) -> Bench:
    """Return a fresh bench for a surface."""
    return Bench(know(), WORKSHOP, one, begin(one, year))


def menu_of(one: Surface, banned: frozenset[str] = frozenset()) -> Menu:
    """Return the menu of a surface for its own look."""
    look = one.look or Look(kind="natural")
    return Menu(know=know(), workshop=WORKSHOP, surface=one, look=look, banned=banned)


@st.composite
def surfaces(draw: st.DrawFn) -> Surface:
    """Draw a surface: wood, old finish known or not, dirt, damage, look."""
    kind = draw(st.sampled_from(("bare", "clear", "paint")))
    known = draw(st.booleans())
    cls = draw(
        st.sampled_from(
            ("alkyd-enamel", "latex-paint") if kind == "paint" else ("shellac-waxed", "alkyd-varnish")
        )
    )
    layer = OldLayer(kind=kind, guesses=((cls, 1.0),) if known else (), coats=draw(st.integers(1, 3)))
    veneer = draw(st.sampled_from((0, 0, 800)))
    dirt = draw(
        st.lists(st.sampled_from(("wax", "grime", "polish", "silicone", "grease")), unique=True, max_size=2)
    )
    look = draw(st.sampled_from(LOOKS))
    return surface(
        wood=draw(st.sampled_from(("oak", "maple", "pine-knotty", "mahogany", "teak"))),
        build="veneer" if veneer else "solid",
        veneer_um=veneer,
        area_m2=draw(st.sampled_from((0.3, 0.8, 1.6))),
        layers=() if kind == "bare" else (layer,),
        soundness="sound" if kind == "bare" else draw(st.sampled_from(("sound", "worn", "flaking"))),
        zones=draw(st.sampled_from(((Zone(name="flat", share=1.0),), HOLLOWS))),
        relief=draw(st.sampled_from(("flat", "carved"))),
        old_stain=draw(st.sampled_from(((), (("red-stain", 80),)))),
        contamination=tuple((name, draw(st.sampled_from((0.3, 0.8)))) for name in sorted(dirt)),
        damage=tuple(draw(st.sampled_from(((), ("dents",), ("scratches", "black-ring"))))),
        use=draw(st.sampled_from(("everyday", "table"))),
        value=draw(st.sampled_from(("ordinary", "good"))),
        look=Look(kind=look, colour="white" if look == "opaque" else ""),
    )


@dataclass(frozen=True)
class Place:
    """Where a route stands in the plain account."""

    states: tuple[State, ...]
    paid: tuple[tuple[tuple[str, float], ...], ...]
    lost: bool
    cost: float


class PlainAccount:
    """Costs of routes, worked out step by step without anything that the search remembers or leaves out."""

    def __init__(self, one: Surface, menu: Menu, aim: Aim) -> None:
        self.surface, self.menu, self.aim = one, menu, aim
        self.begin = begin(one)
        self.bench = Bench(know(), WORKSHOP, one, self.begin)
        self.slots = [
            (world, zone, w.weight * share)
            for world, w in enumerate(self.begin.worlds)
            for zone, share in enumerate(self.begin.shares)
        ]
        self.zones = tuple(self.begin.grounds[zone].zone for _, zone, _ in self.slots)
        self._played: dict[tuple[int, State, Step], tuple[State, tuple[tuple[str, str, float], ...]]] = {}

    def first(self) -> Place:
        """Return where every route begins; bare wood has no original finish to lose."""
        states = tuple(self.begin.worlds[world].states[zone] for world, zone, _ in self.slots)
        return Place(states, tuple(() for _ in states), lost=states[0].bare, cost=0.0)

    def after(self, place: Place, step: Step) -> Place:
        """Return where a step leads."""
        bare = place.states[0].bare
        cost, lost = place.cost + self.bench.step_cost(step, self.aim, on_bare=bare), place.lost
        if not lost and not bare and loses_original(step):
            cost += VALUE_LOST_M2.get(self.surface.value, 0.0) * self.surface.area_m2
            lost = True
        states, paid = [], []
        for state, already, (_, zone, share) in zip(place.states, place.paid, self.slots, strict=True):
            then, hits = self._play(zone, state, step)
            charged = dict(already)
            for fault, cause, chance in hits:
                before = charged.get(f"{fault}|{cause}", 0.0)
                if chance <= before:
                    continue
                worth = harm(know(), WORKSHOP, fault, self.surface.area_m2)
                cost += self.aim.risk * share * worth * (log(1.0 - before) - log(1.0 - min(chance, 0.99)))
                if step.is_coat and chance > 0.05:
                    charged[f"{fault}|{cause}"] = round(chance, 3)
            states.append(then)
            paid.append(tuple(sorted(charged.items())))
        return Place(tuple(states), tuple(paid), lost, cost)

    def _play(self, zone: int, state: State, step: Step) -> tuple[State, tuple[tuple[str, str, float], ...]]:
        key = (zone, state, step)
        if key not in self._played:
            then, hits = play(know(), self.begin.grounds[zone], state, step, WORKSHOP.air_likely)
            self._played[key] = then, tuple((h.fault, h.cause, h.chance) for h in hits)
        return self._played[key]

    def end(self, place: Place) -> float | None:
        """Return the whole cost of a route that ends here, or None where the look is missed."""
        cost, had, main = place.cost, 0.0, 0.0
        area = self.surface.area_m2
        for state, (world, zone, share) in zip(place.states, self.slots, strict=True):
            ground = self.begin.grounds[zone]
            ok = reached(know(), ground, self.menu.look, state)
            cost += share * (
                flaws(know(), self.menu.look, state, area) + (0.0 if ok else 90.0 * max(area, 0.2))
            )
            if ground.zone == "flat" or len(self.begin.grounds) == 1:
                main += self.begin.worlds[world].weight
                had += self.begin.worlds[world].weight if ok else 0.0
        return cost if main <= 0 or had >= 0.6 * main else None

    def cheapest(self, place: Place | None = None, stage: int = 0) -> float:
        """Return the cost of the cheapest of all offered routes, tried one by one."""
        here = place or self.first()
        if stage == len(STAGES):
            whole = self.end(here)
            return float("inf") if whole is None else whole
        best = float("inf")
        for run in self.menu.offers(STAGES[stage], here.states, self.zones):
            then = here
            for step in run:
                then = self.after(then, step)
            best = min(best, self.cheapest(then, stage + 1))
        return best
