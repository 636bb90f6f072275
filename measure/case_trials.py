"""What is tried beside the plain score: other values for what the writer filled in, twins, our own plan."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import case_words as table
from case_pieces import Adapted
from case_reading import read_text, words
from case_scores import (
    DEFECT_OF_FAULT,
    OURS_AT_MOST,
    THRESHOLD,
    Engine,
    Verdict,
    chance_of,
    merge_risks,
)
from case_twins import twins_of
from refettle.domain.air import Air
from refettle.domain.piece import Piece
from refettle.domain.step import Step

FILLED_IN = words(
    """
temperature = temperature*; temp; heat
humidity = rh; humidity; relative humidity; moisture
waits = wait*; time*; drying; interval*; drying time*; recoat*; duration
coats = coats; number of coats; coat; number of layers; coat count
grit = grit*; abrasive*; sandpaper
species = species; substrate*; wood; wood species; timber
- = piece; part; age; method; class; chemistry; finish; build; geometry; look; condition; barrier; front
- = final; existing finish; film; clear; primer; topcoat; cleaner; stripper; of; and; product; tool; place
- = orientation
"""
)
"""Words of ``filled_in_by_writer`` → what is varied; the others cannot be varied in one number."""

SOFTWOODS = frozenset(
    {"pine", "pine-knotty", "fir", "spruce", "larch", "redwood", "cypress", "cedar-aromatic", "cedar-western"}
)
BOARDS = frozenset({"mdf", "mdf-edge", "particleboard", "hardboard", "foil"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """
    A case with one filled-in input changed.

    Attributes
    ----------
    input, change
        What was varied and how, in words.
    adapted
        The case with it.
    """

    input: str
    change: str
    adapted: Adapted


@dataclass(frozen=True, slots=True, kw_only=True)
class TwinResult:
    """
    How a case fared when changed as advised.

    Attributes
    ----------
    case, defect
        Case and its main defect.
    before
        Chance of the main defect in the case [1].
    after
        Chance in each twin [1]; empty when the advice could not be read.
    changes
        Changes of each twin.
    """

    case: str
    defect: str
    before: float
    after: tuple[float, ...] = ()
    changes: tuple[tuple[str, ...], ...] = ()

    @property
    def holds(self) -> bool:
        """Return whether the chance was there and at least halves in some twin."""
        return self.before >= 0.01 and bool(self.after) and min(self.after) <= self.before / 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPlanResult:
    """
    What our own plan leaves of a case's trouble.

    Attributes
    ----------
    case, defect
        Case and its main defect.
    refused
        Whether the look was refused.
    left
        Chance of the main defect on our plan [1].
    others
        Other faults at or above the threshold.
    """

    case: str
    defect: str
    refused: bool = False
    left: float = 0.0
    others: tuple[str, ...] = ()

    @property
    def holds(self) -> bool:
        """Return whether our plan avoids the fault and brings no other."""
        return not self.refused and self.left <= OURS_AT_MOST and not self.others


def variants_of(adapted: Adapted, filled_in: Sequence[str]) -> tuple[Variant, ...]:
    """
    Return the case with each filled-in input changed a little.

    Parameters
    ----------
    adapted
        The case in our words.
    filled_in
        Inputs that the writer assumed.

    Returns
    -------
    tuple[Variant, ...]
        One per input and change that makes a difference.
    """
    kinds = dict.fromkeys(tag for text in filled_in for tag in read_text(text, FILLED_IN).tags)
    found = [
        Variant(input=kind, change=change, adapted=vary(adapted))
        for kind in kinds
        for change, vary in VARIATIONS[kind].items()
    ]
    return tuple(
        variant
        for variant in found
        if (variant.adapted.piece, variant.adapted.workshop) != (adapted.piece, adapted.workshop)
    )


def _airs(change: Callable[[Air], Air]) -> Callable[[Adapted], Adapted]:
    """Return the variation of all air in a case."""

    def vary(adapted: Adapted) -> Adapted:
        air = replace(change(adapted.workshop.air_likely), known=True)
        workshop = replace(adapted.workshop, air_likely=air, air_safe=air)
        steps = _steps(lambda step: replace(step, air=None if step.air is None else change(step.air)))
        return replace(steps(adapted), workshop=workshop)

    return vary


def _warmer(by_k: float) -> Callable[[Adapted], Adapted]:
    """Return the variation by a difference of temperature [K]."""
    return _airs(lambda air: replace(air, temp_c=air.temp_c + by_k))


def _damper(by: float) -> Callable[[Adapted], Adapted]:
    """Return the variation by a difference of relative humidity [1]."""
    return _airs(lambda air: replace(air, rh=min(0.98, max(0.10, air.rh + by))))


def _steps(change: Callable[[Step], Step]) -> Callable[[Adapted], Adapted]:
    """Return the variation of every step in a case."""

    def vary(adapted: Adapted) -> Adapted:
        own = tuple(
            replace(part, steps=tuple(change(step) for step in part.steps)) for part in adapted.piece.intend
        )
        return replace(adapted, piece=replace(adapted.piece, intend=own))

    return vary


def _waits(factor: float) -> Callable[[Adapted], Adapted]:
    """Return the variation of all waits by a factor [1]."""
    return _steps(
        lambda step: (
            step
            if step.verb in {"use", "expose"}
            else replace(
                step, wait_between_h=step.wait_between_h * factor, wait_after_h=step.wait_after_h * factor
            )
        )
    )


def _coats(more: int) -> Callable[[Adapted], Adapted]:
    """Return the variation of all numbers of coats."""
    return _steps(lambda step: replace(step, coats=max(1, step.coats + more)) if step.is_coat else step)


def _grits(by: int) -> Callable[[Adapted], Adapted]:
    """Return the variation of all grits by steps of the shop's series."""

    def change(step: Step) -> Step:
        if step.grit not in table.GRITS:
            return step
        at = table.GRITS.index(step.grit) + by
        return replace(step, grit=table.GRITS[min(len(table.GRITS) - 1, max(0, at))])

    return _steps(change)


def _unnamed_wood(adapted: Adapted) -> Adapted:
    """Return the case with the wood left unnamed."""
    surfaces = tuple(
        surface
        if surface.wood in BOARDS
        else replace(surface, wood="softwood" if surface.wood in SOFTWOODS | {"softwood"} else "hardwood")
        for surface in adapted.piece.surfaces
    )
    return replace(adapted, piece=replace(adapted.piece, surfaces=surfaces))


VARIATIONS: Mapping[str, Mapping[str, Callable[[Adapted], Adapted]]] = {
    "temperature": {"3 °C cooler": _warmer(-3.0), "3 °C warmer": _warmer(3.0)},
    "humidity": {"10 points drier": _damper(-0.10), "10 points damper": _damper(0.10)},
    "waits": {"waits × 0.7": _waits(0.7), "waits × 1.4": _waits(1.4)},
    "coats": {"one coat less": _coats(-1), "one coat more": _coats(1)},
    "grit": {"one grit coarser": _grits(-1), "one grit finer": _grits(1)},
    "species": {"wood unnamed": _unnamed_wood},
}
"""What is varied and how far."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flip:
    """
    A verdict that did not stand when a filled-in input was varied.

    Attributes
    ----------
    case, input, change
        Which case, which input and how it was varied.
    """

    case: str
    input: str
    change: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Stability:
    """
    How verdicts stand when filled-in inputs are varied.

    Attributes
    ----------
    tried
        Variants per input [1].
    flips
        Verdicts that changed.
    """

    tried: Mapping[str, int]
    flips: tuple[Flip, ...]


def stability(verdicts: Sequence[Verdict], engine: Engine) -> Stability:
    """
    Return how verdicts stand when each filled-in input is varied.

    Parameters
    ----------
    verdicts
        Cases with forecasts.
    engine
        What is scored.

    Returns
    -------
    Stability
        Variants tried and verdicts that changed.
    """
    tried = dict.fromkeys(VARIATIONS, 0)
    flips = []
    for verdict in verdicts:
        for variant in variants_of(verdict.adapted, verdict.truth.filled_in):
            tried[variant.input] += 1
            risks = merge_risks(engine.foresee(variant.adapted.piece, variant.adapted.workshop))
            if replace(verdict, risks=risks).right() != verdict.right():
                flips.append(Flip(case=verdict.truth.case, input=variant.input, change=variant.change))
    return Stability(tried=tried, flips=tuple(flips))


def twin_results(verdicts: Sequence[Verdict], engine: Engine) -> tuple[TwinResult, ...]:
    """
    Return how every failing case fares when changed as advised.

    Parameters
    ----------
    verdicts
        Cases with forecasts.
    engine
        What is scored.

    Returns
    -------
    tuple[TwinResult, ...]
        One per failing case.
    """
    results = []
    for verdict in verdicts:
        truth = verdict.truth
        if not truth.fails:
            continue
        twins = twins_of(truth.advice, verdict.adapted.piece, verdict.adapted.workshop)
        after = [merge_risks(engine.foresee(twin.piece, twin.workshop)) for twin in twins]
        results.append(
            TwinResult(
                case=truth.case,
                defect=truth.main,
                before=chance_of(verdict.risks, truth.main),
                after=tuple(chance_of(risks, truth.main) for risks in after),
                changes=tuple(twin.changes for twin in twins),
            )
        )
    return tuple(results)


def own_plan_results(verdicts: Sequence[Verdict], engine: Engine) -> tuple[OwnPlanResult, ...]:
    """
    Return what our own plan leaves of the trouble of each failing second-hand case.

    Parameters
    ----------
    verdicts
        Cases with forecasts.
    engine
        What is scored.

    Returns
    -------
    tuple[OwnPlanResult, ...]
        One per failing second-hand case.
    """
    results = []
    for verdict in verdicts:
        truth, adapted = verdict.truth, verdict.adapted
        if not truth.fails or not truth.second_hand:
            continue
        planned = engine.plan(_open(adapted.piece), adapted.workshop)
        if planned is None:
            results.append(OwnPlanResult(case=truth.case, defect=truth.main, refused=True))
            continue
        risks = merge_risks(engine.foresee(planned, adapted.workshop))
        others = tuple(
            f"{risk.fault} {risk.chance:.2f}"
            for risk in risks
            if risk.chance >= THRESHOLD and DEFECT_OF_FAULT.get(risk.fault) != truth.main
        )
        left = chance_of(risks, truth.main)
        results.append(OwnPlanResult(case=truth.case, defect=truth.main, left=left, others=others))
    return tuple(results)


def _open(piece: Piece) -> Piece:
    """Return the piece with nothing intended."""
    return replace(piece, intend=())
