"""A case of a rule: a small surface and what is done on it, which makes a card speak or leaves it silent."""

from dataclasses import dataclass

from refettle.domain.air import Air
from refettle.domain.piece import Surface
from refettle.domain.step import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """
    One case of one card.

    Attributes
    ----------
    card, name
        Id of the card; what happens, in words.
    fires
        Whether the card must speak, else it must stay silent.
    bound
        Least chance of a firing case, highest chance of a silent one [1].
    surface
        The surface with its old films, dirt and wish.
    steps, air
        What is done, and in what air.
    twin
        The same with the one change that avoids the fault; None for a silent case.
    change
        Of a twin: that change in words.
    """

    card: str
    name: str
    fires: bool
    bound: float
    surface: Surface
    steps: tuple[Step, ...]
    air: Air
    twin: "Case | None" = None
    change: str = ""
