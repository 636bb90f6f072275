"""
What a route still has to pay at the least: the bound that keeps the search small and exact.

However the old film is dealt with, a route ends with the coats for the look, perhaps a coat over them, the wait
and use. Of each such tail the work is known beforehand, and so are the faults that no surface can avoid: those
whose rules read nothing but the step and the films of the tail itself. The cheapest tail is the bound.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from operator import itemgetter

from refettle.domain.plan import Hit
from refettle.domain.state import AGED, Film, State, changed
from refettle.planning.bench import Bench, Offer
from refettle.planning.cost import Aim, hazard
from refettle.planning.offers import CLOSING_USE, STAGES, Menu, Run

Faults = dict[str, tuple[float, float]]
"""Fault and cause → chance [1] and harm [money]."""
Priced = dict[str, tuple[float, float]]
"""Fault and cause → hazard [1] and harm [money]."""

ALSO = "also the faults of"
BODY, PROTECT, CLOSE = STAGES.index("body"), STAGES.index("protect"), STAGES.index("close")


@dataclass(slots=True, eq=False)
class Tail:
    """
    One way in which a route can end.

    Attributes
    ----------
    body, over
        Class that makes the look and class laid over it; empty = none.
    laid, upon, close
        Their steps, and the closing ones of either.
    ends
        What its faults are worked out with, once they are asked for.
    """

    body: str
    over: str
    laid: Offer
    upon: Offer
    close: tuple[Offer, ...]
    ends: "_Ends"
    _faults: dict[int, tuple[Priced, ...]] = field(default_factory=dict)
    _prices: dict[int, tuple[float, ...]] = field(default_factory=dict)

    def prices(self, laid: int) -> tuple[float, ...]:
        """Return, per zone, the price of those faults with nothing charged [money]."""
        known = self._prices.get(laid)
        if known is None:
            priced = self.faults(laid)
            known = tuple(sum([harm * risk for risk, harm in zone.values()]) for zone in priced)
            self._prices[laid] = known
        return known

    def faults(self, laid: int) -> tuple[Priced, ...]:
        """Return, per zone, the faults that none avoids: of all; with 1 laid of what goes over and use; with 2 of use."""
        known = self._faults.get(laid)
        if known is None:
            zones = range(len(self.ends.bench.engines))
            parts = [self.ends.sure(self.laid.run), self.ends.sure(self.upon.run), self.ends.in_use(self)][
                laid:
            ]
            known = self._faults[laid] = tuple(_strongest([part[zone] for part in parts]) for zone in zones)
        return known


def last_class(run: Run) -> str:
    """Return the class of the last coat of a run, or nothing where it lays none."""
    return next((step.what for step in reversed(run) if step.is_coat), "")


def tails_of(bench: Bench, menu: Menu, states: Sequence[State], zones: Sequence[str]) -> tuple[Tail, ...]:
    """
    Return every tail that a menu could offer on a bench, each with its least number of coats.

    Parameters
    ----------
    bench, menu
        Surface and menu.
    states, zones
        States to begin with, and the zone of each.

    Returns
    -------
    tuple
        Tails. Paint hides an opaque primer in the fewest coats, so that one is tried as ground too.
    """
    grounds = [states]
    if menu.look.base == "opaque":
        primers = [
            c for c in menu.know.ids("film") if menu.know.film(c).opaque and "prime" in menu.know.film(c).role
        ]
        grounds.append(
            [replace(s, colour="opaque", stack=(Film(cls=c, um=30),)) for s in states for c in primers[:1]]
        )
    bodies: dict[Run, None] = {}
    for ground in grounds:
        bodies.update(dict.fromkeys(menu.offers("body", ground, zones)))
    earlier = (*menu.offers("colour", states, zones), *menu.offers("under", states, zones))
    ends = _Ends(bench, menu, earlier)
    return tuple(tail for run in bodies for tail in ends.tails(run))


def colours_of(bench: Bench, menu: Menu, states: Sequence[State], zones: Sequence[str]) -> tuple[Offer, ...]:
    """Return every colour that a menu could offer on a bench, each in one coat."""
    return tuple(
        bench.offer(tuple(replace(s, coats=1, wait_between_h=0.0) if s.is_coat else s for s in run))
        for run in menu.offers("colour", states, zones)
    )


@dataclass(slots=True, eq=False)
class _Ends:
    """What the tails of one menu share: the states they lead to and the faults of their runs, each worked out once."""

    bench: Bench
    menu: Menu
    earlier: Sequence[Run]
    _sure: dict[Run, list[Faults]] = field(default_factory=dict)
    _use: dict[tuple[Run, Run], list[Faults]] = field(default_factory=dict)
    _close: dict[Run, list[Run]] = field(default_factory=dict)
    _laid: dict[tuple[int, Run], State] = field(default_factory=dict)

    def tails(self, body: Run) -> Iterator[Tail]:
        """Yield the tails with one body."""
        offer = self.bench.offer
        for over in self.menu.offers("protect", [self.laid(0, body)], ("flat",)):
            closes = dict.fromkeys((*self.closes(body), *(self.closes(over) if over else ())))
            yield Tail(
                last_class(body), last_class(over), offer(body), offer(over), tuple(map(offer, closes)), self
            )

    def closes(self, run: Run) -> list[Run]:
        """Return how a surface is closed that has had one run alone."""
        known = self._close.get(run)
        if known is None:
            known = self._close[run] = self.menu.offers("close", [self.laid(0, run)], ("flat",))
        return known

    def laid(self, zone: int, run: Run) -> State:
        """Return the state after a run on bare wood."""
        known = self._laid.get((zone, run))
        if known is None:
            known = self._laid[zone, run] = self.walked(zone, State(), run)
        return known

    def walked(self, zone: int, state: State, run: Run) -> State:
        """Return the state after a run, its films aged: what use meets at the best."""
        for step in run:
            state = self.bench.engines[zone].after(state, step)
        return changed(state, stack=tuple(f if f.old else changed(f, ripe=AGED) for f in state.stack))

    def sure(self, run: Run) -> list[Faults]:
        """Return, per zone, the faults of a run that do not depend on the surface."""
        known = self._sure.get(run)
        if known is None:
            known = self._sure[run] = [
                _causes(self.bench, [hit for step in run for hit in engine.sure_hits(step)])
                for engine in self.bench.engines
            ]
        return known

    def in_use(self, tail: Tail) -> list[Faults]:
        """
        Return, per zone, the faults of use that depend on nothing but the films of a tail.

        Notes
        -----
        Where an earlier coat may be of the body's class they count as one film: the best of these ends counts.
        """
        body, over = tail.laid.run, tail.upon.run
        known = self._use.get((body, over))
        if known is None:
            before = [run for run in self.earlier if any(s.is_coat and s.what == tail.body for s in run)]
            known = self._use[body, over] = []
            for zone in range(len(self.bench.engines)):
                ends = [self.walked(zone, self.laid(zone, body), over)]
                ends += [self.walked(zone, State(), (*run, *body, *over)) for run in before]
                known.append(_least_of_ends([self._met(zone, end, body, over) for end in ends]))
        return known

    def _met(self, zone: int, end: State, body: Run, over: Run) -> Faults:
        """Return the faults of use on one end."""
        known = {"top", "grit", "coarse"} if body or over else set[str]()
        if body and over:
            known.add("second")
        if not end.bare:
            known.add("bare")
        if end.colour == "opaque":
            known |= {"colour", "depth"}
        return _causes(self.bench, self.bench.engines[zone].sure_hits(CLOSING_USE, end, frozenset(known)))


def _least_of_ends(ends: Sequence[Faults]) -> Faults:
    """Return the causes that all ends meet, each at its lowest chance."""
    first, *others = ends
    return {cause: min(end[cause] for end in ends) for cause in first if all(cause in end for end in others)}


def _causes(bench: Bench, hits: Sequence[Hit]) -> Faults:
    """Return each cause of some hits at its highest chance."""
    faults: Faults = {}
    for hit in hits:
        key = f"{hit.fault}|{hit.cause}"
        if hit.chance > faults.get(key, (0.0, 0.0))[0]:
            faults[key] = (hit.chance, bench.harm_of(hit.fault))
    return faults


_Way = tuple[float, Tail, int]
"""Work [money] of a tail from some stage on, the tail, and how much of it is laid by then."""
_WORK = itemgetter(0)


class _Rests:
    """
    Ways that can be open from some stage on: what each costs with nothing charged, and its sure faults by cause.

    Parameters
    ----------
    ways
        The ways. One whose work alone is dearer than another with all its faults can never be the cheapest.
    area
        Share of area and belief per zone [1].
    risk
        Weight of faults [1].
    """

    __slots__ = ("_by_cause", "_kept", "bases", "least")

    def __init__(self, ways: Sequence[_Way], area: Sequence[float], risk: float) -> None:
        """Keep the ways that can be the cheapest."""
        self.least = float("inf")
        self.bases: list[float] = []
        self._kept: list[tuple[Tail, int]] = []
        self._by_cause: dict[tuple[int, str], list[tuple[int, float, float]]] = {}
        for work, tail, laid in sorted(ways, key=_WORK):
            if work > self.least:
                break
            prices = tail.prices(laid)
            base = work + risk * sum([share * price for share, price in zip(area, prices, strict=True)])
            self.bases.append(base)
            self._kept.append((tail, laid))
            self.least = min(self.least, base)

    def meeting(self, zone: int, cause: str) -> Sequence[tuple[int, float, float]]:
        """Return the ways that meet a cause in a zone: number, hazard [1], harm [money]."""
        if not self._by_cause:
            for number, (tail, laid) in enumerate(self._kept):
                for z, priced in enumerate(tail.faults(laid)):
                    for name, (whole, harm) in priced.items():
                        self._by_cause.setdefault((z, name), []).append((number, whole, harm))
        return self._by_cause.get((zone, cause), ())


@dataclass(slots=True, eq=False)
class Ahead:
    """
    The bound of one search.

    Attributes
    ----------
    bench
        The surface.
    aim
        Weighting.
    tails
        How a route can end.
    colours
        What may colour the wood before.
    loses
        Whether every tail hides an original surface that is still there.
    colour
        Least work of a colour [money].
    slots
        Zone and share of area and belief per slot.
    """

    bench: Bench
    aim: Aim
    tails: tuple[Tail, ...]
    colours: tuple[Offer, ...]
    slots: tuple[tuple[int, float], ...]
    colour: float = 0.0
    loses: bool = False
    _area: list[float] = field(default_factory=list)
    _ways: dict[tuple[str, ...], list[_Way]] = field(default_factory=dict)
    _rests: dict[tuple[str, ...], _Rests] = field(default_factory=dict)
    _least: dict[tuple[tuple[str, ...], tuple[int, ...]], float] = field(default_factory=dict)
    _cut: dict[tuple[tuple[str, ...], int, int], tuple[tuple[int, float], ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Sort the tails by what is still open of them: all, a coat over, the close; find the cheapest colour."""
        self.loses = bool(self.tails) and all(tail.laid.loses for tail in self.tails)
        self.colour = min((self._work(offer) for offer in self.colours), default=0.0)
        self._area = [0.0] * len(self.bench.engines)
        for zone, share in self.slots:
            self._area[zone] += share
        for tail in self.tails:
            body, over = self._work(tail.laid), self._work(tail.upon)
            close = max((self._work(offer) for offer in tail.close), default=0.0)
            for key, work, laid in (
                ((), body + over + close, 0),
                ((tail.body,), over + close, 1),
                ((tail.body, tail.over), close, 2),
                ((ALSO, tail.body), over + close, 0),
                ((ALSO, tail.body, tail.over), close, 1),
            ):
                self._ways.setdefault(key, []).append((work, tail, laid))

    def _work(self, offer: Offer) -> float:
        """Return the work of an offer on sealed ground [money]."""
        return sum(self.bench.numbered_cost(number, self.aim, on_bare=False) for number in offer.numbers)

    def least(self, open_from: tuple[str, ...], charged: tuple[int, ...]) -> float:
        """
        Return what is still to be paid at the least [money].

        Parameters
        ----------
        open_from
            Empty before the body is laid; its class; its class and the one over it. With `ALSO` before them, the
            faults of the last of them are still open too.
        charged
            Number of what is charged per slot.

        Returns
        -------
        float
            Bound [money]; 0 for a tail that was not foreseen.
        """
        key = (open_from, charged)
        known = self._least.get(key)
        if known is None:
            rests = self._rests.get(open_from)
            if rests is None and open_from in self._ways:
                rests = self._rests[open_from] = _Rests(self._ways[open_from], self._area, self.aim.risk)
            known = self._least[key] = self._least_of(open_from, rests, charged) if rests else 0.0
        return known

    def _least_of(self, open_from: tuple[str, ...], rests: _Rests, charged: tuple[int, ...]) -> float:
        """Return the least of some rests [money], what was charged taken off."""
        less: dict[int, float] = {}
        for (zone, share), number in zip(self.slots, charged, strict=True):
            if number:
                for way, cut in self._cuts(open_from, rests, zone, number):
                    less[way] = less.get(way, 0.0) + share * cut
        if not less:
            return rests.least
        risk = self.aim.risk
        return min([base - risk * less[n] if n in less else base for n, base in enumerate(rests.bases)])

    def _cuts(
        self, open_from: tuple[str, ...], rests: _Rests, zone: int, number: int
    ) -> tuple[tuple[int, float], ...]:
        """Return, for the ways of which something has been charged, the price of that [money]."""
        key = (open_from, zone, number)
        known = self._cut.get(key)
        if known is None:
            cuts: dict[int, float] = {}
            for cause, chance in self.bench.charges[number]:
                for way, whole, harm in rests.meeting(zone, cause):
                    cuts[way] = cuts.get(way, 0.0) + harm * min(hazard(chance), whole)
            known = self._cut[key] = tuple(cuts.items())
        return known


def _strongest(parts: Sequence[Faults]) -> Priced:
    """Return each cause at its highest chance, as a hazard."""
    merged: Faults = {}
    for faults in parts:
        for cause, pair in faults.items():
            if pair > merged.get(cause, (0.0, 0.0)):
                merged[cause] = pair
    return {cause: (hazard(chance), harm) for cause, (chance, harm) in merged.items()}
