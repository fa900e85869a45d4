"""Which tree, or which lot, gives most, is sweetest, gives least, or was not emptied lately."""

from __future__ import annotations

import re

from bot import figures
from bot.answers import totals
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.answers.period import Period, period_of
from bot.ledger import NamedSap
from bot.reckoning.trees import Named, Tally, not_emptied
from bot.wording import per_tree as wording

_NOT_EMPTIED = re.compile(
    r"\b(?:not|n't|haven'?t|hasn'?t|didn'?t|never|un)\b.*\b(?:empt\w+|check\w*|gather\w*|collect\w*"
    r"|visit\w*|look\w*|been)\b|\b(?:neglect\w*|forg[eo]t\w*|skipp?\w*|missed|overdue|longest)\b"
    r"|\b(?:last|when)\b.*\b(?:empt\w+|gather\w*|collect\w*|check\w*)\b"
)
_SWEET = ("sweetest", "sweet", "brix", "sugar", "sugariest", "richest", "sweeter")
_RANKS = ("best", "better", "which", "most", "compare", "vs", "versus", "or")
_LEAST = (
    *("least", "worst", "poorest", "lowest", "slowest", "fewest", "weakest", "poor", "dud"),
    *("duds", "bad", "slacking", "lazy"),
)
_TREE = re.compile(r"\b(?:tree|maple|#|no\.?|number)\s*#?\s*([a-z0-9]+)\b")


def answer(asked: Asked) -> Answer:
    """Trees or lots in order of what is asked: as many as a text holds, in a mail all of them."""
    if asked.says("taps", "spiles", "spouts"):
        return totals.answer(asked)
    if totals.asks_per_tap(asked):
        return Answer(totals.per_tap(asked))
    one_lot = len(totals.lots_named(asked)) == 1 and not asked.says("tree", "trees", *_RANKS)
    if one_lot and not asked.says(*_SWEET):
        return totals.answer(asked)
    what: Named = "lot" if _asks_lots(asked) else "tree"
    period = period_of(asked)
    if what == "lot" and period is not None and not asked.says(*_SWEET):
        return Answer(_lots_of(asked, period))
    sap = asked.book.sums.sap_by(asked.sugarbush_id, asked.season, what)
    if _NOT_EMPTIED.search(asked.plain) and sap:
        return Answer(_left(asked, what, sap))
    return Answer(_said(asked, what, sap), table=lambda: _table(asked, what, sap))


def _lots_of(asked: Asked, period: Period) -> str:
    """The lots by what they gave in some days."""
    gallons = {
        lot: sum(
            one.gallons or 0.0
            for one in asked.book.sums.season(
                asked.sugarbush_id, period.season, first=period.first, last=period.last, lot=lot
            )
            if one.kind == "sap"
        )
        for lot in asked.known.lots
    }
    ranked = _ranked({lot: amount for lot, amount in gallons.items() if amount})
    if not ranked:
        return wording.nothing_in(period.name)
    return f"{period.name}: {wording.most('lot', ranked, asked.style)}"


def _table(asked: Asked, what: Named, sap: list[NamedSap]) -> str:
    brix = _brix(asked, what, sap)
    most_first = sorted(sap, key=lambda one: (-one.gallons, one.name))
    rows = [(one.name, one.gallons, brix.get(one.name), one.last_on) for one in most_first]
    return wording.table(what, rows, asked.style)


def _said(asked: Asked, what: Named, sap: list[NamedSap]) -> str:
    if asked.says(*_SWEET):
        return wording.sweetest(what, _ranked(_brix(asked, what, sap)), asked.style)
    gallons = {one.name: one.gallons for one in sap}
    named = _named(asked, what, sap)
    if named is not None:
        place = 1 + sum(other.gallons > named.gallons for other in sap)
        brix = _brix(asked, what, sap).get(named.name)
        return wording.one(
            what, named.name, named.gallons, brix, named.last_on, place, len(sap), asked.style
        )
    least = asked.says(*_LEAST)
    return wording.most(what, _ranked(gallons, least=least), asked.style, least=least)


def _asks_lots(asked: Asked) -> bool:
    if asked.says("tree", "trees"):
        return False
    return asked.says("lot", "lots", "side", "section", "hill") or not asked.known.trees


def _brix(asked: Asked, what: Named, sap: list[NamedSap]) -> dict[str, float]:
    """The sugar of each that was tested: in its sap, else in tests of their own."""
    brix = {one.name: one.brix for one in sap if one.brix is not None}
    for test in asked.book.sums.sugar_by(asked.sugarbush_id, asked.season, what):
        brix.setdefault(test.name, test.mean_brix)
    return brix


def _named(asked: Asked, what: Named, sap: list[NamedSap]) -> NamedSap | None:
    """The one tree or lot that the question names, None where it names none or several."""
    by_name = {one.name.casefold(): one for one in sap}
    words = f" {re.sub('[?,.]', ' ', asked.plain)} "
    # A tree called 7 is told from seven gallons by the word before it.
    named = {name for name in by_name if f" {name} " in words and not name.isdigit()}
    if what == "tree":
        named |= {found[1] for found in _TREE.finditer(asked.plain)} & set(by_name)
    return by_name[named.pop()] if len(named) == 1 else None


def _left(asked: Asked, what: Named, sap: list[NamedSap]) -> str:
    found = [Tally(one.name, one.gallons, one.brix, None, one.records, one.last_on) for one in sap]
    left = [(one.name, one.last_emptied) for one in not_emptied(found, asked.today)]
    latest = max(one.last_on for one in sap)
    return wording.left_standing(what, left, latest, figures.NOT_EMPTIED_DAYS, asked.style)


def _ranked(values: dict[str, float], *, least: bool = False) -> list[tuple[str, float]]:
    return sorted(values.items(), key=lambda item: (item[1] if least else -item[1], item[0]))
