"""Learning from own work: converges, stays tame on little, and is worked into every figure."""

from math import exp, log
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar  # type: ignore[import-untyped]
from scipy.stats import norm  # type: ignore[import-untyped]

from plan_pieces import facts, one_surface
from refettle.domain.piece import Look
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.files.log_file import read_log
from refettle.knowledge.own import OwnWork
from refettle.learning.offsets import WIDTH, learn_offset, learn_offsets
from refettle.learning.rates import HOURS, LITRES, ODDEST, learn_rates
from refettle.planning.cost import step_amounts, work_kind
from refettle.planning.replay import foresee
from refettle.planning.start import start
from refettle.rules.card import shifted
from refettle.services.learn import learn, learnt_words, own_work

SAND = Step(verb="sand", method="hand-block", grit=180)
PAINT = Step(
    verb="paint", what="acrylic-paint", method="brush", coats=2, wait_between_h=4.0, wait_after_h=24.0
)


@pytest.mark.parametrize("true", [0.6, 0.8, 1.0, 1.3, 1.7])
def test_rates_converge(true: float) -> None:
    dice = Random(3)  # noqa: S311 - a simulation that must repeat
    seen = {"sand/flat": [true * exp(dice.gauss(0, 0.3)) for _ in range(400)]}
    rate = learn_rates(seen, HOURS).kinds["sand/flat"]
    assert rate.factor == pytest.approx(true, rel=0.06)
    assert rate.low < rate.factor < rate.high
    assert rate.high / rate.low < 1.15


@given(st.floats(1e-6, 1e6))
@settings(max_examples=60, deadline=None)
def test_one_odd_entry_stays_within_the_range_of_the_prior(ratio: float) -> None:
    rates = learn_rates({"sand/flat": [ratio]}, HOURS)
    prior = norm.ppf(0.9) * (HOURS.own**2 + HOURS.kind**2) ** 0.5
    assert exp(-prior) < rates.kinds["sand/flat"].factor < exp(prior)
    assert exp(-prior) < rates.others.factor < exp(prior)


def test_without_entries_the_handbook_stands() -> None:
    rates = learn_rates({}, HOURS)
    assert rates.kinds == {}
    assert rates.others.factor == pytest.approx(1.0)


def test_a_kind_without_entries_leans_on_the_others_and_less_than_they_do_themselves() -> None:
    rates = learn_rates({"sand/flat": [1.6] * 8, "scuff/flat": [1.6] * 8}, HOURS)
    assert 1.1 < rates.others.factor < rates.kinds["sand/flat"].factor < 1.6


def test_rates_are_the_posterior_of_the_two_level_normal_model() -> None:
    """Against numbers: the same posterior by brute force over a grid of the shared factor (scipy's normal density)."""
    seen = {"a": [1.4, 1.1, 1.8], "b": [0.9]}
    grid = [-1.5 + 0.002 * i for i in range(1501)]
    weights = []
    means = []
    for own in grid:
        weight, mean = norm.pdf(own, 0, LITRES.own), 0.0
        for kind, ratios in seen.items():
            n, y = len(ratios), sum(map(log, ratios)) / len(ratios)
            weight *= norm.pdf(y, own, (LITRES.kind**2 + LITRES.noise**2 / n) ** 0.5)
            if kind == "a":
                share = LITRES.kind**2 / (LITRES.kind**2 + LITRES.noise**2 / n)
                mean = share * y + (1 - share) * own
        weights.append(weight)
        means.append(mean)
    brute = sum(w * m for w, m in zip(weights, means, strict=True)) / sum(weights)
    assert log(learn_rates(seen, LITRES).kinds["a"].factor) == pytest.approx(brute, abs=1e-3)


def test_a_ratio_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="no share"):
        learn_rates({"sand/flat": [0.0]}, HOURS)


@pytest.mark.parametrize("true", [-1.0, -0.4, 0.0, 0.5, 1.2])
def test_offsets_converge(true: float) -> None:
    dice = Random(5)  # noqa: S311 - a simulation that must repeat
    chances = [dice.uniform(0.05, 0.7) for _ in range(3000)]
    entries = [(chance, float(dice.random() < shifted(chance, true))) for chance in chances]
    found = learn_offset(entries)
    assert found.offset == pytest.approx(true, abs=0.15)
    assert found.width < 0.1


@given(st.lists(st.tuples(st.floats(0.001, 0.999), st.sampled_from((0.0, 0.5, 1.0))), min_size=1, max_size=8))
@settings(max_examples=60, deadline=None)
def test_an_offset_is_the_top_of_its_posterior(entries: list[tuple[float, float]]) -> None:
    """Against scipy's bounded scalar minimiser on the same log-posterior."""

    def against(at: float) -> float:
        total = at * at / (2 * WIDTH**2)
        for chance, came in entries:
            p = shifted(min(0.995, max(0.005, chance)), at)
            total -= came * log(p) + (1 - came) * log(1 - p)
        return total

    best = minimize_scalar(against, bounds=(-4, 4), method="bounded", options={"xatol": 1e-7}).x
    assert learn_offset(entries).offset == pytest.approx(best, abs=1e-4)


@given(st.floats(0.001, 0.999), st.booleans())
@settings(max_examples=60, deadline=None)
def test_one_fault_moves_an_offset_by_less_than_its_prior_is_wide(chance: float, came: bool) -> None:
    assert abs(learn_offset([(chance, float(came))]).offset) < WIDTH


def test_the_order_of_entries_does_not_matter() -> None:
    entries = [(0.3, 1.0), (0.1, 0.0), (0.6, 1.0), (0.2, 0.0)]
    assert learn_offset(entries).offset == pytest.approx(learn_offset(entries[::-1]).offset)
    assert learn_offsets({"a": entries, "b": []}).keys() == {"a"}


def test_a_shift_keeps_order_and_what_is_impossible() -> None:
    assert shifted(0.0, 2.0) == 0.0
    assert shifted(1.0, -2.0) == 1.0
    assert shifted(0.3, 0.0) == 0.3
    assert shifted(0.2, 0.5) < shifted(0.4, 0.5)
    assert shifted(0.5, log(3)) == pytest.approx(0.75)


def test_own_hours_litres_drying_and_chances_are_in_every_figure() -> None:
    know = facts()
    own = OwnWork(
        hours={"sand/flat": 2.0, "strip:mild-remover": 1.5}, litres={"acrylic-paint": 1.25},
        drying={"acrylic-paint": 1.4}, coats={"acrylic-paint": 1.5}, offsets={"dirt-between-coats": 1.0},
    )  # fmt: skip
    mine = know.with_own(own)
    surface = one_surface("top", look=Look(kind="opaque"))
    shop = Workshop()

    def amounts(knowledge: object, step: Step) -> tuple[float, float]:
        made = step_amounts(knowledge, shop, surface, step, on_bare=False, recess_share=0.0)  # type: ignore[arg-type]
        return made.minutes.likely, made.litres.likely

    assert work_kind(SAND, "flat") == "sand/flat"
    assert amounts(mine, SAND)[0] == pytest.approx(2.0 * amounts(know, SAND)[0])
    strip = Step(verb="strip", what="mild-remover", coats=2)
    assert amounts(mine, strip)[0] == pytest.approx(1.5 * amounts(know, strip)[0])
    assert amounts(mine, PAINT)[1] == pytest.approx(1.25 * amounts(know, PAINT)[1])
    assert mine.film("acrylic-paint").recoat_from_h == pytest.approx(
        1.4 * know.film("acrylic-paint").recoat_from_h
    )
    left = 1.0 - know.film("acrylic-paint").hide
    assert (1.0 - mine.film("acrylic-paint").hide) ** 1.5 == pytest.approx(left)
    dirty = one_surface("top", look=Look(kind="opaque"), contamination=(("wax", 0.5),))
    from refettle.domain.piece import Piece  # noqa: PLC0415

    piece = Piece(name="Test", form="list", surfaces=(dirty,))
    chances = []
    for knowledge in (know, mine):
        risks = foresee(knowledge, start(knowledge, piece, dirty), (PAINT,), shop.air_likely)
        chances.append(next(risk.chance for risk in risks if risk.fault == "peeling"))
    assert chances[1] > chances[0]


JOURNAL = """\
journal: Mine
entries:
  - piece: A
    date: 2026-01-10
    did: {sand: P180, by: hand block}
    area: 1 m2
    took: 40 min
  - piece: B
    date: 2026-04-10
    did: {coat: acrylic furniture paint, coats: 3, by: brush, air: {temperature: 20 C, humidity: 50 %}}
    area: 2 m2
    took: 1 h
    used: 0.7 L
    dry after: 3 h
    coats foreseen: 2
  - piece: B
    date: 2026-05-10
    fault: peeling
    rule: [dirt-between-coats, no-key-on-sealed-ground]
    foreseen: 40 %
    seen: yes
"""


def test_a_journal_is_read_and_learnt_from() -> None:
    log, said = read_log(JOURNAL, "j.yaml", facts())
    assert said == ()
    assert log is not None
    learnt = learn(facts(), Workshop(), log)
    assert learnt.pieces == 2
    assert set(learnt.hours.kinds) == {"sand/flat", "brush-coat/flat"}
    assert learnt.hours.kinds["sand/flat"].factor > 1.1
    assert (
        set(learnt.litres.kinds) == set(learnt.drying.kinds) == set(learnt.coats.kinds) == {"acrylic-paint"}
    )
    assert learnt.coats.kinds["acrylic-paint"].factor > 1.0
    rules = learnt.offsets
    assert set(rules) == {"dirt-between-coats", "no-key-on-sealed-ground"}
    assert sum(found.seen for found in rules.values()) == pytest.approx(1.0)
    both = 1.0 - (1.0 - rules["dirt-between-coats"].foreseen) * (
        1.0 - rules["no-key-on-sealed-ground"].foreseen
    )
    assert both == pytest.approx(0.4)
    own = own_work(learnt)
    assert own.hours_of("sand/flat") == learnt.hours.kinds["sand/flat"].factor
    assert own.hours_of("scuff/flat") == learnt.hours.others.factor
    assert "3 entries from 2 own pieces" in learnt_words(learnt)


def test_a_journal_may_begin_anew_and_forget() -> None:
    log, _ = read_log("since: 2026-04-01\n" + JOURNAL, "j.yaml", facts())
    assert log is not None
    assert (len(log.work), len(log.faults), log.left_out) == (1, 1, 1)
    log, _ = read_log("forget: [sand/flat, dirt-between-coats]\n" + JOURNAL, "j.yaml", facts())
    assert log is not None
    learnt = learn(facts(), Workshop(), log)
    assert "sand/flat" not in learnt.hours.kinds
    assert set(learnt.offsets) == {"no-key-on-sealed-ground"}


@pytest.mark.parametrize(
    ("entry", "code"),
    [
        ("{piece: A}", "no-entry"),
        ("{piece: A, did: {sand: P180}, took: 40 min}", "no-area"),
        ("{piece: A, did: {sand: P180}, area: 1 m2, took: 0 min}", "unclear-amount"),
        ("{piece: A, did: {sand: P180}, area: 1 m2, date: May}", "unclear-date"),
        ("{piece: A, fault: peeling, rule: dirt-between-coats, foreseen: 40 %}", "half-entry"),
        ("{piece: A, rule: no-such-rule, foreseen: 40 %, seen: no}", "unknown-rule"),
        (
            "{piece: A, fault: craters, rule: dirt-between-coats, foreseen: 40 %, seen: no}",
            "rule-of-another-fault",
        ),
        ("{piece: A, rule: dirt-between-coats, foreseen: 100 %, seen: no}", "unclear-amount"),
        ("{piece: A, tock: 3}", "unknown-key"),
        ("just words", "wrong-form"),
    ],
)
def test_a_journal_that_cannot_be_read_says_what_where_and_what_to_do(entry: str, code: str) -> None:
    log, said = read_log(f"entries:\n  - {entry}\n", "j.yaml", facts())
    assert log is None
    assert code in {finding.code for finding in said}
    assert all(finding.where.line and finding.do for finding in said)


def test_the_oddest_ratio_counts_as_three() -> None:
    assert (
        learn_rates({"a": [50.0]}, HOURS).kinds["a"].factor
        == learn_rates({"a": [ODDEST]}, HOURS).kinds["a"].factor
    )
