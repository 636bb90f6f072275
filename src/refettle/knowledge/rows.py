"""The four kinds of row that knowledge is made of, and how a cell becomes a value."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, NamedTuple

GRADES: Final = ("measured", "standard", "handbook", "label", "common practice", "judgement")
READINGS: Final = ("whole", "excerpt", "second-hand", "memory")
KINDS: Final = (
    "film", "wood", "build", "contaminant", "latent", "cleaner", "remover", "tool", "test", "damage",
    "repair", "fault", "labour", "operation", "fitting", "supply",
)  # fmt: skip
ERA_BANDS: Final = (
    "before-1900",
    "1900-1929",
    "1930-1949",
    "1950-1969",
    "1970-1989",
    "1990-now",
    "unknown",
)
ERA_KINDS: Final = ("clear", "paint")

GRADE_RANK: Final[Mapping[str, int]] = {grade: rank for rank, grade in enumerate(GRADES)}

Value = float | bool | str | tuple[str, ...]


class FactRow(NamedTuple):
    """
    One fact with its source.

    A named tuple, unlike its sisters: thousands are made at every start, and a frozen dataclass
    takes six times as long.

    Attributes
    ----------
    id
        Kept for ever, e.g. ``f-4012``.
    subject, prop
        ``kind:id`` and the property, e.g. ``wood:oak`` and ``tannin``.
    value
        The cell as written; `value_of` makes it a number, flag, text or list.
    low, high
        10 % and 90 % values in `unit`; None where the source gives none.
    unit
        Unit of value, low and high, as the registry has it.
    at_c, at_rh_pct, at_um
        Conditions it was found at: temperature [°C], relative humidity [%], film [µm]; None = not said.
    source, place
        Key of the source and page, table or section in it.
    grade, read_as
        One of `GRADES`, one of `READINGS`.
    note
        Free words.
    superseded_by
        Id of the row that took its place; empty while it stands.
    """

    id: str
    subject: str
    prop: str
    value: str
    low: float | None = None
    high: float | None = None
    unit: str = ""
    at_c: float | None = None
    at_rh_pct: float | None = None
    at_um: float | None = None
    source: str = ""
    place: str = ""
    grade: str = "judgement"
    read_as: str = ""
    note: str = ""
    superseded_by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Property:
    """
    One property of the registry.

    Attributes
    ----------
    kind, name
        Kind of subject and name of the property.
    type
        ``number``, ``flag``, ``text`` or ``list``.
    unit
        Unit of a number; ``1`` for a share.
    required
        Whether every identity of the kind must have it.
    default
        Cell taken where no row speaks; empty = 0, no, nothing.
    low, high
        Bounds of a number; None = none.
    meaning
        What it says, with examples on the scale.
    """

    kind: str
    name: str
    type: str
    unit: str = ""
    required: bool = False
    default: str = ""
    low: float | None = None
    high: float | None = None
    meaning: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """
    One thing that has a name: a wood, a class, a fault.

    Attributes
    ----------
    kind, id, name
        Kind, permanent id, name in plain words.
    aliases
        Other words for it.
    parent
        Id of the same kind whose facts hold where it has none of its own; empty = none.
    """

    kind: str
    id: str
    name: str
    aliases: tuple[str, ...] = ()
    parent: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceRow:
    """
    One source.

    Attributes
    ----------
    key
        What fact rows write.
    title, author, year, publisher, where_found, date_read
        Where to look it up and when it was read.
    rank
        Rank [1] among sources of one grade; the lower wins.
    """

    key: str
    title: str
    author: str = ""
    year: str = ""
    publisher: str = ""
    where_found: str = ""
    date_read: str = ""
    rank: int = 9


def value_of(prop: Property, cell: str) -> Value:
    """
    Return what a cell says, in the property's own type.

    Parameters
    ----------
    prop
        Property of the registry.
    cell
        Cell as written; lists are parted by semicolons; empty = 0, no or nothing.

    Returns
    -------
    float or bool or str or tuple of str
        The value.

    Raises
    ------
    ValueError
        If the cell is no number where a number is due, or neither yes nor no where a flag is.
    """
    if prop.type == "number":
        return float(cell) if cell else 0.0
    if prop.type == "flag":
        return _flag(cell)
    if prop.type == "list":
        return tuple(part.strip() for part in cell.split(";") if part.strip())
    return cell


def _flag(cell: str) -> bool:
    """Return the flag that a cell writes as 1, 0, yes or no."""
    word = cell.strip().lower()
    if word in {"1", "yes"}:
        return True
    if word in {"", "0", "no"}:
        return False
    message = f'"{cell}" is neither yes (1) nor no (0)'
    raise ValueError(message)
