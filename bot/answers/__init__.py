"""The family of answers: one file a topic. A new topic is one file and one line in TOPICS."""

from __future__ import annotations

from collections.abc import Callable

from bot.answers import (
    coming,
    compare,
    costs,
    finish_point,
    per_tree,
    storage,
    syrup_expected,
    totals,
)
from bot.answers.asked import Asked

TOPICS: dict[str, Callable[[Asked], str]] = {
    "totals": totals.answer,
    "syrup_expected": syrup_expected.answer,
    "finish_point": finish_point.answer,
    "costs": costs.answer,
    "compare": compare.answer,
    "per_tree": per_tree.answer,
    "storage": storage.answer,
    "run_forecast": coming.forecast,
    "boil_plan": coming.boil_plan,
    "tap_plan": coming.tap_plan,
    "export": coming.export,
    "howto": coming.howto,
}


def answer(asked: Asked) -> str:
    """The answer to a question. Raises KeyError for a topic that is not in the family."""
    return TOPICS[asked.topic](asked)


__all__ = ["TOPICS", "Asked", "answer"]
