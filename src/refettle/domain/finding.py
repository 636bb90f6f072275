"""Findings: problems in what the person wrote, as values, collected and reported together."""

from dataclasses import dataclass
from typing import Literal

Level = Literal["error", "warning", "note"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Where:
    """
    A place in the person's own file.

    Attributes
    ----------
    file
        Name of the file as the person gave it.
    line
        Line number [1], counted from 1; 0 when the finding concerns the whole file.
    path
        Dotted way to the entry in the person's own words, e.g. ``surfaces/top/wood``.
    """

    file: str
    line: int = 0
    path: str = ""

    def text(self) -> str:
        """Return ``file:line: path`` as editors understand it."""
        line = f":{self.line}" if self.line else ""
        path = f": {self.path}" if self.path else ""
        return f"{self.file}{line}{path}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """
    One problem: what, where, and what to do.

    Attributes
    ----------
    code
        Permanent short name, e.g. ``unknown-wood``.
    level
        ``error`` stops the plan; ``warning`` and ``note`` do not.
    where
        Place in the person's file.
    what
        What is wrong, in a sentence without full stop.
    do
        What to do about it, in a sentence without full stop.
    because
        Ids of fact rows or rules behind it.
    """

    code: str
    level: Level
    where: Where
    what: str
    do: str
    because: tuple[str, ...] = ()

    def text(self) -> str:
        """Return the finding as one line for the terminal."""
        return f"{self.where.text()}: {self.what} – {self.do}  [{self.code}]"
