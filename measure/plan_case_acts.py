"""How a plan reads in the file's words: its lanes of acts, its warnings, what it says of a look, its top coats."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

import plan_case_words as table
from plan_case_patterns import Act, Lane
from plan_case_pieces import Adapted
from refettle.domain.piece import Look, Surface
from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.plan import StepCost
from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge

CHANCE_NAMED = 0.1
"""Chance [1] from which a risk counts as named."""

_WET_VERBS = frozenset({"rinse", "neutralise", "bleach", "strip"})
_DRYING_H = 12.0
_DARK_PCT = 50

Names = frozenset[str]
NONE: Names = frozenset()


@dataclass(slots=True)
class _Ground:
    """What is on a surface while its steps are read: soil, films in the file's words, washes so far, the clock."""

    soil: set[str]
    below: Names
    under: Names
    bare: bool
    halves: dict[str, int] = field(default_factory=dict)
    clock_h: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ending:
    """
    What a surface ends with.

    Attributes
    ----------
    surface
        Id in the file.
    planned
        Whether the look asked for has a route.
    offered
        Looks of the file that a refusal offers.
    top
        Class of the top coat, ``none`` without one; empty where nothing is planned.
    """

    surface: str
    planned: bool
    offered: Names
    top: str


def lanes_of(plan: PiecePlan, adapted: Adapted, know: Knowledge) -> tuple[Lane, ...]:
    """
    Return the lanes of a plan, one per surface of the piece.

    Parameters
    ----------
    plan
        The plan.
    adapted
        The piece it was made for.
    know
        Facts on cleaners and removers.

    Returns
    -------
    tuple[Lane, ...]
        In the order of the piece's surfaces.
    """
    lanes = []
    whole = _whole(plan)
    for surface in adapted.piece.surfaces:
        group = _group_of(plan, surface)
        lane_id = adapted.surface_of[surface.name]
        if group.route is None:
            lanes.append(Lane(surface=lane_id, acts=(), refused=True))
            continue
        mended = [
            Act(ops=frozenset({"repair"}), said={"what": table.REPAIRS.get(job.repair, frozenset({job.repair}))})
            for job in plan.mending if job.repair and job.stage != "after coats" and surface.name in job.surfaces
        ]  # fmt: skip
        first = (*(_tested(advice.test) for advice in group.tests), *whole, *mended)
        acts = [*first, *_acts(group, surface, adapted, know)]
        lanes.append(Lane(surface=lane_id, acts=tuple(_hanging(group, act) for act in acts)))
    return tuple(lanes)


def _group_of(plan: PiecePlan, surface: Surface) -> GroupPlan:
    """Return the group that holds a surface."""
    return next(group for group in plan.groups if surface.name in group.members)


def _whole(plan: PiecePlan) -> list[Act]:
    """Return what the days do to the whole piece before all else."""
    texts = {task.text.lower() for day in plan.days for task in day.tasks if task.number == 0}
    return [
        Act(ops=frozenset({"remove_parts"}), said={"what": frozenset({"hardware"})})
        for text in sorted(texts)
        if text.startswith("take off")
    ]


def _tested(test: str) -> Act:
    """Return a test."""
    return Act(ops=frozenset({"test"}), said={"what": table.TESTS.get(test, frozenset({test}))})


def _hanging(group: GroupPlan, act: Act) -> Act:
    """Return an act with the test result it waits for: dry work and heat wait for "no lead" where that is needed."""
    needed = any(advice.test == "lead-test" and advice.needed for advice in group.tests)
    dusty = act.ops & {"sand", "scuff", "scrape", "rub"} and act.dry is not False
    if needed and (dusty or "heat" in act.classes):
        return replace(act, depends_on=frozenset({"lead:negative"}))
    return act


def _acts(group: GroupPlan, surface: Surface, adapted: Adapted, know: Knowledge) -> Iterator[Act]:
    """Yield the acts of a route."""
    below, under = (
        frozenset(_theirs(cls) for layer in layers for cls, _ in layer.guesses)
        for layers in (surface.layers[-1:], surface.layers[-2:-1])
    )
    soil = {name for name, chance in surface.contamination if chance > 0}
    if any(cls == "paste-wax" for layer in surface.layers[-1:] for cls, _ in layer.guesses):
        soil.add("wax")
    if surface.soundness == "flaking":
        soil.add("loose-film")
    bare = frozenset({"bare"})
    ground = _Ground(soil=soil, below=below or bare, under=under or bare, bare=not surface.layers)
    steps = group.route.steps if group.route is not None else ()
    oily = know.wood(surface.wood).oils > 0.2
    for number, cost in enumerate(steps):
        act = _act(cost.step, group.look, ground, know, adapted, oily=oily)
        reach = _reach(tuple(later.step for later in steps[number + 1 : number + 3]))
        if cost.step.verb == "strip" and reach:
            act = replace(act, said={**act.said, "reach": reach})
        yield from _timed(act, cost, ground)


def _timed(act: Act, cost: StepCost, ground: _Ground) -> Iterator[Act]:
    """Yield an act on the clock, and the drying after wet work as a wait of its own."""
    minutes, wait_h = cost.minutes.likely, cost.wait_h.likely
    start_h = ground.clock_h
    end_h = start_h + minutes / 60.0
    if cost.step.verb in {"wait", "air", "expose"}:
        end_h += wait_h
        yield replace(act, minutes=minutes, start_h=start_h, end_h=end_h, wait_h=wait_h)
        ground.clock_h = end_h
        return
    yield replace(act, minutes=minutes, start_h=start_h, end_h=end_h)
    ground.clock_h = end_h + wait_h
    if cost.step.verb in _WET_VERBS and wait_h >= _DRYING_H:
        yield Act(
            ops=frozenset({"wait"}), said={"what": frozenset({"dry_out"})}, start_h=end_h,
            end_h=end_h + wait_h, wait_h=wait_h,
        )  # fmt: skip


def _reach(later: tuple[Step, ...]) -> Names:
    """Return the hollows and pores that are worked out right after a stripping."""
    marks = [mark for step in later if step.verb == "scrape" for mark in step.how]
    return frozenset(mark for mark in marks if mark in {"pores", "hollows"})


def _act(step: Step, look: Look, ground: _Ground, know: Knowledge, adapted: Adapted, *, oily: bool) -> Act:
    """Return a step in the file's words, its place and time aside; the ground is left as the step leaves it."""
    if step.is_coat:
        return _coat(step, look, ground, adapted)
    match step.verb:
        case "clean" | "rinse" | "neutralise":
            return _wash(step, ground, know, oily=oily)
        case "strip":
            return _strip(step, ground, know)
        case "sand" | "scuff" | "rub_out" | "scrape":
            return _abrade(step, ground)
        case "bleach":
            ground.soil.add("bleach-residue")
            return Act(
                ops=frozenset({"bleach"}), classes=frozenset({table.BLEACHES.get(step.what, step.what)})
            )
        case "repair" if step.what in table.RUB_REPAIRS:
            return Act(ops=frozenset({"rub"}), said={"tool": frozenset({"hand", "pad"})})
        case "test":
            return _tested(step.what)
        case "revive":
            return Act(ops=frozenset({"revive"}), classes=frozenset({"alcohol", "solvent"}))
        case _:
            return _other(step)


def _other(step: Step) -> Act:
    """Return a step that needs no look at the ground."""
    ops, what = {step.verb}, {step.what.replace(" ", "_")} - {""}
    match step.verb:
        case "repair":
            what = set(table.REPAIRS.get(step.what, what))
        case "sample":
            ops, what = {"test"}, {"colour_sample"}
        case "air" | "expose":
            ops, what = {"wait", step.verb}, {"weather", step.what}
        case "take_off":
            ops, what = {"remove_parts"}, what or {"hardware"}
    return Act(ops=frozenset(ops), said={"what": frozenset(what)})


def _theirs(cls: str) -> str:
    """Return a film class in the file's words; a tin of a label counts as its class."""
    ours = cls.partition(".")[0]
    return table.CLASSES.get(ours, ours.replace("-", "_"))


def _coat(step: Step, look: Look, ground: _Ground, adapted: Adapted) -> Act:
    """Return a coat."""
    cls = _theirs(step.what)
    air = step.air or adapted.workshop.air_likely
    said: dict[str, Names] = {"film": frozenset({step.film}), "directly_on": ground.below}
    if ground.bare:
        said["on"] = frozenset({"bare"})
        said["directly_on"] = ground.below | {"bare"}
    if "slow thinner" in step.how:
        said["thinner"] = frozenset({"slow"})
    if step.verb in {"paint", "stain", "tone", "glaze"}:
        shade = () if look.depth is None else (("dark",) if look.depth > _DARK_PCT else ("light",))
        said["colour"] = frozenset({*look.colour.split(), look.colour, *shade} - {""})
    ops = {"coat"}
    if step.verb == "fill_pores":
        ops.add("repair")
        said["what"] = frozenset({"fill_pores"})
    ground.bare, ground.below = False, frozenset({cls})
    return Act(
        ops=frozenset(ops), classes=frozenset({cls}), said=said, coats=max(1, step.coats),
        temp_c=air.temp_c, rh_pct=100.0 * air.rh,
    )  # fmt: skip


def _wash(step: Step, ground: _Ground, know: Knowledge, *, oily: bool) -> Act:
    """Return a cleaning, rinse or neutralising, with what it takes off of what is there."""
    if not know.has("cleaner", step.what):
        return Act(ops=frozenset({"clean" if step.verb == "clean" else "rinse"}))
    facts = know.cleaner(step.what)
    taken = {name for name in facts.removes if name in ground.soil}
    for name in facts.removes_half:
        if name in ground.soil and name not in taken:
            ground.halves[name] = ground.halves.get(name, 0) + 1
            if ground.halves[name] >= 2 or "thorough" in step.how:
                taken.add(name)
    ground.soil -= taken
    if "wax" in taken and ground.below == {"paste_wax"}:
        ground.below = ground.under
        ground.bare = "bare" in ground.below
    removes = {word for name in taken for word in table.SOILS.get(name, NONE)}
    if oily and step.what in table.OIL_WIPES:
        removes.add("wood_oils")
    what = {"water" if facts.water_share >= 0.3 else "solvent_wash"}
    ops = {"clean"} if step.verb == "clean" else {"rinse"}
    if step.what == "vinegar-water":
        what.add("acid")
    if step.what in {"vinegar-water", "water-rinse"}:
        ops.add("rinse")
    wetness = frozenset({mark for mark in ("soaking", "flooding") if mark in step.how})
    return Act(
        ops=frozenset(ops),
        said={
            "removes": frozenset(removes),
            "what": frozenset(what),
            "wetness": wetness,
            "tool": _tool(step),
        },
        dry=facts.water_share < 0.3 and facts.solvent == "",
    )


def _strip(step: Step, ground: _Ground, know: Knowledge) -> Act:
    """Return a stripping; a dry scraper is a scraping too."""
    ops, classes = {"strip"}, frozenset({"solvent"})
    if know.has("remover", step.what):
        facts = know.remover(step.what)
        acts_by = "chlorinated" if step.what == "dichloromethane" else facts.acts_by
        classes = table.REMOVER_CLASSES.get(acts_by, frozenset({acts_by}))
        ground.soil = {*facts.leaves}
        ground.halves = {}
        if acts_by == "scraper":
            ops.add("scrape")
    ground.bare, ground.below = True, frozenset({"bare"})
    wetness = frozenset({mark for mark in ("soaking", "flooding") if mark in step.how})
    return Act(
        ops=frozenset(ops),
        classes=classes,
        loosely=frozenset({"solvent"}) if classes & table.ALSO_SOLVENT else NONE,
        said={"tool": _tool(step), "wetness": wetness},
    )


def _abrade(step: Step, ground: _Ground) -> Act:
    """Return a sanding, scuffing, rubbing or scraping."""
    if step.verb == "scrape":
        brushed = {"rub"} if step.method == "brass-brush" else set[str]()
        if "loose" in step.how:
            ground.soil.discard("loose-film")
        return Act(ops=frozenset({"scrape", *brushed}), said={"tool": _tool(step)}, dry=_dry(step))
    op = {"sand": "sand", "scuff": "scuff", "rub_out": "rub"}[step.verb]
    to = "key" if op == "scuff" else "level"
    if "to bare" in step.how:
        to = "bare"
        ground.bare, ground.below, ground.soil = True, frozenset({"bare"}), set()
    # "through the grits" begins coarser than it says: P80 or P100 on solid wood [common practice]
    grit = min(step.grit, 100) if "sequence" in step.how and step.grit else step.grit
    return Act(
        ops=frozenset({op}), said={"tool": _tool(step), "to": frozenset({to})}, dry=_dry(step), grit=grit
    )


def _tool(step: Step) -> Names:
    """Return the tool."""
    tools = set(table.TOOLS.get(step.method, NONE))
    if "steel wool" in step.how:
        tools |= {"steel_wool", "hand"}
    if "machine" in step.how:
        tools.add("machine")
    return frozenset(tools)


def _dry(step: Step) -> bool | None:
    """Return whether abrasive work is wet; None where nothing is said."""
    return False if "wet" in step.how else None


def endings_of(plan: PiecePlan, lanes: tuple[Lane, ...], adapted: Adapted) -> tuple[Ending, ...]:
    """
    Return what each surface ends with.

    Parameters
    ----------
    plan
        The plan.
    lanes
        As `lanes_of` returned them.
    adapted
        The piece.

    Returns
    -------
    tuple[Ending, ...]
        In the order of the piece's surfaces.
    """
    made = []
    for surface, lane in zip(adapted.piece.surfaces, lanes, strict=True):
        group = _group_of(plan, surface)
        kinds = [kind for kind, _ in group.impossible.nearest] if group.impossible is not None else []
        if group.leave_alone is not None:
            kinds.append("keep")
        offered = frozenset(look for kind in kinds for look in table.LOOKS_OFFERED.get(kind, NONE))
        planned = group.route is not None and group.look.kind == adapted.asked_of.get(surface.name)
        top = "" if lane.refused else _top(lane, filmed=bool(surface.layers))
        made.append(Ending(surface=lane.surface, planned=planned, offered=offered, top=top))
    return tuple(made)


def _top(lane: Lane, *, filmed: bool) -> str:
    """Return the top coat; wax over a film is none, on bare wood and porous paint it is."""
    coats = [act for act in lane.acts if "coat" in act.ops]
    while coats:
        (cls,) = coats[-1].classes
        under = coats[-1].said.get("directly_on", NONE)
        earlier = [act for act in coats[:-1] if act.classes != coats[-1].classes]
        on_porous = bool(under & table.POROUS_PAINTS)
        if cls != "paste_wax" or on_porous or "bare" in under or (not earlier and not filmed):
            return cls
        coats = earlier
    return "none"


def warnings_of(plan: PiecePlan, adapted: Adapted, know: Knowledge) -> tuple[str, ...]:
    """
    Return the warnings of a plan in the file's words, each once, in the order of its page.

    Parameters
    ----------
    plan
        The plan.
    adapted
        The piece.
    know
        Names of faults.

    Returns
    -------
    tuple[str, ...]
        Tests that must come first, risks likeliest first, reasons of steps, care, then the rest.
    """
    found = [
        *_of_tests(plan),
        *(table.FAULTS.get(risk.fault, risk.fault) for _, risk in plan.risks if risk.chance >= CHANCE_NAMED),
        *_of_steps(plan, know),
        *(name for caution in plan.cautions for name in sorted(_hazards(caution.id))),
        *_of_findings(plan, know),
        *_of_sums(plan, adapted),
    ]
    return tuple(dict.fromkeys(found))


def _of_tests(plan: PiecePlan) -> Iterator[str]:
    """Yield what tests warn of."""
    for _, advice in plan.tests:
        if advice.test == "lead-test":
            yield "lead"


def _of_steps(plan: PiecePlan, know: Knowledge) -> Iterator[str]:
    """Yield the faults named as reasons of steps, and structure where it is mended."""
    mends = {know.damage(damage).mend for damage in know.ids("damage") if know.damage(damage).structural}
    if any(job.repair in mends for job in plan.mending):
        yield "structural"
    for group in plan.groups:
        for cost in group.route.steps if group.route is not None else ():
            if cost.step.verb == "repair" and cost.step.what in mends:
                yield "structural"
            fault = reason_fault(cost.reason, know)
            if fault:
                yield table.FAULTS.get(fault, fault)


def reason_fault(reason: str, know: Knowledge) -> str:
    """
    Return the fault that a step is there to avoid, empty where its reason names none.

    Parameters
    ----------
    reason
        E.g. ``without it: peeling, likely – wax lies on it``.
    know
        Names of faults.

    Returns
    -------
    str
        Fault id or nothing.
    """
    head, colon, rest = reason.partition("without it: ")
    if head or not colon:
        return ""
    name = rest.partition(" – ")[0].rpartition(", ")[0]
    return know.find("fault", name) or ""


def _hazards(caution: str) -> Names:
    """Return the hazards of a caution, by its id, else by the first word of it."""
    return table.CAUTIONS.get(caution) or table.CAUTIONS.get(caution.partition("-")[0], NONE)


def _of_findings(plan: PiecePlan, know: Knowledge) -> Iterator[str]:
    """Yield faults whose name stands in a finding, and the veneer where it is what is short."""
    for finding in plan.findings:
        text = f"{finding.what} {finding.do}".lower()
        for fault in know.ids("fault"):
            if know.fault(fault).name.lower() in text:
                yield table.FAULTS.get(fault, fault)
        if re.search(r"veneer may go", text):
            yield "veneer_budget"


def _of_sums(plan: PiecePlan, adapted: Adapted) -> Iterator[str]:
    """Yield what only the figures of a plan say: value lost, the day of cure, a date that cannot be kept."""
    routes = [group.route for group in plan.groups if group.route is not None]
    if any(route.value_lost > 0 for route in routes):
        yield "value_loss"
    if plan.cured_day > plan.wrap_day:
        yield "cure_before_use"
    deadline_h = adapted.piece.deadline_h
    if deadline_h is not None and max((_elapsed_h(plan), *(r.elapsed_h.likely for r in routes))) > deadline_h:
        yield "not_enough_time"


def _elapsed_h(plan: PiecePlan) -> float:
    """Return the hours until it is safe to wrap [h], evenings counted."""
    return 24.0 * plan.wrap_day


def steps_told(lanes: tuple[Lane, ...]) -> Mapping[str, list[str]]:
    """
    Return the acts of each lane in one line each, to look at a plan.

    Parameters
    ----------
    lanes
        As `lanes_of` returned them.

    Returns
    -------
    Mapping[str, list[str]]
        Surface → lines.
    """
    told: dict[str, list[str]] = {}
    for lane in lanes:
        rows = told.setdefault(lane.surface, [])
        if lane.refused:
            rows.append("refused")
        for act in lane.acts:
            said = [f"{key} {'/'.join(sorted(words))}" for key, words in sorted(act.said.items()) if words]
            head = " ".join(("+".join(sorted(act.ops)), "/".join(sorted(act.classes)))).strip()
            rows.append(f"{head} ({'; '.join(said)}) from {act.start_h:.1f} h to {act.end_h:.1f} h")
    return told
