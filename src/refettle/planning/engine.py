"""Play steps on states: effects and the hits of the rules, each pair computed once."""

from dataclasses import dataclass, field

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.plan import Hit
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import lay_coat, rest, work
from refettle.planning.panel import Numbered, Panel, Reading, Seat
from refettle.rules import BY_LEVEL
from refettle.rules.card import Level
from refettle.rules.situation import Situation

Hits = tuple[Hit, ...]
_ANY = State()


def ask_rules(situation: Situation, level: Level) -> list[Hit]:
    """Return the hits of all rules asked at one kind of event."""
    hits = []
    for card in BY_LEVEL[level]:
        hit = card.ask(situation)
        if hit is not None:
            hits.append(hit)
    return hits


def play(know: Knowledge, ground: Ground, state: State, step: Step, air: Air) -> tuple[State, Hits]:
    """
    Return what a step with its waits makes of a state, and the faults it meets.

    Parameters
    ----------
    know
        All facts.
    ground
        What does not change.
    state
        State when the step begins.
    step
        The step; a coat step is played coat by coat.
    air
        Air where the step names none of its own.

    Returns
    -------
    tuple
        The state after the last wait, and one hit per cause at its highest chance.
    """
    here = step.air or air
    found: list[Hit] = []
    if step.is_coat:
        new = know.film(step.what)
        for number in range(1, max(1, step.coats) + 1):
            situation = Situation(
                know=know, ground=ground, before=state, step=step, air=here, new=new, coat_no=number
            )
            found.extend(ask_rules(situation, "coat"))
            state = lay_coat(know, ground, state, step)
            last = number == max(1, step.coats)
            state = rest(know, state, step.wait_after_h if last else step.wait_between_h, here)
        return state, _strongest(found)
    situation = Situation(know=know, ground=ground, before=state, step=step, air=here)
    if step.verb == "use":
        found.extend(ask_rules(situation, "use"))
    elif step.verb == "expose":
        found.extend(ask_rules(situation, "expose"))
    else:
        found.extend(ask_rules(situation, "work"))
    state = work(know, ground, state, step)
    return rest(know, state, step.wait_after_h, here), _strongest(found)


def _strongest(hits: list[Hit]) -> Hits:
    """Return one hit per fault and cause: the strongest."""
    best: dict[tuple[str, str], Hit] = {}
    for hit in hits:
        key = (hit.fault, hit.cause)
        if key not in best or hit.chance > best[key].chance:
            best[key] = hit
    return tuple(best.values())


def level_of(step: Step) -> Level:
    """Return the kind of event that a step is to the rules."""
    if step.is_coat:
        return "coat"
    if step.verb == "use":
        return "use"
    return "expose" if step.verb == "expose" else "work"


@dataclass(slots=True, eq=False)
class Memory:
    """
    What rules answered, remembered by what they read: shared by all surfaces planned with the same facts.

    Attributes
    ----------
    know
        The facts; answers hold for no others.
    codes
        Numbers of the parts of states, see `Reading`.
    """

    know: Knowledge
    codes: dict[object, int] = field(default_factory=dict)
    _panels: dict[tuple[Level, str, str], Panel] = field(default_factory=dict)

    def panel(self, step: Step) -> Panel:
        """Return the panel that a kind of step is judged by."""
        level = level_of(step)
        key = (level, step.verb, step.what)
        panel = self._panels.get(key)
        if panel is None:
            panel = self._panels[key] = Panel(BY_LEVEL[level])
        return panel


@dataclass(slots=True)
class Engine:
    """
    Memory of what was played on one ground, so that no pair of state and step is judged twice.

    Attributes
    ----------
    know
        All facts.
    ground
        What does not change.
    air
        Planning air.
    memory
        What rules answered so far, on this ground and others.
    """

    know: Knowledge
    ground: Ground
    air: Air
    memory: Memory
    played: int = 0
    _readings: list[Reading] = field(default_factory=list)
    _ids: dict[State, int] = field(default_factory=dict)
    _seats: dict[Step, tuple[Seat, ...]] = field(default_factory=dict)
    _played: dict[Step, dict[int, tuple[int, Hits]]] = field(default_factory=dict)

    def state_id(self, state: State) -> int:
        """Return the number of a state, new or known."""
        number = self._ids.get(state)
        if number is None:
            number = len(self._readings)
            self._ids[state] = number
            self._readings.append(Reading(state, self.memory.codes))
        return number

    def state(self, number: int) -> State:
        """Return the state with a number."""
        return self._readings[number].state

    def reading(self, number: int) -> Reading:
        """Return the readings of the state with a number."""
        return self._readings[number]

    def play(self, number: int, step: Step) -> tuple[int, Hits]:
        """Return the number of the next state and the hits of a step on a state."""
        rows = self._played.get(step)
        if rows is None:
            rows = self._played[step] = {}
        known = rows.get(number)
        if known is None:
            known = rows[number] = self._play(number, step)
            self.played += 1
        return known

    def peek(self, number: int, step: Step) -> Hits:
        """Return hits of a step, of its first coat alone, that are remembered already: some, never a wrong one."""
        return _strongest([hit for _, hit in self._seats_of(step)[0].peek(self._readings[number])])

    def _play(self, number: int, step: Step) -> tuple[int, Hits]:
        """Play a step by the answers remembered; `play` says the same without them."""
        seats = self._seats_of(step)
        reading = self._readings[number]
        air = step.air or self.air
        if not step.is_coat:
            numbered = seats[0].ask(reading)
            state = rest(self.know, work(self.know, self.ground, reading.state, step), step.wait_after_h, air)
            return self.state_id(state), _strongest([hit for _, hit in numbered])
        found: list[Numbered] = []
        last = len(seats) - 1
        for coat, seat in enumerate(seats):
            found.extend(seat.ask(reading))
            state = lay_coat(self.know, self.ground, reading.state, step)
            state = rest(self.know, state, step.wait_after_h if coat == last else step.wait_between_h, air)
            number = self.state_id(state)
            reading = self._readings[number]
        return number, _strongest([hit for _, hit in found])

    def after(self, state: State, step: Step) -> State:
        """Return the state after a step and its waits, no rule asked."""
        air = step.air or self.air
        if not step.is_coat:
            return rest(self.know, work(self.know, self.ground, state, step), step.wait_after_h, air)
        for coat in range(max(1, step.coats), 0, -1):
            state = lay_coat(self.know, self.ground, state, step)
            state = rest(self.know, state, step.wait_after_h if coat == 1 else step.wait_between_h, air)
        return state

    def sure_hits(
        self, step: Step, state: State = _ANY, known: frozenset[str] = frozenset()
    ) -> tuple[Hit, ...]:
        """
        Return the hits that a step meets on every state alike in a few things.

        Parameters
        ----------
        step
            The step; of several coats the first.
        state
            One of those states.
        known
            Names of what is the same in all of them.

        Returns
        -------
        tuple
            Hits of the rules that read nothing else of the state.
        """
        return tuple(
            hit for _, hit in self._seats_of(step)[0].ask_knowing(Reading(state, self.memory.codes), known)
        )

    def _seats_of(self, step: Step) -> tuple[Seat, ...]:
        """Return the seats of a step, taken once."""
        seats = self._seats.get(step)
        if seats is None:
            seats = self._seats[step] = self._take_seats(step)
        return seats

    def _take_seats(self, step: Step) -> tuple[Seat, ...]:
        """Return a seat per coat of a step, one for a step that lays none."""
        panel = self.memory.panel(step)
        air = step.air or self.air
        numbers = range(1, max(1, step.coats) + 1) if step.is_coat else (0,)
        new = self.know.film(step.what) if step.is_coat else None
        return tuple(
            Seat(
                panel,
                Situation(
                    know=self.know, ground=self.ground, before=State(), step=step, air=air, new=new, coat_no=number
                ),
            )
            for number in numbers
        )  # fmt: skip
