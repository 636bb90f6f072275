"""What to do with what is left: one line per kind of waste that a list makes, each with its source."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from refettle.domain.piece_plan import Purchase
from refettle.knowledge.knowledge import Knowledge

LOCAL = "Local rules decide: ask the collection point."


@dataclass(frozen=True, slots=True, kw_only=True)
class Waste:
    """
    One kind of waste.

    Attributes
    ----------
    id
        Permanent short name.
    text
        What to do with it.
    source
        Key of its source.
    """

    id: str
    text: str
    source: str = "common-practice"


_OILY = Waste(
    id="oily-rags",
    text="Rags with oil in them can catch fire by themselves: spread them flat outdoors to dry the same night, or keep "
    "them under water in a lidded can.",
)
_SOLVENT = Waste(
    id="solvent",
    text="Solvent and what was thinned with it: never down the drain, never poured out. Let dirty solvent settle in a "
    "closed jar, use the clear part again; the rest goes to a collection point.",
)
_WATERBORNE = Waste(
    id="waterborne",
    text="Water-borne leftovers: not down the drain; keep them from frost, or let a rest dry hard in its open tin. "
    "Wipe brushes out before they are washed.",
)
_REMOVER = Waste(
    id="remover-sludge",
    text="Remover with old finish in it: let it air outdoors on paper, out of reach of children and animals, then to a "
    "collection point for paint, with its rags.",
)
_CAUSTIC = Waste(
    id="caustic",
    text="Caustic sludge: keep it in a plastic tub with a lid and hand it in; do not mix it with anything.",
)
_LEAD = Waste(
    id="lead-scrapings",
    text="Scrapings, dust and cloths that may hold lead: double bag, closed and marked, kept apart; hand them in as "
    "hazardous waste.",
    source="cfr-16-1303",
)
_DUST = Waste(
    id="dust",
    text="Sanding dust of fresh oil or varnish can heat up as rags do: out of the house the same day, damp, in a metal can.",
)


def wastes_of(know: Knowledge, items: Iterable[Purchase], *, lead: bool) -> tuple[Waste, ...]:
    """
    Return what to do with what is left of some materials, danger first.

    Parameters
    ----------
    know
        All facts.
    items
        What is used, bought or not.
    lead
        Whether old paint may hold lead.

    Returns
    -------
    tuple of Waste
        One line per kind; empty where nothing wet or dusty is used. `LOCAL` belongs beside them.
    """
    used = tuple(items)
    found = {waste.id: waste for item in used for waste in _of(know, item)}
    if lead and used:
        found[_LEAD.id] = _LEAD
    order = (_LEAD, _OILY, _CAUSTIC, _REMOVER, _SOLVENT, _WATERBORNE, _DUST)
    return tuple(waste for waste in order if waste.id in found)


def _of(know: Knowledge, item: Purchase) -> Iterator[Waste]:
    """Yield the wastes of one material."""
    if item.kind == "film":
        facts = know.film(item.cls)
        if facts.self_heats:
            yield _OILY
            yield _DUST
        yield _WATERBORNE if facts.carrier == "water" else _SOLVENT
    elif item.kind == "remover" and know.has("remover", item.cls):
        acts = know.remover(item.cls).acts_by
        if acts == "caustic":
            yield _CAUSTIC
        elif acts in {"alcohol", "solvent", "mild"}:
            yield _REMOVER
            yield _SOLVENT
    elif (
        item.kind == "cleaner"
        and know.has("cleaner", item.cls)
        and know.cleaner(item.cls).solvent in {"alcohol", "spirits", "strong"}
    ):
        yield _SOLVENT
