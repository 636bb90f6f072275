"""Why: the reasons of a plan, down to the fact rows; and why not something else."""

from dataclasses import dataclass, replace

from refettle.domain.piece import LOOKS, Look, Piece
from refettle.domain.plan import Risk, Route
from refettle.domain.step import VERBS
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow
from refettle.planning.clash import explain_clash, look_words
from refettle.planning.mended import as_mended
from refettle.planning.offers import Menu
from refettle.planning.reasons import make_route, odds
from refettle.services.cases import Case, relooked_case
from refettle.services.grouping import group_surfaces
from refettle.services.pools import weighed
from refettle.services.settled import settle
from refettle.services.step_words import step_words
from refettle.services.verdicts import look_verdict, needed_words, wanted_words, without

_SHOWN = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyLine:
    """
    One line of an explanation.

    Attributes
    ----------
    text
        The line.
    because
        Ids of fact rows, rules (``rule:ID``) and formulas behind it.
    """

    text: str
    because: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """
    An answer to "why".

    Attributes
    ----------
    title
        What is explained.
    lines
        Lines, most decisive first.
    rows
        Fact rows named in the lines.
    found
        False where what was asked about is not known.
    """

    title: str
    lines: tuple[WhyLine, ...]
    rows: tuple[FactRow, ...]
    found: bool = True


def explain(
    piece: Piece, workshop: Workshop, know: Knowledge, surface: str, not_this: str | None = None
) -> Explanation:
    """
    Return the reasons of the plan of one surface.

    Parameters
    ----------
    piece, workshop, know
        Piece, place, facts.
    surface
        Name of a surface of the piece.
    not_this
        A step, material or look in words: why it is not in the plan. None = why the plan is as it is.

    Returns
    -------
    Explanation
        Each line with the ids of what it stands on, and those rows.

    Raises
    ------
    KeyError
        If the piece has no such surface; the command looks first.
    """
    target = next((s for s in piece.surfaces if s.name == surface), None)
    if target is None:
        raise KeyError(surface)
    piece = as_mended(know, piece)
    groups = group_surfaces(piece.surfaces)
    settled = settle(know, piece, workshop, groups).tries
    case, found = next((case, found) for case, found in settled if surface in case.group.members)
    route = make_route(case.bench, case.menu, found, "balanced") if found.steps else None
    if not_this:
        made = _why_not(case, know, route, not_this)
    elif route is None:
        made = _why_impossible(case)
    else:
        made = _why(case, know, route)
    title, lines, known = made
    ids = dict.fromkeys(i for line in lines for i in line.because)
    rows = _rows_of(know, tuple(ids))
    return Explanation(title=title, lines=tuple(lines), rows=rows, found=known)


def _rows_of(know: Knowledge, ids: tuple[str, ...]) -> tuple[FactRow, ...]:
    """Return the fact rows with these ids, in their order."""
    wanted = set(ids)
    found = {
        row.id: row
        for by_prop in know.rows_by_subject.values()
        for rows in by_prop.values()
        for row in rows
        if row.id in wanted
    }
    return tuple(found[i] for i in ids if i in found)


Made = tuple[str, list[WhyLine], bool]


def _why_impossible(case: Case) -> Made:
    """Explain that no way leads to the look."""
    clash = explain_clash(case.bench, case.menu)
    lines = [WhyLine(text=f"these cannot be had together: {' + '.join(clash.clash)}", because=clash.because)]
    lines += [WhyLine(text=f"can be had instead: {words}") for _, words in clash.nearest]
    return f"{case.group.name}: {look_words(case.menu.look)} cannot be had", lines, True


def _why(case: Case, know: Knowledge, route: Route) -> Made:
    """Explain a route step by step, then the risks that stay."""
    lines = [
        WhyLine(text=f"{i}. {step_words(know, c.step)}: {c.reason}", because=c.because)
        for i, c in enumerate(route.steps, start=1)
    ]
    lines += [_risk_line(know, risk) for risk in route.risks if risk.chance >= _SHOWN]
    return f"{case.group.name}: {look_words(case.menu.look)}", lines, True


def _risk_line(know: Knowledge, risk: Risk) -> WhyLine:
    """Return a risk as a line with its rules and rows."""
    rules = tuple(f"rule:{r}" for r in risk.rules)
    text = f"{know.fault(risk.fault).name} stays {odds(risk.chance)}: {risk.why}"
    return WhyLine(text=text, because=(*rules, *risk.because))


_STAGE_OF_ROLE = {
    "topcoat": "body", "paint": "body", "stain": "colour", "tone": "colour", "condition": "colour",
    "prime": "under", "seal": "under", "wax": "protect",
}  # fmt: skip
_WORDS = {"stripping": "strip", "sanding": "sand", "scuffing": "scuff", "staining": "stain", "painting": "paint",
          "bleaching": "bleach", "washing": "clean", "cleaning": "clean", "sealing": "seal", "priming": "prime",
          "waxing": "wax"}  # fmt: skip

_DOING = {verb: doing for doing, verb in _WORDS.items() if doing != "cleaning"}


def _why_not(case: Case, know: Knowledge, route: Route | None, words: str) -> Made:
    """Explain why something else is not in the plan."""
    plain = words.strip().lower()
    for kind in LOOKS:
        if plain == kind or plain.split(" ")[0] == kind:
            return _why_not_look(case, know, route, Look(kind=kind))
    verb = _WORDS.get(plain, plain.replace(" ", "_"))
    cls = know.find("film", plain)
    remover, cleaner = know.find("remover", plain), know.find("cleaner", plain)
    if verb in VERBS and not cls:
        stage = {
            "strip": "remove",
            "scrape": "remove",
            "sand": "smooth",
            "scuff": "smooth",
            "clean": "clean",
        }.get(verb, _STAGE_OF_ROLE.get(verb, "mend"))
        return _why_not_step(case, know, route, verb, stage, _DOING.get(verb, verb.replace("_", " ")))
    if cls:
        roles = know.film(cls).role
        opaque = case.menu.look.base == "opaque"
        stages = [_STAGE_OF_ROLE[r] for r in roles if r in _STAGE_OF_ROLE]
        if opaque and "topcoat" in roles and not know.film(cls).opaque:
            stages = ["protect", *stages]
        stage = stages[0] if stages else "body"
        return _why_not_step(case, know, route, cls, stage, know.film(cls).name)
    if remover:
        return _why_not_step(case, know, route, remover, "remove", know.name("remover", remover))
    if cleaner:
        return _why_not_step(case, know, route, cleaner, "clean", know.name("cleaner", cleaner))
    near = (*know.near("film", plain), *know.near("remover", plain), *LOOKS)
    text = f'"{words}" is no step, material or look known here; known are for example: {", ".join(near[:6])}'
    return f"why not {words}", [WhyLine(text=text)], False


def _why_not_look(case: Case, know: Knowledge, route: Route | None, look: Look) -> Made:
    """Explain why a look was not chosen, or what it would take."""
    again = relooked_case(case, look)
    other = weighed(again, again.search())
    title = f"{case.group.name}: why not {look_words(look)}"
    if not other.steps:
        clash = explain_clash(again.bench, again.menu)
        line = WhyLine(text=f"it cannot be had: {' + '.join(clash.clash)}", because=clash.because)
        return title, [line], True
    made = make_route(again.bench, again.menu, other, "asked", with_reasons=False)
    first = WhyLine(text=look_verdict(case, route, made, look))
    return title, [first, _way_line(know, made), *_compare(know, case, route, made)], True


def _why_not_step(case: Case, know: Knowledge, route: Route | None, what: str, stage: str, name: str) -> Made:
    """Explain what would happen if something were used."""
    title = f"{case.group.name}: why not {name}"
    if route is not None and any(what in {c.step.what, c.step.verb} for c in route.steps):
        other_way = without(case, what)
        lines = [WhyLine(text=needed_words(case, route, other_way, name))]
        if other_way is not None:
            lines += [_way_line(know, other_way), *_compare(know, case, route, other_way)]
        return title, lines, True
    menu = replace(case.menu, wanted=frozenset({what}), wanted_stage=stage)
    other = weighed(case, case.search(menu=menu))
    uses = any(what in {s.what, s.verb} for s in other.steps)
    if not other.steps or not uses:
        return (
            title,
            [WhyLine(text=text, because=ids) for text, ids in _barred(case, know, menu, what, name)],
            True,
        )
    made = make_route(case.bench, menu, other, "asked", with_reasons=False)
    first = WhyLine(text=wanted_words(case, route, made, name))
    return title, [first, _way_line(know, made), *_compare(know, case, route, made)], True


def _barred_film(know: Knowledge, menu: Menu, what: str) -> list[tuple[str, tuple[str, ...]]]:
    """Return why a class is not offered."""
    name = know.film(what).name
    reasons: list[tuple[str, tuple[str, ...]]] = []
    facts = know.film(what)
    subject = f"film:{what}"
    if menu.method_of(facts) is None:
        ways = ", ".join(facts.methods)
        reasons.append(
            (f"{name} goes on by {ways}; this workshop has no such way", know.because(subject, "methods"))
        )
    if menu.look.sheen and menu.look.sheen not in facts.sheens:
        reasons.append((f"{name} is not to be had {menu.look.sheen}", know.because(subject, "sheens")))
    if facts.trade_only and not any(p.cls == what for p in menu.workshop.products):
        text = f"{name} is for trained hands: offered only where it stands on the shelf"
        reasons.append((text, know.because(subject, "trade_only")))
    if menu.unfit_air(facts):
        text = (
            f"{name} wants {facts.min_c:g}–{facts.max_c:g} °C and at most {facts.rh_max:.0%} humidity; "
            f"here it is {menu.air.temp_c:g} °C and {menu.air.rh:.0%}"
        )
        because = (i for prop in ("min_c", "max_c", "rh_max") for i in know.because(subject, prop))
        reasons.append((text, tuple(dict.fromkeys(because))))
    return reasons


def _barred(
    case: Case, know: Knowledge, menu: Menu, what: str, name: str
) -> list[tuple[str, tuple[str, ...]]]:
    """Return why something is not even offered."""
    reasons: list[tuple[str, tuple[str, ...]]] = []
    if know.has("film", what):
        reasons.extend(_barred_film(know, menu, what))
    if know.has("remover", what):
        facts_r = know.remover(what)
        if facts_r.restricted:
            reasons.append(
                (
                    f"{name}: sale and use are restricted in places",
                    know.because(f"remover:{what}", "restricted"),
                )
            )
        if what == "caustic":
            reasons.append(("caustic darkens tannin woods and opens veneer and glue joints",
                            know.because("remover:caustic", "darkens_tannin")))  # fmt: skip
        if menu.keep_film:
            reasons.append(("the other parts of this look keep their old film, and so does this one", ()))
        if menu.constraints & {"no stripping", "no bare wood"}:
            reasons.append((f"you asked for {', '.join(sorted(menu.constraints))}", ()))
    if not reasons:
        look = look_words(menu.look)
        reasons.append((f"it has no place on the way to {look} from {case.bench.begin.worlds[0].label}", ()))
    return reasons


def _way_line(know: Knowledge, route: Route) -> WhyLine:
    """Return a route in one line."""
    text = "; ".join(step_words(know, c.step) for c in route.steps if c.step.verb != "wait")
    return WhyLine(text=f"it would be done like this: {text}")


def _compare(know: Knowledge, case: Case, now: Route | None, other: Route) -> list[WhyLine]:
    """Return what another route costs and risks beside the plan."""
    lines: list[WhyLine] = []
    if now is None:
        return lines
    currency = case.bench.workshop.currency
    hours = (other.minutes.likely - now.minutes.likely) / 60.0
    money = other.money.likely - now.money.likely
    days = (other.elapsed_h.likely - now.elapsed_h.likely) / 24.0
    lines.append(
        WhyLine(
            text=f"against the plan: {_more(hours, 'h of work')}, {_more(money, currency)}, {_more(days, 'days')}",
            because=tuple(dict.fromkeys(i for c in other.steps for i in c.because)),
        )
    )
    if other.value_lost > now.value_lost:
        lost = other.value_lost - now.value_lost
        lines.append(WhyLine(text=f"it takes about {lost:.0f} {currency} of original worth with it"))
    was = {r.fault: r.chance for r in now.risks}
    for risk in other.risks:
        before = was.get(risk.fault, 0.0)
        if risk.chance > before + 0.05 and odds(risk.chance) != odds(before):
            name = know.fault(risk.fault).name
            rules = tuple(f"rule:{r}" for r in risk.rules)
            lines.append(
                WhyLine(
                    text=f"{name}: {odds(risk.chance)} instead of {odds(before)} – {risk.why}",
                    because=(*rules, *risk.because),
                )
            )
    fewer = [
        r for r in now.risks if r.chance > {o.fault: o.chance for o in other.risks}.get(r.fault, 0.0) + 0.05
    ]
    if fewer:
        names = ", ".join(know.fault(r.fault).name for r in fewer)
        lines.append(WhyLine(text=f"in its favour, less of: {names}"))
    return lines


def _more(amount: float, unit: str) -> str:
    """Return a difference in words."""
    if abs(amount) < 0.05:
        return f"{unit} the same"
    return f"{abs(amount):.1f} {unit} {'more' if amount > 0 else 'less'}"
