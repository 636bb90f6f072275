"""The words of the command line: which command, with what; the command's own module answers."""

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import Final, NoReturn

from refettle.bootstrap import WrongCall
from refettle.cli.help_pages import PAGES
from refettle.cli.terminal import Answer, folded

COMMANDS: Final = tuple(PAGES)
_WITHOUT_FILE: Final = frozenset({"calc", "facts"})
_SEVERAL_FILES: Final = frozenset({"buy", "days"})
_WITHOUT_WORKSHOP: Final = frozenset({"calc", "facts", "new"})


class _Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line and never stops the process."""

    def error(self, message: str) -> NoReturn:
        """Hand the complaint to the caller."""
        raise WrongCall(what=message, do=f'see "{self.prog} --help"')


def parser() -> argparse.ArgumentParser:
    """
    Return the reader of command lines; words may not be shortened.

    Returns
    -------
    argparse.ArgumentParser
        One sub-parser a command.
    """
    top = _Parser(prog="refettle", add_help=False, allow_abbrev=False)
    top.add_argument("--version", action="store_true")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    made = {}
    for name in COMMANDS:
        made[name] = commands.add_parser(name, add_help=False, allow_abbrev=False)
        made[name].add_argument("--json", action="store_true")
        if name not in _WITHOUT_FILE:
            made[name].add_argument("file", metavar="FILE", nargs="+" if name in _SEVERAL_FILES else None)
        if name not in _WITHOUT_WORKSHOP:
            made[name].add_argument("--workshop", metavar="FILE")
    made["plan"].add_argument("--short", action="store_true")
    made["plan"].add_argument("--all", action="store_true")
    made["why"].add_argument("surface", metavar="SURFACE")
    made["why"].add_argument("--not", dest="not_this", metavar="STEP|LOOK")
    made["why"].add_argument("--finishes", action="store_true")
    made["why"].add_argument("--section", action="store_true")
    made["why"].add_argument("--svg", action="store_true")
    for name in ("diagnose", "mend"):
        made[name].add_argument("surface", metavar="SURFACE")
        made[name].add_argument("--says", metavar="TEXT")
        made[name].add_argument("--yes", metavar="SIGN", action="append")
        made[name].add_argument("--no", metavar="SIGN", action="append")
        made[name].add_argument("--when", metavar="TIME")
    made["diagnose"].add_argument("--ask", action="store_true")
    made["mend"].add_argument("--fault", metavar="FAULT")
    made["calc"].add_argument("sum", metavar="SUM")
    made["calc"].add_argument("value", metavar="VALUE", nargs="*")
    made["days"].add_argument("--ics", action="store_true")
    made["days"].add_argument("--svg", action="store_true")
    made["days"].add_argument("--keep", metavar="DAYS")
    made["facts"].add_argument("word", metavar="WORD", nargs="?")
    made["facts"].add_argument("property", metavar="PROPERTY", nargs="?")
    made["facts"].add_argument("--over", metavar="COAT")
    made["facts"].add_argument("--air", metavar="AIR")
    for option in ("form", "size", "wood", "finish", "look", "era"):
        made["new"].add_argument(f"--{option}", metavar={"form": "FORM", "size": "SIZE"}.get(option, "WORD"))
    return top


def answer(given: Sequence[str]) -> Answer:
    """
    Return what a command line is answered with.

    Parameters
    ----------
    given
        Words of the command line.

    Returns
    -------
    Answer
        Text, notes and exit code; a wrong call is one note and code 2.
    """
    try:
        return _reply(list(given))
    except WrongCall as wrong:
        return Answer(notes=folded(f"refettle: {wrong}"), code=2)


def _reply(given: list[str]) -> Answer:
    """Return the answer of the command's own module."""
    first = given[0] if given else ""
    if not first.startswith("-") and first not in COMMANDS:
        what = f'"{first}" is no command' if first else "no command is given"
        raise WrongCall(what=what, do=f"""name one of {", ".join(COMMANDS)}; see "refettle --help\"""")
    wishes = parser().parse_args(given)
    if wishes.version:
        return Answer(out=_version())
    command = import_module(f"refettle.cli.{wishes.command}")
    reply: Answer = command.run(wishes)
    return reply


def _version() -> str:
    """Return versions of the program and of Python."""
    from importlib.metadata import version  # noqa: PLC0415 - slow, and only for this

    return f"refettle {version('refettle')}, Python {sys.version.split()[0]}\n"
