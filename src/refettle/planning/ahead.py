"""
What a route still has to pay at the least: the bound that keeps the search small and exact.

However the old film is dealt with, a route ends with the coats for the look, perhaps a coat over them, the wait
and use. Of each such tail the work is known beforehand, and so are the faults that no surface can avoid: those
whose rules read nothing but the step and the films of the tail itself. The cheapest tail is the bound.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from refettle.domain.plan import Hit
from refettle.domain.state import AGED, Film, State
from refettle.planning.bench import Bench, Offer
from refettle.planning.cost import Aim, hazard
from refettle.planning.offers import CLOSING_USE, STAGES, Menu, Run

Faults = dict[str, tuple[float, float]]
"""Fault and cause → chance [1] and harm [money]."""
Priced = dict[str, tuple[float, float]]
"""Fault and cause → hazard [1] and harm [money]."""

ALSO = "also the faults of"
BODY, PROTECT, CLOSE = STAGES.index("body"), STAGES.index("protect"), STAGES.index("close")


@dataclass(frozen=True, slots=True, eq=False)
class Tail:
    """
    One way in which a route can end.

    Attributes
    ----------
    body, over
        Class that makes the look and class laid over it; empty = none.
    laid, upon, close
        Their steps, and the closing ones of either.
    faults
        Per zone the faults that none avoids: of all; of what goes over and use; of use alone.
    """

    body: str
    over: str
    laid: Offer
    upon: Offer
    close: tuple[Offer, ...]
    faults: tuple[tuple[Priced, ...], ...]


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
    if menu.look.kind == "opaque":
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
    return tuple(tail for run in bodies for tail in _tails_of(bench, menu, run, earlier))


def colours_of(bench: Bench, menu: Menu, states: Sequence[State], zones: Sequence[str]) -> tuple[Offer, ...]:
    """Return every colour that a menu could offer on a bench, each in one coat."""
    return tuple(
        bench.offer(tuple(replace(s, coats=1, wait_between_h=0.0) if s.is_coat else s for s in run))
        for run in menu.offers("colour", states, zones)
    )


def _tails_of(bench: Bench, menu: Menu, body: Run, earlier: Sequence[Run]) -> Iterator[Tail]:
    """Yield the tails with one body."""
    zones = range(len(bench.engines))
    cls = last_class(body)
    before = [(), *(run for run in earlier if cls and any(s.is_coat and s.what == cls for s in run))]
    starts = [[_walked(bench, z, State(), (*run, *body)) for run in before] for z in zones]
    of_body = [_sure(bench, z, body) for z in zones]
    closes = menu.offers("close", [starts[0][0]], ("flat",))
    for over in menu.offers("protect", [starts[0][0]], ("flat",)):
        ends = [[_walked(bench, z, state, over) for state in starts[z]] for z in zones]
        later = menu.offers("close", [_walked(bench, 0, State(), over)], ("flat",)) if over else closes
        of_over = [_sure(bench, z, over) for z in zones]
        two, any_laid = bool(body and over), bool(body or over)
        of_use = [_in_use(bench, z, ends[z], covered=any_laid, two=two) for z in zones]
        parts = (of_body, of_over, of_use)
        yield Tail(
            body=cls,
            over=last_class(over),
            laid=bench.offer(body),
            upon=bench.offer(over),
            close=tuple(bench.offer(run) for run in dict.fromkeys((*closes, *later))),
            faults=tuple(tuple(_strongest([part[z] for part in parts[n:]]) for z in zones) for n in range(3)),
        )


def _walked(bench: Bench, zone: int, state: State, run: Run) -> State:
    """Return the state after a run, its films aged: what use meets at the best."""
    for step in run:
        state = bench.engines[zone].after(state, step)
    return replace(state, stack=tuple(replace(f, ripe=AGED) if not f.old else f for f in state.stack))


def _sure(bench: Bench, zone: int, run: Run) -> Faults:
    """Return the faults of a run that do not depend on the surface."""
    faults: Faults = {}
    for step in run:
        _raise(bench, faults, bench.engines[zone].sure_hits(step))
    return faults


def _in_use(bench: Bench, zone: int, ends: Sequence[State], *, covered: bool, two: bool) -> Faults:
    """Return the faults of use that depend on nothing but the films of a tail, at the best of its ends."""
    known = {"top", "grit", "coarse"} if covered else set[str]()
    if two:
        known.add("second")
    per_end = []
    for end in ends:
        seen = (
            known
            | (set() if end.bare else {"bare"})
            | ({"colour", "depth"} if end.colour == "opaque" else set())
        )
        faults: Faults = {}
        _raise(bench, faults, bench.engines[zone].sure_hits(CLOSING_USE, end, frozenset(seen)))
        per_end.append(faults)
    first = per_end[0]
    return {key: min(f[key] for f in per_end) for key in first if all(key in f for f in per_end)}


def _raise(bench: Bench, faults: Faults, hits: Sequence[Hit]) -> None:
    """Raise each cause to the chance of its strongest hit."""
    for hit in hits:
        key = f"{hit.fault}|{hit.cause}"
        if hit.chance > faults.get(key, (0.0, 0.0))[0]:
            faults[key] = (hit.chance, bench.harm_of(hit.fault))


class _Rests:
    """
    Ways that can be open from some stage on: what each costs with nothing charged, and its sure faults by cause.

    Parameters
    ----------
    ways
        Work [money], price of the sure faults [money], and those faults per zone. A way whose work alone is dearer
        than another way with all its faults can never be the cheapest and is left out.
    """

    __slots__ = ("bases", "by_cause", "least")

    def __init__(self, ways: Sequence[tuple[float, float, tuple[Priced, ...]]]) -> None:
        """Keep the ways that can be the cheapest."""
        self.least = min(work + risk for work, risk, _ in ways)
        self.bases: list[float] = []
        self.by_cause: dict[tuple[int, str], list[tuple[int, float, float]]] = {}
        for work, risk, faults in ways:
            if work > self.least:
                continue
            for zone, priced in enumerate(faults):
                for cause, (whole, harm) in priced.items():
                    self.by_cause.setdefault((zone, cause), []).append((len(self.bases), whole, harm))
            self.bases.append(work + risk)


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
    slots
        Zone and share of area and belief per slot.
    """

    bench: Bench
    aim: Aim
    tails: tuple[Tail, ...]
    colours: tuple[Offer, ...]
    slots: tuple[tuple[int, float], ...]
    colour: float = 0.0
    _rests: dict[tuple[str, ...], _Rests] = field(default_factory=dict)
    _least: dict[tuple[tuple[str, ...], tuple[int, ...]], float] = field(default_factory=dict)
    _cut: dict[tuple[tuple[str, ...], int, int], tuple[tuple[int, float], ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Sort the tails by what is still open of them: all, a coat over, the close; find the cheapest colour."""
        self.colour = min((self._work(offer) for offer in self.colours), default=0.0)
        ways: dict[tuple[str, ...], list[tuple[float, float, tuple[Priced, ...]]]] = {}
        area = [0.0] * len(self.bench.engines)
        for zone, share in self.slots:
            area[zone] += share
        for tail in self.tails:
            body, over = self._work(tail.laid), self._work(tail.upon)
            close = max((self._work(offer) for offer in tail.close), default=0.0)
            for key, work, faults in (
                ((), body + over + close, tail.faults[0]),
                ((tail.body,), over + close, tail.faults[1]),
                ((tail.body, tail.over), close, tail.faults[2]),
                ((ALSO, tail.body), over + close, tail.faults[0]),
                ((ALSO, tail.body, tail.over), close, tail.faults[1]),
            ):
                risk = sum(a * _price(zone) for a, zone in zip(area, faults, strict=True))
                ways.setdefault(key, []).append((work, self.aim.risk * risk, faults))
        self._rests = {key: _Rests(alike) for key, alike in ways.items()}

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

    def _cuts(self, open_from: tuple[str, ...], rests: _Rests, zone: int, number: int) -> tuple[tuple[int, float], ...]:
        """Return, for the ways of which something has been charged, the price of that [money]."""
        key = (open_from, zone, number)
        known = self._cut.get(key)
        if known is None:
            cuts: dict[int, float] = {}
            for cause, chance in self.bench.charges[number]:
                for way, whole, harm in rests.by_cause.get((zone, cause), ()):
                    cuts[way] = cuts.get(way, 0.0) + harm * min(hazard(chance), whole)
            known = self._cut[key] = tuple(cuts.items())
        return known


def _price(faults: Priced) -> float:
    """Return the price of some faults, none charged yet [money]."""
    return sum(harm * risk for risk, harm in faults.values())


def _strongest(parts: Sequence[Faults]) -> Priced:
    """Return each cause at its highest chance, as a hazard."""
    merged: Faults = {}
    for faults in parts:
        for cause, pair in faults.items():
            if pair > merged.get(cause, (0.0, 0.0)):
                merged[cause] = pair
    return {cause: (hazard(chance), harm) for cause, (chance, harm) in merged.items()}
