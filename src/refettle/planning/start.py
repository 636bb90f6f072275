"""Where a surface starts from: worlds of what cannot be seen, and the state in each."""

from dataclasses import dataclass, replace
from itertools import product

from refettle.domain.air import STANDARD_AIR
from refettle.domain.ground import Ground
from refettle.domain.piece import Look, OldLayer, Piece, Surface, Zone
from refettle.domain.state import Film, State
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.colours import colour_depth
from refettle.planning.engine import play

MAX_WORLDS = 6
_RESERVE_UM = 300
_SLIVER = 0.06
_HOLD = {"sound": 100, "worn": 96, "scratched": 100, "crazed": 80, "soft": 55, "flaking": 30}
_FLAW = {"worn": "worn-film", "scratched": "scratches", "crazed": "crazed-film"}
_OLD_COLOUR_PCT = 70
_AMBER_PCT = 18
_SLICK = 0.3
"""Slickness [1] from which a face is its own coating: foil, melamine."""
_LEAD_BY_YEAR = ((1940, 0.6), (1960, 0.4), (1978, 0.25), (1992, 0.04))


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """
    One reading of what cannot be seen.

    Attributes
    ----------
    label
        Plain words for it, e.g. ``old finish: shellac``.
    weight
        Its share of belief [1].
    states
        State per zone, in the order of the surface's zones.
    marks
        What is true in it, for tests: ``film:shellac-waxed``, ``contaminant:silicone``, ``latent:red-stain``.
    """

    label: str
    weight: float
    states: tuple[State, ...]
    marks: frozenset[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """
    A surface ready for the search.

    Attributes
    ----------
    surface
        The surface.
    grounds
        Ground per zone.
    shares
        Share of the area per zone [1].
    worlds
        At most `MAX_WORLDS`, heaviest first; weights add up to 1.
    dropped
        Weight of readings left out [1].
    """

    surface: Surface
    grounds: tuple[Ground, ...]
    shares: tuple[float, ...]
    worlds: tuple[World, ...]
    dropped: float


def era_band(piece: Piece) -> str:
    """Return the band of years under which priors of old finishes stand."""
    year = piece.year_to if piece.year_to is not None else piece.year_from
    if year is None:
        return "unknown"
    for limit, band in (
        (1899, "before-1900"), (1929, "1900-1929"), (1949, "1930-1949"), (1969, "1950-1969"), (1989, "1970-1989"),
    ):  # fmt: skip
        if year <= limit:
            return band
    return "1990-now"


def lead_chance(know: Knowledge, piece: Piece, surface: Surface) -> float:
    """
    Return the chance of lead in old paint [1].

    Notes
    -----
    United States: consumer paint above 0.06 % lead banned in 1978 [cfr-16-1303]; shares by decade are judgement.
    An answer of a home test counts with its error rates: it can miss lead, and more often cries wolf.
    """
    chance = surface.lead_chance if surface.lead_chance is not None else _lead_by_era(piece)
    for test, answer in surface.tested:
        if test != "lead-test":
            continue
        true = answer_chance(know, test, answer == "yes", frozenset({"lead"}))
        false = answer_chance(know, test, answer == "yes", frozenset())
        seen = chance * true + (1.0 - chance) * false
        chance = chance * true / seen if seen > 0 else chance
    return chance


def _lead_by_era(piece: Piece) -> float:
    """Return the chance of lead in old paint by the year of a piece [1]."""
    year = piece.year_from if piece.year_from is not None else piece.year_to
    if year is None:
        return 0.3
    for limit, chance in _LEAD_BY_YEAR:
        if year < limit:
            return chance
    return 0.01


def ground_of(know: Knowledge, surface: Surface, zone: str) -> Ground:
    """Return the unchanging side of one zone of a surface."""
    look = surface.look
    kind = look.base if look is not None else "natural"
    depth = None
    if look is not None:
        depth = look.depth if look.depth is not None else colour_depth(look.colour)
    if depth is None:
        own = round(100 * (1.0 - know.wood(surface.wood).lightness))
        named = look.kind if look is not None else ""
        pale = {"whitewashed": 20, "limed": own, "bleached": max(10, own - 20)}
        depth = pale.get(named, {"opaque": 15, "stained": 60}.get(kind, own))
    return Ground(
        wood=surface.wood,
        build=surface.build,
        veneer_um=surface.veneer_um,
        relief=surface.relief,
        zone=zone,
        orientation=surface.orientation,
        use=surface.use,
        running=surface.use == "drawer" and surface.orientation != "inside",
        dark=surface.orientation == "inside" or surface.use in {"storage", "drawer"},
        mixed=surface.build == "veneer-and-solid",
        wish=kind,
        wish_depth=depth,
    )


def relooked(know: Knowledge, begin: Start, look: Look) -> Start:
    """Return a start with another look wanted: rules read the wish from the ground."""
    surface = replace(begin.surface, look=look)
    grounds = tuple(ground_of(know, surface, zone.name) for zone in merged_zones(surface.zones))
    return replace(begin, surface=surface, grounds=grounds)


def start(know: Knowledge, piece: Piece, surface: Surface) -> Start:
    """
    Return the worlds of a surface with their states.

    Parameters
    ----------
    know
        All facts, the era priors among them.
    piece
        The piece, for its age.
    surface
        The surface.

    Returns
    -------
    Start
        Grounds, zones and weighted worlds. Spot tests already answered reweigh the worlds; then what has
        been done is played in each, at the label's air where a step names none.
    """
    band = era_band(piece)
    choices = [_layer_choices(know, band, layer) for layer in surface.layers]
    silicone = dict(surface.contamination).get("silicone", 0.0)
    hidden: tuple[tuple[bool, float], ...] = ((True, silicone), (False, 1.0 - silicone))
    if silicone < 0.08 or silicone > 0.92:
        hidden = ((silicone > 0.5, 1.0),)
    worlds: list[World] = []
    for combo in product(*choices):
        weight = 1.0
        for _, share in combo:
            weight *= share
        for has_silicone, chance in hidden:
            if weight * chance <= 0:
                continue
            classes = tuple(cls for cls, _ in combo)
            worlds.append(_world(know, piece, surface, classes, weight * chance, has_silicone=has_silicone))
    weighed = [(w, w.weight * _likelihood(know, surface, w)) for w in worlds]
    total = sum(v for _, v in weighed) or 1.0
    ordered = sorted(((w, v / total) for w, v in weighed), key=lambda p: (-p[1], p[0].label))
    kept, dropped = ordered[:MAX_WORLDS], sum(v for _, v in ordered[MAX_WORLDS:])
    whole = sum(v for _, v in kept) or 1.0
    grounds = tuple(ground_of(know, surface, zone.name) for zone in merged_zones(surface.zones))
    return Start(
        surface=surface,
        grounds=grounds,
        shares=tuple(zone.share for zone in merged_zones(surface.zones)),
        worlds=tuple(_after_done(know, surface, grounds, replace(w, weight=v / whole)) for w, v in kept),
        dropped=dropped,
    )


def _after_done(know: Knowledge, surface: Surface, grounds: tuple[Ground, ...], world: World) -> World:
    """Return a world after the steps that have been done; what may have gone wrong in them is not asked."""
    if not surface.done:
        return world
    states = []
    for ground, before in zip(grounds, world.states, strict=True):
        state = before
        for step in surface.done:
            state, _ = play(know, ground, state, step, STANDARD_AIR)
        states.append(state)
    classes = tuple(film.cls for film in states[0].stack if film.um > 0)
    silicone = "contaminant:silicone" in world.marks
    return replace(
        world,
        label=_label(know, classes, silicone=silicone),
        states=tuple(states),
        marks=_marks(know, classes, states[0], has_silicone=silicone),
    )


def _label(know: Knowledge, classes: tuple[str, ...], *, silicone: bool) -> str:
    """Return a reading in words: the films from the top down."""
    names = [know.film(cls).name for cls in classes]
    label = " over ".join(reversed(names)) if names else "bare wood"
    return f"{label}, silicone" if silicone else label


def merged_zones(zones: tuple[Zone, ...]) -> tuple[Zone, ...]:
    """
    Return the zones that are worth a stack of their own: a sliver goes with the largest.

    Notes
    -----
    A quirk strip of a few hundredths of a panel decides nothing and costs the search a third of its time.
    """
    large = [z for z in zones if z.share >= _SLIVER]
    if not large or len(large) == len(zones):
        return zones
    rest = sum(z.share for z in zones if z.share < _SLIVER)
    most = max(large, key=lambda z: z.share)
    return tuple(replace(z, share=z.share + rest) if z is most else z for z in large)


def _layer_choices(know: Knowledge, band: str, layer: OldLayer) -> tuple[tuple[str, float], ...]:
    """Return what one old layer may be, with shares."""
    if layer.guesses:
        return layer.guesses
    if layer.kind in {"clear", "paint"}:
        return _likely(know.era_prior(band, layer.kind))
    clear = tuple((c, 0.8 * s) for c, s in know.era_prior(band, "clear"))
    paint = tuple((c, 0.2 * s) for c, s in know.era_prior(band, "paint"))
    return _likely((*clear, *paint))


def _likely(prior: tuple[tuple[str, float], ...], most: int = 4) -> tuple[tuple[str, float], ...]:
    """Return the heaviest readings of a prior, made to add up to 1."""
    ordered = sorted(prior, key=lambda pair: -pair[1])[:most]
    total = sum(share for _, share in ordered) or 1.0
    return tuple((cls, share / total) for cls, share in ordered)


def _likelihood(know: Knowledge, surface: Surface, world: World) -> float:
    """Return how well a world fits the answers of spot tests [1]."""
    fit = 1.0
    for test, answer in surface.tested:
        if not know.has("test", test):
            continue
        fit *= answer_chance(know, test, answer == "yes", world.marks)
    return fit


def answer_chance(know: Knowledge, test: str, yes: bool, marks: frozenset[str]) -> float:
    """Return the chance [1] of an answer to a test where `marks` hold."""
    facts = know.test(test)
    true = any(mark in marks for mark in facts.detects)
    chance = facts.yes_if_true if true else facts.yes_if_false
    return chance if yes else 1.0 - chance


def _world(
    know: Knowledge,
    piece: Piece,
    surface: Surface,
    classes: tuple[str, ...],
    weight: float,
    *,
    has_silicone: bool,
) -> World:
    """Return one world with its states."""
    stack = _old_stack(know, surface, classes)
    wood = know.wood(surface.wood)
    in_wood = _causes_in_wood(know, surface, classes)
    opaque = [f for f in stack if know.film(f.cls).opaque]
    if opaque:
        named = max(know.film(f.cls).holds_lead for f in opaque)
        in_wood["lead"] = round(100 * max(named, lead_chance(know, piece, surface)))
        if stack and know.film(stack[0].cls).opaque and wood.open_pores > 0.3:
            in_wood["paint-in-pores"] = 80 if len(stack) == 1 else 60
    soil = {n: round(100 * p) for n, p in surface.contamination if n != "silicone" and p > 0}
    if has_silicone:
        soil["silicone"] = 100
        if not stack:
            in_wood["silicone-deep"] = 45
    if surface.soundness == "flaking" and stack:
        soil["loose-film"] = 80
    damage = set(surface.damage)
    if surface.soundness == "soft" and stack:
        damage.add("gummy-film")
    if surface.soundness in _FLAW and stack:
        damage.add(_FLAW[surface.soundness])
    if surface.worn_pct > 5 and stack:
        damage.add("worn-film")
    old_colour = any(in_wood.get(n, 0) > 20 for n in ("red-stain", "old-dye", "bitumen-stain"))
    pale = round(100 * (1.0 - wood.lightness)) + _amber(know, stack)
    state = State(
        stack=stack,
        on_top=tuple(sorted((n, p) for n, p in soil.items() if p >= 4)),
        in_wood=tuple(sorted((n, p) for n, p in in_wood.items() if p > 0)),
        wood_um=max(0, surface.veneer_um - _RESERVE_UM) if surface.veneer_um > 0 else 5000,
        damage=frozenset(damage),
        colour="opaque" if opaque and know.film(stack[-1].cls).opaque else ("old" if old_colour else "wood"),
        depth=min(90, pale + 25) if old_colour else pale,
    )
    marks = _marks(know, classes, state, has_silicone=has_silicone)
    label = _label(know, classes, silicone=has_silicone and bool(surface.contamination))
    return World(
        label=label, weight=weight, states=tuple(state for _ in merged_zones(surface.zones)), marks=marks
    )


def _causes_in_wood(know: Knowledge, surface: Surface, classes: tuple[str, ...]) -> dict[str, int]:
    """Return the causes in the wood with their strength [%]: its own, old colour, and what the person named."""
    wood = know.wood(surface.wood)
    causes = {
        "tannin": wood.tannin, "wood-colour": wood.colour_bleed, "knots": wood.knots, "wood-oils": wood.oils,
        "antioxidants": wood.antioxidant, "vapour": wood.vapour_softens,
    }  # fmt: skip
    in_wood = {name: round(100 * value) for name, value in causes.items() if value >= 0.05}
    if any(_colours_wood(know, cls) for cls in classes):
        in_wood["old-dye"] = _OLD_COLOUR_PCT
    for name, percent in surface.old_stain:
        in_wood[name] = max(percent, in_wood.get(name, 0))
    return in_wood


def _marks(know: Knowledge, classes: tuple[str, ...], state: State, *, has_silicone: bool) -> frozenset[str]:
    """Return what is true in a world, for tests."""
    marks = {f"film:{c}" for c in classes[-1:]}
    if classes:
        marks.add(f"family:{know.film(classes[-1]).family}")
    marks |= {f"contaminant:{n}" for n, p in state.on_top if p >= 30}
    marks |= {f"latent:{n}" for n, p in state.in_wood if p >= 30}
    if has_silicone or state.strength("silicone-deep") > 0:
        marks.add("contaminant:silicone")
    if any(f.hold < 75 for f in state.stack):
        marks.add("loose")
    return frozenset(marks)


def _colours_wood(know: Knowledge, cls: str) -> bool:
    """Return whether a class is a colour in the wood rather than a film on it."""
    facts = know.film(cls)
    return facts.colour_kind in {"pigment", "dye"} and not facts.opaque and facts.family in {"stain", "dye"}


def _amber(know: Knowledge, stack: tuple[Film, ...]) -> int:
    """Return how much darker an old clear film makes the wood look [%]: oil and lacquer go amber with age."""
    clear = [know.film(f.cls) for f in stack if f.um > 0 and not know.film(f.cls).opaque]
    return round(_AMBER_PCT * max((max(f.yellows, f.ambers) for f in clear), default=0.0))


def _old_stack(know: Knowledge, surface: Surface, classes: tuple[str, ...]) -> tuple[Film, ...]:
    """Return the old films from the wood upwards."""
    hold = _HOLD.get(surface.soundness, 100)
    wood = know.wood(surface.wood)
    films = []
    last = len(classes) - 1
    for i, (cls, layer) in enumerate(zip(classes, surface.layers, strict=True)):
        facts = know.film(cls)
        if _colours_wood(know, cls):
            continue
        um = layer.um if layer.um is not None else round(max(facts.dry_um, 3.0) * max(1, layer.coats))
        if wood.slick > _SLICK and "old" in facts.role:
            continue
        films.append(
            Film(
                cls=cls,
                um=um,
                coats=max(1, layer.coats),
                old=True,
                hold=hold if i == last or surface.soundness == "flaking" else 100,
                patchy=surface.worn_pct,
            )
        )
    return tuple(films)
