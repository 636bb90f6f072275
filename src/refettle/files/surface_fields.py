"""What can be said of a surface: the same entries for the whole piece, for a group or for one surface."""

from collections.abc import Callable
from dataclasses import dataclass, field, fields, replace
from typing import Any, Final

from refettle.domain.piece import (
    LOOKS,
    ORIENTATIONS,
    RELIEFS,
    SHEENS,
    SOUNDNESS,
    USES,
    VALUES,
    Assumed,
    Look,
    OldLayer,
    Zone,
)
from refettle.files.amounts import area_m2, count, film_um, quoted, share
from refettle.files.fields import Desk, known_list
from refettle.files.old_finish import read_old_finish
from refettle.files.yaml_tree import Entry, Mapping, Text, Tree, plain

ZONES: Final = ("flat", "edge", "recess")
LOOK_KEYS: Final = ("kind", "colour", "depth", "sheen")
OLD_STAIN_PCT: Final = 70
_MATT: Final = {
    "matte": "matt", "semi gloss": "semi-gloss", "odour free": "odour-free", "touched up": "keep", "cleaned only": "keep",
    "cleaned": "keep", "freshened": "keep", "painted": "opaque", "waxed only": "waxed", "bleached pale": "bleached",
    "white washed": "whitewashed",
}  # fmt: skip
"""Other words for sheens and looks."""

# Darkness of plain colour words [%]: judgement; the file's own `depth` wins.
DEPTHS: Final = {
    "dark": 75, "pale": 25, "light": 30, "medium": 50, "white": 5, "cream": 10, "ivory": 10, "yellow": 20,
    "honey": 40, "grey": 50, "green": 55, "red": 55, "blue": 55, "brown": 60, "walnut": 65, "mahogany": 65,
    "black": 95,
}  # fmt: skip

_NO_BELIEF: Final = frozenset({"build", "rule"})
"""What a test may speak for that no reading of an old finish hangs on."""
TEST_ANSWERS: Final[dict[str, tuple[tuple[str, ...], tuple[str, ...]]]] = {
    "alcohol-drop": (("dissolves", "softens", "sticky"), ("holds", "nothing")),
    "thinner-drop": (("dissolves", "softens", "sticky"), ("holds", "nothing")),
    "xylene-drop": (("dissolves", "softens", "sticky"), ("holds", "nothing")),
    "spirits-wipe": (("comes off", "smears"), ("clean", "nothing")),
    "tape-pull": (("lifts", "comes off", "flakes"), ("holds", "nothing")),
    "lead-test": (("positive", "lead"), ("negative", "no lead")),
    "water-drop": (("beads",), ("soaks in", "spreads")),
    "bleed-patch": (("bleeds", "comes through", "discolours"), ("clean", "nothing")),
    "crater-patch": (("craters", "crawls"), ("flows", "clean", "nothing")),
    "fingernail": (("dents", "soft"), ("holds", "hard")),
}


@dataclass(slots=True, kw_only=True)
class Said:
    """
    What was said of one surface or of many; None = nothing.

    `looks` is empty for "any"; layers carry `old_finish.UNSAID_COATS` where their number was not given.
    """

    area_m2: float | None = None
    part: str | None = None
    relief: str | None = None
    orientation: str | None = None
    zones: tuple[Zone, ...] | None = None
    wood: str | None = None
    build: str | None = None
    veneer_um: int | None = None
    layers: tuple[OldLayer, ...] | None = None
    coats: int | None = None
    coats_at: tuple[int, str] | None = None
    soundness: str | None = None
    worn_pct: int | None = None
    contamination: tuple[tuple[str, float], ...] | None = None
    old_stain: tuple[tuple[str, int], ...] | None = None
    damage: tuple[str, ...] | None = None
    tested: tuple[tuple[str, str], ...] | None = None
    looks: tuple[Look, ...] | None = None
    sheen: str | None = None
    sheen_at: tuple[int, str] | None = None
    use: str | None = None
    value: str | None = None
    keep_reason: str | None = None
    lead_chance: float | None = None
    lead_unknown: bool | None = None
    assumed: list[Assumed] = field(default_factory=list)

    def over(self, base: "Said") -> "Said":
        """Return this on top of what was said more generally."""
        merged = Said(assumed=[*base.assumed, *self.assumed])
        if self.layers is not None:  # coats belong to the finish they were said of, veneer to its build
            base = replace(base, coats=None, coats_at=None)
        if self.build is not None:
            base = replace(base, veneer_um=None)
        if self.sheen is not None and self.looks is None and base.looks:
            base = replace(base, looks=(replace(base.looks[0], sheen=""),))
        for each in fields(Said):
            if each.name != "assumed":
                mine = getattr(self, each.name)
                setattr(merged, each.name, getattr(base, each.name) if mine is None else mine)
        return merged


def read_look(desk: Desk, tree: Tree, path: str, said: Said) -> tuple[Look, ...] | None:
    """
    Return the look wanted.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        Words such as ``stained dark brown satin``, or a mapping.
    path
        Path of the entry.
    said
        Where an assumed depth is noted.

    Returns
    -------
    tuple[Look, ...] | None
        One look; empty for "any"; None where it cannot be read.
    """
    if isinstance(tree, Mapping):
        return _look_entries(desk, tree, path, said)
    words = desk.text(tree, path)
    if words is None:
        return None
    rest = f" {plain(words)} "
    for old, new in _MATT.items():
        rest = rest.replace(f" {old} ", f" {new} ")
    sheens = [word for word in rest.split() if word in SHEENS]
    left = [word for word in rest.split() if word not in SHEENS]
    if left == ["any"]:
        return ()
    if len(sheens) > 1 or not left or left[0] not in LOOKS:
        if len(sheens) > 1:
            what, do = f"{quoted(words)} names two sheens", f"write one of {known_list(SHEENS)}"
        else:
            first = quoted(left[0]) if left else quoted(words)
            what, do = f"{first} is not a known look", f"begin with {known_list((*LOOKS, 'any'))}"
        desk.say("unknown-look", tree.line, path, what, do)
        return None
    look = Look(kind=left[0], colour=" ".join(left[1:]), sheen=sheens[0] if sheens else "")
    return _with_depth(desk, look, tree.line, path, said)


def _look_entries(desk: Desk, tree: Mapping, path: str, said: Said) -> tuple[Look, ...] | None:
    kind, colour, depth, sheen = None, "", None, ""
    for entry in tree.entries:
        below = f"{path}/{entry.key}"
        match plain(entry.key):
            case "kind":
                kind = desk.choice(entry.value, below, LOOKS, "look")
            case "colour":
                colour = plain(desk.text(entry.value, below) or "")
            case "depth":
                depth = desk.amount(entry.value, below, share)
            case "sheen":
                sheen = desk.choice(entry.value, below, SHEENS, "sheen") or ""
            case _:
                desk.unknown_key(entry, below, LOOK_KEYS)
    if tree.get("kind") is None:
        desk.say("no-value", tree.line, path, "the look has no kind", f'add "kind:" with {known_list(LOOKS)}')
    if kind is None:
        return None
    if depth is not None:
        return (Look(kind=kind, colour=colour, depth=round(depth * 100), sheen=sheen),)
    return _with_depth(desk, Look(kind=kind, colour=colour, sheen=sheen), tree.line, path, said)


def _with_depth(desk: Desk, look: Look, line: int, path: str, said: Said) -> tuple[Look, ...]:
    """Return the look with the darkness of its colour word; a note where the word is not known."""
    if not look.colour:
        return (look,)
    words = look.colour.split()
    depth = next((DEPTHS[word] for word in ("dark", "pale", "light") if word in words), None)
    if depth is None:
        depth = next((DEPTHS[word] for word in words if word in DEPTHS), None)
    if depth is None:
        what = f"how dark {quoted(look.colour)} is, is not known"
        do = (
            f"write it as entries with depth: look: {{kind: {look.kind}, colour: {look.colour}, depth: 40 %}}"
        )
        desk.say("colour-depth", line, path, what, do, level="note")
        return (look,)
    said.assumed.append(
        Assumed(path=f"{path}/depth", value=f"{depth} %", why=f'as "{look.colour}" is usually meant')
    )
    return (Look(kind=look.kind, colour=look.colour, depth=depth, sheen=look.sheen),)


def _read_tests(desk: Desk, tree: Tree, path: str) -> tuple[tuple[str, str], ...] | None:
    """Return spot tests with yes or no."""
    mapping = desk.mapping(tree, path, '"alcohol drop: dissolves"')
    if mapping is None:
        return None
    answers: dict[str, str] = {}
    for entry in mapping.entries:
        below = f"{path}/{entry.key}"
        test = desk.known("test", entry.key, entry.line, path)
        answer = desk.text(entry.value, below)
        if test is None or answer is None:
            continue
        detects = desk.knowledge.test(test).detects
        if detects and all(mark.partition(":")[0] in _NO_BELIEF for mark in detects):
            what = f"what {quoted(entry.key)} tells is not weighed by the plan"
            desk.say(
                "not-weighed", entry.line, below, what, 'write what it told you, e.g. "build: veneer"', "note"
            )
            continue
        yes_words, no_words = TEST_ANSWERS.get(test, ((), ()))
        if plain(answer) in {"yes", *yes_words}:
            answers[test] = "yes"
        elif plain(answer) in {"no", *no_words}:
            answers[test] = "no"
        else:
            do = f"write {known_list(('yes', 'no', *yes_words, *no_words))}"
            desk.say("unknown-word", entry.line, below, f"{quoted(answer)} is no answer of this test", do)
    return tuple(sorted(answers.items()))


def _read_zones(desk: Desk, tree: Tree, path: str) -> tuple[Zone, ...] | None:
    """Return zones whose shares add up to 1."""
    mapping = desk.mapping(tree, path, '"flat: 70 %" and "recess: 30 %"')
    if mapping is None:
        return None
    zones: list[Zone] = []
    for entry in mapping.entries:
        if plain(entry.key) not in ZONES:
            desk.unknown_key(entry, f"{path}/{entry.key}", ZONES)
            continue
        part = desk.amount(entry.value, f"{path}/{entry.key}", share)
        if part:
            zones.append(Zone(name=plain(entry.key), share=part))
    total = sum(zone.share for zone in zones)
    if not zones or abs(total - 1.0) > 0.011:
        desk.say(
            "shares", tree.line, path, f"the zones add up to {total * 100:.0f} %", "make them add up to 100 %"
        )
        return None
    return tuple(Zone(name=zone.name, share=zone.share / total) for zone in zones)


def _words(desk: Desk, tree: Tree, path: str, kind: str) -> tuple[str, ...] | None:
    """Return ids of a list of words; `none` alone says that there are none."""
    if isinstance(tree, Text) and plain(tree.value) == "none":
        return ()
    found = [desk.word(item, path, kind) for item in desk.items(tree)]
    return tuple(dict.fromkeys(id_ for id_ in found if id_))


def _contamination(desk: Desk, tree: Tree, path: str) -> tuple[tuple[str, float], ...] | None:
    if isinstance(tree, Text) and plain(tree.value) == "none":
        return ()
    return desk.weighted(tree, path, "contaminant", 1.0)


def _old_stain(desk: Desk, tree: Tree, path: str, said: Said) -> tuple[tuple[str, int], ...] | None:
    if isinstance(tree, Text) and plain(tree.value) == "none":
        return ()
    pairs = desk.weighted(tree, path, "latent", -1.0)
    for id_, strength in pairs:
        if strength < 0:
            name = desk.knowledge.name("latent", id_)
            said.assumed.append(
                Assumed(path=f"{path}/{name}", value=f"{OLD_STAIN_PCT} %", why="strength not said")
            )
    return tuple((id_, OLD_STAIN_PCT if strength < 0 else round(strength * 100)) for id_, strength in pairs)


def _lead(desk: Desk, tree: Tree, path: str, said: Said) -> None:
    """Read whether there is lead in the old coats."""
    answer = desk.text(tree, path)
    if answer is None:
        return
    match plain(answer):
        case "yes":
            said.lead_chance, said.lead_unknown = 1.0, False
        case "no":
            said.lead_chance, said.lead_unknown = 0.0, False
        case "unknown":
            said.lead_unknown = True
        case _:
            said.lead_chance, said.lead_unknown = desk.amount(tree, path, share), False


def _coats(desk: Desk, tree: Tree, path: str, said: Said) -> int | None:
    said.coats_at = (tree.line, path)
    return desk.amount(tree, path, count)


def _sheen(desk: Desk, tree: Tree, path: str, said: Said) -> str | None:
    said.sheen_at = (tree.line, path)
    return desk.choice(tree, path, SHEENS, "sheen")


def check_sheen(desk: Desk, said: Said) -> None:
    """
    Say where a look names another sheen than the sheen beside it.

    Parameters
    ----------
    desk
        Desk of the file.
    said
        What was said in one place of the file.
    """
    if said.looks and said.sheen and said.sheen_at and said.looks[0].sheen not in {"", said.sheen}:
        line, path = said.sheen_at
        what = f'the look already says "{said.looks[0].sheen}"'
        desk.say("said-twice", line, path, what, "keep one of the two")


def _percent(desk: Desk, tree: Tree, path: str) -> int | None:
    value = desk.amount(tree, path, share)
    return None if value is None else round(value * 100)


def _microns(desk: Desk, tree: Tree, path: str) -> int | None:
    value = desk.amount(tree, path, film_um)
    return None if value is None else round(value)


_Read = Callable[[Desk, Tree, str, Said], Any]
_READERS: Final[dict[str, tuple[str, _Read]]] = {
    "wood": ("wood", lambda d, t, p, _: d.word(t, p, "wood")),
    "build": ("build", lambda d, t, p, _: d.word(t, p, "build")),
    "veneer": ("veneer_um", lambda d, t, p, _: _microns(d, t, p)),
    "old finish": ("layers", lambda d, t, p, _: read_old_finish(d, t, p)),
    "old coats": ("coats", _coats),
    "soundness": ("soundness", lambda d, t, p, _: d.choice(t, p, SOUNDNESS, "state of a finish")),
    "worn": ("worn_pct", lambda d, t, p, _: _percent(d, t, p)),
    "contamination": ("contamination", lambda d, t, p, _: _contamination(d, t, p)),
    "old stain": ("old_stain", _old_stain),
    "damage": ("damage", lambda d, t, p, _: _words(d, t, p, "damage")),
    "tests": ("tested", lambda d, t, p, _: _read_tests(d, t, p)),
    "look": ("looks", read_look),
    "sheen": ("sheen", _sheen),
    "use": ("use", lambda d, t, p, _: d.choice(t, p, USES, "use")),
    "value": ("value", lambda d, t, p, _: d.choice(t, p, VALUES, "value")),
    "worth keeping": ("keep_reason", lambda d, t, p, _: d.text(t, p)),
}
_PLACE_READERS: Final[dict[str, tuple[str, _Read]]] = {
    "area": ("area_m2", lambda d, t, p, _: d.amount(t, p, area_m2)),
    "part": ("part", lambda d, t, p, _: d.text(t, p)),
    "relief": ("relief", lambda d, t, p, _: d.choice(t, p, RELIEFS, "relief")),
    "orientation": ("orientation", lambda d, t, p, _: d.choice(t, p, ORIENTATIONS, "orientation")),
    "zones": ("zones", lambda d, t, p, _: _read_zones(d, t, p)),
}
SURFACE_KEYS: Final = (*_READERS, "lead")
PLACE_KEYS: Final = tuple(_PLACE_READERS)


def read_surface_entry(desk: Desk, entry: Entry, path: str, said: Said, *, placed: bool = False) -> bool:
    """
    Read one entry that speaks of a surface.

    Parameters
    ----------
    desk
        Desk of the file.
    entry
        The entry.
    path
        Path of the entry.
    said
        Where its value goes.
    placed
        Whether entries on area, part, relief, orientation and zones may stand here.

    Returns
    -------
    bool
        Whether the key is one of these.
    """
    key = plain(entry.key)
    if key == "lead":
        _lead(desk, entry.value, path, said)
        return True
    reader = _READERS.get(key) or (_PLACE_READERS.get(key) if placed else None)
    if reader is None:
        return False
    name, read = reader
    setattr(said, name, read(desk, entry.value, path, said))
    return True
