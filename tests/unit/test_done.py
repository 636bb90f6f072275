"""What the person has done is where a plan begins."""

from plan_pieces import facts
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import read_piece
from refettle.services.plan import plan_piece

TABLE = """piece: table
form: table
width: 60 cm
depth: 40 cm
height: 55 cm
wood: oak
old finish: old varnish
look: natural satin
invented: yes
"""
STRIPPED = "done:\n  - strip: strong solvent\n  - sand: [P120, P180]\n"


def begun(text: str) -> tuple[str, list[str]]:
    """Return what the top is taken to be, and the verbs of its plan."""
    piece, findings = read_piece(text, "table.yaml", facts())
    assert piece is not None, findings
    plan = plan_piece(piece, Workshop(), facts(), brief=True)
    top = next(group for group in plan.groups if "top" in group.members)
    assert top.route is not None
    return top.worlds[0][0], [cost.step.verb for cost in top.route.steps]


def test_a_finish_that_was_stripped_is_not_kept_nor_stripped_again() -> None:
    before, _ = begun(TABLE)
    after, verbs = begun(TABLE + STRIPPED)
    assert before != "bare wood"
    assert after == "bare wood"
    assert "strip" not in verbs
    assert "scuff" not in verbs[: verbs.index("topcoat")]


def test_what_was_done_to_one_surface_leaves_the_others_as_they_were() -> None:
    legs_only = "done:\n  leg.1:\n    - strip: strong solvent\n"
    after, _ = begun(TABLE + legs_only)
    assert after == begun(TABLE)[0]


def test_remover_that_was_not_washed_off_is_washed_off_first() -> None:
    _, verbs = begun(TABLE + STRIPPED)
    assert verbs[0] == "clean"
