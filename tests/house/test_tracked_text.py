"""What is handed on names no machine, no host of packages and nobody's home."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FORBIDDEN = {
    "a path of somebody's machine": r"(?<![\w.])/(?:home|root|work|farm|Users|mnt|srv)/",
    "a host that packages come from": r"\b(?:py" + r"pi\.org|python" + r"hosted\.org|index-" + r"url)\b",
    "an address on a local network": r"\b(?:127\.0\.0\.1|10\.\d+\.\d+\.\d+|192\.168\.\d+\.\d+)\b",
}
BINARY = {".png", ".jpg", ".whl", ".gz", ".ico", ".woff2"}


def tracked() -> list[Path]:
    """Return the files under version control; those of the folder where there is none."""
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("no version control here: nothing says what is handed on")
    listed = subprocess.run([git, "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True, text=True)
    paths = [ROOT / name for name in listed.stdout.split("\0") if name]
    return [path for path in paths if path.is_file() and path.suffix not in BINARY]


@pytest.mark.parametrize(("what", "pattern"), FORBIDDEN.items(), ids=list(FORBIDDEN))
def test_no_tracked_file_carries(what: str, pattern: str) -> None:
    found = [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()[:80]}"
        for path in tracked()
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if re.search(pattern, line) and path != Path(__file__)
    ]
    assert not found, f"{what}: {found}"


def test_every_tracked_text_ends_with_a_newline_and_has_no_carriage_returns() -> None:
    bad = [
        str(path.relative_to(ROOT))
        for path in tracked()
        if (text := path.read_bytes()) and (not text.endswith(b"\n") or b"\r" in text)
    ]
    assert not bad
