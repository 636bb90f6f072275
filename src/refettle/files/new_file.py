"""Writing a file that was not there: nothing of the person's is ever overwritten."""

from pathlib import Path


def place_trouble(path: str) -> tuple[str, str] | None:
    """
    Return why no new file can stand at a place.

    Parameters
    ----------
    path
        The place.

    Returns
    -------
    tuple of str or None
        What is wrong and what to do; None where the place is free.
    """
    try:
        there, folder = Path(path).exists(), Path(path).parent
        if there or Path(path).is_symlink():
            return f'"{path}" is there already', "give another name, or change that file"
        if not folder.is_dir():
            return f'there is no folder "{folder}"', "make it, or name another"
    except (OSError, ValueError) as trouble:
        return _unwritten(path, trouble)
    return None


def write_new(path: str, text: str) -> tuple[str, str] | None:
    """
    Write a new file.

    Parameters
    ----------
    path
        Where.
    text
        What stands in it.

    Returns
    -------
    tuple of str or None
        What is wrong and what to do; None where it was written.
    """
    trouble = place_trouble(path)
    if trouble is not None:
        return trouble
    try:
        with Path(path).open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except (OSError, ValueError) as raised:
        return _unwritten(path, raised)
    return None


def _unwritten(path: str, raised: Exception) -> tuple[str, str]:
    """Return what the system says."""
    why = getattr(raised, "strerror", None) or str(raised)
    return f'"{path}" cannot be written', f"the system says: {why}"
