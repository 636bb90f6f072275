"""Checks of a whole plan: every surface once, sums over groups, what is bought, the first screen."""

import re
from collections.abc import Iterator
from dataclasses import replace

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Piece, Surface
from refettle.domain.piece_plan import GroupPlan, PiecePlan, Purchase
from refettle.domain.plan import Range
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.check_sums import known_reason, near, same, setup_h, total, unknown_reasons

_SHOWN = 0.03
_MOST_LINES = 8
_TIN = re.compile(r"(?:(\d+) × )?([\d.]+) L")


def finding(piece: Piece, code: str, path: str, what: str, do: str) -> Finding:
    """Return a finding on the whole plan."""
    return Finding(code=code, level="error", where=Where(file=piece.name, path=path), what=what, do=do)


def stand_in(piece: Piece, group: GroupPlan) -> Surface | None:
    """Return one surface with the area of all members of a group, or None where a member is unknown."""
    by_name = {surface.name: surface for surface in piece.surfaces}
    if not group.members or any(name not in by_name for name in group.members):
        return None
    members = [by_name[name] for name in group.members]
    return replace(members[0], name=group.name, area_m2=sum(s.area_m2 for s in members))


def whole(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> Iterator[Finding]:
    """Yield what is wrong with a plan beyond its routes and its days."""
    yield from _members(piece, plan)
    yield from _sums(know, piece, plan)
    yield from _bought(know, piece, workshop, plan)
    yield from _risks(piece, plan)
    if not 0 < len(plan.lines) <= _MOST_LINES:
        yield finding(
            piece, "lines-off", "", f"the first screen has {len(plan.lines)} lines", "say it in one to eight"
        )


def _members(piece: Piece, plan: PiecePlan) -> Iterator[Finding]:
    """Yield surfaces that are not in exactly one group of their kind and area."""
    for surface in piece.surfaces:
        count = plan.surfaces.count(surface.name)
        if count != 1:
            yield finding(
                piece,
                "surface-not-once",
                surface.name,
                f"it is planned {count} times",
                "put it in exactly one group",
            )
    for group in plan.groups:
        members = stand_in(piece, group)
        if members is None:
            what = "the group names a surface that the piece has not"
            yield finding(piece, "surface-unknown", group.name, what, "name its own")
        else:
            yield from _group(piece, group, members)


def _group(piece: Piece, group: GroupPlan, surface: Surface) -> Iterator[Finding]:
    """Yield what a group says of itself that its surfaces do not."""
    if not near(surface.area_m2, group.area_m2):
        what = f"its area is {group.area_m2:.3f} m², its surfaces add up to {surface.area_m2:.3f} m²"
        yield finding(piece, "sum-differs", group.name, what, "add up again")
    if group.asked and surface.look != group.look:
        what = f"it is planned for another look than asked: {group.look.kind}"
        yield finding(piece, "look-missed", group.name, what, "plan the look that was asked for")
    if not near(sum(share for _, share in group.worlds), 1.0):
        what = "what it may be does not add up to 1"
        yield finding(piece, "sum-differs", group.name, what, "weigh the worlds again")
    if (group.route is None) == (group.impossible is None):
        what = "it has neither or both of a route and a reason why not"
        yield finding(piece, "no-answer", group.name, what, "give one of the two")


def _sums(know: Knowledge, piece: Piece, plan: PiecePlan) -> Iterator[Finding]:
    """Yield money and minutes of the plan that are not the sums of their parts."""
    money = total(item.money for item in plan.buy)
    if not same(plan.money, money):
        yield finding(
            piece,
            "sum-differs",
            "",
            f"money is {plan.money.likely:.2f}, what is bought adds up to {money[1]:.2f}",
            "add up again",
        )
    setups: dict[tuple[str, str], float] = {}
    routes = [g.route for g in plan.groups if g.route is not None]
    for route in routes:
        own: dict[tuple[str, str], float] = {}
        for step in (cost.step for cost in route.steps):
            own[step.verb, step.what] = own.get((step.verb, step.what), 0.0) + 60.0 * setup_h(know, step)
        setups = {key: max(setups.get(key, 0.0), own.get(key, 0.0)) for key in setups.keys() | own.keys()}
    shared = sum(setups.values())
    whole = sum(task.minutes for day in plan.days for task in day.tasks if not task.number)
    likely = sum(route.minutes.likely for route in routes) + shared + whole
    if not near(plan.minutes.likely, likely):
        yield finding(
            piece,
            "sum-differs",
            "",
            f"hands-on is {plan.minutes.likely:.0f} min, its routes, set-ups and work on the whole piece add up to "
            f"{likely:.0f} min",
            "add up again",
        )
    for name, amount in (("money", plan.money), ("minutes", plan.minutes)):
        if not 0.0 <= amount.low <= amount.likely <= amount.high:
            yield finding(
                piece,
                "range-upside-down",
                "",
                f"{name} runs {amount.low:g}, {amount.likely:g}, {amount.high:g}",
                "put low, likely, high in order",
            )


def _bought(know: Knowledge, piece: Piece, workshop: Workshop, plan: PiecePlan) -> Iterator[Finding]:
    """Yield films that run short, purchases that nothing needs, prices that lead to no source."""
    need: dict[str, list[Range]] = {}
    for cost in (c for g in plan.groups if g.route is not None for c in g.route.steps):
        if cost.step.is_coat:
            need.setdefault(cost.step.what, []).append(cost.litres)
    films = {item.cls: item for item in plan.buy if item.kind == "film"}
    for cls, amounts in need.items():
        name, path = know.name("film", cls), f"buy/{cls}"
        item = films.get(cls)
        if item is None:
            yield finding(piece, "runs-short", path, f"{name} is used and not on the list", "put it there")
            continue
        least, said = total(amounts), (item.need_l.low, item.need_l.likely, item.need_l.high)
        if any(amount < own - 1e-9 for amount, own in zip(said, least, strict=True)):
            what = f"the list says {item.need_l.likely:.2f} L of {name}, the coats take {least[1]:.2f} L"
            yield finding(piece, "runs-short", path, what, "add up the litres again")
    for cls in films.keys() - need.keys():
        what = f"no step uses {know.name('film', cls)}"
        yield finding(piece, "bought-for-nothing", f"buy/{cls}", what, "take it off the list")
    known = known_reason(know)
    for item in plan.buy:
        if item.need_l.high > 0:
            yield from _covered(piece, workshop, item.name, item)
        if item.have_count + item.bought_count < item.need_count.likely - 1e-9:
            there = f"{item.have_count:g} there and {item.bought_count:g} bought"
            what = f"{item.name}: {there} do not make the {item.need_count.likely:.1f} needed"
            yield finding(piece, "runs-short", f"buy/{item.cls}", what, "buy more")
        if not item.because or unknown_reasons(item.because, known):
            what = f"need and price of {item.name} lead to no source"
            yield finding(
                piece, "no-source", f"buy/{item.cls}", what, "name fact rows, rule:, formula: or verb:"
            )


def _covered(piece: Piece, workshop: Workshop, name: str, item: Purchase) -> Iterator[Finding]:
    """Yield a film of which shelf and tins together do not hold enough."""
    path = f"buy/{item.cls}"
    have = sum(p.have_l for p in workshop.products if p.cls == item.cls and p.kind == item.kind)
    tins = sum(int(count or 1) * float(size) for count, size in _TIN.findall(item.buy))
    if not near(item.have_l, have):
        what = f"the list says {item.have_l:g} L of {name} is there, the shelf holds {have:g} L"
        yield finding(piece, "shelf-differs", path, what, "read the shelf again")
    if have + tins < item.need_l.likely - 1e-9:
        need = item.need_l.likely
        what = f"{name}: {have:g} L there and {tins:g} L bought do not make the {need:.2f} L needed"
        yield finding(piece, "runs-short", path, what, "buy more")


def _risks(piece: Piece, plan: PiecePlan) -> Iterator[Finding]:
    """Yield risks of the piece that are not those of its groups."""
    own = {
        (g.name, r.fault): r.chance for g in plan.groups if g.route is not None for r in g.route.risks
        if r.chance >= _SHOWN
    }  # fmt: skip
    said = {(name, risk.fault): risk.chance for name, risk in plan.risks}
    for group, fault in sorted(
        own.keys() ^ said.keys() | {k for k in own.keys() & said.keys() if own[k] != said[k]}
    ):
        yield finding(
            piece,
            "risk-differs",
            group,
            f"{fault} stands otherwise in the piece's list than in the group's",
            "take the piece's list from its groups",
        )
