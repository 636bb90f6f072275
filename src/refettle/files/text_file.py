"""The text of a file that a person named, or why there is none."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from refettle.domain.finding import Finding, Where

LARGEST_BYTES: Final = 2_000_000
"""A piece or workshop file is a few kilobytes; anything above this is something else [byte]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unopened:
    """
    A file that cannot be read as it was named.

    Attributes
    ----------
    what, do
        What is wrong and what would do, without full stop.
    """

    what: str
    do: str


def text_of(path: str) -> str | Unopened | Finding:
    """
    Return the text of a file.

    Parameters
    ----------
    path
        As the person named it.

    Returns
    -------
    str, Unopened or Finding
        Its text; why it cannot be opened (pipes and devices, which may never end, are not); or that it is no text.
    """
    place = Path(path)
    try:
        if place.is_dir():
            return Unopened(what=f'"{path}" is a folder', do="name a file in it")
        if place.exists() and not place.is_file():
            return Unopened(what=f'"{path}" is no ordinary file', do="save the text in a file and name that")
        if place.is_file() and place.stat().st_size > LARGEST_BYTES:
            return Unopened(
                what=f'"{path}" is far too large for such a file', do="name a piece or workshop file"
            )
        return place.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        what, do = "this is not text in UTF-8", "save it as plain text, UTF-8"
        return Finding(code="not-text", level="error", where=Where(file=path), what=what, do=do)
    except FileNotFoundError:
        return Unopened(what=f'there is no file "{path}"', do="check its name and folder")
    except (OSError, ValueError) as trouble:
        why = getattr(trouble, "strerror", None) or str(trouble)
        return Unopened(what=f'"{path}" cannot be opened', do=f"the system says: {why}")
