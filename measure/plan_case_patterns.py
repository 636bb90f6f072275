"""
The patterns of the plan check: which step of a plan meets an expectation.

A plan is read as lanes, one per surface, each a sequence of acts in the file's words. What a plan does not
state never matches, but a sanding is dry unless wet is stated.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

Pattern = Mapping[str, object]
Names = frozenset[str]

SAID = frozenset(
    {
        "what",
        "removes",
        "tool",
        "to",
        "wetness",
        "film",
        "on",
        "colour",
        "use",
        "reach",
        "thinner",
        "directly_on",
    }
)
"""Keys that name a word which the act must say."""

ONE_OF = {"what_in": "what", "removes_any": "removes"}
TABLES = {"group": "groups", "blocks": "blocks", "role": "roles"}
ASIDE = frozenset(
    {
        "id",
        "surface",
        "basis",
        "note",
        "any_of",
        "when",
        "unless_after",
        "unless_attr",
        "unless_refused",
        "result",
    }
)
"""Keys that are not about one act."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """
    One step of a plan in the file's words.

    Attributes
    ----------
    ops
        Kinds of step that it is.
    classes
        Class of a coat, remover or bleach.
    loosely
        Further classes that count where a step must be, but not where it must not.
    said
        Key of a pattern → words that hold.
    dry
        Whether it is said to be dry or wet; None = not stated.
    grit
        Coarsest grit [P]; 0 = not stated.
    coats
        Coats [1].
    minutes
        Hands-on [min].
    start_h, end_h
        Hours from the start of its surface [h], the wait after it not counted.
    wait_h
        Length of a wait [h].
    temp_c, rh_pct
        Air [°C], [%].
    depends_on
        Test results it is conditional on, as ``lead:negative``.
    """

    ops: Names
    classes: Names = frozenset()
    loosely: Names = frozenset()
    said: Mapping[str, Names] = field(default_factory=dict)
    dry: bool | None = None
    grit: int = 0
    coats: int = 0
    minutes: float = 0.0
    start_h: float = 0.0
    end_h: float = 0.0
    wait_h: float = 0.0
    temp_c: float | None = None
    rh_pct: float | None = None
    depends_on: Names = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """
    All that is done to one surface, steps for the whole piece included.

    Attributes
    ----------
    surface
        Id of the surface in the file.
    acts
        In order.
    refused
        Whether the plan offers no steps for it at all.
    """

    surface: str
    acts: tuple[Act, ...]
    refused: bool = False


@dataclass(frozen=True, slots=True)
class Matcher:
    """
    The tables of a file and the matching that rests on them.

    Attributes
    ----------
    tables
        ``groups``, ``blocks`` and ``roles`` of the file: name → classes.
    """

    tables: Mapping[str, Mapping[str, Sequence[str]]]

    def holds(self, pattern: Pattern, lane: Lane, *, loose: bool = True) -> bool:
        """
        Return whether some step of a lane matches.

        Parameters
        ----------
        pattern
            With or without ``any_of``, ``before``, ``after``.
        lane
            The surface.
        loose
            Whether alcohol and chlorinated removers count as solvent.

        Returns
        -------
        bool
            True if one does.

        Raises
        ------
        ValueError
            If the pattern has a key that is not known.
        """
        return any(True for _ in self.matching(pattern, lane, loose=loose))

    def matching(self, pattern: Pattern, lane: Lane, *, loose: bool = True) -> Iterator[Act]:
        """Yield the acts that match, each once per alternative; a wait in hours yields the act it ends before."""
        for single in alternatives(pattern):
            if "at_least_h" in single and ("after" in single or "before" in single):
                if self._waited(single, lane, loose=loose):
                    yield Act(ops=frozenset({"wait"}))
                continue
            for at, act in enumerate(lane.acts):
                if self._fits(single, lane, at, loose=loose) and self._placed(single, lane, at, loose=loose):
                    yield act

    def _placed(self, pattern: Pattern, lane: Lane, at: int, *, loose: bool) -> bool:
        """Return whether an act stands before the first and after some act that it should."""
        before = pattern.get("before")
        if isinstance(before, Mapping):
            first = self._where(before, lane, loose=loose)
            if first and at >= first[0]:
                return False
        after = pattern.get("after")
        return not isinstance(after, Mapping) or any(
            other < at for other in self._where(after, lane, loose=loose)
        )

    def _where(self, pattern: Pattern, lane: Lane, *, loose: bool) -> list[int]:
        """Return the places of the acts that match a pattern inside another."""
        return [
            at
            for at in range(len(lane.acts))
            if any(
                self._fits(single, lane, at, loose=loose) and self._placed(single, lane, at, loose=loose)
                for single in alternatives(pattern)
            )
        ]

    def _waited(self, pattern: Pattern, lane: Lane, *, loose: bool) -> bool:
        """Return whether enough hours pass between two acts, however the plan writes them."""
        before, after = pattern.get("before"), pattern.get("after")
        first = self._where(before, lane, loose=loose) if isinstance(before, Mapping) else []
        end_at = first[0] if first else len(lane.acts)
        begin_h = 0.0
        if isinstance(after, Mapping):
            earlier = [at for at in self._where(after, lane, loose=loose) if at < end_at]
            if not earlier:
                return False
            begin_h = lane.acts[earlier[-1]].end_h
        if not first:
            return True
        return lane.acts[end_at].start_h - begin_h >= _number(pattern["at_least_h"]) - 0.01

    def _fits(self, pattern: Pattern, lane: Lane, at: int, *, loose: bool) -> bool:
        """Return whether an act has every property of a pattern, its place aside."""
        return all(
            self._has(pattern, key, value, lane, at, loose=loose)
            for key, value in pattern.items()
            if key not in ASIDE and key not in {"before", "after"}
        )

    def _has(self, pattern: Pattern, key: str, value: object, lane: Lane, at: int, *, loose: bool) -> bool:
        """Return whether an act has one property."""
        act = lane.acts[at]
        classes = act.classes | act.loosely if loose else act.classes
        if key in {"op", "op_in"}:
            return bool(act.ops & names_of(value))
        if key == "class_in":
            return bool(classes & names_of(value))
        if key in TABLES:
            return bool(classes & self._row(key, value))
        if key in SAID or key in ONE_OF:
            return bool(act.said.get(ONE_OF.get(key, key), frozenset()) & names_of(value))
        if key == "dry":
            return is_dry(act) is bool(value)
        if key == "followed_by_group":
            row = self._row("group", value)
            return any("coat" in later.ops and later.classes & row for later in lane.acts[at + 1 :])
        return self._measures(pattern, key, _number(value), lane, at)

    def _measures(self, pattern: Pattern, key: str, value: float, lane: Lane, at: int) -> bool:
        """Return whether an act has one property that is a number."""
        act = lane.acts[at]
        match key:
            case "coarser_than_grit":
                return 0 < act.grit < value
            case "at_least_h":
                return act.wait_h >= value
            case "coats_at_least":
                same = [
                    other.coats for other in lane.acts if other.classes & act.classes and "coat" in other.ops
                ]
                return "coat" in act.ops and sum(same) >= value
            case "minutes_at_least":
                rest = {k: v for k, v in pattern.items() if k != key}
                spent = [
                    other.minutes
                    for number, other in enumerate(lane.acts)
                    if self._fits(rest, lane, number, loose=True)
                ]
                return sum(spent) >= value
            case "temperature_below_c":
                return act.temp_c is not None and act.temp_c < value
            case "rh_above_percent":
                return act.rh_pct is not None and act.rh_pct > value
            case _:
                message = f'"{key}" is not a key of a pattern'
                raise ValueError(message)

    def _row(self, key: str, value: object) -> Names:
        """Return a row of a table of the file."""
        table = self.tables.get(TABLES[key], {})
        if str(value) not in table:
            message = f'{TABLES[key]}: no row "{value}"'
            raise ValueError(message)
        return frozenset(table[str(value)])

    def lifted(self, pattern: Pattern, act: Act) -> bool:
        """
        Return whether an act that must not be is excused.

        Parameters
        ----------
        pattern
            Expectation with ``unless_after`` or ``unless_attr``, or neither.
        act
            The act that matches it.

        Returns
        -------
        bool
            True if it hangs on that test result, or has that property.
        """
        test = pattern.get("unless_after")
        if isinstance(test, Mapping) and f"{test.get('what')}:{test.get('result')}" in act.depends_on:
            return True
        attribute = pattern.get("unless_attr")
        if isinstance(attribute, Mapping):
            return self._fits(attribute, Lane(surface="", acts=(act,)), 0, loose=True)
        words = names_of(attribute) if attribute else frozenset[str]()
        return any(words & said for said in act.said.values())


def alternatives(pattern: Pattern) -> list[Pattern]:
    """Return the patterns of which one is enough, what surrounds ``any_of`` added to each."""
    inner = pattern.get("any_of")
    if not isinstance(inner, Sequence) or isinstance(inner, str):
        return [pattern]
    outer = {key: value for key, value in pattern.items() if key not in ASIDE}
    return [{**outer, **single} for single in inner if isinstance(single, Mapping)]


def is_dry(act: Act) -> bool | None:
    """Return whether an act is dry; None where the plan does not say, but a sanding is dry unless wet."""
    if act.dry is None and "sand" in act.ops:
        return True
    return act.dry


def names_of(value: object) -> Names:
    """Return one word or a list of words as a set."""
    if isinstance(value, Sequence) and not isinstance(value, str):
        return frozenset(map(str, value))
    return frozenset({str(value)})


def _number(value: object) -> float:
    """Return a number of a pattern."""
    return float(str(value))
