"""Application: runs, orange peel, lap marks, oil that comes back."""

from refettle.rules.card import Card, Cause, Judge, Onset, film_is_marked
from refettle.rules.situation import Situation, film_key, ramp


def runs_down(sit: Situation) -> Cause | None:
    """Judge thick coats on upright faces."""
    new = sit.new
    if new is None or new.dry_um <= 0 or new.wiped_off:
        return None
    upright = 0.35 if sit.ground.orientation == "up" and sit.ground.relief == "flat" else 1.0
    heavy = 0.8 if sit.step.film == "heavy" else 0.06
    cold = 0.15 * ramp(sit.air.temp_c, 14, 6)
    shaped = 0.1 if sit.ground.relief in {"turned", "moulded", "carved", "slats"} else 0.0
    chance = upright * (heavy * (0.35 + new.sag_prone) + cold * new.sag_prone + shaped * new.sag_prone)
    return Cause(
        chance=chance,
        why=f"{new.name} laid thick runs on upright faces and from quirks",
        reads=((film_key(new.id), "sag_prone"),),
    )


def spray_dries_rough(sit: Situation) -> Cause | None:
    """Judge sprayed coats that do not flow out."""
    new = sit.new
    if new is None or sit.step.method not in {"spray", "aerosol"} or new.dry_um <= 0:
        return None
    hot = 0.4 * ramp(sit.air.temp_c, 27, 36)
    cold = 0.35 * ramp(sit.air.temp_c, 15, 7)
    thick = 0.25 if "not thinned" in sit.step.how else 0.0
    slow = -0.1 if "slow thinner" in sit.step.how else 0.0
    return Cause(
        chance=max(0.0, 0.06 + hot + cold + thick + slow) * (0.6 + 0.6 * (1.0 - new.levels)),
        why=f"sprayed {new.name} does not flow out before it sets",
        reads=((film_key(new.id), "levels"),),
    )


def laps_show(sit: Situation) -> Cause | None:
    """Judge brushed coats and colours that set before they can be joined."""
    new = sit.new
    if new is None or sit.step.method not in {"brush", "roller", "wipe", "pad"}:
        return None
    off_again = new.wiped_off and {"fill_pores", "lime"} & set(new.role)  # what lies on the face is wiped off
    if off_again or new.family == "wax":  # wax is buffed out
        return None
    fast = ramp(new.touch_h, 1.2, 0.15)
    hot = 0.35 * ramp(sit.air.temp_c, 25, 34) + (0.2 if sit.air.sun else 0.0)
    big = 1.0 if sit.ground.relief == "flat" else 0.6
    if new.colour_kind != "none" and not new.opaque and not new.wiped_off:
        base = 0.34
    elif new.wiped_off and new.carrier in {"water", "alcohol"}:
        base = 0.16
    elif new.wiped_off:
        base, hot = 0.05, 0.6 * hot
    elif sit.step.method in {"wipe", "pad"}:
        base, fast, hot = 0.03, 0.3 * fast, 0.5 * hot
    else:
        base = 0.02
    rough = 0.3 if "over-brushed" in sit.step.how else 0.0
    body = (1.0 - new.levels) * fast
    heavy = 1.25 if sit.step.film == "heavy" else 1.0
    if "prime" in new.role and new.opaque:
        heavy *= 0.5
    return Cause(
        chance=big * heavy * (base + 0.55 * body + hot * (0.4 + 0.6 * fast) + rough),
        why=f"{new.name} sets before brush marks and overlaps can flow out",
        reads=((film_key(new.id), "touch_h"), (film_key(new.id), "levels")),
    )


def oil_comes_back(sit: Situation) -> Cause | None:
    """Judge oil that seeps back out of open pores, and oil sealed in too early."""
    new, wood = sit.new, sit.wood
    if new is None:
        return None
    below = sit.below
    if new.wiped_off and new.needs_bare and new.carrier in {"spirits", "none"} and new.colour_kind == "none":
        heavy = 1.0 if sit.step.film == "heavy" or "not wiped" in sit.step.how else 0.4
        warm = 1.35 if sit.air.sun or sit.air.temp_c > 27 else 1.0
        soon = 1.2 if below is not None and below.ripe < 100 and not below.old else 1.0
        return Cause(
            chance=0.6 * wood.open_pores * heavy * warm * soon,
            why=f"{new.name} seeps back out of the pores of {wood.name} as it dries",
            reads=((f"wood:{wood.id}", "open_pores"), (film_key(new.id), "wiped_off")),
        )
    if new.wiped_off and new.needs_bare and new.colour_kind == "pigment" and new.carrier == "spirits":
        again = below is not None and below.cls == new.id
        return Cause(
            chance=wood.open_pores * (0.42 if again else 0.2) * (1.3 if sit.step.film == "heavy" else 1.0),
            why=f"{new.name} soaks into the long pores of {wood.name} and weeps out again",
            reads=((f"wood:{wood.id}", "open_pores"), (film_key(new.id), "wiped_off")),
        )
    deep = sit.before.strength("old-oil")
    if deep > 0 and sit.over_bare and new.dry_um > 0:
        return Cause(
            chance=0.5 * deep,
            why="old oil deep in the pores comes up into the new film",
            reads=((f"wood:{wood.id}", "open_pores"),),
        )
    return None


def stain_seeps(sit: Situation) -> Cause | None:
    """Judge oil stain that seeps from open pores or joints under the next coat."""
    new, below = sit.new, sit.below
    if new is None or below is None or below.old or new.dry_um <= 0:
        return None
    facts = sit.know.film(below.cls)
    if facts.family not in {"stain", "filler"} or facts.carrier != "spirits" or below.ripe >= 130:
        return None
    return Cause(
        chance=0.35 * sit.wood.open_pores * ramp(below.ripe, 130, 40),
        why=f"{facts.name} still wet in the pores weeps into {new.name}",
        reads=((film_key(below.cls), "recoat_from_h"), (f"wood:{sit.wood.id}", "open_pores")),
    )


def _card(
    card_id: str, fault: str, judge: Judge, onset: tuple[Onset, Onset], sign: str, layer: str = "film"
) -> Card:
    """Return a card of this mechanism."""
    return Card(
        id=card_id, fault=fault, mechanism="application", levels=("coat",), effect=film_is_marked, layer=layer,
        onset=onset, signs=(sign,), sources=("common-practice",), judge=judge,
    )  # fmt: skip


CARDS = (
    _card("thick-coat-runs", "runs", runs_down, ("immediate", "hours"), "curtains and tears"),
    _card(
        "spray-sets-too-soon", "orange-peel", spray_dries_rough, ("immediate", "immediate"), "pebbled film"
    ),
    _card("laps-set", "lap-marks", laps_show, ("immediate", "immediate"), "stripes where wet met dry"),
    _card(
        "oil-seeps-back",
        "oil-bleed-back",
        oil_comes_back,
        ("hours", "days"),
        "shiny spots over pores",
        "wood",
    ),
    _card(
        "stain-seeps-back", "oil-bleed-back", stain_seeps, ("hours", "days"), "dark dots along pores", "wood"
    ),
)
