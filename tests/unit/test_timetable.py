"""Timetables: against trying every start, with lags that tie and means that run short."""

import csv
import sys
from itertools import product
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

sys.path.insert(0, str(Path(__file__).parents[2] / "measure"))

import schedules
from refettle.solver.timetable import Lag, Problem, Work, earliest, longest, tails, violations
from refettle.solver.timetable_cpsat import place
from refettle.solver.timetable_first import first_starts, knots


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    count = draw(st.integers(1, 4))
    works = tuple(Work(draw(st.integers(0, 3)), ((0, draw(st.integers(0, 2))),)) for _ in range(count))
    lags = []
    for _ in range(draw(st.integers(0, 4))):
        first, then = draw(st.integers(0, count - 1)), draw(st.integers(0, count - 1))
        if first != then:
            lags.append(Lag(first, then, draw(st.integers(-4, 4))))
    return Problem(works, tuple(lags), (2,))


def by_trying(problem: Problem) -> int | None:
    """Return the least end over every start up to the longest there can be; None where nothing holds."""
    ends = [
        max(start + work.length for start, work in zip(starts, problem.works, strict=True))
        for starts in product(range(min(10, longest(problem)) + 1), repeat=len(problem.works))
        if not violations(problem, starts)
    ]
    return min(ends, default=None)


@settings(max_examples=40, deadline=None)
@given(problems())
def test_the_least_end_is_found_and_proved(problem: Problem) -> None:
    found = place(problem, seconds=5.0)
    best = by_trying(problem)
    assert found.proved
    if best is None:
        assert found.starts == ()
    else:
        assert found.end == found.bound == best
        assert violations(problem, found.starts) == []


@settings(max_examples=40, deadline=None)
@given(problems())
def test_a_first_timetable_holds_wherever_there_is_one(problem: Problem) -> None:
    if earliest(problem) is None:
        return
    starts = first_starts(problem, lambda part: place(part, seconds=2.0).starts)
    if starts:
        assert violations(problem, starts) == []
    else:
        assert by_trying(problem) is None


def test_knots_come_before_what_follows_them() -> None:
    problem = Problem(
        (Work(1), Work(1), Work(1), Work(1)), (Lag(0, 1, 1), Lag(1, 2, 1), Lag(2, 1, -3), Lag(2, 3, 1)), ()
    )
    assert knots(problem) == [(0,), (1, 2), (3,)]


def test_lags_alone_say_how_early_and_how_long() -> None:
    problem = Problem((Work(2), Work(3), Work(1)), (Lag(0, 1, 5), Lag(1, 2, 3)), (1,))
    assert earliest(problem) == (0, 5, 8)
    assert tails(problem) == (9, 4, 1)
    assert longest(problem) >= 9
    assert earliest(Problem((Work(1), Work(1)), (Lag(0, 1, 5), Lag(1, 0, -3)), ())) is None


def test_greatest_lags_hold() -> None:
    tied = Problem(
        (Work(2, ((0, 1),)), Work(2, ((0, 1),)), Work(2, ((0, 1),))), (Lag(0, 1, 2), Lag(1, 0, -2)), (1,)
    )
    found = place(tied, seconds=5.0)
    assert found.proved
    assert found.end == 6
    assert found.starts[1] - found.starts[0] == 2
    crowded = Problem(tied.works[:2], (Lag(0, 1, 0), Lag(1, 0, -1)), (1,))
    assert place(crowded, seconds=5.0) == place(crowded, seconds=1.0)
    assert place(crowded, seconds=5.0).starts == ()
    assert place(crowded, seconds=5.0).proved


@pytest.mark.parametrize(
    ("starts", "said"),
    [((0, 0), "held 2 times"), ((0, 1), "less than 2"), ((-1, 2), "starts at -1")],
)
def test_what_a_timetable_breaks_is_said(starts: tuple[int, ...], said: str) -> None:
    problem = Problem((Work(2, ((0, 1),)), Work(2, ((0, 1),))), (Lag(0, 1, 2),), (1,))
    assert any(said in one for one in violations(problem, starts))
    assert violations(problem, (0, 2)) == []


SM = """\
************************************************************************
file with basedata            : made up
initial value random generator: 1
************************************************************************
projects                      :  1
jobs (incl. supersource/sink ):  4
horizon                       :  9
RESOURCES
  - renewable                 :  1   R
  - nonrenewable              :  0   N
  - doubly constrained        :  0   D
************************************************************************
PROJECT INFORMATION:
pronr.  #jobs rel.date duedate tardcost  MPM-Time
    1      2      0        5        0        5
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
------------------------------------------------------------------------
  1      1     0       0
  2      1     3       1
  3      1     4       1
  4      1     0       0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1
    1
************************************************************************
"""


def test_the_measure_reads_instances_and_counts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "rcpsp").mkdir()
    (tmp_path / "rcpsp" / "one.sm").write_text(SM, encoding="utf-8")
    with (tmp_path / "best_known.csv").open("w", encoding="utf-8", newline="") as file:
        rows = csv.writer(file)
        rows.writerow(["file", "problem", "best_known", "status"])
        rows.writerow(["rcpsp/one.sm", "rcpsp", "7", "closed"])
    assert schedules.main([str(tmp_path), "--seconds", "2", "--pyjobshop"]) == 0
    shown = capsys.readouterr().out
    assert shown.count("1 of 1 proved, 0 without a plan, gap 0.0 %") == 2
    assert schedules.main([str(tmp_path / "rcpsp")]) == 2
