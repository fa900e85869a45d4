"""Amounts of sap that are no gathering: what still hangs, how full a tank is, what a season has
come to. A record of one of them would count the same sap twice."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes


def not_gathered_now(clause: Clause, notes: Notes) -> bool:
    """Whether the clause's volumes are told as standing somewhere, or as a sum."""
    volumes = clause.free("volume")
    return _still_out(clause, notes) or any(
        _is_a_level(clause, item) or is_a_sum(clause, item) for item in volumes
    )


def _still_out(clause: Clause, notes: Notes) -> bool:
    """`20 gal hanging on the ridge`, `20 gal in the pails, will get it tomorrow`: nobody has
    gathered that yet."""
    if clause.has("STILLOUT") or "waiting" in clause.words():
        return not clause.gathers()
    if _THERE.search(clause.text) and not clause.has("GATHER"):
        return True
    if any(_has_still_to_be_gathered(clause, item) for item in clause.free("volume")):
        return True
    if any(_has_still_to_be_boiled(clause, item) for item in clause.free("volume")):
        return True
    return not clause.has("GATHER") and any(
        (other.plan or {"after", "later"} & set(other.words())) and _gathers_it(other)
        for other in notes.sentence(clause)
    )


_THERE = re.compile(r"\b(?:out there|on hand)\b")
_TO_GET = frozenset(("gather", "collect", "get", "haul", "gathering"))


def _has_still_to_be_gathered(clause: Clause, item: Item) -> bool:
    """`20 gal still to collect`; but not `12 gal to get us started`."""
    behind = [each.text for each in clause.following(item, 4) if each.text not in _STILL]
    ends = behind[2:] == [] or behind[2] in _THAT_SAP
    return len(behind) > 1 and behind[0] == "to" and behind[1] in _TO_GET and ends


def _has_still_to_be_boiled(clause: Clause, item: Item) -> bool:
    """`still got 30 gal to boil`: as likely sap that was told already."""
    behind = [each.text for each in clause.following(item, 3)]
    to_go = behind[:2] in (["to", "go"], ["to", "do"]) or behind[:3] == ["left", "to", "go"]
    return (behind[:1] == ["to boil"] or to_go) and not clause.gathers()


_STILL = frozenset("still more left yet".split())


def _gathers_it(clause: Clause) -> bool:
    """`will get it tomorrow`, `gathering after work`; but not `will get the rest`."""
    deed = clause.first("GATHER")
    behind = [] if deed is None else [each.text for each in clause.following(deed, 1)]
    gathers = deed is not None and deed.text in _TO_GET | {"pick up"}
    amounts = clause.holds("volume", "number", "vessels")
    return gathers and not amounts and (not behind or behind[0] in _THAT_SAP)


_THAT_SAP = frozenset("it them that em after later tomorrow tonight".split())


def _is_a_level(clause: Clause, item: Item) -> bool:
    """`tank is up to 55 gal`, `barrel has 30 gal in it`: how full it is, and not what came in."""
    if not clause.gathers() and _KEPT_IN.search(clause.text) is not None:
        return True
    if not clause.has("STORE") or clause.gathers() or clause.has("MORE"):
        return False
    store = clause.first("STORE")
    there = not {"there's", "theres", "there is", "there"}.isdisjoint(clause.words())
    before = [each.text for each in clause.preceding(item, 2)]
    stands = bool(before) and (before[0] in _STANDS or " ".join(before[::-1]) in _STANDS)
    behind = [each.text for each in clause.following(item, 2)]
    had = clause.has("HAVE") or not {"only", "just", "still"}.isdisjoint(clause.words())
    inside = store is not None and [
        each.text for each in clause.preceding(store, 2) if each.text not in ("the", "my", "our")
    ][:1] in (["in"], ["in the"])
    return store is not None and (
        (store.start < item.start and stands)
        or (had and inside and store.start > item.start)
        or behind == ["in", "it"]
        or before[:1] == ["at"]
        or there
    )


# "have 25 gal in the snowbank", "20 gal in the drum already".
_KEPT_IN = re.compile(
    r"\b(?:have|has|got|keeping|there's|there is) (?:about |another )?[\d.]+ ?\w+ "
    r"(?:of sap |sap )?(?:\w+ )?in (?:the |a )?snow\w*|\bin (?:the |my |our )?\w+ already$"
)
_STANDS = frozenset(("at", "is", "has", "up to", "down to", "holding", "around", "about"))


def is_a_sum(clause: Clause, item: Item) -> bool:
    """`we're at 45 gal`, `up to 120 gal now`, `hit 100 gal so far this year`."""
    before = [each.text for each in clause.preceding(item, 3)]
    behind = {each.text for each in clause.following(item, 5)}
    over_a_season = not behind.isdisjoint(_SEASON) and (
        "for" in behind or "this" in behind or "so far" in behind
    )
    over_a_season = over_a_season or _OVER_WEEKS.search(clause.text) is not None
    at = before[:1] == ["at"] and len(before) > 1 and before[1] in _WE_ARE
    at = at or before[:1] in (["we're at"], ["i'm at"], ["im at"], ["we are at"])
    up_to = before[:1] == ["up to"] or before[:2] == ["to", "up"]
    brings = not {"makes", "brings", "that makes"}.isdisjoint(before)
    words = set(clause.words())
    total = "total" in words and not words.isdisjoint(_LONGER_THAN_A_DAY)
    if total and sum(each.sort == "volume" for each in clause.items) > 1:
        behind_it = [each.text for each in clause.following(item, 1)]
        total = "total" in before or behind_it == ["total"]
    return over_a_season or at or up_to or total or (brings and "that" in words)


# "that's 88 gal this week", "total for march is 312 gal".
_OVER_WEEKS = re.compile(
    r"^(?:that's|thats|that is|that makes|makes|makes it) .*\b(?:this|for the|on the) "
    r"(?:week|month)\b|\btotal (?:for|in|of) (?:the |this )?"
    r"(?:january|february|march|april|week|month|season|year)\b"
    r"|\b(?:week|month|season|year)'?s? total\b"
)
_LONGER_THAN_A_DAY = frozenset(("season", "running", "year", "week", "month", "so far"))
_SEASON = frozenset("season year spring".split())
_WE_ARE = frozenset(("we're", "i'm", "are", "am", "now", "sitting", "im", "were"))
