"""Know-how: one file a how-to, each with its sources and its answer.

`HOWTO` is the table of them, by the names of the reading contract. A new how-to is one file
here, one line in the table, and one file of ways to ask it in `bot/reading/topics`.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from bot.answers.howto import (
    boiling,
    bottling,
    cleaning,
    containers,
    filtering,
    finishing,
    grading,
    how_deep,
    identify_tree,
    other_species,
    pulling_spiles,
    safety,
    season_end,
    setting_spile,
    storing,
    when_to_tap,
    where_to_drill,
    which_bit,
)
from bot.answers.howto.known import Known
from bot.answers.howto.told import Told

__all__ = ["HOWTO", "SOURCES", "Known", "Told"]

_MODULES: Final = {
    "identify_tree": identify_tree,
    "when_to_tap": when_to_tap,
    "where_to_drill": where_to_drill,
    "how_deep": how_deep,
    "which_bit": which_bit,
    "setting_spile": setting_spile,
    "containers": containers,
    "cleaning": cleaning,
    "storing": storing,
    "boiling": boiling,
    "finishing": finishing,
    "filtering": filtering,
    "bottling": bottling,
    "grading": grading,
    "season_end": season_end,
    "pulling_spiles": pulling_spiles,
    "safety": safety,
    "other_species": other_species,
}

HOWTO: Final[dict[str, Callable[[Known], Told]]] = {
    name: module.answer for name, module in _MODULES.items()
}
# The published sources of each answer; what has none says "common practice, no source".
SOURCES: Final[dict[str, tuple[str, ...]]] = {
    name: module.SOURCES for name, module in _MODULES.items()
}
