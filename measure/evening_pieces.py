"""Made-up pieces and evenings to lay them into: the problems of the measure, grown from a seed."""

import math
import random
from dataclasses import dataclass, field
from itertools import pairwise

from refettle.solver.evenings import Evenings, Link, Piece, Session, Task, Wait, Wet

KITS = {
    "varnish": 20, "gel_a": 15, "gel_b": 15, "oil": 10, "prime": 25, "paint_a": 30, "paint_b": 30, "shellac": 10,
    "strip": 15,
}  # fmt: skip
"""Minutes to set up and clean up [min]; common practice."""
SPRAYED = ("prime", "paint_a", "paint_b")
PLACES = 60
DAYS = {1: 14, 3: 16, 6: 28, 12: 42}
_DAY = 1440


@dataclass
class _Made:
    """A problem in the making."""

    slot: int
    rich: bool
    tasks: list[Task] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)
    pieces: list[Piece] = field(default_factory=list)

    def task(
        self, piece: int, minutes: int, *, kit: str = "", sand: bool = False, wet: Wet | None = None,
        optional: bool = False, hands: int = 1,
    ) -> int:  # fmt: skip
        """Add a task and return its place."""
        names = list(KITS)
        spray = kit in SPRAYED
        self.tasks.append(
            Task(
                piece=piece,
                length=max(1, math.ceil(minutes / self.slot)),
                minutes=minutes,
                hands=hands,
                kit=names.index(kit) if kit else -1,
                dusty=sand,
                means=(0,) if sand else (1,) if spray else (),
                wet=wet,
                permit=0 if self.rich and spray else 1 if self.rich and wet is not None and wet.tacky else -1,
                optional=optional,
            )
        )
        return len(self.tasks) - 1

    def link(
        self, first: int, then: int, *, hours: float = 0.0, minutes: int = 0, most: int = 0, scuff: int = -1
    ) -> None:
        """Let one follow another, after drying or plain minutes, at most so many minutes later."""
        slots = math.ceil(minutes / self.slot)
        wait = Wait(0, hours) if hours else Wait(-1, slots)
        limit = Wait(-1, max(slots, most // self.slot)) if most else None
        close = self.rich and 0 < most <= 60 and scuff < 0
        self.links.append(Link(first, then, wait, most=limit, scuff=scuff, together=close))


def made(count: int, *, seed: int = 0, slot: int = 5, rich: bool = False) -> Evenings:
    """
    Return a problem with so many pieces.

    Parameters
    ----------
    count
        Pieces [1].
    seed
        What it grows from.
    slot
        Length of a slot [min].
    rich
        Whether to add hands for two, permits to spray and to coat, and steps that belong together.

    Returns
    -------
    Evenings
        Days counted from 0.
    """
    draw = random.Random(seed * 1009 + count)  # noqa: S311
    days = DAYS.get(count, max(42, math.ceil(count * 2.9)))
    sessions, hands = _calendar(days, slot, seed if rich else 0)
    curve = _air(draw, days, slot)
    work = _Made(slot=slot, rich=rich)
    for piece in range(count):
        _piece(work, draw, piece, count, days)
    return Evenings(
        slot_min=slot,
        sessions=sessions,
        hands=hands,
        curves=(curve,),
        permits=_permits(days, slot, seed) if rich else (),
        kits=tuple(KITS.values()),
        places=PLACES,
        means=2,
        tasks=tuple(work.tasks),
        links=tuple(work.links),
        pieces=tuple(work.pieces),
    )


def _calendar(
    days: int, slot: int, shift: int
) -> tuple[tuple[Session, ...], tuple[tuple[int, int, int], ...]]:
    """Return evenings and weekends, with a second pair of hands at times."""
    sessions, hands = [], []
    for day in range(days):
        weekday = (day + shift) % 7
        if weekday < 5:
            blocks, second = [(1080, 1260)], [(1140, 1260)] if weekday in (1, 3) else []
        else:
            blocks, second = [(540, 720), (780, 1020)], [(600, 720), (780, 960)]
        base = day * _DAY // slot
        for begin, end in blocks:
            sessions.append(Session(base + begin // slot, base + end // slot, day))
            cuts = sorted({begin, end, *(t for pair in second for t in pair if begin < t < end)})
            for a, b in pairwise(cuts):
                count = 1 + any(c <= a and b <= d for c, d in second)
                hands.append((base + a // slot, base + b // slot, count))
    return tuple(sessions), tuple(hands)


def _air(draw: random.Random, days: int, slot: int) -> tuple[float, ...]:
    """Return the dried hours up to each slot [h]; 20 °C and 50 % count in full."""
    per_day = _DAY // slot
    curve, drift = [0.0], 0.0
    for t in range(days * per_day + 6 * per_day):
        hour = (t * slot / 60) % 24
        if t % per_day == 0:
            drift = 0.7 * drift + draw.uniform(-3, 3)
        swing = math.sin((hour - 9) / 24 * 2 * math.pi)
        warm, damp = 14 + drift + 4 * swing, 65 - 10 * swing - drift
        rate = math.exp(0.06 * (warm - 20)) * max(0.35, 1 - 0.012 * max(0, damp - 50))
        curve.append(curve[-1] + rate * slot / 60)
    return tuple(curve)


def _permits(days: int, slot: int, seed: int) -> tuple[tuple[tuple[int, int], ...], ...]:
    """Return when one may spray (not after eight in the evening) and coat (not on a damp day)."""
    draw = random.Random(seed + 77)  # noqa: S311
    spray, coat = [], []
    for day in range(days):
        base = day * _DAY // slot
        spray.append((base + 540 // slot, base + 1200 // slot))
        if draw.random() > 0.07:
            coat.append((base, base + _DAY // slot))
    return tuple(spray), tuple(coat)


def _piece(work: _Made, draw: random.Random, piece: int, count: int, days: int) -> None:
    """Add a piece with its parts."""
    kind = draw.choice(["strip", "oil", "paint", "shellac", "strip", "paint"])
    colour = draw.choice("ab")
    parts = draw.choice([2, 3, 3, 4]) if kind != "strip" else draw.choice([2, 2, 3])
    first = work.task(piece, draw.choice([15, 20, 30]))
    lasts: list[tuple[int, float]] = []
    for part in range(parts):
        area = draw.choice([4, 6, 8, 10])
        size = draw.uniform(0.8, 1.4)
        build = {"strip": _stripped, "oil": _oiled, "paint": _painted, "shellac": _shellacked}[kind]
        lasts += build(_Part(work, piece, area, size, piece if part < 2 else -1, colour), first)
    join = work.task(piece, draw.choice([20, 30, 40]), hands=2 if work.rich and parts == 4 else 1)
    for last, hours in lasts:
        work.link(last, join, hours=hours)
    due = min(days - 2, max(9, int((piece + 1) / count * days * 0.62) + draw.randint(0, 3)))
    work.pieces.append(Piece(last=join, due_day=due))


@dataclass
class _Part:
    """A part of a piece, with its size and the body whose face it is."""

    work: _Made
    piece: int
    area: int
    size: float
    face: int
    colour: str

    def do(
        self, minutes: int, *, kit: str = "", sand: bool = False, tacky: float = 0.0, dry: float = 0.0,
        optional: bool = False, fixed: bool = False,
    ) -> int:  # fmt: skip
        """Add a task of this part; its minutes grow with the part unless fixed."""
        grown = minutes if fixed else int(5 * round(minutes * self.size / 5)) or 5
        wet = Wet(Wait(0, tacky) if tacky else None, Wait(0, dry), self.area, self.face) if dry else None
        return self.work.task(self.piece, grown, kit=kit, sand=sand, wet=wet, optional=optional)


def _stripped(part: _Part, first: int) -> list[tuple[int, float]]:
    """Add stripping, stain and two coats."""
    work = part.work
    strip = part.do(10, kit="strip")
    scrape, wash = part.do(20), part.do(10, dry=8)
    sand = part.do(20, sand=True)
    gel, wipe = part.do(10, kit="gel_" + part.colour, tacky=4, dry=7), part.do(5, fixed=True)
    coat1, coat2 = (part.do(15, kit="varnish", tacky=3, dry=6) for _ in range(2))
    scuff = part.do(10, sand=True, optional=True)
    work.link(first, strip)
    work.link(strip, scrape, minutes=10, most=20)
    work.link(scrape, wash, most=60)
    work.link(wash, sand, hours=8)
    work.link(sand, gel)
    work.link(gel, wipe, most=5)
    work.link(gel, coat1, hours=7)
    work.link(wipe, coat1)
    work.link(coat1, coat2, hours=6, most=48 * 60, scuff=scuff)
    return [(coat2, 12)]


def _oiled(part: _Part, first: int) -> list[tuple[int, float]]:
    """Add two coats of oil, each wiped."""
    work = part.work
    sand = part.do(25, sand=True)
    oil1, wipe1 = part.do(10, kit="oil", tacky=3, dry=10), part.do(5, fixed=True)
    oil2, wipe2 = part.do(10, kit="oil", tacky=3, dry=10), part.do(5, fixed=True)
    work.link(first, sand)
    work.link(sand, oil1)
    work.link(oil1, wipe1, minutes=15, most=30)
    work.link(oil1, oil2, hours=10)
    work.link(wipe1, oil2)
    work.link(oil2, wipe2, minutes=15, most=30)
    return [(oil2, 10), (wipe2, 0)]


def _painted(part: _Part, first: int) -> list[tuple[int, float]]:
    """Add a sprayed ground and two sprayed coats."""
    work, kit = part.work, "paint_" + part.colour
    sand = part.do(20, sand=True)
    prime = part.do(12, kit="prime", tacky=0.7, dry=2)
    smooth = part.do(8, sand=True)
    coat1, coat2 = (part.do(12, kit=kit, tacky=1, dry=3) for _ in range(2))
    scuff = part.do(10, sand=True, optional=True)
    work.link(first, sand)
    work.link(sand, prime)
    work.link(prime, smooth, hours=2)
    work.link(smooth, coat1)
    work.link(coat1, coat2, hours=3, most=24 * 60, scuff=scuff)
    return [(coat2, 10)]


def _shellacked(part: _Part, first: int) -> list[tuple[int, float]]:
    """Add three coats of shellac and wax."""
    work = part.work
    last, hours = part.do(20, sand=True), 0.0
    work.link(first, last)
    for _ in range(3):
        coat = part.do(8, kit="shellac", tacky=0.3, dry=0.8)
        work.link(last, coat, hours=hours)
        last, hours = coat, 0.8
    wax = part.do(10)
    work.link(last, wax, hours=12)
    return [(wax, 0)]
