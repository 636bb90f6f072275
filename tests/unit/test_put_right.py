"""Mends: from the state a surface is really in, never dearer than starting over, and the checker agrees with the books."""

from dataclasses import replace

import pytest

from plan_pieces import facts, old, one_surface
from refettle.domain.air import Air
from refettle.domain.finding import Where
from refettle.domain.piece import Look, Own, Piece, Surface
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.sign_tables import load_signs
from refettle.planning.check import check_route
from refettle.planning.start import relooked
from refettle.services.foresee import closed
from refettle.services.mend_around import around
from refettle.services.mend_ways import DEPTHS, Mend
from refettle.services.put_right import PutRight, put_right
from refettle.services.since import played_since
from refettle.services.trouble import Diagnosis, diagnose
from refettle.trouble.rank import Told

BOOK = load_signs()
COLD = Workshop(name="shed", air_likely=Air(temp_c=5.0, rh=0.8), air_safe=Air(temp_c=5.0, rh=0.8))
WHITE = Look(kind="opaque", colour="white")
CLEAR = Look(kind="natural", sheen="satin")

PAINT = Step(
    verb="paint", what="acrylic-paint", method="roller", coats=2, wait_between_h=4.0, wait_after_h=24.0
)
POLY = Step(
    verb="topcoat", what="oil-polyurethane", method="brush", coats=2, wait_between_h=24.0, wait_after_h=48.0
)
UNWIPED = Step(verb="stain", what="oil-stain", method="wipe", wait_after_h=12.0, how=frozenset({"not wiped"}))
STRIP = Step(verb="strip", what="mild-remover", coats=3, wait_after_h=1.0)
SAND = Step(verb="sand", method="hand-block", grit=180, how=frozenset({"sequence", "clean dust"}))

MISHAPS = {
    "knots": (one_surface("top", look=WHITE, wood="pine-knotty", layers=(old("alkyd-varnish"),)), (PAINT,),
              "brown spots come through over the knots"),
    "wax": (one_surface("top", look=WHITE, layers=(old("shellac-waxed"),), contamination=(("wax", 0.9),)), (PAINT,),
            "the paint peels off in sheets after some weeks"),
    "silicone": (one_surface("top", look=CLEAR, layers=(old("nitro-lacquer"),), contamination=(("silicone", 0.9),)), (POLY,),
                 "it pulled away into craters as I brushed"),
    "unwiped": (one_surface("top", look=Look(kind="stained", depth=60), wood="mahogany"), (STRIP, SAND, UNWIPED, POLY),
                "still sticky after a week"),
    "water on a board": (one_surface("top", look=WHITE, wood="mdf", build="mdf"), (PAINT,),
                         "the edges are furry and swollen"),
}  # fmt: skip


def troubled(surface: Surface, steps: tuple[Step, ...]) -> Piece:
    own = Own(surface="", steps=steps, where=(Where(file="test"),) * len(steps))
    return Piece(name="Test", form="list", surfaces=(surface,), done=(own,))


def mended(
    name: str, workshop: Workshop | None = None
) -> tuple[Piece, Workshop, Surface, Diagnosis, PutRight]:
    surface, steps, says = MISHAPS[name]
    piece, shop = troubled(surface, steps), workshop or Workshop()
    found = diagnose(facts(), BOOK, piece, shop, surface, says=says)
    return piece, shop, surface, found, put_right(facts(), piece, shop, surface, found)


def ended_in(surface: Surface, mend: Mend) -> Look:
    return Look(kind="opaque") if mend.depth == "look" else surface.look or CLEAR


@pytest.mark.parametrize("name", MISHAPS)
def test_every_mend_passes_the_checker_from_where_it_starts(name: str) -> None:
    piece, shop, surface, found, right = mended(name)
    assert right.begin is not None
    laid = tuple(dict.fromkeys(step.what for step in found.steps if step.is_coat))
    opened = replace(shop, prices=tuple((cls, 0.0) for cls in laid))
    checked = 0
    for mend in right.mends:
        if mend.route is None or mend.depth == "wait":
            continue
        look = ended_in(surface, mend)
        face = replace(surface, look=look, area_m2=surface.area_m2 * (0.15 if mend.place else 1.0))
        begin = right.begin if look == surface.look else relooked(facts(), right.begin, look)
        begin = replace(begin, surface=face)
        assert check_route(facts(), piece, opened, face, mend.route, look, begin, right.meets) == ()
        checked += 1
    assert checked >= 2


@pytest.mark.parametrize("name", MISHAPS)
def test_the_first_mend_never_costs_more_than_starting_over_or_leaving_it(name: str) -> None:
    _, _, _, _, right = mended(name)
    costs = [mend.cost for mend in right.mends]
    assert costs == sorted(costs)
    assert {mend.depth for mend in right.mends} <= set(DEPTHS)
    whole = [mend.cost for mend in right.mends if mend.depth == "wood" and not mend.place]
    assert whole, "starting over must be among the ways"
    assert costs[0] <= min(whole)
    left = [mend for mend in right.mends if mend.route is None]
    assert len(left) == 1
    assert costs[0] <= left[0].cost


@pytest.mark.parametrize("name", MISHAPS)
def test_the_shares_of_the_causes_add_up(name: str) -> None:
    *_, right = mended(name)
    assert sum(share for _, share in right.causes) == pytest.approx(1.0)
    assert right.begin is not None
    assert sum(world.weight for world in right.begin.worlds) == pytest.approx(1.0)
    labels = [world.label for world in right.begin.worlds]
    assert len(labels) == len(set(labels))


def test_knots_are_sealed_with_what_blocks_them() -> None:
    *_, right = mended("knots")
    first = right.mends[0]
    assert first.depth in {"seal", "wood"}
    assert first.route is not None
    assert any(
        facts().film(cost.step.what).blocks_knots > 0.6 for cost in first.route.steps if cost.step.is_coat
    )


def test_a_stain_left_unwiped_is_stripped_not_waited_for() -> None:
    """Common practice, no source: what was not wiped off does not harden in any time."""
    *_, right = mended("unwiped", COLD)
    assert right.mends[0].depth == "wood"
    first = right.mends[0].route
    assert first is not None
    assert any(cost.step.verb == "strip" for cost in first.steps)
    assert "wait" not in {mend.depth for mend in right.mends}


def test_only_where_the_cold_is_the_cause_is_waiting_in_the_warm_a_way() -> None:
    surface = one_surface("top", look=CLEAR)
    cold = replace(POLY, air=Air(temp_c=3.0, rh=0.8))
    for workshop, coat, expected in (
        (COLD, cold, True),
        (Workshop(), replace(POLY, wait_between_h=0.5), False),
    ):
        piece = troubled(surface, (SAND, coat))
        found = diagnose(
            facts(),
            BOOK,
            piece,
            workshop,
            surface,
            says="still tacky after two days",
            answers=Told(when="days"),
        )
        right = put_right(facts(), piece, workshop, surface, found, fault="soft-film")
        assert ("wait" in {mend.depth for mend in right.mends}) is expected, (workshop.name, found.causes[:3])


def test_a_fault_that_the_person_names_is_the_one_that_is_mended() -> None:
    piece, shop, surface, found, _ = mended("wax")
    right = put_right(facts(), piece, shop, surface, found, fault="craters")
    assert {cause.suspect.fault for cause, _ in right.causes} == {"craters"}


def test_trouble_in_one_place_may_be_mended_there_alone() -> None:
    *_, right = mended("knots")
    assert any(mend.place for mend in right.mends)
    *_, whole = mended("wax")
    assert not any(mend.place for mend in whole.mends)


def test_where_it_stands_goes_with_it() -> None:
    surface = one_surface("inside", look=Look(kind="odour-free"))
    use = Step(verb="use", what="wall", how=frozenset({"wall", "damp"}))
    piece = troubled(surface, (Step(verb="clean", what="mould-wash", wait_after_h=6.0), use))
    found = diagnose(facts(), BOOK, piece, Workshop(), surface, says="the mildew came back")
    right = put_right(facts(), piece, Workshop(), surface, found)
    assert right.meets == frozenset({"wall", "damp"})


def test_what_happened_early_is_mended_before_the_film_has_cured() -> None:
    surface, steps, _ = MISHAPS["silicone"]
    piece = troubled(surface, steps)
    early, late = (
        put_right(
            facts(), piece, Workshop(), surface,
            diagnose(facts(), BOOK, piece, Workshop(), surface, says="craters", answers=Told(when=when)),
        )
        for when in ("immediate", "weeks")
    )  # fmt: skip
    assert early.begin is not None
    assert late.begin is not None
    assert closed(steps)[-2].what == "cure"
    since = played_since(facts(), piece, Workshop(), surface, steps)
    assert max(film.ripe for _, state in since.ends[0] for film in state.stack) > 0


def test_other_surfaces_with_the_same_steps_are_named_and_the_shelf_is_counted() -> None:
    surface, steps, _ = MISHAPS["knots"]
    twin = replace(surface, name="side", part="side")
    own = Own(surface="", steps=steps, where=(Where(file="test"),) * len(steps))
    piece = Piece(name="Test", form="list", surfaces=(surface, twin), done=(own,))
    found = diagnose(
        facts(), BOOK, piece, Workshop(), surface, says="brown spots come through over the knots"
    )
    right = put_right(facts(), piece, Workshop(), surface, found)
    near = around(facts(), piece, Workshop(), surface, found.steps, right)
    assert near.same_steps == ("side",)
    assert near.shelf
    assert all(item.need_l.high > 0 or item.need_count.high > 0 for item in near.shelf)
    assert near.care


def test_with_nothing_told_of_the_steps_the_words_alone_are_ranked() -> None:
    surface = one_surface("top", look=None, layers=(old("shellac-waxed"),))
    piece = Piece(name="Test", form="list", surfaces=(surface,))
    found = diagnose(facts(), BOOK, piece, Workshop(), surface, says="a white ring where a hot mug stood")
    assert found.faults[0][0] == "water-heat-marks"
    assert "" in dict(found.faults)
