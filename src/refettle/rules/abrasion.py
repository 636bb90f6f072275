"""Abrasion: scratches left, films and veneers cut through."""

from refettle.rules.card import Card, Cause, Judge, Level, film_is_marked, wood_is_cut_through
from refettle.rules.situation import Situation, film_key, ramp

_VISIBLE = ((40, 0.95), (60, 0.93), (80, 0.85), (100, 0.62), (120, 0.4), (150, 0.2), (180, 0.1), (220, 0.05))


def _visibility(grit: int) -> float:
    """Return how plainly the scratches of a P grit show under a clear finish [1]."""
    for limit, share in _VISIBLE:
        if grit <= limit:
            return share
    return 0.02


def scratches_show(sit: Situation) -> Cause | None:
    """Judge scratches left under colour, clear or paint."""
    new, coarse = sit.new, sit.before.coarse
    if new is None or coarse <= 0 or sit.coat_no > 1:
        return None
    shows = _visibility(coarse)
    if new.opaque:
        shows *= 0.3 if coarse >= 80 else 0.55
    elif new.colour_kind == "pigment":
        shows = min(0.95, shows * 1.4)
    elif new.colour_kind == "dye":
        shows = min(0.95, shows * 1.2)
    if sit.before.stack and sit.before.stack[-1].um > 10:
        shows *= 0.7
    if new.porous > 0.5 or "prime" in new.role:
        shows *= 0.8
    return Cause(
        chance=shows,
        why=f"scratches of P{coarse} show under {new.name}",
        reads=((film_key(new.id), "colour_kind"),),
    )


def across_the_grain(sit: Situation) -> Cause | None:
    """Judge sanding across the grain before colour or clear."""
    if sit.step.verb not in {"sand", "scuff", "rub_out"} or "across grain" not in sit.step.how:
        return None
    if sit.ground.wish == "opaque":
        return Cause(chance=0.12, why="scratches across the grain may print through paint")
    return Cause(chance=0.65, why="scratches across the grain show as lines")


def last_rub_too_coarse(sit: Situation) -> Cause | None:
    """Judge a finished film left with visible scratches."""
    top = sit.before.top
    if sit.step.verb not in {"use", "expose"} or top is None or top.old or sit.before.grit <= 0:
        return None
    if top.um <= 0 or sit.before.grit >= 400:
        return None
    return Cause(
        chance=0.6 * ramp(sit.before.grit, 400, 240),
        why=f"the last film was left as P{sit.before.grit} cut it",
        reads=((film_key(top.cls), "sheens"),),
    )


def sanded_soft_film(sit: Situation) -> Cause | None:
    """Judge sanding a film before it powders."""
    top = sit.before.top
    if sit.step.verb not in {"sand", "scuff", "rub_out"} or top is None or top.old or top.um <= 0:
        return None
    facts = sit.know.film(top.cls)
    needed = 100.0 * facts.sand_h / max(facts.recoat_from_h, 0.1)
    lack = ramp(top.ripe, 0.85 * needed, 0.2 * needed)
    if lack <= 0:
        return None
    return Cause(
        chance=0.55 * lack,
        why=f"{facts.name} was sanded before it powders: it balls up and tears",
        reads=((film_key(top.cls), "sand_h"),),
    )


def tool_unfit_for_relief(sit: Situation) -> Cause | None:
    """Judge hard tools on shaped faces: flats worn into rounds, swirls in corners."""
    if sit.step.verb != "sand" or sit.step.method != "random-orbit" or sit.ground.wish == "opaque":
        return None
    shaped = sit.ground.relief in {"panel", "moulded", "carved", "slats", "slats open", "turned"}
    return Cause(chance=0.3, why="a machine leaves swirls where it cannot lie flat") if shaped else None


_SLICK = 0.3
"""Slickness [1] from which a face is foil or laminate rather than veneer."""
_SHOWN_UM = 50
"""Veneer [µm] that is still told as a number."""


def veneer_cut(sit: Situation) -> Cause | None:
    """Judge how near a sanding comes to the end of the veneer."""
    ground = sit.ground
    if sit.step.verb not in {"sand", "scuff", "scrape"} or ground.veneer_um <= 0:
        return None
    film = sum(f.um for f in sit.before.stack)
    to_wood = sit.before.bare or "to bare" in sit.step.how or (0 < sit.step.grit <= 120 and film < 60)
    if not to_wood:
        return None
    left = sit.before.wood_um
    coarse = 1.0 if 0 < sit.step.grit <= 120 else 0.55
    machine = 1.25 if sit.step.method == "random-orbit" else 0.85
    thin = ramp(left, 700, 150)
    base = 0.75 if "to bare" in sit.step.how else 0.35
    chance = base * thin * coarse * machine + (0.1 if ground.relief != "flat" else 0.0) * thin
    face = sit.wood.name if sit.wood.slick > _SLICK else "veneer"
    can_go = f"about {left / 1000:.1f} mm of {face} can go" if left >= _SHOWN_UM else f"{face} is thin"
    return Cause(
        chance=chance,
        why=f"{can_go}: sanding takes it through",
        reads=((f"build:{ground.build}", "veneer_um"),),
    )


def edges_cut(sit: Situation) -> Cause | None:
    """Judge sanding through colour or film at edges and mouldings; where it is done on purpose it is no fault."""
    if "edges" in sit.step.how:
        return None
    if sit.step.verb not in {"sand", "scuff", "rub_out"} or sit.before.bare:
        return None
    before = sit.before
    fresh = sum(f.um for f in before.stack if not f.old)
    colour_below = before.colour in {"stained", "dyed"} or any(
        sit.know.film(f.cls).colour_kind != "none" for f in before.stack[:-1] if not f.old
    )
    if not colour_below or fresh <= 0:
        return None
    edge = 1.0 if sit.ground.relief in {"panel", "moulded", "turned", "carved", "slats"} else 0.5
    machine = 1.5 if sit.step.method == "random-orbit" else 1.0
    grit = ramp(sit.step.grit or 320, 400, 150)
    return Cause(
        chance=0.75 * ramp(fresh, 60, 8) * (0.25 + 0.75 * grit) * edge * machine,
        why="a thin film over colour cuts through first at edges and corners",
        reads=((film_key(before.stack[-1].cls), "dry_um"),),
    )


def _marks(card_id: str, judge: Judge, levels: tuple[Level, ...], *signs: str) -> Card:
    """Return a card for scratches."""
    return Card(
        id=card_id, fault="sanding-marks", mechanism="abrasion", levels=levels, effect=film_is_marked,
        layer="wood", onset=("immediate", "hours"), signs=signs,
        sources=("coatings-R41", "common-practice"), judge=judge,
    )  # fmt: skip


CARDS = (
    _marks("scratches-under-coat", scratches_show, ("coat",), "lines or swirls stand out in the colour"),
    _marks("sanded-across-grain", across_the_grain, ("work",), "lines across the grain"),
    _marks(
        "film-left-scratched", last_rub_too_coarse, ("use", "expose"),
        "sanding haze: dull white haze of fine scratches in raking light",
        "gone while wet with mineral spirits, back when dry",
    ),
    _marks("film-sanded-soft", sanded_soft_film, ("work",), "film balls up, paper clogs"),
    _marks("machine-on-shaped-face", tool_unfit_for_relief, ("work",), "swirls in corners and quirks"),
    Card(
        id="veneer-cut-through", fault="sand-through", mechanism="abrasion", levels=("work",),
        effect=wood_is_cut_through, layer="wood", onset=("immediate", "immediate"),
        signs=("another wood or glue shows in a patch",), sources=("coatings-R42b", "common-practice"),
        judge=veneer_cut,
    ),
    Card(
        id="edges-cut-through", fault="sand-through", mechanism="abrasion", levels=("work",),
        effect=wood_is_cut_through, layer="film", onset=("immediate", "immediate"),
        signs=("pale edges where the colour is gone",), sources=("common-practice",), judge=edges_cut,
    ),
)  # fmt: skip
