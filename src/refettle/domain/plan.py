"""What comes back: hits of faults, routes, plans, answers."""

from dataclasses import dataclass

from refettle.domain.finding import Finding
from refettle.domain.step import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """
    One cause of one fault met by one step.

    Attributes
    ----------
    fault
        Fault id, e.g. ``bleed-through``.
    rule
        Id of the rule card that says so.
    cause
        Cause within the fault; a cause is charged once, at its highest chance.
    chance
        Chance that the fault shows because of it [1], 0–0.99.
    reads
        Facts read: pairs of subject and property.
    why
        One sentence for the person, without full stop.
    """

    fault: str
    rule: str
    cause: str
    chance: float
    reads: tuple[tuple[str, str], ...] = ()
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """
    An amount with its width.

    Attributes
    ----------
    low, likely, high
        10 %, 50 % and 90 % values in the unit the field's name says.
    """

    low: float
    likely: float
    high: float

    def __add__(self, other: "Range") -> "Range":
        """Add two ranges end by end (they are taken to move together: the cautious way)."""
        return Range(low=self.low + other.low, likely=self.likely + other.likely, high=self.high + other.high)


@dataclass(frozen=True, slots=True, kw_only=True)
class Risk:
    """
    A fault with its chance over a whole sequence, all worlds weighed.

    Attributes
    ----------
    fault
        Fault id.
    chance
        Chance that it shows [1].
    step
        Number of the step that adds most to it, counted from 1; 0 = later, in use.
    why
        Sentence of the strongest cause.
    rules
        Ids of the rules that fired.
    because
        Ids of the fact rows read.
    worlds
        Chance per world label [1], so that one sees on which unknown it hangs.
    """

    fault: str
    chance: float
    step: int
    why: str
    rules: tuple[str, ...] = ()
    because: tuple[str, ...] = ()
    worlds: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepCost:
    """
    What one step of a route takes.

    Attributes
    ----------
    step
        The step.
    minutes
        Hands-on time with its share of set-up and clean-up [min].
    litres
        Material [L]; zero where none.
    money
        Material [money].
    wait_h
        Waiting after it [h].
    because
        Fact rows and formulas behind the numbers.
    reason
        Why the step is there, in half a sentence.
    """

    step: Step
    minutes: Range
    litres: Range
    money: Range
    wait_h: Range
    because: tuple[str, ...] = ()
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Route:
    """
    A sequence for one group of surfaces.

    Attributes
    ----------
    steps
        Steps with costs, in order; the closing use is not among them.
    risks
        Risks, highest expected cost first.
    cost
        What the search minimised [money].
    expected_cost
        True expected cost: money, time, delay, value lost, faults at their chance [money].
    minutes, money, elapsed_h, value_lost
        Sums over the steps.
    aim
        Name of the weighting that found it: ``balanced``, ``cheaper``, ``fewer hours``, ``surer``, ``sooner``.
    look
        Kind of look it ends in.
    """

    steps: tuple[StepCost, ...]
    risks: tuple[Risk, ...]
    cost: float
    expected_cost: float
    minutes: Range
    money: Range
    elapsed_h: Range
    value_lost: float
    aim: str
    look: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TestAdvice:
    """
    A spot test and whether it pays.

    Attributes
    ----------
    test
        Test id.
    gain
        Expected saving, its price already taken off [money].
    price
        What it costs in time and material [money].
    answers
        For each answer: its chance [1] and what would then be done, in words.
    needed
        Whether it is asked for safety or before a commitment whatever the gain.
    why
        One sentence.
    """

    test: str
    gain: float
    price: float
    answers: tuple[tuple[str, float, str], ...] = ()
    needed: bool = False
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Impossible:
    """
    No way to the look.

    Attributes
    ----------
    clash
        The smallest set of demands that clash, in words.
    nearest
        Looks that can be had, nearest first, with a word on each.
    findings
        The same as findings.
    because
        Fact rows behind the clash.
    """

    clash: tuple[str, ...]
    nearest: tuple[tuple[str, str], ...]
    findings: tuple[Finding, ...] = ()
    because: tuple[str, ...] = ()
