"""What a command hands back, and what only a terminal needs: bold type, width, a line while one waits."""

import os
import signal
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from textwrap import wrap
from threading import Timer, current_thread, main_thread
from types import FrameType
from typing import Final, TextIO

WIDTH: Final = 80
NARROWEST: Final = 50
PATIENCE_S: Final = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """
    What a command says.

    Attributes
    ----------
    out
        Data, for stdout.
    notes
        Notes, for stderr.
    code
        Exit code.
    """

    out: str = ""
    notes: str = ""
    code: int = 0


def bold_wanted(stream: TextIO | None, environment: Mapping[str, str]) -> bool:
    """
    Return whether headings may be set in bold.

    Parameters
    ----------
    stream
        Where the text goes; None where it is closed.
    environment
        Variables of the process; ``NO_COLOR``, if it holds anything, forbids it.

    Returns
    -------
    bool
        True only on a terminal that can.
    """
    return (
        stream is not None
        and stream.isatty()
        and not environment.get("NO_COLOR")
        and environment.get("TERM") != "dumb"
    )


def page_width(stream: TextIO | None) -> int:
    """
    Return the width of the page [1], in characters.

    Parameters
    ----------
    stream
        Where the text goes; None where it is closed.

    Returns
    -------
    int
        80, or less on a narrower terminal, down to 50.
    """
    if stream is None or not stream.isatty():
        return WIDTH
    try:
        columns = os.get_terminal_size(stream.fileno()).columns
    except OSError:
        return WIDTH
    return max(NARROWEST, min(WIDTH, columns)) if columns else WIDTH


@contextmanager
def waiting(words: str) -> Iterator[Callable[[str], None]]:
    """
    Show one line on a terminal while work takes longer than half a second, and take it away after.

    Parameters
    ----------
    words
        What is being done, without full stop.

    Yields
    ------
    callable
        Takes other words for the line, while the work runs.
    """
    if not sys.stderr.isatty():
        yield lambda _: None
        return
    now, shown = [words], [""]

    def show() -> None:
        line = f"{now[0]} ..."
        sys.stderr.write(f"\r{line.ljust(len(shown[0]))}" if shown[0] else line)
        sys.stderr.flush()
        shown[0] = line

    def say(other: str) -> None:
        now[0] = other
        if shown[0]:
            show()

    timer = Timer(PATIENCE_S, show)
    timer.daemon = True
    timer.start()
    try:
        yield say
    finally:
        timer.cancel()
        timer.join()
        if shown[0]:
            sys.stderr.write("\r" + " " * len(shown[0]) + "\r")
            sys.stderr.flush()


def folded(text: str) -> str:
    """
    Return a note folded at the width of the page, ending in a newline.

    Parameters
    ----------
    text
        One note.

    Returns
    -------
    str
        Its lines, all but the first set in.
    """
    return "\n".join(wrap(text, WIDTH, subsequent_indent="  ", break_on_hyphens=False)) + "\n"


def leave_quietly() -> None:
    """Turn what is left to be written to nowhere: the reader of the pipe has gone."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())


@contextmanager
def until_stopped() -> Iterator[Callable[[], bool]]:
    """
    Take the first Ctrl-C as a wish to end with what there is; the second ends the command as ever.

    Yields
    ------
    callable
        Returns whether it was pressed.
    """
    pressed: list[int] = []
    if current_thread() is not main_thread():
        yield lambda: False
        return
    before = signal.getsignal(signal.SIGINT)

    def press(number: int, _frame: FrameType | None) -> None:
        pressed.append(number)
        signal.signal(signal.SIGINT, before)

    signal.signal(signal.SIGINT, press)
    try:
        yield lambda: bool(pressed)
    finally:
        signal.signal(signal.SIGINT, before)
