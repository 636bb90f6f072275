"""The wheel carries what the package reads at run time, and nothing of the workshop around it."""

import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SRC = ROOT / "src"


@pytest.fixture(scope="module")
def packed(tmp_path_factory: pytest.TempPathFactory) -> frozenset[str]:
    """Return the names in a wheel built from a copy, so that nothing is left in the tree."""
    copy = tmp_path_factory.mktemp("tree")
    shutil.copytree(SRC, copy / "src", ignore=shutil.ignore_patterns("*.egg-info", "__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, copy / name)
    subprocess.run(
        [
            sys.executable, "-m", "pip", "wheel", "-q", "--disable-pip-version-check", "--no-index",
            "--no-deps", "--no-build-isolation", "-w", str(copy / "dist"), str(copy),
        ],
        check=True,
        capture_output=True,
    )  # fmt: skip
    (wheel,) = (copy / "dist").glob("refettle-*.whl")
    with zipfile.ZipFile(wheel) as archive:
        return frozenset(archive.namelist())


def test_every_file_of_the_package_is_in_the_wheel(packed: frozenset[str]) -> None:
    due = {
        path.relative_to(SRC).as_posix()
        for path in (SRC / "refettle").rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert due <= packed, sorted(due - packed)


def test_the_wheel_holds_the_package_its_licence_and_nothing_else(packed: frozenset[str]) -> None:
    strangers = {name for name in packed if not name.startswith("refettle/") and ".dist-info/" not in name}
    assert not strangers
    assert any(name.endswith("/LICENSE") for name in packed)
