"""The plan of a whole piece: what every command, page and paper shows."""

from dataclasses import dataclass

from refettle.domain.air import Air
from refettle.domain.finding import Finding
from refettle.domain.piece import Assumed, Look
from refettle.domain.plan import Impossible, Range, Risk, Route, TestAdvice

_NONE = Range(low=0.0, likely=0.0, high=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupPlan:
    """
    Surfaces planned as one.

    Attributes
    ----------
    name
        Name of the group: its first member, or a common word.
    members
        Names of the surfaces.
    area_m2
        Area of all members [m²].
    relief
        Relief of the members.
    look
        Look aimed at.
    asked
        Whether the person asked for it; False where the plan chose.
    worlds
        What the old finish may be, with shares [1].
    route
        The route; None where the look cannot be had.
    impossible
        Why not, and what can be had.
    alternatives
        Routes that are at least 10 % better in their name.
    leave_alone
        Cleaning, touching up and waxing the old finish, where that can be done.
    tests
        Tests that pay, or that safety asks for.
    exact
        Whether the search ended by itself.
    gap
        Share [1] by which the route may at most be beaten among the offered ones; 0 when exact.
    """

    name: str
    members: tuple[str, ...]
    area_m2: float
    relief: str
    look: Look
    asked: bool
    worlds: tuple[tuple[str, float], ...]
    route: Route | None
    impossible: Impossible | None = None
    alternatives: tuple[Route, ...] = ()
    leave_alone: Route | None = None
    tests: tuple[TestAdvice, ...] = ()
    exact: bool = True
    gap: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """
    One material for the piece.

    Attributes
    ----------
    cls
        Class id; cleaner, remover or supply id for those, an abrasive's with its grit.
    kind
        ``film``, ``remover``, ``cleaner``, ``bleach``, ``repair``, ``abrasive``, ``gear``.
    name
        What to ask for.
    need_l
        Litres needed [L]; zeros where it is not sold by the litre.
    have_l
        On the shelf, fit for use [L].
    buy
        What to buy, in words; empty when the shelf is enough.
    money
        What that costs [money].
    because
        Fact rows behind it.
    bought_l
        Litres bought [L].
    need_count, have_count, bought_count
        Pieces needed, there and bought [1], of what is sold by the piece.
    """

    cls: str
    kind: str
    name: str
    need_l: Range = _NONE
    have_l: float = 0.0
    buy: str
    money: Range
    because: tuple[str, ...] = ()
    bought_l: float = 0.0
    need_count: Range = _NONE
    have_count: float = 0.0
    bought_count: float = 0.0

    @property
    def left(self) -> Range:
        """Return what is left over, shelf and purchase together [L] or [1], whichever it is sold by."""
        there = self.have_l + self.bought_l + self.have_count + self.bought_count
        need = self.need_l + self.need_count
        return Range(
            low=max(0.0, there - need.high),
            likely=max(0.0, there - need.likely),
            high=max(0.0, there - need.low),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MendStep:
    """
    One step of a mending job.

    Attributes
    ----------
    text
        What to do, as one would say it at the bench.
    minutes
        Hands-on [min].
    wait_h
        Wait that starts when it is done [h]: glue in clamps, airing, a test that takes days.
    clamps
        Clamps that are taken until that wait is over [1].
    waits_for
        State of the faces that it waits for: ``bare`` = the old film is off, ``smooth`` = the last sanding is done
        too; empty = none.
    because
        Fact rows behind the numbers.
    """

    text: str
    minutes: Range
    wait_h: Range
    clamps: int = 0
    waits_for: str = ""
    because: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MendJob:
    """
    Mending of one part, or of the whole piece.

    Attributes
    ----------
    name
        Unique in the plan, e.g. ``drawer.2: worn runner``.
    part
        Part it is done to, as the form names it; empty = the whole piece.
    what
        What is wrong, in words.
    stage
        ``first`` = before all else (quarantine, smell), ``before colour``, or ``after coats`` (refit, ease, wax).
    steps
        In order.
    surfaces
        Names of surfaces whose first coat waits for it (``before colour``), or that it waits for (``after coats``).
    money
        Material bought [money].
    reason
        Why it comes where it comes, in half a sentence.
    repair
        Repair id; empty for what is only taken off, covered or put back.
    """

    name: str
    part: str
    what: str
    stage: str
    steps: tuple[MendStep, ...]
    surfaces: tuple[str, ...]
    money: Range
    reason: str = ""
    repair: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DayTask:
    """
    Work on one evening.

    Attributes
    ----------
    group
        Group it belongs to.
    number
        Number of the step in the group's route, from 1.
    text
        What to do.
    minutes
        Hands-on [min].
    wait_h
        Wait that starts when it is done [h].
    begin_h
        When it begins, set-up before it included, from midnight of the first day [h].
    air
        Air that is made for it and held until it is dry; None = as it comes.
    left
        Tasks of the group or job that are left with it [1]; the same number before and after what is done. 0 = not counted;
        less than 0 = the scuff put before the task with so many left.
    """

    group: str
    number: int
    text: str
    minutes: float
    wait_h: float
    begin_h: float = 0.0
    air: Air | None = None
    left: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """
    One evening in the workshop.

    Attributes
    ----------
    day
        Day counted from 1 [d].
    tasks
        In the order they are done.
    minutes
        Hands-on, set-up included [min].
    """

    day: int
    tasks: tuple[DayTask, ...]
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """
    One line of care for one step.

    Attributes
    ----------
    id
        Permanent short name.
    steps
        Steps it belongs to, as ``group/number``; empty = the whole piece.
    text
        The line.
    source
        Key of its source.
    """

    id: str
    steps: tuple[str, ...]
    text: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """
    A first word on whether it pays.

    Attributes
    ----------
    paid, sells_low, sells_high
        Prices from the file [money]; None where not given.
    per_hour
        What an hour brings after material and price paid [money/h]; None where not known.
    """

    paid: float | None
    sells_low: float | None
    sells_high: float | None
    per_hour: Range | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """
    How the routes of the groups were chosen together.

    Attributes
    ----------
    ways
        Choices there were: sequences of one group times those of the next [1].
    cost
        What the routes cost together: set-up once per kind of work and material, materials bought whole [money].
    gap
        Share [1] by which any choice of offered sequences may at most cost less.
    splits
        Further answers where parts of one look could not agree [1].
    proved
        Whether none of the ways costs less in the sum that was minimised.
    hurried
        Whether days weighed more in that sum, for a date.
    """

    ways: int
    cost: float
    gap: float
    splits: int
    proved: bool
    hurried: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePlan:
    """
    The plan.

    Attributes
    ----------
    piece, workshop, currency
        Names and the word beside money.
    invented
        Whether the piece says that it is made up.
    lines
        The first screen: at most eight lines, most decisive first.
    groups
        In the order they are worked on.
    risks
        Risks of the whole piece, likeliest first, with the group.
    tests
        Tests over all groups, safety first.
    buy
        Materials.
    money, minutes
        Material bought [money] and hands-on time, set-up included [min].
    days
        Evenings.
    wrap_day, cured_day
        Day on which it is safe to wrap and on which it is cured [d].
    cautions, findings, assumed
        Care, problems, defaults taken.
    worth
        Whether it pays.
    knowledge_version
        Checksum of the facts used.
    mending
        Mending of parts and of the whole, in working order.
    choice
        How the routes were chosen together; None where nothing had to be chosen.
    gear
        Brushes, cloths and protection that the steps ask for; apart from `money`, as most of it serves many pieces.
    due_day
        Last day on which it is in time [d]; 0 = it is asked for by no day.
    """

    piece: str
    workshop: str
    currency: str
    invented: bool
    lines: tuple[str, ...]
    groups: tuple[GroupPlan, ...]
    risks: tuple[tuple[str, Risk], ...]
    tests: tuple[tuple[str, TestAdvice], ...]
    buy: tuple[Purchase, ...]
    money: Range
    minutes: Range
    days: tuple[Day, ...]
    wrap_day: int
    cured_day: int
    cautions: tuple[Caution, ...]
    findings: tuple[Finding, ...]
    assumed: tuple[Assumed, ...]
    worth: Worth
    knowledge_version: str
    mending: tuple[MendJob, ...] = ()
    choice: Choice | None = None
    gear: tuple[Purchase, ...] = ()
    due_day: int = 0

    @property
    def surfaces(self) -> tuple[str, ...]:
        """Return the names of all surfaces planned."""
        return tuple(name for group in self.groups for name in group.members)
