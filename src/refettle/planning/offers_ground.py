"""What may be done to the ground: cleaning, removing, mending, smoothing, as short runs of steps."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.piece import Look, Surface
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.facts import FilmFacts, RemoverFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import drying_out_pct_h, drying_rate, strip

Run = tuple[Step, ...]
_NICE_H = (0.25, 0.5, 1, 2, 3, 4, 6, 8, 12, 16, 24, 36, 48, 72, 96, 120, 168, 240, 336, 504, 720)
_CLEANERS = ("soap-water", "alkaline-degreaser", "mineral-spirits", "naphtha", "mould-wash", "bleach-water")
_REMOVERS = ("alcohol", "mild-remover", "strong-solvent", "caustic", "heat-gun", "card-scraper")
_HARD = 50
"""Ripeness [%] under which an old film never hardened: too soft to sand or to scrape, and no ground; judgement."""
_REMOVERS_OFFERED = 3
_LEAD_POSSIBLE = 0.02
_ACTS_H = 0.25
"""Time that bleach water is left on mildew, and rinse water to run off [h]; common practice."""
_DAMP_WOOD_H = 3.0
"""Wait until wood that was sanded wet is dry again [h]; judgement."""
_HEAT_WEAK = 0.2
_SHORTEST_H = 0.1
_STICK = "fill-stick"
"""What small holes and gouges are filled with where the old film stays: it needs no more colour; common practice."""
_SAFE_UM, _SAFE_VENEER_UM = 250, 600
"""Wood above the reserve [µm] from which a film may be sanded off: thin veneer is stripped; common practice."""
_THICK_UM = 80
_COOLS_H = 0.5
"""Wait until hot wood may be wiped with solvent [h]: judgement, on the safe side."""
_DIRTY = 20
"""Dirt [%] from which an old film is washed before anything else: what is rubbed in does not come out; common practice."""
_SLICK = 0.3
"""Slickness [1] from which a face is foil or laminate and is its own coating."""
_COLD_C, _HOT_C, _DAMP = 12.0, 32.0, 0.75
_CLEAR = frozenset({"natural", "stained", "oiled", "waxed"})


_FLAT_GROUND = Ground(wood="hardwood")


def nice_hours(hours: float) -> float:
    """Return a wait rounded up to a length people use [h]; none stays none."""
    if hours <= 0:
        return 0.0
    for length in _NICE_H:
        if hours <= length * 1.02:
            return float(length)
    return float(ceil(hours / 168) * 168)


def wait_until(facts: FilmFacts, stage_h: float, air: Air, percent: float = 100.0) -> float:
    """Return the wait until a stage of drying in an air [h], rounded up."""
    return nice_hours(stage_h * percent / 100.0 / drying_rate(facts, air))


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundMenu:
    """
    What a surface with a wish may be offered before any coat, in one workshop.

    Attributes
    ----------
    know, workshop, surface
        Facts, place, surface.
    look
        The look aimed at.
    constraints
        Demands of the person.
    banned
        Class, remover or verb ids that must not be used.
    wanted
        Class, remover or verb ids of which at least one must be used, for "why not".
    wanted_stage
        Stage at which it must be used; empty = none.
    bare_first
        Whether the old film must come off, so that parts of one look are alike.
    keep_film
        Whether it must stay, for the same reason.
    trouble
        Whether a fresh film is put right: it may be softened and levelled with its own solvent.
    meets
        What the surface is known to meet in use, values of `EVENT_MARKS`.
    """

    know: Knowledge
    workshop: Workshop
    surface: Surface
    look: Look
    constraints: frozenset[str] = frozenset()
    banned: frozenset[str] = frozenset()
    wanted: frozenset[str] = frozenset()
    wanted_stage: str = ""
    bare_first: bool = False
    keep_film: bool = False
    trouble: bool = False
    meets: frozenset[str] = frozenset()

    @property
    def air(self) -> Air:
        """Return the planning air, warmed or dried where nothing would dry in it."""
        return self.made_air or self.workshop.air_likely

    @property
    def made_air(self) -> Air | None:
        """
        Return the air that must be made for coats, or None where the workshop's own will do.

        Notes
        -----
        Below 12 °C or above 75 % humidity most coats fail [coatings-R7, coatings-R48]: the room is
        warmed to 18 °C or the piece moved, and dried to 55 %. Above 32 °C, where most labels end (`max_c`),
        it is cooled to 24 °C. The air that is aimed at is judgement.
        """
        own = self.workshop.air_likely
        if _COLD_C <= own.temp_c <= _HOT_C and own.rh <= _DAMP:
            return None
        return Air(temp_c=min(24.0, max(18.0, own.temp_c)), rh=min(0.55, own.rh), air_m_s=own.air_m_s)

    @property
    def made_how(self) -> str:
        """Return what is done to the air: ``cooler``, ``warmer`` or ``drier``."""
        own = self.workshop.air_likely
        if own.temp_c > _HOT_C:
            return "cooler"
        return "warmer" if own.temp_c < _COLD_C else "drier"

    def clean_runs(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer nothing, the best single agents, and the best pair."""
        soil: dict[str, int] = {}
        for state in states:
            for name, percent in state.on_top:
                soil[name] = max(soil.get(name, 0), percent)
        bare = all(state.bare for state in states)
        if not soil or bare:
            yield ()
        if not soil:
            if not bare:
                yield (self.wash("soap-water"),)
            return
        scored = self._scored(soil)
        if bare or not scored or max(soil.values()) < _DIRTY:
            yield ()
        for _, agent in scored[:2]:
            yield (self.wash(agent),)
        if "mould" in soil and scored:
            dry = Step(verb="air", what="in sun and wind", wait_after_h=168.0)
            kill = replace(self.wash("bleach-water"), wait_after_h=_ACTS_H)
            rinse = replace(self.wash("water-rinse", "rinse"), wait_after_h=_ACTS_H)
            yield (kill, rinse, self.wash(scored[0][1]), dry)
        left = {n for n in soil if not scored or n not in self.know.cleaner(scored[0][1]).removes}
        first = self.know.cleaner(scored[0][1]).solvent if scored else ""
        for _, agent in scored[1:]:
            facts = self.know.cleaner(agent)
            if facts.solvent == first:
                continue
            if left & {*facts.removes, *facts.removes_half}:
                yield (self.wash(agent), self.wash(scored[0][1]))
                yield (self.wash(agent), self.wash(agent), self.wash(scored[0][1]))
                break

    def _scored(self, soil: dict[str, int]) -> list[tuple[float, str]]:
        """Return the cleaners that take something of what is there, those that take most for their time first."""
        scored = []
        for agent in _CLEANERS:
            if agent == "bleach-water" and "mould" not in soil:
                continue
            facts = self.know.cleaner(agent)
            takes: float = sum(p for n, p in soil.items() if n in facts.removes)
            takes += 0.5 * sum(p for n, p in soil.items() if n in facts.removes_half)
            if takes:
                scored.append((takes / (1.0 + 0.3 * facts.h_m2), agent))
        return sorted(scored, key=lambda pair: (-pair[0], pair[1]))

    def wash(self, agent: str, verb: str = "clean") -> Step:
        """Return a cleaning step with its drying."""
        return Step(verb=verb, what=agent, wait_after_h=nice_hours(self.know.cleaner(agent).dry_h))

    def remove_runs(self, states: Sequence[State], zones: Sequence[str]) -> Iterator[Run]:
        """Offer keeping the old film, lifting it with each remover there is, sanding it off."""
        if all(state.bare for state in states):
            yield ()
            return
        loose = any(f.hold < 60 for s in states for f in s.stack)
        gummy = any(f.old and f.ripe < _HARD for s in states for f in s.stack)
        if not self.bare_first and not gummy:
            how = frozenset({"loose", "wet"}) if self.lead(states) else frozenset({"loose"})
            yield ((Step(verb="scrape", how=how),) if loose else ())
        kept = self.keep_film or self.look.kind == "keep"
        if kept or self.constraints & {"no stripping", "no bare wood"}:
            return
        yield from self._strips(states, zones)
        tool = self.sander()
        least = _SAFE_VENEER_UM if self.surface.veneer_um > 0 else _SAFE_UM
        if all(s.wood_um >= least for s in states) and self.surface.relief in {"flat", "panel"}:
            grit = 80 if self.surface.veneer_um <= 0 else 120
            if not self.lead(states) and not gummy:
                yield (Step(verb="sand", grit=grit, method=tool, how=frozenset({"to bare", "clean dust"})),)

    def lead(self, states: Sequence[State]) -> bool:
        """Return whether lead is possible: then nothing is sanded or scraped dry, and nothing heated."""
        return any(s.strength("lead") > _LEAD_POSSIBLE for s in states)

    def _bears_heat(self, states: Sequence[State]) -> bool:
        """Return whether a heat gun may be used: paint or a thick film, no glued face below, no lacquer that flares up."""
        if self.know.build_of(self.surface.build).heat_weak > _HEAT_WEAK:
            return False
        if not any(self.know.film(f.cls).opaque or f.um >= _THICK_UM for f in states[0].stack):
            return False
        return not any(self.know.film(f.cls).family == "evaporative" for s in states for f in s.stack)

    def _strips(self, states: Sequence[State], zones: Sequence[str]) -> Iterator[Run]:
        """Offer the removers that take least, with the passes they need, wash and, in hollows, picking out."""
        able: list[tuple[float, str, int]] = []
        for agent in _REMOVERS:
            facts = self.know.remover(agent)
            if facts.restricted or self.air.temp_c < facts.min_c:
                continue
            if facts.not_for_lead and (self.trouble or self.lead(states) or not self._bears_heat(states)):
                continue
            if agent == "caustic" and (
                self.surface.build != "solid" or self.know.wood(self.surface.wood).tannin > 0.3
            ):
                continue
            passes = self._passes(agent, states, zones)
            if passes is None:
                continue
            hours = passes * facts.h_m2 * self.workshop.hour_worth
            wanted = 0.0 if agent in self.wanted else 1.0
            able.append((wanted * (passes * facts.price_m2 + hours + facts.dry_h / 24.0), agent, passes))
        for _, agent, passes in sorted(able)[:_REMOVERS_OFFERED]:
            facts = self.know.remover(agent)
            acts = passes * facts.dwell_h
            dwell = nice_hours(acts) if acts >= _SHORTEST_H else 0.0
            if facts.acts_by == "heat":
                dwell = _COOLS_H
            lift = Step(verb="strip", what=agent, coats=passes, wait_after_h=dwell)
            washes = self._aftercare(agent)
            wet = facts.acts_by not in {"heat", "scraper"}
            pick = any(z != "flat" for z in zones)
            hollow = (Step(verb="scrape", method="pick", how=frozenset({"hollows", "wet"})),)
            if wet and any(s.strength("paint-in-pores") > 0.3 for s in states) and self.look.base in _CLEAR:
                pores = (Step(verb="scrape", method="brass-brush", how=frozenset({"pores", "wet"})),)
                yield (lift, *pores, *(hollow if pick else ()), *washes, *washes[-1:])
            yield (lift, *washes)
            if pick:
                yield (lift, *hollow, *washes, *washes[-1:])

    def _aftercare(self, agent: str) -> Run:
        """Return the washes a remover asks for, the last with the wood's drying time."""
        facts = self.know.remover(agent)
        if facts.acts_by == "heat":
            return (self.wash("mineral-spirits", "rinse"),)
        if facts.dry_h <= 0:
            return ()
        if not facts.leaves or not facts.washed_by:
            return (Step(verb="wait", what="dry out", wait_after_h=nice_hours(facts.dry_h)),)
        first, second = self._two_washes(facts)
        verb = "neutralise" if "alkali" in facts.leaves else "rinse"
        wet = 7.0 * facts.water_share + 3.0 * self.know.cleaner(second).water_share
        dry = max(facts.dry_h, 12.0, self.dried_out(wet) if wet > 2.0 else 0.0)
        return (
            Step(verb="rinse", what=first, wait_after_h=0.5),
            Step(verb=verb, what=second, wait_after_h=nice_hours(dry)),
        )

    def _two_washes(self, facts: RemoverFacts) -> tuple[str, str]:
        """Return what takes a remover's residue up, then what takes the rest: the sludge before the souring."""
        best, others = facts.washed_by[0], facts.washed_by[1:]
        if "alkali" in facts.leaves and others:
            return others[0], best
        left = set(facts.leaves) - set(self.know.cleaner(best).removes)
        return best, next((one for one in others if left & set(self.know.cleaner(one).removes)), best)

    def _passes(self, agent: str, states: Sequence[State], zones: Sequence[str]) -> int | None:
        """Return the passes after which the likeliest open face is bare and most of the others, or None."""
        flats = [s for s, z in zip(states, zones, strict=True) if z == "flat"] or list(states)
        for passes in range(1, 5):
            step = Step(verb="strip", what=agent, coats=passes)
            bare = [strip(self.know, _FLAT_GROUND, s, step).bare for s in flats]
            if bare[0] and sum(bare) >= 0.75 * len(bare):
                return passes
        return None

    def sander(self) -> str:
        """Return the sanding tool for this surface."""
        if self.surface.relief in {"turned", "carved", "moulded", "slats", "slats open"}:
            return "foam-pad"
        flat = self.surface.relief == "flat" and (
            self.surface.veneer_um == 0 or self.surface.veneer_um > 1200
        )
        return "random-orbit" if flat and "random-orbit" in self.workshop.tools else "hand-block"

    def mend_runs(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer the repairs that matter for the look; structure always."""
        damage: dict[str, None] = {}
        for state in states:
            damage.update(dict.fromkeys(sorted(state.damage)))
        bare = all(s.bare for s in states)
        must: list[Step] = []
        may: list[Step] = []
        for name in damage:
            facts = self.know.damage(name)
            if not facts.mend or (facts.needs_bare and not bare) or (facts.needs_film and bare):
                continue
            shows = facts.shows_opaque if self.look.base == "opaque" else facts.shows_clear
            steps = self._repair(
                _STICK if facts.mend == "fill" and not bare and self.look.kind == "keep" else facts.mend
            )
            if facts.structural:
                must.extend(steps)
            elif shows > 0.1 and not (
                name in {"worn-film", "scratches", "crazed-film"} and self.look.kind != "keep"
            ):
                may.extend(steps)
        yield (*must, *may)
        if may:
            yield tuple(must)
        if (self.look.kind == "keep" or self.trouble) and self._melts(states):
            top = states[0].top
            melts = top is not None and self.know.film(top.cls).resist_alcohol < 0.3
            own = "alcohol" if melts else "thinner-wipe"
            revive = Step(verb="revive", what=own, wait_after_h=4.0)
            yield (*must, revive)
            if may:
                yield (*must, revive, *may)
        if bare and self.look.base in _CLEAR and any(s.colour == "old" for s in states):
            bleach = Step(verb="bleach", what="chlorine", wait_after_h=1.0)
            dry = self.dried_out(7.0)
            yield (*must, *may, bleach, Step(verb="rinse", what="water-rinse", wait_after_h=dry))

    def _melts(self, states: Sequence[State]) -> bool:
        """Return whether the old film can be revived with its own solvent in the heaviest reading."""
        top = states[0].top
        return top is not None and self.know.film(top.cls).redissolves

    def _repair(self, mend: str) -> Run:
        """Return the steps of a repair."""
        if mend == "oxalic-acid":
            return (
                Step(verb="bleach", what="oxalic-acid", wait_after_h=1.0),
                Step(verb="rinse", what="water-rinse", wait_after_h=self.dried_out(7.0)),
            )
        wait = nice_hours(self.know.repair(mend).wait_h) if self.know.repair(mend).wait_h > 0 else 0.0
        return (Step(verb="repair", what=mend, wait_after_h=wait, how=frozenset({"squeeze-out off"})),)

    def dried_out(self, damp: float) -> float:
        """Return the wait until wetted wood is dry enough to coat in the planning air [h]."""
        return nice_hours(max(24.0, (damp - 2.0) / drying_out_pct_h(self.air)))

    def smooth_runs(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer sanding of bare wood, or dulling of a film."""
        if self.look.kind == "keep":
            yield ()
            return
        if self.surface.look is not None and self.look.kind == "bare" and all(s.bare for s in states):
            yield ()
        if all(s.bare for s in states):
            if self.know.wood(self.surface.wood).slick > _SLICK:  # dulled for a key: there is nothing to sand
                yield (Step(verb="scuff", grit=240, method="hand-block", how=frozenset({"clean dust"})),)
                return
            if self.look.kind == "odour-free":  # sealed, not shown off
                yield ()
                yield (Step(verb="scuff", grit=180, method="hand-block", how=frozenset({"clean dust"})),)
            yield from self._bare_sanding(states)
            return
        if 2 * sum(s.bare for s in states) >= len(states):
            yield from self._bare_sanding(states)
        wet = frozenset({"clean dust", "wet"}) if self.lead(states) else frozenset({"clean dust"})
        tool = "foam-pad" if self.surface.relief != "flat" else "hand-block"
        yield (Step(verb="scuff", grit=240, method=tool, how=wet),)
        if self.look.kind == "odour-free" or "scuff" in self.banned or self.trouble:
            yield ()

    def _bare_sanding(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer sanding sequences that the wood left allows."""
        tool = self.sander()
        thin = any(s.wood_um < 500 for s in states)
        how = frozenset({"clean dust"}) if thin else frozenset({"sequence", "clean dust"})
        fine, dry = (220 if thin else 180), 0.0
        if self.lead(states):  # in the pores of stripped wood too
            how, dry, tool = how | {"wet"}, _DAMP_WOOD_H, "hand-block"
        by = "hand-block" if thin else tool
        yield (Step(verb="sand", grit=fine, method=by, how=how, wait_after_h=dry),)
        if self.look.base in {"stained", "opaque"} and not thin:
            yield (Step(verb="sand", grit=150, method=tool, how=how, wait_after_h=dry),)
        if self.look.base != "opaque" and not dry:
            yield (Step(verb="sand", grit=fine, method=by, how=how | {"raise"}),)
