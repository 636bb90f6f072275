"""
The checker's own account of films and wood: one zone of one surface in one world, step by step.

Written apart from `refettle.planning.effects`, from the same facts. It holds less than a state does: which
films lie there, how thick, for how long they have dried, how much wood is left, which structural damage is
open. That much it works out by itself, so that a slip in either of the two shows as a difference.
"""

from dataclasses import dataclass, replace

from refettle.domain.air import Air
from refettle.domain.ground import Ground
from refettle.domain.state import State
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import cut_um, drying_rate

ABRADING = frozenset({"sand", "scuff", "rub_out"})
_POWERS = {
    "alcohol": "strip_alcohol", "solvent": "strip_solvent", "mild": "strip_mild", "caustic": "strip_caustic",
    "heat": "strip_heat",
}  # fmt: skip
_SCRAPER_UM = 120.0
_CARVED = 0.5
_THICKNESS = {"thin": 0.6, "heavy": 1.6}
_AEROSOL = 0.6
_LIGHT_CUT_UM = {True: 2.0, False: 4.0}
_THROUGH_UM = {"sand": 60.0, "scrape": 40.0}
_SEQUENCE_UM = (150.0, 175.0)
_NEAR_UM = 3.0
_NEAR_SHARE = 0.12


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """
    One film as the checker counts it.

    Attributes
    ----------
    cls
        Class id.
    um
        Dry film [µm].
    coats
        Coats of it [1].
    old
        Whether it came with the piece.
    dried_h
        Drying since its last coat, in hours at the label's air [h].
    """

    cls: str
    um: float
    coats: int
    old: bool
    dried_h: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """
    What lies on one zone in one world.

    Attributes
    ----------
    layers
        Films from the wood upwards.
    wood_um
        Wood that may still be sanded away [µm].
    structural
        Structural damage not mended yet.
    """

    layers: tuple[Layer, ...]
    wood_um: float
    structural: frozenset[str]

    @property
    def bare(self) -> bool:
        """Return whether no film with thickness is left."""
        return all(layer.um <= 0 for layer in self.layers)

    @property
    def fresh(self) -> Layer | None:
        """Return the uppermost film where it is a new one."""
        return self.layers[-1] if self.layers and not self.layers[-1].old else None


def opened(know: Knowledge, state: State) -> Account:
    """Return the account of a surface before the first step."""
    return Account(
        layers=tuple(Layer(cls=f.cls, um=f.um, coats=f.coats, old=f.old) for f in state.stack),
        wood_um=state.wood_um,
        structural=frozenset(d for d in state.damage if know.damage(d).structural and know.damage(d).mend),
    )


def coated(know: Knowledge, account: Account, step: Step) -> Account:
    """Return the account after one more coat, wet: over its own kind it thickens it, else a new film."""
    facts = know.film(step.what)
    um = facts.dry_um * _THICKNESS.get(step.film, 1.0) * (_AEROSOL if step.method == "aerosol" else 1.0)
    if facts.wiped_off and "not wiped" in step.how:
        um = max(um, facts.wet_um * facts.solids_vol)
    fresh = account.fresh
    if fresh is not None and fresh.cls == step.what:
        merged = replace(fresh, um=fresh.um + um, coats=fresh.coats + 1, dried_h=0.0)
        return replace(account, layers=(*account.layers[:-1], merged))
    return replace(account, layers=(*account.layers, Layer(cls=step.what, um=um, coats=1, old=False)))


def worked(know: Knowledge, ground: Ground, account: Account, step: Step) -> Account:
    """Return the account after work that lays nothing."""
    match step.verb:
        case "strip":
            return _stripped(know, ground, account, step)
        case "scrape":
            return _scraped(ground, account, step)
        case "sand" | "scuff" | "rub_out":
            return _abraded(know, ground, account, step)
        case "repair":
            mended = {d for d in account.structural if step.what in {d, know.damage(d).mend}}
            return replace(account, structural=account.structural - mended)
        case _:
            return account


def waited(know: Knowledge, account: Account, hours: float, air: Air) -> Account:
    """Return the account after a wait [h]: new films dry at the air's rate."""
    return replace(
        account,
        layers=tuple(
            layer
            if layer.old
            else replace(layer, dried_h=layer.dried_h + hours * drying_rate(know.film(layer.cls), air))
            for layer in account.layers
        ),
    )


def _stripped(know: Knowledge, ground: Ground, account: Account, step: Step) -> Account:
    """Return the account after a remover: each pass lifts so many µm of each class, from the top down."""
    agent = know.remover(step.what)
    deep = agent.reach_recess * (_CARVED if ground.relief == "carved" else 1.0)
    reach = {"flat": 1.0, "edge": 0.5 * (1.0 + agent.reach_recess), "recess": deep}[ground.zone]
    passes = float(max(1, step.coats))
    layers = list(account.layers)
    while layers and passes > 0:
        layer = layers[-1]
        lifts = (
            _SCRAPER_UM
            if agent.acts_by == "scraper"
            else getattr(know.film(layer.cls), _POWERS[agent.acts_by])
        )
        lifts *= reach
        if layer.um > 0 and lifts <= 0:
            break
        need = layer.um / lifts if layer.um > 0 else 0.0
        if need <= passes:
            layers.pop()
        else:
            layers[-1] = replace(layer, um=layer.um - passes * lifts)
        passes -= need
    left = replace(account, layers=tuple(layers))
    return replace(left, layers=()) if left.bare else left


def _scraped(ground: Ground, account: Account, step: Step) -> Account:
    """Return the account after scraping: hollows picked out, bare where a blade gets, or loose flakes off."""
    if "hollows" in step.how:
        return account if ground.zone == "flat" else replace(account, layers=())
    if "to bare" in step.how and ground.zone != "recess":
        return replace(account, layers=(), wood_um=max(0.0, account.wood_um - _THROUGH_UM["scrape"]))
    return account


def _abraded(know: Knowledge, ground: Ground, account: Account, step: Step) -> Account:
    """Return the account after sanding, scuffing or rubbing."""
    tool = know.tool(step.method) if know.has("tool", step.method) else None
    reach = {"flat": 1.0, "edge": 0.85, "recess": 0.6}[ground.zone]
    if tool is not None:
        reach = {"flat": tool.zone_flat, "edge": tool.zone_edge, "recess": tool.zone_recess}[ground.zone]
    light = step.verb in {"scuff", "rub_out"}
    grit = step.grit or 220
    if not account.bare:
        account = _film_cut(account, step, grit, reach, light=light)
    if not account.bare or step.method == "steel-wool" or "steel wool" in step.how:
        return account
    cut = _LIGHT_CUT_UM[False] if light else float(cut_um(grit))
    if "sequence" in step.how:
        cut = _SEQUENCE_UM[grit > 150]
    return replace(account, wood_um=max(0.0, account.wood_um - cut * reach))


def _film_cut(account: Account, step: Step, grit: int, reach: float, *, light: bool) -> Account:
    """Return the account with film sanded: all of it where that is meant and can be, else a little."""
    top = account.layers[-1]
    if "to bare" in step.how and not light:
        if reach >= 0.5:
            return replace(account, layers=(), wood_um=max(0.0, account.wood_um - _THROUGH_UM["sand"]))
        total = sum(layer.um for layer in account.layers)
        return replace(account, layers=(replace(top, um=max(5.0, total * (1.0 - reach))),))
    if top.um <= 0:
        return account
    cut = _LIGHT_CUT_UM[True] if light else float(cut_um(grit, film=True))
    return replace(account, layers=(*account.layers[:-1], replace(top, um=max(1.0, top.um - cut * reach))))


def differs(account: Account, state: State) -> str:
    """Return what the planner's state has otherwise than the account, in words; nothing where they agree."""
    own = [(layer.cls, layer.coats, layer.old) for layer in account.layers]
    theirs = [(film.cls, film.coats, film.old) for film in state.stack]
    if own != theirs:
        return f"films are {_stack_words(theirs)} there, {_stack_words(own)} by own count"
    for layer, film in zip(account.layers, state.stack, strict=True):
        if abs(layer.um - film.um) > _NEAR_UM + _NEAR_SHARE * layer.um:
            return f"{layer.cls} is {film.um} µm there, {layer.um:.0f} µm by own count"
    if abs(account.wood_um - state.wood_um) > 15.0:
        return f"{state.wood_um} µm of wood are left there, {account.wood_um:.0f} µm by own count"
    return ""


def _stack_words(layers: list[tuple[str, int, bool]]) -> str:
    """Return a stack in words, top first."""
    names = [f"{coats} × {cls}" for cls, coats, _ in reversed(layers)]
    return " over ".join(names) if names else "none"
