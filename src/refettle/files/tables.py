"""Read the package's own tables; the only module that opens them."""

import csv
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from typing import Final

from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow, Identity, Property, SourceRow

FACT_COLUMNS: Final = (
    "id", "subject", "property", "value", "low", "high", "unit", "at_c", "at_rh_pct", "at_um", "source",
    "place", "grade", "read_as", "note", "superseded_by",
)  # fmt: skip
NUMBERS: Final = (4, 5, 7, 8, 9)
NOT_FACTS: Final = ("identities.csv", "properties.csv", "sign-chances.csv", "signs.csv", "sources.csv")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tables:
    """
    The tables as rows, before anything is resolved.

    Attributes
    ----------
    facts
        Fact rows by table name, in the order of the file.
    properties, identities, sources
        Rows of the other three tables.
    version
        First 12 signs of the checksum over all of them.
    """

    facts: tuple[tuple[str, tuple[FactRow, ...]], ...]
    properties: tuple[Property, ...]
    identities: tuple[Identity, ...]
    sources: tuple[SourceRow, ...]
    version: str


def load_knowledge() -> Knowledge:
    """
    Return everything the package knows.

    Returns
    -------
    Knowledge
        Resolved from the tables in ``knowledge/data``.
    """
    tables = read_tables()
    return Knowledge.build(
        rows=(row for _, rows in tables.facts for row in rows),
        properties=tables.properties,
        identities=tables.identities,
        sources=tables.sources,
        version=tables.version,
    )


def read_tables() -> Tables:
    """
    Return the package's tables as rows.

    Returns
    -------
    Tables
        All rows and their version.

    Raises
    ------
    ValueError
        If a fact table's columns are not `FACT_COLUMNS` or a number is no number.
    """
    texts = table_texts()
    return Tables(
        facts=tuple(
            (name, tuple(_facts(name, text))) for name, text in texts.items() if name.startswith("facts-")
        ),
        properties=tuple(_properties(texts["properties.csv"])),
        identities=tuple(_identities(texts["identities.csv"])),
        sources=tuple(_sources(texts["sources.csv"])),
        version=_version(texts),
    )


def table_texts() -> dict[str, str]:
    """
    Return the text of every table that knowledge is made of, by name in alphabetical order.

    Returns
    -------
    dict of str to str
        ``facts-*.csv``, ``identities.csv``, ``properties.csv``, ``sources.csv``.
    """
    folder = files("refettle.knowledge").joinpath("data")
    wanted = sorted(
        (entry for entry in folder.iterdir() if _is_table(entry.name)), key=lambda entry: entry.name
    )
    return {entry.name: entry.read_text(encoding="utf-8") for entry in wanted}


def _is_table(name: str) -> bool:
    """Return whether a file name is that of a knowledge table."""
    return name in NOT_FACTS or (name.startswith("facts-") and name.endswith(".csv"))


def checksum(text: str) -> str:
    """Return the sha256 of a table's text."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


def _version(texts: dict[str, str]) -> str:
    """Return one short checksum over all tables."""
    return checksum("".join(f"{name}:{checksum(text)}\n" for name, text in texts.items()))[:12]


def _cells(text: str) -> Iterator[list[str]]:
    """Return the rows of a table without its header."""
    reader = csv.reader(text.splitlines())
    next(reader)
    return reader


def _number(cell: str) -> float | None:
    """Return the number in a cell, None for an empty one."""
    return float(cell) if cell else None


def _facts(name: str, text: str) -> Iterator[FactRow]:
    """Read one fact table."""
    header = tuple(text.partition("\n")[0].rstrip("\r").split(","))
    if header != FACT_COLUMNS:
        message = f"{name}: columns are {','.join(header)}, due are {','.join(FACT_COLUMNS)}"
        raise ValueError(message)
    for line in _cells(text):
        if len(line) != len(FACT_COLUMNS):
            message = f"{name}: {line[:3]}: {len(line)} cells, due are {len(FACT_COLUMNS)}"
            raise ValueError(message)
        low, high, at_c, at_rh_pct, at_um = (float(line[i]) if line[i] else None for i in NUMBERS)
        yield FactRow(
            line[0], line[1], line[2], line[3], low, high, line[6], at_c, at_rh_pct, at_um,
            line[10], line[11], line[12], line[13], line[14], line[15],
        )  # fmt: skip


def _properties(text: str) -> Iterator[Property]:
    """Read the registry of properties."""
    for kind, name, type_, unit, required, default, low, high, meaning in _cells(text):
        yield Property(
            kind=kind,
            name=name,
            type=type_,
            unit=unit,
            required=required == "yes",
            default=default,
            low=_number(low),
            high=_number(high),
            meaning=meaning,
        )


def _identities(text: str) -> Iterator[Identity]:
    """Read the names of things."""
    for kind, id_, name, aliases, parent in _cells(text):
        words = tuple(word.strip() for word in aliases.split(";") if word.strip())
        yield Identity(kind=kind, id=id_, name=name, aliases=words, parent=parent)


def _sources(text: str) -> Iterator[SourceRow]:
    """Read the sources."""
    for key, title, author, year, publisher, where_found, date_read, rank in _cells(text):
        yield SourceRow(
            key=key,
            title=title,
            author=author,
            year=year,
            publisher=publisher,
            where_found=where_found,
            date_read=date_read,
            rank=int(rank),
        )
