"""Water on wood: raised grain, swelling, veneer that lets go."""

from math import prod

from refettle.rules.card import Card, Cause, veneer_is_loose, wood_is_rough
from refettle.rules.situation import Situation, film_key, ramp, shared_film_barrier


def fibres_left_raised(sit: Situation) -> Cause | None:
    """Judge fibres raised by water and never cut off."""
    before = sit.before
    if not before.raised or sit.wood.slick > 0.5:
        return None
    if sit.step.is_coat and (sit.coat_no > 1 or sit.new is None or sit.new.dry_um <= 0):
        return None
    soft = 0.35 + 0.45 * sit.wood.fuzzy
    if before.stack and sit.know.film(before.stack[-1].cls).opaque:
        soft *= 0.75
    return Cause(
        chance=soft,
        why=f"water raised the grain of {sit.wood.name} and nothing cut it smooth again",
        reads=((f"wood:{sit.wood.id}", "fuzzy"),),
    )


def edges_drink_water(sit: Situation) -> Cause | None:
    """Judge water in coats on boards whose open fibres swell."""
    new, wood = sit.new, sit.wood
    if new is None or new.water_share <= 0.2 or wood.swells < 0.2 or wood.slick > 0.5:
        return None
    through = shared_film_barrier(sit.know, sit.before, "blocks_tannin")
    if not sit.over_bare:
        through = min(through, 0.35)
        if any(sit.know.film(f.cls).carrier != "water" for f in sit.before.stack if f.um > 0):
            through = min(through, 0.12)
        through = max(through, prod(f.patchy / 100.0 for f in sit.before.stack if f.um > 0))
    heavy = 1.2 if sit.step.film == "heavy" else 1.0
    return Cause(
        chance=wood.swells * min(1.0, 0.35 + 0.55 * new.water_share) * through * heavy,
        why=f"{wood.name} drinks the water of {new.name} and swells",
        reads=((f"wood:{wood.id}", "swells"), (film_key(new.id), "water_share")),
    )


def work_wets_board(sit: Situation) -> Cause | None:
    """Judge wet work on boards that swell."""
    wet = _work_water(sit)
    if wet <= 0 or not sit.before.bare or sit.wood.swells < 0.2:
        return None
    return Cause(
        chance=0.85 * sit.wood.swells * wet,
        why=f"{sit.wood.name} swells where it gets wet",
        reads=((f"wood:{sit.wood.id}", "swells"),),
    )


def _work_water(sit: Situation) -> float:
    """Return how much water cleaning, rinsing or stripping brings [1]."""
    step, know = sit.step, sit.know
    amount = 0.0
    if step.verb in {"clean", "rinse", "neutralise"} and know.has("cleaner", step.what):
        amount = know.cleaner(step.what).water_share * 0.6
    elif step.verb == "strip" and know.has("remover", step.what):
        amount = know.remover(step.what).water_share
    elif step.verb == "bleach":
        amount = 0.7
    elif step.verb == "raise_grain":
        amount = 0.2
    elif step.verb == "expose" and "wet-storm" in step.how:
        amount = 0.7
    if step.how & {"flooding", "soaking"}:
        amount = min(1.0, amount + 0.5)
    if "wet" in step.how and step.verb in {"sand", "scuff"}:
        amount = max(amount, 0.2)
    return amount


def _faced(sit: Situation) -> bool:
    """Return whether there is a glued face that can let go."""
    return sit.ground.veneer_um > 0 or sit.know.build_of(sit.ground.build).veneer_um > 0


def work_loosens_veneer(sit: Situation) -> Cause | None:
    """Judge water, remover or heat on glued faces."""
    build = sit.know.build_of(sit.ground.build)
    if not _faced(sit):
        return None
    step = sit.step
    wet = _work_water(sit)
    shield = 0.3 if not sit.before.bare and step.verb in {"clean", "rinse"} else 1.0
    water = 0.9 * build.water_weak * ramp(wet, 0.15, 1.0) * shield
    hurt = 0.0
    if step.verb == "strip" and sit.know.has("remover", step.what):
        hurt = sit.know.remover(step.what).hurts_veneer * max(build.water_weak, build.heat_weak)
    chance = max(water, hurt)
    return Cause(
        chance=chance,
        why=f"the glue of {build.name} lets go with water or heat",
        reads=((f"build:{sit.ground.build}", "water_weak"), (f"build:{sit.ground.build}", "heat_weak")),
    )


def heat_loosens_veneer(sit: Situation) -> Cause | None:
    """Judge sun and heat on a veneered face, worse when dark or freshly wetted."""
    build = sit.know.build_of(sit.ground.build)
    if not sit.step.how & {"sun", "heat", "hot-dish"} or not _faced(sit):
        return None
    dark = 0.4 * ramp(sit.ground.wish_depth, 50, 90)
    top = sit.before.top
    fresh_water = 0.0
    if top is not None and not top.old and sit.know.film(top.cls).carrier == "water":
        fresh_water = 0.5 * ramp(top.ripe, 600, 60)
    hot = 0.15 * ramp(sit.air.temp_c, 26, 36)
    dish = 0.1 if "hot-dish" in sit.step.how else 0.0
    return Cause(
        chance=build.heat_weak * (0.35 + dark + fresh_water + hot - dish),
        why=f"heat softens the glue line of {build.name}",
        reads=((f"build:{sit.ground.build}", "heat_weak"),),
    )


def coat_wets_veneer(sit: Situation) -> Cause | None:
    """Judge wet waterborne coats on thin or poorly glued veneer."""
    new = sit.new
    build = sit.know.build_of(sit.ground.build)
    if new is None or new.water_share < 0.3 or not sit.over_bare or not _faced(sit):
        return None
    heavy = 2.0 if sit.step.film == "heavy" else 1.0
    loose = 2.0 if "lifted-veneer" in sit.before.damage else 1.0
    return Cause(
        chance=0.16 * build.water_weak * new.water_share * heavy * loose,
        why=f"{new.name} wets the veneer down to its glue",
        reads=((f"build:{sit.ground.build}", "water_weak"),),
    )


CARDS = (
    Card(
        id="fibres-left-raised", fault="raised-grain", mechanism="water on wood", levels=("coat", "use"),
        effect=wood_is_rough, layer="wood", onset=("hours", "hours"), signs=("rough to the hand after drying",),
        sources=("common-practice",), judge=fibres_left_raised,
    ),
    Card(
        id="open-fibres-swell", fault="swelling", mechanism="water on wood", levels=("coat",),
        effect=wood_is_rough, layer="wood", onset=("hours", "hours"), signs=("edges sunken, dull and furry",),
        sources=("common-practice",), judge=edges_drink_water,
    ),
    Card(
        id="board-wetted", fault="swelling", mechanism="water on wood", levels=("work", "expose"),
        effect=wood_is_rough, layer="wood", onset=("immediate", "hours"), signs=("board swells and stays thick",),
        sources=("common-practice",), judge=work_wets_board,
    ),
    Card(
        id="work-loosens-veneer", fault="veneer-lifts", mechanism="water on wood", levels=("work",),
        effect=veneer_is_loose, layer="wood", onset=("immediate", "days"),
        signs=("blisters that sound hollow when tapped",), sources=("finish-strip-times-article", "common-practice"),
        judge=work_loosens_veneer,
    ),
    Card(
        id="heat-loosens-veneer", fault="veneer-lifts", mechanism="water on wood", levels=("expose", "use"),
        effect=veneer_is_loose, layer="wood", onset=("hours", "days"),
        signs=("oval bubbles along the grain",), sources=("common-practice",), judge=heat_loosens_veneer,
    ),
    Card(
        id="coat-wets-veneer", fault="veneer-lifts", mechanism="water on wood", levels=("coat",),
        effect=veneer_is_loose, layer="wood", onset=("hours", "days"), signs=("small blisters as the coat dries",),
        sources=("common-practice",), judge=coat_wets_veneer,
    ),
)  # fmt: skip
