"""Points of the search: where a route stands, and which slots fare alike from there."""

from dataclasses import dataclass, field

from refettle.domain.step import Step
from refettle.planning.ahead import BODY, PROTECT, last_class
from refettle.planning.bench import Offer
from refettle.planning.offers import Run


@dataclass(slots=True, eq=False)
class Lot:
    """Slots alike in zone, state and what was charged, with their share [1]."""

    zone: int
    state: int
    charged: int
    share: float = 0.0
    slots: list[int] = field(default_factory=list)


@dataclass(frozen=True, slots=True, eq=False)
class Node:
    """
    A point of the search: stage, states and what was charged per slot, way and cost so far.

    `removed`: an original finish is lost; `whole`: it is still there; `floor`: least cost of what follows, tail apart.
    """

    stage: int
    slots: tuple[int, ...]
    charged: tuple[int, ...]
    parent: "Node | None"
    run: Run
    removed: bool
    cost: float
    floor: float = 0.0
    whole: bool = False
    lots: list[Lot] = field(default_factory=list)

    @property
    def key(self) -> tuple[object, ...]:
        """Return what nodes must share for the dearer one to be dropped."""
        return (self.stage, self.slots, self.charged, self.removed)

    @property
    def laid(self) -> tuple[str, ...]:
        """Return the classes of the tail laid so far: none, the body's, the body's and the one over it."""
        if self.stage <= BODY or self.parent is None:
            return ()
        mine = last_class(self.run)
        return (mine,) if self.stage == PROTECT else (*self.parent.laid, mine)


Entry = tuple[float, tuple[int, ...], Node, Offer | None, int]
"""Bound [money], turns taken so far (breaks ties alike in every run), node, offer still to be judged, how far."""


def way_to(node: Node) -> tuple[Step, ...]:
    """Return the steps that lead to a node."""
    runs: list[Run] = []
    at: Node | None = node
    while at is not None:
        runs.append(at.run)
        at = at.parent
    return tuple(step for run in reversed(runs) for step in run)
