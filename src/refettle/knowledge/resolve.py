"""Which row wins: nearest subject first, then grade, then source; the rest stay, behind it."""

from collections.abc import Callable, Iterable, Mapping
from typing import TypeVar

from refettle.knowledge.rows import (
    ERA_BANDS,
    ERA_KINDS,
    GRADE_RANK,
    FactRow,
    Identity,
    Property,
    SourceRow,
    Value,
    value_of,
)

Facts = TypeVar("Facts")
RowsBySubject = dict[str, dict[str, tuple[FactRow, ...]]]
Priors = dict[tuple[str, str], tuple[tuple[str, float], ...]]

LAST_RANK = 99


def order_rows(rows: Iterable[FactRow], sources: Mapping[str, SourceRow]) -> tuple[FactRow, ...]:
    """
    Return rival rows of one subject and property, winner first.

    Rows that were superseded come last; rows found far from room conditions stand behind those found
    at them; then grade decides, then whether the source was read or recalled, its rank, and the id.

    Parameters
    ----------
    rows
        Rows of one subject and one property.
    sources
        Sources by key.

    Returns
    -------
    tuple of FactRow
        The same rows, winner first.
    """

    def key(row: FactRow) -> tuple[bool, bool, int, bool, int, str]:
        source = sources.get(row.source)
        rank = source.rank if source else LAST_RANK
        grade = GRADE_RANK.get(row.grade, LAST_RANK)
        return (bool(row.superseded_by), _far(row), grade, row.read_as == "memory", rank, row.id)

    return tuple(sorted(rows, key=key))


def _far(row: FactRow) -> bool:
    """Return whether a row was found away from room conditions (18-27 °C, 35-65 % RH)."""
    cold_or_hot = row.at_c is not None and not 18.0 <= row.at_c <= 27.0
    dry_or_damp = row.at_rh_pct is not None and not 35.0 <= row.at_rh_pct <= 65.0
    return cold_or_hot or dry_or_damp


def sort_rows(rows: Iterable[FactRow], sources: Mapping[str, SourceRow]) -> RowsBySubject:
    """
    Return all rows by subject and property, each bundle winner first.

    Parameters
    ----------
    rows
        All fact rows.
    sources
        Sources by key.

    Returns
    -------
    dict
        Subject → property → rows.
    """
    heaps: dict[str, dict[str, list[FactRow]]] = {}
    for row in rows:
        heaps.setdefault(row.subject, {}).setdefault(row.prop, []).append(row)
    return {
        subject: {
            prop: order_rows(heap, sources) if len(heap) > 1 else tuple(heap)
            for prop, heap in heaps_of.items()
        }
        for subject, heaps_of in heaps.items()
    }


def chain_of(subject: str, identities: Mapping[str, Mapping[str, Identity]]) -> tuple[str, ...]:
    """
    Return the subjects whose rows hold for a subject: itself, its parent, and so on.

    Parameters
    ----------
    subject
        ``kind:id``.
    identities
        Identities by kind and id.

    Returns
    -------
    tuple of str
        Subjects, nearest first; a parent met twice ends the chain.
    """
    kind, _, name = subject.partition(":")
    known = identities.get(kind, {})
    chain = [subject]
    while name in known and known[name].parent:
        name = known[name].parent
        if f"{kind}:{name}" in chain:
            break
        chain.append(f"{kind}:{name}")
    return tuple(chain)


def winning_row(rows: RowsBySubject, chain: tuple[str, ...], prop: str) -> FactRow | None:
    """
    Return the row that decides a property, or None where only the default is left.

    Parameters
    ----------
    rows
        Rows from `sort_rows`.
    chain
        Subjects from `chain_of`.
    prop
        Name of the property.

    Returns
    -------
    FactRow or None
        First standing row of the nearest subject that has one.
    """
    for subject in chain:
        heap = rows.get(subject, {}).get(prop)
        if heap and not heap[0].superseded_by:
            return heap[0]
    return None


def resolve_kind(
    kind: str,
    make: Callable[..., Facts],
    identities: Mapping[str, Mapping[str, Identity]],
    properties: Mapping[str, Mapping[str, Property]],
    rows: RowsBySubject,
) -> dict[str, Facts]:
    """
    Return the resolved facts of every identity of one kind.

    Parameters
    ----------
    kind
        Kind of subject.
    make
        Class of the facts.
    identities, properties
        Identities by kind and id; properties by kind and name.
    rows
        Rows from `sort_rows`.

    Returns
    -------
    dict
        Id → facts.

    Raises
    ------
    ValueError
        If a winning cell cannot be read as its property's type.
    """
    props = properties.get(kind, {})
    defaults = {name: value_of(prop, prop.default) for name, prop in props.items()}
    found: dict[str, Facts] = {}
    for identity in identities.get(kind, {}).values():
        chain = chain_of(f"{kind}:{identity.id}", identities)
        values: dict[str, Value] = dict(defaults)
        for subject in reversed(chain):
            for name, heap in rows.get(subject, {}).items():
                if name in props and not heap[0].superseded_by:
                    values[name] = value_of(props[name], heap[0].value)
        found[identity.id] = make(id=identity.id, name=identity.name, **values)
    return found


def era_priors(rows: RowsBySubject) -> Priors:
    """
    Return the prior shares of old finishes by decade band and kind.

    Parameters
    ----------
    rows
        Rows from `sort_rows`; subjects ``era:BAND/KIND:CLASS``.

    Returns
    -------
    dict
        Band and kind → class and share [1], largest share first.
    """
    heaps: dict[tuple[str, str], list[tuple[str, float]]] = {}
    for subject, props in rows.items():
        key = split_era(subject)
        if key and "share" in props:
            heaps.setdefault(key[:2], []).append((key[2], float(props["share"][0].value)))
    return {key: tuple(sorted(heap, key=lambda pair: (-pair[1], pair[0]))) for key, heap in heaps.items()}


def split_era(subject: str) -> tuple[str, str, str] | None:
    """
    Return band, kind and class of an era subject.

    Parameters
    ----------
    subject
        ``era:BAND/KIND:CLASS``.

    Returns
    -------
    tuple of str or None
        Band, kind, class; None where the subject is not written so.
    """
    parts = subject.split(":")
    if len(parts) != 3 or parts[0] != "era":
        return None
    band, _, kind = parts[1].partition("/")
    if band not in ERA_BANDS or kind not in ERA_KINDS:
        return None
    return band, kind, parts[2]


def plain_spelling(word: str) -> str:
    """
    Return a word as it is compared: lower case, letters and figures alone.

    Parameters
    ----------
    word
        Word as a person writes it.

    Returns
    -------
    str
        Its bare letters and figures.

    Examples
    --------
    >>> plain_spelling("Douglas-Fir ")
    'douglasfir'
    """
    return "".join(sign for sign in word.lower() if sign.isalnum())
