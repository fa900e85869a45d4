"""Answers to "which tree is best"."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from bot.wording import amounts, tables
from bot.wording.compose import sentence
from bot.wording.days import date_of_year, day
from bot.wording.gsm import plain
from bot.wording.receipts import tree_name
from bot.wording.style import Style

# The first and this many after it.
_MOST_AFTER = 3


def nothing_in(when: str) -> str:
    """No lot gave sap in the days called `when`."""
    return f"{when}: no sap by lot in the tally."


def most(
    what: str, ranked: Sequence[tuple[str, float]], style: Style, *, least: bool = False
) -> str:
    """Trees or lots by sap; `ranked` starts with the one asked for."""
    if not ranked:
        return _nothing(what)
    said = [(name, amounts.volume(gallons, style)) for name, gallons in ranked]
    lead = "gave least" if least else "gives most"
    return _row(what, said, lead)


def sweetest(what: str, ranked: Sequence[tuple[str, float]], style: Style) -> str:
    """Trees or lots by sugar, the sweetest first."""
    if not ranked:
        return f"No sugar test of a {what} yet. Text it like: {_example(what)} at 2.4 brix."
    return _row(
        what, [(name, f"{amounts.mean_brix(brix)} Brix") for name, brix in ranked], "is sweetest"
    )


def one(
    what: str,
    name: str,
    gallons: float,
    brix: float | None,
    last_on: date,
    place: int,
    of: int,
    style: Style,
) -> str:
    """One tree or lot: its sap, its sugar, its place among the others, when it was emptied."""
    said = f"{_named(what, name)}: {amounts.volume(gallons, style)} this season"
    if brix is not None:
        said += f" at {amounts.mean_brix(brix)} Brix"
    if of > 1:
        said += f", number {place} of {of}"
    return sentence(f"{said}, last on {day(last_on, style.today)}")


def left_standing(
    what: str,
    left: Sequence[tuple[str, date | None]],
    latest: date,
    days: int,
    style: Style,
) -> str:
    """Those that nobody emptied for some days while others were."""
    if not left:
        if (style.today - latest).days > days:
            return f"Nothing was gathered by {what} since {day(latest, style.today)}."
        return f"Every {what} that I know was emptied in the last {days} days."
    said = [
        _named(what, name) + ("" if on is None else f" (last {day(on, style.today)})")
        for name, on in left[:_MOST_LEFT]
    ]
    more = len(left) - len(said)
    row = ", ".join(said) + (f" and {more} more" if more else "")
    return sentence(f"not emptied for over {days} days: {row}")


# More than these are counted, not named.
_MOST_LEFT = 6


def table(what: str, named: Sequence[tuple[str, float, float | None, date]], style: Style) -> str:
    """A table of trees or lots: the name, gallons, Brix where tested, the day of the last."""
    return tables.lines(
        (what.capitalize(), "Sap", "Brix", "Last"),
        [
            (
                plain(name),
                amounts.volume(gallons, style),
                "" if brix is None else amounts.mean_brix(brix),
                date_of_year(last_on),
            )
            for name, gallons, brix, last_on in named
        ],
    )


def _row(what: str, said: Sequence[tuple[str, str]], lead: str) -> str:
    name, amount = said[0]
    text = sentence(f"{_named(what, name)} {lead}, {amount}")
    if len(said) == 1:
        return text
    after = ", ".join(f"{_named(what, name)} {value}" for name, value in said[1 : 1 + _MOST_AFTER])
    left = len(said) - 1 - _MOST_AFTER
    more = f" and {left} more" if left > 0 else ""
    return f"{text} Then {after}{more}."


def _named(what: str, name: str) -> str:
    said = plain(name, 20)
    if what == "tree":
        return tree_name(said)
    return f"{what} {said}" if name[:1].isdigit() or len(name) == 1 else said


def _example(what: str) -> str:
    return "tree 4" if what == "tree" else "east lot"


def _nothing(what: str) -> str:
    return f"No sap by {what} in the tally yet. Text it like: {_example(what)} 2 gal."
