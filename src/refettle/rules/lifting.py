"""Lifting: strong solvents that swell the film below."""

from refettle.domain.state import Film
from refettle.rules.card import Card, Cause, Judge, Level, Onset, films_let_go
from refettle.rules.situation import Situation, cure_share, film_key, ramp

_RESISTS = {
    "alcohol": "resist_alcohol",
    "spirits": "resist_spirits",
    "strong": "resist_strong",
    "water": "resist_water",
}


def _wetness(sit: Situation) -> float:
    """Return how wet the coat goes on [1]."""
    if sit.step.film == "thin" or sit.step.method == "aerosol":
        return 0.55
    return 1.15 if sit.step.film == "heavy" else 1.0


def _exposed(sit: Situation) -> Film | None:
    """Return the film that the wet coat reaches: the top one unless it is a mere colour."""
    for film in reversed(sit.before.stack):
        if film.um > 0:
            return film
    return None


def solvent_bites(sit: Situation) -> Cause | None:
    """Judge the bite of a coat on a dry film of another family."""
    new, below = sit.new, _exposed(sit)
    if new is None or below is None or new.carrier in {"none", "water"} or new.family == "wax":
        return None
    facts = sit.know.film(below.cls)
    if facts.family == "evaporative" and new.family == "evaporative":
        return None
    if facts.redissolves and facts.id == new.id:
        return None
    if facts.family == "evaporative" and "seal" in facts.role and not below.old and below.um <= 30:
        return None  # a thin fresh sealer melts into the coat it is made for
    resist = float(getattr(facts, _RESISTS[new.carrier]))
    thin = 0.5 + 0.5 * ramp(below.um, 3, 25)
    chance = 1.05 * new.bite * (1.0 - resist) * _wetness(sit) * thin
    if not new.dry_um:
        chance *= 0.4
    if (new.bite < 0.4 and below.old) or (facts.wiped_off and below.ripe >= 150):
        chance *= 0.5
    return Cause(
        chance=chance,
        why=f"solvents of {new.name} swell {facts.name} below",
        reads=((film_key(new.id), "bite"), (film_key(below.cls), _RESISTS[new.carrier])),
    )


def critical_window(sit: Situation) -> Cause | None:
    """Judge recoating between the end of the window and full cure."""
    new, below = sit.new, _exposed(sit)
    if new is None or below is None or below.old or new.carrier in {"water", "none"}:
        return None
    facts = sit.know.film(below.cls)
    critical = facts.window_critical
    if not critical or facts.recoat_until_h <= 0:
        return None
    until = 100.0 * facts.recoat_until_h / max(facts.recoat_from_h, 0.1)
    cured = cure_share(sit.know, below)
    if below.ripe <= until or cured > 0.6:
        return None
    return Cause(
        chance=0.55 * min(1.0, new.bite / 0.8) * _wetness(sit),
        why=f"{facts.name} is past its window and not yet cured: solvent swells it",
        reads=((film_key(below.cls), "recoat_until_h"), (film_key(below.cls), "cured_h")),
    )


def young_oil_below(sit: Situation) -> Cause | None:
    """Judge strong solvents over an oil film, stain or glaze that has not cured."""
    new, below = sit.new, sit.below
    if new is None or below is None or below.old or new.bite < 0.4:
        return None
    facts = sit.know.film(below.cls)
    if facts.cure_oxidative < 0.4:
        return None
    soft = 1.0 - ramp(cure_share(sit.know, below), 0.05, 0.7)
    body = 0.35 + 0.65 * ramp(below.um, 1, 20)
    return Cause(
        chance=0.9 * new.bite * soft * body * _wetness(sit),
        why=f"{facts.name} has not cured and lifts under {new.name}",
        reads=((film_key(new.id), "bite"), (film_key(below.cls), "cured_h")),
    )


def worn_edges_lift(sit: Situation) -> Cause | None:
    """Judge strong solvents creeping under the edges of a worn or feathered film."""
    new, below = sit.new, _exposed(sit)
    if new is None or below is None or new.bite < 0.25 or below.patchy < 5:
        return None
    facts = sit.know.film(below.cls)
    if facts.family == "evaporative" or facts.id == new.id:
        return None
    return Cause(
        chance=0.5 * new.bite * (1.0 - facts.resist_strong * 0.6) * _wetness(sit),
        why=f"solvent creeps under the worn edges of {facts.name}",
        reads=((film_key(new.id), "bite"),),
    )


def cleaner_bites(sit: Situation) -> Cause | None:
    """Judge a cleaning liquid that attacks a film meant to stay."""
    below = _exposed(sit)
    if sit.step.verb not in {"clean", "rinse"} or below is None or not sit.know.has("cleaner", sit.step.what):
        return None
    if sit.step.verb == "rinse" and below.old:
        return None
    cleaner = sit.know.cleaner(sit.step.what)
    if cleaner.solvent not in _RESISTS or cleaner.bite <= 0:
        return None
    facts = sit.know.film(below.cls)
    resist = float(getattr(facts, _RESISTS[cleaner.solvent]))
    fresh = 1.0 if below.old else 1.0 + 0.5 * (1.0 - cure_share(sit.know, below))
    return Cause(
        chance=0.8 * cleaner.bite * (1.0 - resist) * fresh,
        why=f"{cleaner.name} softens {facts.name}",
        reads=((f"cleaner:{cleaner.id}", "bite"), (film_key(below.cls), _RESISTS[cleaner.solvent])),
    )


def _card(
    card_id: str, judge: Judge, onset: tuple[Onset, Onset], levels: tuple[Level, ...] = ("coat",)
) -> Card:
    """Return a card of this mechanism."""
    return Card(
        id=card_id, fault="wrinkling", mechanism="lifting", levels=levels, effect=films_let_go, layer="below",
        onset=onset, signs=("the film crinkles or lifts as the coat goes on",), sources=("common-practice",),
        judge=judge,
    )  # fmt: skip


CARDS = (
    _card("solvent-swells-film-below", solvent_bites, ("immediate", "immediate")),
    _card("recoated-in-critical-window", critical_window, ("immediate", "hours")),
    _card("strong-solvent-over-young-oil", young_oil_below, ("immediate", "hours")),
    _card("solvent-under-worn-edges", worn_edges_lift, ("immediate", "immediate")),
    _card("cleaner-softens-film", cleaner_bites, ("immediate", "immediate"), ("work",)),
)
