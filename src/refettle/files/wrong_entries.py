"""What is wrong with parts, and what the piece has that takes no finish: entries ``wrong`` and ``fittings``."""

from collections.abc import Iterator
from typing import Final

from refettle.domain.finding import Where
from refettle.domain.piece import Assumed
from refettle.domain.wrong import Fitting, Wrong
from refettle.files.amounts import count, length_mm, quoted
from refettle.files.fields import Desk, known_list, nearest
from refettle.files.places import Place, matching
from refettle.files.yaml_tree import Entry, Listing, Mapping, Text, Tree, plain

WHOLE: Final = ("whole", "whole piece", "all", "it")
WAYS: Final = ("take off", "protect", "leave")
FITTING_KEYS: Final = ("count", "old spacing", "new spacing", "back plate", "way")
_COUNTED: Final = frozenset(
    {"loose-joint", "stripped-holes", "misplaced-holes", "loose-castor", "pull-missing"}
)


def read_wrong(
    desk: Desk, entry: Entry | None, places: tuple[Place, ...], assumed: list[Assumed]
) -> tuple[Wrong, ...]:
    """
    Return what is wrong with parts and with the whole.

    Parameters
    ----------
    desk
        Desk of the file.
    entry
        Entry ``wrong``, None where there is none: part → damage, list of damages, or damage → count; a list alone
        speaks of the whole piece.
    places
        Surfaces of the form, whose parts may be named.
    assumed
        Where a count that was not said is noted.

    Returns
    -------
    tuple of Wrong
        In the order of the file.
    """
    if entry is None:
        return ()
    if not isinstance(entry.value, Mapping):
        return tuple(_damages(desk, entry.value, "", "wrong", assumed))
    found: list[Wrong] = []
    for below in entry.value.entries:
        path = f"wrong/{below.key}"
        for part in _parts(desk, below, places, path):
            found.extend(_damages(desk, below.value, part, path, assumed))
    return tuple(dict.fromkeys(found))


def _parts(desk: Desk, entry: Entry, places: tuple[Place, ...], path: str) -> tuple[str, ...]:
    """Return the parts that a word means; empty for the whole piece."""
    word = plain(entry.key)
    if word in WHOLE:
        return ("",)
    parts = tuple(dict.fromkeys(place.part for place in places))
    same = [part for part in parts if plain(part) == word]
    kin = [part for part in parts if plain(part).partition(".")[0] in {word, word.removesuffix("s")}]
    if same:
        return (same[0],)
    if kin:
        return tuple(kin)
    by_surface = tuple(dict.fromkeys(p.part for p in places if p.name in set(matching(places, entry.key))))
    if by_surface:
        return by_surface
    near = nearest(word, [plain(part) for part in parts])
    do = f'write "{near}"' if near else f"write {known_list(parts)}, or whole"
    desk.say("unknown-part", entry.line, path, f"{quoted(entry.key)} is no part of this piece", do)
    return ()


def _damages(desk: Desk, tree: Tree, part: str, path: str, assumed: list[Assumed]) -> Iterator[Wrong]:
    """Yield the damages said of one part."""
    for item in desk.items(tree):
        if isinstance(item, Mapping):
            for entry in item.entries:
                damage = desk.known("damage", entry.key, entry.line, path)
                number = desk.amount(entry.value, f"{path}/{entry.key}", count)
                if damage is not None and number is not None:
                    yield Wrong(part=part, damage=damage, count=number, where=desk.where(entry.line, path))
            continue
        damage = desk.word(item, path, "damage")
        if damage is None:
            continue
        if damage in _COUNTED:
            why = "not said how many; write e.g. {loose joint: 4}"
            assumed.append(
                Assumed(path=f"{path}/{desk.knowledge.name('damage', damage)}", value="1", why=why)
            )
        yield Wrong(part=part, damage=damage, where=desk.where(item.line, path))


def read_fittings(desk: Desk, entry: Entry | None) -> tuple[Fitting, ...]:
    """
    Return what the piece has and takes no finish.

    Parameters
    ----------
    desk
        Desk of the file.
    entry
        Entry ``fittings``, None where there is none: a list of words, or word → count, way, or entries of `FITTING_KEYS`.

    Returns
    -------
    tuple of Fitting
        In the order of the file.
    """
    found: list[Fitting] = []
    if entry is None:
        return ()
    for item in desk.items(entry.value):
        if not isinstance(item, Mapping):
            kind = desk.word(item, "fittings", "fitting")
            if kind is not None:
                found.append(Fitting(kind=kind, where=desk.where(item.line, "fittings")))
            continue
        for below in item.entries:
            path = f"fittings/{below.key}"
            kind = desk.known("fitting", below.key, below.line, path)
            if kind is not None:
                found.append(_fitting(desk, kind, below.value, path, desk.where(below.line, path)))
    return tuple(found)


def _fitting(desk: Desk, kind: str, tree: Tree, path: str, where: Where) -> Fitting:
    """Return one fitting from a count, a way, or its entries."""
    if isinstance(tree, Mapping):
        return _entries(desk, kind, tree, path, where)
    if isinstance(tree, Listing):
        desk.say(
            "wrong-form", tree.line, path, "a list stands where one value is due", "write a count or a way"
        )
        return Fitting(kind=kind, where=where)
    if isinstance(tree, Text) and plain(tree.value).isdigit():
        return Fitting(kind=kind, count=max(1, int(plain(tree.value))), where=where)
    if plain(tree.value) == "no key" and kind == "lock":
        return Fitting(kind=kind, way="leave", where=where)
    return Fitting(kind=kind, way=desk.choice(tree, path, WAYS, "way") or "", where=where)


def _entries(desk: Desk, kind: str, tree: Mapping, path: str, where: Where) -> Fitting:
    """Return a fitting from its entries."""
    number, way = 1, ""
    lengths: dict[str, float | None] = {}
    for entry in tree.entries:
        key, below = plain(entry.key), f"{path}/{entry.key}"
        if key == "count":
            number = desk.amount(entry.value, below, count) or 1
        elif key == "way":
            way = desk.choice(entry.value, below, WAYS, "way") or ""
        elif key in FITTING_KEYS:
            lengths[key] = desk.amount(entry.value, below, length_mm)
        else:
            desk.unknown_key(entry, below, FITTING_KEYS)
    return Fitting(
        kind=kind, count=number, way=way, where=where, old_spacing_mm=lengths.get("old spacing"),
        new_spacing_mm=lengths.get("new spacing"), plate_mm=lengths.get("back plate"),
    )  # fmt: skip
