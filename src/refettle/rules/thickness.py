"""Thickness and solvents trapped: bubbles, cracks of thick films, wrinkled oil."""

from refettle.rules.card import Card, Cause, film_is_cracked, film_is_marked, film_lets_go
from refettle.rules.situation import Situation, cure_share, film_key, ramp


def heat_on_fresh_film(sit: Situation) -> Cause | None:
    """Judge sun or heat on a film that still holds solvent or water."""
    below = sit.below
    if below is None or below.old or below.um <= 4 or not sit.step.how & {"sun", "heat"}:
        return None
    facts = sit.know.film(below.cls)
    fresh = max(ramp(below.ripe, 400, 60), 0.7 * (1.0 - cure_share(sit.know, below)) ** 2)
    thick = ramp(below.um, 15, 120)
    evaporates = 0.4 if facts.carrier == "water" else 0.75
    return Cause(
        chance=fresh * (evaporates + 0.2 * thick),
        why=f"heat turns what is still in {facts.name} to gas under its skin",
        reads=((film_key(below.cls), "carrier"), (film_key(below.cls), "bubble_prone")),
    )


def laid_in_heat(sit: Situation) -> Cause | None:
    """Judge a coat laid in sun or in air hotter than it bears."""
    new = sit.new
    if new is None or new.dry_um <= 0 or (sit.air.temp_c <= new.max_c and not sit.air.sun):
        return None
    over = ramp(sit.air.temp_c, new.max_c - 1.0, new.max_c + 8.0)
    sun = 0.3 if sit.air.sun else 0.0
    heavy = 0.15 if sit.step.film == "heavy" else 0.0
    return Cause(
        chance=0.3 * over + sun + heavy,
        why=f"{new.name} skins in the heat before its solvent is out",
        reads=((film_key(new.id), "max_c"),),
    )


def worked_in_air(sit: Situation) -> Cause | None:
    """Judge bubbles stirred, shaken, rolled or brushed in."""
    new = sit.new
    if new is None or new.dry_um <= 0 or new.bubble_prone <= 0:
        return None
    rough = bool(sit.step.how & {"shaken", "over-brushed"})
    roller = sit.step.method == "roller" and not new.opaque
    heavy = sit.step.film == "heavy"
    level = (0.5 if rough else 0.0) + (0.22 if roller else 0.0) + (0.2 if heavy else 0.0)
    if level <= 0:
        return None
    return Cause(
        chance=level * (0.5 + new.bubble_prone),
        why=f"air worked into {new.name} does not rise out in time",
        reads=((film_key(new.id), "bubble_prone"),),
    )


def open_pores_breathe(sit: Situation) -> Cause | None:
    """Judge a thick coat bridging open pores."""
    new = sit.new
    if new is None or not sit.over_bare or new.dry_um <= 8 or sit.wood.open_pores < 0.5:
        return None
    heavy = 1.0 if sit.step.film == "heavy" else 0.0
    warm = ramp(sit.air.temp_c, 26, 36)
    chance = (0.3 * heavy + 0.2 * warm) * sit.wood.open_pores
    return Cause(
        chance=chance,
        why=f"air from the pores of {sit.wood.name} blows through {new.name}",
        reads=((f"wood:{sit.wood.id}", "open_pores"),),
    )


def gas_from_unripe_below(sit: Situation) -> Cause | None:
    """Judge pore filler, stain or bleach below that still gives off vapour."""
    new, below = sit.new, sit.below
    if new is None or new.dry_um <= 8:
        return None
    bleach = sit.before.soiled("bleach-residue")
    chance = 0.4 * bleach
    if below is not None and not below.old and new.family in {"waterborne", "evaporative", "crosslinked"}:
        oil = sit.know.film(below.cls)
        if oil.needs_bare and oil.cure_oxidative > 0.5 and oil.colour_kind == "none":
            soft = 0.5 * ramp(cure_share(sit.know, below), 0.35, 0.05)
            if soft > chance:
                return Cause(
                    chance=soft,
                    why=f"{oil.name} not yet hard gives off vapour under {new.name}",
                    reads=((film_key(below.cls), "cured_h"),),
                )
    why = f"bleach left in the wood gives off gas under {new.name}"
    reads: tuple[tuple[str, str], ...] = (("contaminant:bleach-residue", "shows"),)
    if below is not None and not below.old:
        facts = sit.know.film(below.cls)
        lack = ramp(below.ripe, 100, 20)
        wet = 0.4 if facts.family in {"filler", "stain"} or facts.carrier == "spirits" else 0.2
        heavy = 0.12 if sit.step.film == "heavy" else 0.0
        if lack * (wet + heavy) > chance:
            chance = lack * (wet + heavy)
            why = f"{facts.name} still gives off solvent under {new.name}"
            reads = ((film_key(below.cls), "recoat_from_h"),)
    return Cause(chance=chance, why=why, reads=reads) if chance > 0 else None


def total_too_thick(sit: Situation) -> Cause | None:
    """Judge a film built beyond what its class bears."""
    new = sit.new
    if new is None or new.dry_um <= 0:
        return None
    built = new.dry_um * (1.6 if sit.step.film == "heavy" else 1.0)
    if sit.below is not None and sit.below.cls == new.id:
        built += sit.below.um
    over = built / new.max_total_um
    if over <= 0.9:
        return None
    return Cause(
        chance=0.25 + 0.6 * ramp(over, 1.0, 2.0),
        why=f"{built:.0f} µm of {new.name} in all: more than it bears without cracking ({new.max_total_um:.0f} µm)",
        reads=((film_key(new.id), "max_total_um"),),
    )


def thick_brittle_coat(sit: Situation) -> Cause | None:
    """Judge brittle lacquers laid thick or piled on in haste."""
    new = sit.new
    if new is None or new.flexibility > 0.3 or new.dry_um <= 0 or new.family == "wax":
        return None
    heavy = sit.step.film == "heavy"
    rushed = sit.below is not None and sit.below.cls == new.id and sit.below.ripe < 90
    count = sit.below.coats if sit.below is not None and sit.below.cls == new.id else 0
    chance = (0.14 if heavy else 0.0) + (0.12 if heavy and rushed else 0.0) + 0.05 * max(0, count - 4)
    return Cause(
        chance=chance,
        why=f"thick {new.name} shrinks and cracks as it hardens",
        reads=((film_key(new.id), "flexibility"),),
    )


def thick_oil_wrinkles(sit: Situation) -> Cause | None:
    """Judge an oil paint or varnish laid so thick that its skin wrinkles."""
    new = sit.new
    if new is None or new.cure_oxidative < 0.5 or new.wiped_off or new.dry_um <= 0:
        return None
    heavy = sit.step.film == "heavy"
    heat = sit.air.sun or sit.air.temp_c > new.max_c
    rushed = sit.below is not None and not sit.below.old and sit.below.cls == new.id and sit.below.ripe < 60
    chance = (0.28 if heavy else 0.0) + (0.2 if heat else 0.0) + (0.28 if rushed else 0.0)
    if chance <= 0:
        return None
    return Cause(
        chance=chance,
        why=f"the skin of {new.name} dries before the rest and wrinkles",
        reads=((film_key(new.id), "max_wet_um"), (film_key(new.id), "cure_oxidative")),
    )


CARDS = (
    Card(
        id="heat-on-fresh-film", fault="bubbles", mechanism="thickness", levels=("expose", "use"),
        effect=film_is_marked, layer="film", onset=("immediate", "days"),
        signs=("pinprick bubbles rise while it is warm",), sources=("wood-handbook-2010-ch16", "common-practice"),
        judge=heat_on_fresh_film,
    ),
    Card(
        id="laid-in-heat", fault="bubbles", mechanism="thickness", levels=("coat",), effect=film_is_marked,
        layer="film", onset=("immediate", "hours"), signs=("bubbles or pinholes as it dries",),
        sources=("common-practice",), judge=laid_in_heat,
    ),
    Card(
        id="air-worked-in", fault="bubbles", mechanism="thickness", levels=("coat",), effect=film_is_marked,
        layer="film", onset=("immediate", "immediate"), signs=("fine foam that dries in",),
        sources=("common-practice",), judge=worked_in_air,
    ),
    Card(
        id="pores-breathe", fault="bubbles", mechanism="thickness", levels=("coat",), effect=film_is_marked,
        layer="wood", onset=("immediate", "hours"), signs=("pinholes in rows along the pores",),
        sources=("common-practice",), judge=open_pores_breathe,
    ),
    Card(
        id="gas-from-below", fault="bubbles", mechanism="thickness", levels=("coat",), effect=film_is_marked,
        layer="below", onset=("hours", "weeks"), signs=("blisters hours or days after the coat",),
        sources=("common-practice",), judge=gas_from_unripe_below,
    ),
    Card(
        id="film-built-too-thick", fault="cracking", mechanism="thickness", levels=("coat",),
        effect=film_is_cracked, layer="film", onset=("days", "months"),
        signs=("fine cracks that grow into a net",), sources=("common-practice",), judge=total_too_thick,
    ),
    Card(
        id="brittle-coat-too-heavy", fault="cracking", mechanism="thickness", levels=("coat",),
        effect=film_is_cracked, layer="film", onset=("hours", "months"),
        signs=("cracks across the grain in a hard film",), sources=("common-practice",), judge=thick_brittle_coat,
    ),
    Card(
        id="skin-wrinkles", fault="wrinkling", mechanism="thickness", levels=("coat",), effect=film_lets_go,
        layer="film", onset=("hours", "days"), signs=("fine wrinkles where it lies thickest",),
        sources=("common-practice",), judge=thick_oil_wrinkles,
    ),
)  # fmt: skip
