"""Play steps on states: effects and the hits of the rules, each pair computed once."""

from dataclasses import dataclass, field

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.plan import Hit
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import lay_coat, rest, work
from refettle.rules import BY_LEVEL
from refettle.rules.card import Level
from refettle.rules.situation import Situation

Hits = tuple[Hit, ...]


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
    """

    know: Knowledge
    ground: Ground
    air: Air
    _states: list[State] = field(default_factory=list)
    _ids: dict[State, int] = field(default_factory=dict)
    _steps: dict[Step, int] = field(default_factory=dict)
    _played: dict[tuple[int, int], tuple[int, Hits]] = field(default_factory=dict)

    def state_id(self, state: State) -> int:
        """Return the number of a state, new or known."""
        number = self._ids.get(state)
        if number is None:
            number = len(self._states)
            self._ids[state] = number
            self._states.append(state)
        return number

    def state(self, number: int) -> State:
        """Return the state with a number."""
        return self._states[number]

    def play(self, number: int, step: Step) -> tuple[int, Hits]:
        """Return the number of the next state and the hits of a step on a state."""
        step_id = self._steps.setdefault(step, len(self._steps))
        key = (number, step_id)
        known = self._played.get(key)
        if known is None:
            state, hits = play(self.know, self.ground, self._states[number], step, self.air)
            known = (self.state_id(state), hits)
            self._played[key] = known
        return known
