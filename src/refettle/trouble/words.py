"""What a person says of trouble, understood by our own words: no network, no model."""

from collections.abc import Mapping
from dataclasses import dataclass
from re import findall
from typing import Final

from refettle.knowledge.signs import SignBook

_NOT: Final = frozenset(
    {"not", "no", "never", "without", "isnt", "doesnt", "didnt", "wont", "cannot", "cant", "nor"}
)
_SHORT: Final[Mapping[str, tuple[str, ...]]] = {
    short + "nt": (whole, "not")
    for short, whole in {
        "wo": "will", "do": "do", "does": "does", "did": "did", "is": "is", "was": "was", "has": "has", "ca": "can",
        "could": "could", "would": "would", "are": "are", "were": "were", "have": "have",
    }.items()
} | {"cannot": ("can", "not")}  # fmt: skip
_ENDINGS: Final = ("ing", "ed", "es", "s")
_GAP: Final = 2
_REACH: Final = 2
_ONE_WORD: Final = 0.75
ONSETS: Final = ("immediate", "hours", "days", "weeks", "months", "years")
"""When trouble can show: while it is wet or at once, then within so many."""

_WHEN: Final[Mapping[str, tuple[str, ...]]] = {
    "immediate": (
        "as it is applied", "as it goes on", "as it was", "as i brush", "at once", "immediately", "instantly", "right away",
        "straight away", "within minutes", "minutes later", "minutes after", "half an hour", "thirty minutes", "while wet",
        "while brushing", "still wet film", "wet film", "wet coat", "under the wet", "within an hour", "within the hour",
        "when stained", "as soon as", "wiped it on", "during",
    ),
    "hours": (
        "next morning", "overnight", "hours later", "hours after", "after hours", "some hours", "same day", "same evening",
        "few hours", "by evening", "in the morning", "dried rough", "dries rough", "on drying", "when dry", "as it dries",
        "as it dried", "once dry", "after drying",
    ),
    "days": ("days later", "after days", "next day", "few days", "day later", "within days", "two days", "three days",
             "a day after", "several days", "days after"),
    "weeks": ("weeks later", "after weeks", "few weeks", "week later", "two weeks", "within weeks", "a week", "weeks after"),
    "months": ("months later", "after months", "few months", "month later", "next season", "in winter",
               "following summer", "a month", "months after", "slowly", "gradually", "over time", "after a while", "in use"),
    "years": ("years later", "after years", "some years", "few years", "year later", "a year", "years after",
              "over the years"),
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """
    What was understood of a text.

    Attributes
    ----------
    signs
        Sign ids with how surely each was said [1], surest first.
    denied
        Signs said not to be there.
    when
        One of `ONSETS`; empty where nothing was said of time.
    words
        Sign id (or ``when``) → the words it was heard in.
    """

    signs: tuple[tuple[str, float], ...]
    denied: tuple[str, ...]
    when: str
    words: tuple[tuple[str, str], ...]


def stem(word: str) -> str:
    """Return a word without its ending, so that ``peels``, ``peeled`` and ``peeling`` are one."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3 and not word.endswith("ss"):
            root = word[: -len(ending)]
            if len(root) > 3 and root[-1] == root[-2] and root[-1] not in "lsz":
                root = root[:-1]
            return root.removesuffix("e")
    return word.removesuffix("e") if len(word) > 3 else word


def _tokens(text: str) -> list[str]:
    """Return the words of a text in small letters, apostrophes dropped, what is drawn together taken apart."""
    plain = text.lower().replace("’", "'").replace("'", "")
    return [part for word in findall(r"[a-z]+", plain) for part in _SHORT.get(word, (word,))]


def _find(phrase: tuple[str, ...], stems: list[str]) -> tuple[int, int] | None:
    """Return where a phrase begins and ends in a text, its words in order with at most two others between, or None."""
    for begin, word in enumerate(stems):
        if word != phrase[0]:
            continue
        at = begin
        for wanted in phrase[1:]:
            near = stems[at + 1 : at + 2 + _GAP]
            if wanted not in near:
                break
            at += 1 + near.index(wanted)
        else:
            return begin, at + 1
    return None


def hear(text: str, book: SignBook) -> Heard:
    """
    Return what a text says of signs and time.

    Parameters
    ----------
    text
        The person's own words.
    book
        Signs with the phrases in which people say them.

    Returns
    -------
    Heard
        A phrase of several words counts for sure, a single word less, one that stands for several signs less still. A
        "not" within two words before it turns it round. Words inside a longer phrase say nothing of their own.
    """
    tokens = _tokens(text)
    stems = [stem(token) for token in tokens]
    shared: dict[tuple[str, ...], int] = {}
    phrases = {
        sign.id: [tuple(stem(word) for word in _tokens(phrase)) for phrase in (*sign.words, sign.name)]
        for sign in book.signs.values()
    }
    for said in phrases.values():
        for phrase in set(said):
            shared[phrase] = shared.get(phrase, 0) + 1
    spoken = [
        (sign, phrase, place)
        for sign, said in phrases.items()
        for phrase in said
        if phrase and (place := _find(phrase, stems)) is not None
    ]
    longest = [(len(phrase), place) for _, phrase, place in spoken]
    found: dict[str, tuple[float, str]] = {}
    denied: list[str] = []
    for sign, phrase, (at, end) in spoken:
        if any(words > len(phrase) and begin <= at and end <= stop for words, (begin, stop) in longest):
            continue
        if phrase[0] not in _NOT and _NOT.intersection(tokens[max(0, at - _REACH) : at]):
            denied.append(sign)
            continue
        surety = (1.0 if len(phrase) > 1 else _ONE_WORD) / shared[phrase] ** 0.5
        if sign not in found or surety > found[sign][0]:
            found[sign] = (surety, " ".join(tokens[at:end]))
    when, words = _when(stems)
    ordered = sorted(found.items(), key=lambda pair: (-pair[1][0], pair[0]))
    return Heard(
        signs=tuple((sign, surety) for sign, (surety, _) in ordered),
        denied=tuple(dict.fromkeys(sign for sign in denied if sign not in found)),
        when=when,
        words=(*((sign, said) for sign, (_, said) in ordered), *((("when", words),) if when else ())),
    )


def _when(stems: list[str]) -> tuple[str, str]:
    """Return the time that a text names, and the words for it; the earliest of several."""
    for onset in ONSETS:
        for phrase in _WHEN[onset]:
            if _find(tuple(stem(word) for word in _tokens(phrase)), stems) is not None:
                return onset, phrase
    return "", ""
