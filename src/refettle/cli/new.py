"""``refettle new``: a short piece file to begin with, asked for or from options."""

import sys
from argparse import Namespace
from dataclasses import fields, replace
from shlex import quote

from refettle import bootstrap
from refettle.bootstrap import WrongCall
from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, written
from refettle.cli.page import Page
from refettle.cli.terminal import Answer, folded, page_width
from refettle.files.form_entries import form_names
from refettle.files.new_file import place_trouble, write_new
from refettle.files.new_piece import NOT_KNOWN, Answers, Begun, trouble


def run(wishes: Namespace) -> Answer:
    """
    Write a new piece file and say where it stands and what it still lacks.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 0 where it was written.

    Raises
    ------
    WrongCall
        If the file is there already, or an option cannot be read; nothing is written then.
    """
    _stop_at(place_trouble(wishes.file))
    said = Answers(
        **{one.name: " ".join((getattr(wishes, one.name) or "").split()) for one in fields(Answers)}
    )
    if said == Answers() and not wishes.json and sys.stdin.isatty() and sys.stderr.isatty():
        said = _asked(wishes.file)
    begun = bootstrap.begin(said, wishes.file)
    wrong = trouble(begun, said)
    if wrong is not None:
        raise WrongCall(what=f"--{wrong[0]}: {wrong[1]}", do=wrong[2])
    _stop_at(write_new(wishes.file, begun.text))
    if wishes.json:
        return Answer(out=written(_document(wishes.file, begun)))
    return Answer(out=_page(wishes.file, begun, Page(width=page_width(sys.stdout))))


def _stop_at(wrong: tuple[str, str] | None) -> None:
    """Raise WrongCall where something is wrong."""
    if wrong is not None:
        raise WrongCall(what=wrong[0], do=wrong[1])


def _questions() -> dict[str, str]:
    """Return the five questions, one an answer."""
    return {
        "form": f"What is it? {', '.join(form_names())}",
        "size": "How large, width x depth x height over all? e.g. 120 x 60 x 75 cm",
        "wood": "Which wood? oak, pine ...; hardwood or softwood if you don't know",
        "finish": "What is on it now? bare, shellac, unknown paint ...; or: don't know",
        "look": "How should it look? keep, natural, stained, oiled, waxed, opaque white, any",
    }


def _asked(path: str) -> Answers:
    """Return what a person answers; a question is put again until its answer can be read."""
    _note("Five questions; Enter alone takes what is usual, Ctrl-C stops.")
    said = Answers()
    for key, question in _questions().items():
        if key == "size" and said.form in {"", "list"}:
            continue
        while True:
            answer = _answer(question)
            tried = replace(said, **{key: answer})
            wrong = trouble(bootstrap.begin(tried, path), tried)
            if wrong is None:
                break
            _note(f"{wrong[1]} – {wrong[2]}")
        said = tried
        if key == "finish" and answer.lower() in {"", *NOT_KNOWN}:
            _note("The spot tests that tell it will stand in the file.")
    return said


def _answer(question: str) -> str:
    """Return one line of the person; WrongCall where nobody is there to answer."""
    sys.stderr.write(folded(question) + "> ")
    sys.stderr.flush()
    line = sys.stdin.readline()
    if not line:
        raise WrongCall(what="the questions were left unanswered", do="give the answers as options")
    return " ".join(line.split())


def _note(words: str) -> None:
    """Write a note beside the questions."""
    sys.stderr.write(folded(words))


def _page(path: str, begun: Begun, page: Page) -> str:
    """Return what was written, what it lacks, and what comes next."""
    piece = begun.piece
    if piece is not None:
        page.write(f"Wrote {path}: {piece.name}, {len(piece.surfaces)} surfaces.", hang=2)
    if begun.usual:
        page.write(
            f"Not said, so taken as usual: {', '.join(begun.usual)}. Put them right in the file.", hang=2
        )
    if begun.tests:
        page.write(
            f"The old finish is not known; these tell, and stand in the file: {', '.join(begun.tests)}.",
            hang=2,
        )
    page.write(f"Next: refettle plan {quote(path)}", hang=2)
    return page.text()


def _document(path: str, begun: Begun) -> Document:
    """Return what was written as a document; ``new.schema.json`` describes every name."""
    piece = begun.piece
    return {
        "schema_version": SCHEMA_VERSION,
        "file": path,
        "piece": piece.name if piece else "",
        "form": piece.form if piece else "",
        "size_mm": list(piece.size_mm) if piece and piece.size_mm else None,
        "surfaces": [surface.name for surface in piece.surfaces] if piece else [],
        "usual": list(begun.usual),
        "tests": list(begun.tests),
        "text": begun.text,
        "findings": [finding_json(finding) for finding in begun.findings],
    }
