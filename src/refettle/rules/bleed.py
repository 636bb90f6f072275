"""Bleed: colour, resin and dye that travel up through new coats."""

from refettle.rules.card import Card, Cause, colour_has_come_up
from refettle.rules.situation import Situation, film_key, ramp, shared_film_barrier

_MOVES = {
    "water": "moves_water",
    "alcohol": "moves_alcohol",
    "spirits": "moves_spirits",
    "strong": "moves_strong",
}
_NOT_COLOUR = frozenset(
    {"knots", "smoke", "rodent", "musty", "wood-oils", "antioxidants", "vapour", "silicone-deep"}
)

_TRACES = 1.3
"""Power over the strength of a colour in the wood [1]: traces hardly show, plenty shows in full; judgement."""


def colour_from_below(sit: Situation) -> Cause | None:
    """Judge wood colour, tannin, old stain or dye carried up by the wet coat."""
    new = sit.new
    if new is None or not sit.light_paint or new.carrier == "none" or new.dry_um <= 0:
        return None
    missed, worst, worst_name = 1.0, 0.0, ""
    reads = [(film_key(new.id), "carrier")]
    light = (1.0 - sit.ground.wish_depth / 100.0) ** 0.7
    damp = 1.0 + 0.5 * ramp(sit.air.rh, 0.6, 0.85)
    for name, percent in sit.before.in_wood:
        if name in _NOT_COLOUR or not sit.know.has("latent", name):
            continue
        facts = sit.know.latent(name)
        moves = float(getattr(facts, _MOVES[new.carrier]))
        through = shared_film_barrier(sit.know, sit.before, facts.blocked_by, facts.old_film_blocks)
        own = float(getattr(new, facts.blocked_by))
        chance = min(0.97, 0.95 * (percent / 100.0) ** _TRACES * moves * damp * through * (1.0 - own) * light)
        if new.carrier == "water":
            chance = min(0.97, chance * 1.15)
        missed *= 1.0 - chance
        reads.append((f"latent:{name}", _MOVES[new.carrier]))
        if chance > worst:
            worst, worst_name = chance, facts.name
    if worst <= 0.0:
        return None
    if "prime" in new.role:
        missed = 1.0 - 0.4 * (1.0 - missed)
    return Cause(chance=1.0 - missed, why=f"{worst_name} is carried up by {new.name}", reads=tuple(reads))


def smoke_film_bleeds(sit: Situation) -> Cause | None:
    """Judge smoke or nicotine left on the surface under a light waterborne coat."""
    new = sit.new
    strength = sit.before.soiled("smoke-film")
    if new is None or strength <= 0 or not sit.light_paint:
        return None
    through = 1.0 - new.blocks_smoke
    return Cause(
        chance=(0.75 if new.carrier == "water" else 0.4) * strength * through,
        why=f"smoke film is dissolved by {new.name}",
        reads=((film_key(new.id), "blocks_smoke"),),
    )


def dye_lifted(sit: Situation) -> Cause | None:
    """Judge fresh dye dissolved again by a coat with the same solvent."""
    new = sit.new
    if new is None or not sit.before.stack or new.colour_kind == "dye":
        return None
    dyes = [f for f in sit.before.stack if sit.know.film(f.cls).colour_kind == "dye" and not f.old]
    if not dyes:
        return None
    at = sit.before.stack.index(dyes[-1])
    if any(film.um > 4 for film in sit.before.stack[at + 1 :]):
        return None
    facts = sit.know.film(dyes[-1].cls)
    meets = facts.carrier == new.carrier or (facts.carrier == "alcohol" and new.carrier == "strong")
    if not meets or facts.dry_um > 0:
        return None
    rough = 0.5 if sit.step.method in {"brush", "roller", "pad", "wipe"} else 0.15
    return Cause(
        chance=rough,
        why=f"{new.name} dissolves {facts.name} and drags its colour",
        reads=((film_key(facts.id), "carrier"), (film_key(new.id), "carrier")),
    )


def wood_dye_runs(sit: Situation) -> Cause | None:
    """Judge woods whose colour dissolves in the coat and stains neighbours."""
    new, wood = sit.new, sit.wood
    if new is None or not sit.over_bare or wood.dye_like <= 0 or new.carrier == "water":
        return None
    wet = 1.0 if sit.step.method in {"brush", "wipe", "pad"} else 0.45
    neighbour = 1.0 if sit.ground.mixed else 0.3
    return Cause(
        chance=0.75 * wood.dye_like * wet * neighbour,
        why=f"{new.name} dissolves the colour of {wood.name} and carries it into its neighbour",
        reads=((f"wood:{wood.id}", "dye_like"),),
    )


def knots_through(sit: Situation) -> Cause | None:
    """Judge knot resin and colour under an opaque coat."""
    new = sit.new
    strength = sit.before.strength("knots")
    if new is None or strength <= 0 or not sit.light_paint or not new.opaque or "prime" in new.role:
        return None
    facts = sit.know.latent("knots")
    through = shared_film_barrier(sit.know, sit.before, "blocks_knots", facts.old_film_blocks)
    light = (1.0 - sit.ground.wish_depth / 100.0) ** 0.5
    return Cause(
        chance=0.9 * strength * through * (1.0 - new.blocks_knots) * light,
        why="resin and colour of the knots go on travelling through ordinary paint",
        reads=(("latent:knots", "moves_water"), (film_key(new.id), "blocks_knots")),
    )


def resin_warms(sit: Situation) -> Cause | None:
    """Judge heat and sun that draw pitch from knots through any film."""
    strength = max(sit.before.strength("knots"), sit.wood.resin)
    if strength <= 0 or not sit.step.how & {"sun", "heat"} or sit.before.bare:
        return None
    through = shared_film_barrier(sit.know, sit.before, "blocks_knots", 0.1)
    return Cause(
        chance=0.5 * strength * through,
        why="heat draws pitch from knots through the film",
        reads=((f"wood:{sit.wood.id}", "knots"), (f"wood:{sit.wood.id}", "resin")),
    )


CARDS = (
    Card(
        id="colour-carried-up", fault="bleed-through", mechanism="bleed", levels=("coat",),
        effect=colour_has_come_up, layer="wood", onset=("hours", "weeks"),
        signs=("pink, yellow or brown patches come up", "another coat goes the same colour"),
        sources=("wood-handbook-2010-ch16", "common-practice"), judge=colour_from_below,
    ),
    Card(
        id="smoke-film-carried-up", fault="bleed-through", mechanism="bleed", levels=("coat",),
        effect=colour_has_come_up, layer="between", onset=("hours", "days"),
        signs=("yellow-brown drips or clouds come up",), sources=("common-practice",), judge=smoke_film_bleeds,
    ),
    Card(
        id="fresh-dye-lifted", fault="bleed-through", mechanism="bleed", levels=("coat",),
        effect=colour_has_come_up, layer="between", onset=("immediate", "immediate"),
        signs=("colour pulls into the brush", "streaks as it is laid"), sources=("common-practice",),
        judge=dye_lifted,
    ),
    Card(
        id="wood-colour-runs", fault="bleed-through", mechanism="bleed", levels=("coat",),
        effect=colour_has_come_up, layer="wood", onset=("immediate", "hours"),
        signs=("the neighbour wood is stained red or orange",), sources=("common-practice",), judge=wood_dye_runs,
    ),
    Card(
        id="knots-through-paint", fault="knot-bleed", mechanism="bleed", levels=("coat",),
        effect=colour_has_come_up, layer="wood", onset=("weeks", "years"),
        signs=("brown rounds exactly over the knots",), sources=("wood-handbook-2010-ch16",), judge=knots_through,
    ),
    Card(
        id="heat-draws-pitch", fault="knot-bleed", mechanism="bleed", levels=("expose", "use"),
        effect=colour_has_come_up, layer="wood", onset=("days", "months"),
        signs=("sticky beads or amber rounds over knots",), sources=("common-practice",), judge=resin_warms,
    ),
)  # fmt: skip
