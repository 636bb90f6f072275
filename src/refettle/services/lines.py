"""The first screen: eight lines, most decisive first."""

from refettle.domain.piece_plan import GroupPlan, PiecePlan
from refettle.domain.plan import Range, Risk
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.reasons import odds

_SHORT = {
    "clean": "wash", "strip": "strip", "sand": "sand", "scuff": "scuff", "stain": "stain", "revive": "revive",
    "bleach": "bleach", "scrape": "scrape", "repair": "mend", "tone": "tone", "condition": "condition",
    "sample": "sample",
}  # fmt: skip
_LAID_OUT_DAYS = 400
"""Evenings are laid out up to this day [d]."""


def first_screen(know: Knowledge, workshop: Workshop, plan: PiecePlan) -> tuple[str, ...]:
    """
    Return at most eight lines that say the plan as a finisher would.

    Notes
    -----
    Order: what must come before anything; the way; what to watch; mending; what cannot be had or may
    be left alone; time; what to buy; whether it pays. A line with nothing to say is left out.
    """
    lines = [
        _before(plan),
        _way(know, plan),
        _watch(know, plan),
        _mend(know, plan),
        _otherwise(plan),
        _time(plan),
        _buy(plan),
        _pays(workshop, plan),
    ]
    return tuple(line for line in lines if line)


def main_group(plan: PiecePlan) -> GroupPlan | None:
    """Return the group that decides the piece: the largest not left bare; a top weighs threefold, insides a third."""
    routed = [g for g in plan.groups if g.route is not None]
    groups = [g for g in routed if g.look.kind != "bare"] or [g for g in routed if g.route and g.route.steps]
    if not groups:
        return None
    return max(
        groups,
        key=lambda g: (
            g.area_m2
            * (3.0 if g.name == "top" or g.name.startswith("top,") else 1.0)
            * (0.3 if all("inside" in name for name in g.members) else 1.0)
            * (0.1 if g.look.kind in {"keep", "odour-free"} else 1.0)
        ),
    )


def _before(plan: PiecePlan) -> str:
    """Say what must be known before anything is touched."""
    needed = [a for _, a in plan.tests if a.needed]
    paying = [(g, a) for g, a in plan.tests if not a.needed]
    if needed:
        text = f"Before anything: {needed[0].why}."
        if paying:
            text += f" Then {paying[0][1].why} ({paying[0][0]})."
        return text
    if paying:
        group, advice = paying[0]
        saves = f"it saves about {advice.gain:.0f} {plan.currency} over its price of about {advice.price:.0f}"
        return f"Test first: {advice.why} ({group}); {saves}."
    return ""


def route_short(know: Knowledge, group: GroupPlan) -> str:
    """Return the way of a group in one line: wash → scuff → blocker → 2 paint."""
    if group.route is None:
        return ""
    words: list[tuple[str, int]] = []
    for cost in group.route.steps:
        step = cost.step
        if step.is_coat and step.verb not in {"stain", "condition", "tone"}:
            name, coats = know.film(step.what).name, max(1, step.coats)
            if len(words) > 1 and words[-1][0] == "scuff" and words[-2][0] == name:
                words.pop()
            if words and words[-1][0] == name:
                coats += words.pop()[1]
            words.append((name, coats))
            continue
        short = _SHORT.get(step.verb)
        if step.verb in {"stain", "condition", "tone"}:
            short = know.film(step.what).name
        if step.verb == "scuff" and "wet" in step.how:
            short = "scuff wet"
        if step.verb == "sand" and "to bare" in step.how:
            short = "sand to bare wood"
        if "open pores" in step.how:
            short = "open the pores"
        if short and (not words or words[-1][0] != short):
            words.append((short, 1))
    return " → ".join(f"{coats} {word}" if coats > 1 else word for word, coats in words)


def _way(know: Knowledge, plan: PiecePlan) -> str:
    """Say the way of the main group and how the others differ."""
    group = main_group(plan)
    if group is None:
        return "Nothing here can be finished as asked; see below what can be had."
    text = f"Do it like this ({group.name}): {route_short(know, group)}."
    strips = (
        any(c.step.verb == "strip" or "to bare" in c.step.how for c in group.route.steps)
        if group.route
        else False
    )
    old = group.worlds[0][0] != "bare wood"
    if old and not strips and group.look.base == "opaque":
        text += " No stripping needed: the old finish can carry the new."
    elif old and not strips and group.look.kind in {"natural", "keep"}:
        text += " The old finish stays."
    others: dict[str, str] = {}  # one name for each other way
    for other in plan.groups:
        if other.route is not None and other.name != group.name and other.look.kind not in {"bare", "keep"}:
            others.setdefault(route_short(know, other), other.name)
    others.pop(route_short(know, group), None)
    if others:
        way, name = next(iter(others.items()))
        text += f" {name[:1].upper()}{name[1:]}: {way}."
        if len(others) > 1:
            more = len(others) - 1
            text += f" {more} more way{'s' if more > 1 else ''} below."
    return text


def _watch(know: Knowledge, plan: PiecePlan) -> str:
    """Say the fault that the plan averts at most cost, and the one that stays likeliest."""
    averted: list[str] = []
    for group in (main_group(plan), *plan.groups):
        if group is None or group.route is None:
            continue
        for cost in group.route.steps:
            if cost.reason.startswith("without it: ") and cost.step.verb in {
                "prime",
                "seal",
                "clean",
                "condition",
                "rinse",
                "topcoat",
            }:
                text = cost.reason.removeprefix("without it: ")
                if text not in averted and ", unlikely" not in text and ", hardly" not in text:
                    averted.append(text)
    stays: list[tuple[str, Risk]] = [(g, r) for g, r in plan.risks if r.chance >= 0.2]
    parts = []
    if averted:
        averted.sort(key=_plainness)
        parts.append(f"skip no step: {averted[0]}")
    if stays:
        group_name, risk = stays[0]
        parts.append(
            f"{know.fault(risk.fault).name} {odds(risk.chance)} all the same ({group_name}): {risk.why}"
        )
    return f"Watch: {'; '.join(parts)}." if parts else ""


_ODDS = ("almost certain", "likely", "as likely as not", "about one in three", "perhaps one in six")


def _plainness(text: str) -> int:
    """Return the place of a reason among others: the surest fault first."""
    return next((i for i, words in enumerate(_ODDS) if f", {words} –" in text), len(_ODDS))


def _mend(know: Knowledge, plan: PiecePlan) -> str:
    """Say what is mended before colour: jobs on parts first, then what the faces want."""
    rows: dict[str, float] = {}
    holes = []
    for job in plan.mending:
        if job.name.startswith("holes: "):
            holes.append(f"Holes: {job.what}: {_HOLES[len(job.steps) > 1]}")
        elif job.stage != "after coats" and job.money.high + len(job.steps) > 1:
            rows[job.name] = sum(step.minutes.likely for step in job.steps) / 60.0
    for group in plan.groups:
        if group.route is None:
            continue
        for cost in group.route.steps:
            step = cost.step
            if step.verb in {"repair", "bleach"}:
                name = (
                    know.name("repair", step.what)
                    if know.has("repair", step.what)
                    else f"bleach with {step.what}"
                )
                rows[name] = rows.get(name, 0.0) + cost.minutes.likely / 60.0
    if not rows:
        return " ".join(f"{text}." for text in holes)
    shown = [f"{name} ({hours:.1f} h)" for name, hours in list(rows.items())[:_MOST_MENDED]]
    more = len(rows) - len(shown)
    tail = f" and {more} more" if more > 0 else ""
    running = any("run and close" in job.name for job in plan.mending)
    dry = " Keep paint off runners and drawer sides." if running else ""
    return " ".join([f"Mend first: {', '.join(shown)}{tail}.{dry}", *(f"{text}." for text in holes)])


_HOLES = {True: "fill and drill now, not after", False: "drill now, not after"}
_MOST_MENDED = 4


def _otherwise(plan: PiecePlan) -> str:
    """Say what cannot be had, or that leaving it alone deserves a thought."""
    for group in plan.groups:
        if group.impossible is not None:
            near = (
                group.impossible.nearest[0][1] if group.impossible.nearest else "nothing with these demands"
            )
            return f"Not to be had ({group.name}): {' and '.join(group.impossible.clash)}. Nearest: {near}."
    main = main_group(plan)
    if main is None or main.route is None:
        return ""
    hidden = next((r for r in main.route.risks if r.fault == "incomplete-removal" and r.chance > 0.3), None)
    if hidden is not None:
        return f"Be warned ({main.name}): {hidden.why}; it will show unless it is picked out or left dark on purpose."
    if main.leave_alone is not None and main.route.value_lost > 0:
        spared = main.route.value_lost
        return (
            f"Leave it alone? Cleaning and waxing the old finish keeps about {spared:.0f} {plan.currency} of its worth "
            f"and takes {hours_words(main.leave_alone.minutes)}."
        )
    return ""


def hours_words(minutes: Range) -> str:
    """Return hands-on time as a range in hours."""
    low, high = minutes.low / 60.0, minutes.high / 60.0
    if minutes.high < 8:
        return "a few minutes"
    if high < 1.0:
        return f"{round(minutes.low / 5) * 5 or 5}–{round(minutes.high / 5) * 5 or 5} min"
    if high < 4:
        return f"{low:.1f}–{high:.1f} h"
    return f"{low:.0f}–{high:.0f} h"


def _time(plan: PiecePlan) -> str:
    """Say hands-on hours, evenings and the days of wrapping and use."""
    if not plan.days:
        return ""
    evenings = len(plan.days)
    if plan.days[-1].day >= _LAID_OUT_DAYS:
        return (
            f"Hands-on {hours_words(plan.minutes)}: at these free hours more than {_LAID_OUT_DAYS} days; what comes "
            "later is not laid out. Work on more or longer evenings, or do less."
        )
    return (
        f"Hands-on {hours_words(plan.minutes)} over {evenings} evening{'s' if evenings > 1 else ''}; "
        f"safe to wrap on day {plan.wrap_day}, cured for use on day {plan.cured_day}{_late(plan)}."
    )


def _late(plan: PiecePlan) -> str:
    """Say that the date asked for cannot be kept."""
    late = any(f.code == "not-enough-time" for f in plan.findings)
    return " – later than asked" if late else ""


def _buy(plan: PiecePlan) -> str:
    """Say what to buy and for how much."""
    tins = [f"{b.name} {b.buy}" for b in plan.buy if b.kind == "film" and b.buy]
    rest = sorted(
        {f"{b.name} {b.buy}" if b.bought_l else b.name for b in plan.buy if b.kind == "remover" and b.buy}
    )
    have = [b.name for b in plan.buy if b.kind == "film" and not b.buy]
    if not plan.buy:
        return ""
    text = f"Buy: {', '.join([*tins, *rest])}" if tins or rest else "Buy: cleaning and sanding things only"
    cost = f"about {plan.money.low:.0f}–{plan.money.high:.0f}" if plan.money.high >= 1 else "less than 1"
    text += f", {cost} {plan.currency} in all."
    if have:
        text += f" On the shelf: {', '.join(have)}."
    return text


def _pays(workshop: Workshop, plan: PiecePlan) -> str:
    """Say whether it pays, where prices are given."""
    worth = plan.worth
    if worth.per_hour is None or worth.sells_low is None or worth.sells_high is None:
        return ""
    paid = f", {worth.paid:.0f} paid" if worth.paid is not None else ""
    brings = worth.per_hour.likely
    verdict = (
        "Pays" if brings >= workshop.hour_worth else ("Pays little" if round(brings) >= 0 else "Loses money")
    )
    return (
        f"{verdict}: sells at {worth.sells_low:.0f}–{worth.sells_high:.0f} {plan.currency}{paid}: likely "
        f"{round(worth.per_hour.low)} to {round(worth.per_hour.high)} an hour, {round(brings)} at best guess."
    )
