"""The one next step that matters now, said after a record; nothing when nothing matters.

The steps stand in the order of how much they matter: sap that runs out of time beats everything,
then pails, the fire, the filter, and at last the taps that should come out. One is said, and each
at most once a day.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from bot import figures
from bot.conversation.turn import Turn
from bot.reckoning.trees import Tally, not_emptied
from bot.reckoning.yields import check_yield
from bot.standing import SEASON_OVER
from bot.wording import coach as wording
from bot.wording import standing

# How soon a step is left out when a text would take a second segment.
_SPARE = 4
# Kinds after which the coach is silent: they set something up, or their note is the advice.
_NOT_AFTER = frozenset(
    (
        *("place", "bucket_size", "helper", "store_temp", "pan_temp", "water_boils", "wish"),
        SEASON_OVER,
        *("pan", "elevation", "bit", "stem", "fire", "barometer", "price", "tree"),
    )
)
# Pails that were filled to this share or more ran over, or nearly (our own).
_NEARLY_FULL = 0.8
# Buds told this long ago still mean the end (our own).
_BUDS_COUNT_FOR = timedelta(days=14)
# From so many hours on a round of pails is for the morning.
_EVENING = 17


@dataclass(frozen=True, slots=True)
class Step:
    """A step: the name under which it is remembered as said, and the words."""

    name: str
    words: str


def coach(turn: Turn) -> None:
    """Say the first step that matters after what this text wrote, if it was not said today."""
    kinds = {entry.kind for entry in turn.recorded} - _NOT_AFTER
    if not kinds or turn.undone or turn.reply.question is not None:
        return
    for advise in STEPS:
        step = advise(turn, kinds)
        if step is not None and turn.may_hint(step.name):
            turn.hint(step.name, step.words, _SPARE)
            return


def _storage(turn: Turn, kinds: set[str]) -> Step | None:
    """Sap that waits: after a gathering always, after anything else once it is due."""
    if turn.known.boil is not None or not turn.may_hint("keep cold"):
        return None
    gathered = any(entry.kind == "sap" and entry.gallons for entry in turn.recorded)
    if not gathered and not kinds & _DURING_THE_RUN:
        return None
    store = turn.store()
    if store.boil_by is None or (not gathered and store.boil_by > turn.today):
        return None
    if gathered:
        words = standing.keep_cold(figures.STORE_COLD_F, store.boil_by, turn.style)
    else:
        words = wording.boil_today(store.gallons, turn.style)
    return Step("keep cold", words)


# What is texted while sap is gathered and boiled.
_DURING_THE_RUN = frozenset(("sap", "sugar", "boil", "syrup", "jars", "fuel", "cost", "taps_set"))


def _pails(turn: Turn, kinds: set[str]) -> Step | None:
    """Pails that must have been full, and trees that nobody has emptied."""
    if "sap" not in kinds:
        return None
    told = [entry for entry in turn.recorded if entry.kind == "sap" and entry.on == turn.today]
    taps, pail = turn.known.taps, turn.known.bucket_gallons
    gallons = sum(entry.gallons or 0.0 for entry in told if entry.tree is None)
    all_hold = 0.0 if taps is None or pail is None else taps.count * pail
    if all_hold and gallons >= _NEARLY_FULL * all_hold:
        return Step("pails full", wording.pails_full(evening=turn.sent.hour >= _EVENING))
    if not any(entry.tree is not None for entry in told):
        return None
    by_tree = turn.book.sums.sap_by(turn.who.sugarbush_id, turn.season, "tree")
    found = [Tally(one.name, one.gallons, None, None, one.records, one.last_on) for one in by_tree]
    left = not_emptied(found, turn.today)
    if not left:
        return None
    return Step("not emptied", wording.not_emptied([one.name for one in left]))


def _fire(turn: Turn, kinds: set[str]) -> Step | None:
    """A fire just lit: find out where water boils today; else mind the pan."""
    lit = [
        entry
        for entry in turn.recorded
        if entry.kind == "boil" and entry.detail.get("state") == "start"
    ]
    if not lit:
        return None
    water = turn.book.records.latest(turn.who.sugarbush_id, "water_boils", not_after=turn.sent)
    if water is None or water.on != turn.today:
        return Step("water", wording.water(turn.style))
    return Step("fire", wording.MIND_THE_FIRE)


def _filter(turn: Turn, kinds: set[str]) -> Step | None:
    """Syrup just drawn: filter and bottle it hot."""
    drawn = "syrup" in kinds and "jars" not in kinds
    return Step("filter", wording.filter_hot(turn.style)) if drawn else None


def _short(turn: Turn, kinds: set[str]) -> Step | None:
    """All is boiled, and the syrup falls well short of what the sap promised."""
    if not kinds & {"boil", "jars", "syrup"} or turn.known.boil is not None:
        return None
    tally = turn.tally
    if not tally.syrup_records or tally.brix_is_assumed or tally.expected_syrup_gallons <= 0:
        return None
    check = check_yield(tally.expected_syrup_gallons, tally.syrup_gallons)
    if check.verdict != "short" or turn.store().gallons > 0:
        return None
    return Step("short", wording.short(1 - check.share))


def _pull(turn: Turn, kinds: set[str]) -> Step | None:
    """Taps that hang when the season is over."""
    taps = turn.known.taps
    if taps is None or not taps.count or not kinds & {"sap", "sign", "jars", "boil", "sugar"}:
        return None
    since = turn.today - _BUDS_COUNT_FOR
    signs = [entry for entry in turn.told.of(turn.season, "sign") if entry.on >= since]
    if any(entry.detail.get("sign") == "buds" for entry in signs):
        return Step("pull", wording.pull_after_buds(taps.count))
    put_in = turn.told.of(turn.season, "taps_set")
    days = (turn.today - put_in[0].on).days if put_in else 0
    gave = [entry.gallons for entry in turn.recorded if entry.kind == "sap"]
    if days >= figures.TAPS_OLD_DAYS and gave and not any(gave):
        return Step("pull", wording.pull_old(days))
    return None


STEPS: tuple[Callable[[Turn, set[str]], Step | None], ...] = (
    _storage,
    _pails,
    _fire,
    _filter,
    _short,
    _pull,
)
