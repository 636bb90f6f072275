"""Old finish as people tell it: a word, guesses with shares, or layers from the wood upwards."""

from typing import Final

from refettle.domain.piece import OldLayer
from refettle.files.amounts import count, film_um
from refettle.files.fields import Desk
from refettle.files.yaml_tree import Listing, Mapping, Text, Tree, plain

LAYER_KEYS: Final = ("finish", "coats", "thickness")
UNSAID_COATS: Final = 0


def read_old_finish(desk: Desk, tree: Tree, path: str) -> tuple[OldLayer, ...] | None:
    """
    Return the old finish as layers from the wood upwards.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        A word, guesses with shares, or a list of layers.
    path
        Path of the entry.

    Returns
    -------
    tuple[OldLayer, ...] | None
        Layers; empty for bare wood; None where it cannot be read.
    """
    if isinstance(tree, Text) and plain(tree.value) == "bare":
        return ()
    if isinstance(tree, Listing) and not tree.items:
        desk.say(
            "no-value", tree.line, path, "the list of layers is empty", 'write "bare" for wood without finish'
        )
        return None
    layers = [_layer(desk, item, path) for item in desk.items(tree)]
    return None if any(layer is None for layer in layers) else tuple(layer for layer in layers if layer)


def _layer(desk: Desk, tree: Tree, path: str) -> OldLayer | None:
    """Return one layer."""
    if isinstance(tree, Mapping):
        if any(plain(entry.key) in LAYER_KEYS for entry in tree.entries):
            return _full_layer(desk, tree, path)
        return _guessed_layer(desk, tree, path)
    said = desk.text(tree, path)
    if said is None:
        return None
    kinds = {
        "unknown": "unknown",
        "unknown paint": "paint",
        "paint": "paint",
        "unknown clear": "clear",
        "clear": "clear",
    }
    kind = kinds.get(plain(said))
    if kind is not None:
        return OldLayer(kind=kind, coats=UNSAID_COATS)
    if plain(said) == "bare":
        desk.say(
            "bare-layer", tree.line, path, '"bare" stands among layers', 'write "bare" alone, or leave it out'
        )
        return None
    found = desk.known("film", said, tree.line, path)
    return (
        None
        if found is None
        else OldLayer(guesses=((found, 1.0),), kind=_kind(desk, found), coats=UNSAID_COATS)
    )


def _kind(desk: Desk, film: str) -> str:
    facts = desk.knowledge.films.get(film)
    return "unknown" if facts is None else "paint" if facts.opaque else "clear"


def _guessed_layer(desk: Desk, tree: Mapping, path: str) -> OldLayer | None:
    """Return a layer of which the person has guesses with shares."""
    before = len(desk.findings)
    guesses = desk.weighted(tree, path, "film", 1.0)
    total = sum(weight for _, weight in guesses)
    if len(desk.findings) > before:
        return None
    if not guesses:
        desk.say(
            "no-value",
            tree.line,
            path,
            "no guess stands here",
            'write "unknown", or e.g. {shellac: 0.7, nitro lacquer: 0.3}',
        )
        return None
    if abs(total - 1.0) > 0.011:
        what = f"the guesses add up to {total * 100:.0f} %"
        desk.say("shares", tree.line, path, what, "make them add up to 100 %")
        return None
    kinds = {_kind(desk, film) for film, _ in guesses}
    exact = tuple((film, weight / total) for film, weight in guesses)
    return OldLayer(guesses=exact, kind=kinds.pop() if len(kinds) == 1 else "unknown", coats=UNSAID_COATS)


def _full_layer(desk: Desk, tree: Mapping, path: str) -> OldLayer | None:
    """Return a layer with coats and thickness."""
    finish, coats, um = None, UNSAID_COATS, None
    for entry in tree.entries:
        below = f"{path}/{entry.key}"
        match plain(entry.key):
            case "finish":
                finish = _layer(desk, entry.value, below)
            case "coats":
                coats = desk.amount(entry.value, below, count) or UNSAID_COATS
            case "thickness":
                um = desk.amount(entry.value, below, film_um)
            case _:
                desk.unknown_key(entry, below, LAYER_KEYS)
    if tree.get("finish") is None:
        desk.say(
            "no-value",
            tree.line,
            path,
            "this layer does not say what it is",
            'add "finish: unknown" or a class',
        )
    if finish is None:
        return None
    return OldLayer(
        guesses=finish.guesses, kind=finish.kind, coats=coats, um=None if um is None else round(um)
    )
