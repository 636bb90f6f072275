"""
Ask many rules at once and remember their answers by what they read.

Rules that read the same things form a group, answered by one look-up; those that read nothing of the surface
answer once per step. What a rule reads is noted as it runs, never declared.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, fields
from itertools import chain
from operator import attrgetter, itemgetter
from typing import TypeVar

from refettle.domain.plan import Hit
from refettle.domain.state import State
from refettle.planning.watch import GlimpsedSituation, Notes, Read, value_of_read
from refettle.rules.card import Card
from refettle.rules.situation import Situation

Numbered = tuple[int, Hit]
Answers = tuple[Numbered, ...]
Key = object
Memo = dict[Key, Answers]
_NUMBER = itemgetter(0)


_PARTS = (("stack",), ("in_wood",), ("on_top",), ("grit", "coarse", "raised", "grain_set", "damp"))
_OTHERS = tuple(f.name for f in fields(State) if not any(f.name in part for part in _PARTS))
_TAKE = tuple(attrgetter(*part) for part in (*_PARTS, _OTHERS))
_WHOLE = tuple(range(len(_TAKE)))
_PART_OF = {
    "top": (0,), "second": (0,), "bare": (0,), "strength": (1,), "soiled": (2,),
    **{name: (n,) for n, part in enumerate((*_PARTS, _OTHERS)) for name in part},
}  # fmt: skip
"""Parts of a state that a read by name can look at; a name not here may look at all of it."""


class Reading:
    """
    One state with what was read of it so far.

    Parameters
    ----------
    state
        The state.
    codes
        Numbers given to values, shared by all readings that are compared; new values get the next number.
    """

    __slots__ = ("parts", "state", "values")

    def __init__(self, state: State, codes: dict[object, int]) -> None:
        """Open the readings of a state and number its parts."""
        self.state = state
        self.values: dict[Read, object] = {}
        self.parts = [codes.setdefault(take(state), len(codes)) for take in _TAKE]

    def value(self, read: Read) -> object:
        """Return what a read finds in the state."""
        try:
            return self.values[read]
        except KeyError:
            found = self.values[read] = value_of_read(self.state, read)
            return found

    def key(self, row: "_Row") -> Key:
        """Return what a row reads of the state."""
        values = self.values
        try:
            return row.getter(values)
        except KeyError:
            for read in row.group.inner:
                if read not in values:
                    values[read] = value_of_read(self.state, read)
            return row.getter(values)


From = TypeVar("From")
Getter = Callable[[From], object]


def _nothing(_: object) -> object:
    """Return the same key for every state."""
    return ()


@dataclass(slots=True, eq=False)
class _Row:
    """A group before one step, ground and air: answers so far by what is read of the state, and whom to ask further."""

    group: "_Group"
    getter: "Getter[dict[Read, object]]"
    frame: Situation
    outer: tuple[object, ...]
    memo: Memo = field(default_factory=dict)
    glimpse: GlimpsedSituation | None = None


@dataclass(slots=True, eq=False)
class _Group:
    """Cards that read alike: `inner` of the state, `outer` of all else."""

    cards: dict[int, Card]
    inner: tuple[Read, ...]
    outer: tuple[Read, ...]
    rows: dict[tuple[object, ...], _Row] = field(default_factory=dict)
    plain: tuple[tuple[str, Read], ...] = ()
    asked: frozenset[Read] = frozenset()
    parts: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        """Part what is read into values and questions, and say which parts of a state it looks at."""
        self.plain = tuple((read[1], read) for read in self.inner if not read[2])
        self.asked = frozenset(read for read in self.inner if read[2])
        self.parts = tuple(sorted({n for read in self.inner for n in _PART_OF.get(read[1], _WHOLE)}))

    def row(self, frame: Situation, values: dict[Read, object]) -> _Row:
        """Return the row for what a frame holds of the things read."""
        outer = tuple([values[read] for read in self.outer])
        row = self.rows.get(outer)
        if row is None:
            getter = itemgetter(*self.inner) if self.inner else _nothing
            row = self.rows[outer] = _Row(self, getter, frame, outer)
        return row

    def drop(self, number: int) -> None:
        """Take one card out, its answers too."""
        del self.cards[number]
        for row in self.rows.values():
            for key, answers in row.memo.items():
                row.memo[key] = tuple(a for a in answers if a[0] != number)


@dataclass(slots=True, eq=False)
class _Lane:
    """Rows that look at the same parts of a state, answered together where those parts are known."""

    getter: "Getter[list[int]]"
    rows: list[_Row] = field(default_factory=list)
    memo: Memo = field(default_factory=dict)


@dataclass(slots=True, eq=False)
class _Sitting:
    """Rows and lanes of all steps, grounds and airs that are alike in what is read of them."""

    rows: list[_Row]
    lanes: list[_Lane]


@dataclass(slots=True, eq=False)
class Panel:
    """
    All cards that are asked of one kind of step.

    Attributes
    ----------
    version
        Goes up whenever a group changes; a `Seat` of an older version must sit down again.
    """

    cards: tuple[Card, ...]
    version: int = 0
    groups: list[_Group] = field(default_factory=list)
    outer: tuple[Read, ...] = ()
    _sittings: dict[tuple[object, ...], _Sitting] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Begin with one group of which nothing is known to be read."""
        self.groups = [_Group(dict(enumerate(self.cards)), (), ())]

    def sitting(self, frame: Situation, values: dict[Read, object]) -> _Sitting:
        """Return the rows and lanes for what a frame holds of the things read."""
        key = tuple([values[read] for read in self.outer])
        known = self._sittings.get(key)
        if known is None:
            rows = [group.row(frame, values) for group in self.groups]
            lanes: dict[tuple[int, ...], _Lane] = {}
            for row in rows:
                parts = row.group.parts
                if parts not in lanes:
                    lanes[parts] = _Lane(itemgetter(*parts) if parts else _nothing)
                lanes[parts].rows.append(row)
            known = self._sittings[key] = _Sitting(rows, list(lanes.values()))
        return known

    def answer(self, row: "_Row", key: Key, reading: Reading) -> bool:
        """Ask a group's cards and remember; return False where one of them read more than was known of it."""
        group = row.group
        glimpse = row.glimpse
        if glimpse is None:
            glimpse = row.glimpse = GlimpsedSituation(row.frame, zip(group.outer, row.outer, strict=True))
        values = reading.values
        glimpse.look_at(reading.state, [(name, values[read]) for name, read in group.plain], group.asked)
        notes = glimpse.notes
        answers: list[Numbered] = []
        strays: list[tuple[int, Notes]] = []
        for number, card in group.cards.items():
            notes.clear()
            hit = card.ask(glimpse)
            if notes:
                strays.append((number, notes.union(group.inner, group.outer)))
            elif hit is not None:
                answers.append((number, hit))
        row.memo[key] = tuple(answers)
        if strays:
            for number, reads in strays:
                self._move(group, number, reads)
            self.version += 1
            self.groups = [g for g in self.groups if g.cards]
            self.outer = tuple(sorted({read for g in self.groups for read in g.outer}))
            self._sittings.clear()
        return not strays

    def _move(self, group: _Group, number: int, reads: Notes) -> None:
        """Put a card into the group that reads what it reads, a new one if need be."""
        card = group.cards[number]
        group.drop(number)
        inner = tuple(sorted(r for r in reads if r[0] == "before"))
        outer = tuple(sorted(r for r in reads if r[0] != "before"))
        for other in self.groups:
            if other.inner == inner and other.outer == outer:
                other.cards[number] = card
                other.rows.clear()
                return
        self.groups.append(_Group({number: card}, inner, outer))


class Seat:
    """
    One coat of one step on one ground before a panel: all that does not depend on the state, looked up once.

    Parameters
    ----------
    panel
        Cards to ask.
    frame
        A situation with that step, ground, air and coat; its state does not matter.
    """

    __slots__ = ("_frame", "_panel", "_sitting", "_values", "_version")

    def __init__(self, panel: Panel, frame: Situation) -> None:
        """Take a seat; groups are looked up at the first question."""
        self._panel = panel
        self._frame = frame
        self._version = -1
        self._values: dict[Read, object] = {}
        self._sitting = _Sitting([], [])

    def ask(self, reading: Reading) -> list[Numbered]:
        """Return the numbered hits on a state, in the order of the cards."""
        while True:
            found = self._ask(reading)
            if found is not None:
                found.sort(key=_NUMBER)
                return found

    def peek(self, reading: Reading) -> list[Numbered]:
        """Return those hits on a state that are remembered already, asking nobody: some, never a wrong one."""
        if self._version != self._panel.version:
            self._sit_down()
        found: list[Numbered] = []
        for lane in self._sitting.lanes:
            key = lane.getter(reading.parts)
            answers = lane.memo.get(key)
            if answers is None:
                known = [row.memo.get(reading.key(row)) for row in lane.rows]
                answers = tuple(chain.from_iterable(a for a in known if a))
                if None not in known:
                    lane.memo[key] = answers
            if answers:
                found += answers
        return found

    def ask_knowing(self, reading: Reading, known: frozenset[str]) -> list[Numbered]:
        """
        Return the hits of those cards that read nothing of the state but what is known of it.

        Parameters
        ----------
        reading
            A state, right in what is known.
        known
            Names of what is known.

        Returns
        -------
        list
            Numbered hits.
        """
        while True:
            found = self._ask_knowing(reading, known)
            if found is not None:
                return found

    def _ask(self, reading: Reading) -> list[Numbered] | None:
        """Return the hits, or None where the panel changed under way."""
        if self._version != self._panel.version:
            self._sit_down()
        found: list[Numbered] = []
        for lane in self._sitting.lanes:
            key = lane.getter(reading.parts)
            answers = lane.memo.get(key)
            if answers is None:
                answers = self._ask_lane(lane, reading)
                if answers is None:
                    return None
                lane.memo[key] = answers
            if answers:
                found += answers
        return found

    def _ask_lane(self, lane: _Lane, reading: Reading) -> Answers | None:
        """Return the hits of a lane, or None where the panel changed under way."""
        found: list[Numbered] = []
        for row in lane.rows:
            key = reading.key(row)
            answers = row.memo.get(key)
            if answers is None:
                if not self._panel.answer(row, key, reading):
                    return None
                answers = row.memo[key]
            if answers:
                found += answers
        return tuple(found)

    def _ask_knowing(self, reading: Reading, known: frozenset[str]) -> list[Numbered] | None:
        """Return the sure hits, or None where the panel changed under way."""
        if self._version != self._panel.version:
            self._sit_down()
        found: list[Numbered] = []
        for row in self._sitting.rows:
            unknown = [read for read in row.group.inner if read[1] not in known]
            if not unknown:
                key = reading.key(row)
                if key not in row.memo and not self._panel.answer(row, key, reading):
                    return None
                found += row.memo[key]
            elif known and all(read[1] == "second" for read in unknown):
                found += self._answer_knowing(row.group, reading.state, known)
        return found

    def _answer_knowing(self, group: _Group, state: State, known: frozenset[str]) -> list[Numbered]:
        """Return the hits of those cards of a group that this time read nothing but what is known."""
        answers: list[Numbered] = []
        glimpse = GlimpsedSituation(self._frame, ())
        glimpse.look_at(state)
        for number, card in group.cards.items():
            glimpse.notes.clear()
            hit = card.ask(glimpse)
            if hit is not None and all(read[1] in known for read in glimpse.notes if read[0] == "before"):
                answers.append((number, hit))
        return answers

    def _sit_down(self) -> None:
        """Look up what is read of step, ground and air, and with it the rows and lanes."""
        self._version = self._panel.version
        for read in self._panel.outer:
            if read not in self._values:
                self._values[read] = self._outer(read)
        self._sitting = self._panel.sitting(self._frame, self._values)

    def _outer(self, read: Read) -> object:
        """Return what a read finds outside the state."""
        whose = read[0]
        if whose == "coat":
            return self._frame.coat_no
        return value_of_read(getattr(self._frame, str(whose)), read)
