"""Answers to "are we ahead of last year"."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from bot.tally import Tally
from bot.wording import amounts, tables
from bot.wording.days import date_of_year, day
from bot.wording.style import Style

# Closer than this share is the same.
_SAME = 0.02


@dataclass(frozen=True, slots=True)
class LastSeason:
    """The season before: its sap and its syrup, up to the same day and in all, gallons."""

    season: int
    same_day: date
    sap_to_day: float
    sap: float
    syrup_to_day: float
    syrup: float


def compared(
    sap_gallons: float, syrup_gallons: float, last: LastSeason | None, name: str, style: Style
) -> str:
    """This season against another to the same day, and what that came to in all."""
    so_far = amounts.volume(sap_gallons, style)
    if last is None:
        return f"I have nothing of {name} to compare with. This one: {so_far} of sap so far."
    ahead = sap_gallons - last.sap_to_day
    if abs(ahead) <= _SAME * max(last.sap_to_day, sap_gallons):
        verdict = "Level with"
    elif ahead > 0:
        verdict = f"{amounts.volume(ahead, style)} ahead of"
    else:
        verdict = f"{amounts.volume(-ahead, style)} behind"
    said = (
        f"{verdict} {name}: {so_far} of sap now,"
        f" {amounts.volume(last.sap_to_day, style)} by {day(last.same_day, style.today)}."
    )
    if syrup_gallons and last.syrup_to_day:
        now, then = (amounts.syrup(made, style) for made in (syrup_gallons, last.syrup_to_day))
        said += f" Syrup {now} now, {then} then."
    said += f" It came to {amounts.volume(last.sap, style)}"
    if last.syrup:
        said += f" and {amounts.syrup(last.syrup, style)} of syrup"
    return said + " in all."


def side_by_side(this: Tally, other: LastSeason | None, style: Style) -> str:
    """A table of two seasons, "" where there is no other."""
    if other is None:
        return ""
    to_day = f"{other.season} to {date_of_year(other.same_day)}"
    return tables.lines(
        ("", f"{this.season} so far", to_day, f"{other.season} in all"),
        [
            (
                "Sap",
                *(
                    amounts.volume(gallons, style)
                    for gallons in (this.sap_gallons, other.sap_to_day, other.sap)
                ),
            ),
            (
                "Syrup",
                *(
                    amounts.syrup(gallons, style)
                    for gallons in (this.syrup_gallons, other.syrup_to_day, other.syrup)
                ),
            ),
        ],
    )
