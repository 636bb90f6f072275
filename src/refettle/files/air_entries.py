"""Air as it is written in a step or in the workshop file."""

from typing import Final

from refettle.domain.air import Air
from refettle.files.amounts import share, temp_c
from refettle.files.fields import Desk
from refettle.files.yaml_tree import Tree, plain

AIR_KEYS: Final = ("temperature", "humidity", "sun")


def read_air(desk: Desk, tree: Tree, path: str) -> Air | None:
    """
    Return air as it was written.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        Mapping with temperature, humidity and sun.
    path
        Path of the entry.

    Returns
    -------
    Air | None
        The air; what was not given stays as in a heated room. None where it cannot be read.
    """
    mapping = desk.mapping(tree, path, '"temperature: 12 C" and "humidity: 80 %"')
    if mapping is None:
        return None
    air = Air()
    temp, rh, sun = air.temp_c, air.rh, air.sun
    for entry in mapping.entries:
        below = f"{path}/{entry.key}"
        match plain(entry.key):
            case "temperature":
                temp = _or(desk.amount(entry.value, below, temp_c), temp)
            case "humidity":
                rh = _or(desk.amount(entry.value, below, share), rh)
            case "sun":
                sun = bool(desk.yes(entry.value, below))
            case _:
                desk.unknown_key(entry, below, AIR_KEYS)
    return Air(temp_c=temp, rh=rh, sun=sun)


def _or(value: float | None, other: float) -> float:
    return other if value is None else value
