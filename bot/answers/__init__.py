"""The family of answers: one file a topic. A new topic is one file and one line in TOPICS."""

from __future__ import annotations

import re
from collections.abc import Callable

from bot.answers import (
    boil_plan,
    compare,
    costs,
    finish_point,
    know_how,
    per_tree,
    run_forecast,
    storage,
    syrup_expected,
    tap_plan,
    totals,
)
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.reckoning.checks import ImpossibleError
from bot.wording import refusals

TOPICS: dict[str, Callable[[Asked], Answer | str]] = {
    "totals": totals.answer,
    "syrup_expected": syrup_expected.answer,
    "finish_point": finish_point.answer,
    "costs": costs.answer,
    "compare": compare.answer,
    "per_tree": per_tree.answer,
    "storage": storage.answer,
    "run_forecast": run_forecast.answer,
    "boil_plan": boil_plan.answer,
    "tap_plan": tap_plan.answer,
    "howto": know_how.answer,
}


# "season over": told, and no question of how to know it.
_SEASON_OVER = re.compile(
    r"(?:the |our |my )?season(?:'s| is)? (?:all )?(?:over|done|finished)[ .!]*"
    r"|(?:(?:we're|we are|i'm|i am) )?(?:all )?(?:done|finished) for the (?:year|season)[ .!]*"
    r"|that'?s it for (?:the|this) (?:year|season)[ .!]*"
)


def answer(asked: Asked) -> Answer:
    """The answer to a question; a figure in it that cannot be is asked after.

    Raises KeyError for a topic that is not in the family.
    """
    answers = TOPICS[asked.topic]
    try:
        said = totals.closing(asked) if _SEASON_OVER.fullmatch(asked.plain) else answers(asked)
    except ImpossibleError as error:
        return Answer(
            refusals.impossible(error.thing, error.value, error.unit, error.wanted, asked.style)
        )
    return Answer(said) if isinstance(said, str) else said


__all__ = ["TOPICS", "Answer", "Asked", "answer"]
