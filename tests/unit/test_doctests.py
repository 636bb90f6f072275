"""The examples in the docstrings of physics run and say what they print."""

import doctest
import importlib
import pkgutil

import pytest

import refettle.physics

MODULES = sorted(module.name for module in pkgutil.iter_modules(refettle.physics.__path__))


@pytest.mark.parametrize("name", MODULES)
def test_every_example_prints_what_it_says(name: str) -> None:
    outcome = doctest.testmod(importlib.import_module(f"refettle.physics.{name}"))
    assert outcome.failed == 0
    assert outcome.attempted > 0
