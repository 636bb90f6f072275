"""Adhesion: what a coat holds on to, and what comes between."""

from refettle.domain.state import Film
from refettle.rules.card import Card, Cause, Judge, Level, Onset, film_lets_go
from refettle.rules.situation import (
    Situation,
    cure_share,
    film_key,
    limited,
    ramp,
)

_SIGNS = ("flakes or sheets lift", "a fingernail or tape lifts it", "chips to the layer below")
_MADE_FOR_IT = 0.5
"""Resistance to weather [1] from which a finish is made for outdoors."""
_PLACE = ("common-practice",)


def _melts_in(sit: Situation) -> bool:
    """Return whether the fresh coat dissolves into the film below and becomes one with it."""
    below, new = sit.below, sit.new
    if below is None or new is None:
        return False
    facts = sit.know.film(below.cls)
    if new.family == "evaporative" and facts.family == "evaporative":
        return new.carrier == "strong" or facts.resist_alcohol < 0.2 or facts.redissolves
    return False


def _within_window(sit: Situation) -> bool:
    """Return whether the film below is young enough to bond chemically."""
    below = sit.below
    if below is None or below.old:
        return False
    facts = sit.know.film(below.cls)
    if facts.recoat_until_h <= 0:
        return below.ripe < 600
    return below.ripe <= 100.0 * facts.recoat_until_h / max(facts.recoat_from_h, 0.1) * 1.15


def smooth_ground(sit: Situation) -> Cause | None:
    """Judge the bond of a film on a sealed, clean ground with or without key."""
    below, new = sit.below, sit.new
    if new is None or below is None or new.dry_um <= 0 or new.family == "wax" or _melts_in(sit):
        return None
    facts = sit.know.film(below.cls)
    if new.needs_absorbent and sit.keyed:
        return None
    if (new.needs_bare and facts.needs_bare) or (
        new.wiped_off and facts.family in {"filler", "stain", "dye"}
    ):
        return None
    hold = facts.holds_keyed if sit.keyed else facts.holds_smooth
    if facts.porous >= 0.5 and facts.id == new.id:
        hold = max(hold, 0.97)
    if not sit.keyed and _within_window(sit):
        same = facts.id == new.id or facts.carrier == new.carrier
        hold = max(hold, 0.9 if same else 0.75)
    chance = 1.25 * (1.0 - hold) * (1.0 - new.grip)
    reads = (
        (film_key(below.cls), "holds_keyed" if sit.keyed else "holds_smooth"),
        (film_key(new.id), "grip"),
    )
    key = "scuffed" if sit.keyed else "not scuffed"
    return Cause(chance=chance, why=f"{new.name} over {facts.name}, {key}: little to hold on to", reads=reads)


def slick_face(sit: Situation) -> Cause | None:
    """Judge a film laid straight on a foil or laminate face."""
    new, wood = sit.new, sit.wood
    if new is None or sit.below is not None or wood.slick <= 0.3 or new.family == "wax":
        return None
    held = 0.3 if sit.keyed else 0.1
    return Cause(
        chance=1.25 * wood.slick * (1.0 - held) * (1.0 - new.grip),
        why=f"{wood.name} gives {new.name} nothing to hold on to",
        reads=((f"wood:{wood.id}", "slick"), (film_key(new.id), "grip")),
    )


def dirt_between(sit: Situation) -> Cause | None:
    """Judge wax, polish, grease and other matter left between the coat and its ground."""
    new = sit.new
    if new is None or (new.family == "wax" and sit.ground.wish == "keep"):
        return None
    holds, worst, worst_name = 1.0, 0.0, ""
    reads = []
    for name, percent in sit.before.on_top:
        facts = sit.know.contaminant(name)
        loss = facts.spoils_bond * percent / 100.0
        if new.tolerates_dirt > 0:
            loss *= 1.0 - new.tolerates_dirt
        elif new.family == "wax" or new.dry_um <= 0:
            loss *= 0.4
        if new.needs_absorbent:
            loss *= 1.25
        holds *= 1.0 - min(loss, 0.99)
        reads.append((f"contaminant:{name}", "spoils_bond"))
        if loss > worst:
            worst, worst_name = loss, facts.name
    if worst <= 0.0:
        return None
    why = f"{worst_name} between {new.name} and what it should hold on"
    return Cause(chance=1.0 - holds, why=why, reads=tuple(reads))


def waxy_film_below(sit: Situation) -> Cause | None:
    """Judge waterborne and urethane coats over a film that carries wax or stearates."""
    below, new = sit.below, sit.new
    if below is None or new is None or new.family in {"wax", "evaporative"} or new.dry_um <= 0:
        return None
    facts = sit.know.film(below.cls)
    if facts.wax_content <= 0 or facts.id == new.id:
        return None
    tender = new.wax_shy
    if sit.keyed:
        tender *= 0.85
    return Cause(
        chance=0.8 * facts.wax_content * tender,
        why=f"{facts.name} carries wax: {new.name} bonds poorly to it",
        reads=((film_key(below.cls), "wax_content"), (film_key(new.id), "wax_shy")),
    )


def unripe_below(sit: Situation) -> Cause | None:
    """Judge a film laid over a coat or colour that has not dried enough to carry it."""
    below, new = sit.below, sit.new
    if below is None or new is None or below.old or new.dry_um <= 0 or _melts_in(sit):
        return None
    facts = sit.know.film(below.cls)
    needed = 100.0
    if facts.wiped_off or facts.family in {"stain", "filler"}:
        needed = 200.0 if new.family == "waterborne" else 150.0
        if facts.dry_um <= 3 and new.carrier == facts.carrier:
            needed = 110.0
        if facts.carrier in {"water", "alcohol"}:
            needed = 110.0
    elif facts.carrier == "spirits" and new.family == "waterborne":
        needed = 170.0
    lack = ramp(below.ripe, needed, 0.25 * needed)
    if lack <= 0:
        return None
    same = facts.id == new.id
    if new.grip >= 0.85:
        lack *= 0.5
    return Cause(
        chance=lack * (0.35 if facts.family == "evaporative" else 0.45 if same else 0.7),
        why=f"{facts.name} was not dry enough under {new.name}",
        reads=((film_key(below.cls), "recoat_from_h"),),
    )


def colour_film_below(sit: Situation) -> Cause | None:
    """Judge a clear film over a colour that dries as a weak film of its own rather than in the wood."""
    below, new = sit.below, sit.new
    if below is None or new is None or below.old or new.dry_um <= 0 or new.grip >= 0.85:
        return None
    facts = sit.know.film(below.cls)
    piled = 0.12 * max(0, below.coats - 2) * (0.5 + sit.wood.tight) if facts.colour_kind != "none" else 0.0
    if facts.dry_um <= 3 and piled > 0 and not facts.opaque and not new.wiped_off:
        return Cause(
            chance=piled + 0.1,
            why=f"{below.coats} coats of {facts.name} pile up on {sit.wood.name} and bind nothing",
            reads=((film_key(below.cls), "dry_um"), (f"wood:{sit.wood.id}", "tight")),
        )
    if not facts.wiped_off or new.wiped_off or facts.dry_um <= 3 or facts.family == "oxidative":
        return None
    cold = ramp(sit.air.temp_c, 19.0, 12.0)
    chance = 0.08 + 0.25 * cold + 0.08 * max(0, below.coats - 1)
    return Cause(
        chance=chance,
        why=f"{facts.name} left a film of its own that {new.name} must hang on",
        reads=((film_key(below.cls), "dry_um"),),
    )


def _renewed(sit: Situation, worst: Film) -> bool:
    """Return whether a coat melts a weak film of its own kind together again; one soft with skin oil stays soft."""
    firm = sit.know.film(worst.cls).skin_oil_weak < 0.45
    return _melts_in(sit) and worst.hold >= 50 and firm


def loose_ground(sit: Situation) -> Cause | None:
    """Judge any coat over an old film that is itself coming off."""
    new = sit.new
    if new is None or not sit.before.stack:
        return None
    worst = min(sit.before.stack, key=lambda film: film.hold)
    if worst.hold >= 95:
        return None
    return Cause(
        chance=0.95 * (1.0 - worst.hold / 100.0) * (0.3 if _renewed(sit, worst) else 1.0),
        why=f"the {sit.know.film(worst.cls).name} below is itself coming off",
        reads=((film_key(worst.cls), "holds_keyed"),),
    )


def oily_wood(sit: Situation) -> Cause | None:
    """Judge a film on bare oily wood."""
    new = sit.new
    oils = sit.before.strength("wood-oils")
    if new is None or not sit.over_bare or oils <= 0 or new.dry_um <= 0 or new.needs_bare:
        return None
    tender = 1.0 if new.water_share > 0.3 else 0.75
    return Cause(
        chance=0.95 * oils * tender * (1.0 - new.grip),
        why=f"oils of {sit.wood.name} keep {new.name} from wetting and holding",
        reads=((f"wood:{sit.ground.wood}", "oils"), (film_key(new.id), "grip")),
    )


def nothing_to_soak_into(sit: Situation) -> Cause | None:
    """Judge a paint that needs an absorbent ground, on a closed one."""
    new, below = sit.new, sit.below
    if new is None or not new.needs_absorbent or below is None or below.um <= 0:
        return None
    facts = sit.know.film(below.cls)
    closed = ramp(facts.porous, 0.85, 0.0)
    return Cause(
        chance=(0.2 if sit.keyed else 0.62) * closed,
        why=f"{new.name} needs an absorbent ground; {facts.name} is closed",
        reads=((film_key(new.id), "needs_absorbent"), (film_key(below.cls), "porous")),
    )


def damp_wood(sit: Situation) -> Cause | None:
    """Judge a film laid on wood that is damper than its room."""
    new = sit.new
    if new is None or not sit.over_bare or sit.before.damp < 3 or new.dry_um <= 0:
        return None
    wet = ramp(sit.before.damp, 2, 12)
    tender = 0.5 if new.porous > 0.5 else 0.75
    return Cause(
        chance=limited(tender * wet),
        why="the wood still holds water that will push the film off",
        reads=((film_key(new.id), "carrier"),),
    )


def water_on_young_film(sit: Situation) -> Cause | None:
    """Judge damp air, condensation or water on a film that has not cured."""
    below = sit.below
    if below is None or below.old or below.um <= 0:
        return None
    wet = bool(sit.step.how & {"damp", "wet-storm", "standing-water"}) or sit.air.rh >= 0.88
    if not wet:
        return None
    facts = sit.know.film(below.cls)
    young = 1.0 - cure_share(sit.know, below)
    tender = 1.0 - facts.resist_water if facts.family != "waterborne" else max(0.75, 1.0 - facts.resist_water)
    return Cause(
        chance=0.85 * young * tender,
        why=f"{facts.name} met water before it had cured",
        reads=((film_key(below.cls), "resist_water"), (film_key(below.cls), "cured_h")),
    )


def weather_under_clear(sit: Situation) -> Cause | None:
    """Judge sun and weather on a film over the years."""
    below = sit.below
    marks = sit.step.how
    if below is None or "years" not in marks or not marks & {"sun", "wet-storm", "freezing"} or below.um <= 5:
        return None
    facts = sit.know.film(below.cls)
    base = 0.65 if not facts.opaque else 0.35
    return Cause(
        chance=base * (1.0 - 0.5 * facts.flexibility),
        why=f"sun and weather loosen {facts.name} from the wood",
        reads=((film_key(below.cls), "flexibility"),),
    )


def weather_outdoors(sit: Situation) -> Cause | None:
    """Judge a film that is not made for it on a surface that stands outdoors."""
    below = sit.below
    if sit.ground.use != "outdoors" or below is None or below.um <= 5:
        return None
    facts = sit.know.film(below.cls)
    if facts.needs_bare and facts.resist_weather >= _MADE_FOR_IT:
        return None
    return Cause(
        chance=0.85 * (1.0 - facts.resist_weather),
        why=f"sun and rain loosen {facts.name}, which is made for rooms" if facts.resist_weather < _MADE_FOR_IT else (
            f"even {facts.name} lets go in sun and rain after some years"
        ),
        reads=((film_key(below.cls), "resist_weather"),),
    )  # fmt: skip


def knives_cut_film(sit: Situation) -> Cause | None:
    """Judge a film where knives cut: it is cut through and chips off."""
    below = sit.below
    if sit.ground.use != "food" or below is None or below.um <= 8 or sit.know.film(below.cls).family == "wax":
        return None
    facts = sit.know.film(below.cls)
    return Cause(
        chance=0.7,
        why=f"knives cut {facts.name} and it chips off into the food",
        reads=((film_key(below.cls), "dry_um"),),
    )


def years_on_weak_bond(sit: Situation) -> Cause | None:
    """Judge coats of one varnish laid over each other past the window without scuffing, met by use."""
    if "years" not in sit.step.how or len(sit.before.stack) < 2:
        return None
    top = sit.before.stack[-1]
    facts = sit.know.film(top.cls)
    if top.old or top.unkeyed < 3 or facts.redissolves or facts.holds_smooth > 0.5:
        return None
    return Cause(
        chance=0.05 * top.unkeyed,
        why=f"{top.coats} coats of {facts.name} rely on each other's bond",
        reads=((film_key(top.cls), "holds_smooth"),),
    )


def surface_too_fine(sit: Situation) -> Cause | None:
    """Judge bare wood or film polished so fine that a film has no key."""
    new = sit.new
    if new is None or new.dry_um <= 0 or new.needs_bare or sit.before.grit < 500:
        return None
    if _melts_in(sit) or new.grip >= 0.85 or new.family == "wax":
        return None
    return Cause(
        chance=0.3 * ramp(sit.before.grit, 400, 1000),
        why=f"P{sit.before.grit} leaves a polish, not a key",
        reads=((film_key(new.id), "grip"),),
    )


def _card(
    card_id: str,
    judge: Judge,
    *,
    levels: tuple[Level, ...] = ("coat",),
    layer: str = "between",
    onset: tuple[Onset, Onset] = ("days", "months"),
    sources: tuple[str, ...] = _PLACE,
) -> Card:
    """Return a peeling card."""
    return Card(
        id=card_id,
        fault="peeling",
        mechanism="adhesion",
        levels=levels,
        effect=film_lets_go,
        layer=layer,
        onset=onset,
        signs=_SIGNS,
        sources=sources,
        judge=judge,
    )


CARDS = (
    _card("no-key-on-sealed-ground", smooth_ground),
    _card("nothing-to-hold-on-foil", slick_face),
    _card("dirt-between-coats", dirt_between, onset=("immediate", "months")),
    _card("wax-in-the-film-below", waxy_film_below),
    _card("coated-over-unripe-coat", unripe_below, onset=("days", "years")),
    _card("colour-left-a-film", colour_film_below, onset=("months", "years")),
    _card("loose-old-film-below", loose_ground, layer="below", onset=("days", "months")),
    _card("oils-of-the-wood", oily_wood, layer="wood"),
    _card("paint-needs-absorbent-ground", nothing_to_soak_into, onset=("immediate", "days")),
    _card("damp-wood-under-film", damp_wood, layer="wood", onset=("days", "weeks")),
    _card("water-on-uncured-film", water_on_young_film, levels=("expose", "use"), layer="film"),
    _card("weather-on-clear-film", weather_under_clear, levels=("expose", "use"), onset=("months", "years")),
    _card("many-coats-one-bond", years_on_weak_bond, levels=("use",), onset=("years", "years")),
    _card("polished-too-fine-to-key", surface_too_fine),
    _card(
        "rooms-finish-outdoors", weather_outdoors, levels=("use",), layer="film", onset=("months", "years")
    ),
    _card("knives-cut-film", knives_cut_film, levels=("use",), layer="film", onset=("weeks", "months")),
)
