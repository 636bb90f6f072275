"""Read the two tables of signs."""

import csv
from typing import Final

from refettle.files.tables import table_texts
from refettle.knowledge.signs import Sign, SignBook, SignChance

SIGN_COLUMNS: Final = ("id", "kind", "name", "question", "base", "minutes", "words")
CHANCE_COLUMNS: Final = ("id", "sign", "fault", "rule", "chance", "source", "grade", "read_as", "note")


def load_signs() -> SignBook:
    """
    Return all signs with their chances.

    Returns
    -------
    SignBook
        From ``signs.csv`` and ``sign-chances.csv``.

    Raises
    ------
    ValueError
        If a table has other columns than are due.
    """
    texts = table_texts()
    return SignBook.build(
        (
            Sign(
                id=row["id"], kind=row["kind"], name=row["name"], question=row["question"], base=float(row["base"]),
                minutes=float(row["minutes"]), words=tuple(w.strip() for w in row["words"].split(";") if w.strip()),
            )
            for row in _rows("signs.csv", texts["signs.csv"], SIGN_COLUMNS)
        ),
        (
            SignChance(
                id=row["id"], sign=row["sign"], fault=row["fault"], rule=row["rule"], chance=float(row["chance"]),
                source=row["source"], grade=row["grade"],
            )
            for row in _rows("sign-chances.csv", texts["sign-chances.csv"], CHANCE_COLUMNS)
        ),
    )  # fmt: skip


def _rows(name: str, text: str, columns: tuple[str, ...]) -> list[dict[str, str]]:
    """Return the rows of a table by column."""
    reader = csv.DictReader(text.splitlines())
    if tuple(reader.fieldnames or ()) != columns:
        message = f"{name}: columns are {','.join(reader.fieldnames or ())}, due are {','.join(columns)}"
        raise ValueError(message)
    return list(reader)
