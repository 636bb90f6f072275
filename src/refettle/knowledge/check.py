"""Look the tables over: what is unknown, out of bounds, doubled, out of order or missing."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from refettle.domain.finding import Finding, Level, Where
from refettle.knowledge.resolve import chain_of, split_era
from refettle.knowledge.rows import (
    ERA_BANDS,
    ERA_KINDS,
    GRADES,
    READINGS,
    FactRow,
    Identity,
    Property,
    SourceRow,
    value_of,
)

SHARES_TOLERANCE: Final = 1e-6
NOT_PUBLISHED: Final = frozenset({"common-practice", "judgement", "memory"})
SPEAKS_FOR: Final = frozenset({"lead", "loose"})

# properties whose words are ids of another kind
POINTS_TO: Final[Mapping[tuple[str, str], str]] = {
    ("cleaner", "removes"): "contaminant",
    ("cleaner", "removes_half"): "contaminant",
    ("cleaner", "leaves"): "contaminant",
    ("remover", "leaves"): "contaminant",
    ("remover", "washed_by"): "cleaner",
    ("damage", "mend"): "repair",
    ("repair", "operations"): "operation",
    ("fitting", "before"): "operation",
    ("fitting", "after"): "operation",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Names:
    """Everything a row may name."""

    properties: Mapping[str, Mapping[str, Property]]
    identities: Mapping[str, Mapping[str, Identity]]
    sources: Mapping[str, SourceRow]

    def property_of(self, row: FactRow) -> Property | None:
        """Return the registry's entry for a row, or None."""
        return self.properties.get(row.subject.partition(":")[0], {}).get(row.prop)


Located = tuple[str, int, FactRow]


def check_rows(
    *,
    tables: Iterable[tuple[str, Sequence[FactRow]]],
    properties: Iterable[Property],
    identities: Iterable[Identity],
    sources: Iterable[SourceRow],
) -> tuple[Finding, ...]:
    """
    Return every problem of the tables, all at once.

    Parameters
    ----------
    tables
        Fact rows by table name, in the order of the file.
    properties, identities, sources
        Rows of the other tables.

    Returns
    -------
    tuple of Finding
        Problems with table, line and row id; empty when all is well.
    """
    by_kind: dict[str, dict[str, Identity]] = {}
    for identity in identities:
        by_kind.setdefault(identity.kind, {})[identity.id] = identity
    props: dict[str, dict[str, Property]] = {}
    for prop in properties:
        props.setdefault(prop.kind, {})[prop.name] = prop
    names = _Names(properties=props, identities=by_kind, sources={source.key: source for source in sources})
    located = [(table, line, row) for table, rows in tables for line, row in enumerate(rows, start=2)]
    found: list[Finding] = []
    for place in located:
        for check in _ROW_CHECKS:
            found.extend(check(place, names))
    found.extend(_twins(located))
    found.extend(_disorder(located))
    found.extend(_missing([row for _, _, row in located], names))
    found.extend(_era_shares([row for _, _, row in located]))
    return tuple(found)


def _finding(place: Located, code: str, what: str, do: str, level: Level = "error") -> Finding:
    """Return a finding at a row."""
    table, line, row = place
    where = Where(file=table, line=line, path=row.id)
    return Finding(code=code, level=level, where=where, what=what, do=do, because=(row.id,))


def _subject(place: Located, names: _Names) -> Iterator[Finding]:
    """Find a subject that no identity has."""
    row = place[2]
    kind, _, name = row.subject.partition(":")
    if kind == "era":
        era = split_era(row.subject)
        known = era is not None and era[2] in names.identities.get("film", {})
        do = "write era:BAND/KIND:CLASS with a known decade band, clear or paint, and a film class"
    else:
        known = name in names.identities.get(kind, {})
        do = "write kind:id as in identities.csv, or add the identity there"
    if not known:
        yield _finding(place, "unknown-subject", f'"{row.subject}" is not a known subject', do)


def _property(place: Located, names: _Names) -> Iterator[Finding]:
    """Find a property that the registry lacks."""
    row = place[2]
    kind = row.subject.partition(":")[0]
    if kind in names.properties and names.property_of(row) is None:
        yield _finding(
            place,
            "unknown-property",
            f'"{row.prop}" is not a property of kind {kind}',
            "write a property of properties.csv, or add it there",
        )


def _source(place: Located, names: _Names) -> Iterator[Finding]:
    """Find unknown sources, grades and readings, and grades that their source cannot bear."""
    row = place[2]
    if row.source not in names.sources:
        yield _finding(
            place, "unknown-source", f'"{row.source}" is not a known source', "add its key to sources.csv"
        )
    if row.grade not in GRADES:
        yield _finding(
            place, "unknown-grade", f'"{row.grade}" is no grade', f"write one of {', '.join(GRADES)}"
        )
    if row.read_as and row.read_as not in READINGS:
        yield _finding(
            place,
            "unknown-reading",
            f'"{row.read_as}" says not how it was read',
            f"write {', '.join(READINGS)}",
        )
    if not row.read_as and row.source not in NOT_PUBLISHED:
        yield _finding(
            place,
            "unknown-reading",
            "a published source is named, but not how it was read",
            "fill in read_as",
        )
    if "judge" in row.note and row.grade != "judgement":
        yield _finding(
            place, "wrong-grade", f'grade "{row.grade}" where the note says judged', 'write "judgement"'
        )
    due = {"common-practice": "common practice", "judgement": "judgement"}.get(row.source)
    if due and row.grade != due:
        yield _finding(
            place, "wrong-grade", f'grade "{row.grade}" with source {row.source}', f'write "{due}"'
        )


def _cell(place: Located, names: _Names) -> Iterator[Finding]:
    """Find cells that are not of their type, unit, bounds or range."""
    row = place[2]
    prop = names.property_of(row)
    if prop is None:
        return
    try:
        value = value_of(prop, row.value)
    except ValueError:
        do = f"write a {prop.type}" if prop.type == "number" else "write 1 or 0"
        yield _finding(place, "wrong-type", f'"{row.value}" is no {prop.type}', do)
        return
    if not row.value and prop.type != "list":
        yield _finding(place, "no-value", "the value is empty", "fill it in or take the row out")
    due = prop.unit if prop.type == "number" else ""
    if row.unit != due:
        yield _finding(place, "wrong-unit", f'unit "{row.unit}" for {prop.name}', f'convert to "{due}"')
    if prop.type == "number" and isinstance(value, float):
        yield from _bounds(place, prop, value)


def _bounds(place: Located, prop: Property, value: float) -> Iterator[Finding]:
    """Find numbers outside the registry's bounds or their own range."""
    row = place[2]
    for number in (value, row.low, row.high):
        below = number is not None and prop.low is not None and number < prop.low
        above = number is not None and prop.high is not None and number > prop.high
        if below or above:
            bounds = (
                f"{prop.low:g} to {prop.high:g}"
                if prop.low is not None and prop.high is not None
                else "bounds"
            )
            yield _finding(
                place,
                "out-of-bounds",
                f"{number:g} is outside {bounds} of {prop.name}",
                "mend the number or unit",
            )
    low_above = row.low is not None and row.low > value
    high_below = row.high is not None and row.high < value
    if low_above or high_below:
        yield _finding(
            place, "out-of-range", f"{value:g} is outside its own low and high", "mend the value or its range"
        )


def _words(place: Located, names: _Names) -> Iterator[Finding]:
    """Find words that should be ids of another kind and are not."""
    row = place[2]
    prop = names.property_of(row)
    if prop is None:
        return
    kind = POINTS_TO.get((prop.kind, prop.name))
    words = tuple(word.strip() for word in row.value.split(";") if word.strip())
    if kind:
        wrong = [word for word in words if word not in names.identities.get(kind, {})]
    elif (prop.kind, prop.name) == ("test", "detects"):
        wrong = [word for word in words if not _speaks(word, names)]
    elif (prop.kind, prop.name) == ("latent", "blocked_by"):
        wrong = [word for word in words if word not in names.properties.get("film", {})]
    else:
        wrong = []
    for word in wrong:
        yield _finding(place, "unknown-word", f'"{word}" is not known to {prop.name}', "write a known id")


def _speaks(word: str, names: _Names) -> bool:
    """Return whether a test may speak for a word."""
    kind, _, name = word.partition(":")
    return word in SPEAKS_FOR or kind in {"family", "rule"} or name in names.identities.get(kind, {})


_ROW_CHECKS: Final[tuple[Callable[[Located, _Names], Iterator[Finding]], ...]] = (
    _subject,
    _property,
    _source,
    _cell,
    _words,
)


def _twins(located: Iterable[Located]) -> Iterator[Finding]:
    """Find rows that say the same thing from the same place, and ids used twice."""
    places: dict[tuple[object, ...], str] = {}
    ids: set[str] = set()
    for place in located:
        row = place[2]
        if row.id in ids:
            yield _finding(place, "twin-id", f"{row.id} is used twice", "give the row an id of its own")
        ids.add(row.id)
        if row.superseded_by:
            continue
        key = (row.subject, row.prop, row.source, row.place, row.at_c, row.at_rh_pct, row.at_um)
        if key in places:
            yield _finding(
                place,
                "twin",
                f"{row.subject} {row.prop} stands twice from the same place: {places[key]}",
                "keep one, or let the older be superseded",
            )
        places.setdefault(key, row.id)


def _disorder(located: Iterable[Located]) -> Iterator[Finding]:
    """Find rows whose id is not above that of the row before."""
    before = ("", "")
    for place in located:
        table, _, row = place
        if table == before[0] and row.id < before[1]:
            yield _finding(place, "unsorted", f"{row.id} stands after {before[1]}", "sort the table by id")
        before = (table, row.id)


def _missing(rows: Iterable[FactRow], names: _Names) -> Iterator[Finding]:
    """Find identities that lack a required property, their parents' rows counted."""
    have = {(row.subject, row.prop) for row in rows if not row.superseded_by}
    for kind, known in names.identities.items():
        required = [prop for prop in names.properties.get(kind, {}).values() if prop.required]
        for identity in known.values():
            chain = chain_of(f"{kind}:{identity.id}", names.identities)
            for prop in required:
                if not any((subject, prop.name) in have for subject in chain):
                    yield Finding(
                        code="missing-fact",
                        level="error",
                        where=Where(file="identities.csv", path=f"{kind}:{identity.id}/{prop.name}"),
                        what=f"{identity.name} has no {prop.name}",
                        do=f"add a row for {kind}:{identity.id}",
                    )


def _era_shares(rows: Iterable[FactRow]) -> Iterator[Finding]:
    """Find decade bands whose shares do not add up to 1."""
    sums: dict[tuple[str, str], float] = {(band, kind): 0.0 for band in ERA_BANDS for kind in ERA_KINDS}
    for row in rows:
        era = split_era(row.subject)
        if era and row.prop == "share" and not row.superseded_by:
            sums[era[:2]] += float(row.value)
    for (band, kind), total in sums.items():
        if abs(total - 1.0) > SHARES_TOLERANCE:
            yield Finding(
                code="shares-not-1",
                level="error",
                where=Where(file="facts", path=f"era:{band}/{kind}"),
                what=f"shares of old finishes add up to {total:g}",
                do="make them add up to 1",
            )
