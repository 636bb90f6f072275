"""
Ask many rules at once and remember their answers by what they read.

Rules that read the same things form a group, answered by one look-up; those that read nothing of the surface
answer once per step. What a rule reads is noted as it runs, never declared.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from operator import itemgetter

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


class Reading:
    """One state with what was read of it so far."""

    __slots__ = ("state", "values")

    def __init__(self, state: State) -> None:
        """Open the readings of a state."""
        self.state = state
        self.values: dict[Read, object] = {}

    def value(self, read: Read) -> object:
        """Return what a read finds in the state."""
        try:
            return self.values[read]
        except KeyError:
            found = self.values[read] = value_of_read(self.state, read)
            return found

    def fill(self, reads: tuple[Read, ...]) -> None:
        """Look up what has not been read yet."""
        for read in reads:
            if read not in self.values:
                self.values[read] = value_of_read(self.state, read)


@dataclass(slots=True, eq=False)
class _Group:
    """Cards that read alike: `inner` of the state, `outer` of all else; answers by the values read."""

    cards: dict[int, Card]
    inner: tuple[Read, ...]
    outer: tuple[Read, ...]
    memos: dict[tuple[object, ...], Memo] = field(default_factory=dict)
    plain: tuple[tuple[str, Read], ...] = ()
    asked: frozenset[Read] = frozenset()

    def __post_init__(self) -> None:
        """Part what is read into values and questions."""
        self.plain = tuple((read[1], read) for read in self.inner if not read[2])
        self.asked = frozenset(read for read in self.inner if read[2])

    def drop(self, number: int) -> None:
        """Take one card out, its answers too."""
        del self.cards[number]
        for memo in self.memos.values():
            for key, answers in memo.items():
                memo[key] = tuple(a for a in answers if a[0] != number)


Getter = Callable[[dict[Read, object]], object]


def _nothing(_: dict[Read, object]) -> object:
    """Return the same key for every state."""
    return ()


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

    def __post_init__(self) -> None:
        """Begin with one group of which nothing is known to be read."""
        self.groups = [_Group(dict(enumerate(self.cards)), (), ())]

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
        for number, reads in strays:
            self._move(group, number, reads)
        return not strays

    def _move(self, group: _Group, number: int, reads: Notes) -> None:
        """Put a card into the group that reads what it reads, a new one if need be."""
        card = group.cards[number]
        group.drop(number)
        inner = tuple(sorted(r for r in reads if r[0] == "before"))
        outer = tuple(sorted(r for r in reads if r[0] != "before"))
        self.version += 1
        for other in self.groups:
            if other.inner == inner and other.outer == outer:
                other.cards[number] = card
                other.memos.clear()
                return
        self.groups.append(_Group({number: card}, inner, outer))
        self.groups = [g for g in self.groups if g.cards]


@dataclass(slots=True, eq=False)
class _Row:
    """A group as one seat sees it: how to read a state, answers so far, and a glimpse to ask further with."""

    getter: Getter
    memo: Memo
    group: _Group
    frame: Situation
    outer: tuple[object, ...]
    glimpse: GlimpsedSituation | None = None


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

    __slots__ = ("_frame", "_panel", "_rows", "_version")

    def __init__(self, panel: Panel, frame: Situation) -> None:
        """Take a seat; groups are looked up at the first question."""
        self._panel = panel
        self._frame = frame
        self._version = -1
        self._rows: list[_Row] = []

    def ask(self, reading: Reading) -> list[Numbered]:
        """Return the numbered hits on a state, in the order of the cards."""
        while True:
            found = self._ask(reading)
            if found is not None:
                found.sort(key=_NUMBER)
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
        values = reading.values
        found: list[Numbered] = []
        for row in self._rows:
            try:
                key = row.getter(values)
            except KeyError:
                reading.fill(row.group.inner)
                key = row.getter(values)
            answers = row.memo.get(key)
            if answers is None:
                if not self._panel.answer(row, key, reading):
                    return None
                answers = row.memo[key]
            if answers:
                found.extend(answers)
        return found

    def _ask_knowing(self, reading: Reading, known: frozenset[str]) -> list[Numbered] | None:
        """Return the sure hits, or None where the panel changed under way."""
        if self._version != self._panel.version:
            self._sit_down()
        found: list[Numbered] = []
        for row in self._rows:
            unknown = [read for read in row.group.inner if read[1] not in known]
            if not unknown:
                reading.fill(row.group.inner)
                key = row.getter(reading.values)
                if key not in row.memo and not self._panel.answer(row, key, reading):
                    return None
                found.extend(row.memo[key])
            elif known and all(read[1] == "second" for read in unknown):
                found.extend(self._answer_knowing(row.group, reading.state, known))
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
        """Look up the groups and what they read of step, ground and air."""
        self._version = self._panel.version
        self._rows = []
        for group in self._panel.groups:
            outer = tuple(self._outer(read) for read in group.outer)
            memo = group.memos.setdefault(outer, {})
            getter = itemgetter(*group.inner) if group.inner else _nothing
            self._rows.append(_Row(getter, memo, group, self._frame, outer))

    def _outer(self, read: Read) -> object:
        """Return what a read finds outside the state."""
        whose = read[0]
        if whose == "coat":
            return self._frame.coat_no
        return value_of_read(getattr(self._frame, str(whose)), read)
