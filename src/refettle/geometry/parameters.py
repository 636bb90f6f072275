"""Parameters of a form: what may be given, what is usual, what is wrong with a value."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

Value = float | str


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """
    Something wrong with what was asked for.

    Attributes
    ----------
    param
        Parameter concerned, in the person's word.
    what
        What is wrong, without full stop.
    do
        What to do about it, without full stop.
    """

    param: str
    what: str
    do: str


@dataclass(frozen=True, slots=True)
class Sizes:
    """
    All parameters of a form with their values.

    Attributes
    ----------
    values
        Value by parameter; lengths are mm, counts whole numbers, choices words.
    """

    values: Mapping[str, Value]

    def mm(self, name: str) -> float:
        """Return a length [mm]."""
        return float(self.values[name])

    def count(self, name: str) -> int:
        """Return a count [1]."""
        return int(self.values[name])

    def choice(self, name: str) -> str:
        """Return a choice."""
        return str(self.values[name])


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """
    A size, number or choice that shapes a form.

    Attributes
    ----------
    name
        The person's word.
    kind
        ``length`` [mm], ``count`` or ``choice``.
    meaning
        What it is, without full stop.
    usual
        Value taken where none is given: fixed, or worked out from the parameters before it;
        None = it must be given.
    why
        Reason for the usual value, or the rule in words.
    low, high
        Allowed range, ends included, in the unit of the kind.
    choices
        Allowed words of a choice.
    only_with
        Parameter and its values with which this one has a meaning; None = always.
    """

    name: str
    kind: Literal["length", "count", "choice"]
    meaning: str
    usual: Value | Callable[[Sizes], Value] | None = None
    why: str = ""
    low: float = 0.0
    high: float = 0.0
    choices: tuple[str, ...] = ()
    only_with: tuple[str, tuple[Value, ...]] | None = None

    def text(self, value: Value) -> str:
        """Return a value of this parameter in words."""
        return f"{float(value):.6g} mm" if self.kind == "length" else plain(value)


def size_parameters(
    least: tuple[float, float, float], most: tuple[float, float, float]
) -> tuple[Parameter, ...]:
    """
    Return width, depth and height, which must be given.

    Parameters
    ----------
    least, most
        Allowed width, depth, height [mm].

    Returns
    -------
    tuple of Parameter
        The three.
    """
    words = (
        ("width", "width over all, left to right"),
        ("depth", "depth over all, front to back"),
        ("height", "height over all"),
    )
    return tuple(
        Parameter(name=name, kind="length", meaning=meaning, low=low, high=high)
        for (name, meaning), low, high in zip(words, least, most, strict=True)
    )


def length(
    name: str, meaning: str, usual: float, low: float, high: float, why: str = "common practice"
) -> Parameter:
    """
    Return a length with a fixed usual value.

    Parameters
    ----------
    name, meaning
        As in `Parameter`.
    usual, low, high
        Usual value and allowed range [mm].
    why
        Reason for the usual value.

    Returns
    -------
    Parameter
        The parameter.
    """
    return Parameter(name=name, kind="length", meaning=meaning, usual=usual, why=why, low=low, high=high)


def count(
    name: str, meaning: str, usual: Value | Callable[[Sizes], Value], why: str, low: int, high: int
) -> Parameter:
    """
    Return a whole number.

    Parameters
    ----------
    name, meaning, usual, why
        As in `Parameter`.
    low, high
        Allowed range [1].

    Returns
    -------
    Parameter
        The parameter.
    """
    return Parameter(name=name, kind="count", meaning=meaning, usual=usual, why=why, low=low, high=high)


def choice(
    name: str, meaning: str, choices: tuple[str, ...], why: str, usual: Callable[[Sizes], Value] | None = None
) -> Parameter:
    """
    Return a choice of words.

    Parameters
    ----------
    name, meaning, why
        As in `Parameter`.
    choices
        Allowed words; the first is the usual one unless `usual` says another.
    usual
        Gives the usual word from the parameters before it.

    Returns
    -------
    Parameter
        The parameter.
    """
    return Parameter(
        name=name, kind="choice", meaning=meaning, usual=usual or choices[0], why=why, choices=choices
    )


def wrong(parameter: Parameter, value: Value) -> Problem | None:
    """
    Return what is wrong with one value on its own.

    Parameters
    ----------
    parameter
        The parameter.
    value
        Value given.

    Returns
    -------
    Problem or None
        The problem; None where the value is fine.
    """
    name = parameter.name
    if parameter.kind == "choice":
        if value in parameter.choices:
            return None
        near = get_close_matches(str(value), parameter.choices, n=1)
        do = f'write "{near[0]}"' if near else f"choose {listed(parameter.choices)}"
        return Problem(param=name, what=f'"{plain(value)}" is no {name} that is known', do=do)
    if isinstance(value, str) or not math.isfinite(value):
        kind = "a length" if parameter.kind == "length" else "a whole number"
        return Problem(param=name, what=f"{name} is {value}, not {kind}", do=f"give {kind}")
    if parameter.kind == "count" and value != int(value):
        return Problem(
            param=name, what=f"{name} is {value:.6g}, not a whole number", do="give a whole number"
        )
    if not parameter.low <= value <= parameter.high:
        text, low, high = (parameter.text(v) for v in (value, parameter.low, parameter.high))
        return Problem(
            param=name,
            what=f"{name} is {text}, outside {low} to {high}",
            do=f"check the {parameter.meaning} and its unit",
        )
    return None


def listed(words: tuple[Value, ...]) -> str:
    """
    Return words as a list with "or" before the last.

    Parameters
    ----------
    words
        Words or numbers, at least one.

    Returns
    -------
    str
        The list.
    """
    *most, last = (plain(word) for word in words)
    return f"{', '.join(most)} or {last}" if most else last


def plain(value: Value) -> str:
    """
    Return a value as text without a unit.

    Parameters
    ----------
    value
        Word or number.

    Returns
    -------
    str
        The text.
    """
    return value if isinstance(value, str) else f"{value:.6g}"
