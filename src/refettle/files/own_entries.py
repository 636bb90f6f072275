"""Sequences of the person's own, ``intend`` and ``done``: for every surface, or per surface."""

from refettle.domain.piece import Assumed, Own
from refettle.files.amounts import quoted
from refettle.files.fields import Desk, known_list, nearest
from refettle.files.own_steps import read_sequence
from refettle.files.places import Place, matching
from refettle.files.yaml_tree import Entry, Listing, Mapping, Text, Tree, plain


def picked(desk: Desk, places: tuple[Place, ...], word: str, line: int, path: str) -> tuple[str, ...]:
    """Return the surfaces that a word picks; a finding where there are none."""
    names = matching(places, word)
    if not names:
        known = [place.name for place in places]
        near = nearest(word, known)
        do = f'write "{near}"' if near else f"write {known_list(known)}, or all, outside, inside, hidden"
        desk.say("unknown-surface", line, path, f"{quoted(word)} is no surface of this piece", do)
    return names


def read_own(desk: Desk, places: tuple[Place, ...], entry: Entry, assumed: list[Assumed]) -> tuple[Own, ...]:
    """Return a sequence of the person's own: for every surface, or per surface."""
    path = plain(entry.key)
    if not isinstance(entry.value, Mapping):
        return _one_sequence(desk, assumed, ("",), entry.value, path)
    sequences: list[Own] = []
    for below in entry.value.entries:
        names = picked(desk, places, below.key, below.line, f"{path}/{below.key}")
        sequences.extend(_one_sequence(desk, assumed, names, below.value, f"{path}/{below.key}"))
    return tuple(sequences)


def _one_sequence(
    desk: Desk, assumed: list[Assumed], names: tuple[str, ...], tree: Tree, path: str
) -> tuple[Own, ...]:
    if isinstance(tree, Text) and not tree.value:
        desk.text(tree, path)
        return ()
    if not isinstance(tree, Listing):
        what, do = "steps are due here", "begin each step with a dash, e.g. - sand: P180"
        desk.say("wrong-form", tree.line, path, what, do)
        return ()
    sequence = read_sequence(desk, tree, path)
    assumed.extend(sequence.assumed)
    return tuple(Own(surface=name, steps=sequence.steps, where=sequence.where) for name in names)
