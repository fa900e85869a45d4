"""Which tree, or which lot, gives most, is sweetest, or gives least."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.wording import per_tree as wording


def answer(asked: Asked) -> str:
    """Trees or lots in order of what is asked, at most as many as a text holds."""
    what = "lot" if _asks_lots(asked) else "tree"
    sap = asked.book.sums.sap_by(asked.sugarbush_id, asked.season, what)
    gallons = {one.name: one.gallons for one in sap}
    brix = {one.name: one.brix for one in sap if one.brix is not None}
    if asked.says("sweetest", "sweet", "brix", "sugar", "sugariest", "richest"):
        for test in asked.book.sums.sugar_by(asked.sugarbush_id, asked.season, what):
            brix.setdefault(test.name, test.mean_brix)
        return wording.sweetest(what, _ranked(brix), asked.style)
    least = asked.says("least", "worst", "poorest", "lowest", "slowest", "fewest", "weakest")
    return wording.most(what, _ranked(gallons, least=least), asked.style, least=least)


def _asks_lots(asked: Asked) -> bool:
    if asked.says("tree", "trees"):
        return False
    return asked.says("lot", "lots", "side", "section", "hill") or not asked.known.trees


def _ranked(values: dict[str, float], *, least: bool = False) -> list[tuple[str, float]]:
    return sorted(values.items(), key=lambda item: (item[1] if least else -item[1], item[0]))
