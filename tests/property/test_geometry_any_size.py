"""What holds for every form in every size."""

from collections.abc import Mapping

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry_forms import SHAPED, sizes
from refettle.domain.piece import ORIENTATIONS, RELIEFS
from refettle.geometry import FORMS, Built, build_form
from refettle.geometry.measure import area_mm2, contacts, exposed_areas, exposed_zones, volume_mm3
from refettle.geometry.parameters import Value

QUICK = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))


def sensible(form: str) -> st.SearchStrategy[dict[str, Value]]:
    """Only the three sizes, anywhere in the allowed range."""
    three = FORMS[form].parameters[:3]
    return st.fixed_dictionaries({p.name: st.floats(p.low, p.high).map(lambda v: round(v, 1)) for p in three})


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@QUICK
def test_faces_add_up_to_all_parts_less_what_touches_twice(form: str, data: st.DataObject):
    built = build_form(form, data.draw(sizes(form)))
    if isinstance(built, Built):
        touching = sum(contact.area_mm2 for contact in contacts(built.bodies))
        whole = sum(area_mm2(body) for body in built.bodies)
        shown = sum(face.area_m2 for face in built.faces) * 1e6
        assert shown == pytest.approx(whole - 2 * touching, rel=1e-7)


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@QUICK
def test_the_order_of_parts_does_not_matter(form: str, data: st.DataObject):
    built = build_form(form, data.draw(sizes(form)))
    if isinstance(built, Built):
        mixed = data.draw(st.permutations(built.bodies))
        assert exposed_areas(mixed) == pytest.approx(exposed_areas(built.bodies), rel=1e-12)


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@QUICK
def test_faces_are_well_formed(form: str, data: st.DataObject):
    built = build_form(form, data.draw(sizes(form)))
    if isinstance(built, Built):
        names = [face.name for face in built.faces]
        assert len(names) == len(set(names))
        assert set(names) == set(exposed_zones(built.bodies))
        for face in built.faces:
            assert face.area_m2 > 0.0
            assert face.relief in RELIEFS
            assert face.orientation in ORIENTATIONS
            assert 1 <= len(face.zones) <= 3
            assert sum(zone.share for zone in face.zones) == pytest.approx(1.0, abs=1e-12)
            assert face.both_sides_of is None or face.both_sides_of in names
        assert len({body.name for body in built.bodies}) == len(built.bodies)
        assert all(volume_mm3(body) > 0.0 for body in built.bodies)


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@QUICK
def test_parts_stay_inside_the_sizes_given(form: str, data: st.DataObject):
    params = data.draw(sizes(form))
    built = build_form(form, params)
    if isinstance(built, Built) and not params.get("leaves"):
        points = [p for body in built.bodies for cell in body.cells for p in cell.vertices]
        for axis, name in enumerate(("width", "depth", "height")):
            places = [point[axis] for point in points]
            assert min(places) == pytest.approx(0.0, abs=1e-5)
            assert max(places) == pytest.approx(float(params[name]), abs=1e-5)


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@settings(QUICK, max_examples=60)
def test_three_sizes_give_a_piece_or_blame_one_of_the_three(form: str, data: st.DataObject):
    answer = build_form(form, data.draw(sensible(form)))
    if not isinstance(answer, Built):
        assert {problem.param for problem in answer} <= {"width", "depth", "height"}


@pytest.mark.parametrize("form", SHAPED)
@given(data=st.data())
@QUICK
def test_anything_given_is_built_or_answered(form: str, data: st.DataObject):
    names = [parameter.name for parameter in FORMS[form].parameters]
    junk: Mapping[str, Value] = data.draw(
        st.dictionaries(
            st.sampled_from([*names, "nonsense"]),
            st.floats() | st.integers(-3, 5000) | st.sampled_from(["yes", "flat", "slatted", "turned", ""]),
        )
    )
    answer = build_form(form, junk)
    if not isinstance(answer, Built):
        assert answer
        assert all(problem.what and problem.do for problem in answer)


@given(scale=st.integers(64, 192).map(lambda n: n / 64.0))
@QUICK
def test_a_board_twice_as_large_has_four_times_the_area(scale: float):
    small, large = (
        build_form("board", {"width": 300 * k, "depth": 30 * k, "height": 500 * k, "kind": "flat"})
        for k in (1, scale)
    )
    assert isinstance(small, Built)
    assert isinstance(large, Built)
    for one, other in zip(small.faces, large.faces, strict=True):
        assert other.area_m2 == pytest.approx(one.area_m2 * scale**2, rel=1e-8)
