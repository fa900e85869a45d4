"""Holds what was read of a text against what its line in fixtures/texts expects."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

Given = dict[str, Any]

NUMBERS_AGREE_WITHIN = 0.005
DEGREES_AGREE_WITHIN = 0.15
BY_WORDS = ("species", "lot", "item", "text")
FREE_TO_ADD = ("lot", "item")
"""What may be told beyond what is expected."""
NOT_OF_THE_CONTRACT = ("also", "at", "manner", "pieces", "was", "about", "thing")
IDLE_WORDS = frozenset(
    ("maple", "lot", "the", "block", "side", "bush", "a", "new", "my", "our", "some")
)


def faults(line: Given, answer: Given) -> list[str]:
    """What is wrong with an answer; an empty list where it fits one interpretation."""
    found = []
    for readings, ask in interpretations(line):
        wrong = _faults_against(readings, ask, answer)
        if not wrong:
            return []
        found += wrong
    return found


def interpretations(line: Given) -> Iterator[tuple[list[Given], bool | None]]:
    """Every accepted (readings, whether a question must come)."""
    given = [(line["expect"], line["ask"])]
    given += [
        (other["readings"], other["ask"]) if isinstance(other, dict) else (other, line["ask"])
        for other in line.get("alternatives", [])
    ]
    for readings, ask in given:
        needs_question = ask is None and all(each.get("_optional") for each in readings)
        yield readings, True if needs_question else ask


def _faults_against(expected: list[Given], ask: bool | None, answer: Given) -> list[str]:
    asked = bool(answer["ask"])
    if ask is not None and ask != asked:
        return [f"{'no ' if not asked else ''}question, wanted {'one' if ask else 'none'}"]
    got = list(answer["readings"])
    if expected and not any(each["kind"] == "chat" for each in expected):
        got = [each for each in got if each["kind"] != "chat"]
    if _pairs_up(got, expected, frozenset()):
        return []
    return [f"got {answer['readings']}, wanted {expected}"]


def _pairs_up(got: Sequence[Given], expected: list[Given], used: frozenset[int]) -> bool:
    """Can each reading be paired with another expectation, with no needed one left over?"""
    if not got:
        return all(number in used or each.get("_optional") for number, each in enumerate(expected))
    return any(
        number not in used
        and _agrees(each, got[0])
        and _pairs_up(got[1:], expected, used | {number})
        for number, each in enumerate(expected)
    )


def _agrees(expected: Given, got: Given) -> bool:
    if expected["kind"] != got["kind"]:
        return False
    wanted = {name: value for name, value in expected.items() if not name.startswith("_")}
    if not all(_same(name, value, got.get(name)) for name, value in wanted.items()):
        return False
    allowed = expected.get("_opt", {})
    extra = set(got) - set(wanted) - set(FREE_TO_ADD) - set(NOT_OF_THE_CONTRACT)
    if got["kind"] == "chat":
        # Wishes and gear are told in a chat's own fields, which the contract does not know.
        extra = set()
    return "*" in allowed or all(
        name in allowed and _same(name, allowed[name], got[name]) for name in extra
    )


def _same(name: str, expected: Any, got: Any) -> bool:
    if got is None:
        return False
    if name == "jars":
        return _by_size(expected) == _by_size(got)
    if isinstance(expected, list):
        return any(_same(name, each, got) for each in expected)
    if expected == "*" or isinstance(expected, bool):
        return expected == "*" or got is expected
    if isinstance(expected, int | float):
        if not isinstance(got, int | float) or isinstance(got, bool):
            return False
        within = (
            DEGREES_AGREE_WITHIN
            if name == "fahrenheit"
            else NUMBERS_AGREE_WITHIN * abs(expected) + 1e-9
        )
        return abs(expected - got) <= within
    if name == "tree":
        return _label(expected) == _label(got)
    if name in BY_WORDS:
        wanted, told = _words(expected), _words(got)
        return bool(told) and (wanted <= told or told <= wanted)
    return str(expected) == str(got)


def _by_size(jars: Any) -> dict[float, int]:
    sizes: dict[float, int] = {}
    for jar in jars:
        size = round(jar["gallons_each"], 3)
        sizes[size] = sizes.get(size, 0) + jar["count"]
    return sizes


def _label(text: Any) -> str:
    return re.sub(r"^(the|tree)\s+", "", str(text).lower()).lstrip("0")


def _words(text: Any) -> frozenset[str]:
    words = re.sub(r"[^a-z0-9. ]+", " ", str(text).lower()).split()
    kept = [word for word in words if word not in IDLE_WORDS] or words
    return frozenset(word[:-1] if len(word) > 3 and word.endswith("s") else word for word in kept)
