"""The one next step, in a sentence."""

from __future__ import annotations

from collections.abc import Sequence

from bot.figures import BOTTLE_F
from bot.wording import amounts
from bot.wording.gsm import plain
from bot.wording.style import Style

# More trees than these are counted, not named.
_MOST_NAMED = 3

MIND_THE_FIRE = "Keep 2 in of sap in the pan and never leave it."


def boil_today(gallons: float, style: Style) -> str:
    """Stored sap is due, by a rule of thumb."""
    rough = amounts.rough(gallons, style)
    return f"{rough[0].upper()}{rough[1:]} of sap is due: boil it today."


def pails_full(*, evening: bool) -> str:
    """As much came as the pails hold."""
    when = "early tomorrow" if evening else "again today"
    return f"That is about all your pails hold: if it still runs, empty them {when}."


def not_emptied(names: Sequence[str]) -> str:
    """Trees that were left while others were emptied."""
    said = ", ".join(plain(name, 12) for name in names[:_MOST_NAMED])
    left = len(names) - _MOST_NAMED
    more = f" and {left} more" if left > 0 else ""
    trees = "Tree" if len(names) == 1 else "Trees"
    return f"{trees} {said}{more} not emptied for days."


def water(style: Style) -> str:
    """A boil has begun, and nobody knows where water boils today."""
    example = "99.1C" if style.is_metric else "210.4"
    return f'Boil some plain water too: text "water boils at {example}" and I tell you your draw.'


def filter_hot(style: Style) -> str:
    """Syrup has just been drawn."""
    return f"Filter it hot and bottle at {amounts.temperature(BOTTLE_F, style)}: gloves, it burns."


def short(share: float) -> str:
    """The syrup falls short of what the sap promised by a share of it."""
    return f'That is {share * 100:.0f}% short of what the sap should give. Text "why so little".'


def pull_after_buds(taps: int) -> str:
    """Buds are out and taps hang."""
    return f"When it tastes off, pull all {taps} spiles that week, do not plug the holes."


def pull_old(days: int) -> str:
    """Taps that give nothing after many days."""
    return f"Taps in {days} days: holes dry up after a month or so. If all are dry, pull them."
