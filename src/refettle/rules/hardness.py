"""Softness against brittleness: cracks, faces that stick, prints."""

from refettle.rules.card import Card, Cause, film_is_cracked, film_is_marked, film_stays_soft
from refettle.rules.situation import Situation, cure_share, film_key, ramp

_STANDING = 0.7
"""How much things that stand on a film stick to it, beside a face of the same paint [1]; judgement."""


def hard_over_soft(sit: Situation) -> Cause | None:
    """Judge a hard coat over a film that is softer or still moving."""
    new, below = sit.new, sit.below
    if new is None or below is None or new.dry_um <= 0 or below.um <= 4 or new.family == "wax":
        return None
    facts = sit.know.film(below.cls)
    gap = facts.flexibility - new.flexibility
    if facts.id == new.id and facts.redissolves:
        return None
    young = 0.0 if below.old else 1.0 - ramp(cure_share(sit.know, below), 0.03, 0.35)
    stiff = ramp(gap, 0.25, 0.8)
    thick = 0.35 + 0.65 * ramp(below.um, 20, 120)
    rushed = 0.0 if below.old else ramp(below.ripe, 100, 30)
    chance = 0.32 * stiff * thick + 0.25 * stiff * young * thick + 0.3 * rushed * (0.4 + 0.6 * stiff) * thick
    if facts.family == "wax":
        chance = max(chance, 0.2)
    if new.opaque and sit.step.film == "heavy" and facts.holds_smooth > 0.5 and not below.old:
        chance = max(chance, 0.45 * ramp(below.ripe, 150, 50))
    if below.old:
        chance *= 0.35 + 0.65 * ramp(new.dry_um, 12, 55)
    elif new.dry_um <= 15:
        chance *= 0.7
    return Cause(
        chance=chance,
        why=f"{new.name} is harder than {facts.name} below, which still moves",
        reads=((film_key(new.id), "flexibility"), (film_key(below.cls), "flexibility")),
    )


def crazed_film_kept(sit: Situation) -> Cause | None:
    """Judge a new coat over a crazed film that was left."""
    new = sit.new
    if new is None or new.dry_um <= 0 or "crazed-film" not in sit.before.damage or sit.before.bare:
        return None
    below = sit.below
    if below is not None and sit.know.film(below.cls).family == "evaporative" and new.family == "evaporative":
        return Cause(chance=0.25, why="old cracks may print through the new coat")
    return Cause(chance=0.62, why="cracks of the old film come up through the new coat")


def cold_cracks(sit: Situation) -> Cause | None:
    """Judge frost and quick changes of temperature on a brittle film."""
    top = sit.before.top
    if top is None or not sit.step.how & {"freezing", "cold", "dry-air"} or top.um < 15:
        return None
    facts = sit.know.film(top.cls)
    hard = ramp(facts.flexibility, 0.5, 0.15)
    frost = 1.0 if "freezing" in sit.step.how else 0.75
    if sit.ground.veneer_um > 0:
        frost *= 1.25
    return Cause(
        chance=0.65 * hard * frost * (0.4 + 0.6 * ramp(top.um, 20, 120)),
        why=f"{facts.name} is too brittle to follow the wood in cold or very dry air",
        reads=((film_key(top.cls), "flexibility"),),
    )


def cold_powder(sit: Situation) -> Cause | None:
    """Judge waterborne films that cannot join up in the cold."""
    new = sit.new
    if new is None or new.family != "waterborne" or new.dry_um <= 0 or not sit.air.known:
        return None
    short = new.min_c - sit.air.temp_c
    if short <= 0:
        return None
    return Cause(
        chance=0.2 + 0.09 * short,
        why=f"below {new.min_c:g} °C the particles of {new.name} do not join: it cracks or powders",
        reads=((film_key(new.id), "min_c"),),
    )


def old_brittle_in_years(sit: Situation) -> Cause | None:
    """Judge thick brittle films over the years."""
    top = sit.before.top
    if top is None or "years" not in sit.step.how or top.um < 60:
        return None
    facts = sit.know.film(top.cls)
    return Cause(
        chance=0.5 * ramp(facts.flexibility, 0.45, 0.1) * ramp(top.um, 60, 160),
        why=f"thick {facts.name} cracks as the wood moves through the seasons",
        reads=((film_key(top.cls), "flexibility"),),
    )


def faces_stick(sit: Situation) -> Cause | None:
    """Judge painted faces shut or stacked on each other, and things that stand on them."""
    top = sit.before.top
    closing = bool(sit.step.how & {"shut", "stacked"}) or (sit.ground.running and sit.step.verb == "use")
    if top is None or top.um <= 5 or top.old or not (closing or "loaded" in sit.step.how):
        return None
    weight = 1.0 if closing else _STANDING
    facts = sit.know.film(top.cls)
    young = 1.0 - cure_share(sit.know, top)
    warm = 0.15 * ramp(sit.air.temp_c, 24, 32)
    lasting = 0.3 * facts.sticks_shut
    return Cause(
        chance=weight * (facts.sticks_shut * (0.85 * young + warm) + lasting * (1.0 - young)),
        why=f"{facts.name} sticks to what lies on it before it has cured, and a little for good",
        reads=((film_key(top.cls), "sticks_shut"), (film_key(top.cls), "cured_h")),
    )


def prints(sit: Situation) -> Cause | None:
    """Judge wrapping, stacking or loading a film that is not hard."""
    bodies = [f for f in sit.before.stack if f.um > 3 and sit.know.film(f.cls).family != "wax"]
    if not bodies or bodies[-1].old:
        return None
    if not sit.step.how & {"wrapped", "stacked", "freight", "loaded"}:
        return None
    top = bodies[-1]
    facts = sit.know.film(top.cls)
    wrap = 100.0 * facts.wrap_h / max(facts.recoat_from_h, 0.1) * (1.0 + 2.0 * ramp(top.um, 40, 120))
    soft = ramp(top.ripe, 1.3 * wrap, 0.35 * wrap)
    warm = 0.15 * ramp(sit.air.temp_c, 24, 34)
    return Cause(
        chance=0.8 * soft + warm * (1.0 - facts.hardness),
        why=f"{facts.name} is not hard enough to be touched by blankets, cords or stacking",
        reads=((film_key(top.cls), "wrap_h"), (film_key(top.cls), "hardness")),
    )


def plastic_softens(sit: Situation) -> Cause | None:
    """Judge vinyl cloths, plastic and rubber feet lying on a film."""
    top = sit.before.top
    if top is None or "plastic-cover" not in sit.step.how or top.um <= 0:
        return None
    facts = sit.know.film(top.cls)
    young = 1.0 - cure_share(sit.know, top)
    return Cause(
        chance=0.9 * facts.plasticiser_weak + 0.2 * young,
        why=f"plasticiser moves out of the plastic into {facts.name}",
        reads=((film_key(top.cls), "plasticiser_weak"),),
    )


def hands_soften(sit: Situation) -> Cause | None:
    """Judge skin oil and sweat over years."""
    top = sit.before.top
    if top is None or "hands" not in sit.step.how or top.um <= 0:
        return None
    facts = sit.know.film(top.cls)
    return Cause(
        chance=0.75 * facts.skin_oil_weak,
        why=f"skin oil softens {facts.name} where hands go",
        reads=((film_key(top.cls), "skin_oil_weak"),),
    )


def wood_vapour_softens(sit: Situation) -> Cause | None:
    """Judge vapour of aromatic wood on films in closed spaces."""
    vapour = max(sit.before.strength("vapour"), sit.wood.vapour_softens)
    top = sit.before.top
    if top is None or vapour <= 0 or top.um <= 0 or top.old:
        return None
    facts = sit.know.film(top.cls)
    closed = 1.0 if sit.ground.orientation == "inside" or sit.ground.dark or "shut" in sit.step.how else 0.45
    firm = 0.45 if facts.family == "crosslinked" or facts.blocks_oils > 0.6 else 1.0
    return Cause(
        chance=0.75 * vapour * closed * firm,
        why=f"vapour of {sit.wood.name} softens {facts.name}",
        reads=((f"wood:{sit.wood.id}", "vapour_softens"),),
    )


CARDS = (
    Card(
        id="hard-over-soft", fault="cracking", mechanism="hardness", levels=("coat",), effect=film_is_cracked,
        layer="between", onset=("hours", "years"), signs=("a net of cracks like reptile skin",),
        sources=("common-practice",), judge=hard_over_soft,
    ),
    Card(
        id="crazed-film-kept", fault="cracking", mechanism="hardness", levels=("coat",), effect=film_is_cracked,
        layer="below", onset=("days", "months"), signs=("the old crack pattern shows again",),
        sources=("common-practice",), judge=crazed_film_kept,
    ),
    Card(
        id="cold-cracks-brittle-film", fault="cracking", mechanism="hardness", levels=("expose", "use"),
        effect=film_is_cracked, layer="film", onset=("hours", "weeks"), signs=("long cracks across the grain",),
        sources=("common-practice",), judge=cold_cracks,
    ),
    Card(
        id="waterborne-powders-in-cold", fault="cracking", mechanism="hardness", levels=("coat",),
        effect=film_is_cracked, layer="film", onset=("hours", "days"), signs=("fine mud cracks, powdery film",),
        sources=("coatings-R51", "common-practice"), judge=cold_powder,
    ),
    Card(
        id="brittle-with-years", fault="cracking", mechanism="hardness", levels=("use",), effect=film_is_cracked,
        layer="film", onset=("months", "years"), signs=("checks that follow the seasons",),
        sources=("common-practice",), judge=old_brittle_in_years,
    ),
    Card(
        id="faces-shut-too-soon", fault="sticking-shut", mechanism="hardness", levels=("use", "expose"),
        effect=film_is_marked, layer="film", onset=("hours", "weeks"),
        signs=("doors or drawers tear open", "faces cling"), sources=("common-practice",), judge=faces_stick,
    ),
    Card(
        id="wrapped-too-soon", fault="press-marks", mechanism="hardness", levels=("use", "expose"),
        effect=film_is_marked, layer="film", onset=("immediate", "days"), signs=("the weave of a blanket in the film",),
        sources=("common-practice",), judge=prints,
    ),
    Card(
        id="plastic-softens-film", fault="softened-in-use", mechanism="hardness", levels=("use", "expose"),
        effect=film_stays_soft, layer="film", onset=("weeks", "months"), signs=("sticky where plastic lay",),
        sources=("common-practice",), judge=plastic_softens,
    ),
    Card(
        id="hands-soften-film", fault="softened-in-use", mechanism="hardness", levels=("use",),
        effect=film_stays_soft, layer="film", onset=("months", "years"), signs=("soft and dirty where hands go",),
        sources=("common-practice",), judge=hands_soften,
    ),
    Card(
        id="wood-vapour-softens", fault="softened-in-use", mechanism="hardness", levels=("use",),
        effect=film_stays_soft, layer="film", onset=("weeks", "months"), signs=("sticky inside closed chests",),
        sources=("common-practice",), judge=wood_vapour_softens,
    ),
)  # fmt: skip
