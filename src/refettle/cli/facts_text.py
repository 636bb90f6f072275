"""What is known of a thing, as a page: values, what they mean, what they rest on, and who else says what."""

from collections.abc import Iterable
from typing import Final

from refettle.cli.page import Page
from refettle.cli.telling_text import write_tests
from refettle.cli.words import count_words
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow, Identity, Property
from refettle.services.look_up import KIND_WORDS, KnownProperty, KnownThing, label_of, value_words
from refettle.services.telling import tests_for, tests_of_kind

_COUNT: Final = 24
_SIGNS: Final = {"1": "", "m3/m3": "", "C": "°C", "um": "µm"}
_READ: Final = {
    "whole": "read in full",
    "excerpt": "read in excerpt",
    "second-hand": "at second hand",
    "memory": "from memory",
}


def kinds_text(know: Knowledge, page: Page) -> str:
    """
    Return the page of all kinds with how many things each holds.

    Parameters
    ----------
    know
        All facts.
    page
        Empty page of the right width.

    Returns
    -------
    str
        One line a kind.
    """
    page.heading("What is known")
    page.gap()
    for kind, (_, many) in KIND_WORDS.items():
        page.marked(many, f"{len(know.ids(kind)):>3}", indent=2, column=_COUNT)
    page.gap()
    page.write('Names of one kind: "refettle facts woods". One thing: "refettle facts oak".')
    return page.text()


def names_text(know: Knowledge, kind: str, page: Page) -> str:
    """
    Return the page of all names of a kind.

    Parameters
    ----------
    know
        All facts.
    kind
        The kind.
    page
        Empty page of the right width.

    Returns
    -------
    str
        Each name with the other words for it.
    """
    identities = know.identities.get(kind, {}).values()
    page.heading(count_words(len(identities), *KIND_WORDS[kind]))
    page.gap()
    for identity in identities:
        also = f" (also {', '.join(identity.aliases)})" if identity.aliases else ""
        page.write(f"{identity.name}{also}", indent=2, hang=4)
    return page.text()


def facts_text(know: Knowledge, things: Iterable[KnownThing], page: Page, *, everything: bool) -> str:
    """
    Return the page of some things, each with its properties.

    Parameters
    ----------
    know
        Names and sources.
    things
        Things of one name.
    page
        Empty page of the right width.
    everything
        Write out properties that no row speaks of too, where otherwise one line sums them up.

    Returns
    -------
    str
        The winning row of each property first, its rivals beneath.
    """
    for thing in things:
        _title(page, know, thing.identity)
        _told_by(page, know, thing.identity)
        usual = [one for one in thing.properties if one.winner is None and not one.others]
        for one in thing.properties:
            if everything or one not in usual:
                _property(page, know, thing.identity, one)
        if usual and not everything:
            page.gap()
            page.write("Taken as usual, since no source speaks of it", indent=2)
            said = (f"{label_of(one.prop)} {_usual(know, one.prop)}" for one in usual)
            page.write("; ".join(said), indent=4)
    return page.text()


def compared_text(know: Knowledge, things: tuple[KnownThing, ...], page: Page) -> str:
    """
    Return the page of one property over all things of a kind.

    Parameters
    ----------
    know
        Names.
    things
        All things of the kind, with that property alone.
    page
        Empty page of the right width.

    Returns
    -------
    str
        A line a thing, highest number first.
    """
    width = 2 + max(len(thing.identity.name) for thing in things) + 2
    for prop in dict.fromkeys(one.prop for thing in things for one in thing.properties):
        page.heading(label_of(prop))
        page.write(_meaning(prop), indent=2, hang=2)
        page.gap()
        rows = [(thing.identity, one) for thing in things for one in thing.properties if one.prop is prop]
        for identity, one in sorted(rows, key=lambda row: -_number(row[1])):
            said = _usual(know, prop) if one.winner is None else _valued(know, prop, one.winner)
            grade = "as usual" if one.winner is None else one.winner.grade
            about = f", {one.about}" if one.about else ""
            page.marked(
                identity.name + about, f"{said}; {grade}", indent=2, column=min(width, page.width // 2)
            )
    return page.text()


def _number(one: KnownProperty) -> float:
    """Return the number that a property is sorted by [its unit]; 0 for words."""
    if one.prop.type != "number":
        return 0.0
    return float((one.prop.default if one.winner is None else one.winner.value) or 0.0)


def _title(page: Page, know: Knowledge, identity: Identity) -> None:
    """Write what a thing is, its other names, and whose facts stand in for its own."""
    page.heading(f"{identity.name}: {KIND_WORDS[identity.kind][0]}")
    if identity.aliases:
        page.write(f"Also called {', '.join(identity.aliases)}", indent=2, hang=2)
    if identity.parent:
        page.write(
            f"Where it has no facts of its own: as {know.name(identity.kind, identity.parent)}", indent=2
        )


def _told_by(page: Page, know: Knowledge, identity: Identity) -> None:
    """Write which spot tests tell a thing: in full where one only has to look."""
    tests = tests_for(know, (f"{identity.kind}:{identity.id}",))
    if not tests:
        return
    if identity.kind != "build":
        page.write(f"Told by: {', '.join(told.facts.name for told in tests)}", indent=2, hang=2)
        return
    page.gap()
    page.write("Is it? How to tell:", indent=2)
    write_tests(page, tests_of_kind(know, identity.kind))


def _property(page: Page, know: Knowledge, identity: Identity, one: KnownProperty) -> None:
    """Write one property: value, meaning, source, rivals."""
    page.gap()
    label = label_of(one.prop) + (f", {one.about}" if one.about else "")
    winner = one.winner
    said = f"{_usual(know, one.prop)}, as usual" if winner is None else _valued(know, one.prop, winner)
    page.write(f"{label}: {said}", indent=2, hang=2)
    if one.prop.meaning and not one.about:
        page.write(_meaning(one.prop), indent=4, hang=2)
    if winner is None:
        page.write("no source speaks of it", indent=4)
    else:
        page.write(_start(_grounds(know, identity, winner)), indent=4, hang=2)
    for row in one.others:
        rival = f"{_valued(know, one.prop, row)} ({_grounds(know, identity, row)})"
        page.write(f"{'replaced' if row.superseded_by else 'also'}: {rival}", indent=4, hang=2)


def _usual(know: Knowledge, prop: Property) -> str:
    """Return the value that stands where no row speaks."""
    return value_words(know, prop, prop.default) + _unit(prop.unit)


def _valued(know: Knowledge, prop: Property, row: FactRow) -> str:
    """Return value, unit, range and conditions of a row: ``2 h (1–4 h) at 20 °C``."""
    unit = _unit(row.unit or prop.unit)
    width = "" if row.low is None or row.high is None else f" ({row.low:g}–{row.high:g}{unit})"
    return f"{value_words(know, prop, row.value)}{unit}{width}{_conditions(row)}"


def _unit(unit: str) -> str:
    """Return a unit as it is written, a blank before it."""
    sign = _SIGNS.get(unit, unit.replace("m2", "m²").replace("m3", "m³"))
    return f" {sign}" if sign else ""


def _conditions(row: FactRow) -> str:
    """Return the conditions that a row was found at."""
    parts = []
    if row.at_c is not None:
        parts.append(f"{row.at_c:g} °C")
    if row.at_rh_pct is not None:
        parts.append(f"{row.at_rh_pct:g} % humidity")
    if row.at_um is not None:
        parts.append(f"a film of {row.at_um:g} µm")
    return f" at {', '.join(parts)}" if parts else ""


def _grounds(know: Knowledge, identity: Identity, row: FactRow) -> str:
    """Return what a row rests on: grade, source, place, how it was read, its note."""
    source = know.sources.get(row.source)
    title = source.title if source else row.source
    if title.casefold().startswith(row.grade):
        parts = [row.grade + (f", {row.place}" if row.place else "")]
    else:
        year = f" ({source.year})" if source and source.year else ""
        parts = [f"{row.grade}: {title}{year}" + (f", {row.place}" if row.place else "")]
    if row.read_as:
        parts.append(_READ.get(row.read_as, row.read_as))
    kind, _, owner = row.subject.partition(":")
    if kind == identity.kind and owner != identity.id:
        parts.append(f"said of {know.name(kind, owner)}")
    if row.note:
        parts.append(row.note)
    return "; ".join(parts)


def _meaning(prop: Property) -> str:
    """Return what a property says, its choices in a row."""
    return _start(prop.meaning.replace(" | ", ", "))


def _start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"
