"""The only place where parts are put together: tables, files, services, each loaded when it is needed."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from refettle.bootstrap.air import with_hours
from refettle.bootstrap.gathered import gathered
from refettle.bootstrap.journal import learnt_from, with_journal
from refettle.bootstrap.naming import piece_names, surface_named
from refettle.bootstrap.trouble import Looked, Mended, Said, look_into, mend, told_of_time
from refettle.bootstrap.wrong_call import WrongCall

__all__ = [
    "Looked",
    "Mended",
    "Said",
    "WrongCall",
    "learnt_from",
    "look_into",
    "mend",
    "piece_names",
    "surface_named",
    "told_of_time",
    "with_hours",
    "with_journal",
]

if TYPE_CHECKING:
    from refettle.domain.finding import Finding
    from refettle.domain.piece import Piece
    from refettle.domain.piece_plan import PiecePlan
    from refettle.domain.plan import Risk
    from refettle.domain.step import Step
    from refettle.domain.workshop import Workshop
    from refettle.files.new_piece import Answers, Begun
    from refettle.knowledge.knowledge import Knowledge
    from refettle.services.buy_many import ShoppingList
    from refettle.services.causes import KnownFault
    from refettle.services.finishes import Finishes
    from refettle.services.mend_own import Change
    from refettle.services.sections import CutOpen
    from refettle.services.why import Explanation

USUAL_WORKSHOP: Final = "workshop: usual workshop\n"
"""What stands in for a workshop file that was not given; its reader fills in the rest and says so."""


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

    piece_text = opened(piece_file)
    shop_text = USUAL_WORKSHOP if workshop_file is None else opened(workshop_file)
    know = load_knowledge()
    if not isinstance(piece_text, str) or not isinstance(shop_text, str):
        unreadable = tuple(text for text in (piece_text, shop_text) if not isinstance(text, str))
        return Refused(findings=unreadable, knowledge_version=know.version)
    piece, said = read_piece(piece_text, piece_file, know)
    workshop, more = read_workshop(shop_text, workshop_file or "usual workshop", know)
    if piece is None or workshop is None:
        return Refused(findings=(*said, *more), knowledge_version=know.version)
    from refettle.services.binding import bind_products  # noqa: PLC0415 - only once there is a workshop
    from refettle.services.shelf import sort_shelf  # noqa: PLC0415 - only once there is a workshop

    workshop, aired = with_hours(workshop, workshop_file)
    if any(finding.level == "error" for finding in aired):
        return Refused(findings=(*said, *more, *aired), knowledge_version=know.version)
    know, noted = with_journal(know, workshop, workshop_file)
    if any(finding.level == "error" for finding in noted):
        return Refused(findings=(*said, *more, *noted), knowledge_version=know.version)
    know, workshop = bind_products(know, workshop)
    workshop, shelf = sort_shelf(know, workshop)
    return Laid(know=know, piece=piece, workshop=workshop, findings=(*said, *more, *aired, *shelf, *noted))


def opened(path: str) -> "str | Finding":
    """Return the text of a file, or the finding that it is none; WrongCall where it cannot be opened."""
    from refettle.files.text_file import Unopened, text_of  # noqa: PLC0415 - a help page does without

    text = text_of(path)
    if isinstance(text, Unopened):
        raise WrongCall(what=text.what, do=text.do)
    return text


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


def finishes(laid: Laid, surface: str) -> "Finishes":
    """Return which finishes can be had on a surface, best first; `surface` as `surface_named` returns it."""
    from refettle.services.finishes import finishes_for  # noqa: PLC0415 - heavy

    return finishes_for(laid.piece, laid.workshop, laid.know, surface)


def cut_open(laid: Laid, surface: str) -> "CutOpen":
    """Return a surface cut across its relief; WrongCall for a relief that has no section."""
    from refettle.services.sections import cut_open as cut  # noqa: PLC0415 - heavy

    face = next(one for one in laid.piece.surfaces if one.name == surface)
    made = cut(laid.know, face)
    if made is None:
        raise WrongCall(
            what=f"{surface} is {face.relief}: no section is drawn of that", do="ask for another surface"
        )
    return made


def knowledge() -> "Knowledge":
    """Return all facts, for what needs no file."""
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - heavy

    return load_knowledge()


def causes(know: "Knowledge", word: str) -> "tuple[KnownFault, ...]":
    """
    Return the faults that a word means, or whose signs speak of it, with what leads to them.

    Parameters
    ----------
    know
        All facts.
    word
        A fault or what one sees, such as ``craters`` or ``white``.

    Returns
    -------
    tuple of KnownFault
        Empty where no fault is called so and no sign speaks of it.
    """
    from refettle.files.rule_cases import cases_of  # noqa: PLC0415 - heavy
    from refettle.services.causes import cards_meant, faults_of  # noqa: PLC0415 - heavy

    cards = cards_meant(know, word)
    return faults_of(know, cards, cases_of(know, (card.id for card in cards)))


def lay_out_many(piece_files: list[str], workshop_file: str | None) -> tuple[Laid, ...] | Refused:
    """
    Read tables and files of several pieces.

    Parameters
    ----------
    piece_files
        Paths of the piece files; or that of a workshop file alone, in which they stand.
    workshop_file
        Path of the workshop file; None = a usual workshop.

    Returns
    -------
    tuple of Laid or Refused
        Each piece ready, or what is wrong in all the files.
    """
    meant = gathered(piece_files, workshop_file)
    if not meant.piece_files:
        return Refused(findings=meant.findings, knowledge_version=knowledge().version)
    read = [lay_out(piece_file, meant.workshop_file) for piece_file in meant.piece_files]
    laid = tuple(one for one in read if isinstance(one, Laid))
    refused = [one for one in read if isinstance(one, Refused)]
    if not refused:
        return laid
    findings = tuple(dict.fromkeys(finding for one in refused for finding in one.findings))
    return Refused(findings=findings, knowledge_version=refused[0].knowledge_version)


def shopping(laid: tuple[Laid, ...]) -> "ShoppingList":
    """Return one shopping list for several pieces, at least one, that share a workshop."""
    from refettle.services.buy_many import buy_many  # noqa: PLC0415 - heavy

    plans = tuple(zip(piece_names(laid), (plan(one) for one in laid), strict=True))
    return buy_many(laid[0].know, laid[0].workshop, plans)


def begin(answers: "Answers", path: str) -> "Begun":
    """Return a new piece file as text, with what it reads as; nothing is written yet."""
    from refettle.files.new_piece import begin_piece  # noqa: PLC0415 - heavy

    return begin_piece(answers, path, knowledge())
