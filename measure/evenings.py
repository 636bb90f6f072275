"""
Lay made-up pieces into evenings, and mend the plans after something went wrong. Prints, judges nothing.

    python measure/evenings.py [--pieces 1 3 6 12 25] [--seconds 2] [--threads 2] [--rich] [--workshops N] [--json]

Each plan is checked slot by slot with its set-ups on the clock. ``--workshops`` lays so many random workshops, takes an
evening away or makes two days cold, mends the plan and counts what the checker finds.
"""

import argparse
import json
import sys
import time
from collections.abc import Iterator
from dataclasses import replace

from evening_pieces import made
from refettle.solver.evenings import Evenings
from refettle.solver.evenings_better import improve
from refettle.solver.evenings_check import violations
from refettle.solver.evenings_keep import keep
from refettle.solver.evenings_sweep import sweep
from refettle.solver.evenings_whole import Limits

Row = dict[str, int | float | str]


def without_session(problem: Evenings, place: int) -> Evenings:
    """Return a problem with one session gone."""
    gone = problem.sessions[place]
    sessions = tuple(one for one in problem.sessions if one != gone)
    hands = tuple(one for one in problem.hands if not gone.begin <= one[0] < gone.end)
    return replace(problem, sessions=sessions, hands=hands)


def colder(problem: Evenings, begin: int, end: int, share: float = 0.5) -> Evenings:
    """Return a problem in whose air things dry more slowly from one slot until another."""
    curves = []
    for curve in problem.curves:
        grown = [curve[0]]
        for slot in range(1, len(curve)):
            rate = curve[slot] - curve[slot - 1]
            grown.append(grown[-1] + rate * (share if begin < slot <= end else 1))
        curves.append(tuple(grown))
    return replace(problem, curves=tuple(curves))


def laid(count: int, seconds: float, threads: int, *, rich: bool) -> Row:
    """Return what a first plan and a better one are worth."""
    problem = made(count, rich=rich)
    began = time.monotonic()
    first, left = sweep(problem)
    took = time.monotonic() - began
    row: Row = {"pieces": count, "sweep_s": round(took, 3), "sweep_value": first.value, "no_room": len(left)}
    if left:
        return row
    limits = Limits(seconds=max(0.1, seconds - took), clock=time.monotonic, threads=threads)
    better = improve(problem, first, limits)
    return row | {"seconds": seconds, "value": better.value, "violations": len(violations(problem, better))}


def mended(seed: int, count: int, *, cold: bool) -> Row:
    """Return what mending a plan took and moved."""
    problem = made(count, seed=seed, rich=bool(seed % 2))
    old, left = sweep(problem)
    row: Row = {"workshop": seed, "pieces": count, "no_room": len(left), "violations": 0}
    if left:
        return row
    used = sorted(
        {
            n
            for n, one in enumerate(problem.sessions)
            for at in old.starts
            if at is not None and one.begin <= at < one.end
        }
    )
    place = used[len(used) // 3]
    now, day = problem.sessions[place].begin, 1440 // problem.slot_min
    changed = colder(problem, now, now + 2 * day) if cold else without_session(problem, place)
    began = time.monotonic()
    plan, missing = keep(changed, old, now, Limits(effort=1.0))
    took = time.monotonic() - began
    homes = {t: one for one in problem.sessions for t in range(one.begin, one.end)}
    later = [(a, b) for a, b in zip(old.starts, plan.starts, strict=True) if a is not None and a >= now]
    same = sum(1 for a, b in later if b is not None and homes[a] == homes[b])
    row |= {"mend_s": round(took, 3), "same_session": round(same / max(1, len(later)), 3)}
    found = 0 if missing else len(violations(changed, plan))
    return row | {"no_room": len(missing), "violations": len(violations(problem, old)) + found}


def _rows(asked: argparse.Namespace) -> Iterator[Row]:
    """Yield a row a problem."""
    if asked.workshops:
        for seed in range(asked.workshops):
            yield mended(seed, asked.pieces[seed % len(asked.pieces)], cold=bool(seed // 2 % 2))
        return
    for count in asked.pieces:
        yield laid(count, asked.seconds, asked.threads, rich=asked.rich)


def main(words: list[str] | None = None) -> int:
    """Run the measure and print it."""
    parser = argparse.ArgumentParser(description="Lay made-up pieces into evenings.")
    parser.add_argument("--pieces", type=int, nargs="+", default=[1, 3, 6, 12, 25])
    parser.add_argument("--seconds", type=float, default=2.0)
    parser.add_argument("--threads", type=int, default=2)
    parser.add_argument("--workshops", type=int, default=0)
    parser.add_argument("--rich", action="store_true")
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args(words)
    rows = []
    for row in _rows(asked):
        rows.append(row)
        if not asked.json:
            sys.stdout.write("  ".join(f"{name} {one}" for name, one in row.items()) + "\n")
            sys.stdout.flush()
    if asked.json:
        sys.stdout.write(json.dumps(rows, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
