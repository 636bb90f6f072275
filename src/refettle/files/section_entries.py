"""Sizes of a relief as the person measured them: entry ``section``."""

from typing import Final

from refettle.files.amounts import length_mm, number, quoted
from refettle.files.fields import Desk
from refettle.files.yaml_tree import Text, Tree, plain

SECTION_KEYS: Final = ("width", "gap", "depth", "behind", "tilt")
_LEAST_MM, _MOST_MM = 0.5, 500.0
_MOST_DEG = 85.0
_NOTHING: Final = frozenset({"0", "0 mm", "0 cm", "none", "nothing"})


def read_section(desk: Desk, tree: Tree, path: str) -> tuple[tuple[str, float], ...] | None:
    """
    Return the sizes of a relief.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        Entries of `SECTION_KEYS`.
    path
        Path of the entry.

    Returns
    -------
    tuple or None
        Name → millimetres, tilt in degrees, sorted; None where nothing can be read.
    """
    mapping = desk.mapping(tree, path, "width: 10 mm")
    if mapping is None:
        return None
    sizes: dict[str, float] = {}
    for entry in mapping.entries:
        key, below = plain(entry.key), f"{path}/{entry.key}"
        if key not in SECTION_KEYS:
            desk.unknown_key(entry, below, SECTION_KEYS)
            continue
        if key == "behind" and isinstance(entry.value, Text) and plain(entry.value.value) in _NOTHING:
            sizes[key] = 0.0
            continue
        value = desk.amount(entry.value, below, number if key == "tilt" else length_mm)
        if value is None:
            continue
        least, most = (0.0, _MOST_DEG) if key == "tilt" else (0.0 if key == "behind" else _LEAST_MM, _MOST_MM)
        if not least <= value <= most:
            unit = "degrees" if key == "tilt" else "mm"
            what = f"{quoted(f'{value:g}')} {unit} is no {key} of a relief"
            desk.say("out-of-bounds", entry.line, below, what, f"write {least:g} to {most:g} {unit}")
            continue
        sizes[key] = value
    return tuple(sorted(sizes.items()))
