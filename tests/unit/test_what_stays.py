"""What of an old finish stays: oil under fresh oil, insides behind doors, foil that is only dulled."""

import pytest

from plan_pieces import facts
from refettle.cli.page import Page
from refettle.cli.plan_text import plan_text
from refettle.domain.piece import Piece, Surface
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import read_piece
from refettle.services.plan import plan_piece

CABINET = """piece: Cabinet
form: {form}
width: 90 cm
depth: 40 cm
height: 80 cm
wood: oak
era: 1950s
old finish: shellac
look: natural satin
invented: yes
"""


def piece(text: str) -> Piece:
    made, findings = read_piece(text, "piece.yaml", facts())
    assert made is not None, findings
    return made


def looks(text: str) -> dict[str, str]:
    return {s.name: s.look.kind if s.look is not None else "any" for s in piece(text).surfaces}


def board(*, old: str, look: str, wood: str = "teak", more: str = "") -> PiecePlan:
    text = (
        f"piece: board\nform: list\nwood: {wood}\nera: 1960s\nold finish: {old}\nlook: {look}\n"
        f"surfaces: {{top: {{area: 0.8 m2}}}}\n{more}"
    )
    return plan_piece(piece(text), Workshop(), facts(), brief=True)


def steps(group: GroupPlan) -> tuple[Step, ...]:
    assert group.route is not None
    return tuple(cost.step for cost in group.route.steps)


def test_an_oiled_face_is_cleaned_scuffed_and_oiled_again_and_not_stripped() -> None:
    verbs = [step.verb for step in steps(board(old="oil-varnish blend", look="oiled").groups[0])]
    assert not {"strip", "sand"} & set(verbs)
    assert verbs.index("clean") < verbs.index("scuff") < verbs.index("topcoat")


def test_a_varnished_face_is_laid_bare_before_oil() -> None:
    plan = board(old="alkyd varnish", look="oiled")
    assert any(step.verb == "strip" or "to bare" in step.how for step in steps(plan.groups[0]))


def test_oil_is_never_laid_over_a_film_that_keeps_it_out_of_the_wood() -> None:
    plan = board(old="shellac", look="stained dark brown satin", wood="oak", more="value: good\n")
    route = steps(plan.groups[0])
    shut = not any(step.verb == "strip" or "to bare" in step.how for step in route)
    oils = [s for s in route if s.verb == "topcoat" and facts().film(s.what).needs_bare]
    assert not (shut and oils)


def test_behind_doors_the_old_finish_stays_unless_it_is_said() -> None:
    shut = looks(CABINET.format(form="wardrobe"))
    assert shut["side.left/inside"] == "keep"
    assert shut["door.left/inside"] == "natural"
    assert shut["side.left/outside"] == "natural"
    said = looks(CABINET.format(form="wardrobe") + "surfaces: {inside: {look: opaque white}}\n")
    assert said["side.left/inside"] == "opaque"


@pytest.mark.parametrize(
    ("form", "more"), [("bookcase", ""), ("wardrobe", "doors: {kind: glazed}\n")], ids=["no doors", "glass"]
)
def test_an_inside_that_is_seen_gets_the_look_of_the_piece(form: str, more: str) -> None:
    text = CABINET.format(form=form) + ("door kind: glazed\n" if more else "")
    assert looks(text)["side.left/inside"] == "natural"


def test_an_inside_that_smells_is_sealed() -> None:
    text = CABINET.format(form="wardrobe") + "old stain: [smoke smell]\n"
    assert looks(text)["side.left/inside"] == "odour-free"


def test_outdoors_every_face_meets_the_weather() -> None:
    bench = CABINET.format(form="bench").replace("natural satin", "oiled") + "use: outdoors\n"
    faces: dict[str, Surface] = {s.name: s for s in piece(bench).surfaces}
    assert {s.use for s in faces.values()} == {"outdoors"}
    assert faces["seat/underside"].look == faces["seat"].look


def test_foil_is_dulled_and_not_sanded() -> None:
    plan = board(old="foil", look="opaque white", wood="foil", more="build: laminate on particleboard\n")
    verbs = [step.verb for step in steps(plan.groups[0])]
    assert "sand" not in verbs
    assert "scuff" in verbs


def test_a_way_that_was_told_is_not_told_again_unless_all_is_asked_for() -> None:
    plan = plan_piece(piece(CABINET.format(form="bookcase")), Workshop(), facts())
    ways = {(g.look, steps(g)) for g in plan.groups if g.route is not None and len(steps(g)) >= 3}
    told = [g for g in plan.groups if g.route is not None and len(steps(g)) >= 3]
    short = plan_text(plan, facts(), Page(), short=False, everything=False)
    full = plan_text(plan, facts(), Page(), short=False, everything=True)
    assert len(told) > len(ways)
    assert short.count("What to do") == len(ways)
    assert short.count("for the same") == len(told) - len(ways)
    assert full.count("What to do") == len(told)
