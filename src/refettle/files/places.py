"""The surfaces that a piece has: of its form, or as the person lists them; and the words that pick some."""

from collections.abc import Sequence
from dataclasses import dataclass
from fnmatch import fnmatchcase

from refettle.domain.piece import Zone
from refettle.files.yaml_tree import plain


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """
    A surface before anything is said of its wood and finish.

    Attributes
    ----------
    name, part
        Unique name; part it belongs to.
    area_m2
        Exposed area [m²].
    relief, orientation
        As in the domain.
    zones
        Zones with their shares.
    running
        Whether it runs on another part (drawer sides, runners).
    hidden
        Whether it is out of sight (backs, undersides, insides of drawers).
    closed
        Whether it lies behind doors or under a lid, so that it is seen only when they stand open.
    line
        Line where it is listed [1]; 0 for a surface of a form.
    """

    name: str
    part: str
    area_m2: float
    relief: str = "flat"
    orientation: str = "upright"
    zones: tuple[Zone, ...] = (Zone(name="flat", share=1.0),)
    running: bool = False
    hidden: bool = False
    closed: bool = False
    line: int = 0

    @property
    def shown(self) -> bool:
        """Return whether one sees it on the standing piece."""
        return not (self.running or self.hidden)


def _words_of(place: Place) -> set[str]:
    """Return the words that stand for a surface: names with and without number, in the plural too."""
    words: set[str] = set()
    for name in (place.name, place.part):
        for segment in plain(name).split("/"):
            first = segment.partition(".")[0].rstrip("0123456789 ")
            words |= {segment, first, f"{first}s"}
    return words


def _in_group(place: Place, word: str) -> bool:
    """Return whether one of the words for many surfaces covers this one."""
    match word:
        case "all":
            return True
        case "outside":
            return place.shown and place.orientation != "inside"
        case "inside":
            return place.orientation == "inside"
        case "hidden":
            return not place.shown
    return False


def matching(places: Sequence[Place], word: str) -> tuple[str, ...]:
    """
    Return the surfaces that a word of the file picks.

    Parameters
    ----------
    places
        Surfaces of the piece.
    word
        A surface's name, a pattern with ``*``, one of ``all``, ``outside``, ``inside``, ``hidden``, or a
        part's name in the singular or plural (``leg.1``, ``legs``), which leaves out what is out of sight
        as long as the part shows at all.

    Returns
    -------
    tuple[str, ...]
        Names in the order of the piece; empty where nothing fits.
    """
    wanted = plain(word)
    exact = tuple(place.name for place in places if plain(place.name) == wanted)
    if exact:
        return exact
    chosen = tuple(place.name for place in places if _in_group(place, wanted))
    if chosen:
        return chosen
    if "*" in wanted:
        return tuple(place.name for place in places if fnmatchcase(plain(place.name), wanted))
    meant = [place for place in places if wanted in _words_of(place)]
    return tuple(place.name for place in meant if place.shown) or tuple(place.name for place in meant)


def is_exact(places: Sequence[Place], word: str) -> bool:
    """
    Return whether a word is the full name of one surface.

    Parameters
    ----------
    places
        Surfaces of the piece.
    word
        A word of the file.

    Returns
    -------
    bool
        True for a full name: it wins over groups.
    """
    return any(plain(place.name) == plain(word) for place in places)
