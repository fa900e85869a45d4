"""What reading a text gives: the readings that are certain, and one doubt at most."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.reading.kinds import Reading


@dataclass(frozen=True, slots=True)
class Profile:
    """What is known of the sender and helps to read them.

    units: "us" or "metric", what a bare length, volume or temperature most likely is in.
    bucket_gallons: US gallons that one of their buckets holds, None when never told.
    taps: taps hanging this season, None when never told.
    tree_labels, lots: names that they use for trees and for parts of the bush.
    boiling: True while a boil is open.
    """

    units: str = "us"
    bucket_gallons: float | None = None
    taps: int | None = None
    tree_labels: tuple[str, ...] = ()
    lots: tuple[str, ...] = ()
    boiling: bool = False


@dataclass(frozen=True, slots=True)
class Choice:
    """One likely answer to a question: the words that pick it, and the text it makes.

    `text` is a whole text, read in place of the answer; the empty text records nothing.
    """

    words: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class Doubt:
    """One question, answerable with a word, and what each answer would mean.

    fill: a text with one `{}` that takes a bare answer ("12 gal at {}"), None when only
    the choices will do. `number_only` says that the answer must be a number (a unit may
    follow it).
    """

    question: str
    choices: tuple[Choice, ...] = ()
    fill: str | None = None
    number_only: bool = True


@dataclass(frozen=True, slots=True)
class Understanding:
    """readings: in the order of the text. doubt: what has to be asked, or None."""

    readings: tuple[Reading, ...] = field(default=())
    doubt: Doubt | None = None

    @property
    def ask(self) -> str | None:
        """The question that goes back, or None."""
        return None if self.doubt is None else self.doubt.question
