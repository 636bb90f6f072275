"""The journal that is learnt from: read, set against the tables, and worked into them."""

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from refettle.bootstrap import Refused
    from refettle.domain.finding import Finding
    from refettle.domain.workshop import Workshop
    from refettle.knowledge.knowledge import Knowledge
    from refettle.services.learn import Learnt


def learnt_from(
    path: str, workshop_file: str | None
) -> "tuple[Knowledge, Learnt, tuple[Finding, ...]] | Refused":
    """
    Return what a journal says beside the tables.

    Parameters
    ----------
    path
        Path of the journal.
    workshop_file
        Path of the workshop file, for its air; None = a usual workshop.

    Returns
    -------
    tuple or Refused
        Tables, what is learnt, findings; or what is wrong in the files.

    Raises
    ------
    WrongCall
        If a file cannot be opened.
    """
    from refettle.bootstrap import USUAL_WORKSHOP, Refused, opened  # noqa: PLC0415 - each needs the other
    from refettle.files.log_file import read_log  # noqa: PLC0415 - heavy
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - heavy
    from refettle.files.workshop_file import read_workshop  # noqa: PLC0415 - heavy
    from refettle.services.learn import learn  # noqa: PLC0415 - heavy

    know = load_knowledge()
    text, shop_text = opened(path), USUAL_WORKSHOP if workshop_file is None else opened(workshop_file)
    if not isinstance(text, str) or not isinstance(shop_text, str):
        unreadable = tuple(one for one in (text, shop_text) if not isinstance(one, str))
        return Refused(findings=unreadable, knowledge_version=know.version)
    log, said = read_log(text, path, know)
    workshop, more = read_workshop(shop_text, workshop_file or "usual workshop", know)
    if log is None or workshop is None:
        return Refused(findings=(*said, *more), knowledge_version=know.version)
    return know, learn(know, workshop, log), said


def with_journal(
    know: "Knowledge", workshop: "Workshop", workshop_file: str | None
) -> "tuple[Knowledge, tuple[Finding, ...]]":
    """
    Return the tables with the workshop's journal worked in, and a note that says so.

    Parameters
    ----------
    know
        The tables.
    workshop
        With `journal`, a path beside the workshop file.
    workshop_file
        Path of the workshop file.

    Returns
    -------
    tuple
        As they were where the workshop names no journal; errors in the journal are findings.

    Raises
    ------
    WrongCall
        If the journal cannot be opened.
    """
    if not workshop.journal or workshop_file is None:
        return know, ()
    from refettle.bootstrap import opened  # noqa: PLC0415 - each needs the other
    from refettle.domain.finding import Finding, Where  # noqa: PLC0415
    from refettle.files.log_file import read_log  # noqa: PLC0415 - heavy
    from refettle.services.learn import learn, learnt_words, own_work  # noqa: PLC0415 - heavy

    path = str(Path(workshop_file).parent / workshop.journal)
    text = opened(path)
    if not isinstance(text, str):
        return know, (text,)
    log, said = read_log(text, path, know)
    if log is None:
        return know, said
    learnt = learn(know, workshop, log)
    note = Finding(
        code="from-own-work", level="note", where=Where(file=path), what=learnt_words(learnt),
        do="refettle learn shows each; take the journal out of the workshop file to go by the handbook alone",
    )  # fmt: skip
    return know.with_own(own_work(learnt)), (*said, note)
