"""Every look that can be asked for, on wood that can have it and on wood that cannot."""

import pytest

from plan_pieces import facts
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import read_piece
from refettle.services.plan import plan_piece


def planned(look: str, *, wood: str = "oak", more: str = "") -> PiecePlan:
    text = (
        f"piece: board\nform: list\nwood: {wood}\nera: 1950s\nold finish: alkyd varnish\nlook: {look}\n"
        f"surfaces: {{top: {{area: 0.8 m2}}}}\n{more}"
    )
    piece, findings = read_piece(text, "board.yaml", facts())
    assert piece is not None, findings
    return plan_piece(piece, Workshop(), facts(), brief=True)


def steps(plan: PiecePlan) -> tuple[Step, ...]:
    group: GroupPlan = plan.groups[0]
    assert group.route is not None, group.impossible
    return tuple(cost.step for cost in group.route.steps)


def kinds(plan: PiecePlan) -> list[str]:
    return [facts().film(s.what).colour_kind for s in steps(plan) if s.is_coat]


def test_liming_opens_the_pores_and_fills_them_before_anything_clear() -> None:
    plan = planned("limed matt")
    verbs = [s.verb for s in steps(plan)]
    assert [s for s in steps(plan) if "open pores" in s.how]
    assert verbs.index("fill_pores") < verbs.index("topcoat")


def test_wood_without_open_pores_is_not_limed_and_whitewash_is_offered() -> None:
    group = planned("limed matt", wood="beech").groups[0]
    assert group.route is None
    assert group.impossible is not None
    assert "no open pores" in " ".join(group.impossible.clash)
    assert group.impossible.nearest[0][0] == "whitewashed"


def test_whitewash_lies_on_bare_wood_under_coats_that_do_not_yellow() -> None:
    plan = planned("whitewashed matt", wood="pine")
    assert "white" in kinds(plan)
    last = [facts().film(s.what) for s in steps(plan) if s.is_coat][-1]
    assert last.ambers < 0.3
    assert "white-yellows" in {caution.id for caution in plan.cautions}


def test_bleached_wood_is_sanded_before_and_only_smoothed_after() -> None:
    verbs = [s.verb for s in steps(planned("bleached satin"))]
    assert "sand" not in verbs[verbs.index("bleach") :]
    assert verbs.index("neutralise") > verbs.index("bleach")


def test_a_dyed_look_takes_dye_and_no_pigment() -> None:
    colours = set(kinds(planned("dyed brown satin"))) - {"none"}
    assert colours == {"dye"}


def test_a_distressed_look_rubs_through_the_edges_after_the_paint() -> None:
    done = steps(planned("distressed white matt"))
    last_paint = max(i for i, s in enumerate(done) if s.verb == "paint")
    assert any("edges" in s.how for s in done[last_paint:])


def test_edges_over_old_paint_that_may_hold_lead_are_rubbed_wet() -> None:
    text = (
        "piece: chest\nform: list\nwood: pine\nera: 1930s\nold finish: alkyd enamel\nlook: distressed white matt\n"
        "surfaces: {top: {area: 0.8 m2}}\n"
    )
    piece, _ = read_piece(text, "chest.yaml", facts())
    assert piece is not None
    done = steps(plan_piece(piece, Workshop(), facts(), brief=True))
    assert all("wet" in s.how for s in done if "edges" in s.how)


@pytest.mark.parametrize("words", ["touched up", "cleaned only"])
def test_touching_up_and_cleaning_keep_the_old_finish(words: str) -> None:
    plan = planned(words)
    assert plan.groups[0].look.kind == "keep"
    assert not [s for s in steps(plan) if s.verb == "strip"]


def test_outdoors_gets_what_is_made_for_it() -> None:
    plan = planned("oiled", wood="teak", more="use: outdoors\n")
    coats = [facts().film(s.what) for s in steps(plan) if s.is_coat]
    assert coats[-1].resist_weather > 0.5
    assert "upkeep" in {caution.id for caution in plan.cautions}


def test_what_is_made_for_outdoors_is_not_offered_indoors() -> None:
    coats = [facts().film(s.what) for s in steps(planned("oiled", wood="teak")) if s.is_coat]
    assert all(not coat.for_use for coat in coats)


def test_a_board_to_cut_on_gets_no_film() -> None:
    plan = planned("oiled", wood="beech", more="use: food\n")
    coats = [facts().film(s.what) for s in steps(plan) if s.is_coat]
    assert all(coat.dry_um <= 3 for coat in coats)
    assert "food" in {caution.id for caution in plan.cautions}


def test_a_film_gone_soft_is_taken_off_before_a_new_one() -> None:
    more = "soundness: soft\ncontamination: [skin oil]\n"
    verbs = [s.verb for s in steps(planned("natural satin", more=more))]
    assert "strip" in verbs or any("to bare" in s.how for s in steps(planned("natural satin", more=more)))
    assert verbs[0] == "clean"


def test_loose_foil_is_pulled_off_before_any_coat() -> None:
    text = (
        "piece: door\nform: list\nwood: fibreboard\nbuild: fibreboard\nera: 2005\nold finish: foil\n"
        "look: opaque grey satin\ndamage: [loose foil]\nsurfaces: {front: {area: 0.4 m2}}\n"
    )
    piece, findings = read_piece(text, "door.yaml", facts())
    assert piece is not None, findings
    done = steps(plan_piece(piece, Workshop(), facts(), brief=True))
    off = next(i for i, s in enumerate(done) if s.what == "remove-foil")
    assert off < next(i for i, s in enumerate(done) if s.is_coat)
    first = next(s for s in done[off:] if s.is_coat)
    assert facts().film(first.what).water_share < 0.2, "raw fibreboard swells under water"


def test_a_face_out_of_sight_without_a_wood_face_is_left_as_it_is() -> None:
    text = (
        "piece: low table\nform: coffee table\nwidth: 110 cm\ndepth: 60 cm\nheight: 42 cm\nwood: foil\n"
        "build: laminate on particleboard\nera: 2005\nold finish: foil\nlook: opaque dark blue matt\n"
    )
    piece, findings = read_piece(text, "table.yaml", facts())
    assert piece is not None, findings
    hidden = [
        group
        for group in plan_piece(piece, Workshop(), facts(), brief=True).groups
        if group.look.kind == "bare"
    ]
    assert hidden
    assert all(group.impossible is None for group in hidden)


def test_an_antiqued_look_glazes_fresh_paint_and_shuts_the_glaze_under_clear() -> None:
    coats = [s for s in steps(planned("antiqued cream satin", wood="pine")) if s.is_coat]
    verbs = [s.verb for s in coats]
    assert verbs.index("paint") < verbs.index("glaze") < verbs.index("topcoat")
    assert "glaze" in facts().film(coats[verbs.index("glaze")].what).role
    assert verbs[-1] == "topcoat"


def test_where_the_old_film_stays_gouges_are_filled_with_a_stick_of_its_colour() -> None:
    kept = steps(planned("keep", more="damage: [gouges]\n"))
    assert [s.what for s in kept if s.verb == "repair"] == ["fill-stick"]
    bare = steps(planned("stained dark brown satin", more="damage: [gouges]\nsoundness: flaking\n"))
    assert "fill-stick" not in {s.what for s in bare}
