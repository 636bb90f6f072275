"""
How free text is read: by a table of phrases, the longest first.

A table is written as lines ``tags = phrase; phrase``; ``-`` stands for "known, and says nothing
further"; ``_`` inside a tag stands for a space; ``*`` at the end of a word stands for any ending.
What stands after "no", "not", "never" or "without" up to the end of its clause is known but gives
no tag, unless the table holds the whole phrase ("not wiped").
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

import case_wider_words as wider


@dataclass(frozen=True, slots=True)
class Words:
    """
    One table of phrases.

    Attributes
    ----------
    exact
        Phrase → tags.
    stems
        Phrases with open endings → tags, the longest stems first.
    """

    exact: Mapping[tuple[str, ...], tuple[str, ...]]
    stems: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...] = field(default=())

    def tags(self, phrase: tuple[str, ...]) -> tuple[str, ...] | None:
        """Return the tags of a phrase, or None when the table does not know it."""
        if phrase in self.exact:
            return self.exact[phrase]
        for stem, tags in self.stems:
            if len(stem) == len(phrase) and all(map(_fits, stem, phrase)):
                return tags
        return None


def words(text: str) -> Words:
    """
    Return the table written in a text.

    Parameters
    ----------
    text
        Lines ``tags = phrase; phrase``.

    Returns
    -------
    Words
        The table.

    Raises
    ------
    ValueError
        If a phrase stands twice.
    """
    rows: dict[tuple[str, ...], tuple[str, ...]] = {}
    for line in filter(None, map(str.strip, text.splitlines())):
        head, _, tail = line.partition(" = ")
        tags = () if head == "-" else tuple(tag.replace("_", " ") for tag in head.split())
        for phrase in tail.split(";"):
            key = tuple(phrase.split())
            if key in rows:
                message = f'"{phrase.strip()}" stands twice'
                raise ValueError(message)
            rows[key] = tags
    stems = [(key, tags) for key, tags in rows.items() if any(word.endswith("*") for word in key)]
    return Words(
        exact={key: tags for key, tags in rows.items() if (key, tags) not in stems},
        stems=tuple(sorted(stems, key=lambda row: -len(" ".join(row[0])))),
    )


def _plain(text: str) -> frozenset[str]:
    """Return the words of a text."""
    return frozenset(text.split())


STOP = _plain(
    """
    a an the and or of off on in into onto to up down at by for from with as is are was were be been
    being it its this that these those then than so if but about after before until till while when
    where which who all any some each every both only just also still yet again over under between
    through per via out very too quite rather more less most much little few other another same one two
    three four five six seven eight nine ten first second third last next no not never without nor own
    his her their our your my he she they we you has have had do does did done will would can could may
    might must should there here now later soon left let put kept get got made make went go goes taken
    take took given give gave h hr hrs min mm cm m c f rh
    """
)

NEUTRAL = _plain(
    """
    piece part parts whole entire surface surfaces face faces side sides back front top tops bottom base
    leg legs foot feet apron rail rails stile stiles panel panels door doors drawer drawers shelf
    shelves seat chair chairs table tables cabinet cabinets cupboard dresser chest box frame frames
    carcass case body inside insides outside exterior interior edge edges corner corners end ends
    moulding mouldings trim board boards plank planks slat slats spindle spindles bed headboard bench
    stool desk furniture wood wooden timber veneer veneered plywood mdf finish finishes finished film
    films coat coats coating coated layer layers paint painted varnish varnished lacquer lacquered
    shellac shellacked oil oiled wax waxed stain stained dye dyed primer primed sealer sealed topcoat
    topcoats clear pigment colour color coloured material product can tin brush brushed roller rolled
    spray sprayed wiped wipe rag rags towel towels cloth cloths paper papers sandpaper grit grits p pass
    passes times time day days hour hours week weeks month months minute minutes year years morning
    evening afternoon overnight night today full fully partly partial half quarter complete completely
    careful carefully gentle gently slow slowly fast even evenly uniform fine good bad well better best
    proper properly usual usually normal normally ordinary regular same enough needed required stated
    label according instructions directions maker manufacturer recommended simple simply plain house
    home shop workshop garage room indoor indoors outdoor outdoors place places area areas spot spots
    section sections floor ground lot new old fresh original previous existing former remaining rest
    remains any clean cleaned cleaning dry dried drying dries hard harden hardened cure cured cures set
    sets setting ready work works worked working done doing used use using applied apply applying
    application laid lay added add adding mixed mix rubbed rub rubbing sand sanded sanding scuffed scuff
    buffed buff polished removed remove removing taken stripped strip stripping rinsed rinse washed wash
    bleached bleach cut cutting open opened close closed fit fitted fitting installed install installing
    hung hang mounted placed stood stand standing stands rested resting sits sit lying lie turned moved
    brought returned carried again straight away once immediately directly soon quickly short shortly
    long longer small large big high low heavy light deep thin thick wide narrow upright vertical
    horizontal flat level loose tight little several many number various different customer owner client
    finisher worker person family people hardware knobs hinges pulls glass mirror water solvent thinner
    cloudy white black brown red grey gray green blue yellow cream pale dark bright colourless natural
    transparent opaque mild strong warm cool touch finger fingers look looks looked appears appearance
    smooth rough soft tacky sticky wet damp test tested sample check checked inspected noted notice job
    step steps process method way technique extra additional further final finally initial start starts
    started begin beginning wall walls air space spaces gap gaps joint
    joints seam seams grain pores knots crack cracks line lines mark marks raised raise lifted
    lift pulled pull pressed press covered cover covers sheet sheets block pad pads sponge wool steel
    wire fibre felt leather approximately roughly around nearly almost upto max maximum minimum least
    """
    + wider.NEUTRAL
)

NEGATIONS = frozenset({"no", "not", "never", "without", "nor", "non"})
CLAUSE_ENDS = frozenset({",", ";", ".", ":", "but", "then", "and", "(", ")"})

NUMBER_WORDS: Mapping[str, float] = {
    "a": 1,
    "an": 1,
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
    "eleven": 11,
    "twelve": 12,
    "fifteen": 15,
    "twenty": 20,
    "thirty": 30,
    "forty": 40,
    "fifty": 50,
    "sixty": 60,
    "seventy": 70,
    "eighty": 80,
    "ninety": 90,
    "hundred": 100,
    "several": 4,
    "few": 3,
    "a few": 3,
    "some": 4,
    "many": 6,
    "couple of": 2,
    "a couple of": 2,
    "half a": 0.5,
    "half an": 0.5,
}
UNIT_H: Mapping[str, float] = {
    "minute": 1 / 60,
    "min": 1 / 60,
    "hour": 1.0,
    "hr": 1.0,
    "h": 1.0,
    "day": 24.0,
    "night": 12.0,
    "week": 168.0,
    "month": 730.0,
    "year": 8766.0,
}
"""Length of a unit of time [h]."""

DURATION = re.compile(
    r"(?P<lead>\bafter |\bwithin |\bfor |\bin )?"
    r"\b(?P<number>\d+(?:\.\d+)?|" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + r")"
    r" (?P<unit>minute|min|hour|hr|h|day|night|week|month|year)s?\b(?P<tail> later| after)?"
)
BEFORE_WORDS: Mapping[str, float] = {
    "at once": 0.1,
    "immediately": 0.1,
    "straight away": 0.1,
    "right away": 0.1,
    "same day": 6.0,
    "the same day": 6.0,
    "next day": 20.0,
    "the next day": 20.0,
    "next morning": 14.0,
    "the next morning": 14.0,
    "the following day": 20.0,
    "following day": 20.0,
    "while wet": 0.1,
    "still wet": 0.1,
    "too soon": 12.0,
    "too early": 12.0,
}
"""Phrases that tell how long [h] was waited before an event."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """
    What a text says in the words of one table.

    Attributes
    ----------
    tags
        Tags in the order of the text, each once.
    unread
        Words that no table knows.
    understood
        Whether at least half of the words that could mean something are known.
    waited_h
        Stated wait before what the text tells of [h]; None = not said.
    lasts_h
        Stated length of what the text tells of [h]; None = not said.
    numbers
        Figures in the text that are no lengths of time.
    """

    tags: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()
    understood: bool = True
    waited_h: float | None = None
    lasts_h: float | None = None
    numbers: tuple[str, ...] = ()


def read_text(text: str, *tables: Words) -> Reading:
    """
    Return what a text says in the words of the tables, the first table first.

    Parameters
    ----------
    text
        Free text or an underscored tag.
    *tables
        Phrase → tags; the longest phrase that fits wins, then the earlier table.

    Returns
    -------
    Reading
        Tags, unread words, times.
    """
    plain = re.sub(r"[_/\-–]+", " ", text.lower().replace("'s", ""))
    plain, waited, lasts = _take_times(plain)
    tokens = re.findall(r"[a-z]+|\d+(?:\.\d+)?|[,;.:()]", plain)
    tags: list[str] = []
    unread: list[str] = []
    numbers: list[str] = []
    known = 0
    negated = False
    at = 0
    while at < len(tokens):
        word = tokens[at]
        hit = _longest(tokens, at, tables)
        if hit is not None:
            length, found = hit
            known += 1
            tags += () if negated else found
            at += length
            continue
        if word in NEGATIONS:
            negated = True
        elif word in CLAUSE_ENDS:
            negated = False
        elif word[0].isdigit():
            numbers.append(word)
        elif word in NEUTRAL:
            known += 1
        elif word not in STOP:
            unread.append(word)
        at += 1
    return Reading(
        tags=tuple(dict.fromkeys(tags)),
        unread=tuple(dict.fromkeys(unread)),
        understood=known >= len(unread),
        waited_h=waited,
        lasts_h=lasts,
        numbers=tuple(numbers),
    )


def _take_times(text: str) -> tuple[str, float | None, float | None]:
    """Return the text without lengths of time, the wait before and the length [h]."""
    waited: float | None = None
    lasts: float | None = None
    for phrase, hours in BEFORE_WORDS.items():
        if re.search(rf"\b{phrase}\b", text):
            waited = hours
            text = re.sub(rf"\b{phrase}\b", " ", text)
    for match in DURATION.finditer(text):
        number = match["number"]
        count = NUMBER_WORDS[number] if number in NUMBER_WORDS else float(number)
        hours = count * UNIT_H[match["unit"]]
        if (match["lead"] or "").strip() in {"after", "within"} or match["tail"]:
            waited = hours
        else:
            lasts = hours
    return DURATION.sub(" ", text), waited, lasts


def _longest(tokens: list[str], at: int, tables: tuple[Words, ...]) -> tuple[int, tuple[str, ...]] | None:
    """Return length and tags of the longest phrase that starts here, or None."""
    for length in range(min(5, len(tokens) - at), 0, -1):
        phrase = tuple(tokens[at : at + length])
        for table in tables:
            tags = table.tags(phrase)
            if tags is not None:
                return length, tags
    return None


def _fits(pattern: str, word: str) -> bool:
    """Return whether a word fits a word of the table."""
    return word.startswith(pattern[:-1]) if pattern.endswith("*") else word == pattern
