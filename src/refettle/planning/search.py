"""Search: the cheapest way from a surface as it is to the look that is wanted."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from heapq import heappop, heappush
from itertools import count

from refettle.domain.piece import Look, Surface, Workshop
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import (
    BALANCED,
    VALUE_LOST_M2,
    Aim,
    harm,
    hazard,
    step_amounts,
)
from refettle.planning.engine import Engine, Hits
from refettle.planning.goal import flaws, reached
from refettle.planning.offers import STAGES, Menu, Run
from refettle.planning.start import Start

MAX_EXPANSIONS = 2500
_MISSED_M2 = 90.0
_REDO_M2 = 120.0
_NEEDED_WEIGHT = 0.6

Charged = tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """
    What a search came back with.

    Attributes
    ----------
    steps
        Steps of the route, closing use included; empty when there is none.
    cost
        Cost that was minimised [money].
    expanded
        States expanded [1].
    exact
        Whether the search ended by itself: then no offered route costs less in that cost.
    bound
        No offered route costs less than this [money].
    """

    steps: tuple[Step, ...]
    cost: float
    expanded: int
    exact: bool
    bound: float


@dataclass(frozen=True, slots=True)
class _Node:
    """A point of the search: stage, states, what was charged, way so far."""

    stage: int
    slots: tuple[int, ...]
    charged: tuple[Charged, ...]
    parent: "_Node | None"
    run: Run
    removed: bool


@dataclass(slots=True)
class Bench:
    """
    One surface with its engines, ready to be searched again and again.

    Attributes
    ----------
    know, workshop, surface, begin
        Facts, place, surface, and where it starts from.
    setup_share
        Share of set-up time that this surface carries [1].
    """

    know: Knowledge
    workshop: Workshop
    surface: Surface
    begin: Start
    setup_share: float = 1.0
    engines: list[Engine] = field(default_factory=list)
    _harm: dict[str, float] = field(default_factory=dict)
    _step_cost: dict[tuple[Step, bool, Aim], float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Make one engine per zone."""
        if not self.engines:
            self.engines = [
                Engine(know=self.know, ground=g, air=self.workshop.air_likely) for g in self.begin.grounds
            ]

    def harm_of(self, fault: str) -> float:
        """Return the harm of a fault on this surface [money]."""
        value = self._harm.get(fault)
        if value is None:
            value = self._harm[fault] = harm(self.know, self.workshop, fault, self.surface.area_m2)
        return value

    def recess_share(self) -> float:
        """Return the share of hollows and edges [1]."""
        return sum(z.share for z in self.surface.zones if z.name == "recess")

    def step_cost(self, step: Step, aim: Aim, *, on_bare: bool) -> float:
        """Return money, time and delay of a step under an aim [money]."""
        key = (step, on_bare, aim)
        value = self._step_cost.get(key)
        if value is None:
            amounts = step_amounts(
                self.know, self.workshop, self.surface, step, on_bare=on_bare, recess_share=self.recess_share()
            )
            hours = amounts.minutes.likely / 60.0 + self.setup_share * setup_hours(self.know, step)
            delay = 0.0 if step.what == "cure" else amounts.wait_h.likely / 24.0
            value = (
                aim.money * amounts.money.likely
                + aim.hours * hours * self.workshop.hour_worth
                + aim.days * delay * self.workshop.day_worth
            )
            self._step_cost[key] = value
        return value


_SETUP = {
    "spray": "spray-coat", "brush": "brush-coat", "roller": "roll-coat", "wipe": "wipe-coat", "pad": "wipe-coat",
}  # fmt: skip


def setup_hours(know: Knowledge, step: Step) -> float:
    """Return set-up and clean-up of a step [h], to be shared by the surfaces of one session."""
    if step.is_coat:
        return know.labour(_SETUP.get(step.method, "brush-coat")).setup_h * max(1, step.coats)
    if step.verb == "strip":
        return know.labour("strip").setup_h
    if step.verb in {"sand", "scuff", "clean", "rinse", "scrape"}:
        return 0.05
    return 0.0


@dataclass(slots=True)
class Search:
    """
    A search on one bench for one look.

    Attributes
    ----------
    bench
        The surface.
    menu
        What may be offered.
    weights
        Belief per world [1]; normally the start's own.
    aim
        Weighting.
    """

    bench: Bench
    menu: Menu
    weights: tuple[float, ...]
    aim: Aim = BALANCED
    _slots: list[tuple[int, int, float]] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Lay out the slots: every world with every zone."""
        for w, _ in enumerate(self.bench.begin.worlds):
            for z, share in enumerate(self.bench.begin.shares):
                self._slots.append((w, z, self.weights[w] * share))

    def run(self, most: int = MAX_EXPANSIONS) -> Found:
        """Return the cheapest route, or an empty one where no way leads to the look."""
        bench = self.bench
        slots = tuple(
            bench.engines[z].state_id(bench.begin.worlds[w].states[z]) for w, z, _ in self._slots
        )
        root = _Node(0, slots, tuple(() for _ in slots), None, (), False)
        ahead = self._ahead(root)
        tie = count()
        heap: list[tuple[float, int, float, _Node, Run | None]] = [(ahead[0], next(tie), 0.0, root, None)]
        best: dict[tuple[int, tuple[int, ...], tuple[Charged, ...], bool], float] = {}
        expanded = 0
        bound = 0.0
        while heap:
            bound, _, cost, node, pending = heappop(heap)
            if pending is not None:
                made = self._follow(node, pending, cost)
                if made is not None:
                    nxt, price = made
                    heappush(heap, (price + ahead[nxt.stage], next(tie), price, nxt, None))
                continue
            if node.stage == len(STAGES):
                return Found(steps=_way(node), cost=cost, expanded=expanded, exact=True, bound=cost)
            key = (node.stage, node.slots, node.charged, node.removed)
            if best.get(key, float("inf")) <= cost:
                continue
            best[key] = cost
            expanded += 1
            if expanded > most:
                break
            for run in self._runs(node):
                least = cost + self._least(node, run) + ahead[node.stage + 1]
                heappush(heap, (least, next(tie), cost, node, run))
        done = [(c, n) for _, _, c, n, pending in heap if n.stage == len(STAGES) and pending is None]
        if done:
            cost, node = min(done, key=lambda pair: pair[0])
            return Found(steps=_way(node), cost=cost, expanded=expanded, exact=False, bound=bound)
        return Found(steps=(), cost=float("inf"), expanded=expanded, exact=not heap, bound=bound)

    def _least(self, node: _Node, run: Run) -> float:
        """Return what a run costs at the least: its work, before any fault is judged [money]."""
        bare = self._state(node, 0).bare
        return sum(self.bench.step_cost(step, self.aim, on_bare=bare and i == 0) for i, step in enumerate(run))

    def cost_of(self, steps: tuple[Step, ...]) -> float:
        """Return the cost of a given route under this search's weights and aim [money]; missing the look is charged."""
        bench = self.bench
        slots = tuple(bench.engines[z].state_id(bench.begin.worlds[w].states[z]) for w, z, _ in self._slots)
        root = _Node(0, slots, tuple(() for _ in slots), None, (), False)
        made = self._follow(root, steps, 0.0)
        if made is None:
            return float("inf")
        node, cost = made
        end = self._end(list(node.slots))
        area = max(bench.surface.area_m2, 0.2)
        return cost + (end if end is not None else _REDO_M2 * area)

    def _ahead(self, root: _Node) -> list[float]:
        """Return a cost that every route still has to pay from each stage on [money]."""
        states = [self._state(root, i) for i in range(len(root.slots))]
        body = min(
            (sum(self.bench.step_cost(s, self.aim, on_bare=False) for s in run)
             for run in self.menu.offers("body", states, self._zones())),
            default=0.0,
        )  # fmt: skip
        at = STAGES.index("body")
        opaque = self.menu.look.kind == "opaque"
        factor = 0.6 if opaque else 0.98
        return [factor * body if stage <= at else 0.0 for stage in range(len(STAGES) + 1)]

    def _zones(self) -> tuple[str, ...]:
        """Return the zone name per slot."""
        return tuple(self.bench.begin.grounds[z].zone for _, z, _ in self._slots)

    def _state(self, node: _Node, slot: int) -> State:
        """Return the state of a slot."""
        return self.bench.engines[self._slots[slot][1]].state(node.slots[slot])

    def _runs(self, node: _Node) -> Sequence[Run]:
        """Return the runs offered at a node."""
        states = [self._state(node, i) for i in range(len(node.slots))]
        return self.menu.offers(STAGES[node.stage], states, self._zones())

    def _follow(self, node: _Node, run: Run, cost: float) -> tuple[_Node, float] | None:
        """Return the node after a run with its cost, or None where the goal is missed."""
        slots, charged, removed = list(node.slots), list(node.charged), node.removed
        engines = self.bench.engines
        for step in run:
            bare = self._state_of(slots, 0).bare
            cost += self.bench.step_cost(step, self.aim, on_bare=bare)
            if not removed and loses_original(step) and not self._state_of(slots, 0).bare:
                cost += VALUE_LOST_M2.get(self.bench.surface.value, 0.0) * self.bench.surface.area_m2
                removed = True
            for i, (_, z, share) in enumerate(self._slots):
                slots[i], hits = engines[z].play(slots[i], step)
                if hits:
                    price, charged[i] = self._charge(hits, charged[i], remember=step.is_coat)
                    cost += self.aim.risk * share * price
        stage = node.stage + 1
        if stage == len(STAGES):
            end = self._end(slots)
            if end is None:
                return None
            cost += end
        return _Node(stage, tuple(slots), tuple(charged), node, run, removed), cost

    def _state_of(self, slots: list[int], i: int) -> State:
        """Return the state of one slot in a list."""
        return self.bench.engines[self._slots[i][1]].state(slots[i])

    def _charge(self, hits: Hits, charged: Charged, *, remember: bool) -> tuple[float, Charged]:
        """Return the price of hits beyond what was charged, and what is charged now."""
        price = 0.0
        known = dict(charged)
        changed = False
        for hit in hits:
            key = f"{hit.fault}|{hit.cause}"
            before = known.get(key, 0.0)
            if hit.chance > before:
                price += self.bench.harm_of(hit.fault) * (hazard(hit.chance) - hazard(before))
                if remember and hit.chance > 0.05:
                    known[key] = round(hit.chance, 3)
                    changed = True
        return price, (tuple(sorted(known.items())) if changed else charged)

    def _end(self, slots: list[int]) -> float | None:
        """Return the cost of what is missed at the end, or None where the look is not had."""
        area = self.bench.surface.area_m2
        cost = 0.0
        had = 0.0
        flat = 0.0
        for i, (w, z, share) in enumerate(self._slots):
            ground = self.bench.begin.grounds[z]
            state = self._state_of(slots, i)
            ok = reached(self.menu.know, ground, self.menu.look, state)
            cost += share * flaws(self.menu.know, self.menu.look, state, area)
            if not ok:
                cost += share * _MISSED_M2 * max(area, 0.2)
            main = ground.zone == "flat" or len(self.bench.begin.grounds) == 1
            if main:
                flat += self.weights[w]
                had += self.weights[w] if ok else 0.0
        return cost if flat <= 0 or had >= _NEEDED_WEIGHT * flat else None


def loses_original(step: Step) -> bool:
    """Return whether a step takes off or hides an original surface."""
    return (
        step.verb in {"strip", "paint"}
        or (step.verb in {"sand", "scrape"} and "to bare" in step.how)
        or (step.verb == "sand" and 0 < step.grit < 180)
    )


def _way(node: _Node) -> tuple[Step, ...]:
    """Return the steps that lead to a node."""
    runs: list[Run] = []
    at: _Node | None = node
    while at is not None:
        runs.append(at.run)
        at = at.parent
    return tuple(step for run in reversed(runs) for step in run)


def find(
    know: Knowledge, workshop: Workshop, surface: Surface, begin: Start, look: Look, aim: Aim = BALANCED
) -> Found:
    """Return the cheapest route for a surface and a look, worlds as believed."""
    bench = Bench(know, workshop, surface, begin)
    menu = Menu(know=know, workshop=workshop, surface=surface, look=look)
    return Search(bench, menu, tuple(w.weight for w in begin.worlds), aim).run()
