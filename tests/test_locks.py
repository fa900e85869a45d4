"""The locks hold all that pyproject.toml asks for, with hashes, and the declared needs are true."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from packaging.version import Version

ROOT = Path(__file__).resolve().parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
RUN_LOCK, TEST_LOCK = "requirements.lock", "requirements-test.lock"

# Needed without being imported: zoneinfo's tables, the driver that a database URL names, and the
# checkers that are run as programs.
NEVER_IMPORTED = {
    *(
        "psycopg",
        "tzdata",
        "ruff",
        "mypy",
        "pytest-xdist",
        "types-dateparser",
        "types-python-dateutil",
    ),
    *("types-pyyaml",),
}
_PIN = re.compile(r"^(?P<name>[\w.-]+)(?:\[[\w,-]+\])?==(?P<version>[\w.!+]+)", re.MULTILINE)


def text_of(lock: str) -> str:
    return (ROOT / "deploy" / lock).read_text(encoding="utf-8")


def entries(lock: str) -> list[str]:
    """What the lock says of each package: its pin, markers and hashes, on one line."""
    return text_of(lock).replace(" \\\n", " ").splitlines()


def pins(lock: str) -> dict[str, set[Version]]:
    """The versions that a lock pins; several where they differ between Pythons."""
    found: dict[str, set[Version]] = {}
    for match in _PIN.finditer(text_of(lock)):
        name = canonicalize_name(match["name"])
        found.setdefault(name, set()).add(Version(match["version"]))
    return found


def needs(*, test: bool) -> list[Requirement]:
    """The direct needs of running, or of testing besides."""
    lines = PROJECT["optional-dependencies"]["test"] if test else PROJECT["dependencies"]
    return [Requirement(line) for line in lines]


@pytest.mark.parametrize(
    ("need", "lock"),
    [(need, lock) for need in needs(test=False) for lock in (RUN_LOCK, TEST_LOCK)]
    + [(need, TEST_LOCK) for need in needs(test=True)],
    ids=str,
)
def test_every_direct_need_stands_in_the_lock_at_a_version_that_fits(
    need: Requirement, lock: str
) -> None:
    versions = pins(lock).get(canonicalize_name(need.name), set())
    assert versions, f"{need.name} is not locked: run deploy/lock"
    assert all(need.specifier.contains(version) for version in versions)


def test_the_lock_of_the_tests_holds_all_of_the_other() -> None:
    """One environment serves both, which the launcher counts on."""
    assert set(entries(RUN_LOCK)) <= set(entries(TEST_LOCK))


@pytest.mark.parametrize("lock", [RUN_LOCK, TEST_LOCK])
def test_every_line_is_a_pin_with_hashes_and_names_no_host(lock: str) -> None:
    for line in entries(lock):
        assert re.fullmatch(
            r"[\w.-]+(\[[\w,-]+\])?==[\w.!+]+( ; [\w\s.'<>=!()]+?)?( +--hash=sha256:[0-9a-f]{64})+",
            line,
        ), line
    assert "://" not in text_of(lock)


def imported(folder: str) -> set[str]:
    """The packages, by their names on the index, that the modules below a folder import."""
    by_module = packages_distributions()
    found: set[str] = set()
    for path in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom) and node.module is not None:
                names = [node.module]
            for name in names:
                root = name.split(".")[0]
                if root not in sys.stdlib_module_names and root not in {"bot", "tests"}:
                    found |= {canonicalize_name(dist) for dist in by_module.get(root, [root])}
    return found


def declared(*, test: bool) -> set[str]:
    return {canonicalize_name(need.name) for need in needs(test=test)}


def test_what_is_imported_to_run_is_declared() -> None:
    assert imported("bot") - declared(test=False) == set()


def test_what_is_imported_by_the_tests_is_declared() -> None:
    assert imported("tests") - declared(test=False) - declared(test=True) == set()


def test_what_is_declared_is_imported() -> None:
    assert declared(test=False) - imported("bot") - NEVER_IMPORTED == set()
    assert declared(test=True) - imported("tests") - NEVER_IMPORTED == set()
