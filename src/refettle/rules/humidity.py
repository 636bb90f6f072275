"""Blush and humidity: white hazes in clear films."""

from refettle.rules.card import Card, Cause, film_is_marked
from refettle.rules.situation import Situation, film_key, limited, ramp


def water_condenses(sit: Situation) -> Cause | None:
    """Judge fast solvents that cool the film below the dew point in damp air."""
    new = sit.new
    if new is None or new.blush_prone <= 0 or new.opaque:
        return None
    damp = ramp(sit.air.rh, 0.58, 0.86)
    cold = 0.25 * ramp(sit.air.temp_c, 15.0, 8.0) if sit.air.known else 0.0
    slow = 0.75 if "slow thinner" in sit.step.how else 1.0
    spray = 1.0 if sit.step.method in {"spray", "aerosol"} else 0.92
    heavy = 1.1 if sit.step.film == "heavy" else 1.0
    return Cause(
        chance=limited(new.blush_prone * (damp + cold * (0.3 + damp)) * slow * spray * heavy),
        why=f"{new.name} cools as it dries and draws water from air at {sit.air.rh:.0%}",
        reads=((film_key(new.id), "blush_prone"),),
    )


def water_below(sit: Situation) -> Cause | None:
    """Judge a clear film over wood or a coat that still gives off water."""
    new, below = sit.new, sit.below
    if new is None or new.opaque or new.dry_um <= 4 or new.family == "wax":
        return None
    damp = ramp(sit.before.damp, 2, 10) * 0.55 if sit.over_bare else 0.0
    wet = 0.0
    if below is not None and not below.old and sit.know.film(below.cls).carrier == "water":
        wet = 0.35 * ramp(below.ripe, 80, 20) * (1.0 + ramp(sit.air.rh, 0.5, 0.8))
    oil = 0.0
    if below is not None and not below.old and new.family == "evaporative":
        facts = sit.know.film(below.cls)
        if facts.carrier == "spirits" and facts.family in {"stain", "filler"}:
            oil = 0.42 * ramp(below.ripe, 150, 50)
    chance = max(damp, wet, oil)
    if chance <= 0:
        return None
    matter = "oil" if oil == chance else "water"
    return Cause(
        chance=chance,
        why=f"{matter} from below is caught under {new.name}",
        reads=((film_key(new.id), "family"),),
    )


def waterborne_haze(sit: Situation) -> Cause | None:
    """Judge a thick or cold waterborne clear coat, more so over dark colour."""
    new = sit.new
    if new is None or new.opaque or new.family != "waterborne" or new.dry_um <= 4:
        return None
    heavy = 0.22 if sit.step.film == "heavy" else 0.0
    cold = 0.3 * ramp(sit.air.temp_c, new.min_c + 1.0, new.min_c - 5.0) if sit.air.known else 0.0
    damp = 0.35 * ramp(sit.air.rh, 0.72, 0.92)
    dark = 1.4 if sit.ground.wish_depth > 60 else 1.0
    return Cause(
        chance=(heavy + cold + damp) * dark,
        why=f"{new.name} keeps water inside when it lies thick, cold or damp",
        reads=((film_key(new.id), "min_c"), (film_key(new.id), "rh_max")),
    )


def wax_left_thick(sit: Situation) -> Cause | None:
    """Judge wax left thick or not buffed."""
    new = sit.new
    if new is None or new.family != "wax":
        return None
    thick = sit.step.film == "heavy" or "not wiped" in sit.step.how
    pores = sit.over_bare or sit.wood.open_pores > 0.6
    chance = (0.4 if thick else 0.04) + (0.08 if pores and sit.ground.wish_depth > 55 else 0.0)
    return Cause(
        chance=chance,
        why="wax left thick blooms grey-white, most in pores and quirks",
        reads=((film_key(new.id), "family"),),
    )


CARDS = (
    Card(
        id="water-condenses-in-film", fault="blushing", mechanism="humidity", levels=("coat",),
        effect=film_is_marked, layer="film", onset=("immediate", "hours"),
        signs=(
            "blush: milky white haze over the whole coat as it is laid or within the hour",
            "a trace of slow solvent clears it; mineral spirits do not",
        ),
        sources=("common-practice",), judge=water_condenses,
    ),
    Card(
        id="water-caught-below", fault="blushing", mechanism="humidity", levels=("coat",),
        effect=film_is_marked, layer="below", onset=("hours", "days"), signs=(
            "water in the film: cloudy white haze in patches, over damp places or open pores",
            "fades while it dries in warm moving air, if the film is young",
        ),
        sources=("common-practice",), judge=water_below,
    ),
    Card(
        id="waterborne-stays-milky", fault="blushing", mechanism="humidity", levels=("coat",),
        effect=film_is_marked, layer="film", onset=("hours", "days"), signs=(
            "water in the film: bluish white, milky haze, worst over dark colour and where it lies thick",
            "fades within days in warm dry air, or stays",
        ),
        sources=("common-practice",), judge=waterborne_haze,
    ),
    Card(
        id="wax-bloom", fault="blushing", mechanism="humidity", levels=("coat",), effect=film_is_marked,
        layer="on top", onset=("hours", "weeks"),
        signs=("wax bloom: grey-white haze that mineral spirits wipe off for good, most in pores and quirks",),
        sources=("common-practice",), judge=wax_left_thick,
    ),
)  # fmt: skip
