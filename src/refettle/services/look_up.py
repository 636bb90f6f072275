"""What is known of a thing: found by any of its names; each property with the row that decides and its rivals."""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final

from refettle.knowledge.check import POINTS_TO
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.resolve import chain_of, plain_spelling, split_era, winning_row
from refettle.knowledge.rows import FactRow, Identity, Property

KIND_WORDS: Final = {
    "wood": ("wood", "woods"),
    "build": ("build", "builds"),
    "film": ("finish class", "finish classes"),
    "contaminant": ("contaminant", "contaminants"),
    "latent": ("cause in the wood", "causes in the wood"),
    "cleaner": ("cleaner", "cleaners"),
    "remover": ("remover", "removers"),
    "tool": ("tool", "tools"),
    "test": ("test", "tests"),
    "damage": ("damage", "damages"),
    "repair": ("repair", "repairs"),
    "fault": ("fault", "faults"),
    "labour": ("kind of work", "kinds of work"),
    "operation": ("operation of mending", "operations of mending"),
    "fitting": ("fitting", "fittings"),
    "supply": ("supply", "supplies"),
}
"""Kinds of thing, in the order they are listed, with the words for one and for many."""
_OTHER_WORDS: Final = {
    "film": ("class", "classes", "finishes"),
    "latent": ("causes",),
    "labour": ("work",),
    "operation": ("operation", "operations", "mending"),
    "test": (
        "spot test",
        "spot tests",
        "old finish",
        "old finishes",
        "unknown finish",
        "what finish",
        "which finish",
    ),
}
_UNIT_ENDS: Final = frozenset({"h", "c", "um", "g", "l", "m2", "m3", "kg"})
_NEAR: Final = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownProperty:
    """
    One property of a thing.

    Attributes
    ----------
    prop
        What the registry says of it.
    about
        For which times and finishes it holds, in words; empty = always.
    winner
        The row that decides; None where the registry's usual value stands.
    others
        Rows that do not decide, best first: rivals, rows of the parent, rows that were replaced.
    """

    prop: Property
    about: str = ""
    winner: FactRow | None
    others: tuple[FactRow, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownThing:
    """
    One thing with all that is known of it.

    Attributes
    ----------
    identity
        Its names.
    properties
        In the order of the registry; for a class, its shares among old finishes by time come last.
    """

    identity: Identity
    properties: tuple[KnownProperty, ...]


def kind_meant(word: str) -> str | None:
    """
    Return the kind of thing that a word names.

    Parameters
    ----------
    word
        ``woods``, ``classes``, ``kinds of work`` or the kind's own id.

    Returns
    -------
    str or None
        The kind, or None.

    Examples
    --------
    >>> kind_meant("Woods"), kind_meant("films"), kind_meant("oak")
    ('wood', 'film', None)
    """
    wanted = plain_spelling(word)
    for kind, words in KIND_WORDS.items():
        more = _OTHER_WORDS.get(kind, ())
        if wanted in {plain_spelling(spelling) for spelling in (*words, kind, f"{kind}s", *more)}:
            return kind
    return None


def things_meant(know: Knowledge, word: str) -> tuple[Identity, ...]:
    """
    Return everything that a word means, over all kinds.

    Parameters
    ----------
    know
        All facts.
    word
        Id, name or alias.

    Returns
    -------
    tuple of Identity
        One a kind at most; empty where nothing is called so.
    """
    hits = ((kind, know.find(kind, word)) for kind in KIND_WORDS)
    return tuple(know.identities[kind][id_] for kind, id_ in hits if id_ is not None)


def near_words(know: Knowledge, word: str) -> tuple[str, ...]:
    """
    Return words spelt nearly like one that means nothing, nearest first.

    Parameters
    ----------
    know
        All facts.
    word
        The word.

    Returns
    -------
    tuple of str
        Up to six, each of another thing, over all kinds and the words for kinds.
    """
    spellings = {plain_spelling(words[1]): (words[1], words[1]) for words in KIND_WORDS.values()}
    for kind in KIND_WORDS:
        for bare, (id_, spelling) in know.words.get(kind, {}).items():
            said = know.name(kind, id_) if spelling == id_ else spelling
            spellings.setdefault(bare, (f"{kind}:{id_}", said))
    hits = get_close_matches(plain_spelling(word), list(spellings), n=3 * _NEAR, cutoff=0.6)
    nearest: dict[str, str] = {}
    for hit in hits:
        nearest.setdefault(*spellings[hit])
    return tuple(nearest.values())[:_NEAR]


def known_of(know: Knowledge, identity: Identity) -> KnownThing:
    """
    Return all that is known of a thing.

    Parameters
    ----------
    know
        All facts.
    identity
        The thing.

    Returns
    -------
    KnownThing
        Every property of its kind, those that no row speaks of included.
    """
    subject = f"{identity.kind}:{identity.id}"
    chain = chain_of(subject, know.identities)
    found = []
    for name, prop in know.properties.get(identity.kind, {}).items():
        winner = winning_row(know.rows_by_subject, chain, name)
        rows = know.rows(subject, name)
        others = tuple(row for row in rows if winner is None or row.id != winner.id)
        found.append(KnownProperty(prop=prop, winner=winner, others=others))
    if identity.kind == "film":
        found.extend(_by_time(know, identity.id))
    return KnownThing(identity=identity, properties=tuple(found))


def _by_time(know: Knowledge, film: str) -> list[KnownProperty]:
    """Return the shares of a class among old finishes, by the time of the piece."""
    share = know.properties.get("era", {}).get("share")
    found = []
    for subject, props in know.rows_by_subject.items():
        key = split_era(subject)
        rows = props.get("share", ())
        if share is not None and key is not None and key[2] == film and rows:
            about = f"{time_words(key[0])}, {'old paint' if key[1] == 'paint' else 'old clear finish'}"
            found.append(KnownProperty(prop=share, about=about, winner=rows[0], others=rows[1:]))
    return found


def time_words(band: str) -> str:
    """Return the years of a band: ``1930–1949``, ``before 1900``."""
    if band == "unknown":
        return "time not known"
    first, _, last = band.partition("-")
    return f"{first}–{last}" if last.isdigit() and first.isdigit() else f"{first} {last}".replace("now", "on")


def label_of(prop: Property) -> str:
    """
    Return a property's name in words, its unit left off.

    Parameters
    ----------
    prop
        The property.

    Returns
    -------
    str
        E.g. ``recoat from`` for ``recoat_from_h``.
    """
    words = prop.name.split("_")
    while prop.unit and len(words) > 1 and words[-1] in _UNIT_ENDS:
        words.pop()
    return " ".join(words)


def only_property(things: Iterable[KnownThing], word: str) -> tuple[KnownThing, ...]:
    """
    Return the things with the properties alone that a word means.

    Parameters
    ----------
    things
        Things with everything.
    word
        Name of a property, in full or in part: ``recoat`` means both ends of the recoat window.

    Returns
    -------
    tuple of KnownThing
        Those that have such a property; empty where none has.
    """
    found = []
    for thing in things:
        kept = _kept(thing.properties, word)
        if kept:
            found.append(KnownThing(identity=thing.identity, properties=kept))
    return tuple(found)


def _kept(properties: tuple[KnownProperty, ...], word: str) -> tuple[KnownProperty, ...]:
    """Return the properties that a word names exactly, else those that have all its words in their name."""
    bare = plain_spelling(word)
    exact = tuple(
        one
        for one in properties
        if bare in {plain_spelling(one.prop.name), plain_spelling(label_of(one.prop))}
    )
    if exact:
        return exact
    wanted = set(word.lower().replace("_", " ").replace("-", " ").split())
    return tuple(one for one in properties if wanted and wanted <= set(one.prop.name.split("_")))


def property_labels(things: Iterable[KnownThing]) -> tuple[str, ...]:
    """Return the names of all properties of some things, each once."""
    return tuple(dict.fromkeys(label_of(one.prop) for thing in things for one in thing.properties))


def value_words(know: Knowledge, prop: Property, cell: str) -> str:
    """
    Return a cell as one says it: ids as names, flags as yes and no.

    Parameters
    ----------
    know
        Names.
    prop
        The property.
    cell
        The cell; empty = none.

    Returns
    -------
    str
        E.g. ``grime, skin oil``.
    """
    if prop.type == "number":
        return cell or "0"
    if prop.type == "flag":
        return "yes" if cell in {"1", "yes"} else "no"
    words = [part.strip() for part in cell.split(";") if part.strip()]
    kind = _kind_named(know, prop)
    return ", ".join(_said(know, kind, word) for word in words) or "none"


def _kind_named(know: Knowledge, prop: Property) -> str:
    """Return the kind whose ids a property holds; empty where its values are plain words."""
    kind = POINTS_TO.get((prop.kind, prop.name), "")
    return kind if kind in know.identities else ""


def _said(know: Knowledge, kind: str, word: str) -> str:
    """Return one value in words."""
    before, _, after = word.partition(":")
    if after and before in know.identities:
        return know.name(before, after)
    if after:
        return f"{before} {after}".replace("-", " ")
    if kind:
        return know.name(kind, word)
    return word.replace("_", " ")
