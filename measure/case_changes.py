"""The changes of steps and air that advice can ask for; the words for them: `case_twin_words`."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

import case_words as table
from case_twin_words import ROLE_OF_DROP, STANDS_IN
from refettle.domain.air import Air
from refettle.domain.step import Step

CLASS_VERB: Mapping[str, str] = dict(table.CLASSES.values()) | {"two-pack-polyurethane": "topcoat"}
SEALERS = frozenset({"shellac-waxed", "shellac-dewaxed", "shellac-unstated"})
SPRAYED = frozenset({"lacquer-toner", "precat-lacquer", "conversion-varnish", "two-pack-polyurethane"})
"""Classes that are sprayed, whatever the case does."""
COLOUR_VERBS = frozenset({"stain", "glaze", "tone"})
FILM_VERBS = frozenset({"paint", "topcoat", "wax"})
ABRADING = frozenset({"sand", "scuff"})
SMOOTH_GRITS = (120, 150, 180, 220)
OPEN_GRITS = (120, 150)


@dataclass(slots=True)
class Trial:
    """
    The sequence while it is changed.

    Attributes
    ----------
    steps
        Steps so far.
    air
        Air of the workshop.
    taken
        Things that advice has already decided.
    """

    steps: list[Step]
    air: Air
    taken: set[str] = field(default_factory=set)

    def first(self, test: Callable[[Step], bool]) -> int:
        """Return where the first step of a kind stands, the end if there is none."""
        return next((at for at, step in enumerate(self.steps) if test(step)), len(self.steps))

    def last(self, test: Callable[[Step], bool]) -> int:
        """Return where the last step of a kind stands, -1 if there is none."""
        return next((at for at in range(len(self.steps) - 1, -1, -1) if test(self.steps[at])), -1)

    def work_at(self) -> int:
        """Return where work begins: the first abrading or coating, else the first use or exposure."""
        at = self.first(_starts_work)
        return at if at < len(self.steps) else self.first(lambda step: step.verb in {"use", "expose"})

    def seal_at(self) -> int:
        """Return where a seal belongs: below the first film or toner, else below the first coat."""
        at = self.first(lambda step: step.verb in FILM_VERBS | {"tone"})
        return at if at < len(self.steps) else self.first(_is_coat)

    def edit(self, test: Callable[[Step], bool], change: Callable[[Step], Step]) -> None:
        """Change every step of a kind."""
        self.steps = [change(step) if test(step) else step for step in self.steps]


def _is_coat(step: Step) -> bool:
    """Return whether a step lays material."""
    return step.is_coat


def _is_film(step: Step) -> bool:
    """Return whether a step lays paint, clear or wax."""
    return step.verb in FILM_VERBS


def _starts_work(step: Step) -> bool:
    """Return whether a step abrades or coats."""
    return step.is_coat or step.verb in ABRADING


def _coat(cls: str, *, thin: bool = False) -> Step:
    """Return one coat of a class with the wait a careful worker gives it."""
    verb = "seal" if cls in SEALERS else CLASS_VERB[cls]
    method = "wipe" if verb in COLOUR_VERBS | {"condition", "fill_pores"} else "brush"
    method = "spray" if cls in SPRAYED else method
    wait_h = float(table.USUAL_WAIT_H.get(cls, 12.0))
    return Step(verb=verb, what=cls, method=method, film="thin" if thin else "normal", wait_after_h=wait_h)


def _clean(trial: Trial, cleaner: str) -> None:
    """Insert a cleaning before the first abrading or coating, or before the coats where dust is meant."""
    dust = cleaner in {"vacuum", "tack-cloth"}
    at = trial.last(lambda step: step.verb in ABRADING | {"rub_out"}) + 1 if dust else trial.work_at()
    how = frozenset({"thorough"})
    trial.steps.insert(at, Step(verb="clean", what=cleaner, how=how, wait_after_h=0.2 if dust else 12.0))


def _rinse(trial: Trial, cleaner: str) -> None:
    """Insert two thorough washes after the stripping, bleaching or first rinse."""
    wet = trial.last(lambda step: step.verb in {"strip", "rinse", "neutralise", "bleach"})
    remover = next((step.what for step in trial.steps if step.verb == "strip"), "")
    if cleaner == "strip":
        cleaner = "water-rinse" if remover in {"mild-remover", "caustic"} else "mineral-spirits"
    verb = "neutralise" if cleaner == "vinegar-water" else "rinse"
    wash = Step(verb=verb, what=cleaner, how=frozenset({"thorough"}), wait_after_h=24.0)
    trial.steps[wet + 1 : wet + 1] = [replace(wash, wait_after_h=0.5), wash]


def _scuff(trial: Trial, _: str) -> None:
    """Insert a scuff before the first coat."""
    trial.steps.insert(trial.first(_is_coat), Step(verb="scuff", method="foam-pad", grit=220))


def _key(trial: Trial, _: str) -> None:
    """Scuff between all coats that leave a film."""
    steps: list[Step] = []
    for step in trial.steps:
        film = step.is_coat and step.verb not in COLOUR_VERBS | {"condition"}
        between = film and any(other.is_coat for other in steps) and steps[-1].verb not in ABRADING
        if between:
            steps.append(Step(verb="scuff", method="foam-pad", grit=320))
        if film and step.coats > 1:
            one = replace(step, coats=1, wait_after_h=step.wait_between_h)
            key = Step(verb="scuff", method="foam-pad", grit=320)
            steps += [part for _ in range(step.coats - 1) for part in (one, key)]
            steps.append(replace(step, coats=1))
        else:
            steps.append(step)
    trial.steps = steps


def _bare(trial: Trial, _: str) -> None:
    """Strip once more, wash and sand to bare wood before the first coat."""
    at = trial.work_at()
    trial.steps[at:at] = [
        Step(verb="strip", what="strong-solvent", how=frozenset({"thorough"}), wait_after_h=1.0),
        Step(verb="rinse", what="mineral-spirits", how=frozenset({"thorough"}), wait_after_h=24.0),
        Step(verb="sand", method="hand-block", grit=150, how=frozenset({"to bare"})),
    ]


def _grain(trial: Trial, _: str) -> None:
    """Raise the grain and cut it before the first coat."""
    at = trial.first(_is_coat)
    trial.steps[at:at] = [
        Step(verb="raise_grain", wait_after_h=12.0),
        Step(verb="sand", method="hand-block", grit=220),
    ]


def _grits(grits: tuple[int, ...]) -> Callable[[Trial, str], None]:
    """Return the change that sands through other grits before the first coat."""

    def change(trial: Trial, _: str) -> None:
        at = trial.first(_is_coat)
        head = [step for step in trial.steps[:at] if step.verb != "sand" or "to bare" in step.how]
        sands = [Step(verb="sand", method="hand-block", grit=grit) for grit in grits]
        trial.steps = [*head, *sands, *trial.steps[at:]]

    return change


def _along(trial: Trial, _: str) -> None:
    """Sand with the grain by hand."""
    trial.edit(
        lambda step: step.verb in ABRADING | {"rub_out"},
        lambda step: replace(step, how=step.how - {"across grain", "machine"}, method="hand-block"),
    )


def _wash_coat(trial: Trial, cls: str) -> None:
    """Insert a thin coat before the first coat."""
    trial.steps.insert(trial.first(_is_coat), _coat(cls, thin=True))


def _seal(trial: Trial, cls: str) -> None:
    """Insert a seal before the first film, unless that seal is there."""
    if any(step.what == cls for step in trial.steps):
        return
    if "seal" not in trial.taken:
        trial.steps.insert(trial.seal_at(), _coat(cls))
    trial.taken.add("seal")


def _tie(trial: Trial, cls: str) -> None:
    """Insert a tie coat between colour and clear."""
    if not any(step.what == cls for step in trial.steps):
        trial.steps.insert(trial.first(_is_film), _coat(cls))


def _put(trial: Trial, cls: str) -> None:
    """Swap a class in for the coats of its role, or insert it where that role belongs."""
    if cls == "clear-over":
        trial.steps.insert(trial.last(_is_coat) + 1, replace(_coat("waterborne-acrylic"), wait_after_h=336.0))
        return
    verb = CLASS_VERB[cls]
    role = "colour" if verb in COLOUR_VERBS else "clear" if verb in {"topcoat", "wax"} else verb
    if role in trial.taken:
        return
    trial.taken.add(role)
    same = COLOUR_VERBS if role == "colour" else {"topcoat", "wax"} if role == "clear" else {verb}
    if any(step.verb in same for step in trial.steps):
        trial.edit(lambda step: step.verb in same, lambda step: _swapped(step, cls))
    elif role in {"clear", "paint"}:
        trial.steps.insert(
            trial.last(_is_coat) + 1, replace(_coat(cls), wait_after_h=table.WAIT_BEFORE_USE_H)
        )
    elif role in {"prime", "seal"}:
        trial.steps.insert(trial.seal_at(), _coat(cls))
    elif role == "colour":
        trial.steps.insert(trial.first(_is_film), _coat(cls))
    else:
        trial.steps.insert(trial.first(_is_coat), _coat(cls))


def _swapped(step: Step, cls: str) -> Step:
    """Return a coat in another class, with the waits that class asks for."""
    usual_h = float(table.USUAL_WAIT_H.get(cls, 12.0))
    return replace(
        step,
        verb=CLASS_VERB[cls],
        what=cls,
        method="spray" if cls in SPRAYED else step.method,
        wait_between_h=max(step.wait_between_h, usual_h) if step.coats > 1 else step.wait_between_h,
        wait_after_h=max(step.wait_after_h, usual_h),
    )


def _thin(trial: Trial, _: str) -> None:
    """Lay all coats thin."""
    trial.edit(_is_coat, lambda step: replace(step, film="thin", how=step.how - {"not wiped"}))


def _wiped(trial: Trial, _: str) -> None:
    """Wipe off every coat that is meant to be wiped."""
    trial.edit(
        lambda step: (
            step.verb in COLOUR_VERBS | {"condition", "fill_pores", "wax"}
            or step.what in {"drying-oil", "oil-varnish-blend", "hardwax-oil"}
            or "not wiped" in step.how
        ),
        lambda step: replace(
            step,
            film="normal" if step.film == "heavy" else step.film,
            how=(step.how - {"not wiped"}) | {"wiped"},
        ),
    )


def _marked(added: str, removed: str) -> Callable[[Trial, str], None]:
    """Return the change that puts one mark on all coats and takes another off."""

    def change(trial: Trial, _: str) -> None:
        trial.edit(_is_coat, lambda step: replace(step, how=(step.how - {removed}) | ({added} - {""})))

    return change


def _coats(more: int) -> Callable[[Trial, str], None]:
    """Return the change that lays more, fewer or (0) single coats."""

    def change(trial: Trial, _: str) -> None:
        trial.edit(_is_coat, lambda step: replace(step, coats=max(1, step.coats + more) if more else 1))

    return change


def _between(trial: Trial, length: str) -> None:
    """Change the waits between and after coats; the last wait is left to `_last`."""
    if "between" in trial.taken:
        return
    trial.taken.add("between")
    last = trial.last(_is_coat)
    for at, step in enumerate(trial.steps):
        if step.is_coat:
            between = _changed_wait(step.wait_between_h, step.what, length)
            after = step.wait_after_h if at == last else _changed_wait(step.wait_after_h, step.what, length)
            if at == last and length != "window":
                after = max(after, between)
            trial.steps[at] = replace(step, wait_between_h=between, wait_after_h=after)


def _changed_wait(wait_h: float, cls: str, length: str) -> float:
    """Return a wait as advised [h]."""
    usual_h = float(table.USUAL_WAIT_H.get(cls, 12.0))
    match length:
        case "usual":
            return max(wait_h, usual_h * 1.5)
        case "window":
            return min(wait_h, usual_h)
        case "days":
            return max(wait_h, 96.0)
        case "cure":
            return max(wait_h, 504.0)
        case hours:
            return max(wait_h, float(hours))


def _last(trial: Trial, length: str) -> None:
    """Let the last coat harden before use."""
    hours = 720.0 if length == "cure" else float(length)
    at = trial.last(_is_coat)
    if at >= 0:
        step = trial.steps[at]
        trial.steps[at] = replace(step, wait_after_h=max(step.wait_after_h, hours))


def _prep(trial: Trial, length: str) -> None:
    """Let the wood dry before the first abrading or coating."""
    hours = 336.0 if length == "dry" else float(length)
    trial.steps = [
        step for step in trial.steps if not (step.verb == "expose" and step.how == frozenset({"damp"}))
    ]
    trial.steps.insert(trial.work_at(), Step(verb="wait", wait_after_h=hours))


def _air(trial: Trial, kind: str) -> None:
    """Change the air the coats dry in."""
    match kind:
        case "dry":
            trial.air = replace(trial.air, rh=min(trial.air.rh, 0.50), known=True)
            _drop_marks(trial, {"damp", "wet-storm"}, {"expose"})
        case "warm":
            trial.air = replace(trial.air, temp_c=max(trial.air.temp_c, 21.0), known=True)
        case "cool":
            trial.air = replace(trial.air, temp_c=min(trial.air.temp_c, 20.0), known=True)
        case _:
            trial.air = replace(trial.air, temp_c=min(trial.air.temp_c, 22.0), sun=False, known=True)
            _drop_marks(trial, {"sun", "heat"}, {"expose"})
            _drop_marks(trial, {"sun"}, {"use"})
    calm = trial.air
    trial.edit(_is_coat, lambda step: replace(step, air=None if step.air is None else calm))


def _vent(trial: Trial, _: str) -> None:
    """Dry the piece out and leave air round it."""
    trial.steps.insert(
        trial.first(lambda step: step.is_coat or step.verb == "use"), Step(verb="air", wait_after_h=336.0)
    )
    trial.air = replace(trial.air, rh=min(trial.air.rh, 0.50), known=True)
    _drop_marks(trial, {"wall", "shut", "damp"}, {"use", "expose"})


def _drop_marks(trial: Trial, marks: set[str], verbs: set[str]) -> None:
    """Take marks off events; an exposure that has none left falls away."""
    steps = []
    for step in trial.steps:
        if step.verb in verbs and step.how & marks:
            left = step.how - marks
            if not left and step.verb == "expose":
                continue
            steps.append(replace(step, how=left, what=min(left, default=""), air=None))
        else:
            steps.append(step)
    trial.steps = steps


def _drop(trial: Trial, what: str) -> None:
    """Leave something out."""
    match what:
        case name if name in ROLE_OF_DROP:
            _leave_out(trial, name)
        case "steel-wool":
            trial.edit(
                lambda step: "steel wool" in step.how,
                lambda step: replace(
                    step, method="synthetic-pad", how=(step.how - {"steel wool"}) | {"synthetic"}
                ),
            )
        case "water":
            wet = {"water-rinse", "damp-cloth", "soap-water"}
            trial.steps = [
                step for step in trial.steps if not (step.verb in {"clean", "rinse"} and step.what in wet)
            ]
            trial.edit(lambda step: step.verb in ABRADING, lambda step: replace(step, how=step.how - {"wet"}))
        case "caustic":
            gentle = {"caustic": "mild-remover"}
            trial.edit(lambda step: step.what in gentle, lambda step: replace(step, what=gentle[step.what]))
            trial.steps = [step for step in trial.steps if step.what != "ammonia-water"]
        case "sand" | "strip" | "bleach":
            trial.steps = [step for step in trial.steps if step.verb != what]
        case "heavy":
            _thin(trial, "")
        case "not-wiped":
            _wiped(trial, "")
        case mark:
            _drop_marks(trial, {mark}, {"use", "expose"})
            trial.edit(_is_coat, lambda step: replace(step, how=step.how - {mark, mark.replace("-", " ")}))


def _leave_out(trial: Trial, name: str) -> None:
    """Leave a class out; what stands in for it takes its place unless the advice named something."""
    classes = ROLE_OF_DROP[name]
    instead = STANDS_IN[name]
    decided = trial.taken & {"colour", "clear", "paint", "prime", "seal"}
    if decided or not instead:
        trial.steps = [step for step in trial.steps if step.what not in classes]
    else:
        trial.edit(lambda step: step.what in classes, lambda step: _swapped(step, instead))


def _method(trial: Trial, method: str) -> None:
    """Lay the coats another way."""
    trial.edit(_is_coat, lambda step: replace(step, method=method))


CHANGES: Mapping[str, Callable[[Trial, str], None]] = {
    "clean": _clean,
    "rinse": _rinse,
    "scuff": _scuff,
    "key": _key,
    "bare": _bare,
    "grain": _grain,
    "finer": _grits(SMOOTH_GRITS),
    "coarser": _grits(OPEN_GRITS),
    "grain-wise": _along,
    "wash-coat": _wash_coat,
    "seal": _seal,
    "tie": _tie,
    "put": _put,
    "thin": _thin,
    "wiped": _wiped,
    "slow": _marked("slow thinner", "fast thinner"),
    "thinned": _marked("thinned", ""),
    "stirred": _marked("", "shaken"),
    "both-sides": _marked("", "one side"),
    "fewer": _coats(-1),
    "more": _coats(1),
    "one": _coats(0),
    "between": _between,
    "last": _last,
    "prep": _prep,
    "air": _air,
    "vent": _vent,
    "drop": _drop,
    "method": _method,
}
"""Change → function; every tag of the two tables begins with one of these."""
