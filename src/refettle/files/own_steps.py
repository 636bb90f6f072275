"""The person's own sequences, `intend` and `done`: a list of plainly written steps becomes `Step` values."""

from dataclasses import dataclass, field
from typing import Final

from refettle.domain.air import Air
from refettle.domain.finding import Where
from refettle.domain.piece import USES, Assumed
from refettle.domain.step import COAT_VERBS, EVENT_MARKS, VERBS, WORK_MARKS, Step
from refettle.files.air_entries import read_air
from refettle.files.amounts import count, grit, quoted, time_h
from refettle.files.fields import Desk, nearest
from refettle.files.yaml_tree import Entry, Listing, Mapping, Text, Tree, plain

VERB_WORDS: Final = {verb.replace("_", " "): verb for verb in sorted(VERBS)} | {"coat": "coat"}
METHODS: Final = ("brush", "wipe", "pad", "roller", "spray", "aerosol")
FILMS: Final = ("thin", "normal", "heavy")
_KEYS: Final = ("coats", "passes", "by", "grit", "wait between", "wait after", "film", "air", "how")
STEP_KEYS: Final = (*_KEYS, *(mark for mark in WORK_MARKS if mark not in VERB_WORDS))

_KINDS: Final = {
    "clean": ("cleaner",),
    "rinse": ("cleaner",),
    "neutralise": ("cleaner",),
    "strip": ("remover",),
    "scrape": ("remover", "tool"),
    "bleach": ("repair", "cleaner"),
    "test": ("test",),
    "repair": ("damage",),
    "revive": ("cleaner", "remover"),
} | dict.fromkeys((*sorted(COAT_VERBS), "coat"), ("film",))
_UNSAID: Final = {"rinse": "water-rinse", "neutralise": "vinegar-water", "scrape": "card-scraper"}
_FREE: Final = ("mask", "sample", "take_off", "refit", "raise_grain", "climate")
_EG: Final = {
    "clean": "soap and water",
    "strip": "mild remover",
    "test": "alcohol drop",
    "repair": "loose joint",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sequence:
    """
    One sequence as read.

    Attributes
    ----------
    steps
        Steps in order.
    where
        Place of each step.
    assumed
        Waits that were not given.
    """

    steps: tuple[Step, ...] = ()
    where: tuple[Where, ...] = ()
    assumed: tuple[Assumed, ...] = ()


@dataclass(slots=True, kw_only=True)
class _Draft:
    """A step that is being read."""

    verb: str
    path: str
    line: int
    what: str = ""
    method: str = ""
    coats: int = 1
    between_h: float | None = None
    after_h: float | None = None
    film: str = "normal"
    grits: tuple[int, ...] = ()
    how: set[str] = field(default_factory=set)
    air: Air | None = None


def read_sequence(desk: Desk, tree: Tree, path: str) -> Sequence:
    """
    Return a list of steps.

    Parameters
    ----------
    desk
        Desk of the file.
    tree
        List of steps, or one step alone.
    path
        Path of the entry.

    Returns
    -------
    Sequence
        Steps that could be read, with their places and the waits assumed.
    """
    steps: list[Step] = []
    where: list[Where] = []
    if isinstance(tree, Listing) and not tree.items:
        desk.say(
            "no-value", tree.line, path, "the list is empty", "write a step, e.g. - clean: soap and water"
        )
    assumed: list[Assumed] = []
    for item in desk.items(tree):
        draft = _draft(desk, item, path)
        if draft is None:
            continue
        assumed.extend(_waits(desk, draft))
        made = _steps(draft)
        steps.extend(made)
        where.extend(desk.where(draft.line, draft.path) for _ in made)
    return Sequence(steps=tuple(steps), where=tuple(where), assumed=tuple(assumed))


def _draft(desk: Desk, item: Tree, path: str) -> _Draft | None:
    """Read one step; None where its verb is not known."""
    if isinstance(item, Listing):
        desk.say(
            "wrong-form",
            item.line,
            path,
            "a list stands where a step is due",
            'write a step, e.g. "sand: P180"',
        )
        return None
    if isinstance(item, Text):
        said = desk.text(item, path)
        return None if said is None else _bare_verb(desk, said, item, path)
    verbs = [entry for entry in item.entries if _is_verb(entry)]
    if len(verbs) > 1:
        verbs = [entry for entry in verbs if plain(entry.key) != "air"]
    if not verbs:
        _no_verb(desk, item, path)
        return None
    if len(verbs) > 1:
        what = f"{quoted(verbs[0].key)} and {quoted(verbs[1].key)} stand in one step"
        desk.say(
            "two-verbs", verbs[1].line, path, what, f"begin the second one with a dash: - {verbs[1].key}"
        )
        return None
    draft = _Draft(verb=VERB_WORDS[plain(verbs[0].key)], path=f"{path}/{verbs[0].key}", line=verbs[0].line)
    _read_what(desk, draft, verbs[0].value)
    for entry in item.entries:
        if entry is not verbs[0]:
            _modifier(desk, draft, entry)
    return draft


def _is_verb(entry: Entry) -> bool:
    """Return whether a key is the step's verb; `air` with entries below it is the air of a step."""
    return plain(entry.key) in VERB_WORDS and not (
        plain(entry.key) == "air" and isinstance(entry.value, Mapping)
    )


def _no_verb(desk: Desk, item: Mapping, path: str) -> None:
    strange = next((entry for entry in item.entries if plain(entry.key) not in STEP_KEYS), None)
    if strange is None:
        desk.say(
            "no-verb",
            item.line,
            path,
            "this step does not say what is done",
            'begin it with a verb, e.g. "sand: P180"',
        )
        return
    near = nearest(plain(strange.key), list(VERB_WORDS))
    do = f'write "{near}"' if near else f"known steps: {', '.join(VERB_WORDS)}"
    desk.say("unknown-step", strange.line, path, f"{quoted(strange.key)} is not a known step", do)


def _bare_verb(desk: Desk, said: str, item: Text, path: str) -> _Draft | None:
    """Read a step that is only a verb."""
    verb = VERB_WORDS.get(plain(said))
    if verb is None:
        first = next((word for word in VERB_WORDS if plain(said).startswith(f"{word} ")), None)
        near = nearest(plain(said), list(VERB_WORDS))
        do = f"known steps: {', '.join(VERB_WORDS)}"
        if first is not None:
            do = f'write "{first}: {said[len(first) :].strip()}"'
        elif near:
            do = f'write "{near}"'
        desk.say("unknown-step", item.line, path, f"{quoted(said)} is not a known step", do)
        return None
    draft = _Draft(verb=verb, path=f"{path}/{said}", line=item.line)
    _read_what(desk, draft, Text(line=item.line, value=""))
    return draft


def _read_what(desk: Desk, draft: _Draft, tree: Tree) -> None:
    """Read what stands behind the verb."""
    silent = isinstance(tree, Text) and not tree.value
    match draft.verb:
        case "sand" | "scuff" | "rub_out":
            _read_abrasive(desk, draft, tree, silent=silent)
        case "wait":
            draft.after_h = desk.amount(tree, draft.path, time_h)
        case "air" if silent or (isinstance(tree, Text) and not tree.value[0].isdigit()):
            draft.what = tree.value if isinstance(tree, Text) else ""
        case "air":
            draft.after_h = desk.amount(tree, draft.path, time_h)
        case "expose":
            _read_events(desk, draft, tree, tuple(EVENT_MARKS), "exposure")
        case "use":
            _read_events(desk, draft, tree, (*USES, *EVENT_MARKS), "use")
        case verb if verb in _FREE:
            draft.what = "" if silent else desk.text(tree, draft.path) or ""
        case verb if silent and verb in _UNSAID:
            draft.what = _UNSAID[verb]
        case _ if silent:
            eg = _EG.get(draft.verb, "shellac")
            word = draft.path.rpartition("/")[2]
            desk.say(
                "no-value",
                draft.line,
                draft.path,
                f'"{word}" does not say with what',
                f'write it, e.g. "{word}: {eg}"',
            )
        case _:
            _read_known(desk, draft, tree)


def _read_events(desk: Desk, draft: _Draft, tree: Tree, known: tuple[str, ...], noun: str) -> None:
    """Read what the surface meets: one word or several; a kind of use sets no mark."""
    items = desk.items(tree)
    if not items:
        what = "the list is empty"
        desk.say("no-value", tree.line, draft.path, what, f"write what it meets, e.g. {known[0]}")
    words = [word for item in items if (word := desk.choice(item, draft.path, known, noun))]
    draft.what = words[0] if words else ""
    draft.how.update(EVENT_MARKS[word] for word in words if word in EVENT_MARKS)


def _read_abrasive(desk: Desk, draft: _Draft, tree: Tree, *, silent: bool) -> None:
    """Read grits, or the tool that scuffs or rubs without one."""
    if silent:
        if draft.verb == "sand":
            desk.say(
                "no-value",
                draft.line,
                draft.path,
                '"sand" does not say with which grit',
                'write it, e.g. "sand: P180"',
            )
        return
    if isinstance(tree, Text) and draft.verb != "sand":
        tool = desk.knowledge.find("tool", tree.value)
        if tool is not None:
            draft.method = tool
            return
    grits = [desk.amount(item, draft.path, grit) for item in desk.items(tree)]
    draft.grits = tuple(number for number in grits if number is not None)


def _read_known(desk: Desk, draft: _Draft, tree: Tree) -> None:
    """Read a word of the knowledge; the first kind that knows it wins."""
    said = desk.text(tree, draft.path)
    if said is None:
        return
    kinds = _KINDS[draft.verb]
    for kind in kinds:
        found = desk.knowledge.find(kind, said)
        if found is not None:
            draft.what = found
            break
    else:
        desk.known(kinds[0], said, tree.line, draft.path)
        return
    if draft.verb == "coat":
        _settle_coat(desk, draft, said)


def _settle_coat(desk: Desk, draft: _Draft, said: str) -> None:
    """Pick the verb from what the class is laid for, best first."""
    film = desk.knowledge.films.get(draft.what)
    verbs = [role for role in film.role if role in COAT_VERBS] if film else []
    if verbs:
        draft.verb = verbs[0]
        return
    what = f"{quoted(said)} is met on old pieces only and is not laid anew"
    desk.say("not-a-coat", draft.line, draft.path, what, "name the class of the coat you lay")


def _modifier(desk: Desk, draft: _Draft, entry: Entry) -> None:
    """Read one of the further entries of a step."""
    path = f"{draft.path}/{entry.key}"
    match plain(entry.key):
        case "coats" | "passes":
            _read_number(desk, draft, entry, path)
        case "by":
            _read_by(desk, draft, entry.value, path)
        case "grit" if draft.grits:
            desk.say(
                "said-twice", entry.line, path, "the grit stands behind the verb too", "keep one of the two"
            )
        case "grit":
            draft.grits = tuple(filter(None, (desk.amount(entry.value, path, grit),)))
        case "wait between":
            draft.between_h = desk.amount(entry.value, path, time_h)
        case "wait after":
            draft.after_h = desk.amount(entry.value, path, time_h)
        case "film":
            draft.film = desk.choice(entry.value, path, FILMS, "thickness of a coat") or "normal"
        case "air":
            draft.air = read_air(desk, entry.value, path)
        case "how":
            words = [
                desk.choice(item, path, tuple(WORK_MARKS), "mark of a step")
                for item in desk.items(entry.value)
            ]
            draft.how.update(WORK_MARKS[word] for word in words if word)
        case word if word in WORK_MARKS:
            if desk.yes(entry.value, path):
                draft.how.add(WORK_MARKS[word])
        case _:
            desk.unknown_key(entry, path, STEP_KEYS)


def _read_number(desk: Desk, draft: _Draft, entry: Entry, path: str) -> None:
    """Read the coats of a coat or the passes of a remover; one pass said is one pass meant."""
    word = plain(entry.key)
    due = "passes" if draft.verb == "strip" else "coats" if draft.verb in {*COAT_VERBS, "coat"} else ""
    if word != due:
        do = f'write "{due}"' if due else "write the step as often as you do it"
        verb = draft.path.rpartition("/")[2]
        desk.say("no-use", entry.line, path, f"{quoted(verb)} is not counted in {word}", do)
        return
    draft.coats = desk.amount(entry.value, path, count) or 1
    if word == "passes" and draft.coats == 1:
        draft.how.add("one pass")


def _read_by(desk: Desk, draft: _Draft, tree: Tree, path: str) -> None:
    """Read how a coat goes on, or with what tool the work is done."""
    if draft.method:
        desk.say("said-twice", tree.line, path, "the tool stands behind the verb too", "keep one of the two")
    elif draft.verb in COAT_VERBS or draft.verb == "coat":
        draft.method = desk.choice(tree, path, METHODS, "way to lay a coat") or ""
    else:
        draft.method = desk.word(tree, path, "repair" if draft.verb == "repair" else "tool") or ""


def _waits(desk: Desk, draft: _Draft) -> list[Assumed]:
    """Fill in the way and the waits that were not given: what the class or the cleaner needs."""
    needed, why = _needed_wait(desk, draft)
    assumed: list[Assumed] = []
    film = desk.knowledge.films.get(draft.what) if draft.verb in COAT_VERBS else None
    if film is not None and film.methods and not draft.method:
        draft.method = film.methods[0]
        assumed.append(Assumed(path=f"{draft.path}/by", value=draft.method, why="not said: the usual way"))
    if draft.between_h is None and draft.coats > 1 and draft.verb != "strip":
        draft.between_h = needed
        assumed.append(Assumed(path=f"{draft.path}/wait between", value=f"{needed:g} h", why=why))
    if draft.after_h is None and needed > 0:
        draft.after_h = needed
        assumed.append(Assumed(path=f"{draft.path}/wait after", value=f"{needed:g} h", why=why))
    return assumed


def _needed_wait(desk: Desk, draft: _Draft) -> tuple[float, str]:
    """Return the usual wait [h] after a step and why."""
    known = desk.knowledge
    if draft.what in known.films and draft.verb in COAT_VERBS:
        return known.films[draft.what].recoat_from_h, "not said: when it may usually be recoated"
    if draft.verb in {"clean", "rinse", "neutralise", "bleach"} and draft.what in known.cleaners:
        return known.cleaners[draft.what].dry_h, "not said: until it is usually dry"
    if draft.verb == "strip" and draft.what in known.removers:
        return known.removers[draft.what].dry_h, "not said: until the wood is usually dry"
    return 0.0, "not said: no wait"


def _steps(draft: _Draft) -> tuple[Step, ...]:
    """Return the step, or one step per grit."""
    how = set(draft.how)
    if draft.method == "steel-wool":
        how.add("steel wool")
    grits = draft.grits or (0,)
    return tuple(
        Step(
            verb=draft.verb if draft.verb != "coat" else "topcoat",
            what=draft.what,
            method=draft.method,
            coats=draft.coats,
            wait_between_h=draft.between_h or 0.0,
            wait_after_h=draft.after_h or 0.0 if number == grits[-1] else 0.0,
            film=draft.film,
            grit=number,
            how=frozenset(how),
            air=draft.air,
        )
        for number in grits
    )
