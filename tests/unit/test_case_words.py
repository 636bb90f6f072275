"""The word table of trade cases knows its vocabulary, sees no outcome, and says what it can't read."""

import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

import case_words as table
from case_changes import CHANGES
from case_pieces import GIVEN, adapt_case, given_part
from case_reading import read_text, words
from case_scores import DEFECT_OF_FAULT, HAZARDS
from case_twin_words import DO, DONT
from case_twins import read_advice, twins_of
from refettle.domain.piece import LOOKS, ORIENTATIONS, RELIEFS, SOUNDNESS, USES, VALUES
from refettle.domain.step import VERBS
from refettle.files.tables import load_knowledge
from refettle.knowledge.knowledge import Knowledge


def plain(text: str) -> list[str]:
    """Return the words of a text."""
    return text.split()


# The header of the schema, word for word.
SUBSTRATES = plain(
    """
    ash birch cedar_aromatic cherry cocobolo cypress ebony fir hardwood_unspecified laminate_or_foil
    mahogany maple mdf oak padauk pine_clear pine_knotty poplar redwood rosewood
    softwood_unspecified teak walnut wenge
    """
)
BUILDS = plain(
    """
    laminate_on_particleboard mdf plywood solid veneer veneer_and_solid veneer_on_mdf
    veneer_on_particleboard
    """
)
OLD_FINISHES = plain(
    """
    acrylic_clear_waterborne alkyd_enamel chalk_paint_waxed conversion_varnish factory_coating
    lacquer_catalysed lacquer_or_varnish_over_red_stain lacquer_unspecified latex_paint none
    none_after_stripping oil_varnish_blend polyurethane_oil shellac_clear shellac_clear_waxed
    unknown varnish_alkyd varnish_unknown
    """
)
GEOMETRY = plain(
    """
    corners drawer_front edges end_grain flat inlay inside_carcass joints long moulding open_pores
    panel slats slender turned vertical
    """
)
METHODS = plain(
    """
    aerosol brush pad roller spray wipe
    """
)
CLASSES = plain(
    """
    shellac_clear_waxed shellac_clear_dewaxed shellac_clear_unspecified shellac_primer_pigmented
    oil_primer_stainblocking waterborne_primer bonding_primer wood_conditioner_oil
    sanding_sealer_lacquer vinyl_sealer pore_filler_oil pore_filler_waterborne oil_stain_wiping
    gel_stain_oil stain_polyurethane_combined dye_water dye_solvent glaze_oil lacquer_toner
    drying_oil oil_varnish_blend varnish_alkyd polyurethane_oil polyurethane_oil_modified_waterborne
    polyurethane_waterborne acrylic_clear_waterborne lacquer_nitro lacquer_precat conversion_varnish
    latex_paint acrylic_paint_waterborne alkyd_enamel chalk_paint milk_paint paste_wax
    """
)
LOOKS_WANTED = plain(
    """
    opaque_light opaque_dark opaque_distressed stained_clear natural_clear odour_free_interior
    """
)
DEFECTS = plain(
    """
    bleed_through knot_bleed yellowing fisheye blushing_haze wrinkling_lifting peeling
    cracking_alligatoring bubbles_blisters tacky_no_cure blocking softening_in_use blotching
    uneven_colour stain_rejected glue_spots sanding_marks sand_through raised_grain swelling_fuzz
    veneer_lifting iron_stain rust_specks chemical_darkening residue_leach oil_bleed_back
    water_heat_marks pressmarks runs_sags orange_peel brush_lap_marks odour mould
    """
)
OPS = plain(
    """
    clean strip rinse bleach sand scuff rub wait expose use coat
    """
)
USE_MARKS = frozenset(
    {
        "sun", "heat", "cold", "freezing", "damp", "wet-storm", "hot-dish", "standing-water", "plastic-cover",
        "stacked", "wrapped", "shut", "dark", "wall", "years", "hands", "freight", "children", "food",
        "cleaning", "alcohol", "dry-air", "loaded",
    }
)  # fmt: skip


def case(**changes: object):
    """A plain case; item entries are given by their own names."""
    item = {
        "piece": "chest", "part": "top", "substrate": ["oak"], "build": "solid", "status": "second_hand",
        "age": "1930s", "existing_finish": "shellac_clear", "geometry": ["flat"], "condition": ["clean"],
    }  # fmt: skip
    whole = {
        "item": item,
        "wanted_look": "natural_clear",
        "climate": {"temperature_c": None, "rh_percent": None},
        "steps": [{"n": 1, "op": "coat", "class": "varnish_alkyd", "method": "brush", "coats": 1}],
    }
    for key, value in changes.items():
        (item if key in item else whole)[key] = value
    return whole


def steps(*raws: dict[str, Any]):
    return adapt_case(case(steps=list(raws))).piece.intend[0].steps


def surface(**changes: object):
    return adapt_case(case(**changes)).piece.surfaces[0]


@pytest.fixture(scope="module")
def know():
    return load_knowledge()


def test_every_word_of_the_header_is_in_the_table():
    assert set(SUBSTRATES) <= set(table.WOODS)
    assert set(BUILDS) == set(table.BUILDS)
    assert set(OLD_FINISHES) <= set(table.OLD_FINISHES)
    assert set(GEOMETRY) <= set(table.GEOMETRY)
    assert set(METHODS) == set(table.METHODS)
    assert set(CLASSES) == set(table.CLASSES)
    assert set(LOOKS_WANTED) == set(table.LOOKS)
    assert set(OPS) == set(table.OPS)
    assert set(DEFECTS) == set(DEFECT_OF_FAULT.values())


@pytest.mark.parametrize("wood", SUBSTRATES)
@pytest.mark.parametrize("build", BUILDS)
def test_every_substrate_in_every_build_becomes_a_surface(wood: str, build: str):
    assert adapt_case(case(substrate=[wood], build=build)).unmapped == ()


@pytest.mark.parametrize("finish", OLD_FINISHES)
def test_every_old_finish_becomes_layers_whose_guesses_add_up(finish: str):
    layers = surface(existing_finish=finish).layers
    assert all(
        not layer.guesses or sum(w for _, w in layer.guesses) == pytest.approx(1.0) for layer in layers
    )
    assert bool(layers) != finish.startswith("none")


def test_the_table_speaks_only_of_what_the_package_knows(know: Knowledge):
    for wood in set(table.WOODS.values()) | set(table.CORE_OF_BUILD.values()):
        assert know.has("wood", wood), wood
    for build, _ in table.BUILDS.values():
        assert know.has("build", build), build
    for cls, _ in table.CLASSES.values():
        assert know.has("film", cls), cls
    for cls in table.USUAL_WAIT_H:
        assert know.has("film", cls), cls
    kinds = {"on": "contaminant", "in": "latent", "damage": "damage"}
    for tags in [*table.CONDITIONS.exact.values(), *(tags for _, tags in table.CONDITIONS.stems)]:
        for tag in tags:
            kind, name = (*tag.split(":"), "")[:2]
            if kind in kinds:
                assert know.has(kinds[kind], name), tag
            if kind == "sound":
                assert name in SOUNDNESS
            if kind == "value":
                assert name in VALUES
            if kind == "use":
                assert name in USE_MARKS


def test_every_mark_of_use_is_one_of_the_fixed_set():
    for tags in [*table.EVENTS.exact.values(), *(tags for _, tags in table.EVENTS.stems)]:
        assert {tag.lstrip("?") for tag in tags} <= USE_MARKS | {"draught"}, tags


@pytest.mark.parametrize("word", GEOMETRY)
def test_every_geometry_word_gives_zones_that_cover_the_surface(word: str):
    found = surface(geometry=[word])
    assert sum(zone.share for zone in found.zones) == pytest.approx(1.0)
    assert found.relief in RELIEFS
    assert found.orientation in ORIENTATIONS
    assert found.use in USES


def test_looks_are_looks_of_the_house():
    assert {kind for kind, _, _ in table.LOOKS.values()} <= set(LOOKS)


def test_only_four_keys_reach_the_adapter():
    whole = case() | {
        "id": "X-1", "situation": "s", "outcome": "fails", "symptom": "s", "seen_after_step": 1,
        "failure": {"defect": "peeling"}, "evidence": {}, "why_sound": "w", "limits": "l",
    }  # fmt: skip
    assert set(given_part(whole)) == set(GIVEN) == {"item", "wanted_look", "climate", "steps"}


def test_the_adapter_refuses_a_case_that_still_holds_its_outcome():
    with pytest.raises(ValueError, match="nothing else; look at: outcome"):
        adapt_case(case() | {"outcome": "fails"})


def test_an_unknown_word_is_listed_and_counts_against_us():
    found = adapt_case(case(condition=["clean", "gribbled"]))
    assert found.unread == ("item/condition: gribbled",)
    assert found.unmapped == ("item/condition: gribbled",)


def test_an_unknown_coat_class_counts_against_us():
    found = adapt_case(case(steps=[{"op": "coat", "class": "moon_dust", "coats": 1}]))
    assert found.unmapped == ("steps/1/class: moon_dust",)


def test_an_unknown_key_of_a_step_counts_against_us():
    found = adapt_case(case(steps=[{"op": "clean", "what": "naphtha", "ritual": "moon"}]))
    assert found.unmapped == ("steps/1: ritual",)


def test_one_odd_word_in_a_text_that_is_otherwise_read_is_listed_only():
    found = adapt_case(case(steps=[{"op": "clean", "what": "mineral spirits, gribbled"}]))
    assert found.unread == ("steps/1/what: gribbled",)
    assert found.unmapped == ()


def test_a_denied_word_gives_no_tag():
    read = read_text("not scuffed, washed with naphtha", words("scuff = scuff*\nnaphtha = naphtha"))
    assert read.tags == ("naphtha",)


def test_a_whole_phrase_with_not_wins_over_the_denial():
    assert read_text("heavy, not wiped", table.COATING).tags == ("heavy", "not wiped")


def test_a_phrase_cannot_stand_twice_in_a_table():
    with pytest.raises(ValueError, match='"soap" stands twice'):
        words("a = soap\nb = soap")


def test_a_cleaning_of_two_things_becomes_two_washes():
    found = steps({"op": "clean", "what": "vacuum and tack cloth"}, {"op": "coat", "class": "paste_wax"})
    assert [step.what for step in found] == ["vacuum", "tack-cloth", "paste-wax"]


def test_a_light_sanding_of_an_old_film_is_a_scuff_but_of_bare_wood_a_sanding():
    raw = {"op": "sand", "what": "light", "grit": "220"}
    assert steps(raw)[0].verb == "scuff"
    bare = adapt_case(case(existing_finish="none", steps=[raw])).piece.intend[0].steps
    assert (bare[0].verb, bare[0].grit) == ("sand", 220)


def test_grits_in_the_text_become_one_sanding_each():
    found = steps({"op": "sand", "what": "to bare wood, 80 then 120", "grit": "180"})
    assert [step.grit for step in found] == [80, 120, 180]
    assert all("to bare" in step.how for step in found)


def test_steel_wool_carries_its_mark_and_its_grit():
    found = steps({"op": "rub", "what": "0000 steel wool, dry"})
    assert (found[0].verb, found[0].method, found[0].grit) == ("rub_out", "steel-wool", 600)
    assert found[0].how >= {"steel wool", "dry"}


def test_a_stripping_worked_with_steel_wool_carries_its_mark_and_one_without_does_not():
    worked = steps({"op": "strip", "what": "methylene chloride and steel wool, rinsed with water"})
    assert ["steel wool" in step.how for step in worked] == [True, False]
    spared = steps({"op": "strip", "what": "methylene chloride, no steel wool"})
    assert not any("steel wool" in step.how for step in spared)


def test_no_rinse_means_no_step():
    assert [s.verb for s in steps({"op": "strip", "what": "lye"}, {"op": "rinse", "what": "none"})] == [
        "strip"
    ]


def test_a_rinse_named_inside_a_stripping_becomes_a_step():
    found = steps({"op": "strip", "what": "methylene chloride, rinsed with mineral spirits"})
    assert [(step.verb, step.what) for step in found] == [
        ("strip", "dichloromethane"),
        ("rinse", "mineral-spirits"),
    ]


def test_a_stated_time_before_an_event_is_the_wait_before_it():
    coat = {"op": "coat", "class": "latex_paint", "method": "brush", "coats": 1}
    found = steps(coat, {"op": "use", "what": "wrapped in blankets after two days"})
    assert found[0].wait_after_h == 48.0
    assert found[1].how == {"wrapped"}


def test_waits_left_open_get_what_a_careful_worker_gives():
    two = {"op": "coat", "class": "varnish_alkyd", "method": "brush", "coats": 2}
    found = steps(two, {"op": "coat", "class": "varnish_alkyd", "method": "brush", "coats": 1})
    assert (found[0].wait_between_h, found[0].wait_after_h) == (24.0, 24.0)
    assert found[1].wait_after_h == table.WAIT_BEFORE_USE_H


def test_shellac_is_a_seal_below_another_coat_and_a_top_coat_alone():
    shellac = {"op": "coat", "class": "shellac_clear_dewaxed", "method": "brush", "coats": 1}
    found = steps(
        shellac, {"op": "coat", "class": "acrylic_clear_waterborne", "method": "brush", "coats": 1}, shellac
    )
    assert [step.verb for step in found] == ["seal", "topcoat", "topcoat"]


def test_every_step_uses_a_verb_of_the_house():
    for op in OPS:
        raw = {"op": op, "what": "", "class": "lacquer_nitro"}
        assert all(step.verb in VERBS for step in steps(raw)), op


def test_unknown_air_is_the_standard_air_and_marked_unknown():
    air = adapt_case(case()).workshop.air_likely
    assert (air.temp_c, air.rh, air.known) == (20.0, 0.5, False)


def test_a_note_on_the_climate_fills_only_what_is_left_open():
    air = adapt_case(
        case(climate={"temperature_c": 38, "rh_percent": None, "note": "direct sun, humid"})
    ).workshop.air_likely
    assert (air.temp_c, air.rh, air.sun, air.known) == (38.0, 0.80, True, True)


def test_the_word_for_red_stain_under_the_finish_puts_it_into_the_wood():
    found = surface(existing_finish="lacquer_or_varnish_over_red_stain")
    assert found.old_stain == (("red-stain", 80),)


@pytest.mark.parametrize("changes", [{"geometry": ["edges"]}, {"condition": ["core_exposed"]}])
def test_fibreboard_with_edges_or_core_is_a_cut_edge(changes: dict[str, Any]):
    assert surface(substrate=["mdf"], build="mdf", **changes).wood == "mdf-edge"


def test_an_inlay_of_another_kind_of_wood_is_a_surface_of_its_own():
    found = adapt_case(case(substrate=["oak", "cocobolo"], condition=["oily_wood"])).piece.surfaces
    assert [(one.wood, one.area_m2) for one in found] == [("oak", 1.0), ("cocobolo", 0.1)]
    assert [one.old_stain for one in found] == [(), (("wood-oils", 70),)]


def test_two_woods_alike_stay_one_surface():
    assert len(adapt_case(case(substrate=["maple", "birch"])).piece.surfaces) == 1


def test_what_lies_on_a_used_finish_is_a_guess_until_somebody_says_clean():
    assert surface(condition=["scuffed"]).contamination == tuple(sorted(table.SECOND_HAND_PRIOR))
    assert surface(condition=["clean"]).contamination == ()


@pytest.mark.parametrize(
    ("age", "years"),
    [
        ("1940s", (1940, 1949)),
        ("1950s-1960s", (1950, 1969)),
        ("about 1920", (1915, 1925)),
        ("19th century", (1800, 1899)),
        ("ten years", (2014, 2018)),
        ("new", (2026, 2026)),
        ("unknown", (None, None)),
    ],
)
def test_ages_are_read_as_years(age: str, years: tuple[int | None, int | None]):
    piece = adapt_case(case(age=age)).piece
    assert (piece.year_from, piece.year_to) == years


def test_every_change_that_advice_can_ask_for_exists():
    for advice in (DO, DONT):
        for tags in [*advice.exact.values(), *(tags for _, tags in advice.stems)]:
            assert {tag.partition(":")[0] for tag in tags} <= set(CHANGES), tags


def test_advice_is_read_in_its_order_and_what_is_forbidden_after_it():
    assert read_advice("Degrease and scuff; never dry in the sun.") == (
        "clean:alkaline-degreaser",
        "scuff",
        "air:shade",
    )


def test_alternatives_in_advice_are_twins_of_their_own():
    found = adapt_case(case(existing_finish="none"))
    twins = twins_of("Dewaxed shellac first, or gel stain under it.", found.piece, found.workshop)
    assert [twin.changes for twin in twins] == [("seal:shellac-dewaxed",), ("put:gel-stain",)]


def test_advice_that_says_nothing_known_gives_no_twin():
    found = adapt_case(case())
    assert twins_of("Gribble it.", found.piece, found.workshop) == ()


def test_hazards_to_people_have_no_word_in_the_schema():
    assert not HAZARDS & set(DEFECT_OF_FAULT)
