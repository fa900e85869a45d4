"""Put sentences together so that the text fits: what matters least is left out first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from bot.wording.gsm import in_gsm, segments


@dataclass(frozen=True, slots=True)
class Part:
    """A sentence, and how much it matters: 0 is never left out, higher goes first.

    `shorter` is said in its place before it goes; `stays`: the shorter one does not go.
    """

    text: str
    spare: int = 0
    shorter: str | None = None
    stays: bool = False


def fit(parts: Sequence[Part], most_segments: int) -> str:
    """The parts as one text of at most so many segments, if leaving out can do it."""
    said = [part for part in parts if part.text]
    while segments(text := _joined(said)) > most_segments:
        spared = max(said, key=lambda part: part.spare)
        if spared.spare == 0:
            return text
        at = max(index for index, part in enumerate(said) if part.spare == spared.spare)
        if said[at].shorter is None:
            del said[at]
        else:
            said[at] = Part(said[at].shorter or "", 0 if said[at].stays else said[at].spare)
    return text


def _joined(parts: Sequence[Part]) -> str:
    return in_gsm(" ".join(part.text for part in parts))


def sentence(words: str) -> str:
    """With a capital first and a full stop last."""
    words = words.strip()
    if not words:
        return ""
    words = words[0].upper() + words[1:]
    return words if words[-1] in ".?!" else words + "."
