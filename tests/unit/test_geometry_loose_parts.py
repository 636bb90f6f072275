"""Frames, doors and panels on their own, in sizes that one can work out by hand."""

from itertools import pairwise
from math import asin, hypot
from typing import Any

import pytest

from geometry_forms import USUAL_SIZES
from refettle.geometry import Built, Face, Problem, build_form
from refettle.geometry.forms.strips import serpentine


def built(form: str, **params: Any) -> Built:  # noqa: ANN401 – lengths, counts and words alike
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, Built), answer
    return answer


def faces(form: str, **params: Any) -> dict[str, Face]:  # noqa: ANN401
    return {face.name: face for face in built(form, **params).faces}


def problems(form: str, **params: Any) -> dict[str, Problem]:  # noqa: ANN401
    answer = build_form(form, {**USUAL_SIZES[form], **params})
    assert isinstance(answer, tuple)
    return {problem.param: problem for problem in answer}


def test_a_frame_is_mitred_and_its_glass_is_out():
    found = faces("frame", moulding=40)
    opening = 0.42 * 0.62
    assert found["front"].area_m2 == pytest.approx(0.5 * 0.7 - opening)
    assert found["back"].area_m2 == pytest.approx(0.5 * 0.7 - opening)
    assert found["outer edges"].area_m2 == pytest.approx(2 * (0.5 + 0.7) * 0.02)
    assert found["inner edges"].area_m2 == pytest.approx(2 * (0.42 + 0.62) * 0.02)
    assert [body.name for body in built("frame").taken_out] == ["glass"]
    assert built("frame", pane="none").taken_out == ()


def test_a_bevelled_frame_slopes_towards_its_opening():
    found = faces("frame", moulding=40, profile="bevelled")
    # flat for 12 mm, then 28 mm sloping from 20 to 9 mm; a strip's length is that of its middle
    flat = 2 * 0.012 * ((0.5 - 0.012) + (0.7 - 0.012))
    slope = 2 * hypot(0.028, 0.011) * ((0.5 - 0.024 - 0.028) + (0.7 - 0.024 - 0.028))
    assert found["front"].area_m2 == pytest.approx(flat + slope)
    assert found["inner edges"].area_m2 == pytest.approx(2 * (0.42 + 0.62) * 0.009)


def test_a_moulded_frame_has_rounds_and_hollows():
    front = faces("frame", profile="moulded")["front"]
    assert front.relief == "moulded"
    assert [zone.name for zone in front.zones] == ["edge", "recess"]
    assert problems("frame", moulding=245)["moulding"].what == ("members of 245 mm leave an opening of 10 mm")


def test_edges_of_a_door_count_to_its_front():
    found = faces("door")
    assert found["back"].area_m2 == pytest.approx(0.45 * 0.7)
    assert found["front"].area_m2 == pytest.approx(0.45 * 0.7 + 2 * (0.45 + 0.7) * 0.02)


def test_glass_in_a_door_leaves_the_walls_of_its_opening_bare():
    sizes = {"kind": "frame-and-panel", "panels": 2, "stile": 60, "rail": 60, "panel": 8}
    closed, open_above = built("door", **sizes), built("door", **sizes, glass_rows=1)
    assert [body.name for body in open_above.taken_out] == ["door 2.1 glass"]
    # opening 450 - 120 = 330 by (700 - 180)/2 = 260: two faces of the panel go, 8 mm of wall come
    change = 2 * (0.33 + 0.26) * 0.008 - 2 * 0.33 * 0.26
    areas = [sum(face.area_m2 for face in one.faces) for one in (closed, open_above)]
    assert areas[1] - areas[0] == pytest.approx(change)
    assert problems("door", **sizes, glass_rows=3)["glass_rows"].what == (
        "3 rows with glass are more than 2 rows of panels"
    )


def test_a_fielded_panel_has_a_bevel_round_its_field():
    found = faces("panel", kind="fielded", bevel=40, edge=6)
    # field 270 by 520; the bevel falls 6 mm over 40 mm
    field, slant = 0.27 * 0.52, hypot(0.04, 0.006)
    bevel = slant * ((0.35 + 0.27) + (0.6 + 0.52))
    assert found["front"].area_m2 == pytest.approx(field + bevel)
    assert found["edges"].area_m2 == pytest.approx(2 * (0.35 + 0.6) * 0.006)
    assert {zone.name: zone.share for zone in found["front"].zones} == {
        "flat": pytest.approx(field / (field + bevel)),
        "edge": pytest.approx(bevel / (field + bevel)),
    }


def test_a_panel_says_what_does_not_fit():
    assert problems("panel", kind="fielded", edge=12)["edge"].what == (
        "an edge of 12 mm is as thick as the panel of 12 mm"
    )
    assert problems("panel", kind="fielded", bevel=172)["bevel"].what == (
        "a bevel of 172 mm leaves a field of 6 mm"
    )


def test_slats_of_a_louvred_door_are_tilted_by_half_a_right_angle():
    sizes = {"kind": "louvred", "panels": 1, "stile": 60, "rail": 60, "slat_width": 16, "slat_thickness": 5}
    door = built("door", **sizes, slat_gap=10)
    # a slat is (16 + 5)/√2 = 14.85 mm high, the next begins 5·√2 + 10 = 17.07 mm higher:
    # the opening of 700 - 120 = 580 takes 34
    slats = [body for body in door.bodies if " slat " in body.name]
    assert len(slats) == int((580 - 21 / 2**0.5 - 1) / (5 * 2**0.5 + 10)) + 1 == 34
    # both sides together: the frame with its walls, and slats 330 mm long whose ends lie against the
    # stiles; each end covers 16 by 5 mm of a stile too
    frame = 2 * (0.45 * 0.7 - 0.33 * 0.58) + 2 * (0.45 + 0.7) * 0.02 + 2 * (0.33 + 0.58) * 0.02
    whole = frame + 34 * (0.33 * 2 * (0.016 + 0.005) - 2 * 0.016 * 0.005)
    assert sum(face.area_m2 for face in door.faces) == pytest.approx(whole, rel=1e-6)
    found = {face.name: face for face in door.faces}
    assert found["front"].relief == found["back"].relief == "slats open"
    assert "recess" in {zone.name for zone in found["front"].zones}


def test_slats_too_wide_for_the_frame_are_told():
    assert problems("door", kind="louvred", slat_width=40)["slat_width"].what == (
        "tilted slats of 31.8198 mm do not fit into a frame of 20 mm"
    )


def arc_mm(chord_mm: float, rise_mm: float) -> float:
    """Length of an arc from its chord and its rise."""
    radius = (chord_mm**2 / 4 + rise_mm**2) / (2 * rise_mm)
    return 2 * radius * asin(chord_mm / (2 * radius))


def test_a_bowed_front_has_the_area_of_its_arc():
    found = faces("panel", width=900, depth=60, height=200, kind="bowed", bow=40)
    # radius (450² + 40²)/80 = 2551.25 mm
    arc = arc_mm(900, 40)
    assert arc == pytest.approx(904.73, abs=0.01)
    assert found["front"].area_m2 == pytest.approx(arc * 200e-6)
    assert found["back"].area_m2 == pytest.approx(arc * 200e-6)
    assert found["front"].relief == "flat"


def test_beads_meet_in_quirks_and_flutes_leave_fillets():
    beaded = faces("panel", kind="beaded", reed=10)["front"]
    # 35 beads of 10 mm that stand 2.5 mm out
    assert beaded.area_m2 == pytest.approx(35 * arc_mm(10, 2.5) * 600e-6)
    assert [zone.name for zone in beaded.zones] == ["edge", "recess"]
    fluted = faces("panel", kind="fluted", reed=25)["front"]
    # 14 flutes of 25 mm: hollow 2/3 of it and a quarter of that deep, the rest plane
    hollow = arc_mm(25 * 2 / 3, 25 / 6) * 600e-6
    assert fluted.area_m2 == pytest.approx(14 * (hollow + 25 / 3 * 600e-6))
    assert {zone.name: zone.share for zone in fluted.zones}["recess"] == pytest.approx(
        14 * hollow / fluted.area_m2
    )
    assert fluted.relief == "moulded"


def test_curves_that_leave_no_wood_are_told():
    assert problems("panel", kind="bowed", bow=12)["bow"].what == (
        "a bow of 12 mm leaves no wood in a depth of 12 mm over all, or is too round"
    )
    assert problems("panel", kind="beaded", reed=100)["reed"].what == (
        "flutes or beads go 21.9 mm deep into 12 mm"
    )


def test_a_serpentine_front_has_the_area_of_its_three_arcs_and_no_ridge():
    found = faces("panel", width=900, depth=60, height=200, kind="serpentine", bow=45)
    # the middle 450 mm swell by 30 mm, a quarter of 225 mm on either side is hollow by 15 mm
    arcs = arc_mm(450, 30) + 2 * arc_mm(225, 15)
    assert found["front"].area_m2 == pytest.approx(arcs * 200e-6)
    facets = serpentine(900.0, 45.0)
    assert min(y for facet in facets for y in facet.y) == pytest.approx(0.0)
    assert max(y for facet in facets for y in facet.y) == pytest.approx(45.0)
    slopes = [(facet.y[1] - facet.y[0]) / (facet.x[1] - facet.x[0]) for facet in facets]
    assert max(abs(b - a) for a, b in pairwise(slopes)) < 2.0 * max(abs(slope) for slope in slopes) / 10.0


def test_tambour_slats_are_half_rounds_side_by_side():
    tambour = faces("panel", kind="tambour", reed=10)["front"]
    assert tambour.area_m2 == pytest.approx(35 * arc_mm(10, 2.5) * 600e-6)
    assert tambour.relief == "moulded"


@pytest.mark.parametrize("kind", ["glazed", "caned"])
def test_glass_and_cane_count_to_no_surface(kind: str):
    door = built("door", kind=kind, panels=1, stile=60, rail=60)
    whole = 2 * (0.45 * 0.7 - 0.33 * 0.58) + 2 * (0.45 + 0.7) * 0.02 + 2 * (0.33 + 0.58) * 0.02
    assert sum(face.area_m2 for face in door.faces) == pytest.approx(whole)


def test_a_lattice_has_the_faces_of_its_slats_and_the_walls_of_its_holes():
    sizes = {"kind": "lattice", "panels": 1, "stile": 60, "rail": 60, "slat_width": 30, "slat_thickness": 8}
    door = built("door", **sizes, slat_gap=30)
    # an opening of 330 by 580 mm: 5 upright and 9 level slats leave 6 by 10 holes
    holes = [(330 - 5 * 30) / 6, (580 - 9 * 30) / 10]
    faces_m2 = 2 * (0.33 * 0.58 - 60 * holes[0] * holes[1] * 1e-6)
    # walls that belong to slats, and those of the frame where no slat end stands
    inner = 60 * 2 * (holes[0] + holes[1]) * 8e-6
    rest = 2 * (0.33 + 0.58) * (0.02 - 0.008)
    frame = 2 * (0.45 * 0.7 - 0.33 * 0.58) + 2 * (0.45 + 0.7) * 0.02
    found = {face.name: face for face in door.faces}
    assert sum(face.area_m2 for face in found.values()) == pytest.approx(frame + faces_m2 + inner + rest)
    assert found["front"].relief == "slats open"
    assert "recess" not in {zone.name for zone in found["front"].zones}
    narrow = {face.name: face for face in built("door", **sizes, slat_gap=10).faces}
    assert "recess" in {zone.name for zone in narrow["front"].zones}


def test_a_lattice_too_wide_for_its_opening_is_told():
    said = problems("door", kind="lattice", stile=60, rail=60, slat_width=199, panels=3)["slat_width"]
    assert said.what == "slats of 199 mm do not fit into an opening of 153 mm"
