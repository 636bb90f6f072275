"""What is wrong with parts, and what a piece has that takes no finish."""

from dataclasses import dataclass

from refettle.domain.finding import Where

_NOWHERE = Where(file="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrong:
    """
    What is wrong with a part, or with the whole piece.

    Attributes
    ----------
    part
        Name of the part as the form has it; empty = the whole piece.
    damage
        Damage id.
    count
        How many: joints, holes, castors [1].
    where
        Place in the file.
    """

    part: str
    damage: str
    count: int = 1
    where: Where = _NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """
    What the piece has and takes no finish.

    Attributes
    ----------
    kind
        Fitting id.
    count
        How many [1].
    way
        ``take off``, ``protect`` or ``leave``; empty = as usual for it.
    old_spacing_mm, new_spacing_mm
        Distance between the two holes of a pull, old and new [mm]; None = not said.
    plate_mm
        Length of a back plate that would cover the old holes [mm]; None = none.
    where
        Place in the file.
    """

    kind: str
    count: int = 1
    way: str = ""
    old_spacing_mm: float | None = None
    new_spacing_mm: float | None = None
    plate_mm: float | None = None
    where: Where = _NOWHERE
