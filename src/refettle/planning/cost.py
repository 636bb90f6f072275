"""What a step takes: minutes, litres, money, waiting; and what a fault would cost."""

from dataclasses import dataclass
from math import log

from refettle.domain.piece import Surface
from refettle.domain.plan import Range
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.facts import FilmFacts, LabourFacts
from refettle.knowledge.knowledge import Knowledge

MAX_CHANCE = 0.99
_COLUMN = {
    "flat": "flat_m2_h", "panel": "frame_m2_h", "moulded": "frame_m2_h", "slats": "frame_m2_h",
    "turned": "carved_m2_h", "carved": "carved_m2_h", "slats open": "carved_m2_h",
}  # fmt: skip
_TRANSFER = {"brush": 0.95, "roller": 0.90, "wipe": 0.7, "pad": 0.7, "spray": 0.5, "aerosol": 0.3}
_FILM_FACTOR = {"thin": 0.6, "normal": 1.0, "heavy": 1.6}
_LABOUR = {
    "clean": "clean", "rinse": "clean", "neutralise": "clean", "scuff": "scuff", "sand": "sand",
    "scrape": "scrape", "rub_out": "rub-out", "raise_grain": "clean", "revive": "wipe-coat", "bleach": "clean",
    "wax": "wax-buff", "fill_pores": "wipe-stain", "stain": "wipe-stain", "glaze": "wipe-stain",
    "condition": "wipe-coat",
}  # fmt: skip
_BY_METHOD = {
    "brush": "brush-coat", "wipe": "wipe-coat", "pad": "wipe-coat", "roller": "roll-coat", "spray": "spray-coat",
    "aerosol": "spray-coat",
}  # fmt: skip
ABRASIVE_M2 = 0.6
_TROUBLE = 4.0
_SEQUENCE_PASSES = 2.6
_TO_BARE_PASSES = 2.5
_BLEACH_PASSES = 2.5
PLACE_HOURS = {"sample": 0.3, "take_off": 0.1, "refit": 0.15, "mask": 0.15}
"""Hands-on time of work that does not grow with the area [h]; judgement, see docs/why/cost.md."""
VALUE_LOST_M2 = {"ordinary": 0.0, "good": 40.0, "fine": 260.0}
"""What stripping or painting an original finish loses [money/m²]; judgement, see docs/why/cost.md."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """
    A named weighting of the search.

    Attributes
    ----------
    name
        ``balanced``, ``cheaper``, ``fewer hours``, ``surer`` or ``sooner``.
    money, hours, days, risk
        Factors [1] on money, own time, delay and the cost of faults.
    """

    name: str
    money: float = 1.0
    hours: float = 1.0
    days: float = 1.0
    risk: float = 1.0


BALANCED = Aim(name="balanced")
AIMS = (
    BALANCED,
    Aim(name="cheaper", money=3.0, hours=0.5),
    Aim(name="fewer hours", money=0.7, hours=3.0),
    Aim(name="surer", risk=3.0),
    Aim(name="sooner", days=8.0),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """
    What one step takes on one surface.

    Attributes
    ----------
    minutes
        Hands-on time [min].
    litres
        Material [L].
    money
        Material [money].
    wait_h
        Waiting [h].
    reads
        Facts read, as pairs of subject and property.
    """

    minutes: Range
    litres: Range
    money: Range
    wait_h: Range
    reads: tuple[tuple[str, str], ...]


def hazard(chance: float) -> float:
    """Return −ln(1−p), so that independent chances add up [1]."""
    return -log(1.0 - min(MAX_CHANCE, max(0.0, chance)))


def harm(know: Knowledge, workshop: Workshop, fault: str, area_m2: float) -> float:
    """
    Return what a fault would cost where it appears [money].

    Notes
    -----
    Hands-on time and material to mend the usual share of the area, and the days lost; from the harm
    table (``facts-work.csv``, kind fault), times four: a failure also costs the heart, the date and the
    buyer's trust (judgement, docs/why/cost.md).
    """
    facts = know.fault(fault)
    work = facts.harm_h_m2 * workshop.hour_worth + facts.harm_price_m2
    return _TROUBLE * (work * max(area_m2, 0.1) * facts.typical_share + facts.harm_days * workshop.day_worth)


def step_amounts(
    know: Knowledge, workshop: Workshop, surface: Surface, step: Step, *, on_bare: bool, recess_share: float
) -> Amounts:
    """
    Return what a step takes on a surface.

    Parameters
    ----------
    know
        All facts.
    workshop
        Prices.
    surface
        For area and relief.
    step
        The step.
    on_bare
        Whether a coat meets bare wood, which drinks the first one.
    recess_share
        Share of the area that lies in hollows [1], for picking out.

    Returns
    -------
    Amounts
        Low, likely and high. Set-up and clean-up are counted for the piece, not here.
    """
    area = surface.area_m2
    column = _COLUMN.get(surface.relief, "frame_m2_h")
    hours, reads = _hours(know, step, column, area, recess_share)
    litres, money = _material(know, workshop, surface, step, on_bare=on_bare)
    if step.is_coat:
        reads = (*reads, (f"film:{step.what}", "wet_um"), (f"film:{step.what}", "price_l"))
    wait = step.wait_between_h * max(0, step.coats - 1) + step.wait_after_h
    if step.is_coat:
        reads = (*reads, (f"film:{step.what}", "recoat_from_h"))
    return Amounts(
        minutes=Range(low=42.0 * hours, likely=60.0 * hours, high=90.0 * hours),
        litres=Range(low=0.8 * litres, likely=litres, high=1.4 * litres),
        money=Range(low=0.75 * money, likely=money, high=1.4 * money),
        wait_h=Range(low=0.75 * wait, likely=wait, high=1.5 * wait),
        reads=reads,
    )


def work_kind(step: Step, relief: str) -> str:
    """Return under which kind the time of a step is learnt, see `OwnWork.hours`; empty where it is not."""
    if step.verb == "strip":
        return f"strip:{step.what}"
    if step.verb == "repair":
        return f"repair:{step.what}"
    if step.verb in {"use", "wait", "expose", "air", "test"} or step.verb in PLACE_HOURS:
        return ""
    hollow = step.verb == "scrape" and step.how & {"hollows", "pores"}
    labour = "pick-out" if hollow else _LABOUR.get(step.verb) or _BY_METHOD.get(step.method, "brush-coat")
    return f"{labour}/{_COLUMN.get(relief, 'frame_m2_h').removesuffix('_m2_h')}"


def _rate(labour: LabourFacts, column: str) -> float:
    """Return the rate of work [m²/h] for a relief."""
    return max(0.02, float(getattr(labour, column)))


def _hours(
    know: Knowledge, step: Step, column: str, area: float, recess_share: float
) -> tuple[float, tuple[tuple[str, str], ...]]:
    """Return hands-on hours of a step [h] and the facts read."""
    verb = step.verb
    if verb in {"use", "wait", "expose", "air"}:
        return (0.1 if verb == "air" else 0.0), ()
    if verb == "test":
        return (know.test(step.what).minutes / 60.0 if know.has("test", step.what) else 0.2), (
            (f"test:{step.what}", "minutes"),
        )
    if verb == "repair":
        if not know.has("repair", step.what):
            return 0.5, ()
        mending = know.repair(step.what)
        return mending.h_each + mending.h_m2 * min(area, 0.3), ((f"repair:{step.what}", "h_each"),)
    if verb == "strip" and know.has("remover", step.what):
        flat = _rate(know.labour("strip"), "flat_m2_h")
        factor = flat / _rate(know.labour("strip"), column)
        hours = know.remover(step.what).h_m2 * factor * area * max(1, step.coats)
        return hours, ((f"remover:{step.what}", "h_m2"), ("labour:strip", column))
    if verb == "scrape" and "hollows" in step.how:
        return area * recess_share / _rate(know.labour("pick-out"), column), (("labour:pick-out", column),)
    if verb == "scrape" and "pores" in step.how:
        return area / (1.5 * _rate(know.labour("pick-out"), column)), (("labour:pick-out", column),)
    if verb in PLACE_HOURS:
        return PLACE_HOURS[verb], ()
    labour = _LABOUR.get(verb) or _BY_METHOD.get(step.method, "brush-coat")
    hours = area / _rate(know.labour(labour), column)
    hours *= _passes(know, step)
    if step.is_coat:
        facts = know.film(step.what)
        hours = (hours + facts.smooths_h_m2 * area) * max(1, step.coats)
    if "raise" in step.how:
        hours += 0.15 * area
    return hours, ((f"labour:{labour}", column),)


def _passes(know: Knowledge, step: Step) -> float:
    """Return how often the work goes over the area, slower tools counted in [1]."""
    if step.verb == "bleach":
        return _BLEACH_PASSES
    if step.verb != "sand":
        return 1.0
    passes = 1.0
    if "sequence" in step.how:
        passes = _SEQUENCE_PASSES
    elif "to bare" in step.how:
        passes = _TO_BARE_PASSES
    return passes * (know.tool(step.method).relative_time if know.has("tool", step.method) else 1.0)


def coat_litres(
    facts: FilmFacts, area_m2: float, method: str, film: str, *, first_coat_factor: float
) -> float:
    """
    Return the litres of one coat [L].

    Parameters
    ----------
    facts
        Class.
    area_m2
        Area [m²].
    method
        Way it goes on, for the share that reaches the surface.
    film
        ``thin``, ``normal`` or ``heavy``.
    first_coat_factor
        What bare wood takes relative to a sealed surface [1]; 1 on sealed ground.

    Notes
    -----
    ``area · wet film / 1000 / transfer efficiency · factor``; transfer efficiencies from
    the coatings notes §1.3 (common practice: brush 0.95, roller 0.90, wiping 0.5–0.7, spray 0.5).
    """
    per_m2 = facts.wet_um / 1000.0
    return area_m2 * per_m2 * _FILM_FACTOR.get(film, 1.0) / _TRANSFER.get(method, 0.9) * first_coat_factor


def _material(
    know: Knowledge, workshop: Workshop, surface: Surface, step: Step, *, on_bare: bool
) -> tuple[float, float]:
    """Return litres [L] and money of a step."""
    area = surface.area_m2
    if step.is_coat:
        facts = know.film(step.what)
        factor = know.wood(surface.wood).first_coat_factor if on_bare else 1.0
        first = coat_litres(facts, area, step.method, step.film, first_coat_factor=factor)
        later = coat_litres(facts, area, step.method, step.film, first_coat_factor=1.0)
        litres = first + later * max(0, step.coats - 1)
        litres *= know.litre_factors.get(step.what, 1.0)
        return litres, litres * price_per_litre(know, workshop, step.what)
    if step.verb in {"clean", "rinse", "neutralise"} and know.has("cleaner", step.what):
        return 0.0, know.cleaner(step.what).price_m2 * area
    if step.verb == "strip" and know.has("remover", step.what):
        return 0.0, know.remover(step.what).price_m2 * area * max(1, step.coats)
    if step.verb in {"sand", "scuff", "rub_out"}:
        return 0.0, ABRASIVE_M2 * area * (
            2.0 if "sequence" in step.how else 4.0 if "to bare" in step.how else 1.0
        )
    if step.verb == "repair" and know.has("repair", step.what):
        return 0.0, know.repair(step.what).price
    if step.verb == "test" and know.has("test", step.what):
        return 0.0, know.test(step.what).price
    if step.verb == "bleach":
        return 0.0, 2.0 + 2.0 * area
    return 0.0, 0.0


def price_per_litre(know: Knowledge, workshop: Workshop, cls: str) -> float:
    """Return the price of a litre of a class [money/L]: the workshop's own, its cheapest tin, or the class's."""
    own = dict(workshop.prices).get(cls)
    if own is not None:
        return own
    tins = [
        p.price / p.size_l for p in workshop.products if p.cls == cls and p.price is not None and p.size_l > 0
    ]
    return min(tins) if tins else know.film(cls).price_l
