"""
Glimpses: stand-ins that note what is read of them beyond what was known to be read.

Rules and offers are pure functions, so that their answer can only depend on what they read. A function run on
glimpses leaves its reads behind; wherever those are equal its answer is equal too and need not be worked out
again. What is known to be read is laid ready; anything else is fetched from the real thing and noted.
"""

from collections.abc import Container, Iterable
from dataclasses import fields
from typing import Any

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.rules.situation import Situation

Read = tuple[str | int, str, str]
"""Whose, what, and for a question with an argument its argument: ``("before", "soiled", "wax")``."""
Notes = set[Read]

_put = object.__setattr__
_FIELDS: dict[type, tuple[str, ...]] = {
    kind: tuple(f.name for f in fields(kind)) for kind in (State, Ground, Step, Air)
}


def value_of_read(source: Any, read: Read) -> object:  # noqa: ANN401 - any of the four kinds that are glimpsed
    """Return what a read finds in a source."""
    _, name, argument = read
    found = getattr(source, name)
    return found(argument) if argument else found


class _Glimpse:
    """What all glimpses share: what was not laid ready is fetched and noted; a method looks at everything."""

    __slots__ = ()

    def __getattr__(self, name: str) -> Any:  # noqa: ANN401 - stands in for any attribute
        real, whose, notes = object.__getattribute__(self, "_behind")
        found = getattr(real, name)
        if callable(found):
            notes.update((whose, field, "") for field in _FIELDS[type(real)])
        elif not name.startswith("__"):
            notes.add((whose, name, ""))
        return found

    def __eq__(self, other: object) -> bool:
        return bool(_whole(self) == other)

    def __hash__(self) -> int:
        return hash(_whole(self))


def _whole(glimpse: object) -> object:
    """Return the real thing, every field of it noted as read."""
    real, whose, notes = object.__getattribute__(glimpse, "_behind")
    notes.update((whose, field, "") for field in _FIELDS[type(real)])
    return real


class GlimpsedState(_Glimpse, State):
    """A state of which reads are noted."""

    __slots__ = ("_asked", "_behind", "bare", "second", "top")

    def __init__(
        self,
        real: State,
        whose: str | int,
        notes: Notes,
        plain: Iterable[tuple[str, object]] = (),
        asked: Container[Read] = (),
    ) -> None:
        """Stand before a state, some values laid ready and some questions known to be asked."""
        _put(self, "_behind", (real, whose, notes))
        _put(self, "_asked", asked)
        for name, value in plain:
            _put(self, name, value)

    @property  # type: ignore[misc]  # object's own may be set, this one is only read
    def __class__(self) -> type:
        """Return the class of the real thing, so that a changed copy is real."""
        return State

    def strength(self, cause: str) -> float:
        """Return the strength of a cause in the wood."""
        return _answer(self, "strength", cause)

    def soiled(self, contaminant: str) -> float:
        """Return the strength of a contaminant on the surface."""
        return _answer(self, "soiled", contaminant)


def _answer(glimpse: object, name: str, argument: str) -> float:
    """Answer a question with an argument and note it."""
    take = object.__getattribute__
    real, whose, notes = take(glimpse, "_behind")
    read = (whose, name, argument)
    if read not in take(glimpse, "_asked"):
        notes.add(read)
    return float(getattr(real, name)(argument))


class _GlimpsedGround(_Glimpse, Ground):
    """A ground of which reads are noted."""

    __slots__ = ("_behind",)


class _GlimpsedStep(_Glimpse, Step):
    """A step of which reads are noted."""

    __slots__ = ("_behind", "is_coat")


class _GlimpsedAir(_Glimpse, Air):
    """An air of which reads are noted."""

    __slots__ = ("_behind",)


class GlimpsedSituation(Situation):
    """
    A situation whose parts note what is read of them; whose parts are called by their field names.

    Parameters
    ----------
    frame
        The situation that it stands before; its state is set anew by each `look_at`.
    known
        Reads of ground, step, air and coat that need no note, with their values.
    """

    __slots__ = ("_behind", "notes")

    def __init__(self, frame: Situation, known: Iterable[tuple[Read, object]]) -> None:
        """Stand before a situation."""
        notes: Notes = set()
        _put(self, "notes", notes)
        _put(self, "_behind", frame)
        _put(self, "know", frame.know)
        _put(self, "new", frame.new)
        parts: dict[str | int, object] = {"coat": self}
        for name, kind in (("ground", _GlimpsedGround), ("step", _GlimpsedStep), ("air", _GlimpsedAir)):
            part: object = kind.__new__(kind)
            _put(part, "_behind", (getattr(frame, name), name, notes))
            _put(self, name, part)
            parts[name] = part
        for (whose, name, _), value in known:
            _put(parts[whose], name, value)

    def __getattr__(self, name: str) -> Any:  # noqa: ANN401 - stands in for any attribute
        if name != "coat_no":
            raise AttributeError(name)
        self.notes.add(("coat", "coat_no", ""))
        return object.__getattribute__(self, "_behind").coat_no

    def look_at(
        self, real: State, plain: Iterable[tuple[str, object]] = (), asked: Container[Read] = ()
    ) -> None:
        """Set the state; some of its values laid ready, some questions known to be asked."""
        _put(self, "before", GlimpsedState(real, "before", self.notes, plain, asked))
