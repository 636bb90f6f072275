"""Trouble on a surface: what the person says of it, what may be behind it, how to put it right."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from refettle.bootstrap.wrong_call import WrongCall

if TYPE_CHECKING:
    from refettle.bootstrap import Laid
    from refettle.domain.piece import Surface
    from refettle.knowledge.signs import SignBook
    from refettle.services.mend_around import Around
    from refettle.services.put_right import PutRight
    from refettle.services.trouble import Diagnosis
    from refettle.trouble.rank import Told

AT_ONCE: Final = "at once"
"""How the first of the times stands on pages and in calls."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """
    What the person says of trouble.

    Attributes
    ----------
    text
        Their own words.
    yes, no
        Signs that are there, and that are not, by id or name.
    when
        Time at which it showed: ``at once``, ``hours``, ``days``, ``weeks``, ``months``, ``years``; empty = not said.
    """

    text: str = ""
    yes: tuple[str, ...] = ()
    no: tuple[str, ...] = ()
    when: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """
    Trouble on one surface, looked into.

    Attributes
    ----------
    surface
        The surface.
    book
        All signs.
    found
        What may be behind it.
    taken_from
        Where the steps come from: ``done``, ``intend`` or empty where the file tells of none.
    own
        How many of the steps the person wrote [1].
    """

    surface: "Surface"
    book: "SignBook"
    found: "Diagnosis"
    taken_from: str
    own: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended:
    """
    Ways to put trouble right.

    Attributes
    ----------
    looked
        What may be behind it.
    right
        Ways, cheapest first.
    around
        What the first way means for other surfaces and the shelf.
    """

    looked: Looked
    right: "PutRight"
    around: "Around"


def look_into(laid: "Laid", surface: str, said: Said) -> Looked:
    """
    Return what may be behind trouble on a surface.

    Parameters
    ----------
    laid
        Piece, workshop and facts.
    surface
        Name of a surface, as `surface_named` returns it.
    said
        What the person says.

    Returns
    -------
    Looked
        Causes by the steps that stand under `done`, else `intend`.

    Raises
    ------
    WrongCall
        If a sign or a time is not known.
    """
    from refettle.files.sign_tables import load_signs  # noqa: PLC0415 - heavy
    from refettle.services.foresee import closed, own_steps  # noqa: PLC0415 - heavy
    from refettle.services.trouble import diagnose  # noqa: PLC0415 - heavy

    book = load_signs()
    told = told_of(book, said)
    face = next(one for one in laid.piece.surfaces if one.name == surface)
    own, taken_from = own_steps(laid.piece.done, face), "done"
    if not own:
        own, taken_from = own_steps(laid.piece.intend, face), "intend"
    found = diagnose(
        laid.know, book, laid.piece, laid.workshop, face, says=said.text, answers=told, steps=closed(own)
    )
    return Looked(surface=face, book=book, found=found, taken_from=taken_from if own else "", own=len(own))


def mend(laid: "Laid", surface: str, said: Said, fault: str) -> Mended:
    """
    Return ways to put trouble right on a surface.

    Parameters
    ----------
    laid, surface, said
        As for `look_into`.
    fault
        Fault that the person settled on, by any of its names; empty = as it is ranked.

    Returns
    -------
    Mended
        Ways, cheapest first.

    Raises
    ------
    WrongCall
        If a sign, a time or the fault is not known.
    """
    from refettle.services.mend_around import around  # noqa: PLC0415 - heavy
    from refettle.services.put_right import put_right  # noqa: PLC0415 - heavy

    settled = _fault_named(laid, fault) if fault else ""
    looked = look_into(laid, surface, said)
    right = put_right(laid.know, laid.piece, laid.workshop, looked.surface, looked.found, fault=settled)
    near = around(laid.know, laid.piece, laid.workshop, looked.surface, looked.found.steps, right)
    return Mended(looked=looked, right=right, around=near)


def told_of(book: "SignBook", said: Said) -> "Told":
    """Return what the person's answers tell; WrongCall where a sign or a time is not known, or is told both ways."""
    from refettle.trouble.rank import Told  # noqa: PLC0415 - heavy

    yes = {sign_named(book, word): 1.0 for word in said.yes}
    no = {sign_named(book, word): 0.0 for word in said.no}
    both = sorted(yes.keys() & no.keys())
    if both:
        raise WrongCall(what=f"{both[0]} is told both --yes and --no", do="keep one of them")
    return Told(signs=yes | no, when=told_of_time(said.when))


def sign_named(book: "SignBook", word: str) -> str:
    """Return the sign that a word means, by id or name; WrongCall with the nearest where there is none."""
    from refettle.files.fields import nearest  # noqa: PLC0415 - heavy

    wanted = word.strip().casefold()
    for sign in book.signs.values():
        if wanted.replace(" ", "-") == sign.id or wanted == sign.name.casefold():
            return sign.id
    near = nearest(wanted.replace(" ", "-"), tuple(book.signs))
    do = f"did you mean {near}?" if near else f"name one of {', '.join(book.signs)}"
    raise WrongCall(what=f'"{word}" is no sign', do=do)


def told_of_time(word: str) -> str:
    """Return the time that a word means, one of `ONSETS` or empty; WrongCall where it is none."""
    from refettle.trouble.words import ONSETS  # noqa: PLC0415 - heavy

    wanted = word.strip().casefold()
    times = {AT_ONCE: ONSETS[0]} | {onset: onset for onset in ONSETS}
    if wanted and wanted not in times:
        shown = ", ".join((AT_ONCE, *ONSETS[1:]))
        raise WrongCall(what=f'--when: "{word}" is no time', do=f"name one of {shown}")
    return times.get(wanted, "")


def _fault_named(laid: "Laid", word: str) -> str:
    """Return the fault that a word means; WrongCall where there is none."""
    from refettle.files.fields import nearest  # noqa: PLC0415 - heavy

    wanted = word.strip().casefold()
    names = {laid.know.name("fault", fault).casefold(): fault for fault in laid.know.ids("fault")}
    ids = {fault: fault for fault in laid.know.ids("fault")}
    known = ids | names
    if wanted in known:
        return known[wanted]
    near = nearest(wanted, tuple(known))
    do = f"did you mean {near}?" if near else f"name one of {', '.join(ids)}"
    raise WrongCall(what=f'--fault: "{word}" is no fault', do=do)
