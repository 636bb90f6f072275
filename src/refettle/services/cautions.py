"""Cautions: one line of care per step, danger first; never legal advice."""

from refettle.domain.piece import Piece
from refettle.domain.piece_plan import Caution, GroupPlan
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.facts import FilmFacts
from refettle.knowledge.knowledge import Knowledge
from refettle.services.care import lines_of_piece, lines_of_surface
from refettle.services.grouping import Group

FOLLOW = (
    "The label, its safety data sheet and local rules come first; lead, structure and electrics go to someone "
    "qualified."
)
"""What stands over all cautions of a plan."""
LEAD_TOLD = 0.03
"""Chance of lead from which a test and its caution are named [1]; judgement."""
_HEAVY_M2 = 5.0


def _trade_cautions(facts: FilmFacts) -> list[tuple[str, str, str]]:
    """Return the caution of a hardener."""
    made: list[tuple[str, str, str]] = []
    if facts.trade_only:
        made.append((
            f"trade-{facts.id}",
            (
                f"{facts.name}: its hardener or its curing gives off what can harm lungs for good. Only with training, "
                "supplied air or the mask its data sheet names, and nobody else in the room; else leave it to a trade shop."
            ),
            "common-practice",
        ))  # fmt: skip
    return made


def _coat_cautions(know: Knowledge, workshop: Workshop, step: Step) -> list[tuple[str, str, str]]:
    """Return the cautions of a coat."""
    facts = know.film(step.what)
    made = _trade_cautions(facts)
    if facts.self_heats:
        made.append((
            "oily-rags",
            (
                f"{facts.name}: oily rags can catch fire by themselves. Spread them flat outdoors to dry, or keep them "
                "under water in a lidded metal can, the same night."
            ),
            "common-practice",
        ))  # fmt: skip
    if facts.voc_g_l >= 250 or facts.flammable:
        where = (
            "Open door and fan" if workshop.ventilation != "poor" else "Work outdoors or air the room well"
        )
        made.append((
            f"vapour-{facts.carrier}",
            (
                f"{facts.name}: solvent vapour. {where}, no flame, no pilot light, no sparks; gloves; a respirator with "
                "organic-vapour cartridges if you smell it."
            ),
            "common-practice",
        ))  # fmt: skip
    if step.method in {"spray", "aerosol"}:
        made.append((
            "spray-mist",
            (
                "Spray mist: respirator with particle and vapour filters, goggles, outdoors or with an exhaust fit for "
                "vapour."
            ),
            "common-practice",
        ))  # fmt: skip
    return made


def _strip_cautions(know: Knowledge, step: Step) -> list[tuple[str, str, str]]:
    """Return the cautions of a remover."""
    facts = know.remover(step.what)
    made = []
    if facts.acts_by == "caustic":
        made.append((
            "caustic",
            "Caustic burns skin and eyes at once: face shield, long gloves, apron, running water beside you.",
            "common-practice",
        ))  # fmt: skip
    elif facts.acts_by == "heat":
        made.append((
            "heat",
            (
                "Heat gun: fire and fumes. Never where lead is possible, never near solvent; keep water at hand and stay "
                "half an hour after."
            ),
            "coatings-R53",
        ))  # fmt: skip
    elif facts.acts_by in {"solvent", "mild", "alcohol"}:
        made.append((
            f"remover-{facts.acts_by}",
            (
                f"{facts.name}: outdoors or with wide-open doors, solvent-proof gloves, goggles; no flame. Scrapings and "
                "rags go out of the house to dry."
            ),
            "common-practice",
        ))  # fmt: skip
    if facts.restricted:
        made.append((
            "restricted",
            f"{facts.name}: sale and use are restricted in places; leave it to those licensed for it.",
            "cfr-40-751",
        ))  # fmt: skip
    return made


def _work_cautions(know: Knowledge, step: Step, wood: str, *, lead: bool) -> list[tuple[str, str, str]]:
    """Return the cautions of work without coats."""
    made: list[tuple[str, str, str]] = []
    if step.verb == "strip" and know.has("remover", step.what):
        made.extend(_strip_cautions(know, step))
    if step.verb in {"sand", "scrape"} and "wet" not in step.how:
        sensitive = know.wood(wood).dust_sensitises > 0.5
        extra = f"{know.wood(wood).name} dust sensitises. " if sensitive else ""
        made.append((
            "dust",
            f"Wood dust: {extra}Extraction or outdoors, a particle mask (P2/P3), vacuum rather than sweep.",
            "wood-dust-limits",
        ))  # fmt: skip
    if lead and step.verb in {"sand", "scuff", "scrape", "strip"}:
        made.append((
            "lead-wet",
            (
                "Where lead may be: work wet, no dry sanding, no heat; sheet below, wash hands, keep children and food "
                "away. If a test says yes, ask someone licensed for lead."
            ),
            "cfr-16-1303",
        ))  # fmt: skip
    if step.verb == "bleach":
        made.append((
            f"bleach-{step.what}",
            (
                "Bleach: gloves and goggles; never mix two bleaches or bleach with ammonia or acid; rinse before sanding, "
                "its dust harms lungs."
            ),
            "common-practice",
        ))  # fmt: skip
    solvents = {"mineral-spirits", "naphtha", "alcohol-wipe", "acetone-wipe", "thinner-wipe"}
    if step.verb in {"clean", "rinse"} and step.what in solvents:
        made.append((
            "wash-solvent",
            "Solvent wipe: gloves, open door, no flame; rags spread out to dry outdoors.",
            "common-practice",
        ))  # fmt: skip
    return made


def _lead_words(groups: tuple[Group, ...], *, child: bool) -> str:
    """Return what is said of lead, by what tests have answered so far."""
    answers = [answer for g in groups for test, answer in g.surface.tested if test == "lead-test"]
    most = " Small children most of all." if child else ""
    harms = f"Old paint may hold lead, which harms the brain even as fine dust.{most}"
    if "yes" in answers:
        return f"{harms} A test found it: ask someone licensed for lead before anything touches it."
    if "no" in answers:
        return f"{harms} A home test found none, but can miss some: stay wet; a laboratory's no is `lead: no` in the file."
    return f"{harms} Test before anything touches it."


def cautions_of(
    know: Knowledge, piece: Piece, workshop: Workshop, plans: tuple[GroupPlan, ...], groups: tuple[Group, ...],
    lead: dict[str, float],
) -> tuple[Caution, ...]:  # fmt: skip
    """
    Return the cautions of a plan, each once with the steps it belongs to, danger first.

    Parameters
    ----------
    know, piece, workshop
        Facts, piece, place.
    plans, groups
        Plans and their groups, in the same order.
    lead
        Chance of lead per group name [1].

    Returns
    -------
    tuple
        Cautions; each step's own lines name it as ``group/number``.
    """
    found: dict[str, tuple[list[str], str, str]] = {}

    def add(key: str, where: str, text: str, source: str) -> None:
        steps, _, _ = found.setdefault(key, ([], text, source))
        if where and where not in steps:
            steps.append(where)

    if any(chance >= LEAD_TOLD for chance in lead.values()):
        add("lead", "", _lead_words(groups, child=piece.child), "cfr-16-1303")
    for plan, group in zip(plans, groups, strict=True):
        if plan.route is None:
            continue
        coated = False
        for number, cost in enumerate(plan.route.steps, start=1):
            step = cost.step
            coated = coated or step.is_coat
            lines = (
                _coat_cautions(know, workshop, step)
                if step.is_coat
                else _work_cautions(
                    know, step, group.surface.wood, lead=lead.get(plan.name, 0.0) >= LEAD_TOLD and not coated
                )
            )
            for key, text, source in lines:
                add(key, f"{plan.name}/{number}", text, source)
        for key, text, source in lines_of_surface(know, plan, group):
            add(key, "", text, source)
    for key, text, source in lines_of_piece(piece):
        add(key, "", text, source)
    if sum(p.area_m2 for p in plans) > _HEAVY_M2:
        add("lifting", "", "Heavy and apt to tip: two people to turn it, drawers and doors out first.",
            "common-practice")  # fmt: skip
    order = ("lead", "lead-wet", "oily-rags", "caustic", "heat")
    keys = sorted(found, key=lambda k: (order.index(k) if k in order else len(order), list(found).index(k)))
    return tuple(Caution(id=k, steps=tuple(found[k][0]), text=found[k][1], source=found[k][2]) for k in keys)
