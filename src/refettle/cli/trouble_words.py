"""What ``diagnose`` and ``mend`` share: reading the options, and how what was understood is told."""

from argparse import Namespace
from shlex import quote
from typing import Final

from refettle.bootstrap import Looked, Said
from refettle.bootstrap.trouble import AT_ONCE
from refettle.cli.page import Page
from refettle.cli.words import chance_words
from refettle.knowledge.knowledge import Knowledge
from refettle.services.step_words import step_words
from refettle.trouble.words import ONSETS

COLUMN: Final = 24


def said_in(wishes: Namespace) -> Said:
    """Return what the options say of the trouble."""
    return Said(
        text=wishes.says or "", yes=tuple(wishes.yes or ()), no=tuple(wishes.no or ()), when=wishes.when or ""
    )


def start(words: str) -> str:
    """Return words with a capital at their start."""
    return f"{words[:1].upper()}{words[1:]}"


def fault_words(know: Knowledge, fault: str) -> str:
    """Return the name of a fault; the empty one is something else."""
    return know.name("fault", fault) if fault else "something else"


def time_words(when: str) -> str:
    """Return a time as one says it."""
    return "at once" if when == ONSETS[0] else f"{when} later"


def asked_as(when: str) -> str:
    """Return a time as the option takes it."""
    return AT_ONCE if when == ONSETS[0] else when


def write_understood(page: Page, looked: Looked) -> None:
    """Write what was understood of the person's words and answers, and how to put it right."""
    found, book = looked.found, looked.book
    words = dict(found.heard.words)
    signs = [(sign, surety) for sign, surety in found.told.signs.items() if surety > 0]
    page.heading("What was understood")
    for sign, _ in signs:
        heard = f'"{words[sign]}"' if sign in words else "your answer"
        page.marked(heard, f"{book.signs[sign].name} ({sign})", indent=2, column=COLUMN)
    for sign, surety in found.told.signs.items():
        if surety == 0:
            page.marked("not there", f"{book.signs[sign].name} ({sign})", indent=2, column=COLUMN)
    if found.told.when:
        heard = (
            f'"{words["when"]}"' if found.heard.when == found.told.when and "when" in words else "your answer"
        )
        page.marked(heard, f"it showed {time_words(found.told.when)}", indent=2, column=COLUMN)
    if signs or found.told.when:
        page.write(
            "Not so? Add --no SIGN, --yes SIGN or --when TIME, or say it in other words.", indent=2, hang=2
        )
        return
    page.write("Nothing that is known here; the causes below go by what was done alone.", indent=2, hang=2)
    looks = ", ".join(sign.id for sign in book.signs.values() if sign.kind == "look")
    page.write(f"Say it in other words, or with --yes and one of: {looks}.", indent=2, hang=2)


def write_done(page: Page, looked: Looked, know: Knowledge) -> None:
    """Write the steps that the causes rest on."""
    own = looked.found.steps[: looked.own]
    if not own:
        page.heading("What was done")
        page.write(
            'Not told: write your steps under "done:" in the piece file, and the causes get far surer.',
            indent=2,
            hang=2,
        )
        return
    page.heading('What was done (taken from "intend")' if looked.taken_from == "intend" else "What was done")
    for number, step in enumerate(own, start=1):
        page.marked(f"{number:>3}", step_words(know, step), indent=1, column=6)


def call(
    command: str, file: str, surface: str, said: Said, more: str = "", workshop: str | None = None
) -> str:
    """Return the call of another command with the same words."""
    parts = [f"refettle {command} {quote(file)} {quote(surface)}"]
    parts += [f"--says {quote(said.text)}"] if said.text else []
    parts += [f"--yes {quote(sign)}" for sign in said.yes]
    parts += [f"--no {quote(sign)}" for sign in said.no]
    parts += [f"--when {quote(said.when)}"] if said.when else []
    parts += [f"--workshop {quote(workshop)}"] if workshop else []
    return " ".join([*parts, *([more] if more else [])])


def cause_lines(looked: Looked, know: Knowledge, least: float, most: int) -> list[tuple[str, str, str]]:
    """
    Return the likeliest faults, each with its chance in words, its name with the step, and why.

    Parameters
    ----------
    looked
        What was found.
    know
        Names.
    least
        Chance [1] below which a fault is left out; something else never is.
    most
        Faults told at the most [1].

    Returns
    -------
    list of tuple
        Chance, fault and step, reasons.
    """
    rows = []
    shown = [(f, c) for f, c in looked.found.faults if f and c >= least][:most]
    other = next((c for f, c in looked.found.faults if not f), 0.0)
    for fault, chance in [*shown, ("", other)]:
        first = next(c for c in looked.found.causes if c.suspect.fault == fault)
        step = f" (step {first.suspect.step})" if 0 < first.suspect.step <= looked.own else ""
        fits = ", ".join(looked.book.signs[sign].name for sign in first.fits)
        why = f"{start(first.suspect.why)}." if fault else "A cause that is not known here."
        rows.append(
            (
                chance_words(chance),
                f"{start(fault_words(know, fault))}{step}",
                f"{why} Fits: {fits}." if fits else why,
            )
        )
    return rows
