"""Answers to "are we ahead of last year"."""

from __future__ import annotations

from datetime import date

from bot.tally import Tally
from bot.wording import amounts
from bot.wording.days import day
from bot.wording.style import Style

# Closer than this share is the same.
_SAME = 0.02


def compared(now: Tally, to_date: Tally, whole: Tally, same_day: date, style: Style) -> str:
    """This season against the last to the same day, and what that came to in all."""
    if whole.is_empty:
        return (
            f"I have nothing of the {whole.season} season to compare with."
            f" This one: {amounts.volume(now.sap_gallons, style)} of sap so far."
        )
    ahead = now.sap_gallons - to_date.sap_gallons
    if abs(ahead) <= _SAME * max(to_date.sap_gallons, now.sap_gallons):
        verdict = "Level with"
    elif ahead > 0:
        verdict = f"{amounts.volume(ahead, style)} ahead of"
    else:
        verdict = f"{amounts.volume(-ahead, style)} behind"
    said = (
        f"{verdict} last season: {amounts.volume(now.sap_gallons, style)} of sap now,"
        f" {amounts.volume(to_date.sap_gallons, style)} by {day(same_day, style.today)}."
        f" It came to {amounts.volume(whole.sap_gallons, style)}"
    )
    if whole.syrup_records:
        said += f" and {amounts.syrup(whole.syrup_gallons, style)} of syrup"
    return said + " in all."
