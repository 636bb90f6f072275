"""Forms in sizes that one can work out by hand, and what is said about silly sizes."""

from typing import Any

import pytest

from geometry_forms import USUAL_SIZES as SIZES
from refettle.domain.piece import ORIENTATIONS, RELIEFS
from refettle.geometry import FORMS, Built, Face, Problem, build_form, find_form, usual_zones
from refettle.geometry.cells import PartBody, box
from refettle.geometry.form import Skeleton, measured


def built(form: str, **params: Any) -> Built:  # noqa: ANN401 – lengths, counts and words alike
    answer = build_form(form, {**SIZES.get(form, {}), **params})
    assert isinstance(answer, Built), answer
    return answer


def faces(form: str, **params: Any) -> dict[str, Face]:  # noqa: ANN401
    return {face.name: face for face in built(form, **params).faces}


def problems(form: str, **params: Any) -> tuple[Problem, ...]:  # noqa: ANN401
    answer = build_form(form, {**SIZES.get(form, {}), **params})
    assert isinstance(answer, tuple)
    return answer


def test_a_standing_board_has_a_front_a_back_and_edges():
    found = faces("board")
    assert list(found) == ["front", "back", "edges"]
    assert found["front"].area_m2 == pytest.approx(0.4 * 0.8)
    assert found["edges"].area_m2 == pytest.approx(2 * (0.4 + 0.8) * 0.02)


@pytest.mark.parametrize(
    ("size", "names"),
    [
        ((400, 800, 20), ("top", "underside")),
        ((20, 400, 800), ("left", "right")),
        ((400, 20, 800), ("front", "back")),
    ],
)
@pytest.mark.parametrize("kind", ["flat", "frame-and-panel", "slatted", "carved"])
def test_a_board_lies_or_stands_as_its_least_size_says(
    size: tuple[int, int, int], names: tuple[str, str], kind: str
):
    whole = built("board", **dict(zip(("width", "depth", "height"), size, strict=True)), kind=kind)
    assert tuple(face.name for face in whole.faces)[:2] == names
    ends = [
        max(p[n] for b in whole.bodies for c in b.cells for p in c.vertices)
        - min(p[n] for b in whole.bodies for c in b.cells for p in c.vertices)
        for n in range(3)
    ]
    assert ends == pytest.approx(size)


def test_a_table_top_counts_its_edges_and_its_underside_loses_legs_and_aprons():
    found = faces("table", top=25, leg=60, overhang=40, apron=100, apron_thickness=20)
    assert found["top"].area_m2 == pytest.approx(1.4 * 0.8 + 2 * (1.4 + 0.8) * 0.025)
    # legs stand 40 mm in: aprons are 1400 - 2·100 = 1200 and 800 - 2·100 = 600 mm long, 20 mm thick
    covered = 4 * 0.06**2 + 2 * (1.2 + 0.6) * 0.02
    assert found["top/underside"].area_m2 == pytest.approx(1.4 * 0.8 - covered)
    # apron: outside and lower edge; its ends and upper edge are covered
    assert found["aprons/outside"].area_m2 == pytest.approx(2 * (1.2 + 0.6) * (0.1 + 0.02))
    assert found["aprons/inside"].area_m2 == pytest.approx(2 * (1.2 + 0.6) * 0.1)
    # a leg of 725 mm: four sides less two apron ends
    assert found["leg.1"].area_m2 == pytest.approx(4 * 0.06 * 0.725 - 2 * 0.1 * 0.02)
    assert found["feet"].area_m2 == pytest.approx(4 * 0.06**2)


def test_a_table_with_leaves_has_both_sides_of_each_and_a_gate_under_each():
    found = faces("table", leaves=2, leaf=500)
    assert {"leaf.left", "leaf.left/underside", "leaf.right", "gate.left", "gate.right"} <= set(found)
    assert found["leaf.left/underside"].area_m2 == pytest.approx(0.5 * 0.8)
    assert "gate.left" not in faces("table", leaves=1, gates="no")


def test_a_turned_leg_has_a_square_turnings_and_quirks():
    zones = faces("table", leg_shape="turned")["leg.1"].zones
    assert [zone.name for zone in zones] == ["flat", "edge", "recess"]
    assert faces("table", leg_shape="turned")["leg.1"].relief == "turned"


def test_chest_of_drawers_fronts_fill_the_openings_but_for_the_play():
    found = faces("chest_of_drawers", drawers=4, play=2, drawer_front=20)
    # case 1030 wide, opening 990; height 1000 - 60 - 20 - 20 = 900 less three rails of 18: 211.5 each
    wide, tall = 0.986, 0.2075
    assert found["drawer.1/front"].area_m2 == pytest.approx(wide * tall + 2 * (wide + tall) * 0.02)
    assert found["drawer.1/sides"].running
    assert found["runners"].running
    assert found["drawer.4/underside"].hidden
    assert "drawer.5/front" not in found


def test_the_inside_of_a_drawer_is_what_one_sees_from_above():
    found = faces("chest_of_drawers", drawers=4, play=2, drawer_front=20, drawer_side=12, drawer_bottom=6)
    # front 986 by 207.5 (see above); 962 between sides; from 30 to 500 - 6 - 10 = 484: 454 mm long;
    # sides end 10 mm below the front's upper edge, the bottom's underside lies 10 mm above the lower:
    # 187.5 mm, of which 181.5 mm stand over the bottom
    sides = 2 * (0.442 * 0.1815 + 0.012 * 0.454)
    bottom = 0.962 * 0.442
    rear = 0.962 * (0.1815 + 0.012)
    front = 0.986 * 0.1975 - 2 * 0.012 * 0.1875 - 0.962 * 0.006
    assert found["drawer.1/inside"].area_m2 == pytest.approx(sides + bottom + rear + front)


def test_short_drawers_come_first_and_share_one_row():
    found = faces("chest_of_drawers", drawers=3, short_drawers=2)
    fronts = [found[f"drawer.{n}/front"].area_m2 for n in range(1, 6)]
    assert fronts[0] == pytest.approx(fronts[1])
    assert fronts[0] < fronts[2] == pytest.approx(fronts[4])
    assert "dividers" in found


def test_the_top_counts_the_underside_of_its_overhang():
    found = faces("cupboard", overhang=10, top=20)
    rim = 2 * 0.010 * 0.56 + 0.98 * 0.010
    assert found["top"].area_m2 == pytest.approx(1.0 * 0.56 + 2 * (1.0 + 0.56) * 0.02 + rim)
    # between sides of 20 mm, in front of a back of 6 mm
    assert found["top/inside"].area_m2 == pytest.approx(0.94 * (0.56 - 0.010 - 0.006))


def test_one_flat_door_has_edges_that_count_to_its_outside():
    found = faces("cupboard", width=500, door=20, play=2)
    # opening 500 - 2·30 = 440 wide, 1900 - 60 - 20 - 20 = 1800 high
    assert found["door/inside"].area_m2 == pytest.approx(0.436 * 1.796)
    assert found["door/outside"].area_m2 == pytest.approx(0.436 * 1.796 + 2 * (0.436 + 1.796) * 0.02)
    assert found["door/outside"].both_sides_of == "door/inside"


def test_sliding_doors_are_wider_by_their_overlap():
    slide = faces("cupboard", door_motion="sliding", overlap=30, play=2)["door.left/inside"].area_m2
    # (940 - 2·2 + 30) / 2 = 483 mm wide, 1796 mm high
    assert slide == pytest.approx(0.483 * 1.796)


def test_a_panelled_door_splits_into_face_inner_edges_and_quirks():
    found = faces("cupboard", width=500, door_kind="frame-and-panel", stile=60, rail=60, panel=8, panels=1)
    door = found["door/outside"]
    # panel 436 - 120 = 316 by 1796 - 120 = 1676; it lies (20 - 8)/2 = 6 mm deep and the frame is cut at
    # half its thickness, 4 mm further in, where panel edges cover it
    around = 2 * (0.316 + 1.676)
    edge, recess = around * 0.006, 0.316 * 1.676 - 0.306 * 1.666
    whole = 0.436 * 1.796 + 2 * (0.436 + 1.796) * 0.02 + edge
    assert door.area_m2 == pytest.approx(whole)
    assert {zone.name: zone.share for zone in door.zones} == {
        "flat": pytest.approx((whole - edge - recess) / whole),
        "edge": pytest.approx(edge / whole),
        "recess": pytest.approx(recess / whole),
    }
    assert door.relief == found["door/inside"].relief == "panel"


def test_open_slats_show_through_and_slats_on_a_board_hide_a_recess():
    sizes = {"width": 500, "door_kind": "slatted", "slat_width": 30, "slat_gap": 10, "slat_thickness": 8}
    open_door, backed = faces("cupboard", **sizes), faces("cupboard", **sizes, slat_back="board")
    assert open_door["door/outside"].relief == open_door["door/inside"].relief == "slats open"
    assert backed["door/outside"].relief == "slats"
    assert backed["door/inside"].relief == "panel"
    share = {z.name: z.share for z in backed["door/outside"].zones}
    assert share["recess"] > {z.name: z.share for z in open_door["door/outside"].zones}["recess"]


def test_walls_of_wide_open_gaps_are_edges_that_a_finger_reaches():
    wide = faces("cupboard", width=500, door_kind="slatted", slat_gap=30)["door/outside"].zones
    assert [zone.name for zone in wide] == ["flat", "edge"]


def test_carved_work_has_stated_shares():
    settle = built("settle", back_kind="carved")
    back = next(face for face in settle.faces if face.name == "back/front")
    assert [(zone.name, zone.share) for zone in back.zones] == [
        ("flat", 0.40),
        ("edge", 0.25),
        ("recess", 0.35),
    ]
    said = next(assumed for assumed in settle.assumed if assumed.path == "surfaces/back/front/zones")
    assert said.value == "flat 40 %, edge 25 %, recess 35 %"
    assert "common practice" in said.why


def test_a_chest_has_an_inside_an_outside_and_a_lid():
    found = faces("chest", board=20, lid=20, overhang=12, bottom=12, plinth=60)
    assert found["lid/inside"].area_m2 == pytest.approx(1.15 * 0.48)
    # bottom between walls: 1150 - 24 - 40 by 480 - 12 - 40
    assert found["bottom/inside"].area_m2 == pytest.approx(1.086 * 0.428)
    # walls from 60 to 520 - 20 - 2: 438 mm high, the bottom covers 12 mm of them inside
    assert found["back/inside"].area_m2 == pytest.approx(1.086 * (0.438 - 0.012))
    assert found["back/inside"].orientation == "inside"
    assert found["back/inside"].both_sides_of == "back/outside"


def test_settle_ends_are_deep_below_the_arms_and_narrow_above():
    found = faces("settle", board=25, seat_height=450, arm_height=670, wing=125, seat=22, apron=0, back=22)
    inner = 0.5 * 0.67 + 0.125 * (1.3 - 0.67) - 0.5 * 0.022 - 0.022 * (1.3 - 0.45)
    assert found["side.left/inside"].area_m2 == pytest.approx(inner)
    assert found["back/outside"].hidden


def test_a_free_list_keeps_areas_order_and_reliefs():
    listed = build_form(
        "list", {"area_m2:seat": 0.17, "orientation:seat": "up", "area_m2:legs": 0.3, "relief:legs": "turned"}
    )
    assert isinstance(listed, Built)
    assert [(face.name, face.area_m2, face.orientation) for face in listed.faces] == [
        ("seat", 0.17, "up"),
        ("legs", 0.3, "upright"),
    ]
    assert listed.bodies == ()
    assert listed.faces[1].zones == usual_zones("turned").zones
    assert [assumed.path for assumed in listed.assumed] == ["surfaces/legs/zones"]


def test_a_free_list_says_all_that_is_wrong_at_once():
    answer = build_form(
        "list", {"area_m2:seat": -1.0, "relief:seat": "knobbly", "part:leg": "leg", "colour": "red"}
    )
    assert isinstance(answer, tuple)
    assert [problem.param for problem in answer] == ["area_m2:seat", "relief:seat", "part:leg", "colour"]
    assert answer[0].what == "the area of seat is -1.0, not between 0 and 100 m²"
    assert answer[2].what == "leg has no area"


@pytest.mark.parametrize("form", SIZES)
def test_width_depth_and_height_are_enough_and_the_rest_is_told(form: str):
    whole = built(form)
    named = {parameter.name for parameter in FORMS[form].parameters}
    told = {assumed.path.removeprefix("form/") for assumed in whole.assumed}
    assert told <= named
    silent = named - told - {"width", "depth", "height"}
    assert all(next(p for p in FORMS[form].parameters if p.name == name).only_with for name in silent)
    assert all(assumed.value and assumed.why for assumed in whole.assumed)


def test_lengths_assumed_are_told_in_millimetres_with_a_reason():
    said = {assumed.path: (assumed.value, assumed.why) for assumed in built("table").assumed}
    assert said["form/top"] == ("25 mm", "common practice")
    assert said["form/leg_shape"] == ("square", "square legs unless said")
    assert said["form/leaves"] == ("0", "none unless said")
    assert "form/foot" not in said


@pytest.mark.parametrize("form", SIZES)
def test_faces_speak_the_words_of_the_domain_and_know_their_other_side(form: str):
    found = faces(form)
    for face in found.values():
        assert face.relief in RELIEFS
        assert face.orientation in ORIENTATIONS
        if face.both_sides_of is not None:
            assert face.both_sides_of in found


def test_usual_shares_of_panels_slats_and_turnings_are_what_the_forms_measure():
    door = {"width": 450, "depth": 20, "height": 700}
    rows = (
        ("panel", faces("board", **door, kind="frame-and-panel")["front"].zones),
        ("slats open", faces("board", **door, kind="slatted")["front"].zones),
        ("slats", faces("board", **door, kind="slatted", slat_back="board")["front"].zones),
    )
    for relief, zones in rows:
        assert {z.name: round(z.share, 2) for z in zones} == {
            z.name: z.share for z in usual_zones(relief).zones
        }
    leg = {zone.name: zone.share for zone in faces("table", leg_shape="turned")["leg.1"].zones}
    round_share = leg["edge"] / (leg["edge"] + leg["recess"])
    assert usual_zones("turned").zones[0].share == round(round_share, 2)


@pytest.mark.parametrize("relief", RELIEFS)
def test_usual_shares_of_every_relief_add_up_to_one(relief: str):
    assert sum(zone.share for zone in usual_zones(relief).zones) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("word", "form"),
    [
        ("blanket chest", "chest"),
        ("Chest-of-Drawers", "chest_of_drawers"),
        ("armoire", "wardrobe"),
        ("nonsense", None),
    ],
)
def test_a_form_is_found_by_any_of_its_words(word: str, form: str | None):
    found = find_form(word)
    assert (found.id if found else None) == form


def test_an_unknown_form_is_answered_with_the_nearest():
    assert problems("cubbord") == (
        Problem(param="form", what='"cubbord" is not a known form', do='write "cupboard"'),
    )


def test_a_missing_size_and_an_unknown_word_are_both_told():
    answer = build_form("table", {"width": 1400, "depth": 800, "leg_shap": "square"})
    assert answer == (
        Problem(param="leg_shap", what="a table has no leg_shap", do="write leg_shape"),
        Problem(param="height", what="height is missing", do="give the height over all"),
    )


def test_sizes_out_of_range_are_told_with_the_range():
    assert problems("chest", width=20) == (
        Problem(
            param="width",
            what="width is 20 mm, outside 250 mm to 2400 mm",
            do="check the width over all, left to right and its unit",
        ),
    )


def test_a_word_that_is_no_choice_is_answered_with_the_nearest():
    assert problems("table", leg_shape="taperd")[0].do == 'write "tapered"'
    assert problems("table", leg_shape="xyz")[0].do == "choose square, tapered or turned"


def test_a_count_must_be_whole_and_a_length_a_number():
    assert problems("cupboard", doors=1.5)[0].what == "doors is 1.5, not a whole number"
    assert problems("cupboard", door="thick")[0].what == "door is thick, not a length"
    assert problems("cupboard", door=float("nan"))[0].do == "give a length"


def test_an_entry_without_meaning_is_not_skipped_in_silence():
    assert problems("cupboard", slat_gap=10) == (
        Problem(
            param="slat_gap",
            what="slat_gap has no meaning where door_kind is flat",
            do="take slat_gap out, or change door_kind to slatted, louvred or lattice",
        ),
    )


@pytest.mark.parametrize(
    ("form", "params", "param", "what"),
    [
        ("board", {"depth": 150}, "depth", "the least size, the depth, is 150 mm: too thick for a board"),
        (
            "board",
            {"kind": "frame-and-panel", "stile": 200},
            "stile",
            "stiles of 200 mm leave 0 mm between them in a board",
        ),
        (
            "chest_of_drawers",
            {"height": 400, "drawers": 8},
            "drawers",
            "8 rows of drawers leave 21.8 mm for each",
        ),
        (
            "chest_of_drawers",
            {"width": 300, "short_drawers": 4},
            "short_drawers",
            "4 short drawers leave 45 mm for each",
        ),
        (
            "chest_of_drawers",
            {"width": 250, "board": 60, "overhang": 60},
            "width",
            "two sides and the overhang leave 10 mm of a width of 250 mm",
        ),
        (
            "table",
            {"apron": 350, "height": 400},
            "apron",
            "an apron of 350 mm leaves nothing of the legs below it",
        ),
        (
            "table",
            {"leg": 30, "apron_thickness": 40},
            "apron_thickness",
            "an apron of 40 mm is thicker than a leg of 30 mm",
        ),
        (
            "table",
            {"leg_shape": "tapered", "leg": 40, "foot": 60},
            "foot",
            "a foot of 60 mm is thicker than the leg of 40 mm",
        ),
        ("table", {"leaves": 1, "leaf": 900}, "leaf", "a leaf of 900 mm reaches the floor when it hangs"),
        (
            "table",
            {"leaves": 1, "leaf": 80, "gates": "yes"},
            "gates",
            "there is no room for gate legs under the leaves",
        ),
        ("cupboard", {"doors": 1, "door_motion": "sliding"}, "doors", "one sliding door can open nothing"),
        ("cupboard", {"width": 300, "doors": 4}, "doors", "4 doors are 57.5 mm wide each"),
        (
            "cupboard",
            {"height": 400, "shelves": 9},
            "shelves",
            "9 shelves leave less than 40 mm between them",
        ),
        (
            "cupboard",
            {"depth": 150, "door": 60, "door_motion": "sliding"},
            "door",
            "doors of 60 mm leave no room for shelves behind them",
        ),
        (
            "cupboard",
            {"door_kind": "slatted", "slat_thickness": 30},
            "slat_thickness",
            "slats and what is behind them of 30 mm do not fit into a frame of 20 mm",
        ),
        (
            "chest",
            {"depth": 200, "board": 60, "overhang": 20},
            "depth",
            "front, back and the overhang leave 60 mm of a depth of 200 mm",
        ),
        ("settle", {"seat_height": 700, "height": 750}, "seat_height", "a seat at 700 mm leaves no back"),
        ("settle", {"apron": 500}, "apron", "an apron of 500 mm reaches through the floor"),
        (
            "settle",
            {"arm_height": 300},
            "arm_height",
            "ends of 300 mm in front lie below the seat or above the back",
        ),
    ],
)
def test_sizes_that_do_not_go_together_are_told(form: str, params: dict[str, Any], param: str, what: str):
    found = {problem.param: problem for problem in problems(form, **params)}
    assert found[param].what == what
    assert found[param].do


def test_all_problems_come_at_once():
    found = problems("cupboard", doors=9, door_kind="flatt", shelves=30, colour=3)
    assert {problem.param for problem in found} == {"doors", "door_kind", "shelves", "colour"}


def test_a_part_with_an_undescribed_surface_is_a_mistake_of_the_form():
    body = PartBody(name="board", cells=(box((0, 1), (0, 1), (0, 1), "bare"),))
    with pytest.raises(ValueError, match="bare"):
        measured((body,), (Skeleton(name="top", part="top"),))
