"""
Run the scheduler's core on published instances beside their best known values. Prints, judges nothing.

    python measure/schedules.py DIR [--seconds 10] [--threads 2] [--json] [--pyjobshop]

DIR holds ``best_known.csv`` and folders of instances, ``.sm`` (RCPSP) and ``.sch`` (RCPSP/max), read by the library
``psplib``. Every timetable is checked without the solver. ``--pyjobshop`` runs that library on the same instances with
the same limits. An instance without a timetable that is proved to have none counts as proved.
"""

import argparse
import csv
import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from refettle.solver.timetable import Lag, Problem, Timetable, Work, violations
from refettle.solver.timetable_cpsat import place

FORMATS = {".sm": "psplib", ".sch": "rcpsp_max"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Instance:
    """
    A published instance.

    Attributes
    ----------
    name
        Path below the folder.
    problem
        In our words.
    best
        Best known end [slots]; None where there is no timetable.
    kind
        Folder.
    """

    name: str
    problem: Problem
    best: int | None
    kind: str


def read_instance(path: Path, row: Mapping[str, str]) -> Instance:
    """Return an instance with its best known value."""
    import psplib  # type: ignore[import-untyped]  # noqa: PLC0415 - only when run

    read = psplib.parse(path, instance_format=FORMATS[path.suffix])
    works, lags = [], []
    for number, activity in enumerate(read.activities):
        mode = activity.modes[0]
        works.append(Work(mode.duration, tuple((at, take) for at, take in enumerate(mode.demands) if take)))
        delays = activity.delays or [mode.duration] * len(activity.successors)
        lags += [Lag(number, then, least) for then, least in zip(activity.successors, delays, strict=True)]
    means = tuple(resource.capacity for resource in read.resources)
    best = None if row["status"] == "unsat" else int(row["best_known"])
    return Instance(
        name=row["file"], problem=Problem(tuple(works), tuple(lags), means), best=best, kind=row["problem"]
    )


def instances(folder: Path) -> Iterator[Instance]:
    """Yield the instances of a folder that ``best_known.csv`` names."""
    with (folder / "best_known.csv").open(encoding="utf-8", newline="") as rows:
        for row in csv.DictReader(rows):
            path = folder / row["file"]
            if path.suffix in FORMATS and path.exists():
                yield read_instance(path, row)


def by_library(problem: Problem, seconds: float, threads: int) -> Timetable:
    """Return the timetable that PyJobShop finds."""
    from pyjobshop import Model, SolveStatus  # type: ignore[import-untyped]  # noqa: PLC0415 - only on wish

    model = Model()
    means = [model.add_renewable(capacity) for capacity in problem.means]
    tasks = [model.add_task() for _ in problem.works]
    for task, work in zip(tasks, problem.works, strict=True):
        amounts = dict(work.takes)
        model.add_mode(task, means, work.length, [amounts.get(at, 0) for at in range(len(means))])
    for lag in problem.lags:
        model.add_start_before_start(tasks[lag.first], tasks[lag.then], delay=lag.least)
    result = model.solve(time_limit=seconds, num_workers=threads, display=False)
    if result.status == SolveStatus.INFEASIBLE:
        return Timetable(starts=(), end=0, bound=0, proved=True)
    if result.status not in {SolveStatus.OPTIMAL, SolveStatus.FEASIBLE}:
        return Timetable(starts=(), end=0, bound=0, proved=False)
    starts = tuple(task.start for task in result.best.tasks)
    end = max(start + work.length for start, work in zip(starts, problem.works, strict=True))
    proved = result.status == SolveStatus.OPTIMAL
    return Timetable(starts=starts, end=end, bound=round(result.lower_bound), proved=proved)


def scored(found: Sequence[tuple[Instance, Timetable]]) -> dict[str, object]:
    """
    Return how a row of instances went.

    Parameters
    ----------
    found
        Instances with their timetables.

    Returns
    -------
    dict[str, object]
        ``instances``, ``proved``, ``without_a_plan`` (none found where there is one), ``mean_gap_pct`` over the best
        known value of those with a timetable, and ``wrong``: timetables that break something, or beat what is proved.
    """
    gaps = [
        100.0 * (table.end - one.best) / one.best
        for one, table in found
        if table.starts and one.best is not None
    ]
    return {
        "instances": len(found),
        "proved": sum(table.proved for _, table in found),
        "without_a_plan": sum(not table.starts and not table.proved for _, table in found),
        "mean_gap_pct": round(sum(gaps) / len(gaps), 3) if gaps else 0.0,
        "wrong": [one.name for one, table in found if _wrong(one, table)],
    }


def _wrong(one: Instance, table: Timetable) -> bool:
    """Return whether a timetable breaks something, or says that there is none where one is known."""
    if table.starts:
        return bool(violations(one.problem, table.starts)) or one.best is None
    return table.proved and one.best is not None


def main(arguments: Sequence[str] | None = None) -> int:
    """Run what the command line asks for; 0 done, 2 wrong call."""
    parser = argparse.ArgumentParser(description="Run the scheduler's core on published instances.")
    parser.add_argument("folder", type=Path, metavar="DIR")
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--threads", type=int, default=2)
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--pyjobshop", action="store_true", help="run that library too, with the same limits")
    options = parser.parse_args(arguments)
    if not (options.folder / "best_known.csv").is_file():
        print(f"{options.folder}: holds no best_known.csv", file=sys.stderr)
        return 2
    ours: list[tuple[Instance, Timetable]] = []
    theirs: list[tuple[Instance, Timetable]] = []
    for one in instances(options.folder):
        ours.append((one, place(one.problem, seconds=options.seconds, threads=options.threads)))
        if options.pyjobshop:
            theirs.append((one, by_library(one.problem, options.seconds, options.threads)))
    kinds = dict.fromkeys(one.kind for one, _ in ours)
    result: dict[str, object] = {}
    for kind in kinds:
        result[kind] = scored([pair for pair in ours if pair[0].kind == kind])
        if theirs:
            result[f"{kind}, pyjobshop"] = scored([pair for pair in theirs if pair[0].kind == kind])
    if options.json:
        print(json.dumps(result, indent=2))
        return 0
    for kind, score in result.items():
        row = score if isinstance(score, dict) else {}
        print(
            f"{kind:<24}{row['proved']:>3} of {row['instances']} proved, {row['without_a_plan']} without a plan,"
            f" gap {row['mean_gap_pct']} %" + (f", WRONG {row['wrong']}" if row["wrong"] else "")
        )
    return 0


if __name__ == "__main__":
    sys.exit(main())
