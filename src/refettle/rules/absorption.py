"""Absorption: colour that goes in unevenly, or not at all."""

from refettle.rules.card import Card, Cause, Judge, colour_is_patchy
from refettle.rules.situation import Situation, film_key, ramp


def _sealed_share(sit: Situation) -> float:
    """Return how far a washcoat or conditioner evens out absorption [1]."""
    sealed = 0.0
    for film in sit.before.stack:
        facts = sit.know.film(film.cls)
        if film.old or film.um > 15 or facts.colour_kind != "none":
            continue
        if "condition" in facts.role or "seal" in facts.role:
            sealed = max(sealed, 0.6 * ramp(film.ripe, 10, 90))
    return sealed


def soaks_unevenly(sit: Situation) -> Cause | None:
    """Judge blotching of penetrating colour on blotchy wood."""
    new, wood = sit.new, sit.wood
    if new is None or new.blotch_prone <= 0 or not sit.over_bare or wood.takes_colour <= 0:
        return None
    even = 1.0 - _sealed_share(sit)
    fine = 1.0 - 0.2 * ramp(sit.before.grit, 180, 320)
    spray = 0.75 if sit.step.method in {"spray", "aerosol"} else 1.0
    return Cause(
        chance=1.0 * new.blotch_prone * wood.blotch * even * fine * spray,
        why=f"{wood.name} drinks {new.name} unevenly",
        reads=((f"wood:{wood.id}", "blotch"), (film_key(new.id), "blotch_prone")),
    )


def oil_soaks_unevenly(sit: Situation) -> Cause | None:
    """Judge the dark blotches that oil finishes alone give on blotchy pale wood."""
    new, wood = sit.new, sit.wood
    if (
        new is None
        or not new.needs_bare
        or new.colour_kind != "none"
        or not sit.over_bare
        or not new.wiped_off
    ):
        return None
    return Cause(
        chance=0.28 * wood.blotch * wood.lightness,
        why=f"{new.name} darkens {wood.name} in blotches",
        reads=((f"wood:{wood.id}", "blotch"),),
    )


def worn_and_sealed_places(sit: Situation) -> Cause | None:
    """Judge colour over a film that is worn through in places, or over leftovers of it."""
    new, below = sit.new, sit.below
    if new is None or new.colour_kind == "none" or new.opaque or below is None or not below.old:
        return None
    if not new.needs_bare or below.um <= 0:
        return None
    patchy = max(ramp(below.patchy, 2, 28), 0.5 if below.um < 8 else 0.0)
    if patchy <= 0:
        return None
    return Cause(
        chance=0.85 * patchy,
        why="bare places drink the colour, sealed places refuse it",
        reads=((film_key(new.id), "needs_bare"),),
    )


def uneven_ground(sit: Situation) -> Cause | None:
    """Judge colour over a ground of unlike parts: mixed woods, fillings, faded areas, old colour."""
    new = sit.new
    if new is None or new.colour_kind == "none" or new.opaque or not new.needs_bare:
        return None
    before = sit.before
    chance = 0.0
    why = ""
    if before.strength("filled") > 0 or before.damage & {"holes", "gouges", "missing-veneer"}:
        chance, why = 0.4, "fillings take colour unlike the wood around them"
    if sit.ground.mixed and chance < 0.28:
        chance, why = 0.28, "two woods take one colour differently"
    if before.damage & {"faded", "black-ring", "burn"} and chance < 0.35:
        chance, why = 0.35, "old marks show through the colour"
    if before.colour == "old" and sit.over_bare and chance < 0.25:
        chance, why = 0.25, "old colour left in the wood shows through"
    return Cause(chance=chance, why=why, reads=((film_key(new.id), "needs_bare"),)) if chance else None


def marks_under_clear(sit: Situation) -> Cause | None:
    """Judge old colour left uneven under a clear coat where plain wood is wanted."""
    new = sit.new
    if new is None or new.opaque or sit.ground.wish not in {"natural", "oiled"} or new.family == "wax":
        return None
    if not sit.over_bare or new.dry_um <= 0 or sit.coat_no != 1:
        return None
    patchy_colour = sit.before.colour == "old" and sit.ground.wish_depth < 45
    if not patchy_colour:
        return None
    return Cause(
        chance=0.4,
        why="old stain stays in the pores and shows dark and uneven under clear",
        reads=((f"wood:{sit.wood.id}", "open_pores"),),
    )


def brushed_toner(sit: Situation) -> Cause | None:
    """Judge colour carried in a film, laid by hand."""
    new = sit.new
    if new is None or not new.dry_um or new.opaque or new.colour_kind == "none":
        return None
    hand = sit.step.method in {"brush", "wipe", "pad", "roller"}
    heavy = sit.step.film == "heavy"
    if not hand or new.wiped_off:
        return None
    return Cause(
        chance=0.22 + (0.25 if heavy else 0.0) + 0.06 * max(0, sit.coat_no - 1),
        why=f"every brush mark and overlap of {new.name} is a darker streak",
        reads=((film_key(new.id), "colour_kind"),),
    )


def closed_to_colour(sit: Situation) -> Cause | None:
    """Judge penetrating colour on a sealed, polished, waxed or glued ground."""
    new, below = sit.new, sit.below
    if new is None or new.colour_kind == "none" or not new.needs_bare:
        return None
    chance, why = 0.0, ""
    reads = [(film_key(new.id), "needs_bare")]
    sealing = [f for f in sit.before.stack if f.um >= 16]
    if below is not None and sealing and sealing[-1].patchy < 40:
        chance, why = (
            0.6 - 0.3 * ramp(sealing[-1].patchy, 0, 20),
            f"{new.name} cannot enter the film that is there",
        )
    for name, percent in sit.before.on_top:
        facts = sit.know.contaminant(name)
        value = facts.rejects_colour * percent / 100.0
        if value > chance:
            chance, why = value, f"{facts.name} keeps {new.name} out"
            reads.append((f"contaminant:{name}", "rejects_colour"))
    if sit.over_bare and not sealing:
        polish = ramp(sit.before.grit, 220, 400) * (0.35 + 0.65 * sit.wood.tight)
        pigment = 1.0 if new.colour_kind == "pigment" else 0.35
        if 0.75 * polish * pigment > chance:
            chance = 0.75 * polish * pigment
            why = f"P{sit.before.grit} closes {sit.wood.name}: little pigment lodges"
            reads.append((f"wood:{sit.wood.id}", "tight"))
        dense = 0.5 * ramp(sit.wood.tight, 0.6, 1.0) * pigment * ramp(sit.ground.wish_depth, 55, 90)
        if dense > chance:
            chance, why = dense, f"{sit.wood.name} holds too little pigment for a dark colour"
            reads.append((f"wood:{sit.wood.id}", "tight"))
        if sit.wood.takes_colour < 0.5:
            chance, why = 0.95, f"{sit.wood.name} takes no colour"
    return Cause(chance=chance, why=why, reads=tuple(reads)) if chance > 0 else None


def second_colour_coat(sit: Situation) -> Cause | None:
    """Judge more coats of a wiped stain where the first has closed the wood."""
    new, below = sit.new, sit.below
    if new is None or below is None or below.cls != new.id or not new.needs_bare or new.dry_um > 3:
        return None
    if new.colour_kind != "pigment":
        return None
    return Cause(
        chance=0.15 + 0.1 * max(0, below.coats - 1),
        why="the first coat has filled what holds pigment; more only lies on top",
        reads=((film_key(new.id), "needs_bare"),),
    )


def glue_under_colour(sit: Situation) -> Cause | None:
    """Judge glue smears and filler under colour or clear."""
    new = sit.new
    glue = sit.before.soiled("glue")
    if new is None or glue <= 0 or new.opaque:
        return None
    colour = 0.85 if new.colour_kind != "none" else 0.7
    return Cause(
        chance=colour * glue,
        why=f"glue smears keep {new.name} out and show as pale spots",
        reads=(("contaminant:glue", "rejects_colour"),),
    )


def _card(card_id: str, fault: str, judge: Judge, sign: str) -> Card:
    """Return a card of this mechanism."""
    return Card(
        id=card_id, fault=fault, mechanism="absorption", levels=("coat",), effect=colour_is_patchy, layer="wood",
        onset=("immediate", "immediate"), signs=(sign,), sources=("common-practice",), judge=judge,
    )  # fmt: skip


CARDS = (
    _card(
        "wood-drinks-unevenly",
        "blotching",
        soaks_unevenly,
        "uneven colour, pale in places, dirty dark in others",
    ),
    _card(
        "oil-darkens-in-blotches", "blotching", oil_soaks_unevenly, "uneven colour, dark blotches under oil"
    ),
    _card("worn-places-drink", "uneven-colour", worn_and_sealed_places, "worn places come out far darker"),
    _card("unlike-ground", "uneven-colour", uneven_ground, "fillings or parts stand out in another tone"),
    _card(
        "old-colour-under-clear", "uneven-colour", marks_under_clear, "old stain left in pores and corners"
    ),
    _card("colour-laid-by-hand", "uneven-colour", brushed_toner, "dark streaks at overlaps"),
    _card("ground-closed-to-colour", "stain-rejected", closed_to_colour, "the colour wipes off again"),
    _card(
        "more-stain-only-on-top", "uneven-colour", second_colour_coat, "muddy, uneven colour after more coats"
    ),
    _card("glue-shows", "glue-spots", glue_under_colour, "pale spots around joints"),
)
