"""What a step does to a surface: pure functions from state to state."""

from functools import lru_cache
from math import sqrt

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.state import AGED, Film, State, changed
from refettle.domain.step import Step
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.physics.drying import progress_rate

_LEAD_LEFT = 0.5
"""Chance that dust of stripped wood holds lead, as a share of that of the paint that was on it [1]; judgement."""
_ZONE = {"flat": 1.0, "edge": 0.95, "recess": 0.8}
_FILM_FACTOR = {"thin": 0.6, "normal": 1.0, "heavy": 1.6}
_CUT_UM = ((60, 300), (80, 200), (100, 150), (120, 100), (150, 50), (180, 25), (220, 13), (320, 6))
_FILM_CUT_UM = ((80, 120), (120, 45), (150, 25), (180, 18), (220, 12), (320, 4))
_SANDED_AWAY = {"grime": 0.35, "polish": 0.55, "plasticiser": 0.12, "skin-oil": 0.5, "wax": 0.6, "grease": 0.75,
                "glue": 0.48, "remover-residue": 0.7, "fresh-oil": 0.6, "loose-film": 0.3, "smoke-film": 0.5,
                "mould": 0.7, "alkali": 0.8, "silicone": 0.9}  # fmt: skip
_STILL = 0.04
_LIMED = 8
_SOAKS_IN = frozenset({"grease", "wax", "silicone", "skin-oil", "mineral-oil", "polish"})
_DRY_STRIP_KEEPS = 0.5


def cut_um(grit: int, *, film: bool = False) -> int:
    """Return what sanding with a P grit takes off [µm], of wood or of a film."""
    table = _FILM_CUT_UM if film else _CUT_UM
    for limit, amount in table:
        if grit <= limit:
            return amount
    return 2


def ripen(know: Knowledge, film: Film, hours: float, air: Air, *, covered: bool = False) -> Film:
    """
    Return a film after some hours of drying.

    Parameters
    ----------
    know
        All facts.
    film
        The film.
    hours
        Time [h].
    air
        Air it dries in.
    covered
        Whether another coat lies on it, which slows it.

    Returns
    -------
    Film
        The film, riper.
    """
    if film.old or film.ripe >= AGED or hours <= 0:
        return film
    facts = know.film(film.cls)
    normal = max(facts.dry_um, 1.0) * max(film.coats, 1)
    wet = min(10.0, max(0.3, film.um / normal)) if facts.dry_um >= 1 and film.um > 0 else 1.0
    rate = drying_rate(facts, air, round(wet, 2))
    if covered:
        rate *= 0.5
    gained = 100.0 * hours * rate / max(facts.recoat_from_h, 0.1)
    return changed(film, ripe=min(AGED, int(film.ripe + gained + 0.5)))


def drying_rate(facts: FilmFacts, air: Air, wet_ratio: float = 1.0) -> float:
    """Return how fast a class dries in an air, relative to its label air [1]; a trickle where it stands still."""
    return _rate(
        facts.family if facts.family in _FAMILIES else "oxidative",
        facts.carrier,
        facts.min_c,
        air.temp_c,
        air.rh,
        air.air_m_s,
        wet_ratio,
    )


@lru_cache(maxsize=4096)
def _rate(
    family: str, carrier: str, min_c: float, temp_c: float, rh: float, air_m_s: float, wet: float
) -> float:
    """Return the rate, remembered: a search asks for the same few hundred again and again."""
    rate = progress_rate(
        family,
        "recoat_from",
        min(60.0, max(-10.0, temp_c)),
        min(0.99, max(0.02, rh)),
        air_m_s,
        wet,
        carrier=carrier,
        min_c=min_c,
    )
    return max(_STILL, rate)


_FAMILIES = frozenset(
    {"evaporative", "oxidative", "waterborne", "crosslinked", "wax", "stain", "dye", "filler"}
)  # fmt: skip


def drying_out_pct_h(air: Air) -> float:
    """
    Return how fast wetted wood gives off water in an air [% of wood moisture per hour].

    Notes
    -----
    About 2 % a day at 20 °C and 50 %: after a rinse a day or two, after a soaking a week; common practice.
    """
    return 0.12 * (1.25 - air.rh) * max(0.2, 1.0 + 0.03 * (air.temp_c - 20.0))


def rest(know: Knowledge, state: State, hours: float, air: Air) -> State:
    """Return the state after a wait [h]: films ripen, wood dries, removers evaporate."""
    if hours <= 0:
        return state
    last = len(state.stack) - 1
    stack = tuple(
        ripen(know, film, hours, air, covered=i < last and state.stack[i + 1].um > 20)
        for i, film in enumerate(state.stack)
    )
    damp = max(0, round(state.damp - hours * drying_out_pct_h(air)))
    state = changed(state, stack=stack, damp=damp)
    left = state.soiled("remover-residue")
    if left > 0:
        state = state.with_soil("remover-residue", _trim(left * 100.0 * 0.5 ** (hours / 36.0)))
    return state


def _trim(percent: float) -> int:
    """Return a strength rounded to 1 %, nothing below 4 %."""
    return round(percent) if percent >= 4 else 0


def lay_coat(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after one coat of a step, still wet."""
    facts = know.film(step.what)
    factor = _FILM_FACTOR.get(step.film, 1.0) * (0.6 if step.method == "aerosol" else 1.0)
    um = round(facts.dry_um * factor)
    if facts.wiped_off and "not wiped" in step.how:
        um = max(um, round(facts.wet_um * facts.solids_vol))
    top = state.top
    if top is not None and top.cls == facts.id and not top.old:
        unkeyed = top.unkeyed + (1 if state.grit == 0 and not facts.redissolves else 0)
        stack = (
            *state.stack[:-1],
            changed(top, um=top.um + um, coats=top.coats + 1, ripe=0, unkeyed=unkeyed),
        )
    else:
        stack = (*state.stack, Film(cls=facts.id, um=um, coats=1, ripe=0))
    wets_wood = facts.water_share > 0.2 and (state.bare or not any(f.um > 8 for f in state.stack))
    silicone = state.soiled("silicone")
    colour, depth = _coloured(ground, state, facts)
    soil = (("silicone", _trim(100.0 * silicone * (1.0 - facts.blocks_silicone))),) if silicone else ()
    if facts.wiped_off and "not wiped" in step.how:
        soil = (*soil, ("fresh-oil", 100))
    return changed(
        state,
        stack=stack,
        on_top=tuple(sorted(pair for pair in soil if pair[1] > 0)),
        grit=0,
        coarse=0,
        raised=(state.raised and facts.dry_um < 8) or (wets_wood and not state.grain_set),
        damp=min(30, state.damp + (2 if wets_wood else 0)),
        colour=colour,
        depth=depth,
    )


def _coloured(ground: Ground, state: State, facts: FilmFacts) -> tuple[str, int]:
    """Return the colour and depth that the eye meets after a coat."""
    if facts.opaque:
        return "opaque", ground.wish_depth
    if facts.colour_kind == "none":
        return state.colour, state.depth
    if facts.colour_kind == "lime":
        return "limed", max(5, state.depth - _LIMED)
    if facts.colour_kind == "white":
        return "whitened", max(5, round(state.depth * (1.0 - 0.6 * facts.colour_power)))
    darker = min(100, round(state.depth + (100 - state.depth) * 0.6 * facts.colour_power))
    if state.colour == "opaque" and "glaze" in facts.role:
        return "opaque", state.depth
    return ("dyed" if facts.colour_kind == "dye" else "stained"), darker


def clean(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after cleaning, rinsing or neutralising with one agent."""
    if not know.has("cleaner", step.what):
        return state
    agent = know.cleaner(step.what)
    reach = _ZONE.get(ground.zone, 1.0)
    for name, percent in state.on_top:
        if name in agent.removes:
            state = state.with_soil(name, _trim(percent * (1.0 - 0.93 * reach)))
        elif name in agent.removes_half:
            state = state.with_soil(name, _trim(percent * (1.0 - 0.6 * reach)))
    for name in agent.leaves:
        state = state.with_soil(name, max(30, round(100 * state.soiled(name))))
    if state.bare:
        wet = agent.water_share
        if wet > 0.25:
            state = changed(
                state, damp=min(30, state.damp + round(3 * wet)), raised=state.raised or not state.grain_set
            )
        if agent.solvent in {"alcohol", "strong", "spirits"}:
            left = 25.0 if "thorough" in step.how else 40.0
            for extractive in ("wood-oils", "antioxidants"):
                state = state.with_cause(extractive, _trim(left * state.strength(extractive)))
    for smell in ("smoke", "rodent", "musty"):
        if smell in dict(state.in_wood) and agent.water_share > 0.2:
            state = state.with_cause(smell, _trim(82.0 * state.strength(smell)))
    return state


_POWER = {
    "alcohol": "strip_alcohol",
    "solvent": "strip_solvent",
    "mild": "strip_mild",
    "caustic": "strip_caustic",
    "heat": "strip_heat",
}


def strip(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after as many passes of a remover as the step has coats."""
    if not know.has("remover", step.what):
        return state
    agent = know.remover(step.what)
    deep = agent.reach_recess * (0.5 if ground.relief == "carved" else 1.0)
    reach = {"flat": 1.0, "edge": 0.5 + 0.5 * agent.reach_recess, "recess": deep}[ground.zone]
    was_film = not state.bare
    stack = list(state.stack)
    for _ in range(max(1, step.coats)):
        power = 1.0
        while stack and power > 0.02:
            film = stack[-1]
            lifts = _lifts_um(know, agent.acts_by, film.cls) * reach
            if film.um <= 0 or film.um <= lifts * power:
                power -= film.um / lifts if lifts > 0 else 0.0
                stack.pop()
            elif lifts <= 0:
                break
            else:
                stack[-1] = changed(film, um=round(film.um - lifts * power))
                power = 0.0
    state = changed(state, stack=tuple(stack), grit=0)
    return _after_strip(
        know, ground, state, agent.leaves, agent.water_share, agent.acts_by, was_film=was_film,
        wool="steel wool" in step.how,
    )  # fmt: skip


def _lifts_um(know: Knowledge, acts_by: str, cls: str) -> float:
    """Return what one pass lifts of a class [µm]."""
    if acts_by == "scraper":
        return 120.0
    return float(getattr(know.film(cls), _POWER[acts_by]))


def _after_strip(
    know: Knowledge, ground: Ground, state: State, leaves: tuple[str, ...], water: float, acts_by: str, *, was_film: bool,
    wool: bool = False,
) -> State:  # fmt: skip
    """Return the state with what a remover changes besides the films."""
    deep = 0
    soiled = max(state.soiled("silicone"), 0.6 * state.soiled("polish"))
    if soiled and was_film:
        deep = max(round(70 * soiled), round(100 * state.strength("silicone-deep")))
    dry = acts_by in {"heat", "scraper"}
    kept = {n: _trim(_DRY_STRIP_KEEPS * p) for n, p in state.on_top if dry and n in _SOAKS_IN}
    slow = acts_by in {"mild", "caustic"}
    soil = {n: p for n, p in kept.items() if p > 0} | dict.fromkeys(leaves, 100 if slow else 45)
    if wool:
        soil["iron-dust"] = 60
    if not state.bare:
        soil["loose-film"] = 40
    state = changed(state, on_top=tuple(sorted(soil.items())), coarse=0)
    if deep:
        state = state.with_cause("silicone-deep", deep)
    if not state.bare:
        return changed(state, damage=state.damage | {"worn-film"})
    state = _film_gone(know, ground, state)
    if water > 0.2:
        state = changed(state, damp=min(30, state.damp + round(7 * water)), raised=not state.grain_set)
    if acts_by in {"caustic", "solvent", "alcohol", "mild"}:
        for stain in OLD_COLOURS:
            if state.strength(stain):
                state = state.with_cause(stain, _trim(65.0 * state.strength(stain)))
    return bare_colour(know, ground, state)


def _film_gone(know: Knowledge, ground: Ground, state: State) -> State:
    """Return the state once the last film is off: flaws of the film are gone; old colour and lead may stay in pores."""
    damage = frozenset(d for d in state.damage if not know.damage(d).needs_film)
    state = changed(state, damage=damage, stack=(), grit=0).with_cause("bled-colour", 0)
    left = state.with_cause("lead", round(100.0 * _LEAD_LEFT * state.strength("lead")))
    return bare_colour(know, ground, left)


OLD_COLOURS = ("red-stain", "old-dye", "bitumen-stain")


def bare_colour(know: Knowledge, ground: Ground, state: State) -> State:
    """Return the state with the colour and depth that bare wood shows, old colour in it included."""
    strongest = max(state.strength(stain) for stain in OLD_COLOURS)
    pale = 100.0 * (1.0 - know.wood(ground.wood).lightness)
    depth = min(90, round(pale + 30.0 * strongest))
    return changed(state, colour="old" if strongest > 0.2 else "wood", depth=depth)


def sand(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after sanding, scuffing or rubbing."""
    if "edges" in step.how:
        return changed(state, grit=step.grit or 220)
    grit = step.grit or 220
    iron = "steel wool" in step.how or step.method == "steel-wool"
    light = step.verb in {"scuff", "rub_out"}
    tool = know.tool(step.method) if know.has("tool", step.method) else None
    reach = _ZONE[ground.zone]
    if tool is not None:
        reach = {"flat": tool.zone_flat, "edge": tool.zone_edge, "recess": tool.zone_recess}[ground.zone]
    if light:
        reach = max(reach, 0.5)
    state = _sanded_soil(know, state, light=light)
    if not state.bare:
        state = _sanded_film(know, ground, state, step, grit, reach, light=light)
    was_bare = state.bare
    if was_bare:
        state = _sanded_wood(know, ground, state, step, reach, light=light, iron=iron)
    elif not light and grit < 180:
        state = changed(state, coarse=grit)
    state = changed(state, grit=grit if reach > 0.3 else state.grit)
    if grit >= 150 or iron:
        state = changed(state, raised=False)
    if "raise" in step.how:
        state = changed(state, grain_set=True, raised=False)
    if iron:
        state = state.with_soil("iron-dust", 85)
    elif "clean dust" not in step.how:
        state = state.with_soil("sanding-dust", max(20, round(100 * state.soiled("sanding-dust"))))
    return state


def _sanded_wood(
    know: Knowledge, ground: Ground, state: State, step: Step, reach: float, *, light: bool, iron: bool
) -> State:
    """Return the state with bare wood cut away, and with it faded wood and old colour."""
    grit = step.grit or 220
    if grit >= 150 and "wet" in step.how:
        state = changed(state, grain_set=True)
    if not light and grit <= 220:
        state = changed(state, damage=state.damage - {"faded"})
    if iron:
        return state
    cut = 4 if light else cut_um(grit)
    if "sequence" in step.how:
        cut = 150 if grit <= 150 else 175
    left = max(0, round(state.wood_um - cut * reach))
    state = changed(state, wood_um=left, coarse=_coarsest(state.coarse, grit, step))
    if cut >= 100 and not state.stack:
        for stain in OLD_COLOURS:
            state = state.with_cause(stain, _trim(100.0 * state.strength(stain) * (1.0 - 0.6 * reach)))
        state = bare_colour(know, ground, state)
    return state


def _coarsest(before: int, grit: int, step: Step) -> int:
    """Return the coarsest scratch left after a sanding [P]."""
    if "sequence" in step.how or before == 0 or before >= grit or grit <= 1.55 * before:
        return grit
    return round(sqrt(before * grit))


def _sanded_soil(know: Knowledge, state: State, *, light: bool) -> State:
    """Return the state with what sanding takes of the matter on top."""
    for name, percent in state.on_top:
        left = _SANDED_AWAY.get(name, 1.0)
        if light and name != "loose-film":
            left = 0.5 + 0.5 * left
        if know.contaminant(name).sanding_spreads:
            left = max(left, 0.9)
        state = state.with_soil(name, _trim(percent * left))
    return state


def _sanded_film(
    know: Knowledge, ground: Ground, state: State, step: Step, grit: int, reach: float, *, light: bool
) -> State:
    """Return the state with film cut away by sanding."""
    if "to bare" in step.how and not light:
        total = sum(film.um for film in state.stack)
        if reach >= 0.5:
            cut = 60
            state = _film_gone(know, ground, changed(state, stack=()))
            return changed(state, wood_um=max(0, state.wood_um - cut))
        keep = max(0, round(total * (1.0 - reach)))
        top = state.stack[-1]
        return changed(state, stack=(changed(top, um=max(keep, 5)),), damage=state.damage | {"worn-film"})
    top = state.stack[-1]
    cut = 2 if light else cut_um(grit, film=True)
    left = max(1, top.um - round(cut * reach)) if top.um > 0 else 0
    patchy = top.patchy
    if top.old and not light and top.um > 0 and cut > 0.6 * top.um:
        patchy = max(patchy, 20)
    hold = round(top.hold + (100 - top.hold) * (0.2 if light else 0.65))
    return changed(state, stack=(*state.stack[:-1], changed(top, um=left, patchy=patchy, hold=hold)))


def scrape(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after scraping: loose flakes off, hollows picked out, or all film off."""
    if "open pores" in step.how:
        return state
    if "pores" in step.how:
        return state.with_cause("paint-in-pores", _trim(35.0 * state.strength("paint-in-pores")))
    if "hollows" in step.how:
        if ground.zone == "flat" or state.bare:
            return state
        return _after_strip(know, ground, changed(state, stack=()), (), 0.0, "scraper", was_film=True)
    if "to bare" in step.how:
        reach = {"flat": 1.0, "edge": 0.5, "recess": 0.05}[ground.zone]
        if reach >= 0.5:
            gone = _after_strip(know, ground, changed(state, stack=()), (), 0.0, "scraper", was_film=True)
            return changed(gone, wood_um=max(0, gone.wood_um - 40))
        return state
    stack = tuple(
        changed(f, hold=max(f.hold, 90), patchy=max(f.patchy, 100 - f.hold)) if f.hold < 90 else f
        for f in state.stack
    )
    return changed(state.with_soil("loose-film", 0), stack=stack)


_DOES = {"fill-stick": "fill"}
"""A repair that mends what another does, where the old film stays."""


def repair(know: Knowledge, state: State, step: Step) -> State:
    """Return the state after a repair: the damage it mends is gone."""
    mended = frozenset(
        d for d in state.damage if d == step.what or know.damage(d).mend == _DOES.get(step.what, step.what)
    )  # fmt: skip
    state = changed(state, damage=state.damage - mended)
    if step.what == "remove-foil" and mended:
        state = changed(state, stack=(), grit=0).with_soil("glue", 30)
    if step.what in {"fill", "patch-veneer", "remake-moulding"}:
        state = state.with_cause("filled", 60)
    if "lifted-veneer" in mended or step.what in {"fill", "glue-joint", "glue-split"}:
        state = state.with_soil("glue", 0 if "squeeze-out off" in step.how else 15)
    return state


def bleach(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after bleaching: marks or colour taken out, residue and water left."""
    if step.what == "oxalic-acid":
        state = changed(state, damage=state.damage - {"black-ring", "darkened-wood", "ink-mark"})
    elif step.what == "chlorine":
        for stain in OLD_COLOURS[:2]:
            state = state.with_cause(stain, _trim(25.0 * state.strength(stain)))
        state = bare_colour(know, ground, state).with_soil("mould", 0)
    elif step.what == "peroxide-alkali":
        state = changed(state, depth=max(5, state.depth - 25), damage=state.damage - {"darkened-wood"})
        state = state.with_soil("alkali", 35).with_cause("tannin", _trim(50.0 * state.strength("tannin")))
    state = state.with_soil("bleach-residue", 80)
    return changed(state, damp=min(30, state.damp + 4), raised=not state.grain_set)


def work(know: Knowledge, ground: Ground, state: State, step: Step) -> State:
    """Return the state after any step that lays no coat, its wait not counted."""
    verb = step.verb
    if verb in {"clean", "rinse", "neutralise"}:
        return clean(know, ground, state, step)
    if verb == "strip":
        return strip(know, ground, state, step)
    if verb in {"sand", "scuff", "rub_out"}:
        return sand(know, ground, state, step)
    if verb == "scrape":
        return scrape(know, ground, state, step)
    if verb == "repair":
        return repair(know, state, step)
    if verb == "bleach":
        return bleach(know, ground, state, step)
    if verb == "raise_grain":
        return changed(state, raised=False, grain_set=True, grit=max(state.grit, 220), damp=state.damp + 1)
    if verb == "revive":
        return _revived(know, state)
    if verb == "air":
        for smell in ("smoke", "rodent", "musty"):
            state = state.with_cause(smell, _trim(75.0 * state.strength(smell)))
        return changed(state, damp=0)
    if verb == "expose" and "wet-storm" in step.how and state.bare:
        return changed(state, damp=min(30, state.damp + 10), raised=True)
    return state


def _revived(know: Knowledge, state: State) -> State:
    """Return the state after an old film was softened and levelled with its own solvent."""
    top = state.top
    if top is None or not know.film(top.cls).redissolves:
        return state
    fresh = changed(top, hold=max(top.hold, 95), patchy=max(0, top.patchy - 10))
    damage = state.damage - {"white-ring", "crazed-film", "worn-film", "scratches"}
    return changed(state, stack=(*state.stack[:-1], fresh), damage=damage)
