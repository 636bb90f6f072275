"""Cure: films that stay soft because something keeps them from hardening."""

from refettle.rules.card import Card, Cause, Judge, film_stays_soft
from refettle.rules.situation import Situation, film_key, ramp, shared_film_barrier

_SIGNS = ("sticky hours after it should be dry", "a fingernail dents it days later", "smells of solvent")


def wood_stops_cure(sit: Situation) -> Cause | None:
    """Judge extractives that take up the oxygen an oil film needs."""
    new = sit.new
    strength = ramp(sit.before.strength("antioxidants"), 0.1, 0.9)
    if new is None or strength <= 0 or new.cure_oxidative <= 0:
        return None
    through = shared_film_barrier(sit.know, sit.before, "blocks_oils", 0.5)
    return Cause(
        chance=0.95 * strength * new.cure_oxidative * through,
        why=f"extractives of {sit.wood.name} keep {new.name} from curing",
        reads=((f"wood:{sit.ground.wood}", "antioxidant"), (film_key(new.id), "cure_oxidative")),
    )


def matter_slows_cure(sit: Situation) -> Cause | None:
    """Judge remover, oil, plasticiser or wax left in the surface."""
    new = sit.new
    if new is None:
        return None
    dry, worst, worst_name, reads = 1.0, 0.0, "", []
    for name, percent in sit.before.on_top:
        facts = sit.know.contaminant(name)
        if facts.slows_cure <= 0:
            continue
        chance = facts.slows_cure * (percent / 100.0) ** 0.8
        if new.family == "evaporative":
            chance *= 0.5
        dry *= 1.0 - min(0.98, chance)
        reads.append((f"contaminant:{name}", "slows_cure"))
        if chance > worst:
            worst, worst_name = chance, facts.name
    if worst <= 0:
        return None
    return Cause(
        chance=1.0 - dry, why=f"{worst_name} dissolves into {new.name} and keeps it soft", reads=tuple(reads)
    )


def excess_left(sit: Situation) -> Cause | None:
    """Judge a colour or oil whose excess was not wiped off."""
    new = sit.new
    if new is None or not new.wiped_off:
        return None
    left = "not wiped" in sit.step.how or (sit.step.film == "heavy" and "wiped" not in sit.step.how)
    if not left:
        return None
    depth = 0.9 if new.carrier == "spirits" or new.family == "oxidative" else 0.4
    sealed = 0.08 if sit.before.stack else 0.0
    return Cause(
        chance=depth * 0.9 + sealed,
        why=f"{new.name} is not a film: what cannot sink in stays soft unless it is wiped off",
        reads=((film_key(new.id), "wiped_off"),),
    )


_SEALS_UM = 8
"""Thickness [µm] from which a film keeps oil out of the wood, whatever thin colour lies on it; judgement."""


def colour_on_sealed_ground(sit: Situation) -> Cause | None:
    """Judge a penetrating oil or stain laid on a film it cannot enter."""
    new = sit.new
    below = next((film for film in reversed(sit.before.stack) if film.um >= _SEALS_UM), None)
    if new is None or below is None or not (new.needs_bare and new.wiped_off):
        return None
    if new.carrier not in {"spirits", "none"} or below.patchy > 60 or sit.know.film(below.cls).needs_bare:
        return None
    base = 0.32 if sit.step.method in {"wipe", "pad"} else 0.42
    return Cause(
        chance=base * (1.0 - sit.know.film(below.cls).porous),
        why=f"{new.name} cannot sink into the film below and stays tacky on it",
        reads=((film_key(new.id), "needs_bare"),),
    )


def too_cold(sit: Situation) -> Cause | None:
    """Judge air below the class's lowest temperature."""
    new = sit.new
    if new is None or not sit.air.known or sit.air.temp_c >= new.min_c:
        return None
    return Cause(
        chance=0.25 + 0.08 * (new.min_c - sit.air.temp_c),
        why=f"{sit.air.temp_c:g} °C is below what {new.name} needs to harden ({new.min_c:g} °C)",
        reads=((film_key(new.id), "min_c"),),
    )


def air_too_damp(sit: Situation) -> Cause | None:
    """Judge damp air that holds back water or oxygen."""
    new = sit.new
    if (
        new is None
        or not sit.air.known
        or sit.air.rh <= new.rh_max
        or new.carrier not in {"water", "spirits", "none"}
    ):
        return None
    return Cause(
        chance=0.18 + 1.6 * (sit.air.rh - new.rh_max),
        why=f"{sit.air.rh:.0%} humidity is above what {new.name} dries in ({new.rh_max:.0%})",
        reads=((film_key(new.id), "rh_max"),),
    )


def laid_too_thick(sit: Situation) -> Cause | None:
    """Judge a film laid thicker than it can dry through."""
    new = sit.new
    if new is None or sit.step.film != "heavy" or new.wiped_off or new.dry_um <= 0:
        return None
    wet = 1.6 * new.wet_um
    over = ramp(wet, 0.8 * new.max_wet_um, 1.6 * new.max_wet_um)
    base = 0.14 if new.carrier == "spirits" or new.family == "oxidative" else 0.06
    return Cause(
        chance=base + 0.4 * over,
        why=f"{new.name} laid thick skins over and stays soft below",
        reads=((film_key(new.id), "max_wet_um"),),
    )


def recoated_too_soon(sit: Situation) -> Cause | None:
    """Judge a coat that shuts the solvent of the coat below in."""
    new, below = sit.new, sit.below
    if new is None or below is None or below.old or below.um <= 0:
        return None
    facts = sit.know.film(below.cls)
    lack = ramp(below.ripe, 80, 15)
    if lack <= 0:
        return None
    heavy = 0.15 if sit.step.film == "heavy" else 0.0
    base = 0.4 if facts.family != "evaporative" else 0.25
    return Cause(
        chance=lack * base + heavy * lack,
        why=f"{new.name} over {facts.name} that had not let its solvent go",
        reads=((film_key(below.cls), "recoat_from_h"),),
    )


def gummy_film_below(sit: Situation) -> Cause | None:
    """Judge a coat over an old film that hands or age have made soft: it goes on being soft below."""
    new = sit.new
    if new is None or "gummy-film" not in sit.before.damage or not sit.before.stack:
        return None
    film = sit.know.film(sit.before.stack[-1].cls)
    return Cause(
        chance=0.75,
        why=f"the {film.name} below has gone soft: it stays soft under {new.name}",
        reads=((film_key(film.id), "skin_oil_weak"),),
    )


def oil_layers_soft(sit: Situation) -> Cause | None:
    """Judge a drying oil built up as if it were a film."""
    new, below = sit.new, sit.below
    if (
        new is None
        or new.solids_vol < 0.9
        or not new.needs_bare
        or below is None
        or below.cls != new.id
        or below.coats < 3
    ):
        return None
    return Cause(
        chance=0.15 + 0.08 * (below.coats - 3),
        why="many coats of oil build a skin that stays gummy",
        reads=((film_key(new.id), "max_total_um"),),
    )


def shut_in_while_drying(sit: Situation) -> Cause | None:
    """Judge an oil film shut away from air before it has hardened."""
    below = sit.below
    if below is None or below.old or not sit.step.how & {"shut", "wrapped", "stacked"}:
        return None
    facts = sit.know.film(below.cls)
    if facts.cure_oxidative <= 0 or below.ripe > 400:
        return None
    return Cause(
        chance=0.5 * facts.cure_oxidative * ramp(below.ripe, 400, 100),
        why=f"{facts.name} needs air to harden and was shut away",
        reads=((film_key(below.cls), "cure_oxidative"),),
    )


def _card(card_id: str, judge: Judge, layer: str, sources: tuple[str, ...] = ("common-practice",)) -> Card:
    """Return a card of this mechanism."""
    return Card(
        id=card_id, fault="soft-film", mechanism="cure", levels=("coat",), effect=film_stays_soft, layer=layer,
        onset=("hours", "days"), signs=_SIGNS, sources=sources, judge=judge,
    )  # fmt: skip


CARDS = (
    _card("wood-stops-oil-curing", wood_stops_cure, "wood"),
    _card("matter-left-keeps-soft", matter_slows_cure, "between"),
    _card("excess-not-wiped", excess_left, "film"),
    _card("oil-on-sealed-ground", colour_on_sealed_ground, "between"),
    _card("too-cold-to-harden", too_cold, "film", ("coatings-R7", "common-practice")),
    _card("too-damp-to-dry", air_too_damp, "film"),
    _card("too-thick-to-dry", laid_too_thick, "film"),
    _card("solvent-shut-in", recoated_too_soon, "below"),
    _card("gummy-film-below", gummy_film_below, "below"),
    _card("oil-built-up", oil_layers_soft, "film"),
    Card(
        id="shut-away-from-air", fault="soft-film", mechanism="cure", levels=("expose", "use"),
        effect=film_stays_soft, layer="film", onset=("days", "weeks"), signs=_SIGNS,
        sources=("common-practice",), judge=shut_in_while_drying,
    ),
)  # fmt: skip
