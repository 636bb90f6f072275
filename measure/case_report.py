"""The score of trade cases as lines for the terminal."""

from collections.abc import Iterator, Mapping, Sequence

from case_scores import GROUPS, THRESHOLDS, Tally, Verdict, strictly, tally


def _mapping(value: object) -> Mapping[str, object]:
    """Return a mapping, empty where there is none."""
    return value if isinstance(value, Mapping) else {}


def _list(value: object) -> Sequence[object]:
    """Return a list, empty where there is none."""
    return value if isinstance(value, list) else ()


def report(scored: Mapping[str, object], verdicts: Sequence[Verdict]) -> Iterator[str]:
    """
    Yield the score as lines for the terminal.

    Parameters
    ----------
    scored
        Result of `score`.
    verdicts
        Cases with forecasts.

    Yields
    ------
    str
        One line.
    """
    plain = [verdict for verdict in verdicts if verdict.truth.group != "disputed"]
    yield "Cases not disputed"
    yield _tally_line("  all", tally(plain))
    for group in GROUPS:
        yield _tally_line(
            f"  {group}", tally([verdict for verdict in verdicts if verdict.truth.group == group])
        )
    yield _tally_line("  every unread word a miss", tally([strictly(verdict) for verdict in plain]))
    yield "By the chance from which a fault counts as forecast"
    for limit in THRESHOLDS:
        yield _tally_line(f"  {limit:.1f}", tally(plain, limit))
    yield from _base_lines(scored)
    yield from _wrong_lines(verdicts)
    yield from _trial_lines(scored)
    unread = _mapping(scored["unread"])
    yield f"Words that no table knows: {len(unread)} cases" if unread else "Words that no table knows: none"
    for case, found in unread.items():
        lost = " (counts against us)" if case in _mapping(scored["unmapped"]) else ""
        yield f"  {case}: {'; '.join(map(str, _list(found)))}{lost}"
    yield "Word tables: " + ", ".join(f"{name} {mark}" for name, mark in _mapping(scored["tables"]).items())


def _tally_line(label: str, counts: Tally) -> str:
    """Return counts as one line."""
    return (
        f"{label:<28} foreseen {counts.foreseen:>3} of {counts.failing:<3}"
        f" false alarms {counts.false_alarms:>2} of {counts.sound}"
    )


def _base_lines(scored: Mapping[str, object]) -> Iterator[str]:
    """Yield the baseline and the Brier scores."""
    base, points = _mapping(scored["baseline"]), _mapping(scored["brier"])
    yield (
        f"Always the three commonest ({', '.join(map(str, _list(base['defects'])))}): "
        f"{base['foreseen']} of {base['failing']}, false alarms {base['false_alarms']}"
    )
    yield (
        f"Brier score: anything wrong {points['case']:.3f} (base rate {points['case_base']:.3f}), "
        f"each defect {points['defect']:.4f} (base rate {points['defect_base']:.4f})"
    )


def _wrong_lines(verdicts: Sequence[Verdict]) -> Iterator[str]:
    """Yield the cases that were judged wrongly, with what was forecast."""
    wrong = [verdict for verdict in verdicts if not verdict.right()]
    yield f"Judged wrongly: {len(wrong)}"
    for verdict in wrong:
        truth = verdict.truth
        forecast = ", ".join(f"{risk.fault} {risk.chance:.2f}" for risk in verdict.risks[:4]) or "nothing"
        yield f"  {truth.case} {truth.group}, {truth.main or 'sound'}: {forecast}"


def _trial_lines(scored: Mapping[str, object]) -> Iterator[str]:
    """Yield stability, single-case rules, twins and our own plans."""
    stable = _mapping(scored["stability"])
    flips = _list(stable["flips"])
    tried = _mapping(stable["tried"])
    total = sum(int(str(count)) for count in tried.values())
    yield f"Filled-in inputs varied: {total - len(flips)} of {total} verdicts stand"
    yield "  " + ", ".join(f"{name} {count}" for name, count in tried.items())
    yield from (f"  changed: {flip}" for flip in flips)
    single = _mapping(scored["rules_of_one_case"])
    yield f"Rules that decide one case only: {len(single)}"
    yield from (f"  {rule}: {case}" for rule, case in single.items())
    twins = [_mapping(row) for row in _list(scored["twins"])]
    yield f"Twins: the fault at least halves in {sum(bool(row['holds']) for row in twins)} of {len(twins)}"
    for row in twins:
        if not row["holds"]:
            yield f"  {row['case']} {row['defect']}: {row['before']} to {row['after']} by {row['changes']}"
    if scored["our_plans"] is None:
        yield "Our own plans: not asked for"
        return
    plans = [_mapping(row) for row in _list(scored["our_plans"])]
    held = sum(bool(row["holds"]) for row in plans)
    yield f"Our own plan avoids it and brings nothing else: {held} of {len(plans)}"
    for row in plans:
        if not row["holds"]:
            state = "refused" if row["refused"] else f"left {row['left']}, others {row['others']}"
            yield f"  {row['case']} {row['defect']}: {state}"
