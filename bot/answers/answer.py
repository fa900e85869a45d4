"""An answer: what is said now, what is said on "more", and what has to be asked first."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from bot.reading import Doubt
from bot.wording.gsm import segments

# How a person learns that there is more; `more` is a word that no phone network takes.
HINT = ' Text "more".'
_MOST_SEGMENTS = 2


@dataclass(frozen=True, slots=True)
class Answer:
    """text: what is said at once, "" where something has to be asked first. more: further texts,
    one for each time that "more" is texted. ask: a question whose answer completes the text that
    asked, so that it is answered after all. table: makes what a mail shows below the text, lines as
    of `wording.tables`, "" where there is nothing to show. ends_season: it answers who tells that
    the season is over, which is to be kept."""

    text: str
    more: tuple[str, ...] = ()
    ask: Doubt | None = None
    table: Callable[[], str] | None = None
    ends_season: bool = False

    @property
    def whole(self) -> str:
        """All of it at once, for whoever has the room."""
        return " ".join((self.text.removesuffix(HINT), *self.more))

    @property
    def opening(self) -> str:
        """The text, and how to ask for the rest where there is one and room to say so."""
        if not self.more or self.text.endswith(HINT):
            return self.text
        hinted = self.text + HINT
        return hinted if segments(hinted) <= max(_MOST_SEGMENTS, segments(self.text)) else self.text


def shortened(said: str, more: tuple[str, ...], room: int) -> Answer:
    """An opening cut to so many characters at the end of a sentence; what is cut off comes first
    on "more". Whole where not even its first sentence fits."""
    text = said.removesuffix(HINT)
    ends = [found.end() for found in _SENTENCE_END.finditer(text)]
    fits = [end for end in ends if end + len(HINT) <= room]
    if not fits:
        return Answer(text, more)
    left = text[fits[-1] :].strip()
    return Answer(text[: fits[-1]].strip(), (left, *more) if left else more)


_SENTENCE_END = re.compile(r"(?<=[a-z0-9]{2})[.?!](?= [A-Z0-9])")


def asking(question: str, text: str, fill: str, *, number_only: bool = True) -> Answer:
    """An answer that first has to ask. `fill` takes the reply in its one "{}" and goes before
    the text that asked, so that this is then answered."""
    again = text.replace("{", "").replace("}", "").strip()
    return Answer("", ask=Doubt(question, (), f"{fill}. {again}", number_only=number_only))
