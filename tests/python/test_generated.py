"""What is generated from the field tables is up to date; see bindings/generate.py."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def generate() -> ModuleType:
    """The generator as a module."""
    spec = importlib.util.spec_from_file_location("generate", ROOT / "bindings" / "generate.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_stubs_follow_the_field_tables(generate: ModuleType) -> None:
    committed = (ROOT / "bindings" / "heatmatch" / "_core.pyi").read_text(encoding="utf-8")
    assert committed == generate.stubs(), "run bindings/generate.py"


def test_the_glossary_follows_the_field_tables(generate: ModuleType) -> None:
    committed = (ROOT / "catalog" / "README.md").read_text(encoding="utf-8")
    assert committed == generate.glossary(), "run bindings/generate.py"


def test_every_field_has_a_meaning_and_numbers_a_range(generate: ModuleType) -> None:
    for kind, fields in generate._core.glossary().items():
        for field in fields:
            assert len(field["meaning"]) > 5, (kind, field["name"])
            if field["kind"] in (4, 5):
                assert field["range"] not in ("", "a finite number"), (kind, field["name"])
