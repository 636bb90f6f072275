"""Every command, option and word for a chance stands in the docs, and the how-to page does what it says."""

import argparse
import io
import re
import shlex
import sys
from pathlib import Path

import pytest

from refettle.cli import command_line, main
from refettle.cli.words import chance_words
from refettle.planning.reasons import odds

DOCS = Path(__file__).parents[2] / "docs"
COMMANDS = (DOCS / "reference/commands.md").read_text(encoding="utf-8")
WORDS = (DOCS / "reference/words.md").read_text(encoding="utf-8")
HOW_TO = (DOCS / "how-to/plan-a-piece.md").read_text(encoding="utf-8")
TROUBLE = (DOCS / "how-to/put-trouble-right.md").read_text(encoding="utf-8")


def parsers() -> dict[str, argparse.ArgumentParser]:
    """Return the reader of every command."""
    top = command_line.parser()
    found = next(action.choices for action in top._actions if isinstance(action.choices, dict))
    return {"": top, **found}


def entries() -> list[tuple[str, str]]:
    """Return every command with every option and place of it."""
    found = []
    for name, parser in parsers().items():
        for action in parser._actions:
            words = action.option_strings or [str(action.metavar or action.dest)]
            found.extend((name, word) for word in words if word != "COMMAND")
    return found


@pytest.mark.parametrize("name", [name for name in parsers() if name])
def test_every_command_has_its_section(name: str) -> None:
    assert f"## `{name}`" in COMMANDS
    assert f"`refettle/cli/{name}.schema.json`" in COMMANDS


@pytest.mark.parametrize(("command", "word"), entries())
def test_every_option_stands_in_the_usage_of_its_command(command: str, word: str) -> None:
    usage = next(
        line for line in COMMANDS.splitlines() if line.strip().startswith(f"refettle {command or word}")
    )
    assert word in usage
    if word.startswith("--"):
        assert re.search(rf"^\| `{re.escape(word)}[ `]", COMMANDS, flags=re.MULTILINE)


def test_the_docs_name_no_option_that_does_not_exist() -> None:
    known = {word for _, word in entries()} | {"--help"}
    told = set(re.findall(r"--[a-z]+", COMMANDS + HOW_TO + TROUBLE))
    assert told <= known


def test_the_page_on_words_tells_every_word_for_a_chance_with_its_border() -> None:
    rows = re.findall(r"^\| (?:below )?(\d+)[^|]*\| ([a-z ]+) \|$", WORDS, flags=re.MULTILINE)
    assert len(rows) == 7
    for border, said in rows:
        chance = int(border) / 100 - (0.001 if said == "hardly" else 0.0)
        assert chance_words(chance) == said
    assert {said for _, said in rows} == {odds(n / 200) for n in range(201)}


def test_the_how_to_page_does_what_it_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    piece = re.findall(r"```yaml\n(.*?)```", HOW_TO, flags=re.DOTALL)[0]
    intend = re.search(r"^    intend:\n(?:      .*\n)+", HOW_TO, flags=re.MULTILINE)
    tests = re.search(r"^    tests:\n(?:      .*\n)+", HOW_TO, flags=re.MULTILINE)
    assert intend is not None
    assert tests is not None
    more = "".join(line[4:] for part in (intend, tests) for line in part[0].splitlines(keepends=True))
    (tmp_path / "desk.yaml").write_text(piece + more, encoding="utf-8")
    (tmp_path / "garage.yaml").write_text("workshop: Garage\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    calls = re.findall(r"^    refettle (.+)$", HOW_TO, flags=re.MULTILINE)
    assert len(calls) >= 6
    for call in calls:
        code = main(shlex.split(call))
        assert code in ({0, 1} if call.startswith("foresee") else {0}), call
        assert "Traceback" not in capsys.readouterr().err


def test_the_page_on_trouble_does_what_it_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    piece = re.findall(r"```yaml\n(.*?)```", TROUBLE, flags=re.DOTALL)[0]
    (tmp_path / "washstand.yaml").write_text(piece, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(sys, "stdin", io.StringIO("brown spots\n\n\n\n\n\n"))
    calls = re.findall(r"^    refettle (.+)$", TROUBLE, flags=re.MULTILINE)
    assert len(calls) >= 5
    for call in calls:
        assert main(shlex.split(call)) == 0, call
        assert "Knots coming through" in capsys.readouterr().out
