"""Search: the cheapest way from a surface as it is to the look that is wanted."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from heapq import heappop, heappush

from refettle.domain.piece import Look, Surface
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.ahead import ALSO, BODY, CLOSE, Ahead, colours_of, last_class, tails_of
from refettle.planning.bench import Bench, Offer, loses_original, setup_hours
from refettle.planning.cost import BALANCED, VALUE_LOST_M2, Aim
from refettle.planning.goal import flaws, flaws_at_least, out_of_reach, reached
from refettle.planning.node import Entry, Lot, Node, way_to
from refettle.planning.offers import STAGES, Menu
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
_DIVE_WIDTH = 3
_DIVES_FROM = 40
_NEEDED_WEIGHT = 0.6
_FEW_LOTS = (1, 3)
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
    Best first by cost so far and the bound of `Ahead`. An offer is judged ever further: not at all; by what is
    remembered of its first coat; on the heaviest slots; on all. Each time it goes back into the queue at what it
    costs at the least. Nodes are dropped for equal ones only: a cause below 5 % is charged anew by each coat, so
    that no order between unequal states is quite safe.
    """

    bench: Bench
    menu: Menu
    weights: tuple[float, ...]
    aim: Aim = BALANCED
    _slots: list[tuple[int, int, float]] = field(default_factory=list)
    _order: tuple[int, ...] = ()
    _lost: float = 0.0
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
        surface = self.bench.surface
        self._lost = VALUE_LOST_M2.get(surface.value, 0.0) * surface.area_m2

    def run(self, most: int = MAX_EXPANSIONS) -> Found:
        """Return the cheapest route, or an empty one where no way leads to the look."""
        if all(out_of_reach(self.menu.know, ground, self.menu.look) for ground in self.bench.begin.grounds):
            return Found(steps=(), cost=float("inf"), expanded=0, exact=True, bound=float("inf"))
        root = self._root()
        ahead = self._ahead(root)
        heap: list[Entry] = [(0.0, (), root, None, 0)]
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
                return Found(
                    steps=way_to(node), cost=node.cost, expanded=expanded, exact=True, bound=node.cost
                )
            if best.get(node.key, float("inf")) <= node.cost:
                continue
            best[node.key] = node.cost
            expanded += 1
            if expanded > most:
                break
            for turn, offer in enumerate(self._offers(node.stage, node.slots)):
                least = node.cost + self._at_least(node, offer)
                least += self._after(ahead, node, offer, node.charged, judged=False)
                heappush(heap, (max(bound, least), (*path, turn), node, offer, 0))
        done = [node for _, _, node, pending, _ in heap if node.stage == _DONE and pending is None]
        if not done and heap:
            likely = {id(e[2]): e[2] for e in sorted(heap, key=lambda e: (e[0], e[1]))[:_DIVES_FROM]}
            deepest = max(heap, key=lambda e: (e[2].stage, -e[0]))[2]
            seen: dict[tuple[object, ...], float] = {}
            ends = [self._dive(ahead, start, seen) for start in (root, deepest, *likely.values())]
            done = [end for end in ends if end is not None]
        if done:
            node = min(done, key=lambda n: n.cost)
            return Found(steps=way_to(node), cost=node.cost, expanded=expanded, exact=False, bound=bound)
        return Found(steps=(), cost=float("inf"), expanded=expanded, exact=not heap, bound=bound)

    def _dive(self, ahead: Ahead, node: Node, seen: dict[tuple[object, ...], float]) -> Node | None:
        """Return an end reached from a node by the best offers, None where there is none or `seen` has been as near."""
        if node.stage == _DONE:
            return node
        if seen.get(node.key, float("inf")) <= node.cost:
            return None
        seen[node.key] = node.cost
        whole = len(self._lots(node))
        made = [self._judge(ahead, node, offer, whole) for offer in self._offers(node.stage, node.slots)]
        ways = sorted((m for m in made if m is not None), key=lambda m: m[0])
        for _, then, _, _ in ways[:_DIVE_WIDTH]:
            end = self._dive(ahead, then, seen)
            if end is not None:
                return end
        return None

    def cost_of(self, steps: tuple[Step, ...]) -> float:
        """Return the cost of a given route under this search's weights and aim [money]; missing the look is charged."""
        cost, end = self.walked(steps)
        return cost + (end if end is not None else _REDO_M2 * max(self.bench.surface.area_m2, 0.2))

    def walked(self, steps: tuple[Step, ...]) -> tuple[float, float | None]:
        """Return the cost of a given route [money], and of what is missed at its end, None where the look is not had."""
        root = self._root()
        lots = self._lots(root)
        node = self._follow(root, self.bench.offer(steps), lots, len(lots))
        return node.cost, self._end(node.slots)

    def _root(self) -> Node:
        """Return the node to begin with."""
        bench = self.bench
        slots = tuple(bench.engines[z].state_id(bench.begin.worlds[w].states[z]) for w, z, _ in self._slots)
        whole = not self._state(0, slots[0]).bare
        return Node(0, slots, tuple(0 for _ in slots), None, (), removed=not whole, cost=0.0, whole=whole)

    def _ahead(self, root: Node) -> Ahead:
        """Return the bound of this search."""
        states = [self._state(i, number) for i, number in enumerate(root.slots)]
        bench, menu = self.bench, self.menu
        tails = bench.kept(menu, "tails", lambda: tails_of(bench, menu, states, self._zones))
        colours = bench.kept(menu, "colours", lambda: colours_of(bench, menu, states, self._zones))
        return Ahead(bench, self.aim, tails, colours, tuple((z, share) for _, z, share in self._slots))

    def _after(
        self, ahead: Ahead, node: Node, offer: Offer, charged: tuple[int, ...], *, judged: bool
    ) -> float:
        """Return what is still to be paid at the least after an offer, given what is charged by then [money]."""
        if node.stage < BODY:
            lost = self._lost if ahead.loses and node.whole and not offer.loses else 0.0
            return node.floor + lost + ahead.least((), charged)
        if node.stage == CLOSE:
            return node.floor
        laid = (*node.laid, last_class(offer.run))
        return node.floor + ahead.least(laid if judged else (ALSO, *laid), charged)

    def _judge(
        self, ahead: Ahead, node: Node, offer: Offer, judged: int
    ) -> tuple[float, Node, Offer | None, int] | None:
        """Return what an offer becomes judged further: itself at a higher price, a node, or nothing."""
        lots = self._lots(node)
        if judged == 0 and offer.run and offer.run[0].is_coat:
            then = self._follow(node, offer, lots, 0)
            return (
                then.cost + self._after(ahead, node, offer, then.charged, judged=True),
                node,
                offer,
                _GLANCED,
            )
        wanted = next((few for few in _FEW_LOTS if judged < few < len(lots)), len(lots))
        then = self._follow(node, offer, lots, wanted)
        if wanted < len(lots):
            return then.cost + self._after(ahead, node, offer, then.charged, judged=True), node, offer, wanted
        if then.stage < _DONE:
            floor, stage_least = self._floor(ahead, then)
            whole = not then.removed and not self._state(0, then.slots[0]).bare
            then = replace(then, floor=floor, whole=whole)
            lost = self._lost if whole and ahead.loses and then.stage <= BODY else 0.0
            return (
                then.cost + floor + stage_least + lost + ahead.least(then.laid, then.charged),
                then,
                None,
                0,
            )
        end = self._end(then.slots)
        if end is None:
            return None
        then = replace(then, cost=then.cost + end)
        return then.cost, then, None, 0

    def _lots(self, node: Node) -> list[Lot]:
        """Return the slots that fare alike from a node on, together; the first slot's lot first, then the heaviest."""
        if node.lots:
            return node.lots
        lots: dict[tuple[int, int, int], Lot] = {}
        for i in self._order:
            key = (self._slots[i][1], node.slots[i], node.charged[i])
            lot = lots.get(key)
            if lot is None:
                lots[key] = lot = Lot(*key)
            lot.slots.append(i)
            lot.share += self._slots[i][2]
        first, *rest = lots.values()
        rest.sort(key=lambda lot: -lot.share)
        node.lots.extend((first, *rest))
        return node.lots

    def _floor(self, ahead: Ahead, node: Node) -> tuple[float, float]:
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
            [
                share * self._flaws(z, number)
                for (_, z, share), number in zip(self._slots, node.slots, strict=True)
            ]
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

    def _cheapest(self, node: Node, stage: int) -> float:
        """Return the least work offered at a stage [money], as the states of a node stand."""
        offers = self._offers(stage, node.slots)
        return min([self._work_of(offer.numbers, bare=False) for offer in offers], default=0.0)

    def _at_least(self, node: Node, offer: Offer) -> float:
        """Return the work of an offer at a node at the least, worth of an original that it takes included [money]."""
        work = self._work_of(offer.numbers, bare=self._state(0, node.slots[0]).bare)
        return work + self._lost if node.whole and offer.loses else work

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

    def _follow(self, node: Node, offer: Offer, lots: Sequence[Lot], count: int) -> Node:
        """Return the node after an offer, the first few lots judged, the others glanced at."""
        slots, charged = list(node.slots), list(node.charged)
        bench, numbers = self.bench, offer.numbers
        glanced = bool(numbers) and offer.run[0].is_coat
        cost, removed = node.cost, node.removed
        risk = 0.0
        if not count:
            cost += self._at_least(node, offer)
        for n, lot in enumerate(lots):
            if n >= count:
                if not glanced:
                    break
                price, paid = bench.glance(lot.zone, lot.state, numbers[0], lot.charged)
                risk += price * lot.share
                for i in lot.slots:
                    charged[i] = paid
                continue
            state, paid = lot.state, lot.charged
            for number in numbers:
                if n == 0:
                    work, removed = self._lead(number, removed, bare=self._state(0, state).bare)
                    cost += work
                state, price, paid = bench.move(lot.zone, state, number, paid)
                risk += price * lot.share
            for i in lot.slots:
                slots[i], charged[i] = state, paid
        cost += self.aim.risk * risk
        return Node(node.stage + 1, tuple(slots), tuple(charged), node, offer.run, removed, cost)

    def _lead(self, number: int, removed: bool, *, bare: bool) -> tuple[float, bool]:
        """Return the work of a step, worth of an original that it loses included [money], and whether it is lost now."""
        work = self._cost(number, bare=bare)
        if removed or bare or not loses_original(self.bench.steps[number]):
            return work, removed
        return work + self._lost, True

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


def find(
    know: Knowledge, workshop: Workshop, surface: Surface, begin: Start, look: Look, aim: Aim = BALANCED
) -> Found:
    """Return the cheapest route for a surface and a look, worlds as believed."""
    bench = Bench(know, workshop, surface, begin)
    menu = Menu(know=know, workshop=workshop, surface=surface, look=look)
    return Search(bench, menu, tuple(w.weight for w in begin.worlds), aim).run()
