"""
Score `foresee` on cases of real work: which faults it sees coming, and where it cries wolf.

    python measure/trade_cases.py FILE... [--json] [--words] [--no-plans]
    python measure/trade_cases.py --diagnose|--mend|--intend FILE... [--json]

FILE follows the schema ``trade_cases`` version 1. The forecast sees only item, wanted look, climate and
steps, through a word table that was frozen before the first score (`case_words`, `case_twin_words`)
and widened once since, by words alone (`case_wider_words`).
A case with a value that the table does not understand counts as missed, or as a false alarm; a text
counts as understood when at least half of its meaningful words are known. The stricter count, with every
single unread word, is printed beside it.

``--words`` lists what cannot be read and scores nothing. Exit 0: scored; 2: wrong call or wrong file.
"""

import argparse
import json
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

from case_pieces import Adapted, adapt_case, given_part
from case_report import report
from case_scores import (
    DEFECT_OF_FAULT,
    GROUPS,
    THRESHOLDS,
    Engine,
    Truth,
    Verdict,
    baseline,
    brier,
    merge_risks,
    rules_of_one_case,
    strictly,
    tally,
)
from case_trials import OwnPlanResult, TwinResult, own_plan_results, stability, twin_results
from case_trouble import SCORERS, lines_of, seen_of
from refettle.domain.finding import Where
from refettle.domain.piece import Own, Piece
from refettle.domain.piece_plan import PiecePlan
from refettle.domain.plan import Risk
from refettle.domain.workshop import Workshop

SCHEMA = "trade_cases"
SCHEMA_VERSION = 1
TABLES = ("case_words.py", "case_twin_words.py", "case_wider_words.py")


class WrongFileError(ValueError):
    """The file is not one that this scorer reads; the message says which and why."""


def read_cases(path: Path) -> list[Mapping[str, object]]:
    """
    Return the cases of a file.

    Parameters
    ----------
    path
        File of the schema ``trade_cases``.

    Returns
    -------
    list[Mapping[str, object]]
        Cases as written.

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
    cases = content.get("cases")
    if not isinstance(cases, list) or not all(isinstance(case, Mapping) for case in cases):
        message = f"{path}: holds no list of cases"
        raise WrongFileError(message)
    return cases


def truth_of(case: Mapping[str, object]) -> Truth:
    """
    Return what befell a case.

    Parameters
    ----------
    case
        Case as written.

    Returns
    -------
    Truth
        Outcome, defects, group, advice, inputs that were filled in.

    Raises
    ------
    WrongFileError
        If the case lacks a field that the score needs.
    """
    name = str(case.get("id", "case without id"))
    missing = [key for key in ("item", "wanted_look", "climate", "steps", "outcome") if key not in case]
    if missing:
        message = f"{name}: lacks {', '.join(missing)}"
        raise WrongFileError(message)
    if case["outcome"] not in {"fails", "sound"}:
        message = f'{name}: outcome is "{case["outcome"]}" – write fails or sound'
        raise WrongFileError(message)
    failure, evidence, item = (_mapping(case.get(key)) for key in ("failure", "evidence", "item"))
    fails = case["outcome"] == "fails"
    if fails and failure.get("defect") not in DEFECT_OF_FAULT.values():
        message = f'{name}: "{failure.get("defect")}" is not a defect of this schema'
        raise WrongFileError(message)
    second_hand = item.get("status") != "new_work"
    disputed = evidence.get("agreement") == "disputed"
    return Truth(
        case=name,
        fails=fails,
        main=str(failure.get("defect", "")) if fails else "",
        also=frozenset(map(str, _list(failure.get("also")))),
        group="disputed" if disputed else "second_hand" if second_hand else "new_work",
        second_hand=second_hand,
        advice=str(failure.get("would_have_avoided", "")),
        filled_in=tuple(map(str, _list(evidence.get("filled_in_by_writer")))),
    )


def _mapping(value: object) -> Mapping[str, object]:
    """Return a mapping, empty where there is none."""
    return value if isinstance(value, Mapping) else {}


def _list(value: object) -> Sequence[object]:
    """Return a list, empty where there is none."""
    return value if isinstance(value, list) else ()


def our_engine() -> Engine:
    """Return the rules and the planner of this tree."""
    from refettle.files.tables import load_knowledge  # noqa: PLC0415 - only when scored
    from refettle.services.foresee import foresee_own  # noqa: PLC0415
    from refettle.services.plan import plan_piece  # noqa: PLC0415

    know = load_knowledge()

    def foresee(piece: Piece, workshop: Workshop) -> Mapping[str, tuple[Risk, ...]]:
        return foresee_own(piece, workshop, know)

    def plan(piece: Piece, workshop: Workshop) -> Piece | None:
        return with_our_plan(piece, plan_piece(piece, workshop, know, brief=True))

    return Engine(foresee=foresee, plan=plan)


def with_our_plan(piece: Piece, planned: PiecePlan) -> Piece | None:
    """
    Return the piece with our plan as what is intended.

    Parameters
    ----------
    piece
        Piece that was planned.
    planned
        Its plan.

    Returns
    -------
    Piece | None
        The piece, or None where some group got no route.
    """
    own = []
    for group in planned.groups:
        if group.route is None:
            return None
        steps = tuple(cost.step for cost in group.route.steps)
        own += [
            Own(surface=name, steps=steps, where=(Where(file="our plan"),) * len(steps))
            for name in group.members
        ]
    return replace(piece, intend=tuple(own))


def judge(cases: Sequence[Mapping[str, object]], engine: Engine) -> tuple[Verdict, ...]:
    """
    Return every case with its forecast.

    Parameters
    ----------
    cases
        Cases as written.
    engine
        What is scored.

    Returns
    -------
    tuple[Verdict, ...]
        In the order of the file.
    """
    verdicts = []
    for case in cases:
        truth = truth_of(case)
        adapted = adapt_case(given_part(case))
        risks = merge_risks(engine.foresee(adapted.piece, adapted.workshop))
        verdicts.append(Verdict(truth=truth, adapted=adapted, risks=risks))
    return tuple(verdicts)


def score(verdicts: Sequence[Verdict], engine: Engine, *, plans: bool = True) -> dict[str, object]:
    """
    Return everything that is measured, ready for JSON.

    Parameters
    ----------
    verdicts
        Cases with forecasts.
    engine
        What is scored.
    plans
        Whether our own plans are made and judged too.

    Returns
    -------
    dict[str, object]
        Undisputed cases overall, groups, thresholds, baseline, Brier, stability, rules, twins, our plans.
    """
    plain = [verdict for verdict in verdicts if verdict.truth.group != "disputed"]
    strict = [strictly(verdict) for verdict in plain]
    stable = stability(plain, engine)
    return {
        **tally(plain).as_dict(),
        "groups": {
            group: tally([verdict for verdict in verdicts if verdict.truth.group == group]).as_dict()
            for group in GROUPS
        },
        "thresholds": {f"{limit:.1f}": tally(plain, limit).as_dict() for limit in THRESHOLDS},
        "every_unread_word_missed": tally(strict).as_dict(),
        "baseline": baseline(plain),
        "brier": brier(plain),
        "stability": {
            "tried": dict(stable.tried),
            "flips": [f"{flip.case}: {flip.change}" for flip in stable.flips],
        },
        "rules_of_one_case": rules_of_one_case(plain),
        "twins": [_twin_row(result) for result in twin_results(plain, engine)],
        "our_plans": [_plan_row(result) for result in own_plan_results(plain, engine)] if plans else None,
        "unmapped": {
            verdict.truth.case: list(verdict.adapted.unmapped)
            for verdict in verdicts
            if verdict.adapted.unmapped
        },
        "unread": {
            verdict.truth.case: list(verdict.adapted.unread) for verdict in verdicts if verdict.adapted.unread
        },
        "cases": [_case_row(verdict) for verdict in verdicts],
        "tables": {name: table_mark(name) for name in TABLES},
    }


def _twin_row(result: TwinResult) -> dict[str, object]:
    """Return a twin for JSON."""
    return {
        "case": result.case,
        "defect": result.defect,
        "before": round(result.before, 3),
        "after": [round(chance, 3) for chance in result.after],
        "changes": [list(changes) for changes in result.changes],
        "holds": result.holds,
    }


def _plan_row(result: OwnPlanResult) -> dict[str, object]:
    """Return an own plan for JSON."""
    return {
        "case": result.case,
        "defect": result.defect,
        "refused": result.refused,
        "left": round(result.left, 3),
        "others": list(result.others),
        "holds": result.holds,
    }


def _case_row(verdict: Verdict) -> dict[str, object]:
    """Return a case for JSON."""
    truth = verdict.truth
    return {
        "case": truth.case,
        "group": truth.group,
        "outcome": "fails" if truth.fails else "sound",
        "defect": truth.main,
        "right": verdict.right(),
        "forecast": [
            {"fault": risk.fault, "chance": round(risk.chance, 3), "rules": list(risk.rules), "why": risk.why}
            for risk in verdict.risks[:5]
        ],
    }


def table_mark(name: str) -> str:
    """
    Return a short mark of a word table, so that one sees whether two scores used the same.

    Parameters
    ----------
    name
        File beside this one.

    Returns
    -------
    str
        First twelve digits of its SHA-256.
    """
    return sha256((Path(__file__).parent / name).read_bytes()).hexdigest()[:12]


def list_words(cases: Sequence[Mapping[str, object]]) -> Iterator[str]:
    """
    Yield what cannot be read in each case; nothing is scored.

    Parameters
    ----------
    cases
        Cases as written.

    Yields
    ------
    str
        One line.
    """
    adapted: dict[str, Adapted] = {str(case.get("id")): adapt_case(given_part(case)) for case in cases}
    for name, found in adapted.items():
        for text in found.unread:
            yield f"{name}: {text}"
        for text in found.unmapped:
            yield f"{name}: not understood: {text}"
    clean = sum(1 for found in adapted.values() if not found.unread)
    yield f"{clean} of {len(adapted)} cases read without an unknown word"


_HELP = {
    "diagnose": "what is found behind the symptom",
    "mend": "the mend against the source's remedy",
    "intend": "the smallest change against what would have avoided it",
}


def _score_trouble(cases: Sequence[Mapping[str, object]], wanted: Sequence[str], *, as_json: bool) -> int:
    """Print the scores of failing cases that are not disputed, each under its name; Exit status 0."""
    truths = [(case, truth_of(case)) for case in cases]
    seen = [seen_of(case, truth) for case, truth in truths if truth.fails and truth.group != "disputed"]
    scored = {name: SCORERS[name](seen) for name in wanted}
    if as_json:
        print(json.dumps(scored if len(wanted) > 1 else scored[wanted[0]], indent=2, ensure_ascii=False))
    else:
        for name in wanted:
            print(*lines_of(name, scored[name]), sep="\n")
    return 0


def main(arguments: Sequence[str] | None = None, engine: Engine | None = None) -> int:
    """
    Score the files of a command line.

    Parameters
    ----------
    arguments
        Command line without the program's name; None = the process's own.
    engine
        What is scored; None = the rules of this tree.

    Returns
    -------
    int
        Exit status: 0 scored, 2 wrong call or wrong file.
    """
    parser = argparse.ArgumentParser(description="Score foresee on trade cases.")
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE")
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    parser.add_argument("--words", action="store_true", help="list what cannot be read; score nothing")
    parser.add_argument("--no-plans", action="store_true", help="leave out our own plans (faster)")
    for name in SCORERS:
        parser.add_argument(f"--{name}", action="store_true", help=f"score {_HELP[name]} instead")
    options = parser.parse_args(arguments)
    try:
        cases = [case for path in options.files for case in read_cases(path)]
        for case in cases:
            truth_of(case)
    except WrongFileError as error:
        print(error, file=sys.stderr)
        return 2
    if options.words:
        print(*list_words(cases), sep="\n")
        return 0
    wanted = [name for name in SCORERS if getattr(options, name)]
    if wanted:
        return _score_trouble(cases, wanted, as_json=options.json)
    used = engine or our_engine()
    verdicts = judge(cases, used)
    scored = score(verdicts, used, plans=not options.no_plans)
    if options.json:
        print(json.dumps(scored, indent=2, ensure_ascii=False))
    else:
        print(*report(scored, verdicts), sep="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
