"""
The page of the fourteen questions, its excerpts made by running its commands.

``python measure/questions_page.py docs/how-to/questions.md``, from the root of the tree, writes it anew.
"""

import io
import shlex
import sys
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from refettle.cli import main as refettle

_HEAD: Final = """# The fourteen questions

What people ask most, each with the command that answers it and the beginning of its answer. The pieces are the
invented ones in `examples`. A test runs every command on this page; `python measure/questions_page.py
docs/how-to/questions.md` renews what they print.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """
    One question.

    Attributes
    ----------
    ask
        The question.
    call
        Words of the command line.
    lines
        Lines of the answer that are shown [1].
    key
        Words of the answer that one should look for.
    more
        What else helps.
    """

    ask: str
    call: str
    lines: int
    key: str
    more: str = ""


QUESTIONS: Final = (
    Question(
        ask="What finish is on it?", call='facts "old finish"', lines=11, key="Put a drop of alcohol on a hidden spot",
        more="Mildest first; below the tests stands what is likely by age. A plan of a piece whose finish is not known "
        "weighs all it may be and says which test pays: `refettle plan examples/sideboard.yaml`.",
    ),
    Question(
        ask="Must I strip it?", call="why examples/blanket-chest.yaml lid/outside --not strip", lines=4,
        key="stripping is", more="Yes or no first, and by how much, everything counted. Where the plan strips, the same "
        "words ask whether one can do without.",
    ),
    Question(
        ask="Will it bleed?", call="facts bleed-through", lines=11, key="is carried up by",
        more="On your own piece the line *Watch* of `refettle plan` says it, or `refettle foresee` of your own steps. "
        "How much a wood brings itself: `refettle facts woods tannin`.",
    ),
    Question(
        ask="What goes over what?", call='facts "waterborne polyurethane" --over shellac', lines=8,
        key="holds only over a barrier", more="`refettle facts --over shellac` lists all that goes over it, best first.",
    ),
    Question(
        ask="How long will it take?", call="plan examples/gate-leg-table.yaml --workshop examples/workshop.yaml --short",
        lines=19, key="Hands-on", more="One coat in your own air: question 13.",
    ),
    Question(
        ask="Can I save the old finish?", call="why examples/gate-leg-table.yaml top --not keep", lines=10,
        key="can be done", more="What keeping it takes, costs and risks beside what was asked for.",
    ),
    Question(ask="Is it veneer?", call="facts veneer", lines=12, key="is there a thin layer on"),
    Question(ask="Why craters?", call="facts craters", lines=14, key="silicone"),
    Question(
        ask="Is today too cold?", call='facts --air "8 C, 70 %"', lines=9, key="may be laid today",
        more='One coat in full: `refettle facts "oil-based polyurethane" --air "8 C, 70 %"`.',
    ),
    Question(ask="Why has it gone white?", call="facts white", lines=10, key="sanding haze"),
    Question(ask="Why does it peel?", call='facts "why does it peel"', lines=14, key="First suspect"),
    Question(ask="How do I get even colour?", call='facts "even colour"', lines=10, key="conditioner first"),
    Question(
        ask="When can I close the doors?", call='facts "latex wall paint" --air "16 C, 60 %"', lines=13,
        key="Close doors and drawers after",
    ),
    Question(
        ask="Which finish suits?", lines=14, key="Best:",
        call="why examples/gate-leg-table.yaml top --workshop examples/workshop.yaml --finishes",
        more="Every finish that can be had for this look and use, best first: one search each.",
    ),
)  # fmt: skip


def answer(call: str) -> tuple[int, str]:
    """Return exit code and what a command prints to its standard output."""
    out = io.StringIO()
    with redirect_stdout(out), redirect_stderr(io.StringIO()):
        code = refettle(shlex.split(call))
    return code, out.getvalue()


def page() -> str:
    """Return the page as Markdown."""
    parts = [_HEAD]
    for number, one in enumerate(QUESTIONS, start=1):
        shown = "\n".join(answer(one.call)[1].split("\n")[: one.lines]).rstrip()
        parts.append(f"## {number}. {one.ask}\n\n    refettle {one.call}\n\n```text\n{shown}\n```\n")
        if one.more:
            parts.append(f"{one.more}\n")
    return "\n".join(parts)


def main() -> int:
    """Write the page to the file that is named; 2 for a wrong call."""
    if len(sys.argv) != 2:
        sys.stderr.write("one word is due: the file to write, docs/how-to/questions.md\n")
        return 2
    Path(sys.argv[1]).write_text(page(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
