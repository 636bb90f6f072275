"""What own work says: entries of a journal set against the tables, and the tables with it worked in."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from refettle.domain.logged import FaultLogged, Log, WorkLogged
from refettle.domain.piece import Surface
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.own import OwnWork
from refettle.learning.offsets import Offset, learn_offsets
from refettle.learning.rates import COATS, DRYING, HOURS, LITRES, Rates, learn_rates
from refettle.planning.cost import step_amounts, work_kind
from refettle.planning.effects import drying_rate

Ratios = dict[str, list[float]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """
    What a journal says.

    Attributes
    ----------
    log
        The journal.
    pieces
        Pieces that its entries are of [1].
    hours, litres, drying, coats
        Factors on the tables' amounts, by kind of work or film class.
    offsets
        Rule id → its offset.
    """

    log: Log
    pieces: int
    hours: Rates
    litres: Rates
    drying: Rates
    coats: Rates
    offsets: Mapping[str, Offset]


def learn(know: Knowledge, workshop: Workshop, log: Log) -> Learnt:
    """
    Return what a journal says beside the tables.

    Parameters
    ----------
    know
        The tables, nothing learnt worked in.
    workshop
        Its air, where an entry names none.
    log
        The journal.

    Returns
    -------
    Learnt
        Kinds and rules under `forget` are left out.
    """
    hours: Ratios = {}
    litres: Ratios = {}
    drying: Ratios = {}
    coats: Ratios = {}
    for entry in log.work:
        for heap, key, ratio in _ratios(know, workshop, entry, (hours, litres, drying, coats)):
            if key not in log.forget and ratio > 0:
                heap.setdefault(key, []).append(ratio)
    faults: dict[str, list[tuple[float, float]]] = {}
    for fault in log.faults:
        for rule, pair in _came(fault):
            if rule not in log.forget:
                faults.setdefault(rule, []).append(pair)
    return Learnt(
        log=log, pieces=len({one.piece for one in log.work} | {one.piece for one in log.faults}),
        hours=learn_rates(hours, HOURS), litres=learn_rates(litres, LITRES),
        drying=learn_rates(drying, DRYING), coats=learn_rates(coats, COATS), offsets=learn_offsets(faults),
    )  # fmt: skip


def _ratios(
    know: Knowledge, workshop: Workshop, entry: WorkLogged, heaps: tuple[Ratios, Ratios, Ratios, Ratios]
) -> Iterator[tuple[Ratios, str, float]]:
    """Yield what an entry took as shares of the tables' amounts, each with its heap and kind."""
    hours, litres, drying, coats = heaps
    step = entry.step
    surface = Surface(
        name="logged", part="", area_m2=entry.area_m2, relief=entry.relief, wood=entry.wood or "hardwood"
    )
    if entry.area_m2 > 0:
        due = step_amounts(know, workshop, surface, step, on_bare=entry.bare, recess_share=0.0)
        kind = work_kind(step, entry.relief)
        if entry.minutes is not None and kind and due.minutes.likely > 0:
            yield hours, kind, entry.minutes / due.minutes.likely
        if entry.litres is not None and step.is_coat and due.litres.likely > 0:
            yield litres, step.what, entry.litres / due.litres.likely
    if not step.is_coat:
        return
    facts = know.film(step.what)
    if entry.dry_h is not None:
        rate = drying_rate(facts, step.air or workshop.air_likely)
        yield drying, step.what, entry.dry_h * rate / facts.recoat_from_h
    if entry.coats_foreseen is not None:
        yield coats, step.what, step.coats / entry.coats_foreseen


def _came(fault: FaultLogged) -> Iterator[tuple[str, tuple[float, float]]]:
    """
    Yield rule, chance foreseen and what came of a fault.

    Notes
    -----
    Where several rules foresaw it, chance and event are shared among them evenly: nobody saw which it was.
    """
    each = 1.0 - (1.0 - fault.foreseen) ** (1.0 / len(fault.rules))
    came = 1.0 / len(fault.rules) if fault.seen else 0.0
    for rule in fault.rules:
        yield rule, (each, came)


def own_work(learnt: Learnt) -> OwnWork:
    """Return what is learnt as factors and offsets."""
    return OwnWork(
        hours={kind: rate.factor for kind, rate in learnt.hours.kinds.items()},
        litres={kind: rate.factor for kind, rate in learnt.litres.kinds.items()},
        drying={kind: rate.factor for kind, rate in learnt.drying.kinds.items()},
        coats={kind: rate.factor for kind, rate in learnt.coats.kinds.items()},
        hours_else=learnt.hours.others.factor, litres_else=learnt.litres.others.factor,
        drying_else=learnt.drying.others.factor, coats_else=learnt.coats.others.factor,
        offsets={rule: found.offset for rule, found in learnt.offsets.items()},
    )  # fmt: skip


def learnt_words(learnt: Learnt) -> str:
    """Return in one sentence how much of the figures is own work."""
    kinds = sum(len(rates.kinds) for rates in (learnt.hours, learnt.litres, learnt.drying, learnt.coats))
    entries = _counted(len(learnt.log.work) + len(learnt.log.faults), "entry", "entries")
    pieces = _counted(learnt.pieces, "own piece", "own pieces")
    of = f"{_counted(kinds, 'kind', 'kinds')} of work and {_counted(len(learnt.offsets), 'rule', 'rules')}"
    return f"figures rest on the handbook and on {entries} from {pieces}, for {of}"


def _counted(number: int, one: str, many: str) -> str:
    """Return a count with its noun."""
    return f"{number} {one if number == 1 else many}"
