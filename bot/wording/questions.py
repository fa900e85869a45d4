"""The questions of the conversation itself: answerable with one word."""

from __future__ import annotations

from collections.abc import Sequence

from bot.wording import amounts
from bot.wording.gsm import plain
from bot.wording.style import Style


def changed(receipt: str) -> str:
    """A record that was put right."""
    return f"Changed to {_within(receipt)}"


def again(receipt: str) -> str:
    """The same words came twice in a few minutes."""
    return f"{receipt} again? Text again to count it twice, or ok to leave it."


def logged_too(address: str, gallons: float, style: Style) -> str:
    """Two people tell of as much sap on one day."""
    told = amounts.volume(gallons, style)
    return f"{plain(address)} logged {told} that day too. Text same, or both to count both."


def told_too(address: str, receipt: str) -> str:
    """Two people tell the same thing of one day."""
    return f"{plain(address)} logged {receipt} that day too. Text same, or both to count both."


def all_that_waits(gallons: float, style: Style) -> str:
    """Sap was poured out, nobody says how much."""
    waits = amounts.volume(gallons, style)
    return f"All of the {waits} that waits? Text ok, or how much it was."


def undo_that(receipt: str) -> str:
    """An undo of a record that was texted days ago."""
    return f"Your last record is {_within(receipt)}. Undo that? Text ok."


def already_so(receipt: str) -> str:
    """A correction that says what is written already."""
    return f"That is what I have: {_within(receipt)}."


def _within(receipt: str) -> str:
    """A receipt as it is said within a sentence."""
    return f"{receipt[:1].lower()}{receipt[1:]}"


def change_that(receipt: str) -> str:
    """A correction of a record that was texted days ago."""
    return f"Your last record is {_within(receipt)}. Change that? Text ok."


def so_far_off(old: str, new: str) -> str:
    """A correction that is far from what it corrects."""
    return f"{old[:1].upper()}{old[1:]} to {new}? Text ok, or the whole of it again."


def instead(new: str, old: str) -> str:
    """What may be told anew, or be one more of its kind."""
    return f"{new[:1].upper()}{new[1:]}: instead of {old}, or one more? Text instead or more."


def in_all(total: str, had: str, left: str) -> str:
    """A sum whose parts are in the tally already."""
    return f"{total} in all: I have {had} of it, so {left} more? Text ok, or new if all is new."


def in_all_or_new(total: str, had: str) -> str:
    """A sum that is no more than its parts in the tally."""
    return f"{total} in all? I have {had} already. Text new to add it, or ok to leave it."


def which(options: Sequence[str]) -> str:
    """Several things could be meant by a correction."""
    named = f"{', '.join(options[:-1])} or {options[-1]}"
    return f"Which one: {named}? Nothing changed yet."


def more_or_in_all(count: int, before: int) -> str:
    """Taps put in again, as many as hang already."""
    return f"{count} more, so {before + count} taps in all, or {count} in all? Text more or all."


def pulled_too_many(count: int, hanging: int) -> str:
    """More taps pulled than hang."""
    return f"{count} taps out, but I have {hanging} in. How many did you pull, or all?"


def boil_hours() -> str:
    """A boil that ended and never began."""
    return "I have no start for that fire. How many hours did it burn?"


def nothing_to_change(gallons: str | None) -> str:
    """A correction with nothing to correct."""
    if gallons is None:
        return "I have nothing of yours to change. Text it whole, like 12 gal at 2.2."
    return f"I have nothing of yours to change. Is {gallons} new sap? Text ok, or text it whole."


def does_not_fit(words: str, receipt: str) -> str:
    """A correction that fits nothing in the last record."""
    return (
        f'I can\'t tell what "{plain(words, 30)}" changes in: {receipt}.'
        " Text it whole, or undo, and I write it new."
    )


def no_such_record(figure: str) -> str:
    """An undo that names a figure or a day which none of the last records has."""
    return f'No {figure} in your last records, so nothing is undone. Text "undo" for the last one.'


WHICH_FIGURE = "Which one was that? Text it by its figure, like: the 5 pints was 6."
LEFT_IT = "Left as it was."
DROPPED = "Dropped: nothing was written down."
NOTHING_TO_UNDO = "Nothing of yours is left to undo."
NOTHING_WRITTEN = "Nothing written down."
