"""The checker's walk: a route step by step through one zone in one world, rules asked afresh at each."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from refettle.domain.air import Air
from refettle.domain.finding import Finding, Where
from refettle.domain.ground import Ground
from refettle.domain.piece import Look, Piece, Surface
from refettle.domain.plan import Hit, Route
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_ledger import Account, coated, differs, opened, waited, worked
from refettle.planning.effects import lay_coat, rest, work
from refettle.planning.offers import CLOSING_USE, CURE, Menu
from refettle.planning.start import Start, start
from refettle.rules import BY_LEVEL
from refettle.rules.situation import Situation


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """
    One coat, or one other step, as it is met.

    Attributes
    ----------
    number
        Number of the step, from 1.
    step
        The step.
    coat
        Number of the coat within it, from 1; 0 for other work.
    air
        Air it is done in.
    before, after
        Own account before it, and after it and its wait.
    state
        The planner's state before it.
    hits
        What the rules say to it.
    differs
        What state and account have otherwise afterwards, in words.
    """

    number: int
    step: Step
    coat: int
    air: Air
    before: Account
    after: Account
    state: State
    hits: tuple[Hit, ...]
    differs: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """
    A route through one zone in one world.

    Attributes
    ----------
    world, zone
        Their numbers.
    moments
        Coats and steps in order, the closing use included.
    end
        The planner's state at the end.
    """

    world: int
    zone: int
    moments: tuple[Moment, ...]
    end: State


def walk(
    know: Knowledge, ground: Ground, start: tuple[int, int, State], steps: Sequence[Step], air: Air
) -> Walk:
    """
    Return the moments of a route.

    Parameters
    ----------
    know
        All facts.
    ground
        What does not change.
    start
        Number of the world, of the zone, and the state there before the first step.
    steps
        The route, the closing use included.
    air
        Air where a step names none.

    Returns
    -------
    Walk
        Own account and planner's state side by side; the rules asked without any memory.
    """
    world, zone, state = start
    account = opened(know, state)
    moments = []
    for number, step in enumerate(steps, start=1):
        here = step.air or air
        for coat, wait_h in _parts(step):
            before, was = account, state
            hits = tuple(_asked(know, ground, state, step, here, coat))
            if coat:
                account = coated(know, account, step)
                state = lay_coat(know, ground, state, step)
            else:
                account = worked(know, ground, account, step)
                state = work(know, ground, state, step)
            account = waited(know, account, wait_h, here)
            state = rest(know, state, wait_h, here)
            moments.append(
                Moment(
                    number=number,
                    step=step,
                    coat=coat,
                    air=here,
                    before=before,
                    after=account,
                    state=was,
                    hits=hits,
                    differs=differs(account, state),
                )
            )
    return Walk(world=world, zone=zone, moments=tuple(moments), end=state)


def _parts(step: Step) -> Iterator[tuple[int, float]]:
    """Yield the coats of a step with the wait after each [h]; (0, wait) for other work."""
    if not step.is_coat:
        yield 0, step.wait_after_h
        return
    coats = max(1, step.coats)
    for coat in range(1, coats):
        yield coat, step.wait_between_h
    yield coats, step.wait_after_h


def _asked(know: Knowledge, ground: Ground, state: State, step: Step, air: Air, coat: int) -> Iterator[Hit]:
    """Yield the hits of all rules that are asked at such an event."""
    event = "coat" if coat else (step.verb if step.verb in {"use", "expose"} else "work")
    situation = Situation(
        know=know,
        ground=ground,
        before=state,
        step=step,
        air=air,
        new=know.film(step.what) if coat else None,
        coat_no=coat,
    )
    for level, cards in BY_LEVEL.items():
        if level == event:
            yield from (hit for card in cards if (hit := card.ask(situation)) is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteCheck:
    """
    A route with everything that it is checked against.

    Attributes
    ----------
    know, piece, workshop, surface, route, look
        As handed in; the surface wishes for the look.
    begin
        Worlds and zones it starts from.
    steps
        Steps of the route, in order.
    meets
        What the surface meets in use, values of `EVENT_MARKS`.
    walks
        One per world and zone; empty until the names are known to be good.
    """

    know: Knowledge
    piece: Piece
    workshop: Workshop
    surface: Surface
    route: Route
    look: Look
    begin: Start
    steps: tuple[Step, ...]
    meets: frozenset[str] = frozenset()
    walks: tuple[Walk, ...] = ()

    def finding(self, code: str, number: int, what: str, do: str) -> Finding:
        """Return a finding at a step, counted from 1; 0 = the whole route."""
        place = self.surface.where
        path = f"{self.surface.name}/{number}" if number else self.surface.name
        where = Where(file=place.file or self.piece.name, line=place.line, path=path)
        return Finding(code=code, level="error", where=where, what=what, do=do)

    @property
    def main(self) -> Walk:
        """Return the walk through the heaviest world on the main zone."""
        zones = [ground.zone for ground in self.begin.grounds]
        zone = zones.index("flat") if "flat" in zones else 0
        return next(w for w in self.walks if w.world == 0 and w.zone == zone)

    def with_walks(self) -> "RouteCheck":
        """Return the check with its route walked through every world and zone, the closing use included."""
        made = Menu(know=self.know, workshop=self.workshop, surface=self.surface, look=self.look).made_air
        cure = CURE if made is None else replace(CURE, air=made)
        whole = (*self.steps, cure, replace(CLOSING_USE, how=self.meets))
        walks = tuple(
            walk(self.know, self.begin.grounds[z], (w, z, state), whole, self.workshop.air_likely)
            for w, world in enumerate(self.begin.worlds)
            for z, state in enumerate(world.states)
        )
        return replace(self, walks=walks)


def prepare(
    know: Knowledge, piece: Piece, workshop: Workshop, surface: Surface, route: Route, look: Look
) -> RouteCheck:
    """Return a route ready to be checked; it is not walked yet."""
    wished = replace(surface, look=look)
    return RouteCheck(
        know=know,
        piece=piece,
        workshop=workshop,
        surface=wished,
        route=route,
        look=look,
        begin=start(know, piece, wished),
        steps=tuple(cost.step for cost in route.steps),
    )
