"""What may be done next: the offers of each stage of a route, as short runs of steps."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil, log

from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.facts import FilmFacts
from refettle.planning.effects import drying_rate
from refettle.planning.offers_ground import GroundMenu, Run, nice_hours, wait_until

__all__ = ["CLOSING_USE", "CURE", "STAGES", "Menu", "Run", "nice_hours", "wait_until"]

_WHITES = {"limed": "lime", "whitewashed": "whiten"}
STAGES = ("clean", "remove", "mend", "smooth", "colour", "under", "body", "protect", "close")


@dataclass(frozen=True, slots=True, kw_only=True)
class Menu(GroundMenu):
    """What a surface with a wish may be offered in one workshop, stage by stage; fields as in `GroundMenu`."""

    def offers(self, stage: str, states: Sequence[State], zones: Sequence[str]) -> list[Run]:
        """
        Return the runs of steps offered at a stage.

        Parameters
        ----------
        stage
            One of `STAGES`.
        states
            States of all worlds and zones, heaviest world first.
        zones
            Zone name of each state.

        Returns
        -------
        list
            Runs; an empty run means that the stage may be passed over.
        """
        made: Iterator[Run]
        match stage:
            case "clean":
                made = self.clean_runs(states)
            case "remove":
                made = self.remove_runs(states, zones)
            case "mend":
                made = self.mend_runs(states)
            case "smooth":
                made = self.smooth_runs(states)
            case "colour":
                made = self._colour(states)
            case "under":
                made = self._under()
            case "body":
                made = self._body(states)
            case "protect":
                made = self._protect(states)
            case _:
                made = self._close(states)
        runs = [self._in_air(run) for run in dict.fromkeys(made) if self._allowed(run)]
        if stage == self.wanted_stage:
            return [run for run in runs if any(s.what in self.wanted or s.verb in self.wanted for s in run)]
        return runs

    def _in_air(self, run: Run) -> Run:
        """Return a run with its coats, and all that must dry, in the air that is made for them."""
        air = self.made_air
        if air is None:
            return run
        return tuple(replace(s, air=air) if s.is_coat or s.wait_after_h > 0 else s for s in run)

    def _allowed(self, run: Run) -> bool:
        """Return whether no step of a run is banned."""
        return not any(step.what in self.banned or step.verb in self.banned for step in run)

    def method_of(self, facts: FilmFacts) -> str | None:
        """Return the way a class can go on in this workshop, or None."""
        shaped = self.surface.relief in {"carved", "turned", "slats", "slats open"}
        barred = {"spray", "aerosol"} if "no spraying" in self.constraints else set()
        barred |= {"roller"} if shaped else set()
        usable = [m for m in facts.methods if m in self.workshop.methods and m not in barred]
        if "aerosol" in usable and len(usable) > 1:
            usable.remove("aerosol")
        if "aerosol" in usable and self.surface.area_m2 > 0.6:
            return None
        return usable[0] if usable else None

    def _classes(self, role: str) -> Iterator[tuple[FilmFacts, str]]:
        """Yield the classes that can serve in a role here, with the way they go on."""
        for cls in self.know.ids("film"):
            facts = self.know.film(cls)
            if role not in facts.role or "old" in facts.role:
                continue
            if facts.for_use and facts.for_use != self.surface.use:
                continue
            if facts.trade_only and not any(p.cls == cls for p in self.workshop.products):
                continue
            if self.unfit_air(facts):
                continue
            method = self.method_of(facts)
            if method is not None:
                yield facts, method

    def unfit_air(self, facts: FilmFacts) -> bool:
        """Return whether a class must not be laid in the planning air."""
        air = self.air
        return air.known and not (facts.min_c <= air.temp_c <= facts.max_c and air.rh <= facts.rh_max)

    def _colour(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer colours for a stained look, white for a limed or whitewashed one, bleach for a pale one."""
        if self.look.kind == "bleached":
            yield from self._bleaches(states)
            return
        if self.look.base != "stained":
            yield ()
            return
        if self.look.kind in _WHITES:
            yield from self._whites(_WHITES[self.look.kind], states)
            return
        if self.trouble and all(state.colour in {"stained", "dyed"} for state in states):
            yield ()
        now = states[0].depth
        wish = self.look.depth if self.look.depth is not None else max(60, now + 20)
        conditioners = [None, *(f for f, _ in self._classes("condition"))]
        bare = any(state.bare for state in states)
        for facts, method in (*self._classes("stain"), *self._classes("tone")):
            if (facts.needs_bare and not bare) or (self.look.kind == "dyed" and facts.colour_kind != "dye"):
                continue
            verb = "tone" if "tone" in facts.role and "stain" not in facts.role else "stain"
            coats = 1 if now + (100 - now) * 0.6 * facts.colour_power >= wish - 10 else 2
            dry = wait_until(facts, facts.recoat_from_h, self.air, 150.0)
            lay = Step(
                verb=verb, what=facts.id, method=method, coats=coats, wait_between_h=dry, wait_after_h=dry
            )
            longer = wait_until(facts, facts.recoat_from_h, self.air, 260.0)
            for under in conditioners if facts.blotch_prone > 0.2 else [None]:
                before = self._conditioned(under)
                yield (*before, lay)
                if facts.carrier == "spirits":
                    yield (*before, replace(lay, wait_after_h=longer))

    def _conditioned(self, under: FilmFacts | None) -> Run:
        """Return a conditioner laid thin and scuffed, or nothing."""
        if under is None:
            return ()
        way = self.method_of(under) or "wipe"
        rest_h = wait_until(under, max(under.sand_h, under.recoat_from_h), self.air)
        return (
            Step(verb="condition", what=under.id, method=way, film="thin", wait_after_h=rest_h),
            Step(verb="scuff", grit=320, method="hand-block", how=frozenset({"clean dust"})),
        )

    def _bleaches(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer two-part bleach on bare wood: soured, rinsed, dried, the raised grain cut without going through it."""
        if not all(state.bare for state in states):
            return
        pale = Step(verb="bleach", what="peroxide-alkali", wait_after_h=12.0)
        sour = Step(verb="neutralise", what="vinegar-water", wait_after_h=0.5)
        rinse = Step(verb="rinse", what="water-rinse", wait_after_h=self.dried_out(9.0))
        cut = Step(verb="scuff", grit=320, method="hand-block", how=frozenset({"clean dust"}))
        yield (pale, sour, rinse, cut)
        yield (pale, pale, sour, rinse, cut)

    def _whites(self, role: str, states: Sequence[State]) -> Iterator[Run]:
        """Offer white that stays in the pores, which are brushed open for it, or a thin white film wiped back."""
        if not any(state.bare for state in states):
            return
        for facts, method in self._classes(role):
            dry = wait_until(facts, facts.recoat_from_h, self.air, 150.0)
            verb = "fill_pores" if role == "lime" else "stain"
            lay = Step(verb=verb, what=facts.id, method=method, wait_after_h=dry, how=frozenset({"wiped"}))
            brush = Step(verb="scrape", method="brass-brush", how=frozenset({"open pores"}))
            yield (brush, lay) if role == "lime" else (lay,)

    def _under(self) -> Iterator[Run]:
        """Offer sealers and primers."""
        yield ()
        if self.look.kind in {"keep", "bare", "waxed", "oiled"}:
            return
        hides = self.look.base in {"opaque", "odour-free"}
        roles = ("prime", "seal") if hides else ("seal",)
        seen = set()
        for role in roles:
            for facts, method in self._classes(role):
                if facts.id in seen or (self.look.base != "opaque" and facts.opaque):
                    continue
                seen.add(facts.id)
                dry = wait_until(facts, facts.recoat_from_h, self.air, 110.0)
                for coats in (1, 2) if hides else (1,):
                    film = "thin" if self.look.base != "opaque" and coats == 1 else "normal"
                    lay = Step(
                        verb=role, what=facts.id, method=method, coats=coats, film=film,
                        wait_between_h=dry, wait_after_h=dry,
                    )  # fmt: skip
                    yield (lay,)

    def _body(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer the coats that make the look."""
        kind = self.look.base
        if kind == "bare":
            yield ()
            return
        if kind in {"keep", "odour-free"}:
            yield ()
            yield from self._refresh(states)
            return
        if self.trouble and kind != "opaque" and not states[0].bare:
            yield ()
        if kind == "waxed":
            yield from self._wax(coats=2)
            return
        for facts, method in self._classes("paint" if kind == "opaque" else "topcoat"):
            if "no upkeep" in self.constraints and facts.needs_bare:
                continue
            if (
                self.look.sheen
                and self.look.sheen not in facts.sheens
                and facts.sheens
                and not facts.needs_bare
            ):
                continue
            cures = facts.cure_oxidative > 0.5 or facts.for_use == "food"
            if kind == "oiled" and not (facts.needs_bare and cures):
                continue
            yield self.build_up(facts, method, self._coats(facts, states))

    def _refresh(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer one thin fresh coat over a film that is kept, or a seal against smell."""
        for facts, method in self._classes("topcoat"):
            top = states[0].top
            same = top is not None and facts.id in {top.cls, "shellac-dewaxed"}
            smells = self.look.kind == "odour-free" and facts.blocks_smoke > 0.5
            if facts.needs_bare or not (same or smells):
                continue
            dry = wait_until(facts, facts.recoat_from_h, self.air)
            coats = 2 if smells else 1
            yield (
                Step(verb="topcoat", what=facts.id, method=method, coats=coats, film="thin" if same else "normal",
                     wait_between_h=dry, wait_after_h=dry),
            )  # fmt: skip

    def _wax(self, coats: int = 1) -> Iterator[Run]:
        """Offer paste wax."""
        for facts, method in self._classes("wax"):
            dry = wait_until(facts, facts.recoat_from_h, self.air)
            yield (
                Step(verb="wax", what=facts.id, method=method, coats=coats, film="thin", wait_between_h=dry,
                     wait_after_h=dry, how=frozenset({"wiped"})),
            )  # fmt: skip

    def _coats(self, facts: FilmFacts, states: Sequence[State]) -> int:
        """Return the coats that a class needs for the look: its usual number, one less to renew an oil, or what hides."""
        if not facts.opaque or facts.hide <= 0:
            tops = [state.top for state in states]
            renews = facts.needs_bare and all(
                top and top.old and self.know.film(top.cls).needs_bare for top in tops
            )
            return max(1, round(facts.coats) - renews)
        wish = (
            states[0].depth
            if states[0].colour == "opaque" and any(not f.old for f in states[0].stack)
            else None
        )
        contrast = 0.25 if wish is not None else max(0.3, abs(states[0].depth - 15) / 100.0)
        hide = min(0.97, facts.hide)
        return min(4, max(2, ceil(log(0.04 / contrast) / log(1.0 - hide))))

    def build_up(self, facts: FilmFacts, method: str, coats: int) -> Run:
        """Return the coats of a film with their waits, scuffed after the first where that is usual."""
        verb = "paint" if facts.opaque else "topcoat"
        dry = wait_until(facts, facts.recoat_from_h, self.air, 105.0)
        how = frozenset({"wiped"}) if facts.wiped_off else frozenset[str]()
        scuffs = (
            facts.family in {"waterborne", "oxidative", "crosslinked"} and not facts.wiped_off and coats > 1
        )
        if not scuffs:
            return (
                Step(verb=verb, what=facts.id, method=method, coats=coats, wait_between_h=dry, wait_after_h=dry,
                     how=how),
            )  # fmt: skip
        hard = wait_until(facts, max(facts.sand_h, facts.recoat_from_h), self.air, 105.0)
        tool = "synthetic-pad"
        return (
            Step(verb=verb, what=facts.id, method=method, wait_after_h=hard),
            Step(verb="scuff", grit=320, method=tool, how=frozenset({"clean dust"})),
            Step(
                verb=verb, what=facts.id, method=method, coats=coats - 1, wait_between_h=dry, wait_after_h=dry
            ),
        )

    def _protect(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer coats over paint and wax over a kept film; edges are rubbed through first where that is the look."""
        rubbed: Run = ()
        if self.look.kind == "distressed":
            wet = frozenset({"wet"}) if self.lead(states) else frozenset[str]()
            rubbed = (
                Step(verb="scuff", grit=220, method="foam-pad", how=frozenset({"edges", "clean dust"}) | wet),
            )
        if self.look.kind == "antiqued":
            yield from ((*glaze, *run) for glaze in self._glazes() for run in self._overcoats(states) if run)
            return
        yield rubbed
        yield from ((*rubbed, *run) for run in self._overcoats(states))

    def _glazes(self) -> Iterator[Run]:
        """Offer a glaze over paint: wiped on, left in the hollows, wiped off where it stands proud."""
        for facts, method in self._classes("glaze"):
            dry = wait_until(facts, facts.recoat_from_h, self.air, 150.0)
            how = frozenset({"wiped"})
            yield (Step(verb="glaze", what=facts.id, method=method, film="thin", wait_after_h=dry, how=how),)

    def _overcoats(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer a clear coat or wax over paint, wax over a kept film."""
        if self.look.base == "opaque":
            for facts, method in self._classes("topcoat"):
                sheen = not self.look.sheen or self.look.sheen in facts.sheens
                if facts.needs_bare or not sheen or facts.carrier not in {"water", "spirits"}:
                    continue
                dry = wait_until(facts, facts.recoat_from_h, self.air, 105.0)
                yield (
                    Step(verb="topcoat", what=facts.id, method=method, coats=2, wait_between_h=dry,
                         wait_after_h=dry),
                )  # fmt: skip
        if self.look.kind == "keep" or (
            self.look.base == "opaque"
            and any(self.know.film(s.stack[-1].cls).porous > 0.5 for s in states[:1] if s.stack)
        ):
            yield from self._wax()

    def _close(self, states: Sequence[State]) -> Iterator[Run]:
        """Offer the wait until safe to wrap, the cure, and the closing use."""
        wrap = 0.0
        for film in states[0].stack:
            facts = self.know.film(film.cls)
            if not film.old:
                wrap = max(wrap, facts.wrap_h / drying_rate(facts, self.air))
        steps = []
        if wrap > 0:
            steps.append(Step(verb="wait", what="safe to wrap", wait_after_h=nice_hours(wrap)))
        yield (*steps, CURE, replace(CLOSING_USE, how=self.meets) if self.meets else CLOSING_USE)


CURE = Step(verb="wait", what="cure", wait_after_h=24.0 * 28)
CLOSING_USE = Step(verb="use", what="ordinary use")
