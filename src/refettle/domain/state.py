"""
A surface as it stands: wood left, films, condition.

One `State` is one zone of one surface in one world. All numbers that a search compares are
whole numbers, so that equal states compare equal.
"""

from dataclasses import dataclass, field, fields, replace
from typing import Any, TypeVar

AGED = 99_999
"""Ripeness [%] of a film that has had years."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Film:
    """
    One film on the wood (coats of one class laid over each other count as one film).

    Attributes
    ----------
    cls
        Class id, e.g. ``shellac-dewaxed``; a row of ``classes.csv``.
    um
        Dry film thickness [µm]; 0 for a colourant that leaves no film.
    coats
        Number of coats [1].
    ripe
        Drying so far [% of the time to "recoat from" at the air it had], capped at `AGED`.
        100 = may be recoated; `AGED` = old.
    old
        Whether it was there when the piece came in.
    hold
        How well it still sits on what is below [%]; 100 = sound, 50 = lifting in places, 0 = flaking off.
    patchy
        Share of the area where it is worn through [%].
    unkeyed
        Coats of it that were laid on its own dry film without a key [1].
    """

    cls: str
    um: int
    coats: int = 1
    ripe: int = AGED
    old: bool = False
    hold: int = 100
    patchy: int = 0
    unkeyed: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """
    One zone of one surface, in one world, at one moment.

    Attributes
    ----------
    stack
        Films, from the wood upwards.
    on_top
        Contaminants on the surface with their strength [%], sorted: ``(("wax", 100),)``.
    in_wood
        Causes in the wood or below the films with their strength [%]: ``(("tannin", 80), ...)``, sorted.
    wood_um
        Wood or veneer that may still be sanded away [µm]; capped at 5000 for solid wood.
    grit
        FEPA P number of the last abrasion since the last coat; 0 = none, the top is as it dried.
    coarse
        Coarsest P number whose scratches have not been sanded out; 0 = none.
    raised
        Whether water has raised the grain since it was last cut smooth.
    grain_set
        Whether the grain was raised and cut on purpose.
    damp
        Moisture above what the room asks for [% of wood moisture].
    damage
        Damage ids that are still there (``damages.csv``).
    colour
        What the eye meets: ``wood``, ``old`` (an old stain in the wood), ``stained``, ``dyed``, ``opaque``.
    depth
        Darkness of the colour [%]: 0 white, 100 black.
    charged
        Causes already charged with their chance [%], sorted: a cause costs once however many coats meet it.
    """

    stack: tuple[Film, ...] = ()
    on_top: tuple[tuple[str, int], ...] = ()
    in_wood: tuple[tuple[str, int], ...] = ()
    wood_um: int = 5000
    grit: int = 0
    coarse: int = 0
    raised: bool = False
    grain_set: bool = False
    damp: int = 0
    damage: frozenset[str] = frozenset()
    colour: str = "wood"
    depth: int = 40
    charged: tuple[tuple[str, int], ...] = field(default=())

    @property
    def bare(self) -> bool:
        """Return whether no film with thickness is left."""
        return not any(film.um for film in self.stack)

    @property
    def top(self) -> Film | None:
        """Return the uppermost film, or None on bare wood."""
        return self.stack[-1] if self.stack else None

    @property
    def second(self) -> Film | None:
        """Return the film under the uppermost one, or None."""
        return self.stack[-2] if len(self.stack) > 1 else None

    def strength(self, cause: str) -> float:
        """Return the strength [1] of a cause in the wood, 0 if absent."""
        for name, percent in self.in_wood:
            if name == cause:
                return percent / 100.0
        return 0.0

    def soiled(self, contaminant: str) -> float:
        """Return the strength [1] of a contaminant on the surface, 0 if absent."""
        for name, percent in self.on_top:
            if name == contaminant:
                return percent / 100.0
        return 0.0

    def with_soil(self, contaminant: str, percent: int) -> "State":
        """Return the state with a contaminant on the surface set to a strength [%]; 0 takes it off."""
        rest = tuple(pair for pair in self.on_top if pair[0] != contaminant)
        pairs = (*rest, (contaminant, percent)) if percent > 0 else rest
        return changed(self, on_top=tuple(sorted(pairs)))

    def with_cause(self, cause: str, percent: int) -> "State":
        """Return the state with a cause in the wood set to a strength [%]; 0 takes it out."""
        rest = tuple(pair for pair in self.in_wood if pair[0] != cause)
        pairs = (*rest, (cause, percent)) if percent > 0 else rest
        return changed(self, in_wood=tuple(sorted(pairs)))


Thing = TypeVar("Thing", Film, State)

_FIELDS: dict[type, tuple[tuple[Any, Any], ...]] = {
    kind: tuple((getattr(kind, f.name).__get__, getattr(kind, f.name).__set__) for f in fields(kind))
    for kind in (Film, State)
}


def changed(thing: Thing, **changes: object) -> Thing:
    """
    Return a copy of a film or state with some fields changed: `dataclasses.replace` at half the time.

    Parameters
    ----------
    thing
        Film or state.
    changes
        Fields by name; a name that is no field is the caller's mistake.

    Returns
    -------
    Film or State
        The copy. A stand-in for either is left to `dataclasses.replace`.
    """
    known = _FIELDS.get(type(thing))
    if known is None:
        return replace(thing, **changes)  # type: ignore[arg-type]
    copy = object.__new__(type(thing))
    for take, put in known:
        put(copy, take(thing))
    for name, value in changes.items():
        object.__setattr__(copy, name, value)
    return copy
