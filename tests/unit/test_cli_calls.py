"""Calling the terminal: what is answered, what is refused, and where it goes."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from fakes_plan import leaks, piece_plan, risk
from refettle import bootstrap
from refettle.cli import command_line, main, terminal
from refettle.cli.help_pages import GENERAL, PAGES
from refettle.domain.step import Step
from refettle.files.tables import load_knowledge
from refettle.knowledge.rows import FactRow
from refettle.services.mend_own import Change
from refettle.services.why import Explanation, WhyLine

PIECE = """\
piece: Oak desk
form: list
wood: oak
era: 1930s
old finish: shellac
contamination: [wax]
look: opaque white
surfaces:
  top: {area: 0.8 m2}
  front: {area: 0.5 m2}
"""
INTEND = """\
intend:
  - scuff: P240
  - paint: acrylic furniture paint
    coats: 2
    wait between: 4 h
"""


@pytest.fixture
def piece(tmp_path: Path) -> str:
    path = tmp_path / "desk.yaml"
    path.write_text(PIECE + INTEND, encoding="utf-8")
    return str(path)


def schema(name: str) -> dict[str, Any]:
    text = files("refettle.cli").joinpath(f"{name}.schema.json").read_text(encoding="utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def test_every_help_page_names_every_option_and_no_other():
    top = command_line.parser()
    commands = next(action.choices for action in top._actions if isinstance(action.choices, dict))
    assert set(commands) == set(PAGES)
    for name, parser in commands.items():
        known = {option for action in parser._actions for option in action.option_strings}
        told = {word.strip("[],.|") for word in PAGES[name].replace("|", " ").split() if "--" in word}
        assert told - {"--help"} == known
        assert f"refettle {name} " in GENERAL


def test_every_help_page_fits_on_a_terminal():
    for text in (GENERAL, *PAGES.values()):
        assert max(map(len, text.splitlines())) <= 80


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (["pln", "x.yaml"], '"pln" is no command – name one of plan, foresee, diagnose'),
        (["plan"], "the following arguments are required: FILE"),
        (["plan", "x.yaml", "--shor"], "unrecognized arguments: --shor"),
        (["plan", "nowhere.yaml"], 'there is no file "nowhere.yaml"'),
        (["plan", "."], '"." is a folder – name a file in it'),
    ],
)
def test_a_wrong_call_is_one_note_and_2(given: list[str], said: str, capsys: pytest.CaptureFixture[str]):
    assert main(given) == 2
    shown = capsys.readouterr()
    assert said in " ".join(shown.err.split())
    assert shown.out == ""


def test_no_words_show_the_general_page_as_a_wrong_call(capsys: pytest.CaptureFixture[str]):
    assert main([]) == 2
    assert capsys.readouterr().out == GENERAL
    assert main(["plan", "--help"]) == 0
    assert capsys.readouterr().out == PAGES["plan"]


def test_an_unknown_surface_is_a_wrong_call_that_says_which_there_are(
    piece: str, capsys: pytest.CaptureFixture[str]
):
    assert main(["why", piece, "tpo"]) == 2
    assert '"tpo" is no surface of Oak desk – there are top, front' in " ".join(
        capsys.readouterr().err.split()
    )


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xfe\x00piece", "not-text"),
        (b"piece: [", "yaml"),
        (b"", "piece"),
        (b"piece: A\nform: list\nwood: oka\nsurfaces: {top: {area: 1 m2}}\n", "unknown-wood"),
        (b"\x00\x00\x00", ""),
        (b"- 1\n- 2\n", ""),
        (b"piece: A\npiece: B\n", ""),
    ],
)
def test_a_bad_file_gives_findings_and_1_and_no_traceback(
    content: bytes, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    path = tmp_path / "bad.yaml"
    path.write_bytes(content)
    assert main(["plan", str(path)]) == 1
    shown = capsys.readouterr()
    assert shown.out == ""
    assert said in shown.err.replace("\n  ", "")  # a long path is folded inside a word
    assert "Traceback" not in shown.err
    assert main(["plan", str(path), "--json"]) == 1
    document = json.loads(capsys.readouterr().out)
    jsonschema.validate(document, schema("plan"))
    assert document["findings"]


def foreseen(chance: float) -> Callable[[Any], tuple[bootstrap.ForeseenSurface, ...]]:
    steps = (Step(verb="scuff", grit=240), Step(verb="paint", what="acrylic-paint"), Step(verb="use"))
    before = (risk("peeling", chance, step=2), risk("runs", 0.02, step=2))
    after = (risk("peeling", 0.05, step=3),)
    change = Change(
        words="wash with naphtha before painting",
        steps=(Step(verb="clean", what="naphtha"), *steps),
        edits=1,
        risks_before=before,
        risks_after=after,
    )
    made = tuple(
        bootstrap.ForeseenSurface(
            surface=name, steps=steps, own=2, risks=before, change=change if chance >= 0.3 else None
        )
        for name in ("top", "front")
    )
    return lambda _laid: made


@pytest.mark.parametrize(("chance", "code"), [(0.9, 1), (0.3, 1), (0.29, 0), (0.05, 0)])
def test_foresee_says_1_from_about_one_in_three(
    chance: float, code: int, piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr(bootstrap, "foresee", foreseen(chance))
    assert main(["foresee", piece]) == code
    text = capsys.readouterr().out
    assert "top, front\n" in text
    assert max(map(len, text.splitlines())) <= 80
    assert ("Sound: each fault is unlikely or less." in text) == (chance < 0.1)


def test_foresee_says_the_change_and_what_it_does(
    piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr(bootstrap, "foresee", foreseen(0.9))
    main(["foresee", piece])
    text = capsys.readouterr().out
    assert "almost certain      peeling: wax lies below the coat (step 2)" in text
    assert "Wash with naphtha before painting\n" in text
    assert "unlikely            peeling, almost certain before" in text
    main(["foresee", piece, "--json"])
    document = json.loads(capsys.readouterr().out)
    jsonschema.validate(document, schema("foresee"))
    assert document["surfaces"][0]["change"]["edits"] == 1


def test_foresee_without_intended_steps_is_a_wrong_call(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    path = tmp_path / "desk.yaml"
    path.write_text(PIECE, encoding="utf-8")
    assert main(["foresee", str(path)]) == 2
    assert 'write your steps under "intend:"' in " ".join(capsys.readouterr().err.split())


def explanation(*, found: bool = True) -> Explanation:
    row = FactRow(
        id="f-9",
        subject="film:shellac-dewaxed",
        prop="recoat_from_h",
        value="2",
        low=1.0,
        high=4.0,
        unit="h",
        source="judgement",
        grade="judgement",
        read_as="memory",
    )
    line = WhyLine(
        text='"varnsh" is no step here; known are for example: keep', because=("f-9", "rule:x", "f-404")
    )
    return Explanation(title="top: painted", lines=(line,), rows=(row,), found=found)


def test_why_leads_every_line_to_its_facts(
    piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr("refettle.services.why.explain", lambda *_: explanation())
    assert main(["why", piece, "TOP"]) == 0
    text = capsys.readouterr().out
    assert "keep [1]" in text
    assert " [1]  dewaxed shellac, may be recoated from: 2 h (1–4 h); judgement" in text
    assert not leaks(load_knowledge(), text)
    assert main(["why", piece, "top", "--not", "keep", "--json"]) == 0
    jsonschema.validate(json.loads(capsys.readouterr().out), schema("why"))


def test_why_not_something_unknown_is_a_wrong_call(
    piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
):
    monkeypatch.setattr("refettle.services.why.explain", lambda *_: explanation(found=False))
    assert main(["why", piece, "top", "--not", "varnsh"]) == 2
    assert '"varnsh" is no step here – known are for example: keep' in capsys.readouterr().err


def test_ctrl_c_is_one_line(piece: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]):
    def stop(_laid: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(bootstrap, "plan", stop)
    assert main(["plan", piece]) == 130
    assert capsys.readouterr().err == "Stopped; nothing was written.\n"


class Screen:
    """A stream that calls itself a terminal."""

    def __init__(self) -> None:
        self.said = ""

    def isatty(self) -> bool:
        return True

    def write(self, text: str) -> None:
        self.said += text

    def flush(self) -> None:
        pass


def test_a_waiting_line_comes_after_half_a_second_and_goes(monkeypatch: pytest.MonkeyPatch):
    screen = Screen()
    monkeypatch.setattr(sys, "stderr", screen)
    with terminal.waiting("Planning"):
        pass
    assert screen.said == ""
    monkeypatch.setattr(terminal, "PATIENCE_S", 0.0)
    with terminal.waiting("Planning"):
        while not screen.said:
            pass
    assert screen.said == "Planning ...\r            \r"


def test_bold_type_needs_a_terminal_that_wants_it():
    screen: Any = Screen()
    assert terminal.bold_wanted(screen, {})
    assert not terminal.bold_wanted(screen, {"NO_COLOR": "1"})
    assert not terminal.bold_wanted(screen, {"TERM": "dumb"})


def test_a_small_piece_is_planned_for_real_and_its_json_follows_the_schema(
    piece: str, capsys: pytest.CaptureFixture[str]
):
    assert main(["plan", piece]) == 0
    text = capsys.readouterr().out
    assert max(map(len, text.splitlines())) <= 80
    assert not leaks(load_knowledge(), text)
    assert main(["plan", piece, "--json"]) == 0
    jsonschema.validate(json.loads(capsys.readouterr().out), schema("plan"))
    assert main(["foresee", piece, "--json"]) == 1
    jsonschema.validate(json.loads(capsys.readouterr().out), schema("foresee"))
    assert main(["why", piece, "top", "--json"]) == 0
    jsonschema.validate(json.loads(capsys.readouterr().out), schema("why"))


def test_a_reader_that_goes_away_is_no_trouble(tmp_path: Path):
    script = tmp_path / "long.py"
    script.write_text(
        "import sys, refettle.cli.help_pages as p\np.GENERAL = 'x\\n' * 200_000\n"
        "from refettle.cli import main\nsys.exit(main(['--help']))\n",
        encoding="utf-8",
    )
    with subprocess.Popen(
        [sys.executable, str(script)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=dict(os.environ)
    ) as run:
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdout.readline()
        run.stdout.close()
        assert run.stderr.read() == b""
        assert run.wait(timeout=30) == 0


def test_help_loads_nothing_of_the_core():
    code = (
        "import sys\nfrom refettle.cli import main\nmain(['--help'])\nprint(sorted(m for m in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    loaded = done.stdout.splitlines()[-1]
    assert "'refettle.cli.help_pages'" in loaded
    for name in ("argparse", "numpy", "ruamel", "refettle.domain", "refettle.knowledge"):
        assert f"'{name}'" not in loaded


def test_the_plan_of_a_fake_stands_for_the_shape_of_the_real_one():
    assert piece_plan().surfaces == ("top", "leaf.left", "leaf.right")
