"""Whatever the order of the rows, the same row wins and none is lost."""

from hypothesis import given
from hypothesis import strategies as st

from refettle.knowledge.resolve import order_rows
from refettle.knowledge.rows import GRADE_RANK, GRADES, READINGS, FactRow, SourceRow

SOURCES = {key: SourceRow(key=key, title=key, rank=rank) for key, rank in (("a", 1), ("b", 5), ("c", 30))}

ROWS = st.lists(
    st.builds(
        FactRow,
        id=st.integers(0, 9999).map(lambda number: f"f-{number:04d}"),
        subject=st.just("wood:oak"),
        prop=st.just("hardness"),
        value=st.just("0.6"),
        low=st.none(),
        high=st.none(),
        unit=st.just("1"),
        at_c=st.sampled_from([None, 10.0, 20.0, 23.0, 40.0]),
        at_rh_pct=st.none(),
        at_um=st.none(),
        source=st.sampled_from(["a", "b", "c", "not listed"]),
        grade=st.sampled_from(GRADES),
        place=st.just("p. 2"),
        note=st.just(""),
        read_as=st.sampled_from(READINGS),
        superseded_by=st.sampled_from(["", "", "f-1"]),
    ),
    min_size=1,
    max_size=8,
    unique_by=lambda row: row.id,
)


@given(rows=ROWS, data=st.data())
def test_the_winner_does_not_depend_on_the_order_of_the_rows(
    rows: list[FactRow], data: st.DataObject
) -> None:
    shuffled = data.draw(st.permutations(rows))
    assert order_rows(rows, SOURCES) == order_rows(shuffled, SOURCES)


@given(rows=ROWS)
def test_no_row_is_lost(rows: list[FactRow]) -> None:
    assert sorted(row.id for row in order_rows(rows, SOURCES)) == sorted(row.id for row in rows)


@given(rows=ROWS)
def test_no_standing_row_at_room_conditions_has_a_better_grade_than_the_winner(rows: list[FactRow]) -> None:
    winner = order_rows(rows, SOURCES)[0]
    room = [row for row in rows if not row.superseded_by and row.at_c in {None, 20.0, 23.0}]
    if room:
        assert GRADE_RANK[winner.grade] == min(GRADE_RANK[row.grade] for row in room)
