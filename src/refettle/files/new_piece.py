"""
A new piece file: a few entries, each with a comment that says what it may be.

What nobody said is written with its usual value and marked, so that the file can be read at once
and the person sees what to put right. The usual sizes are judgement.
"""

import re
from dataclasses import dataclass, field, fields
from functools import cache
from math import sqrt
from pathlib import PurePath
from textwrap import wrap
from typing import TYPE_CHECKING, Final

from refettle.domain.finding import Finding
from refettle.domain.piece import LOOKS, Piece
from refettle.files.form_entries import FREE_LIST, SIZE_KEYS, form_names
from refettle.files.piece_file import read_piece
from refettle.files.piece_writer import write_piece
from refettle.files.surface_fields import TEST_ANSWERS
from refettle.files.yaml_tree import plain
from refettle.knowledge.knowledge import Knowledge

if TYPE_CHECKING:
    from refettle.geometry.form import Form

NOT_KNOWN: Final = ("unknown", "don't know", "dont know", "do not know", "not known", "no idea", "?")
_USUAL_MM: Final = {
    "board": (800.0, 600.0, 20.0),
    "chest_of_drawers": (900.0, 450.0, 850.0),
    "table": (1200.0, 700.0, 750.0),
    "cupboard": (900.0, 450.0, 1100.0),
    "chest": (1000.0, 500.0, 500.0),
    "settle": (1200.0, 500.0, 1000.0),
    "bookcase": (900.0, 300.0, 1800.0),
    "wardrobe": (1200.0, 600.0, 1900.0),
    "chair": (450.0, 450.0, 900.0),
    "desk": (1300.0, 650.0, 760.0),
    "sideboard": (1600.0, 450.0, 800.0),
    "bedside": (450.0, 400.0, 600.0),
    "bench": (1200.0, 350.0, 450.0),
    FREE_LIST: (1200.0, 700.0, 750.0),
}
_USUAL: Final = {"wood": "hardwood", "old finish": "unknown", "look": "any", "era": "unknown"}
_ENTRY_OF: Final = {"finish": "old finish", "size": "width", "form": "form", "wood": "wood", "look": "look"}
_FINISHES: Final = (
    "bare, unknown, unknown clear, unknown paint, or a class such as shellac: refettle facts classes"
)
_LOOKS: Final = f"{', '.join(LOOKS)}, any; then colour and sheen: opaque white satin"
_COMMENT: Final = 28
_FILM: Final = "film:"
WIDTH: Final = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Answers:
    """
    What was said of a new piece; an empty word = not said.

    Attributes
    ----------
    form, size, wood, finish, look, era
        In the person's words; `size` as ``120 x 60 x 75 cm``, `finish` the old one.
    """

    form: str = ""
    size: str = ""
    wood: str = ""
    finish: str = ""
    look: str = ""
    era: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Begun:
    """
    A piece file that was begun.

    Attributes
    ----------
    text
        The file.
    piece
        What it reads as; None where an answer cannot be read.
    findings
        Findings of reading it.
    usual
        Entries written with their usual value, since nobody said them.
    tests
        Spot tests that it names, where the old finish is not known.
    """

    text: str
    piece: Piece | None
    findings: tuple[Finding, ...]
    usual: tuple[str, ...]
    tests: tuple[str, ...]


@dataclass(slots=True)
class _Sheet:
    """Lines of a file as they are written."""

    lines: list[str] = field(default_factory=list)
    usual: list[str] = field(default_factory=list)
    tests: list[str] = field(default_factory=list)

    def remark(self, words: str = "") -> None:
        """Write a comment of its own; none = a blank line."""
        self.lines.append(f"# {words}" if words else "")

    def entry(self, key: str, said: str, usual: str, comment: str) -> None:
        """Write an entry with its comment; where nothing was said, its usual value."""
        if not said:
            self.usual.append(key)
            comment = f"not said; {comment}"
        line = write_piece({key: said or usual}).rstrip("\n")
        first, *rest = wrap(comment, WIDTH - _COMMENT - 2)
        self.lines.append(_beside(line, first))
        self.lines.extend(_beside("", more) for more in rest)


def _beside(line: str, comment: str) -> str:
    """Return a line with a comment beside it."""
    return f"{line:<{_COMMENT - 1}} # {comment}"


def begin_piece(answers: Answers, file_name: str, know: Knowledge) -> Begun:
    """
    Return a new piece file.

    Parameters
    ----------
    answers
        What was said.
    file_name
        Name of the file; the piece is called after it.
    know
        Words that are known.

    Returns
    -------
    Begun
        The file and what it reads as: with only usual values it holds no error.
    """
    answers = _on_one_line(answers)
    sheet = _Sheet()
    sheet.remark("A short piece file; what stands behind a # is only for you.")
    sheet.remark("Put right what is marked with: not said.")
    sheet.lines.append(write_piece({"piece": name_from(file_name)}).rstrip("\n"))
    form = _form_meant(answers.form)
    listed = form == FREE_LIST
    sheet.entry("form", answers.form, FREE_LIST, _known_forms())
    if not listed or answers.size:
        _sizes(sheet, form, answers.size)
    finish = "unknown" if plain(answers.finish) in NOT_KNOWN else answers.finish
    sheet.entry(
        "wood",
        answers.wood,
        _USUAL["wood"],
        "oak, knotty pine ...: refettle facts woods; or hardwood, softwood",
    )
    sheet.entry("era", answers.era, _USUAL["era"], "1930s, 1934, about 1900, 1925-1940, unknown")
    sheet.entry("old finish", finish, _USUAL["old finish"], _FINISHES)
    sheet.entry("look", answers.look, _USUAL["look"], _LOOKS)
    if listed:
        sheet.lines.extend(
            ("surfaces:", _beside("  top: {area: 0.8 m2}", "not said; put in yours, measured"))
        )
        sheet.usual.append("surfaces")
    if (finish or _USUAL["old finish"]).startswith("unknown"):
        _spot_tests(sheet, know)
    _more(sheet, listed=listed)
    text = "\n".join(sheet.lines) + "\n"
    piece, findings = read_piece(text, file_name, know)
    return Begun(
        text=text, piece=piece, findings=findings, usual=tuple(sheet.usual), tests=tuple(sheet.tests)
    )


def _on_one_line(answers: Answers) -> Answers:
    """Return answers without line breaks and doubled blanks."""
    said = {one.name: " ".join(getattr(answers, one.name).split()) for one in fields(answers)}
    return Answers(**said)


def name_from(file_name: str) -> str:
    """
    Return the name of a piece from the name of its file.

    Parameters
    ----------
    file_name
        Name of the file, folders before it or not.

    Returns
    -------
    str
        E.g. ``Hall table`` for ``hall-table.yaml``; ``Piece`` where the name has no letters.
    """
    stem = PurePath(file_name).stem
    words = " ".join(re.sub(r"[^\w]+|_+", " ", stem).split())
    return f"{words[:1].upper()}{words[1:]}" or "Piece"


def sizes_said(size: str) -> tuple[str, str, str] | None:
    """
    Return width, depth and height as entries of the file.

    Parameters
    ----------
    size
        Three lengths with ``x`` or ``by`` between; a unit at the end holds for those without one.

    Returns
    -------
    tuple of str or None
        Each with its unit; None where these are not three lengths with a unit.

    Examples
    --------
    >>> sizes_said("120 x 60 x 75 cm")
    ('120 cm', '60 cm', '75 cm')
    """
    parts = [part.strip() for part in re.split(r"[x×]|\bby\b", size.lower())]
    unit = re.search(r"[a-z'\"″′]+\.?$", parts[-1])
    if len(parts) != len(SIZE_KEYS) or not all(parts) or unit is None:
        return None
    bare = re.compile(r"[\d.,/ ]+")
    last = parts[-1][: unit.start()].strip()
    parts[-1] = last if bare.fullmatch(last) else parts[-1]
    whole = [f"{part} {unit.group()}" if bare.fullmatch(part) else part for part in parts]
    return whole[0], whole[1], whole[2]


def _sizes(sheet: _Sheet, form: str, size: str) -> None:
    """Write width, depth and height."""
    said = sizes_said(size) if size else None
    given = said or ((size, size, size) if size else ("", "", ""))
    meanings = ("over all, left to right: 120 cm, 48 in", "front to back", "floor to top")
    if not size:
        sheet.remark("Measure yours: a plan for another size buys the wrong tins.")
    for key, word, usual, meaning in zip(SIZE_KEYS, given, _usual_sizes(form), meanings, strict=True):
        sheet.entry(key, word, usual, meaning)


def _usual_sizes(form: str) -> tuple[str, str, str]:
    """Return the usual size of a form; that of a table where nothing is called so, or surfaces are listed."""
    from refettle.geometry.forms import find_form  # noqa: PLC0415 - geometry is heavy

    found = find_form(form)
    usual = _USUAL_MM["table"] if found is None else _USUAL_MM.get(found.id) or _middle(found)
    return f"{usual[0] / 10:g} cm", f"{usual[1] / 10:g} cm", f"{usual[2] / 10:g} cm"


def _middle(form: "Form") -> tuple[float, float, float]:
    """Return the middle of what a form allows, on a scale of ratios [mm]."""
    bounds = {parameter.name: (parameter.low, parameter.high) for parameter in form.parameters}
    middles = [float(round(sqrt(low * high) / 10.0) * 10) for low, high in (bounds[key] for key in SIZE_KEYS)]
    return middles[0], middles[1], middles[2]


def _form_meant(word: str) -> str:
    """Return the id of a form that a word means; the word itself where none is called so; none said = a list."""
    from refettle.geometry.forms import find_form  # noqa: PLC0415 - geometry is heavy

    found = find_form(word) if word else None
    return found.id if found else word or FREE_LIST


@cache
def _known_forms() -> str:
    """Return the first forms, and where the rest stand."""
    return f"{', '.join(form_names()[:3])}, ... or list"


def _spot_tests(sheet: _Sheet, know: Knowledge) -> None:
    """Write which spot tests tell what the old finish is, with the words for their answers."""
    sheet.remark()
    sheet.remark("Spot tests tell the old finish; try them where nobody looks, in this order.")
    sheet.remark("Take the # away and write what you saw in place of the dots:")
    sheet.remark("tests:")
    for test in know.ids("test"):
        speaks = [word.removeprefix(_FILM) for word in know.test(test).detects if word.startswith(_FILM)]
        if speaks:
            sheet.tests.append(know.name("test", test))
            yes_words, no_words = TEST_ANSWERS.get(test, ((), ()))
            sheet.remark(f"  {know.name('test', test)}: ...")
            said = ", ".join(yes_words or ("yes",))
            sheet.remark(f"    # {said}: {_first_names(know, speaks, WIDTH - len(said) - 10)}")
            sheet.remark(f"    # {', '.join(no_words or ('no',))}: hardly that")


def _first_names(know: Knowledge, films: list[str], room: int) -> str:
    """Return as many names of classes as there is room for [1], at least one."""
    names = [know.name("film", film) for film in films]
    count = len(names)
    while count > 1 and len(", ".join(names[:count])) + (4 if count < len(names) else 0) > room:
        count -= 1
    return ", ".join(names[:count]) + (" ..." if count < len(names) else "")


_MORE: Final = (
    ("soundness: worn", "sound, worn, scratched, crazed, soft, flaking"),
    ("contamination: [wax]", "wax, polish, silicone ...; none"),
    ("damage: [scratches]", "white rings, dents ...: refettle facts damages"),
    ("use: everyday", "table, kitchen, child, storage, display ..."),
    ("child: yes", "a small child lives with it"),
    ("paid: 40", "price asked or paid"),
    ("sells: 180-240", "what such a piece sells at when done"),
)


def _more(sheet: _Sheet, *, listed: bool) -> None:
    """Write what else can be said, to be had by taking a sign away."""
    sheet.remark()
    sheet.remark("What else you know; take the # away and write yours:")
    for entry, comment in _MORE:
        sheet.lines.append(_beside(f"# {entry}", comment))
    if not listed:
        sheet.remark("surfaces:")
        sheet.lines.append(_beside("#   outside: {look: natural}", "what differs; inside, hidden, top ..."))


def trouble(begun: Begun, answers: Answers) -> tuple[str, str, str] | None:
    """
    Return which answer cannot be read, why, and what would do.

    Parameters
    ----------
    begun
        The file.
    answers
        What it was made from.

    Returns
    -------
    tuple of str or None
        Name of the answer, what is wrong, what to do; None where all is well.
    """
    if answers.size and sizes_said(answers.size) is None:
        what = f'"{answers.size}" is not a size'
        return "size", what, "write width x depth x height with a unit, e.g. 120 x 60 x 75 cm"
    for finding in begun.findings:
        if finding.level == "error":
            path = finding.where.path
            key = "size" if path in SIZE_KEYS else next((k for k, e in _ENTRY_OF.items() if e == path), path)
            return key, finding.what, finding.do
    return None
