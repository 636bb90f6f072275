"""A coat in an air: may it be laid today, and the hours to each stage there, against the air of its label."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import inf, isfinite
from typing import Final

from refettle.domain.air import STANDARD_AIR, Air
from refettle.domain.ground import Ground
from refettle.domain.plan import Hit, Range
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.physics.air import dew_margin_k, dew_point_c
from refettle.physics.drying import FAMILIES, progress_rate, stage_spread
from refettle.planning.effects import drying_rate
from refettle.planning.engine import play
from refettle.services.over import coat_step, usual_coats

DEW_MARGIN_K: Final = 3.0
_STAGES: Final = {
    "touch": "touch_h",
    "recoat_from": "recoat_from_h",
    "recoat_until": "recoat_until_h",
    "sand": "sand_h",
    "wrap": "wrap_h",
    "cured": "cured_h",
}
_RISES: Final = 0.1
_SLOW: Final = 2.0
_SHUT: Final = Step(verb="use", what="ordinary use", how=frozenset({"shut"}))
_CLINGS: Final = 0.10
_LONGEST_H: Final = 24.0 * 365
_HOUR_STEPS: Final = 40
_COUPLED: Final = frozenset({"topcoat", "paint", "prime", "seal", "wax"})


@dataclass(frozen=True, slots=True, kw_only=True)
class StageHours:
    """
    Hours to one stage.

    Attributes
    ----------
    stage
        ``touch``, ``recoat_from``, ``recoat_until``, ``sand``, ``wrap``, ``cured`` or ``shut``: faces may touch.
    label_h
        In the air of the label [h]; infinite where it never comes.
    here_h
        In this air, with its width [h]; infinite where the coat stands still.
    """

    stage: str
    label_h: float
    here_h: Range


@dataclass(frozen=True, slots=True, kw_only=True)
class InAir:
    """
    A class in an air.

    Attributes
    ----------
    facts
        Facts of the class.
    air
        The air.
    barred
        Why it must not be laid: ``cold``, ``hot``, ``damp``, ``dew``; empty where it may.
    stands_still
        Whether it does not dry at all.
    slower
        How many times longer recoating takes than in the air of the label [1].
    dew_c, margin_k
        Dew point [°C]; how far a piece as warm as the air is above it [K].
    stages
        Hours to each stage; a stage that the class does not have is left out.
    clings
        Chance [1] that faces go on sticking once that is as good as it gets.
    risks
        What the air makes likelier, likeliest first.
    """

    facts: FilmFacts
    air: Air
    barred: tuple[str, ...]
    stands_still: bool
    slower: float
    dew_c: float
    margin_k: float
    stages: tuple[StageHours, ...]
    clings: float
    risks: tuple[Hit, ...]

    @property
    def slow(self) -> bool:
        """Return whether recoating takes more than twice as long as on the label."""
        return self.slower > _SLOW

    def hours(self, stage: str) -> StageHours | None:
        """Return the hours to a stage; None where the class does not have it."""
        return next((hours for hours in self.stages if hours.stage == stage), None)


def class_in_air(know: Knowledge, cls: str, air: Air) -> InAir:
    """
    Return how a class gets on in an air.

    Parameters
    ----------
    know
        All facts.
    cls
        Id of the class.
    air
        The air, steady day and night.

    Returns
    -------
    InAir
        Whether it may be laid, and the hours.

    Notes
    -----
    Hours by `refettle.physics.drying`, with its widths. Faces may touch when the rule for sticking shut, asked of
    the usual number of coats after ever longer waits, comes within a tenth of the least it ever says.
    """
    facts = know.film(cls)
    margin = dew_margin_k(air.temp_c, air.temp_c, max(air.rh, 0.01))
    stages = [_stage(facts, stage, air) for stage, field in _STAGES.items() if getattr(facts, field) > 0]
    clings = 0.0
    if facts.dry_um > 0 and facts.family != "wax":
        here, clings = _shut_hours(know, cls, air)
        label, _ = _shut_hours(know, cls, STANDARD_AIR)
        wide = stage_spread("cured", air.temp_c, air.rh)
        if here > 0:
            stages.append(StageHours(stage="shut", label_h=label, here_h=_spread(here, wide)))
    recoat = next((stage for stage in stages if stage.stage == "recoat_from"), None)
    slower = recoat.here_h.likely / recoat.label_h if recoat and recoat.label_h else 1.0
    return InAir(
        facts=facts,
        air=air,
        barred=_barred(facts, air, margin),
        stands_still=_rate(facts, "recoat_from", air) == 0,
        slower=slower,
        dew_c=dew_point_c(air.temp_c, max(air.rh, 0.01)),
        margin_k=margin,
        stages=tuple(stages),
        clings=clings,
        risks=_risks(know, cls, air),
    )


def usual_in_air(know: Knowledge, air: Air, classes: Iterable[str] | None = None) -> tuple[InAir, ...]:
    """Return how the usual films get on in an air: those that may be laid first, the quickest first."""
    wanted = (
        (c for c in usual_coats(know) if set(know.film(c).role) & _COUPLED) if classes is None else classes
    )
    found = [class_in_air(know, cls, air) for cls in wanted]
    return tuple(sorted(found, key=lambda one: (bool(one.barred), _recoat_h(one), one.facts.name)))


def _recoat_h(one: InAir) -> float:
    """Return the hours to recoating here [h]."""
    stage = one.hours("recoat_from")
    return inf if stage is None else stage.here_h.likely


def _barred(facts: FilmFacts, air: Air, margin_k: float) -> tuple[str, ...]:
    """Return why a class must not be laid in an air."""
    found = []
    if air.temp_c < facts.min_c:
        found.append("cold")
    if air.temp_c > facts.max_c:
        found.append("hot")
    if air.rh > facts.rh_max:
        found.append("damp")
    if margin_k < DEW_MARGIN_K:
        found.append("dew")
    return tuple(found)


def _rate(facts: FilmFacts, stage: str, air: Air) -> float:
    """Return how fast a class gets to a stage, relative to the air of its label [1]."""
    family = facts.family if facts.family in FAMILIES else "oxidative"
    return progress_rate(
        family, stage, air.temp_c, air.rh, air.air_m_s, carrier=facts.carrier, min_c=facts.min_c
    )


def _stage(facts: FilmFacts, stage: str, air: Air) -> StageHours:
    """Return the hours to a stage."""
    label = float(getattr(facts, _STAGES[stage]))
    rate = _rate(facts, stage, air)
    here = label / rate if rate else inf
    return StageHours(
        stage=stage, label_h=label, here_h=_spread(here, stage_spread(stage, air.temp_c, air.rh))
    )


def _spread(hours: float, factor: float) -> Range:
    """Return hours with their width [h]."""
    return Range(low=hours / factor, likely=hours, high=hours * factor)


def _shut_hours(know: Knowledge, cls: str, air: Air) -> tuple[float, float]:
    """Return the hours after which faces may touch [h], infinite for never in a year, and what then is left [1]."""
    facts = know.film(cls)
    if _rate(facts, "recoat_from", air) == 0:
        return inf, _clinging(know, cls, STANDARD_AIR, _LONGEST_H)
    least = _clinging(know, cls, air, _LONGEST_H)
    goal = least + _CLINGS
    low, high = 0.0, _LONGEST_H
    if _clinging(know, cls, air, low) <= goal:
        return 0.0, least
    for _ in range(_HOUR_STEPS):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if _clinging(know, cls, air, middle) <= goal else (middle, high)
    return high, least


def _clinging(know: Knowledge, cls: str, air: Air, hours: float) -> float:
    """Return the chance that faces stick when they are shut some hours after the last coat [1]."""
    facts = know.film(cls)
    coats = max(1, round(facts.coats))
    between = facts.recoat_from_h / drying_rate(facts, air)
    laid = replace(coat_step(know, cls, coats=coats, wait_h=hours), wait_between_h=between)
    state, _ = play(know, _GROUND, State(), laid, air)
    _, hits = play(know, _GROUND, state, _SHUT, air)
    return max((hit.chance for hit in hits if hit.fault == "sticking-shut"), default=0.0)


def _risks(know: Knowledge, cls: str, air: Air) -> tuple[Hit, ...]:
    """Return what laying a class in an air meets beyond what it meets in the air of its label."""
    step = coat_step(know, cls)
    usual = {hit.rule: hit.chance for hit in play(know, _GROUND, State(), step, STANDARD_AIR)[1]}
    here = play(know, _GROUND, State(), step, replace(air, known=True))[1]
    more = [hit for hit in here if hit.chance > usual.get(hit.rule, 0.0) + _RISES]
    return tuple(sorted(more, key=lambda hit: -hit.chance))


def ever(hours: float) -> bool:
    """Return whether a stage comes at all."""
    return isfinite(hours)


_GROUND: Final = Ground(wood="maple")
