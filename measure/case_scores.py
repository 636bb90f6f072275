"""
The arithmetic of the score: what counts as foreseen, as a false alarm, as a twin that holds.

Knows nothing of rules: an `Engine` is two functions, so that tests can put a fake in its place.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from case_pieces import Adapted
from refettle.domain.piece import Piece
from refettle.domain.plan import Risk
from refettle.domain.workshop import Workshop

THRESHOLD = 0.3
THRESHOLDS = (0.2, 0.3, 0.4)
GROUPS = ("second_hand", "new_work", "disputed")
PLACES = 3
"""A defect must be among this many likeliest faults to count as foreseen."""

OURS_AT_MOST = 0.1
"""Chance [1] that our own plan may leave of the fault that befell the case."""

DEFECT_OF_FAULT: Mapping[str, str] = {
    "bleed-through": "bleed_through",
    "knot-bleed": "knot_bleed",
    "yellowing": "yellowing",
    "craters": "fisheye",
    "blushing": "blushing_haze",
    "wrinkling": "wrinkling_lifting",
    "peeling": "peeling",
    "cracking": "cracking_alligatoring",
    "bubbles": "bubbles_blisters",
    "soft-film": "tacky_no_cure",
    "sticking-shut": "blocking",
    "softened-in-use": "softening_in_use",
    "blotching": "blotching",
    "uneven-colour": "uneven_colour",
    "stain-rejected": "stain_rejected",
    "glue-spots": "glue_spots",
    "sanding-marks": "sanding_marks",
    "sand-through": "sand_through",
    "raised-grain": "raised_grain",
    "swelling": "swelling_fuzz",
    "veneer-lifts": "veneer_lifting",
    "iron-stain": "iron_stain",
    "rust-specks": "rust_specks",
    "alkali-darkening": "chemical_darkening",
    "residue-bloom": "residue_leach",
    "oil-bleed-back": "oil_bleed_back",
    "water-heat-marks": "water_heat_marks",
    "press-marks": "pressmarks",
    "runs": "runs_sags",
    "orange-peel": "orange_peel",
    "lap-marks": "brush_lap_marks",
    "odour": "odour",
    "mould-returns": "mould",
}
"""Our fault ids in the words of the schema."""

HAZARDS = frozenset({"lead-dust"})
"""Dangers to people, no defects of the work: the schema has no word for them, so they are not scored."""

Risks = tuple[Risk, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Engine:
    """
    What is scored.

    Attributes
    ----------
    foresee
        Piece with `intend` and workshop → risks per surface.
    plan
        Piece and workshop → the piece with our own plan as `intend`; None where the look is refused.
    """

    foresee: Callable[[Piece, Workshop], Mapping[str, Risks]]
    plan: Callable[[Piece, Workshop], Piece | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """
    What befell a case; never seen by the adapter.

    Attributes
    ----------
    case
        Number of the case.
    fails
        Whether it failed.
    main
        Main defect in the words of the schema; empty for a sound case.
    also
        Further defects that are accepted.
    group
        ``second_hand``, ``new_work`` or ``disputed``.
    second_hand
        Whether it is second-hand, disputed or not.
    advice
        What would have avoided it.
    filled_in
        Inputs that the writer of the case had to assume.
    """

    case: str
    fails: bool
    main: str = ""
    also: frozenset[str] = frozenset()
    group: str = "second_hand"
    second_hand: bool = True
    advice: str = ""
    filled_in: tuple[str, ...] = ()

    @property
    def accepted(self) -> frozenset[str]:
        """Return every defect that counts as the right answer."""
        return self.also | {self.main} if self.fails else frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """
    A case with what was forecast for it.

    Attributes
    ----------
    truth
        What befell it.
    adapted
        The case in our words.
    risks
        Forecast faults, likeliest first, surfaces merged.
    """

    truth: Truth
    adapted: Adapted
    risks: Risks

    def foreseen(self, threshold: float = THRESHOLD) -> bool:
        """Return whether an accepted defect is among the first three with at least that chance [1]."""
        return not self.adapted.unmapped and self.hit(threshold) is not None

    def hit(self, threshold: float = THRESHOLD) -> Risk | None:
        """Return the likeliest risk that names an accepted defect among the first three, or None."""
        for risk in self.risks[:PLACES]:
            if risk.chance >= threshold and DEFECT_OF_FAULT.get(risk.fault) in self.truth.accepted:
                return risk
        return None

    def false_alarm(self, threshold: float = THRESHOLD) -> bool:
        """Return whether a sound case is called faulty at that chance [1], or was not understood."""
        if self.truth.fails:
            return False
        return bool(self.adapted.unmapped) or any(risk.chance >= threshold for risk in self.risks)

    def right(self, threshold: float = THRESHOLD) -> bool:
        """Return whether the forecast was right at that chance [1]."""
        return self.foreseen(threshold) if self.truth.fails else not self.false_alarm(threshold)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """
    Counts over some cases.

    Attributes
    ----------
    failing, foreseen, sound, false_alarms
        Numbers of cases [1].
    misses
        Failing cases that were not foreseen.
    alarmed
        Sound cases that were called faulty.
    """

    failing: int
    foreseen: int
    sound: int
    false_alarms: int
    misses: tuple[str, ...]
    alarmed: tuple[str, ...]

    def as_dict(self) -> dict[str, object]:
        """Return the counts for JSON."""
        return {
            "failing": self.failing,
            "foreseen": self.foreseen,
            "sound": self.sound,
            "false_alarms": self.false_alarms,
            "misses": list(self.misses),
            "false_alarm_cases": list(self.alarmed),
        }


def merge_risks(by_surface: Mapping[str, Risks]) -> Risks:
    """
    Return the risks of all surfaces as one list, likeliest first.

    Parameters
    ----------
    by_surface
        Risks per surface.

    Returns
    -------
    tuple[Risk, ...]
        Per fault its greatest chance; hazards to people left out.
    """
    most: dict[str, Risk] = {}
    for risks in by_surface.values():
        for risk in risks:
            if risk.fault not in HAZARDS and risk.chance > most.get(risk.fault, _NO_RISK).chance:
                most[risk.fault] = risk
    return tuple(sorted(most.values(), key=lambda risk: (-risk.chance, risk.fault)))


_NO_RISK = Risk(fault="", chance=0.0, step=0, why="")


def chance_of(risks: Iterable[Risk], defect: str) -> float:
    """
    Return the chance of a defect [1].

    Parameters
    ----------
    risks
        Merged risks.
    defect
        Defect in the words of the schema.

    Returns
    -------
    float
        Greatest chance of a fault that means this defect, 0 if none does.
    """
    return max((risk.chance for risk in risks if DEFECT_OF_FAULT.get(risk.fault) == defect), default=0.0)


def tally(verdicts: Sequence[Verdict], threshold: float = THRESHOLD) -> Tally:
    """
    Count what was foreseen and what was a false alarm.

    Parameters
    ----------
    verdicts
        Cases with forecasts.
    threshold
        Chance [1] from which a fault counts as forecast.

    Returns
    -------
    Tally
        The counts.
    """
    failing = [verdict for verdict in verdicts if verdict.truth.fails]
    sound = [verdict for verdict in verdicts if not verdict.truth.fails]
    misses = tuple(verdict.truth.case for verdict in failing if not verdict.foreseen(threshold))
    alarmed = tuple(verdict.truth.case for verdict in sound if verdict.false_alarm(threshold))
    return Tally(
        failing=len(failing),
        foreseen=len(failing) - len(misses),
        sound=len(sound),
        false_alarms=len(alarmed),
        misses=misses,
        alarmed=alarmed,
    )


def strictly(verdict: Verdict) -> Verdict:
    """
    Return the verdict with every unread word counted as not understood.

    Parameters
    ----------
    verdict
        Case with its forecast.

    Returns
    -------
    Verdict
        The same under the strict reading.
    """
    return replace(verdict, adapted=replace(verdict.adapted, unmapped=verdict.adapted.unread))


def baseline(verdicts: Sequence[Verdict]) -> dict[str, object]:
    """
    Return how "always the three commonest faults" does on the same cases.

    Parameters
    ----------
    verdicts
        Cases with what befell them.

    Returns
    -------
    dict[str, object]
        The three defects, failing cases they cover, false alarms (every sound case).
    """
    failing = [verdict.truth for verdict in verdicts if verdict.truth.fails]
    counts = Counter(truth.main for truth in failing)
    commonest = [defect for defect, _ in sorted(counts.items(), key=lambda row: (-row[1], row[0]))[:PLACES]]
    return {
        "defects": commonest,
        "failing": len(failing),
        "foreseen": sum(1 for truth in failing if truth.accepted & set(commonest)),
        "false_alarms": sum(1 for verdict in verdicts if not verdict.truth.fails),
    }


def brier(verdicts: Sequence[Verdict]) -> dict[str, float]:
    """
    Return Brier scores: mean squared distance of forecast chances from what happened.

    Parameters
    ----------
    verdicts
        Cases with forecasts.

    Returns
    -------
    dict[str, float]
        ``case``: chance that anything goes wrong against whether it did; ``case_base``: the share of
        failing cases said for every case. ``defect``: each defect in each case, accepted further defects
        left out; ``defect_base``: the share of each main defect said for every case.
    """
    if not verdicts:
        return {"case": 0.0, "case_base": 0.0, "defect": 0.0, "defect_base": 0.0}
    share = sum(verdict.truth.fails for verdict in verdicts) / len(verdicts)
    case = [(_any_chance(verdict.risks), float(verdict.truth.fails)) for verdict in verdicts]
    rate = Counter(verdict.truth.main for verdict in verdicts if verdict.truth.fails)
    pairs: list[tuple[float, float]] = []
    base: list[tuple[float, float]] = []
    for verdict in verdicts:
        for defect in sorted(set(DEFECT_OF_FAULT.values()) - verdict.truth.also):
            happened = float(verdict.truth.fails and defect == verdict.truth.main)
            pairs.append((chance_of(verdict.risks, defect), happened))
            base.append((rate[defect] / len(verdicts), happened))
    return {
        "case": _mean_square(case),
        "case_base": _mean_square([(share, happened) for _, happened in case]),
        "defect": _mean_square(pairs),
        "defect_base": _mean_square(base),
    }


def _any_chance(risks: Iterable[Risk]) -> float:
    """Return the chance that anything goes wrong, causes taken as independent [1]."""
    sound = 1.0
    for risk in risks:
        sound *= 1.0 - risk.chance
    return 1.0 - sound


def _mean_square(pairs: Sequence[tuple[float, float]]) -> float:
    """Return the mean squared difference."""
    return sum((first - second) ** 2 for first, second in pairs) / len(pairs)


def rules_of_one_case(verdicts: Sequence[Verdict]) -> dict[str, str]:
    """
    Return the rules that decide one foreseen case only, each with that case.

    Parameters
    ----------
    verdicts
        Cases with forecasts.

    Returns
    -------
    dict[str, str]
        Rule id → case.
    """
    cases: dict[str, list[str]] = {}
    for verdict in verdicts:
        risk = verdict.hit() if verdict.truth.fails else None
        for rule in risk.rules if risk else ():
            cases.setdefault(rule, []).append(verdict.truth.case)
    return {rule: found[0] for rule, found in sorted(cases.items()) if len(found) == 1}
