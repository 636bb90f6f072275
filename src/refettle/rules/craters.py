"""Surface energy: wet films that pull away from silicone, wax and grease."""

from refettle.rules.card import Card, Cause, Judge, film_is_marked
from refettle.rules.situation import Situation, film_key, shared_film_barrier

_SIGNS = ("round craters open in the wet film", "the wet coat crawls away from spots")


def matter_on_top(sit: Situation) -> Cause | None:
    """Judge low-energy matter on the surface under a wet coat."""
    new = sit.new
    if new is None or new.crater_prone <= 0 or new.family == "wax":
        return None
    whole, worst, worst_name, reads = 1.0, 0.0, "", [(film_key(new.id), "crater_prone")]
    for name, percent in sit.before.on_top:
        facts = sit.know.contaminant(name)
        if facts.craters <= 0:
            continue
        chance = (
            facts.craters * (percent / 100.0) ** 0.7 * new.crater_prone * (1.0 - 0.6 * new.blocks_silicone)
        )
        whole *= 1.0 - min(0.98, chance)
        reads.append((f"contaminant:{name}", "craters"))
        if chance > worst:
            worst, worst_name = chance, facts.name
    if worst <= 0:
        return None
    return Cause(
        chance=1.0 - whole, why=f"{worst_name} makes {new.name} pull into craters", reads=tuple(reads)
    )


def silicone_in_wood(sit: Situation) -> Cause | None:
    """Judge silicone that has gone into the wood and comes up through washing and stripping."""
    new = sit.new
    strength = sit.before.strength("silicone-deep")
    if new is None or strength <= 0 or new.family == "wax":
        return None
    through = shared_film_barrier(sit.know, sit.before, "blocks_silicone", 0.1)
    return Cause(
        chance=0.97 * strength * new.crater_prone * through,
        why=f"silicone in the wood makes {new.name} pull into craters",
        reads=(("latent:silicone-deep", "moves_strong"), (film_key(new.id), "crater_prone")),
    )


def oil_below_waterborne(sit: Situation) -> Cause | None:
    """Judge waterborne coats over fresh oil, which they crawl on."""
    new, below = sit.new, sit.below
    if new is None or below is None or below.old or new.family != "waterborne":
        return None
    facts = sit.know.film(below.cls)
    if facts.carrier not in {"spirits", "none"} or facts.family == "wax" or below.ripe >= 220:
        return None
    return Cause(
        chance=0.4 * new.crater_prone * (1.0 - below.ripe / 220.0) + 0.05,
        why=f"{new.name} crawls on {facts.name} that is still oily",
        reads=((film_key(below.cls), "recoat_from_h"), (film_key(new.id), "crater_prone")),
    )


def oily_wood_craters(sit: Situation) -> Cause | None:
    """Judge oils of the wood under crater-prone coats."""
    new = sit.new
    oils = sit.before.strength("wood-oils")
    if new is None or oils <= 0 or not sit.over_bare or new.family == "wax":
        return None
    return Cause(
        chance=0.3 * oils * new.crater_prone,
        why=f"oils of {sit.wood.name} repel {new.name} in places",
        reads=((f"wood:{sit.wood.id}", "oils"),),
    )


def _card(card_id: str, judge: Judge, layer: str) -> Card:
    """Return a card of this mechanism."""
    return Card(
        id=card_id, fault="craters", mechanism="surface energy", levels=("coat",), effect=film_is_marked,
        layer=layer, onset=("immediate", "immediate"), signs=_SIGNS, sources=("common-practice",), judge=judge,
    )  # fmt: skip


CARDS = (
    _card("matter-repels-coat", matter_on_top, "between"),
    _card("silicone-in-the-wood", silicone_in_wood, "wood"),
    _card("fresh-oil-repels-water", oil_below_waterborne, "between"),
    _card("wood-oils-repel", oily_wood_craters, "wood"),
)
