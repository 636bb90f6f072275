"""``refettle facts COAT --over COAT``: whether one coat holds over another, and which do."""

from refettle.bootstrap import WrongCall
from refettle.cli.json_parts import SCHEMA_VERSION, Document, rounded, written
from refettle.cli.over_text import pair_text, table_text
from refettle.cli.page import Page
from refettle.cli.terminal import Answer
from refettle.cli.words import chance_words
from refettle.knowledge.knowledge import Knowledge
from refettle.services.over import Meeting, Pair, all_over, one_over_other


def class_meant(know: Knowledge, word: str) -> str:
    """
    Return the finish class that a word means.

    Parameters
    ----------
    know
        Names.
    word
        Any name of a class.

    Returns
    -------
    str
        Id of the class.

    Raises
    ------
    WrongCall
        If no class is called so; the nearest words are named.
    """
    found = know.find("film", word)
    if found is None:
        near = know.near("film", word)
        do = f"nearest are {', '.join(near)}" if near else 'all names: "refettle facts classes"'
        raise WrongCall(what=f'"{word}" is no finish class', do=do)
    return found


def over_answer(know: Knowledge, upper: str | None, lower: str, page: Page, *, as_json: bool) -> Answer:
    """
    Return how one coat, or every usual one, holds over another.

    Parameters
    ----------
    know
        All facts.
    upper
        The coat to lay, in words; None = all usual ones.
    lower
        What it goes over, in words.
    page
        Empty page of the right width.
    as_json
        Whether JSON is wanted.

    Returns
    -------
    Answer
        Code 0.

    Raises
    ------
    WrongCall
        If a word is no finish class.
    """
    below = class_meant(know, lower)
    if upper is None:
        pairs = all_over(know, below)
        return Answer(
            out=_json(know, pairs, None, below) if as_json else table_text(know, below, pairs, page)
        )
    above = class_meant(know, upper)
    pair = one_over_other(know, above, below)
    return Answer(out=_json(know, (pair,), above, below) if as_json else pair_text(know, pair, page))


def _json(know: Knowledge, pairs: tuple[Pair, ...], upper: str | None, lower: str) -> str:
    """Return the document; ``facts.schema.json`` describes every name."""
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "coat": upper,
            "over": lower,
            "pairs": [
                {
                    "coat": pair.upper,
                    "name": know.name("film", pair.upper),
                    "best": {state: _best(pair, state) for state in pair.states},
                    "meetings": [_meeting(know, meeting) for meeting in pair.meetings],
                }
                for pair in pairs
            ],
        }
    )


def _best(pair: Pair, state: str) -> str:
    """Return the plainest way that holds in a state; ``no`` where none does."""
    best = pair.best(state)
    return best.way if best.holds else "no"


def _meeting(know: Knowledge, meeting: Meeting) -> Document:
    """Return one state in one way."""
    return {
        "state": meeting.state,
        "way": meeting.way,
        "holds": meeting.holds,
        "chance": rounded(meeting.chance),
        "chance_words": chance_words(meeting.chance),
        "faults": [
            {
                "fault": hit.fault,
                "name": know.name("fault", hit.fault),
                "rule": hit.rule,
                "chance": rounded(hit.chance),
                "why": hit.why,
                "because": list(
                    dict.fromkeys(id_ for subject, prop in hit.reads for id_ in know.because(subject, prop))
                ),
            }
            for hit in meeting.hits
        ],
    }
