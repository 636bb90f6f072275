"""What the person's own work says beside the tables: factors on their amounts, offsets on the rules' chances."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnWork:
    """
    Factors and offsets; what is not named takes the one for all others.

    Attributes
    ----------
    hours
        Kind of work → factor on its time [1]: ``sand/flat`` (labour and relief), ``strip:`` with a remover,
        ``repair:`` with a repair.
    litres, drying, coats
        Film class → factor [1] on what is laid, on its hours to every stage of drying, on the coats it takes.
    hours_else, litres_else, drying_else, coats_else
        Factors [1] for what is not named.
    offsets
        Rule id → what is added to the log-odds of its chance [1].
    """

    hours: Mapping[str, float] = field(default_factory=dict)
    litres: Mapping[str, float] = field(default_factory=dict)
    drying: Mapping[str, float] = field(default_factory=dict)
    coats: Mapping[str, float] = field(default_factory=dict)
    hours_else: float = 1.0
    litres_else: float = 1.0
    drying_else: float = 1.0
    coats_else: float = 1.0
    offsets: Mapping[str, float] = field(default_factory=dict)

    def hours_of(self, kind: str) -> float:
        """Return the factor on the time of a kind of work [1]."""
        return self.hours.get(kind, self.hours_else)

    def litres_of(self, cls: str) -> float:
        """Return the factor on what is laid of a class [1]."""
        return self.litres.get(cls, self.litres_else)
