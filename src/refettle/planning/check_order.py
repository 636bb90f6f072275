"""Checks of order, drying and means: whether a route can be done as it stands and ends in its look."""

from collections.abc import Iterator

from refettle.domain.finding import Finding
from refettle.domain.step import VERBS, Step
from refettle.planning.check_ledger import ABRADING, Account
from refettle.planning.check_walk import Moment, RouteCheck
from refettle.planning.goal import reached

_AGENT_KIND = {
    "clean": "cleaner", "rinse": "cleaner", "neutralise": "cleaner", "strip": "remover", "repair": "repair",
    "test": "test",
}  # fmt: skip
_BLEACHES = frozenset({"oxalic-acid", "chlorine", "peroxide-alkali"})
_MACHINES = frozenset({"random-orbit"})
_COLOURING = frozenset({"stain", "tone", "glaze"})
_NEARLY = 0.98
_LEAD = 0.02
_STRIPPING = frozenset({"no stripping", "no bare wood"})


def names_and_means(check: RouteCheck) -> Iterator[Finding]:
    """Yield steps that name something unknown, or need what the workshop has not."""
    know = check.know
    for number, step in enumerate(check.steps, start=1):
        if step.verb not in VERBS:
            yield check.finding(
                "unknown-verb", number, f'"{step.verb}" is no step', "use one of the verbs of a step"
            )
        elif step.is_coat:
            yield from _coat_named(check, number, step)
        elif step.verb in _AGENT_KIND and not know.has(_AGENT_KIND[step.verb], step.what):
            kind = _AGENT_KIND[step.verb]
            yield check.finding(
                "unknown-name", number, f'"{step.what}" is no known {kind}', f"name a known {kind}"
            )
        elif step.verb == "bleach" and step.what not in _BLEACHES:
            yield check.finding(
                "unknown-name", number, f'"{step.what}" is no known bleach', "name a known bleach"
            )
        elif step.verb in ABRADING and not know.has("tool", step.method):
            yield check.finding(
                "unknown-name", number, f'"{step.method}" is no known tool', "name a known tool"
            )
        if step.method in _MACHINES and step.method not in check.workshop.tools:
            tool = know.name("tool", step.method)
            yield check.finding(
                "tool-not-there",
                number,
                f"the workshop has no {tool}",
                "do it by hand or add it to the tools",
            )


def _coat_named(check: RouteCheck, number: int, step: Step) -> Iterator[Finding]:
    """Yield what is wrong with the class or the method of a coat."""
    if not check.know.has("film", step.what):
        yield check.finding("unknown-name", number, f'"{step.what}" is no known class', "name a known class")
        return
    facts = check.know.film(step.what)
    if step.method not in check.workshop.methods:
        yield check.finding(
            "method-not-there",
            number,
            f'the workshop cannot "{step.method}"',
            "lay it on in a way the workshop has",
        )
    elif step.method not in facts.methods:
        yield check.finding(
            "method-unfit",
            number,
            f'{facts.name} is not made to "{step.method}"',
            f"use {' or '.join(facts.methods)}",
        )


def order_and_drying(check: RouteCheck) -> Iterator[Finding]:
    """Yield everything that is wrong with order, drying, air, lead, demands and look, each once."""
    seen: set[tuple[str, str, str]] = set()
    for part in (_accounts, _drying, _air, _repairs, _places, _lead, _demands, _look):
        for finding in part(check):
            key = (finding.code, finding.where.path, finding.what if finding.code == "films-differ" else "")
            if key not in seen:
                seen.add(key)
                yield finding


def _moments(check: RouteCheck) -> Iterator[Moment]:
    """Yield the moments of the route's own steps in every world and zone."""
    for walk in check.walks:
        yield from (m for m in walk.moments if m.number <= len(check.steps))


def _accounts(check: RouteCheck) -> Iterator[Finding]:
    """Yield the first step of each walk at which the planner's films and the own account part."""
    for walk in check.walks:
        first = next((m for m in walk.moments if m.differs), None)
        if first is not None:
            zone = check.begin.grounds[walk.zone].zone
            yield check.finding(
                "films-differ",
                first.number,
                f"after it, {zone}, {first.differs}",
                "compare effects.py and check_ledger.py with the facts",
            )


def _drying(check: RouteCheck) -> Iterator[Finding]:
    """Yield coats laid too early, films sanded too early, pieces wrapped too early."""
    for moment in _moments(check):
        fresh = moment.before.fresh
        if fresh is None:
            continue
        facts = check.know.film(fresh.cls)
        if moment.coat and fresh.dried_h < _NEARLY * facts.recoat_from_h:
            yield check.finding(
                "recoat-too-early",
                moment.number,
                f"{facts.name} below has dried for {fresh.dried_h:.1f} h of the {facts.recoat_from_h:g} h "
                "it needs at the label's air before a coat",
                f"wait {_longer(moment, facts.recoat_from_h)} longer before it",
            )
        if moment.step.verb in ABRADING and fresh.dried_h < _NEARLY * facts.sand_h:
            yield check.finding(
                "sand-too-early",
                moment.number,
                f"{facts.name} has dried for {fresh.dried_h:.1f} h of the {facts.sand_h:g} h it needs at the "
                "label's air before it can be sanded",
                f"wait {_longer(moment, facts.sand_h)} longer before it",
            )
    yield from _wrapping(check)


def _longer(moment: Moment, need_h: float) -> str:
    """Return the hours that a film still wants at the label's air, in words."""
    fresh = moment.before.fresh
    return f"about {need_h - (fresh.dried_h if fresh is not None else 0.0):.1f} h (at the label's air)"


def _wrapping(check: RouteCheck) -> Iterator[Finding]:
    """Yield films that are not safe to wrap when the route ends."""
    for walk in check.walks:
        ends = [m.after for m in walk.moments if m.number <= len(check.steps)]
        for layer in ends[-1].layers if ends else ():
            facts = check.know.film(layer.cls)
            if not layer.old and layer.dried_h < _NEARLY * facts.wrap_h:
                yield check.finding(
                    "wrap-too-early",
                    len(check.steps),
                    f"{facts.name} has dried for {layer.dried_h:.0f} h of the {facts.wrap_h:g} h it needs at "
                    "the label's air before it is wrapped",
                    "end the route with a longer wait",
                )


def _air(check: RouteCheck) -> Iterator[Finding]:
    """Yield coats laid in air that their class does not take."""
    for moment in check.walks[0].moments if check.walks else ():
        if not moment.coat:
            continue
        facts, air = check.know.film(moment.step.what), moment.air
        earlier = check.steps[: moment.number - 1]
        if moment.step.air is not None and all(s.verb != "climate" or s.air != air for s in earlier):
            yield check.finding(
                "air-not-made",
                moment.number,
                f"{facts.name} counts on {air.temp_c:g} °C and {air.rh:.0%}, which no step makes before it",
                "make the air first",
            )
        if not facts.min_c <= air.temp_c <= facts.max_c or air.rh > facts.rh_max:
            yield check.finding(
                "air-unfit",
                moment.number,
                f"{facts.name} wants {facts.min_c:g}–{facts.max_c:g} °C and at most {facts.rh_max:.0%}; "
                f"it gets {air.temp_c:g} °C and {air.rh:.0%}",
                "make the air first, or take a class that bears it",
            )


def _repairs(check: RouteCheck) -> Iterator[Finding]:
    """Yield coats laid while something structural is still open that could have been mended."""
    for moment in _moments(check):
        open_ = [d for d in sorted(moment.before.structural) if _mendable(check, d, moment.before)]
        if moment.coat and open_:
            names = " and ".join(check.know.name("damage", d) for d in open_)
            yield check.finding(
                "coat-before-repair", moment.number, f"{names} is not mended yet", "mend it before any coat"
            )


def _mendable(check: RouteCheck, damage: str, account: Account) -> bool:
    """Return whether a damage can be mended on what lies there."""
    facts = check.know.damage(damage)
    return not (facts.needs_bare and not account.bare) and not (facts.needs_film and account.bare)


def _places(check: RouteCheck) -> Iterator[Finding]:
    """Yield a missing sample before colour, and hardware taken off after or refitted before a coat."""
    coats = [n for n, s in enumerate(check.steps, start=1) if s.is_coat]
    for number, step in enumerate(check.steps, start=1):
        earlier = check.steps[: number - 1]
        if step.verb in _COLOURING and not any(s.verb == "sample" for s in earlier):
            yield check.finding(
                "colour-without-sample",
                number,
                "colour goes on before a sample was seen",
                "make a sample first",
            )
        if step.verb in _COLOURING:
            yield from _sampled_before_it_was_ready(check, number)
        if step.verb == "take_off" and coats and number > coats[0]:
            yield check.finding(
                "hardware-too-late",
                number,
                "hardware comes off after a coat",
                "take it off before the first coat",
            )
        if step.verb == "refit" and coats and number < coats[-1]:
            yield check.finding(
                "hardware-too-early",
                number,
                "hardware is refitted before the last coat",
                "refit it after the last coat",
            )


def _sampled_before_it_was_ready(check: RouteCheck, number: int) -> Iterator[Finding]:
    """Yield a sample made before the ground was abraded that the colour then meets."""
    earlier = check.steps[: number - 1]
    sampled = next((i for i, s in enumerate(earlier) if s.verb == "sample"), len(earlier))
    first = next((i for i, s in enumerate(earlier) if s.verb in {*_COLOURING, "condition"}), len(earlier))
    if any(s.verb in ABRADING for s in earlier[sampled:first]):
        yield check.finding(
            "sample-too-early",
            number,
            "the sample was made on ground that is abraded before the colour",
            "make it when the ground is ready",
        )


def _lead(check: RouteCheck) -> Iterator[Finding]:
    """Yield dust and heat on old coats that may hold lead, what tests answered taken into account."""
    for moment in _moments(check):
        step, layers = moment.step, moment.before.layers
        if moment.state.strength("lead") <= _LEAD or not layers:
            continue
        reaches_old = layers[-1].old or "to bare" in step.how
        dry = step.verb in ABRADING | {"scrape"} and "wet" not in step.how and reaches_old
        heat = step.verb == "strip" and check.know.remover(step.what).not_for_lead
        if dry or heat:
            what = "heat" if heat else "dry dust"
            yield check.finding(
                "lead-untested",
                moment.number,
                f"{what} from old coats that may hold lead; nothing has ruled it out",
                "test for lead first, or work wet and without heat",
            )


def _demands(check: RouteCheck) -> Iterator[Finding]:
    """Yield steps against what the person demanded."""
    demands = check.piece.constraints
    for moment in _moments(check):
        step = moment.step
        to_bare = step.verb == "strip" or "to bare" in step.how
        if demands & _STRIPPING and to_bare and not moment.before.bare:
            demand = min(demands & _STRIPPING)
            yield _against(check, moment.number, demand, "keep the old film")
        if "no spraying" in demands and moment.coat and step.method in {"spray", "aerosol"}:
            yield _against(check, moment.number, "no spraying", "lay it on by hand")
    if "no upkeep" in demands and check.look.kind not in {"oiled", "waxed"} and check.walks:
        fresh = check.main.moments[-1].after.fresh
        facts = check.know.film(fresh.cls) if fresh is not None else None
        if facts is not None and (facts.family == "wax" or (facts.needs_bare and facts.cure_oxidative > 0.5)):
            yield _against(check, len(check.steps), "no upkeep", "end in a film that needs none")


def _against(check: RouteCheck, number: int, demand: str, do: str) -> Finding:
    """Return the finding that a step goes against a demand."""
    return check.finding("against-demand", number, f"it goes against the demand: {demand}", do)


def _look(check: RouteCheck) -> Iterator[Finding]:
    """Yield a look that is not had in the heaviest world on the main zone."""
    main = check.main
    account = main.moments[-1].after
    ground = check.begin.grounds[main.zone]
    if not reached(check.know, ground, check.look, main.end) or not _seen(check, account):
        yield check.finding(
            "look-missed", 0, f"the steps do not end in the look wanted: {check.look.kind}", "plan it again"
        )


def _seen(check: RouteCheck, account: Account) -> bool:
    """Return whether the films by own count can show the look."""
    new = [check.know.film(layer.cls) for layer in account.layers if not layer.old]
    match check.look.base:
        case "opaque":
            return any(f.opaque for f in new)
        case "bare":
            return account.bare
        case "waxed":
            return bool(new) and new[-1].family == "wax"
        case "odour-free":
            return True
        case _:
            return not any(f.opaque for f in new) and bool(account.layers or check.look.base == "keep")
