"""The piece file: what it says, what is assumed, and the full text of every finding."""
# ruff: noqa: E501 - the full text of a message stands on one line

import pytest
from tests.fakes import small_knowledge

from refettle.domain.air import Air
from refettle.domain.piece import Look, OldLayer, Piece
from refettle.domain.step import EVENT_MARKS, WORK_MARKS
from refettle.files.own_steps import STEP_KEYS, VERB_WORDS
from refettle.files.piece_file import read_piece

TABLE = """\
piece: Hall table
form: table
width: 120 cm
depth: 60 cm
height: 75 cm
wood: oak
"""
PANEL = """\
piece: Loose panel
form: list
wood: oak
surfaces:
  face: {area: 0.5 m2}
"""


def read(text: str) -> Piece:
    piece, findings = read_piece(text, "t.yaml", small_knowledge())
    assert [finding.text() for finding in findings if finding.level == "error"] == []
    assert piece is not None
    return piece


def messages(text: str) -> list[str]:
    piece, findings = read_piece(text, "t.yaml", small_knowledge())
    assert piece is None or all(finding.level != "error" for finding in findings)
    return [finding.text() for finding in findings]


def assumed(piece: Piece) -> dict[str, tuple[str, str]]:
    return {one.path: (one.value, one.why) for one in piece.assumed}


def test_a_short_file_is_enough():
    piece = read(TABLE + "era: 1930s\nold finish: unknown\nlook: natural\n")
    assert (piece.name, piece.form, piece.year_from, piece.year_to) == ("Hall table", "table", 1930, 1939)
    assert piece.size_mm == (1200.0, 600.0, 750.0)
    top = piece.surfaces[0]
    assert (top.name, top.wood, top.build, top.use) == ("top", "oak", "solid", "table")
    assert top.area_m2 > 0.72
    assert top.layers == (OldLayer(kind="unknown", coats=2),)
    assert top.look == Look(kind="natural")


def test_everything_that_was_not_said_is_listed_with_its_reason():
    told = assumed(read(PANEL))
    assert told["era"] == ("unknown", "not said")
    assert told["surfaces/face/relief"] == ("flat", "not said")
    assert told["surfaces/face/orientation"] == ("upright", "not said; from the surface's name")
    assert told["old finish"] == ("unknown", "not said")
    assert told["old coats"] == ("2", "number not said; old finishes were seldom laid in one coat")
    assert told["build"] == ("solid", "not said")
    assert told["soundness"] == ("sound", "not said")
    assert told["look"] == ("any", "not said: whatever suits the piece best")
    assert told["use"] == ("everyday", "not said")
    assert told["value"] == ("ordinary", "not said")
    values = [(one.path, one.value) for one in read(PANEL).assumed if one.path == "contamination"]
    assert values == [("contamination", "grime"), ("contamination", "silicone 20 %")]


def test_silicone_is_assumed_possible_on_old_polish_and_not_under_paint_or_on_bare_wood():
    def face(finish: str) -> tuple[tuple[str, float], ...]:
        return read(PANEL + f"old finish: {finish}\n").surfaces[0].contamination

    assert face("shellac") == (("grime", 1.0), ("silicone", 0.2))
    assert face("unknown paint") == (("grime", 1.0),)
    assert face("bare") == (("grime", 1.0),)
    assert read(PANEL + "contamination: none\n").surfaces[0].contamination == ()


def test_unknown_paint_stays_unguessed():
    layers = read(PANEL + "old finish: unknown paint\nold coats: 3\n").surfaces[0].layers
    assert layers == (OldLayer(kind="paint", coats=3),)


def test_old_finish_is_read_in_all_its_forms():
    def layers(text: str) -> tuple[OldLayer, ...]:
        return read(PANEL + f"old finish: {text}\n").surfaces[0].layers

    assert layers("bare") == ()
    assert layers("french polish") == (OldLayer(guesses=(("shellac-waxed", 1.0),), kind="clear", coats=3),)
    assert layers("{shellac: 0.7, nitro lacquer: 30 %}") == (
        OldLayer(guesses=(("shellac-waxed", 0.7), ("nitro-lacquer", 0.3)), kind="clear", coats=3),
    )
    assert layers("[shellac, {finish: alkyd enamel, coats: 4, thickness: 0.2 mm}, unknown paint]") == (
        OldLayer(guesses=(("shellac-waxed", 1.0),), kind="clear", coats=3),
        OldLayer(guesses=(("alkyd-enamel", 1.0),), kind="paint", coats=4, um=200),
        OldLayer(kind="paint", coats=2),
    )


def test_a_look_is_a_kind_a_colour_and_a_sheen():
    def look(text: str) -> Look | None:
        return read(PANEL + f"look: {text}\n").surfaces[0].look

    assert look("any") is None
    assert look("natural matte") == Look(kind="natural", sheen="matt")
    assert look("stained dark brown satin") == Look(
        kind="stained", colour="dark brown", depth=75, sheen="satin"
    )
    assert look("opaque white") == Look(kind="opaque", colour="white", depth=5)
    assert look("{kind: opaque, colour: sea green, depth: 40 %, sheen: gloss}") == Look(
        kind="opaque", colour="sea green", depth=40, sheen="gloss"
    )
    assert read(PANEL + "look: natural\nsheen: gloss\n").surfaces[0].look == Look(
        kind="natural", sheen="gloss"
    )
    assert assumed(read(PANEL + "look: opaque white\n"))["look/depth"] == (
        "5 %",
        'as "white" is usually meant',
    )


def test_a_colour_of_unknown_darkness_is_noted_and_does_not_stop_the_plan():
    assert messages(PANEL + "look: stained umbra\n") == [
        't.yaml:6: look: how dark "umbra" is, is not known – write it as entries with depth: look: {kind: stained, colour: umbra, depth: 40 %}  [colour-depth]'
    ]


def test_plain_facts_of_a_surface_are_read():
    face = read(
        PANEL
        + "build: veneer\nveneer: 0.6 mm\nsoundness: flaking\nworn: 30 %\ncontamination: [wax, {silicone: 0.3}]\n"
        "old stain: [red stain, {smoke smell: 40 %}]\ndamage: [white rings, black rings]\n"
        "tests: {alcohol: dissolves, tape: holds, lead: negative}\nuse: kitchen\nvalue: fine\n"
        "worth keeping: original label\nlead: 30 %\n"
    ).surfaces[0]
    assert (face.build, face.veneer_um, face.soundness, face.worn_pct) == ("veneer", 600, "flaking", 30)
    assert face.contamination == (("wax", 1.0), ("silicone", 0.3))
    assert face.old_stain == (("red-stain", 70), ("smoke", 40))
    assert face.damage == ("white-ring", "black-ring")
    assert face.tested == (("alcohol-drop", "yes"), ("lead-test", "no"), ("tape-pull", "no"))
    assert (face.use, face.value, face.keep_reason, face.lead_chance) == (
        "everyday",
        "fine",
        "original label",
        0.3,
    )


def test_plain_facts_of_the_piece_are_read():
    piece = read(
        PANEL + "child: yes\npaid: 40\nsells: 180-240\nconstraints: [no stripping, no spraying]\n"
        "ready in: 72 h\ninvented: yes\nnotes: |\n  first\n  second\nera: about 1900\nlead: no\n"
    )
    assert (piece.child, piece.paid, piece.sells_low, piece.sells_high) == (True, 40.0, 180.0, 240.0)
    assert piece.constraints == {"no stripping", "no spraying"}
    assert (piece.deadline_h, piece.invented, piece.notes) == (72.0, True, ("first", "second"))
    assert (piece.year_from, piece.year_to) == (1890, 1910)
    assert piece.surfaces[0].lead_chance == 0.0


def test_veneer_is_as_usual_for_the_build_and_turned_work_is_solid():
    piece = read(TABLE + "build: veneer\nleg shape: turned\nold finish: shellac\n")
    by_name = {surface.name: surface for surface in piece.surfaces}
    assert (by_name["top"].build, by_name["top"].veneer_um) == ("veneer", 700)
    assert (by_name["leg.1"].build, by_name["leg.1"].veneer_um) == ("solid", 0)


def test_faces_out_of_sight_are_bare_and_stay_so_unless_said():
    text = TABLE + "old finish: shellac\nlook: natural\n"
    hidden = [surface for surface in read(text).surfaces if surface.name == "top/underside"]
    assert [(face.layers, face.look, face.contamination) for face in hidden] == [((), Look(kind="bare"), ())]
    said = text + "surfaces:\n  hidden: {old finish: shellac}\n"
    hidden = [surface for surface in read(said).surfaces if surface.name == "top/underside"]
    assert hidden[0].look == Look(kind="keep")
    assert assumed(read(text))["surfaces/hidden/look"] == ("bare", "runs or is out of sight")


def test_a_surface_wins_over_its_group_and_a_group_over_the_piece():
    piece = read(
        TABLE
        + "look: natural\nsurfaces:\n  leg.2: {look: waxed}\n  legs: {look: oiled}\n  leg.*: {worn: 20 %}\n"
    )
    looks = {
        surface.name: (surface.look and surface.look.kind, surface.worn_pct) for surface in piece.surfaces
    }
    assert looks["top"] == ("natural", 0)
    assert looks["leg.1"] == ("oiled", 20)
    assert looks["leg.2"] == ("waxed", 20)


def test_use_at_the_table_concerns_tops_only():
    uses = {surface.name: surface.use for surface in read(TABLE + "use: kitchen\n").surfaces}
    assert uses["top"] == "kitchen"
    assert uses["leg.1"] == "everyday"


def test_own_steps_are_read_as_they_are_written():
    piece = read(
        PANEL + "done:\n  - clean: soap and water\n  - sand: [P120, P180]\n    by: random-orbit sander\n"
        "    wait after: 1 h\n  - coat: acrylic furniture paint\n    coats: 2\n    by: roller\n"
        "    wait between: 4 h\n    wait after: 1 day\n    film: heavy\n    not wiped: yes\n"
        "    air: {temperature: 12 C, humidity: 80 %}\n  - scuff\n  - wait: 3 days\n"
    )
    steps = piece.done[0].steps
    assert [(step.verb, step.what, step.grit, step.method) for step in steps] == [
        ("clean", "soap-water", 0, ""), ("sand", "", 120, "random-orbit"), ("sand", "", 180, "random-orbit"),
        ("paint", "acrylic-paint", 0, "roller"), ("scuff", "", 0, ""), ("wait", "", 0, ""),
    ]  # fmt: skip
    paint = steps[3]
    assert (paint.coats, paint.wait_between_h, paint.wait_after_h, paint.film) == (2, 4.0, 24.0, "heavy")
    assert paint.how == {"not wiped"}
    assert paint.air == Air(temp_c=12.0, rh=0.8)
    assert (steps[1].wait_after_h, steps[2].wait_after_h, steps[5].wait_after_h) == (0.0, 1.0, 72.0)
    assert [where.line for where in piece.done[0].where] == [7, 8, 8, 11, 19, 20]
    assert assumed(piece)["done/clean/wait after"] == ("3 h", "not said: until it is usually dry")


def test_waits_that_were_not_given_are_those_of_the_class_and_are_told():
    piece = read(PANEL + "intend:\n  - coat: shellac\n    coats: 3\n")
    step = piece.intend[0].steps[0]
    assert (step.verb, step.wait_between_h, step.wait_after_h) == ("topcoat", 2.0, 2.0)
    assert assumed(piece)["intend/coat/wait between"] == ("2 h", "not said: when it may usually be recoated")


def test_every_word_for_what_is_met_sets_the_mark_that_rules_read():
    for word, mark in EVENT_MARKS.items():
        for verb in ("expose", "use"):
            (step,) = read(PANEL + f"intend: [{{{verb}: {word}}}]\n").intend[0].steps
            assert (step.verb, step.what, step.how) == (verb, word, {mark})


def test_several_things_are_met_at_once_and_the_first_names_the_step():
    piece = read(
        PANEL + "intend: [{expose: [Storm, sun]}, {use: [table, hot dish, years]}, {use: kitchen}]\n"
    )
    assert [(step.what, step.how) for step in piece.intend[0].steps] == [
        ("storm", {"wet-storm", "sun"}), ("table", {"hot-dish", "years"}), ("kitchen", set()),
    ]  # fmt: skip


def test_every_word_for_how_work_is_done_sets_the_mark_that_rules_read():
    for word, mark in WORK_MARKS.items():
        (step,) = read(PANEL + f"done: [{{sand: P120, how: {word}}}]\n").done[0].steps
        assert step.how == {mark}
        if word in STEP_KEYS:
            (step,) = read(PANEL + f"done: [{{sand: P120, {word}: yes}}]\n").done[0].steps
            assert step.how == {mark}
    (step,) = read(PANEL + "done: [{sand: P120, how: [wet, clean dust], across grain: no}]\n").done[0].steps
    assert step.how == {"wet", "clean dust"}


def test_a_remover_is_counted_in_passes_and_one_pass_said_is_one_pass():
    piece = read(
        PANEL + "done:\n  - {strip: mild remover, passes: 2}\n  - {strip: mild remover, passes: 1}\n"
    )
    two, one = piece.done[0].steps
    assert (two.coats, two.how, two.wait_between_h) == (2, set(), 0.0)
    assert (one.coats, one.how) == (1, {"one pass"})


@pytest.mark.parametrize("verb", sorted(VERB_WORDS))
@pytest.mark.parametrize("value", ["", "[]", "{}", "x", "P180", "3 h", "[x, y]", "{x: y}"])
def test_any_verb_with_anything_behind_it_is_a_step_or_a_finding(verb: str, value: str):
    piece, findings = read_piece(PANEL + f"done: [{{{verb}: {value}}}]\n", "t.yaml", small_knowledge())
    assert (piece is None) == any(finding.level == "error" for finding in findings)


def test_a_sequence_may_stand_under_a_surface_or_a_group():
    piece = read(TABLE + "intend:\n  legs:\n    - wax: paste wax\n  top:\n    - strip: mild remover\n")
    assert [(own.surface, own.steps[0].verb) for own in piece.intend] == [
        ("leg.1", "wax"), ("leg.2", "wax"), ("leg.3", "wax"), ("leg.4", "wax"), ("top", "strip"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("wod: oak", 't.yaml:6: wod: "wod" is not an entry that is known here – write "wood"  [unknown-key]'),
        ("build: venere", 't.yaml:6: build: "venere" is not a known build – write "veneered"  [unknown-build]'),
        ("veneer: 1", 't.yaml:6: veneer: "1" has no unit – name the unit (um, mil, mm), e.g. 0.7 mm  [unclear-amount]'),
        ("old finish: shelac", 't.yaml:6: old finish: "shelac" is not a known film or colour – write "shellac", "clear shellac" or "shellac-primer"  [unknown-film]'),
        ("old finish: {shellac: 0.7, nitro lacquer: 0.1}", "t.yaml:6: old finish: the guesses add up to 80 % – make them add up to 100 %  [shares]"),
        ("old finish: [bare, shellac]", 't.yaml:6: old finish: "bare" stands among layers – write "bare" alone, or leave it out  [bare-layer]'),
        ("old finish: []", 't.yaml:6: old finish: the list of layers is empty – write "bare" for wood without finish  [no-value]'),
        ("old finish: {}", 't.yaml:6: old finish: no guess stands here – write "unknown", or e.g. {shellac: 0.7, nitro lacquer: 0.3}  [no-value]'),
        ("old finish: {coats: 2}", 't.yaml:6: old finish: this layer does not say what it is – add "finish: unknown" or a class  [no-value]'),
        ("old finish: {finish: shellac, coat: 2}", 't.yaml:6: old finish/coat: "coat" is not an entry that is known here – write "coats"  [unknown-key]'),
        ("old finish:", "t.yaml:6: old finish: nothing stands behind the colon – write a value or take the line out  [no-value]"),
        ("old coats: many", 't.yaml:6: old coats: "many" is not a whole number from 1 to 100 – write a whole number, e.g. 2  [unclear-amount]'),
        ("soundness: sond", 't.yaml:6: soundness: "sond" is not a known state of a finish – write "sound"  [unknown-word]'),
        ("soundness: good", 't.yaml:6: soundness: "good" is not a known state of a finish – write sound, worn, scratched, crazed, soft or flaking  [unknown-word]'),
        ("worn: 30", 't.yaml:6: worn: "30" has no unit – write 30 % or a number from 0 to 1  [unclear-amount]'),
        ("contamination: [wax, wax]", 't.yaml:6: contamination: "wax" stands here a second time – keep one of the two  [word-twice]'),
        ("contamination: silicon", 't.yaml:6: contamination: "silicon" is not a known contamination – write "silicone"  [unknown-contaminant]'),
        ("old stain: rode", 't.yaml:6: old stain: "rode" is not a known old stain – write "rodent" or "old-dye"  [unknown-latent]'),
        ("damage: white rigns", 't.yaml:6: damage: "white rigns" is not a known damage – write "white rings"  [unknown-damage]'),
        ("tests: {alcool: yes}", 't.yaml:6: tests: "alcool" is not a known test – write "alcohol"  [unknown-test]'),
        ("tests: {tape: maybe}", 't.yaml:6: tests/tape: "maybe" is no answer of this test – write yes, no, lifts, comes off, flakes, holds or nothing  [unknown-word]'),
        ("tests: alcohol", 't.yaml:6: tests: entries are due here – write entries below it, e.g. "alcohol drop: dissolves"  [wrong-form]'),
        ("look: shiny", 't.yaml:6: look: "shiny" is not a known look – begin with keep, natural, bleached, stained, dyed, limed, whitewashed, oiled, waxed, opaque, distressed, antiqued …  [unknown-look]'),
        ("look: natural matt gloss", 't.yaml:6: look: "natural matt gloss" names two sheens – write one of matt, satin, semi-gloss or gloss  [unknown-look]'),
        ("look: {colour: red}", 't.yaml:6: look: the look has no kind – add "kind:" with keep, natural, bleached, stained, dyed, limed, whitewashed, oiled, waxed, opaque, distressed, antiqued …  [no-value]'),
        ("use: [table, child]", "t.yaml:6: use: a list stands where one value is due – write one value  [wrong-form]"),
        ("use: {a: b}", "t.yaml:6: use: a mapping stands where one value is due – write one value  [wrong-form]"),
        ("child: maybe", 't.yaml:6: child: "maybe" is neither yes nor no – write yes or no  [unknown-word]'),
        ("era: old", 't.yaml:6: era: "old" is no time that can be read – write 1930s, 1934, about 1900, 1925-1940 or unknown  [unclear-amount]'),
        ("constraints: no striping", 't.yaml:6: constraints: "no striping" is not a known constraint – write "no stripping"  [unknown-word]'),
        ("ready in: 3", 't.yaml:6: ready in: "3" has no unit – name the unit (min, h, day, week), e.g. 4 h  [unclear-amount]'),
        ("sells: 9-5", 't.yaml:6: sells: "9-5" runs downwards – write the lower sum first, e.g. 180-240  [unclear-amount]'),
        ("lead: perhaps", 't.yaml:6: lead: "perhaps" is not a share – write a percentage or a number from 0 to 1, e.g. 30 %  [unclear-amount]'),
        ("leaves: 2", 't.yaml:6: leaves: "leaves" has no use with "form: list" – take it out  [form]'),
        ("done: clean", "t.yaml:6: done: steps are due here – begin each step with a dash, e.g. - sand: P180  [wrong-form]"),
        ("done: []", "t.yaml:6: done: the list is empty – write a step, e.g. - clean: soap and water  [no-value]"),
        ("done: {tup: [scuff]}", 't.yaml:6: done/tup: "tup" is no surface of this piece – write face, or all, outside, inside, hidden  [unknown-surface]'),
        ("done: [[scuff]]", 't.yaml:6: done: a list stands where a step is due – write a step, e.g. "sand: P180"  [wrong-form]'),
        ("done: [scuf]", 't.yaml:6: done: "scuf" is not a known step – write "scuff"  [unknown-step]'),
        ("done: [sand P180]", 't.yaml:6: done: "sand P180" is not a known step – write "sand: P180"  [unknown-step]'),
        ("done: [{sadn: P180}]", 't.yaml:6: done: "sadn" is not a known step – write "sand"  [unknown-step]'),
        ("done: [{coats: 2}]", 't.yaml:6: done: this step does not say what is done – begin it with a verb, e.g. "sand: P180"  [no-verb]'),
        ("done: [{sand: P180, clean: naphtha}]", 't.yaml:6: done: "sand" and "clean" stand in one step – begin the second one with a dash: - clean  [two-verbs]'),
        ("done: [sand]", 't.yaml:6: done/sand: "sand" does not say with which grit – write it, e.g. "sand: P180"  [no-value]'),
        ("done: [{sand: 180}]", 't.yaml:6: done/sand: "180" names no grit in the P system – write the number on the back of the sheet with its P, e.g. P180  [unclear-amount]'),
        ("done: [clean]", 't.yaml:6: done/clean: "clean" does not say with what – write it, e.g. "clean: soap and water"  [no-value]'),
        ("done: [{coat: factory finish}]", 't.yaml:6: done/coat: "factory finish" is met on old pieces only and is not laid anew – name the class of the coat you lay  [not-a-coat]'),
        ("done: [{clean: naphta}]", 't.yaml:6: done/clean: "naphta" is not a known cleaner – write "naphtha"  [unknown-cleaner]'),
        ("done: [{coat: shellac, by: mop}]", 't.yaml:6: done/coat/by: "mop" is not a known way to lay a coat – write brush, wipe, pad, roller, spray or aerosol  [unknown-word]'),
        ("done: [{coat: shellac, film: thik}]", 't.yaml:6: done/coat/film: "thik" is not a known thickness of a coat – write "thin"  [unknown-word]'),
        ("done: [{coat: shellac, colour: red}]", 't.yaml:6: done/coat/colour: "colour" is not an entry that is known here – known here: coats, passes, by, grit, wait between, wait after, film, air, how, wiped, not wiped, not thinned, slow thinner, over-brushed, shaken, wet, steel wool, across grain, through the grits, to bare, clean dust, hollows, pores, open pores, edges, one pass, thorough, flooding, soaking, iron, nails, squeeze-out off  [unknown-key]'),
        ("done: [{coat: shellac, air: cold}]", 't.yaml:6: done/coat/air: entries are due here – write entries below it, e.g. "temperature: 12 C" and "humidity: 80 %"  [wrong-form]'),
        ("done: [{coat: shellac, air: {wind: 3}}]", 't.yaml:6: done/coat/air/wind: "wind" is not an entry that is known here – known here: temperature, humidity, sun  [unknown-key]'),
        ("done: [{expose: gale}]", 't.yaml:6: done/expose: "gale" is not a known exposure – write sun, heat, hot dish, cold, freezing, damp air, dry air, storm, standing water, closed, dark, against a wall …  [unknown-word]'),
        ("done: [{expose: [sun, freesing]}]", 't.yaml:6: done/expose: "freesing" is not a known exposure – write "freezing"  [unknown-word]'),
        ("done: [{expose: wet-storm}]", 't.yaml:6: done/expose: "wet-storm" is not a known exposure – write "storm"  [unknown-word]'),
        ("done: [{expose: table}]", 't.yaml:6: done/expose: "table" is not a known exposure – write sun, heat, hot dish, cold, freezing, damp air, dry air, storm, standing water, closed, dark, against a wall …  [unknown-word]'),
        ("done: [{expose: []}]", "t.yaml:6: done/expose: the list is empty – write what it meets, e.g. sun  [no-value]"),
        ("done: [{use: standing watr}]", 't.yaml:6: done/use: "standing watr" is not a known use – write "standing water"  [unknown-word]'),
        ("done: [{use: {sun: yes}}]", "t.yaml:6: done/use: a mapping stands where one value is due – write one value  [wrong-form]"),
        ("done: [{coat: shellac, how: fast}]", 't.yaml:6: done/coat/how: "fast" is not a known mark of a step – write wiped, not wiped, not thinned, slow thinner, over-brushed, shaken, wet, steel wool, across grain, through the grits, to bare, raise grain …  [unknown-word]'),
        ("done: [{sand: P180, how: [to bare, acros grain]}]", 't.yaml:6: done/sand/how: "acros grain" is not a known mark of a step – write "across grain"  [unknown-word]'),
        ("done: [{sand: P180, acros grain: yes}]", 't.yaml:6: done/sand/acros grain: "acros grain" is not an entry that is known here – write "across grain"  [unknown-key]'),
        ("done: [{strip: mild remover, coats: 2}]", 't.yaml:6: done/strip/coats: "strip" is not counted in coats – write "passes"  [no-use]'),
        ("done: [{coat: shellac, passes: 2}]", 't.yaml:6: done/coat/passes: "coat" is not counted in passes – write "coats"  [no-use]'),
        ("done: [{clean: naphtha, coats: 2}]", 't.yaml:6: done/clean/coats: "clean" is not counted in coats – write the step as often as you do it  [no-use]'),
        ("done: [{strip: mild remover, passes: two}]", 't.yaml:6: done/strip/passes: "two" is not a whole number from 1 to 100 – write a whole number, e.g. 2  [unclear-amount]'),
    ],
)  # fmt: skip
def test_a_finding_says_what_where_and_what_to_do(line: str, message: str):
    found = messages(PANEL + line + "\n")
    assert found == [message]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (PANEL.replace("oak", "oka"), 't.yaml:3: wood: "oka" is not a known wood – write "oak"  [unknown-wood]'),
        (PANEL.replace("wood: oak\n", ""), 't.yaml: wood: the wood is not said – add e.g. "wood: oak"; if you do not know, "hardwood" or "softwood"  [missing]'),
        (PANEL.replace("piece: Loose panel\n", ""), 't.yaml: piece: the piece has no name – add e.g. "piece: Hall table"  [missing]'),
        (PANEL.replace("{area: 0.5 m2}", "{relief: flat}"), 't.yaml:5: surfaces/face/area: "face" has no area – add e.g. "area: 0.8 m2"  [missing]'),
        (PANEL.replace("{area: 0.5 m2}", "oak"), 't.yaml:5: surfaces/face: entries are due here – write entries below it, e.g. "area: 0.8 m2"  [wrong-form]'),
        (PANEL.replace("0.5 m2", "0.5"), 't.yaml:5: surfaces/face/area: "0.5" has no unit – name the unit (m2, cm2, in2, ft2), e.g. 0.8 m2  [unclear-amount]'),
        (PANEL.replace("0.5 m2", "0.5 m2, zones: {flat: 50 %}"), "t.yaml:5: surfaces/face/zones: the zones add up to 50 % – make them add up to 100 %  [shares]"),
        (PANEL.replace("0.5 m2", "0.5 m2, zones: {corner: 1}"), 't.yaml:5: surfaces/face/zones/corner: "corner" is not an entry that is known here – known here: flat, edge, recess  [unknown-key]'),
        (PANEL.partition("surfaces")[0], 't.yaml:2: surfaces: "form: list" needs its surfaces – add "surfaces:" with e.g. "top: {area: 0.8 m2}"  [missing]'),
        (PANEL.replace("  face: {area: 0.5 m2}\n", "  {}\n"), 't.yaml:5: surfaces: no surface stands here – write e.g. "top: {area: 0.8 m2}"  [no-value]'),
        (TABLE.replace("table\nwidth", "tabel\nwidth"), 't.yaml:2: form: "tabel" is not a known form – write "table"; or "list" and the surfaces with their areas  [unknown-form]'),
        (TABLE.replace("120 cm", "120"), 't.yaml:3: width: "120" has no unit – name the unit (mm, cm, m, in, ft), e.g. 60 cm  [unclear-amount]'),
        (TABLE.replace("height: 75 cm\n", ""), "t.yaml:2: height: height is missing – give the height over all  [form]"),
        (TABLE + "surfaces:\n  tpo: {wood: oak}\n", 't.yaml:8: surfaces/tpo: "tpo" is no surface of this piece – write "top"  [unknown-surface]'),
        (TABLE + "surfaces:\n  top: {area: 2 m2}\n", 't.yaml:8: surfaces/top/area: the form gives the area and the place of its surfaces – take it out, or write "form: list"  [no-use]'),
    ],
)  # fmt: skip
def test_a_file_without_what_it_needs_says_so(text: str, message: str):
    assert message in messages(text)


def test_all_findings_come_at_once_in_the_order_of_the_file():
    found = messages(
        "piece: Table\nform: list\nwood: oka\nera: long ago\nwod: x\nsurfaces:\n  top: {area: 3, use: tabel}\n"
    )
    assert [line.split(":")[1] for line in found] == ["3", "4", "5", "7", "7"]


def test_a_form_that_is_not_known_lists_the_forms():
    found = messages(TABLE.replace("form: table", "form: spaceship"))
    assert found[0].startswith(
        't.yaml:2: form: "spaceship" is not a known form – write board, chest of drawers'
    )
    assert found[0].endswith('; or "list" and the surfaces with their areas  [unknown-form]')


def test_coats_of_several_layers_belong_to_the_layers():
    assert messages(PANEL + "old finish: [shellac, alkyd enamel]\nold coats: 3\n") == [
        't.yaml:7: old coats: "old coats" can only be said of one layer – write {finish: shellac, coats: 3} in the list  [coats-of-layers]'
    ]


def test_what_is_said_of_one_surface_does_not_mix_with_what_was_said_of_the_piece():
    piece = read(
        TABLE
        + "old finish: unknown paint\nold coats: 4\nbuild: veneer\nveneer: 0.9 mm\nlook: natural satin\n"
        "surfaces:\n  top: {old finish: unknown clear, build: plywood, sheen: gloss}\n"
    )
    top = piece.surfaces[0]
    assert top.layers == (OldLayer(kind="clear", coats=2),)
    assert top.veneer_um != 900
    assert top.look == Look(kind="natural", sheen="gloss")
    assert piece.surfaces[1].layers == (OldLayer(kind="paint", coats=4),)


def test_one_thing_said_twice_in_two_ways_is_refused():
    assert messages(PANEL + "look: natural satin\nsheen: gloss\n") == [
        't.yaml:7: sheen: the look already says "satin" – keep one of the two  [said-twice]'
    ]
    assert messages(PANEL + "done: [{sand: P120, grit: P180}]\n") == [
        "t.yaml:6: done/sand/grit: the grit stands behind the verb too – keep one of the two  [said-twice]"
    ]
    assert messages(PANEL + "done: [{scuff: synthetic pad, by: steel wool}]\n") == [
        "t.yaml:6: done/scuff/by: the tool stands behind the verb too – keep one of the two  [said-twice]"
    ]
    assert messages(PANEL + "Wood: ash\n") == [
        't.yaml:6: "Wood" stands here a second time; the first is in line 3 – keep one of the two  [key-twice]'
    ]


def test_a_size_of_nought_may_be_said_where_a_part_can_be_missing():
    piece = read(
        "piece: Chest\nform: chest\nwidth: 100 cm\ndepth: 50 cm\nheight: 50 cm\nplinth: 0\nwood: pine\n"
    )
    assert not any(surface.name == "plinth" for surface in piece.surfaces)
