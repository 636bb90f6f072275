"""What a person logs of their own work, so that rates and chances can be learnt from it."""

from dataclasses import dataclass

from refettle.domain.finding import Where
from refettle.domain.step import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkLogged:
    """
    One step as it was really done.

    Attributes
    ----------
    piece
        Name of the piece.
    date
        Day, ISO 8601; empty = not told.
    step
        The step.
    area_m2
        Area it was done on [m²].
    relief
        How far that is from flat.
    wood
        Wood id; empty = not told.
    bare
        Whether the coat met bare wood.
    minutes
        Hands-on time [min]; None = not told.
    litres
        Material [L]; None = not told.
    dry_h
        Time until it could be recoated [h]; None = not told.
    coats_foreseen
        Coats that were foreseen to cover [1]; None = not told.
    where
        Place in the file.
    """

    piece: str
    date: str
    step: Step
    area_m2: float
    relief: str
    wood: str
    bare: bool
    minutes: float | None
    litres: float | None
    dry_h: float | None
    coats_foreseen: int | None
    where: Where


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultLogged:
    """
    A fault that was foreseen, and whether it came.

    Attributes
    ----------
    piece
        Name of the piece.
    date
        Day, ISO 8601; empty = not told.
    rules
        Rules that foresaw it, at least one.
    foreseen
        Chance foreseen at the time [1].
    seen
        Whether it came.
    where
        Place in the file.
    """

    piece: str
    date: str
    rules: tuple[str, ...]
    foreseen: float
    seen: bool
    where: Where


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """
    A journal as far as it is learnt from.

    Attributes
    ----------
    name
        Its name.
    work, faults
        Entries that count, in the order of the file.
    left_out
        Entries that do not: before the day from which it counts [1].
    forget
        Kinds and rules of which nothing is learnt.
    """

    name: str
    work: tuple[WorkLogged, ...] = ()
    faults: tuple[FaultLogged, ...] = ()
    left_out: int = 0
    forget: frozenset[str] = frozenset()
