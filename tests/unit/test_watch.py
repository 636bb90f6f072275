"""Glimpses note what is read of them beyond what was known."""

from dataclasses import replace

from planning_groups import know
from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.state import Film, State, changed
from refettle.domain.step import Step
from refettle.planning.watch import GlimpsedSituation, GlimpsedState, Notes
from refettle.rules.situation import Situation, shared_film_barrier

STATE = State(
    stack=(Film(cls="shellac-waxed", um=40, old=True), Film(cls="paste-wax", um=2)),
    on_top=(("wax", 60),),
    in_wood=(("tannin", 80),),
)


def test_a_value_a_property_and_a_question_are_each_noted_by_their_own_name():
    notes: Notes = set()
    glimpse = GlimpsedState(STATE, "before", notes)
    assert glimpse.grit == 0
    assert glimpse.top == STATE.top
    assert glimpse.soiled("wax") == STATE.soiled("wax")
    assert notes == {("before", "grit", ""), ("before", "top", ""), ("before", "soiled", "wax")}


def test_what_is_laid_ready_is_not_noted():
    notes: Notes = set()
    asked = frozenset({("before", "soiled", "wax")})
    glimpse = GlimpsedState(STATE, "before", notes, [("grit", 0), ("bare", False)], asked)
    assert (glimpse.grit, glimpse.bare, glimpse.soiled("wax")) == (0, False, 0.6)
    assert not notes
    glimpse.strength("tannin")
    assert notes == {("before", "strength", "tannin")}


def test_a_changed_copy_is_a_real_state_and_counts_as_a_look_at_everything():
    for change in (replace, changed):
        notes: Notes = set()
        copy = change(GlimpsedState(STATE, "before", notes), grit=180)
        assert type(copy) is State
        assert copy == replace(STATE, grit=180)
        assert {name for _, name, _ in notes} >= {"stack", "on_top", "in_wood", "damp", "charged"}


def test_comparing_or_hashing_counts_as_a_look_at_everything():
    notes: Notes = set()
    glimpse = GlimpsedState(STATE, "before", notes)
    assert glimpse == STATE
    assert ("before", "wood_um", "") in notes
    notes.clear()
    assert hash(glimpse) == hash(STATE)
    assert ("before", "wood_um", "") in notes


def test_reads_through_a_situation_are_noted_by_part():
    frame = Situation(
        know=know(), ground=Ground(wood="oak"), before=STATE, step=Step(verb="use"), air=Air(), coat_no=2
    )
    glimpse = GlimpsedSituation(frame, [(("ground", "wood", ""), "oak")])
    glimpse.look_at(STATE)
    assert glimpse.wood.id == "oak"
    assert not glimpse.notes
    assert glimpse.below == STATE.top
    assert glimpse.coat_no == 2
    assert glimpse.step.verb == "use"
    shared_film_barrier(know(), glimpse.before, "blocks_tannin")
    assert glimpse.notes == {
        ("before", "top", ""), ("before", "stack", ""), ("coat", "coat_no", ""), ("step", "verb", ""),
    }  # fmt: skip
