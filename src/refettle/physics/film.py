"""Film build, spread and the amount to buy (exact relations between volumes)."""

from refettle.physics.limits import need_above, need_range

GALLON_PER_POUND = 0.10
"""Volume that a pound of dissolved resin adds to alcohol [US gal/lb], near a 2-lb cut."""
ALCOHOL_G_L = 790.0
"""Density of ethanol [g/L]."""

_PERCENT = "a percentage slipped in"
_WET_UM = 2000.0
_DRY_UM = 2000.0


def dry_film_um(wet_film_um: float, solids_vol: float) -> float:
    """
    Return the film left on the wood when the solvent has gone.

    Parameters
    ----------
    wet_film_um
        Wet film [µm], above 0.
    solids_vol
        Solids by volume [m³/m³], above 0, at most 1.

    Returns
    -------
    float
        Dry film [µm].

    Raises
    ------
    OutOfRange
        If `solids_vol` is not a fraction (a percentage slipped in) or the film is no film.

    Notes
    -----
    Holds for films that do not soak in; valid 20–300 µm wet as laid by hand.
    Source: definition of volume solids; "Film build, coverage, quantity", identities.

    Examples
    --------
    >>> dry_film_um(100.0, 0.30)
    30.0
    """
    need_above("wet_film_um", wet_film_um, 0.0, _WET_UM, "µm", "millimetres or mils taken for µm")
    need_above("solids_vol", solids_vol, 0.0, 1.0, "m³/m³", _PERCENT)
    return wet_film_um * solids_vol


def wet_film_um(dry_film_um: float, solids_vol: float) -> float:
    """
    Return the wet film that leaves a wanted dry film: what a comb gauge should read.

    Parameters
    ----------
    dry_film_um
        Dry film [µm], above 0.
    solids_vol
        Solids by volume [m³/m³], above 0, at most 1.

    Returns
    -------
    float
        Wet film [µm].

    Raises
    ------
    OutOfRange
        If `solids_vol` is not a fraction (a percentage slipped in) or the film is no film.

    Notes
    -----
    Inverse of `dry_film_um`; same validity. Source: definition of volume solids.

    Examples
    --------
    >>> wet_film_um(30.0, 0.25)
    120.0
    """
    need_above("dry_film_um", dry_film_um, 0.0, _DRY_UM, "µm", "millimetres or mils taken for µm")
    need_above("solids_vol", solids_vol, 0.0, 1.0, "m³/m³", _PERCENT)
    return dry_film_um / solids_vol


def thinned_solids_vol(solids_vol: float, thinner_per_coating: float) -> float:
    """
    Return the volume solids after thinning.

    Parameters
    ----------
    solids_vol
        Solids by volume before thinning [m³/m³], above 0, at most 1.
    thinner_per_coating
        Thinner added per volume of coating [m³/m³], 0–5; 0.1 = a tenth added.

    Returns
    -------
    float
        Solids by volume of the mixture [m³/m³].

    Raises
    ------
    OutOfRange
        If either is not a fraction (a percentage slipped in).

    Notes
    -----
    ``VS' = VS / (1 + r)``; volumes taken to add up.
    Source: "Film build, coverage, quantity", identities.

    Examples
    --------
    >>> thinned_solids_vol(0.45, 0.50)
    0.3
    """
    need_above("solids_vol", solids_vol, 0.0, 1.0, "m³/m³", _PERCENT)
    need_range("thinner_per_coating", thinner_per_coating, 0.0, 5.0, "m³/m³", _PERCENT)
    return solids_vol / (1.0 + thinner_per_coating)


def spread_m2_per_l(dry_film_um: float, solids_vol: float) -> float:
    """
    Return the area that one litre covers at a wanted dry film, nothing lost.

    Parameters
    ----------
    dry_film_um
        Dry film [µm], above 0.
    solids_vol
        Solids by volume [m³/m³], above 0, at most 1.

    Returns
    -------
    float
        Spread [m²/L].

    Raises
    ------
    OutOfRange
        If `solids_vol` is not a fraction (a percentage slipped in) or the film is no film.

    Notes
    -----
    ``1000·VS/DFT``; in US units ``1604.17·VS/DFT[mil]`` ft²/gal.
    Source: definition; "Film build, coverage, quantity", identities.

    Examples
    --------
    >>> spread_m2_per_l(30.0, 0.30)
    10.0
    """
    return 1000.0 / wet_film_um(dry_film_um, solids_vol)


def litres_to_buy(
    area_m2: float,
    dry_film_um: float,
    solids_vol: float,
    *,
    coats: int = 1,
    transfer_efficiency: float = 0.95,
    first_coat_factor: float = 1.0,
    dead_volume_l: float = 0.0,
) -> float:
    """
    Return the volume that a number of coats uses up, losses included.

    Parameters
    ----------
    area_m2
        Area [m²], 0 or more.
    dry_film_um
        Dry film of one coat on a sealed surface [µm], above 0.
    solids_vol
        Solids by volume [m³/m³], above 0, at most 1.
    coats
        Number of coats [1], at least 1.
    transfer_efficiency
        Share that stays on the piece [1], above 0, at most 1: 0.95 brush, 0.5 gun on flat work.
    first_coat_factor
        What the first coat takes relative to a sealed surface [1], 1–3.
    dead_volume_l
        What stays in can, tray, hose and brush [L]; 0.05–0.15 a session by hand, 0.2–0.5 spraying.

    Returns
    -------
    float
        Volume to buy [L].

    Raises
    ------
    OutOfRange
        If a value lies outside the range named above (a percentage slipped in, coats forgotten).

    Notes
    -----
    ``V = A·DFT/(1000·VS·TE)·(N − 1 + f₁) + V_dead``.
    Source: "Film build, coverage, quantity", identities; first-coat factors from Gardner, *Paint
    Technology and Tests* (1911): second over first coat 1.55 on white pine, 1.29–1.83.

    Examples
    --------
    >>> round(litres_to_buy(4.0, 30.0, 0.30, coats=3, first_coat_factor=1.5, dead_volume_l=0.1), 3)
    1.574
    """
    need_range("area_m2", area_m2, 0.0, 1000.0, "m²", "cm² or ft² taken for m²")
    need_range("coats", coats, 1, 20, "coats", "coats forgotten")
    need_above("transfer_efficiency", transfer_efficiency, 0.0, 1.0, "1", _PERCENT)
    need_range("first_coat_factor", first_coat_factor, 1.0, 3.0, "1", "a spread taken for a factor")
    need_range("dead_volume_l", dead_volume_l, 0.0, 20.0, "L", "millilitres taken for litres")
    one_coat_l = area_m2 / spread_m2_per_l(dry_film_um, solids_vol) / transfer_efficiency
    return one_coat_l * (coats - 1 + first_coat_factor) + dead_volume_l


def solids_vol_from_voc(voc_g_l: float, solvent_g_l: float) -> float:
    """
    Return the least volume solids that the solvent content of a label allows.

    Parameters
    ----------
    voc_g_l
        Volatile organic content [g/L], 0 or more, below `solvent_g_l`.
    solvent_g_l
        Density of the solvent [g/L], 600–1700: 780 mineral spirits, 790 ethanol, 860 lacquer thinner.

    Returns
    -------
    float
        Solids by volume [m³/m³].

    Raises
    ------
    OutOfRange
        If the content reaches the density of the solvent (no solids left), or a density in kg/L
        slipped in.

    Notes
    -----
    ``VS = 1 − VOC/ρ``. Holds for coatings with no water and no exempt solvent; a water-borne label
    states its content *less water*, so don't use it there.
    Source: "Film build, coverage, quantity", identities; densities from memory.

    Examples
    --------
    >>> round(solids_vol_from_voc(450.0, 780.0), 2)
    0.42
    """
    need_range("solvent_g_l", solvent_g_l, 600.0, 1700.0, "g/L", "kg/L taken for g/L")
    need_range("voc_g_l", voc_g_l, 0.0, solvent_g_l * 0.999, "g/L", "a ceiling in lb/gal or a mixed-up pair")
    return 1.0 - voc_g_l / solvent_g_l


def cut_solids_vol(cut_lb_gal: float) -> float:
    """
    Return the volume solids of resin dissolved in alcohol at a given cut.

    Parameters
    ----------
    cut_lb_gal
        Cut: pounds of resin per US gallon of alcohol added [lb/gal], above 0, at most 6.

    Returns
    -------
    float
        Solids by volume [m³/m³].

    Raises
    ------
    OutOfRange
        If the cut is outside 0–6 (grams per litre slipped in).

    Notes
    -----
    ``VS = 0.1·c/(1 + 0.1·c)``: a pound adds about a tenth of a gallon near a 2-lb cut.
    Source: "Film build, coverage, quantity", shellac cut (two trade texts).

    Examples
    --------
    >>> round(cut_solids_vol(2.0), 3)
    0.167
    """
    need_above("cut_lb_gal", cut_lb_gal, 0.0, 6.0, "lb/gal", "grams per litre taken for a pound cut")
    resin = GALLON_PER_POUND * cut_lb_gal
    return resin / (1.0 + resin)


def cut_voc_g_l(cut_lb_gal: float) -> float:
    """
    Return the alcohol that a litre of dissolved resin gives off.

    Parameters
    ----------
    cut_lb_gal
        Cut: pounds of resin per US gallon of alcohol added [lb/gal], above 0, at most 6.

    Returns
    -------
    float
        Volatile organic content [g/L].

    Raises
    ------
    OutOfRange
        If the cut is outside 0–6 (grams per litre slipped in).

    Notes
    -----
    ``790/(1 + 0.1·c)``. Source: as `cut_solids_vol`; density of ethanol from memory.

    Examples
    --------
    >>> round(cut_voc_g_l(2.0))
    658
    """
    return ALCOHOL_G_L * (1.0 - cut_solids_vol(cut_lb_gal))
