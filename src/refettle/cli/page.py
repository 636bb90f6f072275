"""A page of plain text: headings, paragraphs and set-in lines, folded at its width."""

import re
from dataclasses import dataclass, field
from textwrap import wrap
from typing import Final

BOLD: Final = "\x1b[1m"
PLAIN: Final = "\x1b[0m"
GAP: Final = 2
_HELD: Final = "\u00a0"
_TOGETHER: Final = re.compile(
    r"(?<=\d) (?=(?:min|h|days|ml|L|m²|µm|mm|°C)(?!\w))|(?<=[Ss]tep) (?=\d)|(?<=[Dd]ay) (?=\d)"
)
"""Spaces that no line ends at: before a unit, before the number of a step or a day."""


@dataclass(slots=True, kw_only=True)
class Page:
    """
    Lines as they are written, from top to bottom.

    Attributes
    ----------
    width
        Width [1], in characters.
    bold
        Whether headings are set in bold.
    """

    width: int = 80
    bold: bool = False
    _lines: list[str] = field(default_factory=list)

    def text(self) -> str:
        """Return the page; no blank line at its ends, one newline after it."""
        return "\n".join(self._lines).strip("\n").replace(_HELD, " ") + "\n"

    def gap(self) -> None:
        """Leave one blank line, however often it is asked for."""
        if self._lines and self._lines[-1]:
            self._lines.append("")

    def heading(self, words: str, *, indent: int = 0) -> None:
        """Write a heading after a blank line."""
        self.gap()
        for line in self._folded(words, indent, indent):
            self._lines.append(f"{BOLD}{line}{PLAIN}" if self.bold and indent == 0 else line)

    def write(self, words: str, *, indent: int = 0, hang: int = 0) -> None:
        """Write a paragraph, its later lines set in further by `hang`."""
        if words:
            self._lines.extend(self._folded(words, indent, indent + hang))

    def marked(self, mark: str, words: str, *, indent: int = 0, column: int) -> None:
        """Write a short mark, and beside it, from a column on, a paragraph."""
        body = self._folded(words, column, column) or [""]
        head = " " * indent + mark
        first = body[0][column:]
        if len(head) + 1 > column:
            self._lines.extend([head, *body])
            return
        self._lines.append(f"{head:<{column}}{first}".rstrip())
        self._lines.extend(body[1:])

    def ended(self, words: str, end: str, *, indent: int = 0, hang: int = 0, keep: int = 0) -> None:
        """
        Write a paragraph with a short end at the right edge of its first line.

        Parameters
        ----------
        words
            The paragraph.
        end
            What stands at the right edge.
        indent, hang
            How far the paragraph, and its later lines further, are set in [1].
        keep
            Least room for the end [1], so that neighbours fold alike.
        """
        room = self.width - max(len(end), keep) - GAP
        lines = _fold(words, room, indent, indent + hang) or [""]
        first = f"{lines[0]:<{self.width - len(end)}}{end}" if end else lines[0]
        self._lines.extend([first, *lines[1:]])

    def _folded(self, words: str, indent: int, later: int) -> list[str]:
        """Return words folded at the width."""
        return _fold(words, self.width, indent, later)


def _fold(words: str, width: int, indent: int, later: int) -> list[str]:
    """Return words folded at a width; numbers stay beside their units."""
    return wrap(
        _TOGETHER.sub(_HELD, words),
        width,
        initial_indent=" " * indent,
        subsequent_indent=" " * later,
        break_on_hyphens=False,
    )
