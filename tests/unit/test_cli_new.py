"""A piece file to begin with: it reads without error whatever is said, and what is there is never touched."""

import io
import json
import re
import sys
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from refettle.cli import main
from refettle.files.form_entries import form_names
from refettle.files.new_piece import Answers, begin_piece, name_from, sizes_said
from refettle.files.piece_file import read_piece
from refettle.files.tables import load_knowledge
from refettle.geometry.forms import find_form
from refettle.knowledge.knowledge import Knowledge


@pytest.fixture(scope="module")
def know() -> Knowledge:
    return load_knowledge()


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


class Person(io.StringIO):
    """Somebody at a terminal."""

    def isatty(self) -> bool:
        return True


def typed(monkeypatch: pytest.MonkeyPatch, *lines: str) -> Person:
    """Let somebody type some lines; return what they are shown beside the data."""
    shown = Person()
    monkeypatch.setattr(sys, "stdin", Person("".join(f"{line}\n" for line in lines)))
    monkeypatch.setattr(sys, "stderr", shown)
    return shown


def uncommented(text: str) -> str:
    """Return a file with every suggestion taken but those of the tests, which wait for an answer."""
    head, _, more = text.partition("# What else you know")
    return head + "\n".join(line.removeprefix("# ") for line in more.splitlines()[1:]) + "\n"


@pytest.mark.parametrize("form", ["", *form_names()])
def test_a_file_of_every_form_reads_without_a_word(form: str, know: Knowledge):
    begun = begin_piece(Answers(form=form), "old-thing.yaml", know)
    assert begun.findings == ()
    assert begun.piece is not None
    assert begun.piece.surfaces
    found = find_form(form or "list")
    assert found is not None
    assert begun.piece.form == found.id


@pytest.mark.parametrize("form", form_names())
def test_every_suggestion_in_a_file_may_be_taken_as_it_stands(form: str, know: Knowledge):
    text = uncommented(begin_piece(Answers(form=form, look="opaque white"), "x.yaml", know).text)
    assert "child: yes" in text
    piece, findings = read_piece(text, "x.yaml", know)
    assert findings == ()
    assert piece is not None
    assert piece.child
    assert piece.sells_high == 240


def test_every_entry_says_beside_it_what_it_may_be_and_fits_on_a_terminal(know: Knowledge):
    for form in form_names():
        text = begin_piece(Answers(form=form), "x.yaml", know).text
        assert max(map(len, text.splitlines())) <= 80
        entries = [line for line in text.splitlines() if re.match(r"\w[\w ]*: ", line)]
        assert all(" # " in line for line in entries if not line.startswith("piece: "))


def test_what_was_said_stands_in_the_piece(folder: Path, know: Knowledge, capsys: pytest.CaptureFixture[str]):
    given = ["--form", "table", "--size", "4 ft x 60 x 75 cm", "--wood", "white oak", "--finish", "shellac"]
    assert main(["new", "hall-table.yaml", *given, "--look", "opaque white satin", "--era", "1930s"]) == 0
    shown = capsys.readouterr()
    assert shown.err == ""
    assert (
        shown.out == "Wrote hall-table.yaml: Hall table, 9 surfaces.\nNext: refettle plan hall-table.yaml\n"
    )
    piece, findings = read_piece((folder / "hall-table.yaml").read_text("utf-8"), "hall-table.yaml", know)
    assert findings == ()
    assert piece is not None
    assert piece.size_mm == pytest.approx((1219.2, 600.0, 750.0))
    assert (piece.year_from, piece.year_to) == (1930, 1939)
    top = next(surface for surface in piece.surfaces if surface.name == "top")
    assert top.wood == "oak"
    assert top.layers[0].guesses == (("shellac-waxed", 1.0),)
    assert top.look is not None
    assert (top.look.kind, top.look.colour, top.look.sheen) == ("opaque", "white", "satin")


def test_an_unknown_old_finish_leads_to_the_spot_tests(folder: Path, capsys: pytest.CaptureFixture[str]):
    assert main(["new", "a.yaml", "--form", "board", "--finish", "don't know"]) == 0
    assert "alcohol drop" in capsys.readouterr().out
    text = (folder / "a.yaml").read_text("utf-8")
    assert "old finish: unknown" in text
    assert "#   alcohol drop: ...\n" in text
    assert main(["new", "b.yaml", "--form", "board", "--finish", "shellac"]) == 0
    assert "alcohol drop" not in (folder / "b.yaml").read_text("utf-8")


def test_dots_left_in_a_test_is_told_with_its_answers(know: Knowledge):
    text = begin_piece(Answers(form="board"), "x.yaml", know).text
    text = text.replace("# tests:", "tests:").replace("#   alcohol drop: ...", "  alcohol drop: ...")
    _, findings = read_piece(text, "x.yaml", know)
    assert [finding.do for finding in findings] == [
        "write yes, no, dissolves, softens, sticky, holds or nothing"
    ]
    piece, findings = read_piece(text.replace("drop: ...", "drop: holds"), "x.yaml", know)
    assert piece is not None
    assert piece.surfaces[0].tested == (("alcohol-drop", "no"),)


def test_what_is_there_is_left_alone(folder: Path, capsys: pytest.CaptureFixture[str]):
    (folder / "a.yaml").write_text("mine", encoding="utf-8")
    (folder / "gone.yaml").symlink_to(folder / "nowhere.yaml")
    (folder / "sub").mkdir()
    for name, said in (("a.yaml", "is there already"), ("gone.yaml", "is there already"), ("sub", "already"),
                       ("none/a.yaml", 'there is no folder "none"')):  # fmt: skip
        assert main(["new", name, "--form", "board"]) == 2
        shown = capsys.readouterr()
        assert said in " ".join(shown.err.split())
        assert shown.out == ""
    assert (folder / "a.yaml").read_text("utf-8") == "mine"
    assert not (folder / "nowhere.yaml").exists()


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (["--wood", "oka"], '--wood: "oka" is not a known wood – write "oak"'),
        (["--form", "tabel"], '--form: "tabel" is not a known form – write "table"'),
        (["--size", "120 x 60 cm"], '--size: "120 x 60 cm" is not a size – write width x depth x height'),
        (["--size", "120 x 60 x 75"], '"120 x 60 x 75" is not a size'),
        (["--form", "table", "--size", "1 x 60 x 75 cm"], "--size: "),
        (["--form", "table", "--size", "big x 60 x 75 cm"], "--size: "),
        (["--finish", "shelac"], "--finish: "),
        (["--finish", "{shellac: 0.7}"], "--finish: "),
        (["--look", "shiny"], "--look: "),
        (["--era", "yesterday"], "--era: "),
        (["--wood", "oak\nlook: keep"], "--wood: "),
        (["--wood", "oak # ash"], "--wood: "),
    ],
)
def test_an_option_that_cannot_be_read_is_named_and_nothing_is_written(
    given: list[str], said: str, folder: Path, capsys: pytest.CaptureFixture[str]
):
    assert main(["new", "a.yaml", *given]) == 2
    assert said in " ".join(capsys.readouterr().err.split())
    assert not (folder / "a.yaml").exists()


def test_at_a_terminal_five_questions_are_asked(
    folder: Path, know: Knowledge, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    shown = typed(monkeypatch, "table", "120 x 60 x 75 cm", "oka", "oak", "don't know", "natural")
    assert main(["new", "desk.yaml"]) == 0
    said = shown.getvalue()
    assert said.count("> ") == 6
    assert '"oka" is not a known wood – write "oak"\nWhich wood?' in said
    assert max(map(len, said.splitlines())) <= 80
    assert "Wrote desk.yaml: Desk, 9 surfaces." in capsys.readouterr().out
    piece, _ = read_piece((folder / "desk.yaml").read_text("utf-8"), "desk.yaml", know)
    assert piece is not None
    assert piece.surfaces[0].wood == "oak"


def test_enter_alone_takes_what_is_usual(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    typed(monkeypatch, "", "", "", "")
    assert main(["new", "a.yaml"]) == 0
    assert "taken as usual: form, wood, era, old finish, look, surfaces" in capsys.readouterr().out
    assert (folder / "a.yaml").exists()


def test_questions_that_nobody_answers_write_nothing(folder: Path, monkeypatch: pytest.MonkeyPatch):
    shown = typed(monkeypatch, "table")
    assert main(["new", "a.yaml"]) == 2
    assert "the questions were left unanswered" in shown.getvalue()
    assert not (folder / "a.yaml").exists()


def test_with_an_option_nothing_is_asked(folder: Path, monkeypatch: pytest.MonkeyPatch):
    shown = typed(monkeypatch)
    assert main(["new", "a.yaml", "--form", "chest"]) == 0
    assert shown.getvalue() == ""
    assert (folder / "a.yaml").exists()


def test_the_json_follows_its_schema(folder: Path, capsys: pytest.CaptureFixture[str]):
    schema: dict[str, Any] = json.loads(files("refettle.cli").joinpath("new.schema.json").read_text("utf-8"))
    for name, given in (("a.yaml", []), ("b.yaml", ["--form", "settle", "--size", "120 by 50 by 100 cm"])):
        assert main(["new", name, *given, "--json"]) == 0
        document = json.loads(capsys.readouterr().out)
        jsonschema.validate(document, schema)
        assert document["text"] == (folder / name).read_text("utf-8")
    assert document["size_mm"] == [1200, 500, 1000]
    del document["usual"]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, schema)


@pytest.mark.parametrize(
    ("size", "said"),
    [
        ("120 x 60 x 75 cm", ("120 cm", "60 cm", "75 cm")),
        ("120×60×75cm", ("120 cm", "60 cm", "75 cm")),
        ("4 ft by 24 1/2 by 30 in", ("4 ft", "24 1/2 in", "30 in")),
        ("1.2 m x 60 cm x 750 mm", ("1.2 m", "60 cm", "750 mm")),
        ("4 ft x 24 in x 2 ft 6 in", ("4 ft", "24 in", "2 ft 6 in")),
        ("120 x 60 cm", None),
        ("120 x x 60 cm", None),
        ("120 x 60 x 75", None),
        ("", None),
    ],
)
def test_three_lengths_share_the_last_unit(size: str, said: tuple[str, str, str] | None):
    assert sizes_said(size) == said


@pytest.mark.parametrize(
    ("file", "name"),
    [
        ("hall-table.yaml", "Hall table"),
        ("a/b/Oma_s.chest.yml", "Oma s chest"),
        ("no", "No"),
        ("--.yaml", "Piece"),
    ],
)
def test_a_piece_is_named_after_its_file(file: str, name: str, know: Knowledge):
    assert name_from(file) == name
    piece = begin_piece(Answers(), file, know).piece
    assert piece is not None
    assert piece.name == name
