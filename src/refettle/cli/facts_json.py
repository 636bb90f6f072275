"""What is known of a thing, as JSON; ``facts.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, Document, range_json, rounded, written
from refettle.cli.words import chance_words
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow, Identity
from refettle.services.causes import KnownFault
from refettle.services.look_up import KIND_WORDS, KnownProperty, KnownThing, value_words
from refettle.services.telling import Telling, telling_of, tests_for


def facts_json(
    know: Knowledge,
    word: str | None,
    prop: str | None,
    kind: str | None,
    things: tuple[KnownThing, ...],
    faults: tuple[KnownFault, ...] = (),
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
    faults
        Faults that the word names or whose signs speak of it.

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
            "faults": [_fault(know, fault) for fault in faults],
            "tests": [_test(told) for told in _tests(know, kind, things, faults)],
        }
    )


def _tests(
    know: Knowledge, kind: str | None, things: tuple[KnownThing, ...], faults: tuple[KnownFault, ...]
) -> tuple[Telling, ...]:
    """Return the spot tests that tell what was asked for; all where tests were asked for."""
    if kind == "test":
        return tuple(telling_of(know, test) for test in know.ids("test"))
    named = [f"{thing.identity.kind}:{thing.identity.id}" for thing in things]
    return tests_for(know, (*named, *(f"rule:{cause.card.id}" for fault in faults for cause in fault.causes)))


def _test(told: Telling) -> Document:
    """Return a spot test."""
    facts = told.facts
    return {
        "id": facts.id,
        "name": facts.name,
        "ask": told.ask,
        "speaks_for": list(told.speaks_for),
        "yes_if_true": facts.yes_if_true,
        "yes_if_false": facts.yes_if_false,
        "minutes": facts.minutes,
        "wait_h": facts.wait_h,
        "because": [row.id for row in told.rows],
    }


def _fault(know: Knowledge, fault: KnownFault) -> Document:
    """Return a fault with its causes."""
    return {
        "id": fault.fault,
        "name": know.name("fault", fault.fault),
        "mend": fault.mend,
        "back_to": fault.back,
        "work_h_m2": range_json(fault.hours_m2),
        "lost_d": range_json(fault.days),
        "causes": [
            {
                "rule": cause.card.id,
                "chance": rounded(cause.chance),
                "chance_words": chance_words(cause.chance),
                "layer": cause.card.layer,
                "onset": list(cause.card.onset),
                "signs": list(cause.card.signs),
                "sources": list(cause.card.sources),
                "tests": list(cause.tests),
                "cases": [
                    {
                        "name": case.name,
                        "chance": rounded(case.chance),
                        "why": case.why,
                        "avoided": case.avoided,
                        "chance_left": rounded(case.left),
                        "because": list(case.because),
                    }
                    for case in cause.cases
                ],
            }
            for cause in fault.causes
        ],
    }


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
