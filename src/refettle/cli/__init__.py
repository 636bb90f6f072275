"""The terminal: one module a command; what a command shows stands in `*_text` and `*_json`."""

import gc
import io
import sys


def main(words: list[str] | None = None) -> int:
    """
    Run one command.

    Parameters
    ----------
    words
        Words of the command line without the program's name; None = those of this process.

    Returns
    -------
    int
        0 fine, 1 problems found or impossible, 2 wrong call, 130 stopped by the person.
    """
    given = list(sys.argv[1:] if words is None else words)
    try:
        return _run(given)
    except KeyboardInterrupt:
        sys.stderr.write("Stopped; nothing was written.\n")
        return 130


def _run(given: list[str]) -> int:
    """Show a help page, which needs nothing else, or read the command line and answer it."""
    from refettle.cli.help_pages import asked  # noqa: PLC0415 - a help page starts without the parser

    page = asked(given)
    if page is not None:
        return _write(page, code=0 if given else 2)
    gc.disable()  # a command lives for seconds: collecting costs a fifth of them and frees next to nothing
    from refettle.cli.command_line import answer  # noqa: PLC0415 - only once a command runs

    said = answer(given)
    sys.stderr.write(said.notes)
    return _write(said.out, code=said.code)


def _write(text: str, *, code: int) -> int:
    """Write data to stdout; a reader that has gone away (``| head``) is no trouble, a full disk is told."""
    if sys.stdout is None:
        sys.stderr.write("There is nowhere to write to: the standard output is closed.\n")
        return 2
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except OSError as slip:
        from refettle.cli.terminal import leave_quietly  # noqa: PLC0415 - hardly ever needed

        leave_quietly()
        if not isinstance(slip, BrokenPipeError):
            sys.stderr.write(f"Cannot write: {slip.strerror} – make room, or write elsewhere.\n")
            return 2
    return code
