"""
Score `diagnose`, `mend` and the smallest change of `foresee` on cases of real work.

Diagnose and mend see item, climate, the steps up to the one after which the trouble showed, and the symptom in
the source's words; the smallest change sees the whole sequence and no symptom.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from case_pieces import Adapted, adapt_case, given_part
from case_remedy_words import change_kind, deepest, read_remedy
from case_scores import DEFECT_OF_FAULT, Truth
from case_twins import ALTERNATIVE, read_advice
from refettle.domain.piece import Surface
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.signs import SignBook
from refettle.services.trouble import Diagnosis

PLACES = 3
_SEALS = frozenset({"seal", "prime", "condition"})
_WASHES = frozenset({"clean", "rinse", "neutralise"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """
    A failing case as a person would tell it.

    Attributes
    ----------
    truth
        What befell it.
    adapted
        The case up to the moment the trouble showed.
    whole
        The case with all its steps.
    symptom
        The source's words.
    ended
        Whether it showed after the last step.
    remedy
        What the source did.
    """

    truth: Truth
    adapted: Adapted
    whole: Adapted
    symptom: str
    ended: bool
    remedy: str


def seen_of(case: Mapping[str, object], truth: Truth) -> Seen:
    """
    Return a failing case as a person would tell it.

    Parameters
    ----------
    case
        Case as written.
    truth
        What befell it.

    Returns
    -------
    Seen
        Steps after the one that showed the trouble are cut off.
    """
    given = given_part(case)
    steps = given["steps"]
    listed: Sequence[object] = steps if isinstance(steps, list) else ()
    after = case.get("seen_after_step")
    until = after if isinstance(after, int) else len(listed)
    failure = case.get("failure")
    told = failure if isinstance(failure, Mapping) else {}
    return Seen(
        truth=truth,
        adapted=adapt_case({**given, "steps": list(listed[:until])}),
        whole=adapt_case(given),
        symptom=str(case.get("symptom", "")),
        ended=until >= len(listed),
        remedy=str(told.get("remedy", "")),
    )


def diagnosed(seen: Seen) -> list[tuple[str, float]]:
    """Return the defects in the schema's words with their chance [1], likeliest first; something else is empty."""
    from refettle.services.foresee import closed  # noqa: PLC0415 - only when scored

    sums: dict[str, float] = {}
    know, book = _facts()
    piece = seen.adapted.piece
    for surface in piece.surfaces:
        own = piece.intend[0].steps
        found = _diagnose(know, book, seen, surface, closed(own) if seen.ended else own)
        for fault, chance in found.faults:
            defect = DEFECT_OF_FAULT.get(fault, fault)
            sums[defect] = sums.get(defect, 0.0) + chance / len(piece.surfaces)
    return sorted(sums.items(), key=lambda pair: (-pair[1], pair[0]))


def _facts() -> tuple[Knowledge, SignBook]:
    """Return facts and signs."""
    from refettle.files.sign_tables import load_signs  # noqa: PLC0415 - only when scored
    from refettle.files.tables import load_knowledge  # noqa: PLC0415

    return load_knowledge(), load_signs()


def _diagnose(
    know: Knowledge, book: SignBook, seen: Seen, surface: Surface, steps: tuple[Step, ...]
) -> Diagnosis:
    """Return what may be behind the trouble on one surface."""
    from refettle.services.trouble import diagnose  # noqa: PLC0415 - only when scored

    adapted = seen.adapted
    return diagnose(know, book, adapted.piece, adapted.workshop, surface, says=seen.symptom, steps=steps)


def score_diagnose(cases: Sequence[Seen]) -> dict[str, object]:
    """
    Return how often the defect is the first suspect, and among the first three.

    Parameters
    ----------
    cases
        Failing cases.

    Returns
    -------
    dict[str, object]
        Counts, the baseline of the commonest defects, a row per case.
    """
    rows = []
    for seen in cases:
        order = [defect for defect, _ in diagnosed(seen)]
        accepted = seen.truth.accepted
        place = next((at for at, defect in enumerate(order, start=1) if defect in accepted), 0)
        unread = bool(seen.adapted.unmapped)
        rows.append(
            {
                "case": seen.truth.case,
                "defect": seen.truth.main,
                "place": 0 if unread else place,
                "said": order[:PLACES],
            }
        )
    places = [int(str(row["place"])) for row in rows]
    counts = Counter(seen.truth.main for seen in cases)
    commonest = [d for d, _ in sorted(counts.items(), key=lambda row: (-row[1], row[0]))[:PLACES]]
    return {
        "asked": len(rows),
        "first": sum(place == 1 for place in places),
        "first_three": sum(1 <= place <= PLACES for place in places),
        "baseline": {
            "defects": commonest,
            "first": sum(commonest[0] in seen.truth.accepted for seen in cases) if commonest else 0,
            "first_three": sum(bool(seen.truth.accepted & set(commonest)) for seen in cases),
        },
        "cases": rows,
    }


def score_mend(cases: Sequence[Seen]) -> dict[str, object]:
    """
    Return how often the mend that costs least goes as deep as the source's remedy.

    Parameters
    ----------
    cases
        Failing cases.

    Returns
    -------
    dict[str, object]
        Cases whose remedy is understood, those agreed, those where a further way agrees; a row per case.
    """
    from refettle.services.foresee import closed  # noqa: PLC0415 - only when scored
    from refettle.services.put_right import put_right  # noqa: PLC0415

    know, book = _facts()
    rows, unread = [], []
    for seen in cases:
        remedy = read_remedy(seen.remedy)
        if not remedy.depths:
            unread.append(seen.truth.case)
            continue
        piece, shop = seen.adapted.piece, seen.adapted.workshop
        ways: list[tuple[str, ...]] = []
        for surface in piece.surfaces[:1]:
            own = piece.intend[0].steps
            found = _diagnose(know, book, seen, surface, closed(own) if seen.ended else own)
            right = put_right(know, piece, shop, surface, found)
            ways.append(tuple(mend.depth for mend in right.mends))
        depths = ways[0] if ways else ()
        first = depths[0] if depths else ""
        rows.append(
            {
                "case": seen.truth.case,
                "ours": first,
                "ways": list(dict.fromkeys(depths)),
                "remedy": sorted(remedy.depths),
                "agreed": bool(first) and first in remedy.depths and not seen.adapted.unmapped,
            }
        )
    return {
        "asked": len(rows),
        "agreed": sum(bool(row["agreed"]) for row in rows),
        "deeper": sum(_deeper(row) for row in rows),
        "remedy_not_understood": unread,
        "cases": rows,
    }


def _deeper(row: Mapping[str, object]) -> bool:
    """Return whether ours goes deeper than every remedy named."""
    ours, named = str(row["ours"]), row["remedy"]
    depths = [str(depth) for depth in named] if isinstance(named, list) else []
    return bool(ours) and ours not in depths and deepest([ours, *depths]) == ours


def kinds_of_change(before: Sequence[Step], after: Sequence[Step]) -> frozenset[str]:
    """
    Return what kinds of change lead from one sequence to another.

    Parameters
    ----------
    before, after
        Sequences.

    Returns
    -------
    frozenset[str]
        Kinds in the words of `case_remedy_words.CHANGE_KINDS`.
    """
    kinds: set[str] = set()
    left, new = list(before), []
    for step in after:
        if step in left:
            left.remove(step)
        else:
            new.append(step)
    for step in new:
        was = next((old for old in left if old.verb == step.verb and old.what == step.what), None)
        swapped = next((old for old in left if step.is_coat and old.is_coat), None)
        if was is not None:
            left.remove(was)
            kinds |= set(_altered(was, step))
        elif swapped is not None and step.verb == swapped.verb:
            left.remove(swapped)
            kinds.add("barrier" if step.verb in _SEALS else "material")
        else:
            kinds.add(_put_in(step))
    if left:
        kinds.add("leave out")
    return frozenset(kinds)


def _altered(was: Step, now: Step) -> Iterator[str]:
    """Yield in what way a step was altered."""
    if (was.wait_after_h, was.wait_between_h) != (now.wait_after_h, now.wait_between_h):
        yield "wait"
    if (
        (was.film, was.method) != (now.film, now.method)
        or "wiped" in now.how - was.how
        or "not wiped" in was.how - now.how
    ):
        yield "lay"
    if was.coats != now.coats:
        yield "coats"
    if was.air != now.air:
        yield "air"
    if was.grit != now.grit or now.how - was.how:
        yield "sand"
    if was.how - now.how:
        yield "leave out"


def _put_in(step: Step) -> str:
    """Return what kind of change a step put in is."""
    if step.verb in _WASHES:
        return "wash"
    if step.verb in _SEALS:
        return "barrier"
    return {"scuff": "key", "sand": "sand", "wait": "wait", "strip": "strip", "climate": "air"}.get(
        step.verb, "material"
    )


def score_intend(cases: Sequence[Seen]) -> dict[str, object]:
    """
    Return how often the smallest change is of a kind that the source says would have avoided the fault.

    Parameters
    ----------
    cases
        Failing cases.

    Returns
    -------
    dict[str, object]
        Cases whose advice is understood, those agreed, a row per case.
    """
    from refettle.services.foresee import closed  # noqa: PLC0415 - only when scored
    from refettle.services.mend_alike import smallest_change  # noqa: PLC0415

    know, _ = _facts()
    rows, unread = [], []
    for seen in cases:
        parts = ALTERNATIVE.split(seen.truth.advice)
        advised = {change_kind(change) for part in parts for change in read_advice(part)}
        if not advised:
            unread.append(seen.truth.case)
            continue
        piece = seen.whole.piece
        changes = smallest_change(piece, seen.whole.workshop, know)
        ours: set[str] = set()
        words: list[str] = []
        for change in changes.values():
            if change is not None:
                ours |= kinds_of_change(closed(piece.intend[0].steps), change.steps)
                words.append(change.words)
        agreed = bool(ours & advised) and not seen.whole.unmapped
        rows.append(
            {
                "case": seen.truth.case,
                "ours": sorted(ours),
                "words": list(dict.fromkeys(words)),
                "advised": sorted(advised),
                "agreed": agreed,
            }
        )
    return {
        "asked": len(rows),
        "agreed": sum(bool(row["agreed"]) for row in rows),
        "advice_not_understood": unread,
        "cases": rows,
    }


def lines_of(name: str, scored: Mapping[str, object]) -> Iterator[str]:
    """
    Yield a score as lines for the terminal.

    Parameters
    ----------
    name
        ``diagnose``, ``mend`` or ``intend``.
    scored
        Its score.

    Yields
    ------
    str
        One line.
    """
    cases = scored["cases"]
    rows: Sequence[Mapping[str, object]] = cases if isinstance(cases, list) else ()
    if name == "diagnose":
        base = scored["baseline"]
        always = base if isinstance(base, Mapping) else {}
        yield f"Diagnose: first {scored['first']}, in first three {scored['first_three']} of {scored['asked']}"
        yield f"  always the commonest faults: first {always['first']}, in first three {always['first_three']}"
        yield from (f"  {row['case']}: {row['defect']} at place {row['place']}; {', '.join(map(str, _listed(row['said'])))}"
                    for row in rows if row["place"] != 1)  # fmt: skip
        return
    yield f"{name.capitalize()}: agreed {scored['agreed']} of {scored['asked']}"
    if name == "mend":
        yield f"  deeper than the remedy: {scored['deeper']}"
    for row in rows:
        if not row["agreed"]:
            theirs = row["remedy"] if name == "mend" else row["advised"]
            yield f"  {row['case']}: ours {row['ours'] or 'nothing'}, theirs {', '.join(map(str, _listed(theirs)))}"
    unread = scored["remedy_not_understood" if name == "mend" else "advice_not_understood"]
    if unread:
        yield f"  not understood, so not asked: {', '.join(map(str, _listed(unread)))}"


def _listed(value: object) -> Sequence[object]:
    """Return a list, empty where there is none."""
    return value if isinstance(value, list) else ()


SCORERS = {"diagnose": score_diagnose, "mend": score_mend, "intend": score_intend}
