"""A how-to answer: the text that goes out first, and those that follow on asking."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

# How a person learns that there is more; `more` is a word that no phone network takes.
HINT: Final = ' Text "more".'


@dataclass(frozen=True, slots=True)
class Told:
    """`first` goes out at once; each of `more` is a further text, sent in turn when the person
    texts `more`. None is longer than two GSM-7 segments, `first` with the hint included."""

    first: str
    more: tuple[str, ...] = ()

    @property
    def opening(self) -> str:
        """`first`, and how to ask for the rest where there is a rest."""
        return self.first + HINT if self.more else self.first
