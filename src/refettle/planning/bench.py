"""One surface on the bench: engines per zone, prices, and what was worked out once for all its searches."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar, cast

from refettle.domain.piece import Surface
from refettle.domain.plan import Hit
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.cost import Aim, harm, hazard, step_amounts
from refettle.planning.engine import Engine, Hits, Memory
from refettle.planning.offers import Menu, Run
from refettle.planning.panel import Reading
from refettle.planning.start import Start
from refettle.planning.watch import GlimpsedState, Notes, Read

T = TypeVar("T")
Charged = tuple[tuple[str, float], ...]
"""Causes with the chance [1] they were charged at, sorted."""
Move = tuple[int, float, int]
"""Number of the next state, price of the faults met [money], number of what is charged then."""


@dataclass(frozen=True, slots=True)
class Offer:
    """
    A run of steps with the bench's numbers of its steps.

    Attributes
    ----------
    run
        The steps.
    numbers
        Their numbers, see `Bench.step_no`.
    loses
        Whether one of them takes off or hides an original surface.
    """

    run: Run
    numbers: tuple[int, ...]
    loses: bool


@dataclass(slots=True, eq=False)
class _Shelf:
    """Offers of one stage of one menu, remembered by what the menu read of the states."""

    reads: tuple[tuple[int, Read], ...] = ()
    made: dict[tuple[object, ...], tuple[Offer, ...]] = field(default_factory=dict)


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
    engines
        One per zone; made when left empty.
    memory
        What rules answered so far; handed on between benches with the same facts, it saves asking again.
    """

    know: Knowledge
    workshop: Workshop
    surface: Surface
    begin: Start
    setup_share: float = 1.0
    engines: list[Engine] = field(default_factory=list)
    memory: Memory | None = None
    steps: list[Step] = field(default_factory=list)
    charges: list[Charged] = field(default_factory=lambda: [()])
    _step_nos: dict[Step, int] = field(default_factory=dict)
    _charge_nos: dict[Charged, int] = field(default_factory=lambda: {(): 0})
    _moves: dict[tuple[int, int, int, int], Move] = field(default_factory=dict)
    _glances: dict[tuple[int, int, int, int], tuple[float, int]] = field(default_factory=dict)
    _shelves: dict[Menu, dict[str, _Shelf]] = field(default_factory=dict)
    _kept: dict[tuple[Menu, str], object] = field(default_factory=dict)
    _prices: dict[int, tuple[Hit, str, float, float]] = field(default_factory=dict)
    _harm: dict[str, float] = field(default_factory=dict)
    _plain: dict[tuple[int, bool], tuple[float, float, float]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Make one engine per zone."""
        if self.memory is None or self.memory.know is not self.know:
            self.memory = Memory(self.know)
        if not self.engines:
            air = self.workshop.air_likely
            self.engines = [
                Engine(know=self.know, ground=g, air=air, memory=self.memory) for g in self.begin.grounds
            ]

    def kept(self, menu: Menu, name: str, make: Callable[[], T]) -> T:
        """Return what is made once per menu."""
        key = (menu, name)
        if key not in self._kept:
            self._kept[key] = make()
        return cast("T", self._kept[key])

    def harm_of(self, fault: str) -> float:
        """Return the harm of a fault on this surface [money]."""
        value = self._harm.get(fault)
        if value is None:
            value = self._harm[fault] = harm(self.know, self.workshop, fault, self.surface.area_m2)
        return value

    def count_as(self, harm_of: Mapping[str, float]) -> None:
        """Take the harm of some faults [money] as given, whatever the area: before the first search."""
        self._harm.update(harm_of)

    def recess_share(self) -> float:
        """Return the share of hollows and edges [1]."""
        return sum(z.share for z in self.surface.zones if z.name == "recess")

    def step_no(self, step: Step) -> int:
        """Return the number of a step, new or known."""
        number = self._step_nos.get(step)
        if number is None:
            number = self._step_nos[step] = len(self.steps)
            self.steps.append(step)
        return number

    def offer(self, run: Run) -> Offer:
        """Return a run with the numbers of its steps."""
        return Offer(
            run, tuple(self.step_no(step) for step in run), any(loses_original(step) for step in run)
        )

    def step_cost(self, step: Step, aim: Aim, *, on_bare: bool) -> float:
        """Return money, time and delay of a step under an aim [money]."""
        return self.numbered_cost(self.step_no(step), aim, on_bare=on_bare)

    def numbered_cost(self, number: int, aim: Aim, *, on_bare: bool) -> float:
        """Return money, time and delay of a step under an aim [money], the step by its number."""
        key = (number, on_bare)
        plain = self._plain.get(key)
        if plain is None:
            step = self.steps[number]
            amounts = step_amounts(
                self.know,
                self.workshop,
                self.surface,
                step,
                on_bare=on_bare,
                recess_share=self.recess_share(),
            )
            hours = amounts.minutes.likely / 60.0 + self.setup_share * setup_hours(self.know, step)
            delay = 0.0 if step.what == "cure" else amounts.wait_h.likely / 24.0
            plain = (amounts.money.likely, hours * self.workshop.hour_worth, delay * self.workshop.day_worth)
            self._plain[key] = plain
        return aim.money * plain[0] + aim.hours * plain[1] + aim.days * plain[2]

    def move(self, zone: int, state: int, step: int, charged: int) -> Move:
        """
        Return where a step leads from a state and what its faults cost beyond what was charged.

        Parameters
        ----------
        zone
            Number of the zone.
        state, step, charged
            Numbers of the state (in the zone's engine), the step and what is charged (on this bench).

        Returns
        -------
        tuple
            Number of the next state, price [money] for the whole surface, number of what is charged then.
        """
        key = (zone, state, step, charged)
        known = self._moves.get(key)
        if known is None:
            doing = self.steps[step]
            following, hits = self.engines[zone].play(state, doing)
            price, then = self._charge(hits, charged, remember=doing.is_coat) if hits else (0.0, charged)
            known = self._moves[key] = (following, price, then)
        return known

    def glance(self, zone: int, state: int, step: int, charged: int) -> tuple[float, int]:
        """
        Return a price that a step has at the least, and what is charged by then, without judging it.

        Parameters
        ----------
        zone, state, step, charged
            As for `move`.

        Returns
        -------
        tuple
            Price [money] of what is remembered, and the number of what is charged then.
        """
        key = (zone, state, step, charged)
        moved = self._moves.get(key)
        if moved is not None:
            return moved[1], moved[2]
        known = self._glances.get(key)
        if known is None:
            doing = self.steps[step]
            hits = self.engines[zone].peek(state, doing)
            known = self._charge(hits, charged, remember=doing.is_coat) if hits else (0.0, charged)
            self._glances[key] = known
        return known

    def _charge(self, hits: Hits, number: int, *, remember: bool) -> tuple[float, int]:
        """Return the price of hits beyond what was charged [money], and the number of what is charged now."""
        price = 0.0
        known = dict(self.charges[number])
        changed = False
        for hit in hits:
            key, whole, harm = self._priced(hit)
            before = known.get(key)
            if before is None:
                price += whole
            elif hit.chance > before:
                price += whole - harm * hazard(before)
            else:
                continue
            if remember and hit.chance > 0.05:
                known[key] = round(hit.chance, 3)
                changed = True
        return price, (self.charge_no(tuple(sorted(known.items()))) if changed else number)

    def _priced(self, hit: Hit) -> tuple[str, float, float]:
        """Return the cause of a hit, its price where nothing is charged yet, and the harm [money]."""
        known = self._prices.get(id(hit))
        if known is None or known[0] is not hit:
            harm = self.harm_of(hit.fault)
            known = self._prices[id(hit)] = (hit, f"{hit.fault}|{hit.cause}", harm * hazard(hit.chance), harm)
        return known[1:]

    def charge_no(self, charged: Charged) -> int:
        """Return the number of what is charged, new or known."""
        number = self._charge_nos.get(charged)
        if number is None:
            number = self._charge_nos[charged] = len(self.charges)
            self.charges.append(charged)
        return number

    def offers(
        self, menu: Menu, stage: str, readings: Sequence[Reading], zones: Sequence[str]
    ) -> tuple[Offer, ...]:
        """
        Return what a menu offers at a stage, worked out once for states that look alike to it.

        Parameters
        ----------
        menu
            The menu.
        stage
            One of `STAGES`.
        readings
            States of all worlds and zones, heaviest world first.
        zones
            Zone name of each state.

        Returns
        -------
        tuple
            Offers in the menu's order.
        """
        shelf = self._shelves.setdefault(menu, {}).setdefault(stage, _Shelf())
        key = tuple([readings[i].value(read) for i, read in shelf.reads])
        known = shelf.made.get(key)
        if known is not None:
            return known
        notes: Notes = set()
        states = [GlimpsedState(reading.state, i, notes) for i, reading in enumerate(readings)]
        made = tuple(self.offer(run) for run in menu.offers(stage, states, zones))
        reads = {(int(whose), ("before", name, argument)) for whose, name, argument in notes}
        if not reads <= set(shelf.reads):
            shelf.reads = tuple(sorted(reads.union(shelf.reads)))
            shelf.made.clear()
            key = tuple([readings[i].value(read) for i, read in shelf.reads])
        shelf.made[key] = made
        return made


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


def loses_original(step: Step) -> bool:
    """Return whether a step takes off or hides an original surface."""
    return (
        step.verb in {"strip", "paint"}
        or (step.verb in {"sand", "scrape"} and "to bare" in step.how)
        or (step.verb == "sand" and 0 < step.grit < 180)
    )
