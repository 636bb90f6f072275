"""Lead: old paint made into dust or fumes."""

from refettle.rules.card import Card, Cause, nothing_changes
from refettle.rules.situation import Situation


def lead_in_dust(sit: Situation) -> Cause | None:
    """Judge dry sanding, dry scraping and heat on old coats that may hold lead."""
    lead = sit.before.strength("lead")
    step = sit.step
    top = sit.before.top
    if lead <= 0 or top is None:
        return None
    if not top.old and step.verb != "strip" and "to bare" not in step.how:
        return None
    dry = step.verb in {"sand", "scuff", "scrape", "rub_out"} and "wet" not in step.how
    heat = (
        step.verb == "strip"
        and sit.know.has("remover", step.what)
        and sit.know.remover(step.what).not_for_lead
    )
    if not dry and not heat:
        return None
    share = 0.95 if step.verb in {"sand", "scrape"} or heat else 0.8
    return Cause(
        chance=share * lead,
        why="old coats may hold lead: no dry sanding, no dry scraping, no heat until a test says no",
        reads=(("fault:lead-dust", "harm_h_m2"),),
    )


CARDS = (
    Card(
        id="lead-made-airborne", fault="lead-dust", mechanism="lead", levels=("work",), effect=nothing_changes,
        layer="below", onset=("immediate", "immediate"), signs=("nothing to see: a test tells",),
        sources=("cfr-16-1303", "common-practice"), judge=lead_in_dust,
    ),
)  # fmt: skip
