"""Yellowing and light."""

from refettle.rules.card import Card, Cause, film_is_yellowed
from refettle.rules.situation import Situation, film_key, ramp


def amber_over_light(sit: Situation) -> Cause | None:
    """Judge an amber clear coat over light paint."""
    new = sit.new
    if new is None or new.opaque or new.dry_um <= 3 or not sit.light_paint or sit.step.verb == "glaze":
        return None
    white = sit.before.colour in {"limed", "whitened"}
    if not white and not any(sit.know.film(f.cls).opaque for f in sit.before.stack):
        return None
    light = 1.0 if white else ramp(sit.ground.wish_depth, 60, 10)
    tint = max(0.95 * new.ambers, 0.8 * new.yellows)
    return Cause(
        chance=tint * light,
        why=f"{new.name} turns {'white' if white else 'light paint'} yellow",
        reads=((film_key(new.id), "ambers"), (film_key(new.id), "yellows")),
    )


def film_yellows_in_use(sit: Situation) -> Cause | None:
    """Judge the yellowing of the films seen, with years and in the dark."""
    before = sit.before
    if not before.stack:
        return None
    seen = [f for f in before.stack if not f.old or f.um > 0]
    top_index = len(seen) - 1
    reads, chance, name = [], 0.0, ""
    dark = sit.ground.dark or bool(sit.step.how & {"dark", "shut"})
    for index in range(top_index, -1, -1):
        film = seen[index]
        facts = sit.know.film(film.cls)
        if film.um > 0 and not film.old and facts.family != "wax":
            if facts.opaque or sit.light_paint:
                white = before.colour in {"limed", "whitened"}
                light = 1.0 if white else ramp(sit.ground.wish_depth, 60, 10)
                value = facts.yellows * light * (0.75 if dark else 0.38)
            else:
                pale = ramp(sit.wood.lightness, 0.5, 0.95) * ramp(sit.ground.wish_depth, 70, 30)
                value = facts.yellows * pale * (0.85 if dark else 0.26)
            if value > chance:
                chance, name = value, facts.name
                reads = [(film_key(film.cls), "yellows")]
        if facts.opaque:
            break
    if chance <= 0:
        return None
    place = "in the dark" if dark else "with the years"
    return Cause(chance=chance, why=f"{name} yellows {place}", reads=tuple(reads))


CARDS = (
    Card(
        id="amber-over-light-paint", fault="yellowing", mechanism="light", levels=("coat",),
        effect=film_is_yellowed, layer="film", onset=("immediate", "months"),
        signs=("pale colours turn cream or yellow at once or within months",),
        sources=("common-practice",), judge=amber_over_light,
    ),
    Card(
        id="film-yellows", fault="yellowing", mechanism="light", levels=("use",), effect=film_is_yellowed,
        layer="film", onset=("months", "years"), signs=("yellow where it is shut away, paler in the light",),
        sources=("common-practice",), judge=film_yellows_in_use,
    ),
)  # fmt: skip
