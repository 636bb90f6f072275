"""The page of the fourteen questions: every command runs, and its answer begins with what the page shows."""

import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

from questions_page import QUESTIONS, Question, answer

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs/how-to/questions.md").read_text(encoding="utf-8")
RENEW = "run: python measure/questions_page.py docs/how-to/questions.md"


def shown(one: Question) -> list[str]:
    """Return the lines that the page shows of an answer."""
    found = re.search(
        rf"^    refettle {re.escape(one.call)}\n\n```text\n(.*?)\n```", PAGE, re.MULTILINE | re.DOTALL
    )
    assert found is not None, RENEW
    return found[1].split("\n")


def without_figures(line: str) -> str:
    """Return a line with its figures left open: these move with every fact."""
    return re.sub(r"[\d.,–]+", "#", line).rstrip()


@pytest.mark.parametrize("one", QUESTIONS, ids=lambda one: one.ask)
def test_the_command_answers_and_begins_as_the_page_shows(
    one: Question, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    code, out = answer(one.call)
    assert code == 0
    assert one.key in " ".join(out.split())
    assert max(map(len, out.split("\n"))) <= 80
    first = [without_figures(line) for line in shown(one)[:3]]
    assert [without_figures(line) for line in out.split("\n")[:3]] == first, RENEW


def test_the_page_asks_fourteen_questions_and_no_other() -> None:
    assert re.findall(r"^    refettle (.+)$", PAGE, re.MULTILINE) == [one.call for one in QUESTIONS]
    assert len(QUESTIONS) == 14
