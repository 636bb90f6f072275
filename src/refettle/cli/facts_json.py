"""What is known of a thing, as JSON; ``facts.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, Document, written
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow, Identity
from refettle.services.look_up import KIND_WORDS, KnownProperty, KnownThing, value_words


def facts_json(
    know: Knowledge, word: str | None, prop: str | None, kind: str | None, things: tuple[KnownThing, ...]
) -> str:
    """
    Return what is known of a word as a JSON document.

    Parameters
    ----------
    know
        All facts.
    word, prop
        What was asked for; None = nothing.
    kind
        Kind that the word names; None = it names a thing.
    things
        What the word means, with the properties asked for.

    Returns
    -------
    str
        Valid against ``facts.schema.json``.
    """
    listed = know.identities.get(kind or "", {}).values()
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "word": word,
            "property": prop,
            "kinds": [
                {"kind": known, "one": one, "many": many, "count": len(know.ids(known))}
                for known, (one, many) in KIND_WORDS.items()
                if kind in {None, known} and (word is None or kind is not None)
            ],
            "names": [_identity(identity) for identity in listed],
            "things": [
                {
                    **_identity(thing.identity),
                    "facts": [_property(know, one) for one in thing.properties],
                }
                for thing in things
            ],
        }
    )


def _identity(identity: Identity) -> Document:
    """Return the names of a thing."""
    return {
        "kind": identity.kind,
        "id": identity.id,
        "name": identity.name,
        "aliases": list(identity.aliases),
        "parent": identity.parent or None,
    }


def _property(know: Knowledge, one: KnownProperty) -> Document:
    """Return a property with the row that decides and the others."""
    cell = one.prop.default if one.winner is None else one.winner.value
    return {
        "property": one.prop.name,
        "about": one.about,
        "meaning": one.prop.meaning,
        "type": one.prop.type,
        "unit": one.prop.unit,
        "value": cell,
        "value_words": value_words(know, one.prop, cell),
        "winner": None if one.winner is None else _row(know, one.winner),
        "others": [_row(know, row) for row in one.others],
    }


def _row(know: Knowledge, row: FactRow) -> Document:
    """Return a fact with its source."""
    source = know.sources.get(row.source)
    return {
        "id": row.id,
        "subject": row.subject,
        "value": row.value,
        "low": row.low,
        "high": row.high,
        "unit": row.unit,
        "at_c": row.at_c,
        "at_rh_pct": row.at_rh_pct,
        "at_um": row.at_um,
        "grade": row.grade,
        "source": row.source,
        "title": source.title if source else "",
        "year": source.year if source else "",
        "place": row.place,
        "read_as": row.read_as,
        "note": row.note,
        "superseded_by": row.superseded_by or None,
    }
