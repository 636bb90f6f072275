"""
Write down count and checksum of every table, so that a table changes only on purpose.

``python -m refettle.files.lock`` renews the lock; with ``--check`` it only says what has changed.
"""

import sys
from importlib.resources import as_file, files
from typing import Final

from refettle.files.tables import checksum, table_texts

LOCK_NAME: Final = "facts.lock"


def lock_text() -> str:
    """
    Return what the lock should say of the tables as they are.

    Returns
    -------
    str
        One line a table: name, rows without the header, sha256.
    """
    lines = [f"{name} {_count(text)} {checksum(text)}" for name, text in table_texts().items()]
    return "\n".join(lines) + "\n"


def _count(text: str) -> int:
    """Return the number of rows below the header."""
    return len(text.splitlines()) - 1


def stored_lock() -> str:
    """
    Return what the stored lock says.

    Returns
    -------
    str
        Text of ``facts.lock``; empty where there is none.
    """
    lock = files("refettle.knowledge").joinpath("data").joinpath(LOCK_NAME)
    return lock.read_text(encoding="utf-8") if lock.is_file() else ""


def changed_tables() -> tuple[str, ...]:
    """
    Return the tables that do not agree with the stored lock.

    Returns
    -------
    tuple of str
        Names of tables changed, new or gone; empty when the lock is current.
    """
    before, now = set(stored_lock().splitlines()), set(lock_text().splitlines())
    return tuple(sorted({line.partition(" ")[0] for line in before ^ now}))


def main(words: list[str] | None = None) -> int:
    """
    Renew the lock, or check it.

    Parameters
    ----------
    words
        Words of the command line; ``--check`` alone is known.

    Returns
    -------
    int
        0 when the lock is current or renewed, 1 when a check finds changes, 2 for a wrong call.
    """
    given = sys.argv[1:] if words is None else words
    if given not in ([], ["--check"]):
        sys.stderr.write(f"{' '.join(given)}: only --check is known\n")
        return 2
    changed = changed_tables()
    for name in changed:
        sys.stderr.write(f"{name} differs from {LOCK_NAME}\n")
    if given:
        return 1 if changed else 0
    with as_file(files("refettle.knowledge").joinpath("data")) as folder:
        (folder / LOCK_NAME).write_text(lock_text(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
