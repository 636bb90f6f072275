"""Search: the cheapest way from a surface as it is to the look that is wanted."""

from dataclasses import dataclass, field, replace
from heapq import heappop, heappush

from refettle.domain.piece import Look, Surface, Workshop
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.ahead import ALSO, BODY, CLOSE, PROTECT, Ahead, colours_of, last_class, tails_of
from refettle.planning.bench import Bench, Offer, setup_hours
from refettle.planning.cost import BALANCED, VALUE_LOST_M2, Aim
from refettle.planning.goal import flaws, flaws_at_least, reached
from refettle.planning.offers import STAGES, Menu, Run
from refettle.planning.start import Start

__all__ = [
    "MAX_EXPANSIONS",
    "VALUE_LOST_M2",
    "Bench",
    "Found",
    "Search",
    "find",
    "loses_original",
    "setup_hours",
]

MAX_EXPANSIONS = 2500
_MISSED_M2 = 90.0
_REDO_M2 = 120.0
_NEEDED_WEIGHT = 0.6
_FEW_SLOTS = (1, 3)
_GLANCED = -1
_DONE = len(STAGES)
_MEND, _SMOOTH, _COLOUR = STAGES.index("mend"), STAGES.index("smooth"), STAGES.index("colour")


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


@dataclass(frozen=True, slots=True, eq=False)
class _Node:
    """A point of the search: stage, states and what was charged per slot, way and cost so far, floor of what follows."""

    stage: int
    slots: tuple[int, ...]
    charged: tuple[int, ...]
    parent: "_Node | None"
    run: Run
    removed: bool
    cost: float
    floor: float = 0.0

    @property
    def key(self) -> tuple[object, ...]:
        """Return what nodes must share for the dearer one to be dropped."""
        return (self.stage, self.slots, self.charged, self.removed)

    @property
    def laid(self) -> tuple[str, ...]:
        """Return the classes of the tail laid so far: none, the body's, the body's and the one over it."""
        if self.stage <= BODY or self.parent is None:
            return ()
        mine = last_class(self.run)
        return (mine,) if self.stage == PROTECT else (*self.parent.laid, mine)


_Entry = tuple[float, tuple[int, ...], _Node, Offer | None, int]
"""Bound [money], turns taken so far (breaks ties alike in every run), node, offer still to be judged, how far."""


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

    Notes
    -----
    Best first by cost so far and the bound of `Ahead`. A run is judged step by step on ever more slots: not at all,
    on the heaviest, on all; each time it goes back into the queue at what it costs at the least.
    """

    bench: Bench
    menu: Menu
    weights: tuple[float, ...]
    aim: Aim = BALANCED
    _slots: list[tuple[int, int, float]] = field(default_factory=list)
    _order: tuple[int, ...] = ()
    _zones: tuple[str, ...] = ()
    _work: dict[tuple[int, bool], float] = field(default_factory=dict)
    _works: dict[tuple[tuple[int, ...], bool], float] = field(default_factory=dict)
    _floors: dict[tuple[int, int], float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Lay out the slots: every world with every zone; the heaviest are judged first."""
        begin = self.bench.begin
        for w, _ in enumerate(begin.worlds):
            for z, share in enumerate(begin.shares):
                self._slots.append((w, z, self.weights[w] * share))
        self._zones = tuple(begin.grounds[z].zone for _, z, _ in self._slots)
        rest = sorted(range(1, len(self._slots)), key=lambda i: -self._slots[i][2])
        self._order = (0, *rest)

    def run(self, most: int = MAX_EXPANSIONS) -> Found:
        """Return the cheapest route, or an empty one where no way leads to the look."""
        root = self._root()
        ahead = self._ahead(root)
        heap: list[_Entry] = [(0.0, (), root, None, 0)]
        best: dict[tuple[object, ...], float] = {}
        expanded = 0
        bound = 0.0
        while heap:
            bound, path, node, pending, judged = heappop(heap)
            if pending is not None:
                made = self._judge(ahead, node, pending, judged)
                if made is not None:
                    heappush(heap, (max(bound, made[0]), path, *made[1:]))
                continue
            if node.stage == _DONE:
                return Found(steps=_way(node), cost=node.cost, expanded=expanded, exact=True, bound=node.cost)
            if best.get(node.key, float("inf")) <= node.cost:
                continue
            best[node.key] = node.cost
            expanded += 1
            if expanded > most:
                break
            bare = self._state(0, node.slots[0]).bare
            for turn, offer in enumerate(self._offers(node.stage, node.slots)):
                least = node.cost + self._work_of(offer.numbers, bare=bare)
                least += self._after(ahead, node, offer, node.charged, judged=False)
                heappush(heap, (max(bound, least), (*path, turn), node, offer, 0))
        done = [node for _, _, node, pending, _ in heap if node.stage == _DONE and pending is None]
        if done:
            node = min(done, key=lambda n: n.cost)
            return Found(steps=_way(node), cost=node.cost, expanded=expanded, exact=False, bound=bound)
        return Found(steps=(), cost=float("inf"), expanded=expanded, exact=not heap, bound=bound)

    def cost_of(self, steps: tuple[Step, ...]) -> float:
        """Return the cost of a given route under this search's weights and aim [money]; missing the look is charged."""
        node = self._follow(self._root(), self.bench.offer(steps), self._order)
        end = self._end(node.slots)
        area = max(self.bench.surface.area_m2, 0.2)
        return node.cost + (end if end is not None else _REDO_M2 * area)

    def _root(self) -> _Node:
        """Return the node to begin with."""
        bench = self.bench
        slots = tuple(bench.engines[z].state_id(bench.begin.worlds[w].states[z]) for w, z, _ in self._slots)
        return _Node(0, slots, tuple(0 for _ in slots), None, (), False, 0.0)

    def _ahead(self, root: _Node) -> Ahead:
        """Return the bound of this search."""
        states = [self._state(i, number) for i, number in enumerate(root.slots)]
        bench, menu = self.bench, self.menu
        tails = bench.kept(menu, "tails", lambda: tails_of(bench, menu, states, self._zones))
        colours = bench.kept(menu, "colours", lambda: colours_of(bench, menu, states, self._zones))
        return Ahead(bench, self.aim, tails, colours, tuple((z, share) for _, z, share in self._slots))

    def _after(self, ahead: Ahead, node: _Node, offer: Offer, charged: tuple[int, ...], *, judged: bool) -> float:
        """Return what is still to be paid at the least after an offer, given what is charged by then [money]."""
        if node.stage < BODY:
            return node.floor + ahead.least((), charged)
        if node.stage == CLOSE:
            return node.floor
        laid = (*node.laid, last_class(offer.run))
        return node.floor + ahead.least(laid if judged else (ALSO, *laid), charged)

    def _judge(
        self, ahead: Ahead, node: _Node, offer: Offer, judged: int
    ) -> tuple[float, _Node, Offer | None, int] | None:
        """Return what an offer becomes judged further: itself at a higher price, a node, or nothing."""
        if judged == 0 and offer.run and offer.run[0].is_coat:
            return self._glance(ahead, node, offer), node, offer, _GLANCED
        every = len(self._order)
        wanted = next((few for few in _FEW_SLOTS if judged < few < every), every)
        then = self._follow(node, offer, self._order[:wanted])
        if wanted < every:
            return then.cost + self._after(ahead, node, offer, then.charged, judged=True), node, offer, wanted
        if then.stage < _DONE:
            floor, stage_least = self._floor(ahead, then)
            then = replace(then, floor=floor)
            return then.cost + floor + stage_least + ahead.least(then.laid, then.charged), then, None, 0
        end = self._end(then.slots)
        if end is None:
            return None
        then = replace(then, cost=then.cost + end)
        return then.cost, then, None, 0

    def _glance(self, ahead: Ahead, node: _Node, offer: Offer) -> float:
        """Return what an offer of coats costs at the least by what is remembered of its first coat [money]."""
        first = offer.numbers[0]
        charged = list(node.charged)
        risk = 0.0
        for (z, state, paid), slots in self._lots(node, self._order).items():
            price, then = self.bench.glance(z, state, first, paid)
            risk += price * sum([self._slots[i][2] for i in slots])
            if then != paid:
                for i in slots:
                    charged[i] = then
        cost = node.cost + self._work_of(offer.numbers, bare=self._state(0, node.slots[0]).bare) + self.aim.risk * risk
        return cost + self._after(ahead, node, offer, tuple(charged), judged=True)

    def _lots(self, node: _Node, order: tuple[int, ...]) -> dict[tuple[int, int, int], list[int]]:
        """Return the slots that fare alike from a node on: zone, state and what was charged → slots."""
        lots: dict[tuple[int, int, int], list[int]] = {}
        for i in order:
            lots.setdefault((self._slots[i][1], node.slots[i], node.charged[i]), []).append(i)
        return lots

    def _floor(self, ahead: Ahead, node: _Node) -> tuple[float, float]:
        """
        Return what a node's descendants pay at the least beyond their tail, and what its own stage takes [money].

        Notes
        -----
        Mending does not touch what smoothing is offered, and no stage after it takes away damage.
        """
        if node.stage < _MEND:
            return ahead.colour, 0.0
        if node.stage == _MEND:
            return ahead.colour + self._cheapest(node, _SMOOTH), 0.0
        flaws_left = sum(
            [share * self._flaws(z, number) for (_, z, share), number in zip(self._slots, node.slots, strict=True)]
        )
        if node.stage == _SMOOTH:
            return flaws_left + ahead.colour, self._cheapest(node, _SMOOTH)
        return flaws_left, self._cheapest(node, _COLOUR) if node.stage == _COLOUR else 0.0

    def _flaws(self, zone: int, number: int) -> float:
        """Return what the damage of a state takes off the worth at the least [money]."""
        key = (zone, number)
        known = self._floors.get(key)
        if known is None:
            state = self.bench.engines[zone].state(number)
            known = flaws_at_least(self.menu.know, self.menu.look, state, self.bench.surface.area_m2)
            self._floors[key] = known
        return known

    def _cheapest(self, node: _Node, stage: int) -> float:
        """Return the least work offered at a stage [money], as the states of a node stand."""
        offers = self._offers(stage, node.slots)
        return min([self._work_of(offer.numbers, bare=False) for offer in offers], default=0.0)

    def _work_of(self, numbers: tuple[int, ...], *, bare: bool) -> float:
        """Return the work of some steps at the least, before any fault is judged [money]."""
        key = (numbers, bare)
        known = self._works.get(key)
        if known is None:
            known = sum(self._cost(number, bare=bare and i == 0) for i, number in enumerate(numbers))
            self._works[key] = known
        return known

    def _cost(self, number: int, *, bare: bool) -> float:
        """Return the work of one step [money]."""
        key = (number, bare)
        known = self._work.get(key)
        if known is None:
            known = self._work[key] = self.bench.numbered_cost(number, self.aim, on_bare=bare)
        return known

    def _offers(self, stage: int, slots: tuple[int, ...]) -> tuple[Offer, ...]:
        """Return what is offered at a stage."""
        engines = self.bench.engines
        readings = [engines[z].reading(number) for (_, z, _), number in zip(self._slots, slots, strict=True)]
        return self.bench.offers(self.menu, STAGES[stage], readings, self._zones)

    def _state(self, slot: int, number: int) -> State:
        """Return the state of a slot by its number."""
        return self.bench.engines[self._slots[slot][1]].state(number)

    def _follow(self, node: _Node, offer: Offer, order: tuple[int, ...]) -> _Node:
        """Return the node after an offer, judged on some slots; the first slot is always the first among them."""
        slots, charged = list(node.slots), list(node.charged)
        move, numbers = self.bench.move, offer.numbers
        cost, removed = node.cost, node.removed
        risk = 0.0
        for (z, state, paid), members in self._lots(node, order).items():
            leads = members[0] == 0
            total = 0.0
            for number in numbers:
                if leads:
                    work, removed = self._lead(number, removed, bare=self._state(0, state).bare)
                    cost += work
                state, price, paid = move(z, state, number, paid)  # noqa: PLW2901 - a lot moves on
                total += price
            risk += total * sum([self._slots[i][2] for i in members])
            for i in members:
                slots[i], charged[i] = state, paid
        cost += self.aim.risk * risk
        return _Node(node.stage + 1, tuple(slots), tuple(charged), node, offer.run, removed, cost)

    def _lead(self, number: int, removed: bool, *, bare: bool) -> tuple[float, bool]:  # noqa: FBT001 - a state handed on
        """Return the work of a step, worth of an original that it loses included [money], and whether it is lost now."""
        work = self._cost(number, bare=bare)
        if removed or bare or not loses_original(self.bench.steps[number]):
            return work, removed
        surface = self.bench.surface
        return work + VALUE_LOST_M2.get(surface.value, 0.0) * surface.area_m2, True

    def _end(self, slots: tuple[int, ...]) -> float | None:
        """Return the cost of what is missed at the end [money], or None where the look is not had."""
        area = self.bench.surface.area_m2
        cost = 0.0
        had = 0.0
        flat = 0.0
        for i, (w, z, share) in enumerate(self._slots):
            ground = self.bench.begin.grounds[z]
            state = self._state(i, slots[i])
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
