"""The layers of the house, walked in the source: imports go down only.

Words at the bottom, then what is pure, then the edges to the world, then the work, and the doors
on top. Within a layer modules may know each other, except that the families of `pure` and of
`edges` never do.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]

# From the bottom up. A family is a module or a package right below `bot`.
LAYERS = {
    "words": {"clock", "entry", "figures", "messages", "settings", "tally", "units"},
    "pure": {"reading", "reckoning", "wording"},
    "edges": {"channels", "ledger", "places", "weather"},
    "work": {
        "answers", "consent", "conversation", "covers", "exporting", "forecasts",
        "helper_lines", "inbox", "links", "mailroom", "morning", "outbox",
        "outdoors", "rounds", "standing",
    },
    "doors": {
        "__main__", "chat", "cli", "doctor", "doctor_mail", "jobs", "pages", "replay", "serving",
        "web", "wiring", "worker",
    },
}  # fmt: skip
ORDER = list(LAYERS)
APART = {"pure", "edges"}

# All that words and pure modules may import from elsewhere: nothing here tells the time, opens a
# file or a connection, starts a thread or a process, or draws by lot.
HARMLESS = {
    "__future__", "bisect", "collections", "contextlib", "csv", "dataclasses", "datetime",
    "decimal", "difflib", "enum", "fractions", "functools", "heapq", "itertools", "json", "math",
    "operator", "re", "statistics", "string", "types", "typing", "unicodedata", "warnings",
    "zoneinfo",
    "dateparser", "dateutil", "gsm0338", "phonenumbers", "pint", "rapidfuzz",
}  # fmt: skip
# Word lists and tables are data that come with the package.
HARMLESS_PARTS = {"importlib.resources"}
# Settings are read from the environment: that is what they are.
ONLY_IN_SETTINGS = {
    "dotenv", "os", "pathlib", "platformdirs", "pydantic", "pydantic_settings", "urllib",
}  # fmt: skip
# Calls that tell the time or reach outside, whatever they are called on.
CLOCK_CALLS = {"now", "today", "utcnow"}
OUTSIDE_CALLS = {"open", "print", "input", "exec", "eval", "__import__"}

SQL = {"alembic", "psycopg", "sqlalchemy", "sqlmodel"}


@dataclass(frozen=True)
class Import:
    """One import: of which module, by which, at which line."""

    of: str
    by: str
    line: int

    def __str__(self) -> str:
        return f"{self.by}:{self.line} imports {self.of}"


def modules() -> Iterator[tuple[str, ast.Module]]:
    """Every module of the package, by its dotted name."""
    for path in sorted((ROOT / "bot").rglob("*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        yield name, ast.parse(path.read_text(encoding="utf-8"), str(path))


def imports_of(name: str, tree: ast.Module) -> Iterator[Import]:
    """The imports of a module, also those inside functions and those for types only."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield Import(alias.name, name, node.lineno)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name}:{node.lineno} imports relatively"
            module = node.module or ""
            if module in {"bot", "importlib"}:
                for alias in node.names:
                    yield Import(f"{module}.{alias.name}", name, node.lineno)
            else:
                yield Import(module, name, node.lineno)


def family(module: str) -> str:
    """`bot.reading.kinds.sap` is of the family `reading`; `bot` itself of none."""
    return module.split(".")[1] if "." in module else ""


def layer(module: str) -> str:
    """The layer of one of our modules."""
    found = [name for name, families in LAYERS.items() if family(module) in families]
    assert found, f"{module} belongs to no layer: add its family to LAYERS"
    return found[0]


def layered() -> list[tuple[str, str, ast.Module]]:
    """Every module below `bot` with its layer."""
    return [(layer(name), name, tree) for name, tree in modules() if name != "bot"]


def test_imports_go_down_only() -> None:
    wrong = [
        str(found)
        for of_layer, name, tree in layered()
        for found in imports_of(name, tree)
        if found.of.startswith("bot.") and ORDER.index(layer(found.of)) > ORDER.index(of_layer)
    ]
    assert wrong == []


@pytest.mark.parametrize("apart", sorted(APART))
def test_families_that_stand_apart_never_know_each_other(apart: str) -> None:
    wrong = [
        str(found)
        for of_layer, name, tree in layered()
        for found in imports_of(name, tree)
        if of_layer == apart
        and found.of.startswith("bot.")
        and layer(found.of) == apart
        and family(found.of) != family(name)
    ]
    assert wrong == []


def test_words_and_pure_modules_import_nothing_that_reaches_outside() -> None:
    wrong = [
        str(found)
        for of_layer, name, tree in layered()
        if of_layer in {"words", "pure"}
        for found in imports_of(name, tree)
        if not found.of.startswith("bot.")
        and found.of not in HARMLESS_PARTS
        and (root := found.of.split(".")[0]) not in HARMLESS
        and not (name == "bot.settings" and root in ONLY_IN_SETTINGS)
    ]
    assert wrong == []


def test_words_and_pure_modules_never_look_at_the_clock_or_outside() -> None:
    """Only `bot.clock` tells the time, and everybody else is told it."""
    wrong = []
    for of_layer, name, tree in layered():
        if of_layer not in {"words", "pure"}:
            continue
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call):
                continue
            called = node.func
            if isinstance(called, ast.Attribute) and called.attr in CLOCK_CALLS:
                if name != "bot.clock":
                    wrong.append(f"{name}:{node.lineno} calls .{called.attr}()")
            elif isinstance(called, ast.Name) and called.id in OUTSIDE_CALLS:
                wrong.append(f"{name}:{node.lineno} calls {called.id}()")
    assert wrong == []


def test_only_the_ledger_speaks_sql() -> None:
    """A door may know the errors of the database, to explain them."""
    wrong = [
        str(found)
        for of_layer, name, tree in layered()
        for found in imports_of(name, tree)
        if found.of.split(".")[0] in SQL
        and family(name) != "ledger"
        and not (of_layer == "doors" and found.of == "sqlalchemy.exc")
    ]
    assert wrong == []


def test_the_harmless_modules_are_not_shadowed() -> None:
    """A module of ours called like one of the standard library would make this walk blind."""
    ours = {family(name) for name, _ in modules()} - {"", "__main__"}
    assert ours.isdisjoint(sys.stdlib_module_names)


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("import os.path", ["os.path"]),
        ("from bot import places", ["bot.places"]),
        ("from importlib import resources", ["importlib.resources"]),
        ("def f():\n    from bot.ledger.store import Store", ["bot.ledger.store"]),
        ("if TYPE_CHECKING:\n    import httpx", ["httpx"]),
    ],
)
def test_every_way_of_importing_is_seen(source: str, expected: list[str]) -> None:
    found = imports_of("bot.reading.x", ast.parse(source))
    assert [each.of for each in found] == expected
