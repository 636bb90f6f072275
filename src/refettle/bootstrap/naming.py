"""What a person's words name: surfaces, pieces."""

from typing import TYPE_CHECKING, Final

from refettle.bootstrap.wrong_call import WrongCall

if TYPE_CHECKING:
    from refettle.bootstrap import Laid
    from refettle.domain.piece import Piece
    from refettle.knowledge.knowledge import Knowledge

_MOST_NAMED: Final = 40


def surface_named(piece: "Piece", word: str, know: "Knowledge") -> str:
    """
    Return the surface that a word means.

    Parameters
    ----------
    piece
        The piece.
    word
        Its name, the name of its group as a plan prints it, its name without number (the first of its kind), or
        the name of a part with one surface, or of a face, such as inside (the first); case does not matter.
    know
        Facts: they tell how surfaces are grouped once they are mended.

    Returns
    -------
    str
        Name of the surface.

    Raises
    ------
    WrongCall
        If there is none or more than one; says which there are.
    """
    from refettle.planning.mended import as_mended  # noqa: PLC0415 - heavy
    from refettle.services.grouping import group_surfaces, plain_name  # noqa: PLC0415 - heavy

    wanted = word.strip().casefold()
    exact = [s.name for s in piece.surfaces if s.name.casefold() == wanted]
    planned = as_mended(know, piece).surfaces
    grouped = [g.members[0] for g in group_surfaces(planned) if g.name.casefold() == wanted]
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
    faces = [s.name for s in piece.surfaces if s.name.casefold().rpartition("/")[2] == wanted]
    if faces:
        return faces[0]
    known = _listed([s.name for s in piece.surfaces])
    raise WrongCall(what=f'"{word}" is no surface of {piece.name}', do=f"there are {known}")


def _listed(words: list[str]) -> str:
    """Return words in a row, the long tail counted."""
    more = len(words) - _MOST_NAMED
    return ", ".join(words[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def piece_names(laid: "tuple[Laid, ...]") -> tuple[str, ...]:
    """Return the names of some pieces, numbered where two have the same."""
    names: list[str] = []
    for one in laid:
        name, number = one.piece.name, 1
        while name in names:
            number += 1
            name = f"{one.piece.name} ({number})"
        names.append(name)
    return tuple(names)
