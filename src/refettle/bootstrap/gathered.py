"""Which pieces are meant: those named, or those that stand in a workshop."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from refettle.domain.finding import Finding


@dataclass(frozen=True, slots=True, kw_only=True)
class Gathered:
    """
    Files of pieces that share a workshop.

    Attributes
    ----------
    piece_files
        Paths of the piece files.
    workshop_file
        Path of the workshop file; None = a usual workshop.
    findings
        What is wrong with the workshop file, if the pieces were sought in it.
    """

    piece_files: tuple[str, ...]
    workshop_file: str | None
    findings: "tuple[Finding, ...]" = ()


def gathered(piece_files: list[str], workshop_file: str | None) -> Gathered:
    """
    Return the pieces meant by the files of a call.

    Parameters
    ----------
    piece_files
        Paths as named; a workshop file that stands alone means all pieces that stand in it.
    workshop_file
        Path of the workshop file; None = none was named.

    Returns
    -------
    Gathered
        The pieces and their workshop; paths in a workshop file are sought beside it.

    Raises
    ------
    WrongCall
        If a file cannot be opened.
    """
    named = Gathered(piece_files=tuple(piece_files), workshop_file=workshop_file)
    if len(piece_files) != 1 or workshop_file is not None:
        return named
    from refettle.bootstrap import opened  # noqa: PLC0415 - each needs the other
    from refettle.domain.finding import Finding, Where  # noqa: PLC0415 - heavy
    from refettle.files.piece_file import is_workshop  # noqa: PLC0415 - heavy
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - heavy
    from refettle.files.workshop_file import read_workshop  # noqa: PLC0415 - heavy
    from refettle.files.yaml_tree import read_tree  # noqa: PLC0415 - heavy

    path = piece_files[0]
    text = opened(path)
    root = read_tree(text, path)[0] if isinstance(text, str) else None
    if not isinstance(text, str) or root is None or not is_workshop(root):
        return named
    workshop, said = read_workshop(text, path, load_knowledge())
    if workshop is None:
        return Gathered(piece_files=(), workshop_file=path, findings=said)
    if not workshop.pieces:
        none = Finding(
            code="no-pieces", level="error", where=Where(file=path, path="pieces"),
            what="no piece stands in this workshop",
            do='name their files in it, "pieces: [table.yaml, chest.yaml]", or name them before --workshop',
        )  # fmt: skip
        return Gathered(piece_files=(), workshop_file=path, findings=(none,))
    beside = Path(path).parent
    return Gathered(piece_files=tuple(str(beside / one) for one in workshop.pieces), workshop_file=path)
