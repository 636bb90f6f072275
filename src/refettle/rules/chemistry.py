"""Iron, alkali, acid and bleach: what chemistry leaves in the wood."""

from refettle.rules.card import Card, Cause, film_is_marked, wood_is_dark, wood_is_stained
from refettle.rules.situation import Situation, film_key, ramp, shared_film_barrier


def _water_in_step(sit: Situation) -> float:
    """Return the water that the step brings to the surface [1]."""
    if sit.new is not None:
        return sit.new.water_share
    step, know = sit.step, sit.know
    if step.verb in {"clean", "rinse", "neutralise"} and know.has("cleaner", step.what):
        return max(know.cleaner(step.what).water_share, 0.3 if "damp" in step.how else 0.0)
    if step.verb in {"bleach", "raise_grain"}:
        return 0.7
    if step.verb in {"sand", "rub_out", "scuff"} and "wet" in step.how:
        return 0.5
    if step.how & {"wet-storm", "damp", "standing-water"}:
        return 0.6
    return 0.0


def _tannin(sit: Situation) -> float:
    """Return the tannin of the wood that is left [1]."""
    return max(sit.before.strength("tannin"), sit.wood.tannin)


def iron_meets_tannin(sit: Situation) -> Cause | None:
    """Judge steel, water and tannin meeting."""
    water = _water_in_step(sit)
    steel = sit.before.soiled("iron-dust")
    if sit.step.verb in {"sand", "rub_out", "scuff"} and "steel wool" in sit.step.how | {sit.step.method}:
        steel = max(steel, 0.9 if "wet" in sit.step.how else 0.0)
    if sit.step.how & {"iron", "nails"}:
        steel = max(steel, 0.7)
    tannin = _tannin(sit)
    if water <= 0.05 or steel <= 0 or tannin <= 0:
        return None
    through = shared_film_barrier(sit.know, sit.before, "blocks_tannin", 0.6)
    film = sum(f.um for f in sit.before.stack if not sit.know.film(f.cls).needs_bare)
    through *= 1.0 - 0.8 * ramp(film, 25, 120)
    return Cause(
        chance=1.1 * tannin * (steel**0.6) * ramp(water, 0.0, 0.3) * through,
        why=f"steel dust, water and the tannin of {sit.wood.name} make ink",
        reads=((f"wood:{sit.wood.id}", "tannin"), ("contaminant:iron-dust", "shows")),
    )


def steel_rusts(sit: Situation) -> Cause | None:
    """Judge steel dust under water-borne coats."""
    steel = sit.before.soiled("iron-dust")
    water = _water_in_step(sit)
    if sit.new is None or steel <= 0 or water <= 0.1:
        return None
    pores = 0.7 + 0.3 * sit.wood.open_pores
    return Cause(
        chance=0.8 * (steel**0.6) * ramp(water, 0.0, 0.5) * pores,
        why=f"steel dust rusts in {sit.new.name}",
        reads=(("contaminant:iron-dust", "shows"), (film_key(sit.new.id), "water_share")),
    )


def alkali_darkens(sit: Situation) -> Cause | None:
    """Judge caustic, ammonia and the like on tannin woods."""
    step, know = sit.step, sit.know
    power = 0.0
    subject = ""
    if step.verb == "strip" and know.has("remover", step.what):
        power, subject = know.remover(step.what).darkens_tannin, f"remover:{step.what}"
    elif step.verb in {"clean", "rinse"} and know.has("cleaner", step.what):
        power, subject = know.cleaner(step.what).darkens_tannin, f"cleaner:{step.what}"
    elif step.verb == "bleach" and step.what == "peroxide-alkali":
        power, subject = 0.3, "contaminant:bleach-residue"
    tannin = _tannin(sit)
    if power <= 0 or tannin <= 0.15:
        return None
    shield = 1.0
    if step.verb != "strip" and not sit.before.bare:
        shield = 0.15
    lasting = 0.62 if step.verb == "strip" else 1.0
    return Cause(
        chance=power * min(1.0, 1.15 * tannin) * shield * lasting,
        why=f"alkali darkens the tannin of {sit.wood.name}",
        reads=((subject, "darkens_tannin"), (f"wood:{sit.wood.id}", "tannin")),
    )


def alkali_under_coat(sit: Situation) -> Cause | None:
    """Judge wood still alkaline when a coat goes on it."""
    alkali = sit.before.soiled("alkali")
    if alkali <= 0 or sit.coat_no > 1 or _tannin(sit) <= 0.2:
        return None
    return Cause(
        chance=0.75 * alkali * min(1.0, 1.15 * _tannin(sit)),
        why="alkali left in the wood keeps it dark and goes on darkening it",
        reads=(("contaminant:alkali", "shows"),),
    )


def residue_comes_out(sit: Situation) -> Cause | None:
    """Judge matter left in the wood that blooms, weeps or specks later."""
    new = sit.new
    if new is None or new.family == "wax":
        return None
    whole, worst, worst_name, reads = 1.0, 0.0, "", []
    for name, percent in sit.before.on_top:
        facts = sit.know.contaminant(name)
        if facts.comes_out <= 0:
            continue
        chance = facts.comes_out * (percent / 100.0) ** 0.8
        whole *= 1.0 - min(0.98, chance)
        reads.append((f"contaminant:{name}", "comes_out"))
        if chance > worst:
            worst, worst_name = chance, facts.name
    if worst <= 0:
        return None
    return Cause(chance=1.0 - whole, why=f"{worst_name} comes out later", reads=tuple(reads))


def dust_in_film(sit: Situation) -> Cause | None:
    """Judge sanding dust left under a clear film."""
    new = sit.new
    dust = sit.before.soiled("sanding-dust")
    if new is None or dust <= 0 or new.dry_um <= 0 or sit.coat_no != 1:
        return None
    return Cause(
        chance=0.15 * dust,
        why="dust left on the surface dries into the film",
        reads=(("contaminant:sanding-dust", "shows"),),
    )


CARDS = (
    Card(
        id="iron-and-tannin", fault="iron-stain", mechanism="iron and alkali", levels=("coat", "work", "expose"),
        effect=wood_is_stained, layer="wood", onset=("immediate", "days"),
        signs=("blue-black spots or clouds", "black around nails"), sources=("wood-handbook-2010-ch16", "common-practice"),
        judge=iron_meets_tannin,
    ),
    Card(
        id="steel-dust-rusts", fault="rust-specks", mechanism="iron and alkali", levels=("coat",),
        effect=film_is_marked, layer="between", onset=("hours", "weeks"), signs=("brown specks in the film",),
        sources=("common-practice",), judge=steel_rusts,
    ),
    Card(
        id="alkali-darkens-tannin", fault="alkali-darkening", mechanism="iron and alkali", levels=("work",),
        effect=wood_is_dark, layer="wood", onset=("immediate", "hours"), signs=("the wood turns dark brown or grey",),
        sources=("coatings-R38d", "common-practice"), judge=alkali_darkens,
    ),
    Card(
        id="alkali-left-under-coat", fault="alkali-darkening", mechanism="iron and alkali", levels=("coat", "use"),
        effect=wood_is_dark, layer="wood", onset=("days", "months"), signs=("the wood goes on darkening",),
        sources=("common-practice",), judge=alkali_under_coat,
    ),
    Card(
        id="residue-comes-out", fault="residue-bloom", mechanism="iron and alkali", levels=("coat",),
        effect=film_is_marked, layer="wood", onset=("days", "months"),
        signs=("white crystals, drops or bloom come out of pores and joints",), sources=("common-practice",),
        judge=residue_comes_out,
    ),
    Card(
        id="dust-dries-in", fault="residue-bloom", mechanism="iron and alkali", levels=("coat",),
        effect=film_is_marked, layer="film", onset=("immediate", "immediate"), signs=("nibs in the film",),
        sources=("common-practice",), judge=dust_in_film,
    ),
)  # fmt: skip
