"""``refettle facts``: what is known of a thing, from where, and which source won."""

import os
import sys
from argparse import Namespace

from refettle import bootstrap
from refettle.bootstrap import WrongCall
from refettle.cli.causes_text import causes_text
from refettle.cli.facts_air import air_answer
from refettle.cli.facts_json import facts_json
from refettle.cli.facts_over import over_answer
from refettle.cli.facts_text import compared_text, facts_text, kinds_text, names_text
from refettle.cli.page import Page
from refettle.cli.telling_text import tests_text
from refettle.cli.terminal import Answer, bold_wanted, page_width
from refettle.knowledge.knowledge import Knowledge
from refettle.services.causes import near_signs
from refettle.services.look_up import (
    KIND_WORDS,
    KnownThing,
    kind_meant,
    known_of,
    near_words,
    only_property,
    property_labels,
    things_meant,
)

_MOST_NAMED = 12


def run(wishes: Namespace) -> Answer:
    """
    Return what is known of a word, as page or JSON.

    Parameters
    ----------
    wishes
        Words of the command line.

    Returns
    -------
    Answer
        Code 0; an unknown word is a wrong call.

    Raises
    ------
    WrongCall
        If nothing has that name, or nothing of that name has that property.
    """
    know = bootstrap.knowledge()
    page = Page(width=page_width(sys.stdout), bold=bold_wanted(sys.stdout, os.environ))
    word, prop = wishes.word, wishes.property
    if wishes.over is not None or wishes.air is not None:
        return _beside(know, wishes, page)
    things = () if word is None else tuple(known_of(know, found) for found in things_meant(know, word))
    kind = None if word is None or things else kind_meant(word)
    if kind is not None and prop is not None:
        things = tuple(known_of(know, identity) for identity in know.identities.get(kind, {}).values())
    seen = () if word is None or prop is not None or _else(things) else bootstrap.causes(know, word)
    if word is not None and not things and kind is None and not seen:
        raise WrongCall(what=f'"{word}" is not known', do=_instead(know, word))
    if prop is not None:
        things = _narrowed(things, word, prop)
    if wishes.json:
        return Answer(out=facts_json(know, word, prop, kind, things, seen if kind is None else ()))
    if word is None:
        return Answer(out=kinds_text(know, page))
    if seen and kind is None:
        return Answer(out=causes_text(know, word, seen, page))
    if kind == "test" and prop is None:
        return Answer(out=tests_text(know, page))
    if kind is None:
        return Answer(out=facts_text(know, things, page, everything=prop is not None))
    if prop is None:
        return Answer(out=names_text(know, kind, page))
    return Answer(out=compared_text(know, things, page))


def _beside(know: Knowledge, wishes: Namespace, page: Page) -> Answer:
    """Return what is known of a coat over another, or in an air; WrongCall for both, or with a property."""
    if wishes.property is not None or (wishes.over is not None and wishes.air is not None):
        raise WrongCall(what="--over and --air each stand alone", do="ask one after the other")
    if wishes.over is not None:
        return over_answer(know, wishes.word, wishes.over, page, as_json=wishes.json)
    return air_answer(know, wishes.word, wishes.air, page, as_json=wishes.json)


def _else(things: tuple[KnownThing, ...]) -> bool:
    """Return whether a word names things, none of them a fault."""
    return bool(things) and all(thing.identity.kind != "fault" for thing in things)


def _narrowed(things: tuple[KnownThing, ...], word: str, prop: str) -> tuple[KnownThing, ...]:
    """Return the things with one property alone; WrongCall where none has it."""
    kept = only_property(things, prop)
    if kept:
        return kept
    from difflib import get_close_matches  # noqa: PLC0415 - only after a misspelling

    labels = property_labels(things)
    near = get_close_matches(prop.lower().replace("_", " "), labels, n=3, cutoff=0.6)
    known = ", ".join(labels[:_MOST_NAMED]) + (" ..." if len(labels) > _MOST_NAMED else "")
    do = f"write {' or '.join(near)}" if near else f"known are {known}"
    raise WrongCall(what=f'{word} has no property "{prop}"', do=do)


def _instead(know: Knowledge, word: str) -> str:
    """Return what may have been meant by a word that means nothing."""
    near = near_words(know, word)
    if near:
        return f"nearest are {', '.join(near)}"
    seen = near_signs(know, word)
    if seen:
        return f"of what one sees, nearest are {', '.join(seen)}"
    return f"names of all are listed by {', '.join(words[1] for words in KIND_WORDS.values())}"
