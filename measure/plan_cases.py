"""
Score our plans of whole pieces by what experienced finishers expect of them.

    python measure/plan_cases.py FILE... [--json] [--steps]

FILE follows the schema ``plan_cases`` version 1; its header holds the rule of scoring. The planner sees only
situation, item, workshop and surfaces of a piece, through word tables that were frozen before the first score
(`plan_case_words`). Prints per piece whether its plan passes and what it misses, the totals, and beside them how
many warnings a plan gives and the share of the expected warnings among its first five.

``--steps`` shows each plan in the file's words besides. Exit 0: scored; 2: wrong call or wrong file.
"""

import argparse
import json
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import plan_case_words as table
from plan_case_acts import Ending, endings_of, lanes_of, steps_told, warnings_of
from plan_case_patterns import Lane, Matcher, Pattern, names_of
from plan_case_pieces import Adapted, adapt_piece, given_part
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge

SCHEMA = "plan_cases"
SCHEMA_VERSION = 1
KINDS = ("must", "must_not", "warn", "look_feasible", "top_coat")
FIRST = 5
"""Warnings that a person reads before tiring."""

Raw = Mapping[str, object]
Planner = Callable[[Piece, Workshop, Knowledge], PiecePlan]


class WrongFileError(ValueError):
    """The file is not one that this scorer reads; the message says which and why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """
    A plan in the file's words.

    Attributes
    ----------
    lanes
        One per surface of the piece.
    endings
        The same order.
    warnings
        In the order of the page.
    """

    lanes: tuple[Lane, ...]
    endings: tuple[Ending, ...]
    warnings: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """
    One expectation and whether it is met.

    Attributes
    ----------
    kind
        One of `KINDS`, or ``prefer``.
    id
        Its id in the piece.
    met
        Whether it is.
    entry
        The expectation as written.
    found
        What the plan has instead, in a few words.
    """

    kind: str
    id: str
    met: bool
    entry: Raw
    found: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """
    What came of one piece.

    Attributes
    ----------
    piece
        Id in the file.
    judged
        Expectations that count.
    preferred
        Good practice: reported apart.
    read
        The plan.
    unread
        Words of the piece that no table knows.
    """

    piece: str
    judged: tuple[Judged, ...]
    preferred: tuple[Judged, ...]
    read: Read
    unread: tuple[str, ...]

    @property
    def missed(self) -> tuple[Judged, ...]:
        """Return what is not met."""
        return tuple(judged for judged in self.judged if not judged.met)

    @property
    def passed(self) -> bool:
        """Return whether nothing is missed."""
        return not self.missed


def read_pieces(path: Path) -> tuple[list[Raw], Matcher]:
    """
    Return the pieces of a file and the matcher with its tables.

    Parameters
    ----------
    path
        File of the schema ``plan_cases``.

    Returns
    -------
    tuple[list[Raw], Matcher]
        Pieces as written.

    Raises
    ------
    WrongFileError
        If the file cannot be read or follows another schema.
    """
    from ruamel.yaml import YAML  # noqa: PLC0415 - heavy
    from ruamel.yaml.error import YAMLError  # noqa: PLC0415

    try:
        content = YAML(typ="safe").load(path.read_text(encoding="utf-8"))
    except OSError as error:
        message = f"{path}: cannot be read ({error.strerror})"
        raise WrongFileError(message) from error
    except (YAMLError, UnicodeDecodeError) as error:
        message = f"{path}: is not YAML: {' '.join(str(error).split())}"
        raise WrongFileError(message) from error
    if not isinstance(content, Mapping) or "schema" not in content:
        message = f'{path}: names no schema – this scorer reads files with "schema: {SCHEMA}"'
        raise WrongFileError(message)
    if content["schema"] != SCHEMA or content.get("schema_version") != SCHEMA_VERSION:
        found = f"{content['schema']} version {content.get('schema_version')}"
        message = f"{path}: follows schema {found} – this scorer reads {SCHEMA} version {SCHEMA_VERSION}"
        raise WrongFileError(message)
    pieces = content.get("pieces")
    if not isinstance(pieces, list) or not all(isinstance(raw, Mapping) for raw in pieces):
        message = f"{path}: holds no list of pieces"
        raise WrongFileError(message)
    for raw in pieces:
        missing = [key for key in ("situation", "item", "workshop", "surfaces", "expect") if key not in raw]
        if missing:
            message = f"{path}: {raw.get('id', 'a piece without id')}: lacks {', '.join(missing)}"
            raise WrongFileError(message)
    return pieces, Matcher({key: content.get(key) or {} for key in ("groups", "blocks", "roles")})


def read_plan(plan: PiecePlan, adapted: Adapted, know: Knowledge) -> Read:
    """Return a plan in the file's words."""
    lanes = lanes_of(plan, adapted, know)
    return Read(
        lanes=lanes, endings=endings_of(plan, lanes, adapted), warnings=warnings_of(plan, adapted, know)
    )


def judge_piece(expect: Raw, read: Read, matcher: Matcher) -> tuple[Judged, ...]:
    """
    Return the expectations of a piece that count, each met or not.

    Parameters
    ----------
    expect
        ``expect`` of the piece.
    read
        The plan.
    matcher
        Tables of the file.

    Returns
    -------
    tuple[Judged, ...]
        In the order of `KINDS`; what does not apply is left out.
    """
    judges: Mapping[str, Callable[[Raw, Read, Matcher], tuple[bool | None, str]]] = {
        "must": judge_must,
        "must_not": judge_must_not,
        "warn": judge_warn,
        "look_feasible": judge_look,
        "top_coat": judge_top,
    }
    made = []
    for kind, judge in judges.items():
        for entry in _entries(expect, kind):
            met, found = judge(entry, read, matcher)
            if met is not None:
                made.append(Judged(kind=kind, id=str(entry["id"]), met=met, entry=entry, found=found))
    return tuple(made)


def judge_preferred(expect: Raw, read: Read, matcher: Matcher) -> tuple[Judged, ...]:
    """Return the good practice that is written as a pattern, met or not."""
    made = []
    for entry in _entries(expect, "prefer"):
        if not {"op", "op_in", "any_of"} & set(entry):
            continue
        met, found = judge_must({"surface": "any", **entry}, read, matcher)
        if met is not None:
            made.append(Judged(kind="prefer", id=str(entry["id"]), met=met, entry=entry, found=found))
    return tuple(made)


def _entries(expect: Raw, kind: str) -> list[Raw]:
    """Return the entries of one kind."""
    found = expect.get(kind)
    return [entry for entry in found if isinstance(entry, Mapping)] if isinstance(found, Sequence) else []


def _meant(entry: Raw, read: Read) -> tuple[Lane, ...]:
    """Return the lanes that an expectation speaks of."""
    surface = str(entry.get("surface", "any"))
    if surface in {"each", "any", "piece"}:
        return read.lanes
    return tuple(lane for lane in read.lanes if lane.surface == surface)


def _applying(entry: Raw, lanes: Sequence[Lane], matcher: Matcher) -> list[Lane]:
    """Return the lanes on which the condition of an expectation holds."""
    when = entry.get("when")
    return [lane for lane in lanes if not isinstance(when, Mapping) or matcher.holds(when, lane)]


def judge_must(entry: Raw, read: Read, matcher: Matcher) -> tuple[bool | None, str]:
    """
    Return whether a step that must be is there; None where it does not count.

    Parameters
    ----------
    entry
        The expectation.
    read
        The plan.
    matcher
        Tables of the file.

    Returns
    -------
    tuple[bool | None, str]
        The answer, and the surfaces that lack it.
    """
    owed = [lane for lane in _applying(entry, _meant(entry, read), matcher) if not lane.refused]
    if entry.get("unless_refused"):
        refused = {ending.surface for ending in read.endings if not ending.planned}
        owed = [lane for lane in owed if lane.surface not in refused]
    if not owed:
        return None, ""
    lacking = [lane.surface for lane in owed if not matcher.holds(_bare(entry), lane)]
    one_is_enough = str(entry.get("surface")) in {"any", "piece"}
    met = len(lacking) < len(owed) if one_is_enough else not lacking
    return met, "" if met else f"lacking on {', '.join(dict.fromkeys(lacking))}"


def _bare(entry: Raw) -> Pattern:
    """Return an expectation without what is not a pattern."""
    return {key: value for key, value in entry.items() if key not in {"surface", "when"}}


def judge_must_not(entry: Raw, read: Read, matcher: Matcher) -> tuple[bool | None, str]:
    """Return whether a step that must not be is absent; None where it does not count."""
    lanes = _applying(entry, _meant(entry, read), matcher)
    if not lanes and "when" in entry:
        return None, ""
    pattern = _bare(entry)
    done = [
        lane.surface
        for lane in lanes
        for act in matcher.matching(pattern, lane, loose=False)
        if not matcher.lifted(pattern, act)
    ]
    return not done, f"done on {', '.join(dict.fromkeys(done))}" if done else ""


def judge_warn(entry: Raw, read: Read, matcher: Matcher) -> tuple[bool | None, str]:
    """Return whether one of the names is among the warnings of the piece; None where it does not count."""
    if not _applying(entry, _meant(entry, read), matcher):
        return None, ""
    met = bool(names_of(entry.get("any_of", ())) & set(read.warnings))
    return met, "" if met else f"warned of {', '.join(read.warnings) or 'nothing'}"


def judge_look(entry: Raw, read: Read, _matcher: Matcher) -> tuple[bool | None, str]:
    """Return whether plan and finishers agree on whether the look can be had."""
    endings = [end for end in read.endings if end.surface == str(entry.get("surface"))]
    planned = all(end.planned for end in endings)
    offered = frozenset(look for end in endings for look in end.offered)
    listed = {base_look(name) for name in names_of(entry.get("alternatives") or ())}
    refused_well = not planned and bool(listed & offered)
    match str(entry.get("feasible")):
        case "yes":
            met = planned
        case "no":
            met = refused_well
        case _:
            risks = names_of(entry.get("risk") or ())
            met = refused_well or (planned and bool(risks & set(read.warnings)))
    if met:
        return True, ""
    return (
        False,
        "planned, no such risk named" if planned else f"refused, offering {', '.join(sorted(offered))}",
    )


def base_look(name: str) -> str:
    """
    Return an alternative without the word for the difference.

    Parameters
    ----------
    name
        E.g. ``natural_clear_later``.

    Returns
    -------
    str
        E.g. ``natural_clear``.
    """
    for suffix in table.SUFFIXES:
        name = name.removesuffix(suffix)
    return name


def judge_top(entry: Raw, read: Read, _matcher: Matcher) -> tuple[bool | None, str]:
    """Return whether the top coat will do; None where opinions are open or nothing is planned."""
    surface = str(entry.get("surface"))
    tops = {end.top for end in read.endings if end.top and surface in {"each", end.surface}}
    wrong = tops & names_of(entry.get("not_acceptable") or ())
    if wrong:
        return False, f"ends in {', '.join(sorted(wrong))}"
    if tops and tops <= names_of(entry.get("acceptable") or ()):
        return True, ""
    return None, ""


def judge(pieces: Sequence[Raw], matcher: Matcher, know: Knowledge, planner: Planner) -> list[Verdict]:
    """
    Return what came of each piece.

    Parameters
    ----------
    pieces
        As written.
    matcher
        Tables of their file.
    know
        Facts.
    planner
        What is scored.

    Returns
    -------
    list[Verdict]
        One per piece.
    """
    verdicts = []
    for raw in pieces:
        adapted = adapt_piece(given_part(raw))
        plan = planner(adapted.piece, adapted.workshop, know)
        read = read_plan(plan, adapted, know)
        expect = raw["expect"] if isinstance(raw["expect"], Mapping) else {}
        verdicts.append(
            Verdict(
                piece=str(raw.get("id")),
                judged=judge_piece(expect, read, matcher),
                preferred=judge_preferred(expect, read, matcher),
                read=read,
                unread=adapted.unread,
            )
        )
    return verdicts


def score(verdicts: Sequence[Verdict]) -> dict[str, object]:
    """
    Return the totals.

    Parameters
    ----------
    verdicts
        What came of each piece.

    Returns
    -------
    dict[str, object]
        ``pieces, passed, expectations, met, misses``.
    """
    judged = [one for verdict in verdicts for one in verdict.judged]
    return {
        "pieces": len(verdicts),
        "passed": sum(verdict.passed for verdict in verdicts),
        "expectations": len(judged),
        "met": sum(one.met for one in judged),
        "misses": [
            {
                "piece": verdict.piece,
                "kind": one.kind,
                "id": one.id,
                "expected": {key: value for key, value in one.entry.items() if key not in {"id", "basis"}},
                "found": one.found,
            }
            for verdict in verdicts
            for one in verdict.missed
        ],
    }


def early_share(verdicts: Sequence[Verdict]) -> tuple[int, int]:
    """Return how many expected warnings stand among the first `FIRST` of their plan, and how many are expected."""
    warned = [(one, v.read.warnings[:FIRST]) for v in verdicts for one in v.judged if one.kind == "warn"]
    early = sum(bool(names_of(one.entry.get("any_of", ())) & set(first)) for one, first in warned)
    return early, len(warned)


def report(verdicts: Sequence[Verdict], *, steps: bool = False) -> Iterator[str]:
    """
    Yield the score in lines.

    Parameters
    ----------
    verdicts
        What came of each piece.
    steps
        Show the plans too.

    Yields
    ------
    str
        One line.
    """
    for verdict in verdicts:
        met = sum(one.met for one in verdict.judged)
        yield f"{verdict.piece}: {'pass' if verdict.passed else 'miss'}, {met} of {len(verdict.judged)}"
        for one in verdict.missed:
            wish = {key: value for key, value in one.entry.items() if key not in {"id", "basis"}}
            yield f"    {one.kind} {one.id}: {json.dumps(wish, ensure_ascii=False)} – {one.found}"
        yield from (f"    not read: {text}" for text in verdict.unread)
        if steps:
            yield f"    warns of {', '.join(verdict.read.warnings)}"
            for end in verdict.read.endings:
                yield f"    {end.surface}: {'planned' if end.planned else 'refused'}, top coat {end.top}"
            for surface, lines in steps_told(verdict.read.lanes).items():
                yield from (f"        {surface}: {line}" for line in lines)
    yield from totals(verdicts)


def totals(verdicts: Sequence[Verdict]) -> Iterator[str]:
    """Yield the totals in lines."""
    judged = [one for verdict in verdicts for one in verdict.judged]
    yield ""
    yield f"Pieces whose plan passes: {sum(v.passed for v in verdicts)} of {len(verdicts)}"
    yield f"Expectations met: {sum(one.met for one in judged)} of {len(judged)}"
    for kind in KINDS:
        own = [one.met for one in judged if one.kind == kind]
        yield f"    {kind}: {sum(own)} of {len(own)}"
    preferred = [one.met for v in verdicts for one in v.preferred]
    yield f"Good practice, apart: {sum(preferred)} of {len(preferred)}"
    counts = sorted(len(v.read.warnings) for v in verdicts) or [0]
    early, expected = early_share(verdicts)
    yield f"Warnings per plan: {sum(counts) / len(counts):.1f} ({counts[0]} to {counts[-1]})"
    yield f"Expected warnings among a plan's first {FIRST}: {early} of {expected}"


def main(arguments: Sequence[str] | None = None, planner: Planner | None = None) -> int:
    """
    Score the files of a command line.

    Parameters
    ----------
    arguments
        Command line without the program's name; None = the process's own.
    planner
        What is scored; None = `refettle.services.plan.plan_piece`.

    Returns
    -------
    int
        Exit status: 0 scored, 2 wrong call or wrong file.
    """
    parser = argparse.ArgumentParser(description="Score plans by what finishers expect of them.")
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE")
    parser.add_argument("--json", action="store_true", help="print the score as JSON")
    parser.add_argument("--steps", action="store_true", help="show each plan in the file's words")
    options = parser.parse_args(arguments)
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - reads the tables
    from refettle.services.plan import plan_piece  # noqa: PLC0415

    know = load_knowledge()
    verdicts: list[Verdict] = []
    try:
        for path in options.files:
            pieces, matcher = read_pieces(path)
            verdicts += judge(pieces, matcher, know, planner or plan_piece)
    except WrongFileError as error:
        print(error, file=sys.stderr)
        return 2
    if options.json:
        print(json.dumps(score(verdicts), indent=2, ensure_ascii=False))
    else:
        print(*report(verdicts, steps=options.steps), sep="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
