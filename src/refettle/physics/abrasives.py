"""Abrasives: grain size of P grades, sanding sequences, and the grit that the next coat wants."""

from itertools import pairwise

from refettle.physics.limits import need_choice, need_range

GRAIN_UM: dict[int, float] = {
    40: 425.0, 50: 336.0, 60: 269.0, 80: 201.0, 100: 162.0, 120: 125.0, 150: 100.0, 180: 82.0,
    220: 68.0, 240: 58.5, 280: 52.2, 320: 46.2, 360: 40.5, 400: 35.0, 500: 30.2, 600: 25.8,
    800: 21.8, 1000: 18.3, 1200: 15.3, 1500: 12.6, 2000: 10.3,
}  # fmt: skip
"""Mean grain [µm] by P grade; ISO 6344. To P120 as read in trade charts (P100 and finer from memory)."""

_STOCK_UM = {  # the most that a grit should take; what must go to erase its own scratch
    60: (890.0, 380.0),
    80: (610.0, 200.0),
    100: (430.0, 150.0),
    120: (250.0, 100.0),
    150: (150.0, 50.0),
    180: (100.0, 25.0),
    220: (50.0, 13.0),
}
_COARSEST = 60
_LONGEST_STRIDE = 1.5
_BARE_GRITS = {  # usual, finest
    "pigment stain": (150, 180),
    "dye": (180, 180),
    "paint": (150, 180),
    "clear film": (180, 220),
    "oil": (180, 240),
}
_BETWEEN_GRITS = {"oxidative": 240, "evaporative": 400}
NEXT_COATS = tuple(_BARE_GRITS)
"""What may come next on bare wood."""


def grain_um(grit_p: int) -> float:
    """
    Return the mean grain of a P grade.

    Parameters
    ----------
    grit_p
        FEPA P number [1], a grade of ISO 6344 from P40 to P2000.

    Returns
    -------
    float
        Mean grain [µm].

    Raises
    ------
    OutOfRange
        If there is no such P grade.

    Notes
    -----
    Source: ISO 6344 as read in trade charts to P120; P100 and everything finer from memory, within
    rounding of a chart. CAMI grades without the P are finer above 220 for the same number.

    Examples
    --------
    >>> grain_um(120)
    125.0
    """
    need_choice("grit_p", grit_p, GRAIN_UM)
    return GRAIN_UM[grit_p]


def can_follow(grit_p: int, next_p: int) -> bool:
    """
    Return whether a grit can take out the scratches of the one before it.

    Parameters
    ----------
    grit_p
        FEPA P number before [1], P60 or finer.
    next_p
        FEPA P number after [1], P60 or finer.

    Returns
    -------
    bool
        True if `next_p` is finer, at most 1.5 times the number, and may take as much stock as it
        needs to erase the scratch of `grit_p`.

    Raises
    ------
    OutOfRange
        If a grit is no P grade, or coarser than P60, for which no figures were found.

    Notes
    -----
    Source: stock figures from a trade text on wide-belt sanding (upper bounds for hand and
    random-orbit work), "Sanding" table; the 1.5 is common practice and skips at most one usual grit.

    Examples
    --------
    >>> can_follow(100, 150), can_follow(80, 180)
    (True, False)
    """
    need_range("grit_p", grit_p, _COARSEST, max(GRAIN_UM), "P", "no stock figures for coarser grits")
    need_range("next_p", next_p, _COARSEST, max(GRAIN_UM), "P", "no stock figures for coarser grits")
    need_choice("grit_p", grit_p, GRAIN_UM)
    need_choice("next_p", next_p, GRAIN_UM)
    return (
        grit_p < next_p
        and next_p / grit_p <= _LONGEST_STRIDE
        and _stock_um(next_p)[0] >= _stock_um(grit_p)[1]
    )


def is_valid_sequence(grits_p: tuple[int, ...]) -> bool:
    """
    Return whether each grit of a sequence can take out the scratches of the one before.

    Parameters
    ----------
    grits_p
        FEPA P numbers in order [1], P60 or finer, at least one.

    Returns
    -------
    bool
        True if every grit can follow the one before it.

    Raises
    ------
    OutOfRange
        If the sequence is empty or a grit is no P grade from P60 up.

    Notes
    -----
    Source: as `can_follow`.

    Examples
    --------
    >>> is_valid_sequence((100, 150, 180)), is_valid_sequence((60, 120, 220))
    (True, False)
    """
    need_range("len(grits_p)", len(grits_p), 1, 20, "grits", "an empty sequence")
    return all(can_follow(before, after) for before, after in pairwise(grits_p))


def removed_um(grits_p: tuple[int, ...], levelling_um: float = 50.0) -> float:
    """
    Return the wood that a sanding sequence takes at least, if it is to leave no scratch.

    Parameters
    ----------
    grits_p
        FEPA P numbers in order [1], P60 or finer, at least one.
    levelling_um
        What the first grit takes to level the surface [µm], 0–2000.

    Returns
    -------
    float
        Wood removed [µm].

    Raises
    ------
    OutOfRange
        If the sequence is empty, a grit is no P grade from P60 up, or millimetres slipped in.

    Notes
    -----
    Levelling plus the least stock that erases each grit's scratch but the last. From P220 on the
    figure of P220 stands in as an upper bound. Source: "Sanding" table (trade text on wide-belt
    sanding, converted from thousandths of an inch); an upper bound for hand work.

    Examples
    --------
    >>> removed_um((100, 150, 180), 50.0)
    250.0
    """
    need_range("levelling_um", levelling_um, 0.0, 2000.0, "µm", "millimetres taken for µm")
    need_range("len(grits_p)", len(grits_p), 1, 20, "grits", "an empty sequence")
    for grit_p in grits_p:
        need_range("grits_p", grit_p, _COARSEST, max(GRAIN_UM), "P", "no stock figures for coarser grits")
        need_choice("grits_p", grit_p, GRAIN_UM)
    return levelling_um + sum(_stock_um(grit_p)[1] for grit_p in grits_p[:-1])


def usual_grit_p(next_coat: str, *, tight: bool = False) -> int:
    """
    Return the grit at which bare wood is usually left for the next coat.

    Parameters
    ----------
    next_coat
        One of `NEXT_COATS`.
    tight
        Whether the wood is tight-grained (maple kind): it wants P180 before a pigment stain.

    Returns
    -------
    int
        FEPA P number [1].

    Raises
    ------
    OutOfRange
        If `next_coat` is not a known kind.

    Notes
    -----
    Common practice; "Sanding", finest grit on bare wood.

    Examples
    --------
    >>> usual_grit_p("paint")
    150
    """
    need_choice("next_coat", next_coat, NEXT_COATS)
    usual, finest = _BARE_GRITS[next_coat]
    return finest if tight and next_coat == "pigment stain" else usual


def finest_grit_p(next_coat: str) -> int:
    """
    Return the finest grit on bare wood at which the next coat still bites or sinks in.

    Parameters
    ----------
    next_coat
        One of `NEXT_COATS`.

    Returns
    -------
    int
        FEPA P number [1]; finer starves a stain or oil and robs a film of key.

    Raises
    ------
    OutOfRange
        If `next_coat` is not a known kind.

    Notes
    -----
    Common practice; "Sanding", finest grit on bare wood. For a dye the grain is raised and cut first.

    Examples
    --------
    >>> finest_grit_p("clear film"), finest_grit_p("oil")
    (220, 240)
    """
    need_choice("next_coat", next_coat, NEXT_COATS)
    return _BARE_GRITS[next_coat][1]


def between_coats_grit_p(family: str) -> int:
    """
    Return the grit that keys or smooths a film for its next coat.

    Parameters
    ----------
    family
        How the film hardens: ``oxidative`` P240, ``evaporative`` P400, anything else P320.

    Returns
    -------
    int
        FEPA P number [1]; about four light passes.

    Notes
    -----
    Common practice; "Sanding", between coats.

    Examples
    --------
    >>> between_coats_grit_p("waterborne")
    320
    """
    return _BETWEEN_GRITS.get(family, 320)


def _stock_um(grit_p: int) -> tuple[float, float]:
    """Return the most a grit should take and what erases its own scratch [µm]; P220 stands in for finer."""
    grades = [grade for grade in _STOCK_UM if grade <= grit_p]
    return _STOCK_UM[max(grades)]
