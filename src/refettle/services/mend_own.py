"""The smallest change that makes the person's own sequence sound, found by search."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from refettle.domain.piece import Look
from refettle.domain.plan import Risk
from refettle.domain.step import Step, mark_words
from refettle.planning.cost import harm, hazard
from refettle.planning.offers import Menu, nice_hours, wait_until
from refettle.planning.reasons import look_had, risks_on
from refettle.planning.search import Bench
from refettle.services.agree import body_class
from refettle.services.step_words import step_words

SOUND_BELOW = 0.3
_MUCH = 0.12
_TRIED_SECOND = 8
_BIG = 20.0
_ANY = Look(kind="natural")


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """
    A change of a sequence.

    Attributes
    ----------
    words
        What to change, in one sentence without full stop.
    steps
        The whole sequence with the change.
    edits
        Number of places changed at the most [1].
    risks_before, risks_after
        Risks likeliest first.
    """

    words: str
    steps: tuple[Step, ...]
    edits: int
    risks_before: tuple[Risk, ...]
    risks_after: tuple[Risk, ...]


def change_sequence(bench: Bench, steps: tuple[Step, ...], body: str = "") -> Change | None:
    """
    Return the smallest change that makes a closed sequence sound on a bench, or None if it is sound.

    Parameters
    ----------
    bench
        The surface.
    steps
        The sequence, closing use included.
    body
        Class that must make the look afterwards, so that parts of one look agree; empty = any.

    Returns
    -------
    Change or None
        None too where nothing leads to that class.

    Notes
    -----
    A sequence that gives the look that is wanted gives it still after the change.
    """
    before = risks_on(bench, steps)
    if _worst(before) < SOUND_BELOW and (not body or body_class(steps) == body):
        return None
    wish = bench.surface.look or _ANY
    menu = Menu(know=bench.know, workshop=bench.workshop, surface=bench.surface, look=wish)
    had = bench.surface.look is not None and look_had(bench, menu, steps)

    def fits(changed: tuple[Step, ...]) -> bool:
        return (not body or body_class(changed) == body) and (not had or look_had(bench, menu, changed))

    tried, firsts = [], []
    for words, changed in edits(bench, steps):
        if had and not look_had(bench, menu, changed):
            continue
        after = risks_on(bench, changed)
        firsts.append((_total(bench, after) + _size(words), words, changed, after))
        if fits(changed):
            tried.append(firsts[-1])
    tried.sort(key=lambda row: (row[0], row[1]))
    firsts = sorted(tried or firsts, key=lambda row: (row[0], row[1]))
    sound = [row for row in tried if _worst(row[3]) < SOUND_BELOW]
    if sound and _size(sound[0][1]) < _BIG:
        _, words, changed, after = sound[0]
        return Change(words=words, steps=changed, edits=1, risks_before=before, risks_after=after)
    pairs = []
    for _, words, changed, _ in firsts[:_TRIED_SECOND]:
        for more, twice in edits(bench, changed):
            if not fits(twice):
                continue
            after = risks_on(bench, twice)
            total = _total(bench, after) + _size(words) + _size(more)
            pairs.append((_worst(after) >= SOUND_BELOW, total, f"{words}, and {more}", twice, after))
    if sound:
        total, words, changed, after = sound[0]
        pairs.append((False, total, words, changed, after))
    if not pairs:
        return None
    _, _, words, changed, after = min(pairs, key=lambda row: row[:3])
    return Change(words=words, steps=changed, edits=2, risks_before=before, risks_after=after)


_SIZES = (
    ("use a synthetic pad", 6.0),
    ("use ", 25.0),
    ("do not ", 12.0),
    ("leave out", 12.0),
    ("scuff and put", 9.0),
)


def _size(words: str) -> float:
    """Return how big a change is, beside the harm it leaves [money]: swapping a material is the biggest."""
    return next((size for start_, size in _SIZES if words.startswith(start_)), 6.0)


def score(bench: Bench, change: Change) -> tuple[bool, float]:
    """Return whether a change leaves something unsound, and its size with the harm it leaves [money]."""
    size = sum(_size(words) for words in change.words.split(", and "))
    return _worst(change.risks_after) >= SOUND_BELOW, _total(bench, change.risks_after) + size


def _worst(risks: tuple[Risk, ...]) -> float:
    """Return the highest chance [1]."""
    return max((r.chance for r in risks), default=0.0)


def _total(bench: Bench, risks: tuple[Risk, ...]) -> float:
    """Return the expected harm of risks, as the search adds it [money]."""
    return sum(
        hazard(r.chance) * harm(bench.know, bench.workshop, r.fault, bench.surface.area_m2)
        for r in risks if r.chance > _MUCH
    )  # fmt: skip


Edit = tuple[str, tuple[Step, ...]]


def edits(bench: Bench, steps: tuple[Step, ...]) -> Iterator[Edit]:
    """Yield single edits of a sequence, each in words: put in, wait, lay thinner, swap, leave out, other air."""
    coats = [i for i, s in enumerate(steps) if s.is_coat]
    yield from _put_in(bench, steps, coats)
    yield from _waits(bench, steps)
    yield from _coat_ways(bench, steps, coats)
    yield from _swaps(bench, steps, coats)
    yield from _airs(bench, steps)
    yield from _work_ways(bench, steps)


def _with(steps: tuple[Step, ...], at: int, *new: Step) -> tuple[Step, ...]:
    """Return a sequence with steps put in before a place."""
    return (*steps[:at], *new, *steps[at:])


def _put_in(bench: Bench, steps: tuple[Step, ...], coats: list[int]) -> Iterator[Edit]:
    """Yield cleaning, washing, scuffing, sealing, priming and grain raising put in."""
    know = bench.know
    if not coats:
        first = len(steps)
        for at, step in enumerate(steps):
            if step.verb in {"use", "expose"} or step.what == "cure":
                first = at
                break
        coats = [first]
    for at in coats[:3]:
        place = f"before you {step_words(know, steps[at]).lower()}" if at < len(steps) else "at the end"
        for agent in ("alkaline-degreaser", "mineral-spirits", "naphtha", "soap-water", "vinegar-water", "water-rinse",
                      "mould-wash", "acetone-wipe", "vacuum"):  # fmt: skip
            wash = Step(
                verb="clean", what=agent, wait_after_h=nice_hours(max(know.cleaner(agent).dry_h, 0.5))
            )
            yield f"wash with {know.name('cleaner', agent)} {place}", _with(steps, at, wash)
        scuff = Step(verb="scuff", grit=240, method="foam-pad", how=frozenset({"clean dust"}))
        yield f"scuff P240 {place}", _with(steps, at, scuff)
        even = Step(verb="sand", grit=180, method="hand-block", how=frozenset({"sequence", "clean dust"}))
        yield f"sand through the grits to P180 {place}", _with(steps, at, even)
        raise_ = Step(verb="sand", grit=220, method="hand-block", how=frozenset({"raise", "clean dust"}))
        yield f"raise and cut the grain {place}", _with(steps, at, raise_)
        yield (
            f"let it dry out for a week {place}",
            _with(steps, at, Step(verb="wait", what="dry out", wait_after_h=168.0)),
        )
        yield from _barriers(bench, steps, at, scuff, place)


def _barriers(bench: Bench, steps: tuple[Step, ...], at: int, scuff: Step, place: str) -> Iterator[Edit]:
    """Yield sealers and primers put in before a place, with and without a scuff."""
    know, air = bench.know, bench.workshop.air_likely
    for cls in ("shellac-dewaxed", "shellac-primer", "oil-primer", "bonding-primer", "vinyl-sealer"):
        facts = know.film(cls)
        dry = wait_until(facts, facts.recoat_from_h, air, 110.0)
        verb = "prime" if facts.opaque else "seal"
        method = facts.methods[0]
        for coats_n in (1, 2):
            lay = Step(
                verb=verb, what=cls, method=method, coats=coats_n, wait_between_h=dry, wait_after_h=dry
            )
            many = "two coats of " if coats_n == 2 else ""
            yield f"put {many}{facts.name} {place}", _with(steps, at, lay)
            yield (
                f"scuff and put {many}{facts.name} {place}",
                _with(steps, at, scuff, lay),
            )  # fmt: skip


def _waits(bench: Bench, steps: tuple[Step, ...]) -> Iterator[Edit]:
    """Yield longer waits."""
    know = bench.know
    for i, step in enumerate(steps):
        if step.what == "cure" or step.verb in {"use", "expose", "wait"}:
            continue
        later = steps[i + 1] if i + 1 < len(steps) else None
        exposed = later is not None and later.verb in {"use", "expose"}
        longest = know.film(step.what).cured_h if step.is_coat and exposed else 0.0
        after = nice_hours(max(24.0, 4.0 * step.wait_after_h, longest))
        if after > step.wait_after_h:
            yield (
                f"wait {after:g} h after {step_words(know, step).lower()}",
                _swap(steps, i, wait_after_h=after),
            )
        if step.is_coat and step.coats > 1:
            facts = know.film(step.what)
            between = nice_hours(max(3.0 * step.wait_between_h, 1.5 * facts.recoat_from_h))
            yield (
                f"wait {between:g} h between coats of {facts.name}",
                _swap(steps, i, wait_between_h=between, wait_after_h=max(after, step.wait_after_h)),
            )


def _swap(steps: tuple[Step, ...], at: int, **changes: object) -> tuple[Step, ...]:
    """Return a sequence with one step changed."""
    return (*steps[:at], replace(steps[at], **changes), *steps[at + 1 :])  # type: ignore[arg-type]


def _coat_ways(bench: Bench, steps: tuple[Step, ...], coats: list[int]) -> Iterator[Edit]:
    """Yield thinner, wiped, gentler and other ways to lay a coat."""
    know = bench.know
    for i in coats:
        step = steps[i]
        name = know.film(step.what).name
        if step.film == "heavy" or "not wiped" in step.how or know.film(step.what).wiped_off:
            how = (step.how - {"not wiped"}) | {"wiped"}
            if step.film != "normal" or how != step.how:
                yield f"lay {name} thin and wipe off the excess", _swap(steps, i, film="normal", how=how)
        if step.film != "thin":
            yield (
                f"lay {name} in thin coats",
                _swap(steps, i, film="thin", how=step.how - {"over-brushed", "shaken"}),
            )
        if step.coats > 1 and know.film(step.what).wiped_off:
            yield f"lay one coat of {name} only", _swap(steps, i, coats=1)
        if step.method in {"spray", "aerosol"}:
            yield f"brush {name} instead of spraying", _swap(steps, i, method="brush")


def _swaps(bench: Bench, steps: tuple[Step, ...], coats: list[int]) -> Iterator[Edit]:
    """Yield other classes with the same role."""
    know, air = bench.know, bench.workshop.air_likely
    menu = Menu(know=know, workshop=bench.workshop, surface=bench.surface, look=bench.surface.look or _ANY)
    for i in coats:
        step = steps[i]
        facts = know.film(step.what)
        role = facts.role[0]
        for cls in know.ids("film"):
            other = know.film(cls)
            if (
                cls == step.what
                or role not in other.role
                or "old" in other.role
                or other.opaque != facts.opaque
            ):
                continue
            method = menu.method_of(other) or other.methods[0]
            dry = wait_until(other, other.recoat_from_h, air, 110.0)
            new = replace(
                step, what=cls, method=method, wait_between_h=max(dry, step.wait_between_h),
                wait_after_h=max(dry, step.wait_after_h), film="normal",
            )  # fmt: skip
            whole = tuple(
                replace(new, verb=s.verb, coats=s.coats) if s.what == step.what and s.is_coat else s
                for s in steps
            )  # fmt: skip
            yield f"use {other.name} instead of {facts.name}", whole


def _airs(bench: Bench, steps: tuple[Step, ...]) -> Iterator[Edit]:
    """Yield the same work in warmer, drier air, or out of the sun and rain."""
    air = bench.workshop.air_likely
    calm = replace(air, temp_c=min(24.0, max(20.0, air.temp_c)), rh=min(0.5, air.rh), sun=False, known=True)
    yield "work and let it dry at 20 °C and 50 %, out of the sun", tuple(replace(s, air=calm) for s in steps)
    kept = tuple(s for s in steps if s.verb != "expose")
    if len(kept) < len(steps):
        yield "keep it indoors, out of sun, rain and frost", tuple(replace(s, air=calm) for s in kept)
    for i, step in enumerate(steps):
        if step.verb == "use" and step.how:
            met = ", ".join(mark_words(step.how))
            yield f"do not expose it to {met}", _swap(steps, i, how=frozenset(), what="ordinary use")


def _work_ways(bench: Bench, steps: tuple[Step, ...]) -> Iterator[Edit]:
    """Yield other abrasives, other removers and steps left out."""
    know = bench.know
    for i, step in enumerate(steps):
        if step.verb in {"sand", "scuff", "rub_out"}:
            if "steel wool" in step.how or step.method == "steel-wool":
                how = step.how - {"steel wool"}
                yield "use a synthetic pad, not steel wool", _swap(steps, i, method="synthetic-pad", how=how)
            for grit in (150, 180, 220, 320):
                if step.grit and grit != step.grit:
                    yield (
                        f"sand to P{grit} instead of P{step.grit}",
                        _swap(steps, i, grit=grit, how=step.how - {"across grain"}),
                    )
            yield f"do not {step.verb.replace('_', ' ')} here", (*steps[:i], *steps[i + 1 :])
        if step.verb in {"sand", "scuff"} and step.grit and "to bare" not in step.how:
            how = step.how | {"to bare", "sequence", "clean dust"}
            yield (
                f"sand to bare wood, through the grits to P{step.grit}",
                _swap(steps, i, verb="sand", how=how),
            )
        if step.verb == "strip":
            for agent in ("mild-remover", "strong-solvent", "alcohol"):
                if agent != step.what:
                    yield f"strip with {know.name('remover', agent)} instead", _swap(steps, i, what=agent)
            washes = know.remover(step.what).washed_by if know.has("remover", step.what) else ()
            rinse = tuple(Step(verb="rinse", what=w, wait_after_h=1.0) for w in washes[:2])
            dry = Step(verb="wait", what="dry out", wait_after_h=48.0)
            if rinse:
                yield (
                    "wash the remover off thoroughly and let the wood dry for two days",
                    _with(steps, i + 1, *rinse, dry),
                )
        if step.verb in {"clean", "bleach"}:
            yield f"leave out: {step_words(know, step).lower()}", (*steps[:i], *steps[i + 1 :])
