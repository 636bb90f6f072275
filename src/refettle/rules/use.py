"""Use: heat, water, smell, mould, and the wear of every day."""

from refettle.rules.card import Card, Cause, film_has_ring, mould_is_there, nothing_changes, smell_is_there
from refettle.rules.situation import Situation, cure_share, film_key, ramp, shared_film_barrier

SMELLS = ("smoke", "rodent", "musty")
"""What smells out of the wood."""
OLD_FILM_HOLDS = 0.25
"""Share of a smell that an intact old clear film holds back [1]; judgement."""
_WET_USE = {"display": 0.03, "everyday": 0.15, "table": 0.6, "kitchen": 0.7, "wet": 0.9, "child": 0.45,
            "storage": 0.05, "drawer": 0.03, "food": 0.8, "outdoors": 0.9}  # fmt: skip


def marks_on_film(sit: Situation) -> Cause | None:
    """Judge rings, heat marks and wear of the film the surface ends with."""
    before = sit.before
    need = _WET_USE.get(sit.ground.use, 0.15)
    if sit.step.how & {"standing-water", "wet-storm"}:
        need = max(need, 0.85)
    heat = 0.8 if "hot-dish" in sit.step.how else (0.45 if sit.ground.use in {"table", "kitchen"} else 0.1)
    if sit.ground.orientation != "up" and not sit.step.how & {"hot-dish", "standing-water"}:
        need, heat = 0.35 * need, 0.2 * heat
    top = before.top
    body = top
    if top is not None and sit.know.film(top.cls).family == "wax" and before.second is not None:
        body = before.second
    if body is None or body.um <= 0:
        weak = 0.55 if sit.ground.wish != "bare" else 0.2
        return Cause(chance=weak * need, why="bare wood takes every spill", reads=())
    facts = sit.know.film(body.cls)
    porous = 0.5 * facts.porous
    thin = 0.25 * ramp(body.um, 25, 5)
    water = need * ramp((1.0 - facts.resist_water) + porous + thin, 0.2, 0.9)
    warm = heat * ramp(1.0 - facts.resist_heat, 0.2, 0.95)
    young = 0.5 * need * (1.0 - cure_share(sit.know, body)) if not body.old else 0.0
    worn = need * 0.5 * ramp(1.0 - facts.resist_wear, 0.2, 0.95)
    if "hot-dish" in sit.step.how:
        warm = max(warm, heat * _soft_below(sit))
    if body.old:
        water, warm, worn = 0.45 * water, 0.45 * warm, 0.45 * worn
    chance = 1.0 - (1.0 - 0.8 * water) * (1.0 - 0.6 * warm) * (1.0 - young) * (1.0 - 0.5 * worn)
    return Cause(
        chance=0.78 * chance,
        why=f"{facts.name} is weak against what this surface meets",
        reads=(
            (film_key(body.cls), "resist_water"),
            (film_key(body.cls), "resist_heat"),
            (film_key(body.cls), "resist_wear"),
        ),
    )


def _soft_below(sit: Situation) -> float:
    """Return how far a film below the top one gives way to heat [1]."""
    weak = [
        1.0 - sit.know.film(f.cls).resist_heat
        for f in sit.before.stack[:-1]
        if f.um >= 5 and not sit.know.film(f.cls).opaque
    ]
    return ramp(max(weak, default=0.0), 0.5, 0.9)


def smell_stays(sit: Situation) -> Cause | None:
    """Judge smell in the wood that films do not hold back."""
    if sit.step.verb != "use":
        return None
    worst, name, prop = 0.0, "", "blocks_smoke"
    reads = []
    for cause, percent in sit.before.in_wood:
        if cause not in SMELLS:
            continue
        through = shared_film_barrier(sit.know, sit.before, prop, OLD_FILM_HOLDS)
        chance = 0.9 * percent / 100.0 * through
        reads.append((f"latent:{cause}", "blocked_by"))
        if chance > worst:
            worst, name = chance, sit.know.latent(cause).name
    for soil, percent in sit.before.on_top:
        facts = sit.know.contaminant(soil)
        chance = facts.smells * percent / 100.0
        if chance > worst:
            worst, name = chance, facts.name
            reads.append((f"contaminant:{soil}", "smells"))
    if worst <= 0:
        return None
    shut = 1.1 if sit.ground.orientation == "inside" or sit.ground.dark else 0.85
    return Cause(chance=worst * shut, why=f"{name} goes on giving off smell", reads=tuple(reads))


def film_smells(sit: Situation) -> Cause | None:
    """Judge oil films that smell for months in closed spaces."""
    if sit.step.verb != "use":
        return None
    inside = sit.ground.orientation == "inside" or sit.ground.dark
    if not inside:
        return None
    oils = [
        f for f in sit.before.stack if not f.old and sit.know.film(f.cls).cure_oxidative > 0.5 and f.um > 0
    ]
    if not oils:
        return None
    facts = sit.know.film(oils[-1].cls)
    raw = 0.5 if facts.needs_bare else 0.28
    cured = cure_share(sit.know, oils[-1])
    return Cause(
        chance=raw * (1.0 - 0.6 * cured),
        why=f"{facts.name} shut in keeps smelling for weeks or months",
        reads=((film_key(facts.id), "cure_oxidative"),),
    )


def mould_returns(sit: Situation) -> Cause | None:
    """Judge mildew not killed, or its water not stopped."""
    before = sit.before
    live = before.soiled("mould")
    source = bool(sit.step.how & {"wall", "damp"}) or (sit.air.known and sit.air.rh > 0.68)
    milk = any(sit.know.film(f.cls).feeds_mould for f in before.stack if not f.old)
    musty = before.strength("musty")
    shut_damp = "damp" in sit.step.how and bool(sit.step.how & {"shut", "wall", "years"})
    if live <= 0 and musty <= 0 and not (milk and source) and not shut_damp:
        return None
    if shut_damp and live <= 0:
        dirt = max(before.soiled("grime"), before.soiled("grease"), before.soiled("sanding-dust"))
        return Cause(
            chance=0.3 + 0.2 * dirt,
            why="still damp air over dirt or bare wood grows mildew",
            reads=(("contaminant:grime", "smells"),),
        )
    chance = 0.45 * live + 0.12 * musty
    if source:
        chance += 0.45 * (live**0.8 if live > 0 else 0.4)
    if milk and source:
        chance += 0.2
    return Cause(
        chance=chance,
        why="mildew comes back while the wood stays damp and still air lies on it",
        reads=(("contaminant:mould", "mould"),),
    )


def coated_over_mould(sit: Situation) -> Cause | None:
    """Judge a coat over live mildew."""
    live = sit.before.soiled("mould")
    if sit.new is None or live <= 0:
        return None
    return Cause(
        chance=0.7 * live,
        why="mildew left alive grows through the coat",
        reads=(("contaminant:mould", "mould"),),
    )


CARDS = (
    Card(
        id="marks-in-use", fault="water-heat-marks", mechanism="use", levels=("use",), effect=film_has_ring,
        layer="film", onset=("days", "years"),
        signs=("white rings or clouds where something wet or hot stood", "worn places"),
        sources=("common-practice",), judge=marks_on_film,
    ),
    Card(
        id="smell-in-wood", fault="odour", mechanism="use", levels=("use",), effect=smell_is_there, layer="wood",
        onset=("days", "weeks"), signs=("smells again when warm and shut",), sources=("common-practice",),
        judge=smell_stays,
    ),
    Card(
        id="oil-smells-shut-in", fault="odour", mechanism="use", levels=("use",), effect=nothing_changes,
        layer="film", onset=("days", "months"), signs=("oily smell in drawers",), sources=("common-practice",),
        judge=film_smells,
    ),
    Card(
        id="mould-not-stopped", fault="mould-returns", mechanism="use", levels=("use",), effect=mould_is_there,
        layer="on top", onset=("weeks", "months"), signs=("grey or green spots and musty smell",),
        sources=("common-practice",), judge=mould_returns,
    ),
    Card(
        id="coated-over-mould", fault="mould-returns", mechanism="use", levels=("coat",), effect=mould_is_there,
        layer="between", onset=("weeks", "months"), signs=("spots come through the new coat",),
        sources=("common-practice",), judge=coated_over_mould,
    ),
)  # fmt: skip
