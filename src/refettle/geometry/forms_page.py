"""The reference page of all forms, made from their parameters."""

from collections.abc import Iterable

from refettle.geometry.form import Form
from refettle.geometry.parameters import Parameter, plain

_HEAD = """# Forms

A form turns a few sizes into parts and surfaces with their exposed areas. Width, depth and height
must be given; everything else has a usual value, and every usual value that was taken is listed
with the plan. Lengths are written with their unit (`60 cm`, `24 in`); the values below are mm.

Exposed area is what air reaches: all faces of all parts, less what touches another part. Drawers,
doors and lids are measured out of the piece. Tongues in grooves and dovetails are left out. The
area of carved work is that of the plain face around it.

This page is made from the program's own registry; a test keeps the two alike.
"""


def forms_page(forms: Iterable[Form]) -> str:
    """
    Return the reference page of forms as Markdown.

    Parameters
    ----------
    forms
        Forms in the order in which they are to come.

    Returns
    -------
    str
        The page, with a line end at its end.
    """
    return "\n".join([_HEAD, *(_section(form) for form in forms)])


def _section(form: Form) -> str:
    lines = [f"## `{form.id}` – {form.name}", "", form.meaning, ""]
    if form.aliases:
        lines += [f"Also: {', '.join(form.aliases)}.", ""]
    if form.parameters:
        lines += ["| Parameter | Kind | Allowed | Usual | Meaning |", "|---|---|---|---|---|"]
        lines += [_row(parameter) for parameter in form.parameters]
    else:
        lines.append("No sizes: each surface gives its name, area and, if it is not plain, its relief.")
    return "\n".join([*lines, ""])


def _row(parameter: Parameter) -> str:
    unit = " mm" if parameter.kind == "length" else ""
    allowed = ", ".join(f"`{word}`" for word in parameter.choices)
    if not allowed:
        allowed = f"{plain(parameter.low)} to {plain(parameter.high)}{unit}"
    usual = "must be given"
    if parameter.usual is not None:
        value = "" if callable(parameter.usual) else f"{parameter.text(parameter.usual)}: "
        usual = value + parameter.why
    meaning = parameter.meaning
    if parameter.only_with is not None:
        other, words = parameter.only_with
        meaning += f" (only with `{other}` {' or '.join(f'`{plain(word)}`' for word in words)})"
    return f"| `{parameter.name}` | {parameter.kind} | {allowed} | {usual} | {meaning} |"
