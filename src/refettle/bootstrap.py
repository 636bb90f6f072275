"""The only place where parts are put together: tables, files, services, each loaded when it is needed."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from refettle.domain.finding import Finding
    from refettle.domain.piece import Piece, Workshop
    from refettle.domain.piece_plan import PiecePlan
    from refettle.domain.plan import Risk
    from refettle.domain.step import Step
    from refettle.files.new_piece import Answers, Begun
    from refettle.knowledge.knowledge import Knowledge
    from refettle.services.buy_many import ShoppingList
    from refettle.services.mend_own import Change
    from refettle.services.why import Explanation

USUAL_WORKSHOP: Final = "workshop: usual workshop\n"
"""What stands in for a workshop file that was not given; its reader fills in the rest and says so."""
_MOST_NAMED: Final = 40


class WrongCall(Exception):  # noqa: N818 - it names the person's slip, as exit code 2 does
    """
    A command cannot be answered as it was called.

    Parameters
    ----------
    what
        What is wrong, without full stop.
    do
        What would do, without full stop.
    """

    def __init__(self, *, what: str, do: str) -> None:
        super().__init__(f"{what} – {do}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """
    Files that hold an error: no answer rests on a guess.

    Attributes
    ----------
    findings
        Everything that was found in them.
    knowledge_version
        Checksum of the facts used.
    """

    findings: "tuple[Finding, ...]"
    knowledge_version: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """
    All that a service needs.

    Attributes
    ----------
    know
        All facts.
    piece, workshop
        As described.
    findings
        Warnings and notes from reading the files.
    """

    know: "Knowledge"
    piece: "Piece"
    workshop: "Workshop"
    findings: "tuple[Finding, ...]"

    @property
    def names(self) -> "Knowledge":
        """Return the facts with the person's own tins among the classes, so that these can be named."""
        return self.know


@dataclass(frozen=True, slots=True, kw_only=True)
class ForeseenSurface:
    """
    What the person's own sequence leads to on one surface.

    Attributes
    ----------
    surface
        Name of the surface.
    steps
        The sequence as it was played, the closing use included.
    own
        How many of these steps the person wrote [1].
    risks
        Risks, likeliest first.
    change
        The smallest change that makes it sound; None where none is needed.
    """

    surface: str
    steps: "tuple[Step, ...]"
    own: int
    risks: "tuple[Risk, ...]"
    change: "Change | None"


def lay_out(piece_file: str, workshop_file: str | None) -> Laid | Refused:
    """
    Read tables and files.

    Parameters
    ----------
    piece_file
        Path of the piece file.
    workshop_file
        Path of the workshop file; None = a usual workshop.

    Returns
    -------
    Laid or Refused
        Everything ready, or what is wrong in the files.

    Raises
    ------
    WrongCall
        If a file cannot be opened.
    """
    from refettle.files.piece_file import read_piece  # noqa: PLC0415 - heavy
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - heavy
    from refettle.files.workshop_file import read_workshop  # noqa: PLC0415 - heavy

    piece_text = _text_of(piece_file)
    shop_text = USUAL_WORKSHOP if workshop_file is None else _text_of(workshop_file)
    know = load_knowledge()
    unreadable = tuple(
        _no_text(name or "")
        for name, text in ((piece_file, piece_text), (workshop_file, shop_text))
        if text is None
    )
    if piece_text is None or shop_text is None:
        return Refused(findings=unreadable, knowledge_version=know.version)
    piece, said = read_piece(piece_text, piece_file, know)
    workshop, more = read_workshop(shop_text, workshop_file or "usual workshop", know)
    if piece is None or workshop is None:
        return Refused(findings=(*said, *more), knowledge_version=know.version)
    from refettle.services.binding import bind_products  # noqa: PLC0415 - only once there is a workshop
    from refettle.services.shelf import sort_shelf  # noqa: PLC0415 - only once there is a workshop

    know, workshop = bind_products(know, workshop)
    workshop, shelf = sort_shelf(know, workshop)
    return Laid(know=know, piece=piece, workshop=workshop, findings=(*said, *more, *shelf))


def _text_of(path: str) -> str | None:
    """Return the text of a file, None where it holds none; WrongCall where it cannot be opened."""
    from pathlib import Path  # noqa: PLC0415 - a help page does without

    try:
        return Path(path).read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        return None
    except FileNotFoundError:
        raise WrongCall(what=f'there is no file "{path}"', do="check its name and folder") from None
    except IsADirectoryError:
        raise WrongCall(what=f'"{path}" is a folder', do="name a file in it") from None
    except (OSError, ValueError) as trouble:
        why = getattr(trouble, "strerror", None) or str(trouble)
        raise WrongCall(what=f'"{path}" cannot be opened', do=f"the system says: {why}") from None


def _no_text(path: str) -> "Finding":
    """Return the finding on a file whose bytes are no text."""
    from refettle.domain.finding import Finding, Where  # noqa: PLC0415 - only after a slip

    return Finding(
        code="not-text",
        level="error",
        where=Where(file=path),
        what="this is not text in UTF-8",
        do="save it as plain text, UTF-8",
    )


def plan(laid: Laid) -> "PiecePlan":
    """
    Return the plan of the piece, what was found in its files included.

    Parameters
    ----------
    laid
        Piece, workshop and facts.

    Returns
    -------
    PiecePlan
        The plan.
    """
    from refettle.services.plan import plan_piece  # noqa: PLC0415 - heavy

    made = plan_piece(laid.piece, laid.workshop, laid.know)
    return replace(made, findings=tuple(dict.fromkeys((*laid.findings, *made.findings))))


def foresee(laid: Laid) -> tuple[ForeseenSurface, ...]:
    """
    Return what the person's own sequence leads to.

    Parameters
    ----------
    laid
        Piece with `intend`, workshop and facts.

    Returns
    -------
    tuple of ForeseenSurface
        In the order of the piece, for surfaces with steps of their own.

    Raises
    ------
    WrongCall
        If nothing is intended.
    """
    from refettle.services.foresee import closed, foresee_own, own_steps  # noqa: PLC0415 - heavy
    from refettle.services.mend_alike import smallest_change  # noqa: PLC0415 - heavy

    if not laid.piece.intend:
        what = f"the file of {laid.piece.name} intends nothing"
        raise WrongCall(what=what, do='write your steps under "intend:"')
    risks = foresee_own(laid.piece, laid.workshop, laid.know)
    changes = smallest_change(laid.piece, laid.workshop, laid.know)
    found = []
    for surface in laid.piece.surfaces:
        if surface.name in risks:
            own = own_steps(laid.piece.intend, surface)
            found.append(
                ForeseenSurface(
                    surface=surface.name,
                    steps=closed(own),
                    own=len(own),
                    risks=risks[surface.name],
                    change=changes.get(surface.name),
                )
            )
    return tuple(found)


def why(laid: Laid, surface: str, not_this: str | None) -> "Explanation":
    """
    Return why a surface gets the steps it gets.

    Parameters
    ----------
    laid
        Piece, workshop and facts.
    surface
        Name of a surface, as `surface_named` returns it.
    not_this
        A step, material or look that was expected, in words; None = nothing.

    Returns
    -------
    Explanation
        Lines and the fact rows behind them.

    Raises
    ------
    WrongCall
        If what was expected is not known.
    """
    from refettle.services.why import explain  # noqa: PLC0415 - heavy

    said = explain(laid.piece, laid.workshop, laid.know, surface, not_this)
    if not said.found:
        what, _, do = said.lines[0].text.partition("; ")
        raise WrongCall(what=what, do=do)
    return said


def surface_named(piece: "Piece", word: str) -> str:
    """
    Return the surface that a word means.

    Parameters
    ----------
    piece
        The piece.
    word
        Its name, the name of its group as a plan prints it, its name without number (the first of its kind), or
        the name of a part with one surface; case does not matter.

    Returns
    -------
    str
        Name of the surface.

    Raises
    ------
    WrongCall
        If there is none or more than one; says which there are.
    """
    from refettle.services.grouping import group_surfaces, plain_name  # noqa: PLC0415 - heavy

    wanted = word.strip().casefold()
    exact = [s.name for s in piece.surfaces if s.name.casefold() == wanted]
    grouped = [g.members[0] for g in group_surfaces(piece.surfaces) if g.name.casefold() == wanted]
    spoken = [
        s.name for s in piece.surfaces if plain_name(s.name).casefold() in {wanted, wanted.removesuffix("s")}
    ]
    if exact or grouped or spoken:
        return (exact or grouped or spoken)[0]
    of_part = [s.name for s in piece.surfaces if s.part.casefold() == wanted]
    if len(of_part) == 1:
        return of_part[0]
    if of_part:
        raise WrongCall(what=f'"{word}" has several surfaces', do=f"name one of {_listed(of_part)}")
    alike = [
        s.name
        for s in piece.surfaces
        if s.name.casefold().partition("/")[0].partition(".")[0] in {wanted, wanted.removesuffix("s")}
    ]
    if alike:
        return alike[0]
    known = _listed([s.name for s in piece.surfaces])
    raise WrongCall(what=f'"{word}" is no surface of {piece.name}', do=f"there are {known}")


def _listed(words: list[str]) -> str:
    """Return words in a row, the long tail counted."""
    more = len(words) - _MOST_NAMED
    return ", ".join(words[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def knowledge() -> "Knowledge":
    """Return all facts, for what needs no file."""
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - heavy

    return load_knowledge()


def lay_out_many(piece_files: list[str], workshop_file: str | None) -> tuple[Laid, ...] | Refused:
    """
    Read tables and files of several pieces.

    Parameters
    ----------
    piece_files
        Paths of the piece files.
    workshop_file
        Path of the workshop file; None = a usual workshop.

    Returns
    -------
    tuple of Laid or Refused
        Each piece ready, or what is wrong in all the files.
    """
    read = [lay_out(piece_file, workshop_file) for piece_file in piece_files]
    laid = tuple(one for one in read if isinstance(one, Laid))
    refused = [one for one in read if isinstance(one, Refused)]
    if not refused:
        return laid
    findings = tuple(dict.fromkeys(finding for one in refused for finding in one.findings))
    return Refused(findings=findings, knowledge_version=refused[0].knowledge_version)


def piece_names(laid: tuple[Laid, ...]) -> tuple[str, ...]:
    """Return the names of some pieces, numbered where two have the same."""
    names: list[str] = []
    for one in laid:
        name, number = one.piece.name, 1
        while name in names:
            number += 1
            name = f"{one.piece.name} ({number})"
        names.append(name)
    return tuple(names)


def shopping(laid: tuple[Laid, ...]) -> "ShoppingList":
    """Return one shopping list for several pieces, at least one, that share a workshop."""
    from refettle.services.buy_many import buy_many  # noqa: PLC0415 - heavy

    plans = tuple(zip(piece_names(laid), (plan(one) for one in laid), strict=True))
    return buy_many(laid[0].know, laid[0].workshop, plans)


def begin(answers: "Answers", path: str) -> "Begun":
    """Return a new piece file as text, with what it reads as; nothing is written yet."""
    from refettle.files.new_piece import begin_piece  # noqa: PLC0415 - heavy

    return begin_piece(answers, path, knowledge())
